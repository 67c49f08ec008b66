package bid_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/csv"
	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

func TestAnswers(t *testing.T) {
	for _, c := range []struct {
		reason, line string
		want         quote.Outcome
		read         string // part of what it was read as
	}{
		{"a number in metric", "Payload not less than 900 kg", quote.Meets, "Payload"},
		{"a bare number of seats", "Six seats", quote.Meets, "seats"},
		{"too many seats", "12 seating positions", quote.Excepted, "seats"},
		{"the cab's counted", "Seated capacity, cab included: 6 persons", quote.Meets, "Designated seats"},
		{"both counted", "Total seated positions (cab plus module): 6", quote.Meets, "Designated seats"},
		{"the driver counted, who asks for no seat of his own", "Seated capacity, driver included: 6", quote.Meets,
			"Designated seats"},
		{"the cab's not counted", "Seats, excluding the cab: 6", quote.Excepted, "Seats in the patient compartment"},
		{"the cab's not counted, at the end", "Seating for six, cab excluded", quote.Excepted,
			"Seats in the patient compartment"},
		{"the driver's not counted", "Seats excluding the driver: 6", quote.Unanswered, ""},
		{"where it is worked from is no seat", "The window tint - work from inside cab", quote.Unanswered, ""},
		{"all windows are not the one in the partition", "All windows shall slide", quote.Unanswered, ""},
		{"each cabinet is not the one for drugs", "Each cabinet shall have a lock", quote.Unanswered, ""},
		{"what all entry doors have, not all doors need have", "Door latches, two-point, on all compartment doors",
			quote.Unanswered, ""},
		{"one of a color is not all", "Warning lights to the front all clear", quote.Unanswered, ""},
		{"all to the rear is not all", "Warning lights all amber", quote.Unanswered, ""},
		{"a unit has one chassis", "Type III ambulance, diesel", quote.Unanswered, ""},
		{"what ends behind the front console is not in the module", "Radio preparation in the module", quote.Unanswered, ""},
		{"what stands on the roof raises it", "Overall height not to exceed 106.4 in including roof air conditioner",
			quote.Unanswered, ""},
		{"what it weighs is not known with a heavier cot", "Payload not less than 3,700 lb; powered cot", quote.Unanswered, ""},
		{"a figure in another state", "Alternator, 150 A hot at idle with air conditioning off", quote.Unanswered, ""},
		{"a height with the springs let down", "Overall height not to exceed 106 in with the air springs dumped",
			quote.Unanswered, ""},
		{"a payload beside the crew", "Usable payload with full crew of at least 3,700 lb", quote.Unanswered, ""},
		{"a payload beside passengers", "Payload of at least 3,715 lb with three passengers seated", quote.Unanswered, ""},
		{"a payload and what it is taken from", "Payload plus curb weight at least 14,000 lb", quote.Unanswered, ""},
		{"a share of what is not said", "Front axle load shall not exceed 80 percent", quote.Unanswered, ""},
		{"without fuel it weighs less", "Dry weight not to exceed 10,500 lb", quote.Unanswered, ""},
		{"without fuel it weighs no more", "Dry weight not to exceed 10,785 lb", quote.Meets, "Curb weight"},
		{"a width with what it leaves out", "Overall width 95.7 in with mirrors folded", quote.Unanswered, ""},
		{"so beside a comma", "Overall width not to exceed 96 in, mirrors extended", quote.Unanswered, ""},
		{"seats with belts in the module", "Six seats with lap belts in the patient compartment", quote.Unanswered, ""},
		{"seats of the module", "Not more than four seats in the module", quote.Meets, "Seats in the patient compartment"},
		{"seats of the module behind those of the cab", "Seats: two in the cab, five in the module", quote.MeetsWith,
			"Seats in the patient compartment"},
		{"what seats withstand is not how many", "Seats rated at 20 g", quote.Unanswered, ""},
		{"storage inside and outside", "Storage both inside and outside at least 110 cubic feet", quote.Unanswered, ""},
		{"what remains at idle", "Generating capacity remaining of 29 A at idle", quote.Unanswered, ""},
		{"a voltage at which something comes on", "High idle at 12.5 V", quote.Unanswered, ""},
		{"days from completion", "Delivery within 30 days of completion", quote.Unanswered, ""},
		{"a power of each", "Siren 100 W per speaker", quote.Unanswered, ""},
		{"fewer days than those", "Delivery in less than 142 days", quote.Excepted, "Apr 15, 2027"},
		{"fewer working days than those", "Delivery in less than 92 working days", quote.Excepted, "92 working days"},
		{"no more than an amount", "Wheelbase less than or equal to 158 in", quote.Meets, "Wheelbase"},
		{"at an amount or under it", "Wheelbase at or under 158 in", quote.Meets, "Wheelbase"},
		{"a weight of a part is no rating", "Weight of module under 3,000 lb", quote.Unanswered, ""},
		{"what it weighs delivered is no rating", "Unit weight as delivered less than 10,800 lb", quote.Unanswered, ""},
		{"what tires are rated is not what they bear", "Tires rated 9,600 lb rear", quote.Unanswered, ""},
		{"a width of the module alone", "Module 95 in wide", quote.Unanswered, ""},
		{"a height of the body alone", "Body length 146 in, height 77 in", quote.Unanswered, ""},
		{"passengers of the module", "Passengers in module: 6", quote.Excepted, "Seats in the patient compartment"},
		{"an amount that is preferred", "Front axle capacity 5,000 lb minimum, 6,000 preferred", quote.Unanswered, ""},
		{"a price without options is less", "Base price not over $200,000", quote.Unanswered, ""},
		{"a tolerance", "Headroom of 71 inches, plus or minus 1 inch", quote.Unanswered, ""},
		{"a price of options", "Price of options not over $100,000", quote.Unanswered, ""},
		{"an axle's load of its rating", "Rear axle not over 70 percent of rating", quote.Unanswered, ""},
		{"occupants of the module", "Six occupants in the module", quote.Excepted, "Seats in the patient compartment"},
		{"patients have no seats", "Capacity: six persons seated plus two patients", quote.Unanswered, ""},
		{"a power at each of several", "Inverter of 1,000 W to each receptacle", quote.Unanswered, ""},
		{"two times together", "Delivery in no more than 30 weeks and 2 days", quote.Unanswered, ""},
		{"an amount without what is warranted", "Module structural warranty: 15 yr / 150,000 mi", quote.Unanswered, ""},
		{"doors of compartments", "Exterior compartments six, with seven doors", quote.Unanswered, ""},
		{"what is stored inside and outside", "Storage of 116 cu ft inside and out", quote.Unanswered, ""},
		{"a rating beside a payload", "GVWR of at most 14,000 lb and payload of at least 3,700 lb", quote.Excepted, "GVWR"},
		{"a volume after cabinets", "Interior volume of 14 cubic meters after cabinets", quote.Unanswered, ""},
		{"a height over a cot raised", "Clear height over the patient 40 in with cot raised", quote.Unanswered, ""},
		{"two counts are no fraction", "Seating (cab/module): 2/6", quote.Unanswered, ""},
		{"a current of each battery", "Battery charger, 20 A per battery", quote.Unanswered, ""},
		{"after some days", "Delivery after 142 days", quote.Unanswered, ""},
		{"both are not one", "Two 12 V outlets, both live at all times", quote.Unanswered, ""},
		{"two cots are not two places for cots", "Two cots", quote.Unanswered, ""},
		{"a radio is not what is prepared for it", "Two-way radio installed by the contractor", quote.Unanswered, ""},
		{"two speakers together have more than each", "Siren 100 W per speaker, 200 W total", quote.Unanswered, ""},
		{"what is stored inside is not all that is stored", "Total storage of 110 cu ft", quote.Unanswered, ""},
		{"an aisle beside a seat turned", "Aisle of at least 20 in with the attendant seat turned", quote.Unanswered, ""},
		{"nor is it with its antenna", "Radio with antenna installed", quote.Unanswered, ""},
		{"one of several at a bench asks for no bench", "Two oxygen outlets, one of them at the bench", quote.Unanswered, ""},
		{"a delivery of the chassis", "Delivery of chassis within 60 days", quote.Unanswered, ""},
		{"days from that of the chassis", "Delivery within 100 days of chassis receipt", quote.Unanswered, ""},
		{"a head's own charger", "Stretcher: battery powered; deck widens to 29 in.; 1 charger", quote.MeetsWith, "Wide powered cot, 140 lb"},
		{"lights that come on with a door warn of none", "Compartment lights operate when the door is opened",
			quote.Unanswered, ""},
		{"what is opened is no bid", "Scene lights come on when the door is opened", quote.Unanswered, ""},
		{"where one of two things is", "One above the squad bench", quote.Unanswered, ""},
		{"by when is not how long", "Training within 30 days of delivery", quote.Unanswered, ""},
		{"a bumper with a winch is longer", "Overall length with winch bumper not more than 246 in", quote.Unanswered, ""},
		{"two together have what one has not", "Batteries totaling 210 Ah on chassis trays, lithium", quote.Unanswered, ""},
		{"what stands overhead is no ceiling", "no fewer than two overhead", quote.Unanswered, ""},
		{"headroom where patients are", "Six foot headroom in back", quote.Meets, "Headroom"},
		{"oxygen that another supply gives", "Oxygen 6000 L", quote.MeetsWith, "Oxygen"},
		{"working days", "Delivery within 60 working days", quote.Excepted, "60 working days"},
		{"a date that holds", "Delivery by 2028-01-01", quote.Meets, "Jan 1, 2028"},
		{"a date in words", "Delivery no later than Jan 1, 2028", quote.Meets, "Jan 1, 2028"},
		{"a date in numbers, month first", "To be delivered by 1/31/2028.", quote.Meets, "Jan 31, 2028"},
		{"a date too early", "Delivery by December 15, 2026 at the station", quote.Excepted, "Dec 15, 2026"},
		{"money with its sign", "Total price not to exceed $250,000", quote.Excepted, "Price"},
		{"what nobody offers stays open", "Gold-plated door handles shaped as swans", quote.Unanswered, ""},
		{"a number that nothing offered reaches", "Alternator of at least 900 A", quote.Excepted, "Alternator"},
		{"at least, met by more", "Structural warranty at least 10 years", quote.Meets, "15 years"},
		{"what is not wanted is not read as wanted", "No side windows", quote.MeetsWith, "No side windows"},
		{"an empty number is no number", "Payload", quote.Unanswered, ""},
		{"a word not accounted for leaves a line open", "Powered cot with leather grips", quote.Unanswered, "Powered cot"},
		{"a length that does not say how it binds", "Wheelbase 150 in", quote.Unanswered, "Wheelbase"},
		{"the worse of two decides", "Headroom 70 in minimum; oxygen 9,000 L minimum", quote.Excepted, "Headroom"},
		{"an exception in a sentence of its own", "The station is old. Overall height shall not exceed 100 in.",
			quote.Excepted, "height"},
		{"bumpers count where the line speaks of them", "Bumper-to-bumper length of the ambulance, 240 in maximum",
			quote.Excepted,
			"with bumpers and steps"},
		{"a material of a part is not that of the whole", "Cabinets shall be aluminum", quote.MeetsWith, "aluminum"},
		{"a material that is ruled out", "No wood in the cabinets", quote.MeetsWith, "aluminum"},
		{"what is measured with the mirrors is not known", "Overall width including mirrors not to exceed 98 inches",
			quote.Unanswered, ""},
		{"the mirrors are left out", "Overall width, mirrors excluded, 96 in maximum", quote.Meets, "less mirrors, lamps"},
		{"lamps counted in and mirrors left out", "Width including lights, excluding mirrors, not over 97 in",
			quote.Excepted, "with lamps and rails, less mirrors"},
		{"a bumper counted in is not left out",
			"Overall length including front bumper, excluding rear step, 240 in max",
			quote.Unanswered, ""},
		{"antennas count in no height", "Overall height including antennas shall not exceed 112 inches",
			quote.Unanswered,
			""},
		{"a limit on an axle's weight is its load", "Front axle weight shall not exceed 4,900 lb", quote.Meets,
			"Front axle, full load"},
		{"a limit on an axle may be either", "Front axle shall not exceed 4,900 lb", quote.Unanswered, ""},
		{"a gross weight of at least is a rating", "Minimum gross vehicle weight 14,500 lb", quote.Meets, "GVWR"},
		{"what a cot weighs is not what it carries", "Weight of cot not more than 100 lb", quote.Unanswered, ""},
		{"what is allowed is not asked for", "Diesel engine is acceptable", quote.Unanswered, "diesel"},
		{"what is allowed and there complies", "Chassis batteries are fine", quote.Meets, "Chassis batteries"},
		{"the least that is acceptable is a limit", "The minimum acceptable payload is 4,000 lb", quote.Excepted, "Payload"},
		{"a price that is to hold at the station", "Total delivered price not to exceed $300,000", quote.Unanswered, "Price"},
		{"a price alone", "must be under $270k complete", quote.Excepted, "Price, less than"},
		{"a limit that only the sales tax breaks", "Price not to exceed $285,000", quote.Unanswered, "Price"},
		{"a small sum alone is no price", "not to exceed $5,000", quote.Unanswered, ""},
		{"a time alone with a place", "Need it here in 60 days", quote.Excepted, "Delivery"},
		{"a word of comparison beside the amount", "Bigger alternator, 320 amp", quote.MeetsWith, "Alternator"},
		{"what a shore line feeds, with its voltage", "125 V load not more than 10 A at the inlet", quote.Meets,
			"125 V load"},
		{"an area", "Frontal area not larger than 65 sq ft", quote.Meets, "Frontal area"},
		{"a volume in cubic meters", "Inside volume at least 14 m³ before cabinets", quote.Meets, "Inside volume"},
		{"a circle between walls", "Turning circle, wall to wall, 54 ft maximum", quote.Excepted, "between walls"},
		{"the height of a doorway", "Rear door opening at least 62 inches high", quote.Excepted, "height of the opening"},
		{"ports where they are asked for", "Four USB ports in the patient compartment", quote.MeetsWith, "USB"},
		{"ports of all places", "At least six USB ports in total", quote.MeetsWith, "USB ports"},
		{"outlets are not their ports", "Four USB outlets in the cab", quote.Unanswered, "USB"},
		{"what is part of a thing is not had elsewhere", "Squad bench with 12 V outlet", quote.Unanswered, "Squad bench"},
		{"what is said to be part of it is", "Siren, 100 W, with two speakers", quote.Meets, "speakers"},
		{"a part's warranty is not the conversion's", "AGM batteries, 24 month warranty", quote.Unanswered, "AGM"},
		{"a warranty of what is not converted", "Drivetrain warranty of 36 months", quote.Unanswered, ""},
		{"what stands on one side is not on each", "Shore inlet 20 A on each side", quote.Unanswered, ""},
		{"an amount of each is not that of all", "Six exterior compartments, each at least 20 cubic feet",
			quote.Unanswered, "compartments"},
		{"two outputs together are not each", "Two alternators, 300 amps each", quote.Unanswered, ""},
		{"fewer than the unit has", "Ceiling lights not more than six", quote.MeetsWith, "Six"},
		{"before a day is not on it", "Delivery before April 16, 2027", quote.Excepted, "Apr 15, 2027"},
		{"after a day is no limit", "Delivery after May 1, 2027", quote.Unanswered, ""},
		{"a driver beside the passengers", "Six passengers and a driver", quote.Unanswered, ""},
		{"what a thing is said to be without", "Attendant seat on a 24 in track with suspension", quote.MeetsWith,
			"suspension pedestal"},
		{"a rating as it stands on the label", "GVWR, as shown on the certification label, of 14,500 lb",
			quote.Meets, "GVWR"},
		{"a unit beside the name", "Structural warranty (yrs): 20", quote.MeetsWith, "20 years"},
		{"letters read for digits", "Payload of not 1ess than 4,OOO lbs", quote.Excepted, "4,000"},
		{"pictures of a camera are no camera", "Front console with camera", quote.Unanswered, "console"},
		{"what comes behind an and is asked for", "Compartments with roll-up doors and lights", quote.Unanswered, "Roll-up"},
		{"tracks with lights are no lights", "Roll-up compartment doors, lights", quote.Unanswered, "Roll-up"},
		{"a tint of doors is not that of windows", "Cabinets with tinted windows", quote.Unanswered, ""},
		{"a place for a patient is not part of a bench", "Squad bench equipped with cot", quote.Unanswered, "bench"},
		{"a condition that no figure is worked out under", "Air conditioning, 32,000 BTU/h with the engine off",
			quote.Unanswered, ""},
		{"a cover is no filler", "Rear camera, cover", quote.Unanswered, "Rear camera"},
		{"nor is what controls it", "Eight ceiling lights with independent control", quote.Unanswered, ""},
		{"a companion that the thing has", "Sloped action-area console with monitor shelf", quote.MeetsWith, "Sloped"},
		{"what stands where it is said", "Duplex receptacle in the bench riser", quote.MeetsWith, "bench riser"},
		{"compartments are not shelves", "Six outside compartments with shelf", quote.MeetsWith, "Exterior compartments, at least 6"},
		{"a price stands and something else", "Prices firm through December 31, 2026, drawer", quote.Unanswered, ""},
		{"a number of the paragraph before an article", "5.1 A steel drug locker shall be provided", quote.MeetsWith, "drug"},
		{"thousands in short", "curb weight under 11k", quote.Meets, "Curb weight, less than"},
		{"inches that everybody knows", "HR ≥ 70", quote.Meets, "Headroom"},
		{"short forms", "2kW inv PSW", quote.MeetsWith, "inverter"},
		{"a plus sign between two things", "side cams + DVR", quote.MeetsWith, "recorder"},
		{"all compartments together", "Compartments totaling at least 60 cubic feet", quote.Meets, "compartments"},
		{"a side is each side", "Two scene lights a side", quote.Meets, "each side"},
		{"complete is more than a filler", "undercoat complete", quote.MeetsWith, "Full undercoat"},
		{"ready for a thing is not the thing", "winch ready", quote.Unanswered, ""},
		{"nor is prepared for it", "Prepared for a light mast on the roof", quote.Unanswered, ""},
		{"room on the bench", "room for at least three people on the bench", quote.Meets, "Seats on the squad bench"},
		{"seats of a bench behind its size", "Squad bench, 72 x 22 in, seats five", quote.Excepted,
			"Seats on the squad bench"},
		{"but not those of other seats too", "Squad bench and attendant seat, seating for four", quote.Meets,
			"Designated seats"},
		{"chargers are no batteries", "Power cot with two chargers", quote.Excepted, "at least 2"},
		{"what is held is not its holder", "One cardiac monitor", quote.Unanswered, ""},
		{"nor is it with its holder", "Stair chair with bracket", quote.Unanswered, ""},
		{"a holder alone is one", "Stair chair bracket", quote.MeetsWith, "Stair chair clamp"},
		{"what cannot cost more is a limit", "Can't cost more than $250,000", quote.Excepted, "Price, at most"},
		{"what loads a cot is no cot", "A powered cot loading system shall be installed.", quote.MeetsWith, "Power-load arm"},
		{"nor its mount", "A cot loading system shall be installed.", quote.MeetsWith, "Power-load arm"},
		{"a paint of one stage", "Paint single stage", quote.Unanswered, ""},
		{"so in one word", "Single-stage white paint", quote.Unanswered, ""},
		{"a paint of two", "Two-stage paint, white", quote.Meets, "white"},
		{"a step that folds down does not flip up", "Rear bumper that folds down", quote.Unanswered, ""},
		{"so as its name", "Fold-down rear step", quote.Unanswered, ""},
		{"a step that flips up", "Rear step that flips up", quote.Meets, "Flip-up"},
		{"boards below the cab are not along the module", "Running boards along the module", quote.Unanswered, ""},
		{"so along the body", "Running boards the length of the module body", quote.Unanswered, ""},
		{"boards below the cab", "Running boards below the cab doors", quote.Meets, "running boards"},
		{"rails over doors are not on the roof", "Drip rails on doors and roof", quote.Unanswered, ""},
		{"so along the roof", "Drip rail along the roof", quote.Unanswered, ""},
		{"rails over doors", "Drip rails over every door", quote.Meets, "Drip rails"},
		{"what stands on a face is not in it", "Siren speakers in the bumper", quote.MeetsWith, "recessed"},
		{"so behind the bumper's skin", "Speakers in the front bumper", quote.MeetsWith, "recessed"},
		{"on the bumper", "Siren speakers on the bumper", quote.Meets, "bumper face"},
		{"lamps of a side that no door lights", "Scene lights on street side come on with the door", quote.Unanswered, ""},
		{"so with the side door", "Scene lights on street side come on with the side door", quote.Unanswered, ""},
		{"lamps that the door lights", "Curb side scene lights come on with the side door", quote.Meets, "scene lights"},
		{"two in all are not two a side", "Scene lights, two total", quote.Unanswered, ""},
		{"so in other words", "Two scene lights altogether", quote.Unanswered, ""},
		{"four in all", "Scene lights, four total, two each side", quote.Meets, "each side"},
		{"one of two places is not either", "Cot mount for center or curb side", quote.Unanswered, ""},
		{"so with a choice", "Cot mount in the middle or right side, as we choose", quote.Unanswered, ""},
		{"the places it has", "Cot mount, center or street side", quote.Meets, "center or street-side"},
		{"board slots are no compartment", "No fewer than seven exterior compartments", quote.MeetsWith, "at least 7"},
		{"a width over rails alone", "Width including rub rails not over 97.5 in", quote.Unanswered, ""},
		{"which is no more than that over lamps too", "Width including rub rails not over 99 in", quote.Meets, "with lamps and rails"},
		{"a volume usable", "Exterior compartments, 66 cu ft usable", quote.Unanswered, ""},
		{"a volume that is usable and less than asked for", "Exterior compartments, 90 cu ft usable", quote.Excepted, "inside volume"},
		{"an amount of each battery", "Charger, 20 A per battery", quote.Unanswered, ""},
		{"so for each", "Charger, 45 A for each battery", quote.Unanswered, ""},
		{"of the charger", "Charger, 20 A", quote.Meets, "20 A"},
		{"the dealer's place is not the plant", "Purchaser collects at the dealer", quote.Unanswered, ""},
		{"so in other words", "Unit to be picked up at the dealer", quote.Unanswered, ""},
		{"the plant is", "Purchaser collects at the plant", quote.Meets, "Collected"},
		{"what every seat is to have, not the bench alone", "Every seat has a three-point belt and a headrest", quote.Unanswered, ""},
		{"so behind a head", "Seats: every seat with a belt and headrest", quote.Unanswered, ""},
		{"what every seat has", "Every seat has a three-point belt", quote.Meets, "every seat"},
		{"all doors are not the module's", "All doors locked by remote", quote.Unanswered, ""},
		{"so again", "Power locks on all doors", quote.Unanswered, ""},
		{"the module's are", "Power locks on all module doors", quote.MeetsWith, "Power locks"},
		{"two of 100 W are not one of 200 W", "Siren amplifier 100 W with two 100 W outputs", quote.Unanswered, ""},
		{"two channels are", "Siren, 200 W, two channels", quote.MeetsWith, "200 W"},
		{"a second one on the bench", "Two stretchers, second on bench", quote.Unanswered, ""},
		{"two places for cots", "Two side-by-side cot positions", quote.MeetsWith, "side-by-side"},
		{"a compartment for a thing is not the thing", "Compartment for a generator", quote.Unanswered, ""},
		{"the thing in one", "Generator in a compartment", quote.Excepted, "Generator"},
		{"a clock elsewhere", "Clock on the rear wall", quote.Unanswered, ""},
		{"so at the front", "Clock on the front wall", quote.Unanswered, ""},
		{"the clock of the console", "Clock in the action area console", quote.Meets, "Console"},
		{"a wheel is weighed with others", "Scale ticket for each wheel", quote.Unanswered, ""},
		{"so by corner", "Scale ticket by corner", quote.Unanswered, ""},
		{"an axle is weighed", "Scale ticket by axle and side", quote.Meets, "scale ticket"},
		{"a floor of a compartment is another", "Compartment floors covered", quote.Unanswered, ""},
		{"the seams of the vinyl", "Vinyl floor seams shall be welded", quote.Meets, "vinyl"},
		{"or of the frame", "Floor seams shall be welded", quote.Unanswered, ""},
		{"but no ground ones", "Floor seams welded and ground smooth", quote.Unanswered, ""},
		{"a point behind a bracket", "Exterior skin thickness (.125)", quote.Meets, "Seam-welded"},
		{"so thicker", "Exterior skin thickness (.190)", quote.Unanswered, ""},
		{"both of a material", "Running boards and rub rails both of aluminum", quote.Unanswered, ""},
		{"a count belongs to what it counts", "Two M oxygen cylinders", quote.MeetsWith, "Two M"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			_, list := answersTo(t, c.line)
			a := list[0]
			assert.Equal(t, c.want, a.Outcome, "%s read as %q, offered %q, takes %v", c.line, a.Read, a.Offered,
				a.Takes)
			assert.Contains(t, strings.Join(a.Read, "; "), c.read)
		})
	}
}

