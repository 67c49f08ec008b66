package main

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strings"

	"github.com/invopop/jsonschema"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
)

// Schemas are the files that Generate writes, by name.
var Schemas = map[string]struct {
	title string
	value any
}{
	"catalogue.schema.json": {"Boxwright catalogue: everything a plant offers in one dated edition", config.Catalogue{}},
	"quote.schema.json":     {"Boxwright quote: a unit, its terms and the parties", quote.Draft{}},
}

// texts are the types that are written as a text of a fixed form.
var texts = map[reflect.Type]*jsonschema.Schema{
	reflect.TypeFor[config.Date](): {Type: "string",
		Pattern: `^((19|20|21)[0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01]))?$`, Description: "A calendar day, " +
			"year-month-day; an empty text is no day."},
	reflect.TypeFor[money.Amount](): {Type: "string", Pattern: money.AmountPattern,
		Description: "Money in the currency of the price book, such as \"1234.00\"; negative is a credit."},
	reflect.TypeFor[money.Percent](): {Type: "string", Pattern: money.PercentPattern,
		Description: "A rate in hundredths: \"8.25\" is 8.25 %."},
	reflect.TypeFor[money.Quantity](): {Type: "string", Pattern: money.QuantityPattern,
		Description: "How many or how much is priced: pieces, miles, days."},
	reflect.TypeFor[pricing.Rounding](): {Type: "string", Enum: values(money.Roundings),
		Description: "Where an exact half of a cent goes."},
	reflect.TypeFor[pricing.Scope](): {Type: "string", Enum: values(pricing.Scopes),
		Description: "Which of a unit's prices a percentage applies to; build is body and options."},
}

// Generate makes the schema of a file from the Go types that read it, with
// their doc comments as descriptions. It reads the sources of packages config
// and pricing and so must run in the module's root.
func Generate(name string) ([]byte, error) {
	title, root := Schemas[name].title, reflect.TypeOf(Schemas[name].value)
	if root == nil {
		return nil, fmt.Errorf("there is no schema %q", name)
	}
	g := &jsonschema.Reflector{Anonymous: true, CommentMap: map[string]string{}}
	for _, folder := range []string{"config", "pricing"} {
		if err := g.AddGoComments("boxwright", folder, jsonschema.WithFullComment()); err != nil {
			return nil, err
		}
	}
	for key, text := range g.CommentMap {
		g.CommentMap[key] = strings.Join(strings.Fields(text), " ")
	}
	used := map[string]reflect.Type{} // by the name of a definition
	var clash error
	g.Namer = func(t reflect.Type) string {
		if t.Kind() != reflect.Struct {
			if t.Name() == "" {
				return ""
			}
			return t.String() // quantity.Mass is not config's Mass
		}
		if other := used[t.Name()]; other != nil && other != t {
			clash = fmt.Errorf("%v and %v would both be called %s; rename one", t, other, t.Name())
		}
		used[t.Name()] = t
		return t.Name()
	}
	special := jsonschema.Definitions{}
	g.Mapper = func(t reflect.Type) *jsonschema.Schema {
		if text := texts[t]; text != nil {
			special[t.Name()] = text
			return &jsonschema.Schema{Ref: "#/$defs/" + t.Name()}
		}
		if t == reflect.TypeFor[json.RawMessage]() { // the price book, which config leaves closed
			return &jsonschema.Schema{Ref: "#/$defs/Book"}
		}
		return nil
	}
	s := g.ReflectFromType(root)
	s.Title = title
	if root == reflect.TypeFor[config.Catalogue]() {
		for name, def := range g.Reflect(pricing.Book{}).Definitions {
			s.Definitions[name] = def
		}
	}
	for name, text := range special {
		s.Definitions[name] = text
	}
	if clash != nil {
		return nil, clash
	}
	restrict(s.Definitions)
	raw, err := json.Marshal(s)
	if err != nil {
		return nil, err
	}
	return layout(raw, func(path string) bool {
		// The definitions, each with a property to a line.
		parts := strings.Split(path, ".")
		return path == "" || parts[0] == "$defs" && (len(parts) < 3 || len(parts) == 3 && parts[2] == "properties")
	})
}

func values[T ~string](words []T) []any {
	list := make([]any, len(words))
	for i, w := range words {
		list[i] = string(w)
	}
	return list
}
