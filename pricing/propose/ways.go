package propose

import (
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing/quote"
	"cmp"
	"slices"
)

// Ways says why a thing cannot be chosen, and how it can be had nevertheless.
type Ways struct {
	Reasons []rules.Reason
	Mends   []rules.Mend
	Offers  []Offer // where it fits and changes much of what was filled in
}

// WaysTo answers for a chassis, a body or an option. What the rules allow with the
// customer's own choices needs no reason, but changes much of the rest.
func WaysTo(q *quote.Quote, id string) Ways {
	if q.State(id) == rules.Open && !q.Draft.Unit.Has(id) {
		return Ways{Offers: Offers(q, id)}
	}
	u, limits := &q.Draft.Unit, quote.Limits(q.Edition, q.Draft)
	w := Ways{Reasons: q.Edition.Rules.Why(u, limits, id), Mends: q.Edition.Rules.Mend(u, limits, id, nil)}
	for i := range w.Mends { // as the press leaves the unit: with what is standard where it can be
		m := &w.Mends[i]
		on := q.Draft.Clone()
		on.Unit = m.Unit
		ed := q.Edition.For(&m.Unit)
		if full, changes, ok := ed.Rules.Restore(&m.Unit, quote.Limits(ed, on)); ok {
			m.Unit, m.Changes = full, append(m.Changes, changes...)
		}
	}
	w.Mends = bestMends(q, w.Mends)
	return w
}

// bestMends puts the ways out that leave enough of everything first, and of these the
// ones that change least. Another chassis or module is offered only where nothing
// smaller helps.
func bestMends(q *quote.Quote, list []rules.Mend) []rules.Mend {
	u := &q.Draft.Unit
	swaps := func(m rules.Mend) bool { return m.Unit.Chassis != u.Chassis || m.Unit.Body != u.Body }
	if slices.ContainsFunc(list, func(m rules.Mend) bool { return !swaps(m) }) {
		list = slices.DeleteFunc(list, swaps)
	}
	risk := map[int]bool{}
	order := make([]int, len(list))
	for i := range list {
		order[i] = i
		risk[i] = Risk(q, &list[i].Unit, quantity.US) != ""
	}
	slices.SortStableFunc(order, func(a, b int) int {
		count := func(i int) int { return len(list[i].Drop) + len(list[i].Changes) }
		if risk[a] != risk[b] {
			return map[bool]int{true: 1, false: -1}[risk[a]]
		}
		return cmp.Or(cmp.Compare(list[a].Weight, list[b].Weight), cmp.Compare(count(a), count(b)))
	})
	out := make([]rules.Mend, len(list))
	for i, at := range order {
		out[i] = list[at]
	}
	return out
}
