package link_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
)

// The figures a link carries for readers without its edition are those of the
// quote, each under its own name.
func TestFrozenFiguresAreThoseOfTheQuote(t *testing.T) {
	d := quote.Begin(demo(), "cut-14000-158-gas", "", config.Date{Year: 2026, Month: 11, Day: 25})
	q, err := quote.Compute(demo(), d)
	require.NoError(t, err)
	text, err := link.Encode(q)
	require.NoError(t, err)
	_, f, err := link.Decode(demo().Cat, text)
	require.NoError(t, err)
	left, _ := q.Figure("weight.payload-left")
	payload, _ := q.Figure("weight.payload")
	require.Greater(t, payload.Value, left.Value+100, "the two cannot be taken for each other")
	require.NotEqual(t, q.Plan.EvenOdds, q.Plan.NineInTen)
	for _, c := range []struct {
		name     string
		want, is any
	}{
		{"edition", demo().Cat.ID + " " + demo().Cat.Edition, f.Edition},
		{"chassis", q.Chassis.Label, f.Chassis},
		{"module", q.Body.Label, f.Body},
		{"total", q.Total(), f.Total},
		{"price good through", q.Price.ValidUntil, f.Until},
		{"likely delivery (50 %)", q.Plan.EvenOdds, f.Even},
		{"safe date (90 %)", q.Plan.NineInTen, f.Safe},
		{"payload left, as every page shows it", quantity.US.Show(left.Value, quantity.Pound), quantity.US.Show(f.Payload,
			quantity.Pound)},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, c.is) })
	}
}
