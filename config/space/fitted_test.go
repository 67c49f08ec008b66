package space

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
)

// fittings is the small catalogue with a tray, a mount and showers, and things to carry.
func fittings(t *testing.T) *config.Catalogue {
	cat := small()
	hole := func(id string, x float64, lb quantity.Mass) config.Compartment {
		return config.Compartment{ID: id, Label: id, Side: "street", Slot: id, XIn: in(x), ZIn: 10, WidthIn: 24,
			DepthIn: 24, HeightIn: 72, LimitLb: lb}
	}
	cat.Bodies[0].Compartments = []config.Compartment{hole("front", 20, 700), hole("rear", 128, 500)}
	cat.Bodies[1].Compartments = []config.Compartment{hole("side", 60, 100)}
	cat.Options = []config.Option{
		{ID: "tray", Label: "Tray", Group: "g", MaxQty: 3, Mass: &config.Mass{Lb: 60, Zone: config.ZoneModule},
			Fitted: &config.Fitted{Slots: []string{"rear", "front", "side"}, HeightIn: 3, RatedLb: 600}},
		{ID: "bracket", Label: "Bracket", Group: "g", MaxQty: 2, Compartments: []config.Compartment{{ID: "hold",
			Label: "Bracket", Side: "inside", WidthIn: 1, DepthIn: 1, HeightIn: 1, LimitLb: 30,
			Holds: []config.Aboard{{Equipment: "pump", Qty: 2}}}}},
		{ID: "shower", Label: "Shower", Group: "g", Water: &config.Water{FreshGal: 60, WasteGal: 75, FlowGPM: 8}},
		{ID: "small", Label: "Small tank", Group: "g", Water: &config.Water{FreshGal: 30, FlowGPM: 4}},
	}
	cat.Equipment = []config.Equipment{{ID: "pump", Label: "Pump", MassLb: 10, LengthIn: 9, WidthIn: 6, HeightIn: 8},
		{ID: "bag", Label: "Bag", MassLb: 60, LengthIn: 20, WidthIn: 12, HeightIn: 12}}
	require.Empty(t, cat.Prepare())
	return cat
}

func fittedUnit(picks ...config.Pick) *config.Unit {
	u := &config.Unit{Chassis: "c1", Body: "b1"}
	for _, p := range picks {
		u.Set(p)
	}
	return u
}

func useOf(t *testing.T, s *Sheet, id string) Use {
	t.Helper()
	for _, u := range s.Compartments {
		if u.ID == id {
			return u
		}
	}
	require.Fail(t, "no compartment "+id)
	return Use{}
}

// What is fitted in a compartment fills it, and a tray carries what it is rated for.
func TestFittedGearFillsItsCompartment(t *testing.T) {
	cat := fittings(t)
	s := Measure(cat, fittedUnit(config.Pick{Option: "tray", Qty: 3}), nil)
	a, b := useOf(t, s, "front"), useOf(t, s, "rear")
	assert.EqualValues(t, 69, a.HeightIn)
	assert.EqualValues(t, 69, b.HeightIn)
	assert.EqualValues(t, 600, a.LimitLb, "the tray's rating is less than 700 less its 60")
	assert.EqualValues(t, 440, b.LimitLb, "the compartment's, less the tray")
	assert.Equal(t, []string{"Tray"}, b.Gear)
	assert.NotNil(t, found(s, "space.no-compartment"), "there is no place for a third")
	assert.EqualValues(t, 72, s.Model.Compartments[0].HeightIn, "its door stays as it is")

	cat.OptionByID("tray").Fitted.HeightIn = 68
	assert.Zero(t, useOf(t, Measure(cat, fittedUnit(config.Pick{Option: "tray", Qty: 3}), nil), "front").Ft3,
		"a slit of 4 in is no room")
	cat.OptionByID("tray").Fitted.HeightIn = 3

	u := fittedUnit(config.Pick{Option: "tray", Qty: 1})
	u.Carried = []config.Carried{{Equipment: "bag", Compartment: "rear", Qty: 8}}
	assert.Equal(t, Overloaded, useOf(t, Measure(cat, u, nil), "rear").State, "480 lb on 440")
}

