package quote_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// Budget and needed day take part in what can still be chosen.
func TestBudgetAndDayRuleOut(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	d := quote.Begin(ed, "", "", config.Date{Year: 2026, Month: 11, Day: 25})
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	require.Equal(t, rules.Open, q.Answer.Of("mount-power"), "without limits the power-load mount can be had")

	cheap, _, ok := quote.Complete(ed, d, quote.Cheapest)
	require.True(t, ok)
	d.Unit = cheap
	q, err = quote.Compute(ed, d)
	require.NoError(t, err)
	d.Terms.Budget = q.Price.Total.Add(money.Dollars(5000))
	q, err = quote.Compute(ed, d)
	require.NoError(t, err)
	assert.Equal(t, rules.RuledOut, q.Answer.Of("mount-power"), "43,000 over a budget that leaves 5,000")
	why := ed.Rules.Why(&d.Unit, quote.Limits(ed, d), "mount-power")
	require.NotEmpty(t, why)
	require.NotEmpty(t, why[0].Limits)
	assert.Equal(t, "price.total", why[0].Limits[0].Code)

	d.Terms.Budget = money.Amount{}
	d.Unit.NeededBy = q.Plan.NineInTen.AddDays(7)
	q, err = quote.Compute(ed, d)
	require.NoError(t, err)
	assert.Equal(t, rules.RuledOut, q.Answer.Of("cot-incubator"), "its part alone takes longer than the day allows")
}
