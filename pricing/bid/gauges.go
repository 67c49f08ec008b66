package bid

import (
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
)

// gauge is a figure of the unit as purchasers name it.
type gauge struct {
	code  string // of the figure; or one of the facts in facts.go
	label string // for readers
	unit  string // of the amount it is held against
	sense config.Sense
	names string // each parted by |; one of them is in the line with all its words
	also  string // words that may stand beside and change nothing
	under string // conditions the figure is worked out under, "15 L/min"
	exact bool   // an amount stated without comparison is met only by the same
}

const (
	atLeast = config.AtLeast
	atMost  = config.AtMost
	lb      = quantity.Pound
	inch    = quantity.Inch
)

// gauges in the order they are tried: the particular before the general.
var gauges = []gauge{
	{factGAWRFront, "Front GAWR", lb, atLeast, "front gawr|front axle gawr|gawr front",
		"axle weight load chassis raise increase upgrade",
		"", false},
	{factGAWRRear, "Rear GAWR", lb, atLeast, "rear gawr|rear axle gawr|gawr rear", "axle weight load chassis", "", false},
	{factGAWRFrontLeast, "Front GAWR", lb, atLeast, "front axle", "weight chassis raise increase upgrade", "", false},
	{factGAWRRearLeast, "Rear GAWR", lb, atLeast, "rear axle", "weight chassis raise increase upgrade", "", false},
	{"weight.curb-front", "Front axle, unloaded", lb, atMost, "front axle unload|front axle empty|front axle curb",
		"weight load tare", "", false},
	{"weight.curb-rear", "Rear axle, unloaded", lb, atMost, "rear axle unload|rear axle empty|rear axle curb",
		"weight load tare", "", false},
	{"weight.front-axle", "Front axle, full load", lb, atMost,
		"front axle load|load front axle|front axle weight|weight front axle", "full fully actual steer", "",
		false},
	{"weight.rear-axle", "Rear axle, full load", lb, atMost,
		"rear axle load|load rear axle|rear axle weight|weight rear axle", "full fully actual", "", false},
	{shareFrontReserve, "Front axle reserve, of its rating", quantity.Percent, atLeast,
		"front axle reserve|front axle margin|reserve front axle|front axle spare|front axle unused|reserve front gawr",
		"remain left full fully load gross weight gawr rating share its occupancy occupant equipment allowance", "",
		false},
	{shareRearReserve, "Rear axle reserve, of its rating", quantity.Percent, atLeast,
		"rear axle reserve|rear axle margin|reserve rear axle|rear axle spare|rear axle unused|reserve rear gawr",
		"remain left full fully load gross weight gawr rating share its occupancy occupant equipment allowance", "",
		false},
	{marginFront, "Front axle reserve", lb, atLeast, "front axle reserve|front axle margin|reserve front axle",
		"remain full fully load gross weight gawr", "", false},
	{marginRear, "Rear axle reserve", lb, atLeast, "rear axle reserve|rear axle margin|reserve rear axle",
		"remain full fully load gross weight gawr", "", false},
	{"weight.front-share", "Front axle share of gross", quantity.Percent, atLeast,
		"front axle gross|front axle share|front axle total|weight front axle",
		"weight vehicle full fully load share percent percentage loaded steer", "", false},
	{"weight.rear-share", "Rear axle share of gross", quantity.Percent, atMost,
		"rear axle gross|rear axle share|rear axle total|weight rear axle",
		"weight vehicle full fully load share percent percentage loaded", "", false},
	{"weight.side", "Left-right difference", quantity.Percent, atMost,
		"side side|left right|left curbside|streetside curbside|lateral weight|side balance",
		"side weight every other difference distribution imbalance between gross full fully load vary", "",
		false},
	{"weight.payload-crewed", "Remaining payload with the crew aboard", lb, atLeast,
		"payload remain crew|remain payload crew", "full after every option crew occupant weight gvwr less", "",
		false},
	{"weight.payload-left", "Remaining payload, GVWR less full load", lb, atLeast,
		"payload remain|remain payload|payload left|payload reserve|reserve payload|spare payload",
		"full fully load after every option crew equipment patient occupant weight gvwr less", "", false},
	{"weight.payload", "Payload, GVWR less curb weight", lb, atLeast, "payload|gvwr less curb weight",
		"usable useful net every chassis full fuel gvwr less curb weight minus after option conversion equal define " +
			"available legal allowable order crew patient cargo leave complete finish built up", "", false},
	{"weight.curb", "Curb weight", lb, atMost, "curb weight|tare weight|empty weight|kerb weight|empty|unload|unload weight|" +
		"weigh unload|weigh empty|weigh dry|dry weight",
		"occupant equipment loose full fluid fuel tank empty top off", "", false},
	{"weight.gross", "Gross weight, full load", lb, atMost, "gross weight|loaded weight|fully load weight",
		"full fully load vehicle as", "", false},
	{factGVWR, "GVWR", lb, atLeast, "gvwr|vehicle weight rating|gross rating|gross vehicle rating",
		"chassis weight cab gross vehicle offer", "", false},
	{"weight.cg-height", "Height of the center of gravity, full load", inch, atMost, "center gravity|cg height",
		"height full fully load high over ground", "", false},
	{"space.approach", "Approach angle, loaded", claims.Degree, atLeast, "approach angle|angle approach",
		"load full fully", "", false},
	{"space.departure", "Departure angle, loaded", claims.Degree, atLeast, "departure angle|angle departure",
		"load full fully", "", false},
	{"space.breakover", "Breakover angle, loaded", claims.Degree, atLeast,
		"breakover|break over angle|ramp angle|angle breakover", "load full fully breakover ramp", "", false},
	{"space.rear-overhang", "Rear overhang of the wheelbase, less steps", quantity.Percent, atMost,
		"rear overhang|overhang rear|overhang", "rear wheelbase wheel base", "", false},
	{"space.bay-length", "Length taken in the bay, rear doors open", inch, atMost,
		"length reardoor open|length door open", "vehicle rear door reardoor open bay long", "", false},
	{"weight.ssf", "Static stability factor, T/2h", "", atLeast,
		"static stability|ssf|rollover stability|stability factor", "factor static stability", "", false},
	{factWheelbase, "Wheelbase", inch, atMost, "wheelbase", "chassis long length wheel base", "", true},
	{"space.headroom", "Headroom over the floor", inch, atLeast,
		"headroom|inside height|ceiling height|head clearance|standing height|standing room",
		"inside patientcompartment patient clear compartment measured floor ceiling finished center aisle " +
			"walkway net area stand stood room over lowest point throughout any", "", false},
	{"space.aisle", "Clear walkway beside the cot", inch, atLeast, "aisle|walkway|walk beside cot|" +
		"pass space beside cot|clear beside cot|space beside cot|room beside cot",
		"clear width beside cot between squadbench streetside cabinet wide patientcompartment center space face",
		"", false},
	{"space.seat-cot", "Clear length from attendant seat to cot, the seat foremost", inch, atLeast,
		"seat cot|cot seat|attendant cot", "clear length between distance space head foot attendant from", "",
		false},
	{"space.cot-door", "Clear length from cot to rear doors", inch, atLeast, "cot reardoor|cot door",
		"clear length between distance space foot end rear from", "", false},
	{"space.length", "Overall length, less bumper and step options", inch, atMost,
		"length exclude bumper|length exclude step|length less bumper|length less step",
		"vehicle bumper rear front step long option", "", false},
	{"space.length-all", "Overall length, with bumpers and steps", inch, atMost,
		"length vehicle|length bumper|length|bumpertobumper", "vehicle bumper rear front step long", "",
		false},
	{factModule, "Module length", inch, atLeast, "module length|length module|module long", "long outside", "", true},
	{"space.bay-width", "Width taken in the bay, side door open", inch, atMost,
		"width sidedoor open|wide sidedoor open|bay width", "vehicle side door sidedoor open bay wide occupy", "",
		false},
	{"space.width", "Overall width, less mirrors, lamps and trim", inch, atMost, "width|wide",
		"less mirror exclude light trim wide outside vehicle", "", false},
	{widthAll, "Overall width, with lamps and rails, less mirrors", inch, atMost,
		"width light|width rail|width rubrail|width trim", "less mirror exclude light rail rubrail trim wide " +
			"outside vehicle", "", false},
	{factSideDoor, "Side entry door, height of the opening", inch, atLeast,
		"sidedoor height|sidedoor high|sidedoor tall", "clear open opening door entry side", "", false},
	{factRearDoor, "Rear doors, height of the opening", inch, atLeast,
		"reardoor height|reardoor high|reardoor tall", "clear open opening door entry rear", "", false},
	{factRearDoorWidth, "Rear doors, width of the opening", inch, atLeast,
		"reardoor width|reardoor wide|reardoor open|reardoor clear", "clear open opening door entry rear", "2",
		false},
	{"space.frontal", "Frontal area, with lamps and roof equipment", quantity.SquareFoot, atMost,
		"frontal area|front area", "vehicle light roof equipment large", "", false},
	{"space.height", "Overall height, less roof equipment", inch, atMost,
		"height exclude roof|high exclude roof|tall exclude roof|high exclude antenna|height exclude equipment|" +
			"height exclude light|height less roof",
		"high tall vehicle ground outside roof equipment light antenna gear other", "", false},
	{"space.height-all", "Overall height, with roof equipment", inch, atMost,
		"height|vehicle height|vehicle tall|station door|bay door|station overhead door|garage door",
		"clear pass under through enter overhead high vehicle over ground outside roof equipment light warnlight lightbar " +
			"top antenna exclude lower", "",
		false},
	{"space.turning-wall", "Turning circle between walls", quantity.Foot, atMost,
		"turn circle wall|turn diameter wall", "circle diameter wall left right between", "", false},
	{factTurnRadius, "Turning radius between curbs", quantity.Foot, atMost, "turn radius|curb curb radius",
		"curb left right between", "", false},
	{"space.turning-circle", "Turning circle between curbs", quantity.Foot, atMost,
		"turn circle|turn diameter|curb curb diameter", "circle diameter curb left right between", "", false},
	{"space.inside-length", "Inside length of the patient compartment", inch, atLeast,
		"inside length|patientcompartment length|compartment length",
		"patientcompartment bulkhead reardoor clear partition rear door patient to front wall", "", false},
	{"space.interior", "Inside volume of the patient compartment, before cabinets", quantity.CubicFoot, atLeast,
		"inside volume|patientcompartment volume", "patientcompartment before cabinet", "", false},
	{"space.bench", "Squad bench, length", inch, atLeast, "squadbench length|squadbench long", "seat attendant curbside", "",
		false},
	{benchAlone, "Squad bench, length", inch, atLeast, "squadbench", "seat", "", false},
	{"space.bench-width", "Squad bench, width", inch, atLeast, "squadbench width|squadbench wide|squadbench deep",
		"", "", false},
	{"space.compartments", "Exterior compartments, inside volume", quantity.CubicFoot, atLeast,
		"outside compartment|outside storage|compartment storage|compartment volume|compartment totaling",
		"totaling outside inside combined volume storage compartment space every net aggregate cubic", "", false},
	{countCompartments, "Exterior compartments", "", atLeast, "outside compartment", "storage curbside", "", false},
	{"space.front-compartment", "Right front compartment, of 30 × 18 × 40 in", quantity.Percent, atLeast,
		"right front compartment|front compartment", "size clause width depth height its least smallest ordered",
		"", false},
	{"space.storage", "Enclosed inside storage", quantity.CubicFoot, atLeast,
		"storage|cabinet volume|inside cabinet|cabinet patientcompartment",
		"enclosed inside cabinet patientcompartment volume space usable", "", false},
	{"space.oxygen-hours", "Oxygen at 15 L/min, down to 200 psi", quantity.Hour, atLeast,
		"oxygen last|oxygen duration|oxygen endurance", "on board continuous flow main", "15 L/min 200 psi", false},
	{"space.oxygen-hours", "Oxygen at 15 L/min, down to 200 psi", quantity.Hour, atLeast, "oxygen",
		"on board continuous flow main medical supply storage", given + "15 L/min", false},
	{"space.litter", "Clear height over a patient", inch, atLeast,
		"clear height patient|height over patient|clearance over litter|litter clearance",
		"clear over litter cot above least", "", false},
	{"space.water", "Shower water, tanks full", quantity.Gallon, atLeast, "shower water|decontamination water",
		"tank fresh full", "", false},
	{"space.water-minutes", "Minutes of shower", quantity.Minute, atLeast, "shower minutes", "water last", "", false},
	{"space.waste", "Waste tanks", quantity.Gallon, atLeast, "waste tank|waste water",
		"tank water shower hold capacity", "", false},
	{"space.air-hours", "Medical air at 10 L/min, down to 200 psi", quantity.Hour, atLeast,
		"medical air last|medical air duration|medical air", "on board continuous flow cylinder supply",
		"10 L/min 200 psi", false},
	{"power.generator", "125 V load on the generator, all at once", quantity.Watt, atMost,
		"load generator|generator load", "every total power", "125 V", false},
	{"space.oxygen", "Oxygen, cylinders full", quantity.Liter, atLeast, "oxygen",
		"on board main medical storage supply tank minimum volume cylinder full aboard carry gas bottle pip together " +
			"patientcompartment pressure", "", false},
	{"power.battery-minutes", "Minutes on battery, scene load, engine off, to half capacity", quantity.Minute,
		atLeast, "battery scene|battery operate|battery operation|battery minutes|battery endurance|minutes " +
			"battery", "endurance alone capacity half duration scene load engine off support power minute " +
			"operation operate on reach charge", "", false},
	{"power.remaining", "Generating capacity remaining at 200 F", quantity.Amp, atLeast,
		"left over load|remain generating|generating reserve|reserve generating|spare generating|remain alternator|reserve " +
			"alternator|generating capacity", "capacity remain reserve alternator total load as hot energize " +
			"operate on every", "200 °F", false},
	{"power.parked", "Parked on the shore line, 12 V load", quantity.Amp, atMost,
		"load park shorelin|load shorelin park|powerload park shorelin", "12 power total", "12 V", false},
	{"power.driving", "Driving, 12 V load", quantity.Amp, atMost, "load drive|powerload drive", "power total",
		"12 V", false},
	{"power.responding", "Responding, 12 V load", quantity.Amp, atMost, "load respond|powerload respond",
		"power total", "12 V", false},
	{"power.scene", "On scene, 12 V load", quantity.Amp, atMost, "load scene|powerload scene", "power total",
		"12 V", false},
	{"power.medical-load", "Medical load counted on scene", quantity.Amp, atLeast, "medical load", "scene count",
		"12 V", false},
	{"power.charger", "Parked on the shore line, 12 V load against the charger", quantity.Amp, atMost,
		"load charger", "park shorelin power total", "12 V", false},
	{"power.idle", "On scene at low idle, 12 V load", quantity.Amp, atMost,
		"load scene idle|powerload scene idle", "power total plain", "12 V", false},
	{"power.shore", "125 V load, all at once, against 80 % of the inlet", quantity.Amp, atMost,
		"load shorelin|load inlet", "every total power", "125 V, 80 %", false},
	{"power.inverter", "125 V load on the inverter, all at once", quantity.Watt, atMost,
		"load inverter|inverter load", "every total power", "125 V", false},
	{"weight.front-tires", "Front tires, full load", lb, atMost, "front tire load|load front tire|front tire",
		"full fully", "", false},
	{"weight.rear-tires", "Rear tires, full load", lb, atMost, "rear tire load|load rear tire|rear tire",
		"full fully", "", false},
	{"space.stowed", "Compartment volume in use", quantity.Percent, atMost, "compartment volume", "outside storage",
		"", false},
	{ratioScene, "On scene, 12 V load, against the alternator hot at high idle", "", atMost,
		"load exceed alternator|powerload exceed alternator",
		"total power load exceed output hot highidle scene every", "", false},
	{"power.wire-drop", "Greatest voltage drop of a circuit, of 12 V", quantity.Percent, atMost,
		"voltage drop|circuit drop", "circuit wire full load source device nominal", "", false},
	{"power.wire-carry", "Least that the wire of a circuit may carry, of its fuse", quantity.Percent, atLeast,
		"wire carry|conductor carry", "circuit fuse current protect", "", false},
	{"space.flood-height", "Lowest flood light above the ground, loaded", inch, atLeast,
		"scenelight height|scenelight high|scenelight over ground", "over ground lowest mount flood len", "", false},
	{factHotIdle, "Alternator, hot at idle", quantity.Amp, atLeast,
		"hot idle alternator|hot idle|alternator hot idle|alternator idle|charge hot idle|charge idle",
		"hot put out produce engine alternator speed charge", "200 °F", false},
	{factCold, "Alternator, nameplate", quantity.Amp, atLeast, "alternator nameplate|alternator",
		"cold nameplate output sae", "", false},
	{countBench, "Seats on the squad bench", "", atLeast, "squadbench seat|squadbench seatedattendant|" +
		"squadbench attendant|squadbench person|squadbench people|seat squadbench|squadbench occupant|squadbench belt",
		"belt person people sit accommodate attendant room space", "", false},
	{countCab, "Seats in the cab", "", atLeast, "cab seat", "front bucket", "", false},
	{countModule, "Seats in the patient compartment", "", atLeast,
		"patientcompartment seat|seat patientcompartment|module seat|module occupant|module passenger|" +
			"seatedattendant|attendant",
		"designated occupant patientcompartment belted belt", "", false},
	{"space.seats", "Designated seats", "", atLeast, "seat designated|designated seat|seat|occupant|passenger",
		"exclude patient person peopl cabincluded total designated occupant include belted crew belt", "",
		false},
	{"space.patients", "Patients on cots", "", atLeast, "cot patient|transport patient|patient litter|patient",
		"transport carry side beside simultaneously at once time patientcompartment cot seat lying down recumbent supine",
		"", false},
	{factFuel, "Fuel tank", claims.Gallon, atLeast, "fuel|gasoline tank|diesel tank", "tank fuel gasoline diesel",
		"", false},
	{"space.loading-height", "Loading height at the rear, loaded", inch, atMost, "load height|floor load",
		"load high over ground floor module entry rear height", "", false},
	{factFloor, "Floor height, loaded", inch, atMost, "floor height",
		"load high over ground floor module entry rear patient patientcompartment", "", false},
	{factDelivery, "Delivery", claims.Days, atMost, "aro|here|deliver|delivery|service purchase order|service order|" +
		"completion|ship", "after receipt order purchase aro award date days calendar ready station " +
		"purchaser notice proceed consecutive contract from receive", "", false},
	{factPrice, "Price", claims.Money, atMost, "price|budget|cost",
		"bid total ceiling purchase every delivered deliver cap limit budget freight base discount top fall come " +
			"land stay", "", false},
}

