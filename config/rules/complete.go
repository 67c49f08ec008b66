package rules

import "boxwright/config"

// Completion is a full unit that costs as little as could be found.
type Completion struct {
	Found bool
	Unit  config.Unit
	Cost  int64 // of the deliberate picks and of what was added
	Bound int64 // no full unit with these picks costs less
}

// Proven reports whether no full unit with these picks costs less.
func (c Completion) Proven() bool { return c.Found && c.Cost == c.Bound }

// Complete looks for the full unit that keeps the deliberate picks, all rules
// and all limits and whose cost is least: the cheapest, the lightest, the
// soonest. cost is of one of an option, in whole steps of the caller's choice
// (cents, tenths of a pound, ...), below 1e15 in all; it is not asked for
// chassis and bodies, which stay. About budget conflicts are spent, fewer where
// the catalogue is large and each takes longer; 0 means no bound.
func (e *Engine) Complete(u *config.Unit, limits *Limits, cost func(id string) int64, budget int64) Completion {
	quantity := e.quantities(u)
	w := weighed{cost: make([]int64, e.n)}
	for v := e.firstOption(); v < e.n; v++ {
		w.cost[v] = cost(e.ids[v])
	}
	// The search leaves helpers behind.
	s, ask := e.newSolverWith(e.limitsOf(limits, [2]string{u.Chassis, u.Body}), quantity)
	ask = append(ask, e.picks(u)...)
	best := s.Optimize(e.values(u), ask, e.solveLimit(&w, quantity).Groups, e.scaled(budget))
	out := Completion{Found: best.Found, Cost: best.Cost, Bound: best.Bound}
	if best.Found {
		f := filler{e: e, model: e.model(s)}
		f.note(u)
		out.Unit = f.result(u)
	}
	return out
}

// values says of each id whether it is in the unit.
func (e *Engine) values(u *config.Unit) []bool {
	values := make([]bool, e.n)
	add := func(id string) {
		if v, known := e.vars[id]; known {
			values[v] = true
		}
	}
	add(u.Chassis)
	add(u.Body)
	for _, p := range u.Picks {
		add(p.Option)
	}
	return values
}

// usualSize is how many ids a catalogue has on which all of a budget is spent.
const usualSize = 600

// scaled is a budget of conflicts for a catalogue of this size.
func (e *Engine) scaled(budget int64) int64 {
	if budget > 0 && e.n > usualSize {
		return max(1, budget*usualSize/int64(e.n)*usualSize/int64(e.n))
	}
	return budget
}
