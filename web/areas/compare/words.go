package compare

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.Payload,
	page.EvenOdds,
	page.NineInTen,
	{
		Name:   "Added to compare",
		Text:   "A copy of the quote as it was then. Changing the quote leaves the copy alone.",
		Source: page.ByPage,
	},
}
