package equipment

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	{
		Name: "Weight from",
		Text: "Where the weight of an item is from: weighed, from its maker, or an assumption of the catalogue. What you " +
			"add yourself is as you typed it.",
		Source: page.ByPage,
	},
	{
		Name: "Rides in",
		Text: "The compartment an item is in. It counts on the axles from there; what is not stowed yet is counted in " +
			"the middle of the module.",
		Source: page.ByPage,
	},
}
