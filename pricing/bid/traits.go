package bid

import (
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing/bid/claims"
)

// trait is one of the catalogue's, with the ways in which purchasers put it.
type trait struct {
	kind   string
	ways   [][]slot
	rarest [][]int32 // of each way: what one of its slots begins with that begins the fewest others
	of     []int     // places of the things that have it
	rivals []int     // places of those that have any trait of its kind, where one excludes another
}

// slot is one of the words that a way of putting a trait is made of.
type slot struct {
	any     [][]claims.Token // of which one stands there
	missing bool             // it may be missing
	ids     []int32          // numbers of what these begin with
}

// way reads how purchasers put a trait: "flush/recessed mounted?".
func way(text string, read texts) []slot {
	var out []slot
	for _, word := range strings.Fields(text) {
		s := slot{}
		word, s.missing = strings.CutSuffix(word, "?")
		for _, w := range strings.Split(word, "/") {
			tokens := slices.Clone(read.of(strings.ReplaceAll(w, "-", " ")).tokens)
			if claims.Ruled(tokens) {
				return nil // what a line rules out is no trait
			}
			tokens = slices.DeleteFunc(tokens, func(t claims.Token) bool {
				return t.Kind != claims.Word && t.Kind != claims.Count
			})
			if len(tokens) > 0 {
				s.any = append(s.any, tokens)
			}
		}
		if s.any != nil { // else it says nothing: "from"
			out = append(out, s)
		}
	}
	return out
}

// learnTraits takes in those of the catalogue, and which of them are true of each option.
func (v *vocabulary) learnTraits(cat *config.Catalogue, read texts) {
	for i := range cat.Traits {
		t := trait{kind: cat.Traits[i].Kind}
		for _, text := range cat.Traits[i].Asked {
			w := way(text, read)
			for n := range w {
				s := &w[n]
				for _, words := range s.any {
					for n := range words {
						words[n].ID = v.numbered([]string{key(&words[n])})[0]
					}
					s.ids = append(s.ids, words[0].ID)
				}
			}
			if w != nil {
				t.ways = append(t.ways, w)
			}
		}
		v.traits = append(v.traits, t)
	}
	v.marks, v.done, v.hits = make([]int, len(v.list)), make([]bool, len(v.list)), make([]float64, len(v.list))
	ofKind := map[string][]int{}
	for i := range v.list {
		v.every = append(v.every, i)
		o := cat.OptionByID(v.list[i].id)
		if o == nil {
			continue
		}
		v.list[i].traits = cat.TraitsOf(o)
		for _, k := range v.list[i].traits {
			t := &v.traits[k]
			t.of = append(t.of, i)
			if list := ofKind[t.kind]; len(list) == 0 || list[len(list)-1] != i {
				ofKind[t.kind] = append(list, i)
			}
		}
	}
	delete(ofKind, config.Feature)
	for k := range v.traits {
		v.traits[k].rivals = ofKind[v.traits[k].kind]
	}
}

// indexed has things and traits at hand by the numbers of words, all of which are given.
func (v *vocabulary) indexed() {
	for w := range v.with {
		v.numbered([]string{w})
	}
	for _, list := range []map[string]bool{quiet, greater} {
		for w := range list {
			v.numbered([]string{w})
		}
	}
	v.numbered(claims.Dimensions())
	v.silent = make([]bool, len(v.ids)+1)
	for w, id := range v.ids {
		v.silent[id] = besideAny(w)
	}
	v.places, v.asking, v.inTraits = make([][]int, len(v.ids)+1), make([][]asking, len(v.ids)+1), v.emptyBag()
	v.there, v.held = v.emptyBag(), v.emptyBag()
	for w, at := range v.with {
		v.places[v.ids[w]] = at
	}
	often := make([]int, len(v.ids)+1) // how many slots of ways of putting a trait a word begins
	for i := range v.traits {
		for _, w := range v.traits[i].ways {
			for _, s := range w {
				for k, words := range s.any {
					often[s.ids[k]]++
					for n := range words {
						v.inTraits.put(words[n].ID)
					}
				}
			}
		}
	}
	for i := range v.traits {
		t := &v.traits[i]
		for n, w := range t.ways {
			t.rarest = append(t.rarest, rarest(w, often))
			for _, s := range w {
				for _, id := range s.ids {
					if list := v.asking[id]; len(list) == 0 || list[len(list)-1] != (asking{i, n}) {
						v.asking[id] = append(list, asking{i, n})
					}
				}
			}
		}
	}
}

// known tells tokens the numbers of their words.
func (v *vocabulary) known(tokens []claims.Token) []claims.Token {
	for i := range tokens {
		tokens[i].ID = v.ids[key(&tokens[i])]
	}
	return tokens
}

// rarest are what the slot of a way of putting a trait begins with that begins the fewest others, of
// those that may not be missing: without one of them a claim does not put it so.
func rarest(way []slot, often []int) []int32 {
	var out []int32
	least := math.MaxInt
	for _, s := range way {
		sum := 0
		for _, id := range s.ids {
			sum += often[id]
		}
		if s.missing {
			sum += len(often) * len(often)
		}
		if sum < least {
			out, least = s.ids, sum
		}
	}
	return out
}

