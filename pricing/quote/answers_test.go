package quote_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// What a climate suits is a would-like: it stops nothing, but a unit that has none of
// it does not meet it.
func TestAUnitWithNothingThatSuitsTheClimateDoesNotMeetIt(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs.Climate = "cold"
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	for _, a := range q.Asks(quantity.US) {
		if a.ID != "climate" {
			continue
		}
		assert.False(t, a.Must)
		assert.Contains(t, a.Has, "0 of ")
		assert.Contains(t, a.Missed, "not in the unit")
		for _, f := range q.Findings {
			assert.NotEqual(t, quote.WantCode, f.Code)
		}
		return
	}
	t.Error("the climate is among what was asked for")
}
