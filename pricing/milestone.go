package pricing

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"boxwright/config"
	"boxwright/pricing/money"
)

var hundred = money.PercentOf(decimal.NewFromInt(100))

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
		if m.Percent.Sign() <= 0 {
			add("range", w+" percent", "%s must be above zero", m.Percent)
		}
		sum = sum.Add(m.Percent)
	}
	if len(list) > 0 && !sum.Equal(hundred) {
		add("sum", "milestones", "the percentages make up %s, not 100", sum)
	}
}
