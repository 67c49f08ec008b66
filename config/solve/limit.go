package solve

import (
	"cmp"
	"slices"
)

// Choice is one literal of a group and what it costs when it holds.
type Choice struct {
	Lit  Lit
	Cost int64
}

// Limit demands that the costs of the literals that hold sum to at most Max.
//
// Groups say where exactly one literal always holds: the bound then takes the
// cheapest that is still possible of each group, which sees a broken limit far
// earlier than term by term. A lone literal x is the group {x: cost, not x: 0}.
// That exactly one of each group holds is for the clauses to demand; a literal
// stands in at most one group. Costs may be negative; a sum of their absolute
// values must stay below 1<<62.
type Limit struct {
	Groups [][]Choice
	Max    int64
}

// limit is a Limit in work. Its least sum under the current assignment is kept
// up to date as literals fall.
type limit struct {
	guard  Lit // in force only where this holds
	groups [][]Choice
	first  []int32 // by group: its cheapest choice still possible
	least  int64   // sum of those
	max    int64
	stale  bool   // in the solver's list of those to propagate
	byGain []gain // choices by what they cost above their group's cheapest, largest first
}

// gain is a choice, or in a reason a group's cheapest one that is left, and how
// far that is above the group's cheapest of all.
type gain struct {
	lit   Lit
	group int32
	cost  int64
	above int64
}

// unit is the largest single choice of a limit, in which limits compare; at
// least 1.
func (l *limit) unit() float64 {
	if len(l.byGain) == 0 {
		return 1
	}
	return float64(l.byGain[0].above)
}

// limitUse says where a literal stands: limit, group and position in it.
type limitUse struct{ slot, group, pos int32 }

// largestFirst sorts by what is gained.
func largestFirst(list []gain) {
	slices.SortFunc(list, func(a, b gain) int {
		if c := cmp.Compare(b.above, a.above); c != 0 {
			return c
		}
		return cmp.Or(cmp.Compare(a.group, b.group), cmp.Compare(a.lit, b.lit))
	})
}

// AddLimit adds a limit with a guard: it is in force where the guard, a fresh
// variable's literal, is assumed, so that Core names it like any assumption.
func (s *Solver) AddLimit(l Limit) (guard Lit) {
	v := s.NewVar()
	s.cancel(0)
	slot := len(s.limits)
	s.limits = append(s.limits, limit{guard: Pos(v)})
	s.guards[v] = int32(slot)
	s.fillLimit(slot, l)
	return Pos(v)
}

// ReplaceLimit puts another limit in the place of the one with this guard and
// forgets what was learned from it.
func (s *Solver) ReplaceLimit(guard Lit, l Limit) {
	if !s.settle() {
		return
	}
	slot := int(s.guards[guard.Var()])
	for _, g := range s.limits[slot].groups {
		for _, c := range g {
			s.uses[c.Lit] = slices.DeleteFunc(s.uses[c.Lit], func(u limitUse) bool { return int(u.slot) == slot })
		}
	}
	s.retract(guard)
	off := guard.Not()
	if slices.ContainsFunc(s.learned, func(c int32) bool { return slices.Contains(s.lits(c), off) }) {
		s.rebuild(func(_ int32, lits []Lit) bool { return !slices.Contains(lits, off) })
	}
	s.fillLimit(slot, l)
}

// retract takes back the fact that a limit cannot be kept. Nothing rests on
// it, since no clause contains a guard except to be excused by it.
func (s *Solver) retract(guard Lit) {
	if s.val[guard] == open {
		return
	}
	s.val[guard], s.val[guard.Not()] = open, open
	s.trail = slices.DeleteFunc(s.trail, func(l Lit) bool { return l == guard.Not() })
	for i, l := range s.trail {
		s.place[l.Var()] = int32(i)
	}
	s.head = len(s.trail)
	s.push(int32(guard.Var()))
}

func (s *Solver) fillLimit(slot int, l Limit) {
	s.sums = s.sums[:0]
	lim := &s.limits[slot]
	*lim = limit{guard: lim.guard, max: l.Max, groups: make([][]Choice, len(l.Groups)),
		first: make([]int32, len(l.Groups))}
	n := 0
	for _, choices := range l.Groups {
		n += len(choices)
	}
	all := make([]Choice, 0, n)
	lim.byGain = make([]gain, 0, n)
	for g, choices := range l.Groups {
		from := len(all)
		all = append(all, choices...)
		cs := all[from:]
		for i := range cs { // few: put each in its place
			for ; i > 0 && cs[i].Cost < cs[i-1].Cost; i-- {
				cs[i], cs[i-1] = cs[i-1], cs[i]
			}
		}
		at := int32(0)
		for int(at) < len(cs)-1 && s.val[cs[at].Lit] == refuted {
			at++
		}
		lim.groups[g] = cs
		lim.first[g] = at
		lim.least += cs[at].Cost
		for i, c := range cs {
			s.uses[c.Lit] = append(s.uses[c.Lit], limitUse{int32(slot), int32(g), int32(i)})
			if c.Cost > cs[0].Cost {
				lim.byGain = append(lim.byGain, gain{c.Lit, int32(g), c.Cost, c.Cost - cs[0].Cost})
			}
		}
	}
	largestFirst(lim.byGain)
	s.propagateLimit(slot) // no conflict: the guard is not assumed here
	s.settle()
}

