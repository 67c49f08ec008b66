package solve

import "slices"

// Verdict says what the picks leave of a variable. It is a set of flags; where
// neither of a pair is set, the question is still undecided.
type Verdict uint8

// CanHold and CannotHold are a pair, and so are CanFail and MustHold.
const (
	CanHold    Verdict = 1 << iota // some answer has it true
	CannotHold                     // no answer has it true
	CanFail                        // some answer has it false
	MustHold                       // no answer has it false
)

// Decided reports whether both questions are answered.
func (v Verdict) Decided() bool { return v&(CanHold|CannotHold) != 0 && v&(CanFail|MustHold) != 0 }

// Query holds the assumptions and budgets of one call.
type Query struct {
	Base   []Lit  // guards of limits, assumed in every question
	Picks  []Lit  // of the table's variables; earlier picks first helps to reuse work
	Budget int64  // conflicts for each single question; 0 for no bound
	Work   int64  // steps for all questions, and some to find out whether the picks can stand; 0 for no bound
	Only   []bool // by variable: no others are judged; nil for all
	Hold   bool   // it is judged only whether they can hold
}

// Table answers, for each of the first variables of a solver, whether it can
// still be true and can still be false beside the picks.
//
// A variable is judged by all picks but its own and those of its class: taking
// another member of a class replaces the one picked. The table remembers
// answers and causes, so that a further pick asks only what it changed.
type Table struct {
	s       *Solver
	n       int
	class   []int32 // by variable; -1 for a class of its own
	members [][]int // by class
	pool    pool    // answers found earlier
	near    witness // an answer with all the picks, to walk from
	stands  bool    // it is one for base and picks as they are
	causes  [][]Lit // by literal: why it was once impossible, itself left out
	denied  []bool  // by literal: whether causes has it

	// Of the query at hand.
	base     []Lit
	picks    []Lit
	isPick   []bool // by literal
	isBase   []bool
	released []bool // by variable: judging it leaves a pick out
	only     []bool
	hold     bool
	can      set // by literal: some answer has it
	cannot   set // by literal: none has
	ask      []Lit
	found    []bool
	most     int64 // what the loads of base may come to
	dual     *dual // of base and picks, once a question was hard
	missed   int   // questions that were not answered near the witness
	verdicts []Verdict
}

// What is tried before more is asked of the solver.
const (
	polishTries = 600 // changes, to give the witness a margin
	walkTries   = 24  // changes, to bring a walk back within the limits
	standEach   = 8   // steps for each variable, beside the work allowed, to find one answer at all
	walksMissed = 16  // walks that found nothing, one after another, before they are given up
	oftenMissed = 4   // questions not answered near the witness, before a better one is sought, or none
	closeBy     = 50  // steps from the prices of all picks to those of a question
	harder      = 10  // times the conflicts, for the questions that are left
	hardest     = 1e5 // conflicts after which the questions left are asked without bound
	worthASweep = 24  // questions that an answer to all of them at once should settle
)

// NewTable makes a table over variables 0 to len(class)-1 of the solver, whose
// clauses are all there. Variables with the same class of 0 or more release
// each other.
func NewTable(s *Solver, class []int32) *Table {
	t := &Table{s: s, n: len(class), class: class, near: witness{s: s}}
	for v, c := range class {
		for int(c) >= len(t.members) {
			t.members = append(t.members, nil)
		}
		if c >= 0 {
			t.members[c] = append(t.members[c], v)
		}
	}
	t.causes = make([][]Lit, 2*t.n)
	t.denied = make([]bool, 2*t.n)
	return t
}

// AddLimit adds a limit to the solver.
func (t *Table) AddLimit(l Limit) (guard Lit) {
	guard = t.s.AddLimit(l)
	t.reweigh(guard)
	return guard
}

// ReplaceLimit replaces a limit of the solver and forgets what rested on it.
func (t *Table) ReplaceLimit(guard Lit, l Limit) {
	t.s.ReplaceLimit(guard, l)
	t.reweigh(guard)
	for i, cause := range t.causes {
		if t.denied[i] && slices.Contains(cause, guard) {
			t.denied[i] = false
		}
	}
}

func (t *Table) reweigh(guard Lit) {
	slot := int(t.s.guards[guard.Var()])
	t.pool.forget(slot)
	t.near.weigh(slot)
	t.stands = false
}

// GaveUp is said after a question ended in the middle: the witness is where it stood.
func (t *Table) GaveUp() {
	t.near.back(0)
	t.s.Allow(0)
}

