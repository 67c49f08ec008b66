package intake

import (
	"slices"
	"strings"
	"unicode"
)

// LeadIn reports whether a text is a sentence that the lines beneath it complete: "The squad
// bench shall:".
func LeadIn(text string) bool {
	begun, closed := strings.CutSuffix(strings.TrimSpace(text), ":")
	if words := strings.Fields(strings.ToLower(begun)); closed && len(words) > 1 {
		switch words[len(words)-1] {
		case "shall", "must", "will", "have", "be", "include", "includes", "provide", "with":
			return true
		}
	}
	return false
}

// heads marks the headings among lines.
func heads(list []Line) {
	capitals := 0
	for _, l := range list {
		if capital(l.Text) {
			capitals++
		}
	}
	shout := capitals*2 > len(list) // a list all in capitals says nothing by them
	for i := range list {
		l := &list[i]
		if l.Head {
			continue
		}
		child := i+1 < len(list) && l.No != "" && strings.HasPrefix(list[i+1].No, strings.TrimSuffix(l.No, ".0")+".")
		l.Head = heading(l.Text, shout, child)
	}
}

// bareLine is a line without a number or a bullet, by its place; first says that it begins
// what stands between two blank lines.
type bareLine struct {
	at    int
	first bool
}

// titles marks what stands above and between the lines of a list and asks for nothing: what
// names the document or the purchaser in its first lines; where most lines have a number or a
// bullet, short ones without; and topics above a block of lines.
func titles(list []Line, bare []bareLine) {
	marked := len(bare)*2 < len(list)
	for n, b := range bare {
		l := &list[b.at]
		words := strings.Fields(strings.ToLower(l.Text))
		if len(words) > mostTitle || strings.HasSuffix(l.Text, ".") && !strings.HasSuffix(l.Text, ".m.") || demands(words) ||
			b.at+1 == len(list) {
			continue
		}
		short := len(words) <= mostHead && !asks(l.Text) && !strings.ContainsAny(l.Text, "0123456789\"%$")
		numbered := n+1 == len(bare) || bare[n+1].at > b.at+1 // the next line is
		switch {
		case b.at < mostAbove && (names(words, documents) || short && n == b.at && names(words, purchasers)):
		case marked && n == b.at && b.at < mostAbove && !strings.ContainsAny(l.Text, "\"$%"):
		case marked && short && numbered:
		case short && b.first && !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(topics, w) }):
		default:
			continue
		}
		l.Head = true
	}
}

// names reports whether one of some beginnings of words stands among words.
func names(words, some []string) bool {
	text := " " + strings.Join(words, " ") + " "
	return slices.ContainsFunc(some, func(w string) bool { return strings.Contains(text, " "+w) })
}

// purchasers are words of their names, and topics what parts of a list are about.
var (
	purchasers = []string{"county", "city", "district", "department", "hospital", "town", "township", "village",
		"authority",
		"university", "agency", "office of", "board of"}
	topics = strings.Fields("chassis body module exterior interior inside outside patient compartment compartments cab " +
		"electrical electric system systems lighting lights warning emergency general requirements dimensions weights " +
		"delivery warranty warranties training oxygen medical equipment paint graphics lettering striping marking " +
		"seating restraints cabinets doors windows suspension wheels tires engine drivetrain heating cooling climate " +
		"hvac air conditioning communications radio safety options miscellaneous siren construction and & / - of the")
)

// The most words of a title and of a heading, and how many lines may stand above a list.
const (
	mostTitle = 14
	mostHead  = 5
	mostAbove = 8
)

// demands reports whether words make a sentence that asks for something.
func demands(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool {
		return slices.Contains([]string{"shall", "must", "will", "required", "provide", "furnish", "minimum", "maximum",
			"min", "max"}, strings.Trim(w, ".,;:()"))
	})
}

// asking words make a line a requirement, however short.
var asking = []string{"shall", "must", "will", "required", "minimum", "min", "maximum", "max", "not", "no", "provide",
	"furnish", "include",
	"each", "two", "one", "three", "four", "with", "without", "least"}

// heading reports whether a text is a heading: short, without an amount or a demand,
// and in capitals, closed by a colon, begun as a section, or followed by its parts.
func heading(text string, shout, child bool) bool {
	words := strings.Fields(text)
	if len(words) > 8 || strings.ContainsAny(text, "0123456789\"%$") && !section(words) {
		return false
	}
	if LeadIn(text) {
		return true
	}
	if section(words) && capital(text) {
		return true
	}
	if asks(text) {
		return false
	}
	switch {
	case section(words):
		return true
	case strings.HasSuffix(text, ":"):
		return true
	case child && !strings.HasSuffix(text, "."):
		return true
	}
	return !shout && capital(text) && len(words) <= 6
}

// asks reports whether a text has a word of asking in it.
func asks(text string) bool {
	return slices.ContainsFunc(strings.Fields(text), func(w string) bool {
		return slices.Contains(asking, strings.ToLower(strings.Trim(w, ".,;:()")))
	})
}

func section(words []string) bool {
	if len(words) == 0 {
		return false
	}
	switch strings.ToUpper(strings.Trim(words[0], ":.")) {
	case "SECTION", "PART", "ARTICLE", "CHAPTER", "DIVISION", "APPENDIX", "ATTACHMENT":
		return len(words) > 1 && len(words) <= 8
	}
	return false
}

// capital reports whether a text of at least four letters has no small one.
func capital(text string) bool {
	n := 0
	for _, r := range text {
		if unicode.IsLower(r) {
			return false
		}
		if unicode.IsUpper(r) {
			n++
		}
	}
	return n >= 4
}
