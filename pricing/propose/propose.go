// Package propose finds units: whole ones that answer the needs, completions for a
// goal, and ways to take an option that does not fit as things stand.
package propose

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing"
	"boxwright/pricing/quote"
)

// Proposal is a whole unit that answers the needs, best by its goal.
type Proposal struct {
	Goal    Goal
	Title   string
	Unit    config.Unit
	Quote   *quote.Quote
	Dropped []string // ids of would-likes it does without
	Misses  []string // needs it does not meet, in words
	Gives   []string // what it gives up against the other two
	Ties    []string // where another of the three is the same unit, or as good by this one's measure
}

// Search is the answer to needs, and how far was looked.
type Search struct {
	Proposals []Proposal
	Pairs     int      // of chassis and body that go together and meet the needs
	Refused   int      // pairs of the right kind on which the must-haves and needs cannot stand together
	Unlooked  int      // pairs of the right kind beyond the bound
	Finished  int      // units worked out to the last option, for the goals together
	Unknown   []string // needs of which the catalogue says nothing
}

// Bounds of the search; work is counted, never timed, so that the same needs
// always give the same answer.
const (
	mostPairs  = 160
	mostFinals = 3
)

// titles of the goals as proposals.
var titles = map[Goal]string{Cheapest: "Lowest price", Lightest: "Most carrying margin", Soonest: "Earliest delivery"}

// look is what a unit is judged by in the search. Its date and price are those
// that its quote has, so that no proposal loses by a day or a cent to a unit
// that the search has seen.
type look struct {
	unit   config.Unit
	misses int
	liked  int              // would-likes it has
	metric map[Goal]float64 // less is better
}

// Basis is the draft reduced to what a proposal depends on: its choices are
// taken out, the needs are put in.
func Basis(d *quote.Draft, cat *config.Catalogue) *quote.Draft {
	c := d.Clone()
	c.Needs.Like, c.Requirements, c.Readings, c.More, c.At, c.Tickets = nil, nil, nil, nil, 0, nil
	must, like := d.Needs.Wishes(cat)
	c.Needs.Like = like
	c.Unit.Chassis, c.Unit.Picks, c.Unit.Proposed, c.Unit.Details = "", []config.Pick{}, nil, nil
	for _, id := range must {
		c.Unit.Set(config.Pick{Option: id, Qty: 1})
	}
	if b := cat.BodyByID(c.Unit.Body); b == nil || !b.Existing {
		c.Unit.Body = ""
		for i := range c.Unit.Carried {
			c.Unit.Carried[i].Compartment = "" // other bodies have other compartments
		}
		c.Unit.Existing = nil
	}
	return c
}

// Propose answers the draft's needs with a full unit for each goal, looked for
// over every chassis and body of the catalogue; each is the best by its goal of
// all units worked out for any of them. There is none when no pair can meet the
// needs.
func Propose(ed *quote.Edition, d *quote.Draft) Search {
	base := Basis(d, ed.Cat)
	s := Search{Unknown: base.Needs.Unknown(ed.Cat)}
	var pairs []look
	for _, u := range pairsFor(ed, base) {
		if len(pairs)+s.Refused >= mostPairs {
			s.Unlooked++
			continue
		}
		on := *base
		on.Unit = u
		of := ed.For(&on.Unit)
		full, ok := of.Rules.Start(&on.Unit, needLimits(of, &on))
		if !ok {
			s.Refused++
			continue
		}
		pairs = append(pairs, glance(of, base, full))
	}
	s.Pairs = len(pairs)
	seen := slices.Clone(pairs) // every unit that was worked out
	for _, goal := range Goals {
		slices.SortStableFunc(pairs, func(a, b look) int { return better(&a, &b, goal) })
		for i := range pairs[:min(mostFinals, len(pairs))] {
			if l, ok := finish(ed, base, pairs[i].unit, goal); ok {
				seen = append(seen, l)
			}
			s.Finished++
		}
	}
	for i := range seen {
		seen[i].liked = len(base.Needs.Like) - len(without(base, &seen[i].unit))
	}
	plain := len(seen)
	for _, goal := range Goals {
		if plain > 0 {
			seen = append(seen, wishedFor(ed, base, seen[:plain], goal))
		}
	}
	for i, goal := range Goals {
		if plain == 0 {
			break
		}
		best := &seen[plain+i]
		for k := range seen[plain:] { // what one goal wishes may be better still for another
			if l := &seen[plain+k]; better(l, best, goal) < 0 {
				best = l
			}
		}
		on := base.Clone()
		on.Unit = best.unit.Clone()
		on.Unit.Proposed = []string{on.Unit.Chassis}
		if base.Unit.Body == "" {
			on.Unit.Proposed = append(on.Unit.Proposed, on.Unit.Body)
		}
		q, err := quote.Compute(ed, on)
		if err != nil || q.Stopped() {
			continue
		}
		s.Proposals = append(s.Proposals, Proposal{Goal: goal, Title: titles[goal], Unit: on.Unit, Quote: q,
			Dropped: without(base, &best.unit), Misses: missed(q)})
	}
	for i := range s.Proposals {
		s.Proposals[i].Gives, s.Proposals[i].Ties = gives(s.Proposals, i), ties(s.Proposals, i)
	}
	return s
}

