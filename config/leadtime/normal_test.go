package leadtime_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"

	"boxwright/config/leadtime"
)

// Against gonum v0.17.0 (stat/distuv) over the whole useful range.
func TestNormalAgainstGonum(t *testing.T) {
	for z := -5.0; z <= 5; z += .1 {
		p := leadtime.NormalWithin(z)
		assert.InDelta(t, distuv.UnitNormal.CDF(z), p, 1e-14)
		if math.Abs(z) < 4.5 {
			assert.InDelta(t, z, leadtime.NormalDeviate(p), 1e-9, "one undoes the other")
		}
	}
	assert.InDelta(t, 1.2816, leadtime.NormalDeviate(.9), 5e-5)
	assert.False(t, math.IsInf(leadtime.NormalDeviate(1), 0), "certainty is brought into range")
	assert.False(t, math.IsInf(leadtime.NormalDeviate(0), 0))
	assert.Zero(t, leadtime.NormalWithin(math.NaN()), "no number, no chance")
}
