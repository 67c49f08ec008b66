package solve

import "slices"

// Values of a literal under the current partial assignment.
const (
	open    int8 = 0
	holds   int8 = 1
	refuted int8 = -1
)

// A reason says why a literal holds: none (a decision or a fact), a clause
// (its place in the arena), or a limit (its slot, written as a negative).
type reason int32

const noReason reason = 0

func limitReason(slot int) reason { return reason(-1 - slot) }
func (r reason) slot() int        { return int(-1 - r) }

// watch sits with the literal whose falling makes its clause worth a look.
type watch struct {
	clause  int32
	blocker Lit // some other literal of the clause; if it holds, no look is needed
}

// Solver holds clauses, limits and everything learned. It is not safe for
// concurrent use.
type Solver struct {
	input input // the clauses as given, for checking answers

	// Clauses lie one after another: size, grade, literals. Grade 0 marks a
	// given clause, above it a learned one (the number of levels it spans).
	arena   []Lit
	learned []int32
	watches [][]watch // by literal, looked at when the literal becomes true

	limits  []limit
	stale   []int32      // slots whose least sum has risen since the limit was last propagated
	uses    [][]limitUse // by literal: where it stands in limits
	guards  []int32      // by variable: slot of the limit it guards, or -1
	contrib []gain       // room for explainLimit

	val   []int8 // by literal
	level []int32
	why   []reason
	place []int32 // position on the trail
	phase []bool  // value tried first

	activity   []float64
	bumpBy     float64
	queue      []int32 // heap of variables by activity
	queuePos   []int32
	trail      []Lit
	levels     []int32 // where on the trail each level begins
	head       int     // next literal of the trail to propagate
	kept       int     // so much of the trail was never taken back since a follower reset it
	impossible bool    // no assignment at all satisfies the clauses

	assumed []Lit
	core    []Lit
	denied  Lit // assumption whose refutation core is still to be read from; noLit when it is
	model   []bool
	sums    []int64 // by slot: what the limit's choices cost in the model last checked

	seen      []bool
	seenVars  []int
	clauseBuf []Lit
	reasonBuf []Lit
	stamps    []int32
	stamp     int32
	keepMost  int   // learned clauses kept before the weaker half is dropped
	stopAt    int64 // steps at which a question is given up; 0 for never
	pauses    *Pauses
	paused    int64 // steps that the pauses know of

	Stats Stats
}

// Stats count the work done since the solver was made. Steps are literals
// propagated, and other work in what takes about as long: some 0.2 µs each,
// 0.6 µs in wasm.
type Stats struct{ Solves, Conflicts, Decisions, Steps, LimitProps int64 }

// New makes a solver with n variables, numbered from 0.
func New(n int) *Solver {
	s := &Solver{bumpBy: 1, keepMost: 4000, denied: noLit, arena: make([]Lit, 1, 1024)}
	for range n {
		s.NewVar()
	}
	return s
}

// NewVar adds a variable and returns its number. It is tried false first.
func (s *Solver) NewVar() int {
	v := len(s.level)
	s.val = append(s.val, open, open)
	s.watches = append(s.watches, nil, nil)
	s.uses = append(s.uses, nil, nil)
	s.guards = append(s.guards, -1)
	s.level = append(s.level, 0)
	s.why = append(s.why, noReason)
	s.place = append(s.place, 0)
	s.phase = append(s.phase, false)
	s.activity = append(s.activity, 0)
	s.seen = append(s.seen, false)
	s.stamps = append(s.stamps, 0)
	s.queuePos = append(s.queuePos, -1)
	s.model = append(s.model, false)
	s.input.newVar()
	s.push(int32(v))
	return v
}

// Vars is the number of variables.
func (s *Solver) Vars() int { return len(s.level) }

// Prefer makes the literal the value its variable is tried with first, until
// the variable next changes.
func (s *Solver) Prefer(l Lit) { s.phase[l.Var()] = !l.Negative() }

