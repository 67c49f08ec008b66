package leadtime

import "math"

// NormalWithin is the chance that a normally distributed quantity is at most z
// standard deviations above its mean.
//
// Source: the error function, math.Erfc; DLMF 7.2.
// Units: z in standard deviations; the answer from 0 to 1.
// Valid: any z; what is no number gives 0.
// Example: NormalWithin(1.79) = 0.9633.
func NormalWithin(z float64) float64 {
	if math.IsNaN(z) {
		return 0
	}
	return math.Erfc(-z/math.Sqrt2) / 2
}

// NormalDeviate is the number of standard deviations above the mean within
// which a normally distributed quantity stays with the given chance.
//
// Source: inverse of NormalWithin, math.Erfinv.
// Units: chance from 0 to 1; the answer in standard deviations.
// Valid: chances from 0.000001 to 0.999999; what lies outside is taken as the nearer end,
// what is no number as 0.5.
// Example: NormalDeviate(0.9) = 1.2816.
func NormalDeviate(chance float64) float64 {
	if math.IsNaN(chance) {
		return 0
	}
	return math.Sqrt2 * math.Erfinv(2*min(max(chance, 1e-6), 1-1e-6)-1)
}
