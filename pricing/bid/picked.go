package bid

import (
	"slices"

	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

// picked answers a line of which a person said what it asks for. That does not silence the
// rest of it: the figures that were read are judged as before, the amounts of the line and what
// it rules out are held against the picked thing, and what that does not tell stays open.
func (j *judge) picked(a *Answer, read *reading, text, id string) {
	asked := claim{same: []string{id}}
	p := j.v.byID[id]
	tokens := j.v.known(claims.Read(text).Tokens)
	var parts []part
	figures := map[float64]bool{} // amounts that figures are held to
	for i := range read.claims {
		c := &read.claims[i]
		if c.gauge == nil && c.room == nil && c.outlets == nil {
			if p != nil && j.v.beside(p, c) {
				parts = append(parts, j.second(c))
			}
			continue // else the picked thing stands for what was read
		}
		f := j.claim(c)
		if f.outcome == quote.MeetsWith && f.take.ID != id { // by another thing than the picked one
			f.outcome, f.take = quote.Unanswered, Take{}
		}
		parts, figures[c.want] = append(parts, f), true
		if c.most > 0 {
			f.outcome, f.take = quote.Unanswered, Take{} // one end was judged
			parts = append(parts, f)
		}
	}
	open, short := p == nil, claim{}
	if p != nil {
		for _, n := range p.bounded(claims.Numbers(tokens)) {
			fit := p.has(n)
			if fit == falls && !figures[n.Value] && !j.v.reached(p, n) {
				short = claim{short: []string{id}, by: n}
				continue
			}
			open = open || !figures[n.Value] && fit != exact && fit != exceeds
			if n.Unit == "" && n.Value > 1 && fit == exact && int(n.Value) <= p.most {
				asked.qty = max(asked.qty, int(n.Value))
			}
		}
		for _, piece := range pieces(tokens) {
			open = open || !j.leaves(p, &asked, piece.tokens)
		}
	}
	thing := j.things(&asked)
	if short.short != nil {
		thing = j.falling(&short)
	}
	if open && rank[thing.outcome] > rank[quote.Unanswered] {
		thing.outcome, thing.take = quote.Unanswered, Take{}
		thing.read += " (not every amount and exclusion of the line is stated of it)"
	}
	j.worst(a, append([]part{thing}, parts...))
}

// leaves reports whether a thing is free of all that a piece of a line rules out.
func (j *judge) leaves(p *profile, asked *claim, piece []claims.Token) bool {
	ruled := claims.RuledWords(piece)
	if ruled == nil || j.v.rulesOutRivals(piece, []*claim{asked}) {
		return true
	}
	return len(ruled.Out) > 0 && !slices.ContainsFunc(ruled.Out, func(w string) bool { return !p.never[w] })
}

// beside reports whether a claim is on a thing beside the one that a person picked: of another group,
// with no word that this is called by, nor all words true of it.
func (v *vocabulary) beside(p *profile, c *claim) bool {
	all := slices.Concat(c.same, c.more, c.short)
	if slices.ContainsFunc(all, func(id string) bool { return id == p.id || v.byID[id].group == p.group }) {
		return false
	}
	called := func(w string) bool {
		return slices.Contains(p.label, w) ||
			slices.ContainsFunc(p.names, func(n []string) bool { return slices.Contains(n, w) })
	}
	return !slices.ContainsFunc(c.words, called) &&
		slices.ContainsFunc(c.words, func(w string) bool { return !p.words[w] })
}

// second answers a claim on a thing beside the picked one. That it cannot be had is no exception:
// the line may have been taken for it by mistake.
func (j *judge) second(c *claim) part {
	f := j.claim(c)
	if f.outcome == quote.Excepted {
		f.outcome = quote.Unanswered
	}
	return f
}

// reached reports whether another thing of a group has an amount that one falls short of.
func (v *vocabulary) reached(p *profile, n claims.Number) bool {
	return slices.ContainsFunc(v.list, func(o profile) bool {
		return o.id != p.id && !o.kept && o.group == p.group && o.group != "" && v.reaches(&o, nil, []claims.Number{n})
	})
}
