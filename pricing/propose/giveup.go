package propose

import (
	"cmp"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
)

// GiveUp is a unit that meets everything asked for but a little, and what the needs
// would be with that little given up.
type GiveUp struct {
	IDs      []string // of the needs given up, sorted
	Hurt     float64  // how much, by the table of hurts
	Unit     config.Unit
	Needs    quote.Needs
	Budget   pricing.Amount
	NeededBy config.Date
	Price    pricing.Amount
	Safe     config.Date     // delivery at nine in ten
	Payload  quantity.Mass   // left at full load
	Missing  []string        // ids of what is standard and would be left out, what hurts most first
	Other    []Exchange      // what it has in the place of something standard
	Thin     []config.Figure // limits that it keeps with too little to spare
	Undue    string          // a declaration that it does not keep, in words; empty where it keeps all

	asked  *quote.Draft
	cat    *config.Catalogue // with what its chassis and body are
	missed []quote.Miss
	late   int // days after the day asked for
	over   pricing.Amount
	basis  string         // what it is over on: how many units, with or without tax
	than   pricing.Amount // the price of one before it that gives up as much; 0 where there is none
	in     string         // the currency
}

// How much it hurts to give something up. Common practice, no source: a week late
// hurts as much as a percent and a half of the budget, a seat as a month, and another
// kind of truck more than either.
const (
	hurtAny      = 6.0 // of anything given up at all
	hurtDay      = 1.0
	hurtPercent  = 5.0
	hurtSeat     = 30.0
	hurtPatient  = 80.0
	hurtInch     = 4.0
	hurtKind     = 60.0
	hurtOption   = 45.0
	hurtStandard = 4.0 // of something standard left out,
	hurtClause   = 6.0 // for each clause of a standard that it answers,
	hurtThousand = 2.0 // and for each thousand of its price
	hurtExchange = 0.5 // of that where another of its group takes its place
	hurtThin     = 5.0 // of a limit that is kept with too little to spare, or a declaration that is not kept
)

// Bounds of looking for what to give up.
const (
	nearPairs     = 6  // pairs worked out that come nearest
	nearEstimates = 40 // of which these were estimated
	mostGiveUps   = 7
	fewerSeats    = 6    // seats or patients less that are tried
	relaxedPairs  = 2    // tried with one must less, and as many of the kind asked for
	kindPairs     = 4    // of the kind asked for, with as many of the options as go together
	mostBudget    = 1500 // conflicts for one of these
	mostRelaxed   = 40
	leanUnits     = 2   // units that leave out something standard to meet the wants
	leanAttempts  = 4   // at them
	leanBudget    = 40  // conflicts for one,
	leanHarder    = 300 // and where that finds none
	costsPerHarm  = 100
	mostLeftOut   = 8 // of what is standard, to meet a want
	clearlyLess   = 0.95
)

// giveUps looks for the units that miss least of what is asked for: those that the
// search has seen, those on the pairs that come nearest, those that go without
// something standard or without one must. What makes the kind of unit asked for goes
// only where nothing else can be offered.
func (f *finder) giveUps(base *quote.Draft, seen *found) []GiveUp {
	var list []GiveUp
	note := func(l look) {
		if l.misses < 100 {
			g := f.giveUpOf(base, &l)
			f.lacking(base, &g)
			list = append(list, g)
		}
	}
	for _, l := range seen.looks {
		note(l)
	}
	near := f.nearest(base, f.kindOf(base))
	whole := make([]bool, len(near)) // whether everything else asked for goes together there
	var leaner []lean
	for i := range near[:min(nearPairs, len(near))] {
		u := &near[i].unit
		loose := f.loosened(base, u)
		if l, ok := f.startUnseen(base, loose, u, seen); ok {
			whole[i] = true
			if seen.at(u) == nil {
				note(l)
			}
			for _, on := range f.leaner(loose, &l) {
				leaner = append(leaner, lean{on, l.unit})
			}
			if i == 0 && l.over.Sign() > 0 {
				f.least(base, loose, &l, note)
			}
		}
	}
	f.leave(base, leaner[:min(leanAttempts, len(leaner))], note)
	if len(near) > 0 {
		f.withoutOne(base, near, whole, note)
	}
	kind := f.kindOf(base)
	if len(list) == 0 {
		f.withoutSome(base, near, kind, note)
	}
	if len(list) == 0 && kind != "" {
		f.withoutSome(base, f.nearest(base, ""), "", note)
	}
	return best(list)
}

