package claims

import (
	"slices"
)

// Attaches reports whether what follows a token is part of what went before: "with" a belt.
func (t *Token) Attaches() bool {
	return t.Kind == Break && (t.raw == "with" || t.raw == "including" || listing[t.raw] || t.Relates())
}

// Relates reports whether a token begins a clause on the thing before it, "that" runs on the shore line.
func (t *Token) Relates() bool { return t.Kind == Break && (t.raw == "that" || t.raw == "which") }

// relative reports whether a word begins a clause on the thing before it: "an inlet that ejects its plug".
func relative(list []Token, at int) bool {
	if list[at].raw != "that" && list[at].raw != "which" || at == 0 || at+1 == len(list) || list[at-1].Kind != Word {
		return false
	}
	next := list[at+1]
	return next.Kind == Word && (plural(next.raw) || slices.Contains(auxiliary, next.raw))
}

// auxiliary are words that a clause on a thing may begin with.
var auxiliary = []string{"can", "is", "are", "will", "has", "have", "may", "shall", "must", "do", "does"}

// listing are words behind which stands what papers and displays tell.
var listing = wordsOf(`listing showing depicting detailing stating`)

// Bracket reports whether a token is one.
func (t *Token) Bracket() bool {
	return t.Kind == Break && (t.raw == "(" || t.raw == ")" || t.raw == soft)
}

// soft is a place within a clause where a claim may end.
const soft = "|"

// coordinate reports whether an "and" at a place stands between two places of one noun, "the front and rear wheels".
func coordinate(list []Token, at int) bool {
	return at > 0 && at+2 < len(list) && sideOrEnd[list[at-1].raw] && sideOrEnd[list[at+1].raw] &&
		list[at+2].Kind == Word &&
		!endsNoun(list, at+2)
}

var sideOrEnd = wordsOf(`front rear left right streetside curbside upper lower inside outside interior exterior
inner outer top bottom
side`)

// amounting are what something does that an amount is said of.
var amounting = wordsOf(`totaling totalling measuring weighing holding delivering producing supplying yielding rising
displacing`)

// parted reports whether a claim may end within a clause before a place, behind an amount: "a bench 22 in deep | shall
// be on the curb side", "six compartments | totaling 65 cu ft", "a rating of 14,500 lb | on a chassis with dual rear
// wheels".
func parted(list []Token, at int, out []Token) bool {
	if list[at].Kind != Word || len(out) == 0 {
		return false
	}
	last := out[len(out)-1]
	if list[at].raw == "there" && at+1 < len(list) && ordering[list[at+1].raw] { // "along the curb side there shall be"
		return last.Kind == Word
	}
	if amounting[list[at].raw] && at+1 < len(list) && list[at+1].Kind == Count &&
		list[at+1].Num.Unit != "" && last.Kind == Word {
		return true
	}
	if list[at].raw == "on" {
		return len(out) > 1 && out[len(out)-2].Kind == Word && last.Kind == Count && last.Num.Unit != "" &&
			at+1 < len(list) &&
			articleWords[list[at+1].raw]
	}
	if !ordering[list[at].raw] || last.Kind == Break || last.Kind == Stop {
		return false
	}
	for k := len(out) - 1; k >= 0 && out[k].Kind != Break && out[k].Kind != Stop; k-- {
		if out[k].Kind == Count && out[k].Num.Unit != "" {
			return true
		}
	}
	return false
}

// Comma reports whether a token is one.
func (t *Token) Comma() bool { return t.Kind == Break && t.raw == "," }

// Adds reports whether what follows a token goes on with what went before: "and" another.
func (t *Token) Adds() bool { return t.Kind == Break && t.raw != "," && !t.Opens() }

// Half reports whether a token ends a sentence only by half, as a semicolon does.
func (t *Token) Half() bool { return t.Kind == Stop && t.raw == ";" }

// Opens reports whether what follows a token says what went before it is like: "light: ceiling".
func (t *Token) Opens() bool { return t.Kind == Break && t.raw == ":" }
