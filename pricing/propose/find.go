package propose

import (
	"cmp"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/power"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing"
	"boxwright/pricing/quote"
)

// Bounds of the search; work is counted, never timed, so that the same needs
// always give the same answer.
const (
	mostPairs  = 400 // of chassis and body that are estimated
	perGoal    = 4   // units worked out for a goal
	mostLikes  = 12  // would-likes tried one by one for a goal
	roughDraws = 60  // of an estimated date
)

// look is what a unit is judged by in the search. Its date and price are those
// that its quote has, so that no proposal loses by a day or a cent to a unit
// that the search has seen.
type look struct {
	unit   config.Unit
	misses int              // of limits and wants, the worse the more
	unmet  int              // wants that it does not meet
	liked  int              // would-likes it has
	thin   []config.Figure  // limits that it keeps with too little to spare
	undue  string           // a declaration that it does not keep, in words
	metric map[Goal]float64 // less is better
	late   int              // calendar days after the day it is needed, at nine in ten
	price  pricing.Amount   // of the order
	over   pricing.Amount   // what of it is above the budget
	basis  string           // what that is compared on
	safe   config.Date      // delivery at nine in ten
	last   config.Date      // that of the last of several alike
}

// finder works units out, and counts how many.
type finder struct {
	ed       *quote.Edition
	likes    []string // ids of the would-likes, those of the words among the needs too
	finished int
	barest   pricing.Amount // of a unit with nothing but what must be in; 0 when none was found
}

func newFinder(ed *quote.Edition, base *quote.Draft) *finder {
	_, likes := base.Needs.Wishes(ed.Cat)
	return &finder{ed: ed, likes: likes}
}

// found is what a search has seen.
type found struct {
	looks                    []look
	tried                    map[[2]string]bool // pairs worked out, and whether they go together with the musts
	pairs, refused, unlooked int
}

// at is what was seen of a pair; nil where it was not worked out, or does not go
// together with the musts.
func (f *found) at(u *config.Unit) *look {
	if i := slices.IndexFunc(f.looks, func(l look) bool { return pairOf(&l.unit) == pairOf(u) }); i >= 0 {
		return &f.looks[i]
	}
	return nil
}

// pairOf is the chassis of a unit with its body.
func pairOf(u *config.Unit) [2]string { return [2]string{u.Chassis, u.Body} }

// look estimates every pair of chassis and body that the musts leave, and works out
// the most promising for each goal.
func (f *finder) look(base *quote.Draft, most int) found {
	var out found
	var rough []look
	for _, u := range pairsFor(f.ed, base) {
		of := f.ed.For(&u)
		if neverMeets(base, of.Cat, &u) {
			continue
		}
		if !of.Rules.Allows(&u) {
			out.refused++
			continue
		}
		out.pairs++
		if len(rough) == mostPairs {
			out.unlooked++
			continue
		}
		rough = append(rough, estimate(of, base, plain(of.Cat, u)))
	}
	tried := map[[2]string]bool{}
	out.tried = tried
	for _, goal := range Goals {
		slices.SortStableFunc(rough, func(a, b look) int {
			return cmp.Or(cmp.Compare(a.unmet, b.unmet), cmp.Compare(a.metric[goal], b.metric[goal]))
		})
		n := 0
		for i := range rough {
			if n == most {
				break
			}
			pair := pairOf(&rough[i].unit)
			if worked, known := tried[pair]; known {
				if worked {
					n++
				}
				continue
			}
			l, ok := f.start(base, rough[i].unit.Chassis, rough[i].unit.Body)
			if tried[pair] = ok; !ok {
				out.refused++
				out.pairs--
				continue
			}
			out.looks = append(out.looks, l)
			n++
		}
	}
	out.unlooked += out.pairs - len(out.looks)
	return out
}

// neverMeets reports whether chassis and body alone break a must.
func neverMeets(base *quote.Draft, cat *config.Catalogue, u *config.Unit) bool {
	return slices.ContainsFunc(base.Needs.Missed(cat, u), func(m quote.Miss) bool { return m.Never && !m.Want })
}

