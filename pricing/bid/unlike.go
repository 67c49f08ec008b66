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
