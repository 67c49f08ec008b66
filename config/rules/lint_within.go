package rules

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// within looks for what the limits leave no room for: a chassis with a body that the
// rules allow and that no full unit can be built on within its limits, and options that
// fit within them on none. Limits are those of a unit with no picks yet; what was found
// without them is not said again.
func (l *Linter) within(limits *Limits) {
	if l.possible == nil {
		l.table(solve.Query{}, func(verdicts []solve.Verdict, _ solve.Result) {
			l.notePossible(verdicts)
			l.pairsWithin(limits)
		})
		return
	}
	l.pairsWithin(limits)
}

// notePossible notes what a unit without limits can have, as far as is known.
func (l *Linter) notePossible(verdicts []solve.Verdict) {
	l.possible = make([]bool, l.e.n)
	for v := range verdicts {
		l.possible[v] = verdicts[v]&solve.CanHold != 0
	}
}

func (l *Linter) pairsWithin(limits *Limits) {
	e := l.e
	misfits := slices.Clone(l.possible) // what no unit can have is told of elsewhere
	clear(misfits[:e.firstOption()])
	var jobs []func()
	for c := range e.cat.Chassis {
		for b := range e.cat.Bodies {
			jobs = append(jobs, func() { l.pairWithin(c, b, limits, misfits) })
		}
	}
	l.next(append(jobs, func() { l.misfits(misfits) })...)
}

// pairWithin looks at a chassis with a body, and takes out of the misfits what fits
// there. What fits elsewhere is not asked again.
func (l *Linter) pairWithin(c, b int, limits *Limits, misfits []bool) {
	e := l.e
	u := config.Unit{Chassis: e.cat.Chassis[c].ID, Body: e.cat.Bodies[b].ID}
	e.solver.Allow(lintSteps)
	r := e.solver.Solve(e.picks(&u), lintBudget)
	if e.solver.Allow(0); r == solve.Unsat {
		return
	}
	guards, _ := e.limits.load(e, &u, limits)
	l.other += int64(e.n * limitsEach)
	q := solve.Query{Base: slices.Clone(guards), Picks: e.picks(&u), Only: slices.Clone(misfits), Hold: true}
	l.table(q, func(verdicts []solve.Verdict, r solve.Result) {
		switch r {
		case solve.Unsat:
			l.add("pair-overloaded", config.Warn, fmt.Sprintf("chassis %q, body %q", u.Chassis, u.Body),
				fmt.Sprintf("%s with %s cannot keep its limits with the lightest of everything.",
					e.cat.Chassis[c].Label, e.cat.Bodies[b].Label),
				"Add a rule that forbids the pair with its reason, or correct the masses.", u.Chassis, u.Body)
		case solve.Unknown: // everything is given the benefit of the doubt
			clear(misfits)
		case solve.Sat: // and so is an option not proven impossible
			for v := range verdicts {
				misfits[v] = misfits[v] && verdicts[v]&solve.CannotHold != 0
			}
		}
	})
}

// misfits tells of the options that fit nowhere.
func (l *Linter) misfits(misfits []bool) {
	for v, misfit := range misfits {
		if misfit {
			l.add("never-within-limits", config.Stop, l.where(v),
				fmt.Sprintf("%s fits within the limits of no chassis with no body.", l.label(v)),
				"Correct its weight, station or current, or take it out of the catalogue.", l.e.ids[v])
		}
	}
}