// plain is a unit with everything standard beside its picks, whether or not it goes
// together: good for an estimate.
func plain(cat *config.Catalogue, u config.Unit) config.Unit {
	u = u.Clone()
	cat.FitUsual(&u)
	taken := map[string]bool{}
	for _, p := range u.Picks {
		taken[cat.OptionByID(p.Option).Group] = true
	}
	for i := range cat.Options {
		if o := &cat.Options[i]; o.Standard && !u.Has(o.ID) && !taken[o.Group] {
			u.Set(config.Pick{Option: o.ID, Qty: 1, Filled: true})
			taken[o.Group] = cat.GroupByID(o.Group).Choose != config.ChooseAny
		}
	}
	return u
}

// start works out the unit on a chassis with a body as the plant builds it for its duty,
// with the musts kept.
func (f *finder) start(base *quote.Draft, chassis, body string) (look, bool) {
	on := base.Clone()
	on.Unit.Chassis, on.Unit.Body = chassis, body
	of := f.ed.For(&on.Unit)
	of.Cat.FitUsual(&on.Unit)
	f.finished++
	full, ok := of.Rules.StartWhole(&on.Unit, fit(of, on))
	if !ok {
		return look{}, false
	}
	l := glance(of, base, full)
	l.liked = len(f.likes) - len(f.dropped(&full))
	return l, true
}

// pairsFor lists every chassis with every body, the usual one first.
func pairsFor(ed *quote.Edition, base *quote.Draft) []config.Unit {
	var out []config.Unit
	duty := ed.Cat.DutyOf(&base.Unit)
	for i := range ed.Cat.Chassis {
		c := &ed.Cat.Chassis[i]
		for _, body := range ed.Cat.BodiesFor(c, duty, base.Unit.Body) {
			u := base.Unit.Clone()
			u.Chassis, u.Body = c.ID, body
			out = append(out, u)
		}
	}
	return out
}

// estimate prices and dates a unit, with few draws, and weighs it.
func estimate(ed *quote.Edition, base *quote.Draft, u config.Unit) look {
	l := look{unit: u, metric: map[Goal]float64{}}
	as := standards.Assume(u.RuleSet, ed.Cat, &u)
	if f, ok := weight.Weigh(ed.Cat, &u, &as).Figure("weight.payload-left"); ok {
		l.metric[Lightest] = -f.Value
	}
	l.date(ed, base)
	return l
}

// date prices and dates a unit, with few draws.
func (l *look) date(ed *quote.Edition, base *quote.Draft) {
	sim := quote.Luck(base.Count())
	sim.Draws = roughDraws
	plan, err := leadtime.Schedule(ed.Cat, &l.unit, sim)
	if err != nil {
		plan = nil
	}
	last := config.Date{}
	if plan != nil {
		last = plan.NineInTen
	}
	l.judge(ed, base, plan, last)
}

// judge prices the unit and holds it, with its dates, against the wants: of several alike
// the last is to be there in time.
func (l *look) judge(ed *quote.Edition, base *quote.Draft, plan *leadtime.Plan, last config.Date) {
	on := *base
	on.Unit = l.unit
	if sheet, err := quote.PriceAll(ed, &on); err == nil {
		l.metric[Cheapest] = sheet.Total.Float()
		l.price, l.basis = sheet.Total, sheet.Basis()
		if over := on.OverBudget(sheet.Total); over.Sign() > 0 {
			l.unmet++
			l.over = over
		}
	}
	if plan != nil {
		l.metric[Soonest] = waitOf(base.Date, plan.NineInTen, plan.EvenOdds)
		l.safe, l.last = plan.NineInTen, last
		if by := base.Unit.NeededBy; !by.IsZero() && by.Before(last) {
			l.unmet++
			l.late = by.DaysUntil(last)
		}
	}
	for _, m := range base.Needs.Missed(ed.Cat, &l.unit) {
		if m.Want {
			l.unmet++
		}
	}
	l.misses += 3 * l.unmet
}

// likelyCounts is so little that the likely date only decides between equal safe dates.
const likelyCounts = 1e-6

