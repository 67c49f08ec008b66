package quote

import (
	"fmt"
	"reflect"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing"
)

// Needs are what the buyer asks for in the trade's words, before any chassis
// or option is chosen. Budget, needed date, standard and loose equipment stand
// in the terms and the unit. Each need is a must, which every unit offered keeps,
// unless it stands among Wants: those are shown and weighed. See Asks.
type Needs struct {
	Duty     string   `json:"duty,omitempty"`     // id of one of Duties
	Roads    string   `json:"roads,omitempty"`    // of one of RoadKinds
	Climate  string   `json:"climate,omitempty"`  // of one of Climates
	Type     string   `json:"type,omitempty"`     // of chassis: I, II or III, additional duty or not, or MediumDuty
	Fuel     string   `json:"fuel,omitempty"`     // "diesel" or "gasoline"; empty either
	Drive    string   `json:"drive,omitempty"`    // "4x2" or "4x4"; empty either
	Crew     int      `json:"crew,omitempty"`     // people on designated seats, the cab's included
	Patients int      `json:"patients,omitempty"` // on cots at once
	Must     []string `json:"must,omitempty"`     // ids of options the unit must have
	Like     []string `json:"like,omitempty"`     // of options it would have, the dearest to the buyer first

	HeightIn     quantity.Length `json:"height_in,omitempty"`      // overall, at most: the bay's door
	LengthIn     quantity.Length `json:"length_in,omitempty"`      // overall, at most: the bay
	HeadroomIn   quantity.Length `json:"headroom_in,omitempty"`    // at least
	ModuleIn     quantity.Length `json:"module_in,omitempty"`      // length of the module, at least
	ModuleMostIn quantity.Length `json:"module_most_in,omitempty"` // length of the module, at most
	LoadingIn    quantity.Length `json:"loading_in,omitempty"`     // loading height at the rear, at most
	TurningFt    quantity.Feet   `json:"turning_ft,omitempty"`     // turning circle between curbs, at most

	Wants []string `json:"wants,omitempty"` // ids of the needs that are wants, see AskIDs; sorted
	// Firm are those of duty, roads and climate that are musts though options only suit
	// them: each of these must be in. Sorted.
	Firm []string `json:"firm,omitempty"`
	// Begun is the chassis that the buyer began on, where proposals begin; others follow.
	Begun string `json:"begun,omitempty"`
}

// Need is a word of the trade and what it asks of a unit. A catalogue says in
// the tags of its options which of them a need asks for: "needed-" and the id
// for what it must have, "suits-" and the id for what it would have.
type Need struct {
	ID, Label string
	Drive     string // of the chassis, where the need asks for one
}

// What a unit is for, where it goes, and in what weather.
var (
	Duties = []Need{
		{"bls", "Basic life support transport", ""}, {"als", "Advanced life support", ""}, {"critical", "Critical care", ""},
		{"neonatal", "Neonatal transport", ""}, {"multi", "Multi-patient transport", ""}, {"rescue", "Rescue", ""}, {"hazmat", "Hazardous materials response", ""},
		{"contaminated", "Contaminated-patient transport", ""},
	}
	RoadKinds = []Need{{"paved", "Paved", ""}, {"gravel", "Gravel", ""}, {"snow", "Snow and steep grades", "4x4"}}
	Climates  = []Need{{"temperate", "Temperate", ""}, {"hot", "Hot", ""}, {"cold", "Cold", ""}}
)

// Tags of options by need.
const (
	tagNeeded = "needed-"
	tagSuits  = "suits-"
)

const maxWishes = 60

// Unknown lists the needs of which the catalogue says nothing: none of its options
// is tagged for them.
func (n *Needs) Unknown(cat *config.Catalogue) []string {
	var out []string
	for _, w := range n.words() {
		if w != "" && w != "paved" && w != "temperate" && !slices.ContainsFunc(cat.Options, func(o config.Option) bool {
			return slices.Contains(o.Tags, tagNeeded+w) || slices.Contains(o.Tags, tagSuits+w)
		}) {
			out = append(out, w)
		}
	}
	return out
}

// words are the needs stated that options may be tagged for.
func (n *Needs) words() []string { return []string{n.Duty, n.Roads, n.Climate} }

