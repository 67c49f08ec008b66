package page

import (
	"strings"

	"boxwright/pricing/quote"
)

// textsKey is what the texts of an edition are kept under.
type textsKey struct{}

// OptionTexts are what each option of the catalogue is found by, in small letters: its
// own words, its group's, and what purchasers call either.
func OptionTexts(ed *quote.Edition) []string {
	return ed.Once(textsKey{}, func() any {
		asked := map[string]string{}
		for _, a := range ed.Cat.Asked {
			asked[a.ID] += " " + strings.Join(a.Names, " | ")
		}
		texts := make([]string, len(ed.Cat.Options))
		for i := range texts {
			o := &ed.Cat.Options[i]
			texts[i] = strings.ToLower(o.Label + " " + o.Spec + " " + ed.Cat.GroupByID(o.Group).Label + asked[o.ID] +
				asked[o.Group])
		}
		return texts
	}).([]string)
}

// Finds reports whether a text has all words of a search, which are in small letters.
func Finds(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}