// Answer judges every variable. It is Unsat, with the cause in the solver's
// Core, when the picks themselves cannot stand together, and Unknown when the
// budget did not suffice to tell; verdicts are good until the next call.
func (t *Table) Answer(q Query) ([]Verdict, Result) {
	t.begin(q)
	defer t.s.Allow(0)
	if q.Work > 0 {
		t.s.Allow(q.Work + standEach*int64(t.n))
	}
	r := t.stand(q.Budget)
	if t.stands = r == Sat; !t.stands {
		return nil, r
	}
	if q.Only != nil && !slices.Contains(q.Only, true) {
		return nil, Sat
	}
	t.s.Allow(q.Work)
	t.takeImplied()
	t.takeCauses()
	for i := range t.pool.known {
		t.learnFrom(&t.pool.known[i])
	}
	t.search(q.Budget)
	for v := range t.verdicts {
		t.verdicts[v] = t.verdict(v)
	}
	return t.verdicts, Sat
}

func (t *Table) verdict(v int) Verdict {
	var out Verdict
	for i, s := range [2]*set{&t.can, &t.cannot} {
		if s.has(Pos(v)) {
			out |= CanHold << i
		}
		if s.has(Neg(v)) {
			out |= CanFail << i
		}
	}
	return out
}

func (t *Table) begin(q Query) {
	t.pool.click++
	mark := func(flags *[]bool, lits []Lit) {
		if len(*flags) < 2*t.s.Vars() {
			*flags = make([]bool, 2*t.s.Vars())
		}
		clear(*flags)
		for _, l := range lits {
			(*flags)[l] = true
		}
	}
	t.stands = t.stands && slices.Equal(t.base, q.Base) && slices.Equal(t.picks, q.Picks)
	t.base = append(t.base[:0], q.Base...)
	t.picks = append(t.picks[:0], q.Picks...)
	mark(&t.isPick, q.Picks)
	mark(&t.isBase, q.Base)
	t.only, t.hold = q.Only, q.Hold
	t.dual, t.missed = nil, 0
	t.can.reset(t.n)
	t.cannot.reset(t.n)
	t.verdicts = slices.Grow(t.verdicts[:0], t.n)[:t.n]
	t.released = slices.Grow(t.released[:0], t.n)[:t.n]
	clear(t.released)
	for _, p := range q.Picks {
		t.released[p.Var()] = true
		if c := t.class[p.Var()]; c >= 0 {
			for _, v := range t.members[c] {
				t.released[v] = true
			}
		}
	}
}

// stand asks whether the picks can stand together, and brings the witness
// there: from where it is, from an answer of the pool that lacks but one pick,
// or by the solver.
func (t *Table) stand(budget int64) Result {
	if t.stands && t.near.fits() {
		t.learnAll()
		return Sat
	}
	if t.near.fits() && t.approach() {
		return Sat
	}
	for i := range t.pool.known {
		k := &t.pool.known[i]
		if t.lacks(k) != several && k.keeps(t.s, t.base) {
			t.near.take(k.bits)
			if t.approach() {
				return Sat
			}
			break
		}
	}
	r := t.s.Solve(t.assumptions(-1, noLit), budget)
	if r == Sat {
		t.near.take(t.pool.add(t.s.model, t.s, t.base).bits)
		t.approach()
	}
	return r
}

// approach walks the witness to one that has all picks and keeps all limits,
// with what margin it can find.
func (t *Table) approach() bool {
	for _, p := range t.picks {
		if !t.near.is(p) && (t.isPick[p.Not()] || !t.near.reach(p, t.isPicked)) {
			return false
		}
	}
	t.near.settle()
	t.near.ease(t.base, enough, polishTries, t.isPicked)
	t.near.settle()
	if _, margin := t.near.tightest(t.base); margin < 0 {
		return false
	}
	t.learnAll()
	return true
}

// widen looks for a witness with more of a margin than changes to the one at
// hand find: the cheapest choices under the prices of all limits.
func (t *Table) widen() bool {
	_, before := t.near.tightest(t.base)
	t.lean(-1, noLit)
	if t.s.solve(t.assumptions(-1, noLit), firstTry) != Sat {
		return false
	}
	had := pack(nil, t.near.val)
	t.near.take(t.pool.add(t.s.model, t.s, t.base).bits)
	t.learnAll()
	if _, now := t.near.tightest(t.base); now > before {
		return true
	}
	t.near.take(had)
	return false
}

func (t *Table) isPicked(v int) bool { return t.isPick[Pos(v)] || t.isPick[Neg(v)] }

// learnAll takes what the witness tells.
func (t *Table) learnAll() {
	for v := range t.n {
		t.can.add(Pos(v) ^ boolLit(!t.near.val[v]))
	}
}

