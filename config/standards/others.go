package standards

import (
	"boxwright/config"
	"boxwright/config/quantity"
)

// astm is ASTM F2020, of which only the payload minima were read.
func astm() Set {
	return Set{ID: ASTM, Label: "ASTM F2020",
		Note: "Only the payload minima were read, in a published comparison; none was found for the additional-duty " +
			"types.",
		Clauses: []Clause{{ID: "f2020-payload", Title: "Payload", Text: "The unit carries at least the minimum " +
			"payload of its type.", Figure: "weight.payload", Sense: config.AtLeast, Unit: quantity.Pound,
			Rows: []Row{
				{For: typeII, Value: 1700, Source: cmp, Basis: config.ReadInText},
				{For: rear(plain, 2), Value: 1500, Source: cmp + ", modular with single rear wheels", Basis: config.ReadInText},
				{For: rear(plain, 4), Value: 1750, Source: cmp, Basis: config.ReadInText},
			}}}}
}

// mild is a clause that rests on more than its text: what a wire may carry is from memory.
func mild(c Clause) Clause {
	c.Mild = true
	return c
}

// own is the purchaser's own requirement in the manner of NFPA 1917: the
// purchaser sets the payload, and no number is built in that was not read.
func own() Set {
	open := func(source string) []Row { return []Row{{Open: true, Source: source, Basis: config.Purchaser}} }
	const (
		notFound  = "number not found in a text that was read"
		chapter13 = "public fire-apparatus specification after NFPA 1901 chapter 13 (bendix.manymanuals.es, p108)"
	)
	return Set{ID: Own, Label: "Purchaser's own, NFPA 1917 style",
		Note: "NFPA 1917 was in force for contracts from Jan 1, 2013, its second edition from 2015. The purchaser " +
			"sets the payload and whatever else is to be judged; the weight numbers of NFPA 1917, NFPA 1900 and the " +
			"CAAS standard could not be read and are not built in.",
		Clauses: []Clause{
			{ID: "own-payload", Title: "Payload", Text: "The purchaser sets the minimum usable payload.", Figure: "weight.payload", Sense: config.AtLeast, Unit: quantity.Pound, Rows: []Row{{Open: true, Source: cmp, Basis: config.Purchaser}}},
			{ID: "own-front-share", Title: "Weight on the front axle", Text: "The purchaser sets the least share on the front axle.", Figure: "weight.front-share", Sense: config.AtLeast, Unit: quantity.Percent, Rows: open(notFound)},
			{ID: "own-side", Title: "Left and right", Text: "The purchaser sets the greatest difference of the two sides.", Figure: "weight.side", Sense: config.AtMost, Unit: quantity.Percent, Rows: open(notFound)},
			{ID: "own-cg-height", Title: "Height of the center of gravity", Text: "The purchaser sets the greatest height.", Figure: "weight.cg-height", Sense: config.AtMost, Unit: quantity.Inch, Rows: open(notFound)},
			{ID: "own-remaining", Title: "Generating capacity in reserve", Text: "The purchaser sets the current to be left over on scene, at 200 F.", Figure: "power.remaining", Sense: config.AtLeast, Unit: quantity.Amp, Rows: open(notFound)},
			{ID: "own-storage", Title: "Inside storage", Text: "The purchaser sets the least enclosed storage.", Figure: "space.storage", Sense: config.AtLeast, Unit: quantity.CubicFoot, Rows: open(notFound)},
			{ID: "own-headroom", Title: "Headroom", Text: "The purchaser sets the least headroom.", Figure: "space.headroom", Sense: config.AtLeast, Unit: quantity.Inch, Rows: open(notFound)},
			{ID: "own-oxygen", Title: "Oxygen", Text: "The purchaser sets the least oxygen to be carried.", Figure: "space.oxygen", Sense: config.AtLeast, Unit: quantity.Liter, Rows: open(notFound)},
			{ID: "own-battery", Title: "Minutes on battery", Text: "The purchaser sets how long the scene load runs with the engine off.", Figure: "power.battery-minutes", Sense: config.AtLeast, Unit: quantity.Minute, Rows: open(notFound)},
			{ID: "own-generating", Title: "Generating system", Text: "The alternator's hot output carries the scene load.", Figure: "power.scene", Rows: []Row{{Source: "rating of the alternator", Basis: config.Rating}}},
			declared("own-load-analysis", "Electrical load analysis", "An analysis lists the alternator's nameplate "+
				"and rating, each item of the minimum continuous load, each further continuous item and each "+
				"intermittent one.", chapter13, config.ReadInText),
			mild(one("own-wire-size", "Circuit feeder wire, size",
				"Each circuit's wire carries 125 % of the current it is protected for.", "power.wire-carry",
				config.AtLeast, 125, quantity.Percent, chapter13, config.ReadInText)),
			mild(one("own-wire-drop", "Circuit feeder wire, drop", "The voltage drops at most 10 % from source to "+
				"device.", "power.wire-drop", config.AtMost, 10, quantity.Percent, chapter13, config.ReadInText)),
			declared("own-circuits", "Circuit feeder wire, type", "Wire is of SAE J1127 or J1128 type SXL, GXL or TXL.",
				chapter13, config.ReadInText),
			declared("own-low-voltage", "Low-voltage alarm", "The alarm sounds within 140 s of 11.70 V.",
				"public fire-apparatus specification after NFPA 1901 chapter 13", config.ReadInText),
		}}
}

// federal clauses bind every unit, whatever set is chosen.
func federal() Set {
	return Set{ID: "us-federal", Label: "Federal safety and certification rules",
		Clauses: []Clause{
			{ID: "cfr-567.4-gvwr", Title: "GVWR", Text: "The GVWR is not below the unloaded vehicle, its cargo and 150 lb for each designated seat.", Figure: "weight.gross", Rows: []Row{{Source: "49 CFR 567.4(g)(3) as quoted in nhtsa.gov/interpretations/aiam2229", Basis: config.ReadInText}}},
			{ID: "cfr-567.4-occupant", Title: "Occupants", Text: "At least 150 lb is counted for each designated seat.", Figure: "chassis.occupant", Sense: config.AtLeast, Unit: quantity.Pound, Mild: true, Rows: []Row{{Value: OccupantFederal, Source: "49 CFR 567.4(g)(3) as quoted in nhtsa.gov/interpretations/aiam2229", Basis: config.ReadInText}}},
			{ID: "nhtsa-gvwr-gawr", Title: "GVWR against the sum of the axle ratings", Text: "The GVWR should not exceed the sum of the axle ratings.", Figure: "chassis.gvwr-over-axles", Sense: config.AtMost, Unit: quantity.Pound, Mild: true, Rows: []Row{{Source: "nhtsa.gov/interpretations/aiam0613", Basis: config.ReadInText}}},
			{ID: "cfr-571.120-front", Title: "Front tires", Text: "The maximum loads of an axle's tires add up to its rating or more; a passenger-car tire counts for its load divided by 1.10.", Figure: "weight.gawr-tires-front", Rows: []Row{{Source: "49 CFR 571.120 S5.1.2 as quoted in nhtsa.gov node/75076 and node/71386", Basis: config.ReadInText}}},
			{ID: "cfr-571.120-rear", Title: "Rear tires", Text: "The maximum loads of an axle's tires add up to its rating or more; a passenger-car tire counts for its load divided by 1.10.", Figure: "weight.gawr-tires-rear", Rows: []Row{{Source: "49 CFR 571.120 S5.1.2 as quoted in nhtsa.gov node/75076 and node/71386", Basis: config.ReadInText}}},
		}}
}
