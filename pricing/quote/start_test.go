package quote_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/standards"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// Every chassis of the demonstration catalogue must give a new unit that can
// be issued as it stands.
func TestNewUnitsCanBeIssued(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	for i := range ed.Cat.Chassis {
		d := quote.Begin(ed, ed.Cat.Chassis[i].ID, "", config.Date{Year: 2026, Month: 11, Day: 25})
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		for _, f := range q.Findings {
			assert.NotEqual(t, config.Stop, f.Severity, "%s: %s %s", d.Unit.Chassis, f.Code, f.Text)
		}
	}
}

// The usual pairs of the demonstration are declared to the rule set they begin with, and
// no clause of it is missed; a declaration of a unit that misses one stops the quote.
func TestUsualPairsMeetWhatTheyAreDeclaredTo(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	day := config.Date{Year: 2026, Month: 11, Day: 25}
	for i := range ed.Cat.Chassis {
		q, err := quote.Compute(ed, quote.Begin(ed, ed.Cat.Chassis[i].ID, "", day))
		require.NoError(t, err)
		assert.True(t, q.Draft.Unit.Has("doc-declaration"), q.Chassis.Label)
		for _, v := range q.Verdicts {
			assert.NotEqual(t, standards.NotMet, v.Outcome, "%s: %s", q.Chassis.Label, v.Title)
		}
	}
	q, err := quote.Compute(ed, quote.Begin(ed, "cut-14500-158-gas", "", day))
	require.NoError(t, err)
	assert.Empty(t, q.Misdeclared())
}

// A unit that is declared and misses a clause is not signed, though a number from memory
// stops no unit; the purchaser's own number settles it, and so does leaving the declaration
// out.
func TestADeclarationThatIsNotKept(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	begin := func() *quote.Draft {
		return quote.Begin(ed, "cut-14500-158-gas", "mod-164-72", config.Date{Year: 2026, Month: 11, Day: 25})
	}
	d := begin()
	require.True(t, d.Unit.Has("doc-declaration"))
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	assert.Contains(t, q.Misdeclared(), "does not meet: Overall height")
	assert.False(t, q.Stopped(), "the unit itself can be built")

	d = begin()
	d.Unit.Own = []config.OwnLimit{{Figure: "space.height-all", Value: 120}}
	q, err = quote.Compute(ed, d)
	require.NoError(t, err)
	assert.Empty(t, q.Misdeclared())

	d = begin()
	d.Unit.Drop("doc-declaration")
	q, err = quote.Compute(ed, d)
	require.NoError(t, err)
	assert.Empty(t, q.Misdeclared())
}

// Curb weights of finished units as the trade expects them, from memory: a demonstration
// beyond these bounds teaches wrong weights. Front is the least on the front axle, where
// one is expected.
func TestUsualPairsWeighWhatTheTradeExpects(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	for _, c := range []struct {
		name, chassis, body string
		low, high, front    float64
	}{
		{"Type II", "van-9500-148-gas", "van-60", 7200, 7900, 0},
		{"Type III", "cut-14000-158-gas", "mod-146-68", 10300, 11000, 0},
		{"Type III-AD", "cut-14500-158-gas", "mod-153-72", 10800, 11500, 0},
		{"Type I, gasoline", "cab-14000-165-gas", "mod-146-68", 11200, 11800, 4300},
		{"Type I-AD, 4x4 diesel", "cab-17500-169-4x4-diesel", "mod-153-72", 13000, 13900, 0},
		{"medium, 19,500 lb", "med-19500-175-diesel", "mod-164-72", 15500, 17000, 0},
		{"medium, 26,000 lb", "med-26000-189-diesel", "mod-180-74", 18000, 20500, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			q, err := quote.Compute(ed, quote.Begin(ed, c.chassis, c.body, config.Date{Year: 2026, Month: 11, Day: 25}))
			require.NoError(t, err)
			curb := q.Weight.Curb
			assert.GreaterOrEqual(t, float64(curb.TotalLb), c.low)
			assert.LessOrEqual(t, float64(curb.TotalLb), c.high)
			assert.GreaterOrEqual(t, float64(curb.FrontLb), c.front)
			t.Logf("%.0f lb, front %.0f, rear %.0f", curb.TotalLb, curb.FrontLb, curb.RearLb)
		})
	}
}
