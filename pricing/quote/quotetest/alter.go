package quotetest

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// alter changes one thing somewhere in a value, whatever it is, and returns the value.
func (h *hostile) alter(x any) any {
	switch v := x.(type) {
	case object:
		keys := slices.Sorted(maps.Keys(v))
		if len(keys) == 0 {
			return v
		}
		key := keys[h.r.IntN(len(keys))]
		switch h.r.IntN(20) {
		case 0:
			return object{}
		case 1:
			delete(v, key)
		case 2:
			v[key] = nil
		case 3:
			v[key] = v[keys[h.r.IntN(len(keys))]]
		default:
			v[key] = h.alter(v[key])
		}
		return v
	case list:
		return h.alterList(v)
	case float64:
		return []any{h.number(), v * 1000, v / 1000, -v, v + 1, "x", nil}[h.r.IntN(7)]
	case string:
		return []any{h.text(), h.anyID(), strings.Repeat(v+"x", 1+h.r.IntN(60)), "2199-12-31", 7, nil}[h.r.IntN(6)]
	case bool:
		return !v
	}
	return object{"x": 1}
}

func (h *hostile) alterList(v list) any {
	if len(v) == 0 {
		return list{nil}
	}
	i := h.r.IntN(len(v))
	switch h.r.IntN(12) {
	case 0:
		return list{}
	case 1: // one of them over and over
		return append(v, slices.Repeat(list{v[i]}, h.many(200))...)
	case 2:
		return list{v}
	case 3:
		slices.Reverse(v)
	case 4:
		return slices.Delete(v, i, i+1)
	case 5:
		return v[i]
	default:
		v[i] = h.alter(v[i])
	}
	return v
}

// anyID is an id of something in the catalogue, mostly of another kind than belongs there.
func (h *hostile) anyID() string {
	names := []string{"chapters", "chassis", "bodies", "groups", "options", "rules", "duties", "equipment"}
	if all := h.ids(names[h.r.IntN(len(names))]); len(all) > 0 {
		return all[h.r.IntN(len(all))]
	}
	return ""
}

// garble spoils the text of a file, as no program writes it.
func (h *hostile) garble(file []byte) []byte {
	at := h.r.IntN(len(file))
	put := func(old, text string) []byte { return bytes.Replace(file, []byte(old), []byte(text), 1) }
	switch h.r.IntN(10) {
	case 0:
		return file[:at]
	case 1: // lists in lists
		n := h.many(2)
		return put(`"notice":`, `"notice":`+strings.Repeat("[", n)+strings.Repeat("]", n)+`,"notice":`)
	case 2: // objects in objects
		n := h.many(12)
		return put(`"then":{`, `"then":`+strings.Repeat(`{"not":`, n)+`{"pick":"x"}`+strings.Repeat("}", n)+`,"x":{`)
	case 3: // a number of many digits
		return put(`"hours_per_day":`, `"hours_per_day":`+strings.Repeat("8", h.many(1))+`,"hours_per_day":`)
	case 4:
		return put(`"hours_per_day":8`, `"hours_per_day":`+[]string{"NaN", "1e999", "-0", "8e-400", "Infinity",
			"0x8", "08", "8."}[h.r.IntN(8)])
	case 5: // the same key over and over
		return put(`"id":`, strings.Repeat(`"id":"x",`, h.many(9))+`"id":`)
	case 6: // an unknown key without an end
		return put(`"id":`, fmt.Sprintf(`"%s":1,"id":`, strings.Repeat("k", h.many(1))))
	case 7:
		file[at] ^= byte(1 + h.r.IntN(255))
		return file
	case 8: // spaces
		return append(file, bytes.Repeat([]byte(" \n"), h.many(2))...)
	}
	return append([]byte("\xef\xbb\xbf"), file...)
}
