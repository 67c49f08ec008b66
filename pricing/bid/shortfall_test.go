package bid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/pricing/quote"
)

// What is to have an amount that nothing offered reaches is answered apart from the amount.
func TestShortfalls(t *testing.T) {
	for _, c := range []struct {
		line string
		each []string
	}{
		{"Front winch, electric, rated 12,000 # pull.",
			[]string{"Comply with: Front winch, electric", "Exception: rated 12,000 # pull"}},
		{"Electric winch up front, 12,000 lb. pull, synthetic rope not cable.",
			[]string{"Comply with: Electric winch up front, synthetic rope not cable", "Exception: 12,000 lb. pull"}},
		{"Reflective belt stripe to be 8 in. in width",
			[]string{"Comply: Reflective belt stripe", "Exception: to be 8 in. in width"}},
		{"AGM batteries, 500 Ah", // not even four of them
			[]string{"Comply with: AGM batteries", "Exception: 500 Ah"}},
		{"Action counter: solid surface, 3/4 in. thick min., coved back",
			[]string{"Comply with: Action counter, solid surface, coved back", "Exception: 3/4 in. thick"}},
		{"A total of six (6) oxygen flowmeters",
			[]string{"Exception: A total of six (6)", "Comply with: oxygen flowmeters"}},
		{"12,000 lb. electric winch on the front",
			[]string{"Exception: 12,000 lb", "Comply with: electric winch on the front"}},
		{"Inverter - single unit, true sine wave, 5 kVA",
			[]string{"Comply: Inverter, single, true sine wave", "Exception: 5 kVA"}},
		{"Streetside interior cabinets: 28 cu. ft. of storage minimum",
			[]string{"Comply: Streetside interior cabinets", "Exception: 28 cu. ft. of storage"}},
		{"Conversion warranty, 72 months, unlimited mileage", // not even with a limit
			[]string{"Exception: Conversion warranty, 72 months, unlimited mileage"}},
		{"On-board generator, 15 kW minimum, driven by PTO", // none can be had
			[]string{"Exception: On-board generator, driven by PTO", "Exception: 15 kW"}},
	} {
		t.Run(c.line, func(t *testing.T) {
			_, list := answersTo(t, c.line)
			assert.Equal(t, c.each, saidOfEach(&list[0]))
		})
	}
}

// No exception is taken to an amount that something else may be meant by, nor to one of another measure.
func TestNoShortfalls(t *testing.T) {
	for why, line := range map[string]string{
		"how long a stripe is, is not told":         "Stripe at least 20 ft long",
		"nor how wide the goods of a floor are":     "Floor vinyl, no less than 96 in wide",
		"nor how long a rail is":                    "Grab rail no less than 60 in long over the cot",
		"the camera may show on the console screen": "Rear camera monitor, no less than 10 in",
		"what else has a rope":                      "Front winch with 100 ft of rope",
		"of which the winch says nothing":           "Winch, 9,000 lb, with a 12,000 lb shackle",
		"another tray may be meant":                 "Compartment tray rated 500 lb",
		"several together may have it":              "AGM batteries 300 Ah total",
		"what is told of one, all have together":    "AGM batteries, 400 Ah",
		"in all":                                    "Batteries of 420 Ah in all, AGM",
		"they stand at least as high as they say":   "Recessed scene lights 80 in above the ground",
		"there are others on the sides":             "Warning lights, ten on each side",
		"less will do":                              "Insulation 2 in thick or less",
		"a smaller one will do":                     "Side door 24 in clear",
	} {
		t.Run(why, func(t *testing.T) {
			_, list := answersTo(t, line)
			assert.NotEqual(t, quote.Excepted, list[0].Outcome, "read as %q", list[0].Read)
		})
	}
}
