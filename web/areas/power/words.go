package power

import "boxwright/web/page"

// words of the area, in the order they are met.
var words = []*page.Term{
	page.LikelyRange,
	page.HotIdle,
	{
		Name: "Duty modes",
		Text: "Parked, driving, responding, on scene: the catalogue says what draws how much in each. " +
			"Each is checked against the alternator at 200 F under the hood and high idle.",
		Source: page.KKKE,
		About:  "power.parked power.driving power.responding power.scene",
	},
	{
		Name:   "Medical load",
		Text:   "Current kept free for medical devices, counted on scene whether or not they are aboard.",
		Source: page.KKKE,
		About:  "power.medical-load",
		Aside:  true,
	},
	{
		Name: "Generating capacity remaining",
		Text: "What is left at 200 F under the hood and high idle with the whole load on. The " +
			"specification wants this number on a tag in the unit.",
		Source: page.KKKE,
		About:  "power.remaining",
	},
	{
		Name: "Minutes on battery",
		Text: "The faster a battery is emptied, the less it gives; Peukert's law tells the minutes. Lead " +
			"batteries that also start the engine give half of their capacity, a lithium house battery most of it.",
		Source: page.Practice,
		About:  "power.battery-minutes",
	},
	{
		Name:   "Shed",
		Text:   "The order in which loads are switched off to spare the batteries. Never: it stays on.",
		Source: "The catalogue's load management",
	},
	{
		Name:   "80 % rule",
		Text:   "A continuous load, such as a charger or a heater, may take 80 % of what the breaker is rated for.",
		Source: page.Practice,
		About:  "power.shore power.inlet",
	},
	{
		Name: "Inverter",
		Text: "Makes 125 V from the batteries while no shore line is plugged in. What it feeds draws about 8 A at " +
			"12 V for each 100 W, and counts in the load responding and on scene. All of it at once is checked " +
			"against what the inverter can carry continuously.",
		Source: "The rating in the catalogue",
		About:  "power.inverter",
		Aside:  true,
	},
}
