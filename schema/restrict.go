package main

import (
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/invopop/jsonschema"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/quote"
)

// words are the fields that take one of a few fixed words, by "Type.field", as
// the reader has them; a test holds the two together. An empty word says that
// the field may be there and say nothing.
var words = map[string][]string{
	"Catalogue.format":       {config.CatalogueFormat},
	"Compartment.side":       {"street", "curb", "rear", "inside"},
	"Mass.zone":              append([]string{""}, config.Zones...),
	"Place.kind":             slices.Sorted(maps.Keys(config.PlaceKinds)),
	"Shell.comp_doors":       config.CompDoors,
	"ShellChange.comp_doors": config.CompDoors,
	"Place.face":             config.PlaceFaces,
	"Place.along":            config.PlaceAlongs,
	"Place.level":            config.PlaceLevels,
	"Place.hinge":            config.Hinges,
	"Place.color": append([]string{"", config.ColorWarn, config.ColorAsks},
		slices.Sorted(maps.Keys(config.ColorNames))...),
	"Option.unseen":     append([]string{""}, slices.Sorted(maps.Keys(config.UnseenReasons))...),
	"Look.glass":        config.GlassLooks,
	"Look.doors":        config.Hinges,
	"Look.cabinets":     config.Hinges,
	"Look.cot":          config.CotLooks,
	"Look.wheels":       config.WheelLooks,
	"Compartment.along": config.PlaceAlongs,
	"Compartment.wall":  {"", config.FaceStreetWall, config.FaceCurbWall},
	"Seat.along":        config.PlaceAlongs,
	"Group.choose":      {config.ChooseOne, config.ChooseAtMostOne, config.ChooseAny},
	"Rule.kind":         config.RuleKinds,
	"Test.op":           {"=", "!=", "<", "<=", ">", ">="},
	"Activity.source":   {"", config.SourceChassis, config.SourceParts, config.SourceBacklog, config.SourceSlot},
	"Activity.only":     {"", "module", "van", "new", "existing"},
	"Fee.per":           {pricing.PerUnit, pricing.PerOrder},
	"Draft.format":      {quote.DraftFormat},
	"Terms.use":         append([]string{""}, pricing.Uses...),
	"Needs.duty":        ids(quote.Duties),
	"Needs.roads":       ids(quote.RoadKinds),
	"Needs.climate":     ids(quote.Climates),
	"Needs.type":        {"", "I", "II", "III", quote.MediumDuty},
	"Needs.fuel":        {"", "diesel", "gasoline"},

	"Requirement.verdict": {"", string(quote.Meets), string(quote.Excepted), string(quote.Clarify)},
}

// attributed are the types whose fields say in their tags what they may be.
var attributed = []reflect.Type{reflect.TypeFor[config.Chassis](), reflect.TypeFor[config.Body](),
	reflect.TypeFor[config.Tires]()}

func init() {
	for _, t := range attributed {
		for _, a := range config.Attributes(t) {
			if a.Words != nil {
				words[t.Name()+"."+a.Name] = a.Words
			}
			if a.Rules && !slices.Contains(words["Test.attr"], a.Name) {
				words["Test.attr"] = append(words["Test.attr"], a.Name)
			}
		}
	}
}

// ids are the words of a need, with the empty one.
func ids(list []quote.Need) []string {
	out := []string{""}
	for _, n := range list {
		out = append(out, n.ID)
	}
	return out
}

// named are the types whose "id" the reader holds to the form of an id.
var named = []string{"Chapter", "Chassis", "Body", "Group", "Option", "Rule", "Equipment", "PlantStation", "Activity",
	"Edition", "Surcharge", "Credit", "Contract", "Prepay", "Fee", "Milestone"}

const idPattern = `^[a-z0-9][a-z0-9-]{0,47}$`

// positive are the figures that must be above zero, by "Type.field".
var positive = []string{
	"Equipment.mass_lb", "Equipment.length_in", "Equipment.width_in", "Equipment.height_in", "Plant.hours_per_day",
}

// restrict adds to the definitions what the Go types do not say but the reader
// checks. What takes two places of a file to see, such as an unknown id or a
// missing price, only the reader finds.
func restrict(defs jsonschema.Definitions) {
	for name, list := range words {
		if p := field(defs, name); p != nil {
			p.Enum = values(list)
		}
	}
	for _, name := range named {
		if p := field(defs, name+".id"); p != nil {
			p.Pattern = idPattern
		}
	}
	for _, t := range attributed {
		for _, a := range config.Attributes(t) {
			if p := field(defs, t.Name()+"."+a.Name); p != nil && a.Numeric() {
				p.Minimum, p.Maximum = number(a.Least), number(a.Most)
			}
		}
	}
	for _, name := range positive {
		if p := field(defs, name); p != nil {
			p.ExclusiveMinimum = "0"
		}
	}
	if c := defs["Cond"]; c != nil {
		one := uint64(1)
		c.MinProperties, c.MaxProperties = &one, &one
	}
}

func number(v float64) json.Number { return json.Number(strconv.FormatFloat(v, 'f', -1, 64)) }

// field finds a property by "Type.field"; nil when this schema has none.
func field(defs jsonschema.Definitions, name string) *jsonschema.Schema {
	typ, prop, _ := strings.Cut(name, ".")
	if defs[typ] == nil || defs[typ].Properties == nil {
		return nil
	}
	p, _ := defs[typ].Properties.Get(prop)
	return p
}
