package rules

import (
	"flag"
	"fmt"
	"math/rand"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/go-air/gini"
	"github.com/go-air/gini/z"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/solve"
)

var benchReport = flag.Bool("bench-report", false, "print measured figures, one 'name value unit' a line")

// times gathers durations of one kind.
type times []time.Duration

func (ts *times) measure(f func()) {
	from := time.Now()
	f()
	*ts = append(*ts, time.Since(from))
}

func (ts times) at(q float64) float64 {
	if len(ts) == 0 {
		return 0
	}
	s := slices.Clone(ts)
	slices.Sort(s)
	return float64(s[int(q*float64(len(s)-1))].Nanoseconds()) / 1e6
}

func print(name string, value float64, unit string) {
	fmt.Printf("%s %s %s\n", name, strconv.FormatFloat(value, 'f', -1, 64), unit)
}

func (ts times) print(name string) {
	for _, q := range []struct {
		name string
		at   float64
	}{{"p50", .5}, {"p95", .95}, {"p99", .99}, {"worst", 1}} {
		print(name+"_ms_"+q.name, float64(int(ts.at(q.at)*1000))/1000, "ms")
	}
}

// show is one measured catalogue: sessions of clicks as a customer makes them.
type show struct {
	cat    *config.Catalogue
	limits func(u *config.Unit) *Limits
	start  func(r *rand.Rand, e *Engine) config.Unit
	rounds int
	clicks int
	proof  int64 // conflicts for a cheapest unit; 0 leaves that out
}

func (s *show) run(name string, others bool) {
	var load, first, click, settle, fill, complete times
	var asked questions
	undecided, unsettled, proven, completed := 0, 0, 0, 0
	r := rand.New(rand.NewSource(1))
	for range s.rounds {
		var e *Engine
		load.measure(func() { e, _ = Compile(s.cat) })
		c := clicker{r: r, e: e, u: s.start(r, e)}
		var a Answer
		for i := range s.clicks + 1 {
			l := s.limits(&c.u)
			if i == 0 {
				first.measure(func() { a = e.Answer(&c.u, l) })
			} else {
				click.measure(func() { a = e.Answer(&c.u, l) })
			}
			if undecided += len(a.Undecided); len(a.Undecided) > 0 {
				settle.measure(func() { a = e.AnswerWithin(&c.u, l, 5000) })
				unsettled += len(a.Undecided)
			}
			if others {
				asked.ask(&c, &a, l)
				fill.measure(func() { e.Fill(&c.u, l) })
			}
			c.click(&a)
		}
		if others && s.proof > 0 {
			l := s.limits(&c.u)
			price := func(id string) int64 { return int64(len(id)*7919+int(id[len(id)-1])*131) % 9000 }
			complete.measure(func() {
				completed++
				if e.Complete(&c.u, l, price, s.proof).Proven() {
					proven++
				}
			})
		}
	}
	click.print(name + "_click")
	print(name+"_undecided", float64(undecided), "options")
	print(name+"_unsettled", float64(unsettled), "options")
	print(name+"_settle_ms_worst", settle.at(1), "ms")
	if !others {
		return
	}
	print(name+"_load_ms", load.at(.5), "ms")
	print(name+"_table_ms", first.at(.5), "ms")
	for _, q := range []struct {
		name string
		ts   times
	}{{"_why", asked.why}, {"_why_first", asked.whyFirst}, {"_mend", asked.mend}, {"_mend_first", asked.mendFirst}} {
		print(name+q.name+"_ms_p50", q.ts.at(.5), "ms")
		print(name+q.name+"_ms_p95", q.ts.at(.95), "ms")
	}
	print(name+"_fill_ms_p50", fill.at(.5), "ms")
	if completed == 0 {
		return
	}
	print(name+"_complete_ms_p50", complete.at(.5), "ms")
	print(name+"_complete_ms_worst", complete.at(1), "ms")
	print(name+"_complete_proven", float64(proven)/float64(completed), "of all")
}

// questions are those about one option that is ruled out: what is shown first,
// with the budget of an answer, and all of it.
type questions struct{ why, whyFirst, mend, mendFirst times }

func (q *questions) ask(c *clicker, a *Answer, l *Limits) {
	for range 50 {
		v := c.r.Intn(c.e.n)
		if a.States[v] != RuledOut {
			continue
		}
		id := c.e.ids[v]
		measure := func(first, whole *times, some, rest func()) {
			first.measure(some)
			whole.measure(rest)
			(*whole)[len(*whole)-1] += (*first)[len(*first)-1]
		}
		measure(&q.whyFirst, &q.why,
			func() { c.e.WhyWithin(&c.u, l, id, DefaultBudget) },
			func() { c.e.Why(&c.u, l, id) })
		measure(&q.mendFirst, &q.mend,
			func() { c.e.MendWithin(&c.u, l, id, nil, DefaultBudget) },
			func() { c.e.Mend(&c.u, l, id, nil) })
		return
	}
}

