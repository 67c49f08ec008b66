package bid

import (
	"slices"
	"strings"

	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
)

// An amount that nothing offered reaches is one claim of a line, and what is to have it is another: of
// "electric winch, 12,000 lb, synthetic rope" the winch and its rope may be had, and only its pull falls short.

// withoutAmount is what a claim that falls short of an amount asks for besides that; false where its pieces ask for
// nothing else, where that is not something of the same group alone, and where another claim of the line asks for
// something that it cannot be.
func (v *vocabulary) withoutAmount(c *claim, all []piece, of []*claim) (claim, bool) {
	if c.short == nil || amountIn(c.tokens, c.by) < 0 {
		return claim{}, false
	}
	asks := false
	for i, p := range all {
		asks = asks || of[i] == c && named(c.besideAmount(p.tokens))
	}
	if !asks {
		return claim{}, false
	}
	head, ok := v.claimOf(c.besideAmount(c.tokens))
	group := v.groupOf(c)
	return head, ok && head.gauge == nil && head.short == nil &&
		!slices.ContainsFunc(slices.Concat(head.same, head.more), func(id string) bool {
			return v.byID[id].group != group
		}) && !slices.ContainsFunc(of, func(o *claim) bool {
		return o != nil && o != c && o.gauge == nil && o.short == nil && v.groupOf(o) == group && v.rivals(o) &&
			len(v.common(&head, o).same) == 0
	})
}

// besideAmount are tokens without the amount that a claim falls short of and the words that say its dimension.
func (c *claim) besideAmount(tokens []claims.Token) []claims.Token {
	at := amountIn(tokens, c.by)
	var out []claims.Token
	for i, t := range tokens {
		if i != at && !(t.Kind == claims.Word && c.by.Of != "" && claims.DimensionOf(t.Word) == c.by.Of) {
			out = append(out, t)
		}
	}
	return out
}

// amountIn is where in tokens an amount stands; below zero where it does not.
func amountIn(tokens []claims.Token, by claims.Number) int {
	return slices.IndexFunc(tokens, func(t claims.Token) bool {
		return t.Kind == claims.Count && t.Num.Unit == by.Unit && t.Num.Value == by.Value
	})
}

// toldApart tells a piece of a claim that falls short of an amount: what stands before the amount, or is named behind
// it, as the claim on that. Claims are told by their numbers; head is below zero where there is none on that.
func (v *vocabulary) toldApart(c *claim, p piece, text string, head, short int) []told {
	if head < 0 {
		return []told{newTold(text[p.from:p.to], short)}
	}
	at := amountIn(p.tokens, c.by)
	if at < 0 {
		return []told{newTold(text[p.from:p.to], head)}
	}
	from, to := p.from, p.to
	if at > 0 && named(p.tokens[:at]) {
		from = p.tokens[at-1].End
	}
	if behind := p.tokens[at+1:]; from == p.from && len(behind) > 0 && behind[0].Role&claims.Located == 0 &&
		v.titledIn(behind) { // not "28 cu ft of storage"
		to = p.tokens[at].End
	}
	var out []told
	if from > p.from {
		out = append(out, newTold(text[p.from:from], head))
	}
	out = append(out, newTold(text[from:to], short))
	if to < p.to {
		out = append(out, newTold(text[to:p.to], head))
	}
	return out
}

func named(tokens []claims.Token) bool {
	return slices.ContainsFunc(tokens, func(t claims.Token) bool { return t.Kind == claims.Word })
}

// titledIn reports whether tokens name something offered.
func (v *vocabulary) titledIn(tokens []claims.Token) bool {
	return slices.ContainsFunc(tokens, func(t claims.Token) bool {
		return t.Kind == claims.Word && v.titles[t.Word] != nil
	})
}

func newTold(text string, claim int) told {
	text = strings.Trim(text, " ,;:.()-")
	if strings.Count(text, "(") > strings.Count(text, ")") { // "fourteen (14)"
		text += ")"
	}
	return told{text, claim}
}

// nameIn is the longest name of a thing's own that words call it by; nil where they hold none.
func (v *vocabulary) nameIn(p *profile, has bag) []string {
	var out []string
	for i, ids := range p.ownIDs {
		if len(ids) > len(out) && has.hasAll(ids) {
			out = p.own[i]
		}
	}
	return out
}