// What stands beneath a heading may be read with it; a line that says all by itself is
// read alone.
func TestLinesBeneathAHeading(t *testing.T) {
	_, list := answersTo(t, "SECTION 7 WARNING LIGHTS", "7.1 Two on each side", "7.2 Powered cot",
		"7.3 Two on the antenna")
	assert.Equal(t, quote.Meets, list[1].Outcome, "%v", list[1].Read)
	assert.Equal(t, quote.MeetsWith, list[2].Outcome)
	assert.Equal(t, quote.Unanswered, list[3].Outcome, "%v", list[3].Read)
}

// Lines that complete a sentence are read with it and never alone: "seat four" beneath "The
// squad bench shall:" does not ask for four seats anywhere.
func TestLinesThatCompleteASentence(t *testing.T) {
	_, list := answersTo(t, "2 Seating", "2.1 The squad bench shall:", "a) seat three (3) persons",
		"b) seat four persons",
		"c) be at least 72 inches in length", "2.2 Four seats", "2.3 Siren, 100 W")
	assert.True(t, list[1].Head)
	assert.Equal(t, []string{"Seats on the squad bench, at least 3"}, list[2].Read)
	assert.Equal(t, quote.Meets, list[2].Outcome)
	assert.Equal(t, quote.Excepted, list[3].Outcome, "%v", list[3].Read)
	assert.Equal(t, []string{"Squad bench, length, at least 72.0 in"}, list[4].Read)
	assert.Equal(t, []string{"Designated seats, at least 4"}, list[5].Read, "the sentence has ended")
	assert.Equal(t, quote.Meets, list[6].Outcome)
}

