package view

import (
	"slices"
	"strings"

	. "boxwright/web/view/markup"
)

// term is a word of the trade, or of this page, that somebody may ask about.
// Its one definition stands wherever the word needs it: in the list of its
// areas, and beside the figures and fields named by about.
type term struct {
	name, text string
	source     string // with how well it is known
	areas      string // ids of areas, and "standing" for the figures beside them
	about      string // codes of figures and ids of fields
}

// Sources that stand more than once.
const (
	byPage   = "How this page works"
	practice = "Common practice, no source"
	kkkE     = "KKK-A-1822E 3.7.6, sheet 33, read from the text"
	aiam0613 = "49 CFR 567 as quoted in NHTSA interpretation aiam0613, read"
	ntea     = "NTEA's net payload method, as printed in Roads & Bridges, read"
	simulate = "Drawn many times from the shortest, likely and longest duration of each step; the durations are the catalogue's"
)

// glossary in the order the words are met.
var glossary = []term{
	{"Type I, II, III", "I is a module on a cab-chassis, II a van, III a module on a cutaway van. AD, additional duty, is the heavier kind of I and III: more than 14,000 lb GVWR.",
		"Bands of KKK-A-1822F: Type I and I-AD read in a published comparison, the others from memory", "needs unit", "needs.type"},
	{"GVWR", "Gross vehicle weight rating: the most the vehicle may weigh with everything and everybody aboard. The chassis maker states it and the final-stage manufacturer certifies it. It may be less than the axle ratings together.",
		aiam0613, "needs unit weight", "weight.gross"},
	{"GAWR", "Gross axle weight rating: the most that one axle may carry on the ground. The weakest of axle, springs, brakes, wheels and tires decides it, so one stronger part does not raise it.",
		ntea, "unit weight standing", "weight.front-axle weight.rear-axle"},
	{"Curb weight", "The finished unit ready to drive, every operating fluid full, without people and without loose equipment.",
		aiam0613, "weight", "weight.curb"},
	{"Payload", "GVWR less curb weight: what is there for people, patients and equipment. Payload left is what remains when all of those are aboard.",
		ntea + "; the least that KKK-A-1822F asks for, read in a published comparison", "needs weight compare standing", "weight.payload weight.payload-left unit.payload_lb"},
	{"People's weight", "Rules differ: 150 lb in 49 CFR 567.4 and in NTEA's method, 175 lb in military truck specifications, 250 lb in NFPA 1901 for fire apparatus. The rule set in force decides, and your own value goes before it.",
		"Each read in the text or a quotation of it", "", "unit.occupant_lb unit.patient_lb"},
	{"Station", "Where a mass sits: inches behind the front axle, right of the center line, above the ground. What hangs ahead of the front axle loads that axle with more than its own weight.",
		"Two-axle method of a chassis maker's body-builder manual, read", "weight", ""},
	{"Likely range", "Every mass has a tolerance. If those are right, the range holds the true value 95 times in 100.", byPage, "weight power space standing", ""},
	{"Load on tires", "What the tires of an axle may carry together at their stated pressure. It must reach the axle's rating.",
		"49 CFR 571.120 S5.1.2 as quoted by NHTSA, read", "", "weight.front-tires weight.rear-tires"},
	{"Axle share", "How much of the whole weight stands on the axle. Ranges such as 20 to 50 % in front are passed on from memory; nobody here read a text, so no limit is built in and the axle ratings judge.",
		"KKK-A-1822, from memory", "", "weight.front-share weight.rear-share"},
	{"Left-right difference", "How much heavier one side stands than the other, as a part of the whole weight. Limits of 5 and 7 % are passed on from memory; none is built in. A purchaser sets one in Space.",
		"KKK-A-1822 and NFPA 1901, from memory", "weight", "weight.side"},
	{"T/2h", "Half the track over the height of the center of gravity: the sideways pull, in g, at which a rigid vehicle tips. More is steadier. A real heavy truck was found to tip about a quarter earlier.",
		"NHTSA, Rollover, chapter V; SAE 2003-01-3385; both read", "weight", "weight.ssf weight.cg-height"},

	{"Hot idle", "A hot alternator on a slow engine gives far less than its nameplate says. Here the load on scene meets what it gives at 200 F under the hood at plain idle.",
		kkkE + "; plain idle in place of high idle is this page's own, stricter look", "power standing", "power.idle"},
	{"Duty modes", "Parked, driving, responding, on scene: the catalogue says what draws how much in each. Each is held against the alternator at 200 F under the hood and high idle.",
		kkkE, "power", "power.parked power.driving power.responding power.scene"},
	{"Medical load", "Current kept free for medical devices, counted on scene whether or not they are aboard.", kkkE, "", "power.medical-load"},
	{"Generating capacity remaining", "What is left at 200 F under the hood and high idle with the whole load on. The specification wants this number on a tag in the unit.",
		kkkE, "power", "power.remaining"},
	{"Minutes on battery", "The faster a battery is emptied, the less it gives. Peukert's law with an exponent of 1.2 tells the minutes, and half of the capacity is kept to start the engine.",
		practice, "power", "power.battery-minutes"},
	{"Shed", "The order in which loads are switched off to spare the batteries. Never: it stays on.", "The catalogue's load management", "power", ""},
	{"80 % rule", "A steady load, such as a charger or a heater, may take 80 % of what the breaker is rated for.", practice, "power", "power.shore power.inlet"},

	{"Inverter", "Makes 125 V from the batteries while no shore line is plugged in. All its loads at once are held against what it can give without end.", "The rating in the catalogue", "", "power.inverter"},

	{"Oxygen hours", "From full cylinders down to 200 psi, at a steady flow. What stays in them is not counted, so that a cylinder is changed in time.", practice, "", "space.oxygen-hours"},
	{"Read, from memory, common practice", "How well a limit is known. Read: in the standard itself or a quotation of it. From memory and common practice: nobody here read it, so it is a default that you may replace in Space, and it never stops a unit.",
		byPage, "needs space quote", ""},
	{"Declared", "The plant says that the option named meets the clause; the page cannot compute it.", byPage, "space", ""},

	{"Even odds", "The day by which delivery has come half of the time: a coin toss.", simulate, "needs delivery compare quote standing", ""},
	{"Nine in ten", "The day by which delivery has come nine times in ten. This is the one to promise.", simulate, "needs delivery compare quote standing", "unit.needed_by"},
	{"Float", "Working days by which a step may run late before delivery does.", "Critical path method, common practice", "delivery", ""},
	{"Slot", "A place on the plant's framing line that is still open on that day.", "The catalogue's plant calendar", "delivery", ""},

	{"Price book", "The catalogue's list of prices from a given day on. The book in force on the day of the quote counts, so a later rise does not touch it.", byPage, "price quote", "date"},
	{"Cooperative contract", "Prices that a purchasing group has bid out once for its members. Whether a county may buy from it without a bid of its own, its rules say.", practice, "price", "terms.contract"},
	{"Performance bond", "A surety's promise to pay the buyer if the seller does not deliver. Its premium is a line of the price.", practice, "price", "terms.bond"},
	{"Milestone", "A part of the price that falls due at an event, such as the chassis arriving.", "The catalogue's price book, or your own", "price", ""},
	{"Lease-purchase", "The buyer pays the unit off in level payments and then owns it. The rate is the lessor's to state; nothing here is an offer of credit.", "Annuity formula, checked against numpy-financial", "price", "lease.rate"},
	{"Equal annual cost", "Every cost over the years of service, brought to today's money and spread evenly, so that ways that last unequally long can be compared.", "Equivalent annual cost, checked against a published example", "price", "rates.discount"},

	{"Filled in", "Nobody chose it, but a full unit needs one. It gives way to your choices; “keep it” makes it your own.", byPage, "unit", ""},
	{"Needed by your choices", "Something you chose cannot be had without it.", byPage, "unit", ""},
	{"Still checking", "Whether it fits the weights is still being worked out; that goes on by itself. Press it all the same, and it is worked out first.", byPage, "unit", ""},
	{"Remount", "An existing module taken off its old chassis and put on a new one. “Refurbishing and remounted vehicles are not covered by this standard”, says KKK-A-1822F, so the purchaser's own rules judge it.",
		"KKK-A-1822F, as quoted from its text, read", "needs", ""},
	{"Set aside", "Kept beside the quote in work, as it is now, for the comparison.", byPage, "compare", ""},
	{"Edition and content", "A catalogue edition has a name and a fingerprint of everything in it. Two quotes with one content were computed from the same data to the byte.", "SHA-256 over the catalogue's canonical JSON", "needs quote", ""},
	{"Signature", "A mark that only the holder of the key can make; if one byte of the quote changes, it no longer holds. The roster is the catalogue's list of keys that it knows.", "Ed25519, an open standard", "quote", ""},
}

// wordsOf lists what is spoken of in an area.
func wordsOf(area string) Part {
	var list []Part
	for _, t := range glossary {
		if slices.Contains(strings.Fields(t.areas), area) {
			list = append(list, El("dt", Text(t.name)), El("dd", Text(t.text), t.from()))
		}
	}
	if list == nil {
		return nil
	}
	return El("details", Class("words screen"), At("id", "words-"+area), El("summary", Text("What the words mean here")), El("dl", list...))
}

func (t *term) from() Part { return El("span", Class("how"), Text(t.source+".")) }

// help explains a figure or a field where it stands; nil where no word of it
// needs to be.
func help(code string) Part {
	for i := range glossary {
		if t := &glossary[i]; slices.Contains(strings.Fields(t.about), code) {
			return El("details", Class("help screen"), At("id", "help-"+code), El("summary", At("id", "ask-"+code), At("aria-label", "What is meant: "+t.name), Text("?")),
				El("p", El("b", Text(t.name+". ")), Text(t.text), t.from()))
		}
	}
	return nil
}
