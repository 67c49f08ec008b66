package quote

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.HowKnown,
	page.EvenOdds,
	page.NineInTen,
	page.PriceBook,
	page.EditionAndContent,
	{
		Name: "Signature",
		Text: "A mark that only the holder of the key can make; if one byte of the quote changes, it " +
			"no longer holds. The roster is the catalogue's list of keys that it knows.",
		Source: "Ed25519, an open standard",
	},
}
