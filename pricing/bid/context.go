package bid

import (
	"slices"
	"strings"

	"boxwright/pricing/bid/claims"
)

// inContext reads a piece that does not say all by itself with what the line speaks of:
// "squad bench 72 in long, hinged lid", "cameras, rear and interior", "rear and interior
// cameras". What is read so has to be a figure, or of the group that the line speaks of already; two warranties
// may be of two groups.
func (v *vocabulary) inContext(all []piece, of []*claim, i int) (claim, bool) {
	anew := len(claims.Words(all[i].tokens)) > 0
	try := func(about *claim, tokens []claims.Token) (claim, bool) {
		if all := slices.Concat(about.same, about.more); len(all) == 1 {
			v.sure = all[0]
			defer func() { v.sure = "" }()
		}
		c, ok := v.claimOf(tokens)
		if !ok || slices.ContainsFunc(about.words, func(w string) bool { return sources[w] }) &&
			slices.ContainsFunc(c.numbers, func(n claims.Number) bool { return n.Each }) ||
			c.gauge != nil && slices.Contains(sizes, c.gauge.code) ||
			c.code() == factDelivery && c.day.IsZero() || // "20 weeks and 2 days"
			c.gauge == nil && about.gauge == nil && v.groupOf(&c) != v.groupOf(about) &&
				!(anew && v.warrants(&c) && v.warrants(about)) {
			return claim{}, false
		}
		return c, true
	}
	for k := i - 1; k >= 0 && (!all[k].stop || all[k].half); k-- {
		if of[k] == nil || k > 0 && of[k-1] == of[k] && !all[k-1].stop {
			continue // not where a claim begins
		}
		subject := nouns(all[k].tokens)
		whole := slices.Clone(subject)
		for n := k + 1; n < i && of[n] == of[k]; n++ {
			whole = append(whole, nouns(all[n].tokens)...)
		}
		for _, s := range [][]claims.Token{warranted(subject), subject, v.names(of[k], subject), plain(subject),
			v.names(of[k], whole),
			elsewhere(subject, all[i].tokens)} {
			if len(s) == 0 {
				continue
			}
			if c, ok := try(of[k], slices.Concat(s, all[i].tokens)); ok &&
				!(of[k].several() && c.gauge == nil && !all[i].with) &&
				!v.ofOtherSide(&c, slices.Concat(all[k].tokens, all[i].tokens)) {
				return c, true
			}
		}
		if s := v.whole(of[k], subject); s != nil {
			if c, ok := try(of[k], slices.Concat(s, all[i].tokens)); ok && c.gauge != nil {
				return c, true
			}
		}
	}
	if about, name := v.subject(all, of, i); about != nil {
		if c, ok := try(about, slices.Concat(name, all[i].tokens)); ok && c.gauge == nil && c.short == nil {
			return c, true
		}
	}
	if i+1 < len(all) && !all[i].stop && of[i+1] != nil {
		if next := nouns(all[i+1].tokens); len(next) > 0 {
			return try(of[i+1], append(slices.Clone(all[i].tokens), next[len(next)-1]))
		}
	}
	return claim{}, false
}

// ofOtherSide reports whether tokens say of one side what every thing of a claim has on the other alone.
func (v *vocabulary) ofOtherSide(c *claim, tokens []claims.Token) bool {
	words := claims.Words(tokens)
	return c.gauge == nil && !slices.ContainsFunc(slices.Concat(c.same, c.more, c.short), func(id string) bool {
		return !v.byID[id].ofOtherSide(words, sideWords)
	})
}

// subject is what the sentence of a piece begins with by a name of its own, though not all that is said of it
// there was read, and that name: the lightbar of "lightbar of some make, alley lights".
func (v *vocabulary) subject(all []piece, of []*claim, i int) (*claim, []claims.Token) {
	first := i
	for first > 0 && !all[first-1].stop {
		first--
	}
	if first == i || of[first] != nil {
		return nil, nil
	}
	tokens := all[first].tokens
	for to := range tokens {
		t := &tokens[to]
		if t.Kind != claims.Word || t.Role&claims.Located != 0 && to > 0 {
			return nil, nil
		}
		if t.Role == claims.Modifier {
			continue
		}
		var name []claims.Token
		group := ""
		for _, n := range v.titles[t.Word] {
			from := to + 1 - len(n.words)
			switch {
			case from < 0 || len(n.words) < len(name) || !slices.Equal(claims.Words(tokens[from:to+1]), n.words):
			case len(n.words) == len(name) && n.group != group:
				return nil, nil // which of two is meant cannot be told
			default:
				name, group = tokens[from:to+1], n.group
			}
		}
		if name == nil || slices.ContainsFunc(of[first:i], func(c *claim) bool { return c != nil && v.groupOf(c) != group }) {
			return nil, nil
		}
		about := &claim{}
		for k := range v.list {
			if p := &v.list[k]; p.group == group && !p.kept {
				about.same = append(about.same, p.id)
			}
		}
		return about, name
	}
	return nil, nil
}

// several reports whether a claim counts things in a figure: of "seats for five, swivel" no one seat is
// what is asked for.
func (c *claim) several() bool { return c.gauge != nil && c.gauge.unit == "" && c.want > 1 }