// mayReach reports whether something that a line may mean in the place of a thing, or by the word that it says the
// amount of, reaches an amount that the thing falls short of. Called by a name of its own, that is what bears this
// name, else what is of its group.
func (v *vocabulary) mayReach(p *profile, has bag, tokens []claims.Token, list []claims.Number, by claims.Number) bool {
	if by.All || by.Unit == claims.Month && p.beside {
		return true // of several kinds together; what else is warranted
	}
	name, noun, alone := v.nameIn(p, has), amountNoun(tokens, by), []claims.Number{by}
	if p.core[noun] || slices.ContainsFunc(p.entries, func(e entry) bool {
		return e[noun] != 0 && e[amountOf+by.Unit] != 0
	}) || !slices.ContainsFunc(v.titles[noun], func(t title) bool { return t.group != p.group }) {
		noun = "" // the amount is of the thing itself
	}
	sum, most := 0.0, 0.0
	for i := range v.list {
		o, amounts := &v.list[i], alone
		meant := o.group == p.group && p.group != ""
		if name != nil {
			meant = (meant || p.beside || o.called(name, name)) &&
				!slices.ContainsFunc(name, func(w string) bool { return !o.words[w] })
		} else if meant {
			amounts = list
		}
		switch {
		case o.kept:
		case meant && by.Unit == "" && name == nil && !o.lack && !o.words[by.Noun()]:
			return true // which may have as many: of belts, some cots say nothing
		case by.Unit == "" && !meant && o.beside && o.ofKindToo(p, by.Noun()):
			sum += o.many()
		case meant && by.Unit == "":
			n := o.mostOf(by, onEachSide(by))
			if most = max(most, n); o.beside {
				sum += n
			}
		case (meant || noun != "" && o.words[noun]) && v.reaches(o, nil, amounts):
			return true
		}
	}
	return by.Unit == "" && max(sum, most) >= by.Value
}

// ofKindToo reports whether a thing is called by what a number counts and by another word that is said of a thing of
// another group: an outlet, of "oxygen".
func (p *profile) ofKindToo(o *profile, noun string) bool {
	return p.ofGroupNamed(noun) && slices.ContainsFunc(p.names, func(n []string) bool {
		return slices.Contains(n, noun) && slices.ContainsFunc(n, func(w string) bool {
			return w != noun && o.core[w] && !qualities[w] && !oppositePlaces[w] && !anyThing[w]
		})
	})
}

// many is how many a thing is of what it is called, in all that a unit may hold: of "two outlets", two.
func (p *profile) many() float64 {
	for _, x := range p.numbers {
		if x.First && x.Unit == "" {
			return x.Value * float64(max(p.most, 1))
		}
	}
	return float64(max(p.most, 1))
}

// amountNoun is the word of what an amount is said of: the noun right behind it, or the word before it.
func amountNoun(tokens []claims.Token, by claims.Number) string {
	at := amountIn(tokens, by)
	if at < 0 {
		return ""
	}
	for _, t := range tokens[at+1:] {
		if t.Part != tokens[at].Part || t.Kind != claims.Word || t.Role&claims.Located != 0 {
			break
		}
		if t.Role != claims.Modifier && !claims.Dimension(t.Word) {
			return t.Word
		}
	}
	for i := at - 1; i >= 0; i-- {
		if t := &tokens[i]; t.Kind == claims.Word && !claims.Dimension(t.Word) && t.Role&claims.Located == 0 {
			return t.Word
		}
	}
	return ""
}

// tellsOf reports whether a thing says something of what an amount is of, as far as that can be left unsaid:
// how many there are of a thing and how long it is.
func (p *profile) tellsOf(n claims.Number) bool {
	switch n.Unit {
	case "":
		return p.mostOf(n, onEachSide(n)) > 0
	case quantity.Inch:
		return slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
			return x.Unit == n.Unit && (n.Of == "" || x.Of == "" || x.Of == n.Of)
		})
	}
	return true
}

// ofOne reports whether a thing that falls short of an amount tells that of each of several things alone: what
// "AGM batteries, 400 Ah" are to have may be that of all of them.
func (v *vocabulary) ofOne(c *claim) bool {
	return !c.by.Each && !c.by.Apiece && slices.ContainsFunc(c.short, func(id string) bool {
		return slices.ContainsFunc(v.byID[id].numbers, func(x claims.Number) bool {
			return x.Unit == c.by.Unit && (x.Each || x.Apiece)
		})
	})
}

// sumReaches reports whether an amount that a claim falls short of may be that of several things together, as many as
// one of what is offered in their place counts: "two 105 Ah batteries".
func (v *vocabulary) sumReaches(c *claim) bool {
	if c.short == nil || c.by.Unit == "" {
		return false
	}
	return slices.ContainsFunc(v.list, func(o profile) bool {
		if o.group != v.groupOf(c) || o.kept {
			return false
		}
		most, many := 0.0, 1.0
		for _, x := range o.numbers {
			switch {
			case x.Unit == c.by.Unit:
				most = max(most, x.Value)
			case x.Unit == "" && x.Value < mostCounted:
				many = max(many, x.Value)
			}
		}
		return o.beside && most > 0 || most*many*float64(max(o.most, 1)) >= c.by.Value
	})
}