// kindOf is the option that makes the kind of unit that must be had; empty where none is
// asked for.
func (f *finder) kindOf(base *quote.Draft) string {
	if duty := f.ed.Cat.DutyOf(&base.Unit); duty != nil {
		return duty.Option
	}
	return ""
}

// lean is a unit that could do without something standard, and the wants it would keep then.
type lean struct {
	wants *quote.Draft
	unit  config.Unit
}

// leave notes units that leave a little of the standard out and keep their wants.
func (f *finder) leave(base *quote.Draft, list []lean, note func(look)) {
	left := leanUnits
	for i := range list {
		for _, budget := range []int64{leanBudget, leanHarder} {
			if l, ok := f.without(base, list[i].wants, &list[i].unit, budget); ok {
				note(l)
				left--
				break
			}
		}
		if left == 0 {
			break
		}
	}
}

// startUnseen is start for a pair that the search may have worked out already.
func (f *finder) startUnseen(base, loose *quote.Draft, u *config.Unit, seen *found) (look, bool) {
	if _, tried := seen.tried[pairOf(u)]; tried && !neverMeets(base, f.ed.For(u).Cat, u) {
		if l := seen.at(u); l != nil {
			return *l, true
		}
		return look{}, false
	}
	return f.start(loose, u.Chassis, u.Body)
}

// leaner are the drafts whose wants a unit could still meet by leaving out some of
// what is standard: all of them, and each alone.
func (f *finder) leaner(loose *quote.Draft, l *look) []*quote.Draft {
	late, dear := l.late > 0 && f.sooner(loose, l), l.over.Sign() > 0 && f.cheaper(loose, l)
	alone := func(date bool) *quote.Draft {
		on := loose.Clone()
		if date {
			on.Terms.Budget = pricing.Amount{}
		} else {
			on.Unit.NeededBy = config.Date{}
		}
		return on
	}
	var out []*quote.Draft
	if (late || l.late == 0) && (dear || l.over.Sign() <= 0) && (late || dear) {
		out = append(out, loose)
	}
	if late && l.over.Sign() > 0 {
		out = append(out, alone(true))
	}
	if dear && l.late > 0 {
		out = append(out, alone(false))
	}
	return out
}

// spare are the fills of a unit, standard or usual for its duty, that it could do without,
// and what going without each, or taking the least of its group, saves in the total of the
// order.
func spare(ed *quote.Edition, base *quote.Draft, u *config.Unit) (ids []string, saved []float64) {
	cat, duty := ed.Cat, ed.Cat.DutyOf(u)
	terms := base.Terms.Clone()
	if terms.Budget.IsZero() {
		terms.Budget = money.Cents(1)
	}
	per := map[string]float64{}
	for _, l := range pricing.Limits(ed.Book.AsOf(base.Date), cat, u, &terms) {
		per = l.Per
	}
	for _, p := range u.Picks {
		o := cat.OptionByID(p.Option)
		if !p.Filled || !o.Standard && !duty.Usually(o.ID) {
			continue
		}
		by := per[o.ID]
		if g := cat.GroupByID(o.Group); g.Choose == config.ChooseOne {
			least := by
			for _, m := range cat.Members(g.ID) {
				least = min(least, per[cat.Options[m].ID])
			}
			by -= least
		} else {
			ids = append(ids, o.ID)
		}
		saved = append(saved, by)
	}
	return ids, saved
}

// sooner reports whether a unit could be in time if it left out all that is standard
// and not needed.
func (f *finder) sooner(base *quote.Draft, l *look) bool {
	ed := f.ed.For(&l.unit)
	bare := l.unit.Clone()
	ids, _ := spare(ed, base, &l.unit)
	for _, id := range ids {
		bare.Drop(id)
	}
	plan, last := planOf(ed, base, &bare)
	return plan != nil && !base.Unit.NeededBy.Before(last)
}

