package bid

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/bid/terms"
	"boxwright/pricing/quote"
)

// claim is one thing that a line asks for: an amount of a figure, or something the
// catalogue offers.
type claim struct {
	gauge  *gauge
	want   float64
	sense  config.Sense
	most   float64 // of a range, that begins at want; 0 of none
	stated bool    // the line says how the amount binds
	beyond bool    // the amount itself does not do: "more than"
	whole  bool    // the figure is of more than the line speaks of: of the oxygen, not what is usable of it
	unit   string  // of a time of delivery
	day    config.Date

	same  []string      // what is offered just so, the likeliest first
	more  []string      // what is offered and exceeds it
	also  []string      // what else is offered of which all is true, under another name
	maybe []string      // what may have what is asked for, though that cannot be told
	short []string      // what is offered and falls short of it by an amount
	by    claims.Number // the amount that they fall short of
	// silent is what else is offered of which all is true but the amount, and that says nothing of it
	silent []string
	qty    int // asked for; 0 when not said

	tokens  []claims.Token // that a claim on things was read from
	words   []string
	plain   []string // those that say no trait
	numbers []claims.Number
	room    *roomAsk    // of the size of compartments
	outlets *outletKind // of a number of outlets
}

// reading is what a line was read as. It depends on the catalogue alone.
type reading struct {
	claims  []claim
	unread  []string // words of pieces that were not read
	apart   bool     // what was not read stands in a sentence of its own
	matches []string // what the line may ask for, the likeliest first
	term    string   // the term of the bid that it is; empty when it is none
	strong  bool     // it is that whatever else it holds
	permits bool     // it only allows what it speaks of
	chooses bool     // it offers a choice, or makes a condition
	sums    bool     // it asks for the sum of several amounts
	pieces  []told   // in the order of the line
}

// told is a piece of a line in its words.
type told struct {
	text  string
	claim int // among those of the line; unreadPiece where it was not read, asksNothing where it asks for nothing
}

const (
	unreadPiece = -1 - iota
	asksNothing
)

// Bounds of the reading of one line.
const (
	mostPieces   = 24 // a line of more is read in part
	mostTogether = 8  // pieces that are read as one claim
	mostMatches  = 8
	mostRead     = 4 * quote.MaxRequirements // lines that an edition remembers
)

// readLine reads a line, once for the edition.
func (v *vocabulary) readLine(text string) *reading {
	if r, known := v.read[text]; known {
		return r
	}
	if len(v.read) >= mostRead {
		clear(v.read)
	}
	line := claims.Read(text)
	tokens := line.Tokens
	r := v.reading(text, tokens)
	if len(r.unread) > 0 {
		if o, ok := v.labeled(text, tokens); ok {
			r = o
		}
	}
	r.permits, r.chooses, r.sums = line.Permits, line.Chooses, line.Sums
	sized := measured(tokens)
	if r.term, r.strong = terms.Of(text); !r.strong && sized {
		r.term = "" // "lowest tread 17 in. off the ground"
	} else if r.term == "" && len(r.claims) == 0 && !sized {
		r.term = terms.General(text)
	}
	v.read[text] = r
	return r
}

// labeled reads a line that begins with a label by what stands behind that alone, "Engine fuel: diesel", where
// all of it asks for things of one group and the label speaks of no other.
func (v *vocabulary) labeled(text string, tokens []claims.Token) (*reading, bool) {
	at := slices.IndexFunc(tokens, func(t claims.Token) bool { return t.Kind != claims.Word })
	if at < 1 || !tokens[at].Opens() {
		return nil, false
	}
	r := v.reading(text, tokens[at+1:])
	if len(r.unread) > 0 || len(r.claims) == 0 {
		return nil, false
	}
	group := v.groupOf(&r.claims[0])
	for i := range r.claims {
		if c := &r.claims[i]; group == "" || v.groupOf(c) != group || !v.mayBeCalled(c, claims.Words(tokens[:at])) {
			return nil, false
		}
	}
	return r, true
}

// mayBeCalled reports whether each of some words is said of a thing of the group of what a claim asks for, and a
// place, a material or a color among them of just that.
func (v *vocabulary) mayBeCalled(c *claim, words []string) bool {
	group := v.groupOf(c)
	return !slices.ContainsFunc(words, func(w string) bool {
		own := qualities[w] || oppositePlaces[w]
		if w == verification {
			return false
		}
		return !slices.ContainsFunc(v.list, func(p profile) bool {
			return p.group == group && !p.kept && (p.words[w] || slices.ContainsFunc(p.names, func(n []string) bool {
				return slices.Contains(n, w)
			})) && (!own || slices.Contains(slices.Concat(c.same, c.more, c.short), p.id))
		})
	})
}

// verification may stand in any label, "Weight verification: certified scale ticket".
var verification = stems("verification")[0]

// measured reports whether a line holds an amount of something that can be measured on a
// unit.
func measured(tokens []claims.Token) bool {
	return slices.ContainsFunc(claims.Numbers(tokens), func(n claims.Number) bool {
		switch n.Unit {
		case "", claims.Money, claims.Days, quantity.Day, claims.Month, quantity.Percent, quantity.Hour,
			quantity.Minute,
			claims.Mile:
			return false
		}
		return true
	})
}

// piece is part of a line between two places where a claim may end.
type piece struct {
	tokens []claims.Token
	from   int  // in the text of the line
	to     int  // where it ends there
	stop   bool // a sentence ends behind it
	half   bool // only by a semicolon
	opens  bool // a colon stands before it
	with   bool // it is said to be part of what went before
	adds   bool // no comma parts it from that
	clause bool // it is a clause on that: "that runs on the shore line"
	apart  bool // a comma stands before it, with whatever behind
}

