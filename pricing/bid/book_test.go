package bid_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
)

// A standing answer goes to no line that only sounds like its term, or asks for something of
// the unit as well.
func TestStandingAnswersOfPlainTermsAlone(t *testing.T) {
	b := new(bid.Book)
	for _, term := range []string{"delivery", "bidder", "award", "inspection", "payment"} {
		assert.NoError(t, b.Stand(term, bid.Own{Verdict: quote.Meets}))
	}
	list := []quote.Requirement{{Text: "Freight prepaid, FOB destination"},
		{Text: "The contractor shall furnish a bulletproof windshield"},
		{Text: "Seats evaluated to a dynamic standard"},
		{Text: "Freight prepaid; headroom shall be at least 80 inches"},
		{Text: "Payment shall be made after acceptance"}}
	_, standing := b.Apply(demo(t), list, "")
	assert.Equal(t, 2, standing)
	assert.Equal(t, []quote.Outcome{quote.Meets, "", "", "", quote.Meets}, []quote.Outcome{list[0].Verdict,
		list[1].Verdict, list[2].Verdict, list[3].Verdict, list[4].Verdict})
}

// Two computers' books are put together: what is kept here stands, what is only there comes
// in.
func TestMergedBooks(t *testing.T) {
	here, there := new(bid.Book), new(bid.Book)
	require := func(err error) { assert.NoError(t, err) }
	require(here.Stand("bond", bid.Own{Verdict: quote.Meets, Answer: "here"}))
	require(there.Stand("bond", bid.Own{Verdict: quote.Excepted, Answer: "there"}))
	require(there.Stand("payment", bid.Own{Verdict: quote.Clarify}))
	there.Standing["no such term"] = bid.Own{Verdict: quote.Meets}
	here.Learn("Alder Falls", quote.Requirement{Text: "Mats", Pick: "cfit-mat"}, false)
	there.Learn("Alder Falls", quote.Requirement{Text: "Mats", Pick: "acc-keypad"}, false)
	there.Learn("Alder Falls", quote.Requirement{Text: "Entry code", Pick: "acc-keypad"}, false)
	there.Learn("Larkspur", quote.Requirement{Text: "Cot", Pick: "cot-power"}, false)
	here.Merge(there)
	assert.Equal(t, map[string]bid.Own{"bond": {Verdict: quote.Meets, Answer: "here"},
		"payment": {Verdict: quote.Clarify}},
		here.Standing)
	list := []quote.Requirement{{Text: "Mats"}, {Text: "Entry code"}}
	here.Apply(demo(t), list, "Alder Falls")
	assert.Equal(t, []string{"cfit-mat", "acc-keypad"}, []string{list[0].Pick, list[1].Pick})
	other := []quote.Requirement{{Text: "Cot"}}
	here.Apply(demo(t), other, "Larkspur")
	assert.Equal(t, "cot-power", other[0].Pick)
}

func TestBook(t *testing.T) {
	b := bid.ReadBook("not a book")
	b.Learn("Larkspur County", quote.Requirement{Text: "Mats in the “cab”", Pick: "cfit-mat"}, false)
	b.Stand("bond", bid.Own{Verdict: quote.Meets, Answer: "A bond is furnished."})
	b.Stand("no such term", bid.Own{Verdict: quote.Meets})
	b = bid.ReadBook(b.Text())

	list := []quote.Requirement{{Text: `MATS  in the "cab"`}, {Text: "A bid bond of 5% shall be furnished"},
		{Text: "Siren"}}
	corrected, standing := b.Apply(demo(t), list, "LARKSPUR  county")
	assert.Equal(t, [2]int{1, 1}, [2]int{corrected, standing})
	assert.Equal(t, "cfit-mat", list[0].Pick, "the same line of the same purchaser, however it is spaced")
	assert.Equal(t, "A bond is furnished.", list[1].Answer)
	assert.Empty(t, list[2].Verdict)

	other := []quote.Requirement{{Text: `Mats in the "cab"`}}
	b.Apply(demo(t), other, "Another county")
	assert.Empty(t, other[0].Pick, "what one purchaser meant is not what another means")

	b.Learn("Larkspur County", quote.Requirement{Text: "Mats in the “cab”"}, false)
	b.Stand("bond", bid.Own{})
	again := []quote.Requirement{{Text: `Mats in the "cab"`}, {Text: "Bid bond"}}
	b.Apply(demo(t), again, "Larkspur County")
	assert.Equal(t, []quote.Requirement{{Text: `Mats in the "cab"`}, {Text: "Bid bond"}}, again, "taken back")

	for i := range 40 {
		for k := range 300 {
			b.Learn(fmt.Sprint("County ", i),
				quote.Requirement{Text: fmt.Sprint("Line ", k), Answer: strings.Repeat("x", 40)}, false)
		}
	}
	assert.Less(t, len(b.Text()), 201<<10, "it stays within what a browser keeps")
}