// assumptions for judging variable v: base, picks without those that v
// releases, and l. With v -1 all picks stay.
func (t *Table) assumptions(v int, l Lit) []Lit {
	t.ask = append(t.ask[:0], t.base...)
	for _, p := range t.picks {
		if v < 0 || !t.releases(v, p.Var()) {
			t.ask = append(t.ask, p)
		}
	}
	if l != noLit {
		t.ask = append(t.ask, l)
	}
	return t.ask
}

// releases reports whether judging v leaves the pick of p out.
func (t *Table) releases(v, p int) bool {
	return v == p || t.class[v] >= 0 && t.class[v] == t.class[p]
}

// several is what lacks returns when no single variable or class covers all
// the picks that an answer does not have.
const several Lit = -2

// lacks finds the pick that an answer does not have: noLit for none, several
// for more than one class.
func (t *Table) lacks(k *known) Lit {
	out := noLit
	for _, p := range t.picks {
		if bit(k.bits, p) {
			continue
		}
		if out != noLit && !t.releases(out.Var(), p.Var()) {
			return several
		}
		out = p
	}
	return out
}

// learnFrom takes what an answer tells.
func (t *Table) learnFrom(k *known) {
	news := false
	lacks := t.lacks(k)
	if lacks == several || !k.keeps(t.s, t.base) {
		return
	}
	switch {
	case lacks == noLit:
		news = t.can.addAll(k.bits, t.n)
	case t.class[lacks.Var()] < 0:
		news = t.can.add(lacks.Not())
	default:
		for _, v := range t.members[t.class[lacks.Var()]] {
			if l := Pos(v); bit(k.bits, l) {
				news = t.can.add(l) || news
			} else {
				news = t.can.add(l.Not()) || news
			}
		}
	}
	if news {
		k.used = t.pool.click
	}
}

// takeImplied takes what propagation of the picks alone rules out, for every
// variable that releases none of them.
func (t *Table) takeImplied() {
	implied, ok := t.s.Implied(t.assumptions(-1, noLit))
	if !ok {
		return
	}
	for _, l := range implied {
		if v := l.Var(); v < t.n && (t.s.level[v] == 0 || !t.released[v]) {
			t.cannot.add(l.Not())
		}
	}
}

// takeCauses takes the impossibilities found earlier whose cause still stands.
func (t *Table) takeCauses() {
	for i, cause := range t.causes {
		if !t.denied[i] {
			continue
		}
		l := Lit(i)
		stands := true
		for _, c := range cause {
			if !t.isBase[c] && (!t.isPick[c] || t.releases(l.Var(), c.Var())) {
				stands = false
				break
			}
		}
		if stands {
			t.cannot.add(l)
		}
	}
}

// unsettled appends every literal of which it is not known whether it can be.
func (t *Table) unsettled(to []Lit) []Lit {
	for v := range t.n {
		if t.only != nil && !t.only[v] {
			continue
		}
		for _, l := range [2]Lit{Pos(v), Neg(v)} {
			if !(t.hold && l.Negative()) && !t.can.has(l) && !t.cannot.has(l) {
				to = append(to, l)
			}
		}
	}
	return to
}

// sweep asks for answers with as much of what is unsettled as they can hold,
// as long as that settles a good part of it. It serves where there are no
// limits to overload.
func (t *Table) sweep(rest []Lit, budget int64) []Lit {
	for len(rest) > worthASweep {
		for _, l := range rest {
			t.s.Prefer(l)
		}
		if t.s.Solve(t.assumptions(-1, noLit), budget) != Sat {
			return rest
		}
		t.learnFrom(t.pool.add(t.s.model, t.s, t.base))
		before := len(rest)
		rest = t.unsettled(rest[:0])
		if len(rest) > before-worthASweep {
			break
		}
	}
	return rest
}

// search settles whatever is left: first by walks from the witness, then by
// the solver, for the variables that release no pick, then pick by pick, the
// last one first, since that keeps the most of the assumptions in common.
func (t *Table) search(budget int64) {
	rest := t.unsettled(nil)
	if len(t.base) == 0 {
		rest = t.sweep(rest, budget)
	}
	missed := 0
	for _, l := range rest {
		if missed == walksMissed || t.s.Spent() {
			break
		}
		if !t.can.has(l) {
			if missed++; t.walk(l) {
				missed = 0
			}
		}
	}
	// What is hard waits until all that is easy is settled.
	for effort, near := int64(firstTry), true; ; effort, near = effort*harder, false {
		last := budget > 0 && effort >= budget || effort > hardest
		if last {
			effort = budget
		}
		rest = t.unsettled(rest[:0])
		for _, l := range rest {
			if !t.released[l.Var()] {
				t.judge(l, rest, effort, near)
			}
		}
		for i := len(t.picks) - 1; i >= 0; i-- {
			for _, l := range rest {
				if t.releases(l.Var(), t.picks[i].Var()) {
					t.judge(l, rest, effort, near)
				}
			}
		}
		if last || len(rest) == 0 {
			return
		}
	}
}

