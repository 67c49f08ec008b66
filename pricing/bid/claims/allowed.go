package claims

import (
	"slices"
)

// soonest is how many tokens a list begins with that say which of two terms ends, "whichever comes
// first"; 0 for none.
func soonest(list []Token) int {
	if list[0].raw != "whichever" {
		return 0
	}
	n, first := 1, false
	for n < len(list) && n < mostSoonest && slices.Contains(ending, list[n].raw) {
		first = first || list[n].raw == "first" || list[n].raw == "sooner" || list[n].raw == "earlier"
		n++
	}
	if !first {
		return 0
	}
	return n
}

// ending are the words of such a clause, and mostSoonest how many it has at most.
var ending = []string{"comes", "come", "occurs", "occur", "shall", "first", "is", "the", "sooner", "earlier", "may",
	"event", "should", "happens", "one"}

const mostSoonest = 6

// permissive are words at the end of a sentence that only allows something.
var permissive = []string{"acceptable", "ok", "okay", "fine"}

// permitted reports whether a sentence of a line only allows what it speaks of. What is
// ruled out behind, "not acceptable", is not such a sentence.
func permitted(list []Token) bool {
	for i, t := range list {
		last := i+1 == len(list) || list[i+1].Kind == Stop || list[i+1].Kind == Break
		if t.Kind != Word || !last || !slices.Contains(permissive, t.raw) || i == 0 {
			continue
		}
		if before := list[max(0, i-2):i]; !slices.ContainsFunc(before, func(t Token) bool {
			return slices.Contains(nots, t.raw)
		}) {
			return true
		}
	}
	return false
}