func TestReadRequirements(t *testing.T) {
	_, _, err := bid.ReadRequirements(" \n ")
	assert.Error(t, err, "nothing to answer")
	_, _, err = bid.ReadRequirements(strings.Repeat("Siren\n", quote.MaxRequirements+1))
	assert.ErrorContains(t, err, "1001")
	_, _, err = bid.ReadRequirements(strings.Repeat("siren ", 400))
	assert.ErrorContains(t, err, "2000", "a line is never cut")
	list, said, err := bid.ReadRequirements("No.\tRequirement\tComply\n1\tPowered cot\t\n2\tSiren, 100 W\t")
	require.NoError(t, err)
	assert.Equal(t,
		[]quote.Requirement{{No: "1", Text: "Powered cot", Row: 2}, {No: "2", Text: "Siren, 100 W", Row: 3}}, list)
	assert.Contains(t, said, `text from column "Requirement"`)
}

func TestAnswersByHand(t *testing.T) {
	q, _ := answersTo(t, "Gold-plated swans", "Powered cot", "Bid bond of 5%")
	d := q.Draft
	d.Requirements[0].Verdict, d.Requirements[0].Answer = quote.Excepted, "=1+1 none offered"
	d.Requirements[1].Pick = quote.NoPick
	list := bid.Answers(q, quantity.US)
	assert.Equal(t, quote.Excepted, list[0].Outcome)
	assert.Equal(t, quote.Unanswered, list[1].Outcome, "a refused reading stays open")
	assert.Equal(t, "bond", list[2].Term)
	assert.Equal(t, 2, bid.Open(list))
	assert.Contains(t, csv.Write(bid.FormRows(q, list, quantity.US)), `,'=1+1 none offered`,
		"no formula leaves the house")

	d.Requirements[1].Pick = "cot-power"
	d.Requirements[2].Verdict, d.Requirements[2].Answer = quote.Meets, "A bond is furnished."
	list = bid.Answers(q, quantity.US)
	assert.Equal(t, quote.MeetsWith, list[1].Outcome)
	assert.Equal(t, 0, bid.Open(list))
}

