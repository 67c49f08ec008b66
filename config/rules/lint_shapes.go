package rules

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
	"boxwright/config/solve"
)

// shapes finds what stands in one place: parts of every chassis with every body that
// the rules allow, and the options that can be on them together.
func (l *Linter) shapes() {
	s := &shapes{l: l, found: map[string]*clash{}}
	var jobs []func()
	for c := range l.e.cat.Chassis {
		for b := range l.e.cat.Bodies {
			jobs = append(jobs, func() { s.pair(c, b) })
		}
	}
	l.next(append(jobs, s.tell)...)
}

// Bounds of looking for what stands in one place: pairs of options that are held beside
// each other on one chassis with one body, some of which take as long as a step of a
// solver, and the pairs of things that are told of.
const (
	mostCompared = 1_000_000
	comparesEach = 8
	mostClashes  = 200
)

// shapes gathers the collisions of a catalogue.
type shapes struct {
	l     *Linter
	found map[string]*clash
	order []string
}

// clash is two things that stand in one place, at its worst.
type clash struct {
	worst body.Collision
	on    []string // chassis with body
	picks []string
}

func (s *shapes) pair(c, b int) {
	e := s.l.e
	ch, box := &e.cat.Chassis[c], &e.cat.Bodies[b]
	pair := []solve.Lit{solve.Pos(c), solve.Pos(len(e.cat.Chassis) + b)}
	e.solver.Allow(lintSteps)
	defer e.solver.Allow(0)
	left := 0 // options and pairs of them that are not looked at
	defer func() { s.l.open += left }()
	can := func(more ...solve.Lit) bool {
		r := e.solver.Solve(append(slices.Clone(pair), more...), lintBudget)
		if r == solve.Unknown {
			left++
		}
		return r == solve.Sat
	}
	if !can() {
		return
	}
	m := body.Bare(ch, box)
	on := ch.Label + " with " + box.Label
	for _, x := range m.Collisions() {
		s.note(x, on)
	}
	first := e.firstOption()
	var parts [][]body.Part
	var at []int
	for i := range e.cat.Options {
		o := &e.cat.Options[i]
		own := m.PartsOf(o)
		if len(own) == 0 {
			continue
		}
		// Where things stand is compared sooner than the rules are asked.
		if list := m.Against(o, own); len(list) > 0 {
			if !can(solve.Pos(first + i)) {
				continue
			}
			for _, x := range list {
				s.note(x, on, o.ID)
			}
		}
		parts, at = append(parts, own), append(at, i)
	}
	compared := 0
	defer func() { s.l.other += int64(compared / comparesEach) }()
	for i := range parts {
		for k := range i {
			if compared++; compared > mostCompared || len(s.order) >= mostClashes {
				left++
				return
			}
			if e.cat.Options[at[i]].Group == e.cat.Options[at[k]].Group &&
				e.cat.GroupByID(e.cat.Options[at[i]].Group).Choose != config.ChooseAny {
				continue
			}
			list := body.Between(parts[k], parts[i])
			if len(list) == 0 || !can(solve.Pos(first+at[i]), solve.Pos(first+at[k])) {
				continue
			}
			for _, x := range list {
				s.note(x, on, e.cat.Options[at[k]].ID, e.cat.Options[at[i]].ID)
			}
		}
	}
}

func (s *shapes) note(x body.Collision, on string, picks ...string) {
	key := x.A.ID + " " + x.A.Option + " " + x.B.ID + " " + x.B.Option
	f := s.found[key]
	if f == nil {
		if len(s.order) == mostClashes {
			s.l.open++
			return
		}
		f = &clash{worst: x, picks: picks}
		s.found[key], s.order = f, append(s.order, key)
	}
	if x.Least() > f.worst.Least() {
		f.worst = x
	}
	f.on = append(f.on, on)
}

// tell says each of them once, with how many pairs of chassis and body it is on.
func (s *shapes) tell() {
	for _, key := range s.order {
		f := s.found[key]
		where := "body"
		if len(f.picks) > 0 {
			where = fmt.Sprintf("option %q", f.picks[len(f.picks)-1])
		}
		on := f.on[0]
		if n := len(f.on) - 1; n > 0 {
			on += fmt.Sprintf(" and %d other pairs", n)
		}
		s.l.add("collision", config.Warn, where, strings.TrimSuffix(f.worst.Text(), ".")+", on "+on+"; "+
			quantity.US.Show(f.worst.Least(), quantity.Inch)+" would have to give.",
			"Correct a place, or add a rule that keeps the two apart.", f.picks...)
	}
}
