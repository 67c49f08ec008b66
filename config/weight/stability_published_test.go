package weight

// Static stability: SSF = T/2h (nhtsa.dot.gov, Rollover, chapter V).

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPublishedStability(t *testing.T) {
	assert.Equal(t, 1., SSF(70, 35))
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
