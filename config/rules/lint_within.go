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
	l := &linter{e: e}
	byRules, r := e.table.Answer(solve.Query{Budget: lintBudget})
	if r != solve.Sat {
		return nil
	}
	fits := make([]bool, e.n)
	for v, verdict := range byRules {
		fits[v] = verdict&solve.CanHold == 0 // ruled out without limits: not our finding
	}
	for c := range cat.Chassis {
		for b := range cat.Bodies {
			u := config.Unit{Chassis: cat.Chassis[c].ID, Body: cat.Bodies[b].ID}
			if e.solver.Solve(e.picks(&u), lintBudget) != solve.Sat {
				continue
			}
			guards, _ := e.limits.load(e, &u, limits)
			verdicts, r := e.table.Answer(solve.Query{Base: guards, Picks: e.picks(&u), Budget: lintBudget})
			if r == solve.Unsat {
				l.add("pair-overloaded", config.Warn, fmt.Sprintf("chassis %q, body %q", u.Chassis, u.Body),
					fmt.Sprintf("%s with %s cannot keep its limits with the lightest of everything.",
						cat.Chassis[c].Label, cat.Bodies[b].Label),
					"Add a rule that forbids the pair with its reason, or correct the masses.", u.Chassis, u.Body)
			}
			for v := range verdicts {
				// An option not proven impossible is given the benefit of the doubt.
				fits[v] = fits[v] || verdicts[v]&solve.CannotHold == 0
			}
		}
	}
	for v := e.firstOption(); v < e.n; v++ {
		if !fits[v] {
			l.add("never-within-limits", config.Stop, l.where(v),
				fmt.Sprintf("%s fits within the limits of no chassis with no body.", l.label(v)),
				"Correct its mass, station or current, or take it out of the catalogue.", e.ids[v])
		}
	}
	return l.out
}
