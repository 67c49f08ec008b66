package claims

import (
	"slices"
	"strings"
)

// reasons are words of a clause that says why an amount is asked for, and asks for nothing
// itself: "for clearance in Station 4".
var reasons = []string{"clearance", "garage", "barn", "driveway", "driveways", "alley", "alleys", "plow", "terrain",
	"hills", "safety", "comfort", "ease", "visibility", "maneuverability", "maneuvering", "bridge", "bridges", "ferry",
	"parking", "canopy", "portico", "station", "stations", "firehouse", "quarters", "bays"}

// unreasoned takes the reasons out behind an amount that has a unit.
func unreasoned(list []Token) []Token {
	out := list[:0]
	amount := false
	for i := 0; i < len(list); i++ {
		if i == 0 || list[i-1].Kind == Stop {
			i += cause(list[i:])
			i += max(leadIn(list[i:]), background(list[i:], i == 0))
			if i >= len(list) {
				break
			}
		}
		if list[i].Kind == Break && i+1 < len(list) {
			if n := background(list[i+1:], false); n > 0 {
				i += n
				continue
			}
		}
		t := list[i]
		switch {
		case t.Kind == Stop:
			amount = false
		case t.Kind == Count && t.Num.Unit != "":
			amount = true
		}
		n := max(purpose(list[i:]), nothing(list[i:]))
		if amount {
			n = max(n, reason(list[i:]))
		}
		if n > 0 {
			i += n - 1
			continue
		}
		out = append(out, t)
	}
	return out
}

// purpose is how many tokens a list begins with that say what something is good for and promise
// nothing, "for ease of cleaning", "for crew safety", "to facilitate loading"; 0 for none. They hold no
// amount and nothing that is said of each of several things.
func purpose(list []Token) int {
	n, why := 1, false
	switch {
	case list[0].raw == "to" && len(list) > 1:
		why = slices.Contains(easing, list[1].raw)
	case list[0].raw == "for":
		for n < len(list) && n <= mostBenefit && benefiting[list[n].raw] {
			n++
		}
		if n == len(list) {
			return 0
		}
		why = benefits[list[n].raw] || list[n-1].raw == "easy" && easyActs[list[n].raw]
	}
	if !why {
		return 0
	}
	n++
	if list[0].raw == "for" && !endsBefore(list, n) && !slices.Contains(furtherWhy, list[n].raw) {
		return 0 // "for safety belts"
	}
	for from := n; n < len(list) && list[n].Kind == Word && n <= from+mostFurther; n++ {
		t := list[n]
		if t.raw == "and" && n+1 < len(list) && easyActs[list[n+1].raw] && endsBefore(list, n+2) {
			return n + 2
		}
		if ends := asking[t.raw] || slices.Contains([]string{"each", "every", "per", "all", "both", "and", "that", "which",
			"or"}, t.raw); ends {
			break
		}
	}
	if n < len(list) && !endsBefore(list, n) && list[n].raw != "and" {
		return 0
	}
	return n
}

// easing are verbs of what something is good for, benefits what it is good for, and benefiting who or how
// much of it.
var (
	easing   = []string{"facilitate", "ease", "simplify", "aid"}
	benefits = wordsOf(`ease convenience comfort safety visibility cleanliness durability longevity appearance stability`)
	easyActs = wordsOf(`access cleaning decontamination disinfection maintenance service servicing reach viewing reading
loading operation use safety comfort convenience inspection identification`)
	benefiting = wordsOf(`the a added additional maximum optimum improved better greater increased best easy extra crew patient
attendant operator medic driver passenger personnel occupant our their`)
	furtherWhy = []string{"of", "in", "when", "while", "during", "to", "and", "on"}
)

// mostBenefit and mostFurther are how many words may stand before and behind what something is good for.
const (
	mostBenefit = 3
	mostFurther = 6
)

// nothing is how many tokens a list begins with that only say that it costs no more; 0 for none.
func nothing(list []Token) int {
	for _, words := range empty[list[0].raw] {
		if len(words) <= len(list) && !slices.ContainsFunc(list[:len(words)], func(t Token) bool { return t.Kind != Word }) {
			same := true
			for k, w := range words {
				same = same && list[k].raw == w
			}
			if same {
				return len(words)
			}
		}
	}
	return 0
}

// empty are the phrases that say so, by their first words.
var empty = func() map[string][][]string {
	out := map[string][][]string{}
	for _, s := range strings.Split("at no additional cost|at no extra cost|at no added cost|at no cost|at no additional charge|"+
		"at no extra charge|at no charge|without extra charge|without additional charge|included in price|"+
		"included in the price|included in the bid price|included in bid price|included in the base price|"+
		"in its current edition|in its latest edition|in the current edition|in the latest edition|"+
		"as standard equipment|as standard|as a standard feature|as part of the base bid", "|") {
		words := strings.Fields(s)
		out[words[0]] = append(out[words[0]], words)
	}
	return out
}()

// cause is how many tokens a sentence begins with that only say what brings its limit
// about, "Station 2 door restricts"; 0 for none.
func cause(list []Token) int {
	why := false
	for n, t := range list[:min(len(list), mostCause)] {
		switch {
		case t.Kind != Word && (t.Kind != Count || t.Num.Unit != ""):
			return 0
		case why && slices.Contains([]string{"restrict", "restricts", "limit", "limits", "require", "requires",
			"dictate",
			"dictates"}, t.raw):
			return n + 1
		}
		why = why || slices.Contains(causes, t.raw)
	}
	return 0
}

