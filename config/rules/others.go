package rules

import (
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// others judges every chassis and body other than the unit's own. Limits
// differ there, so each pair that needs it has a solver apart with its limits,
// and what was found stands until picks, quantities or limits change it.
type others struct {
	known []elsewhere // by variable of a chassis or body
	sites []*site     // those used longest ago first
	spare int         // sites that may still be set up in this answer
	steps int64       // that it may still take
	bound bool        // so many and no more
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

// site is a solver with the limits of one chassis with one body.
type site struct {
	limits   *onPair
	quantity map[int]int

	solver *solve.Solver // made when first needed
	loaded bool          // the solver has the limits
	guards []solve.Lit
}

// readySolver is a solver, asked nothing yet, with the limits of a pair.
type readySolver struct {
	of       *onPair
	quantity map[int]int
	solver   *solve.Solver
	guards   []solve.Lit
}

// newSolverWith is a solver of its own with the limits of a pair, and their guards.
// Bringing them in takes a while, so those of the last pair are kept.
func (e *Engine) newSolverWith(on *onPair, quantity map[int]int) (*solve.Solver, []solve.Lit) {
	r := &e.ready
	if r.of != on || !sameKept(r.quantity, quantity) {
		*r = readySolver{of: on, quantity: quantity, solver: e.fresh.Fork()}
		for i := range on.list {
			r.guards = append(r.guards, r.solver.AddLimit(e.solveLimit(&on.list[i], quantity)))
		}
	}
	return r.solver.Fork(), slices.Clone(r.guards)
}

// sitesAtOnce are set up in one answer of the usual budget; the rest is left as
// Checking.
const sitesAtOnce = 2

// maySetUp reports whether a site may be used now: it is ready, or this answer
// can still afford to make it so. The first may always be.
func (e *Engine) maySetUp(ready bool) bool {
	o := &e.other
	if ready {
		return true
	}
	if o.spare--; o.spare < 0 || o.bound && o.steps <= 0 {
		return false
	}
	o.steps -= limitsEach * int64(e.n)
	return true
}

// bounded asks a solver with what this answer may still spend.
func (o *others) bounded(s *solve.Solver, ask func() solve.Result) solve.Result {
	if !o.bound {
		return ask()
	}
	if o.steps <= 0 {
		return solve.Unknown
	}
	start := s.Stats.Steps
	s.Allow(o.steps)
	defer s.Allow(0)
	r := ask()
	o.steps -= s.Stats.Steps - start
	return r
}

// site with the limits of a pair for these quantities.
func (e *Engine) site(pair [2]string, limits *Limits, quantity map[int]int) *site {
	o := &e.other
	s := &site{}
	if i := slices.IndexFunc(o.sites, func(s *site) bool { return s.limits.pair == pair }); i >= 0 {
		s = o.sites[i]
		o.sites = slices.Delete(o.sites, i, i+1)
	} else if len(o.sites) == mostPairs {
		o.sites = slices.Delete(o.sites, 0, 1)
	}
	o.sites = append(o.sites, s)
	if limits := e.limits.forPair(e, pair, limits); limits != s.limits {
		s.limits, s.loaded = limits, false
	}
	if !sameKept(s.quantity, quantity) {
		s.quantity, s.loaded = quantity, false
	}
	return s
}

// load is the solver with the limits in it and the guards to assume.
func (s *site) load(e *Engine) (*solve.Solver, []solve.Lit) {
	if s.solver == nil {
		s.solver = e.fresh.Fork()
	}
	if !s.loaded {
		for i := range s.limits.list {
			l := e.solveLimit(&s.limits.list[i], s.quantity)
			if i < len(s.guards) {
				s.solver.ReplaceLimit(s.guards[i], l)
			} else {
				s.guards = append(s.guards, s.solver.AddLimit(l))
			}
		}
		s.loaded = true
	}
	return s.solver, s.guards[:len(s.limits.list)]
}

// keeps reports whether an answer keeps the limits.
func (s *site) keeps(e *Engine, model []bool) bool {
	for i := range s.limits.list {
		w := &s.limits.list[i]
		var sum int64
		for v, has := range model {
			if has {
				sum += w.cost[v] * int64(max(s.quantity[v], 1))
			}
		}
		if sum > w.room {
			return false
		}
	}
	return true
}

// judgeOthers judges the chassis and bodies other than the unit's, right after
// the table was asked for its options.
func (e *Engine) judgeOthers(a *Answer, u *config.Unit, limits *Limits, budget int64) {
	o, picks := &e.other, a.picks
	if o.known == nil {
		o.known = make([]elsewhere, e.firstOption())
	}
	quantity := e.quantities(u)
	o.steps, o.bound = budget*stepsEach, budget > 0
	if o.spare = sitesAtOnce; budget > e.Budget {
		o.spare = int(sitesAtOnce * budget / e.Budget)
	} else if budget <= 0 {
		o.spare = len(o.known) * 2
	}
	for v := range e.firstOption() {
		pair := [2]string{e.ids[v], u.Body}
		if e.class[v] == bodyClass {
			pair = [2]string{u.Chassis, e.ids[v]}
		}
		others := slices.DeleteFunc(slices.Clone(picks), func(p solve.Lit) bool {
			return e.class[p.Var()] == e.class[v]
		})
		if slices.Contains(picks, solve.Pos(v)) && len(a.SetAside) == 0 {
			a.States[v] = Open // the table has an answer with all picks, this one among them
			continue
		}
		k := &o.known[v]
		if limits.Key == "" || k.key != limits.Key || k.pair != pair || !sameKept(k.quantity, quantity) ||
			!k.stands(solve.Pos(v), others) {
			*k = e.lookElsewhere(v, pair, limits, others, quantity, budget)
		}
		a.States[v] = k.state
		if k.state == Checking {
			a.Undecided = append(a.Undecided, e.ids[v])
		}
	}
	for _, class := range []int32{chassisClass, bodyClass} {
		last, open, checking := -1, 0, 0
		for v := range e.firstOption() {
			switch {
			case e.class[v] != class:
			case a.States[v] == Open:
				last, open = v, open+1
			case a.States[v] == Checking:
				checking++
			}
		}
		switch {
		case open != 1:
		case checking == 0:
			a.States[last] = Forced
		default: // forced, should the others turn out to be ruled out
			a.Undecided = append(a.Undecided, e.ids[last])
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

// stands reports whether what was found still holds with these picks.
func (k *elsewhere) stands(l solve.Lit, picks []solve.Lit) bool {
	switch k.state {
	case Open:
		for _, p := range picks {
			if k.model[p.Var()] == p.Negative() {
				return false
			}
		}
		return true
	case RuledOut:
		for _, c := range k.cause {
			if c != l && !slices.Contains(picks, c) {
				return false
			}
		}
		return true
	}
	return false
}

// lookElsewhere asks by the rules alone first, near the present answer, which
// rules most pairs out; only where an answer to them breaks the limits of the
// pair is the solver apart needed.
func (e *Engine) lookElsewhere(
	v int, pair [2]string, limits *Limits, picks []solve.Lit, quantity map[int]int, budget int64,
) elsewhere {
	k := elsewhere{pair: pair, key: limits.Key, quantity: quantity, state: Checking}
	s := e.solver
	o := &e.other
	var model []bool
	r := o.bounded(s, func() (r solve.Result) {
		model, r = e.table.Elsewhere(solve.Pos(v), budget)
		return r
	})
	if r == solve.Sat {
		if !e.maySetUp(e.limits.has(pair, limits)) {
			return k
		}
		if at := e.site(pair, limits, quantity); !at.keeps(e, model) {
			if !e.maySetUp(at.loaded) {
				return k
			}
			var guards []solve.Lit
			s, guards = at.load(e)
			for x, has := range model {
				if has {
					s.Prefer(solve.Pos(x))
				} else {
					s.Prefer(solve.Neg(x))
				}
			}
			ask := append(append(slices.Clone(guards), picks...), solve.Pos(v))
			if r = o.bounded(s, func() solve.Result { return s.Solve(ask, budget) }); r == solve.Sat {
				model = e.model(s)
			}
		}
	}
	switch r {
	case solve.Sat:
		k.state = Open
		k.model = slices.Clone(model)
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

// model of the ids in a solver's last answer.
func (e *Engine) model(s *solve.Solver) []bool {
	m := make([]bool, e.n)
	for v := range m {
		m[v] = s.Model(solve.Pos(v))
	}
	return m
}