// without lists the would-likes that a unit does without.
func without(base *quote.Draft, u *config.Unit) []string {
	var out []string
	for _, id := range base.Needs.Like {
		if !u.Has(id) {
			out = append(out, id)
		}
	}
	return out
}

// pairsFor lists every chassis of the kind asked for with every body, the usual
// one first.
func pairsFor(ed *quote.Edition, base *quote.Draft) []config.Unit {
	var out []config.Unit
	for i := range ed.Cat.Chassis {
		c := &ed.Cat.Chassis[i]
		if !base.Needs.Suits(c) {
			continue
		}
		var on []config.Unit
		for j := range ed.Cat.Bodies {
			b := &ed.Cat.Bodies[j]
			if base.Unit.Body != "" && b.ID != base.Unit.Body || base.Unit.Body == "" && b.Existing ||
				(b.Kind == "van") != (c.Cab == "van") {
				continue
			}
			u := base.Unit.Clone()
			u.Chassis, u.Body = c.ID, b.ID
			if b.ID == c.UsualBody {
				on = slices.Insert(on, 0, u)
			} else {
				on = append(on, u)
			}
		}
		out = append(out, on...)
	}
	return out
}

// summed are figures that options add up to, so that the engine itself keeps
// the least a need or a rule set asks for.
var summed = []struct {
	code string
	base func(*config.Chassis, *config.Body) float64
	per  func(*config.Option) float64
}{
	{"space.seats", func(c *config.Chassis, _ *config.Body) float64 { return float64(len(c.CabSeats)) },
		func(o *config.Option) float64 { return float64(len(o.Seats) - o.Cots()) }},
	{"space.patients", nil, func(o *config.Option) float64 { return float64(o.Cots()) }},
	{"space.oxygen", nil, func(o *config.Option) float64 {
		if o.Oxygen == nil {
			return 0
		}
		return o.Oxygen.LitersPerPSI * o.Oxygen.FullPSI * float64(o.Oxygen.Count)
	}},
	{"space.storage", nil, func(o *config.Option) float64 { return float64(o.StorageFt3) }},
	{"space.headroom", func(_ *config.Chassis, b *config.Body) float64 { return float64(b.HeadroomIn) },
		func(o *config.Option) float64 { return -float64(o.HeadroomIn) }},
}

