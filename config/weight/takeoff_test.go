package weight

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
)

func randomBody(t *rapid.T) *config.Body {
	b := &config.Body{
		ID: "b", Label: "Module", Kind: "module",
		LengthIn: in(rapid.Float64Range(110, 190).Draw(t, "length")), WidthIn: in(rapid.Float64Range(80, 96).Draw(t,
			"width")), HeightIn: in(rapid.Float64Range(70, 96).Draw(t, "height")),
		Shell: &config.Shell{
			FrameSpacingIn: in(rapid.Float64Range(10, 24).Draw(t, "spacing")),
			SideDoors:      rapid.IntRange(0, 2).Draw(t, "side doors"), RearDoors: rapid.IntRange(0, 2).Draw(t,
				"rear doors"),
			Weld: rapid.SampledFrom([]string{"", "continuous", "stitch"}).Draw(t, "weld"),
		},
	}
	for i := range rapid.IntRange(0, 4).Draw(t, "compartments") {
		b.Compartments = append(b.Compartments, config.Compartment{
			ID: fmt.Sprint("c", i), Label: fmt.Sprint("Compartment ", i),
			Side: rapid.SampledFrom([]string{"street", "curb", "rear", "inside"}).Draw(t, "side"),
			XIn:  in(rapid.Float64Range(10, 100).Draw(t, "x")), ZIn: in(rapid.Float64Range(-20, 60).Draw(t, "z")),
			WidthIn: in(rapid.Float64Range(10, 40).Draw(t, "w")), DepthIn: in(rapid.Float64Range(10, 24).Draw(t, "d")),
			HeightIn: in(rapid.Float64Range(10, 70).Draw(t, "h")),
		})
	}
	return b
}

// The cut list and what is bought in bulk weigh what the take-off weighs, to
// 0.001 lb; lengths and areas are conserved piece by piece.
func TestCutListCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		off := takenOff(randomBody(t), nil)
		require.NotNil(t, off)
		sum, parts := 0.0, 0.0
		pieces, cuts := 0, 0
		for _, s := range off.CutList() {
			sum += float64(s.Lb)
			assert.GreaterOrEqual(t, float64(s.BlankLb), float64(s.Lb)-1e-9,
				"a blank is no lighter than what is left of it")
			feet, area, merged := 0.0, 0.0, 0.0
			for _, c := range s.Cuts {
				cuts += c.Count
				feet += float64(c.LengthIn) / 12 * float64(c.Count)
				area += float64(c.LengthIn*c.WidthIn) / 144 * float64(c.Count)
				// Pieces alike to 0.001 in are one line of the list.
				merged += float64(c.LengthIn+c.WidthIn) * 0.001 / 144 * float64(c.Count)
				assert.NotEmpty(t, c.For)
			}
			if s.AreaFt2 > 0 {
				assert.InDelta(t, s.AreaFt2, area, merged+1e-6)
				if s.Sheets > 0 {
					assert.GreaterOrEqual(t, float64(s.Sheets)*SheetIn*SheetWideIn/144, area, "%s: the sheets hold the blanks",
						s.Stock)
					assert.LessOrEqual(t, float64(s.Sheets), 1+3*area*144/SheetIn/SheetWideIn, "%s: and are not many more", s.Stock)
				}
			} else {
				assert.InDelta(t, s.LengthFt, feet, 0.01)
				assert.GreaterOrEqual(t, float64(s.Bars)*BarIn/12, feet, "%s: the bars hold the pieces", s.Stock)
				assert.LessOrEqual(t, float64(s.Bars)*BarIn/12, 2*feet+2*BarIn/12, "%s: and are not many more", s.Stock)
			}
		}
		for _, p := range off.Parts {
			parts += float64(p.Lb)
			if p.Stock != "" {
				pieces += p.Count
			} else {
				sum += float64(p.Lb)
			}
		}
		assert.InDelta(t, float64(off.Lb), sum, 0.001)
		assert.InDelta(t, float64(off.Lb), parts, 0.001)
		assert.Equal(t, pieces, cuts)
	})
}

