package solve

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
)

// A walker that is turned at random, or begins on values that are no answer, tells the
// truth, and stands on an answer to what it was asked.
func TestAWalkerAgreesWithTryingEverything(t *testing.T) {
	found, refused := 0, 0
	for seed := range seeds.Each(3000) {
		r := rand.New(rand.NewSource(seed))
		q := pose(r)
		w := NewWalker(q.s)
		require.False(t, w.Stands(), "seed %d: it stands nowhere yet", seed)
		if r.Intn(2) == 0 {
			values := make([]bool, q.n)
			for v := range values {
				values[v] = r.Intn(2) == 0
			}
			w.Begin(values)
		} else if q.s.Solve(q.ask, 0) == Sat {
			w.Take()
		} else {
			continue
		}
		require.True(t, w.Stands(), "seed %d", seed)
		for range 6 {
			for range r.Intn(3) {
				w.Turn(q.lit(r))
			}
			if i := r.Intn(len(q.limits) + 1); i < len(q.limits) && r.Intn(3) == 0 {
				q.limits[i] = q.limit(r)
				q.s.ReplaceLimit(q.ask[i], q.limits[i])
				w.Weigh()
			}
			extra := q.lit(r)
			picks := append(append([]Lit{}, q.picks...), extra)
			want := q.satisfiable(picks, q.inForce)
			got := w.Near(q.ask[:len(q.limits)], append(append([]Lit{}, q.ask...), extra), 0)
			require.Equal(t, want, got == Sat, "seed %d: %v", seed, got)
			if got != Sat {
				refused++
				if !w.Stands() { // it began on no answer and found none
					break
				}
				continue
			}
			found++
			m := 0
			for v := range q.n {
				require.Equal(t, q.s.Model(Pos(v)), w.at.val[v], "seed %d: it stands where the answer is", seed)
				if w.at.val[v] {
					m |= 1 << v
				}
			}
			require.True(t, q.holds(m, picks, q.inForce), "seed %d: where it stands", seed)
		}
	}
	require.Greater(t, found, 1000)
	require.Greater(t, refused, 1000)
}

func TestAWalkerStandsNowhereAfterTheSolverGrew(t *testing.T) {
	for _, c := range []struct {
		reason string
		grow   func(s *Solver)
	}{
		{"a variable more", func(s *Solver) { s.NewVar() }},
		{"a clause more", func(s *Solver) { s.AddClause(Pos(0), Pos(1)) }},
		{"a limit more", func(s *Solver) { s.AddLimit(Limit{}) }},
	} {
		t.Run(c.reason, func(t *testing.T) {
			s := New(3)
			require.Equal(t, Sat, s.Solve(nil, 0))
			w := NewWalker(s)
			w.Take()
			require.True(t, w.Stands())
			c.grow(s)
			require.False(t, w.Stands())
		})
	}
}

// Two walkers on one solver keep where they stand.
func TestWalkersWalkApart(t *testing.T) {
	s := New(4)
	s.AddClause(Pos(0), Pos(1))
	a, b := NewWalker(s), NewWalker(s)
	require.Equal(t, Sat, s.Solve([]Lit{Pos(0), Neg(1)}, 0))
	a.Take()
	require.Equal(t, Sat, s.Solve([]Lit{Neg(0), Pos(1)}, 0))
	b.Take()
	require.Equal(t, Sat, a.Near(nil, []Lit{Pos(2)}, 0))
	require.Equal(t, Sat, b.Near(nil, []Lit{Pos(3)}, 0))
	require.Equal(t, []bool{true, false, true, false}, a.at.val)
	require.Equal(t, []bool{false, true, false, true}, b.at.val)
}