// leadIn is how many tokens a sentence begins with that only say why it asks for what follows: "we run long hauls, so",
// "to reach the upper villages we need"; 0 for none. They hold no amount, and nothing that rules something out.
func leadIn(list []Token) int {
	aim := list[0].raw == "to"
	for n, t := range list[:min(len(list), mostLeading)] {
		switch {
		case aim && n > 1 && (t.raw == "we" || t.raw == "i") && n+1 < len(list) && slices.Contains(needing, list[n+1].raw):
			return n + 2
		case !aim && t.raw == "so" && n > 1 && list[n-1].raw == "," && n+1 < len(list) && list[n+1].raw != "that":
			return n + 1
		case t.Kind == Stop, t.Kind == Day, t.Kind == Or, t.Kind == Count, asking[t.raw], aim && t.Kind == Break:
			return 0
		}
	}
	return 0
}

// needing are what a purchaser does who asks for something, and mostLeading how many words may say why.
var needing = append([]string{"must", "have", "ask", "insist"}, wants...)

const mostLeading = 16

// background is how many tokens a list begins with that tell of the purchaser and ask for
// nothing: "it is a long haul", "our station has an old door". They say what is and not what
// shall be, hold no amount with a unit, and either speak of the purchaser behind what they explain
// or of a place that limits a vehicle.
func background(list []Token, first bool) int {
	if len(list) == 0 || list[0].Kind != Word {
		return 0
	}
	n, is, place := 0, false, false
	for ; n < len(list) && list[n].Kind != Stop && !(list[n].Kind == Break && list[n].raw == ","); n++ {
		t := list[n]
		if t.Kind == Day || t.Kind == Or || t.Kind == Count && t.Num.Unit != "" || asking[t.raw] {
			return 0
		}
		if t.raw == "to" && n > 0 && slices.Contains([]string{"is", "are", "was", "has", "have", "had"}, list[n-1].raw) {
			return 0 // "is to be red"
		}
		is = is || being[t.raw] && n <= mostSubject
		place = place || !is && slices.Contains(causes, t.raw) // "our station has", not "hose of the station"
	}
	we := !first && (list[0].raw == "we" || list[0].raw == "our")
	told := !first && pronouns[list[0].raw] && slices.ContainsFunc(list[:n], func(t Token) bool {
		return surroundings[t.raw] || slices.Contains(causes, t.raw) || stem(t.raw) == purchaser
	}) // "it is a long haul", not "it is surface mounted"
	if !is || !we && !told && !place {
		return 0
	}
	return n
}

// surroundings are words of where a purchaser drives and what for, by which a sentence speaks of no thing
// of the unit.
var surroundings = wordsOf(`way haul haul drive trip trips calls run runs weather snow snows salt hills mountains
hilly
highway highways miles hours country outlying rural`)

// mostSubject is how many words a sentence may begin with before it says what is.
const mostSubject = 5

var (
	pronouns = wordsOf(`it this these that they`)
	being    = wordsOf(`is are was has have had run runs drive drives cross crosses carry haul travel work respond
responds serve serves live`)
	asking = wordsOf(`shall must will should may can cannot could would no not without none never neither nor only
with minimum maximum need needs want wants required require requires prefer preferred wanted needed furnish provide`)
)

// unattested takes out where a rating is read, "as certified by the chassis manufacturer",
// "as shown on the certification label": that it stands there asks for nothing more.
func unattested(list []Token) []Token {
	out := list[:0]
	for i := 0; i < len(list); i++ {
		if list[i].raw == "as" && i+1 < len(list) && slices.Contains(stated, list[i+1].raw) {
			k, label := i+2, false
			for ; k < len(list) && list[k].Kind == Word && slices.Contains(labels, list[k].raw); k++ {
				label = label || slices.Contains(ratingLabels, list[k].raw)
			}
			if label {
				i = k - 1
				continue
			}
		}
		out = append(out, list[i])
	}
	return out
}

var (
	stated = []string{"certified", "stated", "shown", "rated", "listed", "published", "indicated", "marked",
		"labeled"}
	ratingLabels = []string{"chassis", "oem", "label", "plate", "sticker"}
	labels       = append(strings.Fields("by on in the a its of vehicle original equipment manufacturer manufacturers "+
		"manufacturer's maker certification data door post federal safety rating"), ratingLabels...)
)

// causes are places that limit a vehicle without being part of it, and mostCause how many
// words may speak of them.
var causes = []string{"station", "stations", "bay", "bays", "street", "streets", "road", "roads", "bridge", "bridges",
	"garage", "garages", "building", "buildings", "driveway", "driveways", "canopy", "alley", "alleys", "terrain"}

const mostCause = 7

// reason is how many tokens of a list are a clause that only says why; 0 for none. It holds
// no amount, and nothing that is said of each of several things.
func reason(list []Token) int {
	because := slices.Contains([]string{"because", "since", "due"}, list[0].raw)
	if !because && !(list[0].Kind == Break && list[0].raw == "-") && list[0].raw != "for" && list[0].raw != "to" {
		return 0
	}
	n, why := 1, because
	for ; n < len(list) && list[n].Kind != Stop && list[n].Kind != Break; n++ {
		t := list[n]
		if t.Kind == Count && t.Num.Unit != "" || t.Kind == Day || t.Kind == Or ||
			slices.Contains([]string{"each", "every", "per", "all", "both", "shall", "must", "no", "not", "and",
				"with"},
				t.raw) {
			return 0
		}
		why = why || slices.Contains(reasons, t.raw)
	}
	if !why {
		return 0
	}
	return n
}
