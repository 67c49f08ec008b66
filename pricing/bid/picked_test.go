package bid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
)

// What a person picks for a line does not silence its amounts and exclusions.
func TestPickLeavesTheRestOfTheLine(t *testing.T) {
	for _, c := range []struct {
		line, pick string
		want       quote.Outcome
	}{
		{"Bench: 8 ft. long, one piece.", "bench-72", quote.Excepted},
		{"Bench for the crew, of one piece, 72 inches", "bench-72", quote.Meets},
		{"Something to sit on that is 90 inches", "bench-72", quote.Unanswered},
		{"Chair on a post in the floor, not the carpet", "att-swivel", quote.Unanswered},
		{"Chair on a post in the floor", "att-swivel", quote.Meets},
		{"Siren, 123 dB", "sr-100", quote.Unanswered},
		{"A loud one of 400 watts or more", "sr-200", quote.Excepted},
		{"Strong one at the rear, 650 lb, and a telescoping mast", "cot-manual", quote.MeetsWith},
		{"Strong one at the rear, 650 lb, and drive shaft loops", "cot-manual", quote.Meets},
		{"Strong one at the rear, 650 lb, and a 15 kW generator", "cot-manual", quote.Unanswered},
		{"Strong one at the rear, 800 lb", "cot-manual", quote.Unanswered}, // another cot carries them
		{"A loud one of 150 watts or more", "sr-200", quote.MeetsWith},
	} {
		q, _ := answersTo(t, c.line)
		q.Draft.Requirements[0].Pick = c.pick
		list := bid.Answers(q, quantity.US)
		assert.Equal(t, c.want, list[0].Outcome, "%s: %v, %s", c.line, list[0].Read, list[0].Offered)
		if list[0].Outcome != quote.MeetsWith {
			assert.Empty(t, list[0].Takes)
		}
		q.Draft.Requirements[0].Verdict = quote.Meets
		assert.Equal(t, quote.Meets, bid.Answers(q, quantity.US)[0].Outcome, "a person may say so")
	}
}

// Each piece of a line is told with its answer, in the words of the line, and what was not read is named.
func TestPieces(t *testing.T) {
	_, list := answersTo(t, `The “squad bench” shall be 72 in. long, w/ a jade inlay; siren of 100 W.`)
	require.Len(t, list, 1)
	var texts []string
	for _, p := range list[0].Pieces {
		texts = append(texts, p.Text)
		assert.Equal(t, p.Text != "a jade inlay", p.Read)
		if p.Read {
			assert.Equal(t, quote.Meets, p.Outcome, p.Text)
		}
	}
	assert.Equal(t, []string{`The “squad bench” shall be 72 in. long`, "a jade inlay", "siren of 100 W"}, texts)
	assert.Equal(t, quote.Unanswered, list[0].Outcome)
}