func pieces(list []claims.Token) []piece {
	var out []piece
	var p piece
	part := 0 // brackets begin none
	all := make([]claims.Token, 0, len(list))
	end := func(stop, half bool) {
		if p.tokens != nil {
			p.stop, p.half = stop, half
			out = append(out, p)
		} else if stop && out != nil {
			out[len(out)-1].stop = true
		}
	}
	for i := range list {
		switch t := &list[i]; t.Kind {
		case claims.Break, claims.Stop:
			end(t.Kind == claims.Stop, t.Half())
			if !t.Bracket() {
				part = len(out)
			}
			from := max(t.End, p.to)
			p = piece{with: t.Attaches(), adds: t.Adds(), opens: t.Opens(), clause: t.Relates(),
				apart: t.Comma() || p.tokens == nil && p.apart, from: from, to: from}
		default:
			all = append(all, *t)
			all[len(all)-1].Part = part
			n := len(p.tokens) + 1
			p.tokens, p.to = all[len(all)-n:len(all):len(all)], max(t.End, p.to)
		}
	}
	end(true, false)
	return out
}

// reading finds the parting of a line into claims that leaves the fewest words unread, of those the one with the
// fewest claims that nothing offered reaches, and of those the one with the fewest claims. What is left over is
// then read with what the line speaks of, and what is claimed of something else is taken out.
func (v *vocabulary) reading(text string, tokens []claims.Token) *reading {
	r := &reading{}
	all := pieces(v.known(tokens))
	if len(all) > mostPieces {
		for _, p := range all[mostPieces:] {
			r.unread = append(r.unread, claims.Words(p.tokens)...)
		}
		all = all[:mostPieces]
	}
	n := len(all)
	type best struct {
		unread, short, parts int // words not read, claims that nothing offered reaches, claims
		from                 int
		claim                *claim
	}
	worse := func(a, b best) bool {
		return cmp.Or(cmp.Compare(a.unread, b.unread), cmp.Compare(a.short, b.short),
			cmp.Compare(a.parts, b.parts)) >= 0
	}
	at := make([]best, n+1)
	for i := 1; i <= n; i++ {
		at[i] = best{at[i-1].unread + len(all[i-1].tokens), at[i-1].short, at[i-1].parts, i - 1, nil}
		for j := i - 1; j >= max(0, i-mostTogether); j-- {
			b := best{unread: at[j].unread, short: at[j].short, parts: at[j].parts + 1, from: j}
			if worse(b, at[i]) {
				continue
			}
			together := joined(all[j:i])
			if claims.Instead(together) {
				continue // it only says what is not to be there
			}
			if c, ok := v.claimOf(together); ok {
				b.claim = &c
				if c.short != nil {
					b.short++
				}
				if !worse(b, at[i]) {
					at[i] = b
				}
			}
		}
	}
	of := make([]*claim, n) // by the piece
	for i := n; i > 0; i = at[i].from {
		for k := at[i].from; k < i; k++ {
			of[k] = at[i].claim
		}
	}
	bareSizes(of)
	v.vacuous(all, of)
	v.attached(all, of)
	v.itsOwn(all, of)
	for i, c := range slices.Clone(of) {
		if c == nil && !v.rulesOutRivals(all[i].tokens, of) {
			if c, ok := v.inContext(all, of, i); ok {
				of[i] = &c
			}
		}
	}
	v.ofUnread(all, of)
	v.ofHead(all, of)
	v.narrowed(all, of)
	read := make([]bool, n)
	head := -1 // the claim on what is to have an amount that the one behind it falls short of; below zero of none
	for i, c := range of {
		read[i] = true
		switch {
		case c == nil && v.rulesOutRivals(all[i].tokens, of):
			r.pieces = append(r.pieces, newTold(text[all[i].from:all[i].to], asksNothing))
			continue
		case c == nil:
			read[i] = false
			r.pieces = append(r.pieces, newTold(text[all[i].from:all[i].to], unreadPiece))
			continue
		case i > 0 && of[i-1] == c:
		default:
			head = -1
			if h, ok := v.withoutAmount(c, all, of); ok {
				head, r.claims = len(r.claims), append(r.claims, h)
			}
			r.claims = append(r.claims, *c)
		}
		r.pieces = append(r.pieces, v.toldApart(c, all[i], text, head, len(r.claims)-1)...)
	}
	var rival []string
	r.claims, rival = v.together(r.claims, r.pieces)
	r.unread = append(r.unread, rival...)
	r.apart = rival == nil
	for i, p := range all {
		if read[i] {
			continue
		}
		for _, t := range p.tokens {
			if t.Kind == claims.Word {
				r.unread = append(r.unread, t.Word)
			} else {
				r.unread = append(r.unread, "#")
			}
		}
		if !p.stop && i+1 < n && read[i+1] || i > 0 && read[i-1] && !all[i-1].stop {
			r.apart = false
		}
	}
	if len(r.unread) > 0 || len(r.claims) == 0 {
		r.matches = v.suggest(tokens)
	} else if c := &r.claims[0]; !slices.ContainsFunc(r.claims, func(o claim) bool {
		return v.groupOf(&o) != v.groupOf(c)
	}) {
		r.matches = slices.Concat(c.same, c.more, c.short)
		r.matches = r.matches[:min(len(r.matches), mostMatches)]
	}
	return r
}

