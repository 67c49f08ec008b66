package config

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// Attribute is a text or a number of a catalogue's thing, as the tags of its field
// say: "attr" holds the words that a text may be, such as "4x2|4x4", or the least and
// the most of a number, such as "0..1e4"; "rules" says that rules may test it. The
// reader, the schemas and the conditions of rules take it from there.
type Attribute struct {
	Name        string   // as in JSON
	Words       []string // that a text may be
	Least, Most float64  // of a number
	Rules       bool     // rules may test it

	field int
	kind  reflect.Kind
}

// Numeric reports whether the attribute is a number; else it is a text.
func (a *Attribute) Numeric() bool { return a.kind == reflect.Float64 || a.kind == reflect.Int }

// Attributes lists those of a type.
func Attributes(t reflect.Type) []Attribute {
	var out []Attribute
	for i := range t.NumField() {
		tag := t.Field(i).Tag
		said, rules := tag.Get("attr"), tag.Get("rules") != ""
		if said == "" && !rules {
			continue
		}
		a := Attribute{Rules: rules, field: i, kind: t.Field(i).Type.Kind()}
		a.Name, _, _ = strings.Cut(tag.Get("json"), ",")
		if a.Numeric() {
			least, most, _ := strings.Cut(said, "..")
			a.Least, a.Most = bound(least), bound(most)
		} else if said != "" {
			a.Words = strings.Split(said, "|")
		}
		out = append(out, a)
	}
	return out
}

func bound(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(fmt.Sprintf("config: the tag %q of a field is no number", text)) // a test reads every tag
	}
	return v
}

// Attributes of chassis and body.
var (
	chassisAttributes = Attributes(reflect.TypeFor[Chassis]())
	bodyAttributes    = Attributes(reflect.TypeFor[Body]())
	tiresAttributes   = Attributes(reflect.TypeFor[Tires]())
)

// Attr reads an attribute that rules may test by its name: its text or its number.
func (c *Chassis) Attr(name string) (text string, number float64, known bool) {
	return read(chassisAttributes, reflect.ValueOf(c).Elem(), name)
}

// Attr reads an attribute that rules may test by its name: its text or its number.
func (b *Body) Attr(name string) (text string, number float64, known bool) {
	return read(bodyAttributes, reflect.ValueOf(b).Elem(), name)
}

func read(list []Attribute, thing reflect.Value, name string) (text string, number float64, known bool) {
	i := slices.IndexFunc(list, func(a Attribute) bool { return a.Name == name && a.Rules })
	if i < 0 {
		return "", 0, false
	}
	text, number = list[i].read(thing)
	return text, number, true
}

// read gives the text or the number that a thing has of an attribute; of what is true or
// false, "yes" or "no".
func (a *Attribute) read(thing reflect.Value) (text string, number float64) {
	v := thing.Field(a.field)
	switch a.kind {
	case reflect.String:
		return v.String(), 0
	case reflect.Bool:
		return map[bool]string{false: "no", true: "yes"}[v.Bool()], 0
	case reflect.Int:
		return "", float64(v.Int())
	}
	return "", v.Float()
}

// attributes checks those of a thing.
func (k *checker) attributes(where string, list []Attribute, thing reflect.Value) {
	for i := range list {
		a := &list[i]
		text, number := a.read(thing)
		switch {
		case a.Words != nil:
			k.oneOf(where+" "+a.Name, text, a.Words...)
		case a.Numeric() && !(number >= a.Least && number <= a.Most):
			k.outside(where+" "+a.Name, number, a.Least, a.Most)
		}
	}
}
