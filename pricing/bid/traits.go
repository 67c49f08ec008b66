package bid

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing/bid/claims"
)

// trait is one of the catalogue's, with the ways in which purchasers put it.
type trait struct {
	kind string
	ways [][]slot
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
	v.asking = map[string][]asking{}
	for i := range cat.Traits {
		t := trait{kind: cat.Traits[i].Kind}
		for _, text := range cat.Traits[i].Asked {
			w := way(text, read)
			for n := range w {
				s := &w[n]
				for _, words := range s.any {
					s.ids = append(s.ids, v.numbered([]string{key(words[0])})...)
					k, at := key(words[0]), asking{i, len(t.ways)}
					if list := v.asking[k]; len(list) == 0 || list[len(list)-1] != at {
						v.asking[k] = append(list, at)
					}
				}
			}
			if w != nil {
				t.ways = append(t.ways, w)
			}
		}
		v.traits = append(v.traits, t)
	}
	for i := range v.list {
		v.every = append(v.every, i)
		if o := cat.OptionByID(v.list[i].id); o != nil {
			v.list[i].traits = cat.TraitsOf(o)
		}
	}
}

// asking is a way of putting a trait, by their places.
type asking struct{ trait, way int }

// key finds a way of putting a trait by what it begins with.
func key(t claims.Token) string {
	if t.Kind == claims.Count {
		return amountOf + t.Num.Unit
	}
	return t.Word
}

// span is a trait that a claim asks for, and the tokens that it does so with.
type span struct {
	trait, from, to int
}

// mostTraits is how many traits a claim asks for at most.
const mostTraits = 62

// spans finds the traits that tokens ask for, the longest way of each.
func (v *vocabulary) spans(tokens []claims.Token) []span {
	var out []span
	var keys []string
	for _, t := range tokens {
		keys = append(keys, key(t))
	}
	there := v.bagOf(keys)
	for from := range tokens {
		if k := tokens[from].Kind; k != claims.Word && k != claims.Count {
			continue
		}
		for _, a := range v.asking[key(tokens[from])] {
			way := v.traits[a.trait].ways[a.way]
			if slices.ContainsFunc(way, func(s slot) bool { return !s.missing && !slices.ContainsFunc(s.ids, there.has) }) {
				continue // a word of it is nowhere
			}
			to := end(tokens, from, way)
			switch last := len(out) - 1; {
			case to == 0:
			case last >= 0 && out[last].trait == a.trait && out[last].from == from:
				out[last].to = max(out[last].to, to)
			case len(out) < mostTraits:
				out = append(out, span{a.trait, from, to})
			}
		}
	}
	return out
}

// end is where a way of putting a trait ends that begins at a place, its words in whatever order;
// 0 where it does not stand there. Fillers may stand between them.
func end(tokens []claims.Token, at int, way []slot) int {
	used, to := make([]bool, len(way)), 0
	for i := at; i < len(tokens); {
		if i > at && tokens[i].Part != tokens[i-1].Part && qualities[tokens[i-1].Word] {
			return to // "doors of stainless steel, with a sill"
		}
		n, of := 0, 0
		for k, s := range way {
			for _, words := range s.any {
				if !used[k] && len(words) > n && stand(tokens[i:], words) {
					n, of = len(words), k
				}
			}
		}
		switch {
		case n > 0:
			used[of] = true
			i += n
		case i > at && tokens[i].Kind == claims.Word && quiet[tokens[i].Word]:
			i++
			continue
		default:
			return to
		}
		whole := true
		for k, s := range way {
			whole = whole && (used[k] || s.missing)
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
	for i, w := range words {
		t := tokens[i]
		if t.Kind != w.Kind || t.Word != w.Word || t.Num.Value != w.Num.Value || t.Num.Unit != w.Num.Unit {
			return false
		}
	}
	return true
}

// variant is a claim less the words of the traits that some things have.
type variant struct {
	tokens []claims.Token
	has    int // which of the traits that the claim asks for, as bits
}

// variants are a claim as things are asked for that have some of the traits that it asks for,
// and which of them each thing has, where it has any: none of the claim is read of what has
// another trait of the kind, below zero.
func (v *vocabulary) variants(tokens []claims.Token) ([]variant, map[int]int) {
	all := variant{tokens, 0}
	if claims.Ruled(tokens) {
		return []variant{all}, nil
	}
	spans := v.spans(tokens)
	if spans == nil {
		return []variant{all}, nil
	}
	var out []variant
	of := map[int]int{}
	for i := range v.list {
		has := v.had(&v.list[i], spans)
		if has == 0 {
			continue
		}
		of[i] = has
		if has > 0 && !slices.ContainsFunc(out, func(x variant) bool { return x.has == has }) {
			out = append(out, variant{uncovered(tokens, spans, has), has})
		}
	}
	return append(out, all), of
}

// uncovered are the tokens without those of some spans.
func uncovered(tokens []claims.Token, spans []span, has int) []claims.Token {
	var out []claims.Token
	for i, t := range tokens {
		covered := false
		for k, s := range spans {
			covered = covered || has&(1<<k) != 0 && s.from <= i && i < s.to
		}
		if !covered {
			out = append(out, t)
		}
	}
	return out
}

// had is which of the traits that a claim asks for a thing has, as bits; below zero where it
// has another of the kind.
func (v *vocabulary) had(p *profile, spans []span) int {
	has := 0
	for k, s := range spans {
		if slices.Contains(p.traits, s.trait) {
			has |= 1 << k
		}
	}
	for k, s := range spans {
		if has&(1<<k) == 0 && v.hasAnother(p, s.trait) && !coveredToo(spans, has, s) {
			return -1
		}
	}
	return has
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
	for _, s := range v.spans(claims.Read(spec).Tokens) {
		if !slices.Contains(p.traits, s.trait) && v.hasAnother(p, s.trait) && !slices.Contains(out, s.trait) {
			out = append(out, s.trait)
		}
	}
	return out
}
