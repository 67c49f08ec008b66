package claims

import (
	"slices"

	"boxwright/config/quantity"
)

// including marks the words that a line counts in: those behind "including" or "with", up
// to what it leaves out or the end of the sentence.
func including(list []Token) []Token {
	in := false
	for i := range list {
		t := &list[i]
		switch {
		case t.raw == "including" || t.raw == "includes" || t.raw == "include" || t.raw == "incl" || t.raw == "with":
			in = true
		case t.Kind == Stop || slices.Contains(nots, t.raw) || leaving(t.raw):
			in = false
		}
		t.incl = in
	}
	return list
}

// setAside reads "without the antennas" as "excluding" them where a line measures the vehicle.
func setAside(list []Token) []Token {
	measures := slices.ContainsFunc(list, func(t Token) bool { return t.Kind == Count && t.Num.Unit == quantity.Inch }) &&
		slices.ContainsFunc(list, func(t Token) bool { return t.Kind == Word && dimensionWords[stem(t.raw)] != "" })
	for i := 0; i < len(list); i++ {
		if list[i].raw == "not" && i+1 < len(list) && measures && uncounted[list[i+1].raw] { // "mirrors not counted"
			list = slices.Delete(list, i, i+1)
			list[i].raw = "excluded"
		}
		if list[i].raw == "excluded" && !measures && i > 0 && list[i-1].Kind == Word && endsBefore(list, i+1) {
			list[i].raw = "prohibited" // "wood products excluded"
		}
		if t := &list[i]; measures && t.raw == "without" && slices.ContainsFunc(list[i+1:min(i+4, len(list))],
			func(t Token) bool { return standsOut[t.raw] }) {
			t.raw = "excluding"
		}
	}
	return list
}

// uncounted are words by which a line says behind "not" that something is left out of a measure.
var uncounted = wordsOf(`counted included considered measured`)

// standsOut are what a measure of the vehicle counts in or leaves out.
var standsOut = wordsOf(`mirror mirrors antenna antennas lightbar bumper bumpers step steps light lights lamp lamps
roof
winch equipment gear`)

func leaving(raw string) bool {
	return slices.Contains([]string{"excluding", "excluded", "exclude", "excludes", "less"}, raw)
}

// LeftOut are the words that a line says are left out of what it measures: "less mirrors",
// "mirrors excluded".
func LeftOut(list []Token) map[string]bool {
	out := map[string]bool{}
	open, exclude := false, stem("exclude")
	for i, t := range list {
		switch {
		case t.Kind == Stop:
			open = false
		case t.Kind != Word:
		case t.Word == exclude && t.raw == "excluded":
			if i > 0 && list[i-1].Kind == Word {
				out[list[i-1].Word] = true
			}
			for k := i - 2; k >= 0 && (standsOut[list[k].raw] || list[k].raw == "rear" || list[k].raw == "front" ||
				list[k].raw == "and"); k-- {
				if list[k].Kind == Word {
					out[list[k].Word] = true // "bumpers and rear step excluded"
				}
			}
		case t.Word == exclude || t.Word == "less":
			open = true
		case open && !t.incl:
			out[t.Word] = true
		}
	}
	return out
}
