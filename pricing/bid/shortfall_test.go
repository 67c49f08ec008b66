package bid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
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
