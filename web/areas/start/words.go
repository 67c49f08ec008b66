package start

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.Types,
	page.GVWR,
	{
		Name: "Remount",
		Text: "An existing module taken off its old chassis and put on a new one. “Refurbishing and " +
			"remounted vehicles are not covered by this standard”, says KKK-A-1822F, so the " +
			"purchaser's own rules judge it.",
		Source: "KKK-A-1822F, as quoted from its text, read",
	},
}
