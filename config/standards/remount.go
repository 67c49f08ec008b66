package standards

import (
	"slices"

	"boxwright/config"
)

// OutsideRemount is why a rule set does not cover a refurbished or remounted
// unit, read in its text; empty when nothing was read.
func OutsideRemount(ruleSet string) string {
	if chosen, _ := Split(ruleSet); slices.ContainsFunc(chosen, func(s Set) bool { return s.ID == KKK }) {
		return "Refurbished and remounted vehicles are not covered by KKK-A-1822 (contents of revision F, read): its " +
			"clauses are shown for comparison and nobody can declare this unit against it."
	}
	return ""
}

// Remount notes for a unit that remounts an existing module where the rule set
// in force does not cover it.
func Remount(cat *config.Catalogue, u *config.Unit) []config.Finding {
	remount, _ := cat.Measured(u)
	if text := OutsideRemount(u.RuleSet); remount && text != "" {
		return []config.Finding{{Code: "standards.remount", Severity: config.Note, Where: "Rules in force", Text: text,
			Basis: config.ReadInText,
			Remedy: "Let the purchaser's own set judge it, with the limits the purchaser names, and ask the " +
				"authority having jurisdiction."}}
	}
	return nil
}
