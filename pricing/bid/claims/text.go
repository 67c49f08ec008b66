// Package claims reads a line of a purchaser's list: its words in one form, its
// quantities with the comparison each stands under, and what the line rules out.
// It knows no catalogue.
package claims

import (
	"slices"
	"strings"
)

// marks brings quotes, dashes, fractions and signs to one kind each.
var marks = strings.NewReplacer(
	"\u2018", "'", "\u2019", "'", "\u2032", "'", "\u201c", `"`, "\u201d", `"`, "\u2033", `"`, "''", `"`,
	"\u2010", "-", "\u2011", "-", "\u2013", " - ", "\u2014", " - ", "\u2212", "-", "\u00a0", " ",
	"\u202f", " ", "\u2009", " ", "\u00d7", " x ", "\u00bd", " 1/2", "\u00bc", " 1/4", "\u00be", " 3/4",
	"\u00b0", " degrees ", "\u00b3", "3", "\u00b2", "2", "\u2265", " at least ", "\u2264", " at most ",
	">=", " at least ", "<=", " at most ", "\u2022", " ", "\u25cf", " ", "\u25aa", " ",
	"&", " and ", "w/o ", "without ", "W/", "with ", "w/", "with ", "\t", " ", "\n", " ",
)

// blanks are what a form leaves to be filled in behind a line, and formWords what
// it prints beside them.
var (
	blanks    = []string{"__", "\u2610", "[ ]", "( )", "[]"}
	formWords = []string{"comply", "complies", "exception", "yes", "no", "y", "n", "initial", "initials", "meets",
		"deviation", "y/n", "yes/no"}
)

// withoutForm is a line without the blanks of a form at its end.
func withoutForm(text string) string {
	at := -1
	for _, b := range blanks {
		if i := strings.Index(text, b); i >= 0 && (at < 0 || i < at) {
			at = i
		}
	}
	if at < 0 {
		return text
	}
	formed := func(words []string) bool {
		return !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(formWords, w) })
	}
	words := func(s string) []string {
		return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
			return strings.ContainsRune(" _/()[]:.\u2610-", r)
		})
	}
	if !formed(words(text[at:])) {
		return text
	}
	text = text[:at]
	for {
		cut := strings.TrimRight(text, " _/()[]:.\u2610-")
		last := strings.ToLower(cut[strings.LastIndexAny(cut, " /([")+1:])
		if len(last) < 2 || !slices.Contains(formWords, last) {
			return text
		}
		text = cut[:len(cut)-len(last)]
	}
}

// Key is a line as it is remembered: what is left when writing differs only in
// spaces, capitals, quotes and dashes.
func Key(text string) string {
	return strings.Join(strings.Fields(strings.ToLower(marks.Replace(withoutForm(text)))), " ")
}
