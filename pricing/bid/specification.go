package bid

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
)

// Clause is one of a specification that a purchaser could put out to bid.
type Clause struct {
	No   string
	Text string
	Head bool
}

// bounds are the figures that a specification names, chapter by chapter. Each binds on the side
// that the purchaser is better off with.
var bounds = []struct {
	head  string
	codes []string
}{
	{"Chassis and ratings", []string{factGVWR, factGAWRFront, factGAWRRear, factWheelbase, factFuel, factFloor}},
	{"Weights", []string{"weight.payload", "weight.curb", shareFrontReserve, shareRearReserve, "weight.side"}},
	{"Dimensions", []string{"space.length", "space.width", "space.height", factModule, "space.headroom", "space.aisle",
		"space.inside-length",
		"space.storage", "space.compartments", countCompartments, "space.seats", "space.patients", "space.oxygen"}},
	{"Electrical capacity", []string{factHotIdle, "power.remaining", "power.battery-minutes"}},
}

// Specification is the unit as a purchaser's document, in words that name no maker:
// each figure that binds with its amount, then what is to be furnished, chapter by
// chapter.
func Specification(q *quote.Quote, in quantity.System) []Clause {
	var out []Clause
	section := 0
	head := func(text string) {
		section++
		out = append(out, Clause{strconv.Itoa(section), text, true})
	}
	item := func(n int, text string) {
		out = append(out, Clause{strconv.Itoa(section) + "." + strconv.Itoa(n), text, false})
	}
	head("General")
	cat := q.Edition.Cat
	kind := noun(q)
	if kind == ambulance {
		kind = "Type " + q.Chassis.Type + " " + kind
	}
	on := " on a " + cabWords[q.Chassis.Cab] + " with a " + q.Chassis.Fuel + " engine, " + q.Chassis.Drive + " drive."
	if q.Remount() {
		item(1, "The unit shall be "+withArticle(kind)+", a remount: the purchaser's existing module, "+moduleWords(q, in)+
			", refurbished and mounted"+on)
	} else {
		item(1, "The unit shall be "+withArticle(kind)+on)
	}
	item(2, "The unit shall comply with: "+q.Assume.Label+".")
	for _, b := range bounds {
		head(b.head)
		n := 0
		for _, code := range b.codes {
			i := slices.IndexFunc(gauges, func(g gauge) bool { return g.code == code })
			g := &gauges[i]
			f, ok := factOf(q, g)
			if !ok {
				continue
			}
			n++
			f.Label = g.label
			if q.OfDuty != nil {
				f.Label = q.OfDuty.Say(f.Label)
			}
			item(n, boundWords(f, g.sense, in))
		}
	}
	for _, ch := range cat.Chapters {
		n := 0
		for _, x := range cat.Chosen(&q.Draft.Unit, ch.ID) {
			if !required(q, x.Option) {
				continue
			}
			if n == 0 {
				head(ch.Label)
			}
			n++
			text := x.Group.Label + ": " + cat.Required(x.Option)
			if x.Qty > 1 {
				text += " Quantity: " + strconv.Itoa(x.Qty) + "."
			}
			item(n, text)
		}
	}
	return out
}

// required reports whether a purchaser asks for an option. What only says that there is
// nothing, such as no maintenance plan, is no requirement.
func required(q *quote.Quote, o *config.Option) bool {
	return !o.IsNone() && (q.Remount() || !slices.Contains(o.Tags, "remount"))
}

// moduleWords is the size of the module that a purchaser has.
func moduleWords(q *quote.Quote, in quantity.System) string {
	inch := func(v quantity.Length) string { return show(in, float64(v), quantity.Inch) }
	b, built := q.Body, ""
	if e := q.Draft.Unit.Existing; e != nil && e.Built != 0 {
		built = "built " + strconv.Itoa(e.Built) + ", "
	}
	return built + inch(b.LengthIn) + " long, " + inch(b.WidthIn) + " wide, " + inch(b.HeightIn) + " high"
}

// Kind is what documents call a unit, such as "an ambulance" or "a remounted ambulance".
func Kind(q *quote.Quote) string {
	if q.Remount() {
		return "a remounted " + noun(q)
	}
	return withArticle(noun(q))
}

// ambulance is what documents call a unit whose duty says nothing else.
const ambulance = "ambulance"

func noun(q *quote.Quote) string {
	if q.OfDuty != nil && q.OfDuty.Unit != "" {
		return q.OfDuty.Unit
	}
	return ambulance
}

func withArticle(word string) string {
	if strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}

var cabWords = map[string]string{"cab-chassis": "conventional cab-chassis", "cutaway": "cutaway van chassis",
	"van":    "full-size van",
	"medium": "medium-duty cab-chassis"}

// boundWords is a figure as a clause. A figure that is only likely counts with the poor end of
// its range, and the amount is rounded to the side on which the unit still complies.
func boundWords(f config.Figure, sense config.Sense, in quantity.System) string {
	f.Unit = countUnit(f.Code, f.Unit)
	steps := 1.0
	switch f.Unit {
	case quantity.Inch, quantity.Percent, quantity.Amp, quantity.CubicFoot, quantity.Hour:
		steps = 10 // shown with a decimal
	}
	if f.High > f.Low {
		f.Value = map[config.Sense]float64{config.AtLeast: f.Low, config.AtMost: f.High}[sense]
	}
	if sense == config.AtLeast {
		f.Value = math.Floor(f.Value*steps) / steps
	} else {
		f.Value = math.Ceil(f.Value*steps) / steps
	}
	amount := show(in, f.Value, f.Unit)
	not := map[config.Sense]string{config.AtLeast: "not less than ", config.AtMost: "not more than "}[sense]
	return strings.ToUpper(f.Label[:1]) + f.Label[1:] + ": " + not + amount + "."
}

// countUnit is the unit a figure is shown in: what has none is counted, but for the
// ratio of stability.
func countUnit(code, unit string) string {
	if unit == "" && code != "weight.ssf" {
		return quantity.Count
	}
	return unit
}
