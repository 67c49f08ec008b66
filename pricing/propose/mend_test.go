package propose_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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
	was, _ := q.Figure("weight.front-axle")
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
			text := propose.Effect(q, &offer.Unit, offer.Changes, nil, quantity.US)
			assert.Contains(t, text,
				fmt.Sprintf("Front axle to spare: %s → %s.", quantity.US.Show(was.Margin(), quantity.Pound),
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
