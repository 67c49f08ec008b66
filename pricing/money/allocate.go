package money

import (
	"math/big"
	"slices"
)

// Allocate splits a total over weights so that the parts always add up to the
// total to the cent.
//
// Source: largest-remainder method. Each part is its exact share cut to whole
// cents; the cents left over go one each to the largest fractions cut off, the
// earlier part first where they are equal.
// Units: total in dollars and cents, of either sign; weights any non-negative
// numbers, of which only the proportions count.
// Valid: at least one weight. Where all weights are zero, or one is negative
// (counted as zero), the whole goes evenly over all parts.
// Example: 100.00 over 1, 1, 1 is 33.34, 33.33, 33.33.
func Allocate(total Amount, weights []Amount) []Amount {
	if len(weights) == 0 {
		return nil
	}
	w, sum := make([]*big.Int, len(weights)), new(big.Int)
	for i, x := range weights {
		w[i] = new(big.Int)
		if x.Sign() > 0 {
			w[i] = x.d.Shift(2).BigInt()
		}
		sum.Add(sum, w[i])
	}
	if sum.Sign() == 0 {
		for i := range w {
			w[i] = big.NewInt(1)
		}
		sum.SetInt64(int64(len(w)))
	}
	cents := total.Abs().d.Shift(2).BigInt()
	left := new(big.Int).Set(cents)
	parts, cut := make([]*big.Int, len(w)), make([]*big.Int, len(w))
	for i := range w {
		parts[i], cut[i] = new(big.Int).QuoRem(new(big.Int).Mul(cents, w[i]), sum, new(big.Int))
		left.Sub(left, parts[i])
	}
	order := make([]int, len(w))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cut[b].Cmp(cut[a]) })
	one := big.NewInt(1)
	for _, i := range order[:left.Int64()] {
		parts[i].Add(parts[i], one)
	}
	out := make([]Amount, len(w))
	for i, p := range parts {
		out[i] = fromCents(p)
		if total.Sign() < 0 {
			out[i] = out[i].Neg()
		}
	}
	return out
}

// AllocatePercents splits a total by percentages, to the cent. Where the
// percentages do not make up 100 % the parts still make up the total.
func AllocatePercents(total Amount, shares []Percent) []Amount {
	weights := make([]Amount, len(shares))
	for i, p := range shares {
		weights[i] = Amount{d: p.d.Shift(4)}
	}
	return Allocate(total, weights)
}
