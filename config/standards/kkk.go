package standards

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Where the clauses of the federal ambulance specification were read.
const (
	cmp       = "comparison of NFPA, KKK-A-1822F and ASTM F2020 (slideplayer.com/slide/1463288)"
	cmp2      = "Differences Between NFPA 1917, KKK-F and ASTM (paperzz.com/doc/8327792)"
	kkkE      = "KKK-A-1822E, sheet "
	recalledF = "KKK-A-1822F"
	recalledE = "KKK-A-1822E 3.5.2"
	amdBids   = "AMD list as public bid documents give it (docs.southbendin.gov 317583 p27; docs.cabarruscounty.us " +
		"1617289 p87)"
	amdAdds     = "trailer-bodybuilders.com, ten new AMD standards"
	amdRecalled = "AMD list"
	amd2019     = "ntea.com, AMD Standardized Test Methods"
	notice8     = "fama.org, Staying Compliant in the Evolving World of Ambulances"
	revE, revF  = "revision E, Jun 1, 2002", "revision F, Aug 1, 2007"
)

var (
	dayE = day(2002, 6, 1) // revision dates: fdocuments.in AmbSpecs KKK 1822; pdfdrive.to
	dayF = day(2007, 8, 1)

	typeII = For{Types: []string{"II"}}
	typeAD = For{Types: []string{"I-AD", "III-AD"}}
	plain  = For{Types: []string{"I", "III"}}
)

func rear(f For, tires int) For { f.Rear = tires; return f }

func rowF(f For, v float64, source string, basis config.Basis) Row {
	return Row{Edition: revF, From: dayF, For: f, Value: v, Source: source, Basis: basis}
}

func rowE(f For, v float64) Row {
	return Row{Edition: revE, From: dayE, For: f, Value: v, Source: recalledE, Basis: config.FromMemory}
}

// recalled is a clause of revision F that nobody read: a labeled default.
func recalled(id, title, text, figure string, sense config.Sense, v float64, unit string) Clause {
	return Clause{ID: id, Title: title, Text: text, Figure: figure, Sense: sense, Unit: unit,
		Rows: []Row{rowF(For{}, v, recalledF, config.FromMemory)}}
}

// fitted is a recalled clause about what not every unit has.
func fitted(id, title, text, figure string, sense config.Sense, v float64, unit string) Clause {
	c := recalled(id, title, text, figure, sense, v, unit)
	c.Fitted = true
	return c
}

// readE is a declared clause read in revision E.
func readE(id, title, text, where string) Clause {
	return Clause{ID: id, Title: title, Text: text,
		Rows: []Row{{Edition: revE, From: dayE, Source: kkkE + where, Basis: config.ReadInText}}}
}

// kkk is the federal specification for the Star-of-Life ambulance, revision F,
// with the clauses of revision E that were read where F was not. Refurbished
// and remounted units stand outside it (contents of revision F).
func kkk() Set {
	s := Set{ID: KKK, Label: "KKK-A-1822F", Declaration: "kkk-declaration",
		Note: "Payload and GVWR bands as published comparisons of revision F give them; electrical and body " +
			"clauses as read in revision E. Numbers marked from memory are defaults to be replaced. Refurbished and " +
			"remounted vehicles are not covered by the specification.",
		OccupantLb: &config.Limit{Value: 175, Clause: "kkk-payload-sign",
			Source: "KKK-A-1822F figure 2", Basis: config.FromMemory},
		PatientLb: &config.Limit{Value: 175, Clause: "kkk-payload-sign",
			Source: "KKK-A-1822F figure 2", Basis: config.FromMemory},
	}
	s.Clauses = append(s.Clauses, Clause{ID: s.Declaration, Title: "Builder's declaration",
		Text: "Who certifies the unit declares it to the specification.", Rows: []Row{{Edition: revF, From: dayF,
			Source: recalledF, Basis: config.FromMemory}}})
	s.Clauses = append(s.Clauses, kkkWeight()...)
	s.Clauses = append(s.Clauses, kkkElectrical()...)
	s.Clauses = append(s.Clauses, kkkBody()...)
	s.Clauses = append(s.Clauses, amdTests()...)
	return s
}

