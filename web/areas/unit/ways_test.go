package unit

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/markup"
	"boxwright/web/page/pagetest"
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

// A sentence that one reason says is not said by the next.
func TestReasonsSayThingsOnce(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)}
	van, inside := rules.Cause{ID: "a", Text: "This is the version for vans."}, rules.Cause{ID: "b",
		Text: "A van is a van."}
	got := p.reasons(&propose.Ways{Reasons: []rules.Reason{
		{Rules: []rules.Cause{van}, Picks: []string{"mod-146-72"}},
		{Rules: []rules.Cause{inside, van}, Picks: []string{"mod-146-72"}},
		{Rules: []rules.Cause{van, inside}},
	}})
	if assert.Len(t, got, 2, "the third says nothing new") {
		assert.Equal(t, "This is the version for vans.", got[0].words)
		assert.NotEmpty(t, got[0].chosen)
		assert.Equal(t, "A van is a van.", got[1].words)
		assert.Empty(t, got[1].chosen, "with the same choice")
	}
}

// Only of a weight is it said that rules keep a unit from being lighter.
func TestWhatRulesBehindASumDo(t *testing.T) {
	of := func(unit string) rules.Reason { return rules.Reason{Limits: []rules.Arithmetic{{Unit: unit}}} }
	assert.Equal(t, "Rules that keep a full unit from being lighter", playing(of(quantity.Pound)))
	assert.Equal(t, "Rules that play a part in it", playing(of(quantity.Count)))
}