// AddClause demands that at least one of the literals hold. An empty clause
// makes everything unsatisfiable.
func (s *Solver) AddClause(lits ...Lit) {
	s.cancel(0)
	s.input.add(lits)
	if s.impossible {
		return
	}
	c := slices.Clone(lits)
	slices.Sort(c)
	kept := c[:0]
	last := noLit
	for _, l := range c {
		if s.val[l] == holds || last != noLit && l == last.Not() {
			return
		}
		if s.val[l] == refuted || l == last {
			continue
		}
		kept = append(kept, l)
		last = l
	}
	switch len(kept) {
	case 0:
		s.impossible = true
	case 1:
		s.enqueue(kept[0], noReason)
		_, conflict := s.propagate()
		s.impossible = conflict
	default:
		s.attach(kept, 0)
	}
}

func (s *Solver) attach(lits []Lit, grade int) int32 {
	c := int32(len(s.arena))
	s.arena = append(s.arena, Lit(len(lits)), Lit(grade))
	s.arena = append(s.arena, lits...)
	s.watchClause(c)
	return c
}

func (s *Solver) watchClause(c int32) {
	a, b := s.arena[c+2], s.arena[c+3]
	s.watches[a.Not()] = append(s.watches[a.Not()], watch{c, b})
	s.watches[b.Not()] = append(s.watches[b.Not()], watch{c, a})
}

// lits of the clause at c.
func (s *Solver) lits(c int32) []Lit { return s.arena[c+2 : c+2+int32(s.arena[c])] }

func (s *Solver) enqueue(l Lit, r reason) {
	s.val[l] = holds
	s.val[l.Not()] = refuted
	v := l.Var()
	s.level[v] = int32(len(s.levels))
	s.why[v] = r
	s.place[v] = int32(len(s.trail))
	s.trail = append(s.trail, l)
	for _, u := range s.uses[l.Not()] {
		if s.limits[u.slot].fall(s.val, u) {
			s.mark(u.slot)
		}
	}
}

// mark remembers a limit to be propagated.
func (s *Solver) mark(slot int32) {
	if l := &s.limits[slot]; !l.stale {
		l.stale = true
		s.stale = append(s.stale, slot)
	}
}

// propagate draws every consequence of the trail, limits last, since a look at
// one takes longer. On a conflict it returns the clause or limit that is
// broken.
func (s *Solver) propagate() (reason, bool) {
	for {
		if broken, conflict := s.propagateClauses(); conflict {
			return broken, true
		}
		last := len(s.stale) - 1
		if last < 0 {
			return noReason, false
		}
		slot := s.stale[last]
		s.stale = s.stale[:last]
		s.limits[slot].stale = false
		if s.propagateLimit(int(slot)) {
			return limitReason(int(slot)), true
		}
	}
}

func (s *Solver) propagateClauses() (reason, bool) {
	for s.head < len(s.trail) {
		p := s.trail[s.head]
		s.head++
		s.Stats.Steps++
		fallen := p.Not()
		ws := s.watches[p]
		arena, val := s.arena, s.val
		kept := 0
		for i := 0; i < len(ws); i++ {
			w := ws[i]
			if val[w.blocker] == holds {
				ws[kept] = w
				kept++
				continue
			}
			lits := arena[w.clause+2 : w.clause+2+int32(arena[w.clause])]
			if lits[0] == fallen {
				lits[0], lits[1] = lits[1], fallen
			}
			first := lits[0]
			if first != w.blocker && val[first] == holds {
				ws[kept] = watch{w.clause, first}
				kept++
				continue
			}
			moved := false
			for k := 2; k < len(lits); k++ {
				if val[lits[k]] != refuted {
					lits[1], lits[k] = lits[k], fallen
					s.watches[lits[1].Not()] = append(s.watches[lits[1].Not()], watch{w.clause, first})
					moved = true
					break
				}
			}
			if moved {
				continue
			}
			ws[kept] = watch{w.clause, first}
			kept++
			if val[first] == refuted {
				kept += copy(ws[kept:], ws[i+1:])
				s.watches[p] = ws[:kept]
				s.head = len(s.trail)
				return reason(w.clause), true
			}
			s.enqueue(first, reason(w.clause))
		}
		s.watches[p] = ws[:kept]
		if slot := s.guards[p.Var()]; slot >= 0 && !p.Negative() {
			s.mark(slot)
		}
	}
	return noReason, false
}

