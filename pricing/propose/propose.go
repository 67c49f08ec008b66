// Package propose finds units: whole ones that answer the needs, completions for a
// goal, and ways to take an option that does not fit as things stand.
package propose

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/rules"
	"boxwright/config/standards"
	"boxwright/pricing"
	"boxwright/pricing/quote"
)

// Proposal is a whole unit that answers the needs, best by its goal.
type Proposal struct {
	Goal    Goal
	Title   string
	Also    string // what another is the best by, when this one is as good
	Among   string // of which units the title holds, where one that was put aside is better; empty: of all
	Unit    config.Unit
	Quote   *quote.Quote
	Dropped []string        // ids of would-likes it does without
	Missing []string        // ids of what is standard and does not go with it
	Other   []Exchange      // what it has in the place of something standard
	Misses  []string        // needs it does not meet, in words
	Checks  []string        // what else is to be decided of it
	Thin    []config.Figure // limits that it keeps with too little to spare
}

// Search is the answer to needs, and how far was looked.
type Search struct {
	Proposals []Proposal
	Begun     *Begun    // on the chassis that the customer began on; nil where there is none
	Aside     *Proposal // better by price or date than these, but with less to spare; nil where there is none
	Short     bool      // no unit found keeps every must and want, see GiveUps
	Pairs     int       // of chassis and body that may meet the needs
	Refused   int       // pairs on which the musts cannot stand together
	Finished  int       // units worked out to the last option
	Unlooked  int       // pairs left at an estimate, or not looked at
	Unknown   []string  // needs of which the catalogue says nothing

	base   *quote.Draft
	finder *finder
	seen   found
	none   bool // no unit keeps every must
}

// titles of the goals as proposals.
var titles = map[Goal]string{Cheapest: "Lowest price", Lightest: "Most remaining payload", Soonest: "Earliest delivery"}

// cabSeats are the people counted where nobody said how many ride: those of a cab.
const cabSeats = 2

// Basis is the draft reduced to what a proposal depends on: its choices are
// taken out, the options that must be in are put in. The other units of the order stay: they share its
// budget, and those ahead of it hold the plant's bays.
func Basis(d *quote.Draft, cat *config.Catalogue) *quote.Draft {
	c := d.Clone()
	c.Requirements, c.Readings, c.Tickets = nil, nil, nil
	must, _ := d.Needs.Wishes(cat)
	c.Unit.Chassis, c.Unit.Picks, c.Unit.Proposed, c.Unit.Details = "", []config.Pick{}, nil, nil
	c.Unit.LeftOut = nil
	for _, id := range must {
		c.Unit.Set(config.Pick{Option: id, Qty: 1})
	}
	duty := cat.DutyOf(&c.Unit)
	c.Unit.RuleSet = standards.Suit(c.Unit.RuleSet, duty)
	c.Unit.Carried = cat.LoadsAfter(cat.DutyOf(&d.Unit), duty, c.Unit.Carried, max(d.Needs.Crew, cabSeats))
	if b := cat.BodyByID(c.Unit.Body); b == nil || !b.Existing {
		c.Unit.Body = ""
		for i := range c.Unit.Carried {
			c.Unit.Carried[i].Compartment = "" // other bodies have other compartments
		}
		c.Unit.Existing = nil
	}
	return c
}

// Offered are all units of the answer, the one on the chassis begun on first.
func (s *Search) Offered() (list []Proposal) {
	if s.Begun != nil && s.Begun.Proposal != nil {
		list = append(list, *s.Begun.Proposal)
	}
	return append(list, s.Proposals...)
}

// Propose answers the draft's needs with a full unit for each goal, looked for
// over every chassis and body of the catalogue. Each keeps every must, and has
// everything standard that goes with it; of those that do, the ones that keep the
// wants go first.
func Propose(ed *quote.Edition, d *quote.Draft) Search {
	base := Basis(d, ed.Cat)
	f := newFinder(ed, base)
	found := f.look(base, perGoal)
	s := Search{Unknown: base.Needs.Unknown(ed.Cat)}
	plain := found.looks
	putBehind(plain)
	var wished []look
	if len(plain) > 0 {
		for _, goal := range Goals {
			wished = append(wished, f.wishedFor(base, plain, goal))
		}
	}
	var last *look
	for _, goal := range Goals {
		if len(wished) == 0 {
			break
		}
		best := &wished[0]
		for k := range wished { // what one goal wishes may be better still for another
			if l := &wished[k]; better(l, best, goal) < 0 {
				best = l
			}
		}
		if n := len(s.Proposals); n > 0 && best == last {
			p := s.Proposals[n-1]
			p.Goal, p.Title = goal, titles[goal]
			s.Proposals = append(s.Proposals, p)
		} else if p, ok := f.proposal(base, best, goal); ok {
			s.Proposals = append(s.Proposals, p)
		}
		last = best
	}
	s.Begun = f.begun(base, &found)
	s.nameSoonest()
	s.Pairs, s.Refused, s.Unlooked = found.pairs, found.refused, found.unlooked
	s.base, s.finder, s.seen, s.none = base, f, found, len(wished) == 0
	s.Short = s.none || !meetsWants(wished)
	if len(wished) > 0 {
		s.Aside = f.aside(base, plain, wished[0].unmet, s.Proposals)
	}
	for i := range s.Proposals {
		if p := &s.Proposals[i]; s.Aside != nil && s.Aside.beats(p) {
			switch {
			case s.Aside.Thin != nil:
				p.Among = "with enough to spare"
			case p.Checks == nil:
				p.Among = "with nothing to check"
			default:
				p.Among = "with less to check"
			}
		}
	}
	s.Finished = f.finished
	return s
}