// ratio is how many times longer gini takes for the tables of a session by the
// rules alone; it knows no limits.
func (s *show) ratio(name string) {
	r := rand.New(rand.NewSource(2))
	e, _ := Compile(s.cat)
	c := clicker{r: r, e: e, u: s.start(r, e)}
	e, _ = Compile(s.cat)
	c.e = e
	g := gini.NewV(e.solver.Vars() + 8)
	for _, p := range e.parts {
		for _, clause := range p.clauses {
			for _, l := range clause {
				g.Add(giniLit(l))
			}
			g.Add(0)
		}
	}
	var ours, theirs times
	a := e.Answer(&c.u, nil)
	for range 10 {
		c.click(&a)
		ours.measure(func() { a = e.Answer(&c.u, nil) })
		theirs.measure(func() { giniTable(e, g, e.picks(&c.u)) })
	}
	print(name+"_click_gini_ratio", float64(int(theirs.at(.5)/ours.at(.5)*10))/10, "times")
}

func giniLit(l solve.Lit) z.Lit {
	if l.Negative() {
		return z.Var(l.Var() + 1).Neg()
	}
	return z.Var(l.Var() + 1).Pos()
}

// giniTable answers what a table answers, with gini used as well as it can be:
// it lives on, and every answer it finds is taken for all it tells.
func giniTable(e *Engine, g *gini.Gini, picks []solve.Lit) {
	can := make([]bool, 2*e.n)
	for v := range e.n {
		for _, l := range []solve.Lit{solve.Pos(v), solve.Neg(v)} {
			if can[l] {
				continue
			}
			others := e.otherPicks(v, picks)
			for _, p := range others {
				g.Assume(giniLit(p))
			}
			g.Assume(giniLit(l))
			if g.Solve() != 1 {
				continue
			}
			can[l] = true
			if len(others) == len(picks) {
				for x := range e.n {
					if g.Value(giniLit(solve.Pos(x))) {
						can[solve.Pos(x)] = true
					} else {
						can[solve.Neg(x)] = true
					}
				}
			}
		}
	}
}

func demoShow(t testing.TB, scale float64) *show {
	cat := demo(t)
	return &show{cat: cat, rounds: 20, clicks: 22, proof: 5000,
		limits: func(u *config.Unit) *Limits { return demoLimits(cat, u, scale) },
		start: func(r *rand.Rand, e *Engine) config.Unit {
			for {
				u := config.Unit{Chassis: cat.Chassis[r.Intn(len(cat.Chassis))].ID,
					Body: cat.Bodies[r.Intn(len(cat.Bodies))].ID}
				if e.solver.Solve(e.picks(&u), 0) == solve.Sat {
					return u
				}
			}
		}}
}

func generatedShow(options int, seed int64, scale float64, rounds int) *show {
	g := generate(options, seed)
	return &show{cat: g.cat, rounds: rounds, clicks: 22, proof: 5000,
		limits: func(*config.Unit) *Limits { return g.limits(scale) },
		start:  func(*rand.Rand, *Engine) config.Unit { return config.Unit{Chassis: "c0", Body: "b0"} }}
}

// TestBenchReport prints what answers cost on the demo catalogue, with every
// capacity scaled, and on generated ones.
func TestBenchReport(t *testing.T) {
	if !*benchReport {
		t.Skip("measures only with -bench-report")
	}
	t.Run("demo", func(t *testing.T) {
		demoShow(t, 1).run("demo", true)
		demoShow(t, 1).ratio("demo")
	})
	for _, c := range []struct {
		name  string
		scale float64
	}{{"110", 1.10}, {"103", 1.03}, {"100", 1}, {"097", 0.97}} {
		name := "demo_capacity_" + c.name
		t.Run(name, func(t *testing.T) { demoShow(t, c.scale).run(name, false) })
	}
	for _, n := range []int{400, 2000, 10000} {
		name := fmt.Sprintf("generated_%d", n)
		t.Run(name, func(*testing.T) {
			s := generatedShow(n, 3, 1.03, max(1, 2000/n))
			s.clicks = min(22, max(5, 44000/n))
			if n > 5000 {
				s.proof = 0 // takes minutes
			}
			s.run(name, true)
			s.ratio(name)
		})
	}
}

func BenchmarkDemoClick(b *testing.B) {
	s := demoShow(b, 1)
	e, err := Compile(s.cat)
	require.NoError(b, err)
	c := clicker{r: rand.New(rand.NewSource(1)), e: e}
	c.u = s.start(c.r, e)
	a := e.Answer(&c.u, s.limits(&c.u))
	for b.Loop() {
		b.StopTimer()
		c.click(&a)
		l := s.limits(&c.u)
		b.StartTimer()
		a = e.Answer(&c.u, l)
	}
}