// whole is what is named first of words that ask for a figure: the bench of "a bench that seats three".
func (v *vocabulary) whole(c *claim, words []claims.Token) []claims.Token {
	if c.gauge == nil || len(words) < 2 || words[0].Role == claims.Modifier || v.titles[words[0].Word] == nil {
		return nil
	}
	return words[:1]
}

// nouns are the words of tokens that may be what they speak of: no dimensions.
func nouns(tokens []claims.Token) []claims.Token {
	var out []claims.Token
	for _, t := range tokens {
		if t.Kind == claims.Word && !claims.Dimension(t.Word) {
			out = append(out, t)
		}
	}
	return out
}

// elsewhere are words without those that say where, if others say another place: "5,000 lb front
// and 9,600 lb rear". None are left where they do not.
func elsewhere(list, other []claims.Token) []claims.Token {
	place := func(t claims.Token) bool { return oppositePlaces[t.Word] }
	if !slices.ContainsFunc(list, place) || !slices.ContainsFunc(other, place) {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(list), place)
}

// warranted is the word of a warranty among others: of what it is, the next piece says anew.
func warranted(list []claims.Token) []claims.Token {
	return slices.DeleteFunc(slices.Clone(list), func(t claims.Token) bool { return t.Word != warrantyWord })
}

// oppositePlaces are those of which a thing stands in one.
var oppositePlaces = wordSet("front rear streetside curbside upper lower inside outside")

// plain are words without materials and colors.
func plain(list []claims.Token) []claims.Token {
	return slices.DeleteFunc(slices.Clone(list), func(t claims.Token) bool { return qualities[t.Word] })
}

// names are those of words by which the things of a claim are called.
func (v *vocabulary) names(c *claim, words []claims.Token) []claims.Token {
	named := map[string]bool{}
	if c.gauge != nil {
		for _, n := range strings.Split(c.gauge.names, "|") {
			for _, w := range stems(n) {
				named[w] = true
			}
		}
	}
	for _, id := range slices.Concat(c.same, c.more) {
		for _, n := range v.byID[id].names {
			for _, w := range n {
				named[w] = true
			}
		}
	}
	return slices.DeleteFunc(slices.Clone(words), func(t claims.Token) bool { return !named[t.Word] })
}

// groupOf is the group of what a claim asks for; empty for a figure.
func (v *vocabulary) groupOf(c *claim) string {
	for _, id := range slices.Concat(c.same, c.more, c.short) {
		return v.byID[id].group
	}
	return ""
}

// together makes one claim of those that ask for things of a group of which a unit has
// one: "cabinets of aluminum, powder coated, no wood" is one thing. Of claims on two that
// no unit has both of, the words of the second are returned as not read. The pieces of the line
// are told what became of their claims.
func (v *vocabulary) together(list []claim, pieces []told) (out []claim, apart []string) {
	became := make([]int, len(list))
	defer func() {
		for i := range pieces {
			if at := pieces[i].claim; at >= 0 {
				pieces[i].claim = became[at]
			}
		}
	}()
	for i, c := range list {
		k := slices.IndexFunc(out, func(o claim) bool {
			return c.gauge == nil && o.gauge == nil && v.rivals(&c) && v.rivals(&o) && v.groupOf(&c) == v.groupOf(&o)
		})
		switch {
		case k < 0:
			out = append(out, c)
			became[i] = len(out) - 1
		case len(v.common(&out[k], &c).same) > 0:
			out[k] = v.common(&out[k], &c)
			became[i] = k
		case slices.ContainsFunc(slices.Concat(out[k].same, out[k].more), func(id string) bool {
			return slices.Contains(c.short, id)
		}):
			out = append(out, c) // the same falls short of an amount
			became[i] = len(out) - 1
		default:
			out, apart = append(out, c), append(apart, c.words...)
			became[i] = unreadPiece
		}
	}
	return out, apart
}

// rivals reports whether a unit has just one of what a claim asks for.
func (v *vocabulary) rivals(c *claim) bool {
	group := v.groupOf(c)
	return group != "" && !slices.ContainsFunc(slices.Concat(c.same, c.more), func(id string) bool {
		return v.byID[id].beside || v.byID[id].group != group
	})
}

// common is what two claims both ask for.
func (v *vocabulary) common(a, b *claim) claim {
	out := *a
	all := slices.Concat(b.same, b.more)
	out.words, out.plain = slices.Concat(a.words, b.words), slices.Concat(a.plain, b.plain)
	out.numbers = slices.Concat(a.numbers, b.numbers)
	out.same = slices.DeleteFunc(slices.Concat(a.same, a.more), func(id string) bool {
		p := v.byID[id]
		return !slices.Contains(all, id) || !p.underCondition(out.words, out.numbers) ||
			slices.ContainsFunc(b.numbers, func(n claims.Number) bool { return n.Unit != "" && p.secondOf(a.numbers, n) })
	})
	out.also = slices.DeleteFunc(slices.Clone(a.also), func(id string) bool { return !slices.Contains(b.also, id) })
	out.more, out.short = nil, nil
	return out
}
