package pricing

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"boxwright/config"
	"boxwright/pricing/money"
)

var hundred = money.PercentOf(decimal.NewFromInt(100))

// due says when a payment is due on an order with vans, with modules or with both.
func (m *Milestone) due(vans, modules bool) string {
	switch {
	case m.Van == "" || !vans:
		return m.Label
	case !modules:
		return m.Van
	}
	return m.Label + ", or " + strings.ToLower(m.Van[:1]) + m.Van[1:]
}

// Agreed are the payments of the book as terms of their own, for a van or for a module.
func (b *Book) Agreed(van bool) []Milestone {
	list := slices.Clone(b.Milestones)
	for i := range list {
		m := &list[i]
		m.Label, m.Van = m.due(van, !van), ""
	}
	return list
}

// checkMilestones demands that the payments of a plan make up the whole price.
func checkMilestones(add func(code, where, format string, args ...any), list []Milestone) {
	var sum Percent
	for i, m := range list {
		w := fmt.Sprintf("milestones[%d] %q", i, m.ID)
		if !config.ValidID(m.ID) {
			add("id", w, "an id is 1 to 48 small letters, digits and hyphens, beginning with a letter or digit")
		}
		if strings.TrimSpace(m.Label) == "" || len(m.Label) > maxText {
			add("missing", w+" label", "says when the payment is due, in at most %d bytes", maxText)
		}
		if len(m.Van) > maxText {
			add("range", w+" van", "is at most %d bytes", maxText)
		}
		if m.Percent.Sign() <= 0 {
			add("range", w+" percent", "%s must be above zero", m.Percent)
		}
		sum = sum.Add(m.Percent)
	}
	if len(list) > 0 && !sum.Equal(hundred) {
		add("sum", "milestones", "the percentages make up %s, not 100", sum)
	}
}