// cheaper reports whether a unit could be within the budget if it went without the few
// standard items, or exchanged them, that save most.
func (f *finder) cheaper(base *quote.Draft, l *look) bool {
	_, saved := spare(f.ed.For(&l.unit), base, &l.unit)
	slices.Sort(saved)
	sum := 0.0
	for _, v := range saved[max(0, len(saved)-mostLeftOut):] {
		sum += v
	}
	return sum >= l.over.Float()
}

// without is a unit within the wants of a draft that leaves out of another what it
// hurts least to leave out.
func (f *finder) without(base, wants *quote.Draft, whole *config.Unit, budget int64) (look, bool) {
	on := wants.Clone()
	needed := on.Unit.NeededBy
	on.Unit = whole.Clone()
	on.Unit.NeededBy = needed
	of := f.ed.For(&on.Unit)
	harm := harmOf(of, &on.Unit, on.Date)
	cost := func(id string) int64 {
		if h := harm(id); h > 0 {
			return -int64(costsPerHarm * h)
		}
		if exchanges(of.Cat, of.Cat.OptionByID(id)) {
			return -int64(costsPerHarm * (1 - hurtExchange) * hurtStandard) // better than none of its group
		}
		return 1
	}
	f.finished++
	c := of.Rules.Complete(&on.Unit, f.fewLeftOut(proposalLimits(of, on, quote.Wanted), whole), cost, budget)
	if !c.Found {
		return look{}, false
	}
	c.Unit.NeededBy = base.Unit.NeededBy
	f.leaveOut(&c.Unit)
	return glance(of, base, c.Unit), true
}

// fewLeftOut adds to limits that little of what is standard in a unit is left out or
// exchanged: no more than a customer would hear of.
func (f *finder) fewLeftOut(l *rules.Limits, whole *config.Unit) *rules.Limits {
	missing, other := Lacks(f.ed, whole)
	few := config.Linear{Code: "standard", Label: "standard", Per: map[string]float64{},
		Limit: float64(mostLeftOut - len(missing) - len(other))}
	for _, o := range usual(f.ed.For(whole), whole) {
		if whole.Has(o.ID) {
			few.Per[o.ID] = -1
			few.Limit--
		}
	}
	fixed := l.For
	return &rules.Limits{For: func(chassis, body string) []config.Linear {
		return append(slices.Clip(fixed(chassis, body)), few)
	}}
}

// exchanges reports whether an option takes the place of something standard of its group
// that a unit has one of. An option of a group without, or that only says that there is
// nothing of it, is no gain: were it counted as one, the search would look for it first.
func exchanges(cat *config.Catalogue, o *config.Option) bool {
	return cat.GroupByID(o.Group).Choose != config.ChooseAny && !o.LeavesOut() &&
		slices.ContainsFunc(cat.Members(o.Group), func(m int) bool { return cat.Options[m].Standard })
}

// harmOf is how much it hurts to leave out an option of a unit: zero of what is neither
// standard nor usual for its duty.
func harmOf(ed *quote.Edition, u *config.Unit, on config.Date) func(id string) float64 {
	book, duty := ed.Book.AsOf(on), ed.Cat.DutyOf(u)
	return func(id string) float64 {
		o := ed.Cat.OptionByID(id)
		if o == nil || !o.Standard && !duty.Usually(id) {
			return 0
		}
		return hurtStandard + hurtClause*float64(len(o.Clauses)) +
			hurtThousand*pricing.PriceOf(book, ed.Cat, id).Float()/1000
	}
}

// least is the unit of the lowest price on the pair of another, with nothing in it
// that the musts do not need.
func (f *finder) least(base, loose *quote.Draft, l *look, note func(look)) {
	on := loose.Clone()
	on.Unit.Chassis, on.Unit.Body = l.unit.Chassis, l.unit.Body
	of := f.ed.For(&on.Unit)
	f.finished++
	c := of.Rules.Complete(&on.Unit, fit(of, on), costOf(of, on.Date, Cheapest), goalBudget)
	if !c.Found {
		return
	}
	f.leaveOut(&c.Unit)
	bare := glance(of, base, c.Unit)
	if f.barest = bare.price; f.nearlyWhole(&bare.unit) {
		note(bare)
	}
}

