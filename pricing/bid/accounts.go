package bid

import (
	"slices"

	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
)

// What is said of a thing is more than a bag of words: "a touch screen that shows camera
// pictures" has no camera. An entry is one thing that is said, its words with the roles that
// they have there.
type entry map[string]claims.Role

// curated is an entry of words that the catalogue says to be true in whatever role.
func (x *taught) curated() entry {
	e := entry{}
	for _, w := range x.all {
		e[w] = claims.AnyRole
	}
	for _, t := range x.tokens {
		if t.Done && asQuality[t.Word] {
			e[t.Word] = claims.Modifier
		}
	}
	for _, n := range claims.Numbers(x.tokens) {
		e[amountOf+n.Unit] = claims.AnyRole
	}
	return e
}

// taught is a text of a catalogue read: the same is said of many things.
type taught struct {
	tokens []claims.Token
	words  []string
	all    []string // those within phrases too
}

// texts are those of a catalogue, each read once.
type texts map[string]*taught

func (t texts) of(text string) *taught {
	x := t[text]
	if x == nil {
		tokens := claims.Read(text).Tokens
		x = &taught{tokens, claims.Words(tokens), claims.AllWords(text, tokens)}
		t[text] = x
	}
	return x
}

// amountOf begins the mark of an entry that holds an amount of a unit.
const amountOf = "amount of "

// clauses are the entries of a sentence. The words within its phrases count as well.
func (x *taught) clauses() []entry {
	tokens, within := x.tokens, x.curated()
	for _, t := range tokens {
		delete(within, t.Word)
		if t.Kind == claims.Count {
			delete(within, amountOf+t.Num.Unit)
		}
	}
	var out []entry
	for _, p := range pieces(tokens) {
		e := entry{}
		for w := range within {
			e[w] = claims.AnyRole
		}
		for _, t := range p.tokens {
			switch t.Kind {
			case claims.Word:
				e[t.Word] |= t.Role
			case claims.Count:
				e[amountOf+t.Num.Unit] = claims.AnyRole
			}
		}
		out = append(out, e)
	}
	for i := len(out) - 2; i >= 0; i-- { // "an indicator and alarm in the cab"
		if len(out[i])-len(within) <= shortPiece {
			for w, role := range out[i+1] {
				if role&claims.Inside != 0 && role != claims.AnyRole && out[i][w] == 0 {
					out[i][w] = role
				}
			}
		}
	}
	return out
}

// shortPiece is of how many words a piece of a sentence is at most that may be where the next is.
const shortPiece = 2

// title is a name that things of a group are called by.
type title struct {
	words []string
	group string
}

// titled gathers the names of everything offered, by their last words: these are the things
// that a line can speak of.
func (v *vocabulary) titled() {
	v.titles = map[string][]title{}
	for i := range v.list {
		p := &v.list[i]
		for _, n := range p.names {
			head := n[len(n)-1]
			if p.group == "" || head == moduleWord || quiet[head] || slices.ContainsFunc(v.titles[head],
				func(t title) bool { return t.group == p.group && slices.Equal(t.words, n) }) {
				continue
			}
			v.titles[head] = append(v.titles[head], title{n, p.group})
		}
	}
	for i := range v.list {
		p := &v.list[i]
		other := func(n title) bool { return n.group != p.group && len(n.words) == 1 }
		for _, k := range p.loose {
			for w := range p.entries[k] {
				if p.group != "" && slices.ContainsFunc(v.titles[w], other) {
					p.entries[k][w] = claims.Located | claims.Modifier
				}
			}
		}
	}
}

// longestPhrase is of how many words a phrase is at most that the catalogue says to be true:
// more are words that may stand beside, and what else is offered by such a word is not
// part of the thing.
const longestPhrase = 4