// joined are the tokens of pieces that are read as one claim. Where one of them rules
// something out, a break is left between them, so that it can be told how far that goes.
func joined(list []piece) []claims.Token {
	if len(list) == 1 {
		return list[0].tokens
	}
	many := len(list)
	for i := range list {
		many += len(list[i].tokens)
	}
	out := make([]claims.Token, 0, many)
	ruled := slices.ContainsFunc(list, func(p piece) bool { return claims.Ruled(p.tokens) })
	for i, p := range list {
		if ruled && i > 0 {
			out = append(out, claims.Token{Kind: claims.Break})
		}
		out = append(out, p.tokens...)
	}
	return out
}

// rulesOutRivals reports whether a piece only rules out what the things that a claim of
// the same line asks for stand in the place of: "roll-up doors, no hinged ones".
func (v *vocabulary) rulesOutRivals(tokens []claims.Token, list []*claim) bool {
	words := v.loud(claims.Words(tokens))
	if !claims.Ruled(tokens) || len(words) == 0 || len(claims.Numbers(tokens)) > 0 {
		return false
	}
	usual := claims.Instead(tokens) && slices.ContainsFunc(words, func(w string) bool { return customary[w] })
	return slices.ContainsFunc(list, func(c *claim) bool {
		if c == nil || len(c.same)+len(c.more) == 0 {
			return false
		}
		if usual && !slices.ContainsFunc(words, func(w string) bool {
			return !customary[w] && !slices.ContainsFunc(v.list, func(p profile) bool {
				return p.group == v.groupOf(c) && p.words[w]
			})
		}) {
			return true // "in lieu of the customary spacing"
		}
		asked := slices.Concat(c.same, c.more)
		group := v.byID[asked[0]].group
		if slices.ContainsFunc(words, func(w string) bool { return v.otherPoints(asked, w) }) {
			return true
		}
		for _, id := range asked {
			p := v.byID[id]
			if p.group != group || p.beside ||
				!claims.Instead(tokens) && !slices.ContainsFunc(words, func(w string) bool { return !p.words[w] }) {
				return false
			}
		}
		return slices.ContainsFunc(v.list, func(p profile) bool {
			return p.group == group && !slices.Contains(asked, p.id) &&
				!slices.ContainsFunc(words, func(w string) bool { return !p.words[w] })
		})
	})
}

// otherPoints reports whether a word is a kind of belt by its points, "2point", and some things are all of
// another.
func (v *vocabulary) otherPoints(ids []string, word string) bool {
	return strings.HasSuffix(word, "point") && !slices.ContainsFunc(ids, func(id string) bool {
		p := v.byID[id]
		return p.words[word] || !slices.ContainsFunc(slices.Concat(p.label, p.spec), func(w string) bool {
			return strings.HasSuffix(w, "point")
		}) && !p.words[threePoint]
	})
}

var threePoint = stems("3point")[0]

// customary are words for what is had where nothing is said.
var customary = wordSet("customary usual normal conventional ordinary stock factory regular typical")

// claimOf reads tokens as one claim; false when a word or an amount of them is not
// accounted for.
func (v *vocabulary) claimOf(tokens []claims.Token) (claim, bool) {
	if c, ok := v.plainClaim(tokens); ok && !v.halfRuledOut(&c, tokens) {
		return c, true
	}
	if claims.Ruled(tokens) { // "no a or b": neither will do
		both := slices.DeleteFunc(slices.Clone(tokens), func(t claims.Token) bool { return t.Kind == claims.Or })
		c, ok := v.plainClaim(both)
		return c, ok && !v.halfRuledOut(&c, tokens)
	}
	for i, t := range tokens { // "a or b": either will do
		if t.Kind != claims.Or || i > 0 && settings[tokens[i-1].Word] {
			continue // whoever names two places may mean both
		}
		for _, drop := range [][2]int{{i, i + 2}, {i - 1, i + 1}} {
			if drop[0] < 0 || drop[1] > len(tokens) {
				continue
			}
			if c, ok := v.plainClaim(slices.Delete(slices.Clone(tokens), drop[0], drop[1])); ok {
				return c, true
			}
		}
	}
	return claim{}, false
}

// settings are the places that a thing may be set to.
var settings = wordSet("center middle streetside curbside")

// namedBy reports whether words hold a whole name of a thing.
func (p *profile) namedBy(words []string) bool {
	return slices.ContainsFunc(p.names, func(n []string) bool {
		return !slices.ContainsFunc(n, func(w string) bool { return !slices.Contains(words, w) })
	})
}

// halfRuledOut reports whether tokens rule out either of two things of which what a claim asks for is free of
// only one: "no aluminum or wood" of aluminum cabinets.
func (v *vocabulary) halfRuledOut(c *claim, tokens []claims.Token) bool {
	for i := 1; i+1 < len(tokens) && claims.Ruled(tokens); i++ {
		if tokens[i].Kind == claims.Or && tokens[i-1].Kind == claims.Word && tokens[i+1].Kind == claims.Word &&
			slices.ContainsFunc(slices.Concat(c.same, c.more), func(id string) bool {
				p := v.byID[id]
				return p.never[tokens[i-1].Word] != p.never[tokens[i+1].Word]
			}) {
			return true
		}
	}
	return false
}

// plainClaim reads tokens as they stand or, where that tells nothing, without what only leads to other words.
func (v *vocabulary) plainClaim(tokens []claims.Token) (claim, bool) {
	c, ok := v.literally(tokens)
	if plainer, can := claims.Plainer(tokens); !ok && can {
		return v.literally(plainer)
	}
	return c, ok
}