// cancel takes back every level above lvl.
func (s *Solver) cancel(lvl int) {
	if len(s.levels) <= lvl {
		return
	}
	for _, slot := range s.stale { // what stays on the trail was propagated before the level above it
		s.limits[slot].stale = false
	}
	s.stale = s.stale[:0]
	start := int(s.levels[lvl])
	for i := len(s.trail) - 1; i >= start; i-- {
		l := s.trail[i]
		v := l.Var()
		s.val[l], s.val[l.Not()] = open, open
		s.phase[v] = !l.Negative()
		for _, u := range s.uses[l.Not()] {
			s.limits[u.slot].rise(u)
		}
		s.push(int32(v))
	}
	s.trail = s.trail[:start]
	s.levels = s.levels[:lvl]
	s.head = start
	s.kept = min(s.kept, start)
}

// Solve asks whether everything can hold together with the assumptions. About the
// given number of conflicts is spent, and where limits are assumed a few hundred more;
// zero or less means no bound.
// After Sat the answer is in Model, after Unsat the cause is in Core.
//
// Where limits are assumed and a first try with the phases as they are does not
// tell, what is cheapest under the prices of limits and clauses is tried first:
// that lies near an answer that keeps them all. Cheapest is meant of all limits
// together, then of each alone.
//
// Measured on 60 such questions in wasm: 9 ms for half of them and 75 ms for
// the hardest; a mixed-integer solver of 3.5 MB, warm, took 70 and 1,200 ms.
func (s *Solver) Solve(assumptions []Lit, conflicts int64) Result {
	return s.lead(assumptions, conflicts, false)
}

// Prove asks as Solve does, for who needs to know whether it cannot be: where
// the prices alone prove that, Core is all of the assumptions.
func (s *Solver) Prove(assumptions []Lit, conflicts int64) Result {
	return s.lead(assumptions, conflicts, true)
}

func (s *Solver) lead(assumptions []Lit, conflicts int64, prove bool) Result {
	limits := s.limitsIn(assumptions)
	if len(limits) == 0 || conflicts > 0 && conflicts <= firstTry {
		return s.solve(assumptions, conflicts)
	}
	r := s.solve(assumptions, firstTry)
	for i := 0; i <= len(limits) && r == Unknown && !s.Spent(); i++ {
		some := limits // all, then each alone
		if i > 0 {
			some = limits[i-1 : i]
		}
		loads, most := s.loads(some)
		d := newDual(s, assumptions, loads)
		if d == nil {
			break
		}
		d.raise(float64(most), raisings)
		if prove && d.exceeds(most) {
			s.core, s.denied = append(s.core[:0], assumptions...), noLit
			return Unsat
		}
		d.prefer()
		if conflicts > 0 && conflicts <= eachTry {
			break
		}
		r = s.solve(assumptions, eachTry)
	}
	if r == Unknown && !s.Spent() {
		r = s.solve(assumptions, conflicts)
	}
	return r
}

// firstTry is how many conflicts a question may take before limits are priced,
// and eachTry with each way to price them.
const (
	firstTry = 20
	eachTry  = 200
)

// Allow lets the questions from now on take so many steps in all; 0 for no
// bound. Past it they end as Unknown.
func (s *Solver) Allow(steps int64) {
	if s.stopAt = 0; steps > 0 {
		s.stopAt = s.Stats.Steps + steps
	}
}

// Bounded reports whether the steps are bounded.
func (s *Solver) Bounded() bool { return s.stopAt > 0 }

// Spent reports whether the steps allowed are used up.
func (s *Solver) Spent() bool { return s.stopAt > 0 && s.Stats.Steps >= s.stopAt }

// limitsIn lists the limits that the assumptions demand.
func (s *Solver) limitsIn(assumptions []Lit) []*limit {
	var ls []*limit
	for _, a := range assumptions {
		if slot := s.guards[a.Var()]; slot >= 0 && !a.Negative() {
			ls = append(ls, &s.limits[slot])
		}
	}
	return ls
}