// accounts reports whether a thing accounts for each part of what a claim says, in its role:
// whatever else is named there has to be said of the thing in one breath, and what stands
// behind a comma, an "and" or a "with" has to be something that the thing has.
func (v *vocabulary) accounts(p *profile, tokens []claims.Token) bool {
	words := claims.Words(tokens)
	if p.onlyIn(tokens) || p.isOne(tokens) || p.colorsBoth(words) || p.ofOthers(words) || v.ofAnother(p, tokens) ||
		p.opposes(tokens, words) || p.onTruckAlone(tokens) ||
		slices.Contains(words, engineOff) && !p.underCondition(words, claims.Numbers(tokens)) {
		return false
	}
	for from := 0; from < len(tokens); {
		to := from
		for to < len(tokens) && tokens[to].Part == tokens[from].Part {
			to++
		}
		part := tokens[from:to]
		if from > 0 && p.carriedToo(tokens[:from], part) {
			return false
		}
		if p.ofOtherSide(claims.Words(part), sidesAndEnds) { // "blue on the street side, red on the curb side"
			return false
		}
		if !v.saysNames(p, part) || p.ofOtherMake(part) || v.ofOtherKind(p, part) || v.onlyQuality(p, part) ||
			from > 0 && !v.hasHead(p, part) ||
			from == 0 && to < len(tokens) && !v.counts(p, part) {
			return false
		}
		from = to
	}
	return true
}

// onlyIn reports whether a claim asks for a compartment for a thing that stands in one itself, which is no
// compartment: "compartment for a generator".
func (p *profile) onlyIn(tokens []claims.Token) bool {
	return len(tokens) > 1 && tokens[0].Word == compartmentWord && tokens[0].Role == claims.Companion &&
		tokens[1].Role&ofIt == ofIt && tokens[1].Part == tokens[0].Part &&
		slices.ContainsFunc(p.entries, func(e entry) bool { return e[compartmentWord] == claims.Located|claims.Inside })
}

// onTruckAlone reports whether a claim asks for something on the truck and on the module, and a thing is not said to
// be on the module: "on the fenders and on the module".
func (p *profile) onTruckAlone(tokens []claims.Token) bool {
	truck := slices.IndexFunc(tokens, func(t claims.Token) bool {
		return truckPlaces[t.Word] && t.Role&claims.Located != 0
	})
	module := slices.IndexFunc(tokens, func(t claims.Token) bool {
		return t.Word == moduleWord && t.Role&(claims.Located|claims.Modifier) != 0
	})
	return truck >= 0 && module >= 0 && tokens[truck].Part != tokens[module].Part &&
		!slices.ContainsFunc(p.entries, func(e entry) bool { return e[moduleWord] != 0 })
}

var truckPlaces = wordSet("fender bumper grille hood cab mirror")

// opposes reports whether a claim puts something on the other side of what a thing has it on: "under
// the counter" of a light over the counter.
func (p *profile) opposes(tokens []claims.Token, words []string) bool {
	for _, s := range sides(tokens) {
		if !p.sides[s] && (p.sides[side{opposites[s.where], s.of}] || s.of == wallWord && p.onOtherWall(s.where)) {
			return true
		}
	}
	if slices.ContainsFunc(tokens, func(t claims.Token) bool {
		return t.After && slices.Contains(p.before, t.Word) || t.Role&claims.Inside != 0 && p.outsideOf(t.Word)
	}) {
		return true
	}
	at := slices.IndexFunc(tokens, func(t claims.Token) bool { return t.Word == bodyWord && t.Role&claims.Located != 0 })
	// "on the outside of the body"
	return at > 0 && tokens[at-1].Word == outsideWord && !p.sides[side{outsideWord, bodyWord}] ||
		p.ofOtherSide(words, sideWords)
}

// ofOtherSide reports whether what a claim says of one side is said of a thing on the other alone: "the curb side
// comes on with the side door".
func (p *profile) ofOtherSide(words []string, of map[string]bool) bool {
	return slices.ContainsFunc(words, func(where string) bool {
		other := opposites[where]
		return of[where] && !slices.Contains(words, other) && slices.ContainsFunc(words, func(w string) bool {
			there := false
			for i, made := range p.makes {
				if i < p.labeled && !slices.ContainsFunc(made, func(w string) bool { return of[w] }) {
					continue // "Red and blue" says of neither on which side
				}
				if slices.Contains(made, w) {
					if !slices.Contains(made, other) && !(p.comesWith[i] && i > 0 && slices.Contains(p.makes[i-1], other)) {
						return false
					}
					there = true
				}
			}
			return there
		})
	})
}

// sideWords are the sides of a unit, and sidesAndEnds its ends too, which may stand apart from what is there: "red
// and clear, amber to the rear" says nothing of clear to the rear.
var (
	sideWords    = wordSet("streetside curbside")
	sidesAndEnds = wordSet("streetside curbside front rear")
)

// onOtherWall reports whether it is said on which side wall a thing is, and only of another than one.
func (p *profile) onOtherWall(side string) bool {
	other := false
	for _, e := range p.entries {
		if e[wallWord] != 0 && e[side] != 0 {
			return false
		}
		for w := range sideWords {
			other = other || e[wallWord] != 0 && e[w] != 0
		}
	}
	return other
}

