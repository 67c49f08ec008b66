package solve

import "slices"

// Optimize looks for the answer beside the assumptions whose choices cost
// least. First Minimize looks for good answers for a while. Then, where the
// dual has a price for a limit, the window between its bound and what is known
// is searched from below; elsewhere clauses alone decide, and paying for their
// conflicts one by one proves more.
//
// It adds variables, clauses and limits, so it belongs on a solver made for
// it. About the given number of conflicts is spent, each question counting as
// one more, 0 or less meaning no bound.
//
// Start, where it is known, are values of the first variables that lie near an
// answer: where the first look finds none, it begins there.
func (s *Solver) Optimize(start []bool, assumptions []Lit, costs [][]Choice, conflicts int64) Optimum {
	guard := s.AddLimit(Limit{})
	best := s.Minimize(assumptions, costs, guard, firstLook)
	if best.Proven() {
		return best
	}
	if !best.Found && start != nil {
		w := NewWalker(s)
		w.Begin(start)
		if w.Near(s.guardsIn(assumptions), assumptions, firstLook) == Sat {
			best.Found, best.Cost = true, s.sum(costs)
		}
	}
	best = s.prove(assumptions, costs, guard, best, conflicts)
	if best.Found && !best.Proven() {
		best = s.descend(assumptions, costs, guard, best)
	}
	return best
}

// guardsIn lists the guards of limits among literals.
func (s *Solver) guardsIn(lits []Lit) (guards []Lit) {
	for _, l := range lits {
		if s.guards[l.Var()] >= 0 && !l.Negative() {
			guards = append(guards, l)
		}
	}
	return guards
}

// prove goes on from what a first look found, until that or something cheaper is
// proven or the conflicts are spent.
func (s *Solver) prove(assumptions []Lit, costs [][]Choice, guard Lit, best Optimum, conflicts int64) Optimum {
	if best.Found {
		if d := newDual(s, assumptions, costs); d != nil {
			d.raise(float64(best.Cost), raisings)
			if d.binds() {
				return s.narrow(d, assumptions, costs, guard, best, conflicts)
			}
			if _, bound, ok := d.limit(best.Cost); ok {
				best.Bound = max(best.Bound, min(bound, best.Cost))
			}
		}
	}
	return s.climb(assumptions, costs, best, conflicts)
}

// firstLook is how many conflicts go into good answers before the proof.
const firstLook = 100

// work done so far: conflicts, and questions, since on a large problem even one
// without a conflict takes its time.
func (s *Solver) work() int64 { return s.Stats.Conflicts + s.Stats.Solves }

// narrow asks for answers that cost little more than the bound, and for dearer
// ones the longer it finds none, so that most of the work goes into the last
// proof. What the dual says of a target is a limit that rules most choices out
// at once.
func (s *Solver) narrow(
	d *dual, assumptions []Lit, costs [][]Choice, guard Lit, best Optimum, conflicts int64,
) Optimum {
	start, raised := s.work(), int64(0)
	spent := func() bool { return conflicts > 0 && s.work()-start+raised*eachRaising >= conflicts }
	model := slices.Clone(s.model)
	cut := s.AddLimit(Limit{})
	within := append(slices.Clone(assumptions), guard)
	if _, bound, ok := d.limit(best.Cost); ok {
		best.Bound = max(best.Bound, min(bound, best.Cost))
	}
	window := max(1, min(best.Bound/firstWindow, (best.Cost-best.Bound)/8))
	turn := int64(firstTurn)
	for best.Bound < best.Cost {
		target := min(best.Cost-1, best.Bound+window)
		s.ReplaceLimit(guard, Limit{Groups: costs, Max: target})
		r := Unsat
		if d := newDual(s, within, costs); d != nil {
			raised++
			d.raise(float64(target+1), raisings)
			l, bound, ok := d.limit(target)
			if !ok || spent() {
				break
			}
			if bound <= target {
				best.Bound = max(best.Bound, bound)
				s.ReplaceLimit(cut, l)
				d.prefer()
				r = s.solve(append(within, cut), turn)
			}
		}
		switch r {
		case Unknown: // less is sooner refuted
			window = max(1, window/2)
			turn += turn / 2
		case Unsat:
			best.Bound = target + 1
			window *= 2
		case Sat:
			best.Cost = s.sum(costs)
			copy(model, s.model)
			window = max(1, min(window, (best.Cost-best.Bound)/2))
		}
	}
	copy(s.model, model)
	return best
}

const (
	firstWindow = 500 // the first target lies above the bound by this part of it
	firstTurn   = 400 // conflicts before a smaller window is tried
	eachRaising = 20  // conflicts that take as long as raising the prices
)

// sum is what the choices cost in the last answer found.
func (s *Solver) sum(groups [][]Choice) int64 {
	var sum int64
	for _, g := range groups {
		for _, c := range g {
			if s.Model(c.Lit) {
				sum += c.Cost
			}
		}
	}
	return sum
}
