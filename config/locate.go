package config

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
)

// misfit is the first place of a JSON value that does not fit its Go type.
type misfit struct {
	path   string // such as options[12].mass.lb
	offset int    // in bytes, where it begins
	code   string
	text   string
}

// locate looks for the first misfit of a file that encoding/json has refused,
// since that names neither the element of a list nor the place of an unknown
// field. It is nil when this walk finds nothing amiss.
func locate(file []byte, t reflect.Type) *misfit {
	l := &locator{file, json.NewDecoder(bytes.NewReader(file))}
	return l.value(t, "")
}

type locator struct {
	file []byte
	d    *json.Decoder
}

var (
	jsonReader = reflect.TypeFor[json.Unmarshaler]()
	textReader = reflect.TypeFor[encoding.TextUnmarshaler]()
)

func (l *locator) value(t reflect.Type, path string) *misfit {
	nullable := t.Kind() == reflect.Pointer
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	start := next(l.file, l.d.InputOffset())
	own := reflect.PointerTo(t).Implements(jsonReader) || reflect.PointerTo(t).Implements(textReader)
	nested := t.Kind() == reflect.Struct || t.Kind() == reflect.Map || t.Kind() == reflect.Slice
	var raw json.RawMessage
	if own || !nested {
		if l.d.Decode(&raw) != nil || nullable && string(raw) == "null" {
			return nil
		}
		if code, text := refused(raw, t); code != "" {
			return &misfit{path, start, code, text}
		}
		return nil
	}
	open, err := l.d.Token()
	if err != nil || open == nil { // null fits anything
		return nil
	}
	want := json.Delim('{')
	if t.Kind() == reflect.Slice {
		want = '['
	}
	if open != want {
		return &misfit{path, start, "type", fmt.Sprintf("%s stands where %s belongs", jsonWord(open), goWord(t))}
	}
	for i := 0; l.d.More(); i++ {
		elem, at := reflect.Type(nil), fmt.Sprintf("%s[%d]", path, i)
		if t.Kind() == reflect.Slice {
			elem = t.Elem()
		} else {
			start := next(l.file, l.d.InputOffset())
			token, err := l.d.Token()
			name, ok := token.(string)
			if err != nil || !ok {
				return nil
			}
			at = strings.TrimPrefix(path+"."+name, ".")
			if t.Kind() == reflect.Map {
				elem = t.Elem()
			} else if elem = fieldType(t, name); elem == nil {
				return &misfit{at, start, "field", fmt.Sprintf("there is no field %q here; it is misspelled or in the "+
					"wrong place%s", name, fieldsOf(t))}
			}
		}
		if m := l.value(elem, at); m != nil {
			return m
		}
	}
	_, _ = l.d.Token() // the closing bracket
	return nil
}

// refused says what is wrong with a single value for its type; the code is
// empty when nothing is.
func refused(raw []byte, t reflect.Type) (code, text string) {
	err := json.Unmarshal(raw, reflect.New(t).Interface())
	typed, ok := err.(*json.UnmarshalTypeError)
	switch {
	case err == nil:
		return "", ""
	case !ok:
		return "field", err.Error()
	}
	if number, ok := strings.CutPrefix(typed.Value, "number "); ok {
		return "type", fmt.Sprintf("the number %s is not %s that can be held", number, goWord(t))
	}
	var found any
	_ = json.Unmarshal(raw, &found)
	return "type", fmt.Sprintf("%s stands where %s belongs", jsonWord(found), goWord(t))
}

// next is where the value or name behind an offset begins.
func next(file []byte, offset int64) int {
	n := int(offset)
	for n < len(file) && strings.IndexByte(" \t\r\n,:", file[n]) >= 0 {
		n++
	}
	return n
}

// fieldType is the type of the field that a name of the file fills, by the
// rules of encoding/json; nil when there is none.
func fieldType(t reflect.Type, name string) reflect.Type {
	for i := range t.NumField() {
		f := t.Field(i)
		tag, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous && tag == "" && f.Type.Kind() == reflect.Struct {
			if inner := fieldType(f.Type, name); inner != nil {
				return inner
			}
		}
		if tag == "" {
			tag = f.Name
		}
		if f.IsExported() && tag != "-" && strings.EqualFold(tag, name) {
			return f.Type
		}
	}
	return nil
}

// mostNamed is of how many fields a reader is told all names.
const mostNamed = 12

// fieldsOf names the fields that a small type has, for a reader who wrote another.
func fieldsOf(t reflect.Type) string {
	if t.NumField() > mostNamed {
		return ""
	}
	var names []string
	for i := range t.NumField() {
		name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		if name != "" && name != "-" {
			names = append(names, name)
		}
	}
	return ". Fields here: " + strings.Join(names, ", ")
}

// jsonWord names a decoded value, or the token that opens it, for a reader.
func jsonWord(v any) string {
	switch v := v.(type) {
	case json.Delim:
		if v == '[' {
			return "a list"
		}
		return "an object"
	case []any:
		return "a list"
	case map[string]any:
		return "an object"
	case string:
		return "a text"
	case bool:
		return "true or false"
	}
	return "a number"
}

// goWord names what a type reads, for a reader.
func goWord(t reflect.Type) string {
	switch t.Kind() {
	case reflect.Slice, reflect.Array:
		return "a list"
	case reflect.Struct, reflect.Map:
		return "an object"
	case reflect.String:
		return "a text"
	case reflect.Bool:
		return "true or false"
	case reflect.Float64:
		return "a number"
	}
	return "a whole number"
}
