package bid_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
)

// A list of a thousand lines is read and answered for the first time.
func BenchmarkThousandLines(b *testing.B) {
	q := thousand(b)
	for b.Loop() {
		b.StopTimer()
		bid.Forget(q.Edition)
		b.StartTimer()
		bid.Answers(q, quantity.US)
	}
}

// The same list is answered again for another unit.
func BenchmarkThousandLinesAgain(b *testing.B) {
	q := thousand(b)
	bid.Answers(q, quantity.US)
	for b.Loop() {
		bid.Answers(q, quantity.US)
	}
}

func thousand(b *testing.B) *quote.Quote {
	var lines []string
	for _, name := range []string{"lines.tsv"} {
		file, err := os.ReadFile("testdata/" + name)
		require.NoError(b, err)
		for _, l := range strings.Split(strings.TrimSpace(string(file)), "\n") {
			if cells := strings.Split(l, "\t"); len(cells) == 3 {
				lines = append(lines, cells[1])
			}
		}
	}
	d := stated(b)
	for i := range 1000 {
		d.Requirements = append(d.Requirements,
			quote.Requirement{Text: fmt.Sprintf("Item %d: %s", i, lines[i%len(lines)])})
	}
	q, err := quote.Compute(demo(b), d)
	require.NoError(b, err)
	return q
}