func kkkWeight() []Clause {
	const band = "KKK-A-1822F 3.1.2 and 6.1.2, as in "
	return []Clause{
		{ID: "kkk-payload", Title: "Payload", Text: "The unit carries at least the minimum payload of its type: GVWR " +
			"less curb weight.", Figure: "weight.payload", Sense: config.AtLeast, Unit: quantity.Pound,
			Rows: []Row{
				rowF(typeII, 1500, cmp, config.ReadInText), rowF(plain, 1750, cmp, config.ReadInText), rowF(typeAD,
					2250, cmp, config.ReadInText),
				rowE(typeII, 1500), rowE(rear(plain, 2), 1500), rowE(rear(plain, 4), 1750), rowE(typeAD, 2250),
			}},
		{ID: "kkk-gvwr-least", Title: "GVWR band, least", Text: "The GVWR is not below the band of the type.",
			Figure: "chassis.gvwr", Sense: config.AtLeast, Unit: quantity.Pound,
			Rows: []Row{
				rowF(For{Types: []string{"I"}}, 10001, band+cmp2, config.ReadInText), rowF(For{Types: []string{"I-AD"}},
					14001, band+cmp2, config.ReadInText),
				rowF(typeII, 9201, recalledF, config.FromMemory), rowF(For{Types: []string{"III"}}, 10001, recalledF,
					config.FromMemory), rowF(For{Types: []string{"III-AD"}}, 14001, recalledF, config.FromMemory),
			}},
		{ID: "kkk-gvwr-most", Title: "GVWR band, most", Text: "The GVWR is not above the band of the type; a heavier " +
			"chassis is of the additional-duty type.", Figure: "chassis.gvwr", Sense: config.AtMost,
			Unit: quantity.Pound,
			Rows: []Row{
				rowF(For{Types: []string{"I"}}, 14000, band+cmp2, config.ReadInText),
				rowF(typeII, 10000, recalledF, config.FromMemory), rowF(For{Types: []string{"III"}}, 14000, recalledF,
					config.FromMemory),
			}},
		{ID: "kkk-front-share", Title: "Weight on the front axle", Text: "A least share of the gross weight rides on " +
			"the front axle. The number was not read; enter the purchaser's own.", Figure: "weight.front-share",
			Sense: config.AtLeast, Unit: quantity.Percent,
			Rows: []Row{{Edition: revF, From: dayF, Open: true,
				Source: "KKK-A-1822F weight distribution; number not read", Basis: config.Purchaser}}},
		{ID: "kkk-side", Title: "Left and right", Text: "The two sides differ by no more than a stated share. The " +
			"number was not read; enter the purchaser's own.", Figure: "weight.side", Sense: config.AtMost,
			Unit: quantity.Percent,
			Rows: []Row{{Edition: revF, From: dayF, Open: true,
				Source: "KKK-A-1822F weight distribution; number not read", Basis: config.Purchaser}}},
		{ID: "kkk-payload-sign", Title: "Payload sign and form", Text: "The certification and payload sign is fitted " +
			"and the payload calculation form is filled in.",
			Rows: []Row{{Edition: revF, From: dayF, Source: "KKK-A-1822F contents, figures 1 and 2 (pdfdrive.to)",
				Basis: config.ReadInText}}},
	}
}

func kkkElectrical() []Clause {
	return []Clause{
		{ID: "kkk-generating", Title: "Generating system", Text: "With 200 F under the hood, at regulated voltage " +
			"and at or below high idle, the alternator carries the minimum continuous load and everything added.",
			Figure: "power.scene",
			Rows:   []Row{{Edition: revE, From: dayE, Source: kkkE + "33 (3.7.6)", Basis: config.ReadInText}}},
		{ID: "kkk-remaining-tag", Title: "Tag of remaining capacity", Text: "A written tag states the generating " +
			"capacity remaining at 200 F after the total load as built, options included (test AMD 005).",
			Figure: "power.remaining",
			Rows:   []Row{{Edition: revE, From: dayE, Source: kkkE + "33 (3.7.6)", Basis: config.ReadInText}}},
		{ID: "kkk-medical-load", Title: "Medical load", Text: "The minimum continuous load holds a medical load of " +
			"20 A or equal.", Figure: "power.medical-load", Sense: config.AtLeast, Unit: quantity.Amp,
			Rows: []Row{{Edition: revE, From: dayE, Value: 20, Source: kkkE + "33 (3.7.6)", Basis: config.ReadInText}}},
		readE("kkk-load-list", "Minimum continuous load", "Beside the medical load: patient dome lights on high, "+
			"module air conditioning at its coldest and highest blower, warning lights in the daytime primary mode.",
			"33 (3.7.6)"),
		readE("kkk-monitor", "Electrical monitor and high idle", "There is an ammeter, a voltmeter or a low-voltage "+
			"warning, and an automatic high idle.", "33 (3.7.6.1 to 3.7.6.3)"),
		recalled("kkk-wire-size", "Size of wires", "Wire carries 125 % of the current it is protected for.",
			"power.wire-carry", config.AtLeast, 125, quantity.Percent),
		{ID: "kkk-wiring", Title: "Wiring", Text: "Wire is of SAE J1128 type SXL or GXL in loom for 300 F.",
			Rows: []Row{rowF(For{}, 0, recalledF, config.FromMemory)}},
		{ID: "kkk-wire-marking", Title: "Marking of wires", Text: "Every wire is marked with its function at least " +
			"every 4 in.", Rows: []Row{rowF(For{}, 0, recalledF, config.FromMemory)}},
		{ID: "kkk-shore", Title: "Shore line", Text: "The shore line is for 125 V and 20 A, with ground-fault " +
			"protection.",
			Rows: []Row{rowF(For{}, 0, recalledF, config.FromMemory)}},
		readE("kkk-flash", "Flash rate", "Each emergency light flashes 75 to 125 times a minute.", "41 (3.8.2.2)"),
		readE("kkk-beam", "Beam spread", "Warning lights spread at least 5 degrees up and down and 45 degrees left "+
			"and right.", "41"),
		readE("kkk-light-test", "Warning light test",
			"Warning lights are tested at 14.2 V; their colors keep SAE J578.", "41 and 42 (3.8.2.5)"),
		{ID: "kkk-flood-height", Title: "Flood lights, height", Text: "Flood lights stand at least 75 in above the " +
			"ground.", Figure: "space.flood-height", Sense: config.AtLeast, Unit: quantity.Inch,
			Rows: []Row{{Edition: revE, From: dayE, Value: 75, Source: kkkE + "42 (3.8.3)", Basis: config.ReadInText}}},
		readE("kkk-flood", "Flood and loading lights",
			"Flood and loading lights aim 12 to 18 degrees down and give at "+
				"least 800 beam candela a side, 500 for loading; loading lights too stand at least 75 in above the "+
				"ground.",
			"42 (3.8.3)"),
	}
}

