package deflate

import (
	"cmp"
	"math/bits"
	"slices"
)

// lengths gives each symbol that is used a code of at most so many bits, the
// shortest in sum.
//
// Source: Larmore and Hirschberg, A fast algorithm for optimal
// length-limited Huffman codes, 1990 (package-merge).
func lengths(count []uint32, most int) []uint8 {
	out := make([]uint8, len(count))
	type pack struct {
		weight  uint64
		symbols []int
	}
	var single []pack
	for s, n := range count {
		if n > 0 {
			single = append(single, pack{uint64(n), []int{s}})
		}
	}
	slices.SortStableFunc(single, func(a, b pack) int { return cmp.Compare(a.weight, b.weight) })
	if len(single) < 2 {
		for _, p := range single {
			out[p.symbols[0]] = 1
		}
		return out
	}
	row := single
	for range most - 1 {
		var pairs []pack
		for i := 0; i+1 < len(row); i += 2 {
			pairs = append(pairs, pack{row[i].weight + row[i+1].weight, slices.Concat(row[i].symbols, row[i+1].symbols)})
		}
		row = append(slices.Clone(single), pairs...)
		slices.SortStableFunc(row, func(a, b pack) int { return cmp.Compare(a.weight, b.weight) })
	}
	for _, p := range row[:2*len(single)-2] {
		for _, s := range p.symbols {
			out[s]++
		}
	}
	return out
}

// codes numbers the symbols of each length in order, bits turned round as the
// format wants them. Source: RFC 1951, 3.2.2.
func codes(lengths []uint8) []uint16 {
	var first [17]uint16
	for _, n := range lengths {
		first[n+1]++
	}
	first[1] = 0 // symbols without a code
	for n := 2; n < len(first); n++ {
		first[n] = (first[n-1] + first[n]) << 1
	}
	// first[n] now is the first code of length n, after the shift that length n
	// brings; see the count of length n-1 in it.
	out := make([]uint16, len(lengths))
	for s, n := range lengths {
		if n > 0 {
			out[s] = bits.Reverse16(first[n]) >> (16 - n)
			first[n]++
		}
	}
	return out
}
