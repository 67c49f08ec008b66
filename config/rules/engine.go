// Package rules answers, for a catalogue and a unit, what can still be chosen:
// which options are open, forced or ruled out, why, what to change to have one
// anyway, and how to complete the unit. Answers are complete: an option said
// to be open is in some full unit that keeps every rule and every limit.
//
// The deliberate picks of a unit (Filled false), its chassis and its body are
// what it is judged by; picks that the program filled in give way.
package rules

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/solve"
)

// Engine answers questions about one catalogue. It remembers earlier answers
// to be quick with the next, which never changes what it answers. It is not
// safe for concurrent use.
type Engine struct {
	cat   *config.Catalogue
	rules []config.Rule  // the catalogue's, and those its duties make
	ids   []string       // by variable: chassis, then bodies, then options
	vars  map[string]int // and back
	class []int32        // by variable: those of one class replace each other
	n     int            // variables that are ids; helpers follow
	parts []part

	fresh   *solve.Solver // the clauses, never asked anything: others are forked from it
	solver  *solve.Solver
	table   *solve.Table
	near    *solve.Walker // where the last fill ended
	filling bool          // it is on its way
	limits  limitSet
	other   others
	asked   asked
	formed  int   // terms that the condition read last takes as clauses
	aside   int64 // steps of solvers that were set up for one question
	pauses  *solve.Pauses

	ready   readySolver   // only forked from, as fresh is
	unasked *prover       // the same
	limited limitedProver // the same
	proof   *prover       // of the present question

	// Budget is how many conflicts an answer spends at most on a single question
	// before it leaves it as Checking, and with that what it spends in all; at
	// least 1.
	Budget int64

	// Work is how many of a solver's steps filling a unit takes at most, and finding out
	// what has to be set aside for it; 0 is as many as usual. Only a catalogue that is tried
	// has less.
	Work int64
}

// within is what the work leaves of a usual bound.
func (e *Engine) within(usual int64) int64 {
	if e.Work > 0 {
		return min(e.Work, usual)
	}
	return usual
}

// DefaultBudget of a new engine, in conflicts. With it an answer takes 50 ms in
// wasm at most on a laptop.
const DefaultBudget = 60

// stepsEach is how many of a solver's steps come with a conflict of the budget.
const stepsEach = 300

// part is a rule or a group as clauses, kept apart so that it can be switched
// off when a reason is sought.
type part struct {
	rule    int // index of the rule, or -1
	group   int // index of the group, or -1; with rule -1 too, the choice of chassis and body
	clauses [][]solve.Lit
}

// Compile reads a catalogue, which must not change afterwards. The error names
// the place in the catalogue and what would be right; a catalogue that no unit
// can satisfy is no error here, but Lint says so.
func Compile(cat *config.Catalogue) (*Engine, error) {
	if cat == nil {
		return nil, config.Problems{{Code: "rules.no-catalogue", Where: "the catalogue",
			Text: "there is none; load one first"}}
	}
	e := &Engine{cat: cat, rules: cat.AllRules(), vars: map[string]int{}, Budget: DefaultBudget}
	var ps config.Problems
	groups := map[string]int32{}
	for i := range cat.Groups {
		groups[cat.Groups[i].ID] = int32(i)
	}
	add := func(where, id string, class int32) {
		if _, twice := e.vars[id]; twice {
			ps = append(ps, config.Problem{Code: "rules.id-twice", Where: where,
				Text: fmt.Sprintf("the id %q is already used; ids of chassis, bodies and options differ", id)})
			return
		}
		e.vars[id] = len(e.ids)
		e.ids = append(e.ids, id)
		e.class = append(e.class, class)
	}
	for i := range cat.Chassis {
		add(fmt.Sprintf("chassis[%d]", i), cat.Chassis[i].ID, chassisClass)
	}
	for i := range cat.Bodies {
		add(fmt.Sprintf("bodies[%d]", i), cat.Bodies[i].ID, bodyClass)
	}
	for i := range cat.Options {
		o := &cat.Options[i]
		class := int32(-1)
		g, known := groups[o.Group]
		if !known {
			ps = append(ps, config.Problem{Code: "rules.unknown-group", Where: fmt.Sprintf("options[%d] %q", i, o.ID),
				Text: fmt.Sprintf("%q is not a group", o.Group)})
		} else if cat.Groups[g].Choose != config.ChooseAny {
			class = firstGroupClass + g
		}
		add(fmt.Sprintf("options[%d]", i), o.ID, class)
	}
	if len(ps) > 0 {
		return nil, ps
	}
	e.n = len(e.ids)
	e.fresh = solve.New(e.n)
	ps = e.encode()
	if len(ps) > 0 {
		return nil, ps
	}
	for _, p := range e.parts {
		for _, c := range p.clauses {
			e.fresh.AddClause(c...)
		}
	}
	e.PauseWith(new(solve.Pauses))
	e.solver = e.fresh.Fork()
	e.table = solve.NewTable(e.solver, e.class)
	return e, nil
}

