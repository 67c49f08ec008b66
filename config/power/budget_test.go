package power

import (
	"math"
	"testing"

	"boxwright/config"
	"boxwright/config/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func medical() *config.Assumptions {
	return &config.Assumptions{Limits: map[string]config.Limit{CodeMedical: {Value: 20, Sense: config.AtLeast,
		Source: "test", Basis: config.ReadInText}}}
}

func TestBudgetFigures(t *testing.T) {
	for _, tt := range []struct {
		reason string
		picks  []string
		as     *config.Assumptions
		code   string
		value  float64
		limit  float64
	}{
		{"chassis 38 and light bar 20 against the chassis' 175 at high idle", []string{"lightbar"}, nil, "power.scene", 58, 175},
		{"the rule set's medical load comes on top", []string{"lightbar"}, medical(), "power.scene", 78, 175},
		{"a replacing alternator takes the chassis' place", []string{"alternator-big", "lightbar"}, nil, "power.scene", 58, 270},
		{"a replacing battery leaves the alternator alone", []string{"battery-agm"}, nil, "power.scene", 38, 175},
		{"an alternator that states only its idle output gives that at high idle too", []string{"alternator-idle"}, nil, "power.scene", 38, 190},
		{"a second alternator adds", []string{"alternator-second"}, nil, "power.scene", 38, 275},
		{"remaining capacity is output less scene load", []string{"alternator-big", "lightbar"}, medical(), "power.remaining", 192, 0},
		{"the medical load is no load of the road", []string{"ac", "lightbar"}, medical(), "power.responding", 97, 175},
		{"at low idle the hot idle output is the limit", []string{"lightbar"}, nil, "power.idle", 58, 110},
		{"1,000 + 1,250 W at 125 V is 18 A; 80 % of 20 A is 16 A", []string{"charger", "heater"}, nil, "power.shore", 18, 16},
		{"the breaker itself opens at 20 A", []string{"charger", "heater"}, nil, "power.inlet", 18, 20},
		{"a replacing inlet of 30 A", []string{"charger", "heater", "inlet-30"}, nil, "power.shore", 18, 24},
		{"a charger never runs from the inverter", []string{"charger", "heater", "inverter"}, nil, "power.inverter", 1250, 1000},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			f, ok := Budget(fixture(t), unit(tt.picks...), tt.as).Figure(tt.code)
			require.True(t, ok, tt.reason)
			assert.InDelta(t, tt.value, f.Value, 1e-9, tt.reason)
			assert.InDelta(t, tt.limit, f.Limit, 1e-9, tt.reason)
			assert.LessOrEqual(t, f.Low, f.Value, tt.reason)
			assert.LessOrEqual(t, f.Value, f.High, tt.reason)
		})
	}
}

func TestBudgetFindings(t *testing.T) {
	lights := unit("ac", "lightbar")
	lights.Set(config.Pick{Option: "scene-light", Qty: 8})
	bright := unit("lightbar")
	bright.Set(config.Pick{Option: "scene-light", Qty: 12})
	heaters := unit("charger")
	heaters.Set(config.Pick{Option: "heater", Qty: 2})
	for _, tt := range []struct {
		reason string
		unit   *config.Unit
		code   string
		sev    config.Severity
	}{
		{"38+30+20+72 = 160 A is within high idle, above idle's 110", lights, "power.idle", config.Note},
		{"of 175 A it leaves fewer than the loads may differ by", bright, "power.remaining.near", config.Warn},
		{"3,500 W is 28 A on a 20 A inlet", heaters, "power.inlet", config.Stop},
		{"18 A is over 80 % of 20 A only", unit("charger", "heater"), "power.shore", config.Warn},
		{"1,250 W on a 1,000 W inverter", unit("heater", "inverter"), "power.inverter", config.Warn},
		{"two alternators in one place", unit("alternator-big", "alternator-huge"), "power.two-alternators", config.Stop},
		{"an option of another edition", unit("gone"), "power.unknown-option", config.Warn},
		{"no chassis", &config.Unit{Chassis: "x"}, "power.no-chassis", config.Stop},
		{"no unit at all", nil, "power.no-unit", config.Stop},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			found := false
			for _, f := range Budget(fixture(t), tt.unit, nil).Findings {
				if f.Code == tt.code {
					found = true
					assert.Equal(t, tt.sev, f.Severity, tt.reason)
					assert.NotEmpty(t, f.Remedy, tt.reason)
				}
			}
			assert.True(t, found, tt.reason)
		})
	}
	heavy := medical()
	s := Budget(fixture(t), lights, heavy)
	assert.Contains(t, codes(&s.Report), "power.scene", "38+20+30+20+72 = 180 A is over 175 A")
}

