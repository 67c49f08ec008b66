package claims

import (
	"maps"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Line is a line read: its words and quantities in their order, and where one claim
// may end and another begin.
type Line struct {
	Tokens []Token
	// Permits says that the line only allows what it speaks of: "chassis batteries are fine"
	Permits bool
	// Chooses says that it leaves a choice or makes a condition: "or", "unless", "where"
	Chooses bool
	// Sums says that it asks for the sum of several amounts: "200 W total"
	Sums bool
}

// nots are words that rule out what follows them, behind those that rule out what went before.
var (
	nots   = []string{"no", "not", "without", "none", "never", "neither", "nor", "omit", "delete"}
	behind = [][]string{{"not", "acceptable"}, {"not", "allowed"}, {"not", "permitted"}, {"not", "accepted"},
		{"unacceptable"}, {"prohibited"}, {"rejected"}, {"forbidden"}, {"disallowed"}, {"not", "do"}, {"not", "suffice"},
		{"not", "satisfy"},
		{"not", "be", "used"}, {"not", "be", "accepted"}, {"not", "be", "permitted"}, {"not", "be", "allowed"}, {
			"not", "required"}, {"not", "desired"},
		{"not", "considered"}, {"not", "be", "considered"}, {"not", "wanted"}, {"not", "needed"}, {"not", "be", "approved"},
		{"not", "be", "acceptable"}, {"not", "suitable"}, {"not", "be", "installed"}, {"not", "be", "furnished"},
		{"not", "be", "provided"}}
)

// Read takes a line apart.
func Read(text string) Line {
	list := manner(plainly(ticked(compared(between(unattested(measured(spelled(days(lex(text))))))))))
	permits := permitted(list)
	list = roled(inBack(including(unreasoned(equals(setAside(list))))))
	out := make([]Token, 0, len(list)+1)
	for i := 0; i < len(list); i++ {
		t := list[i]
		if n := ruledOutBehind(list, i); n > 0 {
			// "wood is not acceptable": the clause before it is what is ruled out.
			at := ruledFrom(out)
			for k := len(out) - 1; k > at; k-- { // each of a list is ruled out
				if out[k-1].Kind == Break && out[k].Kind == Word {
					out = slices.Insert(out, k, Token{Kind: Not, raw: "not"})
				}
			}
			out = slices.Insert(out, at, Token{Kind: Not, raw: "not"})
			i += n - 1
			continue
		}
		if i+1 < len(list) && slices.Contains(eaches, t.raw) && slices.Contains([]string{"side", "sides"}, list[i+1].raw) {
			t.raw = "perside" // which one thing that stands on a side does not have
		}
		if t.raw == "down" && i > 0 && (list[i-1].raw == "-" && i > 1 && turning[list[i-2].raw] || turning[list[i-1].raw]) {
			t.raw = "downward" // which what flips up does not do
		}
		if t.raw == "on" && i > 1 && endsBefore(list, i+1) && slices.ContainsFunc(list[max(0, i-mostBetween):i],
			func(b Token) bool { return b.raw == "with" }) {
			t.raw = "running" // "with the heater on"
		}
		if t.raw == "dealer" && slices.ContainsFunc(list[max(0, i-2):i], func(b Token) bool { return b.raw == "at" }) {
			t.raw = "dealership" // where, and not who
		}
		if (t.raw == "per" || t.raw == "each" || t.raw == "every") && i+1 < len(list) && list[i+1].raw == "battery" &&
			slices.ContainsFunc(out[max(0, len(out)-2):], func(b Token) bool { return b.Kind == Count && b.Num.Unit != "" }) {
			t.raw = "perone" // of several, which is no amount of them all
		}
		if t.raw == "both" && alone(list, i) {
			t.raw = "bothofthem" // which nothing is by itself
		}
		if t.raw == "other" && i > 0 && list[i-1].raw == "or" {
			continue // "no plywood, or other wood"
		}
		if t.raw == "a" && i+1 < len(list) && list[i+1].raw == "side" && endsBefore(list, i+2) { // "two lights a side"
			i++
			t = list[i]
			t.raw = "perside"
		}
		if i+2 < len(list) && i == 0 && t.Kind == Count && t.Num.Unit == "" && !t.said && list[1].Kind == Stop {
			i++
			continue // "12. Powered cot"
		}
		if numbered(list, i) && len(out) == 0 {
			continue // "5.1 A steel locker"
		}
		if sectionNo(t.raw) && len(out) == 0 {
			continue // "3.2.1 Chassis"
		}
		if t.Kind == Count && t.Num.Value == 1 && t.Num.Unit == "" && len(out) > 0 && out[len(out)-1].Kind == Break &&
			i+1 < len(list) && slices.Contains(partitive, list[i+1].raw) {
			continue // "two units, one at the head"
		}
		if (t.raw == "each" || t.raw == "ea") && len(out) > 0 && out[len(out)-1].Kind == Count &&
			out[len(out)-1].Num.Unit != "" {
			out[len(out)-1].Num.Each = true
			continue // "150 lb each"
		}
		if t.raw == "each" && i+1 < len(list) && (list[i+1].raw == "with" || list[i+1].raw == "having") {
			continue // "three seats, each with a belt"
		}
		if t.Kind == Count && t.Num.Unit == "" && i > 2 && list[i-1].raw == "the" && list[i-2].raw == "of" &&
			list[i-3].Kind == Count {
			continue // "one of the two"
		}
		if t.Kind == Count && t.Num.Unit == "" && i > 0 && (list[i-1].raw == "station" || list[i-1].raw == "firehouse") {
			continue // "Station 3"
		}
		if n := soonest(list[i:]); n > 0 {
			i += n - 1
			continue // "whichever shall first occur": which of two terms ends
		}
		if i+1 < len(list) && slices.Contains(wants, list[i+1].raw) && stem(t.raw) == purchaser {
			continue // "the County requires": who asks is no part of it
		}
		if t.raw == "off" && i > 0 && i+1 < len(list) && articleWords[list[i+1].raw] && feeding[list[i-1].raw] {
			continue // "powered off a breaker" is from it
		}
		if i+1 < len(list) && slices.Contains(causes, list[i+1].raw) && stem(t.raw) == purchaser {
			continue // "the County's stations"
		}
		if t.raw == "inside" && i+1 < len(list) && slices.Contains(articles, list[i+1].raw) {
			continue // "an outlet inside a compartment" is one in it
		}
		if parted(list, i, out) {
			out = append(out, Token{Kind: Break, raw: soft, End: list[i-1].End})
		}
		switch {
		case t.Kind == Count || t.Kind == Day || t.Kind == Stop || t.Kind == Break:
			out = append(out, t)
		case slices.Contains(nots, t.raw), t.raw == instead:
			out = append(out, Token{Kind: Not, raw: t.raw, End: t.End})
		case t.links && list[i+1].raw == "with":
			// "covered with tread plate" is with it
		case t.raw == "with" && i > 0 && even[list[i-1].raw]:
			// "flush with the ceiling" is at it
		case t.raw == "with" && i > 0 && list[i-1].raw == "measured":
			// how a figure is measured is no thing of its own
		case t.raw == "and" && coordinate(list, i):
			out = append(out, Token{Kind: Break, raw: soft, End: t.End})
		case t.raw == "and" || t.raw == "plus" || t.raw == "also" || t.raw == "including" || t.raw == "with" ||
			listing[t.raw] || relative(list, i) || t.raw == ":" || t.raw == "/":
			out = append(out, Token{Kind: Break, raw: t.raw, End: t.End})
		case t.raw == "or" || t.raw == "either":
			out = append(out, Token{Kind: Or, raw: t.raw, End: t.End})
		case t.Kind == Word:
			t.Word = stem(t.raw)
			out = append(out, t)
		}
	}
	chooses := slices.ContainsFunc(list, func(t Token) bool { return choosing[t.raw] })
	sums := slices.ContainsFunc(list, func(t Token) bool { return summing[t.raw] })
	for i := 1; i < len(list); i++ { // "420 Ah in all"
		sums = sums || list[i].raw == "all" && list[i-1].raw == "in" && endsBefore(list, i+1)
	}
	return Line{Tokens: counted(idled(said(joinPhrases(out)))), Permits: permits, Chooses: chooses, Sums: sums}
}

// ticked reads what a form says behind a thing: "temperature logged: yes", "wood in cabinets: none".
func ticked(list []Token) []Token {
	for i := 1; i+1 < len(list); i++ {
		if list[i].raw != ":" || !endsBefore(list, i+2) {
			continue
		}
		switch list[i+1].raw {
		case "yes":
			list = slices.Delete(list, i, i+2)
		case "no", "none":
			list[i].raw, list[i+1].raw = "not", "wanted"
		}
	}
	return list
}

// choosing are words by which a line leaves a choice or makes a condition.
var choosing = wordsOf(`or either unless except if where when may can optional option alternate alternative
alternatively
prefer preferred preferably desired desirable ideal ideally acceptable otherwise instead should`)

// summing are words by which a line asks for the sum of several amounts.
var summing = wordsOf(`total totaling totalling together combined altogether`)

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

// wants are what a purchaser does with what a line asks for.
var wants = []string{"requires", "require", "wants", "want", "needs", "need", "desires", "expects", "requests",
	"prefers",
	"asks", "specifies"}

// purchaser is the stem of all names of one.
var purchaser = stem("purchaser")

// turning are what a step or a seat does on its hinges.
var turning = wordsOf(`fold folds folding flip flips flipping swing swings swinging hinge hinges hinged`)

// eaches are words before "side" that speak of both.
var eaches = []string{"each", "either", "both", "per", "every"}

// alone reports whether a word such as "both" stands for things named before it: "a bench and a seat, both
// with headrests", "that both rotate".
func alone(list []Token, at int) bool {
	return at > 0 && at+2 < len(list) && list[at+1].raw == "of" && list[at+2].Kind == Word &&
		!articleWords[list[at+2].raw] &&
		!slices.Contains([]string{"these", "those", "them", "which"}, list[at+2].raw) ||
		at > 0 && slices.Contains([]string{"that", "which"}, list[at-1].raw) || at+1 < len(list) &&
		list[at+1].raw != "of" &&
		(governing[list[at+1].raw] || locative[list[at+1].raw]) || at > 0 && endsBefore(list, at+1)
}

// even are words behind which "with" says with what something is even.
var even = wordsOf(`flush level even tight`)

// feeding are words behind which "off" says from what.
var feeding = wordsOf(`power powered feed fed run runs running work works working operate operates operated driven
wired
live supplied`)

// articles are words behind "inside" by which it says where something is.
var articles = []string{"a", "an", "each", "one", "of"}

// partitive are words behind "one" that tell where one of several is.
var partitive = []string{"at", "on", "in", "over", "above", "under", "near", "by", "beside"}

// endsBefore reports whether a claim ends before a place.
func endsBefore(list []Token, at int) bool {
	return at == len(list) || list[at].Kind == Stop || list[at].Kind == Break
}

// numbered reports whether a line begins with the number of a paragraph, "5.1".
func numbered(list []Token, at int) bool {
	return at+1 < len(list) && list[at].Kind == Count && list[at].Num.Unit == "" && list[at].Num.Value < 100 &&
		!list[at].said && strings.Count(list[at].raw, ".") == 1 && list[at+1].Kind == Word && list[at+1].big &&
		!list[at+1].tied
}

// sectionNo reports whether a word is the number of a section, "3.2.1".
func sectionNo(raw string) bool {
	return strings.Count(raw, ".") > 1 && strings.Trim(raw, "0123456789.") == ""
}

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

// dimensionWords are the words that say of what dimension an amount is, by their stems.
var dimensionWords = func() map[string]string {
	out := map[string]string{}
	for to, from := range map[string]string{"width": "wide width", "length": "long length",
		"height": "high height tall rise rises rising",
		"depth":  "deep depth", "thickness": "thick thickness", "distance": "apart spaced spacing center centers",
		"diameter": "diameter"} {
		for _, w := range strings.Fields(from) {
			out[stem(w)] = to
		}
	}
	return out
}()

// letters are dimensions in short, behind a length.
var letters = map[string]string{"h": "height", "w": "width", "d": "depth", "l": "length"}

// burdens are the words that tell what a thing carries from what it weighs.
var burdens = func() map[string]string {
	out := map[string]string{}
	for to, from := range map[string]string{"rating": "rated rating capacity patient lift lifts lifting load loads " +
		"raises raise lowers holds supports carries", "weight": "weight weighs weigh"} {
		for _, w := range strings.Fields(from) {
			out[stem(w)] = to
		}
	}
	return out
}()

// measuring are by its unit the words that tell of what an amount is said.
var measuring = map[string]map[string]string{quantity.Inch: dimensionWords, quantity.Pound: burdens}

// said tells each length the dimension it is said of, and each weight whether it is what
// a thing carries: by one of the two words behind it, or of the three before it.
func said(list []Token) []Token {
	for i := range list {
		t := &list[i]
		if t.Kind != Count {
			continue
		}
		t.Num.Whole = ofVehicle(list, i)
		for k := i + 1; k < len(list) && list[k].Kind != Stop && list[k].Kind != Break; k++ {
			t.Num.Choice = t.Num.Choice || list[k].Kind == Or && k+1 < len(list) && list[k+1].Kind == Word
		}
		words := measuring[t.Num.Unit]
		if words == nil {
			continue
		}
		for k, last := i+1, i+2; k < len(list) && k <= last && list[k].Kind == Word && t.Num.Of == ""; k++ {
			if list[k].raw == "of" {
				last++ // "42 in of clear width"
			}
			if leadsOn(list, k) {
				break
			}
			t.Num.Of = words[list[k].Word]
			if d := letters[list[k].raw]; d != "" && k == i+1 && t.Num.Unit == quantity.Inch && t.Num.Of == "" {
				t.Num.Of, list[k].raw, list[k].Word = d, "the", "the" // 70" H
			}
		}
		for k := i - 1; k >= 0 && k >= i-3 && list[k].Kind == Word && t.Num.Of == ""; k-- {
			t.Num.Of = words[list[k].Word]
		}
	}
	return list
}

// leadsOn reports whether a word says of what dimension the amount behind it is: "tube spaced 16 in".
func leadsOn(list []Token, at int) bool {
	return list[at].raw == "spaced" && at+1 < len(list) && list[at+1].Kind == Count
}

// vehicleWords name the whole unit.
var vehicleWords = []string{"overall", "vehicle", "ambulance", "unit", "apparatus", "truck", "rig"}

// ofVehicle reports whether the whole unit is named in the sentence before an amount, or
// right behind it.
func ofVehicle(list []Token, at int) bool {
	for k := at - 1; k >= 0 && list[k].Kind != Stop; k-- {
		if slices.Contains(vehicleWords, list[k].raw) {
			return true
		}
	}
	for k := at + 1; k < len(list) && k <= at+3 && list[k].Kind != Stop; k++ {
		if slices.Contains(vehicleWords, list[k].raw) {
			return true
		}
	}
	return false
}

// counted tells each bare number what it may count: the words behind it, then those
// before it.
func counted(list []Token) []Token {
	for i := range list {
		t := &list[i]
		if t.Kind != Count || t.Num.Unit != "" {
			continue
		}
		t.Num.First = i == 0
		if i+1 < len(list) && list[i+1].Kind == Count && t.Num.Value > 1 {
			list[i+1].Num.Apiece = true // "two 100 W outputs"
		}
		for k := i + 1; k < len(list) && len(t.Num.Near) < 3 && list[k].Kind != Stop && list[k].Kind != Break; k++ {
			if list[k].Kind == Word {
				t.Num.Near = append(t.Num.Near, list[k].Word)
				if t.Num.noun == 0 && (plural(list[k].raw) || list[k].Role != Modifier &&
					!(k+1 < len(list) && list[k+1].Kind == Count)) {
					t.Num.noun = len(t.Num.Near)
				}
			}
		}
		t.Num.Behind = len(t.Num.Near)
		t.Num.PerOne = t.Num.Value > 1 && perEach(list[i+1:])
		for k := i - 1; k >= 0 && k >= i-4 && len(t.Num.Near) < 5 && list[k].Kind != Stop; k-- {
			if list[k].Kind == Word {
				t.Num.Near = append(t.Num.Near, list[k].Word)
			}
		}
	}
	return list
}

// perEach reports whether tokens say of how many there are that they are at each of several, "intersection lights on
// each front fender".
func perEach(list []Token) bool {
	each := false
	for k, t := range list {
		switch {
		case t.Kind != Word || k > mostBetween:
			return false
		case t.raw == "each" || t.raw == "every":
			each = k > 0
		case each && t.Role != Modifier:
			return t.Role&Located != 0
		}
	}
	return false
}

// plural reports whether a word may be the name of several things.
func plural(raw string) bool {
	return len(raw) > 3 && strings.HasSuffix(raw, "s") && !strings.HasSuffix(raw, "ss") && !strings.HasSuffix(raw, "us")
}

// equals takes out "or approved equal" and its kin: what is offered is the thing
// named or one as good.
func equals(list []Token) []Token {
	out := list[:0]
	for i := 0; i < len(list); i++ {
		if list[i].raw == "or" {
			k := i + 1
			for k < len(list) &&
				slices.Contains([]string{"an", "approved", "purchaser", "district", "county", "city", "department",
					"functional"}, list[k].raw) {
				k++
			}
			if k < len(list) && slices.Contains([]string{"equal", "equivalent", "equals", "similar"}, list[k].raw) {
				i = k
				continue
			}
		}
		out = append(out, list[i])
	}
	return out
}

// ruledFrom is where what is ruled out at the end of a list begins: its sentence, what stands behind a colon
// or in brackets, or behind a comma where what stands before that is ordered: "shall be aluminum, steel is not
// acceptable".
func ruledFrom(list []Token) int {
	from := len(list)
	for from > 0 && list[from-1].Kind != Stop {
		from--
	}
	ordered := false
	for k := from; k < len(list); k++ {
		t := &list[k]
		ordered = ordered || ordering[t.raw]
		if t.Kind == Break && (t.raw == ":" || t.raw == "(" || t.raw == "," && ordered) {
			from, ordered = k+1, false
		}
	}
	for from < len(list) && list[from].Kind == Break {
		from++
	}
	return from
}

// ordering are words of a clause that asks for something.
var ordering = wordsOf(`shall must will should`)

func ruledOutBehind(list []Token, at int) int {
	for _, b := range behind {
		if at+len(b) > len(list) {
			continue
		}
		same := true
		for k, w := range b {
			same = same && list[at+k].raw == w
		}
		if same && at > 0 {
			return len(b)
		}
	}
	return 0
}

// joinPhrases makes one word of several that name one thing. A connective within a
// phrase does not break it.
func joinPhrases(list []Token) []Token {
	for pass := 0; pass < 2; pass++ {
		out := list[:0]
		for i := 0; i < len(list); i++ {
			t := list[i]
			if t.Kind != Word {
				out = append(out, t)
				continue
			}
			joined := false
			for _, p := range phrases[t.Word] {
				if n := spans(list, i, p.from); n > 1 || n > 0 && p.to != t.Word {
					last := list[i+n-1]
					t.Word, t.raw, t.End, t.Role, t.Done, t.Many = p.to, "", last.End, last.Role, false, last.Many
					t.Before, t.After = t.Before || last.Before, t.After || last.After
					out = append(out, t)
					i += n - 1
					joined = true
					break
				}
			}
			if !joined {
				out = append(out, t)
			}
		}
		list = out
	}
	return list
}

// spans is how many tokens from a place hold the stems in order; 0 when they do not.
func spans(list []Token, at int, stems []string) int {
	k := at
	for i, s := range stems {
		for i > 0 && k < len(list) && list[k].Kind == Word && (list[k].Word == "of" || list[k].Word == "the") &&
			s != list[k].Word {
			k++
		}
		if k < len(list) && list[k].Kind == Break && (s == list[k].raw) {
			k++
			continue
		}
		if k >= len(list) || list[k].Kind != Word || list[k].Word != s {
			return 0
		}
		k++
	}
	return k - at
}

// idled leaves out the words that say nothing.
func idled(list []Token) []Token {
	list = slices.DeleteFunc(list, func(t Token) bool {
		return t.Kind == Word && t.raw != "" && (idle[t.raw] || idle[strings.TrimSuffix(t.raw, "s")])
	})
	out := list[:0]
	for i, t := range list {
		if t.Word == every && i+1 < len(list) && list[i+1].Kind == Count && list[i+1].Num.Unit == "" {
			list[i+1].Num.All = i+2 == len(list) || list[i+2].Kind != Word || list[i+2].Role&Located != 0
			continue // "all four sides"
		}
		out = append(out, t)
	}
	list = out
	for i := 1; i < len(list); i++ { // "each rated at 150 lb"
		if list[i].Kind == Count && list[i].Num.Unit != "" && list[i-1].raw == "each" {
			list[i].Num.Each = true
		}
	}
	for i := 1; i < len(list); i++ { // "150 lb rating each"
		if t := list[i]; (t.raw == "each" || t.raw == "ea") && list[i-1].Kind == Count && list[i-1].Num.Unit != "" {
			list[i-1].Num.Each = true
			list = slices.Delete(list, i, i+1)
		}
	}
	return slices.DeleteFunc(list, func(t Token) bool {
		return t.Kind == Word && t.raw != "" && (idle[t.raw] || idle[strings.TrimSuffix(t.raw, "s")]) ||
			t.Kind == Word && len(t.Word) == 1 && !slices.Contains([]string{"m", "h", "e", "d"}, t.Word)
	})
}

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

// Words are the content words of tokens.
func Words(list []Token) []string {
	out := make([]string, 0, len(list))
	for i := range list {
		if list[i].Kind == Word {
			out = append(out, list[i].Word)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return out
}

// AllWords are the content words of a text that was read, those that make a phrase also one by
// one.
func AllWords(text string, read []Token) []string {
	out := Words(read)
	for _, t := range lex(text) {
		if t.Kind == Word && !idle[t.raw] && numbers[t.raw] == 0 && len(t.raw) > 1 {
			out = append(out, stem(t.raw))
		}
	}
	return out
}

// Compartments reports whether a token speaks of several compartments, and so of those for equipment.
func Compartments(t Token) bool { return t.Kind == Word && t.raw == "compartments" }

// Numbers are the quantities of tokens.
func Numbers(list []Token) []Number {
	many := 0
	for i := range list {
		if list[i].Kind == Count {
			many++
		}
	}
	if many == 0 {
		return nil
	}
	out := make([]Number, 0, many)
	for i := range list {
		if list[i].Kind == Count {
			out = append(out, *list[i].Num)
		}
	}
	return out
}

// DayOf is the date by which something is asked for, the day before where tokens say "before"
// it; none can be told of several dates, nor of one "after" which it is asked for.
func DayOf(list []Token) (day config.Date, dated bool) {
	for i := range list {
		t := &list[i]
		switch {
		case t.Kind != Day:
			continue
		case dated || t.Num.Sense == config.AtLeast:
			return config.Date{}, true
		}
		day, dated = *t.Day, true
		if t.Num.Beyond && t.Num.Sense == config.AtMost {
			day = day.AddDays(-1)
		}
	}
	return day, dated
}

// Dimension reports whether a word says of what dimension an amount is.
func Dimension(word string) bool { return dimensionWords[word] != "" }

// Dimensions are these words.
func Dimensions() []string { return slices.Collect(maps.Keys(dimensionWords)) }

// DimensionOf is the dimension that a word says an amount is of; empty where it says none.
func DimensionOf(word string) string { return dimensionWords[word] }

// Ruling is how far tokens rule something out.
type Ruling struct {
	Before []string // words before what is ruled out
	Out    []string // words of the piece that rules something out
}

// RuledWords tells the words that are ruled out from those before them; nil where nothing
// is.
func RuledWords(list []Token) *Ruling {
	if !Ruled(list) {
		return nil
	}
	r, not := &Ruling{}, false
	ended := false
	for _, t := range list {
		switch {
		case t.Kind == Not:
			not, ended = true, false
		case t.Kind == Break:
			ended = not
		case t.Kind == Word && !not:
			r.Before = append(r.Before, t.Word)
		case t.Kind == Word && !ended:
			r.Out = append(r.Out, t.Word)
		}
	}
	return r
}

// Instead reports whether tokens say what something takes the place of.
func Instead(list []Token) bool {
	for i := range list {
		if list[i].Kind == Not && list[i].raw == instead {
			return true
		}
	}
	return false
}

// Replaced are the words of what tokens say that something takes the place of.
func Replaced(list []Token) []string {
	var out []string
	in := false
	for _, t := range list {
		switch {
		case t.Kind == Not:
			in = t.raw == instead
		case t.Kind == Break || t.Kind == Stop:
			in = false
		case in && t.Kind == Word:
			out = append(out, t.Word)
		}
	}
	return out
}

// Denied are the words right behind those that rule something out: "timer" and "shedding" in
// "without timer or shedding".
func Denied(list []Token) []string {
	var out []string
	for i, t := range list {
		if t.Kind == Word && i > 0 && (list[i-1].Kind == Not || list[i-1].Kind == Or && i > 1 &&
			slices.Contains(out, list[i-2].Word)) {
			out = append(out, t.Word)
		}
	}
	return out
}

// every is the stem of "all", "both" and "each".
const every = "every"

// instead is how "rather than" and its kin are written within the package.
const instead = "insteadof"

// Ruled reports whether something in tokens is ruled out.
func Ruled(list []Token) bool {
	for i := range list {
		if list[i].Kind == Not {
			return true
		}
	}
	return false
}