// solve asks with the phases as they are.
func (s *Solver) solve(assumptions []Lit, conflicts int64) Result {
	r := s.run(assumptions, conflicts, s.choose)
	if r == Sat {
		for v := range s.model {
			s.model[v] = s.val[Pos(v)] == holds
		}
		s.cancel(len(s.assumed))
		s.check()
	}
	return r
}

// Implied lists the literals that follow from the assumptions by propagation
// alone, the assumptions among them. It is false, with the cause in Core, when
// they contradict each other that way. The list is good until the next call.
func (s *Solver) Implied(assumptions []Lit) ([]Lit, bool) {
	if s.run(assumptions, 0, nil) != Sat {
		return nil, false
	}
	return s.trail, true
}

// Model reports whether the literal holds in the last answer found.
func (s *Solver) Model(l Lit) bool { return s.model[l.Var()] != l.Negative() }

// Core is the part of the assumptions that the last Unsat rests on; it is good
// until the next call and need not be the smallest. Working it out takes a while, so
// it is done for who asks.
func (s *Solver) Core() []Lit {
	if s.denied != noLit {
		s.failed(s.denied)
		s.denied = noLit
	}
	return s.core
}

// run places the assumptions, each on its own level, reusing those that the
// last question had in common, and then decides, where asked to, until there
// is nothing left to decide.
func (s *Solver) run(assumptions []Lit, conflicts int64, decide func() Lit) Result {
	s.Stats.Solves++
	s.core, s.denied = s.core[:0], noLit
	if s.impossible {
		return Unsat
	}
	same := 0
	for same < len(assumptions) && same < len(s.assumed) && same < len(s.levels) &&
		s.assumed[same] == assumptions[same] {
		same++
	}
	s.cancel(same)
	s.assumed = append(s.assumed[:0], assumptions...)

	var spent int64
	restart, sinceRestart := 1, int64(0)
	for {
		if broken, conflict := s.propagate(); conflict {
			s.Stats.Conflicts++
			spent++
			sinceRestart++
			if !s.lowerTo(broken) {
				s.impossible = true
				return Unsat
			}
			s.learn(broken)
			s.rest()
			if conflicts > 0 && spent >= conflicts || s.Spent() {
				return Unknown
			}
			continue
		}
		if sinceRestart >= 64*luby(restart) {
			restart++
			sinceRestart = 0
			if len(s.learned) > s.keepMost {
				s.forget()
				s.keepMost += s.keepMost / 10
			} else {
				s.cancel(min(len(s.levels), len(s.assumed)))
			}
			continue
		}
		next := noLit
		for next == noLit && len(s.levels) < len(s.assumed) {
			switch a := s.assumed[len(s.levels)]; s.val[a] {
			case holds:
				s.levels = append(s.levels, int32(len(s.trail))) // an empty level keeps level and assumption in step
			case refuted:
				s.denied = a
				return Unsat
			default:
				next = a
			}
		}
		if next == noLit {
			if decide == nil {
				return Sat
			}
			if next = decide(); next == noLit {
				return Sat
			}
			s.Stats.Decisions++
		}
		s.levels = append(s.levels, int32(len(s.trail)))
		s.enqueue(next, noReason)
	}
}

func (s *Solver) choose() Lit {
	for len(s.queue) > 0 {
		if v := s.pop(); s.val[Pos(int(v))] == open {
			if s.phase[v] && s.guards[v] < 0 { // a limit that nobody asked for stays off
				return Pos(int(v))
			}
			return Neg(int(v))
		}
	}
	return noLit
}

// luby is the i-th term of 1 1 2 1 1 2 4 ..., the classic restart sequence.
func luby(i int) int64 {
	for k := 1; ; k++ {
		if i == 1<<k-1 {
			return 1 << (k - 1)
		}
		if i < 1<<k-1 {
			i -= 1<<(k-1) - 1
			k = 0
		}
	}
}