// nearlyWhole reports whether a unit lacks so little of the standard that a customer
// would hear of it.
func (f *finder) nearlyWhole(u *config.Unit) bool {
	missing, other := Lacks(f.ed, u)
	return len(missing)+len(other) <= mostLeftOut
}

// leaveOut keeps out of a unit what it was found without.
func (f *finder) leaveOut(u *config.Unit) {
	for _, id := range Absent(f.ed, u) {
		u.LeaveOut(id, true)
	}
}

// nearest are the pairs by how much they would hurt, as far as an estimate shows it, of
// those that go together with the option of a kind of unit; with any if that is empty.
func (f *finder) nearest(base *quote.Draft, kind string) []look {
	bare := base.Clone()
	bare.Unit.Picks = []config.Pick{} // another must may be what has to go
	if kind != "" {
		bare.Unit.Set(config.Pick{Option: kind, Qty: 1})
	}
	type pair struct {
		look look
		hurt float64
	}
	var pairs []pair
	byHurt := func(a, b pair) int { return cmp.Compare(a.hurt, b.hurt) }
	for _, u := range pairsFor(f.ed, bare) {
		of := f.ed.For(&u)
		if len(pairs) == mostPairs || !of.Rules.Allows(&u) {
			continue
		}
		with := u.Clone()
		for _, p := range base.Unit.Picks {
			with.Set(p)
		}
		l := look{unit: plain(of.Cat, with)}
		hurt := 0.0
		for _, m := range base.Needs.Missed(of.Cat, &l.unit) {
			if m.Never { // chassis and body alone tell
				hurt += hurtAny + hurtOf(&m)
			}
		}
		pairs = append(pairs, pair{l, hurt})
	}
	slices.SortStableFunc(pairs, byHurt)
	pairs = pairs[:min(len(pairs), nearEstimates)]
	// What price and date add only makes it worse: once enough pairs hurt less than the
	// next one does without these, the rest keep their order.
	estimated := 0
	for ; estimated < len(pairs); estimated++ {
		p := &pairs[estimated]
		milder := 0
		for k := range pairs[:estimated] {
			if pairs[k].hurt <= p.hurt {
				milder++
			}
		}
		if milder >= nearPairs {
			break
		}
		p.look = look{unit: p.look.unit, metric: map[Goal]float64{}}
		p.look.date(f.ed.For(&p.look.unit), base)
		p.hurt = f.giveUpOf(base, &p.look).Hurt
	}
	slices.SortStableFunc(pairs[:estimated], byHurt)
	out := make([]look, len(pairs))
	for i := range pairs {
		out[i] = pairs[i].look
	}
	return out
}

// loosened is the draft without the musts that chassis and body alone break.
func (f *finder) loosened(base *quote.Draft, u *config.Unit) *quote.Draft {
	loose := base.Clone()
	cat := f.ed.For(u).Cat
	for _, m := range base.Needs.Missed(cat, u) {
		if m.Never && !m.Want {
			loose.Needs.Loosen(cat, u, m.ID)
		}
	}
	return loose
}

// withoutOne works units out with one must less: a seat, a patient, or an option. It
// looks at the nearest pairs, and at the nearest that are of the kind asked for.
func (f *finder) withoutOne(base *quote.Draft, near []look, whole []bool, note func(look)) {
	left := mostRelaxed
	kind := f.kindOf(base)
	try := func(on *quote.Draft, u *config.Unit) bool {
		if left--; left < 0 {
			return false
		}
		l, ok := f.start(on, u.Chassis, u.Body)
		if ok {
			note(l)
		}
		return ok
	}
	alike := 0
	for i := range near {
		u := &near[i].unit
		like := f.likeAsked(base, u)
		if like {
			alike++
		}
		if i >= relaxedPairs && !(like && alike <= relaxedPairs) {
			continue
		}
		loose := f.loosened(base, u)
		fewer := false
		for _, id := range []string{"crew", "patients"} {
			s := quote.SizeByID(id)
			asked := int(s.Asked(&loose.Needs))
			most := min(asked-1, s.Most(f.ed.For(u).Cat, u))
			for n := most; n > 0 && n > most-fewerSeats; n-- {
				on := loose.Clone()
				if s.Ask(&on.Needs, float64(n)); try(on, u) {
					fewer = true
					break
				}
			}
		}
		if fewer && !whole[i] {
			continue // the options asked for go with that
		}
		for _, p := range base.Unit.Picks {
			if p.Option == kind {
				continue
			}
			on := loose.Clone()
			on.Unit.Drop(p.Option)
			on.Needs.Must = slices.DeleteFunc(on.Needs.Must, func(id string) bool { return id == p.Option })
			on.Needs.Loosen(f.ed.Cat, u, p.Option)
			try(on, u)
		}
	}
}

