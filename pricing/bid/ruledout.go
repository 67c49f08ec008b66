package bid

import (
	"slices"
	"strings"

	"boxwright/pricing/bid/claims"
)

// rulesOutRivals reports whether a piece only rules out what the things that a claim of
// the same line asks for stand in the place of: "roll-up doors, no hinged ones".
func (v *vocabulary) rulesOutRivals(tokens []claims.Token, list []*claim) bool {
	words := v.loud(claims.Words(tokens))
	if !claims.Ruled(tokens) || len(words) == 0 || len(claims.Numbers(tokens)) > 0 {
		return false
	}
	usual := claims.Instead(tokens) && slices.ContainsFunc(words, func(w string) bool { return customary[w] })
	return slices.ContainsFunc(list, func(c *claim) bool {
		if c == nil || len(c.same)+len(c.more)+len(c.short) == 0 {
			return false
		}
		if usual && !slices.ContainsFunc(words, func(w string) bool {
			return !customary[w] && !slices.ContainsFunc(v.list, func(p profile) bool {
				return p.group == v.groupOf(c) && p.words[w]
			})
		}) {
			return true // "in lieu of the customary spacing"
		}
		asked := slices.Concat(c.same, c.more, c.short)
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

// without reads tokens that only rule something out, "no plywood": where no more than one group has
// things of that, they ask for one of it that is free of it.
func (v *vocabulary) without(words []string, list []claims.Number, tokens []claims.Token) (claim, bool) {
	ruled, group := claims.RuledWords(tokens), ""
	if len(list) > 0 || len(ruled.Before) > 0 {
		return claim{}, false
	}
	words = v.loud(words)
	for _, w := range words {
		for _, i := range v.with[w] {
			p := &v.list[i]
			if p.kept {
				continue
			}
			if p.beside || p.group == "" || group != "" && group != p.group {
				return claim{}, false
			}
			group = p.group
		}
	}
	if group == "" {
		return claim{}, false
	}
	c := claim{words: words, plain: words}
	for i := range v.list {
		p := &v.list[i]
		if p.group == group && !p.kept && !slices.ContainsFunc(words, func(w string) bool { return !p.never[w] }) {
			c.same = append(c.same, p.id)
		}
	}
	return c, c.same != nil
}

// free reports whether a thing is what a line that rules something out leaves: it is
// free of some of the words that are ruled out, and all others are true of it.
func (v *vocabulary) free(p *profile, words []string, ruled *claims.Ruling) bool {
	never := false
	for _, w := range v.loud(words) {
		switch {
		case p.never[w] && !p.another[w] && !slices.Contains(ruled.Before, w):
			never = never || slices.Contains(ruled.Out, w)
		case !p.words[w]:
			return false
		}
	}
	return never
}
