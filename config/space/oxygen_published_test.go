package space

// What the oxygen figures were checked against:
//
//	O-1  respiratorytherapyzone.com: E cylinder, factor 0.28 L/psi, 1,000 psi,
//	     2 L/min: 140 min. (The source writes this out as 2 hr 18 min; it is
//	     2 h 20 min.)
//	O-2  pamedic.org/node/6970: M cylinder, 500 psi, 6 L/min: 130 min, which is
//	     500 x 1.56 / 6; the factor 1.56 L/psi is recalled and reproduces it.
//
// Neither takes off a residual pressure.

import (
	"math"
	"testing"

	"boxwright/config"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPublishedDurations(t *testing.T) {
	for _, tt := range []struct {
		reason                  string
		factor, psi, flow, want float64
	}{
		{"O-1", 0.28, 1000, 2, 140},
		{"O-2", 1.56, 500, 6, 130},
	} {
		assert.InDelta(t, tt.want, Usable(tt.factor, tt.psi, 0)/tt.flow, 1e-9, tt.reason)
	}
}

func TestReserveShortensIt(t *testing.T) {
	assert.InDelta(t, 112, Usable(0.28, 1000, ReservePSI)/2, 1e-9, "O-1 with 200 psi kept: 800 x 0.28 / 2")
	assert.Zero(t, Usable(0.28, 150, ReservePSI), "below the reserve nothing is counted on")
	for _, bad := range [][2]float64{{-1, 1}, {1, -1}, {math.NaN(), 1}, {1, math.Inf(1)}} {
		assert.Zero(t, Usable(bad[0], bad[1], 0), "%v", bad)
	}
}

func TestUnitOxygen(t *testing.T) {
	u := unit()
	u.Set(config.Pick{Option: "oxygen-m", Qty: 2})
	s := Measure(fixture(t), u, nil)
	f, _ := s.Figure("space.oxygen")
	assert.InDelta(t, 2*1.56*2200, f.Value, 1e-9, "two M cylinders, full: 6,864 L, each within the published 3,000 "+
		"to 3,450 L (reference.com)")
	h, ok := s.Figure("space.oxygen-hours")
	require.True(t, ok)
	assert.InDelta(t, 2*1.56*2000/15/60, h.Value, 1e-9)
	assert.Equal(t, "Oxygen at 15 L/min, down to 200 psi", h.Label)
	_, ok = s.Figure("space.oxygen-hours-each")
	assert.False(t, ok, "one patient has the flow alone")

	cat := fixture(t)
	cot := cat.OptionByID("cot")
	second := cot.Seats[0]
	second.ID = "second"
	cot.Seats = append(cot.Seats, second)
	u.Set(config.Pick{Option: "cot", Qty: 1})
	s = Measure(cat, u, nil)
	h, _ = s.Figure("space.oxygen-hours")
	assert.Equal(t, "Oxygen for one patient at 15 L/min, down to 200 psi", h.Label)
	each, ok := s.Figure("space.oxygen-hours-each")
	require.True(t, ok)
	assert.Equal(t, "Oxygen for 2 patients at 15 L/min each, down to 200 psi", each.Label)
	assert.InDelta(t, 2*1.56*2000/30/60, each.Value, 1e-9, "two flows empty the cylinders in half the time")
	assert.Empty(t, s.AirCylinders)
	o := cat.OptionByID("oxygen-m")
	o.Air, o.Oxygen = o.Oxygen, nil
	s = Measure(cat, u, nil)
	require.Len(t, s.AirCylinders, 1, "what the hours of medical air are reckoned from")
	assert.InDelta(t, 2*1.56*2000, s.AirCylinders[0].Usable, 1e-9)
	assert.Empty(t, s.Oxygen.Cylinders)
	none := Measure(fixture(t), unit(), nil)
	_, ok = none.Figure("space.oxygen-hours")
	assert.False(t, ok, "no oxygen, no hours")
}
