package solve

// Walker goes from one answer to the next by changing little, so that its work
// grows with what differs and not with the number of variables. Several can walk
// on one solver.
type Walker struct {
	at    witness
	loose bool // it stands on values that are no answer
}

// NewWalker makes a walker that stands nowhere yet; see Take.
func NewWalker(s *Solver) *Walker { return &Walker{at: witness{s: s}} }

// Take goes to the last answer that the solver found.
func (w *Walker) Take() {
	w.at.take(pack(nil, w.at.s.model))
	w.loose = false
}

// Begin stands on values of the solver's first variables, all others false, which
// need be no answer: Near mends them.
func (w *Walker) Begin(values []bool) {
	w.at.take(pack(nil, values))
	for c, n := range w.at.count {
		if n == 0 {
			w.at.broken = append(w.at.broken, int32(c))
		}
	}
	w.loose = true
}

// Stands reports whether the walker has somewhere to go from: it took an answer,
// and the solver has got no more variables, clauses or limits since.
func (w *Walker) Stands() bool { return w.at.fits() }

// Turn makes a literal hold where the walker stands, whatever that breaks; Near
// mends it.
func (w *Walker) Turn(l Lit) {
	if !w.at.is(l) {
		w.at.turn(l)
	}
}

// Weigh counts every limit anew, since they may have been replaced.
func (w *Walker) Weigh() {
	for slot := range w.at.sums {
		w.at.weigh(slot)
	}
}

// Near asks as Solve does, but looks for an answer near where the walker stands,
// and goes there. Of the assumptions, base are the guards of limits. Without an
// answer it stays where it last had one.
func (w *Walker) Near(base, assumptions []Lit, conflicts int64) Result {
	r := w.at.s.solveNear(&w.at, base, assumptions, conflicts)
	switch {
	case r == Sat:
		w.at.settle()
		w.at.broken = w.at.broken[:0]
		w.loose = false
	case w.loose:
		w.at = witness{s: w.at.s}
	default:
		w.at.back(0)
	}
	return r
}
