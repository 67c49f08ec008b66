package catalogue_test

import (
	"slices"
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

// The walkway that a body states is what its model leaves between the cot and a bench 22 in
// wide, and a cot lies where its mount has it.
func TestWalkwayIsThatOfTheModel(t *testing.T) {
	cat := read(t)
	bench, mount := cat.OptionByID("bench-72"), cat.OptionByID("mount-latch")
	for i := range cat.Bodies {
		b := &cat.Bodies[i]
		if b.Existing || slices.Contains(b.Tags, "not-ambulance") {
			continue
		}
		for k := range cat.Chassis {
			ch := &cat.Chassis[k]
			if (ch.Cab == "van") != (b.Kind == "van") {
				continue
			}
			m := body.Bare(ch, b)
			cot, side := m.PartsOf(mount)[0], m.PartsOf(bench)[0]
			assert.InDelta(t, float64(b.AisleIn), side.Y0-cot.Y1, 0.1, "%s with %s", ch.ID, b.ID)
		}
	}
	for _, id := range []string{"mount-latch", "mount-crash", "mount-power", "mount-deck"} {
		at := cat.OptionByID(id).Seats[0]
		for _, o := range cat.Options {
			if o.Group == "cot" && o.Mass.Lb != 0 {
				assert.Equal(t, []any{at.XIn, at.YIn}, []any{o.Mass.XIn, o.Mass.YIn}, "%s on %s", o.ID, id)
			}
		}
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
