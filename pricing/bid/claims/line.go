package claims

import (
	"slices"
	"strings"
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