// A specification written from a unit is complied with by that unit: each clause reads
// back, and none as an exception.
func TestSpecificationReadsBack(t *testing.T) {
	q, _ := answersTo(t, "x")
	rows := [][]string{{"No.", "Requirement", "Comply (Y/N)", "Exception"}}
	for _, c := range bid.Specification(q, quantity.US) {
		rows = append(rows, []string{c.No, c.Text, "", ""})
	}
	require.Greater(t, len(rows), 100)
	list, _, err := bid.ReadRequirements(csv.Write(rows))
	require.NoError(t, err)
	q.Draft.Requirements = list
	read := 0
	for _, a := range bid.Answers(q, quantity.US) {
		if a.Head {
			continue
		}
		assert.NotContains(t, []quote.Outcome{quote.Excepted, quote.MeetsWith}, a.Outcome, "%s read as %v: %s %v",
			a.Text, a.Read, a.Offered, a.Takes)
		if a.Outcome == quote.Meets {
			read++
		}
	}
	assert.Greater(t, read, 80)
}

// What is only computed binds at the poor end of its likely range: the unit itself would miss
// half of such limits on the scale.
func TestSpecificationBindsWhatIsLikely(t *testing.T) {
	q, _ := answersTo(t, "x")
	figure := func(code string) config.Figure {
		f, ok := q.Figure(code)
		require.True(t, ok, code)
		require.Greater(t, f.High, f.Low, code)
		return f
	}
	front := figure("weight.front-axle")
	reserve := math.Floor(1000*(1-front.High/front.Limit)) / 10
	for clause, want := range map[string]string{
		"Curb weight: not more than ": quantity.US.Show(math.Ceil(figure("weight.curb").High), quantity.Pound),
		"Payload, GVWR less curb weight: not less than ": quantity.US.Show(math.Floor(figure("weight.payload").Low),
			quantity.Pound),
		"Front axle reserve, of its rating: not less than ": quantity.US.Show(reserve, quantity.Percent),
	} {
		assert.True(t, slices.ContainsFunc(bid.Specification(q, quantity.US), func(c bid.Clause) bool {
			return c.Text == clause+want+"."
		}), clause+want)
	}
}