func (v *vocabulary) literally(tokens []claims.Token) (claim, bool) {
	if onlyWhere(tokens) {
		return claim{}, false
	}
	words, list := wordsAndNumbers(tokens)
	not := claims.Ruled(tokens)
	day, dated := claims.DayOf(tokens)
	if !slices.ContainsFunc(words, func(w string) bool { return w != completeWord }) {
		return alone(list)
	}
	has := slices.Clone(words)
	for _, n := range list {
		if n.Of != "" {
			has = append(has, dimensionStem[n.Of])
		}
	}
	for _, i := range gaugesOf(words) {
		g := &readyGauges[i]
		if not && g.code != ratioScene {
			continue
		}
		if c, ok := g.asks(tokens, words, list, day, has); ok {
			return c, true
		}
	}
	if dated {
		return claim{}, false
	}
	if c, ok := roomClaim(words, list); ok && !not {
		return c, true
	}
	if spareGeneration(words) || powersEach(tokens, list) {
		return claim{}, false
	}
	if c, ok := v.offered(tokens, has); ok {
		if c.short != nil && c.by.Unit == "" { // there are more of it elsewhere
			if o, ok := outletClaim(words, list); ok {
				return o, ok
			}
		}
		return c, ok
	}
	if not {
		return v.without(words, list, tokens)
	}
	if slices.ContainsFunc(words, func(w string) bool { return harder[w] || lessens[w] }) {
		c, ok := v.plainClaim(slices.DeleteFunc(slices.Clone(tokens), func(t claims.Token) bool {
			return t.Kind == claims.Word && (harder[t.Word] || lessens[t.Word])
		}))
		if ok && c.short != nil { // without them it falls short, and all the more with them
			c.tokens = nil
			return c, true
		}
		if ok && c.gauge != nil && c.sense == atLeast && c.most == 0 &&
			!slices.ContainsFunc(words, func(w string) bool { return harder[w] }) {
			c.whole = true
			return c, true
		}
	}
	return outletClaim(words, list)
}

// spareGeneration reports whether words ask what the alternator has left, which none tells of itself.
func spareGeneration(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return generators[w] }) &&
		slices.ContainsFunc(words, func(w string) bool { return leaving[w] })
}

var generators, leaving = wordSet("generating alternator"), wordSet("remain remaining reserve spare")

// powersEach reports whether each of several is to have a current or a power, "1,000 W to each receptacle".
func powersEach(tokens []claims.Token, list []claims.Number) bool {
	at := slices.IndexFunc(tokens, func(t claims.Token) bool { return t.Word == everyWord })
	source := slices.ContainsFunc(tokens, func(t claims.Token) bool { return sources[t.Word] })
	return (source || at >= 0 && at+1 < len(tokens) && tokens[at+1].Role&claims.Located != 0) &&
		slices.ContainsFunc(list, func(n claims.Number) bool {
			return (!source || n.Each || at >= 0) && (n.Unit == quantity.Amp || n.Unit == quantity.Watt)
		})
}

// sources are things that feed several others together.
var sources = wordSet("inverter charger")

// onlyWhere reports whether tokens only say where something named before is: "one above the squad bench"
// asks for no bench.
func onlyWhere(tokens []claims.Token) bool {
	where := false
	for _, t := range tokens {
		switch {
		case t.Kind == claims.Count && t.Num.Unit == "",
			t.Kind == claims.Word && (t.Role == claims.Modifier || placing[t.Word]):
		case t.Kind == claims.Word && t.Role&(claims.Located|claims.Companion) == claims.Located:
			where = true
		default:
			return false
		}
	}
	return where
}

// placing are words behind which stands where something is.
var placing = wordSet("over above under below beneath beside behind near")

// harder are words that make what is asked for harder to reach, whatever it is.
var harder = wordSet("unlimited mileage unconditional non-prorated each every")

// lessens are words for a part of what a figure is of: none is more than the whole.
var lessens = wordSet("usable net")

// without reads tokens that only rule something out, "no plywood": where no more than one group has
// things of that, they ask for one of it that is free of it.
func (v *vocabulary) without(words []string, list []claims.Number, tokens []claims.Token) (claim, bool) {
	ruled, group := claims.RuledWords(tokens), ""
	if len(list) > 0 || len(ruled.Before) > 0 {
		return claim{}, false
	}
	words = v.loud(words)
	for i := range v.list {
		p := &v.list[i]
		if p.kept || !slices.ContainsFunc(words, func(w string) bool { return p.words[w] }) {
			continue
		}
		if p.beside || p.group == "" || group != "" && group != p.group {
			return claim{}, false
		}
		group = p.group
	}
	c := claim{words: words, plain: words}
	for i := range v.list {
		p := &v.list[i]
		if p.group == group && !p.kept && !slices.ContainsFunc(words, func(w string) bool { return !p.never[w] }) {
			c.same = append(c.same, p.id)
		}
	}
	return c, group != "" && c.same != nil
}

// wordsAndNumbers are those of tokens, less words that only compare an amount with what a
// purchaser has.
func wordsAndNumbers(tokens []claims.Token) ([]string, []claims.Number) {
	words, list := claims.Words(tokens), claims.Numbers(tokens)
	if slices.ContainsFunc(list, func(n claims.Number) bool { return n.Unit != "" }) {
		words = slices.DeleteFunc(words, func(w string) bool { return greater[w] && len(words) > 1 })
	}
	return words, list
}

// completeWord may stand beside the price of the whole: "under $270k complete".
var completeWord = stems("complete")[0]

// greater are words of comparison with what a purchaser has, which an amount beside them
// says better: "bigger alternator, 320 A".
var greater = wordSet("big bigger large larger heavier strong stronger upgraded")

// measures are words without those that only say of what dimension an amount is.
func measures(words []string, list []claims.Number) []string {
	out := slices.DeleteFunc(slices.Clone(words), func(w string) bool {
		of := claims.DimensionOf(w)
		return of != "" && slices.ContainsFunc(list, func(n claims.Number) bool { return n.Of == of })
	})
	if len(out) == 0 {
		return words
	}
	return out
}

