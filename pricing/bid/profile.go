package bid

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

// profile is what is true of something the catalogue offers: an option, a chassis or
// a body.
type profile struct {
	id           string
	group        string
	words        map[string]bool
	label        []string
	spec         []string   // the words of its sentence
	tells        telling    // of the label
	says         telling    // of the sentence
	own          [][]string // those of the names that are not its group's
	names        [][]string // of one of which a line holds all words when it speaks of this
	ownIDs       [][]int32
	nameIDs      [][]int32
	numbers      []claims.Number
	never        map[string]bool // what it is free of
	another      map[string]bool // of that, what it has of another kind: hold-opens that are no gas springs
	unsaid       [][]string      // of that, what takes several words: "delivered to the purchaser"
	instead      map[string]bool // what it stands in the place of
	lack         bool            // it is the lack of something: "No rub rail"
	absent       bool            // or the same called by what the purchaser has: "Purchaser's own cot"
	most         int             // of it a unit may hold
	beside       bool            // may stand beside others of its group
	core         map[string]bool // words said of the whole thing
	pairs        map[string]bool // words that follow each other in its sentence
	sides        map[side]bool   // of what it says on which side
	everyOf      map[string]bool // words that stand behind "every" or "both" in what is said of it
	before       []string        // what its sentence says that something is done before
	wired        bool            // runs on the vehicle's own voltage
	kept         bool            // only as an existing module has it
	carries      bool            // it is what something else is held by: "Stair chair clamp"
	ofGroup      []string        // the name of its group, where that names several kinds
	others       []string        // words of that name that speak of other kinds
	otherAmounts []claims.Number // and amounts of that name
	told         map[string]bool // words that the catalogue says purchasers use of it
	makes        [][]string      // the words of each piece of its label and sentence
	labeled      int             // how many of these are of the label
	// comesWith says of each of these that "with" stands before it
	comesWith []bool
	entries   []entry // what is said of it, one by one
	loose     []int   // of entries, those that are many words and no phrase
	traits    []int   // places in the list of traits
}

// vocabulary is everything offered, with the words that describe it.
type vocabulary struct {
	list    []profile
	byID    map[string]*profile
	with    map[string][]int // by word: places in list
	places  [][]int          // by the number of a word: the same
	lacking map[string][]int // by word: places of what is free of it
	idf     map[string]float64
	ids     map[string]int32 // of the words by which things are named
	units   map[string]int   // things by their group and a unit of which they have an amount
	// names of several words that hold a quiet one, by that word
	phrases map[string][][]string
	titles  map[string][]title  // by their last word
	read    map[string]*reading // lines read before
	sure    string              // the only thing that a line speaks of, while a further piece of it is read
	judged  *judge              // of the unit that was answered for last; nil of none
	traits  []trait
	every   []int      // the places in the list
	asking  [][]asking // traits by the number of what a slot of a way of asking for them begins with
	spanned []span     // of the claim that is read, see spans
	there   bag        // of that, see spans
	held    bag        // of that, see offered
	// inTraits are the words by which traits are asked for
	inTraits bag
	marks    []int   // of the claim that is read, see variants
	done     []bool  // of that, see offered
	silent   []bool  // by the number of a word: it may stand beside any thing
	things   [][]int // of the claim that is read, and
	// sureThings those of its words of which no trait is made, see thingsOf
	sureThings [][]int
	hits       []float64 // of the line that is read, see suggest
}

type vocabularyKey struct{}

// vocabularyOf is that of an edition, made when first asked for.
func vocabularyOf(ed *quote.Edition) *vocabulary {
	return ed.Once(vocabularyKey{}, func() any { return newVocabulary(ed.Cat, ed.Rules.Pauses().Rest) }).(*vocabulary)
}

// togetherWord tells that an amount is that of several things: "two alternators, 560 A together".
var togetherWord = stems("together")[0]

// chassisGroup is that of all chassis: a unit has one.
const chassisGroup = "chassis"

// chassisNames are what a chassis is asked for by, whatever catalogue it stands in.
var chassisNames = []string{"chassis", "engine", "gasoline", "diesel", "4x4", "4x2", "cutaway", "cab-chassis", "van",
	"type i", "type ii", "type iii",
	"rear wheel", "medium duty", "fuel", "brakes"}

