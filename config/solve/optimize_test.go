package solve

import (
	"fmt"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
)

// posed is a puzzle with costs, put to a solver of its own.
type posed struct {
	*puzzle
	s       *Solver
	costs   [][]Choice
	picks   []Lit
	ask     []Lit // guards of all limits, and the picks
	inForce int
}

func pose(r *rand.Rand) *posed {
	q := &posed{puzzle: makePuzzle(r)}
	q.costs = q.limit(r).Groups
	for range r.Intn(3) {
		q.picks = append(q.picks, q.lit(r))
	}
	q.fresh()
	return q
}

// fresh takes a new solver: looking for the cheapest leaves things behind.
func (q *posed) fresh() {
	q.s = New(q.n)
	for _, c := range q.clauses {
		q.s.AddClause(c...)
	}
	q.ask, q.inForce = nil, 0
	for i, l := range q.limits {
		q.ask = append(q.ask, q.s.AddLimit(l))
		q.inForce |= 1 << i
	}
	q.ask = append(q.ask, q.picks...)
}

// cost of an assignment.
func (q *posed) cost(m int) int64 {
	var sum int64
	for _, g := range q.costs {
		for _, c := range g {
			if (m>>c.Lit.Var()&1 == 1) != c.Lit.Negative() {
				sum += c.Cost
			}
		}
	}
	return sum
}

// answers are all assignments that keep everything, and the least cost.
func (q *posed) answers() (all []int, least int64) {
	for m := range 1 << q.n {
		if q.holds(m, q.picks, q.inForce) {
			if c := q.cost(m); len(all) == 0 || c < least {
				least = c
			}
			all = append(all, m)
		}
	}
	return all, least
}

// Both proofs, begun from any answer, agree with trying every assignment.
func TestProofsOfTheCheapestAgreeWithTryingEverything(t *testing.T) {
	proofs := map[string]int{}
	for seed := range seeds.Each(3000) {
		r := rand.New(rand.NewSource(seed))
		q := pose(r)
		_, least := q.answers()
		budget := int64(r.Intn(2) * 1000)
		for name, prove := range seeds.InOrder(map[string]func(best Optimum) Optimum{
			"climb": func(best Optimum) Optimum { return q.s.climb(q.ask, q.costs, best, budget) },
			"narrow": func(best Optimum) Optimum {
				d := newDual(q.s, q.ask, q.costs)
				d.raise(float64(best.Cost), raisings)
				return q.s.narrow(d, q.ask, q.costs, q.s.AddLimit(Limit{}), best, budget)
			},
		}) {
			q.fresh()
			if q.s.Solve(q.ask, 0) != Sat {
				continue
			}
			best := prove(Optimum{Found: true, Cost: q.s.sum(q.costs), Bound: -1 << 40})
			require.True(t, best.Proven(), "seed %d %s: %+v", seed, name, best)
			require.Equal(t, least, best.Cost, "seed %d %s", seed, name)
			m := 0
			for v := range q.n {
				if q.s.Model(Pos(v)) {
					m |= 1 << v
				}
			}
			require.True(t, q.holds(m, q.picks, q.inForce), "seed %d %s: the model", seed, name)
			require.Equal(t, least, q.cost(m), "seed %d %s: the model", seed, name)
			proofs[name]++
		}
	}
	require.Greater(t, proofs["climb"], 1000)
	require.Greater(t, proofs["narrow"], 1000)
}

// Whatever the prices, no answer costs less than the bound, and the limit they
// make loses no answer within the target.
func TestTheDualLosesNoAnswer(t *testing.T) {
	tried := 0
	for seed := range seeds.Each(3000) {
		r := rand.New(rand.NewSource(seed))
		q := pose(r)
		all, least := q.answers()
		d := newDual(q.s, q.ask, q.costs)
		if d == nil {
			require.Empty(t, all, "seed %d", seed)
			continue
		}
		if r.Intn(2) == 0 {
			d.raise(float64(least+int64(r.Intn(20))), raisings)
		} else {
			for k := range d.price {
				d.price[k] = r.ExpFloat64() * 3
			}
		}
		target := least + int64(r.Intn(30)-5)
		l, bound, ok := d.limit(target)
		require.True(t, ok)
		for _, m := range all {
			require.LessOrEqual(t, bound, q.cost(m), "seed %d", seed)
			if q.cost(m) > target {
				continue
			}
			var sum int64
			for _, g := range l.Groups {
				held := 0
				for _, c := range g {
					if (m>>c.Lit.Var()&1 == 1) != c.Lit.Negative() {
						sum += c.Cost
						held++
					}
				}
				require.Equal(t, 1, held, "seed %d: of each group one holds", seed)
			}
			require.LessOrEqual(t, sum, l.Max, "seed %d", seed)
			tried++
		}
	}
	require.Greater(t, tried, 3000)
}

// The prices find the bound of the linear program where it is worked out by
// hand: twice one of two things, one of 3 lb for 10 and one of 5 lb for 4. With
// room for 9 lb the best fractions are half a light and one and a half heavy
// ones, 11; whole, it is one of each, 14.
func TestTheDualReachesTheLinearProgram(t *testing.T) {
	s := New(4)
	for _, g := range [][2]int{{0, 1}, {2, 3}} {
		s.AddClause(Pos(g[0]), Pos(g[1]))
		s.AddClause(Neg(g[0]), Neg(g[1]))
	}
	groups := func(a, b int64) [][]Choice {
		return [][]Choice{{{Pos(0), a}, {Pos(1), b}}, {{Pos(2), a}, {Pos(3), b}}}
	}
	guard := s.AddLimit(Limit{})
	for _, c := range []struct {
		room     int64
		fraction float64
		whole    int64
	}{{10, 8, 8}, {9, 11, 14}, {8, 14, 14}} {
		t.Run(fmt.Sprint(c.room), func(t *testing.T) {
			s.ReplaceLimit(guard, Limit{Groups: groups(3, 5), Max: c.room})
			d := newDual(s, []Lit{guard}, groups(10, 4))
			d.raise(20, raisings)
			require.InDelta(t, c.fraction, d.bound(), 0.01, "room for %d", c.room)
			require.Equal(t, c.whole, s.Optimize(nil, []Lit{guard}, groups(10, 4), 0).Cost, "room for %d", c.room)
		})
	}
}
