package bid

import (
	"slices"

	"boxwright/pricing/bid/claims"
)

// sizes are the figures of the whole vehicle that a line may ask for without saying of
// what, "96 in wide".
var sizes = []string{"space.length-all", "space.width", "space.height-all"}

// bare reports whether a claim is on a size of the vehicle, or its price, and names nothing.
func (c *claim) bare() bool {
	if c.code() == factPrice {
		return !slices.ContainsFunc(c.words, func(w string) bool { return w != completeWord })
	}
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
		case c != nil && c.bare() && (other || c.gauge.code == factPrice && len(of) > 1):
			of[i] = nil
		case c == nil || c.gauge == nil || !slices.Contains(sizes, c.gauge.code) && c.gauge.code != factModule:
			other = true
		}
	}
}

// aboutSizes reports whether a heading says nothing else than that sizes or ratings of
// the vehicle stand beneath it.
func aboutSizes(head string) bool { return saysOnly(head, sizeWords) }

// aboutPrice reports whether a heading says nothing else than that the price stands
// beneath it.
func aboutPrice(head string) bool { return saysOnly(head, priceWords) }

func saysOnly(head string, words map[string]bool) bool {
	return !slices.ContainsFunc(stems(withoutSection(head)), func(w string) bool { return !words[w] })
}

var priceWords = wordSet("price prices pricing budget cost")

// suits reports whether what a bare claim measures is what a heading speaks of.
func (c *claim) suits(head string) bool {
	if c.gauge.code == factPrice {
		return aboutPrice(head)
	}
	return aboutSizes(head)
}

// alone reads amounts without a word: one of money that is not to be exceeded is the price, and
// one that only the length of a vehicle comes to, "up to 235 inches overall", is that.
func alone(list []claims.Number) (claim, bool) {
	if len(list) != 1 || list[0].Sense != atMost {
		return claim{}, false
	}
	n := list[0]
	g := priceGauge
	if only := bare[lengthGauge.code]; n.Unit == inch && n.Whole && n.Value >= only.least && n.Value <= only.most {
		g = lengthGauge
	} else if n.Unit != claims.Money {
		return claim{}, false
	}
	return claim{gauge: g, want: n.Value, sense: n.Sense, stated: true, beyond: n.Beyond, numbers: list}, true
}

var (
	priceGauge  = gaugeByCode(factPrice)
	lengthGauge = gaugeByCode("space.length-all")
)

func gaugeByCode(code string) *gauge {
	return &gauges[slices.IndexFunc(gauges, func(g gauge) bool { return g.code == code })]
}

var sizeWords = func() map[string]bool {
	out := map[string]bool{}
	for _, w := range stems("dimensions sizes weights weight outside exterior chassis general length width height " +
		"measurements performance ratings conversion module body engine") {
		out[w] = true
	}
	return out
}()
