package solve

// witness is one full answer and a way to change it a little: a literal is
// made to hold, and the clauses that this breaks are mended by as few further
// changes as a short walk finds. It settles most questions without a search.
type witness struct {
	s     *Solver
	val   []bool
	count []int32 // by clause as given: literals of it that hold
	sums  []int64 // by slot: what the limit's choices cost

	turns   int     // ever made
	changed []Lit   // since it was last settled, in order
	moved   []int32 // by variable: stamp of the walk that changed it
	walk    int32
	broken  []int32 // clauses to look at
	tries   int     // left of what ease may spend
	base    []Lit   // guards of the limits that repair keeps
}

// turnsEach of the witness take as long as a step of the solver.
const turnsEach = 4

// mostChanges is how far a walk goes from the answer it starts at.
const mostChanges = 24

// fits reports whether the witness knows every variable, clause and limit.
func (w *witness) fits() bool {
	return len(w.val) == w.s.Vars() && len(w.count) == len(w.s.input.ends) && len(w.sums) == len(w.s.limits)
}

// take makes the witness the given answer.
func (w *witness) take(bits []uint64) {
	in := &w.s.input
	if !w.fits() {
		w.val = make([]bool, w.s.Vars())
		w.moved = make([]int32, w.s.Vars())
		w.walk = 0
		w.count = make([]int32, len(in.ends))
		for v := range w.val {
			for _, c := range in.in[Neg(v)] {
				w.count[c]++
			}
		}
		w.sums = make([]int64, len(w.s.limits))
		for slot := range w.sums {
			w.weigh(slot)
		}
	}
	for v := range w.val {
		if l := Pos(v); bit(bits, l) != w.val[v] {
			w.turn(l ^ boolLit(w.val[v]))
		}
	}
	w.changed = w.changed[:0]
	w.broken = w.broken[:0]
}

func boolLit(negative bool) Lit {
	if negative {
		return 1
	}
	return 0
}

// weigh counts a limit anew, after it was replaced.
func (w *witness) weigh(slot int) {
	if slot < len(w.sums) {
		w.sums[slot] = w.s.limits[slot].sum(w.val)
	}
}

// turn makes a literal that fails hold.
func (w *witness) turn(l Lit) {
	if w.turns++; w.turns%turnsEach == 0 {
		w.s.Stats.Steps++
	}
	w.val[l.Var()] = !l.Negative()
	for _, c := range w.s.input.in[l] {
		w.count[c]++
	}
	for _, c := range w.s.input.in[l.Not()] {
		if w.count[c]--; w.count[c] == 0 {
			w.broken = append(w.broken, c)
		}
	}
	for _, u := range w.s.uses[l] {
		w.sums[u.slot] += w.s.limits[u.slot].groups[u.group][u.pos].Cost
	}
	for _, u := range w.s.uses[l.Not()] {
		w.sums[u.slot] -= w.s.limits[u.slot].groups[u.group][u.pos].Cost
	}
	w.changed = append(w.changed, l)
}

// reach walks to an answer in which l holds, changing no variable that is
// protected. When it finds none, the witness is as before.
func (w *witness) reach(l Lit, protected func(v int) bool) bool {
	start := len(w.changed)
	w.walk++
	w.moved[l.Var()] = w.walk
	w.turn(l)
	for len(w.broken) > 0 {
		c := w.broken[len(w.broken)-1]
		w.broken = w.broken[:len(w.broken)-1]
		if w.count[c] > 0 {
			continue
		}
		best, least := noLit, int32(1<<30)
		for _, q := range w.s.input.clause(c) {
			v := q.Var()
			if w.moved[v] == w.walk || protected(v) || w.s.level[v] == 0 && w.s.val[q] == refuted {
				continue
			}
			if n := w.breaks(q, least); n < least {
				best, least = q, n
			}
		}
		if best == noLit || len(w.changed)-start >= mostChanges {
			w.back(start)
			return false
		}
		w.moved[best.Var()] = w.walk
		w.turn(best)
	}
	return true
}

// breaks counts the clauses that making q hold would break, up to enough.
func (w *witness) breaks(q Lit, enough int32) int32 {
	var n int32
	for _, c := range w.s.input.in[q.Not()] {
		if w.count[c] == 1 {
			if n++; n >= enough {
				break
			}
		}
	}
	return n
}

// back undoes changes until so many are left.
func (w *witness) back(to int) {
	for i := len(w.changed) - 1; i >= to; i-- {
		w.turn(w.changed[i].Not())
		w.changed = w.changed[:i]
	}
	w.broken = w.broken[:0]
}

// settle makes the present answer the one to go back to.
func (w *witness) settle() { w.changed = w.changed[:0] }

// margin is what the limit of a slot leaves, counted in its largest single
// choice, so that limits in different units compare. It is negative when the
// limit is broken.
func (w *witness) margin(slot int) float64 {
	l := &w.s.limits[slot]
	left := float64(l.max - w.sums[slot])
	if len(l.byGain) == 0 {
		if left < 0 {
			return left
		}
		return enough
	}
	return left / float64(l.byGain[0].above)
}

// enough of a margin: a few more choices of any size fit.
const enough = 4

// tightest of the limits of the guards, and the margin there; slot -1 when
// there is none.
func (w *witness) tightest(base []Lit) (slot int, margin float64) {
	slot, margin = -1, enough
	for _, g := range base {
		if s := int(w.s.guards[g.Var()]); s >= 0 {
			if m := w.margin(s); m < margin {
				slot, margin = s, m
			}
		}
	}
	return slot, margin
}

// ease looks for an answer nearby whose tightest limit has a margin of at
// least the given one, by taking cheaper choices there, one after another, in
// at most so many tries. It reports whether it got that far; either way it
// keeps what it gained.
func (w *witness) ease(base []Lit, target float64, tries int, protected func(v int) bool) bool {
	w.tries = tries
	for {
		slot, margin := w.tightest(base)
		if slot < 0 || margin >= target {
			return true
		}
		if !w.easeOnce(slot, margin, base, protected) {
			return false
		}
	}
}

// easeOnce takes the first cheaper choice that leaves more of a margin
// everywhere than there was at the tightest place.
func (w *witness) easeOnce(slot int, margin float64, base []Lit, protected func(v int) bool) bool {
	l := &w.s.limits[slot]
	for i := range l.byGain {
		x := &l.byGain[i]
		if !w.is(x.lit) || protected(x.lit.Var()) {
			continue
		}
		for _, c := range l.groups[x.group] {
			if c.Cost >= x.cost {
				break
			}
			if w.tries--; w.tries < 0 {
				return false
			}
			start := len(w.changed)
			if !protected(c.Lit.Var()) && w.reach(c.Lit, protected) {
				if _, now := w.tightest(base); now > margin {
					return true
				}
				w.back(start)
			}
		}
	}
	return false
}

func (w *witness) is(l Lit) bool { return w.val[l.Var()] != l.Negative() }