// offered finds what the catalogue offers of which every word and amount is true.
func (v *vocabulary) offered(tokens []claims.Token, holds []string) (claim, bool) {
	ruled := claims.RuledWords(tokens)
	not := ruled != nil
	type found struct {
		p    *profile
		like float64
		in   int // of the variants of the claim
	}
	var same, more, short, also, silent []found
	var by claims.Number
	unclear := false
	var maybe []string
	variants, traits := v.variants(tokens)
	if variants == nil {
		return claim{}, false
	}
	has, all := v.bagOf(holds), claims.Words(tokens)
	placed := slices.ContainsFunc(all, func(w string) bool { return oppositePlaces[w] })
	type said struct {
		words []string
		list  []claims.Number
	}
	sayings := make([]said, len(variants))
	done := make([]bool, len(v.list))
	for k, x := range variants {
		words, list := wordsAndNumbers(x.tokens)
		words = measures(words, list)
		sayings[k] = said{words, list}
		for _, i := range v.having(words, not, x.of) {
			p := &v.list[i]
			if p.kept || traits[i] < 0 || done[i] {
				continue
			}
			done[i] = true
			if not != p.lack && !(not && v.free(p, words, ruled)) || not && p.lack && p.namedBy(ruled.Before) {
				continue // "a bench, no belts" does not ask for no bench
			}
			if !not && slices.ContainsFunc(words, func(w string) bool { return p.instead[w] }) {
				continue // who asks for a bench does not ask for what takes its place
			}
			if !v.named(p, has) {
				if fit, _ := p.fits(list); fit == exact {
					also = append(also, found{p, p.tells.share(has), k})
				}
				continue
			}
			f := found{p, p.tells.share(has), k}
			if !not && (p.byTheWay(x.tokens, f.like) || p.mixes(words) || !placed && p.mixes(all)) ||
				p.id != v.sure && v.strange(p, list, words, has) {
				continue
			}
			fit, missing := p.fits(list)
			if !not && (p.ofMore(tokens) || p.onlyPrepares(all) || p.weldsMetal(all) ||
				!(v.accounts(p, x.tokens) && p.saysWhere(tokens, x.tokens))) {
				if fit == exact || fit == exceeds { // it may be what is meant
					unclear, maybe = true, append(maybe, p.id)
				}
				continue
			}
			switch fit {
			case exact:
				same = append(same, f)
			case exceeds:
				more = append(more, f)
			case falls:
				short, by = append(short, f), missing
			case untold:
				unclear, maybe = true, append(maybe, p.id)
			case misses:
				if !p.tellsOf(missing) {
					silent = append(silent, f)
				}
			}
		}
	}
	order := func(list []found) []string {
		slices.SortStableFunc(list, func(a, b found) int { return cmp.Compare(b.like, a.like) })
		var out []string
		for _, f := range list {
			out = append(out, f.p.id)
		}
		return out
	}
	best := 0.0
	for _, f := range slices.Concat(same, more) {
		best = max(best, f.like)
	}
	also = slices.DeleteFunc(also, func(f found) bool { return f.like < best-asLike })
	c := claim{same: order(same), more: order(more), also: order(also), maybe: maybe, tokens: tokens}
	in := sayings[len(sayings)-1]
	c.words = in.words
	if of := slices.Concat(same, more, short); len(of) > 0 {
		in = sayings[of[0].in]
	}
	words, list := in.words, in.list
	c.plain, c.numbers = words, list
	if c.same == nil && c.more == nil {
		unclear = unclear || len(short) > 0 && slices.ContainsFunc(sayings, func(s said) bool {
			return slices.ContainsFunc(v.having(s.words, not, v.every), func(i int) bool {
				return traits[i] < 0 && !v.list[i].kept // what has another trait may be meant
			})
		})
		// Of what may stand beside other things an amount tells too little, unless it is called by its own name.
		all := len(short)
		short = slices.DeleteFunc(short, func(f found) bool { return f.p.beside && v.nameIn(f.p, has) == nil })
		unclear = unclear || by.Unit == "" && len(short) < all || slices.ContainsFunc(short, func(f found) bool {
			return v.mayReach(f.p, has, tokens, list, by)
		})
		if len(short) == 0 || not || unclear {
			return claim{}, false
		}
		c.short, c.by, c.silent = order(short), by, order(silent)
	}
	for _, n := range list {
		if n.Unit == "" && n.Value > 1 {
			for _, f := range same {
				if int(n.Value) <= f.p.most {
					c.qty = int(n.Value)
				}
			}
		}
	}
	return c, true
}

// reaches reports whether a thing has the amounts that others fall short of, so that it may be
// what a line means though not all words were understood.
func (v *vocabulary) reaches(p *profile, words []string, list []claims.Number) bool {
	if slices.ContainsFunc(words, func(w string) bool { return p.never[w] }) {
		return false
	}
	return !slices.ContainsFunc(list, func(n claims.Number) bool {
		n = p.inOwnUnit(n)
		said := n.Of != "" && slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
			return x.Unit == n.Unit && x.Of == n.Of
		})
		return !slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
			switch {
			case x.Unit != n.Unit, said && x.Of != n.Of:
				return false
			case n.Sense == atMost:
				return x.Value <= n.Value
			}
			return x.Value >= n.Value
		})
	})
}

// halfLabel is the share of a label from which a line speaks of just that thing.
const halfLabel = 0.5

// asLike is how much less like the line a thing may be that it means as well.
const asLike = 0.1