// waitOf is how long a unit takes, in days: its safe date is what dates are checked
// against, and of two that are as safe the one that is likely earlier comes first.
func waitOf(from, safe, likely config.Date) float64 {
	return float64(from.DaysUntil(safe)) + float64(from.DaysUntil(likely))*likelyCounts
}

// glance weighs, prices and dates a unit without asking the rules.
func glance(ed *quote.Edition, base *quote.Draft, u config.Unit) look {
	l := look{unit: u, metric: map[Goal]float64{}}
	as := standards.Assume(u.RuleSet, ed.Cat, &u)
	w, p, sp := weight.Weigh(ed.Cat, &u, &as), power.Budget(ed.Cat, &u, &as), space.Measure(ed.Cat, &u, &as)
	if f, ok := w.Figure("weight.payload-left"); ok {
		l.metric[Lightest] = -f.Value
	}
	found := slices.Concat(w.Findings, p.Findings, sp.Findings,
		standards.Findings(standards.Judge(u.RuleSet, &u, ed.Cat, &w.Report, &p.Report, &sp.Report), &w.Report,
			&p.Report, &sp.Report))
	for _, x := range found {
		switch {
		case x.Severity == config.Stop:
			l.misses += 100
		case x.Severity == config.Warn && weighty(&x):
			l.misses++
		}
		if x.Code == standards.DeclaredCode {
			l.undue = undue(ed.Cat, &x)
		}
		if isThin(&x) {
			l.thin = append(l.thin, *x.Figure)
		}
	}
	plan, last := planOf(ed, base, &l.unit)
	l.judge(ed, base, plan, last)
	return l
}

// slight is the chance of missing a limit up to which a unit is offered as another is,
// with that to check.
const slight = 0.25

// weighty reports whether a unit without a finding is the better one whatever it costs:
// not where nobody read the limit, nor where the chance of missing it is slight. An
// overloaded wheel end counts: its limit is the maker's, and only how it is loaded is assumed.
func weighty(x *config.Finding) bool {
	switch {
	case x.Code == "weight.wheel.over":
		return true
	case x.Basis == config.FromMemory, x.Basis == config.CommonPractice:
		return false
	}
	return x.Figure == nil || !x.Figure.Met() || x.Figure.Chance > slight
}

// planOf is when a unit is delivered in the place of the draft's own, as its quote says,
// and the day by which the last of several alike is safe; nil where it cannot be planned.
func planOf(ed *quote.Edition, base *quote.Draft, u *config.Unit) (*leadtime.Plan, config.Date) {
	on := *base
	on.Unit = *u
	plan, last, err := quote.Alike(ed, &on)
	if err != nil {
		return nil, config.Date{}
	}
	return plan, last
}

func better(a, b *look, goal Goal) int {
	return cmp.Or(cmp.Compare(a.misses, b.misses), cmp.Compare(a.metric[goal], b.metric[goal]),
		cmp.Compare(b.liked, a.liked), cmp.Compare(a.metric[Cheapest], b.metric[Cheapest]))
}

// wishedFor is the best of the units by a goal with every would-like in it that
// costs the goal nothing: the lowest price takes those without a price, the
// earliest delivery those without delay, and the most payload those that leave it
// ahead of every other unit.
func (f *finder) wishedFor(base *quote.Draft, seen []look, goal Goal) look {
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
	of := f.ed.For(&best.unit)
	cost := costOf(of, base.Date, goal)
	tried := 0
	for _, id := range f.likes {
		if p := best.unit.Find(id); p != nil {
			p.Filled = false
			continue
		}
		if goal == Cheapest && cost(id) > 0 || tried == mostLikes {
			continue
		}
		tried++
		with := base.Clone()
		with.Unit = best.unit.Clone()
		f.finished++
		if full, _, ok := take(of, with, id, fit); ok {
			if l := glance(of, base, full); l.misses <= best.misses && l.metric[goal] <= bound {
				best = l
			}
		}
	}
	best.liked = len(f.likes) - len(f.dropped(&best.unit))
	return best
}

func meetsWants(list []look) bool {
	return slices.ContainsFunc(list, func(l look) bool { return l.unmet == 0 })
}