// A remount is specified as one: the work on the module is asked for, what the program
// counts for itself is not, and no maintenance plan is no requirement.
func TestSpecificationOfARemount(t *testing.T) {
	d, ok := quote.BeginRemount(demo(t), "cut-14500-158-gas", &quote.Draft{Unit: config.Unit{Existing: &config.Existing{
		Maker: "Larkspur Coach", Built: 2013, LengthIn: 146, MassLb: 4400, TolLb: 50, XIn: 72, ZIn: 30}}},
		config.Date{Year: 2026, Month: 11, Day: 25})
	require.True(t, ok)
	q, err := quote.Compute(demo(t), d)
	require.NoError(t, err)
	var said strings.Builder
	for _, c := range bid.Specification(q, quantity.US) {
		said.WriteString(c.Text + "\n")
	}
	for _, w := range []string{"a remount: the purchaser's existing module, built 2013, 146.0 in long", "Remount work\n",
		"torqued and marked", "Paint: The paint of the module stays", "Countertop: The countertop stays.\n",
		"Squad bench: The squad bench stays.\n", "Action-area console: The console of the action area stays.\n"} {
		assert.Contains(t, said.String(), w)
	}
	for _, w := range []string{" counted ", "Maintenance plan", "Larkspur"} {
		assert.NotContains(t, said.String(), w)
	}
	assert.Equal(t, "a remounted ambulance", bid.Kind(q))
}

