package rules

import (
	"slices"

	"boxwright/config/solve"
)

// prover finds minimal reasons. Its solver holds every rule and group behind a
// switch of its own, so that those that a conflict does not need can be told.
// It serves one question: which of several reasons a solver finds depends on
// what it was asked before.
type prover struct {
	solver   *solve.Solver
	switches []solve.Lit // by part
	guards   []solve.Lit
	codes    []weighed     // what the guards stand for
	quantity map[int]int   // that these count with
	gauge    solve.Lit     // guard set apart for sums
	near     *solve.Walker // where the last answer was
}

// Conflicts for a proof, and for one step of making it smaller: where that is
// not enough, a member stays in the reason that might not be needed. Where each
// conflict takes long, the steps of a solver end it.
const (
	proofBudget = 20000
	trimBudget  = 200
	proofSteps  = 1_000_000
)

// newProver has a prover ready that was asked nothing yet.
func (e *Engine) newProver() *prover {
	if e.unasked == nil {
		e.unasked = e.compileProver()
	}
	e.proof = e.unasked.fork()
	return e.proof
}

// fork is for a prover that was asked nothing yet.
func (p *prover) fork() *prover {
	return &prover{solver: p.solver.Fork(), switches: p.switches, guards: slices.Clone(p.guards), codes: p.codes,
		quantity: p.quantity}
}

// newProverWith is newProver with the limits of a pair, which takes a while to bring
// in: the last pair asked about is kept.
func (e *Engine) newProverWith(on *onPair, quantity map[int]int) *prover {
	l := &e.limited
	if l.of != on || !sameKept(l.prover.quantity, quantity) {
		p := e.newProver()
		p.load(e, on.list, quantity)
		*l = limitedProver{on, p}
	}
	e.proof = l.prover.fork()
	return e.proof
}

// limitedProver is a prover, asked nothing yet, with the limits of a pair.
type limitedProver struct {
	of     *onPair
	prover *prover
}

// prover of the present question.
func (e *Engine) prover() *prover {
	if e.proof == nil {
		return e.newProver()
	}
	return e.proof
}

func (e *Engine) compileProver() *prover {
	p := &prover{solver: solve.New(e.fresh.Vars())}
	p.solver.PauseWith(e.pauses)
	for range e.parts {
		p.switches = append(p.switches, solve.Pos(p.solver.NewVar()))
	}
	for i, part := range e.parts {
		for _, c := range part.clauses {
			if e.background(i) {
				p.solver.AddClause(c...)
			} else {
				p.solver.AddClause(append([]solve.Lit{p.switches[i].Not()}, c...)...)
			}
		}
	}
	return p
}

// background parts hold always and are no part of a reason: that a unit has
// one chassis and one body.
func (e *Engine) background(part int) bool {
	return e.parts[part].rule < 0 && e.parts[part].group < 0
}

// load brings limits into the prover.
func (p *prover) load(e *Engine, list []weighed, quantity map[int]int) []solve.Lit {
	for i := range list {
		w := &list[i]
		if i < len(p.codes) && sameWeights(&p.codes[i], w) && sameQuantities(p.quantity, quantity, w.cost) {
			continue
		}
		l := e.solveLimit(w, quantity)
		if i < len(p.guards) {
			p.solver.ReplaceLimit(p.guards[i], l)
		} else {
			p.guards = append(p.guards, p.solver.AddLimit(l))
		}
	}
	p.codes, p.quantity = list, quantity
	return p.guards[:len(list)]
}

// minimal returns candidates that contradict each other and what is fixed, and of
// which none can be left out. Candidates late in the list are left out first. It is
// nil when there is no contradiction, or none is found within the budget.
func (p *prover) minimal(candidates, fixed []solve.Lit, budget int64) []solve.Lit {
	impossible := func(some []solve.Lit, budget int64) bool {
		return !p.solver.Spent() && p.prove(append(slices.Clip(some), fixed...), budget) == solve.Unsat
	}
	if p.solver.Spent() || p.solver.Prove(append(slices.Clip(candidates), fixed...), budget) != solve.Unsat {
		return nil
	}
	core := inOrder(candidates, p.solver.Core())
	for i := len(core) - 1; i >= 0; i-- {
		if without := slices.Delete(slices.Clone(core), i, i+1); impossible(without, trimBudget) {
			core = inOrder(without, p.solver.Core())
			i = min(i, len(core))
		}
	}
	return core
}

// prove asks for an answer near the last one first: most of what is asked to make a
// reason smaller has one.
func (p *prover) prove(lits []solve.Lit, budget int64) solve.Result {
	if p.near == nil {
		p.near = solve.NewWalker(p.solver)
	}
	if p.near.Stands() {
		var guards []solve.Lit
		for _, g := range p.guards {
			if slices.Contains(lits, g) {
				guards = append(guards, g)
			}
		}
		if r := p.near.Near(guards, lits, min(budget, nearBudget)); r != solve.Unknown {
			return r
		}
	}
	r := p.solver.Prove(lits, budget)
	if r == solve.Sat {
		p.near.Take()
	}
	return r
}

// inOrder lists the members of core in the order of all.
func inOrder(all, core []solve.Lit) []solve.Lit {
	in := make(map[solve.Lit]bool, len(core))
	for _, l := range core {
		in[l] = true
	}
	out := make([]solve.Lit, 0, len(core))
	for _, l := range all {
		if in[l] {
			out = append(out, l)
			delete(in, l)
		}
	}
	return out
}
