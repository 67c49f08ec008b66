package solve

import (
	"flag"
	"fmt"
	"math/rand"
	"slices"
	"testing"
	"time"

	"github.com/go-air/gini"
)

var benchReport = flag.Bool("bench-report", false, "print measured figures, one 'name value unit' a line")

// session is twenty clicks on what is open, the same for whoever answers.
func session(p *cnf, seed int64) [][]Lit {
	r := rand.New(rand.NewSource(seed))
	t := p.table()
	var picks []Lit
	out := [][]Lit{nil}
	for range 20 {
		verdicts, _ := t.Answer(Query{Picks: picks})
		var open []Lit
		for v, verdict := range verdicts {
			if verdict == CanHold|CanFail && !slices.ContainsFunc(picks, func(l Lit) bool { return l.Var() == v }) {
				open = append(open, Pos(v))
			}
		}
		if len(open) == 0 {
			break
		}
		picks = append(slices.Clone(picks), open[r.Intn(len(open))])
		out = append(out, picks)
	}
	return out
}

// giniTable answers the same questions with gini, used as well as it can be:
// it lives on, and every answer it finds is taken for all it tells.
func giniTable(g *gini.Gini, vars int, picks []Lit) (open int) {
	can := make([]bool, 2*vars)
	ask := func(except int, l Lit) bool {
		for _, p := range picks {
			if p.Var() != except {
				g.Assume(giniLit(p))
			}
		}
		if l >= 0 {
			g.Assume(giniLit(l))
		}
		return g.Solve() == 1
	}
	take := func() {
		for v := range vars {
			if g.Value(giniLit(Pos(v))) {
				can[Pos(v)] = true
			} else {
				can[Neg(v)] = true
			}
		}
	}
	picked := map[int]bool{}
	for _, p := range picks {
		picked[p.Var()] = true
	}
	if ask(-1, -1) {
		take()
	}
	for v := range vars {
		for _, l := range []Lit{Pos(v), Neg(v)} {
			if can[l] {
				continue
			}
			if ask(v, l) {
				if picked[v] {
					can[l] = true
				} else {
					take()
				}
			}
		}
		if can[Pos(v)] && can[Neg(v)] {
			open++
		}
	}
	return open
}

// TestBenchReport prints what a click costs on the public models, and how many
// times longer gini takes for it.
func TestBenchReport(t *testing.T) {
	if !*benchReport {
		t.Skip("measures only with -bench-report")
	}
	for _, c := range publicCounts {
		t.Run(c.model, func(t *testing.T) {
			p := readModel(t, c.model)
			var ours, theirs []time.Duration
			var load, first time.Duration
			for seed := range int64(3) {
				steps := session(p, seed)
				from := time.Now()
				table := p.table()
				load = time.Since(from)
				for i, picks := range steps {
					from = time.Now()
					table.Answer(Query{Picks: picks})
					if i == 0 {
						first = time.Since(from)
					} else {
						ours = append(ours, time.Since(from))
					}
				}
			}
			g := p.gini()
			for i, picks := range session(p, 0) {
				from := time.Now()
				giniTable(g, p.vars, picks)
				if i > 0 {
					theirs = append(theirs, time.Since(from))
				}
			}
			name := "model_" + c.model
			fmt.Printf("%s_load_ms %.2f ms\n", name, ms(load))
			fmt.Printf("%s_table_ms %.2f ms\n", name, ms(first))
			fmt.Printf("%s_click_ms_p50 %.2f ms\n", name, ms(at(ours, .5)))
			fmt.Printf("%s_click_ms_p95 %.2f ms\n", name, ms(at(ours, .95)))
			fmt.Printf("%s_click_gini_ratio %.1f times\n", name, ms(at(theirs, .5))/ms(at(ours, .5)))
		})
	}
}

func ms(d time.Duration) float64 { return float64(d.Nanoseconds()) / 1e6 }

func at(ds []time.Duration, q float64) time.Duration {
	slices.Sort(ds)
	return ds[int(q*float64(len(ds)-1))]
}

func BenchmarkModelClick(b *testing.B) {
	for _, name := range []string{"pcrichmond", "ecos", "automotive01", "busybox"} {
		b.Run(name, func(b *testing.B) {
			p := readModel(b, name)
			steps := session(p, 0)
			for b.Loop() {
				b.StopTimer()
				t := p.table()
				t.Answer(Query{})
				b.StartTimer()
				for _, picks := range steps[1:] {
					t.Answer(Query{Picks: picks})
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*(len(steps)-1)), "ns/click")
		})
	}
}
