package rules

import (
	"boxwright/config"
	"boxwright/config/solve"
)

// Allows reports whether the rules let the deliberate picks of a unit stand together,
// whatever it weighs. What takes more work than a fill may counts as allowed.
func (e *Engine) Allows(u *config.Unit) bool {
	return e.solver.Solve(e.picks(u), fillBudget) != solve.Unsat
}
