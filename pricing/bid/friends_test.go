package bid_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
)

// A line that sounds like an option and asks for something else is not answered by that option.
func TestFalseFriends(t *testing.T) {
	file, err := os.ReadFile("testdata/friends.tsv")
	require.NoError(t, err)
	var ids []string
	var lines []told
	for _, l := range strings.Split(strings.TrimSpace(string(file)), "\n") {
		if !strings.HasPrefix(l, "#") {
			cells := strings.Split(l, "\t")
			require.Len(t, cells, 3, l)
			ids, lines = append(ids, cells[0]), append(lines, told{line: cells[1], why: cells[2]})
		}
	}
	q, list := answersOf(t, lines)
	for i, a := range list {
		if a.Outcome != quote.Meets && a.Outcome != quote.MeetsWith {
			continue
		}
		label := q.Edition.Cat.LabelOf(ids[i])
		taken := slices.ContainsFunc(a.Takes, func(x bid.Take) bool { return x.ID == ids[i] })
		assert.False(t, taken || slices.Contains(a.Read, label), "%s answers %q (%s)", label, lines[i].line, lines[i].why)
	}
}
