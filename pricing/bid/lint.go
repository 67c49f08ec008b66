package bid

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/pricing/quote"
)

// Lint looks for faults of what a catalogue says of how things are asked for: words for
// nothing offered, names that idle words alone make up, and options whose own label is
// not read as asking for them.
func Lint(ed *quote.Edition) []config.Finding {
	var out []config.Finding
	add := func(code string, s config.Severity, where, text, remedy string) {
		out = append(out, config.Finding{Code: "catalogue." + code, Severity: s, Where: where, Text: text,
			Remedy: remedy,
			Basis:  config.Computed})
	}
	cat := ed.Cat
	for i := range cat.Asked {
		a := &cat.Asked[i]
		where := fmt.Sprintf("asked[%d] %q", i, a.ID)
		if cat.OptionByID(a.ID) == nil && cat.GroupByID(a.ID) == nil && cat.ChassisByID(a.ID) == nil &&
			cat.BodyByID(a.ID) == nil {
			add("asked-unknown", config.Warn, where, "names nothing that this catalogue offers.",
				"Take it out, or correct its id.")
		}
		for _, n := range a.Names {
			if len(stems(n)) == 0 {
				add("asked-idle", config.Warn, where, fmt.Sprintf("the name %q is made of words that say nothing.", n),
					"Write the words that purchasers tell it by.")
			}
		}
	}
	v := vocabularyOf(ed)
	for i := range cat.Traits {
		t := &cat.Traits[i]
		where := fmt.Sprintf("traits[%d] %q", i, t.ID)
		for _, id := range slices.Concat(t.Of, t.But, t.Told) {
			if cat.OptionByID(id) == nil && cat.GroupByID(id) == nil {
				add("trait-unknown", config.Warn, where, fmt.Sprintf("%q is no option and no group.", id),
					"Take it out, or correct it.")
			}
		}
		if len(v.traits[i].ways) < len(t.Asked) {
			add("trait-idle", config.Warn, where, "one of the ways in which it is asked for is made of words that say nothing.",
				"Write the words that purchasers tell it by.")
		}
		for k := range v.traits[:i] {
			if both := v.mixed(i, k); both != "" {
				add("trait-mixed", config.Warn, where, fmt.Sprintf("is asked for by %q, and so is %q of the same kind.", both,
					cat.Traits[k].ID), "Give each its own words, so that the one is not taken for the other.")
			}
		}
	}
	for i := range cat.Options {
		if p := v.byID[cat.Options[i].ID]; !p.kept {
			for _, k := range v.otherTraits(p, cat.Options[i].Spec) {
				add("trait-other", config.Warn, fmt.Sprintf("options[%d] %q", i, p.id), fmt.Sprintf("its sentence says the "+
					"trait %q, which is not named as true of it, and another of that kind is.", cat.Traits[k].ID),
					"Name the option under that trait, or take it out of the other.")
			}
		}
	}
	for i := range cat.Options {
		o := &cat.Options[i]
		if v.byID[o.ID].kept {
			continue
		}
		found := false
		for _, c := range v.readLine(o.Label).claims {
			for _, list := range [][]string{c.same, c.more, c.also} {
				for _, id := range list {
					found = found || id == o.ID
				}
			}
			found = found || c.gauge != nil
		}
		if !found {
			add("asked-unread", config.Note, fmt.Sprintf("options[%d] %q", i, o.ID),
				"its own label, as a line of a requirement list, is not "+
					"read as asking for it.", "Name it under asked.")
		}
	}
	return out
}
