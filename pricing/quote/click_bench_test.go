package quote_test

import (
	"flag"
	"fmt"
	"math/rand"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

var benchReport = flag.Bool("bench-report", false, "print measured figures, one 'name value unit' a line")

// TestBenchReport prints what the whole answer to a click takes on the demo
// catalogue: the table of what can be chosen, the figures and the findings of
// every check, the dates and the price. Sessions are of picks that are open,
// begun on every chassis in turn; a tenth of the clicks takes a choice back.
func TestBenchReport(t *testing.T) {
	if !*benchReport {
		t.Skip("measures only with -bench-report")
	}
	const rounds, clicks = 24, 24
	ed := quotetest.Demo(t)
	r := rand.New(rand.NewSource(1))
	var answer, take, decide []float64
	timed := func(into *[]float64, f func()) {
		from := time.Now()
		f()
		*into = append(*into, time.Since(from).Seconds()*1000)
	}
	undecided := 0
	for round := range rounds {
		d := quote.Begin(ed, ed.Cat.Chassis[round%len(ed.Cat.Chassis)].ID, "", quotetest.Today)
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		for range clicks {
			d = d.Clone()
			if own := chosen(&d.Unit); len(own) > 0 && r.Intn(10) == 0 {
				d.Unit.Drop(own[r.Intn(len(own))])
			} else if id := open(r, q); id != "" {
				timed(&take, func() {
					if u, _, ok := propose.Take(ed, d, id); ok {
						d.Unit = u
					}
				})
			}
			timed(&answer, func() { q, err = quote.Compute(ed, d) })
			require.NoError(t, err)
			if q.Undecided() {
				undecided++
				timed(&decide, func() {
					for effort := 1; q.Undecided(); effort++ {
						q, err = quote.ComputeWith(ed, d, effort)
					}
				})
				require.NoError(t, err)
			}
		}
	}
	for _, x := range []struct {
		name string
		ms   []float64
	}{{"answer", answer}, {"take", take}, {"answer_decided", decide}} {
		t.Run(x.name, func(t *testing.T) {
			slices.Sort(x.ms)
			for _, q := range []struct {
				name string
				at   float64
			}{{"p50", .5}, {"p95", .95}, {"p99", .99}, {"worst", 1}} {
				if len(x.ms) > 0 {
					fmt.Printf("demo_%s_ms_%s %.2f ms\n", x.name, q.name, x.ms[int(q.at*float64(len(x.ms)-1))])
				}
			}
		})
	}
	fmt.Printf("demo_answer_undecided %d answers\n", undecided)
}

// chosen are the picks that the customer made.
func chosen(u *config.Unit) []string {
	var out []string
	for _, p := range u.Picks {
		if !p.Filled {
			out = append(out, p.Option)
		}
	}
	return out
}

// open is an option that can be chosen and is not in the unit; empty when it
// takes too long to find one.
func open(r *rand.Rand, q *quote.Quote) string {
	cat := q.Edition.Cat
	for range 100 {
		id := cat.Options[r.Intn(len(cat.Options))].ID
		if !q.Draft.Unit.Has(id) && q.State(id) == rules.Open {
			return id
		}
	}
	return ""
}
