// Package expr writes the condition of a rule as one line that a person can
// read and edit in a spreadsheet, and reads it back.
//
//	condition = id                              the chassis, body or option is in the unit
//	          | "not" condition                 it does not hold
//	          | "all(" condition, ... ")"       every one holds
//	          | "any(" condition, ... ")"       at least one holds
//	          | "at-least" n "of (" ... ")"     n or more of them hold
//	          | "at-most" n "of (" ... ")"      n or fewer of them hold
//	          | "chassis." attribute test       such as chassis.gvwr_lb >= 14500
//	          | "body." attribute test          such as body.kind = van
//	          | "(" condition ")"
//	test      = ("=" | "!=") text | ("<" | "<=" | ">" | ">=") number
//
// A text of a test that is not made of letters, digits, "-", "_" and "." alone
// stands in double quotes. Spaces and line ends between the parts do not count.
// An id may be called like one of the words: a word is one by what follows it.
package expr

import (
	"fmt"
	"strconv"
	"strings"

	"boxwright/config"
)

// maxDepth bounds the nesting that is read; a catalogue allows less.
const maxDepth = 40

// Write gives the condition on one line; nil, which always holds, is empty.
func Write(c *config.Cond) string {
	if c == nil {
		return ""
	}
	var b strings.Builder
	write(&b, c)
	return b.String()
}

func write(b *strings.Builder, c *config.Cond) {
	list := func(open string, conds []config.Cond) {
		b.WriteString(open)
		for i := range conds {
			if i > 0 {
				b.WriteString(", ")
			}
			write(b, &conds[i])
		}
		b.WriteByte(')')
	}
	count := func(word string, n *config.Count) { list(word+" "+strconv.Itoa(n.N)+" of (", n.Of) }
	switch {
	case c.Pick != "":
		b.WriteString(c.Pick)
	case c.Not != nil:
		b.WriteString("not ")
		write(b, c.Not)
	case c.All != nil:
		list("all(", c.All)
	case c.Any != nil:
		list("any(", c.Any)
	case c.AtLeast != nil:
		count("at-least", c.AtLeast)
	case c.AtMost != nil:
		count("at-most", c.AtMost)
	case c.Chassis != nil:
		b.WriteString("chassis." + test(c.Chassis))
	case c.Body != nil:
		b.WriteString("body." + test(c.Body))
	}
}

func test(t *config.Test) string {
	value := t.Text
	if t.Op != "=" && t.Op != "!=" {
		value = strconv.FormatFloat(t.Number, 'f', -1, 64)
	} else if value == "" || wordEnd(value) < len(value) {
		value = strconv.Quote(value)
	}
	return t.Attr + " " + t.Op + " " + value
}

// Read takes a line apart. Whether its ids and attributes exist is for the
// catalogue's own check. The error says at which character it cannot be read,
// counted from one, and what would be understood there.
func Read(text string) (config.Cond, error) {
	r := &reader{text: text}
	c := r.condition(0)
	if r.skip(); r.err == nil && r.at < len(text) {
		r.fail("the end, or all(a, b) or any(a, b) around several conditions,")
	}
	return c, r.err
}

type reader struct {
	text string
	at   int
	err  error
}

func (r *reader) skip() {
	for r.at < len(r.text) && strings.IndexByte(" \t\r\n", r.text[r.at]) >= 0 {
		r.at++
	}
}

func (r *reader) fail(wanted string) {
	if r.err != nil {
		return
	}
	found := "the end"
	if rest := r.text[r.at:]; rest != "" {
		found = strconv.Quote(strings.ToValidUTF8(rest[:min(len(rest), 20)], ""))
	}
	r.err = fmt.Errorf("at character %d: %s belongs here, not %s", len([]rune(r.text[:r.at]))+1, wanted, found)
}

// took moves past a piece of text that stands next.
func (r *reader) took(piece string) bool {
	r.skip()
	if !strings.HasPrefix(r.text[r.at:], piece) {
		return false
	}
	r.at += len(piece)
	return true
}

func (r *reader) need(piece string) {
	if !r.took(piece) {
		r.fail(strconv.Quote(piece))
	}
}

