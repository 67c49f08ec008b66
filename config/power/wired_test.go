package power

import (
	"cmp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
)

// The worst circuit decides: 12.5 A on a 10 A fuse is 125 %; one that no wire serves has
// nothing, and one that is not sized does not count.
func TestWhatAScheduleKeeps(t *testing.T) {
	figures := wired([]Conductor{{Number: "104", Function: "FRONT LIGHT BAR", FuseA: 40, CarryA: 90, DropPct: 8},
		{Number: "131", Function: "SCENE LIGHT", FuseA: 10, CarryA: 12.5, DropPct: 3}, {}})
	require.Len(t, figures, 2)
	assert.Equal(t, 125., figures[0].Value)
	assert.Contains(t, figures[0].Label, ": 131 SCENE LIGHT")
	assert.Equal(t, 8., figures[1].Value)
	assert.Contains(t, figures[1].Label, ": 104 FRONT LIGHT BAR")
	assert.Zero(t, wired([]Conductor{{FuseA: 500}})[0].Value)
	assert.Empty(t, wired([]Conductor{{}}))
}

// Wired by another table, the figures are of the new schedule and their limits stay.
func TestRewiring(t *testing.T) {
	cat, u := fixture(t), unit("ac", "lightbar")
	as := &config.Assumptions{Limits: map[string]config.Limit{"power.wire-drop": {Value: 10, Sense: config.AtMost,
		Basis: config.FromMemory}}}
	s := Budget(cat, u, as)
	was, ok := s.Figure("power.wire-drop")
	require.True(t, ok)
	assert.Greater(t, was.Value, 3.)
	carry, _ := s.Figure("power.wire-carry")
	assert.GreaterOrEqual(t, carry.Value, 125.)
	w := WiringOf(nil)
	w.DropPct = 3
	s.Rewire(cat, u, w)
	drop, _ := s.Figure("power.wire-drop")
	worst := slices.MaxFunc(s.Circuits, func(a, b Conductor) int { return cmp.Compare(a.DropPct, b.DropPct) })
	assert.Contains(t, drop.Label, worst.Number+" "+worst.Function, "named anew")
	assert.LessOrEqual(t, drop.Value, 3.)
	assert.Equal(t, was.Limit, drop.Limit)
	assert.Equal(t, quantity.Percent, drop.Unit)
	w.Fuses = []float64{1}
	s.Rewire(cat, u, w)
	w.Fuses = WiringOf(nil).Fuses
	assert.Contains(t, codes(&s.Report), "power.no-fuse")
	s.Rewire(cat, u, w)
	assert.NotContains(t, codes(&s.Report), "power.no-fuse", "what no longer is so is not said")
}

// What the unit assumes of the drop sizes the wires and is the limit of the worst.
func TestDropIsAnAssumedFactor(t *testing.T) {
	cat, u, as := fixture(t), unit("ac", "lightbar"), &config.Assumptions{}
	usual, _ := Budget(cat, u, as).Figure("power.wire-drop")
	assert.Equal(t, 10., usual.Limit)
	assert.Equal(t, config.CommonPractice, usual.Basis)
	as.Set([]config.Assumed{{Factor: config.WireDrop, Value: 3}})
	own, _ := Budget(cat, u, as).Figure("power.wire-drop")
	assert.Equal(t, 3., own.Limit)
	assert.LessOrEqual(t, own.Value, 3.)
	assert.Greater(t, usual.Value, 3.)
	assert.Contains(t, own.Source, "own limit")
}
