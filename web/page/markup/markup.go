// Package markup builds HTML and SVG as a tree and writes it escaped. There is
// no way to put raw text into the page, so nothing a catalogue, a link or a
// person supplies can ever become markup.
package markup

import (
	"strings"
	"sync"

	"boxwright/config/letters"
)

type kind uint8

const (
	element kind = iota
	attribute
	text
	fragment
	written
)

// Part is an element, an attribute, a text, or a run of parts. The nil Part
// writes nothing. It is a pointer because the pages' code hands parts around
// everywhere: copying the node itself would make the core a tenth larger.
type Part = *node

type node struct {
	kind  kind
	name  string // of element or attribute
	value string // of attribute or text; the HTML of what is written
	parts []Part
}

// El is an element with its attributes and children in any order.
func El(tag string, parts ...Part) Part { return &node{kind: element, name: tag, parts: parts} }

// At is an attribute.
func At(name, value string) Part { return &node{kind: attribute, name: name, value: value} }

// Flag is an attribute without a value, present when on.
func Flag(name string, set bool) Part {
	if !set {
		return nil
	}
	return &node{kind: attribute, name: name}
}

// Class is the class attribute; empty names are skipped.
func Class(names ...string) Part {
	var given []string
	for _, n := range names {
		if n != "" {
			given = append(given, n)
		}
	}
	if len(given) == 0 {
		return nil
	}
	return At("class", strings.Join(given, " "))
}

// Text is a text.
func Text(s string) Part { return &node{kind: text, value: s} }

// Many is a run of parts without an element around them.
func Many(parts ...Part) Part { return &node{kind: fragment, parts: parts} }

// If keeps the part when the condition holds.
func If(condition bool, p Part) Part {
	if condition {
		return p
	}
	return nil
}

// When makes the part only if the condition holds.
func When(condition bool, make func() Part) Part {
	if condition {
		return make()
	}
	return nil
}

// Each makes a part of every item.
func Each[T any](items []T, make func(i int, item T) Part) Part {
	run := &node{kind: fragment}
	for i, item := range items {
		run.parts = append(run.parts, make(i, item))
	}
	return run
}

// Written is the element as it will be written. It can stand in many pages, and
// costs little in each.
func Written(p Part) Part { return &node{kind: written, value: p.String()} }

// String writes the part as HTML.
func (p *node) String() string {
	b := sheets.Get().(*sheet)
	defer sheets.Put(b)
	return b.html(p)
}

// Pieces writes the elements of a run one by one, so that whoever shows them can
// leave alone those that stay. Where a text stands among them they are one piece.
func (p *node) Pieces() []string {
	list := flat(nil, p)
	out := make([]string, len(list))
	b := sheets.Get().(*sheet)
	defer sheets.Put(b)
	for i, c := range list {
		if c.kind == text {
			return []string{p.String()}
		}
		out[i] = b.html(c)
	}
	return out
}

// sheet is what HTML is written on. Used again it has room for the next part.
type sheet struct {
	text  []byte
	whole int // elements around what is written now in which no word is broken
}

var sheets = sync.Pool{New: func() any { return new(sheet) }}

// html writes a part by itself.
func (b *sheet) html(p Part) string {
	b.text = b.text[:0]
	p.write(b)
	return string(b.text)
}

func (b *sheet) add(s string) { b.text = append(b.text, s...) }

// flat appends what a run has in it, without the runs inside.
func flat(to []Part, p Part) []Part {
	if p == nil || p.kind == attribute {
		return to
	}
	if p.kind != fragment {
		return append(to, p)
	}
	for _, c := range p.parts {
		to = flat(to, c)
	}
	return to
}

// escape writes a text so that nothing in it is markup. It goes over the text
// once, where html.EscapeString goes over it once for each of the five characters.
func escape(b *sheet, s string) {
	from := 0
	for i := range len(s) {
		code := ""
		switch s[i] {
		case '&':
			code = "&amp;"
		case '<':
			code = "&lt;"
		case '>':
			code = "&gt;"
		case '"':
			code = "&#34;"
		case '\'':
			code = "&#39;"
		default:
			continue
		}
		b.add(s[from:i])
		b.add(code)
		from = i + 1
	}
	b.add(s[from:])
}

// longWord is how many bytes of a word stand together: a longer one would make a column or
// the page as wide as it is long.
const longWord = 48

// broken writes a text up to the last place where one of its long words may be broken, and
// returns what is left.
func broken(b *sheet, s string) string {
	from, word := 0, 0
	for i, r := range s {
		switch {
		case r == ' ' || r == '\n' || r == '\t':
			word = i + 1
		case i-word >= longWord:
			escape(b, s[from:i])
			b.add("<wbr>")
			from, word = i, i
		}
	}
	return s[from:]
}

// keepsWords reports whether an element takes no places to break a word at: it holds text
// alone, or is part of a picture.
func keepsWords(tag string) bool {
	switch tag {
	case "textarea", "option", "title", "svg", "text", "tspan":
		return true
	}
	return false
}

// void reports whether an element has no end tag in HTML.
func void(tag string) bool {
	switch tag {
	case "input", "br", "hr", "img", "meta", "link", "col", "wbr":
		return true
	}
	return false
}

func (p *node) write(b *sheet) {
	if p == nil {
		return
	}
	switch p.kind {
	case text:
		s := letters.Calm(p.value)
		if len(s) > longWord && b.whole == 0 {
			s = broken(b, s)
		}
		escape(b, s)
	case written:
		b.add(p.value)
	case fragment:
		for _, c := range p.parts {
			if c != nil && c.kind != attribute {
				c.write(b)
			}
		}
	case element:
		b.text = append(b.text, '<')
		b.add(p.name)
		attributes(b, p.parts)
		b.text = append(b.text, '>')
		if void(p.name) {
			return
		}
		if keepsWords(p.name) {
			b.whole++
			defer func() { b.whole-- }()
		}
		for _, c := range p.parts {
			if c != nil && c.kind != attribute {
				c.write(b)
			}
		}
		b.add("</")
		b.add(p.name)
		b.text = append(b.text, '>')
	}
}

// attributes writes those of an element; a fragment may carry some too.
func attributes(b *sheet, parts []Part) {
	for _, c := range parts {
		if c == nil {
			continue
		}
		switch c.kind {
		case fragment:
			attributes(b, c.parts)
		case attribute:
			b.text = append(b.text, ' ')
			b.add(c.name)
			if c.value != "" || c.name == "value" || c.name == "alt" {
				b.add(`="`)
				escape(b, c.value)
				b.text = append(b.text, '"')
			}
		}
	}
}
