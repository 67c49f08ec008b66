package bid_test

import (
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
)

// told is a line with the answers that a careful bid writer would give.
type told struct{ want, line, why string }

func toldLines(t testing.TB, name string) []told {
	file, err := os.ReadFile("testdata/" + name)
	require.NoError(t, err)
	var out []told
	for _, l := range strings.Split(strings.TrimSpace(string(file)), "\n") {
		if strings.HasPrefix(l, "#") {
			continue
		}
		cells := strings.Split(l, "\t")
		require.Len(t, cells, 3, l)
		out = append(out, told{cells[0], cells[1], cells[2]})
	}
	return out
}

// confusion is how the answers to a list of lines stand to those of a bid writer.
type confusion struct {
	table     map[string]int // by the writer's first answer and the one given, "w>m"
	terms     int            // lines that are terms of the bid
	known     int            // and were recognized
	asked     int            // lines that can be answered from the unit
	answered  int            // and were
	comply    int            // false "comply", with or without additions
	exception int            // false exceptions
	wrong     []string       // these lines
	failed    []string       // lines left open that could be answered
}

// letters of the answers.
var letters = map[quote.Outcome]string{quote.Meets: "m", quote.MeetsWith: "w", quote.Excepted: "x", quote.Clarify: "h",
	quote.Unanswered: "h"}

func confuse(t testing.TB, name string) confusion {
	c := confusion{table: map[string]int{}}
	lines := toldLines(t, name)
	d := stated(t)
	for _, l := range lines {
		d.Requirements = append(d.Requirements, quote.Requirement{Text: l.line})
	}
	q, err := quote.Compute(demo(t), d)
	require.NoError(t, err)
	for i, a := range bid.Answers(q, quantity.US) {
		l := lines[i]
		got := letters[a.Outcome]
		if a.Term != "" {
			got = "t"
		}
		right := strings.Contains(l.want, got)
		c.table[l.want[:1]+">"+got]++
		say := fmt.Sprintf("%s, not %s: %s (%s)", got, l.want, l.line, strings.Join(a.Read, "; "))
		switch {
		case strings.Contains(l.want, "t") && len(l.want) == 1:
			c.terms++
			if got == "t" {
				c.known++
			} else {
				c.failed = append(c.failed, say)
			}
		case !strings.Contains(l.want, "h") && !strings.Contains(l.want, "t"):
			c.asked++
			if got != "h" && got != "t" {
				c.answered++
			} else {
				c.failed = append(c.failed, say)
			}
		}
		if right || got == "h" || got == "t" {
			continue
		}
		if got == "x" {
			c.exception++
		} else {
			c.comply++
		}
		c.wrong = append(c.wrong, say)
	}
	return c
}

func TestLines(t *testing.T) {
	for _, name := range []string{"lines.tsv", "aside.tsv"} {
		t.Run(name, func(t *testing.T) {
			c := confuse(t, name)
			assert.Empty(t, c.wrong, "nothing is answered falsely")
			assert.GreaterOrEqual(t, 10*c.answered, 9*c.asked, "left open: %q", c.failed)
			assert.GreaterOrEqual(t, 100*c.known, 95*c.terms, "not recognized: %q", c.failed)
		})
	}
}

var report = flag.Bool("bench-report", false, "tell how the kept-aside lines are answered")

// TestBenchReport tells how the lines kept aside are answered: the table of the
// writer's answers by those given, and each line that is left open or answered falsely.
func TestBenchReport(t *testing.T) {
	if !*report {
		t.Skip("told by make bench")
	}
	c := confuse(t, "aside.tsv")
	for _, k := range slices.Sorted(maps.Keys(c.table)) {
		fmt.Printf("bid.aside.%s %d lines\n", strings.Replace(k, ">", "-as-", 1), c.table[k])
	}
	fmt.Printf("bid.aside.false-comply %d lines\n", c.comply)
	fmt.Printf("bid.aside.false-exception %d lines\n", c.exception)
	fmt.Printf("bid.aside.answered %.1f %%\n", 100*float64(c.answered)/float64(c.asked))
	fmt.Printf("bid.aside.terms %.1f %%\n", 100*float64(c.known)/float64(c.terms))
	for _, l := range slices.Concat(c.wrong, c.failed) {
		t.Log(l)
	}
}
