package bid_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
)

// A line that sounds like an option and asks for something else is not answered by that option.
func TestFalseFriends(t *testing.T) {
	lines := toldLines(t, "friends.tsv") // what is wanted is the option
	q, list := answersOf(t, lines)
	for i, a := range list {
		if a.Outcome != quote.Meets && a.Outcome != quote.MeetsWith {
			continue
		}
		id := lines[i].want
		label := q.Edition.Cat.LabelOf(id)
		taken := slices.ContainsFunc(a.Takes, func(x bid.Take) bool { return x.ID == id })
		assert.False(t, taken || slices.Contains(a.Read, label), "%s answers %q (%s)", label, lines[i].line, lines[i].why)
	}
}
