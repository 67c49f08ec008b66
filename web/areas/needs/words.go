package needs

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.Types,
	page.GVWR,
	page.Payload,
	{
		Name: "People's weight",
		Text: "Rules differ: 150 lb in 49 CFR 567.4 and in NTEA's method, 175 lb in military truck " +
			"specifications, 250 lb in NFPA 1901 for fire apparatus. The rule set in force decides, " +
			"and your own value goes before it.",
		Source: "Each read in the text or a quotation of it",
		About:  "unit.occupant_lb unit.patient_lb",
		Aside:  true,
	},
	page.HowKnown,
	page.EvenOdds,
	page.NineInTen,
	{
		Name: "Remount",
		Text: "An existing module taken off its old chassis and put on a new one. “Refurbishing and " +
			"remounted vehicles are not covered by this standard”, says KKK-A-1822F, so the " +
			"purchaser's own rules judge it.",
		Source: "KKK-A-1822F, as quoted from its text, read",
	},
	page.EditionAndContent,
}
