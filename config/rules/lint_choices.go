package rules

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/solve"
)

// stands reports whether there is any unit at all, and if not says which rules
// and groups contradict each other.
func (l *Linter) stands() bool {
	s := l.e.solver
	s.Allow(lintSteps)
	defer s.Allow(0)
	if s.Solve(nil, lintBudget) != solve.Unsat {
		return true
	}
	text := "No unit can keep all rules"
	if rs := l.e.reasons(&config.Unit{}, nil, [2]string{}, nil, nil, -1, 1); len(rs) > 0 {
		text += "; these contradict each other: " + l.members(rs[0])
	}
	l.add("nothing-possible", config.Stop, "rules", text+".", "Correct or remove one of them.")
	return false
}

// members names the rules and groups of a reason.
func (l *Linter) members(r Reason) string {
	var names []string
	for _, c := range r.Rules {
		names = append(names, fmt.Sprintf("rule %q", c.ID))
	}
	for _, g := range r.Groups {
		names = append(names, fmt.Sprintf("group %q", g))
	}
	if len(names) == 0 {
		return "that a unit has one chassis and one body"
	}
	return strings.Join(names, ", ")
}

// choices finds what can never and what must always be in a unit.
func (l *Linter) choices() {
	l.table(solve.Query{}, func(verdicts []solve.Verdict, _ solve.Result) {
		l.notePossible(verdicts)
		var jobs []func()
		for v, verdict := range verdicts {
			if verdict&(solve.CannotHold|solve.MustHold) != 0 {
				jobs = append(jobs, func() { l.choice(v, verdict) })
			}
		}
		l.next(jobs...)
	})
}

// choice tells what can never or must always be in a unit.
func (l *Linter) choice(v int, verdict solve.Verdict) {
	e := l.e
	id, where := e.ids[v], l.where(v)
	switch {
	case verdict&solve.CannotHold != 0:
		l.add("never", config.Stop, where, fmt.Sprintf("%s can be in no unit: %s.", l.label(v),
			l.because(solve.Pos(v))), "Correct one of these, or take it out of the catalogue.", id)
	case verdict&solve.MustHold != 0 && !l.only(v):
		l.add("always", config.Warn, where,
			fmt.Sprintf("%s is in every unit: %s.", l.label(v), l.because(solve.Neg(v))), "If it is meant so, "+
				"offer it as part of the body; else correct one of these.", id)
	}
}

// only reports whether a variable is the sole member of a group that needs
// one, so that nobody would expect a choice.
func (l *Linter) only(v int) bool {
	n := 0
	for _, c := range l.e.class {
		if c >= 0 && c == l.e.class[v] {
			n++
		}
	}
	return n == 1
}

func (l *Linter) because(x solve.Lit) string {
	p := l.e.prover().solver
	p.Allow(lintSteps)
	defer p.Allow(0)
	rs := l.e.reasons(&config.Unit{}, nil, [2]string{}, nil, nil, x, 1)
	if len(rs) == 0 {
		return "as the rules together have it"
	}
	return l.members(rs[0])
}

func (l *Linter) label(v int) string {
	e := l.e
	switch chassis := len(e.cat.Chassis); {
	case v < chassis:
		return e.cat.Chassis[v].Label
	case v < e.firstOption():
		return e.cat.Bodies[v-chassis].Label
	}
	return e.cat.Options[v-e.firstOption()].Label
}

func (l *Linter) where(v int) string {
	e := l.e
	switch chassis := len(e.cat.Chassis); {
	case v < chassis:
		return fmt.Sprintf("chassis %q", e.ids[v])
	case v < e.firstOption():
		return fmt.Sprintf("body %q", e.ids[v])
	}
	return fmt.Sprintf("option %q", e.ids[v])
}

// groups finds those that leave nothing to choose for a chassis with a body
// that no rule forbids: each option of the group is ruled out there, which is
// hardly ever meant.
func (l *Linter) groups() {
	e := l.e
	p := e.prover()
	var rules, groups []solve.Lit
	for i := range e.parts {
		if e.parts[i].rule >= 0 {
			rules = append(rules, p.switches[i])
		} else if e.parts[i].group >= 0 {
			groups = append(groups, p.switches[i])
		}
	}
	var jobs []func()
	seen := map[string]bool{}
	for c := range e.cat.Chassis {
		for b := range e.cat.Bodies {
			jobs = append(jobs, func() { l.pair(c, b, rules, groups, seen) })
		}
	}
	l.next(jobs...)
}

// pair looks at a chassis with a body; groups that were told of are seen.
func (l *Linter) pair(c, b int, rules, groups []solve.Lit, seen map[string]bool) {
	e, p := l.e, l.e.prover()
	p.solver.Allow(lintSteps)
	defer p.solver.Allow(0)
	pair := []solve.Lit{solve.Pos(c), solve.Pos(len(e.cat.Chassis) + b)}
	if p.solver.Solve(slices.Concat(rules, groups, pair), lintBudget) != solve.Unsat {
		return
	}
	if p.solver.Solve(slices.Concat(rules, pair), lintBudget) != solve.Sat {
		return // rules alone forbid it
	}
	core := p.minimal(slices.Concat(rules, groups), pair, proofBudget)
	r := e.reason(core, -1, nil, nil, nil)
	for _, g := range r.Groups {
		if seen[g] {
			continue
		}
		seen[g] = true
		l.add("group-empty", config.Warn, fmt.Sprintf("group %q", g),
			fmt.Sprintf("%s with %s leaves nothing to choose here: %s. No rule says that they do not go "+
				"together.", e.cat.Chassis[c].Label, e.cat.Bodies[b].Label, l.members(r)),
			"Add a rule that forbids the pair with its reason, or an option that fits.")
	}
}
