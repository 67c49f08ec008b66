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
