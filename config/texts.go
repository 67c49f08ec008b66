package config

import (
	"fmt"
	"reflect"
	"strings"
	"unicode/utf8"

	"boxwright/config/letters"
)

// maxTextBytes is the longest text of a catalogue.
const maxTextBytes = 4000

// maxIDBytes is the longest id that a quote may carry, whatever the catalogue.
const maxIDBytes = 64

// Texts says which texts of a value, given by its address, are too long, turn the
// direction of writing, cover other lines, or hold what cannot be seen.
func Texts(v any) Problems {
	var ps Problems
	eachText(reflect.ValueOf(v), nil, func(where *spot, s string) string {
		switch {
		case len(s) > maxTextBytes:
			ps = append(ps, Problem{"text.too-long", where.String(), fmt.Sprintf("has %d bytes; the most is %d", len(s),
				maxTextBytes)})
		case letters.Calm(s) != s:
			ps = append(ps,
				Problem{"text.letters", where.String(), "holds characters that cannot be seen, that turn the " +
					"direction of writing, or that cover other lines; type the text anew"})
		}
		return s
	})
	return ps
}

// doubtful reports whether a JSON file may hold a text in which Texts finds something: a
// quick look at bytes, so that a sound catalogue is not gone through field by field.
func doubtful(file []byte) bool {
	return letters.Wild(file) || !utf8.Valid(file) || longest(file) > maxTextBytes
}

// longest is how many bytes the longest text of a JSON file may have: those between two
// quotation marks.
func longest(file []byte) int {
	most, from := 0, 0
	for i := 0; i < len(file); i++ {
		switch file[i] {
		case '\\':
			i++ // a mark within a text
		case '"':
			most, from = max(most, i-from), i+1
		}
	}
	return most
}

// Calm takes out of every text of a value, given by its address, what letters.Calm does.
func Calm(v any) {
	eachText(reflect.ValueOf(v), nil, func(_ *spot, s string) string { return letters.Calm(s) })
}

// spot is where a text stands in a value. It is put into words only where there is
// something to say of it.
type spot struct {
	in   *spot
	name string // of a field; empty for one of a list
	at   int
}

func (p *spot) String() string {
	switch {
	case p == nil:
		return ""
	case p.name == "":
		return fmt.Sprintf("%s[%d]", p.in, p.at)
	}
	return strings.TrimPrefix(p.in.String()+" "+p.name, " ")
}

// eachText calls a function with every text of a value and where it stands, and puts what
// it returns in its place. Keys of maps are left.
func eachText(v reflect.Value, where *spot, f func(where *spot, s string) string) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			eachText(v.Elem(), where, f)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			field := v.Type().Field(i)
			if !field.IsExported() {
				continue
			}
			name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
			in := where
			if name != "" {
				in = &spot{in: where, name: name}
			}
			eachText(v.Field(i), in, f)
		}
	case reflect.Slice:
		if v.Type().Elem().Kind() == reflect.Uint8 {
			return
		}
		for i := range v.Len() {
			eachText(v.Index(i), &spot{in: where, at: i}, f)
		}
	case reflect.String:
		if s := v.String(); v.CanSet() {
			if now := f(where, s); now != s {
				v.SetString(now)
			}
		}
	}
}

// CheckIDs says which ids of a unit are longer than any catalogue has: they are shown where
// no catalogue knows them.
func (u *Unit) CheckIDs() Problems {
	var ps Problems
	check := func(where string, list ...string) {
		for _, id := range list {
			if len(id) > maxIDBytes {
				ps = append(ps, Problem{"unit.id", where, fmt.Sprintf("an id has %d bytes; the most is %d", len(id),
					maxIDBytes)})
			}
		}
	}
	check("catalogue", u.Catalogue)
	check("edition", u.Edition)
	check("chassis", u.Chassis)
	check("body", u.Body)
	check("rule_set", u.RuleSet)
	check("proposed", u.Proposed...)
	check("left_out", u.LeftOut...)
	for _, p := range u.Picks {
		check("picks", p.Option)
	}
	for _, d := range u.Details {
		check("details", d.Option)
	}
	for _, c := range u.Carried {
		check("carried", c.Equipment, c.Compartment)
	}
	for _, o := range u.Own {
		check("own", o.Figure)
	}
	for _, a := range u.Factors {
		check("factors", a.Factor)
	}
	return ps
}
