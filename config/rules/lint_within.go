package rules

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/solve"
)

// LintWithin looks for what the limits leave no room for: a chassis with a
// body that the rules allow and that no full unit can be built on within its
// limits, and options that fit within them on none. Limits are those of a
// unit with no picks yet; what Lint finds is not said again. It asks for every
// pair, so it takes a second or two on a large catalogue.
func LintWithin(cat *config.Catalogue, limits *Limits) []config.Finding {
	e, err := Compile(cat)
	if err != nil {
		return nil
	}
	l := &Linter{e: e}
	l.within(limits)
	l.Go(0)
	return l.out
}

func (l *Linter) within(limits *Limits) {
	e, err := Compile(l.e.cat) // which was asked nothing yet
	if err != nil {
		return
	}
	l.e = e
	byRules, r := e.table.Answer(solve.Query{Budget: lintBudget})
	if r != solve.Sat {
		return
	}
	fits := make([]bool, e.n)
	for v, verdict := range byRules {
		fits[v] = verdict&solve.CanHold == 0 // ruled out without limits: not our finding
	}
	var jobs []func()
	for c := range e.cat.Chassis {
		for b := range e.cat.Bodies {
			jobs = append(jobs, func() { l.pairWithin(c, b, limits, fits) })
		}
	}
	l.next(append(jobs, func() { l.misfits(fits) })...)
}

// pairWithin looks at a chassis with a body, and notes what fits there.
func (l *Linter) pairWithin(c, b int, limits *Limits, fits []bool) {
	e := l.e
	u := config.Unit{Chassis: e.cat.Chassis[c].ID, Body: e.cat.Bodies[b].ID}
	if e.solver.Solve(e.picks(&u), lintBudget) != solve.Sat {
		return
	}
	guards, _ := e.limits.load(e, &u, limits)
	verdicts, r := e.table.Answer(solve.Query{Base: guards, Picks: e.picks(&u), Budget: lintBudget})
	if r == solve.Unsat {
		l.add("pair-overloaded", config.Warn, fmt.Sprintf("chassis %q, body %q", u.Chassis, u.Body),
			fmt.Sprintf("%s with %s cannot keep its limits with the lightest of everything.",
				e.cat.Chassis[c].Label, e.cat.Bodies[b].Label),
			"Add a rule that forbids the pair with its reason, or correct the masses.", u.Chassis, u.Body)
	}
	for v := range verdicts {
		// An option not proven impossible is given the benefit of the doubt.
		fits[v] = fits[v] || verdicts[v]&solve.CannotHold == 0
	}
}

// misfits tells of the options that fit nowhere.
func (l *Linter) misfits(fits []bool) {
	for v := l.e.firstOption(); v < l.e.n; v++ {
		if !fits[v] {
			l.add("never-within-limits", config.Stop, l.where(v),
				fmt.Sprintf("%s fits within the limits of no chassis with no body.", l.label(v)),
				"Correct its mass, station or current, or take it out of the catalogue.", l.e.ids[v])
		}
	}
}
