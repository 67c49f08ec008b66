package solve

import (
	"slices"
)

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

// Query is what a table is asked beside.
type Query struct {
	Base   []Lit // assumed in every question, such as the guards of limits
	Picks  []Lit // of the table's variables; earlier picks first helps to reuse work
	Budget int64 // conflicts for each single question; 0 for no bound
	Skip   int   // so many of the first variables are not judged
}

// Table answers, for each of the first variables of a solver, whether it can
// still be true and can still be false beside the picks.
//
// A variable is judged by all picks but its own and those of its class: taking
// another member of a class replaces the one picked. The table remembers
// answers and causes, so that a further pick asks only what it changed.
type Table struct {
	s      *Solver
	n      int
	class  []int32 // by variable; -1 for a class of its own
	pool   []known
	causes map[Lit][]Lit // why a literal was once impossible, itself left out
	clicks int

	// Of the query at hand.
	base     []Lit
	picks    []Lit
	isPick   []bool // by literal
	isBase   []bool
	released []bool // by variable: judging it leaves a pick out
	skip     int
	verdicts []Verdict
	ask      []Lit
}

// known is an answer found earlier.
type known struct {
	bits []uint64 // by variable of the solver
	kept uint64   // by slot: whether the limit is kept
	used int      // click at which it last told something new
}

// poolMost bounds the answers kept; the ones longest without use go first.
const poolMost = 256

// NewTable makes a table over variables 0 to len(class)-1 of the solver.
// Variables with the same class of 0 or more release each other.
func NewTable(s *Solver, class []int32) *Table {
	return &Table{s: s, n: len(class), class: class, causes: map[Lit][]Lit{}}
}

// AddLimit adds a limit to the solver. A table takes at most 64.
func (t *Table) AddLimit(l Limit) (guard Lit) {
	guard = t.s.AddLimit(l)
	t.reweigh(int(t.s.guards[guard.Var()]))
	return guard
}

// ReplaceLimit replaces a limit of the solver and forgets what rested on it.
func (t *Table) ReplaceLimit(guard Lit, l Limit) {
	t.s.ReplaceLimit(guard, l)
	t.reweigh(int(t.s.guards[guard.Var()]))
	for l, cause := range t.causes {
		if slices.Contains(cause, guard) {
			delete(t.causes, l)
		}
	}
}

// reweigh holds the pool against a limit that is new.
func (t *Table) reweigh(slot int) {
	for i := range t.pool {
		t.pool[i].kept &^= 1 << slot
		if t.keeps(t.pool[i].bits, slot) {
			t.pool[i].kept |= 1 << slot
		}
	}
}

func (t *Table) keeps(model []uint64, slot int) bool {
	l := &t.s.limits[slot]
	var sum int64
	for _, g := range l.groups {
		for _, c := range g {
			if bit(model, c.Lit) {
				sum += c.Cost
			}
		}
	}
	return sum <= l.max
}

func bit(model []uint64, l Lit) bool {
	v := l.Var()
	if v/64 >= len(model) {
		return l.Negative() // a variable that came later
	}
	return (model[v/64]>>(v%64)&1 == 1) != l.Negative()
}

// Answer judges every variable. It is Unsat, with the cause in the solver's
// Core, when the picks themselves cannot stand together, and Unknown when the
// budget did not suffice to tell; verdicts are good until the next call.
func (t *Table) Answer(q Query) ([]Verdict, Result) {
	t.begin(q)
	if r := t.stand(q.Budget); r != Sat {
		return nil, r
	}
	t.takeImplied()
	t.takePool(0)
	t.takeCauses()
	t.search(q.Budget)
	return t.verdicts, Sat
}

func (t *Table) begin(q Query) {
	t.clicks++
	mark := func(flags *[]bool, lits []Lit) {
		if len(*flags) < 2*t.s.Vars() {
			*flags = make([]bool, 2*t.s.Vars())
		}
		clear(*flags)
		for _, l := range lits {
			(*flags)[l] = true
		}
	}
	t.base = append(t.base[:0], q.Base...)
	t.picks = append(t.picks[:0], q.Picks...)
	mark(&t.isPick, q.Picks)
	mark(&t.isBase, q.Base)
	t.verdicts = slices.Grow(t.verdicts[:0], t.n)[:t.n]
	clear(t.verdicts)
	t.skip = q.Skip
	t.released = slices.Grow(t.released[:0], t.n)[:t.n]
	clear(t.released)
	classes := map[int32]bool{}
	for _, p := range q.Picks {
		t.released[p.Var()] = true
		classes[t.class[p.Var()]] = true
	}
	for v, c := range t.class {
		t.released[v] = t.released[v] || c >= 0 && classes[c]
	}
}

