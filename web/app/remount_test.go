package app

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/seeds"
	"boxwright/pricing/quote"
)

func shownUnit(t *testing.T, s shown) config.Unit {
	t.Helper()
	require.Empty(t, s.Fault)
	var d quote.Draft
	require.NoError(t, json.Unmarshal(s.Draft, &d))
	return d.Unit
}

func measured(name, value string) Act { return Act{Do: "set", ID: "existing." + name, Value: value} }

// Walk 6: a measured module from another maker is checked on three chassis; one
// fails on the rear axle; cost per year against a new unit is shown.
func TestOldModuleNewChassis(t *testing.T) {
	p := open(t)
	s := p.do(Act{Do: "new", ID: "cut-14500-158-gas"}, Act{Do: "set", ID: "buyer.name", Value: "Two Rivers County"},
		Act{Do: "remount", ID: "cab-16500-169-diesel"})
	u := shownUnit(t, s)
	assert.Equal(t, "old-module", u.Body)
	assert.Equal(t, "own", u.RuleSet, "the federal specification covers no remount")
	assert.True(t, u.Has("build-kept") && u.Has("floor-kept") && u.Has("rm-inspect"))
	assert.Contains(t, s.Regions["main"], "has not been weighed")
	assert.Contains(t, s.Regions["masthead"], "Remount: ")
	assert.Contains(t, s.Regions["masthead"], "Two Rivers County")

	s = p.do(measured("maker", "Box of a neighbour's <old> unit"), measured("built", "2014"),
		measured("length_in", "150"), measured("height_in", "75"),
		measured("mass_lb", "6150"), measured("tol_lb", "60"), measured("x_in", "104"), measured("z_in", "31"),
		measured("weighed", "certified scale"),
		Act{Do: "mountings"})
	u = shownUnit(t, s)
	require.NotNil(t, u.Existing)
	assert.EqualValues(t, 6150, u.Existing.MassLb)
	main := s.Regions["main"]
	assert.NotContains(t, main, "has not been weighed")
	assert.NotContains(t, main, "<old>")
	assert.Contains(t, main, "The module on every chassis")
	assert.Regexp(t,
		`Cab-chassis 14,000 lb, 165 in wheelbase.{0,400}Rear axle, full load is [\d,]+ lb, [\d,]+ lb over the limit of 9,650 lb`, main)
	assert.Contains(t, main, `id="mount-on-cab-17500-169-4x4-diesel"`)
	assert.NotContains(t, main, `id="mount-on-van-9500-148-gas"`, "no rule lets a van carry it")

	s = p.do(Act{Do: "chassis", ID: "cab-14000-165-gas"})
	assert.Equal(t, "cab-16500-169-diesel", shownUnit(t, s).Chassis, "the one whose rear axle fails is refused")
	s = p.do(Act{Do: "chassis", ID: "cab-17500-169-4x4-diesel"})
	assert.Equal(t, "cab-17500-169-4x4-diesel", shownUnit(t, s).Chassis)

	s = p.do(Act{Do: "remount-years"})
	assert.Contains(t, s.Regions["main"], "This remount")
	assert.Contains(t, s.Regions["main"], "Cost of a year of service")
	s = p.do(Act{Do: "go", ID: "quote"})
	assert.Contains(t, s.Regions["main"], "6,150 lb weighed (certified scale)")
}

func TestMeasuredFieldsKeepWhatCannotBeTaken(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "remount"})
	for name, typed := range seeds.InOrder(map[string]string{"mass_lb": "heavy", "length_in": "15000", "built": "19x4",
		"x_in": "-4"}) {
		s := p.do(measured(name, typed))
		assert.Contains(t, s.Regions["main"], `value="`+typed+`"`, name)
		assert.Contains(t, s.Regions["main"], `id="w-existing.`+name+`"`, name)
		assert.Zero(t, *shownUnit(t, s).Existing, "%s: the unit keeps its earlier value", name)
	}
	s := p.do(measured("nonsense", "1"))
	assert.Zero(t, *shownUnit(t, s).Existing)

	p = open(t)
	p.do(Act{Do: "remount"}, Act{Do: "units"})
	u := shownUnit(t, p.do(measured("length_in", "3810"), measured("mass_lb", "2000 kg")))
	assert.InDelta(t, 150, float64(u.Existing.LengthIn), 0.01, "millimeters while the page shows metric")
	assert.InDelta(t, 4409.245, float64(u.Existing.MassLb), 0.01)
}

// Turning a new unit into a remount takes the plant's construction out, and
// back again puts it in.
func TestModuleChoiceTurnsRemount(t *testing.T) {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-153-72"})
	u := shownUnit(t, p.do(Act{Do: "body", ID: "old-module"}))
	assert.True(t, u.Has("floor-kept") && u.Has("rm-mount-new") && !u.Has("floor-vinyl"))
	u = shownUnit(t, p.do(Act{Do: "body", ID: "mod-153-72"}))
	assert.True(t, u.Has("floor-vinyl") && !u.Has("floor-kept") && !u.Has("rm-mount-new"))
}
