package rules

import (
	"fmt"
	"math/bits"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/solve"
)

// Every way to encode "at least n of k" is held against counting: the clauses
// must have an answer for exactly those choices of which n or more hold.
func TestAtLeastCounts(t *testing.T) {
	counters := 0
	for k := 1; k <= 9; k++ {
		for n := 0; n <= k+1; n++ {
			s := solve.New(k)
			x := encoder{newVar: s.NewVar}
			var kids []form
			for v := range k {
				kids = append(kids, form{lit: solve.Pos(v)})
			}
			x.demand(form{op: atLeast, n: n, kids: kids})
			for _, c := range x.clauses {
				s.AddClause(c...)
			}
			if s.Vars() > k {
				counters++
			}
			for m := range 1 << k {
				var assumed []solve.Lit
				for v := range k {
					if m>>v&1 == 1 {
						assumed = append(assumed, solve.Pos(v))
					} else {
						assumed = append(assumed, solve.Neg(v))
					}
				}
				want := bits.OnesCount(uint(m)) >= n
				require.Equal(t, want, s.Solve(assumed, 0) == solve.Sat, "%d of %d, choice %b", n, k, m)
			}
		}
	}
	require.Greater(t, counters, 10, "the counter was not reached")
}

// Exactly one, and at most one, of groups of every size up to beyond the
// point where helpers come in.
func TestChoicesOfEverySize(t *testing.T) {
	for size := 1; size <= 14; size++ {
		for _, must := range []bool{true, false} {
			t.Run(fmt.Sprint(size, must), func(t *testing.T) {
				e := &Engine{fresh: solve.New(size), n: size}
				e.choose(0, e.span(0, size), must)
				for _, c := range e.parts[0].clauses {
					e.fresh.AddClause(c...)
				}
				none := make([]solve.Lit, size)
				for v := range size {
					none[v] = solve.Neg(v)
					one := make([]solve.Lit, size)
					for w := range size {
						one[w] = solve.Neg(w)
						if w != v {
							require.Equal(t, solve.Unsat, e.fresh.Solve([]solve.Lit{solve.Pos(v), solve.Pos(w)}, 0),
								"%d with %d", v, w)
						}
					}
					one[v] = solve.Pos(v)
					require.Equal(t, solve.Sat, e.fresh.Solve(one, 0), "only %d", v)
				}
				require.Equal(t, !must, e.fresh.Solve(none, 0) == solve.Sat, "none")
			})
		}
	}
}
