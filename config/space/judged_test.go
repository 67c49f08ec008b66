package space

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
)

// What clauses ask of doorway, flood lights and the compartment at the right front, worked
// by hand: the module's roof stands 32 - 2.875 + 88 = 117.125 in high.
func TestSizesThatClausesAskFor(t *testing.T) {
	cat := small()
	cat.Bodies[0].Doors.RearWidthIn, cat.Bodies[0].Doors.RearHeightIn = 50, 44
	lamp := func(z float64) []config.Place {
		return []config.Place{{Kind: "lamp", Face: config.FaceStreet, Level: config.LevelRoof, XIn: 40, ZIn: in(z),
			LengthIn: 9, WidthIn: 3, HeightIn: 4}}
	}
	front := func(w, d, h float64) []config.Compartment {
		return []config.Compartment{{ID: "rf", Label: "Right front", Side: "curb", XIn: 12, ZIn: 30, WidthIn: in(w),
			DepthIn: in(d), HeightIn: in(h)}}
	}
	for _, o := range []config.Option{
		{ID: "flood-high", Clauses: []string{floodClause}, Places: lamp(-8)},
		{ID: "flood-low", Clauses: []string{floodClause}, Places: lamp(-45)},
		{ID: "lamp-lowest", Places: lamp(-80)},
		{ID: "front-large", Clauses: []string{frontClause}, Compartments: front(18, 30, 40)},
		{ID: "front-small", Clauses: []string{frontClause}, Compartments: front(31, 19, 37)},
	} {
		o.Label, o.Group = o.ID, "g"
		cat.Options = append(cat.Options, o)
	}
	require.Empty(t, cat.Prepare())
	for _, c := range []struct {
		reason, pick, code string
		want               float64
	}{
		{"the lower size of the doorway", "", "space.rear-door", 44},
		{"8 in below the roof", "flood-high", "space.flood-height", 109.125},
		{"45 in below it", "flood-low", "space.flood-height", 72.125},
		{"another lamp is no flood light", "lamp-lowest", "space.flood-height", -1},
		{"turned, it is as large as asked for", "front-large", "space.front-compartment", 100},
		{"37 in high, of 40", "front-small", "space.front-compartment", 92.5},
		{"none is ordered", "", "space.front-compartment", -1},
	} {
		t.Run(c.reason, func(t *testing.T) {
			u := unit()
			if c.pick != "" {
				u.Set(config.Pick{Option: c.pick, Qty: 1})
			}
			f, ok := Measure(cat, u, nil).Figure(c.code)
			if c.want == -1 {
				assert.False(t, ok, "there is none")
				return
			}
			require.True(t, ok)
			assert.InDelta(t, c.want, f.Value, 1e-9)
		})
	}
	u := unit()
	u.Set(config.Pick{Option: "flood-high", Qty: 1})
	u.Set(config.Pick{Option: "flood-low", Qty: 1})
	f, _ := Measure(cat, u, nil).Figure("space.flood-height")
	assert.InDelta(t, 72.125, f.Value, 1e-9, "the lowest decides")
}
