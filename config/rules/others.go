package rules

import (
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// others judges every chassis and body other than the unit's own. Limits
// differ there, so a solver apart takes the limits of one pair after another,
// and what was found stands until picks, quantities or limits change it.
type others struct {
	solver *solve.Solver
	guards []solve.Lit
	known  []elsewhere // by variable of a chassis or body
}

// elsewhere is what is known of one other chassis or body.
type elsewhere struct {
	state    State
	pair     [2]string
	key      string
	quantity map[int]int
	model    []bool      // Open: an answer, by variable
	cause    []solve.Lit // RuledOut: the picks it rests on
}

// newSolver is a fresh solver with the catalogue's clauses.
func (e *Engine) newSolver() *solve.Solver {
	s := solve.New(e.solver.Vars())
	for _, p := range e.parts {
		for _, c := range p.clauses {
			s.AddClause(c...)
		}
	}
	return s
}

func (e *Engine) judgeOthers(a *Answer, u *config.Unit, limits *Limits, picks []solve.Lit, budget int64) {
	o := &e.other
	if o.known == nil {
		o.known = make([]elsewhere, e.firstOption())
	}
	quantity := e.quantities(u)
	for v := range e.firstOption() {
		pair := [2]string{e.ids[v], u.Body}
		if e.class[v] == bodyClass {
			pair = [2]string{u.Chassis, e.ids[v]}
		}
		beside := slices.DeleteFunc(slices.Clone(picks), func(p solve.Lit) bool { return e.class[p.Var()] == e.class[v] })
		if slices.Contains(picks, solve.Pos(v)) && len(a.SetAside) == 0 {
			a.States[v] = Open // the table has an answer with all picks, this one among them
			continue
		}
		k := &o.known[v]
		if limits.Key == "" || k.key != limits.Key || k.pair != pair || !sameKept(k.quantity, quantity) || !k.stands(solve.Pos(v), beside) {
			*k = e.lookElsewhere(v, pair, limits, beside, quantity, budget)
		}
		a.States[v] = k.state
		if k.state == Checking {
			a.Undecided = append(a.Undecided, e.ids[v])
		}
	}
	for _, class := range []int32{chassisClass, bodyClass} {
		only, open := -1, 0
		for v := range e.firstOption() {
			if e.class[v] == class && a.States[v] != RuledOut {
				only, open = v, open+1
			}
		}
		if open == 1 && a.States[only] == Open {
			a.States[only] = Forced
		}
	}
}

func sameKept(a, b map[int]int) bool {
	if len(a) != len(b) {
		return false
	}
	for v, q := range a {
		if b[v] != q {
			return false
		}
	}
	return true
}

// stands reports whether what was found holds beside these picks too.
func (k *elsewhere) stands(l solve.Lit, beside []solve.Lit) bool {
	switch k.state {
	case Open:
		for _, p := range beside {
			if k.model[p.Var()] == p.Negative() {
				return false
			}
		}
		return true
	case RuledOut:
		for _, c := range k.cause {
			if c != l && !slices.Contains(beside, c) {
				return false
			}
		}
		return true
	}
	return false
}

func (e *Engine) lookElsewhere(v int, pair [2]string, limits *Limits, beside []solve.Lit, quantity map[int]int, budget int64) elsewhere {
	k := elsewhere{pair: pair, key: limits.Key, quantity: quantity, state: Checking}
	guards := e.loadElsewhere(limits.For(pair[0], pair[1]), quantity)
	ask := append(append(slices.Clone(guards), solve.Pos(v)), beside...)
	switch s := e.other.solver; s.Solve(ask, budget) {
	case solve.Sat:
		k.state = Open
		k.model = make([]bool, e.n)
		for x := range k.model {
			k.model[x] = s.Model(solve.Pos(x))
		}
	case solve.Unsat:
		k.state = RuledOut
		for _, c := range s.Core() {
			if c.Var() < e.n {
				k.cause = append(k.cause, c)
			}
		}
	}
	return k
}

// apart is the solver for limits other than the present ones.
func (e *Engine) apart() *solve.Solver {
	if e.other.solver == nil {
		e.other.solver = e.newSolver()
	}
	return e.other.solver
}

// loadElsewhere puts limits into the solver apart and returns their guards.
func (e *Engine) loadElsewhere(list []config.Linear, quantity map[int]int) []solve.Lit {
	o := &e.other
	s := e.apart()
	ws, _ := e.weigh(list)
	for i := range ws {
		l := e.solveLimit(&ws[i], quantity)
		if i < len(o.guards) {
			s.ReplaceLimit(o.guards[i], l)
		} else {
			o.guards = append(o.guards, s.AddLimit(l))
		}
	}
	return slices.Clone(o.guards[:len(ws)])
}