// A mount holds what it is made for and no more, and the suggestion goes by it.
func TestMountsHoldWhatTheyAreMadeFor(t *testing.T) {
	cat := fittings(t)
	for _, c := range []struct {
		name   string
		qty    int
		rides  config.Carried
		state  State
		reason string
	}{
		{"two pumps", 1, config.Carried{Equipment: "pump", Qty: 2}, Fits, "what it is made for"},
		{"three pumps", 1, config.Carried{Equipment: "pump", Qty: 3}, TooBig, "made for two"},
		{"three pumps on two brackets", 2, config.Carried{Equipment: "pump", Qty: 3}, Fits, "made for four"},
		{"a bag", 1, config.Carried{Equipment: "bag", Qty: 1}, TooBig, "made for something else"},
	} {
		t.Run(c.name, func(t *testing.T) {
			u := fittedUnit(config.Pick{Option: "bracket", Qty: c.qty})
			c.rides.Compartment = "hold"
			u.Carried = []config.Carried{c.rides}
			assert.Equal(t, c.state, useOf(t, Measure(cat, u, nil), "hold").State, c.reason)
		})
	}
	u := fittedUnit(config.Pick{Option: "bracket", Qty: 1})
	u.Carried = []config.Carried{{Equipment: "bag", Qty: 1}, {Equipment: "pump", Qty: 3}}
	got := map[string]int{}
	for _, x := range Suggest(cat, u, nil) {
		got[x.Equipment+" "+map[bool]string{true: "on the bracket"}[x.Compartment == "hold"]] += x.Qty
	}
	assert.Equal(t, map[string]int{"bag ": 1, "pump on the bracket": 2, "pump ": 1}, got)
}

// What a purchaser adds is stowed and judged as what the catalogue lists.
func TestOwnItemsAreStowed(t *testing.T) {
	cat := fittings(t)
	u := fittedUnit()
	id := u.AddOwn(config.Equipment{Label: "Ram set", MassLb: 90, LengthIn: 30, WidthIn: 10, HeightIn: 10,
		Stow: &config.Stowage{Place: config.StowOutside}})
	u.Carried = []config.Carried{{Equipment: id, Qty: 1}}
	require.Empty(t, cat.CheckUnit(u))
	u.Carried = Suggest(cat, u, nil)
	require.Len(t, u.Carried, 1)
	assert.EqualValues(t, 90, useOf(t, Measure(cat, u, nil), u.Carried[0].Compartment).MassLb)
	again := u.Clone()
	again.DropOwn(id)
	assert.Empty(t, again.Carried)
	assert.Len(t, u.OwnItems, 1, "a copy has a list of its own")
	u.OwnItems[0].MassLb = 0
	assert.NotEmpty(t, cat.CheckUnit(u), "no mass")
}

// The water of a shower lasts so long, and the waste tank takes it all or it is said.
func TestWaterCloses(t *testing.T) {
	cat := fittings(t)
	s := Measure(cat, fittedUnit(config.Pick{Option: "shower", Qty: 1}), nil)
	minutes, _ := s.Figure("space.water-minutes")
	waste, _ := s.Figure("space.waste")
	assert.InDelta(t, 7.5, minutes.Value, 1e-9)
	assert.InDelta(t, 15, waste.Margin(), 1e-9)
	s = Measure(cat, fittedUnit(config.Pick{Option: "small", Qty: 1}), nil)
	assert.NotNil(t, found(s, "space.waste"), "nothing takes it back")
}

func found(s *Sheet, code string) *config.Finding {
	for i := range s.Findings {
		if s.Findings[i].Code == code {
			return &s.Findings[i]
		}
	}
	return nil
}