// newVocabulary is that of a catalogue. It rests now and then.
func newVocabulary(cat *config.Catalogue, rest func()) *vocabulary {
	v := &vocabulary{with: map[string][]int{}, lacking: map[string][]int{}, idf: map[string]float64{},
		ids: map[string]int32{}, read: map[string]*reading{}}
	asked, read := map[string]*config.Asked{}, texts{}
	for i := range cat.Asked {
		asked[cat.Asked[i].ID] = &cat.Asked[i]
	}
	for i := range cat.Chassis {
		c := &cat.Chassis[i]
		also := "chassis cab wheels tires " + c.Drive + " drive " + c.Fuel + " powered engine only, " + shortFuel[c.Fuel] +
			" type " + chassisType(c.Type)
		p := newProfile(c.ID, chassisGroup, c.Label, c.Spec, also, asked[c.ID], read)
		for _, n := range chassisNames {
			p.names = append(p.names, stems(n))
		}
		for _, rival := range []string{"diesel", "gasoline", "4x4", "4x2", "type i", "type ii", "type iii"} {
			if w := stems(rival)[0]; !p.words[w] {
				p.never[w] = true
			}
		}
		v.add(p)
	}
	for i := range cat.Bodies {
		if b := &cat.Bodies[i]; !b.Existing {
			v.add(newProfile(b.ID, "", b.Label, b.Spec, "module body "+b.Kind, asked[b.ID], read))
		}
	}
	for i := range cat.Options {
		if i%mostFresh == 0 {
			rest()
		}
		o := &cat.Options[i]
		g := cat.GroupByID(o.Group)
		p := newProfile(o.ID, o.Group, o.Label, o.Spec, g.Label, asked[o.ID], read)
		p.most, p.kept = max(o.MaxQty, 1), slices.Contains(o.Tags, "remount")
		p.beside, p.wired = g.Choose == config.ChooseAny, o.Load != nil || o.Supply != nil || o.Circuit != nil ||
			slices.Contains(p.label, wireWord) || slices.Contains(stems(g.Label), wireWord)
		p.absent = o.LeavesOut() && !p.lack
		p.stand(o)
		p.own = slices.Clone(p.names)
		if a := asked[o.Group]; a != nil {
			p.learn(a, read)
		}
		if g.Choose != config.ChooseAny {
			if w := stems(g.Label); len(w) > 0 {
				p.names = append(p.names, w)
			}
		}
		p.standInside(o)
		v.add(p)
	}
	v.parted(cat)
	v.learnTraits(cat, read)
	v.byID = make(map[string]*profile, len(v.list))
	for i := range v.list {
		v.byID[v.list[i].id] = &v.list[i]
	}
	v.titled()
	v.phrases = map[string][][]string{}
	for i := range v.list {
		for _, n := range v.list[i].names {
			for _, w := range n {
				if quiet[w] && len(n) > 1 {
					v.phrases[w] = append(v.phrases[w], n)
				}
			}
		}
	}
	for w, at := range v.with {
		v.idf[w] = math.Log(1 + float64(len(v.list))/float64(len(at)))
	}
	v.units = map[string]int{}
	for i := range v.list {
		p := &v.list[i]
		for _, unit := range p.allUnits() {
			v.units[p.group+" "+unit]++
		}
		p.tells, p.says = v.tellingOf(p.label), v.tellingOf(p.spec)
		for _, n := range p.names {
			p.nameIDs = append(p.nameIDs, v.numbered(n))
		}
		for _, n := range p.own {
			p.ownIDs = append(p.ownIDs, v.numbered(n))
		}
	}
	v.indexed()
	return v
}

// numbered are the numbers of words, which are given anew to those that have none.
func (v *vocabulary) numbered(words []string) []int32 {
	out := make([]int32, len(words))
	for i, w := range words {
		id, known := v.ids[w]
		if !known {
			id = int32(len(v.ids)) + 1
			v.ids[w] = id
		}
		out[i] = id
	}
	return out
}

// bag is a set of words by their numbers: things are held against a line without their words being
// looked up one by one.
type bag []uint64

func (v *vocabulary) bagOf(words []string) bag {
	clear(v.held)
	for _, w := range words {
		v.held.put(v.ids[w])
	}
	return v.held
}

func (v *vocabulary) emptyBag() bag { return make(bag, len(v.ids)/64+1) }

// put takes in a number; 0 is that of no word.
func (b bag) put(id int32) {
	if id != 0 {
		b[id/64] |= 1 << (id % 64)
	}
}

func (b bag) has(id int32) bool { return b[id/64]&(1<<(id%64)) != 0 }

