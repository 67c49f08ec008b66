package compare

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.Payload,
	page.EvenOdds,
	page.NineInTen,
	{
		Name:   "Set aside",
		Text:   "Kept beside the quote you work on, as it is now, for the comparison.",
		Source: page.ByPage,
	},
}
