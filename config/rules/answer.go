package rules

import (
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// State says whether a chassis, a body or an option can be chosen along with the
// deliberate picks. Picks that it would replace, itself and those of a group of
// which a unit holds only one, do not count.
type State string

// The states. Checking means that the work allowed did not suffice to tell;
// ask again with more, see Engine.AnswerWithin.
const (
	Open     State = "open"
	Forced   State = "forced"
	RuledOut State = "ruled-out"
	Checking State = "checking"
)

// Answer is the whole table for one unit.
type Answer struct {
	// Satisfiable: some full unit holds all deliberate picks, keeps all rules and
	// all limits. False without anything SetAside means that it is not known yet,
	// or, with everything ruled out, that the catalogue has no unit at all.
	Satisfiable bool
	// States are parallel to Engine.IDs. When the picks cannot stand together
	// they are judged by those that can, without the ones in SetAside.
	States []State
	// SetAside names picks (ids) and limits (codes) that the table leaves out so
	// that it can say something; empty when Satisfiable.
	SetAside []string
	// Undecided lists the ids for which something is still open to question:
	// those Checking, and those that may yet turn out to be Forced.
	Undecided []string
	// Problems are faults of the limits handed in; a faulty one is left out.
	Problems config.Problems

	vars    map[string]int
	pending bool        // the other chassis and bodies are still to be judged
	picks   []solve.Lit // that they are judged by
}

// State is that of one id; Open for an id the catalogue does not have.
func (a *Answer) State(id string) State {
	if v, known := a.vars[id]; known {
		return a.States[v]
	}
	return Open
}

// IDs lists all chassis, then all bodies, then all options, as in the
// catalogue.
func (e *Engine) IDs() []string { return e.ids }

// Answer judges everything the catalogue offers. Limits may be nil.
func (e *Engine) Answer(u *config.Unit, limits *Limits) Answer {
	return e.AnswerWithin(u, limits, e.Budget)
}

// AnswerWithin is Answer with another budget of conflicts for each single
// question; 0 leaves nothing undecided, however long it takes. What an earlier
// call found out is not asked again, so that calling with growing budgets
// completes a table in steps.
func (e *Engine) AnswerWithin(u *config.Unit, limits *Limits, budget int64) Answer {
	a := e.Options(u, limits, budget)
	if a.pending {
		e.judgeOthers(&a, u, limits, budget)
		a.pending = false
	}
	return a
}

// Options is AnswerWithin for the options alone. Other chassis and bodies than
// those of the unit are Checking, since each has limits of its own and takes a
// solver of its own.
func (e *Engine) Options(u *config.Unit, limits *Limits, budget int64) Answer {
	picks := e.picks(u)
	guards, problems := e.limits.load(e, u, limits)
	a := Answer{Satisfiable: true, Problems: problems, vars: e.vars}
	skip := 0
	if len(guards) > 0 {
		skip = e.firstOption() // the limits hold for this chassis and body only
	}
	for {
		verdicts, r := e.table.Answer(solve.Query{Base: guards, Picks: picks, Budget: budget, Work: budget * stepsEach,
			Skip: skip})
		if r == solve.Unsat {
			a.Satisfiable = false
			core := e.solver.Core()
			if len(core) == 0 { // no unit at all keeps the catalogue's rules
				a.States = slices.Repeat([]State{RuledOut}, e.n)
				return a
			}
			var aside []string
			guards, picks, aside = e.setAside(guards, picks)
			a.SetAside = append(a.SetAside, aside...)
			continue
		}
		if r == solve.Unknown {
			e.byRulesAlone(&a, picks, budget)
			return a
		}
		a.States = make([]State, e.n)
		for v, verdict := range verdicts {
			a.States[v] = stateOf(verdict)
			if v >= skip && !verdict.Decided() {
				a.Undecided = append(a.Undecided, e.ids[v])
			}
		}
		if skip > 0 {
			e.postpone(&a, picks)
		}
		return a
	}
}

// postpone leaves the other chassis and bodies open to question.
func (e *Engine) postpone(a *Answer, picks []solve.Lit) {
	a.pending, a.picks = true, picks
	for v := range e.firstOption() {
		a.States[v] = Checking
		if slices.Contains(picks, solve.Pos(v)) && len(a.SetAside) == 0 {
			a.States[v] = Open
		}
	}
}

// byRulesAlone says what is sure before it is known whether the picks can keep
// the limits: what the rules forbid or force stays so.
func (e *Engine) byRulesAlone(a *Answer, picks []solve.Lit, budget int64) {
	a.Satisfiable = false
	a.States = slices.Repeat([]State{Checking}, e.n)
	verdicts, _ := e.table.Answer(solve.Query{Picks: picks, Budget: budget, Work: budget * stepsEach})
	for v := range a.States {
		if v < len(verdicts) && verdicts[v]&(solve.CannotHold|solve.MustHold) != 0 {
			a.States[v] = stateOf(verdicts[v])
		} else {
			a.Undecided = append(a.Undecided, e.ids[v])
		}
	}
}

func stateOf(v solve.Verdict) State {
	switch {
	case v&solve.CannotHold != 0:
		return RuledOut
	case v&solve.MustHold != 0:
		return Forced
	case v&solve.CanHold != 0:
		return Open
	}
	return Checking
}

// setAside takes guards and picks out until the rest can stand together, of
// each conflict the last member: a limit before a pick, an option before the
// body, the chassis last. Which conflicts a solver finds depends on what it was
// asked before, so the solver asked here is a new one.
func (e *Engine) setAside(guards, picks []solve.Lit) (g, p []solve.Lit, aside []string) {
	guards, picks = slices.Clone(guards), slices.Clone(picks)
	s := e.fresh.Fork()
	s.Allow(proofSteps)
	defer func() { e.aside += s.Stats.Steps }()
	own := make([]solve.Lit, len(guards)) // the same limits in the new solver
	for i, guard := range guards {
		own[i] = s.AddLimit(e.solveLimit(e.limits.behind(guard), e.limits.quantity))
	}
	for {
		r := s.Solve(slices.Concat(own, picks), proofBudget)
		if r == solve.Sat {
			return guards, picks, aside
		}
		in := func(l solve.Lit) bool { return r == solve.Unknown || slices.Contains(s.Core(), l) }
		if i := lastIndex(own, in); i >= 0 {
			aside = append(aside, e.limits.behind(guards[i]).linear.Code)
			own, guards = slices.Delete(own, i, i+1), slices.Delete(guards, i, i+1)
		} else if i := lastIndex(picks, in); i >= 0 {
			aside = append(aside, e.ids[picks[i].Var()])
			picks = slices.Delete(picks, i, i+1)
		} else {
			return guards, picks, aside // no unit at all keeps the catalogue's rules
		}
	}
}

func lastIndex(lits []solve.Lit, in func(solve.Lit) bool) int {
	for i := len(lits) - 1; i >= 0; i-- {
		if in(lits[i]) {
			return i
		}
	}
	return -1
}

// picks are the deliberate ones as literals: chassis, body, then options.
func (e *Engine) picks(u *config.Unit) []solve.Lit {
	out := make([]solve.Lit, 0, len(u.Picks)+2)
	add := func(id string) {
		if v, known := e.vars[id]; known {
			out = append(out, solve.Pos(v))
		}
	}
	add(u.Chassis)
	add(u.Body)
	for _, p := range u.Picks {
		if !p.Filled {
			add(p.Option)
		}
	}
	return out
}