// byTheWay reports whether a quality that the words ask for is only that of a part of a
// thing, such as the aluminum edges of plywood cabinets, and the words do not speak of
// that part.
func (p *profile) byTheWay(tokens []claims.Token, like float64) bool {
	words := claims.Words(tokens)
	if !slices.ContainsFunc(words, func(w string) bool { return qualities[w] }) {
		return false
	}
	list := slices.DeleteFunc(slices.Clone(tokens), func(t claims.Token) bool { return t.Kind != claims.Word })
	// "Aluminum tread plate aisle with vinyl sides" is no aluminum floor.
	mixed := like < halfLabel && slices.ContainsFunc(p.label, func(w string) bool {
		return qualities[w] && w != "steel" && w != "brush" && !slices.Contains(words, w)
	})
	for i, w := range words {
		if !qualities[w] {
			continue
		}
		ahead := i+1 < len(list) && list[i+1].Part == list[i].Part && p.pairs[w+" "+words[i+1]]
		if (p.ofPart(w) || p.core[w] && mixed) && !ahead {
			return true
		}
		// "threshold of stainless steel"
		of := i > 0 && list[i-1].Part == list[i].Part && p.pairs[w+" "+words[i-1]]
		if !p.core[w] && p.words[w] && !ahead && !of {
			return true
		}
	}
	return false
}

// ofPart reports whether a thing has a material or color only in what it comes with: "panels with aluminum
// joints".
func (p *profile) ofPart(quality string) bool {
	if p.told[quality] {
		return false
	}
	with := false
	for i, made := range p.makes {
		if slices.Contains(made, quality) {
			if !p.comesWith[i] {
				return false
			}
			with = true
		}
	}
	return with
}

// mixes reports whether a thing has another color beside the one that all of it is to have:
// "all blue" is not red and blue.
func (p *profile) mixes(words []string) bool {
	some := 0
	for _, w := range words {
		if colors[w] {
			some++
		}
	}
	for i, w := range words {
		if colors[w] && (i > 0 && words[i-1] == everyWord || i+1 < len(words) && words[i+1] == "only") &&
			!slices.Contains(p.label, w) {
			return true // it has that color in a part
		}
		if !colors[w] || !(i > 0 && words[i-1] == everyWord || i+1 < len(words) && words[i+1] == "only" ||
			some == 1 && slices.ContainsFunc(words, func(w string) bool { return oppositePlaces[w] })) {
			continue
		}
		for c := range colors {
			if c != w && (slices.Contains(p.label, c) || slices.Contains(p.spec, c)) && !slices.Contains(words, c) {
				return true
			}
		}
	}
	return false
}

// colors are those of lamps and paint.
var colors = wordSet("white red blue amber green black gold yellow clear")

// qualities are materials and colors, which a sentence may say of a part.
var qualities = func() map[string]bool {
	out := map[string]bool{}
	for _, w := range stems("aluminum steel stainless wood plywood fiberglass composite plastic rubber vinyl " +
		"acrylic polycarbonate copper brass chrome nylon leather white black red blue amber gray green gold sand " +
		"navy burgundy charcoal orange brushed") {
		out[w] = true
	}
	return out
}()

// free reports whether a thing is what a line that rules something out leaves: it is
// free of some of the words that are ruled out, and all others are true of it.
func (v *vocabulary) free(p *profile, words []string, ruled *claims.Ruling) bool {
	never := false
	for _, w := range v.loud(words) {
		switch {
		case p.never[w] && !slices.Contains(ruled.Before, w):
			never = never || slices.Contains(ruled.Out, w)
		case !p.words[w]:
			return false
		}
	}
	return never
}

// having are those among some things of which all words are true, or, where something is ruled
// out, at least one.
func (v *vocabulary) having(words []string, not bool, among []int) []int {
	if len(words) == 0 { // traits said it all
		return among
	}
	words = v.loud(words)
	lists := make([][]int, 0, len(words)+1)
	for _, w := range words {
		list := v.with[w]
		if lacking := v.lacking[w]; not && lacking != nil {
			list = slices.Concat(list, lacking)
			slices.Sort(list)
			list = slices.Compact(list)
		}
		lists = append(lists, list)
	}
	lists = append(lists, among)
	var out []int
	for _, i := range shortestOf(lists) {
		if inAll(lists, i) {
			out = append(out, i)
		}
	}
	return out
}

// How the amounts of a line fit a thing.
const (
	misses = iota
	untold // which of its amounts is meant cannot be told
	exact
	exceeds
	falls
)

// ratings are the units in which more is better: who offers more than was asked for complies.
var ratings = map[string]bool{quantity.Amp: true, quantity.Watt: true, quantity.AmpHour: true, quantity.Pound: true,
	claims.Month: true,
	claims.Mile:  true, claims.BTU: true, quantity.CubicFoot: true, claims.Milli: true}

// fits holds amounts against those of a thing. When just one falls short it is named.
func (p *profile) fits(list []claims.Number) (fit int, missing claims.Number) {
	fit = exact
	list = p.bounded(list)
	falling := false
	for i, n := range list {
		if n.Each && p.words[togetherWord] || n.Apiece && p.most < 2 && p.hasForAll(n.Unit) {
			return misses, n
		}
		if p.secondOf(list[:i], n) {
			return misses, n
		}
		switch p.has(n) {
		case exact:
		case exceeds:
			fit = max(fit, exceeds)
		case untold:
			return untold, n
		case falls:
			if falling {
				return misses, n
			}
			falling, missing = true, n
		default:
			return misses, n
		}
	}
	if falling {
		return falls, missing
	}
	return fit, missing
}

