package quote_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
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

// The usual pairs of the demonstration are sound: nothing has to be decided about them, bare
// and with what an advanced life support unit usually carries, and no wheel end has more
// than half its axle's rating.
func TestUsualPairsAreSound(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	usual := ed.Cat.DutyByID("als")
	for i := range ed.Cat.Chassis {
		ch := &ed.Cat.Chassis[i]
		for _, c := range []struct {
			name   string
			aboard []config.Aboard
		}{{"bare", nil}, {"equipped", usual.Aboard}} {
			t.Run(ch.ID+", "+c.name, func(t *testing.T) {
				d := quote.Begin(ed, ch.ID, "", config.Date{Year: 2026, Month: 11, Day: 25})
				for _, a := range c.aboard {
					d.Unit.Carried = append(d.Unit.Carried, config.Carried{Equipment: a.Equipment, Qty: a.Qty})
				}
				assume := standards.Assume(d.Unit.RuleSet, ed.Cat, &d.Unit)
				d.Unit.Carried = space.Suggest(ed.Cat, &d.Unit, func(v *config.Unit) space.Trim {
					g := weight.Weigh(ed.Cat, v, &assume).Gross
					return space.Trim{FrontLb: g.FrontLb, RearLb: g.RearLb, LeftLb: g.LeftLb, RightLb: g.RightLb,
						FrontLimitLb: ch.GAWRFrontLb, RearLimitLb: ch.GAWRRearLb}
				})
				q, err := quote.Compute(ed, d)
				require.NoError(t, err)
				for _, f := range q.Findings {
					assert.NotContains(t, []config.Severity{config.Stop, config.Warn}, f.Severity, "%s: %s", f.Code, f.Text)
				}
				for n, w := range q.Weight.Gross.Wheels {
					half := ch.GAWRFrontLb / 2
					if n >= 2 {
						half = ch.GAWRRearLb / 2
					}
					assert.LessOrEqual(t, w.Lb, half, w.Pos)
				}
			})
		}
	}
}