// asking is a way of putting a trait, by their places.
type asking struct{ trait, way int }

// key finds a way of putting a trait by what it begins with.
func key(t *claims.Token) string {
	if t.Kind == claims.Count {
		return amountOf + t.Num.Unit
	}
	return t.Word
}

// span is a trait that a claim asks for, and the tokens that it does so with.
type span struct {
	trait, from, to int
}

// supplied is the kind of the traits of how things are fed.
const supplied = "supply"

// mostTraits is how many traits a claim asks for at most.
const mostTraits = 62

// spans finds the traits that tokens ask for, the longest way of each.
func (v *vocabulary) spans(tokens []claims.Token) []span {
	out, there := v.spanned[:0], v.there
	clear(there)
	for i := range tokens {
		there.put(tokens[i].ID)
	}
	for from := range tokens {
		t := &tokens[from]
		if t.Kind != claims.Word && t.Kind != claims.Count || ofBefore(tokens, from) {
			continue
		}
		for _, a := range v.asking[t.ID] {
			of := &v.traits[a.trait]
			if of.kind == supplied && t.Lights { // what it is fed through is not what it comes on with
				continue
			}
			if !slices.ContainsFunc(of.rarest[a.way], there.has) || !mayStand(of.ways[a.way], there) {
				continue
			}
			to := end(tokens, from, of.ways[a.way])
			switch last := len(out) - 1; {
			case to == 0:
			case last >= 0 && out[last].trait == a.trait && out[last].from == from:
				out[last].to = max(out[last].to, to)
			case len(out) < mostTraits:
				out = append(out, span{a.trait, from, to})
			}
		}
	}
	v.spanned = out
	return out
}

// mayStand reports whether words hold one of each slot of a way of putting a trait.
func mayStand(way []slot, there bag) bool {
	for i := range way {
		if s := &way[i]; !s.missing && !slices.ContainsFunc(s.ids, there.has) {
			return false
		}
	}
	return true
}

// ofBefore reports whether a word says where what stands before it in the same part is: no trait
// begins with it, "negative pressure in the cab, an alarm".
func ofBefore(tokens []claims.Token, at int) bool {
	t := &tokens[at]
	return at > 0 && t.Role&claims.Inside != 0 && insides[t.Word] && tokens[at-1].Part == t.Part
}

// end is where a way of putting a trait ends that begins at a place, its words in whatever order;
// 0 where it does not stand there. Fillers may stand between them.
func end(tokens []claims.Token, at int, way []slot) int {
	used, to := uint64(0), 0 // of the slots, as bits
	for i := at; i < len(tokens); {
		if i > at && tokens[i].Part != tokens[i-1].Part && qualities[tokens[i-1].Word] {
			return to // "doors of stainless steel, with a sill"
		}
		n, of := 0, 0
		for k := range way {
			if used&(1<<k) != 0 {
				continue
			}
			for _, words := range way[k].any {
				if len(words) > n && stand(tokens[i:], words) {
					n, of = len(words), k
				}
			}
		}
		switch {
		case n > 0:
			used |= 1 << of
			i += n
		case i > at && tokens[i].Kind == claims.Word && quiet[tokens[i].Word]:
			i++
			continue
		default:
			return to
		}
		whole := true
		for k := range way {
			whole = whole && (used&(1<<k) != 0 || way[k].missing)
		}
		if whole {
			to = i
		}
	}
	return to
}

func stand(tokens, words []claims.Token) bool {
	if len(tokens) < len(words) {
		return false
	}
	for i := range words {
		t, w := &tokens[i], &words[i]
		if t.ID != w.ID || t.Kind == claims.Count && t.Num.Value != w.Num.Value {
			return false
		}
	}
	return true
}

// variant is a claim less the words of the traits that some things have.
type variant struct {
	tokens []claims.Token
	has    int   // which of the traits that the claim asks for, as bits
	of     []int // places of the things that have these
}

// variants are a claim as things are asked for that have some of the traits that it asks for, those
// in which something may be meant, and which of them each thing has: none of the claim is read of what
// has another trait of the kind, below zero. The second stands until they are asked for anew.
func (v *vocabulary) variants(tokens []claims.Token) ([]variant, []int) {
	clear(v.marks)
	all := variant{tokens, 0, v.every}
	if claims.Ruled(tokens) {
		return []variant{all}, v.marks
	}
	things, sure := v.thingsOf(tokens)
	if !mayMean(sure, nil, 0) {
		return nil, nil
	}
	spans := v.spans(tokens)
	v.mark(spans)
	var out []variant
	for i, has := range v.marks {
		if has <= 0 {
			continue
		}
		k := slices.IndexFunc(out, func(x variant) bool { return x.has == has })
		if k < 0 {
			k, out = len(out), append(out, variant{has: has})
		}
		out[k].of = append(out[k].of, i)
	}
	out = slices.DeleteFunc(out, func(x variant) bool { return !mayMean(things, spans, x.has) })
	if len(out) == 0 && !mayMean(things, nil, 0) {
		return nil, nil
	}
	for k := range out {
		out[k].tokens = uncovered(tokens, spans, out[k].has)
	}
	return append(out, all), v.marks
}

