package bid

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"boxwright/pricing/bid/intake"
	"boxwright/pricing/quote"
)

// readUnder reads a line beneath a heading.
func (v *vocabulary) readUnder(r quote.Requirement, head string) *reading {
	read, _ := under(v.readLine, r, head)
	return read
}

// under reads a line beneath a heading: by itself, or with the heading where it does not say all alone. The
// second result is the text that was read.
func under(readText func(string) *reading, r quote.Requirement, head string) (*reading, string) {
	text := cmp.Or(r.Meant, r.Text)
	read := readText(text)
	if head == "" || r.Meant != "" || read.term != "" {
		return read, text
	}
	if intake.LeadIn(head) { // the line alone is half a sentence
		text = strings.TrimSuffix(withoutSection(head), ":") + " " + r.Text
		return readText(text), text
	}
	strange := slices.ContainsFunc(read.claims, func(c claim) bool { return c.bare() && !c.suits(head) })
	if len(read.unread) > 0 || len(read.claims) == 0 || strange {
		// "Two on each side" beneath "Warning lights"
		whole := withoutSection(head) + ", " + r.Text
		under := readText(whole)
		if len(under.unread) == 0 && len(under.claims) > 0 && under.term == "" {
			return under, whole
		}
	}
	if strange { // "96 in wide" beneath "Bench"
		return &reading{matches: read.matches, unread: []string{head}}, text
	}
	return read, text
}

// heading is what stands above a line of a list: the last heading, or the sentence that the
// line completes.
type heading struct {
	head, lead string
	no, of     string // forms of the numbers of that sentence and of the lines beneath it
	first      bool   // none of these came yet
}

// over takes the next line of the list and is what stands above it.
func (h *heading) over(r quote.Requirement) string {
	form := numberForm(r.No)
	switch {
	case r.Head && intake.LeadIn(r.Text):
		h.lead, h.no, h.first = r.Text, form, true
		return h.head
	case r.Head:
		h.head, h.lead = r.Text, ""
	case h.lead == "":
	case h.first && (form != h.no || form == "" && begunSmall(r.Text)):
		h.of, h.first = form, false
	case h.first, form != h.of, form == h.no && !begunSmall(r.Text):
		h.lead = "" // the sentence has all its lines
	}
	return cmp.Or(h.lead, h.head)
}

// numberForm is the form of a number, "9.9" of "2.14".
func numberForm(no string) string {
	var out []rune
	for _, r := range strings.ToLower(no) {
		switch {
		case unicode.IsDigit(r):
			r = '9'
		case unicode.IsLetter(r):
			r = 'a'
		}
		if n := len(out); n == 0 || out[n-1] != r {
			out = append(out, r)
		}
	}
	return string(out)
}

func begunSmall(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return unicode.IsLower(r)
}

// withoutSection is a heading without the number of its section.
func withoutSection(head string) string {
	words := strings.Fields(strings.TrimSuffix(head, ":"))
	if len(words) > 2 {
		switch strings.ToUpper(words[0]) {
		case "SECTION", "PART", "ARTICLE", "CHAPTER", "DIVISION":
			words = words[2:]
		}
	}
	return strings.Join(words, " ")
}
