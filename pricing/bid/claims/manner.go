package claims

import (
	"slices"
	"strings"

	"boxwright/config/quantity"
)

// manner takes out what is only a way of speaking, and puts in one way what is said in several:
// each of its cases gives an example.
func manner(list []Token) []Token {
	out := make([]Token, 0, len(list))
	at := func(i int) string {
		if i < len(list) {
			return list[i].raw
		}
		return ""
	}
	for i := 0; i < len(list); i++ {
		t := list[i]
		switch {
		case t.raw == "both" && paired(list, i): // "latched both in and out"
			continue
		case (t.raw == "each" || t.raw == "every" || t.raw == "all") && wholeUnit[at(i+1)] && endsNoun(list, i+2):
			i++ // "certify each ambulance": a line speaks of each
			continue
		case (t.raw == "qty" || t.raw == "quantity") && i+1 < len(list) && oneBare(&list[i+1]) && endsBefore(list, i+2):
			i++ // "USB outlet, qty 1"
			continue
		case i > 0 && t.raw == "text" && list[i-1].raw == "function": // "number and function text"
			continue
		case oneBare(&t) && at(i+1) == "of" && ofThem[at(i+2)] && (fed[at(i+3)] || slices.Contains(partitive, at(i+3))):
			i += 2 // "two outlets, one of them live at all times"
			continue
		case oneBare(&t) && at(i+1) == "of" && ofThem[at(i+2)]: // "two 12 V outlets, one of them USB" are not both so
			i += 2
			t = Token{Kind: Word, raw: "oneofthem", End: list[i].End}
		case (t.raw == "our" || t.raw == "my") && slices.Contains(causes, at(i+1)): // "for our bay hose"
			continue
		case wallSides[t.raw] != "" && (wall(at(i+1)) || within[at(i+1)] && wall(at(i+2))): // "left interior wall"
			t.raw = wallSides[t.raw]
		case t.raw == "load" && at(i+1) == "of" && i+2 < len(list) && list[i+2].Kind == Count && carriedBy(list[:i]):
			continue // "raises a load of 650 lb"
		case t.raw == "opening" && ofDoor(list, i): // "side door with a clear opening of 40 in"
			if dimensioned(list, i) {
				continue
			}
			t.raw = "wide"
		case t.Kind == Count && t.Num.Unit == "" && i > 1 && list[i-1].raw == "for" && seated[list[i-2].raw] &&
			(endsBefore(list, i+1) || governing[at(i+1)]): // "a squad bench for 3"
			out = append(out, t)
			t = Token{Kind: Word, raw: "persons", End: t.End}
		case seats(list, i): // "the bench shall be 72 in long and seat three"
			out = append(out, list[i+1])
			i++
			t = Token{Kind: Word, raw: "persons", End: list[i].End}
		case t.raw == "further" && i+1 < len(list) && idle[at(i+1)]: // "the system shall further comprise a voltmeter"
			continue
		case t.raw == "any" && at(i+1) == "other" && i > 0 && list[i-1].raw == "or": // "or any other wood"
			continue
		case strings.TrimSuffix(t.raw, "s") == "plug" && i > 0 && list[i-1].Kind == Count && list[i-1].Num.Value == 12 &&
			list[i-1].Num.Unit == quantity.Volt: // which something is plugged into
			t.raw = "outlets"
		case t.raw == "between" && i > 0 && endsBefore(list, i+1): // "stainless screws, with barrier tape between"
			continue
		}
		out = append(out, t)
	}
	return out
}

// seats reports whether "seat" at a place is what a bench is to do, and no seat.
func seats(list []Token, at int) bool {
	if list[at].raw != "seat" || at == 0 || at+1 >= len(list) || list[at+1].Kind != Count ||
		list[at+1].Num.Unit != "" || !endsNoun(list, at+2) {
		return false
	}
	ordered := false
	for k := at - 1; k >= 0 && list[k].Kind != Stop; k-- {
		if ordered = ordered || ordering[list[k].raw]; ordered && list[k].raw == "bench" {
			return true
		}
	}
	return false
}

// paired reports whether "both" at a place stands before a pair, "both in and out", and not before what there
// are two of, "both doors and the hood".
func paired(list []Token, at int) bool {
	for k := at + 1; k < len(list) && k <= at+mostPaired && list[k].Kind == Word; k++ {
		if list[k].raw == "and" {
			return k > at+1 && k+1 < len(list)
		}
		if plural(list[k].raw) || list[k].raw == "of" {
			return false
		}
	}
	return false
}

// mostPaired is how many words the first of such a pair has at most, and the "and".
const mostPaired = 5

// ofDoor reports whether "opening" at a place is that of a door, of which an amount is said: "34 in clear opening".
func ofDoor(list []Token, at int) bool {
	door, from := false, at
	for ; from > 0 && !(list[from-1].Kind == Stop && list[from-1].raw != ";"); from-- {
		if otherOpenings[list[from-1].raw] {
			return false
		}
		door = door || doors[list[from-1].raw]
	}
	return door && measuredInches(list[max(0, at-2):at]) || door && measuredInches(list[at+1:min(len(list), at+3)])
}

// dimensioned reports whether a dimension is named behind a place.
func dimensioned(list []Token, at int) bool {
	for k := at + 1; k < len(list) && list[k].Kind != Stop; k++ {
		if dimensionWords[stem(list[k].raw)] != "" {
			return true
		}
	}
	return false
}

func measuredInches(list []Token) bool {
	return slices.ContainsFunc(list, func(t Token) bool { return t.Kind == Count && t.Num.Unit == quantity.Inch })
}

// carriedBy reports whether a word for carrying, or for who is carried, stands right before a place.
func carriedBy(list []Token) bool {
	return slices.ContainsFunc(list[max(0, len(list)-2):], func(t Token) bool {
		return t.Kind == Word && t.raw != "load" && burdens[stem(t.raw)] == "rating"
	})
}

// oneBare reports whether a token is the number one.
func oneBare(t *Token) bool { return t.Kind == Count && t.Num.Value == 1 && t.Num.Unit == "" }

// endsNoun reports whether no noun goes on at a place: "each ambulance shall", not "each ambulance cot".
func endsNoun(list []Token, at int) bool {
	return endsBefore(list, at) || list[at].Kind != Word || idle[list[at].raw] || locative[list[at].raw] ||
		governing[list[at].raw]
}

func wall(raw string) bool { return strings.TrimSuffix(raw, "s") == "wall" }

var (
	wholeUnit     = wordsOf(`ambulance ambulances vehicle vehicles`)
	fed           = wordsOf(`live hot energized powered`)
	seated        = wordsOf(`bench seating seats room`)
	ofThem        = wordsOf(`these those them which`)
	wallSides     = map[string]string{"left": "streetside", "right": "curbside"}
	doors         = wordsOf(`door doors doorway doorways entry entrance entrances`)
	otherOpenings = wordsOf(`window windows hatch partition bulkhead pass walk-through walkthrough vent`)
	within        = wordsOf(`inside interior`)
)
