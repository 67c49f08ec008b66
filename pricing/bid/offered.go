package bid

import (
	"cmp"
	"slices"

	"boxwright/pricing/bid/claims"
)

// wholeBody are words that say of no thing what it is: "module sides".
var wholeBody = wordSet("module body box side")

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
	if len(all) > 0 && !slices.ContainsFunc(all, func(w string) bool { return !wholeBody[w] }) {
		return claim{}, false
	}
	placed := slices.ContainsFunc(all, func(w string) bool { return oppositePlaces[w] })
	type said struct {
		words []string
		list  []claims.Number
	}
	sayings := make([]said, len(variants))
	colored := slices.ContainsFunc(all, func(w string) bool { return colors[w] })
	done := v.done
	clear(done)
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
			if !not && p.absent && !slices.ContainsFunc(all, func(w string) bool { return goesWithout[w] }) {
				continue // "the builder shall supply a suction unit" is not the purchaser's own
			}
			if !not && len(p.instead) > 0 && slices.ContainsFunc(words, func(w string) bool { return p.instead[w] }) {
				continue // who asks for a bench does not ask for what takes its place
			}
			if !v.named(p, has) {
				if fit, _ := p.fits(list); fit == exact {
					also = append(also, found{p, p.tells.share(has), k})
				}
				continue
			}
			f := found{p, p.tells.share(has), k}
			if !not && (p.byTheWay(x.tokens, f.like) || colored && (p.mixes(words) || !placed && p.mixes(all))) ||
				p.id != v.sure && v.strange(p, list, words, has) {
				continue
			}
			fit, missing := p.fits(list)
			if !not && (p.ruledOut(all) || p.ofStranger(all) || p.ofMore(tokens) || p.onlyPrepares(all) || p.weldsMetal(all) ||
				p.carriedAlone(all) ||
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

// goesWithout are words of who asks for what the plant does not fit.
var goesWithout = wordSet("purchaser own owner agency customer department service provision prep prewire ready none " +
	"open existing empty blank delete")

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

// having are those among some things of which all words are true, or, where something is ruled
// out, at least one.
func (v *vocabulary) having(words []string, not bool, among []int) []int {
	if len(words) == 0 { // traits said it all
		return among
	}
	words = v.loud(words)
	var some [mostTogether * 4][]int // as many as most claims have words
	lists := some[:0]
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
