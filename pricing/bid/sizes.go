package bid

import (
	"slices"

	"boxwright/pricing/bid/claims"
)

// sizes are the figures of the whole vehicle that a line may ask for without saying of
// what, "96 in wide".
var sizes = []string{"space.length-all", "space.width", "space.height-all"}

// bare reports whether a claim is on a size of the vehicle and names nothing.
func (c *claim) bare() bool {
	return c.gauge != nil && slices.Contains(sizes, c.gauge.code) &&
		!slices.ContainsFunc(c.numbers, func(n claims.Number) bool { return n.Whole }) &&
		!slices.ContainsFunc(c.words, func(w string) bool { return !claims.Dimension(w) })
}

// bareSizes takes out bare sizes behind something else that the line speaks of: in
// "cabinets of aluminum, 40 in wide" the vehicle's width is not meant.
func bareSizes(of []*claim) {
	other := false
	for i, c := range of {
		switch {
		case c != nil && c.bare() && other:
			of[i] = nil
		case c == nil || c.gauge == nil || !slices.Contains(sizes, c.gauge.code) && c.gauge.code != factModule:
			other = true
		}
	}
}

// aboutSizes reports whether a heading says nothing else than that sizes or ratings of
// the vehicle stand beneath it.
func aboutSizes(head string) bool {
	return !slices.ContainsFunc(stems(withoutSection(head)), func(w string) bool { return !sizeWords[w] })
}

var sizeWords = func() map[string]bool {
	out := map[string]bool{}
	for _, w := range stems("dimensions sizes weights weight outside exterior chassis general length width height " +
		"measurements performance ratings conversion module body engine") {
		out[w] = true
	}
	return out
}()
