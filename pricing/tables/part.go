package tables

import (
	"bytes"
	"encoding/json"
	"slices"
	"strconv"
	"strings"
)

// part is where a value stands in a file: the bytes of a text or number, or
// those between the brackets of a list or an object, and its entries there.
type part struct {
	open     json.Delim // '[' or '{', 0 of a text or number
	from, to int
	entries  []entry
}

// entry is an element of a list, named by its position, or a member of an
// object with its name before it.
type entry struct {
	from, to int
	name     string
}

// find looks a value up by the names that lead to it; positions count as names.
// The file is one that was read, so it is JSON. Nil when there is no such value.
func find(file []byte, path ...string) *part {
	f := &finder{file, json.NewDecoder(bytes.NewReader(file))}
	return f.value(path)
}

type finder struct {
	file []byte
	d    *json.Decoder
}

// next is where what stands next begins.
func (f *finder) next() int {
	n := int(f.d.InputOffset())
	for n < len(f.file) && strings.IndexByte(" \t\r\n,:", f.file[n]) >= 0 {
		n++
	}
	return n
}

func (f *finder) value(path []string) *part {
	p := &part{from: f.next()}
	open, err := f.d.Token()
	bracket, nested := open.(json.Delim)
	if err != nil || !nested {
		p.to = int(f.d.InputOffset())
		if len(path) > 0 {
			return nil
		}
		return p
	}
	p.open = bracket
	p.from++
	var found *part
	for i := 0; f.d.More(); i++ {
		e := entry{from: f.next(), name: strconv.Itoa(i)}
		if bracket == '{' {
			name, err := f.d.Token()
			if err != nil {
				return nil
			}
			e.name, _ = name.(string)
		}
		if len(path) > 0 && strings.EqualFold(e.name, path[0]) { // as encoding/json has it
			found = f.value(path[1:])
		} else {
			var over json.RawMessage
			if f.d.Decode(&over) != nil {
				return nil
			}
		}
		e.to = int(f.d.InputOffset())
		p.entries = append(p.entries, e)
	}
	_, _ = f.d.Token() // the closing bracket
	p.to = int(f.d.InputOffset()) - 1
	if len(path) > 0 {
		return found
	}
	return p
}

// change gives the entries of a list or an object other texts: the one at i
// becomes texts[i], or goes when that is empty, and those in added[i] come behind
// it, in added[-1] before all. What is not changed keeps its bytes and the space
// before it.
func (p *part) change(file []byte, texts []string, added map[int][]string) []edit {
	if len(added) == 0 && !slices.Contains(texts, "") {
		var edits []edit
		for i, e := range p.entries {
			if string(file[e.from:e.to]) != texts[i] {
				edits = append(edits, edit{e.from, e.to, texts[i]})
			}
		}
		return edits
	}
	var b strings.Builder
	add := func(space, text string) {
		if b.Len() > 0 {
			b.WriteByte(',')
		}
		b.WriteString(space + text)
	}
	spaces, usual, end := make([]string, len(p.entries)), "", p.from
	for i, e := range p.entries {
		spaces[i] = strings.Replace(string(file[end:e.from]), ",", "", 1)
		end = e.to
		if i < 2 {
			usual = spaces[i]
		}
	}
	for _, text := range added[-1] {
		add(usual, text)
	}
	for i, text := range texts {
		if text != "" {
			add(spaces[i], text)
		}
		for _, text := range added[i] {
			add(usual, text)
		}
	}
	return []edit{{p.from, p.to, b.String() + string(file[end:p.to])}}
}

// texts are those of the entries as they stand.
func (p *part) texts(file []byte) []string {
	out := make([]string, len(p.entries))
	for i, e := range p.entries {
		out[i] = string(file[e.from:e.to])
	}
	return out
}

// line writes a value as JSON on one line, in the house's form.
func line(v any) string {
	var tight, b bytes.Buffer
	e := json.NewEncoder(&tight)
	e.SetEscapeHTML(false)
	if e.Encode(v) != nil || json.Indent(&b, bytes.TrimSpace(tight.Bytes()), "", "") != nil {
		return "null" // a number that is not finite: the check of the whole refuses it
	}
	return strings.ReplaceAll(strings.ReplaceAll(b.String(), ",\n", ", "), "\n", "")
}