func TestFillPurchasersSheet(t *testing.T) {
	rows := [][]string{{"County of Larkspur", ""},
		{"Item No.", "Specification Requirement", "Comply (Y/N)", "Exception"},
		{"A", "Payload not less than 2,000 lb", "", ""}, {"B", "Overall height not to exceed 100 in", "", ""}}
	q, list := answersTo(t, csv.Write(rows))
	cells, found, err := bid.Fill(rows, q, list, quantity.US)
	require.NoError(t, err)
	assert.Equal(t, 2, found)
	assert.Contains(t, cells, bid.Cell{Row: 2, Col: 2, Text: "Y"})
	assert.Contains(t, cells, bid.Cell{Row: 3, Col: 2, Text: "N"})
	rows[2][1], rows[3][1] = "Powered cot", "Gold-plated swans"
	q, list = answersTo(t, csv.Write(rows))
	q.Draft.Requirements[2].Verdict = quote.Clarify
	list = bid.Answers(q, quantity.US)
	cells, _, err = bid.Fill(rows, q, list, quantity.US)
	require.NoError(t, err)
	assert.Contains(t, cells, bid.Cell{Row: 2, Col: 2, Text: "Y, with an addition"},
		"what is not in the price is no plain yes")
	assert.Contains(t, cells, bid.Cell{Row: 3, Col: 2, Text: "Clarification"}, "nothing goes back blank")
	rows = [][]string{{"Exceptions", "Requirement", "Yes", "No", "Ref"}, {"", "Powered cot", "", "", "1.1"},
		{"", "Overall height not to exceed 100 in", "", "", "1.2"}}
	q, list = answersTo(t, csv.Write(rows))
	assert.Equal(t, []string{"1.1", "1.2"}, []string{list[0].No, list[1].No})
	cells, _, err = bid.Fill(rows, q, list, quantity.US)
	require.NoError(t, err)
	assert.Contains(t, cells, bid.Cell{Row: 1, Col: 2, Text: "X, with an addition"}, "marked where it is asked")
	assert.Contains(t, cells, bid.Cell{Row: 2, Col: 3, Text: "X"})
	rows = [][]string{{"Deviation", "Weight", "Minimum Requirement", "Comply Y/N", "Ref"},
		{"", "5", "Overall height not to exceed 100 in", "", "1.1"}, {"", "2", "Gold-plated swans", "", "1.2"}}
	q, list = answersTo(t, csv.Write(rows))
	cells, _, err = bid.Fill(rows, q, list, quantity.US)
	require.NoError(t, err)
	assert.Contains(t, cells, bid.Cell{Row: 1, Col: 3, Text: "N"}, "columns stand in any order")
	assert.Contains(t, cells, bid.Cell{Row: 2, Col: 3, Text: "Not answered yet"}, "nothing goes back blank")
	_, _, err = bid.Fill([][]string{{"x"}}, q, list, quantity.US)
	assert.ErrorContains(t, err, "choose the file")
}

