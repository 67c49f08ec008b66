package standards

import (
	"boxwright/config"
	"boxwright/config/quantity"
)

// State and county texts that carry usable numbers. None of the texts gave a
// date with the number unless its row says so.

func indiana() Set {
	const src = "836 IAC 1-3-3 (casetext.com)"
	seen := config.ReadInText
	return Set{ID: Indiana, Label: "Indiana, 836 IAC 1-3-3", AddOn: true, Clauses: []Clause{
		one("in-width-most", "Overall width, most", "At most 96 in, less mirrors, lights and trim.", "space.width",
			config.AtMost, 96, quantity.Inch, src, seen),
		one("in-width-least", "Overall width, least", "At least 75 in, less mirrors, lights and trim.", "space.width",
			config.AtLeast, 75, quantity.Inch, src, seen),
		one("in-height", "Overall height", "At most 110 in with warning devices, less the antenna.",
			"space.height-all", config.AtMost, 110, quantity.Inch, src, seen),
		one("in-wheelbase", "Wheelbase", "At least 123 in.", "chassis.wheelbase", config.AtLeast, 123, quantity.Inch,
			src, seen),
		declared("in-speed", "Speed", "The vehicle holds 65 mph.", src, seen),
		declared("in-tread", "Tire tread", "At least 2/32 in on the rear and 4/32 in on the front.", src, seen),
	}}
}

func nevada() Set {
	const src = "NAC 450B.550 (regulations.justia.com)"
	seen := config.ReadInText
	return Set{ID: Nevada, Label: "Nevada, NAC 450B.550", AddOn: true, Clauses: []Clause{
		one("nv-volume", "Volume", "At least 300 cubic feet; read here as the patient compartment before cabinets.",
			"space.interior", config.AtLeast, 300, quantity.CubicFoot, src, seen),
		one("nv-headroom", "Headroom", "At least 60 in.", "space.headroom", config.AtLeast, 60, quantity.Inch, src,
			seen),
		one("nv-storage", "Storage", "At least 35 cubic feet.", "space.storage", config.AtLeast, 35, quantity.CubicFoot,
			src, seen),
		one("nv-bench", "Squad bench, length", "At least 72 in.", "space.bench", config.AtLeast, 72, quantity.Inch, src,
			seen),
		one("nv-bench-width", "Squad bench, width", "At least 22 in.", "space.bench-width", config.AtLeast, 22,
			quantity.Inch, src, seen),
		one("nv-walkway", "Walkway", "At least 18 in.", "space.aisle", config.AtLeast, 18, quantity.Inch, src, seen),
		declared("nv-kneeling", "Kneeling space", "At least 25 in.", src, seen),
		declared("nv-light", "Light", "At least 40 candlepower.", src, seen),
	}}
}

func laCounty() Set {
	const src = "Los Angeles County Code 7.16.215 (lacounty-ca.elaws.us)"
	seen := config.ReadInText
	return Set{ID: LACounty, Label: "Los Angeles County, 7.16.215", AddOn: true, Clauses: []Clause{
		one("ca-la-headroom", "Headroom", "At least 60 in.", "space.headroom", config.AtLeast, 60, quantity.Inch, src,
			seen),
		one("ca-la-aisle", "Clear width", "At least 12 in between bench and cot.", "space.aisle", config.AtLeast, 12,
			quantity.Inch, src, seen),
		one("ca-la-length", "Length of the patient compartment", "At least 113 in.", "space.inside-length",
			config.AtLeast, 113, quantity.Inch, src, seen),
		one("ca-la-seat-cot", "Clear length, seat to cot", "At least 12 in between seat and cot; read here as the "+
			"attendant's, locked foremost.", "space.seat-cot", config.AtLeast, 12, quantity.Inch, src, seen),
		one("ca-la-cot-door", "Clear length, cot to door", "At least 12 in between cot and door.", "space.cot-door",
			config.AtLeast, 12, quantity.Inch, src, seen),
		one("ca-la-door", "Rear door", "At least 46 in; read here as width and height of the doorway.",
			"space.rear-door", config.AtLeast, 46, quantity.Inch, src, seen),
	}}
}

func washington() Set {
	const src = "WAC 246-976-290 (lawfilesext.leg.wa.gov; law.cornell.edu)"
	seen := config.ReadInText
	return Set{ID: Washington, Label: "Washington, WAC 246-976-290", AddOn: true, Clauses: []Clause{
		one("wa-length", "Length of the patient compartment", "At least 112 in.", "space.inside-length", config.AtLeast,
			112, quantity.Inch, src, seen),
		one("wa-aisle", "Walkway", "At least 9 in.", "space.aisle", config.AtLeast, 9, quantity.Inch, src, seen),
		one("wa-headroom", "Headroom", "At least 53 in.", "space.headroom", config.AtLeast, 53, quantity.Inch,
			src+", current text", seen),
		{ID: "wa-light", Title: "Light", Text: "At least 20 foot-candles, in an older text.", Rows: []Row{{Edition: "older text", Old: true, Source: src, Basis: seen}}},
	}}
}

func newYork() Set {
	const src = "10 NYCRR 800.22 (regulations.justia.com)"
	seen := config.ReadInText
	return Set{ID: NewYork, Label: "New York, 10 NYCRR 800.22", AddOn: true, Clauses: []Clause{
		one("ny-headroom", "Headroom", "At least 54 in, for vehicles after 1980.", "space.headroom", config.AtLeast, 54,
			quantity.Inch, src, seen),
		declared("ny-climate", "Temperature", "The patient compartment is held at about 75 F.", src, seen),
	}}
}
