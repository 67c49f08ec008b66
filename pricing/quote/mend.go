package quote

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config/rules"
	"boxwright/pricing"
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
	besides := slices.DeleteFunc(slices.Clone(m.Changes), func(c rules.Change) bool { return slices.Contains(m.Drop, c.Option) })
	d := *q.Draft
	d.Unit = m.Unit
	s, err := priceAll(q.Edition, &d)
	if err != nil {
		return q.ChangeWords(besides)
	}
	return q.Effect(s.Total.Sub(q.Price.Total), besides)
}

// Effect words a change of the total and of what was filled in.
func (q *Quote) Effect(by pricing.Amount, changes []rules.Change) string {
	sign := ""
	if by.Sign() >= 0 {
		sign = "+"
	}
	return "Total " + sign + by.Show() + ". " + q.ChangeWords(changes)
}

// ChangeWords names what completing the unit added and took out.
func (q *Quote) ChangeWords(changes []rules.Change) string {
	const named = 5
	text := ""
	for _, side := range []struct {
		added bool
		words string
	}{{false, "Gives way: "}, {true, "Comes in: "}} {
		var names []string
		for _, c := range changes {
			if c.Added == side.added {
				names = append(names, q.Edition.Cat.LabelOf(c.Option))
			}
		}
		if len(names) == 0 {
			continue
		}
		more := ""
		if len(names) > named {
			more = fmt.Sprintf(" and %d more", len(names)-named)
			names = names[:named]
		}
		text += side.words + strings.Join(names, "; ") + more + ". "
	}
	return strings.TrimSpace(text)
}
