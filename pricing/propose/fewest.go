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
	if fewer := changesOf(ed.Cat, was, &on.Unit); len(fewer) < len(changes) {
		return on.Unit, fewer
	}
	return full, changes
}

// changesOf lists what of the fills differs between a unit and one in its place, less what
// a deliberate pick of the same group replaces.
func changesOf(cat *config.Catalogue, was, is *config.Unit) []rules.Change {
	replaced := func(group string) bool {
		if cat.GroupByID(group).Choose == config.ChooseAny {
			return false
		}
		for _, m := range cat.Members(group) {
			if p := is.Find(cat.Options[m].ID); p != nil && !p.Filled {
				return true
			}
		}
		return false
	}
	var out []rules.Change
	for i := range cat.Options {
		o := &cat.Options[i]
		switch {
		case was.Filled(o.ID) && !is.Has(o.ID) && !replaced(o.Group):
			out = append(out, rules.Change{Option: o.ID, Cause: rules.GivesWay})
		case is.Filled(o.ID) && !was.Has(o.ID):
			out = append(out, rules.Change{Option: o.ID, Added: true, Cause: causeOfFill(cat, o)})
		}
	}
	return out
}

func causeOfFill(cat *config.Catalogue, o *config.Option) rules.FillCause {
	switch {
	case o.Standard:
		return rules.Standard
	case cat.GroupByID(o.Group).Choose == config.ChooseAny:
		return rules.Needed
	}
	return rules.Chosen
}
