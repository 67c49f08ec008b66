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
}

// way reads how purchasers put a trait: "flush/recessed mounted?".
func way(text string, read texts) []slot {
	var out []slot
	for _, word := range strings.Fields(text) {
		s := slot{}
		word, s.missing = strings.CutSuffix(word, "?")
		for _, w := range strings.Split(word, "/") {
			tokens := slices.DeleteFunc(slices.Clone(read.of(strings.ReplaceAll(w, "-", " ")).tokens), func(t claims.Token) bool {
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
	v.asking = map[string][]int{}
	for i := range cat.Traits {
		t := trait{kind: cat.Traits[i].Kind}
		for _, text := range cat.Traits[i].Asked {
			if w := way(text, read); w != nil {
				t.ways = append(t.ways, w)
				for _, first := range w[0].any {
					if list := v.asking[key(first[0])]; !slices.Contains(list, i) {
						v.asking[key(first[0])] = append(list, i)
					}
				}
			}
		}
		v.traits = append(v.traits, t)
	}
	for i := range v.list {
		if o := cat.OptionByID(v.list[i].id); o != nil {
			v.list[i].traits = cat.TraitsOf(o)
		}
	}
}

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
const mostTraits = 8

// spans finds the traits that tokens ask for, the longest way of each.
func (v *vocabulary) spans(tokens []claims.Token) []span {
	var out []span
	for from := range tokens {
		if k := tokens[from].Kind; k != claims.Word && k != claims.Count {
			continue
		}
		for _, i := range v.asking[key(tokens[from])] {
			to := 0
			for _, w := range v.traits[i].ways {
				to = max(to, end(tokens, from, w))
			}
			if to > 0 && len(out) < mostTraits {
				out = append(out, span{i, from, to})
			}
		}
	}
	return out
}

// end is where a way of putting a trait ends that begins at a place; 0 where it does not
// stand there. Fillers may stand between its words.
func end(tokens []claims.Token, at int, way []slot) int {
	for i, s := range way {
		to := 0
		for skip := at; skip < len(tokens) && to == 0; skip++ {
			for _, words := range s.any {
				if stand(tokens[skip:], words) {
					to = max(to, skip+len(words))
				}
			}
			if i == 0 || tokens[skip].Kind != claims.Word || !quiet[tokens[skip].Word] {
				break
			}
		}
		switch {
		case to > 0:
			at = to
		case !s.missing:
			return 0
		}
	}
	return at
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
	out := []variant{{tokens, 0}}
	if claims.Ruled(tokens) {
		return out, nil
	}
	spans := v.spans(tokens)
	if spans == nil {
		return out, nil
	}
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
	return out, of
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
	return slices.ContainsFunc(p.traits, func(i int) bool { return v.traits[i].kind == v.traits[trait].kind })
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
	if v.traits[a].kind != v.traits[b].kind {
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
