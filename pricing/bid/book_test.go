package bid_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
)

func TestBook(t *testing.T) {
	b := bid.ReadBook("not a book")
	b.Learn("Larkspur County", quote.Requirement{Text: "Mats in the “cab”", Pick: "cfit-mat"}, false)
	b.Stand("bond", bid.Own{Verdict: quote.Meets, Answer: "A bond is furnished."})
	b.Stand("no such term", bid.Own{Verdict: quote.Meets})
	b = bid.ReadBook(b.Text())

	list := []quote.Requirement{{Text: `MATS  in the "cab"`}, {Text: "A bid bond of 5% shall be furnished"},
		{Text: "Siren"}}
	corrected, standing := b.Apply(list, "LARKSPUR  county")
	assert.Equal(t, [2]int{1, 1}, [2]int{corrected, standing})
	assert.Equal(t, "cfit-mat", list[0].Pick, "the same line of the same purchaser, however it is spaced")
	assert.Equal(t, "A bond is furnished.", list[1].Answer)
	assert.Empty(t, list[2].Verdict)

	other := []quote.Requirement{{Text: `Mats in the "cab"`}}
	b.Apply(other, "Another county")
	assert.Empty(t, other[0].Pick, "what one purchaser meant is not what another means")

	b.Learn("Larkspur County", quote.Requirement{Text: "Mats in the “cab”"}, false)
	b.Stand("bond", bid.Own{})
	again := []quote.Requirement{{Text: `Mats in the "cab"`}, {Text: "Bid bond"}}
	b.Apply(again, "Larkspur County")
	assert.Equal(t, []quote.Requirement{{Text: `Mats in the "cab"`}, {Text: "Bid bond"}}, again, "taken back")

	for i := range 40 {
		for k := range 300 {
			b.Learn(fmt.Sprint("County ", i),
				quote.Requirement{Text: fmt.Sprint("Line ", k), Answer: strings.Repeat("x", 40)}, false)
		}
	}
	assert.Less(t, len(b.Text()), 201<<10, "it stays within what a browser keeps")
}
