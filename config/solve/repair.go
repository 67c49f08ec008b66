package solve

import "slices"

// solveNear asks as Solve does, but starts from a witness that has all the
// assumptions but the last few, and decides only what these leave broken of
// it: what no clause and no limit complains of stays as the witness has it.
// The work then grows with what changes, not with the number of variables. Of
// the assumptions, base are the guards of limits. After Sat the answer is in
// Model and the witness is that answer; back(0) takes it to where it was.
func (s *Solver) solveNear(w *witness, base, assumptions []Lit, conflicts int64) Result {
	w.base = base
	for i := range s.limits { // those that nobody asked for need not be kept
		if g := s.limits[i].guard; w.is(g) != slices.Contains(base, g) {
			w.turn(g ^ boolLit(w.is(g)))
		}
	}
	s.kept = 0
	r := s.run(assumptions, conflicts, w.repair)
	if r == Sat {
		copy(s.model, w.val)
		s.cancel(len(s.assumed))
		s.check()
	}
	return r
}

// repair follows the trail and then decides a literal of a clause that the
// witness breaks, or a cheaper choice of a limit that it breaks; noLit when it
// breaks nothing.
func (w *witness) repair() Lit {
	s := w.s
	for at := s.kept; at < len(s.trail); at++ {
		if l := s.trail[at]; !w.is(l) {
			w.turn(l)
		}
	}
	s.kept = len(s.trail)
	for len(w.broken) > 0 {
		c := w.broken[len(w.broken)-1]
		if w.count[c] == 0 {
			return w.mending(c)
		}
		w.broken = w.broken[:len(w.broken)-1]
	}
	for _, g := range w.base {
		if slot := s.guards[g.Var()]; slot >= 0 && w.sums[slot] > s.limits[slot].max {
			return w.cheaper(int(slot))
		}
	}
	return noLit
}

// mending is the open literal of a broken clause that breaks the fewest others.
func (w *witness) mending(c int32) Lit {
	best, least := noLit, int32(1<<30)
	for _, q := range w.s.input.clause(c) {
		if w.s.val[q] == open {
			if n := w.breaks(q, least); n < least {
				best, least = q, n
			}
		}
	}
	return best
}

// cheaper is a choice that takes the place of the dearest of a broken limit
// that is still open.
func (w *witness) cheaper(slot int) Lit {
	l := &w.s.limits[slot]
	for i := range l.byGain {
		x := &l.byGain[i]
		if !w.is(x.lit) || w.s.val[x.lit] != open {
			continue
		}
		if c := l.groups[x.group][l.first[x.group]]; c.Cost < x.cost && w.s.val[c.Lit] == open {
			return c.Lit
		}
	}
	return w.s.choose()
}
