package weight

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
)

// What the maker of the chassis allows is a figure with its margin: each is met a pound
// or an inch on one side of the computed value and missed on the other, and rules nothing
// out beforehand.
func TestWhatTheMakerAllows(t *testing.T) {
	cat, u, as := prepared(t), typical(), people(175)
	ch := cat.ChassisByID(u.Chassis)
	free := Weigh(cat, u, as)
	none := len(Limits(cat, u, as))
	for _, c := range []struct {
		name, code string
		of         float64
		set        func(v float64)
		least      bool
	}{
		{"unloaded weight", "weight.curb", float64(free.Curb.TotalLb), func(v float64) { ch.CurbMostLb = quantity.Mass(v) }, false},
		{"its front share", "weight.curb-front", float64(free.Curb.FrontLb), func(v float64) { ch.CurbFrontMostLb = quantity.Mass(v) }, false},
		{"its rear share", "weight.curb-rear", float64(free.Curb.RearLb), func(v float64) { ch.CurbRearMostLb = quantity.Mass(v) }, false},
		{"height of the center", "weight.cg-height", float64(free.Gross.ZIn), func(v float64) { ch.CGMostIn = quantity.Length(v) }, false},
		{"least on the front axle", "weight.front-least", float64(free.Gross.FrontLb), func(v float64) { ch.FrontLeastLb = quantity.Mass(v) }, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, off := range []float64{-1, 1} {
				c.set(c.of + off)
				s := Weigh(cat, u, as)
				f := figure(t, s, c.code)
				assert.Equal(t, config.Rating, f.Basis)
				assert.InDelta(t, 1, f.Margin()*f.Margin(), 1e-3, "one off")
				assert.Equal(t, c.least == (off < 0), f.Met(), "%v", off)
				word := ".over"
				if c.least {
					word = ".short"
				}
				var found []string
				for _, x := range s.Findings {
					found = append(found, x.Code)
				}
				if f.Met() {
					assert.NotContains(t, found, c.code+word)
				} else {
					assert.Contains(t, found, c.code+word)
				}
			}
			assert.Len(t, Limits(cat, u, as), none)
			c.set(0)
			require.Equal(t, free.Figures, Weigh(cat, u, as).Figures, "not stated")
		})
	}
	ch.CGMostIn = free.Gross.ZIn + 5
	as.Limits = map[string]config.Limit{"weight.cg-height": {Value: float64(free.Gross.ZIn) - 1, Sense: config.AtMost,
		Basis: config.Purchaser, Source: "set by the purchaser"}}
	assert.False(t, figure(t, Weigh(cat, u, as), "weight.cg-height").Met(), "the stricter of two goes first")
}
