package rules

import (
	"encoding/json"
	"fmt"
	"strings"

	"boxwright/config"
)

// data finds options that lack what a quote, a weigh-up or a plan needs. Zero
// stated is taken for an answer; nothing stated is not.
func (l *Linter) data() {
	var book struct { // only what is priced; the prices are for package pricing
		Prices map[string]json.RawMessage `json:"prices"`
	}
	_ = json.Unmarshal(l.e.cat.PriceBook, &book)
	var massless, lighter, idle []string
	standard := map[string][]string{}
	for i := range l.e.cat.Options {
		o := &l.e.cat.Options[i]
		where := fmt.Sprintf("option %q", o.ID)
		key := o.PriceKey
		if key == "" {
			key = o.ID
		}
		if _, priced := book.Prices[key]; !priced && len(l.e.cat.PriceBook) > 0 {
			l.add("no-price", config.Stop, where, fmt.Sprintf("%s has no price: the price book has no %q.", o.Label,
				key), "Add a price, 0 if it costs nothing.", o.ID)
		}
		switch {
		case o.Mass == nil:
			massless = append(massless, o.ID)
		case o.Mass.Lb < 0:
			lighter = append(lighter, o.ID)
		}
		if len(o.Work) == 0 {
			idle = append(idle, o.ID)
		}
		if o.Standard {
			standard[o.Group] = append(standard[o.Group], o.ID)
		}
	}
	for i := range l.e.cat.Groups {
		if g := &l.e.cat.Groups[i]; g.Choose != config.ChooseAny && len(standard[g.ID]) > 1 {
			l.add("standard-twice", config.Warn, fmt.Sprintf("group %q", g.ID),
				fmt.Sprintf("Of %s one can be in a unit, and %d are standard: %s.", g.Label, len(standard[g.ID]),
					named(standard[g.ID])), "Leave one of them standard.", standard[g.ID]...)
		}
	}
	if massless != nil {
		l.add("no-mass", config.Note, "options", fmt.Sprintf("No weight is stated of %d: %s.", len(massless),
			named(massless)), "State the weight of each, 0 if it has none.", massless...)
	}
	if lighter != nil {
		l.add("mass-below-zero", config.Note, "options", fmt.Sprintf("The weight of %d is below zero: %s.", len(lighter),
			named(lighter)), "Right only where it stands in the place of something heavier that is counted elsewhere; "+
			"otherwise state what it weighs itself.", lighter...)
	}
	if idle != nil {
		l.add("no-work", config.Note, "options", fmt.Sprintf("%d add no plant work: %s.", len(idle), named(idle)),
			"State station and hours of each, 0 if it takes none.", idle...)
	}
}

// mostNamed bounds the options that a finding names.
const mostNamed = 100

// named lists ids.
func named(ids []string) string {
	if more := len(ids) - mostNamed; more > 0 {
		return fmt.Sprintf("%s and %d more", strings.Join(ids[:mostNamed], ", "), more)
	}
	return strings.Join(ids, ", ")
}