var wallWord = stems("wall")[0]

// bodyWord is the body, and outsideWord what is outside of it.
var bodyWord, outsideWord = stems("body")[0], stems("outside")[0]

// ofMore reports whether a claim asks something of every thing of a name of which a thing says it of
// none or of others: "all windows shall slide" of the one in the partition.
func (p *profile) ofMore(tokens []claims.Token) bool {
	for i := 1; i < len(tokens); i++ {
		t := &tokens[i]
		if tokens[i-1].Word == everyWord && t.Kind == claims.Word && t.Part == tokens[i-1].Part &&
			severalKinds[t.Word] && (!p.everyOf[t.Word] || p.pairs[moduleWord+" "+t.Word]) {
			return true
		}
	}
	return false
}

// onlyPrepares reports whether a thing is no more than the preparation for what words ask for.
func (p *profile) onlyPrepares(words []string) bool {
	return p.core[prepares] && !slices.ContainsFunc(words, func(w string) bool { return prepared[w] })
}

// prepared are words for what is there before a device is.
var (
	prepares = stems("preparation")[0]
	prepared = wordSet("preparation prep prepare prepared ready readiness wire prewire prewired provision cable coax " +
		"power ground breaker circuit rough")
)

// severalKinds are what a unit has more than one kind of.
var severalKinds = wordSet("window door cabinet compartment light wheel outlet seat live")

// side is a word that says on which side, and the word behind it.
type side struct{ where, of string }

func sides(tokens []claims.Token) []side {
	var out []side
	for i := 1; i < len(tokens); i++ {
		if a, b := &tokens[i-1], &tokens[i]; opposites[a.Word] != "" && b.Kind == claims.Word && a.Part == b.Part {
			out = append(out, side{a.Word, b.Word})
		}
	}
	return out
}

var opposites = func() map[string]string {
	out := map[string]string{}
	for _, two := range [][2]string{{"over", "under"}, {"front", "rear"}, {"streetside", "curbside"}, {"upper", "lower"},
		{"inside", "outside"}, {"left", "right"}, {"ahead", "behind"}} {
		a, b := stems(two[0])[0], stems(two[1])[0]
		out[a], out[b] = b, a
	}
	return out
}()

// underCondition reports whether a thing has the amounts that a claim asks for under the
// condition that it names: what cools at 44,000 BTU/h on the engine does not with it off.
func (p *profile) underCondition(words []string, list []claims.Number) bool {
	if !slices.Contains(words, engineOff) {
		return true
	}
	return !slices.ContainsFunc(list, func(n claims.Number) bool {
		return n.Unit != "" && n.Unit != quantity.Volt && !slices.ContainsFunc(p.entries, func(e entry) bool {
			return e[engineOff] != 0 && e[amountOf+n.Unit] != 0
		})
	})
}

var engineOff = stems("engine off")[0]

// ofOthers reports whether a claim holds a word that only others of the group are called by,
// and not the whole name of the group: "USB" of a 12 V outlet among "12 V and USB outlets".
func (p *profile) ofOthers(words []string) bool {
	if len(p.others) == 0 {
		return false
	}
	for from := 0; from+len(p.ofGroup) <= len(words); from++ {
		if slices.Equal(words[from:from+len(p.ofGroup)], p.ofGroup) {
			return false
		}
	}
	return slices.ContainsFunc(p.others, func(w string) bool { return slices.Contains(words, w) })
}

// ofAnother reports whether what a claim speaks of first is a thing of another group, of which
// all names are unlike those of this: a "squad bench with cot" is not "Two: cot and bench".
func (v *vocabulary) ofAnother(p *profile, tokens []claims.Token) bool {
	var first []string
	for i := range tokens {
		t := &tokens[i]
		if t.Part != tokens[0].Part {
			if p.called(claims.Words(tokens), first) {
				return false
			}
			return i > 0 && len(first) > 0 && slices.ContainsFunc(v.titles[first[len(first)-1]], func(n title) bool {
				return n.group != p.group && slices.Equal(n.words, first)
			})
		}
		if t.Kind == claims.Word {
			first = append(first, t.Word)
		}
	}
	return false
}