// word takes letters, digits, "-", "_" and ".".
func (r *reader) word() string {
	r.skip()
	w := r.text[r.at:]
	w = w[:wordEnd(w)]
	r.at += len(w)
	return w
}

func wordEnd(text string) int {
	for i := range len(text) {
		c := text[i]
		if (c < 'a' || c > 'z') && (c < 'A' || c > 'Z') && (c < '0' || c > '9') && c != '-' && c != '_' && c != '.' {
			return i
		}
	}
	return len(text)
}

// next is the character that stands next, 0 at the end.
func (r *reader) next() byte {
	if r.skip(); r.at < len(r.text) {
		return r.text[r.at]
	}
	return 0
}

func (r *reader) condition(depth int) (c config.Cond) {
	if depth > maxDepth {
		r.fail(fmt.Sprintf("an end to brackets within brackets, at most %d deep,", maxDepth))
	}
	if r.err != nil {
		return c
	}
	if r.took("(") {
		c = r.condition(depth + 1)
		r.need(")")
		return c
	}
	r.skip()
	start := r.at
	w := r.word()
	next := r.next()
	follows := next == '(' || next != 0 && wordEnd(string(next)) == 1
	switch {
	case w == "":
		r.fail("a condition, such as an id, all(...) or not ...,")
	case w == "not" && follows:
		inner := r.condition(depth + 1)
		c.Not = &inner
	case w == "all" && next == '(':
		c.All = r.list(depth)
	case w == "any" && next == '(':
		c.Any = r.list(depth)
	case w == "at-least" && follows:
		c.AtLeast = r.count(depth)
	case w == "at-most" && follows:
		c.AtMost = r.count(depth)
	case strings.HasPrefix(w, "chassis."):
		c.Chassis = r.test(w[len("chassis."):])
	case strings.HasPrefix(w, "body."):
		c.Body = r.test(w[len("body."):])
	case !config.ValidID(w):
		r.at = start
		r.fail("an id of small letters, digits and hyphens, or chassis. or body. with an attribute,")
	default:
		c.Pick = w
	}
	return c
}

func (r *reader) list(depth int) []config.Cond {
	conds := []config.Cond{}
	r.need("(")
	for r.err == nil && !r.took(")") {
		if len(conds) > 0 {
			if !r.took(",") {
				r.fail(`"," or ")"`)
				break
			}
		}
		conds = append(conds, r.condition(depth+1))
	}
	return conds
}

func (r *reader) count(depth int) *config.Count {
	r.skip()
	start := r.at
	n, err := strconv.Atoi(r.word())
	if err != nil || n < 0 {
		r.at = start
		r.fail("a whole number")
	}
	r.need("of")
	return &config.Count{N: n, Of: r.list(depth)}
}

func (r *reader) test(attr string) *config.Test {
	t := &config.Test{Attr: attr}
	for _, op := range []string{"!=", "<=", ">=", "=", "<", ">"} {
		if r.took(op) {
			t.Op = op
			break
		}
	}
	if t.Op == "" {
		r.fail("one of = != < <= > >=")
		return t
	}
	r.skip()
	start := r.at
	if t.Op == "=" || t.Op == "!=" {
		t.Text = r.value()
		return t
	}
	sign := ""
	if r.took("-") {
		sign = "-"
	}
	v, err := strconv.ParseFloat(sign+r.word(), 64)
	if err != nil || v-v != 0 { // not a number, or without bound
		r.at = start
		r.fail("a number")
	}
	t.Number = v
	return t
}

// value is a word, or a text in double quotes.
func (r *reader) value() string {
	if r.next() != '"' {
		w := r.word()
		if w == "" {
			r.fail("a word, or a text in double quotes,")
		}
		return w
	}
	quoted, err := strconv.QuotedPrefix(r.text[r.at:])
	if err != nil {
		r.fail("a text in double quotes")
		return ""
	}
	r.at += len(quoted)
	text, err := strconv.Unquote(quoted)
	if err != nil {
		r.fail("a text in double quotes")
	}
	return text
}
