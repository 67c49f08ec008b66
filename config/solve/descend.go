package solve

import "slices"

// descendTries is how many cheaper choices descend tries, for each variable.
const descendTries = 4

// descend makes an answer that is not proven to be the cheapest cheaper by small
// changes, one after another, as long as it finds any. The last answer found is
// that of best, and the limit of the guard has its costs.
func (s *Solver) descend(assumptions []Lit, costs [][]Choice, guard Lit, best Optimum) Optimum {
	model := slices.Clone(s.model)
	w := witness{s: s}
	w.take(pack(nil, model))
	base := s.guardsIn(assumptions)
	fixed := make([]bool, s.Vars())
	for _, a := range assumptions {
		fixed[a.Var()] = true
	}
	tries := descendTries * s.Vars()
	slot := int(s.guards[guard.Var()])
	for tries > 0 && w.cheapen(slot, base, &tries, func(v int) bool { return fixed[v] }) {
	}
	for v, holds := range w.val {
		s.Prefer(Pos(v) ^ boolLit(!holds))
	}
	if s.solve(assumptions, firstTry) == Sat {
		if cost := s.sum(costs); cost < best.Cost {
			best.Cost = cost
			return best
		}
	}
	copy(s.model, model)
	return best
}

// cheapen goes once through the choices of a slot, the dearest first, and takes a
// cheaper one wherever that and what it entails keeps the limits of the guards and
// costs less in all. It reports whether it took any.
func (w *witness) cheapen(slot int, base []Lit, tries *int, protected func(v int) bool) bool {
	l := &w.s.limits[slot]
	any := false
	for i := range l.byGain {
		x := &l.byGain[i]
		if !w.is(x.lit) || protected(x.lit.Var()) {
			continue
		}
		for _, c := range l.groups[x.group] {
			if c.Cost >= x.cost {
				break
			}
			if *tries--; *tries < 0 {
				return any
			}
			before := w.sums[slot]
			if !protected(c.Lit.Var()) && w.reach(c.Lit, protected) {
				if _, margin := w.tightest(base); margin >= 0 && w.sums[slot] < before {
					w.settle()
					any = true
					break
				}
				w.back(0)
			}
		}
	}
	return any
}
