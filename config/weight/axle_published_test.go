package weight

// Axle reactions and centers of gravity against published worked examples.
//
// BODY: a chassis body-builder manual, appendix B, pages 77 and 81
// (easymanua.ls/peterbilt/220/manual/63601).
// FAA: the method of FAA-H-8083-1 and of the Pilot's Handbook, as worked by
// flight-study.com, flightlearnings.com, humbleaviation.com (A-6,
// A-7) and runup.ca. For a truck the statics are the same.

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPublishedReactions(t *testing.T) {
	for _, c := range []struct {
		id                  string
		load, cg, wheelbase float64
		front, rear         float64
		digit               float64 // one in the last printed place
		reason              string
	}{
		// Printed Lf 38.86 is a misprint: it must sum to 100 with Lr.
		{"A-1, BODY p77", 100, 133, 214, 37.85, 62.14, 0.01, "the source cuts 62.1495 off after two places"},
		{"A-2, BODY p81", 14500, 168./2 + 72, 214, 3929.9, 10570, 0.1, "body 168 in, 72 in behind the front axle; the caption's 184.7 in is a misprint"},
	} {
		f, r := Reactions(c.load, c.cg, c.wheelbase)
		assert.InDelta(t, c.front, f, c.digit, "%s: %s", c.id, c.reason)
		assert.InDelta(t, c.rear, r, c.digit, "%s: %s", c.id, c.reason)
		assert.InDelta(t, c.load, f+r, 1e-9, c.id)
	}
	// Exact values of the same two, computed by hand.
	f, r := Reactions(100, 133, 214)
	assert.InDelta(t, 37.8505, f, 5e-5)
	assert.InDelta(t, 62.1495, r, 5e-5)
	f, r = Reactions(14500, 156, 214)
	assert.InDelta(t, 3929.91, f, 5e-3)
	assert.InDelta(t, 10570.09, r, 5e-3)
}

func TestPublishedCentersOfGravity(t *testing.T) {
	// 340 lb on the nose wheel, 78 in ahead of the mains, 2,006 lb in all:
	// center 13.2 in ahead of the mains, as printed.
	nose, _ := Reactions(2006, 78-13.2, 78)
	assert.InDelta(t, 340, nose, 2006*0.05/78, "A-3, FAA, to what its rounding leaves")

	// Load that is moved moves the center by what it adds behind.
	const wheelbase = 100
	moved := func(w, d, total float64) float64 { return Shift(w, d, wheelbase) * wheelbase / total }
	assert.InDelta(t, 78.5, 616000./8000+moved(100, 150-30, 8000), 1e-9, "A-4, FAA")
	assert.Equal(t, 2.13, math.Round(moved(180, 32, 2700)*100)/100, "A-6, FAA")
	assert.InDelta(t, 1.5, moved(192, 167-142, 3200), 1e-9, "A-7, FAA")
	assert.Equal(t, 2.04, math.Round(moved(100, 50, 2450)*100)/100, "A-8, FAA")
}

// Moving load along a frame is the difference of two reactions.
func TestShiftIsADifferenceOfReactions(t *testing.T) {
	_, before := Reactions(100, 60, 158)
	_, after := Reactions(100, 84, 158)
	assert.InDelta(t, after-before, Shift(100, 24, 158), 1e-9)
	assert.InDelta(t, 15.19, Shift(100, 24, 158), 0.005)
}

// The whole weigh-up repeats A-2: the payload of the example as the body of a
// van whose chassis weighs next to nothing.
func TestPublishedReactionsThroughTheWeighUp(t *testing.T) {
	cat := fixture()
	ch, van := &cat.Chassis[0], &cat.Bodies[1]
	ch.WheelbaseIn, ch.BodyStartIn, ch.CabSeats = 214, 72, nil
	van.LengthIn, van.Mass.Lb, van.Mass.XIn = 168, 14500, 0 // at the middle of the body
	if ps := cat.Prepare(); ps != nil {
		t.Fatal(ps)
	}
	u := typical()
	u.Body, u.Picks, u.Carried = "van", nil, nil
	s := Weigh(cat, u, people(150))
	assert.InDelta(t, 3929.9, float64(s.Gross.FrontLb-ch.CurbFrontLb), 0.05, "A-2")
	assert.InDelta(t, 10570.1, float64(s.Gross.RearLb-ch.CurbRearLb), 0.05, "A-2")
}