func kkkBody() []Clause {
	return []Clause{
		{ID: "kkk-length", Title: "Overall length",
			Text: "The vehicle is no longer than 264 in, additional duty types " +
				"left out.", Figure: "space.length", Sense: config.AtMost, Unit: quantity.Inch,
			Rows: []Row{
				rowF(For{Types: []string{"I", "II", "III"}}, 264, recalledF, config.FromMemory)}},
		recalled("kkk-width", "Overall width", "The vehicle is no wider than 96 in, less mirrors, lamps and trim.",
			"space.width", config.AtMost, 96, quantity.Inch),
		recalled("kkk-height", "Overall height", "The vehicle is no higher than 110 in, roof equipment "+
			"counted, antennas not.", "space.height-all", config.AtMost, 110, quantity.Inch),
		recalled("kkk-floor", "Floor height", "The patient compartment's floor is no higher than 34 in.",
			"chassis.floor-height", config.AtMost, 34, quantity.Inch),
		recalled("kkk-approach", "Approach angle", "Loaded, the vehicle drives up a slope of at least 10 degrees.",
			"space.approach", config.AtLeast, 10, quantity.Degree),
		recalled("kkk-breakover", "Breakover angle", "Loaded, the vehicle crosses a crest of at least 10 degrees.",
			"space.breakover", config.AtLeast, 10, quantity.Degree),
		recalled("kkk-departure", "Departure angle", "Loaded, the vehicle leaves a slope of at least 10 degrees.",
			"space.departure", config.AtLeast, 10, quantity.Degree),
		recalled("kkk-rear-doorway", "Rear doorway", "It is at least 44 in wide and 46 in high; judged here by the "+
			"less of the two against 44 in.", "space.rear-door", config.AtLeast, 44, quantity.Inch),
		recalled("kkk-headroom", "Headroom", "There are at least 60 in over the floor.", "space.headroom",
			config.AtLeast, 60, quantity.Inch),
		recalled("kkk-aisle", "Walkway", "There are at least 12 in beside the cot.", "space.aisle", config.AtLeast, 12,
			quantity.Inch),
		recalled("kkk-inside-length", "Length of the patient compartment",
			"The patient compartment is at least 116 in long.", "space.inside-length", config.AtLeast, 116,
			quantity.Inch),
		fitted("kkk-bench", "Squad bench, length", "The squad bench is at least 72 in long.", "space.bench",
			config.AtLeast, 72, quantity.Inch),
		fitted("kkk-bench-width", "Squad bench, width", "The squad bench is at least 22 in wide.",
			"space.bench-width", config.AtLeast, 22, quantity.Inch),
		recalled("kkk-storage", "Inside storage", "There are at least 30 cubic feet of enclosed storage.",
			"space.storage", config.AtLeast, 30, quantity.CubicFoot),
		recalled("kkk-oxygen", "Oxygen", "At least 3,000 liters of oxygen are carried.", "space.oxygen", config.AtLeast,
			3000, quantity.Liter),
		readE("kkk-mounts", "Body mounts", "Types I and III: at least four mounts a side on bodies up to 146 in, "+
			"five a side above.", "50 (3.10.7)"),
		readE("kkk-fasteners", "Fasteners and skirt", "Fasteners stand at most 18 in apart; the skirt hangs at most "+
			"3 in below cab and body.", "50"),
		{ID: "kkk-front-compartment", Title: "Front compartment", Text: "If an inside and outside compartment is " +
			"ordered at the right front, it is at least 30 in wide, 18 deep and 40 high.", Ordered: true,
			Figure: "space.front-compartment", Sense: config.AtLeast, Unit: quantity.Percent,
			Rows: []Row{{Edition: revE, From: dayE, Value: 100, Source: kkkE + "55 (3.11.1.2)",
				Basis: config.ReadInText}}},
		readE("kkk-ventilation", "Ventilation", "Standing still, the air of each compartment changes completely at "+
			"least every two minutes.", "65 (3.13.6)"),
		readE("kkk-climate", "Climate test", "The air-conditioning test begins after three hours' soak at 95 F and "+
			"runs at high idle.", "65"),
		readE("kkk-cold-start", "Cold start", "The engine starts at 0 F (diesel) or -20 F (gasoline).", "24 (3.6.3.2)"),
		{ID: "kkk-seats-litters", Title: "Seats and litters",
			Text: "Seats keep SAE J3026 and litters SAE J3027: 22.5 g from the front, 26.0 g from the side.",
			Rows: []Row{{Edition: "change notice 8, Jul 1, 2015", From: day(2015, 7, 1), Source: notice8,
				Basis: config.ReadInText}}},
	}
}

