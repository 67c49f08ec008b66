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
// axles, rounded to the nearest 500 lb and capped by 20,000 lb an axle for two
// axles more than 8 ft apart, 34,000 lb for two closer ones, and 80,000 lb in
// all.
//
// Source: W = 500 [LN/(N-1) + 12N + 36], nearest 500 lb (WSDOT training module
// of the University of Washington).
// Units: feet between the outer axles; lb.
// Valid: 0.1 to 1,000 ft, 2 to 100 axles; otherwise zero.
// Example: Bridge(48, 5) = 78000.
func Bridge(feet float64, axles int) float64 {
	if axles < 2 || axles > 100 || !within(0.1, 1000, feet) {
		return 0
	}
	w := math.Round(BridgeExact(feet, axles)/500) * 500
	limit := float64(interstateLb)
	if axles == 2 {
		limit = 2 * singleAxleLb
		if feet <= 8 {
			limit = tandemAxleLb
		}
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
