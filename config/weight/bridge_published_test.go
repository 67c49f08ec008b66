package weight

// The federal bridge formula against published examples: B-1 to B-3 from a
// public explainer page, rounding to the nearest 500 lb from the WSDOT training
// module of the University of Washington, caps from clermontengineer.org.

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
