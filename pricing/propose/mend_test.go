package propose_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// What is printed beside a way out is what the quote shows once it is taken.
func TestEffectsAreWhatComesOfThem(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", quotetest.Today)
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	seen, moved := 0, 0
	for _, o := range ed.Cat.Options {
		if d.Unit.Has(o.ID) || q.State(o.ID) != rules.Open || o.Parts == nil {
			continue
		}
		offers, _ := propose.Offers(q, o.ID)
		for _, offer := range offers {
			on := d.Clone()
			on.Unit = offer.Unit
			then, err := quote.Compute(ed, on)
			require.NoError(t, err)
			is, _ := then.Figure("weight.front-axle")
			for _, code := range []string{"weight.rear-axle", "weight.gross"} {
				if f, _ := then.Figure(code); f.Margin() < is.Margin() {
					is = f
				}
			}
			was, _ := q.Figure(is.Code)
			name, _, _ := strings.Cut(is.Label, ",")
			text := propose.Effect(q, &offer.Unit, offer.Changes, nil, quantity.US).String()
			assert.Contains(t, text,
				fmt.Sprintf("%s to spare: %s → %s.", name, quantity.US.Show(was.Margin(), quantity.Pound),
					quantity.US.Show(is.Margin(), quantity.Pound)), o.Label)
			assert.Contains(t, text, "Delivery "+then.Plan.EvenOdds.Long()+", ", o.Label)
			assert.Contains(t, text, then.Price.Total.Sub(q.Price.Total).Show()+". ", o.Label)
			seen++
			switch days := q.Plan.EvenOdds.DaysUntil(then.Plan.EvenOdds); {
			case days == 0:
				assert.Contains(t, text, ", as now.", o.Label)
			case days > 1:
				assert.Contains(t, text, fmt.Sprintf(", %d days later.", days), o.Label)
				moved++
			}
		}
		if seen > 40 {
			break
		}
	}
	assert.Greater(t, seen, 20)
	assert.Positive(t, moved, "some of them put the delivery off")
}

// Where no figure is asked for, the load with the least to spare is told.
func TestTheScarcestLoadIsTold(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct{ chassis, body, says string }{
		{"cut-14500-158-gas", "mod-146-72", "Front axle to spare: "},
		{"cab-14000-169-4x4-diesel", "mod-153-72", "Gross weight to spare: "},
	} {
		t.Run(c.chassis, func(t *testing.T) {
			d := quote.Begin(ed, c.chassis, c.body, quotetest.Today)
			q, err := quote.Compute(ed, d)
			require.NoError(t, err)
			on := d.Unit.Clone()
			on.Set(config.Pick{Option: "spr-bracket", Qty: 1})
			assert.Contains(t, propose.Effect(q, &on, nil, nil, quantity.US).String(), c.says)
		})
	}
}

// A way out for a unit that is over a limit says so where it leaves nothing to spare, and stands behind
// those that leave something.
func TestNothingToSpareIsSaidOfAMend(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "cab-14000-169-4x4-diesel", "mod-153-72", quotetest.Today)
	d.Unit.Carried = nil
	gear := d.Unit.AddOwn(config.Equipment{Label: "Gear", MassLb: 1, LengthIn: 1, WidthIn: 1, HeightIn: 1})
	loaded := func(over float64) *quote.Quote {
		on := d.Clone()
		on.Unit.OwnItems[0].MassLb = 500
		on.Unit.Carried = []config.Carried{{Equipment: gear, Qty: 4}}
		q, err := quote.Compute(ed, on)
		require.NoError(t, err)
		is, _ := q.Figure("weight.gross")
		on.Unit.OwnItems[0].MassLb += quantity.Mass(is.Margin()+over) / 4
		q, err = quote.Compute(ed, on)
		require.NoError(t, err)
		return q
	}
	over, none, some := loaded(200), loaded(0), loaded(-1000)
	text, nothing := propose.Risk(over, &none.Draft.Unit, quantity.US)
	assert.Contains(t, text, "Only just: ")
	assert.Contains(t, text, "Gross weight, full load: 0 lb to spare, and a chance of 50 % of being over")
	_, little := propose.Risk(over, &some.Draft.Unit, quantity.US)
	assert.Less(t, little, nothing)
	text, _ = propose.Risk(over, &over.Draft.Unit, quantity.US)
	assert.Empty(t, text, "what stays over is told elsewhere")
}
