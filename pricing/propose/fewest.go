package propose

import (
	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/quote"
)

// manyChanges is how many filled-in things a way may change before fewer are looked
// for, and fewestBudget is how many conflicts that may take.
const (
	manyChanges  = 2 * FewChanges
	fewestBudget = 50
)

// fewest is full, or a unit with the same deliberate picks that changes less of what the
// draft's unit was filled in with, where full changes much of it. Filling keeps one thing
// after the other while there is room, so that what comes late may all have to change.
func fewest(
	ed *quote.Edition, d *quote.Draft, full config.Unit, changes []rules.Change,
) (config.Unit, []rules.Change) {
	was := &d.Unit
	if len(changes) <= manyChanges || pairOf(was) != pairOf(&full) {
		return full, changes
	}
	on := *d
	on.Unit = full
	least := ed.Rules.Complete(&full, quote.Limits(ed, &on), func(id string) int64 {
		if was.Has(id) {
			return -1
		}
		return 1
	}, fewestBudget)
	if !least.Found {
		return full, changes
	}
	on.Unit = least.Unit
	if back, _, ok := ed.Rules.Restore(&least.Unit, quote.Limits(ed, &on)); ok {
		on.Unit = back
	}
	if fewer := ed.Rules.Changes(was, &on.Unit); len(fewer) < len(changes) {
		return on.Unit, fewer
	}
	return full, changes
}
