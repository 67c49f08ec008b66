package standards

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	{
		Name: "People's weight",
		Text: "Rules differ: 150 lb in 49 CFR 567.4 and in NTEA's method, 175 lb in military truck " +
			"specifications, 250 lb in NFPA 1901 for fire apparatus. The rule set in force decides, " +
			"and your own value replaces it.",
		Source: "Each read in the text or a quotation of it",
		About:  "unit.occupant_lb unit.patient_lb",
		Aside:  true,
	},
	page.HowKnown,
	{
		Name:   "Declared",
		Text:   "The plant says that the option named meets the clause; the page cannot compute it.",
		Source: page.ByPage,
	},
}