// called reports whether words hold one of the names of a thing, of which a word is among some.
func (p *profile) called(words, some []string) bool {
	return slices.ContainsFunc(p.names, func(n []string) bool {
		return slices.ContainsFunc(n, func(w string) bool { return slices.Contains(some, w) }) &&
			!slices.ContainsFunc(n, func(w string) bool { return !slices.Contains(words, w) })
	})
}

// counts reports whether a part of a claim that counts something counts such a thing: "six
// compartments with a shelf" is not six shelves.
func (v *vocabulary) counts(p *profile, part []claims.Token) bool {
	head, many := v.head(part), slices.ContainsFunc(part, func(t claims.Token) bool {
		return t.Kind == claims.Count && t.Num.Unit == "" && t.Num.Value > 1
	})
	return !many || head == nil || p.group == "" ||
		slices.ContainsFunc(p.names, func(n []string) bool { return n[len(n)-1] == head.Word }) ||
		slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
			return x.Unit == "" && slices.Contains(x.Near, head.Word)
		})
}

// head is the last thing that a part speaks of; nil where it speaks of none.
func (v *vocabulary) head(part []claims.Token) *claims.Token {
	for i := len(part) - 1; i >= 0; i-- {
		t := &part[i]
		if t.Kind == claims.Word && t.Role == claims.Companion && !t.Done && (v.titles[t.Word] != nil || quiet[t.Word]) {
			return t
		}
	}
	return nil
}

// saysNames reports whether each name of another thing in a part is said of a thing.
func (v *vocabulary) saysNames(p *profile, part []claims.Token) bool {
	for i := range part {
		t := &part[i]
		if t.Kind != claims.Word || t.Done || t.Role == claims.Modifier {
			continue
		}
		for _, n := range v.titles[t.Word] {
			from := i + 1 - len(n.words)
			if n.group == p.group || from < 0 || !slices.Equal(claims.Words(part[from:i+1]), n.words) {
				continue
			}
			if !slices.ContainsFunc(p.entries, func(e entry) bool {
				return e.has(*t) && !slices.ContainsFunc(n.words, func(w string) bool { return e[w] == 0 })
			}) {
				return false
			}
		}
	}
	return true
}

// saysWhere reports whether what a part says to be in something is said to be there in one breath: what
// holds the air below that of the cab is not in the cab, and the monitor of a camera not where that is.
// Traits account for words of their own, but no "across" is that of what runs lengthwise.
func (p *profile) saysWhere(tokens, left []claims.Token) bool {
	if p.words[lengthwise] && slices.ContainsFunc(tokens, func(t claims.Token) bool { return t.Across }) {
		return false // what runs the full length does not run across
	}
	if p.core[faceWord] && slices.ContainsFunc(tokens, func(t claims.Token) bool {
		return t.Word == bumperWord && t.Role&claims.Inside != 0
	}) {
		return false // what stands on the face of a bumper is not in it
	}
	head := ""
	if len(tokens) > 1 && insides[tokens[0].Word] && tokens[1].Part != tokens[0].Part { // "cab with negative pressure"
		at := tokens[0]
		at.Role, at.Part = claims.Located|claims.Inside, tokens[1].Part
		next := slices.IndexFunc(tokens[1:], func(t claims.Token) bool { return t.Part != at.Part }) + 1
		if next == 0 {
			next = len(tokens)
		}
		tokens = slices.Concat(tokens[1:next], []claims.Token{at}, tokens[next:])
	}
	for i, t := range tokens {
		if i > 0 && t.Part != tokens[i-1].Part && t.Role&claims.Inside == 0 { // "negative pressure, in the cab"
			head = ""
		}
		if t.Kind != claims.Word || t.Role&claims.Inside == 0 || !insides[t.Word] ||
			!slices.ContainsFunc(left, func(l claims.Token) bool { return l.Word == t.Word && l.End == t.End }) {
			if t.Kind == claims.Word && t.Role == claims.Companion && !t.Done {
				head = t.Word
			}
			continue
		}
		if !slices.ContainsFunc(p.entries, func(e entry) bool {
			there := e[t.Word]
			if t.Word == moduleWord { // whose inside is the patient compartment
				there |= e[patientRoom]
			}
			return (there&claims.Inside != 0 || there&ofIt == ofIt) && (head == "" || e[head] != 0)
		}) {
			return false
		}
	}
	return true
}

// patientRoom is the patient compartment.
var patientRoom = stems("patient compartment")[0]

// lengthwise is the stem of "full-length".
var lengthwise = stems("full-length")[0]

var faceWord, bumperWord = stems("face")[0], stems("bumper")[0]

