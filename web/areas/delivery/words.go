package delivery

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.EvenOdds,
	page.NineInTen,
	{
		Name:   "Float",
		Text:   "Working days by which a step may run late before delivery does.",
		Source: "Critical path method, common practice",
	},
	{
		Name:   "Slot",
		Text:   "A place on the plant's framing line that is still open on that day.",
		Source: "The catalogue's plant calendar",
	},
}
