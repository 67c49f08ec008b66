package config_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
)

// withExisting is the small catalogue with a body that stands for an existing
// module, and a step that such a module has already.
func withExisting(t *testing.T) *config.Catalogue {
	t.Helper()
	c, err := config.Read([]byte(strings.NewReplacer(
		`"bodies": [`, `"bodies": [{"id": "old", "label": "Existing module", "spec": "", "kind": "module", "existing": true, "length_in": 150, "width_in": 95, "height_in": 76, "headroom_in": 72, "aisle_in": 18,
			"mass": {"lb": 4500, "tol_lb": 400, "zone": "module-mid", "z_in": 30},
			"compartments": [{"id": "o1", "label": "Rear", "side": "street", "x_in": 120, "y_in": -37, "z_in": 25, "width_in": 22, "depth_in": 20, "height_in": 66, "limit_lb": 0}], "work": []},`,
		`"spec": "", "mass": {"lb": 40`, `"spec": "", "standard": true, "mass": {"lb": 40`,
		`"options": [`,
		`"options": [{"id": "step-kept", "group": "steps", "label": "Step as it is", "spec": "", "remount": true, "mass": {"lb": 0}},`,
	).Replace(small)))
	require.NoError(t, err)
	return c
}

func TestMeasuredFiguresStandForUsualOnes(t *testing.T) {
	c := withExisting(t)
	u := &config.Unit{Chassis: "cut", Body: "old"}
	assert.Equal(t, c.BodyByID("old"), c.BodyOf(u), "nothing measured: the usual figures")

	u.Existing = &config.Existing{LengthIn: 120, HeadroomIn: 68, MassLb: 3900, XIn: 58, YIn: -2, ZIn: 28}
	b := c.BodyOf(u)
	assert.EqualValues(t, 120, b.LengthIn)
	assert.EqualValues(t, 95, b.WidthIn, "not measured")
	assert.Equal(t, config.Mass{Lb: 3900, Zone: config.ZoneModule, XIn: 58, YIn: -2, ZIn: 28}, b.Mass,
		"the usual tolerance went with the usual mass")
	assert.EqualValues(t, 96, b.Compartments[0].XIn, "spread over the measured length")
	assert.EqualValues(t, 120, c.BodyByID("old").Compartments[0].XIn, "the catalogue itself is untouched")
	assert.EqualValues(t, 150, c.BodyByID("old").LengthIn)

	u.Body = "mod"
	assert.Equal(t, c.BodyByID("mod"), c.BodyOf(u), "a new module is as the catalogue has it, whatever was measured "+
		"elsewhere")
	remount, e := c.Measured(u)
	assert.False(t, remount)
	assert.Nil(t, e)
}

func TestCatalogueAsARemountSeesIt(t *testing.T) {
	c := withExisting(t)
	u := &config.Unit{Chassis: "cut", Body: "old", Existing: &config.Existing{LengthIn: 120}}
	m := c.For(u)
	assert.EqualValues(t, 120, m.BodyByID("old").LengthIn, "rules judge the measured length")
	assert.True(t, m.OptionByID("step-kept").Standard, "what the module has stays")
	assert.False(t, m.OptionByID("step").Standard)
	assert.Equal(t, c.Hash(), m.Hash(), "it is the same edition")
	assert.True(t, c.OptionByID("step").Standard, "the catalogue itself is untouched")
	assert.Equal(t, m.BodyByID("old"), m.For(u).BodyByID("old"), "seen so twice is the same")
	u.Body = "mod"
	assert.Same(t, c, c.For(u))
}

func TestStrangeMeasurementsAreNamed(t *testing.T) {
	c := withExisting(t)
	for _, s := range []struct {
		reason string
		e      config.Existing
		where  string // empty: nothing is wrong
	}{
		{"nothing measured yet", config.Existing{}, ""},
		{"a usual module", config.Existing{Built: 2012, LengthIn: 146, MassLb: 4300, TolLb: 40, XIn: 70, YIn: -3, ZIn: 31, WarrantyYears: new(8)}, ""},
		{"a mass below zero", config.Existing{MassLb: -4300}, "existing mass_lb"},
		{"a mass that is no number", config.Existing{MassLb: quantity.Mass(math.NaN())}, "existing mass_lb"},
		{"feet typed for inches", config.Existing{LengthIn: 12}, "existing length_in"},
		{"a length without end", config.Existing{LengthIn: quantity.Length(math.Inf(1))}, "existing length_in"},
		{"a center behind the rear wall", config.Existing{LengthIn: 120, XIn: 140}, "existing x_in"},
		{"a year of another age", config.Existing{Built: 19}, "existing built"},
		{"a warranty of a century", config.Existing{WarrantyYears: new(100)}, "existing warranty_years"},
		{"a novel for a name", config.Existing{Maker: strings.Repeat("x", config.MaxExistingText+1)}, "existing maker"},
	} {
		t.Run(s.reason, func(t *testing.T) {
			u := &config.Unit{Chassis: "cut", Body: "old", Existing: &s.e}
			ps := c.CheckUnit(u)
			if s.where == "" {
				assert.Empty(t, ps, s.reason)
			} else if assert.NotEmpty(t, ps, s.reason) {
				assert.Equal(t, s.where, ps[0].Where, s.reason)
				assert.True(t, strings.HasPrefix(ps[0].Code, "unit."), s.reason)
			}
		})
	}
}

func TestMeasurementsAreCloned(t *testing.T) {
	u := config.Unit{Existing: &config.Existing{MassLb: 4000}}
	v := u.Clone()
	v.Existing.MassLb = 5000
	assert.EqualValues(t, 4000, u.Existing.MassLb)
}

func TestStepsOfANewAndAnExistingModule(t *testing.T) {
	fresh, old, van := &config.Body{Kind: "module"}, &config.Body{Kind: "module", Existing: true},
		&config.Body{Kind: "van"}
	for only, want := range map[string][3]bool{"": {true, true, true}, "module": {true, true, false},
		"van": {false, false, true}, "new": {true, false, false}, "existing": {false, true, false}} {
		t.Run(only, func(t *testing.T) {
			a := config.Activity{Only: only}
			assert.Equal(t, want, [3]bool{a.For(fresh), a.For(old), a.For(van)}, "a step for %q alone", only)
		})
	}
}