// walk looks for an answer with the literal near the witness.
func (t *Table) walk(l Lit) bool {
	x := l.Var()
	protected := func(v int) bool { return v == x || t.isPicked(v) && !t.releases(x, v) }
	found := t.near.reach(l, protected) && t.near.ease(t.base, 0, walkTries, protected)
	if found {
		t.learnChanges()
	}
	t.near.back(0)
	return found
}

// Elsewhere asks for an answer with the literal, all picks of the last query
// that its variable does not replace, and no regard for limits, near the answer
// that the query stood on. After Sat the values of the table's variables are
// returned, good until the next call; after Unsat the solver's Core has the
// cause.
func (t *Table) Elsewhere(l Lit, budget int64) ([]bool, Result) {
	x := l.Var()
	r := Sat
	if !t.near.is(l) && !t.near.reach(l, func(v int) bool { return v == x || t.isPicked(v) && !t.releases(x, v) }) {
		t.ask = t.ask[:0]
		for _, p := range t.picks {
			if !t.releases(x, p.Var()) {
				t.ask = append(t.ask, p)
			}
		}
		t.ask = append(t.ask, l)
		r = t.s.solveNear(&t.near, nil, t.ask, budget)
	}
	t.found = append(t.found[:0], t.near.val[:t.n]...)
	t.near.back(0)
	return t.found, r
}

// learnChanges takes what a walk from the witness tells: of a pick that it
// left, only what judging without that pick may use.
func (t *Table) learnChanges() {
	left := noLit
	for _, l := range t.near.changed {
		if t.isPick[l.Not()] && !t.near.is(l.Not()) {
			left = l
		}
	}
	for _, l := range t.near.changed {
		if v := l.Var(); v < t.n && t.near.is(l) && (left == noLit || t.releases(v, left.Var())) {
			t.can.add(l)
		}
	}
}

// judge asks the solver, near the witness or anywhere.
func (t *Table) judge(l Lit, unsettled []Lit, conflicts int64, near bool) {
	if t.can.has(l) || t.cannot.has(l) || t.s.Spent() {
		return
	}
	var r Result
	if near && t.missed < oftenMissed {
		if r = t.s.solveNear(&t.near, t.base, t.assumptions(l.Var(), l), conflicts); r == Sat {
			t.learnChanges()
		}
		t.near.back(0)
		if r == Unknown {
			if t.missed++; t.missed == oftenMissed && t.dual == nil && len(t.base) > 0 && t.widen() {
				t.missed = 0
			}
		}
	} else {
		r = t.attempt(l, unsettled, conflicts)
	}
	switch r {
	case Sat:
		t.learnFrom(t.pool.add(t.s.model, t.s, t.base))
	case Unsat:
		t.cannot.add(l)
		cause := t.causes[l][:0]
		for _, c := range t.s.Core() {
			if c != l {
				cause = append(cause, c)
			}
		}
		t.causes[l] = cause
		t.denied[l] = true
	}
}

// attempt solves a question that is not easy. Without limits an answer may as
// well show many things at once, so whatever is left unsettled is preferred;
// with limits that would overload every answer.
func (t *Table) attempt(l Lit, unsettled []Lit, conflicts int64) Result {
	v := l.Var()
	if len(t.base) == 0 {
		for _, x := range unsettled {
			if !t.can.has(x) {
				t.s.Prefer(x)
			}
		}
	} else if conflicts <= 0 || conflicts > eachTry {
		return t.s.Prove(t.assumptions(v, l), conflicts)
	} else if t.lean(v, l) && !t.released[v] {
		t.s.core, t.s.denied = append(t.s.core[:0], t.assumptions(v, l)...), noLit
		return Unsat
	}
	return t.s.solve(t.assumptions(v, l), conflicts)
}

// lean makes the solver try first what is cheapest under the prices of limits
// and clauses, as Solve does. The prices for all picks are worked out once in a
// query; those for a question are not far. It reports whether they prove that
// no answer keeps the limits, which holds of questions that release no pick.
func (t *Table) lean(v int, l Lit) bool {
	if t.dual == nil {
		var loads [][]Choice
		loads, t.most = t.s.loads(t.s.limitsIn(t.base))
		if t.dual = newDual(t.s, t.assumptions(-1, noLit), loads); t.dual == nil {
			return false
		}
		t.dual.raise(float64(t.most), raisings)
	}
	if _, ok := t.s.Implied(t.assumptions(v, l)); !ok {
		return false
	}
	t.dual.raise(float64(t.most), closeBy)
	t.dual.prefer()
	return t.dual.exceeds(t.most)
}
