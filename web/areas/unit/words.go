package unit

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.Types,
	page.GVWR,
	page.GAWR,
	{
		Name:   "Standard, filled in",
		Text:   "Nobody chose it, but a full unit needs one. Your choices replace it, unless you lock it in.",
		Source: page.ByPage,
	},
	{
		Name:   "Needed by your choices",
		Text:   "Something you chose is not available without it.",
		Source: page.ByPage,
	},
	{
		Name: "Still checking",
		Text: "Whether it fits the weights is still being worked out; that goes on by itself. Press it " +
			"all the same, and it is worked out first.",
		Source: page.ByPage,
	},
}
