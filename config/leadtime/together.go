package leadtime

import (
	"math"
	"slices"
	"sync"

	"boxwright/config"
)

// Delays come together: what makes one supplier late makes others late too. Each draw has
// a luck of its own, common to all steps, and each step one besides. The two are added
// with weights, and the sum is brought back to equally likely slices, so that every
// duration keeps its own distribution; only how they go together changes.
const (
	blended = 64                // both weights together
	mixes   = 2 * strata        // slices of the sum
	toMix   = blended / 2       // sum of weighted slices to a slice of the sum
	luck    = "common luck\x00" // no activity has such an id
)

// ownWeight is the weight of a step's own luck out of blended. Two steps whose sums have
// the weights w and 1-w correlate by (1-w)^2 / (w^2 + (1-w)^2).
func ownWeight(together float64) uint32 {
	if !(together > 0) {
		return blended
	}
	r := math.Sqrt(min(together, 1))
	w := math.Sqrt(1 - min(together, 1))
	return uint32(math.Round(blended * w / (w + r)))
}

// commonLuck is the common part of each draw, weighted.
func commonLuck(seed uint64, draws int, weight uint32) []uint32 {
	stream := streamOf(luck, seed)
	out := make([]uint32, draws)
	for k := 0; k < draws; k += perWord {
		bits := mix(stream + uint64(k/perWord)*golden)
		for j := k; j < min(k+perWord, draws); j++ {
			out[j] = uint32(bits%strata) * weight
			bits >>= 10
		}
	}
	return out
}

// blend is draw with the common luck in it.
func (d *drawn) blend(out, ready []int32, word int, common []uint32, own uint32) {
	ready, common = ready[:len(out)], common[:len(out)]
	if d.mixed == nil {
		for k, r := range ready {
			out[k] = r + d.low
		}
		return
	}
	t, added := d.mixed, d.added
	at := d.stream + uint64(word)*golden
	for k := 0; k < len(out); k += perWord {
		bits := mix(at)
		at += golden
		for j := k; j < min(k+perWord, len(out)); j++ {
			out[j] = ready[j] + added + t[(uint32(bits%strata)*own+common[j])/toMix%mixes]
			bits >>= 10
		}
	}
}

// mixedDurations is the table of a span by slices of the sum.
func mixedDurations(s config.Span, own uint32) *[mixes]int32 {
	key := mixKey{s, own}
	plain := durations(s)
	mixed.Lock()
	defer mixed.Unlock()
	if t := mixed.bySpan[key]; t != nil {
		return t
	}
	t := new([mixes]int32)
	for k := range t {
		t[k] = plain[sliceOf((float64(k)+0.5)/mixes, float64(own)/blended)]
	}
	if mixed.bySpan == nil || len(mixed.bySpan) == mostTables {
		mixed.bySpan = map[mixKey]*[mixes]int32{}
	}
	mixed.bySpan[key] = t
	return t
}

type mixKey struct {
	config.Span
	own uint32
}

var mixed struct {
	sync.Mutex
	bySpan map[mixKey]*[mixes]int32
}

// sliceOf is the equally likely slice in which a sum of two even lucks lies: own weight w,
// common weight 1-w, the sum x from 0 to 1.
//
// Source: distribution of the sum of two uniform quantities, a trapezoid.
func sliceOf(x, w float64) int {
	small, large := min(w, 1-w), max(w, 1-w)
	var p float64
	switch {
	case x < small:
		p = x * x / (2 * small * large)
	case x <= large:
		p = (x - small/2) / large
	default:
		p = 1 - (1-x)*(1-x)/(2*small*large)
	}
	return min(max(int(p*strata), 0), strata-1)
}

// together is the solution with delays along the critical path that come together: of
// every two the given share is in common.
//
//	variance = (1 - r) x sum of variances + r x (sum of standard deviations)^2
func (s *Solution) together(n *Network, share float64) *Solution {
	spread := 0.0
	for i := range n.Activities {
		if slices.Contains(s.Path, n.Activities[i].ID) {
			spread += math.Sqrt(s.Timings[i].Variance)
		}
	}
	out := *s
	out.Variance = (1-share)*s.Variance + share*spread*spread
	return &out
}
