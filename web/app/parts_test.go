package app

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const working = "Working it out"

// What takes long is left out of the first part of an answer. Once the page shows
// it, it does not vanish at a press that changes nothing of it.
func TestLaterPartsStay(t *testing.T) {
	p := begun(t)
	p.do(Act{Do: "go", ID: "needs"})
	for _, c := range []struct {
		name, reason string
		act          Act
		partial      bool
	}{
		{"first look", "it takes long", Act{Do: "go", ID: "delivery"}, true},
		{"the rest", "it was asked for", Act{Do: "rest"}, false},
		{"other units", "the draft is the same", Act{Do: "units"}, false},
		{"away", "the area has none", Act{Do: "go", ID: "weight"}, false},
		{"back", "it was shown for this draft", Act{Do: "go", ID: "delivery"}, false},
		{"another draft", "it is worked out anew", set("unit.order_on", "2027-01-04"), true},
		{"a new core", "the page begins anew", Act{Do: "start"}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := p.ask(c.act)
			require.Empty(t, s.Fault)
			assert.Equal(t, c.partial, s.Partial, c.reason)
			if c.partial {
				assert.Contains(t, s.Regions["main"], working, "what is left out is announced")
			} else {
				assert.NotContains(t, s.Regions["main"], working)
			}
		})
	}
}

// The picture of the unit is no part of what a press waits for: the first part of the
// answer leaves the one on the page as it is, the rest brings the new one.
func TestThePictureComesAfterThePress(t *testing.T) {
	p := begun(t)
	p.do(Act{Do: "go", ID: "unit"})
	p.do(Act{Do: "chapter", ID: "exterior"})
	s := p.ask(Act{Do: "pick", ID: "fb-push", On: true})
	require.Empty(t, s.Fault)
	require.True(t, s.Partial)
	assert.NotContains(t, s.Regions["main"], `class="drawing view"`)
	assert.Contains(t, s.Regions["main"], `data-stays="1"`)
	s = p.ask(Act{Do: "rest"})
	require.False(t, s.Partial)
	assert.Contains(t, s.Regions["main"], `class="drawing view"`)
	assert.Contains(t, s.Regions["main"], `data-part="fb-push"`, "what was pressed is drawn")
	assert.Contains(t, s.Regions["main"], `class="fresh"`, "and lit for a moment")
	assert.Contains(t, s.Regions["main"], `data-ghost="fb-winch"`, "what is not in the unit has its place")
}
