package rules

import (
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// Budgets of filling: conflicts for one step, conflicts near the present answer, and
// the solver's steps in all. When they are spent the present answer is taken without
// further proof.
const (
	fillBudget = 2000
	nearBudget = 100
	fillSteps  = 1_000_000
)

// Fill completes a unit. It keeps every deliberate pick; then the fills it had,
// in their order; then it gives each group of which exactly one is needed its
// standard option, or else the first that fits, and adds nothing beyond what
// is forced. It is false when the picks cannot stand together; the unit is
// then completed with those picks and limits that do not contradict the others,
// and still holds all picks.
func (e *Engine) Fill(u *config.Unit, limits *Limits) (config.Unit, []Change, bool) {
	return e.fillOn(u, limits, manner{})
}

// Restore is Fill with everything standard coming back that can, beside the picks
// and the fills the unit has, but for what its customer has left out. A fill that
// stands in the place of something standard gives way to it.
func (e *Engine) Restore(u *config.Unit, limits *Limits) (config.Unit, []Change, bool) {
	return e.fillOn(u, limits, manner{standard: true})
}

// RestoreElsewhere is Restore for a chassis or body that is only tried, in a solver
// of its own, so that what is known of the unit in work stays. It is false, too, when
// that took more work than is allowed.
func (e *Engine) RestoreElsewhere(u *config.Unit, limits *Limits) (config.Unit, []Change, bool) {
	return e.fillOn(u, limits, manner{standard: true, apart: true})
}

// manner is how a unit is filled.
type manner struct {
	standard bool // what is standard comes back
	apart    bool // in a solver of its own, which leaves alone what the table knows of the present limits
	whole    bool // only if nothing has to be set aside
}

func (e *Engine) fillOn(u *config.Unit, limits *Limits, how manner) (config.Unit, []Change, bool) {
	f := e.newFiller(u, limits, how)
	defer f.solver.Allow(0)
	e.filling = e.filling || !f.apart
	full, changes, ok := f.fill(u, limits)
	e.filling = false
	return full, changes, ok
}

func (f *filler) fill(u *config.Unit, limits *Limits) (config.Unit, []Change, bool) {
	e := f.e
	if f.standard {
		f.absent(u)
	}
	if !f.begin(u, limits) {
		return u.Clone(), nil, false
	}
	late := f.keepFills(u)
	for _, v := range f.back {
		class := e.class[v]
		if class >= 0 && f.chosen[class] >= 0 {
			continue
		}
		if f.fits(solve.Pos(v)) {
			f.cause[v] = Standard
		}
		if class >= 0 && late[class] != nil {
			f.keep(*late[class])
		}
	}
	for _, group := range f.groups() {
		f.fillGroup(group)
	}
	f.restrain()
	return f.result(u), f.changes(u), len(f.aside) == 0
}

// absent notes the standard options that the unit lacks, that its customer has not
// left out, and that no deliberate pick of their group replaces.
func (f *filler) absent(u *config.Unit) {
	for v := f.e.firstOption(); v < f.e.n; v++ {
		o, class := &f.e.cat.Options[v-f.e.firstOption()], f.e.class[v]
		if o.Standard && !f.has[v] && !slices.Contains(u.LeftOut, o.ID) && (class < 0 || !f.picked[class]) {
			f.back = append(f.back, v)
		}
	}
}

// keepFills keeps the fills the unit had, but for those in the place of something
// standard that may come back: it returns these by class.
func (f *filler) keepFills(u *config.Unit) []*int {
	late := make([]*int, len(f.picked))
	waits := make([]bool, len(f.picked))
	for _, v := range f.back {
		if class := f.e.class[v]; class >= 0 {
			waits[class] = true
		}
	}
	for _, p := range u.Picks {
		v, known := f.e.vars[p.Option]
		if !known || !p.Filled {
			continue
		}
		if class := f.e.class[v]; class >= 0 && waits[class] {
			late[class] = &v
			continue
		}
		f.keep(v)
	}
	return late
}

// Start fits a unit with every standard option that its picks leave room for,
// and whatever else is needed: a new unit as the plant builds it.
func (e *Engine) Start(u *config.Unit, limits *Limits) (config.Unit, bool) {
	n := e.withStandard(u)
	filled, _, ok := e.Fill(&n, limits)
	return filled, ok
}

// StartWhole is Start for where all picks and limits can stand together; elsewhere it
// is false, and does not go on to find what would have to be set aside.
func (e *Engine) StartWhole(u *config.Unit, limits *Limits) (config.Unit, bool) {
	n := e.withStandard(u)
	filled, _, ok := e.fillOn(&n, limits, manner{whole: true})
	return filled, ok
}

func (e *Engine) withStandard(u *config.Unit) config.Unit {
	n := u.Clone()
	for i := range e.cat.Options {
		if o := &e.cat.Options[i]; o.Standard && !n.Has(o.ID) {
			n.Set(config.Pick{Option: o.ID, Qty: 1, Filled: true})
		}
	}
	return n
}

// filler fixes one option after another, keeping an answer that holds
// everything fixed so far.
type filler struct {
	manner
	e      *Engine
	solver *solve.Solver
	near   *solve.Walker
	aside  []string
	guards []solve.Lit
	ask    []solve.Lit // all that is fixed
	chosen []int       // by class: the option of it that is fixed, or -1
	picked []bool      // by class: there is a deliberate pick, even one that is set aside
	has    []bool      // by variable: the unit has it
	back   []int       // standard options that come back where they can
	model  []bool      // an answer that has all that is fixed
	cause  map[int]FillCause
	by     map[int][]string
}

func (e *Engine) newFiller(u *config.Unit, limits *Limits, how manner) *filler {
	f := &filler{manner: how, e: e, solver: e.solver, cause: map[int]FillCause{}, by: map[int][]string{}}
	f.note(u)
	if !how.apart {
		if e.near == nil {
			e.near = solve.NewWalker(e.solver)
		}
		f.near = e.near
		f.guards, _ = e.limits.load(e, u, limits)
	} else {
		if limits != nil && limits.For != nil {
			f.solver, f.guards = e.site([2]string{u.Chassis, u.Body}, limits, e.quantities(u)).load(e)
		}
		f.near = solve.NewWalker(f.solver)
	}
	f.guards = slices.Clone(f.guards)
	f.solver.Allow(e.within(fillSteps))
	return f
}

// note notes what the unit has.
func (f *filler) note(u *config.Unit) {
	classes := firstGroupClass + int32(len(f.e.cat.Groups))
	f.chosen, f.picked = slices.Repeat([]int{-1}, int(classes)), make([]bool, classes)
	f.has = make([]bool, f.e.n)
	for _, p := range u.Picks {
		if v, known := f.e.vars[p.Option]; known {
			f.has[v] = true
			if class := f.e.class[v]; class >= 0 && !p.Filled {
				f.picked[class] = true
			}
		}
	}
}

// begin looks for an answer with the deliberate picks, as near to the unit as it
// can be. Picks and limits that cannot stand with the others are set aside.
func (f *filler) begin(u *config.Unit, limits *Limits) bool {
	e := f.e
	picks := e.picks(u)
	f.ask = append(slices.Clone(f.guards), picks...)
	likes := f.likes()
	if f.near.Stands() {
		f.near.Weigh()
		for _, l := range likes {
			f.near.Turn(l)
		}
	} else {
		values := make([]bool, e.n)
		for _, l := range likes {
			values[l.Var()] = !l.Negative()
		}
		f.near.Begin(values)
	}
	for _, l := range likes {
		f.solver.Prefer(l)
	}
	if !f.find() {
		if f.apart || f.whole {
			return false
		}
		f.solver.Allow(0)
		f.guards, picks, f.aside = e.standing(u, limits)
		f.solver.Allow(e.within(fillSteps))
		for _, l := range likes {
			f.solver.Prefer(l)
		}
		if f.ask = append(slices.Clone(f.guards), picks...); !f.find() {
			return false
		}
	}
	for _, p := range picks {
		f.choose(p.Var())
	}
	return true
}

// likes says of each option whether it is tried first to have it: what the unit
// has, and of groups without any of that what is standard.
func (f *filler) likes() []solve.Lit {
	e := f.e
	full := make([]bool, len(f.picked)) // by class
	for v, has := range f.has {
		if has && e.class[v] >= 0 {
			full[e.class[v]] = true
		}
	}
	back := make([]bool, e.n)
	for _, v := range f.back {
		back[v] = e.class[v] < 0
	}
	likes := make([]solve.Lit, 0, e.n)
	for v := e.firstOption(); v < e.n; v++ {
		class := e.class[v]
		if f.has[v] || back[v] || class >= 0 && !full[class] && e.cat.Options[v-e.firstOption()].Standard {
			likes = append(likes, solve.Pos(v))
		} else {
			likes = append(likes, solve.Neg(v))
		}
	}
	return likes
}

// choose notes that an option is fixed.
func (f *filler) choose(v int) {
	if class := f.e.class[v]; class >= 0 {
		f.chosen[class] = v
	}
}

// find looks for an answer with all that is fixed: near the one in hand, then
// anywhere.
func (f *filler) find() bool {
	r := solve.Unknown
	if f.near.Stands() {
		r = f.near.Near(f.guards, f.ask, nearBudget)
	}
	if r == solve.Unknown && !f.solver.Spent() {
		if r = f.solver.Solve(f.ask, fillBudget); r == solve.Sat {
			f.near.Take()
		}
	}
	if r != solve.Sat {
		return false
	}
	f.model = slices.Grow(f.model[:0], f.e.n)[:f.e.n]
	for v := range f.model {
		f.model[v] = f.solver.Model(solve.Pos(v))
	}
	return true
}

// fits fixes a literal if an answer has it.
func (f *filler) fits(l solve.Lit) bool {
	had := f.model[l.Var()] != l.Negative()
	if !had && f.solver.Spent() {
		return false
	}
	f.ask = append(f.ask, l)
	if had || f.find() {
		if !l.Negative() {
			f.choose(l.Var())
		}
		return true
	}
	f.ask = f.ask[:len(f.ask)-1]
	return false
}

// fix does the same; if none has it, it notes what stands against it.
func (f *filler) fix(l solve.Lit) bool {
	if f.fits(l) {
		return true
	}
	v := l.Var()
	f.by[v] = nil
	if f.solver.Spent() {
		return false
	}
	for _, c := range f.solver.Core() {
		if c != l && c.Var() < f.e.n && !c.Negative() {
			f.by[v] = append(f.by[v], f.e.ids[c.Var()])
		}
	}
	slices.Sort(f.by[v])
	return false
}

// keep fixes an earlier fill unless another of its group is fixed already.
func (f *filler) keep(v int) {
	if class := f.e.class[v]; class >= 0 && f.chosen[class] >= 0 {
		f.by[v] = []string{f.e.ids[f.chosen[class]]}
		return
	}
	f.fix(solve.Pos(v))
}

// groups of which exactly one is needed and none is fixed or picked, by their
// options' variables.
func (f *filler) groups() [][]int {
	e := f.e
	members := make([][]int, len(e.cat.Groups))
	for v := e.firstOption(); v < e.n; v++ {
		class := e.class[v]
		if class < firstGroupClass || f.chosen[class] >= 0 || f.picked[class] {
			continue
		}
		if g := class - firstGroupClass; e.cat.Groups[g].Choose == config.ChooseOne {
			members[g] = append(members[g], v)
		}
	}
	return slices.DeleteFunc(members, func(vs []int) bool { return len(vs) == 0 })
}

// fillGroup fixes the standard option, or else the first that fits, which then
// follows from what stands against the standard one.
func (f *filler) fillGroup(vs []int) {
	standard := func(v int) bool { return f.e.cat.Options[v-f.e.firstOption()].Standard }
	var refused []string
	for _, v := range vs {
		if !standard(v) {
			continue
		}
		if f.fix(solve.Pos(v)) {
			f.cause[v] = Standard
			return
		}
		refused = f.by[v]
	}
	for _, v := range vs {
		if !standard(v) && f.fix(solve.Pos(v)) {
			f.cause[v], f.by[v] = Chosen, refused
			return
		}
	}
}

// restrain leaves out every option that nothing needs, from the last to the first: where a
// rule needs one of several, the one that the catalogue names first stays.
func (f *filler) restrain() {
	fixed := map[int]bool{}
	for _, l := range f.ask {
		fixed[l.Var()] = true
	}
	for v := f.e.n - 1; v >= f.e.firstOption(); v-- {
		if !fixed[v] && !f.fix(solve.Neg(v)) {
			f.cause[v] = Needed
			f.fix(solve.Pos(v))
		}
	}
}

// added reports whether the answer has an option that the unit lacks.
func (f *filler) added(v int) bool {
	class := f.e.class[v]
	return f.model[v] && !f.has[v] && (class < 0 || !f.picked[class])
}

// result is the unit with the options of the answer.
func (f *filler) result(u *config.Unit) config.Unit {
	n := u.Clone()
	n.Picks = slices.DeleteFunc(n.Picks, func(p config.Pick) bool {
		v, known := f.e.vars[p.Option]
		return known && p.Filled && !f.model[v]
	})
	for v := f.e.firstOption(); v < f.e.n; v++ {
		if f.added(v) {
			n.Set(config.Pick{Option: f.e.ids[v], Qty: 1, Filled: true})
		}
	}
	return n
}

func (f *filler) changes(u *config.Unit) []Change {
	var out []Change
	for v := f.e.firstOption(); v < f.e.n; v++ {
		id := f.e.ids[v]
		switch {
		case f.added(v):
			out = append(out, Change{id, true, f.cause[v], f.by[v]})
		case f.has[v] && !f.model[v] && u.Find(id).Filled:
			out = append(out, Change{id, false, GivesWay, f.by[v]})
		}
	}
	return out
}
