package solve

// input keeps the clauses exactly as they were given and the last assignment
// that was found to satisfy them all, so that checking the next one costs only
// as much as it differs.
type input struct {
	lits    []Lit
	ends    []int32   // by clause: where it ends in lits
	in      [][]int32 // by literal: the clauses it stands in
	checked []bool    // the last assignment that passed
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
	if !s.input.accepts(s.model) {
		panic("solve: a model breaks a clause")
	}
	for i := range s.limits {
		if l := &s.limits[i]; l.inForce(s.model) && l.sum(s.model) > l.max {
			panic("solve: a model breaks a limit")
		}
	}
	for _, a := range s.assumed {
		if !s.Model(a) {
			panic("solve: a model breaks an assumption")
		}
	}
}
