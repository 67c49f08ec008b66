package quote_test

import (
	"cmp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/standards"
	"boxwright/pricing/money"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/assets/catalogue"
)

// Budget and needed day are wants: they rule nothing out. Within the wants what would
// break them is ruled out, so that proposals can look there first.
func TestBudgetAndDayRuleNothingOut(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	d := quote.Begin(ed, "", "", config.Date{Year: 2026, Month: 11, Day: 25})
	cheap, _, ok := propose.Complete(ed, d, propose.Cheapest)
	require.True(t, ok)
	d.Unit = cheap
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	within := func(id string) rules.State {
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		assert.Equal(t, rules.Open, q.State(id), "what is only wanted rules nothing out")
		answer := ed.Rules.AnswerWithin(&d.Unit, quote.Wanted(ed, d), 0)
		return answer.State(id)
	}
	require.Equal(t, rules.Open, within("mount-power"), "without wants the power-load mount can be had")
	d.Terms.Budget = q.Price.Total.Add(money.Dollars(5000))
	assert.Equal(t, rules.RuledOut, within("mount-power"), "43,000 over a budget that leaves 5,000")
	why, _ := ed.Rules.WhyWithin(&d.Unit, quote.Wanted(ed, d), "mount-power", 0)
	require.NotEmpty(t, why)
	require.NotEmpty(t, why[0].Limits)
	assert.Equal(t, "price.total", why[0].Limits[0].Code)

	d.Terms.Budget = money.Amount{}
	d.Unit.NeededBy = q.Plan.NineInTen.AddDays(7)
	assert.Equal(t, rules.RuledOut, within("cot-incubator"), "its part alone takes longer than the day allows")
}

// A state's text that was read takes part in what can still be chosen; what is
// only remembered of a federal one does not.
func TestRoomRulesOut(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "cut-12500-138-gas", "mod-132-68", quotetest.Today)
	compute := func() *quote.Quote {
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		return q
	}
	require.Equal(t, rules.Open, compute().State("cot-power-wide"))
	d.Unit.RuleSet = standards.Join(standards.KKK, standards.Nevada)
	q := compute()
	require.Equal(t, rules.RuledOut, q.State("cot-power-wide"), "it takes 3 in of a walkway of 20 in")
	why, _ := ed.Rules.WhyWithin(&d.Unit, quote.Limits(ed, d), "cot-power-wide", 0)
	require.NotEmpty(t, why)
	assert.Equal(t, "Walkway: 17.0 in with this, 1.0 in short of 18.0 in.",
		q.Words(why[0], quantity.US))

	d = quote.Begin(ed, "van-9500-148-gas", "", quotetest.Today)
	require.Equal(t, rules.Open, compute().State("ceil-quiet"),
		"58.5 in of headroom miss what is remembered of the federal 60 in")
	d.Unit.Own = []config.OwnLimit{{Figure: "space.headroom", Value: 60}}
	require.Equal(t, rules.Open, compute().State("ceil-quiet"),
		"as with a limit the purchaser sets, a decision is asked for")
}

// What a unit has to settle is said once, and stops it only where a text that
// was read, a rating or a rule does.
func TestStandardsAreSaidOnce(t *testing.T) {
	ed := quotetest.Demo(t)
	said, stopped := 0, 0
	for _, set := range standards.Sets() {
		for _, chassis := range []string{"cut-12500-138-gas", "van-9500-148-gas", "med-26000-189-diesel"} {
			d := quote.Begin(ed, chassis, "", quotetest.Today)
			d.Unit.RuleSet = standards.Join(standards.KKK, set.ID)
			d.Unit.Set(config.Pick{Option: "ceil-quiet", Qty: 1})
			d.Unit.OccupantLb = 140
			q, err := quote.Compute(ed, d)
			require.NoError(t, err)
			type line struct {
				figure string
				limit  float64
			}
			seen := map[line]string{}
			for _, f := range q.Findings {
				if f.Severity == config.Stop {
					stopped++
					assert.NotContains(t, []config.Basis{config.FromMemory, config.CommonPractice}, f.Basis,
						"%s on %s: %s", set.ID, chassis, f.Text)
				}
				assert.NotEqual(t, "rules.conflict", f.Code, "%s on %s: %s", set.ID, chassis, f.Text)
				if f.Figure == nil || !strings.HasPrefix(f.Code, "space.") && !strings.HasPrefix(f.Code, "standard.") {
					continue
				}
				said++
				at := line{f.Figure.Code, f.Figure.Limit}
				assert.Empty(t, seen[at], "%s on %s: %s", set.ID, chassis, f.Text)
				seen[at] = f.Text
			}
			rank := map[config.Severity]int{config.Warn: 1, config.Note: 2}
			sorted := append([]config.Finding{}, q.Findings...)
			slices.SortStableFunc(sorted, func(a, b config.Finding) int {
				return cmp.Compare(rank[a.Severity], rank[b.Severity])
			})
			assert.Equal(t, sorted, q.Findings, "what stops stands first")
		}
	}
	assert.Greater(t, said, 20)
	assert.Positive(t, stopped, "some text that was read is missed")
}
