package solve

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
)

// A random problem small enough to try every assignment of.
type puzzle struct {
	n       int
	clauses [][]Lit
	limits  []Limit
}

func (p *puzzle) lit(r *rand.Rand) Lit { return Lit(r.Intn(2 * p.n)) }

func makePuzzle(r *rand.Rand) *puzzle {
	p := &puzzle{n: 4 + r.Intn(7)}
	for range r.Intn(3 * p.n) {
		var c []Lit
		for range 2 + r.Intn(3) {
			c = append(c, p.lit(r))
		}
		p.clauses = append(p.clauses, c)
	}
	// Variables 0, 1 and 2 are a group of which exactly one holds.
	p.clauses = append(p.clauses, []Lit{Pos(0), Pos(1), Pos(2)}, []Lit{Neg(0), Neg(1)}, []Lit{Neg(0), Neg(2)},
		[]Lit{Neg(1), Neg(2)})
	for range r.Intn(3) {
		p.limits = append(p.limits, p.limit(r))
	}
	return p
}

func (p *puzzle) limit(r *rand.Rand) Limit {
	cost := func() int64 { return int64(r.Intn(20) - 6) }
	l := Limit{Max: int64(r.Intn(30) - 5)}
	l.Groups = append(l.Groups, []Choice{{Pos(0), cost()}, {Pos(1), cost()}, {Pos(2), cost()}})
	for v := 3; v < p.n; v++ {
		if r.Intn(4) > 0 {
			l.Groups = append(l.Groups, []Choice{{Pos(v), cost()}, {Neg(v), 0}})
		}
	}
	return l
}

// satisfiable tries every assignment; in force are the limits whose bit is set.
func (p *puzzle) satisfiable(assumed []Lit, inForce int) bool {
	for m := range 1 << p.n {
		if p.holds(m, assumed, inForce) {
			return true
		}
	}
	return false
}

func (p *puzzle) holds(m int, assumed []Lit, inForce int) bool {
	is := func(l Lit) bool { return (m>>l.Var()&1 == 1) != l.Negative() }
	for _, a := range assumed {
		if !is(a) {
			return false
		}
	}
	for _, c := range p.clauses {
		ok := false
		for _, l := range c {
			ok = ok || is(l)
		}
		if !ok {
			return false
		}
	}
	for i, l := range p.limits {
		if inForce>>i&1 == 0 {
			continue
		}
		var sum int64
		for _, g := range l.Groups {
			for _, c := range g {
				if is(c.Lit) {
					sum += c.Cost
				}
			}
		}
		if sum > l.Max {
			return false
		}
	}
	return true
}

func TestSolverAgreesWithTryingEverything(t *testing.T) {
	for seed := range seeds.Each(8000) {
		r := rand.New(rand.NewSource(seed))
		p := makePuzzle(r)
		s := New(p.n)
		for _, c := range p.clauses {
			s.AddClause(c...)
		}
		var guards []Lit
		for _, l := range p.limits {
			guards = append(guards, s.AddLimit(l))
		}
		var earlier []Lit
		for range 8 {
			if len(guards) > 0 && r.Intn(3) == 0 { // limits change between questions
				i := r.Intn(len(guards))
				p.limits[i] = p.limit(r)
				s.ReplaceLimit(guards[i], p.limits[i])
			}
			inForce := r.Intn(1 << len(guards))
			var picks, all []Lit
			for i, g := range guards {
				if inForce>>i&1 == 1 {
					all = append(all, g)
				}
			}
			picks = append(picks, earlier...)
			for range r.Intn(4) {
				picks = append(picks, p.lit(r))
			}
			if r.Intn(2) == 0 {
				earlier = picks
			}
			all = append(all, picks...)

			want := p.satisfiable(picks, inForce)
			got := s.Solve(all, 0)
			require.Equal(t, want, got == Sat, "seed %d: %v", seed, got)
			if got == Sat {
				m := 0
				for v := range p.n {
					if s.Model(Pos(v)) {
						m |= 1 << v
					}
				}
				require.True(t, p.holds(m, picks, inForce), "seed %d: the model", seed)
				implied, ok := s.Implied(all)
				require.True(t, ok)
				for _, l := range implied {
					if l.Var() < p.n {
						require.False(t, p.satisfiable(append([]Lit{l.Not()}, picks...), inForce),
							"seed %d: implied %d", seed, l)
					}
				}
				continue
			}
			var core []Lit
			coreForce := 0
			for _, l := range s.Core() {
				require.Contains(t, all, l, "seed %d: the core names something not assumed", seed)
				if l.Var() < p.n {
					core = append(core, l)
					continue
				}
				for i, g := range guards {
					if g == l {
						coreForce |= 1 << i
					}
				}
			}
			require.False(t, p.satisfiable(core, coreForce), "seed %d: the core is no cause", seed)
		}
	}
}

// Two forks get clauses and limits of their own; neither minds the other.
func TestForksLiveApart(t *testing.T) {
	for seed := range seeds.Each(500) {
		r := rand.New(rand.NewSource(seed))
		p := makePuzzle(r)
		fresh := New(p.n)
		for _, c := range p.clauses {
			fresh.AddClause(c...)
		}
		forks := []*Solver{fresh.Fork(), fresh.Fork()}
		own := []*puzzle{{n: p.n}, {n: p.n}}
		for i := range forks {
			own[i].clauses = append(own[i].clauses, p.clauses...)
		}
		for range 4 {
			for i, s := range forks {
				c := []Lit{p.lit(r), p.lit(r), p.lit(r)}
				own[i].clauses = append(own[i].clauses, c)
				s.AddClause(c...)
				assumed := []Lit{p.lit(r)}
				require.Equal(t, own[i].satisfiable(assumed, 0), s.Solve(assumed, 0) == Sat, "seed %d", seed)
			}
		}
	}
}