// ofIt is the role of what stands behind "of".
const ofIt = claims.Companion | claims.Located

// insides are what something can be in of which each unit has one.
var insides = wordSet("cab patient-compartment module hood grille bumper")

// tools are things that a catalogue need not offer and that others are for.
var tools = wordSet("tool")

// ofOtherKind reports whether a part says a kind of the thing that is said of something else only: a
// receptacle that keeps "suction chargers" going is no suction outlet.
func (v *vocabulary) ofOtherKind(p *profile, part []claims.Token) bool {
	for i := 1; i < len(part); i++ {
		kind, of := &part[i-1], &part[i]
		if kind.Kind != claims.Word || kind.Role != claims.Modifier || of.Kind != claims.Word ||
			v.titles[kind.Word] == nil && !tools[kind.Word] || p.told[kind.Word] || slices.Contains(p.label, kind.Word) ||
			p.pairs[kind.Word+" "+of.Word] || !p.ofGroupNamed(of.Word) {
			continue
		}
		said := false
		for _, e := range p.entries {
			if r := e[kind.Word]; r != 0 && r != claims.Modifier {
				said = false
				break
			} else if r != 0 {
				said = true
			}
		}
		if said {
			return true
		}
	}
	return false
}

// ofGroupNamed reports whether a thing is called by a name that ends with a word.
func (p *profile) ofGroupNamed(word string) bool {
	return slices.ContainsFunc(p.names, func(n []string) bool { return n[len(n)-1] == word })
}

// ofOtherMake reports whether a part says a material or color of what is named right behind it, or that it locks,
// and that is said of something else: "vinyl cab seats and rubber floor" is no vinyl floor, and a "twist-lock inlet
// with a cover" has no locking cover.
func (p *profile) ofOtherMake(part []claims.Token) bool {
	for i, q := range part {
		if q.Kind != claims.Word || !qualities[q.Word] && q.Word != lockWord {
			continue
		}
		for k := i; k+1 < len(part) && part[k].Role == claims.Modifier && part[k+1].Kind == claims.Word; k++ {
			noun := part[k+1].Word
			if !qualities[noun] && !(q.Word == lockWord && p.ofGroupNamed(noun)) && p.madeOtherwise(q.Word, noun) {
				return true
			}
		}
	}
	return false
}

var lockWord, weldWord = stems("lock")[0], stems("weld")[0]

// weldsMetal reports whether words may speak of the welds of what is under a thing that is welded itself but of no
// metal: of "floor seams" those of the frame, unless the vinyl is named.
func (p *profile) weldsMetal(words []string) bool {
	return slices.Contains(words, weldWord) && slices.ContainsFunc(p.label, func(w string) bool { return soft[w] }) &&
		!slices.ContainsFunc(words, func(w string) bool { return soft[w] || slices.Contains(p.label, w) })
}

var soft = wordSet("vinyl rubber")

// madeOtherwise reports whether a material or color and a part are both named of a thing, and
// nowhere together.
func (p *profile) madeOtherwise(quality, part string) bool {
	elsewhere, named := false, false
	for _, made := range p.makes {
		has := slices.Contains(made, part)
		switch {
		case !slices.Contains(made, quality):
			named = named || has
		case has || len(made) == 1: // "panels, stainless"
			return false
		default:
			elsewhere = true
		}
	}
	return elsewhere && named
}

// has reports whether an entry says a word in the role that it has in a line.
func (e entry) has(t claims.Token) bool {
	return e[t.Word] != 0 && (t.Role != claims.Companion || e[t.Word]&claims.Companion != 0)
}

// asQuality are words for a thing by which others are also said to be, "a lighted step" and "a heated mirror".
var asQuality = wordSet("light heat")

// onlyQuality reports whether what a part speaks of is nothing of a thing but how that is: a "lighted step well" has
// no side door lights.
func (v *vocabulary) onlyQuality(p *profile, part []claims.Token) bool {
	head := v.head(part)
	if head == nil || !asQuality[head.Word] {
		return false
	}
	said := claims.Role(0)
	for _, e := range p.entries {
		said |= e[head.Word]
	}
	return said == claims.Modifier
}

// hasHead reports whether what a part speaks of is something that a thing has.
func (v *vocabulary) hasHead(p *profile, part []claims.Token) bool {
	head := v.head(part)
	return head == nil || slices.ContainsFunc(p.entries, func(e entry) bool { return e.has(*head) })
}