// proposal is a unit that was found, for a goal; false where it cannot be built.
func (f *finder) proposal(base *quote.Draft, l *look, goal Goal) (Proposal, bool) {
	on := base.Clone()
	on.Unit = l.unit.Clone()
	on.Unit.Proposed = []string{on.Unit.Chassis}
	if base.Unit.Body == "" {
		on.Unit.Proposed = append(on.Unit.Proposed, on.Unit.Body)
	}
	q, err := quote.Compute(f.ed, on)
	if err != nil || slices.ContainsFunc(q.OwnFindings(), stops) {
		return Proposal{}, false
	}
	p := Proposal{Goal: goal, Title: titles[goal], Unit: on.Unit, Quote: q, Dropped: f.dropped(&l.unit),
		Misses: missed(q), Checks: checks(q), Thin: thinOf(q)}
	p.Missing, p.Other = Lacks(f.ed, &l.unit)
	return p, true
}

// aside is the cheapest unit that was put behind the proposals for what is to be
// checked of it, where it costs less than each of them or comes before each, and misses
// no more of the wants.
func (f *finder) aside(base *quote.Draft, seen []look, unmet int, list []Proposal) *Proposal {
	var best *look
	for i := range seen {
		l := &seen[i]
		if l.misses < 100 && l.unmet <= unmet && (best == nil || l.price.Cmp(best.price) < 0) {
			best = l
		}
	}
	if best == nil || len(list) == 0 {
		return nil
	}
	cheaper, sooner := true, true
	for i := range list {
		cheaper = cheaper && best.price.Cmp(list[i].Quote.Price.Total) < 0
		sooner = sooner && best.safe.Before(list[i].Quote.Plan.NineInTen)
	}
	if !cheaper && !sooner {
		return nil
	}
	p, ok := f.proposal(base, best, Aside)
	if !ok {
		return nil
	}
	var better []string
	if cheaper {
		better = append(better, "lowest price")
	}
	if sooner {
		better = append(better, "earliest delivery")
	}
	if !slices.ContainsFunc(list, func(x Proposal) bool { return marginOf(x.Quote) >= marginOf(p.Quote) }) {
		better = append(better, "most payload")
	}
	p.Title = capital(listed(better)) + " of all, "
	if p.Thin != nil {
		p.Title += "little to spare"
	} else {
		p.Title += "more to check"
	}
	return &p
}

// beats reports whether a unit put aside is better by what a proposal is the best of.
func (p *Proposal) beats(best *Proposal) bool {
	switch best.Goal {
	case Cheapest:
		return p.Quote.Price.Total.Cmp(best.Quote.Price.Total) < 0
	case Soonest:
		return p.Quote.Plan.NineInTen.Before(best.Quote.Plan.NineInTen)
	}
	return marginOf(p.Quote) > marginOf(best.Quote)
}

// Giving is what would have to go where no unit keeps every must and want.
type Giving struct {
	List  []GiveUp // the mildest first
	Cause string   // what stands against it, in words
	// Barest is the price of a unit with nothing but what is asked for and what the
	// rules need, where the budget is not kept; 0 when none was looked for.
	Barest   pricing.Amount
	Finished int // units worked out to the last option for it
}

// GiveUps looks for what would have to go; it has nothing where a unit keeps all.
func GiveUps(s *Search) Giving {
	if !s.Short {
		return Giving{}
	}
	f := newFinder(s.finder.ed, s.base)
	g := Giving{List: f.giveUps(s.base, &s.seen)}
	g.Cause, g.Finished, g.Barest = causeOf(g.List, s.none), f.finished, f.barest
	return g
}