// The rules engine and the budget must never disagree about a margin.
func TestLimitsAgreeWithBudget(t *testing.T) {
	cat := fixture(t)
	rapid.Check(t, func(rt *rapid.T) {
		u := unit()
		for _, o := range cat.Options {
			if n := rapid.IntRange(0, max(o.MaxQty, 1)).Draw(rt, o.ID); n > 0 {
				u.Set(config.Pick{Option: o.ID, Qty: n})
			}
		}
		as := rapid.SampledFrom([]*config.Assumptions{nil, medical()}).Draw(rt, "as")
		sheet, limits := Budget(cat, u, as), Limits(cat, u, as)
		margins := map[string]float64{}
		for _, l := range limits {
			sum := l.Base
			for _, p := range u.Picks {
				sum += l.Per[p.Option] * float64(p.Qty)
			}
			if least, seen := margins[l.Code]; !seen || l.Limit-sum < least {
				margins[l.Code] = l.Limit - sum
			}
		}
		require.Len(rt, margins, 4)
		for code, margin := range margins {
			f, ok := sheet.Figure(code)
			require.True(rt, ok)
			assert.InDelta(rt, f.Margin(), margin, 1e-9, code)
		}
	})
}

// Adding a load never raises what is left; adding output never lowers it.
func TestBudgetMonotone(t *testing.T) {
	cat := fixture(t)
	rapid.Check(t, func(rt *rapid.T) {
		u := unit("ac")
		n := rapid.IntRange(1, 8).Draw(rt, "lights")
		before, _ := Budget(cat, u, nil).Figure("power.remaining")
		u.Set(config.Pick{Option: "scene-light", Qty: n})
		after, _ := Budget(cat, u, nil).Figure("power.remaining")
		assert.Less(rt, after.Value, before.Value)
		u.Set(config.Pick{Option: "alternator-second", Qty: 1})
		more, _ := Budget(cat, u, nil).Figure("power.remaining")
		assert.Greater(rt, more.Value, after.Value)
	})
}

func TestHostileNumbersNeverSpread(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -5, 0, 1e300} {
		c := small()
		ch := &c.Chassis[0]
		ch.Load.SceneA, ch.Supply.HotIdleA, ch.Supply.BatteryAh, ch.Supply.ShoreA = quantity.Current(bad),
			quantity.Current(bad), quantity.Charge(bad), quantity.Current(bad)
		c.Options[0].Load.SceneA = quantity.Current(bad)
		c.Options[0].Circuit.Amps, c.Options[0].Circuit.RunFt = quantity.Current(bad), bad
		c.Prepare() // fills the index; its problems are another test's
		s := Budget(c, unit("ac", "battery-agm", "lightbar"), nil)
		if bad != 0 {
			assert.Contains(t, codes(&s.Report), "power.bad-number", "%v must be named", bad)
		}
		for _, f := range s.Figures {
			for _, v := range []float64{f.Value, f.Low, f.High, f.Limit} {
				assert.True(t, finite(v), "%v gave %s = %v", bad, f.Code, v)
			}
		}
		for _, l := range Limits(c, unit(), nil) {
			for id, v := range l.Per {
				assert.True(t, finite(v), "%v gave %s per %s = %v", bad, l.Code, id, v)
			}
		}
	}
}
