package claims

import (
	"slices"
	"strings"
)

// Role is what a word does in its sentence.
type Role uint8

// The roles. In a profile of something offered they are bits of a set.
const (
	Companion Role = 1 << iota // it is spoken of, or comes with what is: "with a camera"
	Located                    // it says where: "over the cot"
	Modifier                   // it says of what kind the next word is: "camera pictures"
	Inside                     // it says in what: "in the cab", not "below the cab"

	AnyRole = Companion | Located | Modifier | Inside
)

// locative are words behind which stands where something is or what it is of, and governing
// those that end the reach of one.
var (
	locative = wordsOf(`on in at over above under below beneath beside behind near by to from into onto through across
along against of for between around toward towards per within throughout off ahead atop during when
while until after before upon via`)
	governing = wordsOf(`with and plus also including includes include or either having has have : / featuring
without`)
	relating     = wordsOf(`of to for from by`)
	articleWords = wordsOf(`a an the each every all both its their any one`)
)

func wordsOf(text string) map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(text) {
		out[w] = true
	}
	return out
}

// roled tells each word its role.
func roled(list []Token) []Token {
	for i := range list {
		if t := &list[i]; t.Kind == Word {
			t.Role = roleOf(list, i)
			t.Across = slices.ContainsFunc(list[max(0, i-2):i], func(b Token) bool { return b.raw == "across" })
			t.Done = strings.HasSuffix(t.raw, "ed") || strings.HasSuffix(t.raw, "ing")
			t.Many = plural(t.raw)
			t.Before, t.After = follows(list[:i], earlier), follows(list[:i], later)
			t.Lights = comesOn(list[:i])
			t.links = links(list, i)
		}
	}
	return list
}

// follows reports whether tokens end with one of some words, an article behind it or not.
func follows(list []Token, words map[string]bool) bool {
	n := len(list)
	return n > 0 && words[list[n-1].raw] || n > 1 && (articleWords[list[n-1].raw] || list[n-1].raw == "to") &&
		words[list[n-2].raw]
}

// earlier and later are words behind which stands what is done then.
var earlier, later = wordsOf(`before prior`), wordsOf(`after following`)

// comesOn reports whether tokens end with "on with", behind which stands what something comes on with.
func comesOn(list []Token) bool {
	for k := len(list) - 1; k > 0 && k >= len(list)-mostBetween && list[k].Kind == Word; k-- {
		if list[k].raw == "with" || list[k].raw == "when" || list[k].raw == "whenever" {
			return list[k-1].raw == "on"
		}
	}
	return false
}

func roleOf(list []Token, at int) Role {
	if at+1 < len(list) {
		next := list[at+1]
		if next.Kind == Word && letter(next.raw[0]) && !idle[next.raw] && !locative[next.raw] && !governing[next.raw] &&
			!articleWords[next.raw] && (next.raw == "led" || !strings.HasSuffix(next.raw, "ed")) {
			return Modifier
		}
	}
	if elliptical(list, at) {
		return Modifier
	}
	for k := at - 1; k >= 0; k-- {
		switch t := list[k]; {
		case t.Kind == Count, t.raw == "and" && coordinate(list, k):
		case t.Kind != Word || governing[t.raw]:
			return Companion
		case t.raw == "by" && strings.HasSuffix(list[k+1].raw, "ing"): // "by opening the door"
			return Located
		case relating[t.raw]:
			return Companion | Located
		case t.raw == "in" || t.raw == "within":
			return Located | Inside
		case locative[t.raw], (t.raw == "inside" || t.raw == "outside") && articleWords[list[k+1].raw]:
			return Located
		case idle[t.raw] && !articleWords[t.raw]:
			return Companion
		}
	}
	return Companion
}

// elliptical reports whether a word is of what kind the thing behind the next word is as well: "keeps tool and
// suction chargers", not "a tool and suction chargers".
func elliptical(list []Token, at int) bool {
	return at > 0 && at+3 < len(list) && list[at+1].raw == "and" && roleOf(list, at+2) == Modifier &&
		list[at-1].Kind == Word && idle[list[at-1].raw] && !locative[list[at-1].raw] && !articleWords[list[at-1].raw] &&
		!plural(list[at].raw) && plural(list[at+3].raw)
}

// linking are what is done that asks for nothing by itself before a word that says where, with what or by what:
// "carried on a bracket", "bordered by a pinstripe". Before anything else they may be a quality, "fixed window".
var linking = wordsOf(`located situated positioned placed set mounted installed fitted fixed put laid housed seated
found standing lying sitting hanging hung resting rested slung carried borne riding ridden run running routed led
brought
attached affixed fastened secured held retained kept caught furnished supplied equipped provided given made built
constructed formed fabricated covered trimmed bordered edged faced finished surfaced topped clad wrapped surrounded
having containing incorporating featuring including bearing carrying showing displaying served stationed ranged
begun started ending ended
terminated terminating used employed intended meant suited adapted arranged designed capable spread distributed
grouped gathered turned accompanied complemented supplemented applied added obtained
achieved accomplished ready`)

// links reports whether a word only leads to what stands behind it.
func links(list []Token, at int) bool {
	if !linking[list[at].raw] || at+1 == len(list) {
		return false
	}
	next := list[at+1].raw
	return list[at+1].Kind == Word && (locative[next] || relating[next] || next == "with" || next == "as")
}

// inBack marks the "back" that may be the patient compartment, which people call so who do not speak of an end
// of the vehicle: "in back", "in the back of the truck", not "in the back doors" nor "in back of the seat".
func inBack(list []Token) []Token {
	for i := range list {
		k := i + 1
		if list[i].raw != "in" {
			continue
		}
		the := k < len(list) && list[k].raw == "the"
		if the {
			k++
		}
		if k >= len(list) || list[k].raw != "back" {
			continue
		}
		switch after := k + 1; {
		case endsBefore(list, after):
		case list[after].raw == "of" && the && after+2 < len(list) && slices.Contains(vehicleWords, list[after+2].raw):
		case list[after].Kind != Word || list[after].raw == "of" || !idle[list[after].raw] && !locative[list[after].raw] &&
			!governing[list[after].raw]:
			continue
		}
		list[k].back = true
	}
	return list
}

// Plainer are tokens as they may also be read, false where there is no other way: without what only leads to
// other words, and "in the back" as the patient compartment.
func Plainer(list []Token) ([]Token, bool) {
	if !slices.ContainsFunc(list, func(t Token) bool { return t.links || t.back }) {
		return nil, false
	}
	out := make([]Token, 0, len(list))
	for _, t := range list {
		if t.back {
			t.Word = patientRoom
		}
		if !t.links {
			out = append(out, t)
		}
	}
	return out, len(out) > 0
}

var patientRoom = stem("patientcompartment")
