package solve

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
)

// A table over a session of clicks, with classes, and limits that come, change
// and go, is held against trying every assignment, click by click.
func TestTableAgreesWithTryingEverything(t *testing.T) {
	judged := 0
	for seed := range seeds.Each(1500) {
		r := rand.New(rand.NewSource(seed))
		p := makePuzzle(r)
		class := noClasses(p.n)
		class[0], class[1], class[2] = 0, 0, 0 // the group of which exactly one holds
		s := New(p.n)
		for _, c := range p.clauses {
			s.AddClause(c...)
		}
		table := NewTable(s, class)
		var guards []Lit
		for _, l := range p.limits {
			guards = append(guards, table.AddLimit(l))
		}
		var picks []Lit
		for click := range 8 {
			if len(guards) > 0 && r.Intn(3) == 0 {
				i := r.Intn(len(guards))
				p.limits[i] = p.limit(r)
				table.ReplaceLimit(guards[i], p.limits[i])
			}
			var base []Lit
			inForce := 0
			for i, g := range guards {
				if r.Intn(4) > 0 {
					base = append(base, g)
					inForce |= 1 << i
				}
			}
			verdicts, result := table.Answer(Query{Base: base, Picks: picks})
			require.Equal(t, p.satisfiable(picks, inForce), result == Sat, "seed %d click %d", seed, click)
			if result == Sat {
				for v := range p.n {
					var beside []Lit
					for _, q := range picks {
						if q.Var() != v && (class[v] < 0 || class[v] != class[q.Var()]) {
							beside = append(beside, q)
						}
					}
					want := CannotHold | MustHold
					if p.satisfiable(append(beside, Pos(v)), inForce) {
						want ^= CannotHold | CanHold
					}
					if p.satisfiable(append(beside, Neg(v)), inForce) {
						want ^= MustHold | CanFail
					}
					require.Equal(t, want, verdicts[v], "seed %d click %d: variable %d beside %v", seed, click, v,
						picks)
					judged++
				}
				l := p.lit(r)
				var beside []Lit
				for _, q := range picks {
					if v := l.Var(); q.Var() != v && (class[v] < 0 || class[v] != class[q.Var()]) {
						beside = append(beside, q)
					}
				}
				elsewhere, found := table.Elsewhere(l, 0)
				require.Equal(t, p.satisfiable(append(beside, l), 0), found == Sat,
					"seed %d click %d: %d without limits", seed, click, l)
				if found == Sat {
					m := 0
					for v, b := range elsewhere {
						if b {
							m |= 1 << v
						}
					}
					require.True(t, p.holds(m, append(beside, l), 0), "seed %d: an answer nearby breaks a clause", seed)
				} else {
					for _, c := range s.Core() {
						require.Contains(t, append(beside, l), c, "seed %d: the cause", seed)
					}
					require.False(t, p.satisfiable(s.Core(), 0), "seed %d: the cause", seed)
				}
			}
			if len(picks) > 0 && r.Intn(3) == 0 {
				i := r.Intn(len(picks))
				picks = append(append([]Lit(nil), picks[:i]...), picks[i+1:]...)
			} else {
				picks = append(append([]Lit(nil), picks...), p.lit(r))
			}
		}
	}
	require.Greater(t, judged, 20000)
}
