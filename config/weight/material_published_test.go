package weight

// Sheet, bar and tube masses against printed tables.
//
// SHEET: a merchant's sheet table, 4 x 12 ft at 0.101 lb/in3
// (sanghvioverseasinc.com, slidepub.com). LBFT2: 144 t rho at 0.098 lb/in3,
// agreeing with published 1.76 and 1.27. BAR: an extruder's catalogue
// (doczz.net/doc/4967844). Tubes: no published table was seen; values follow
// from the section. Densities: innovationspace.com.tw, industrialcalc.com.

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
)

func TestPublishedSheetMasses(t *testing.T) {
	for thickness, lb := range map[float64]float64{
		0.063: 43.98, // M-1
		0.125: 87.26, // M-2
		0.090: 62.83, // M-2
		0.032: 22.34, 0.040: 27.92, 0.080: 55.85, 0.100: 69.81, 0.250: 174.53,
	} {
		assert.Equal(t, lb, math.Round(SheetLb(0.101, thickness, 48*144)*100)/100, "SHEET %v in", thickness)
	}
	for thickness, lb := range map[float64]float64{0.063: 0.889, 0.080: 1.129, 0.090: 1.270, 0.125: 1.764, 0.188: 2.653,
		0.250: 3.528} {
		assert.Equal(t, lb, math.Round(SheetLb(0.098, thickness, 144)*1000)/1000, "LBFT2 %v in", thickness)
	}
}

func TestPublishedSections(t *testing.T) {
	for _, c := range []struct{ w, h, wall, lb float64 }{
		{1, 1, 0.125, 0.5145}, {1, 2, 0.125, 0.8085}, {2, 2, 0.125, 1.1025}, {2, 3, 0.125, 1.3965},
	} {
		t.Run(fmt.Sprint(c.w), func(t *testing.T) {
			assert.InDelta(t, c.lb, TubeLbFt(0.098, c.w, c.h, c.wall), 5e-5, "tube %v x %v", c.w, c.h)
		})
	}
	for _, c := range []struct{ w, h, lb float64 }{{0.5, 0.125, 0.073}, {0.5, 0.25, 0.148}, {1, 0.25, 0.295},
		{1, 0.5, 0.590}} {
		t.Run(fmt.Sprint(c.w), func(t *testing.T) {
			solid := TubeLbFt(0.098, c.w, c.h, c.h) // a wall that fills the section
			assert.InEpsilon(t, c.lb, solid, 0.01, "BAR %v x %v: printed with a density 0.3 percent higher", c.w, c.h)
		})
	}
	assert.InDelta(t, 1.682, AngleLbFt(0.0975, 3, 0.25), 5e-4)
	assert.InDelta(t, 0.00076, FilletLbIn(0.0975, 0.125), 5e-6)
}

func TestPublishedDensities(t *testing.T) {
	assert.Equal(t, 0.0975, Density6061)
	assert.Equal(t, 0.0968, Density5052)
	assert.InEpsilon(t, 0.098, Density6061, 0.006, "0.098 is printed too")
}

// A county's bid describes a module floor of 2 x 2 x .125 tube, two lengthwise
// and twelve across (docs.cabarruscounty.us 1617289 p87; the module's length is
// not known here). A 168 in module at the usual spacing has the same.
func TestPublishedFloorFrame(t *testing.T) {
	body := &config.Body{LengthIn: 168, WidthIn: 95, HeightIn: 88, Shell: &config.Shell{}}
	across, along := 0, 0
	for _, p := range takenOff(body, nil).Parts {
		switch p.Label {
		case "Floor cross members":
			across = p.Count
			assert.Equal(t, "2 x 2 x 0.125 in tube, 6061", p.Stock)
		case "Floor rails":
			along = p.Count
		}
	}
	assert.Equal(t, 12, across)
	assert.Equal(t, 2, along)
}