func stops(f config.Finding) bool { return f.Severity == config.Stop }

// Absent lists what is standard in an edition and not in the unit.
func Absent(ed *quote.Edition, u *config.Unit) []string {
	cat := ed.For(u).Cat
	var out []string
	for i := range cat.Options {
		if o := &cat.Options[i]; o.Standard && !u.Has(o.ID) {
			out = append(out, o.ID)
		}
	}
	return out
}

// dropped lists the would-likes that a unit does without.
func (f *finder) dropped(u *config.Unit) []string {
	var out []string
	for _, id := range f.likes {
		if !u.Has(id) {
			out = append(out, id)
		}
	}
	return out
}

// summed are figures that options add up to, so that the engine itself keeps
// the least a rule set asks for.
var summed = []struct {
	code string
	base func(*config.Chassis, *config.Body) float64
	per  func(*config.Option) float64
}{
	{"space.oxygen", nil, func(o *config.Option) float64 {
		if o.Oxygen == nil {
			return 0
		}
		return o.Oxygen.LitersPerPSI * o.Oxygen.FullPSI * float64(o.Oxygen.Count)
	}},
	{"space.storage", nil, func(o *config.Option) float64 { return float64(o.StorageFt3) }},
	{"space.headroom", func(_ *config.Chassis, b *config.Body) float64 { return body.HeadroomIn(b) },
		func(o *config.Option) float64 { return -float64(o.HeadroomIn) }},
}

// fit are the unit's limits, and the least that the rule set asks for from memory,
// which forbids nothing but is worth keeping in a proposal.
func fit(ed *quote.Edition, d *quote.Draft) *rules.Limits { return proposalLimits(ed, d, quote.Limits) }

func proposalLimits(
	ed *quote.Edition, d *quote.Draft, limits func(*quote.Edition, *quote.Draft) *rules.Limits,
) *rules.Limits {
	l := limits(ed, d)
	fixed := l.For
	l.Key += "fit"
	l.For = func(chassis, body string) []config.Linear {
		on := d.Unit.Clone()
		on.Chassis, on.Body = chassis, body
		as := standards.Assume(on.RuleSet, ed.Cat, &on)
		out := fixed(chassis, body)
		for _, s := range summed {
			x, ok := as.Limits[s.code]
			if !ok || x.Sense != config.AtLeast || x.Value == 0 ||
				slices.ContainsFunc(out, func(l config.Linear) bool { return l.Code == s.code }) {
				continue // a text that was read is among the unit's limits
			}
			limit := config.Linear{Code: s.code, Label: s.code, Per: map[string]float64{}, Limit: -x.Value}
			if s.base != nil {
				limit.Base = -s.base(ed.Cat.ChassisByID(chassis), ed.Cat.BodyByID(body))
			}
			for i := range ed.Cat.Options {
				if v := s.per(&ed.Cat.Options[i]); v != 0 {
					limit.Per[ed.Cat.Options[i].ID] = -v
				}
			}
			out = append(out, limit)
		}
		return out
	}
	return l
}

// missed words what of the needs a proposal does not meet.
func missed(q *quote.Quote) []string {
	var out []string
	if by := q.Draft.OverBudget(q.Price.Total); by.Sign() > 0 {
		out = append(out, q.Price.Currency+" "+by.Show()+" over the budget ("+q.Price.Basis()+")")
	}
	if by := q.Draft.Unit.NeededBy; !by.IsZero() && by.Before(q.LastSafe()) {
		said := "needed " + by.Long() + ", safe date (90 %) "
		if n := q.Draft.LastOf(); n > 1 {
			said += fmt.Sprintf("of the last of %d ", n)
		}
		out = append(out, said+q.LastSafe().Long())
	}
	for _, f := range q.OwnFindings() {
		if f.Code == quote.WantCode {
			out = append(out, f.Text)
		}
	}
	return out
}

// checks words what else is to be decided of a proposal.
func checks(q *quote.Quote) []string {
	var out []string
	for _, f := range q.OwnFindings() {
		if f.Severity == config.Warn && !isThin(&f) && ofUnit(&f) {
			said := f.Text
			if f.Code == standards.DeclaredCode {
				said = undue(q.Edition.Cat, &f)
			}
			if what, _, _ := strings.Cut(f.Where, ","); !strings.HasPrefix(said, what) {
				said = f.Where + ": " + said
			}
			out = append(out, said)
		}
	}
	return out
}

// undue words a declaration that a unit does not keep, and what would have to go for it.
func undue(cat *config.Catalogue, f *config.Finding) string {
	return f.Text + " Before its quote can be signed this would have to go: " + cat.LabelOf(f.Picks[0]) + "."
}
