package main

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"

	"boxwright/config"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
	"boxwright/web/app"
	kept "boxwright/web/areas/quote"
)

// Protocol are the files that say to the page's scripts what they and the core
// send each other, by path from the module's root: the types, and the limits
// that both sides keep.
var Protocol = map[string]func() ([]byte, error){
	"web/assets/protocol.d.ts": protocolTypes,
	"web/assets/protocol.js":   protocolLimits,
}

const generated = "// Generated from the Go types by go run ./schema generate; do not edit.\n"

// limits are the numbers that both sides keep.
var limits = []struct {
	name, comment string
	value         int
}{
	{"VERSION", "of the request and reply format", app.Version},
	{"MAX_FILE_BYTES", "the largest file that is read", min(config.MaxCatalogueBytes, kept.MaxExportBytes)},
	{"MAX_STEPS", "states of one quote that can be gone back to", kept.MaxSteps},
}

func protocolLimits() ([]byte, error) {
	text := generated
	for _, l := range limits {
		text += fmt.Sprintf("export const %s = %d; // %s\n", l.name, l.value, l.comment)
	}
	return []byte(text), nil
}

// protocolTypes writes the types of a request, its reply and the file of kept
// quotes in TypeScript.
func protocolTypes() ([]byte, error) {
	w := &typeWriter{names: map[string]reflect.Type{}, opaque: map[reflect.Type]string{
		reflect.TypeFor[quote.Draft]():     "Draft",
		reflect.TypeFor[json.RawMessage](): "unknown",
		reflect.TypeFor[weight.Ticket]():   "unknown",
		reflect.TypeFor[quote.Rival]():     "unknown",
		reflect.TypeFor[[]*string]():       "(string | null)[]",
	}}
	text := generated
	for _, l := range limits {
		text += fmt.Sprintf("export const %s: number;\n", l.name)
	}
	text += "\n// A quote as the core keeps it; the page hands it on and looks at its signature alone.\n" +
		"export interface Draft {\n  issued?: string;\n  [field: string]: unknown;\n}\n"
	w.write(reflect.TypeFor[app.Act](), sent{"do"})
	w.write(reflect.TypeFor[app.Request](), sent{"v", "acts"})
	w.write(reflect.TypeFor[app.Reply](), nil)
	w.write(reflect.TypeFor[kept.Export](), nil)
	for len(w.waiting) > 0 && w.err == nil {
		t := w.waiting[0]
		w.waiting = w.waiting[1:]
		w.write(t, nil)
	}
	return []byte(text + w.out.String()), w.err
}

// sent names the fields that a type sent by the page must have; all others may
// be left out. It is nil for a type that the core writes.
type sent []string

// typeWriter writes Go types as TypeScript, each once.
type typeWriter struct {
	out     strings.Builder
	names   map[string]reflect.Type // what is written or waits for it
	waiting []reflect.Type
	opaque  map[reflect.Type]string
	err     error
}

func (w *typeWriter) write(t reflect.Type, must sent) {
	w.names[t.Name()] = t
	fmt.Fprintf(&w.out, "\nexport interface %s {\n", t.Name())
	for i := range t.NumField() {
		f := t.Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if !f.IsExported() || name == "-" {
			continue
		}
		mark := ""
		if must != nil {
			mark = "?"
			for _, m := range must {
				if m == name {
					mark = ""
				}
			}
		} else if strings.Contains(options, "omitempty") {
			mark = "?"
		}
		fmt.Fprintf(&w.out, "  %s%s: %s;\n", name, mark, w.name(f.Type, f.Name))
	}
	w.out.WriteString("}\n")
}

// name is what a type is called in TypeScript; of is the field that has it.
func (w *typeWriter) name(t reflect.Type, field string) string {
	if t == reflect.TypeFor[json.RawMessage]() && field == "Draft" {
		return "Draft"
	}
	if name, ok := w.opaque[t]; ok {
		return name
	}
	if t.Implements(reflect.TypeFor[encoding.TextMarshaler]()) {
		return "string"
	}
	switch t.Kind() {
	case reflect.Pointer:
		return w.name(t.Elem(), field)
	case reflect.String:
		return "string"
	case reflect.Bool:
		return "boolean"
	case reflect.Int, reflect.Int64, reflect.Float64:
		return "number"
	case reflect.Slice, reflect.Array:
		return w.name(t.Elem(), field) + "[]"
	case reflect.Map:
		return "Record<string, " + w.name(t.Elem(), field) + ">"
	case reflect.Struct:
		if other, known := w.names[t.Name()]; !known {
			w.names[t.Name()] = t
			w.waiting = append(w.waiting, t)
		} else if other != t {
			w.err = fmt.Errorf("%v and %v would both be called %s; rename one", t, other, t.Name())
		}
		return t.Name()
	}
	w.err = fmt.Errorf("%s has the type %v, which the page's scripts cannot be told", field, t)
	return "unknown"
}