// What a purchaser's sheet asks for in a column beside the name of a thing is read with it, and
// the answer goes back into its row.
func TestAmountsInTheirOwnColumns(t *testing.T) {
	rows := [][]string{{"Item", "Characteristic", "Min / Max", "Value", "Units", "Comply (Y/N)"},
		{"1", "Oxygen", "", "Two M cylinders", "", ""}, {"2", "Alternator output", "Min", "300", "A", ""},
		{"3", "Warranty, structure", "Min", "20", "yr", ""}, {"4", "Wheelbase", "Max", "150", "in", ""},
		{"5", "Headroom", "Min", "72", "in", ""}}
	q, list := answersTo(t, csv.Write(rows))
	cells, found, err := bid.Fill(rows, q, list, quantity.US)
	require.NoError(t, err)
	assert.Equal(t, 5, found)
	with := "Y, with an addition"
	for i, want := range []string{with, with, with, "N", "Y"} {
		assert.True(t, slices.ContainsFunc(cells, func(c bid.Cell) bool {
			return c.Row == i+1 && c.Col == 5 && strings.HasPrefix(c.Text, want+".")
		}), "%s: %v", list[i].Text, cells)
	}
}

// What taking all would do is told before it is done, and is what it then does.
func TestPreviewAll(t *testing.T) {
	q, list := answersTo(t, "Powered cot", "Inverter of 2,000 W", "Remaining payload of at least 1,500 lb",
		"Curb weight not more than 10,800 lb")
	assert.Equal(t, []quote.Outcome{quote.MeetsWith, quote.MeetsWith, quote.Meets, quote.Meets},
		[]quote.Outcome{list[0].Outcome, list[1].Outcome, list[2].Outcome, list[3].Outcome})
	p := bid.PreviewAll(q, list, quantity.US)
	require.NotNil(t, p)
	assert.Equal(t, 2, p.Lines)
	assert.Equal(t, []string{"(4)"}, p.Lost, "what would no longer comply is named first")
	on := q.Draft.Clone()
	on.Unit = bid.TakeAnswers(q, list).Unit
	after, err := quote.Compute(q.Edition, on)
	require.NoError(t, err)
	assert.True(t, after.Price.Total.Sub(q.Price.Total).Equal(p.Price))
	assert.Equal(t, after.Plan.NineInTen, p.Is)
	assert.Negative(t, p.Payload)
	assert.Nil(t, bid.PreviewAll(q, list[2:], quantity.US), "nothing to take")
}

