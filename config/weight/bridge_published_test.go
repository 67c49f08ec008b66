package weight

// The federal bridge formula against published examples: B-1 to B-3 from a
// public explainer page, rounding to the nearest 500 lb from the WSDOT training
// module of the University of Washington, caps from clermontengineer.org; T-1 to T-7
// as the legal table prints them (RCW 46.44.041).

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPublishedBridgeFormula(t *testing.T) {
	for _, c := range []struct {
		id     string
		feet   float64
		axles  int
		exact  float64
		limit  float64
		reason string
	}{
		{"B-1", 4, 2, 34000, 34000, "a tandem"},
		{"B-2", 48, 5, 78000, 78000, ""},
		{"B-3", 51, 5, 79875, 80000, "rounded to the nearest 500"},
		{"B-5", 38, 4, 67333.3, 67500, "the source's looser upper figure of 67,000 is not used"},
		{"B-6", 20, 3, 51000, 51000, ""},
		{"B-6", 35, 4, 65333.3, 65500, ""},
		{"B-7", 15, 2, 45000, 40000, "two single axles of 20,000 govern"},
		{"T-1", 9, 3, 42750, 42500, "a tie goes to the lower 500"},
		{"T-2", 11, 3, 44250, 44000, "a tie, 11 ft on three axles"},
		{"T-3", 13, 3, 45750, 45500, "a tie, 13 ft on three axles"},
		{"T-4", 46, 5, 76750, 76500, "a tie, 46 ft on five axles"},
		{"T-5", 50, 5, 79250, 79000, "a tie, 50 ft on five axles"},
		{"T-6", 8, 3, 42000, 34000, "within 8 ft the tandem's weight holds for three axles too"},
		{"T-7", 8, 2, 38000, 34000, "8 ft on two axles"},
		{"cap", 60, 6, 90000, 80000, "gross cap"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			assert.InDelta(t, c.exact, BridgeExact(c.feet, c.axles), 0.05, "%s: %s", c.id, c.reason)
			assert.Equal(t, c.limit, Bridge(c.feet, c.axles), "%s: %s", c.id, c.reason)
		})
	}
	assert.Zero(t, Bridge(10, 1), "one axle is no group")
	assert.Zero(t, Bridge(-1, 2))
}
