package solve

// Optimum is the outcome of a search for the least sum.
type Optimum struct {
	Found bool
	Cost  int64 // of the best answer found, which is in Model
	Bound int64 // no answer costs less
}

// Proven reports whether the best answer found is the best there is.
func (o Optimum) Proven() bool { return o.Found && o.Cost == o.Bound }

// Minimize looks for the answer beside the assumptions whose choices cost
// least. The guard is that of a limit set apart for it with AddLimit, whose
// content it replaces. At most the given number of conflicts is spent, 0 or
// less meaning no bound; then the best found and a bound are returned.
// After an outcome that is not found, Core says why when there is no answer.
func (s *Solver) Minimize(assumptions []Lit, groups [][]Choice, guard Lit, conflicts int64) Optimum {
	s.ReplaceLimit(guard, Limit{Groups: groups, Max: 1 << 62})
	for _, g := range groups {
		cheapest := g[0]
		for _, c := range g {
			s.Prefer(c.Lit.Not())
			if c.Cost < cheapest.Cost {
				cheapest = c
			}
		}
		s.Prefer(cheapest.Lit)
	}
	slot := int(s.guards[guard.Var()])
	ask := append(append(make([]Lit, 0, len(assumptions)+1), assumptions...), guard)
	start := s.Stats.Conflicts
	var best Optimum
	var model []bool
	if _, ok := s.Implied(ask); !ok {
		return best
	}
	best.Bound = s.limits[slot].least
	for {
		left := conflicts
		if conflicts > 0 {
			if left -= s.Stats.Conflicts - start; left <= 0 {
				break
			}
		}
		r := s.solve(ask, left)
		if r == Sat {
			best.Found = true
			best.Cost = s.limits[slot].sum(s.model)
			model = append(model[:0], s.model...)
			if best.Cost == best.Bound {
				break
			}
			s.tighten(slot, best.Cost-1)
			continue
		}
		if r == Unsat && best.Found {
			best.Bound = best.Cost
		}
		break
	}
	if best.Found {
		copy(s.model, model)
	}
	return best
}

// tighten lowers the limit of a slot. What was learned stays true.
func (s *Solver) tighten(slot int, most int64) {
	s.cancel(0)
	s.limits[slot].max = most
	s.propagateLimit(slot)
	s.settle()
}