// ready are the gauges with their words in the form of the lines.
type ready struct {
	*gauge
	names [][]string
	also  map[string]bool
	less  map[string]bool // words of what it leaves out, which a line names to leave it out
	with  map[string]bool // words of what it counts, which no line leaves out
	under []claims.Number
	given bool // only where a line names one of those
}

// adjectival is a name with "long" for "length" and the like; nil where it holds no such word, or
// no other.
func adjectival(name []string) []string {
	for i, w := range name {
		if to := adjectives[w]; to != "" && len(name) > 1 {
			other := slices.Clone(name)
			other[i] = to
			return other
		}
	}
	return nil
}

// dimensionStem is a dimension as a name holds it.
var dimensionStem = map[string]string{"length": stems("length")[0], "width": stems("width")[0],
	"height": stems("height")[0]}

var adjectives = map[string]string{"length": stems("long")[0], "width": stems("wide")[0], "height": stems("tall")[0]}

// given begins the conditions of a gauge that a line asks for only where it names one.
const given = "given "

var readyGauges = func() []ready {
	out := make([]ready, len(gauges))
	for i := range gauges {
		g := &gauges[i]
		r := ready{gauge: g, also: map[string]bool{}}
		for _, n := range strings.Split(g.names, "|") {
			words := stems(n)
			if len(words) > 0 { // idle words alone name nothing
				r.names = append(r.names, words)
			}
			if other := adjectival(words); other != nil {
				r.names = append(r.names, other)
			}
		}
		for _, n := range r.names {
			for _, w := range n {
				r.also[w] = true
			}
		}
		for _, w := range stems(g.also) {
			r.also[w] = true
		}
		if !slices.Contains(wholeVehicle, g.code) && g.code != factDelivery {
			r.also[moduleWord], r.also[chassisWord] = true, true
		}
		r.less, r.with = leftOut[g.code], countedIn[g.code]
		r.under = claims.Numbers(claims.Read(g.under).Tokens)
		r.given = strings.HasPrefix(g.under, given)
		out[i] = r
	}
	return out
}()

