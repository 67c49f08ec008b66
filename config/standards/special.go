package standards

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// special is what a purchaser names for a unit that carries no patients. The texts for
// such apparatus could not be read, so that no number is built in.
func special() Set {
	open := func(id, title, text, figure string, sense config.Sense, unit string) Clause {
		return Clause{ID: id, Title: title, Text: text, Figure: figure, Sense: sense, Unit: unit,
			Rows: []Row{{Open: true, Source: "named by the purchaser; NFPA 1900 family not read",
				Basis: config.Purchaser}}}
	}
	return Set{ID: Special, Label: "Purchaser's own, rescue and special units",
		Note: "No ambulance specification judges a unit that carries no patients. The NFPA 1900 family for fire and " +
			"rescue apparatus was not read and nothing of it is built in: name here what of it is to be judged, " +
			"and have the authority having jurisdiction confirm it.",
		Clauses: []Clause{
			open("special-payload", "Payload", "The purchaser sets the least load of people and equipment.",
				"weight.payload", config.AtLeast, quantity.Pound),
			open("special-left", "Remaining payload", "The purchaser sets what is left over at full load.",
				"weight.payload-left", config.AtLeast, quantity.Pound),
			open("special-front-share", "Weight on the front axle", "The purchaser sets the least share on the "+
				"front axle.", "weight.front-share", config.AtLeast, quantity.Percent),
			open("special-side", "Left and right", "The purchaser sets the greatest difference of the two sides.",
				"weight.side", config.AtMost, quantity.Percent),
			open("special-cg-height", "Height of the center of gravity", "The purchaser sets the greatest height.",
				"weight.cg-height", config.AtMost, quantity.Inch),
			open("special-seats", "Seats", "The purchaser sets how many people ride.", "space.seats", config.AtLeast,
				quantity.Count),
			open("special-remaining", "Generating capacity in reserve", "The purchaser sets the current to be left "+
				"over on scene, at 200 F.", "power.remaining", config.AtLeast, quantity.Amp),
			open("special-battery", "Minutes on battery", "The purchaser sets how long the scene load runs with the "+
				"engine off.", "power.battery-minutes", config.AtLeast, quantity.Minute),
			{ID: "special-generating", Title: "Generating system", Text: "The alternator's hot output carries the scene load.", Figure: "power.scene", Rows: []Row{{Source: "rating of the alternator", Basis: config.Rating}}},
		}}
}

// Suit is a choice of sets with a base that judges units of a duty: the base chosen where
// it does, else the duty's usual one. For no duty the base is never the one for units
// that are no ambulances. Add-ons stay.
func Suit(ruleSet string, d *config.Duty) string {
	chosen, _ := Split(ruleSet)
	base, ids := "", []string{}
	for _, s := range chosen {
		if s.AddOn {
			ids = append(ids, s.ID)
		} else {
			base = s.ID
		}
	}
	switch {
	case d != nil && len(d.RuleSets) > 0:
		if !slices.Contains(d.RuleSets, base) {
			base = d.RuleSets[0]
		}
	case base == Special:
		base = Default()
	default:
		return ruleSet
	}
	return Join(append(ids, base)...)
}

// Unsuited warns of a base set that does not judge units of this duty.
func Unsuited(cat *config.Catalogue, u *config.Unit) []config.Finding {
	d := cat.DutyOf(u)
	if d == nil || Suit(u.RuleSet, d) == u.RuleSet {
		return nil
	}
	set, _ := Find(d.RuleSets[0])
	return []config.Finding{{Code: "standards.duty", Severity: config.Warn, Where: "Rules in force",
		Text: "The rules chosen do not judge a unit for " + strings.ToLower(d.Label) + ".", Remedy: "Choose " +
			set.Label + " in Standards.",
		Basis: config.CommonPractice}}
}
