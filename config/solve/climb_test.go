package solve

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
)

func TestBothWaysToTheLeastCostAgreeWithTryingEverything(t *testing.T) {
	found := 0
	for seed := range seeds.Each(4000) {
		r := rand.New(rand.NewSource(seed))
		p := makePuzzle(r)
		cost := p.limit(r).Groups
		s := New(p.n)
		for _, c := range p.clauses {
			s.AddClause(c...)
		}
		inForce := 0
		var ask []Lit
		for i, l := range p.limits {
			ask = append(ask, s.AddLimit(l))
			inForce |= 1 << i
		}
		var picks []Lit
		for range r.Intn(3) {
			picks = append(picks, p.lit(r))
		}
		ask = append(ask, picks...)

		least, any := int64(0), false
		for m := range 1 << p.n {
			if !p.holds(m, picks, inForce) {
				continue
			}
			var sum int64
			for _, g := range cost {
				for _, c := range g {
					if (m>>c.Lit.Var()&1 == 1) != c.Lit.Negative() {
						sum += c.Cost
					}
				}
			}
			if !any || sum < least {
				least, any = sum, true
			}
		}
		down := s.Minimize(ask, cost, s.AddLimit(Limit{}), 0)
		s2 := New(p.n) // Optimize leaves helpers behind
		for _, c := range p.clauses {
			s2.AddClause(c...)
		}
		var ask2 []Lit
		for _, l := range p.limits {
			ask2 = append(ask2, s2.AddLimit(l))
		}
		up := s2.Optimize(nil, append(ask2, picks...), cost, int64(r.Intn(2)*1000))
		require.Equal(t, any, down.Found, "seed %d", seed)
		require.Equal(t, any, up.Found, "seed %d", seed)
		if !any {
			continue
		}
		found++
		require.True(t, down.Proven() && up.Proven(), "seed %d: %+v %+v", seed, down, up)
		require.Equal(t, least, down.Cost, "seed %d", seed)
		require.Equal(t, least, up.Cost, "seed %d", seed)
		var sum int64 // of the model kept
		for _, g := range cost {
			for _, c := range g {
				if s2.Model(c.Lit) {
					sum += c.Cost
				}
			}
		}
		require.Equal(t, least, sum, "seed %d: the model is another's", seed)
	}
	require.Greater(t, found, 1000)
}
