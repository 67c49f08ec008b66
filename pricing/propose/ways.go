package propose

import (
	"boxwright/config/rules"
	"boxwright/pricing/quote"
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
	return w
}