// secondOf reports whether an amount is asked of a thing beside another of its unit, of which the thing has but one:
// two amounts are not both of one measure.
func (p *profile) secondOf(list []claims.Number, n claims.Number) bool {
	return slices.ContainsFunc(list, func(x claims.Number) bool {
		return x.Unit == n.Unit && x.Value != n.Value && (x.Sense == "" || n.Sense == "" || x.Sense == n.Sense)
	}) && p.amounts(n.Unit) < 2
}

// hasForAll reports whether a thing has ratings of a unit, and none of them is that of one of several: a 200 W
// siren is not two of 100 W.
func (p *profile) hasForAll(unit string) bool {
	of := func(x claims.Number) bool { return x.Unit == unit }
	return (unit == quantity.Watt || unit == quantity.Amp) && slices.ContainsFunc(p.numbers, of) &&
		!slices.ContainsFunc(p.numbers, func(x claims.Number) bool { return of(x) && (x.Apiece || x.Each) })
}

// bounded gives the ends of a range their comparisons, unless the thing has a range of
// just these ends itself.
func (p *profile) bounded(list []claims.Number) []claims.Number {
	if !slices.ContainsFunc(list, func(n claims.Number) bool { return n.Range != claims.NoRange }) {
		return list
	}
	var out []claims.Number
	for _, n := range list {
		if n.Range != claims.NoRange && n.Sense == "" && !slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
			return x.Range == n.Range && x.Value == n.Value
		}) {
			n.Sense = map[claims.Range]config.Sense{claims.Low: atLeast, claims.High: atMost}[n.Range]
		}
		out = append(out, n)
	}
	return out
}

func (p *profile) has(n claims.Number) int {
	if n.Unit == claims.Days && n.Sense == atMost { // by when is not how long
		return misses
	}
	apparent := n.Unit == claims.VA
	n = p.inOwnUnit(n)
	below, above, within, unclear, bare, volts := false, false, false, false, 0, 0
	known := false     // the line and the thing say of what dimension they speak
	unlike := true     // it is of none that it is said to be of, and unlike all of them
	atLeastSo := false // the thing has no less than it says
	several := n.Unit != "" && p.amounts(n.Unit) > 1
	sided := n.Unit == "" && slices.Contains(n.Near, perSide) && slices.ContainsFunc(p.numbers, onEachSide)
	for _, x := range p.numbers {
		if x.Unit == "" {
			bare++
		}
		if x.Unit == quantity.Volt {
			volts++
		}
		if n.Unit == "" && n.Value < 1 && x.Value == n.Value {
			return exact // ".090 aluminum", inches as everybody knows
		}
		if x.Unit != n.Unit {
			continue
		}
		if sided && !onEachSide(x) {
			continue // "four on each side" is not four in all
		}
		if n.Of == "height" && x.Of == "" && x.Value != n.Value {
			continue // "58 in high" is not asked of a clear width
		}
		if n.Unit == "" && (!counts(x, n.Counted()) || p.countsOther(x, n)) || n.Of != "" && x.Of != "" && n.Of != x.Of {
			continue
		}
		if several && n.Of != "" && x.Of == "" {
			unclear = unclear || n.Sense == atLeast && x.Value >= n.Value || n.Sense == atMost && x.Value <= n.Value
			continue // which of its dimensions that is cannot be told
		}
		known = known || n.Of != "" && n.Of == x.Of
		unlike = unlike && n.Unit == quantity.Inch && (n.Of == "" || n.Of != x.Of) &&
			max(n.Value, x.Value) > mostUnlike*min(n.Value, x.Value)
		near := math.Abs(x.Value-n.Value) <= 0.005*n.Value || n.Nominal(x.Value) || n.Unit == quantity.Volt &&
			claims.SameVolts(x.Value, n.Value)
		switch {
		case near && n.Beyond:
			above, below = above || n.Sense == atMost, below || n.Sense == atLeast
		case near:
			return exact
		case n.Sense == atLeast && x.Value > n.Value, n.Sense == atMost && x.Value < n.Value:
			within = true
		case x.Value > n.Value:
			above = true
		default:
			below = true
			atLeastSo = atLeastSo || x.Sense == atLeast || x.Choice
			unclear = unclear || apparent && x.Value >= leastFactor*n.Value
		}
	}
	lengths := n.Unit == quantity.Inch && n.Of != "distance"
	if within && several && n.Of == "" && (above && n.Sense == atMost || below && n.Sense == atLeast) {
		return untold // it holds of one of its dimensions, and not of another
	}
	switch {
	case within:
		return exact
	case n.Unit == quantity.Volt && (n.Value == 12 || n.Value >= leastCharging && n.Value <= 14 && !p.feeds()) &&
		volts == 0 && p.wired:
		return exact // the vehicle's own voltage
	case n.Single && n.Noun() != "" && !p.ofGroupNamed(n.Noun()):
		return misses // "all on a single switch" is not each row on one
	case n.Unit == "" && n.Value == 1 && !above && !below, n.Unit == "" && n.Value > 1 && int(n.Value) <= p.most &&
		n.Value == math.Trunc(n.Value):
		return exact
	case n.Unit == "" && !above && n.Sense != atMost && n.Value < mostCounted && (below || p.counted(n)) &&
		p.countsFewer(n, sided):
		return falls
	case n.Unit == "":
		return misses
	case above && n.Sense == "" && ratings[n.Unit]:
		return exceeds
	case unclear && !known || atLeastSo && n.Sense != atMost:
		return untold
	case unlike:
		return misses
	case below && n.Sense != atMost && (ratings[n.Unit] || known || lengths && !above && !several),
		below && n.Sense == atLeast, above && n.Sense == atMost:
		return falls
	}
	return misses
}

