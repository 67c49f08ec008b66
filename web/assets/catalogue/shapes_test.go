package catalogue_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config/body"
	"boxwright/config/rules"
)

// In the demonstration nothing stands where something else does: on no chassis with a
// body that the rules allow, with no options that can be had together.
func TestNothingStandsInAnother(t *testing.T) {
	for _, f := range rules.Lint(read(t)) {
		assert.NotEqual(t, "catalogue.collision", f.Code, f.Text)
	}
}

// What a body is called is what it measures: the headroom stated is that of its section.
func TestHeadroomStatedIsBuilt(t *testing.T) {
	cat := read(t)
	for i := range cat.Bodies {
		b := &cat.Bodies[i]
		assert.InDelta(t, float64(b.HeadroomIn), body.HeadroomIn(b), 0.25, b.ID)
		assert.GreaterOrEqual(t, body.HeadroomIn(b), float64(b.HeadroomIn), b.ID)
	}
	for i := range cat.Chassis {
		ch := &cat.Chassis[i]
		if ch.Cab != "van" {
			b := cat.BodyByID(ch.UsualBody)
			assert.GreaterOrEqual(t, float64(ch.FloorHeightIn-ch.FrameHeightIn), 2+body.FloorIn(b),
				"%s: 2 in of mounts and the floor stand on the frame", ch.ID)
		}
	}
}
