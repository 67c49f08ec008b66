package weight

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.GVWR,
	page.GAWR,
	{
		Name: "Curb weight",
		Text: "The finished unit ready to drive, every operating fluid full, without people and " +
			"without loose equipment.",
		Source: page.AIAM0613,
		About:  "weight.curb",
	},
	page.Payload,
	{
		Name: "Station",
		Text: "Where a weight sits: inches behind the front axle, right of the center line, above the " +
			"ground. What hangs ahead of the front axle loads that axle with more than its own " +
			"weight.",
		Source: "Two-axle method of a chassis maker's body-builder manual, read",
	},
	page.LikelyRange,
	{
		Name: "Load on tires",
		Text: "What the tires of an axle may carry together at their stated pressure. It must reach " +
			"the axle's rating.",
		Source: "49 CFR 571.120 S5.1.2 as quoted by NHTSA, read",
		About:  "weight.front-tires weight.rear-tires",
		Aside:  true,
	},
	{
		Name: "Axle share",
		Text: "How much of the whole weight stands on the axle. Ranges such as 20 to 50 % in front are " +
			"passed on from memory; nobody here read a text, so no limit is built in and the axle " +
			"ratings judge.",
		Source: "KKK-A-1822, from memory",
		About:  "weight.front-share weight.rear-share",
		Aside:  true,
	},
	{
		Name: "Left-right difference",
		Text: "How much heavier one side stands than the other, as a part of the whole weight. Limits " +
			"of 5 and 7 % are passed on from memory; over 5 %, an assumed factor, is noted, and nothing is stopped by it. A " +
			"purchaser sets one in Standards.",
		Source: "KKK-A-1822 and NFPA 1901, from memory",
		About:  "weight.side",
	},
	{
		Name: "T/2h",
		Text: "Half the track over the height of the center of gravity: the sideways pull, in g, at " +
			"which a rigid vehicle tips. More is steadier. A real heavy truck was found to tip about " +
			"a quarter earlier.",
		Source: "NHTSA, Rollover, chapter V; SAE 2003-01-3385; both read",
		About:  "weight.ssf weight.cg-height",
	},
}