// stand asks whether the picks can stand together.
func (t *Table) stand(budget int64) Result {
	for i := range t.pool {
		if t.inForce(&t.pool[i]) && t.violated(&t.pool[i]) == noLit {
			return Sat
		}
	}
	r := t.s.Solve(t.assumptions(-1, noLit), budget)
	if r == Sat {
		t.remember()
	}
	return r
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

func (t *Table) inForce(k *known) bool {
	for _, l := range t.base {
		if slot := t.s.guards[l.Var()]; slot >= 0 && !l.Negative() {
			if k.kept>>slot&1 == 0 {
				return false
			}
		} else if !bit(k.bits, l) {
			return false
		}
	}
	return true
}

// several is what violated returns when no single variable or class covers all
// the picks that an answer does not have.
const several Lit = -2

// violated finds the pick that an answer lacks: noLit for none, several for
// more than one class.
func (t *Table) violated(k *known) Lit {
	lacks := noLit
	for _, p := range t.picks {
		if bit(k.bits, p) {
			continue
		}
		if lacks != noLit && !t.releases(lacks.Var(), p.Var()) {
			return several
		}
		lacks = p
	}
	return lacks
}

// remember puts the solver's last model into the pool and takes what it tells.
func (t *Table) remember() {
	var k known
	if len(t.pool) < poolMost {
		k.bits = make([]uint64, (t.s.Vars()+63)/64)
	} else {
		oldest := 0
		for i := range t.pool {
			if t.pool[i].used < t.pool[oldest].used {
				oldest = i
			}
		}
		k.bits = t.pool[oldest].bits
		clear(k.bits)
		t.pool = slices.Delete(t.pool, oldest, oldest+1)
	}
	for v, b := range t.s.model {
		if b {
			k.bits[v/64] |= 1 << (v % 64)
		}
	}
	for slot := range t.s.limits {
		if t.keeps(k.bits, slot) {
			k.kept |= 1 << slot
		}
	}
	k.used = t.clicks
	t.pool = append(t.pool, k)
	t.takePool(len(t.pool) - 1)
}

// takePool takes what the answers from the given place on tell.
func (t *Table) takePool(from int) {
	for i := from; i < len(t.pool); i++ {
		k := &t.pool[i]
		if !t.inForce(k) {
			continue
		}
		news := false
		take := func(v int) {
			found := CanFail
			if k.bits[v/64]>>(v%64)&1 == 1 {
				found = CanHold
			}
			news = news || t.verdicts[v]&found == 0
			t.verdicts[v] |= found
		}
		switch lacks := t.violated(k); {
		case lacks == several:
		case lacks == noLit:
			for v := range t.n {
				take(v)
			}
		case t.class[lacks.Var()] < 0:
			take(lacks.Var())
		default:
			for v := range t.n {
				if t.class[v] == t.class[lacks.Var()] {
					take(v)
				}
			}
		}
		if news {
			k.used = t.clicks
		}
	}
}

// deny notes that a literal is impossible.
func (t *Table) deny(l Lit) {
	if l.Negative() {
		t.verdicts[l.Var()] |= MustHold
	} else {
		t.verdicts[l.Var()] |= CannotHold
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
			t.deny(l.Not())
		}
	}
}

// takeCauses takes the impossibilities found earlier whose cause still stands.
func (t *Table) takeCauses() {
	for v := range t.n {
		for _, l := range [2]Lit{Pos(v), Neg(v)} {
			cause, known := t.causes[l]
			if !known {
				continue
			}
			stands := true
			for _, c := range cause {
				if !t.isBase[c] && (!t.isPick[c] || t.releases(v, c.Var())) {
					stands = false
					break
				}
			}
			if stands {
				t.deny(l)
			}
		}
	}
}

// search asks the solver whatever is left, first for the variables that
// release no pick, then pick by pick, the last one first, since that keeps the
// most of the assumptions in common.
func (t *Table) search(budget int64) {
	var rest []int
	for v := t.skip; v < t.n; v++ {
		if !t.verdicts[v].Decided() && !t.released[v] {
			t.judge(v, budget)
		} else if !t.verdicts[v].Decided() {
			rest = append(rest, v)
		}
	}
	for i := len(t.picks) - 1; i >= 0 && len(rest) > 0; i-- {
		p := t.picks[i].Var()
		for _, v := range rest {
			if t.releases(v, p) && !t.verdicts[v].Decided() {
				t.judge(v, budget)
			}
		}
	}
}

func (t *Table) judge(v int, budget int64) {
	for _, l := range [2]Lit{Pos(v), Neg(v)} {
		if t.verdicts[v]&flags(l) != 0 {
			continue
		}
		t.preferUnseen()
		switch t.s.Solve(t.assumptions(v, l), budget) {
		case Sat:
			t.remember()
		case Unsat:
			t.deny(l)
			var cause []Lit
			for _, c := range t.s.Core() {
				if c != l {
					cause = append(cause, c)
				}
			}
			t.causes[l] = cause
		}
	}
}

// flags are those that answer whether the literal can hold.
func flags(l Lit) Verdict {
	if l.Negative() {
		return CanFail | MustHold
	}
	return CanHold | CannotHold
}

// preferUnseen makes the next answer show as much as it can that no answer has
// shown yet.
func (t *Table) preferUnseen() {
	for v := t.skip; v < t.n; v++ {
		switch verdict := t.verdicts[v]; {
		case verdict&flags(Pos(v)) == 0:
			t.s.Prefer(Pos(v))
		case verdict&flags(Neg(v)) == 0:
			t.s.Prefer(Neg(v))
		}
	}
}
