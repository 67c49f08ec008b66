package weight

// Static stability: SSF = T/2h (nhtsa.dot.gov, Rollover, chapter V); the tilt
// test of NFPA 1901 4.13.1 is at 26.5 degrees, whose tangent is 0.49858.

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPublishedStability(t *testing.T) {
	assert.Equal(t, 1., SSF(70, 35))
	assert.InDelta(t, 26.5, TiltAngle(0.49858), 5e-4)
	assert.InDelta(t, 0.49858, math.Tan(26.5*math.Pi/180), 5e-6)
	// Fleet mean of full-size vans of model year 2003: 1.12 (TRID 763766). A
	// van of 67.4 in track would have its center 30.1 in up.
	assert.InDelta(t, 1.12, SSF(67.4, 30.1), 0.005)
	assert.Zero(t, SSF(70, 0))
}

// The figure of the weigh-up is SSF of the mean track and its own height.
func TestStabilityFigureAgrees(t *testing.T) {
	s := Weigh(prepared(t), typical(), people(175))
	h := figure(t, s, "weight.cg-height").Value
	assert.InDelta(t, SSF((68+76)/2., h), figure(t, s, "weight.ssf").Value, 1e-6)
}