// needLimits are the unit's limits with the needs put among them.
func needLimits(ed *quote.Edition, d *quote.Draft) *rules.Limits {
	l := quote.Limits(ed, d)
	fixed := l.For
	l.Key += fmt.Sprint(d.Needs.Crew, d.Needs.Patients)
	l.For = func(chassis, body string) []config.Linear {
		on := d.Unit.Clone()
		on.Chassis, on.Body = chassis, body
		as := standards.Assume(on.RuleSet, ed.Cat, &on)
		out := fixed(chassis, body)
		for _, s := range summed {
			least := 0.0
			if x, ok := as.Limits[s.code]; ok && x.Sense == config.AtLeast {
				least = x.Value
			}
			switch s.code {
			case "space.seats":
				least = max(least, float64(d.Needs.Crew))
			case "space.patients":
				least = max(least, float64(d.Needs.Patients))
			}
			if least == 0 || slices.ContainsFunc(out, func(l config.Linear) bool { return l.Code == s.code }) {
				continue // a text that was read is among the unit's limits
			}
			limit := config.Linear{Code: s.code, Label: s.code, Per: map[string]float64{}, Limit: -least}
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

// glance weighs, prices and dates a unit without asking the rules.
func glance(ed *quote.Edition, base *quote.Draft, u config.Unit) look {
	l := look{unit: u, metric: map[Goal]float64{}}
	on := *base
	on.Unit = u
	as := standards.Assume(u.RuleSet, ed.Cat, &u)
	w, p, sp := weight.WeighWith(ed.Cat, &u, &as, nil), power.Budget(ed.Cat, &u, &as), space.Measure(ed.Cat, &u, &as)
	if f, ok := w.Figure("weight.payload-left"); ok {
		l.metric[Lightest] = -f.Value
	}
	found := slices.Concat(w.Findings, p.Findings, sp.Findings,
		standards.Findings(standards.Judge(u.RuleSet, &u, ed.Cat, &w.Report, &p.Report, &sp.Report), &w.Report,
			&p.Report, &sp.Report))
	for _, f := range found {
		l.misses += map[config.Severity]int{config.Stop: 100, config.Warn: 1}[f.Severity]
	}
	if sheet, err := quote.PriceAll(ed, &on); err == nil {
		l.metric[Cheapest] = sheet.Total.Float()
		if on.OverBudget(sheet.Total).Sign() > 0 {
			l.misses += 3
		}
	}
	if plan, err := leadtime.ScheduleWith(ed.Cat, &u, quote.Luck(base.Count())); err == nil {
		l.metric[Soonest] = float64(base.Date.DaysUntil(plan.EvenOdds))
		if by := u.NeededBy; !by.IsZero() && by.Before(plan.NineInTen) {
			l.misses += 3
		}
	}
	return l
}

func better(a, b *look, goal Goal) int {
	return cmp.Or(cmp.Compare(a.misses, b.misses), cmp.Compare(a.metric[goal], b.metric[goal]),
		cmp.Compare(b.liked, a.liked), cmp.Compare(a.metric[Cheapest], b.metric[Cheapest]))
}

// finish works the best full unit out on one pair.
func finish(ed *quote.Edition, base *quote.Draft, u config.Unit, goal Goal) (look, bool) {
	on := base.Clone()
	on.Unit = u
	of := ed.For(&on.Unit)
	limits := needLimits(of, on)
	if goal != Soonest { // what is standard is kept where it delays nothing
		c := of.Rules.Complete(&on.Unit, limits, costOf(of, on.Date, goal), goalBudget)
		if !c.Found {
			return look{}, false
		}
		on.Unit = c.Unit
	} else if c := of.Rules.Complete(&on.Unit, limits, costOf(of, on.Date, goal), goalBudget); c.Found {
		if quick := glance(of, base, c.Unit); quick.metric[goal] < glance(of, base, u).metric[goal] {
			on.Unit = c.Unit
		}
	}
	return glance(of, base, on.Unit), true
}

// wishedFor is the best of the units by a goal with every would-like in it that
// costs the goal nothing: the lowest price takes those without a price, the
// earliest delivery those without delay, and the most margin those that leave it
// ahead of every other unit.
func wishedFor(ed *quote.Edition, base *quote.Draft, seen []look, goal Goal) look {
	at := 0
	for i := range seen {
		if better(&seen[i], &seen[at], goal) < 0 {
			at = i
		}
	}
	best := seen[at]
	best.unit = best.unit.Clone()
	bound := best.metric[goal]
	if goal == Lightest {
		bound = math.Inf(1)
		for i := range seen {
			if i != at && seen[i].misses <= best.misses {
				bound = min(bound, seen[i].metric[goal])
			}
		}
	}
	for _, id := range base.Needs.Like {
		if p := best.unit.Find(id); p != nil {
			p.Filled = false
			continue
		}
		with := base.Clone()
		with.Unit = best.unit.Clone()
		of := ed.For(&with.Unit)
		if full, _, ok := take(of, with, id, needLimits); ok {
			if l := glance(of, base, full); l.misses <= best.misses && l.metric[goal] <= bound {
				best = l
			}
		}
	}
	best.liked = len(base.Needs.Like) - len(without(base, &best.unit))
	return best
}

// missed words what of the needs a proposal does not meet.
func missed(q *quote.Quote) []string {
	var out []string
	if by := q.Draft.OverBudget(q.Price.Total); by.Sign() > 0 {
		out = append(out, q.Price.Currency+" "+by.Show()+" over the budget")
	}
	if by := q.Draft.Unit.NeededBy; !by.IsZero() && by.Before(q.Plan.NineInTen) {
		out = append(out, "needed "+by.Long()+", at nine in ten "+q.Plan.NineInTen.Long())
	}
	for _, f := range q.Findings {
		if f.Severity == config.Warn && !strings.HasPrefix(f.Code, "time.") && !strings.HasPrefix(f.Code, "price.") {
			out = append(out, f.Where+": "+f.Text)
		}
	}
	return out
}

// sizeOf is what a goal makes least, as the quote shows it.
func sizeOf(goal Goal, q *quote.Quote) float64 {
	switch goal {
	case Cheapest:
		return q.Price.Total.Float()
	case Lightest:
		return -marginOf(q)
	}
	return float64(q.Draft.Date.DaysUntil(q.Plan.EvenOdds))
}

func marginOf(q *quote.Quote) float64 {
	f, _ := q.Figure("weight.payload-left")
	return f.Value
}

// ties says which of the others is the same unit, or as good by this one's
// measure.
func ties(all []Proposal, at int) []string {
	this := &all[at]
	alike := map[Goal]string{Cheapest: " costs as much.", Lightest: " carries as much.",
		Soonest: " is delivered on the same day."}[this.Goal]
	var out []string
	for i := range all {
		switch title := strings.ToLower(all[i].Title); {
		case i == at:
		case quote.SameLoad(&all[i].Unit, &this.Unit, false):
			out = append(out, "The same unit as the "+title+": of all that were worked out none is better by either "+
				"measure.")
		case sizeOf(this.Goal, all[i].Quote) == sizeOf(this.Goal, this.Quote):
			out = append(out, "The "+title+alike)
		}
	}
	return out
}

// gives says what a proposal gives up against the best of the others.
func gives(all []Proposal, at int) []string {
	this := &all[at]
	var out []string
	var price pricing.Amount
	var lb float64
	var days int
	var dearer, lighter, earlier string
	for i := range all {
		if i == at {
			continue
		}
		o, words := all[i].Quote, strings.ToLower(all[i].Title)
		if by := this.Quote.Price.Total.Sub(o.Price.Total); by.Cmp(price) > 0 {
			price, dearer = by, words
		}
		if by := marginOf(o) - marginOf(this.Quote); by > lb {
			lb, lighter = by, words
		}
		if by := o.Plan.EvenOdds.DaysUntil(this.Quote.Plan.EvenOdds); by > days {
			days, earlier = by, words
		}
	}
	if dearer != "" {
		out = append(out, this.Quote.Price.Currency+" "+price.Show()+" more than the "+dearer)
	}
	if lighter != "" {
		out = append(out, quantity.US.Show(lb, quantity.Pound)+" less margin than the "+lighter)
	}
	if earlier != "" {
		out = append(out, fmt.Sprintf("%d calendar days later than the %s", days, earlier))
	}
	if len(this.Dropped) > 0 {
		out = append(out, "Does without: "+this.Quote.Labels(this.Dropped))
	}
	return out
}