// Classes of variables that replace each other.
const (
	chassisClass int32 = iota
	bodyClass
	firstGroupClass
)

// encode fills parts, and the choices that limits group by.
func (e *Engine) encode() config.Problems {
	var ps config.Problems
	e.choose(-1, e.span(0, len(e.cat.Chassis)), true)
	e.choose(-1, e.span(len(e.cat.Chassis), len(e.cat.Bodies)), true)
	members := make([][]int, len(e.cat.Groups))
	for v := e.firstOption(); v < e.n; v++ {
		if c := e.class[v]; c >= firstGroupClass {
			members[c-firstGroupClass] = append(members[c-firstGroupClass], v)
		}
	}
	for g := range e.cat.Groups {
		if e.cat.Groups[g].Choose != config.ChooseAny {
			e.choose(g, members[g], e.cat.Groups[g].Choose == config.ChooseOne)
		}
	}
	all := 0
	for i := range e.rules {
		r := &e.rules[i]
		then, err := e.form(&r.Then, true, 0)
		all += e.formed
		f := then
		if err == nil && r.If != nil {
			var unless form
			unless, err = e.form(r.If, false, 0)
			all += e.formed
			f = form{op: or, kids: []form{unless, then}}
		}
		if all > mostOfRules {
			return append(ps, config.Problem{Code: "rules.too-large", Where: fmt.Sprintf("rules[%d] %q", i, r.ID),
				Text: fmt.Sprintf("the rules up to this one take more than %d terms when they are written out; "+
					"the most are taken by counts among many conditions: count among fewer", mostOfRules)})
		}
		if err != nil {
			ps = append(ps, config.Problem{Code: "rules.condition", Where: fmt.Sprintf("rules[%d] %q", i, r.ID),
				Text: err.Error()})
			continue
		}
		x := encoder{newVar: e.fresh.NewVar}
		x.demand(f)
		e.parts = append(e.parts, part{i, -1, x.clauses})
	}
	return ps
}

// Pauses of the engine's solvers; none are made until they begin.
func (e *Engine) Pauses() *solve.Pauses { return e.pauses }

// PauseWith has the engine, which was asked nothing yet, pause with another.
func (e *Engine) PauseWith(p *solve.Pauses) {
	e.pauses = p
	e.fresh.PauseWith(p)
	if e.solver != nil {
		e.solver.PauseWith(p)
	}
}

// Steps is the work done so far, in steps of a solver: some 0.2 µs each, 0.6 µs in
// wasm.
func (e *Engine) Steps() int64 { return e.solver.Stats.Steps + e.aside }

func (e *Engine) span(from, n int) []int {
	vs := make([]int, n)
	for i := range vs {
		vs[i] = from + i
	}
	return vs
}

func (e *Engine) firstOption() int { return len(e.cat.Chassis) + len(e.cat.Bodies) }

// choose demands exactly one of the variables, or, with must false, at most
// one; then a helper stands for "none", so that exactly one holds either way.
func (e *Engine) choose(group int, vs []int, must bool) {
	lits := make([]solve.Lit, 0, len(vs)+1)
	for _, v := range vs {
		lits = append(lits, solve.Pos(v))
	}
	if !must {
		lits = append(lits, solve.Pos(e.fresh.NewVar()))
	}
	p := part{rule: -1, group: group, clauses: [][]solve.Lit{lits}}
	rest := lits
	for len(rest) > 6 { // at most one of the first four and a helper that takes the others
		h := solve.Pos(e.fresh.NewVar())
		first := append(append([]solve.Lit(nil), rest[:4]...), h)
		p.clauses = append(p.clauses, pairs(first)...)
		rest = append([]solve.Lit{h.Not()}, rest[4:]...)
	}
	p.clauses = append(p.clauses, pairs(rest)...)
	e.parts = append(e.parts, p)
	e.limits.choices = append(e.limits.choices, lits)
}

// pairs forbids every two of the literals together.
func pairs(lits []solve.Lit) [][]solve.Lit {
	var out [][]solve.Lit
	for i, a := range lits {
		for _, b := range lits[i+1:] {
			out = append(out, []solve.Lit{a.Not(), b.Not()})
		}
	}
	return out
}
