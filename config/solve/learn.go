package solve

import (
	"cmp"
	"slices"
)

// explain appends to dst the refuted literals that made l hold, or, with l
// noLit, that broke the clause or limit.
func (s *Solver) explain(r reason, l Lit, dst []Lit) []Lit {
	if r < 0 {
		return s.explainLimit(r.slot(), l, dst)
	}
	for _, q := range s.lits(int32(r)) {
		if q != l {
			dst = append(dst, q)
		}
	}
	return dst
}

// lowerTo takes back levels that a conflict does not touch: a limit may turn
// out broken later than the level that broke it. It is false when the conflict
// rests on facts alone.
func (s *Solver) lowerTo(broken reason) bool {
	s.reasonBuf = s.explain(broken, noLit, s.reasonBuf[:0])
	top := int32(0)
	for _, q := range s.reasonBuf {
		top = max(top, s.level[q.Var()])
	}
	if top == 0 {
		return false
	}
	s.cancel(int(top))
	return true
}

// learn turns a conflict into a clause with one literal of the last level,
// goes back to where that literal follows, and lets it hold.
func (s *Solver) learn(broken reason) {
	clause := append(s.clauseBuf[:0], noLit)
	last := int32(len(s.levels))
	open, at := 0, len(s.trail)-1
	p := noLit
	for {
		s.reasonBuf = s.explain(broken, p, s.reasonBuf[:0])
		for _, q := range s.reasonBuf {
			v := q.Var()
			if s.seen[v] || s.level[v] == 0 {
				continue
			}
			s.bump(int32(v))
			s.seen[v] = true
			s.seenVars = append(s.seenVars, v)
			if s.level[v] == last {
				open++
			} else {
				clause = append(clause, q)
			}
		}
		for !s.seen[s.trail[at].Var()] {
			at--
		}
		p = s.trail[at]
		at--
		broken = s.why[p.Var()]
		s.seen[p.Var()] = false
		if open--; open == 0 {
			break
		}
	}
	clause[0] = p.Not()

	// A literal whose own clause is made of literals already here says nothing new.
	kept := 1
	for _, q := range clause[1:] {
		if !s.superfluous(q) {
			clause[kept] = q
			kept++
		}
	}
	clause = clause[:kept]
	for _, v := range s.seenVars {
		s.seen[v] = false
	}
	s.seenVars = s.seenVars[:0]

	back := 0
	if len(clause) > 1 {
		m := 1
		for i := range clause {
			if i > 1 && s.level[clause[i].Var()] > s.level[clause[m].Var()] {
				m = i
			}
		}
		clause[1], clause[m] = clause[m], clause[1]
		back = int(s.level[clause[1].Var()])
	}
	grade := s.grade(clause)
	s.clauseBuf = clause
	s.cancel(back)
	if len(clause) == 1 {
		s.enqueue(clause[0], noReason)
	} else {
		c := s.attach(clause, grade)
		s.learned = append(s.learned, c)
		s.enqueue(clause[0], reason(c))
	}
	s.bumpBy /= 0.95
}

func (s *Solver) superfluous(q Lit) bool {
	r := s.why[q.Var()]
	if r <= 0 {
		return false
	}
	for _, x := range s.lits(int32(r)) {
		if v := x.Var(); v != q.Var() && !s.seen[v] && s.level[v] > 0 {
			return false
		}
	}
	return true
}

// grade counts the levels a clause spans, at least 1: fewer is better.
func (s *Solver) grade(clause []Lit) int {
	s.stamp++
	n := 0
	for _, q := range clause {
		if lv := int(s.level[q.Var()]) % len(s.stamps); s.stamps[lv] != s.stamp {
			s.stamps[lv] = s.stamp
			n++
		}
	}
	return n
}

// failed fills the core for an assumption that the earlier ones refute.
func (s *Solver) failed(a Lit) {
	s.core = append(s.core[:0], a)
	if s.level[a.Var()] == 0 {
		return
	}
	s.seen[a.Var()] = true
	for i := len(s.trail) - 1; i >= int(s.levels[0]); i-- {
		l := s.trail[i]
		v := l.Var()
		if !s.seen[v] {
			continue
		}
		s.seen[v] = false
		if s.why[v] == noReason {
			s.core = append(s.core, l)
			continue
		}
		s.reasonBuf = s.explain(s.why[v], l, s.reasonBuf[:0])
		for _, q := range s.reasonBuf {
			if s.level[q.Var()] > 0 {
				s.seen[q.Var()] = true
			}
		}
	}
}

// forget drops the weaker half of the learned clauses.
func (s *Solver) forget() {
	if !s.settle() {
		return
	}
	order := slices.Clone(s.learned)
	slices.SortFunc(order, func(a, b int32) int {
		return cmp.Or(cmp.Compare(s.arena[a+1], s.arena[b+1]), cmp.Compare(s.arena[a], s.arena[b]), cmp.Compare(a, b))
	})
	weak := make(map[int32]bool, len(order)/2)
	for _, c := range order[len(order)/2:] {
		if s.arena[c+1] > 2 && s.arena[c] > 2 {
			weak[c] = true
		}
	}
	s.rebuild(func(c int32, _ []Lit) bool { return !weak[c] })
}

// settle takes back all levels and draws the consequences of the facts. It is
// false when these contradict each other.
func (s *Solver) settle() bool {
	s.cancel(0)
	if !s.impossible {
		_, s.impossible = s.propagate()
	}
	return !s.impossible
}

// rebuild keeps the learned clauses asked for and packs the arena. Facts that
// hold already make clauses shorter or superfluous. Only when settled.
func (s *Solver) rebuild(keep func(c int32, lits []Lit) bool) {
	for _, l := range s.trail {
		s.why[l.Var()] = noReason
	}
	for i := range s.watches {
		s.watches[i] = s.watches[i][:0]
	}
	old := s.arena
	s.arena = make([]Lit, 1, len(old))
	s.learned = s.learned[:0]
	for c := int32(1); int(c) < len(old); c += 2 + int32(old[c]) {
		grade, lits := old[c+1], old[c+2:c+2+int32(old[c])]
		if grade > 0 && !keep(c, lits) {
			continue
		}
		at := len(s.arena)
		s.arena = append(s.arena, 0, grade)
		satisfied := false
		for _, l := range lits {
			satisfied = satisfied || s.val[l] == holds
			if s.val[l] == open {
				s.arena = append(s.arena, l)
			}
		}
		if satisfied {
			s.arena = s.arena[:at]
			continue
		}
		s.arena[at] = Lit(len(s.arena) - at - 2)
		s.watchClause(int32(at))
		if grade > 0 {
			s.learned = append(s.learned, int32(at))
		}
	}
}
