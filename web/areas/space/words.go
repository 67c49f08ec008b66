package space

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.LikelyRange,
	{
		Name: "Oxygen hours",
		Text: "From full cylinders down to 200 psi, at a steady flow. What is left in them is not " +
			"counted, so that a cylinder is changed in time.",
		Source: page.Practice,
		About:  "space.oxygen-hours",
		Aside:  true,
	},
}