// withoutSome works out units with as many of the options that must be in as go
// together: on the nearest pair that has one, and on those of the kind asked for. Where
// seats, patients and sizes stand against each other it asks for fewer seats, and then
// for none of these. The option of a kind of unit stays.
func (f *finder) withoutSome(base *quote.Draft, near []look, kind string, note func(look)) {
	found, alike := 0, 0
	for i := range near {
		u := &near[i].unit
		like := f.likeAsked(base, u)
		if like {
			alike++
		}
		if found > 0 && !(like && alike <= kindPairs) {
			continue
		}
		loose := f.loosened(base, u)
		loose.Unit.Chassis, loose.Unit.Body = u.Chassis, u.Body
		of := f.ed.For(&loose.Unit)
		for _, p := range base.Unit.Picks {
			if p.Option == kind {
				continue
			}
			loose.Unit.Drop(p.Option)
			loose.Needs.Loosen(of.Cat, &loose.Unit, p.Option)
		}
		tries := []*quote.Draft{loose}
		most := min(loose.Needs.Crew-1, quote.SizeByID("crew").Most(of.Cat, &loose.Unit))
		for n := most; n > 0 && n > most-fewerSeats; n-- {
			on := loose.Clone()
			on.Needs.Crew = n
			tries = append(tries, on)
		}
		none := loose.Clone()
		for k := range quote.Sizes {
			quote.Sizes[k].Ask(&none.Needs, 0)
		}
		for _, on := range append(tries, none) {
			if l, ok := f.withMost(base, on, of); ok {
				note(l)
				found++
				break
			}
		}
	}
}

// likeAsked reports whether a chassis is of the type, the fuel and the drive asked for.
func (f *finder) likeAsked(base *quote.Draft, u *config.Unit) bool {
	return !slices.ContainsFunc(base.Needs.Missed(f.ed.For(u).Cat, u), func(m quote.Miss) bool { return isKind(m.ID) })
}

// withMost is the unit within the needs of a draft that has most of the options that
// must be in, and then of the standard.
func (f *finder) withMost(base, on *quote.Draft, of *quote.Edition) (look, bool) {
	harm := harmOf(of, &on.Unit, on.Date)
	cost := func(id string) int64 {
		if base.Unit.Has(id) {
			return -int64(costsPerHarm * mostLeftOut * hurtOption)
		}
		return -int64(costsPerHarm*harm(id)) + 1
	}
	f.finished++
	c := of.Rules.Complete(&on.Unit, fit(of, on), cost, mostBudget)
	if !c.Found {
		return look{}, false
	}
	for _, p := range base.Unit.Picks {
		if c.Unit.Has(p.Option) {
			c.Unit.Keep(p.Option)
		}
	}
	return glance(of, base, c.Unit), true
}

