package unit

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config/rules"
	"boxwright/pricing/propose"
	"boxwright/web/page/markup"
)

// Where looking for ways out was ended, nothing is said that was not looked for.
func TestWaysLeft(t *testing.T) {
	mends := []rules.Mend{{}}
	for _, c := range []struct {
		reason string
		ways   propose.Ways
		has    bool
		says   string
	}{
		{"all was looked for, and nothing helps", propose.Ways{}, false, "No change of your other choices"},
		{"what is in needs no way to it", propose.Ways{}, true, ""},
		{"all ways are shown", propose.Ways{Mends: mends}, false, ""},
		{"there may be more", propose.Ways{Mends: mends, More: true}, false, "There may be more ways"},
		{"none was found so far", propose.Ways{More: true}, false, "No way was found with the work allowed"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			got := strings.Join(markup.Many(waysLeft(&c.ways, c.has)).Pieces(), "")
			if c.says == "" {
				assert.Empty(t, got)
			}
			assert.Contains(t, got, c.says)
		})
	}
}
