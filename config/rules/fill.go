package rules

import (
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// Change is one difference that completing a unit makes.
type Change struct {
	Option string
	Added  bool // else it was taken out
	Cause  FillCause
	// By names deliberate picks and fills that it follows from, where any do. Of
	// several causes it names one, which depends on what the engine was asked before.
	By []string
}

// FillCause says why the program chose.
type FillCause string

// Standard is what the plant fits when nobody says otherwise, Needed follows
// from other choices, Chosen stands where one of a group is needed and the
// standard one does not fit, GivesWay was filled in before and no longer fits.
const (
	Standard FillCause = "standard"
	Needed   FillCause = "needed"
	Chosen   FillCause = "chosen"
	GivesWay FillCause = "gives-way"
)

// fillBudget is how many conflicts one step of filling may take; a fill that
// takes more is not made.
const fillBudget = 2000

// Fill completes a unit. It keeps every deliberate pick; then the fills it had,
// in their order; then it gives each group of which exactly one is needed its
// standard option, or else the first that fits, and adds nothing beyond what
// is forced. It is false when the picks cannot stand together; the unit is
// then completed as far as the picks that can stand allow, with the limits
// that cannot be kept set aside, and still holds all of them.
func (e *Engine) Fill(u *config.Unit, limits *Limits) (config.Unit, []Change, bool) {
	return e.fillOn(u, limits, false)
}

// fillOn fills, if asked to with the solver apart, which leaves what the table
// knows of the present limits alone.
func (e *Engine) fillOn(u *config.Unit, limits *Limits, apart bool) (config.Unit, []Change, bool) {
	f := e.newFiller(u, limits, apart)
	ok := len(f.aside) == 0
	if !f.find() {
		return u.Clone(), nil, false
	}
	for _, p := range u.Picks {
		if v, known := e.vars[p.Option]; known && p.Filled {
			f.keep(v)
		}
	}
	for _, group := range f.groups(u) {
		f.fillGroup(group)
	}
	f.restrain()
	return f.result(u), f.changes(u), ok
}

// Start fits a unit with every standard option that its picks leave room for,
// and whatever else is needed: a new unit as the plant builds it.
func (e *Engine) Start(u *config.Unit, limits *Limits) (config.Unit, bool) {
	n := u.Clone()
	for i := range e.cat.Options {
		if o := &e.cat.Options[i]; o.Standard && !n.Has(o.ID) {
			n.Set(config.Pick{Option: o.ID, Qty: 1, Filled: true})
		}
	}
	filled, _, ok := e.Fill(&n, limits)
	return filled, ok
}

// filler fixes one option after another, always with an answer in hand that
// has all that is fixed.
type filler struct {
	e      *Engine
	solver *solve.Solver
	aside  []string
	ask    []solve.Lit // all that is fixed
	model  []bool      // an answer that has it
	cause  map[int]FillCause
	by     map[int][]string
}

func (e *Engine) newFiller(u *config.Unit, limits *Limits, apart bool) *filler {
	f := &filler{e: e, solver: e.solver, cause: map[int]FillCause{}, by: map[int][]string{}}
	var guards, picks []solve.Lit
	if apart {
		if limits != nil && limits.For != nil {
			f.solver, guards = e.site([2]string{u.Chassis, u.Body}, limits, e.quantities(u)).load(e)
			guards = slices.Clone(guards)
		}
		picks = e.picks(u)
	} else {
		guards, picks, f.aside = e.standing(u, limits)
	}
	f.ask = append(guards, picks...)
	for v := e.firstOption(); v < e.n; v++ {
		o := &e.cat.Options[v-e.firstOption()]
		l := solve.Neg(v)
		if u.Has(o.ID) || o.Standard && e.class[v] >= 0 {
			l = solve.Pos(v)
		}
		f.solver.Prefer(l)
	}
	return f
}

// find looks for an answer with all that is fixed.
func (f *filler) find() bool {
	if f.solver.Solve(f.ask, fillBudget) != solve.Sat {
		return false
	}
	f.model = slices.Grow(f.model[:0], f.e.n)[:f.e.n]
	for v := range f.model {
		f.model[v] = f.solver.Model(solve.Pos(v))
	}
	return true
}

// fix fixes a literal if an answer has it; if not, it notes what stands
// against it.
func (f *filler) fix(l solve.Lit) bool {
	f.ask = append(f.ask, l)
	if f.model[l.Var()] != l.Negative() || f.find() {
		return true
	}
	f.ask = f.ask[:len(f.ask)-1]
	v := l.Var()
	f.by[v] = nil
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
	if rival := f.chosen(f.e.class[v]); rival >= 0 {
		f.by[v] = []string{f.e.ids[rival]}
		return
	}
	f.fix(solve.Pos(v))
}

// chosen is the option of a class that is fixed, or -1.
func (f *filler) chosen(class int32) int {
	if class >= 0 {
		for _, l := range f.ask {
			if l.Var() < f.e.n && !l.Negative() && f.e.class[l.Var()] == class {
				return l.Var()
			}
		}
	}
	return -1
}

// groups of which exactly one is needed and none is fixed or picked, by their
// options' variables.
func (f *filler) groups(u *config.Unit) [][]int {
	e := f.e
	members := make([][]int, len(e.cat.Groups))
	for v := e.firstOption(); v < e.n; v++ {
		if g := e.class[v] - firstGroupClass; g >= 0 && e.cat.Groups[g].Choose == config.ChooseOne {
			members[g] = append(members[g], v)
		}
	}
	return slices.DeleteFunc(members, func(vs []int) bool {
		return len(vs) == 0 || f.chosen(e.class[vs[0]]) >= 0 || f.picked(u, e.class[vs[0]])
	})
}

// picked reports whether a deliberate pick is of the class, even one that is
// set aside.
func (f *filler) picked(u *config.Unit, class int32) bool {
	return class >= 0 && slices.ContainsFunc(u.Picks, func(p config.Pick) bool {
		v, known := f.e.vars[p.Option]
		return known && !p.Filled && f.e.class[v] == class
	})
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

// restrain leaves out every option that nothing needs.
func (f *filler) restrain() {
	fixed := map[int]bool{}
	for _, l := range f.ask {
		fixed[l.Var()] = true
	}
	for v := f.e.firstOption(); v < f.e.n; v++ {
		if !fixed[v] && !f.fix(solve.Neg(v)) {
			f.cause[v] = Needed
			f.fix(solve.Pos(v))
		}
	}
}

// result is the unit with the answer in hand.
func (f *filler) result(u *config.Unit) config.Unit {
	n := u.Clone()
	n.Picks = slices.DeleteFunc(n.Picks, func(p config.Pick) bool {
		v, known := f.e.vars[p.Option]
		return known && p.Filled && !f.model[v]
	})
	for v := f.e.firstOption(); v < f.e.n; v++ {
		if f.model[v] && !n.Has(f.e.ids[v]) && !f.picked(u, f.e.class[v]) {
			n.Set(config.Pick{Option: f.e.ids[v], Qty: 1, Filled: true})
		}
	}
	return n
}

func (f *filler) changes(u *config.Unit) []Change {
	var out []Change
	for v := f.e.firstOption(); v < f.e.n; v++ {
		id := f.e.ids[v]
		switch p := u.Find(id); {
		case p == nil && f.model[v] && !f.picked(u, f.e.class[v]):
			out = append(out, Change{id, true, f.cause[v], f.by[v]})
		case p != nil && p.Filled && !f.model[v]:
			out = append(out, Change{id, false, GivesWay, f.by[v]})
		}
	}
	return out
}