func (b bag) hasAll(ids []int32) bool {
	return !slices.ContainsFunc(ids, func(id int32) bool { return !b.has(id) })
}

// parted tells things of a group that is named by several kinds, "12 V and USB outlets", which
// words of its name speak of others of them.
func (v *vocabulary) parted(cat *config.Catalogue) {
	for i := range cat.Groups {
		g := &cat.Groups[i]
		if !strings.Contains(g.Label, " and ") || g.Choose != config.ChooseAny {
			continue
		}
		tokens := claims.Read(g.Label).Tokens
		name, amounts := claims.Words(tokens), claims.Numbers(tokens)
		for k := range v.list {
			p := &v.list[k]
			if p.group != g.ID {
				continue
			}
			for _, n := range amounts {
				if p.amounts(n.Unit) == 0 {
					p.otherAmounts = append(p.otherAmounts, n)
				}
			}
			for _, w := range name {
				if !p.told[w] && !slices.Contains(p.label, w) && !slices.Contains(p.spec, w) {
					p.others = append(p.others, w)
				}
			}
			p.ofGroup = name
		}
	}
}

// shortFuel is how a fuel is called for short.
var shortFuel = map[string]string{"gasoline": "gas"}

// chassisType is a type without what it adds, as purchasers ask for it.
func chassisType(t string) string {
	if base, cut := strings.CutSuffix(t, "-AD"); cut {
		return base + ", type " + t + " additional duty"
	}
	return t
}

func newProfile(id, group, label, spec, kind string, asked *config.Asked, read texts) *profile {
	p := &profile{id: id, group: group, words: map[string]bool{moduleWord: true}, never: map[string]bool{},
		instead: map[string]bool{}, core: map[string]bool{}, pairs: map[string]bool{}, sides: map[side]bool{},
		everyOf: map[string]bool{}}
	var denied []string // of its sentence: "without suspension"
	for i, text := range []string{label, spec, kind} {
		line := read.of(text)
		if i == 1 {
			denied = claims.Denied(line.tokens)
		}
		for _, w := range line.all {
			p.words[w] = true
			if i != 1 {
				p.core[w] = true
			}
		}
		for _, w := range claims.Replaced(line.tokens) {
			p.instead[w] = true
		}
		p.learnEvery(line, i == 2)
		for _, t := range line.tokens {
			if t.Before && i < 2 {
				p.before = append(p.before, t.Word)
			}
		}
		for _, s := range sides(line.tokens) {
			p.sides[s] = p.sides[s] || i < 2
		}
		for k, w := range line.words {
			if i < 2 && k > 0 {
				p.pairs[line.words[k-1]+" "+w] = true
			}
		}
		for _, piece := range pieces(line.tokens) {
			if i < 2 {
				p.makes = append(p.makes, claims.Words(piece.tokens))
				p.comesWith = append(p.comesWith, piece.with)
			}
		}
		if i == 0 {
			p.labeled = len(p.makes)
		}
		if i < 2 {
			p.carries = (i == 0 || p.carries) && isCarrier(line.tokens)
		}
		if i == 1 {
			p.spec = line.words
			p.entries = append(p.entries, line.clauses()...)
		} else {
			p.entries = append(p.entries, line.curated())
		}
		if i == 1 { // the first piece of a sentence is of the whole thing
			if first := pieces(line.tokens); first != nil {
				for _, w := range claims.Words(first[0].tokens) {
					p.core[w] = true
				}
			}
		}
		if i < 2 || !strings.Contains(kind, " and ") { // not all of "12 V and USB outlets" are of 12 V
			p.numbers = append(p.numbers, claims.Numbers(line.tokens)...)
		}
		if i == 0 {
			p.label, p.lack = line.words, len(line.tokens) > 0 && line.tokens[0].Kind == claims.Not
		}
	}
	for _, w := range denied {
		if !slices.Contains(p.label, w) {
			delete(p.words, w)
			delete(p.core, w)
			p.never[w] = true
		}
	}
	if asked != nil {
		p.learn(asked, read)
	}
	for i := range p.numbers { // "46 in" of the label is the sentence's "46 in wide"
		n := &p.numbers[i]
		for _, x := range p.numbers {
			if n.Of == "" && x.Of != "" && x.Unit == n.Unit && x.Value == n.Value {
				n.Of = x.Of
			}
		}
	}
	for i := range p.numbers { // "Two high-back seats": how many the thing is
		if n := &p.numbers[i]; n.First && n.Unit == "" {
			for _, name := range p.names {
				n.Near = append(n.Near, name...)
			}
			n.Behind = len(n.Near)
		}
	}
	return p
}

