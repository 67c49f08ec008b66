package body

// Sizes of tires as their makers' public tables print them, and angles and circles
// worked by hand.

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
)

func TestPublishedTireSizes(t *testing.T) {
	for _, c := range []struct {
		size              string
		diameter, section float64
		reason            string
	}{
		{"LT235/85R16", 31.7, 9.3, "31.7 in: light-truck size tables, common to every maker"},
		{"LT245/75R16 E", 30.5, 9.6, "30.5 in: the same"},
		{"LT225/75R16 E", 29.3, 8.9, "29.3 in: the same"},
		{"225/70R19.5 G", 31.9, 8.9, "31.9 in: medium-truck size tables"},
		{"265/70R19.5", 34.1, 10.4, "34.1 in: the same"},
	} {
		t.Run(c.size, func(t *testing.T) {
			d, s, ok := TireSize(c.size)
			assert.True(t, ok)
			assert.InDelta(t, c.diameter, d, 0.06, c.reason)
			assert.InDelta(t, c.section, s, 0.06, c.reason)
		})
	}
	d, s, ok := TireSize("10.00-20")
	assert.False(t, ok, "a size of another form")
	assert.Equal(t, []float64{usualTireIn, usualSectionIn}, []float64{d, s})
}

func TestRamp(t *testing.T) {
	for _, c := range []struct {
		d, h, r, want float64
		reason        string
	}{
		{30, 0, 15, 0, "a point on the ground leaves none"},
		{1000, 100, 15, 5.74, "far off it is the slope to it: atan(100/1000) = 5.71, and a little for the tire"},
		{36, 16, 15, 26.2, "asin(15/36.01) + atan(1/36) = 24.61 + 1.59"},
		{15, 15, 15, 90, "at the tire's own face it is a wall"},
		{-3, 10, 15, 90, "not beyond the axle"},
		{36, 10, 0, 90, "no tire"},
	} {
		t.Run(c.reason, func(t *testing.T) { assert.InDelta(t, c.want, Ramp(c.d, c.h, c.r), 0.1) })
	}
	// The ramp touches the tire: the point's line at that slope is a radius away from the hub.
	for _, d := range []float64{20, 36, 60, 110} {
		for _, h := range []float64{4, 10, 18} {
			a := Ramp(d, h, 15) * math.Pi / 180
			hub := math.Abs(math.Sin(a)*d + math.Cos(a)*(15-h))
			assert.InDelta(t, 15, hub, 1e-9, "%v in ahead, %v in up", d, h)
		}
	}
}

func TestTurningCircle(t *testing.T) {
	ch := &config.Chassis{WheelbaseIn: 158, TrackFrontIn: 69.4, SteerDeg: 39.6,
		FrontTires: config.Tires{Size: "LT225/75R16 E"}}
	// 158 / tan 39.6 = 191.0; + 69.4 = 260.4; with 158 across: 304.6; + 4.4 of tire: 309 in, twice: 51.5 ft.
	assert.InDelta(t, 51.5, float64(TurningFt(ch)), 0.05)
	ch.SteerDeg, ch.TurningFt = 0, 48
	assert.EqualValues(t, 48, TurningFt(ch), "as stated where no cut is")
	ch.TurningFt = 0
	assert.Zero(t, TurningFt(ch), "not known")
}
