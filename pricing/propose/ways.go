package propose

import (
	"cmp"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/pricing/quote"
)

// Ways says why a thing cannot be chosen, and how it can be had nevertheless.
type Ways struct {
	Reasons []rules.Reason
	Mends   []rules.Mend
	Offers  []Offer // where it fits and changes much of what was filled in
	Yields  []Yield // where nothing helps while every must is kept
	More    bool    // there may be more of these; the work allowed did not suffice to tell
}

// waysBudget is what reasons and ways out may take each, as rules.AnswerWithin has it.
// On the demonstration they take up to two thirds of it, most often a fiftieth.
const waysBudget = 2000

// Yield is how a thing could be had if the customer gave way on musts that stand
// against it: they become wants.
type Yield struct {
	Needs   []string // ids of the needs
	Labels  []string // what each asks for: "Fuel diesel"
	Unit    config.Unit
	Changes []rules.Change
}

// Decides are the codes of the limits that stand in the way.
func (w *Ways) Decides() []string {
	var out []string
	for _, r := range w.Reasons {
		for _, l := range r.Limits {
			if !slices.Contains(out, l.Code) {
				out = append(out, l.Code)
			}
		}
	}
	return out
}

// WaysTo answers for a chassis, a body or an option. What the rules allow with the
// customer's own choices needs no reason, but changes much of the rest.
func WaysTo(q *quote.Quote, id string) Ways {
	q.Judge(id)
	if q.State(id) == rules.Open && !q.Draft.Unit.Has(id) {
		offers, all := Offers(q, id)
		return Ways{Offers: offers, More: !all}
	}
	u, limits := &q.Draft.Unit, quote.Limits(q.Edition, q.Draft)
	var w Ways
	var moreReasons, moreMends bool
	e := q.Edition.Rules
	e.Afresh()
	w.Reasons, moreReasons = e.WhyWithin(u, limits, id, waysBudget)
	w.Mends, moreMends = e.MendWithin(u, limits, id, nil, waysBudget)
	w.More = moreReasons && len(w.Reasons) == 0 || moreMends
	for i := range w.Mends {
		m := &w.Mends[i]
		m.Unit, m.Changes = restored(q, q.Draft, m)
	}
	if w.Mends = bestMends(q, w.Mends); len(w.Mends) == 0 {
		var more bool
		w.Yields, more = yields(q, &w, id)
		w.More = w.More || more
	}
	return w
}

// yields looks for the way to a thing that opens when the musts which stand against
// it are wants: those named by the reasons, and those that chassis and body break. It
// reports whether more work may show one.
func yields(q *quote.Quote, w *Ways, id string) (list []Yield, more bool) {
	d := q.Draft.Clone()
	cat := q.Edition.Cat
	on := d.Unit.Clone()
	switch {
	case cat.ChassisByID(id) != nil:
		on.Chassis = id
	case cat.BodyByID(id) != nil:
		on.Body = id
	}
	var y Yield
	give := func(need string) {
		if need != id && !slices.Contains(y.Needs, need) && d.Needs.IsMust(cat, need) {
			y.Needs, y.Labels = append(y.Needs, need), append(y.Labels, q.LabelOfNeed(quote.CodeOfNeed(cat, need)))
		}
	}
	for _, m := range d.Needs.Missed(q.Edition.For(&on).Cat, &on) {
		if m.Never && !m.Want {
			give(m.ID)
		}
	}
	for _, code := range w.Decides() {
		if need, is := quote.NeedOfCode(code); is {
			give(need)
		}
	}
	for _, need := range y.Needs {
		d.Needs.GiveWay(cat, need)
	}
	if len(y.Needs) == 0 {
		return nil, false
	}
	mends, more := q.Edition.Rules.MendWithin(&d.Unit, quote.Limits(q.Edition, d), id, nil, waysBudget)
	if mends = bestMends(q, mends); len(mends) == 0 {
		return nil, more
	}
	y.Unit, y.Changes = restored(q, d, &mends[0])
	return []Yield{y}, false
}

// restored is the unit of a way out as a press leaves it: with what is standard
// where it can be. d has the needs that it keeps.
func restored(q *quote.Quote, d *quote.Draft, m *rules.Mend) (config.Unit, []rules.Change) {
	on := d.Clone()
	on.Unit = m.Unit
	ed := q.Edition.For(&m.Unit)
	full, changes, ok := ed.Rules.Restore(&m.Unit, quote.Limits(ed, on))
	if !ok {
		full, changes = m.Unit, nil
	}
	return fewest(ed, d, full, append(m.Changes, changes...))
}

// Words is what the press says that lets the needs give way.
func (y *Yield) Words() string {
	if len(y.Labels) == 1 {
		return "Make it a want, no must: " + y.Labels[0]
	}
	return "Make them wants, no musts: " + strings.Join(y.Labels, "; ")
}

// bestMends puts the ways out that leave enough of everything first, then those with the
// least chance of missing a limit; of alike ones the ones that change least, the cheapest
// of these. Another chassis or module is offered only where nothing smaller helps.
func bestMends(q *quote.Quote, list []rules.Mend) []rules.Mend {
	u := &q.Draft.Unit
	swaps := func(m rules.Mend) bool { return m.Unit.Chassis != u.Chassis || m.Unit.Body != u.Body }
	if slices.ContainsFunc(list, func(m rules.Mend) bool { return !swaps(m) }) {
		list = slices.DeleteFunc(list, swaps)
	}
	risk, price := map[int]int{}, map[int]pricing.Amount{}
	order := make([]int, len(list))
	for i := range list {
		order[i] = i
		risk[i] = riskOf(q, &list[i].Unit)
		on := *q.Draft
		on.Unit = list[i].Unit
		if s, err := quote.PriceAll(q.Edition.For(&on.Unit), &on); err == nil {
			price[i] = s.Total
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		count := func(i int) int { return len(list[i].Drop) + len(list[i].Changes) }
		return cmp.Or(cmp.Compare(risk[a], risk[b]), cmp.Compare(list[a].Weight, list[b].Weight),
			cmp.Compare(count(a), count(b)), price[a].Cmp(price[b]))
	})
	out := make([]rules.Mend, len(list))
	for i, at := range order {
		out[i] = list[at]
	}
	return out
}