// stand takes in on which side of the unit a thing is, where all of it is on one: the outlets of the action area
// on the street side.
func (p *profile) stand(o *config.Option) {
	var faces []string
	for _, at := range o.Places {
		if at.Both {
			return
		}
		faces = append(faces, at.Face)
	}
	for _, c := range o.Compartments {
		faces = append(faces, cmp.Or(c.Wall, c.Side))
	}
	side, inside := "", true
	for _, face := range faces {
		on, wall := strings.CutSuffix(face, "-wall")
		inside = inside && wall
		on = sideOfFace[on]
		if on == "" || side != "" && side != on {
			return
		}
		side = on
	}
	if side != "" && !p.never[side] && len(o.Seats) == 0 {
		p.words[side] = true
		e := entry{side: claims.AnyRole}
		if inside {
			e[wallWord] = claims.AnyRole
		}
		p.entries = append(p.entries, e)
	}
}

// standInside takes in that a thing is in the patient compartment, where each of its places is on a wall, the
// ceiling or the floor of that and it is of a kind that cannot be behind them.
func (p *profile) standInside(o *config.Option) {
	for _, at := range o.Places {
		if !seenInside[at.Kind] || !strings.HasSuffix(at.Face, "-wall") && at.Face != config.FaceCeiling &&
			at.Face != config.FaceFloor {
			return
		}
	}
	if len(o.Places) == 0 || p.words[outsideWord] || p.words[cabWord] || p.never[patientRoom] {
		return
	}
	p.words[patientRoom] = true
	e := entry{patientRoom: claims.AnyRole}
	for _, n := range p.names {
		e[n[len(n)-1]] = claims.AnyRole
	}
	p.entries = append(p.entries, e)
}

// seenInside are the kinds of places that are within the room that they are drawn in.
var seenInside = map[string]bool{"strip": true, "bench": true, "rail": true, "unit": true, "grille": true,
	"counter": true, "mount": true, "litter": true, "hook": true, "camera": true}

// sideOfFace are the sides as lines speak of them.
var sideOfFace = map[string]string{config.FaceStreet: stems("streetside")[0], config.FaceCurb: stems("curbside")[0]}

var wireWord = stems("wire")[0]

// moduleWord is said of anything on the module without telling one thing from another.
const moduleWord = "modul"

// learnEvery takes in of what a text says "every"; the name of a group says it of all that it names.
func (p *profile) learnEvery(x *taught, named bool) {
	for k, w := range x.words {
		if named || k > 0 && x.words[k-1] == everyWord {
			p.everyOf[w] = true
		}
	}
}

// learn takes in what the catalogue says of how the thing is asked for.
func (p *profile) learn(a *config.Asked, read texts) {
	if p.told == nil {
		p.told = map[string]bool{}
	}
	for _, text := range slices.Concat(a.Names, a.True) {
		for _, w := range read.of(text).all {
			p.told[w] = true
		}
	}
	for _, n := range a.Names {
		line := read.of(n)
		if w := line.words; len(w) > 0 {
			p.names = append(p.names, w)
			p.entries = append(p.entries, line.curated())
			for _, x := range w {
				p.words[x], p.core[x] = true, true
			}
		}
	}
	var free []string // what is true of it is that it has none of this
	for _, t := range a.True {
		line := read.of(t)
		for _, n := range claims.Numbers(line.tokens) {
			if p.id != a.ID && p.amounts(n.Unit) > 0 {
				continue // its own count, not that of others of its group: "Short bench, seats two"
			}
			n.First = false // "two batteries" are true of a cot, which is one
			p.numbers = append(p.numbers, n)
		}
		p.entries = append(p.entries, line.curated())
		p.learnKinds(line)
		p.learnEvery(line, false)
		if len(strings.Fields(t)) > longestPhrase {
			p.loose = append(p.loose, len(p.entries)-1)
		}
		if len(line.words) <= longestPhrase && len(line.tokens) > 0 && line.tokens[0].Kind == claims.Not &&
			!slices.ContainsFunc(line.words, func(w string) bool { return slices.Contains(p.spec, w) }) {
			free = append(free, line.words...) // "not welded"
			continue
		}
		for _, w := range line.all {
			p.words[w], p.core[w] = true, true
		}
	}
	for _, w := range free {
		p.never[w] = p.never[w] || !p.words[w]
	}
	for _, t := range a.Never {
		list := stems(t)
		for _, w := range list {
			p.never[w] = true
		}
		if len(list) > 1 {
			p.unsaid = append(p.unsaid, list)
		}
	}
	for w := range p.never {
		if !slices.Contains(p.label, w) && !slices.Contains(p.spec, w) { // only its group says so
			delete(p.words, w)
			delete(p.core, w)
		}
	}
}

