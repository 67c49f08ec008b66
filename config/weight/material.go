package weight

// Densities of the alloys a module is made of, lb per cubic inch.
// Source: 6061 and 5052 as printed by innovationspace.com.tw and
// industrialcalc.com; others print 0.098 for 6061 and merchants' sheet tables
// use 0.101 for every alloy, which is 4 percent heavy.
const (
	Density6061 = 0.0975 // tube and extrusion
	Density5052 = 0.0968 // sheet
)

// SheetLb is the mass of a flat sheet.
//
// Source: density x thickness x area; checked against a merchant's printed
// sheet table (0.101 lb/in3 x 0.063 x 48 x 144 in = 43.98 lb).
// Units: lb per cubic inch; in; lb.
// Valid: a density up to 1, a thickness up to 100 in, an area to 1e8 either way, of which
// a negative one takes away an opening; otherwise zero.
// Example: SheetLb(0.101, 0.125, 48*144) = 87.26.
func SheetLb(density, thickness, areaIn2 float64) float64 {
	if !within(0, 1, density) || !within(0, mostSectionIn, thickness) || !within(-1e8, 1e8, areaIn2) {
		return 0
	}
	return density * thickness * areaIn2
}

// mostSectionIn is more than any section that is sheet, tube, angle or weld.
const mostSectionIn = 100

// within reports whether every number lies in a span.
func within(least, most float64, vs ...float64) bool {
	for _, v := range vs {
		if !(v >= least && v <= most) {
			return false
		}
	}
	return true
}

// TubeLbFt is the mass of one foot of square-cornered rectangular tube.
//
// Source: 12 x density x section, the section being wh - (w-2t)(h-2t). No
// published tube table was seen.
// Units: lb per cubic inch; in; lb per foot.
// Valid: a density up to 1, sizes from 0 to 100 in, wall at most half the smaller side; a
// thicker one is taken as solid; otherwise zero.
// Example: TubeLbFt(0.098, 2, 2, 0.125) = 1.1025.
func TubeLbFt(density, w, h, wall float64) float64 {
	if !within(0, 1, density) || !within(0, mostSectionIn, w, h, wall) {
		return 0
	}
	return 12 * density * tubeSection(w, h, wall)
}

func tubeSection(w, h, wall float64) float64 {
	return w*h - max(w-2*wall, 0)*max(h-2*wall, 0)
}

// AngleLbFt is the mass of one foot of an equal-leg angle, by which the corner
// extrusion is reckoned.
//
// Source: 12 x density x section, the section being (2 leg - t) t.
// Units: lb per cubic inch; in; lb per foot.
// Valid: a density up to 1, 0 <= t <= leg <= 100 in; otherwise zero.
// Example: AngleLbFt(0.0975, 3, 0.25) = 1.682.
func AngleLbFt(density, leg, t float64) float64 {
	if !within(0, 1, density) || !within(0, mostSectionIn, leg) || !within(0, leg, t) {
		return 0
	}
	return 12 * density * (2*leg - t) * t
}

// FilletLbIn is the filler metal in one inch of fillet weld of equal legs.
//
// Source: density x leg^2 / 2, a flat-faced fillet without reinforcement.
// Units: lb per cubic inch; in; lb per inch of weld.
// Valid: a density up to 1, a leg from 0 to 100 in; otherwise zero.
// Example: FilletLbIn(0.0975, 0.125) = 0.00076.
func FilletLbIn(density, leg float64) float64 {
	if !within(0, 1, density) || !within(0, mostSectionIn, leg) {
		return 0
	}
	return density * leg * leg / 2
}