func TestTakeOffIsSane(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := randomBody(t)
		off := takenOff(b, nil)
		assert.Greater(t, float64(off.Lb), 800.0)
		assert.Less(t, float64(off.Lb), 4500.0)
		assert.InDelta(t, float64(b.LengthIn)/2, float64(off.XIn), float64(b.LengthIn)/5,
			"the center is near the middle")
		assert.InDelta(t, 0, float64(off.YIn), float64(b.WidthIn)/5)
		assert.Greater(t, float64(off.ZIn), 0.0)
		assert.Less(t, float64(off.ZIn), float64(b.HeightIn))
		for _, p := range off.Parts {
			assert.GreaterOrEqual(t, float64(p.Lb), 0.0, p.Label)
		}
	})
}

// More metal is never lighter.
func TestTakeOffIsMonotonic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := randomBody(t)
		b.Shell.Weld = "stitch"
		base := takenOff(b, nil)
		for name, c := range map[string]config.ShellChange{
			"continuous welds":   {Weld: "continuous"},
			"thicker posts":      {CornerPostIn: 0.375},
			"thicker skin":       {SideSkinIn: 0.19},
			"thicker insulation": {InsulationIn: 3},
			"denser insulation":  {InsulationLbFt3: 3},
			"closer frame":       {FrameSpacingIn: b.Shell.FrameSpacingIn * 0.6},
		} {
			assert.Greater(t, float64(takenOff(b, &c).Lb), float64(base.Lb), name)
		}
		longer := *b
		longer.LengthIn += 12
		assert.Greater(t, float64(takenOff(&longer, nil).Lb), float64(base.Lb))
	})
}

// A plain box without openings, reckoned by hand on paper.
func TestPlainBoxByHand(t *testing.T) {
	b := &config.Body{LengthIn: 160, WidthIn: 96, HeightIn: 80, Shell: &config.Shell{}}
	off := takenOff(b, nil)
	want := map[string]float64{
		// 0.0968 x 0.125 x 80 x 2 x (160 + 96) + 0.0968 x 0.090 x 160 x 96
		SectionSkins: 495.616 + 133.81632,
		// 0.0968 x 0.125 x 15360, then 15360 / 144 ft2 at 2.2 lb
		SectionFloor: 185.856 + 234.66667,
		// (80 x 512 + 15360) x 2 / 1728 ft3 at 1.9 lb
		SectionInsulation: 123.85185,
		// 40960 / 144 ft2 at 1.1 lb; the ceiling is an option's
		SectionLining: 312.88889,
		// Tube 2 x 2: 0.0975 x 0.9375 = 0.09140625 lb/in; 1 x 2: 0.06703125.
		// Posts 0.0975 x 1.4375 x 80 x 4 = 44.85. Rails 4 x 156 + 2 x 92, 11
		// cross members and 9 bows of 92, uprights 18 + 10 of 76: 4,776 in.
		// 1 x 2: purlins 20 x 14, side girts 40 x 14, front girts 12 x 14.
		SectionFrame:        44.85 + (624+184+1840+2128)*0.09140625 + 1008*0.06703125,
		SectionDoors:        0,
		SectionCompartments: 0,
		// Sills 2 x 4: 0.0975 x 1.4375 x 160 x 2; ten mounts of 9 lb; wheel boxes
		// 2 x 34 x (22 + 9) + 4 x 22 x 9 = 2,900 in2; skirts 2 x (1600 - 340) + 960 = 3,480 in2.
		SectionMounting: 44.85 + 90 + (2900+3480)*0.125*0.0968,
		SectionHarness:  60 + 0.35*160,
		// Joints: 2 x 2 ends x (4 in x 54 + 3 in x 72 + 6 in x 2) = 1,776 in. Seams: sides
		// 2 x 480, ends 2 x 352, roof and floor 512 each = 2,688 in.
		SectionWelds: (1776 + 2688) * 0.0975 * 0.125 * 0.125 / 2,
	}
	sum := 0.0
	for section, lb := range want {
		t.Run(section, func(t *testing.T) {
			assert.InDelta(t, lb, float64(off.Section(section)), 0.001, section)
			sum += lb
		})
	}
	assert.InDelta(t, sum, float64(off.Lb), 0.001)
	assert.InDelta(t, 0, float64(off.YIn), 1e-9, "nothing lies to one side")
}