// wordIDs are the ids of those needs, in the same order.
var wordIDs = []string{"duty", "roads", "climate"}

// wordLabels are what their fields are called, wordLists what they take.
var (
	wordLabels = []string{"Duty", "Roads", "Climate"}
	wordLists  = [][]Need{Duties, RoadKinds, Climates}
)

// Any reports whether anything was asked of the unit, beside the chassis it began on.
func (n *Needs) Any() bool {
	asked := *n
	asked.Begun = ""
	return !reflect.ValueOf(asked).IsZero()
}

// IsWant reports whether the buyer would give way on a need, by its id.
func (n *Needs) IsWant(id string) bool { return slices.Contains(n.Wants, id) }

// IsAsked reports whether an option is asked for, as a must or a would-like.
func (n *Needs) IsAsked(cat *config.Catalogue, option string) bool {
	must, like := n.Wishes(cat)
	return slices.Contains(must, option) || slices.Contains(like, option)
}

// drive asked for, by itself or for the roads; empty any. A drive that is only for
// the roads is as firm as these.
func (n *Needs) drive() string {
	if n.Drive != "" {
		return n.Drive
	}
	if i := slices.IndexFunc(RoadKinds, func(r Need) bool { return r.ID == n.Roads }); i >= 0 {
		return RoadKinds[i].Drive
	}
	return ""
}

// roadsDrive reports whether a drive is asked for by the roads alone.
func (n *Needs) roadsDrive() bool { return n.Drive == "" && n.drive() != "" }

// Wishes are the ids of the options that the needs ask for: those the unit must
// have, and those it would have, the buyer's own first.
func (n *Needs) Wishes(cat *config.Catalogue) (must, like []string) {
	add := func(list []string, id string) []string {
		if cat.OptionByID(id) == nil || slices.Contains(must, id) || slices.Contains(list, id) {
			return list
		}
		return append(list, id)
	}
	for _, id := range n.Must {
		must = add(must, id)
	}
	for _, id := range n.Like {
		like = add(like, id)
	}
	var firm [3]bool
	for i, id := range wordIDs {
		firm[i] = n.isFirm(cat, id)
	}
	for i := range cat.Options {
		o := &cat.Options[i]
		for i, w := range n.words() {
			switch {
			case w == "":
			case slices.Contains(o.Tags, tagNeeded+w) && !n.IsWant(wordIDs[i]),
				firm[i] && slices.Contains(o.Tags, tagSuits+w):
				must = add(must, o.ID)
			case slices.Contains(o.Tags, tagNeeded+w), slices.Contains(o.Tags, tagSuits+w):
				like = add(like, o.ID)
			}
		}
	}
	return must, slices.DeleteFunc(like, func(id string) bool { return slices.Contains(must, id) })
}

// OnlySuited reports whether a word of the needs, by its id, is one that options only
// suit: none of them must be in unless the customer says so. Roads that ask for a drive
// are none.
func (n *Needs) OnlySuited(cat *config.Catalogue, id string) bool {
	i := slices.Index(wordIDs, id)
	if i < 0 || n.words()[i] == "" || id == "roads" && n.roadsDrive() {
		return false
	}
	tag := tagNeeded + n.words()[i]
	return !slices.ContainsFunc(cat.Options, func(o config.Option) bool { return slices.Contains(o.Tags, tag) })
}

// SetFirm makes a word that options only suit a must, or a want again.
func (n *Needs) SetFirm(id string, firm bool) { n.Firm = toggled(n.Firm, id, firm) }

// isFirm reports whether the customer made a must of a word that options only suit.
func (n *Needs) isFirm(cat *config.Catalogue, id string) bool {
	return slices.Contains(n.Firm, id) && n.OnlySuited(cat, id)
}

// toggled is a sorted list with an id in it, or without; nil when that leaves none.
func toggled(list []string, id string, in bool) []string {
	list = slices.DeleteFunc(slices.Clone(list), func(x string) bool { return x == id })
	if in {
		list = append(list, id)
		slices.Sort(list)
	}
	if len(list) == 0 {
		return nil
	}
	return list
}

