package solve

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
)

// tight is a problem near its limits, with few enough answers to list: groups
// of three of which exactly one holds, clauses between them, and limits that
// little more than the lightest answers keep.
type tight struct {
	s      *Solver
	t      *Table
	guards []Lit
	all    [][]bool // every answer that keeps the clauses and limits
}

const tightGroups = 8

func makeTight(r *rand.Rand) *tight {
	n := 3 * tightGroups
	class := make([]int32, n)
	q := &tight{s: New(n)}
	var groups [][]int
	for g := range tightGroups {
		a := 3 * g
		groups = append(groups, []int{a, a + 1, a + 2})
		q.s.AddClause(Pos(a), Pos(a+1), Pos(a+2))
		q.s.AddClause(Neg(a), Neg(a+1))
		q.s.AddClause(Neg(a), Neg(a+2))
		q.s.AddClause(Neg(a+1), Neg(a+2))
		class[a], class[a+1], class[a+2] = int32(g), int32(g), int32(g)
	}
	var clauses [][]Lit
	for range 4 + r.Intn(10) {
		var c []Lit
		for range 2 + r.Intn(2) {
			c = append(c, Lit(r.Intn(2*n)))
		}
		clauses = append(clauses, c)
		q.s.AddClause(c...)
	}
	q.t = NewTable(q.s, class)
	weights := make([][]int64, 2)
	for i := range weights {
		for range n {
			weights[i] = append(weights[i], int64(r.Intn(1000)-100))
		}
	}
	var answers [][]bool
	model := make([]bool, n)
	var choose func(g int)
	choose = func(g int) {
		if g == len(groups) {
			ok := true
			for _, c := range clauses {
				ok = ok && slices.ContainsFunc(c, func(l Lit) bool { return model[l.Var()] != l.Negative() })
			}
			if ok {
				answers = append(answers, slices.Clone(model))
			}
			return
		}
		for _, v := range groups[g] {
			model[v] = true
			choose(g + 1)
			model[v] = false
		}
	}
	choose(0)
	sum := func(w []int64, m []bool) (s int64) {
		for v, b := range m {
			if b {
				s += w[v]
			}
		}
		return s
	}
	for _, w := range weights {
		var sums []int64
		for _, m := range answers {
			sums = append(sums, sum(w, m))
		}
		slices.Sort(sums)
		if len(sums) == 0 {
			return q
		}
		l := Limit{Max: sums[min(len(sums)-1, len(sums)/(2+r.Intn(30)))]}
		for _, g := range groups {
			var cs []Choice
			for _, v := range g {
				cs = append(cs, Choice{Pos(v), w[v]})
			}
			l.Groups = append(l.Groups, cs)
		}
		q.guards = append(q.guards, q.t.AddLimit(l))
		answers = slices.DeleteFunc(answers, func(m []bool) bool { return sum(w, m) > l.Max })
	}
	q.all = answers
	return q
}

func (q *tight) possible(lits []Lit) bool {
	return slices.ContainsFunc(q.all, func(m []bool) bool {
		for _, l := range lits {
			if l.Var() < len(m) && m[l.Var()] == l.Negative() {
				return false
			}
		}
		return true
	})
}

// What a table finds near the limits is held against the list of all answers:
// whole tables, with and without a bound on their work, and single questions
// asked the way that is left for the hard ones.
func TestTablesNearTheLimitAgreeWithTheListOfAnswers(t *testing.T) {
	judged, byPrices, unfinished := 0, 0, 0
	for seed := range seeds.Each(400) {
		r := rand.New(rand.NewSource(seed))
		q := makeTight(r)
		if len(q.all) == 0 {
			continue
		}
		answer := q.all[r.Intn(len(q.all))]
		var picks []Lit
		for range 3 {
			verdicts, result := q.t.Answer(Query{Base: q.guards, Picks: picks, Budget: 100,
				Work: int64(r.Intn(2) * 300)})
			if result == Sat {
				for v, verdict := range verdicts {
					beside := slices.DeleteFunc(slices.Clone(picks), func(p Lit) bool {
						return q.t.releases(v, p.Var())
					})
					for _, side := range []struct {
						l       Lit
						can, no Verdict
					}{{Pos(v), CanHold, CannotHold}, {Neg(v), CanFail, MustHold}} {
						is := q.possible(append(slices.Clip(beside), side.l))
						if verdict&side.can != 0 {
							require.True(t, is, "seed %d: %d beside %v is impossible", seed, side.l, picks)
						}
						if verdict&side.no != 0 {
							require.False(t, is, "seed %d: %d beside %v is possible", seed, side.l, picks)
						}
						judged++
						if !verdict.Decided() {
							unfinished++
						}
						q.t.dual = nil
						if ask := q.t.assumptions(v, side.l); q.t.lean(v, side.l) && !q.t.released[v] {
							require.False(t, q.possible(ask), "seed %d: prices against %d beside %v", seed, side.l,
								picks)
							byPrices++
						}
						r := q.t.attempt(side.l, nil, 0)
						require.Equal(t, is, r == Sat, "seed %d: %d beside %v", seed, side.l, picks)
						if r == Unsat {
							require.False(t, q.possible(q.s.Core()), "seed %d: the cause of %d beside %v", seed, side.l,
								picks)
						}
					}
				}
			}
			v := r.Intn(3 * tightGroups)
			picks = append(picks, Pos(v)^boolLit(!answer[v]))
		}
	}
	require.Greater(t, judged, 20000)
	require.Positive(t, byPrices, "clauses and limits together are rarely impossible by fractions where they are not "+
		"by a glance")
	require.Greater(t, unfinished, 0, "a bound on work leaves some undecided")
}

// However little work is allowed, what is answered is right, and calling again
// completes the table.
func TestAllowedWorkEndsQuestions(t *testing.T) {
	cut := 0
	for seed := range seeds.Each(200) {
		r := rand.New(rand.NewSource(seed))
		q := makeTight(r)
		ask := append(slices.Clone(q.guards), Pos(r.Intn(3*tightGroups)))
		q.s.Allow(1)
		got := q.s.Prove(ask, 0)
		q.s.Allow(0)
		if got == Unknown {
			cut++
			got = q.s.Prove(ask, 0)
		}
		require.Equal(t, q.possible(ask), got == Sat, "seed %d", seed)
		if got == Unsat {
			require.False(t, q.possible(q.s.Core()))
		}
	}
	require.Greater(t, cut, 10)
}
