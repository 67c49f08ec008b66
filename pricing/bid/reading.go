package bid

import (
	"cmp"
	"slices"

	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/bid/terms"
	"boxwright/pricing/quote"
)

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
	r := v.readOnce(text)
	v.read[text] = r
	return r
}

// readOnce reads a line that the edition need not remember.
func (v *vocabulary) readOnce(text string) *reading {
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
	line   []claims.Token // these and those of all pieces behind it
	from   int            // in the text of the line
	to     int            // where it ends there
	stop   bool           // a sentence ends behind it
	half   bool           // only by a semicolon
	opens  bool           // a colon stands before it
	with   bool           // it is said to be part of what went before
	adds   bool           // no comma parts it from that
	clause bool           // it is a clause on that: "that runs on the shore line"
	apart  bool           // a comma stands before it, with whatever behind
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
	from := 0
	for i := range out {
		out[i].line = all[from:]
		from += len(out[i].tokens)
	}
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
				if c.short != nil {
					b.short++
				}
				if !worse(b, at[i]) {
					b.claim = kept(c)
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
				of[i] = kept(c)
			}
		}
	}
	v.ofUnread(all, of)
	v.forAnother(text, all, of)
	v.ofHead(all, of)
	v.ofBench(all, of)
	v.ofCounted(all, of)
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

// kept is a claim in a place of its own; one that is not kept needs none.
func kept(c claim) *claim { return &c }

// joined are the tokens of pieces that are read as one claim. Where one of them rules
// something out, a break is left between them, so that it can be told how far that goes.
func joined(list []piece) []claims.Token {
	if len(list) == 1 {
		return list[0].tokens
	}
	many := 0
	for i := range list {
		many += len(list[i].tokens)
	}
	if !slices.ContainsFunc(list, func(p piece) bool { return claims.Ruled(p.tokens) }) {
		return list[0].line[:many:many]
	}
	out := make([]claims.Token, 0, many+len(list))
	for i, p := range list {
		if i > 0 {
			out = append(out, claims.Token{Kind: claims.Break})
		}
		out = append(out, p.tokens...)
	}
	return out
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
