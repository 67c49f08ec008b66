package app

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"boxwright/web/assets/catalogue/large"
)

// largeSizes are how many options the catalogues have that large ones are measured
// with; 549 are those of the demonstration.
var largeSizes = []int{2000, 5000, 10000}

// TestLargeReport prints what a large catalogue costs: its loading, the parts of
// the answers to a varied session, searches, and completions for a goal.
func TestLargeReport(t *testing.T) {
	if !*benchReport {
		t.Skip("measures only with -bench-report")
	}
	collectAsInPage(t)
	for _, n := range largeSizes {
		t.Run(fmt.Sprint(n), func(t *testing.T) { largeReport(t, n) })
	}
}

func largeReport(t *testing.T, options int) {
	file, err := large.File(options, 1)
	require.NoError(t, err)
	say := func(name string, took time.Duration) {
		fmt.Printf("large_%d_%s_ms %.2f ms\n", options, name, took.Seconds()*1000)
	}
	p := newPresser()
	_, took := p.ask(Act{Do: "load-catalogue", ID: "large.json", Value: string(file)})
	say("load", took)
	for _, a := range []Act{{Do: "new", ID: "cut-14500-158-gas"}, {Do: "go", ID: "unit"},
		{Do: "chapter", ID: "exterior"}} {
		p.ask(a)
	}
	for _, goal := range []string{"cheapest", "lightest", "soonest"} {
		_, took := p.ask(Act{Do: "complete", ID: goal})
		say("fill_"+goal, took)
	}
	p.ask(Act{Do: "complete"})
	p.ask(Act{Do: "chapter", ID: "exterior"})
	for _, words := range []string{"l", "li", "light"} {
		_, took := p.ask(Act{Do: "search", Value: words})
		say("search_"+words, took)
	}
	p.ask(Act{Do: "search"})
	for range 30 { // in wasm, until the engine has optimized the code
		p.press()
	}
	var first, second []time.Duration
	for range 100 {
		x := p.press()
		first = append(first, x.first)
		if x.second > 0 {
			second = append(second, x.second)
		}
	}
	for _, part := range []struct {
		name string
		took []time.Duration
	}{{"press_first", first}, {"press_second", second}} {
		for _, q := range []struct {
			name string
			at   float64
		}{{"p50", .5}, {"p95", .95}, {"worst", 1}} {
			say(part.name+"_"+q.name, quantile(part.took, q.at))
		}
	}
	lintLarge(p, say)
}

// lintLarge times going through the rules, slice by slice.
func lintLarge(p *presser, say func(string, time.Duration)) {
	p.ask(Act{Do: "go", ID: "needs"})
	p.ask(Act{Do: "go", ID: "catalogue"})
	partial, all := p.ask(Act{Do: "lint"})
	longest := time.Duration(0)
	for partial {
		var took time.Duration
		partial, took = p.ask(Act{Do: "rest"})
		all += took
		longest = max(longest, took)
	}
	say("lint", all)
	say("lint_longest_slice", longest)
}

func quantile(list []time.Duration, at float64) time.Duration {
	if len(list) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(list))
	return sorted[int(at*float64(len(sorted)-1))]
}
