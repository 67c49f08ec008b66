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
// ask again with more, see Engine.AnswerWithin. Unasked means that nobody asked,
// see Engine.Ask.
const (
	Open     State = "open"
	Forced   State = "forced"
	RuledOut State = "ruled-out"
	Checking State = "checking"
	Unasked  State = ""
)

// Answer is the whole table for one unit.
type Answer struct {
	// Satisfiable: some full unit holds all deliberate picks, keeps all rules and
	// all limits. False without anything SetAside means that it is not known yet,
	// or, with everything ruled out, that the catalogue has no unit at all.
	Satisfiable bool
	// States are of all chassis, then all bodies, then all options, as in the catalogue. When the picks
	// cannot stand together they are judged by those that can, without the ones in SetAside.
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

// AnswerWithin judges everything the catalogue offers. Limits may be nil. The budget is of
// conflicts for each single question; 0 leaves nothing undecided, however long it takes.
// What an earlier call found out is not asked again, so that calling with growing budgets
// completes a table in steps.
func (e *Engine) AnswerWithin(u *config.Unit, limits *Limits, budget int64) Answer {
	a := e.Stand(u, limits, budget)
	e.AskAll(&a, u, limits, budget)
	e.AskElsewhere(&a, u, limits, budget)
	return a
}

// Stand says whether the picks can stand together, and what is set aside when they
// cannot. Each id is Unasked then: a page shows some hundred of many thousands, and
// Ask is for those. Chassis and bodies other than the unit's are Checking where there
// are limits, since each has limits of its own; see AskElsewhere.
func (e *Engine) Stand(u *config.Unit, limits *Limits, budget int64) Answer {
	a := Answer{Satisfiable: true, States: make([]State, e.n), vars: e.vars}
	e.judge(&a, u, limits, budget, make([]bool, e.n))
	return a
}

// Ask judges some ids more for an answer about this unit with these limits.
func (e *Engine) Ask(a *Answer, u *config.Unit, limits *Limits, budget int64, ids []string) {
	only, any := make([]bool, e.n), false
	for _, id := range ids {
		if v, known := e.vars[id]; known && a.States[v] == Unasked {
			only[v], any = true, true
		}
	}
	if any {
		e.judge(a, u, limits, budget, only)
	}
}

// AskAll judges all options that nobody asked for yet.
func (e *Engine) AskAll(a *Answer, u *config.Unit, limits *Limits, budget int64) {
	e.Ask(a, u, limits, budget, e.ids)
}

// AskElsewhere judges the chassis and bodies other than the unit's, each in a solver
// of its own.
func (e *Engine) AskElsewhere(a *Answer, u *config.Unit, limits *Limits, budget int64) {
	if !a.pending {
		return
	}
	known := len(a.Undecided)
	defer func() {
		if a.pending { // it ended in a pause: all of it is asked again
			a.Undecided = a.Undecided[:known]
		}
	}()
	e.askElsewhere(a, u, limits, budget)
	a.pending = false
}

func (e *Engine) askElsewhere(a *Answer, u *config.Unit, limits *Limits, budget int64) {
	guards, _ := e.limits.load(e, u, limits)
	guards, _ = e.standWithout(a.SetAside, guards, nil)
	q := solve.Query{Base: guards, Picks: a.picks, Budget: budget, Work: budget * stepsEach, Only: make([]bool, e.n)}
	if _, r := e.table.Answer(q); r != solve.Sat {
		a.Undecided = append(a.Undecided, e.ids[:e.firstOption()]...)
		return
	}
	e.judgeOthers(a, u, limits, budget)
}

// judge judges what is marked: options, and without limits chassis and bodies too.
func (e *Engine) judge(a *Answer, u *config.Unit, limits *Limits, budget int64, only []bool) {
	picks := e.picks(u)
	guards, problems := e.limits.load(e, u, limits)
	a.Problems = problems
	skip := 0
	if len(guards) > 0 {
		skip = e.firstOption() // the limits hold for this chassis and body only
		clear(only[:skip])
	}
	guards, picks = e.standWithout(a.SetAside, guards, picks)
	for {
		verdicts, r := e.table.Answer(solve.Query{Base: guards, Picks: picks, Budget: budget, Work: budget * stepsEach,
			Only: only})
		if r == solve.Unsat {
			a.Satisfiable = false
			core := e.solver.Core()
			if len(core) == 0 { // no unit at all keeps the catalogue's rules
				a.States = slices.Repeat([]State{RuledOut}, e.n)
				return
			}
			var aside []string
			guards, picks, aside = e.setAside(guards, picks)
			a.SetAside = append(a.SetAside, aside...)
			continue
		}
		if r == solve.Unknown {
			e.byRulesAlone(a, picks, budget)
			return
		}
		for v, verdict := range verdicts {
			if !only[v] {
				continue
			}
			if a.States[v] = stateOf(verdict); !verdict.Decided() {
				a.Undecided = append(a.Undecided, e.ids[v])
			}
		}
		if skip > 0 && a.States[0] == Unasked {
			e.postpone(a, picks)
		}
		return
	}
}

// standWithout leaves out the limits and picks that an answer has set aside.
func (e *Engine) standWithout(aside []string, guards, picks []solve.Lit) (g, p []solve.Lit) {
	if len(aside) == 0 {
		return guards, picks
	}
	g = slices.DeleteFunc(slices.Clone(guards), func(l solve.Lit) bool {
		return slices.Contains(aside, e.limits.behind(l).linear.Code)
	})
	p = slices.DeleteFunc(picks, func(l solve.Lit) bool { return slices.Contains(aside, e.ids[l.Var()]) })
	return g, p
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
	s.Allow(e.within(proofSteps))
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
