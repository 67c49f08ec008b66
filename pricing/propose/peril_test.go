package propose

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
)

// What leaves less than is uncertain in the figure itself is a risk, and some tenths of a
// pound do not decide how great a one.
func TestPeril(t *testing.T) {
	axle := func(value, chance float64) config.Figure {
		return config.Figure{Value: value, Low: value - 250, High: value + 250, Limit: 5000, Sense: config.AtMost,
			Unit: "lb", Basis: config.Rating, Chance: chance}
	}
	exact := config.Figure{Value: 34.8, Low: 34.8, High: 34.8, Limit: 35, Sense: config.AtMost, Basis: config.Rating}
	from := axle(4999.5, 0.498)
	from.Basis = config.FromMemory
	for _, c := range []struct {
		name string
		f    config.Figure
		want int
	}{
		{"more than is uncertain", axle(4700, 0.01), 0},
		{"a little less than is uncertain", axle(4770, 0.036), 4},
		{"0.5 lb", axle(4999.5, 0.498), 50},
		{"0.4 lb is no worse", axle(4999.6, 0.499), 50},
		{"0.6 lb is no better", axle(4999.4, 0.498), 50},
		{"over", axle(5100, 0.78), 78},
		{"next to nothing of an exact figure", exact, 50},
		{"a limit that nobody read", from, 0},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, peril(&c.f)) })
	}
}
