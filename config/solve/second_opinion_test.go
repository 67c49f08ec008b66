package solve

import (
	"math/rand"
	"testing"

	"github.com/crillab/gophersat/solver"
	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
)

// randomCNF draws clauses of two to four literals, near the density where
// both answers are likely, with some units and exactly-one groups.
func randomCNF(r *rand.Rand) *cnf {
	p := &cnf{vars: 20 + r.Intn(60)}
	for range p.vars * (14 + r.Intn(12)) / 10 {
		var c []Lit
		for range 2 + r.Intn(3) {
			c = append(c, Lit(r.Intn(2*p.vars)))
		}
		p.clauses = append(p.clauses, c)
	}
	// gini takes no assumption about a variable beyond those in clauses.
	p.clauses = append(p.clauses, []Lit{Pos(p.vars - 1), Neg(0), Pos(1)})
	for range r.Intn(4) {
		p.clauses = append(p.clauses, []Lit{Lit(r.Intn(2 * p.vars))})
	}
	for at := 0; at+5 < p.vars; at += 5 + r.Intn(20) {
		group := []Lit{Pos(at), Pos(at + 1), Pos(at + 2), Pos(at + 3)}
		p.clauses = append(p.clauses, group)
		for i, a := range group {
			for _, b := range group[i+1:] {
				p.clauses = append(p.clauses, []Lit{a.Not(), b.Not()})
			}
		}
	}
	return p
}

// Each question goes to one solver of ours that lives on, to a fresh gini,
// since one that lives on was seen to stop with "internal error in solve", and
// to gophersat from a fresh problem with the assumptions as clauses: its Assume
// loses facts, and a problem must not be used twice.
func TestRandomProblemsAgreeWithTwoOtherSolvers(t *testing.T) {
	sat, unsat := 0, 0
	for seed := range seeds.Each(150) {
		r := rand.New(rand.NewSource(seed))
		p := randomCNF(r)
		s := p.solver()
		for range 6 {
			var assumed []Lit
			for _, v := range r.Perm(p.vars)[:r.Intn(6)] {
				assumed = append(assumed, Lit(2*v+r.Intn(2)))
			}
			g := p.gini()
			for _, l := range assumed {
				g.Assume(giniLit(l))
			}
			want := g.Solve() == 1
			require.Equal(t, want, fresh(p, assumed), "seed %d: the other two differ", seed)
			require.Equal(t, want, s.Solve(assumed, 0) == Sat, "seed %d", seed)
			if want {
				sat++
				continue
			}
			unsat++
			require.False(t, fresh(p, s.Core()), "seed %d: the core is no cause", seed)
		}
	}
	require.Greater(t, sat, 100)
	require.Greater(t, unsat, 100)
}

func fresh(p *cnf, assumed []Lit) bool {
	var cs [][]int
	number := func(l Lit) int {
		if l.Negative() {
			return -l.Var() - 1
		}
		return l.Var() + 1
	}
	for _, c := range p.clauses {
		var ns []int
		for _, l := range c {
			ns = append(ns, number(l))
		}
		cs = append(cs, ns)
	}
	for _, l := range assumed {
		cs = append(cs, []int{number(l)})
	}
	return solver.New(solver.ParseSliceNb(cs, p.vars)).Solve() == solver.Sat
}

// The case in which gophersat's Assume forgets a fact; ours must not.
func TestFactsHoldBesideAssumptions(t *testing.T) {
	s := New(4)
	s.AddClause(Pos(0))
	s.AddClause(Neg(0), Pos(1))
	s.AddClause(Pos(1), Pos(2), Pos(3))
	require.Equal(t, Unsat, s.Solve([]Lit{Neg(1)}, 0))
	require.Equal(t, []Lit{Neg(1)}, s.Core())
	require.Equal(t, Unsat, s.Solve([]Lit{Pos(2), Neg(2)}, 0), "assumptions that contradict each other")
	require.Equal(t, Sat, s.Solve([]Lit{Pos(2), Pos(3)}, 0))
}
