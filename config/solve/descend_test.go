package solve

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
)

// What small changes make of any answer is an answer, costs what it says, and never
// more than before; most of the time it costs less.
func TestSmallChangesOnlyMakeAnAnswerCheaper(t *testing.T) {
	dear, cheaper := 0, 0
	for seed := range seeds.Each(3000) {
		q := pose(rand.New(rand.NewSource(seed)))
		_, least := q.answers()
		guard := q.s.AddLimit(Limit{Groups: q.costs, Max: 1 << 40})
		if q.s.Solve(q.ask, 0) != Sat {
			continue
		}
		before := q.s.sum(q.costs)
		after := q.s.descend(q.ask, q.costs, guard, Optimum{Found: true, Cost: before, Bound: -1 << 40})
		require.True(t, after.Found, "seed %d", seed)
		require.EqualValues(t, -1<<40, after.Bound, "seed %d: small changes prove nothing", seed)
		require.LessOrEqual(t, after.Cost, before, "seed %d", seed)
		require.GreaterOrEqual(t, after.Cost, least, "seed %d", seed)
		m := 0
		for v := range q.n {
			if q.s.Model(Pos(v)) {
				m |= 1 << v
			}
		}
		require.True(t, q.holds(m, q.picks, q.inForce), "seed %d: the model", seed)
		require.Equal(t, after.Cost, q.cost(m), "seed %d: the model", seed)
		if before > least {
			dear++
			if after.Cost < before {
				cheaper++
			}
		}
	}
	require.Greater(t, dear, 500)
	require.Greater(t, cheaper, dear/2)
}
