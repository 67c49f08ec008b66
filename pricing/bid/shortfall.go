package bid

import (
	"slices"
	"strings"

	"boxwright/pricing/bid/claims"
)

// An amount that nothing offered reaches is one claim of a line, and what is to have it is another: of
// "electric winch, 12,000 lb, synthetic rope" the winch and its rope may be had, and only its pull falls short.

// withoutAmount is what a claim that falls short of an amount asks for besides that; false where that is not
// something of the same group alone.
func (v *vocabulary) withoutAmount(c *claim) (claim, bool) {
	at := c.amountIn(c.tokens)
	if at < 0 {
		return claim{}, false
	}
	rest := slices.Delete(slices.Clone(c.tokens), at, at+1)
	rest = slices.DeleteFunc(rest, func(t claims.Token) bool {
		return t.Kind == claims.Word && c.by.Of != "" && claims.DimensionOf(t.Word) == c.by.Of
	})
	if !slices.ContainsFunc(rest, func(t claims.Token) bool { return t.Kind == claims.Word }) {
		return claim{}, false
	}
	head, ok := v.claimOf(rest)
	group := v.groupOf(c)
	return head, ok && head.gauge == nil && head.short == nil &&
		!slices.ContainsFunc(slices.Concat(head.same, head.more), func(id string) bool { return v.byID[id].group != group })
}

// amountIn is where in tokens the amount stands that a claim falls short of; below zero where it does not.
func (c *claim) amountIn(tokens []claims.Token) int {
	return slices.IndexFunc(tokens, func(t claims.Token) bool {
		return t.Kind == claims.Count && t.Num.Unit == c.by.Unit && t.Num.Value == c.by.Value
	})
}

// toldApart tells a piece of a claim that falls short of an amount: what stands before the amount, or is named behind
// it, as the claim on that. Claims are told by their numbers; head is below zero where there is none on that.
func (v *vocabulary) toldApart(c *claim, p piece, text string, head, short int) []told {
	if head < 0 {
		return []told{newTold(text[p.from:p.to], short)}
	}
	at := c.amountIn(p.tokens)
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

func newTold(text string, claim int) told { return told{strings.Trim(text, " ,;:.()-"), claim} }
