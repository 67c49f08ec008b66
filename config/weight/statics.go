package weight

import "math"

// Reactions splits a load between two axles by moments about the front one.
// Both results are zero when the wheelbase is below an inch or a number is
// nothing a vehicle has.
//
// Source: two-axle method, Lr = (CGf / WB) L, Lf = L - Lr (a chassis
// body-builder manual, appendix B).
// Units: lb; in, cg behind the front axle, negative ahead of it.
// Valid: a load to 1e9 lb either way, places to 1e5 in, a wheelbase of 1 to 1e5 in. A
// load beyond an axle gives the other a negative share.
// Example: Reactions(14500, 156, 214) = 3929.91, 10570.09.
func Reactions(load, cg, wheelbase float64) (front, rear float64) {
	if !within(1, 1e5, wheelbase) || !within(-1e9, 1e9, load) || !within(-1e5, 1e5, cg) {
		return 0, 0
	}
	rear = load * cg / wheelbase
	return load - rear, rear
}

// Shift is the load that moves from the front axle to the rear one when w is
// moved d rearward; negative when moved forward.
//
// Source: moments about the front axle; as Reactions.
// Units: lb; in.
// Valid: as Reactions; otherwise zero.
// Example: Shift(100, 24, 158) = 15.19.
func Shift(w, d, wheelbase float64) float64 {
	_, rear := Reactions(w, d, wheelbase)
	return rear
}

// Wheels splits an axle load between its left and right wheel ends. turn is
// the moment of the load about the centerline, positive to the right.
//
// Source: moments about the centerline of the axle. Which axle carries how
// much of a sideways moment depends on springs and frame; here each mass turns
// the two axles in the proportion in which it loads them.
// Units: lb; lb in; in between wheel centers (of pairs on duals).
// Valid: a track of 1 to 1e5 in; otherwise the load is halved. Zero when the load is no
// load, to 1e9 lb, or the moment none, to 1e14 lb in.
// Example: Wheels(10000, 7000, 70) = 4900, 5100.
func Wheels(axle, turn, track float64) (left, right float64) {
	if !within(-1e9, 1e9, axle) || !within(-1e14, 1e14, turn) {
		return 0, 0
	}
	if !within(1, 1e5, track) {
		return axle / 2, axle / 2
	}
	right = axle/2 + turn/track
	return axle - right, right
}

func finite(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// round6 takes the last binary dust off a sum, so that masses written in
// decimals meet a limit written in decimals exactly.
func round6(v float64) float64 {
	if math.Abs(v) > 1e9 {
		return v
	}
	return math.Round(v*1e6) / 1e6
}
