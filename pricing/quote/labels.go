package quote

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
)

// Label is the data of a label or a form that certifies the finished vehicle, filled from
// the unit. It is not the label: the certifying manufacturer decides what it says.
type Label struct {
	ID, Title string
	Source    string // where the label is asked for, and how well that is known
	Lines     []LabelLine
}

// LabelLine is one entry. Text stands where the entry is no number.
type LabelLine struct {
	What  string
	Text  string
	Value float64
	Unit  string
	From  string // what the entry rests on
	Blank bool   // to be entered by the certifying manufacturer
}

// Where entries come from.
const (
	fromRating  = "rating of the chassis"
	fromReading = "scale, as entered on the test sheet"
	certifier   = "to be entered by the certifying manufacturer"
)

// LabelData is the data of the labels and forms that this unit needs.
func (q *Quote) LabelData() []Label {
	var out []Label
	if q.Body.Kind == "van" {
		out = append(out, q.altererLabel())
	} else {
		out = append(out, q.finalStageLabel())
	}
	if q.Chassis.GVWRLb <= placardLb {
		out = append(out, q.placard())
	}
	if q.patients() {
		out = append(out, q.payloadSign())
	}
	return append(out, q.payloadForm())
}

// patients reports whether the unit can have patients aboard: its duty has cots.
func (q *Quote) patients() bool { return !q.OfDuty.Lacks("cot") }

// aboard is what people are called on a label.
func (q *Quote) aboard() string {
	if q.patients() {
		return "Occupants and patients"
	}
	return "Occupants"
}

// placardLb is the GVWR up to which a vehicle has the placard of 49 CFR 571.110.
const placardLb = 10000

func blank(what string) LabelLine { return LabelLine{What: what, From: certifier, Blank: true} }

func pounds(what string, lb quantity.Mass, from string) LabelLine {
	return LabelLine{What: what, Value: float64(lb), Unit: quantity.Pound, From: from}
}

// completed is the month in which the work is done, as planned.
func (q *Quote) completed() LabelLine {
	d := q.Plan.EvenOdds
	return LabelLine{What: "Month and year completed", Text: d.MonthName() + " " + strconv.Itoa(d.Year),
		From: "planned, at 50 %; the month of completion counts"}
}

// axle is a rating with the tires it is meant with.
func axle(what string, gawr quantity.Mass, t config.Tires) []LabelLine {
	text := t.Size
	if t.Count == 4 {
		text += ", dual"
	}
	return []LabelLine{
		pounds(what+" GAWR", gawr, fromRating),
		{What: what + " tires", Text: text, From: "the chassis"},
		{What: what + " tire pressure, cold", Text: quantity.Group(t.PressurePSI, 0) + " psi", From: "the chassis"},
	}
}

// rims are not of the catalogue: the certifying manufacturer reads them off the wheels.
//
// Source: 49 CFR 571.120 S5.3.2, rims beside the tires of a label; from memory.
func rims(what string) LabelLine {
	return LabelLine{What: what + " rims, size and type", From: "to be read off the wheels (49 CFR 571.120 S5.3.2, " +
		"from memory)", Blank: true}
}

func (q *Quote) ratings() []LabelLine {
	out := []LabelLine{pounds("GVWR", q.Chassis.GVWRLb, fromRating)}
	out = append(append(out, axle("Front", q.Chassis.GAWRFrontLb, q.Chassis.FrontTires)...), rims("Front"))
	return append(append(out, axle("Rear", q.Chassis.GAWRRearLb, q.Chassis.RearTires)...), rims("Rear"))
}

func (q *Quote) finalStageLabel() Label {
	lines := []LabelLine{blank("Manufacturer, after MANUFACTURED BY or MFD BY"), q.completed()}
	lines = append(lines, q.ratings()...)
	return Label{"final-stage", "Final-stage manufacturer's label",
		"49 CFR 567.5(d): headings read, the list from memory", append(lines,
			blank("Statement of conformity, in the form that fits what was built"),
			blank("Vehicle identification number, of the chassis"),
			q.vehicleType(),
		)}
}

// vehicleType is the type that certification tells apart.
func (q *Quote) vehicleType() LabelLine {
	if !q.patients() {
		return LabelLine{What: "Vehicle type", Text: "truck", From: "usual of units without patients; from memory"}
	}
	return LabelLine{What: "Vehicle type", Text: "multipurpose passenger vehicle",
		From: "usual of ambulances; from memory"}
}

func (q *Quote) altererLabel() Label {
	lines := []LabelLine{
		{What: "Sentence", Text: "This vehicle was altered by (name) in (month and year) and as altered it conforms " +
			"to (what it was certified to)", From: "49 CFR 567.7, read in a copy"},
		blank("Name of who alters"), q.completed(),
	}
	for _, l := range q.ratings() {
		l.From += "; stated only where the work changes it"
		lines = append(lines, l)
	}
	return Label{"alterer", "Alterer's label, beside the maker's own",
		"49 CFR 567.7: a vehicle that was certified and is altered before its first sale, read in a copy",
		append(lines, blank("Vehicle type as altered, where it is another"))}
}

