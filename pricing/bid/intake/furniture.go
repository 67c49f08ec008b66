package intake

import (
	"slices"
	"strings"
)

// documents are words by which the head of a page names its document.
var documents = []string{"page ", "bid no", "bid #", "rfp", "itb", "ifb", "request for", "invitation",
	"specifications", "specification for",
	"proposal", "solicitation",
	"purchasing", "initials"}

// furniture reports whether a line is what pages carry beside their text: a page
// number, or the blanks of a form alone.
func furniture(l string) bool {
	words := strings.Fields(strings.ToLower(strings.Trim(l, "-–— .|")))
	if len(words) == 0 {
		return true
	}
	if words[0] == "page" && len(words) <= 4 && plainNumber(words[len(words)-1]) {
		return true
	}
	if len(words) == 1 && plainNumber(words[0]) && !strings.Contains(words[0], ".") || len(words) == 3 &&
		words[1] == "of" && plainNumber(words[0]) && plainNumber(words[2]) {
		return true
	}
	if !strings.ContainsAny(l, "_\u2610") {
		return false
	}
	for _, w := range words {
		switch strings.Trim(w, "_\u2610:/()[]-,. ") {
		case "", "yes", "no", "comply", "complies", "exception", "y", "n", "y/n", "yes/no", "bidder", "initials",
			"initial", "deviation":
		default:
			return false
		}
	}
	return true
}

// pageLines are the short lines that name the document and stand at least three times, or
// twice and each time beside a page number: the head or foot of each page.
func pageLines(raw []string) map[string]bool {
	count, beside := map[string]int{}, map[string]int{}
	for i, l := range raw {
		near := i > 0 && furniture(strings.Join(strings.Fields(raw[i-1]), " ")) ||
			i+1 < len(raw) && furniture(strings.Join(strings.Fields(raw[i+1]), " "))
		if l = strings.Join(strings.Fields(l), " "); l != "" && len(l) < 90 {
			count[l]++
			if near {
				beside[l]++
			}
		}
	}
	out := map[string]bool{}
	for l, n := range count {
		if (n >= 3 || n == 2 && beside[l] == 2) && !strings.HasSuffix(l, ".") &&
			slices.ContainsFunc(documents, func(w string) bool {
				return strings.Contains(" "+strings.ToLower(l)+" ", " "+w)
			}) {
			out[l] = true
		}
	}
	return out
}