// fall and rise keep the least sum when a literal is refuted or freed; fall
// reports whether it has risen.
func (l *limit) fall(val []int8, u limitUse) bool {
	at := l.first[u.group]
	if at != u.pos {
		return false
	}
	g := l.groups[u.group]
	to := at
	for int(to) < len(g)-1 && val[g[to].Lit] == refuted {
		to++
	}
	l.least += g[to].Cost - g[at].Cost
	l.first[u.group] = to
	return g[to].Cost > g[at].Cost
}

func (l *limit) rise(u limitUse) {
	if at := l.first[u.group]; u.pos < at {
		g := l.groups[u.group]
		l.least += g[u.pos].Cost - g[at].Cost
		l.first[u.group] = u.pos
	}
}

// propagateLimit refutes every choice that would break the limit, or the guard
// when the limit is broken already. It reports a conflict.
func (s *Solver) propagateLimit(slot int) bool {
	l := &s.limits[slot]
	slack := l.max - l.least
	if s.val[l.guard] != holds {
		if slack < 0 && s.val[l.guard] == open {
			s.enqueue(l.guard.Not(), limitReason(slot))
		}
		return false
	}
	if slack < 0 {
		return true
	}
	for i := range l.byGain {
		x := &l.byGain[i]
		if x.above <= slack {
			break
		}
		if s.val[x.lit] == open && x.cost-l.groups[x.group][l.first[x.group]].Cost > slack {
			s.Stats.LimitProps++
			s.enqueue(x.lit.Not(), limitReason(slot))
		}
	}
	return false
}

// explainLimit appends refuted literals that suffice for p to follow from the
// limit, or for the limit to be broken (p noLit). It takes the groups that
// contribute most and then claims no more of them than is needed.
func (s *Solver) explainLimit(slot int, p Lit, dst []Lit) []Lit {
	l := &s.limits[slot]
	until := int32(len(s.trail))
	need := l.max // the other groups together exceed this
	own := int32(-1)
	if p != noLit {
		until = s.place[p.Var()]
	}
	if p != l.guard.Not() {
		dst = append(dst, l.guard.Not())
		if p != noLit {
			for _, u := range s.uses[p.Not()] {
				if int(u.slot) == slot {
					own = u.group
					need -= l.groups[u.group][u.pos].Cost
				}
			}
		}
	}
	var sum int64
	cs := s.contrib[:0]
	for g, choices := range l.groups {
		if int32(g) == own {
			continue
		}
		i, fact := 0, true
		base := choices[0].Cost
		for i < len(choices)-1 && s.val[choices[i].Lit] == refuted && s.place[choices[i].Lit.Var()] < until {
			fact = fact && s.level[choices[i].Lit.Var()] == 0
			i++
			if fact {
				base = choices[i].Cost
			}
		}
		sum += base
		if least := choices[i].Cost; least > base {
			cs = append(cs, gain{group: int32(g), cost: least, above: least - base})
		}
	}
	largestFirst(cs)
	n := 0
	for n < len(cs) && sum <= need {
		sum += cs[n].above
		n++
	}
	spare := sum - need - 1
	for _, c := range cs[:n] {
		choices := l.groups[c.group]
		least := c.cost
		if spare > 0 && len(choices) > 2 { // claim a lower minimum where that still suffices
			for t := len(choices) - 1; t >= 0; t-- {
				if x := choices[t]; x.Cost < least && least-x.Cost <= spare && s.val[x.Lit] == refuted {
					spare -= least - x.Cost
					least = x.Cost
				}
			}
		}
		for _, x := range choices {
			if x.Cost >= least {
				break
			}
			if s.level[x.Lit.Var()] > 0 {
				dst = append(dst, x.Lit)
			}
		}
	}
	s.contrib = cs
	return dst
}

func (l *limit) inForce(model []bool) bool { return model[l.guard.Var()] }

func (l *limit) sum(model []bool) int64 {
	var sum int64
	for _, g := range l.groups {
		for _, c := range g {
			if model[c.Lit.Var()] != c.Lit.Negative() {
				sum += c.Cost
			}
		}
	}
	return sum
}