func (n *Needs) clone() Needs {
	c := *n
	c.Must, c.Like, c.Wants = slices.Clone(n.Must), slices.Clone(n.Like), slices.Clone(n.Wants)
	c.Firm = slices.Clone(n.Firm)
	return c
}

// checkNeeds bounds what needs, requirements and readings bring from outside.
func (d *Draft) checkNeeds() config.Problems {
	var ps config.Problems
	wrong := func(where, format string, args ...any) {
		ps = append(ps, config.Problem{Code: "draft.range", Where: where, Text: fmt.Sprintf(format, args...)})
	}
	n := &d.Needs
	for _, x := range []struct {
		where, id string
		words     []Need
	}{{"needs.duty", n.Duty, Duties}, {"needs.roads", n.Roads, RoadKinds}, {"needs.climate", n.Climate, Climates},
		{"needs.type", n.Type, []Need{{ID: "I"}, {ID: "II"}, {ID: "III"}, {ID: MediumDuty}}}, {"needs.fuel", n.Fuel,
			[]Need{{ID: "diesel"}, {ID: "gasoline"}}},
		{"needs.drive", n.Drive, []Need{{ID: "4x2"}, {ID: "4x4"}}}} {
		if x.id != "" && !slices.ContainsFunc(x.words, func(w Need) bool { return w.ID == x.id }) {
			wrong(x.where, "%.40q is not one of the words known here", x.id)
		}
	}
	for i := range Sizes {
		if x := &Sizes[i]; x.get(n) != 0 && !(x.get(n) >= x.From && x.get(n) <= x.To) {
			wrong("needs."+x.ID, "is %v; the field takes %v to %v, or nothing", x.get(n), x.From, x.To)
		}
	}
	for i, id := range n.Wants {
		if !slices.Contains(AskIDs, id) || i > 0 && n.Wants[i-1] >= id {
			wrong("needs.wants", "%.40q is not one of the needs, or they are not sorted, each once", id)
		}
	}
	for i, id := range n.Firm {
		if !slices.Contains(wordIDs, id) || i > 0 && n.Firm[i-1] >= id {
			wrong("needs.firm", "%.40q is none of duty, roads and climate, or they are not sorted, each once", id)
		}
	}
	if len(n.Must) > maxWishes || len(n.Like) > maxWishes {
		wrong("needs", "at most %d things are asked for by name", maxWishes)
	}
	if len(d.Requirements) > MaxRequirements {
		wrong("requirements", "are %d lines; the most is %d", len(d.Requirements), MaxRequirements)
		return ps
	}
	bytes := 0
	for i, r := range d.Requirements {
		if len(r.No) > MaxNo || len(r.Text) > MaxRequirementText || len(r.Answer) > MaxText || len(r.Pick) > MaxNo ||
			len(r.Meant) > MaxRequirementText || r.Row < 0 ||
			!slices.Contains([]Outcome{Unanswered, Meets, Excepted, Clarify}, r.Verdict) {
			wrong(fmt.Sprintf("requirements[%d]", i), "its number has more than %d bytes, its text more than %d, its "+
				"answer more than %d, or its verdict is none of %q, %q and %q", MaxNo, MaxRequirementText, MaxText,
				Meets, Excepted, Clarify)
		}
		bytes += len(r.No) + len(r.Text) + len(r.Answer) + len(r.Pick) + len(r.Meant)
	}
	if bytes > maxRequirementBytes {
		wrong("requirements", "have %d bytes of text; the most is %d", bytes, maxRequirementBytes)
	}
	if len(d.Readings) > MaxReadings {
		wrong("readings", "are %d; the most is %d", len(d.Readings), MaxReadings)
		return ps
	}
	for i, r := range d.Readings {
		if len(r.Check) > 80 || !(r.Value >= -maxReading && r.Value <= maxReading) {
			wrong(fmt.Sprintf("readings[%d]", i), "is outside ±%d, or its check has more than 80 bytes",
				int(maxReading))
		}
	}
	return ps
}

// OverBudget is by how much a price is above the budget: negative below it, zero
// without a budget.
func (d *Draft) OverBudget(total pricing.Amount) pricing.Amount {
	if d.Terms.Budget.Sign() <= 0 {
		return pricing.Amount{}
	}
	return total.Sub(d.Terms.Budget)
}
