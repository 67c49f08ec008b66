package bid

import (
	"slices"

	"boxwright/pricing/bid/claims"
)

// isOne reports whether a claim asks for several of a thing without a number, "speakers behind the grille", that
// says it is one and of which a unit holds no more.
func (p *profile) isOne(tokens []claims.Token) bool {
	return p.most < 2 && slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
		return x.First && x.Unit == "" && x.Value == 1
	}) && slices.ContainsFunc(tokens, func(t claims.Token) bool {
		return t.Many && t.Role != claims.Modifier && p.ofGroupNamed(t.Word)
	})
}

// colorsBoth reports whether a claim asks for a color of the cab or the module apart from the other, and a thing has
// several colors on both: "two colors on the cab, white module".
func (p *profile) colorsBoth(words []string) bool {
	if !slices.Contains(words, cabWord) || !slices.Contains(words, moduleWord) ||
		!slices.ContainsFunc(words, func(w string) bool { return colors[w] }) {
		return false
	}
	return slices.ContainsFunc(p.numbers, func(x claims.Number) bool {
		return x.Unit == "" && x.Value > 1 && slices.Contains(x.Near, colorWord)
	})
}

var cabWord, colorWord = stems("cab")[0], stems("color")[0]

// outsideOf reports whether a thing is said to be over, under, ahead of or behind something, and never in it:
// "under the mirrors".
func (p *profile) outsideOf(what string) bool {
	by := false
	for s, own := range p.sides {
		by = by || own && s.of == what && around[s.where]
	}
	return by && !slices.ContainsFunc(p.entries, func(e entry) bool {
		return e[what]&claims.Inside != 0 && (e[what] != claims.AnyRole || len(e) == 1)
	})
}

var around = wordSet("over under ahead behind")

// ruledOut reports whether words hold all of something that the catalogue says a thing is not.
func (p *profile) ruledOut(words []string) bool {
	return slices.ContainsFunc(p.unsaid, func(list []string) bool {
		return !slices.ContainsFunc(list, func(w string) bool { return !slices.Contains(words, w) })
	})
}

// ofStranger reports whether a trait accounts for a material among some words of which a thing says another: sliding
// doors of polycarbonate are none of acrylic.
func (p *profile) ofStranger(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return materials[w] && !p.words[w] }) &&
		slices.ContainsFunc(slices.Concat(p.label, p.spec), func(w string) bool {
			return materials[w] && !slices.Contains(words, w)
		})
}

// materials are those of which a thing is of one.
var materials = wordSet("acrylic polycarbonate fiberglass stainless plywood")
