package rules

import (
	"encoding/json"
	"fmt"

	"boxwright/config"
)

// data finds options that lack what a quote, a weigh-up or a plan needs. Zero
// stated is taken for an answer; nothing stated is not.
func (l *Linter) data() {
	var book struct { // only what is priced; the prices are for package pricing
		Prices map[string]json.RawMessage `json:"prices"`
	}
	_ = json.Unmarshal(l.e.cat.PriceBook, &book)
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
		if o.Mass == nil {
			l.add("no-mass", config.Note, where, fmt.Sprintf("%s has no mass.", o.Label),
				"State its mass, 0 if it has none.", o.ID)
		}
		if len(o.Work) == 0 {
			l.add("no-work", config.Note, where, fmt.Sprintf("%s adds no plant work.", o.Label),
				"State the station and hours, 0 if it takes none.", o.ID)
		}
	}
}