// giveUpOf says what a unit leaves unmet, and what the needs are without it.
func (f *finder) giveUpOf(base *quote.Draft, l *look) GiveUp {
	cat := f.ed.For(&l.unit).Cat
	n := base.Needs
	g := GiveUp{Unit: l.unit, Needs: base.Clone().Needs, Budget: base.Terms.Budget, NeededBy: base.Unit.NeededBy,
		Price: l.price, Safe: l.safe, Payload: quantity.Mass(-l.metric[Lightest]), Thin: l.thin, Undue: l.undue, asked: base,
		cat: cat, missed: n.Missed(cat, &l.unit)}
	give := func(id string, hurt float64) {
		g.IDs = append(g.IDs, id)
		g.Hurt += hurtAny + hurt
	}
	g.Hurt = hurtThin * float64(g.risks())
	if l.late > 0 {
		give(quote.AskDate, hurtDay*float64(l.late))
		g.NeededBy, g.late = l.last, l.late
	}
	if l.over.Sign() > 0 {
		g.Budget, g.over, g.basis, g.in = pricing.BudgetFor(g.Price), l.over, l.basis, f.ed.Book.Currency+" "
		give(quote.AskBudget, hurtPercent*100*l.over.Float()/base.Terms.Budget.Float())
	}
	for _, m := range g.missed {
		g.Needs.Loosen(cat, &l.unit, m.ID)
		hurt := hurtOf(&m)
		if m.Want {
			hurt /= 3
		}
		give(m.ID, hurt)
	}
	slices.Sort(g.IDs)
	return g
}

// hurtOf is how much it hurts to give up a need that is no want of money or time.
func hurtOf(m *quote.Miss) float64 {
	switch {
	case m.ID == "crew":
		return hurtSeat * (m.Asked - m.Has)
	case m.ID == "patients":
		return hurtPatient * (m.Asked - m.Has)
	case quote.SizeByID(m.ID) != nil:
		return hurtInch * math.Abs(m.Asked-m.Has)
	case isKind(m.ID):
		return hurtKind
	}
	return hurtOption
}

// isKind reports whether a need says what the chassis must be.
func isKind(id string) bool {
	return slices.ContainsFunc(quote.Kinds, func(k quote.Kind) bool { return k.ID == id })
}

// lacking says what of the standard the unit of a give-up is without.
func (f *finder) lacking(base *quote.Draft, g *GiveUp) {
	g.Missing, g.Other = Lacks(f.ed, &g.Unit)
	if len(g.Missing)+len(g.Other) == 0 {
		return
	}
	harm := harmOf(f.ed.For(&g.Unit), &g.Unit, base.Date)
	slices.SortStableFunc(g.Missing, func(a, b string) int { return cmp.Compare(harm(b), harm(a)) })
	g.Hurt += hurtAny
	for _, id := range g.Missing {
		g.Hurt += harm(id)
	}
	for _, x := range g.Other {
		g.Hurt += hurtExchange * harm(x.Standard)
	}
}

// best are the give-ups that hurt least, those that keep every must before the others: of
// those that give up the same needs the mildest, and none that gives up as much as another
// does, has no more of the standard and no more to spare.
func best(list []GiveUp) []GiveUp {
	slices.SortStableFunc(list, func(a, b GiveUp) int {
		return cmp.Or(cmp.Compare(min(a.musts(), 1), min(b.musts(), 1)), cmp.Compare(a.Hurt, b.Hurt),
			a.Price.Cmp(b.Price))
	})
	var out []GiveUp
	for i := range list {
		g := &list[i]
		worse := slices.ContainsFunc(out, func(x GiveUp) bool {
			for _, id := range x.IDs {
				if !slices.Contains(g.IDs, id) {
					return false
				}
			}
			return x.lacks() <= g.lacks() && x.risks() <= g.risks() &&
				g.Price.Float() > clearlyLess*x.Price.Float()
		})
		if worse || len(out) == mostGiveUps {
			continue
		}
		for k := range out {
			if x := &out[k]; x.said(quantity.US) == g.said(quantity.US) {
				g.than = x.Price
			}
		}
		out = append(out, *g)
	}
	return out
}

// musts is how many musts it gives up.
func (g *GiveUp) musts() int {
	n := 0
	for _, m := range g.missed {
		if !m.Want {
			n++
		}
	}
	return n
}

// risks is how many limits it keeps with too little to spare, a declaration that it does
// not keep among them.
func (g *GiveUp) risks() int {
	if g.Undue != "" {
		return len(g.Thin) + 1
	}
	return len(g.Thin)
}

// lacks is how many things of the standard it has not.
func (g *GiveUp) lacks() int { return len(g.Missing) + len(g.Other) }
