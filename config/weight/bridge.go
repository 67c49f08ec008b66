package weight

import "math"

// Weight limits of the Interstate system beside the bridge formula.
// Source: caps of 20,000 lb on a single axle, 34,000 on a tandem and 80,000
// gross, as printed beside the formula by public weight-training material.
const (
	singleAxleLb = 20000
	tandemAxleLb = 34000
	interstateLb = 80000
)

// Bridge is the gross weight that the federal bridge formula allows a group of
// axles, as the legal table prints it: rounded to the nearest 500 lb, exact ties
// to the lower, and capped by 34,000 lb for axles within 8 ft, 20,000 lb an axle
// for two axles farther apart, and 80,000 lb in all.
//
// Source: W = 500 [LN/(N-1) + 12N + 36] (WSDOT training module of the University
// of Washington); ties and the 8 ft row as in the table of RCW 46.44.041.
// Units: feet between the outer axles; lb.
// Valid: feet > 0, axles >= 2; otherwise zero.
// Example: Bridge(48, 5) = 78000; Bridge(9, 3) = 42500, where the formula says 42750.
func Bridge(feet float64, axles int) float64 {
	if axles < 2 || !(feet > 0) || !finite(feet) {
		return 0
	}
	w := math.Ceil(BridgeExact(feet, axles)/500-0.5) * 500
	limit := float64(interstateLb)
	switch {
	case feet <= 8:
		limit = tandemAxleLb
	case axles == 2:
		limit = 2 * singleAxleLb
	}
	return math.Min(w, limit)
}

// BridgeExact is the bridge formula before rounding and caps.
//
// Source: as Bridge.
// Units: feet between the outer axles; lb.
// Valid: 0.1 to 1,000 ft, 2 to 100 axles; otherwise zero.
// Example: BridgeExact(51, 5) = 79875.
func BridgeExact(feet float64, axles int) float64 {
	if axles < 2 || axles > 100 || !within(0.1, 1000, feet) {
		return 0
	}
	n := float64(axles)
	return 500 * (feet*n/(n-1) + 12*n + 36)
}