// widthAll is the width over lamps and rails, and lightWord the stem of the former.
const widthAll = "space.width-all"

var lightWord = stems("light")[0]

// leftOut and countedIn are the words of what the figures of the whole vehicle leave out and
// what they count, by their codes.
var (
	leftOut = map[string]map[string]bool{"space.length": wordSet("bumper step winch"),
		"space.width": wordSet("mirror light trim"), "space.width-all": wordSet("mirror"),
		"space.height": wordSet("roof equipment light lightbar antenna"), "space.height-all": wordSet("antenna")}
	countedIn = map[string]map[string]bool{"space.length-all": wordSet("bumper step"),
		"space.width-all":  wordSet("light rail rubrail trim"),
		"space.height-all": wordSet("roof equipment light lightbar")}
)

// gaugesByWord are the places of the gauges by the first word of each of their names.
var gaugesByWord = func() map[string][]int {
	out := map[string][]int{}
	for i := range readyGauges {
		for _, n := range readyGauges[i].names {
			if list := out[n[0]]; len(list) == 0 || list[len(list)-1] != i {
				out[n[0]] = append(list, i)
			}
		}
	}
	return out
}()

// gaugesOf are the places of the gauges that words may speak of, in order.
func gaugesOf(words []string) []int {
	var out []int
	for _, w := range words {
		out = append(out, gaugesByWord[w]...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// chassisWord may stand beside every figure that is not of the whole vehicle.
const chassisWord = "chassi"

// wholeVehicle are the sizes of which the module has others.
var wholeVehicle = []string{"space.length", "space.length-all", "space.height", "space.height-all"}

// stems are the words of a phrase in the form of the lines, idle ones too.
func stems(phrase string) []string { return claims.Words(claims.Read(phrase).Tokens) }

// asks reports whether words and amounts ask for a gauge's figure, and how much of it.
func (g *ready) asks(tokens []claims.Token, words []string, list []claims.Number, day config.Date,
	all []string) (claim, bool) {
	named := false
	for _, n := range g.names {
		has := true
		for _, w := range n {
			has = has && slices.Contains(all, w)
		}
		named = named || has
	}
	if !named {
		return claim{}, false
	}
	out := claims.LeftOut(tokens)
	for _, w := range words {
		if !g.also[w] && !plainly[w] && !quiet[w] && !(w == everyWord && out[w]) { // "exclusive of any bumper"
			return claim{}, false
		}
	}
	if slices.Contains(ofRoom, g.code) && slices.ContainsFunc(tokens, claims.Compartments) {
		return claim{}, false // the unit has one patient compartment
	}
	if g.code == everySeat && slices.Contains(words, patientWord) && !out[patientWord] {
		return claim{}, false // "plus two patients" asks for no seats
	}
	if g.code == countBench && slices.ContainsFunc(tokens, func(t claims.Token) bool {
		return t.Word == attendantWord && t.Role == claims.Modifier
	}) {
		return claim{}, false // "bench and attendant seat, seating for four" counts both
	}
	if g.code == payload && slices.ContainsFunc(tokens, func(t claims.Token) bool { return t.After && crewed[t.Word] }) {
		return claim{}, false // "payload after crew" is what they leave of it
	}
	if !g.measures(tokens, words) {
		return claim{}, false
	}
	c := claim{gauge: g.gauge, sense: g.sense, words: words, numbers: list}
	if g.code == factDelivery && !day.IsZero() {
		c.day = day
		return c, len(list) == 0
	}
	if g.code == ratioScene {
		return c, len(list) == 0
	}
	if low, high, ok := g.ends(list); ok {
		c.want, c.most, c.sense, c.stated = low, high, atLeast, true
		return c, g.code != payload || !g.twisted(&c)
	}
	found, given := false, !g.given
	for _, n := range list {
		if conditioned(g.under, n) {
			given = true
			continue
		}
		if n.Each {
			return claim{}, false // the figure is of all together
		}
		if n.Loose && g.code == "power.inverter" {
			return claim{}, false // it may be what the inverter is to carry
		}
		if g.code == patients && tokens[0].Part != tokens[len(tokens)-1].Part && len(n.Near) > 0 &&
			!slices.ContainsFunc(n.Near, func(w string) bool { return w == patientWord || lying[w] }) {
			return claim{}, false // "seats for three, plus a patient"
		}
		v, ok := inUnit(n, g.unit, g.code)
		if !ok || found && (math.Abs(v-c.want) > .015*c.want || v != c.want && c.stated && n.Sense != c.sense) {
			return claim{}, false
		}
		if n.Sense != "" {
			c.sense, c.stated, c.beyond = n.Sense, true, n.Beyond
		}
		if g.code == factDelivery {
			c.unit = n.Unit
		}
		if !found {
			c.want, found = v, true
		}
	}
	c.whole = g.code == widthAll && !slices.Contains(words, lightWord)
	twisted := g.twisted(&c)
	if g.code == benchAlone {
		c.gauge = benchGauge
	}
	return c, found && given && !twisted
}

// crewed are words for who is aboard.
var crewed = wordSet("crew occupant attendant")

// ofRoom are the figures of the patient compartment.
var ofRoom = []string{"space.headroom", "space.inside-length", "space.interior", "space.aisle"}

// twisted reports whether an amount binds a figure on the side that nobody asks for, so that
// another one is meant: an axle that "shall not exceed" is its load, a gross weight of "at
// least" is the rating.
func (g *ready) twisted(c *claim) bool {
	has := func(w string) bool { return slices.Contains(c.words, w) }
	switch g.code {
	case "space.bay-width", "space.bay-length": // "side door opening 30 in wide" is the door's
		return c.want < leastDoor
	case "space.height-all": // a door is wide too, and is cleared by little
		return c.want < leastDoor && slices.Contains(c.words, doorWord) || !c.stated && c.want < bare[g.code].least ||
			slices.ContainsFunc(c.numbers, func(n claims.Number) bool { return n.Of != "" && n.Of != "height" })
	case payload: // "payload plus curb weight" is the rating, and "GVWR 14,500 lb and payload" says that first
		return (has(curbWord) || has(gvwrWord)) && !slices.ContainsFunc(c.words, func(w string) bool { return taking[w] })
	case "weight.front-share", "weight.rear-share": // "not over 90 percent" may be of its own rating
		return c.sense == atMost && c.stated && has(loadWord) &&
			!slices.ContainsFunc(c.words, func(w string) bool { return sharing[w] })
	case "space.compartments": // "storage, inside and outside" is more than they hold
		return has(insideWord) && has(outsideWord) && !has(compartmentWord)
	case factGVWR: // "weight of the module under 3,000 lb" is no rating
		return c.sense == atMost && !has(gvwrWord) && !has(grossWord) &&
			!slices.ContainsFunc(c.numbers, func(n claims.Number) bool { return n.Of == "rating" })
	case "weight.front-tires", "weight.rear-tires": // "rated 9,600 lb" is not what they bear
		return c.sense != atMost || !c.stated
	case "weight.curb", "weight.gross": // of the module or the chassis nothing is told
		return has(moduleWord) || has(chassisWord) || c.sense == atLeast
	case "space.width": // the fenders stand out of the module
		return has(moduleWord)
	case "space.seats": // "seats rated at 20 g" are not as many
		return c.want > mostSeats
	case factDelivery: // "delivery within 30 days of completion"
		return has(completionWord) && len(c.words) > 1
	case factGAWRFrontLeast, factGAWRRearLeast:
		return c.sense == atMost && !slices.ContainsFunc(c.numbers, func(n claims.Number) bool {
			return n.Of == "rating"
		})
	case "space.patients": // "capacity for two patients" does not say on what they lie
		return c.want > 1 && !slices.ContainsFunc(c.words, func(w string) bool { return lying[w] })
	case countModule: // "three attendant seats" are not any three seats
		return slices.Contains(c.words, attendantWord) && slices.Contains(c.words, seatWord)
	case benchAlone: // "72 in bench" is its length; a small amount may be another dimension
		return c.want < leastBench || slices.ContainsFunc(c.numbers, func(n claims.Number) bool { return n.Of != "" })
	}
	return c.sense == atLeast && g.sense == atMost && slices.ContainsFunc(onlyMost, func(code string) bool {
		return strings.HasPrefix(g.code, code)
	})
}

// taking are words by which one weight is taken from another, sharing those of what an axle bears a share.
var (
	taking  = wordSet("less minus")
	sharing = wordSet("gross vehicle share percentage")
)

var patientWord = stems("patient")[0]

// patients is the figure that counts them.
const patients = "space.patients"

var grossWord = stems("gross")[0]

var (
	curbWord, gvwrWord, loadWord = stems("curb")[0], stems("gvwr")[0], stems("load")[0]
	insideWord, completionWord   = stems("inside")[0], stems("completion")[0]
)

// mostSeats is more than any unit seats.
const mostSeats = 16

var attendantWord, seatWord = stems("attendant")[0], stems("seat")[0]

// lying are words beside patients that say on what, or that they are carried.
var lying = wordSet("cot litter transport lying recumbent supine")

// onlyMost begin the codes of figures of which nobody asks for the least.
var onlyMost = []string{"weight.curb", "weight.gross", "weight.rear", "weight.side", "weight.cg", "power.",
	"space.bay", "space.frontal", "space.rear-overhang", "space.loading",
	factFloor, factPrice}

var benchGauge = &gauges[slices.IndexFunc(gauges, func(g gauge) bool { return g.code == "space.bench" })]

// leastDoor is the size, in, from which a station door or bay is one that a unit goes through.
const leastDoor = 48

var doorWord = stems("door")[0]

// leastBench is the length, in, from which an amount of a bench is its length.
const leastBench = 48

// measures reports whether a line leaves out and counts in what the figure does: the width
// less mirrors is no answer to "width with mirrors".
func (g *ready) measures(tokens []claims.Token, words []string) bool {
	if g.code == payload && ratesChassis(tokens) {
		return false
	}
	if len(g.less)+len(g.with) == 0 {
		return true
	}
	out := claims.LeftOut(tokens)
	return !slices.ContainsFunc(words, func(w string) bool { return g.less[w] && !out[w] || g.with[w] && out[w] })
}

// ratesChassis reports whether an amount is that of a chassis: "payload on a 14,500 lb chassis".
func ratesChassis(tokens []claims.Token) bool {
	for i := 1; i < len(tokens); i++ {
		if tokens[i].Word == chassisWord && tokens[i-1].Kind == claims.Count && tokens[i-1].Num.Unit == lb {
			return true
		}
	}
	return false
}

// plainly are words that say only that a figure is as it is stated.
var plainly = func() map[string]bool {
	out := map[string]bool{}
	for _, w := range stems("retain maintain measure restrict limit achieve demonstrate exhibit bear afford " +
		"possess mode") {
		out[w] = true
	}
	return out
}()

// ends are those of a range that is asked for, "150 to 160 in", "minimum 14,000 lb, maximum
// 15,000 lb".
func (g *ready) ends(list []claims.Number) (low, high float64, ok bool) {
	var ends []claims.Number
	for _, n := range list {
		if !conditioned(g.under, n) {
			ends = append(ends, n)
		}
	}
	if len(ends) != 2 || g.code == factDelivery {
		return 0, 0, false
	}
	from, to := ends[0], ends[1]
	if from.Sense == atMost && to.Sense == atLeast {
		from, to = to, from
	}
	if !(from.Sense == atLeast && to.Sense == atMost ||
		from.Sense == "" && to.Sense == "" && from.Range == claims.Low && to.Range == claims.High) {
		return 0, 0, false
	}
	low, can := inUnit(from, g.unit, g.code)
	high, also := inUnit(to, g.unit, g.code)
	return low, high, can && also && low < high
}

// litersPerFt3 is exact: a foot is 3.048 dm.
const litersPerFt3 = 3.048 * 3.048 * 3.048

// litersPerGallon is exact: a gallon is 231 cubic inches.
const litersPerGallon = 231 * litersPerFt3 / 1728

func conditioned(under []claims.Number, n claims.Number) bool {
	for _, u := range under {
		if u.Value == n.Value && u.Unit == n.Unit {
			return true
		}
	}
	return false
}

// wholes are the gauges that count people: none of them has half a seat.
var wholes = []string{"space.seats", "space.patients", countBench, countCab, countModule}

// bare are the numbers of which everybody knows that they are inches: "OAL 240 max".
var bare = map[string]struct{ least, most float64 }{"space.headroom": {55, 90}, "space.length-all": {180, 400},
	"space.length": {180, 400}, "space.height-all": {85, 150}, "space.height": {85, 150}, "space.width": {75, 120},
	"space.width-all": {75, 120}}

// inUnit is an amount in a gauge's unit; false when it is of another kind.
func inUnit(n claims.Number, unit, code string) (float64, bool) {
	switch {
	case slices.Contains(wholes, code) && n.Value != math.Trunc(n.Value):
		return 0, false
	case n.Unit == unit:
		return n.Value, true
	case unit == lb && n.Unit == "" && n.Value >= 1000: // "14,500 GVWR"
		return n.Value, true
	case unit == claims.Money && n.Unit == "" && n.Value >= 10000: // "price under 310k"
		return n.Value, true
	case unit == inch && n.Unit == "" && (n.Sense != "" || code == "space.headroom") &&
		n.Value >= bare[code].least && n.Value <= bare[code].most:
		return n.Value, true
	case code == factWheelbase && n.Unit == "" && n.Value >= 100: // "158 WB"
		return n.Value, true
	case unit == quantity.Minute && n.Unit == "": // "at least 30 min": a minimum or minutes
		return n.Value, true
	case unit == quantity.Hour && n.Unit == quantity.Minute:
		return n.Value / 60, true
	case unit == quantity.Foot && n.Unit == quantity.Inch:
		return n.Value / 12, true
	case unit == quantity.Liter && n.Unit == quantity.CubicFoot:
		return n.Value * litersPerFt3, true
	case unit == claims.Gallon && n.Unit == quantity.Liter:
		return n.Value / litersPerGallon, true
	case code == factDelivery && (n.Unit == claims.Month || n.Unit == quantity.Day):
		return n.Value, true
	}
	return 0, false
}