// thingsOf are, by the token, the places of the things of which its word has to be true, nil where it
// need not be. The second are those of words of which no trait is made. Both stand until they are asked for anew.
func (v *vocabulary) thingsOf(tokens []claims.Token) (things, sure [][]int) {
	things, sure = v.things[:0], v.sureThings[:0]
	for i := range tokens {
		t := &tokens[i]
		if t.Kind != claims.Word || v.silent[t.ID] {
			things = append(things, nil)
			continue
		}
		list := v.places[t.ID]
		if list == nil {
			list = noPlaces
		}
		things = append(things, list)
		if !v.inTraits.has(t.ID) {
			sure = append(sure, list)
		}
	}
	v.things, v.sureThings = things, sure
	return things, sure
}

var noPlaces = []int{}

// besideAny reports whether a word may stand beside any thing of which it is not true.
func besideAny(w string) bool { return quiet[w] || greater[w] || claims.Dimension(w) }

// mayMean reports whether there is a thing of which all words are true that some spans do not cover.
func mayMean(things [][]int, spans []span, has int) bool {
	var some [mostTogether * 4][]int // as many as most claims have words
	left := some[:0]
	for i, list := range things {
		if list != nil && !covered(spans, has, i) {
			left = append(left, list)
		}
	}
	if len(left) < 2 {
		return len(left) == 0 || len(left[0]) > 0
	}
	for _, place := range shortestOf(left) {
		if inAll(left, place) {
			return true
		}
	}
	return false
}

// shortestOf is the shortest of some lists.
func shortestOf(lists [][]int) []int {
	out := lists[0]
	for _, list := range lists[1:] {
		if len(list) < len(out) {
			out = list
		}
	}
	return out
}

// inAll reports whether a place is in each of some lists, which are in order.
func inAll(lists [][]int, place int) bool {
	for _, list := range lists {
		if _, found := slices.BinarySearch(list, place); !found {
			return false
		}
	}
	return true
}

// covered reports whether a token belongs to one of some spans.
func covered(spans []span, has, at int) bool {
	for k := range spans {
		if s := &spans[k]; has&(1<<k) != 0 && s.from <= at && at < s.to {
			return true
		}
	}
	return false
}

// uncovered are the tokens without those of some spans.
func uncovered(tokens []claims.Token, spans []span, has int) []claims.Token {
	out := make([]claims.Token, 0, len(tokens))
	for i := range tokens {
		if !covered(spans, has, i) {
			out = append(out, tokens[i])
		}
	}
	return out
}

// mark notes of each thing which of the traits that a claim asks for it has, as bits; below zero where
// it has another of the kind.
func (v *vocabulary) mark(spans []span) {
	for k, s := range spans {
		for _, i := range v.traits[s.trait].of {
			v.marks[i] |= 1 << k
		}
	}
	for k, s := range spans {
		for _, i := range v.traits[s.trait].rivals {
			if has := v.marks[i]; has >= 0 && has&(1<<k) == 0 && !coveredToo(spans, has, s) {
				v.marks[i] = -1
			}
		}
	}
}

// hasAnother reports whether a thing has a trait of the kind of another.
func (v *vocabulary) hasAnother(p *profile, trait int) bool {
	kind := v.traits[trait].kind
	return kind != config.Feature && slices.ContainsFunc(p.traits, func(i int) bool { return v.traits[i].kind == kind })
}

// coveredToo reports whether a word of a span belongs to one of a trait that a thing has.
func coveredToo(spans []span, has int, s span) bool {
	for k, o := range spans {
		if has&(1<<k) != 0 && o.from < s.to && s.from < o.to {
			return true
		}
	}
	return false
}

// mixed is a text by which two traits of one kind are asked for; empty where there is none. Some
// thing may have both.
func (v *vocabulary) mixed(a, b int) string {
	if v.traits[a].kind != v.traits[b].kind || v.traits[a].kind == config.Feature {
		return ""
	}
	for _, x := range [][2]int{{a, b}, {b, a}} {
		for _, w := range v.traits[x[0]].ways {
			tokens := shortest(w)
			for _, s := range v.spans(tokens) {
				if s.trait == x[1] && s.from == 0 && s.to == len(tokens) {
					return strings.Join(claims.Words(tokens), " ")
				}
			}
		}
	}
	return ""
}

// shortest is a way of putting a trait without what may be missing.
func shortest(way []slot) []claims.Token {
	var out []claims.Token
	for _, s := range way {
		if !s.missing {
			out = append(out, s.any[0]...)
		}
	}
	return out
}

// otherTraits are those that the sentence of a thing says and the catalogue does not name as true
// of it, though it names another of the kind.
func (v *vocabulary) otherTraits(p *profile, spec string) []int {
	var out []int
	for _, s := range v.spans(v.known(claims.Read(spec).Tokens)) {
		if !slices.Contains(p.traits, s.trait) && v.hasAnother(p, s.trait) && !slices.Contains(out, s.trait) {
			out = append(out, s.trait)
		}
	}
	return out
}