// amdTests are the test methods the specification calls up. Only the year of
// the 2019 edition was read, so its rows run from the first of January.
func amdTests() []Clause {
	out := []Clause{
		{ID: "amd-001", Title: "AMD 001, body structure", Text: "The body structure passes the static load test; " +
			"since the 2019 edition the number is reserved and SAE J3057 takes its place.",
			Rows: []Row{{Edition: "2019 edition", From: day(2019, 1, 1), Source: amd2019, Basis: config.ReadInText},
				{Edition: "before 2019", Source: amdBids, Basis: config.ReadInText}}},
		{ID: "amd-003", Title: "AMD 003, reserved", Text: "Reserved since the 2019 edition; SAE J3043 (equipment " +
			"mounts) takes its place.",
			Rows: []Row{{Edition: "2019 edition", From: day(2019, 1, 1), Source: amd2019, Basis: config.ReadInText},
				{Edition: "before 2019, oxygen tank retention", Source: amdRecalled, Basis: config.FromMemory}}},
		declared("amd-005", "AMD 005, 12 V electrical system", "The electrical system passes the test.", kkkE+"33",
			config.ReadInText),
		declared("amd-012", "AMD 012, interior climate", "The interior climate control passes the test.",
			"title of a public bid document", config.ReadInText),
	}
	for _, t := range []struct{ no, subject string }{
		{"016", "lighting levels"}, {"017", "road test"}, {"018", "rear step and bumper static load"}, {"019", "cabinet measuring"}, {"020", "floor distributed load"},
		{"021", "aspirator"}, {"022", "cold start"}, {"023", "siren"}, {"024", "perimeter illumination"}, {"025", "occupant head-clearance zones"},
	} {
		out = append(out, declared("amd-"+t.no, "AMD "+t.no+", "+t.subject, "The unit passes the test.", amdAdds,
			config.ReadInText))
	}
	for _, t := range []struct{ no, subject string }{
		{"002", "door retention"}, {"004", "litter retention"}, {"006", "sound level"}, {"007", "carbon monoxide"}, {"008", "grab rail"}, {"009", "125 V system"},
		{"010", "water spray"}, {"011", "equipment temperature"}, {"013", "weight distribution"}, {"014", "engine cooling"}, {"015", "oxygen system"},
	} {
		out = append(out, declared("amd-"+t.no, "AMD "+t.no+", "+t.subject, "The unit passes the test.", amdRecalled,
			config.FromMemory))
	}
	slices.SortFunc(out, func(a, b Clause) int { return strings.Compare(a.ID, b.ID) })
	return append(out, Clause{ID: "amd-028", Title: "AMD 028, vertical static load", Text: "The unit passes the test.",
		Rows: []Row{{Edition: "2019 edition", From: day(2019, 1, 1), Source: amd2019, Basis: config.ReadInText}}})
}