// A roll-up door weighs what its slats and tracks weigh, a hinged one its two sheets and
// fittings: of 20 x 24 in, 3.333 ft2 at 2 lb and 9 lb, or 480 in2 of 0.125 and 0.090 in and 5.5 lb.
func TestRollUpDoorsCostWhatTheyCost(t *testing.T) {
	b := &config.Body{LengthIn: 160, WidthIn: 96, HeightIn: 90, Shell: &config.Shell{},
		Compartments: []config.Compartment{{ID: "low", Label: "Low", Side: "street", XIn: 80, ZIn: 20, WidthIn: 20,
			DepthIn: 20, HeightIn: 24}}}
	hinged, rolled := takenOff(b, nil), takenOff(b, &config.ShellChange{CompDoors: "roll-up"})
	door := 480*0.0968*(0.125+0.090) + 5.5
	assert.InDelta(t, 480/144.0*2+9-door, float64(rolled.Lb-hinged.Lb), 1e-6)
	assert.Greater(t, float64(rolled.ZIn), 0.0)
}

// A wider entry door takes from the wall what it opens more, and weighs more itself.
func TestWiderDoor(t *testing.T) {
	b := &config.Body{LengthIn: 160, WidthIn: 96, HeightIn: 90, Shell: &config.Shell{SideDoors: 1}}
	wide := takenOff(b, &config.ShellChange{SideDoorIn: 36})
	assert.Greater(t, float64(wide.Section(SectionDoors)), float64(takenOff(b, nil).Section(SectionDoors)))
	assert.Less(t, float64(wide.Section(SectionSkins)), float64(takenOff(b, nil).Section(SectionSkins)))
}

// A door lightens its wall by the opening and weighs itself.
func TestDoorsAndCompartmentsOpenTheWall(t *testing.T) {
	b := &config.Body{LengthIn: 160, WidthIn: 96, HeightIn: 90, Shell: &config.Shell{SideDoors: 1}}
	skin := func(b *config.Body, label string) float64 {
		for _, p := range takenOff(b, nil).Parts {
			if p.Label == label {
				return float64(p.Lb)
			}
		}
		return math.NaN()
	}
	whole := 160 * 90 * 0.125 * 0.0968
	assert.InDelta(t, whole-30*63*0.125*0.0968, skin(b, "Curb side skin"), 1e-6)
	b.Compartments = []config.Compartment{{ID: "low", Label: "Low", Side: "street", XIn: 80, ZIn: -2.875, WidthIn: 20,
		DepthIn: 20, HeightIn: 24}}
	assert.InDelta(t, whole-20*12*0.125*0.0968, skin(b, "Street side skin"), 1e-6,
		"the half below the floor opens no wall")
}

func TestStitchesWeighAQuarter(t *testing.T) {
	b := fixture().Bodies[0]
	full, stitched := takenOff(&b, nil), takenOff(&b, &config.ShellChange{Weld: "stitch"})
	for i, p := range full.Parts {
		if p.Per == "in of weld" && p.Label != "Frame joints, all round" {
			assert.InDelta(t, float64(p.Lb)/4, float64(stitched.Parts[i].Lb), 1e-9)
		}
	}
}

