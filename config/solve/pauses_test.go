package solve

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A search that pauses finds what one finds that does not, in as many steps; one that
// ended in a pause can be asked again.
func TestPauses(t *testing.T) {
	plain := pigeons(7)
	require.Equal(t, Unsat, plain.Solve(nil, 0))

	s, p := pigeons(7), new(Pauses)
	s.PauseWith(p)
	f := s.Fork()
	pauses := 0
	p.Begin(100, func() { pauses++ })
	require.Equal(t, Unsat, s.Solve(nil, 0))
	require.Equal(t, plain.Stats, s.Stats)
	require.Greater(t, pauses, 3)

	p.Begin(100, func() { panic("enough") })
	require.PanicsWithValue(t, "enough", func() { f.Solve(nil, 0) })
	p.End()
	require.Equal(t, Unsat, f.Solve(nil, 0))
}

// pigeons are n+1 of them in n holes.
func pigeons(n int) *Solver {
	s := New((n + 1) * n)
	at := func(pigeon, hole int) Lit { return Pos(pigeon*n + hole) }
	for i := range n + 1 {
		var some []Lit
		for h := range n {
			some = append(some, at(i, h))
			for j := range i {
				s.AddClause(at(i, h).Not(), at(j, h).Not())
			}
		}
		s.AddClause(some...)
	}
	return s
}
