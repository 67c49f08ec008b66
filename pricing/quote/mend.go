package quote

import (
	"slices"
	"strings"

	"boxwright/config/rules"
)

// MendWords is the label of a way out: what pressing it gives up.
func (q *Quote) MendWords(m *rules.Mend) string {
	var parts []string
	for _, id := range m.Drop {
		if other := m.Replace[id]; other != "" {
			parts = append(parts, q.Edition.Cat.LabelOf(other)+" instead of "+q.Edition.Cat.LabelOf(id))
		} else {
			parts = append(parts, "Give up "+q.Edition.Cat.LabelOf(id))
		}
	}
	if len(parts) == 0 {
		return "Take it"
	}
	return strings.Join(parts, "; ")
}

// MendEffect says what a way out does to the price and to what was filled in.
func (q *Quote) MendEffect(m *rules.Mend) string {
	text := ""
	d := *q.Draft
	d.Unit = m.Unit
	if s, err := priceAll(q.Edition, &d); err == nil {
		by := s.Total.Sub(q.Price.Total)
		sign := ""
		if by.Sign() >= 0 {
			sign = "+"
		}
		text = "Total " + sign + by.Show() + "."
	}
	var added, out []string
	for _, c := range m.Changes {
		if slices.Contains(m.Drop, c.Option) {
			continue
		}
		if c.Added {
			added = append(added, q.Edition.Cat.LabelOf(c.Option))
		} else {
			out = append(out, q.Edition.Cat.LabelOf(c.Option))
		}
	}
	if len(added) > 0 {
		text += " Also added: " + strings.Join(added, "; ") + "."
	}
	if len(out) > 0 {
		text += " Gives way: " + strings.Join(out, "; ") + "."
	}
	return text
}
