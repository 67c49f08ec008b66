package quote

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.HowKnown,
	page.EvenOdds,
	page.NineInTen,
	page.PriceBook,
	page.EditionAndContent,
	page.Signature,
}
