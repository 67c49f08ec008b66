package rules

import (
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// Mend is one way to make something possible: what to give up, and the unit
// that results when it is pressed.
type Mend struct {
	// Drop names the deliberate picks given up, chassis or body among them;
	// those that the wanted option replaces anyway are not counted here.
	Drop []string
	// Replace says, by the id given up or replaced, what the resulting unit has
	// of the same group instead, where it has something.
	Replace map[string]string
	Weight  int64       // what the customer gives up: the sum of what was weighed
	Unit    config.Unit // completed, see Engine.Fill
	Changes []Change    // of options, between the unit asked about and this one, that completing it made
}

// How much a pick is cared for unless weighed.
const (
	chassisCare = 50
	bodyCare    = 30
	optionCare  = 10
)

const (
	mostMends  = 5
	mendRounds = 40   // candidates tried before what was found is returned
	mendBudget = 2000 // conflicts for one candidate; one that takes more is not offered
	siteSteps  = 3000 // what setting up a solver apart takes, beside limitsEach
)

// MendWithin looks for the lightest sets of deliberate picks to give up so that id
// becomes possible, or, with id "", so that the picks can stand together. They
// come lightest first: weigh says how much the customer cares for a pick, at
// least 1; nil weighs a chassis 50, a body 30 and an option 10. Every mend,
// applied, is a full unit that keeps all rules and limits. Nothing is returned
// when no change would do, or, with id "", when nothing needs to change.
//
// The budget is of the same kind as that of AnswerWithin; more says that there may be
// more. A further call about the same unit goes on where the last one ended, so that
// calling with growing budgets completes the list in steps; what it has only gets longer.
func (e *Engine) MendWithin(
	u *config.Unit, limits *Limits, id string, weigh func(id string) int64, budget int64,
) (mends []Mend, more bool) {
	a := e.ask(u, limits, id)
	m := a.mend
	if m == nil || weigh != nil {
		if m = e.mender(u, id, weigh); m == nil {
			return nil, false
		}
	}
	if weigh == nil {
		a.mend = m
	}
	m.u, m.limits, m.purse = u, limits, purse{bounded: budget > 0, left: budget * stepsEach}
	m.search()
	for i := range m.out {
		mend := m.out[i]
		full := mend.Unit
		mend.Unit = u.Clone()
		mend.Unit.Chassis, mend.Unit.Body, mend.Unit.Picks = full.Chassis, full.Body, slices.Clone(full.Picks)
		mends = append(mends, mend)
	}
	return mends, !m.done
}

func (e *Engine) mender(u *config.Unit, id string, weigh func(id string) int64) *mender {
	m := &mender{e: e, want: -1, quantity: e.quantities(u)}
	picks := e.picks(u)
	if id != "" {
		v, known := e.vars[id]
		if !known {
			return nil
		}
		m.want = v
		picks = e.otherPicks(v, picks)
	}
	if weigh == nil {
		weigh = e.care
	}
	for _, p := range picks {
		m.soft = append(m.soft, p)
		m.weight = append(m.weight, max(1, weigh(e.ids[p.Var()])))
	}
	return m
}

func (e *Engine) care(id string) int64 {
	switch e.class[e.vars[id]] {
	case chassisClass:
		return chassisCare
	case bodyClass:
		return bodyCare
	}
	return optionCare
}

// mender finds minimal sets of picks that hit every conflict, lightest first:
// each set that does not suffice yet yields a further conflict to be hit. Which
// conflict a solver finds depends on what it was asked before, so a mender has
// solvers of its own.
type mender struct {
	e         *Engine
	u         *config.Unit
	limits    *Limits
	quantity  map[int]int
	rules     *solve.Solver       // without limits
	sites     map[[2]string]*site // with the limits of a pair
	want      int                 // variable to be made possible, or -1
	soft      []solve.Lit         // picks that could be given up
	weight    []int64
	conflicts [][]int // members of soft, ascending, of which one must go
	found     [][]int
	out       []Mend
	rounds    int
	done      bool
	purse
}

// purse is what may still be spent, in steps.
type purse struct {
	bounded bool
	left    int64
}

func (p *purse) empty() bool { return p.bounded && p.left <= 0 }

// pay for what a solver does.
func (p *purse) pay(s *solve.Solver, do func()) {
	start := s.Stats.Steps
	if p.bounded {
		s.Allow(max(1, p.left))
		defer s.Allow(0)
	}
	do()
	p.left -= s.Stats.Steps - start
}

func (m *mender) search() {
	for !m.done && !m.empty() {
		drop, ok := m.lightest()
		if !ok || len(m.out) == mostMends || m.rounds == mendRounds {
			m.finish()
			return
		}
		pair, conflict := m.attempt(drop)
		if m.empty() && conflict != nil {
			return // it may be one for want of work only
		}
		m.rounds++
		if conflict != nil {
			m.conflicts = append(m.conflicts, conflict)
			if len(conflict) == 0 { // nothing that could be given up would help
				m.finish()
			}
			continue
		}
		if len(drop) == 0 && m.want < 0 { // nothing needs to change
			m.finish()
			return
		}
		m.found = append(m.found, drop)
		if mend, ok := m.mend(drop, pair); ok {
			m.out = append(m.out, mend)
		}
		if len(drop) == 0 { // the wanted option is possible as it is
			m.finish()
		}
	}
}

// finish ends the search and frees its solvers.
func (m *mender) finish() { m.done, m.rules, m.sites = true, nil, nil }

// site is the solver with the limits of a pair, and their guards; without limits
// it is the same for every pair.
func (m *mender) site(pair [2]string) (*solve.Solver, []solve.Lit) {
	if m.limits == nil || m.limits.For == nil {
		return m.alone(), nil
	}
	at := m.sites[pair]
	if at == nil {
		if m.sites == nil || len(m.sites) == mostPairs {
			m.sites = map[[2]string]*site{}
		}
		at = &site{limits: m.e.limits.forPair(m.e, pair, m.limits), quantity: m.quantity, loaded: true}
		at.solver, at.guards = m.e.newSolverWith(at.limits, m.quantity)
		m.sites[pair] = at
		m.left -= siteSteps + limitsEach*int64(m.e.n)
	}
	return at.load(m.e)
}

// alone is the solver that knows the rules and no limits.
func (m *mender) alone() *solve.Solver {
	if m.rules == nil {
		m.rules = m.e.fresh.Fork()
	}
	return m.rules
}

// lightest is the lightest set that hits every conflict and contains none of
// the sets found; the first of equally light ones.
func (m *mender) lightest() ([]int, bool) {
	var best, now []int
	bestWeight := int64(-1)
	nodes := 20000
	var extend func(weight int64)
	extend = func(weight int64) {
		if nodes--; nodes < 0 || bestWeight >= 0 && weight >= bestWeight {
			return
		}
		if slices.ContainsFunc(m.found, func(f []int) bool { return contains(now, f) }) {
			return
		}
		for _, c := range m.conflicts {
			if slices.ContainsFunc(c, func(i int) bool { return slices.Contains(now, i) }) {
				continue
			}
			for _, i := range c {
				now = append(now, i)
				extend(weight + m.weight[i])
				now = now[:len(now)-1]
			}
			return
		}
		best, bestWeight = slices.Clone(now), weight
	}
	extend(0)
	slices.Sort(best)
	return best, bestWeight >= 0
}

func contains(all, part []int) bool {
	for _, x := range part {
		if !slices.Contains(all, x) {
			return false
		}
	}
	return true
}

// attempt asks whether giving these up suffices. If so it returns the chassis
// and body of an answer; if not, a conflict, in soft picks, that is left: not
// nil, and empty when no pick has a part in it.
func (m *mender) attempt(drop []int) (pair [2]string, conflict []int) {
	var left []solve.Lit
	for i, l := range m.soft {
		if !slices.Contains(drop, i) {
			left = append(left, l)
		}
	}
	ask := left
	if m.want >= 0 {
		ask = append(slices.Clip(left), solve.Pos(m.want))
	}
	blame := []solve.Lit{}
	pairs := m.pairs(left)
	if len(pairs) > 1 {
		if core := m.forbidden(ask); core != nil {
			blame, pairs = core, nil
		}
	}
	for _, p := range pairs {
		if m.empty() {
			break
		}
		ok, core := m.possible(p, ask)
		if ok {
			return p, nil
		}
		blame = append(blame, core...)
	}
	conflict = []int{}
	for i, l := range m.soft {
		if slices.Contains(blame, l) {
			conflict = append(conflict, i)
		}
	}
	return pair, conflict
}

// pairs of chassis and body that the kept picks and the wanted id leave, the
// unit's own first.
func (m *mender) pairs(left []solve.Lit) [][2]string {
	side := func(class int32, own string, from, n int) []string {
		if m.want >= 0 && m.e.class[m.want] == class {
			return []string{m.e.ids[m.want]}
		}
		for _, l := range left {
			if m.e.class[l.Var()] == class {
				return []string{m.e.ids[l.Var()]}
			}
		}
		ids := slices.Clone(m.e.ids[from : from+n])
		if i := slices.Index(ids, own); i > 0 {
			ids = append([]string{own}, slices.Delete(ids, i, i+1)...)
		}
		return ids
	}
	var out [][2]string
	chassis := len(m.e.cat.Chassis)
	for _, c := range side(chassisClass, m.u.Chassis, 0, chassis) {
		for _, b := range side(bodyClass, m.u.Body, chassis, len(m.e.cat.Bodies)) {
			out = append(out, [2]string{c, b})
		}
	}
	return out
}

// forbidden is a cause among the literals for that the rules alone rule them
// out, on any chassis with any body; nil when they do not.
func (m *mender) forbidden(lits []solve.Lit) []solve.Lit {
	if s := m.alone(); m.ask(s, nil, lits, mendBudget) == solve.Unsat {
		core, _ := m.trim(s, nil, lits, nil)
		return core
	}
	return nil
}

// ask a solver; unknown when the purse is empty.
func (m *mender) ask(s *solve.Solver, base, lits []solve.Lit, conflicts int64) (r solve.Result) {
	if !m.empty() {
		m.pay(s, func() { r = s.Prove(append(slices.Clone(base), lits...), conflicts) })
	}
	return r
}

// possible asks for an answer with the chassis, the body and the literals; if
// there is none, or none is found within the budget, it returns a cause among
// the literals.
func (m *mender) possible(pair [2]string, lits []solve.Lit) (bool, []solve.Lit) {
	e := m.e
	var base, own []solve.Lit // chassis and body: where not kept by choice, and where they are
	for _, id := range pair {
		if l := solve.Pos(e.vars[id]); slices.Contains(lits, l) {
			own = append(own, l)
		} else {
			base = append(base, l)
		}
	}
	if pair != [2]string{m.u.Chassis, m.u.Body} && m.limits != nil {
		// Rules first: they are quick to ask and the same everywhere.
		if s := m.alone(); m.ask(s, base, lits, mendBudget) == solve.Unsat {
			return false, inOrder(lits, s.Core())
		}
	}
	s, guards := m.site(pair)
	base = append(slices.Clone(guards), base...)
	switch m.ask(s, base, lits, mendBudget) {
	case solve.Sat:
		return true, nil
	case solve.Unknown:
		return false, lits
	}
	core, limited := m.trim(s, base, lits, guards)
	if limited {
		core = append(core, own...)
	}
	return false, core
}

// trim leaves out of the literals what the solver's last refutation of them
// does not need, since smaller conflicts leave fewer candidates. It reports
// whether one of the guards has a part in what is left.
func (m *mender) trim(s *solve.Solver, base, lits, guards []solve.Lit) (core []solve.Lit, limited bool) {
	smaller := func(lits []solve.Lit) {
		cause := s.Core()
		limited = slices.ContainsFunc(guards, func(g solve.Lit) bool { return slices.Contains(cause, g) })
		core = inOrder(lits, cause)
	}
	smaller(lits)
	for i := len(core) - 1; i >= 0; i-- {
		if without := slices.Delete(slices.Clone(core), i, i+1); m.ask(s, base, without, trimBudget) == solve.Unsat {
			smaller(without)
			i = min(i, len(core))
		}
	}
	return core, limited
}

// mend carries out giving up the picks. It is false only where completing the
// unit took more work than is allowed.
func (m *mender) mend(drop []int, pair [2]string) (Mend, bool) {
	e := m.e
	out := Mend{Replace: map[string]string{}}
	n := m.u.Clone()
	n.Chassis, n.Body = pair[0], pair[1]
	var gone []int
	for _, i := range drop {
		v := m.soft[i].Var()
		out.Drop = append(out.Drop, e.ids[v])
		out.Weight += m.weight[i]
		gone = append(gone, v)
	}
	if m.want >= 0 {
		for _, p := range e.picks(m.u) {
			if v := p.Var(); v != m.want && e.class[v] >= 0 && e.class[v] == e.class[m.want] {
				gone = append(gone, v)
			}
		}
	}
	for _, v := range gone {
		n.Drop(e.ids[v])
	}
	if m.want >= e.firstOption() {
		n.Set(config.Pick{Option: e.ids[m.want], Qty: max(1, m.quantity[m.want])})
	}
	before := n
	var ok bool
	how := manner{apart: pair != [2]string{m.u.Chassis, m.u.Body}}
	if out.Unit, out.Changes, ok = e.fillOn(&before, m.limits, how); !ok {
		return out, false
	}
	for _, v := range gone {
		if e.class[v] < 0 {
			continue
		}
		for x := range e.n {
			if e.class[x] == e.class[v] && (out.Unit.Chassis == e.ids[x] || out.Unit.Body == e.ids[x] ||
				out.Unit.Has(e.ids[x])) {
				out.Replace[e.ids[v]] = e.ids[x]
			}
		}
	}
	return out, true
}