// learnKinds takes in what a text says that the thing has. Whether it is free of all kinds of that is not known.
func (p *profile) learnKinds(x *taught) {
	if claims.Ruled(x.tokens) || len(x.words) > longestPhrase {
		return
	}
	for _, t := range x.tokens {
		if t.Kind == claims.Word && t.Role == claims.Companion {
			if p.another == nil {
				p.another = map[string]bool{}
			}
			p.another[t.Word] = true
		}
	}
}

func (v *vocabulary) add(p *profile) {
	for w := range p.words {
		v.with[w] = append(v.with[w], len(v.list))
	}
	for w := range p.never {
		v.lacking[w] = append(v.lacking[w], len(v.list))
	}
	v.list = append(v.list, *p)
}

// telling is how much a word says of what is meant.
func (v *vocabulary) telling(w string) float64 {
	if x, ok := v.idf[w]; ok {
		return x
	}
	return math.Log(1 + float64(len(v.list)))
}

// named reports whether words speak of a thing: by one of its names, or by most of
// its label.
func (v *vocabulary) named(p *profile, has bag) bool {
	return slices.ContainsFunc(p.nameIDs, has.hasAll) || p.tells.share(has) >= mostOfLabel ||
		p.says.share(has) >= mostOfSpec
}

// ownName reports whether words hold a name that a thing does not share with its group.
func (p *profile) ownName(has bag) bool { return slices.ContainsFunc(p.ownIDs, has.hasAll) }

// strange reports whether amounts alone tell a thing from its rivals, of which no other has
// one of that unit: "rear step, 1,000 lb" does not ask for the lift platform.
func (v *vocabulary) strange(p *profile, list []claims.Number, words []string, has bag) bool {
	if p.beside || p.group == "" || p.tells.share(has) >= halfLabel || p.ownName(has) {
		return false
	}
	return slices.ContainsFunc(list, func(n claims.Number) bool {
		return n.Unit != "" && n.Unit != quantity.Volt && !p.tellsAmount(n.Unit, words) && p.amounts(n.Unit) > 0 &&
			v.units[p.group+" "+n.Unit] < 2
	})
}

// tellsAmount reports whether a clause of a thing's sentence that has an amount of a unit says most of
// some words, so that it is what they speak of: "lowers the loading height by 4 in when the door opens".
func (p *profile) tellsAmount(unit string, words []string) bool {
	return slices.ContainsFunc(p.entries, func(e entry) bool {
		said := 0
		for _, w := range words {
			if r := e[w]; r != 0 && (r != claims.AnyRole || len(e) <= longestPhrase) {
				said++
			}
		}
		return e[amountOf+unit] != 0 && said >= leastSaid
	})
}

// leastSaid is how many words of a clause a line holds that speaks of its amount.
const leastSaid = 2

// allUnits are the units of the amounts of a thing that a unit can be built with.
func (p *profile) allUnits() []string {
	var out []string
	for _, n := range p.numbers {
		if !p.kept && !slices.Contains(out, n.Unit) {
			out = append(out, n.Unit)
		}
	}
	return out
}

// mostOfLabel is the share of a label's telling words by which a thing is named, and
// mostOfSpec that of its sentence.
const (
	mostOfLabel = 0.8
	mostOfSpec  = 0.6
)

// telling is how much each of some words tells, and all of them.
type telling struct {
	ids   []int32
	each  []float64
	whole float64
}

func (v *vocabulary) tellingOf(words []string) telling {
	t := telling{ids: v.numbered(words), each: make([]float64, len(words))}
	for i, w := range words {
		t.each[i] = v.telling(w)
		t.whole += t.each[i]
	}
	return t
}

// share is how much of what some words tell others hold: of a label, by how telling its words are.
func (t *telling) share(has bag) float64 {
	part := 0.0
	for i, id := range t.ids {
		if has.has(id) {
			part += t.each[i]
		}
	}
	if t.whole == 0 {
		return 0
	}
	return part / t.whole
}