func (q *Quote) placard() Label {
	curb, from := q.curbWeight()
	tires := append(axle("Front", 0, q.Chassis.FrontTires)[1:], axle("Rear", 0, q.Chassis.RearTires)[1:]...)
	return Label{"placard", "Placard of tires and load",
		"49 CFR 571.110, to 10,000 lb GVWR: the sentence as vehicle manuals print it, the list from memory",
		append([]LabelLine{
			{What: "Sentence", Text: "The combined weight of occupants and cargo should never exceed",
				From: "vehicle manuals"},
			pounds("That weight", q.Chassis.GVWRLb-curb, "GVWR less curb weight, "+from),
			{What: "Designated seats", Value: float64(len(q.Space.Seats)), Unit: quantity.Count, From: "the unit"},
		}, tires...)}
}

// curbWeight is the one that was read on the scale where the test sheet has it, else the
// computed one.
func (q *Quote) curbWeight() (lb quantity.Mass, from string) {
	for _, r := range q.Draft.Readings {
		if r.Check == "weigh.total" && r.Value > 0 {
			return quantity.Mass(r.Value), fromReading
		}
	}
	return q.Weight.Curb.TotalLb, "computed; to be weighed"
}

// occupants is what people are counted for, by the rule in force.
func (q *Quote) occupants() (crew, patients quantity.Mass, from string) {
	a := &q.Assume
	crew = quantity.Mass(float64(len(q.Space.Seats)) * a.OccupantLb.Value)
	patients = quantity.Mass(float64(len(q.Space.Cots)) * a.PatientLb.Value)
	count := func(n int, who string, lb float64) string {
		return quantity.Group(float64(n), 0) + " " + who + " at " + quantity.US.Show(lb, quantity.Pound)
	}
	from = count(len(q.Space.Seats), "seated", a.OccupantLb.Value)
	if n := len(q.Space.Cots); n > 0 {
		from += " and " + count(n, "lying", a.PatientLb.Value)
	}
	return crew, patients, from
}

// whole rounds to the pound that is printed, so that the sums of a form are those of what
// stands in it.
func whole(lb quantity.Mass) quantity.Mass { return quantity.Mass(math.Round(float64(lb))) }

func (q *Quote) payloadSign() Label {
	curb, from := q.curbWeight()
	curb = whole(curb)
	crew, patients, people := q.occupants()
	aboard := whole(crew + patients)
	payload := q.Chassis.GVWRLb - curb
	return Label{"payload-sign", "Payload sign", "KKK-A-1822F figure 1: named in its contents, the form from memory",
		[]LabelLine{
			blank("Manufacturer"), q.completed(), blank("Vehicle identification number"),
			{What: "Type", Text: "Type " + strings.ReplaceAll(q.Chassis.Type, "-AD", ", additional duty"),
				From: "the chassis"},
			pounds("GVWR", q.Chassis.GVWRLb, fromRating),
			pounds("Curb weight, full fluids", curb, from),
			pounds("Payload", payload, "GVWR less curb weight"),
			pounds(q.aboard(), aboard, people),
			pounds("Cargo that may be added", payload-aboard, "payload less people"),
		}}
}

func (q *Quote) payloadForm() Label {
	curb, from := q.curbWeight()
	curb = whole(curb)
	crew, patients, people := q.occupants()
	aboard := whole(crew + patients)
	payload := q.Chassis.GVWRLb - curb
	lines := []LabelLine{
		pounds("1. GVWR", q.Chassis.GVWRLb, fromRating),
		pounds("2. Curb weight", curb, from),
		pounds("3. Payload, 1 less 2", payload, ""),
	}
	next := 4 // the number of the entry after those on what is asked for
	if f, ok := q.Figure("weight.payload"); ok && f.Sense == config.AtLeast {
		next = 6
		asked := whole(quantity.Mass(f.Limit))
		lines = append(lines, pounds("4. Payload asked for", asked, f.Basis.Known(f.Source)),
			pounds("5. Beyond it, 3 less 4", payload-asked, ""))
	}
	loose := quantity.Mass(0)
	listed := "listed in Equipment"
	for _, it := range q.Weight.Items {
		if it.Kind == weight.KindEquipment {
			loose += it.Lb
			if it.ID == weight.AllowanceItem {
				listed = "an allowance until it is listed"
			}
		}
	}
	loose = whole(loose)
	lines = append(lines,
		pounds(fmt.Sprintf("%d. %s", next, q.aboard()), aboard, people),
		pounds(fmt.Sprintf("%d. Loose equipment", next+1), loose, listed),
		pounds(fmt.Sprintf("%d. Left, 3 less %d and %d", next+2, next, next+1), payload-aboard-loose, ""))
	source := "KKK-A-1822F figure 2: named in its contents, the form from memory"
	if !q.patients() {
		source = "A form of our own: no ambulance specification applies to this unit"
	}
	return Label{"payload-form", "Payload form", source, lines}
}
