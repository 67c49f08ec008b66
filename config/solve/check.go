package solve

// input keeps the clauses exactly as they were given and the last assignment
// that was found to satisfy them all, so that checking the next one costs only
// as much as it differs.
type input struct {
	lits    []Lit
	ends    []int32   // by clause: where it ends in lits
	in      [][]int32 // by literal: the clauses it stands in
	checked []bool    // the last assignment that passed
	changed []int32   // variables in which it differed from the one before
	valid   bool      // whether checked passed every clause given so far
}

func (in *input) newVar() {
	in.in = append(in.in, nil, nil)
	in.checked = append(in.checked, false)
	in.valid = false
}

func (in *input) add(lits []Lit) {
	c := int32(len(in.ends))
	in.lits = append(in.lits, lits...)
	in.ends = append(in.ends, int32(len(in.lits)))
	for _, l := range lits {
		in.in[l] = append(in.in[l], c)
	}
	in.valid = false
}

// clause is the c-th as given.
func (in *input) clause(c int32) []Lit {
	from := int32(0)
	if c > 0 {
		from = in.ends[c-1]
	}
	return in.lits[from:in.ends[c]]
}

func (in *input) holds(c int32, model []bool) bool {
	for _, l := range in.clause(c) {
		if model[l.Var()] != l.Negative() {
			return true
		}
	}
	return false
}

// accepts reports whether the model satisfies every clause.
func (in *input) accepts(model []bool) bool {
	in.changed = in.changed[:0]
	if !in.valid {
		for c := range in.ends {
			if !in.holds(int32(c), model) {
				return false
			}
		}
	} else {
		for v, b := range model {
			if b == in.checked[v] {
				continue
			}
			in.changed = append(in.changed, int32(v))
			lost := Pos(v)
			if b {
				lost = Neg(v)
			}
			for _, c := range in.in[lost] {
				if !in.holds(c, model) {
					return false
				}
			}
		}
	}
	copy(in.checked, model)
	in.valid = true
	return true
}

// check holds a model found against clauses, limits and assumptions as they
// were given. A failure would be a fault of this package, and showing a wrong
// answer is worse than stopping.
func (s *Solver) check() {
	before := s.input.valid && len(s.sums) == len(s.limits)
	if !s.input.accepts(s.model) {
		panic("solve: a model breaks a clause")
	}
	if before {
		for _, v := range s.input.changed {
			now := Pos(int(v)) ^ boolLit(!s.model[v])
			s.count(now, 1)
			s.count(now.Not(), -1)
		}
	} else {
		s.sums = s.sums[:0]
		for i := range s.limits {
			s.sums = append(s.sums, s.limits[i].sum(s.model))
		}
	}
	for i := range s.limits {
		if l := &s.limits[i]; l.inForce(s.model) && s.sums[i] > l.max {
			panic("solve: a model breaks a limit")
		}
	}
	for _, a := range s.assumed {
		if !s.Model(a) {
			panic("solve: a model breaks an assumption")
		}
	}
}

// count what a literal adds to the sums of the last model.
func (s *Solver) count(l Lit, times int64) {
	for _, u := range s.uses[l] {
		s.sums[u.slot] += times * s.limits[u.slot].groups[u.group][u.pos].Cost
	}
}