// mostUnlike is by what factor two lengths differ at most that are of one dimension though that is not said:
// "a grab rail 60 in long" is not asked of its 1 1/4 in. Common practice, no source.
const mostUnlike = 3

// mostCounted is the bare number from which it is hardly a count: "72 bench".
const mostCounted = 25

// countsFewer reports whether a thing has a number of just what an amount counts, and all that a
// unit may hold of it are fewer.
func (p *profile) countsFewer(n claims.Number, sided bool) bool {
	most := p.mostOf(n, sided)
	return most > 0 && most < n.Value
}

// mostOf is the most that a unit may hold of what an amount counts by having a thing; 0 where the thing has
// no number of that.
func (p *profile) mostOf(n claims.Number, sided bool) float64 {
	most := 0.0
	for _, x := range p.numbers {
		if x.Unit != "" || onEachSide(x) != sided {
			continue
		}
		if slices.ContainsFunc(n.Near[:n.Behind], func(w string) bool {
			return !single[w] && (!anyThing[w] && !qualities[w] && slices.Contains(x.Near[:x.Behind], w) ||
				x.First && !p.beside && p.words[w])
		}) && !p.countsOther(x, n) {
			most = max(most, x.Value*float64(max(p.most, 1)))
		}
	}
	if !sided && p.counted(n) {
		most = max(most, float64(p.most))
	}
	return most
}

// counted reports whether an amount counts just a thing of which a unit may hold several: "six flowmeters".
func (p *profile) counted(n claims.Number) bool {
	return p.most > 1 && p.ofGroupNamed(n.Noun()) && !slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
		return x.Unit == "" && x.First && x.Noun() == n.Noun()
	})
}

// single are what a unit has one of: "two overhead" speaks of something else than its ceiling.
var single = wordSet("ceiling floor roof cab module")

// inOwnUnit is an amount in the unit in which a thing has its own, where it has none in that of
// the amount.
func (p *profile) inOwnUnit(n claims.Number) claims.Number {
	for _, c := range conversions {
		if n.Unit == c.from && p.amounts(c.from) == 0 && p.amounts(c.to) > 0 {
			n.Value, n.Unit = n.Value*c.factor, c.to
			break
		}
	}
	return n
}

// conversions are units of one kind between which a purchaser and a catalogue may differ.
// A BTU is 1055.056 J (ISO 31-4).
var conversions = []struct {
	from, to string
	factor   float64
}{{quantity.Liter, claims.Milli, 1000}, {claims.Milli, quantity.Liter, .001},
	{quantity.Watt, claims.BTU, 3600 / 1055.056}, {claims.VA, quantity.Watt, 1}}

// feeds reports whether a thing gives a voltage of its own, which is not that of the vehicle.
func (p *profile) feeds() bool {
	return slices.ContainsFunc(p.label, func(w string) bool { return sources[w] })
}

// leastCharging is the voltage from which one stands for that of a vehicle whose engine runs, common practice, no
// source.
const leastCharging = 13.5

// leastFactor is the least share of its volt-amperes that a source is taken to give in watts, common
// practice, no source: what has as many watts does, and what has a good deal fewer does not.
const leastFactor = .8

// perSide is the stem of "each side", and onEachSide says that a number counts what is there.
var perSide = stems("each side")[0]

func onEachSide(n claims.Number) bool { return n.Unit == "" && slices.Contains(n.Near, perSide) }

// amounts is how many different amounts of a unit are true of a thing.
func (p *profile) amounts(unit string) int {
	var list []float64
	for _, x := range p.numbers {
		if x.Unit == unit && !slices.Contains(list, x.Value) {
			list = append(list, x.Value)
		}
	}
	return len(list)
}

// countsOther reports whether an amount counts something of a thing that a number of it does not: three
// drawer banks are not three drawers.
func (p *profile) countsOther(x, n claims.Number) bool {
	counted := n.Counted()
	return len(counted) > 1 && slices.ContainsFunc(p.numbers, func(y claims.Number) bool {
		of := y.Noun()
		return y.Unit == "" && y.Value == x.Value && !y.First && of != "" && of != everyWord && n.Noun() != of &&
			slices.Contains(counted, of)
	})
}

// counts reports whether a number of a thing may count what words name.
func counts(x claims.Number, words []string) bool {
	things := x.Near
	if x.Behind > 0 {
		things = things[:x.Behind]
	}
	return len(words) == 0 || slices.ContainsFunc(words, func(w string) bool { return slices.Contains(things, w) })
}

// suggest ranks what a line that was not read may ask for.
func (v *vocabulary) suggest(tokens []claims.Token) []string {
	words := claims.Words(tokens)
	total := 0.0
	clear(v.hits)
	hits := v.hits
	for _, w := range words {
		t := v.telling(w)
		total += t
		for _, i := range v.with[w] {
			hits[i] += t
		}
	}
	if total == 0 {
		return nil
	}
	has := v.bagOf(words)
	type match struct {
		at    int
		score float64
	}
	var list []match
	for i, h := range hits {
		p := &v.list[i]
		if 0.7*h/total+0.3 <= leastLike || h == 0 {
			continue
		}
		if score := 0.7*h/total + 0.3*p.tells.share(has); score > leastLike && !p.kept {
			list = append(list, match{i, score})
		}
	}
	slices.SortFunc(list, func(a, b match) int {
		return cmp.Or(cmp.Compare(b.score, a.score), cmp.Compare(a.at, b.at))
	})
	var out []string
	for _, m := range list[:min(len(list), mostMatches)] {
		out = append(out, v.list[m.at].id)
	}
	return out
}

// leastLike is the likeness below which nothing is suggested.
const leastLike = 0.3