func FuzzRequirements(f *testing.F) {
	ed := quotetest.Demo(f)
	d := quote.Begin(ed, "", "", quotetest.Today)
	q, err := quote.Compute(ed, d)
	require.NoError(f, err)
	for _, s := range []string{"No.,Requirement\n1,Payload 2000 lb", "1/0 in headroom", "oxygen 99999999999999999999 L",
		"price $", "\"", "delivery by 9999-99-99", "by 2027-06-01 delivery within 1e9 days",
		"3.1\n3.1.1 Cot: 2 or 3 __ yes", "a\tb\n\tc"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 2000 {
			return
		}
		list, _, err := bid.ReadRequirements(text)
		if err != nil {
			return
		}
		q.Draft.Requirements = list[:min(len(list), 4)]
		if ps := q.Draft.Check(); len(ps) > 0 {
			t.Fatalf("what was read does not hold: %v", ps)
		}
		answers := bid.Answers(q, quantity.Metric)
		for _, x := range bid.Shorten(q, answers, quantity.Metric) {
			if x.Words() == nil || x.Answer.Outcome == quote.Unanswered {
				t.Fatalf("%q is shortened to nothing: %v", x.Answer.Text, x)
			}
		}
		bid.FormRows(q, answers, quantity.Metric)
	})
}

// Slots for boards in a compartment are no compartment of their own.
func TestSlotsAreNoCompartments(t *testing.T) {
	_, list := answersTo(t, "No fewer than seven exterior compartments")
	assert.Equal(t, []bid.Take{{ID: "lay-curb-front"}}, list[0].Takes)
}