func TestTakeOffRefusesNonsense(t *testing.T) {
	good := fixture().Bodies[0]
	for name, spoil := range map[string]func(*config.Body){
		"no length":         func(b *config.Body) { b.LengthIn = 0 },
		"NaN width":         func(b *config.Body) { b.WidthIn = in(math.NaN()) },
		"negative height":   func(b *config.Body) { b.HeightIn = -80 },
		"infinite length":   func(b *config.Body) { b.LengthIn = in(math.Inf(1)) },
		"hairline spacing":  func(b *config.Body) { b.Shell.FrameSpacingIn = 1e-6 },
		"negative spacing":  func(b *config.Body) { b.Shell.FrameSpacingIn = -16 },
		"negative doors":    func(b *config.Body) { b.Shell.SideDoors = -1 },
		"doors beyond wall": func(b *config.Body) { b.Shell.RearDoors = 1e9 },
		"NaN insulation":    func(b *config.Body) { b.Shell.InsulationLbFt3 = math.NaN() },
	} {
		t.Run(name, func(t *testing.T) {
			b := good
			shell := *good.Shell
			b.Shell = &shell
			spoil(&b)
			assert.Nil(t, takenOff(&b, nil), name)
		})
	}
	assert.Empty(t, (*TakeOff)(nil).CutList())
}

// Worked by hand: sheets are 240 x 96 in, and each cut loses 0.125 in.
func TestSheetsThatBlanksNeed(t *testing.T) {
	for _, c := range []struct {
		reason string
		cuts   []Cut
		want   int
	}{
		{"146 + 90 and a cut lie in one strip", []Cut{{LengthIn: 146, WidthIn: 96, Count: 1}, {LengthIn: 96, WidthIn: 90, Count: 1}}, 1},
		{"146 + 94 leave nothing for the cut", []Cut{{LengthIn: 146, WidthIn: 96, Count: 1}, {LengthIn: 96, WidthIn: 94, Count: 1}}, 2},
		{"six strips of 15.8 and five cuts are 95.4", []Cut{{LengthIn: 240, WidthIn: 15.8, Count: 6}}, 1},
		{"six strips of 15.9 and five cuts are 96.03", []Cut{{LengthIn: 240, WidthIn: 15.9, Count: 6}}, 2},
		{"a short piece goes into the strip of a wider one", []Cut{{LengthIn: 10, WidthIn: 50, Count: 1}, {LengthIn: 180, WidthIn: 96, Count: 1}}, 1},
		{"nothing is that wide", []Cut{{LengthIn: 100, WidthIn: 97, Count: 1}}, 0},
	} {
		assert.Equal(t, c.want, sheets(c.cuts), c.reason)
	}
}

// What the plant cuts for a module, by stock.
func ExampleTakeOff_CutList() {
	body := &config.Body{LengthIn: 168, WidthIn: 95, HeightIn: 88, Shell: &config.Shell{RearDoors: 2}}
	for _, s := range takenOff(body, nil).CutList() {
		if s.Bars == 0 {
			continue // sheet
		}
		c := s.Cuts[0]
		fmt.Printf("%s: %.1f ft, %.0f lb, %d bars; longest %d of %.2f in for %s\n", s.Stock, s.LengthFt, s.Lb, s.Bars,
			c.Count, c.LengthIn, c.For[0])
	}
	// Output:
	// 1 x 2 x 0.125 in tube, 6061: 114.2 ft, 92 lb, 6 bars; longest 4 of 60.00 in for Rear door leaf, stiles
	// 2 x 2 x 0.125 in tube, 6061: 443.7 ft, 487 lb, 31 bars; longest 4 of 164.00 in for Floor rails
	// 2 x 4 x 0.125 in tube, 6061: 28.0 ft, 47 lb, 2 bars; longest 2 of 168.00 in for Sills on the frame
	// 3 x 3 x 0.250 in corner extrusion, 6061: 29.3 ft, 49 lb, 2 bars; longest 4 of 88.00 in for Corner posts
}
