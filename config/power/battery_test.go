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

func quantityCurrent(v float64) quantity.Current { return quantity.Current(v) }

func quantityPower(v float64) quantity.Power { return quantity.Power(v) }

func must[T any](v T, ok bool) T {
	if !ok {
		panic("not there")
	}
	return v
}

// No published worked example was at hand; these follow from the law itself.
func TestPeukert(t *testing.T) {
	for _, tt := range []struct {
		reason     string
		ah, amps   float64
		k, want    float64
		tolerance  float64
		mustReject bool
	}{
		{reason: "at the 20-hour current the exponent has no say", ah: 200, amps: 10, k: 1.3, want: 20},
		{reason: "an ideal battery gives its capacity", ah: 200, amps: 40, k: 1, want: 5},
		{reason: "20 x (200/800)^1.2", ah: 200, amps: 40, k: 1.2, want: 20 * math.Pow(0.25, 1.2), tolerance: 1e-12},
		{reason: "below the rated current no gain is counted", ah: 200, amps: 2, k: 1.2, want: 100},
		{reason: "a battery of 0 Ah", ah: 0, amps: 10, k: 1.2, mustReject: true},
		{reason: "a negative battery", ah: -100, amps: 10, k: 1.2, mustReject: true},
		{reason: "no battery number", ah: math.NaN(), amps: 10, k: 1.2, mustReject: true},
		{reason: "no load lasts for ever, which is no answer", ah: 100, amps: 0, k: 1.2, mustReject: true},
		{reason: "an exponent below one", ah: 100, amps: 10, k: 0.9, mustReject: true},
		{reason: "an endless load", ah: 100, amps: math.Inf(1), k: 1.2, mustReject: true},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			h, err := Peukert(quantity.Charge(tt.ah), 20, quantity.Current(tt.amps), tt.k)
			if tt.mustReject {
				assert.Error(t, err, tt.reason)
				assert.Zero(t, h, tt.reason)
				return
			}
			require.NoError(t, err, tt.reason)
			assert.InDelta(t, tt.want, h, tt.tolerance+1e-12, tt.reason)
		})
	}
	_, err := Peukert(100, 0, 10, 1.2)
	assert.Error(t, err, "a rating without hours")
}

func TestPeukertFallsWithLoad(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		ah := quantity.Charge(rapid.Float64Range(1, 1000).Draw(rt, "ah"))
		a := rapid.Float64Range(0.1, 500).Draw(rt, "a")
		more := rapid.Float64Range(1.001, 5).Draw(rt, "more")
		k := rapid.Float64Range(1, 1.6).Draw(rt, "k")
		long, err1 := Peukert(ah, 20, quantity.Current(a), k)
		short, err2 := Peukert(ah, 20, quantity.Current(a*more), k)
		require.NoError(rt, err1)
		require.NoError(rt, err2)
		assert.Less(rt, short, long)
		assert.LessOrEqual(rt, long*a, float64(ah)*(1+1e-12), "never more than the stated capacity")
	})
}

func TestBatteryMinutesAndShedding(t *testing.T) {
	u := unit("ac", "lightbar")
	u.Set(config.Pick{Option: "battery-agm", Qty: 2})
	u.Set(config.Pick{Option: "scene-light", Qty: 2})
	s := Budget(fixture(t), u, nil)
	assert.Equal(t, quantity.Charge(200), s.Battery.AmpHours,
		"two replacing batteries of 100 Ah, the chassis' 140 gone")
	assert.Equal(t, quantity.Current(38+30+20+18), s.Battery.LoadA)
	assert.InDelta(t, 60*0.5*20*math.Pow(200.0/(106*20), 1.2), s.Battery.Minutes, 1e-9)
	require.Len(t, s.Shed, 2)
	assert.Equal(t, 1, s.Shed[0].Order)
	assert.Len(t, s.Shed[0].Items, 2, "light bar and scene lights go together")
	assert.Equal(t, quantity.Current(68), s.Shed[0].LeftA)
	assert.Equal(t, quantity.Current(38), s.Shed[1].LeftA)
	assert.Greater(t, s.Shed[1].Minutes, s.Shed[0].Minutes)
	f, ok := s.Figure("power.battery-minutes")
	require.True(t, ok)
	assert.Less(t, f.Low, f.Value)
	assert.Less(t, f.Value, f.High)
}

// With everything shed that draws anything, nothing is left on.
func TestNothingIsLeftWhenAllIsShed(t *testing.T) {
	c := small()
	c.Chassis[0].Load.SceneA = 0
	require.Empty(t, c.Prepare())
	s := Budget(c, unit("ac", "lightbar"), nil)
	require.Len(t, s.Shed, 2)
	assert.Zero(t, s.Shed[1].LeftA)
	assert.Zero(t, s.Shed[1].Minutes, "there is no load to carry")
}

// A unit whose loads have the places 3 and 7 of the catalogue's order sheds in steps 1 and
// 2, in every mode alike.
func TestSheddingIsCountedWithoutGaps(t *testing.T) {
	cat := fixture(t)
	cat.OptionByID("lightbar").Load.Shed = 3
	cat.OptionByID("ac").Load.Shed = 7
	s := Budget(cat, unit("ac", "lightbar"), nil)
	require.Len(t, s.Shed, 2)
	for i, step := range s.Shed {
		assert.Equal(t, i+1, step.Order)
	}
	assert.Equal(t, "lightbar", s.Shed[0].Items[0].ID)
	for _, m := range s.Modes {
		for _, it := range m.Items {
			if want := map[string]int{"lightbar": 1, "ac": 2}[it.ID]; want > 0 {
				assert.Equal(t, want, it.Shed, "%s, %s", m.Code, it.ID)
			}
		}
	}
}

// What must run on is not shed with the inverter that other loads go down with, and an
// inverter that alone feeds it stays on.
func TestWhatMustRunOnIsNeverShed(t *testing.T) {
	for _, c := range []struct {
		reason string
		second bool // an inverter of its own, which is not shed
		want   map[string]int
	}{
		{"one inverter feeds both: it stays on", false,
			map[string]int{"inverter": 0, "heater": 0, "receptacle": 0}},
		{"with an inverter of its own the other is shed with what it feeds", true,
			map[string]int{"inverter": 1, "heater": 0, "receptacle": 1}},
	} {
		t.Run(c.reason, func(t *testing.T) {
			cat := fixture(t)
			cat.OptionByID("inverter").Load.Shed = 5
			cat.OptionByID("heater").Load.Kept = true
			picks := []string{"heater", "inverter", "receptacle"}
			if c.second {
				cat.OptionByID("charger").Supply, cat.OptionByID("charger").Tags = &config.Supply{InverterW: 1000}, nil
				picks = append([]string{"charger"}, picks...)
			}
			s := Budget(cat, unit(picks...), nil)
			for _, it := range s.Modes[len(s.Modes)-1].Items {
				if want, is := c.want[it.ID]; is {
					assert.Equal(t, want, it.Shed, it.Label)
				}
			}
		})
	}
}

// How long what must run on is carried is as unsure as how long everything is.
func TestWhatMustRunOnLastsWithinARange(t *testing.T) {
	cat := fixture(t)
	cat.OptionByID("heater").Load.Kept = true
	s := Budget(cat, unit("heater", "inverter"), nil)
	kept, ok := s.Figure("power.kept-minutes")
	require.True(t, ok)
	all, _ := s.Figure("power.battery-minutes")
	assert.Less(t, kept.Low, kept.Value)
	assert.Less(t, kept.Value, kept.High)
	assert.InDelta(t, all.Low/all.Value, kept.Low/kept.Value, .05, "the battery's doubt is most of it")
}

func TestBatteriesByTheirJob(t *testing.T) {
	minutes := func(ah, usable, load, k float64) float64 { return 60 * usable * 20 * math.Pow(ah/(load*20), k) }
	for _, tt := range []struct {
		reason  string
		change  func(*config.Catalogue)
		picks   []string
		ah      float64
		kept    float64
		load    float64
		minutes float64
	}{
		{"the chassis' own start the engine too: half of them, exponent 1.2", nil, nil, 140, 0, 38,
			minutes(140, .5, 38, 1.2)},
		{"a house bank feeds the module alone, and its depth and exponent are lithium's", nil, []string{"house-lithium"},
			200, 140, 38, minutes(200, .85, 38, 1.05)},
		{"batteries said to start the engine feed nothing else", func(c *config.Catalogue) {
			c.Chassis[0].Supply.Job = "starting"
		}, nil, 0, 140, 38, 0},
		{"ignition and fuel pump stand still with the engine", func(c *config.Catalogue) {
			c.Chassis[0].Load.EngineA = 15
		}, nil, 140, 0, 23, minutes(140, .5, 23, 1.2)},
		{"a resistive load of 38 A at 14 V draws 33.9 A at 12.5 V", func(c *config.Catalogue) {
			c.Chassis[0].Load.Behaves = "resistive"
		}, nil, 140, 0, 38 * 12.5 / 14, minutes(140, .5, 38*12.5/14, 1.2)},
		{"one of constant power draws 42.6 A", func(c *config.Catalogue) {
			c.Chassis[0].Load.Behaves = "power"
		}, nil, 140, 0, 38 * 14 / 12.5, minutes(140, .5, 38*14/12.5, 1.2)},
		{"stated at 12.8 V it draws 38.9 A", func(c *config.Catalogue) {
			c.Chassis[0].Load.Behaves, c.Chassis[0].Load.AtV = "power", 12.8
		}, nil, 140, 0, 38 * 12.8 / 12.5, minutes(140, .5, 38*12.8/12.5, 1.2)},
		{"300 W through the inverter are 27.3 A at 12.5 V and 88 %, and 2 A keep it ready", nil,
			[]string{"inverter", "receptacle"}, 140, 0, 38 + 2 + 300/(12.5*.88), minutes(140, .5, 40+300/(12.5*.88),
				1.2)},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			c := small()
			if tt.change != nil {
				tt.change(c)
			}
			require.Empty(t, c.Prepare())
			s := Budget(c, unit(tt.picks...), nil)
			assert.Equal(t, quantity.Charge(tt.ah), s.Battery.AmpHours)
			assert.Equal(t, quantity.Charge(tt.kept), s.Battery.Kept)
			assert.InDelta(t, tt.load, float64(s.Battery.LoadA), 1e-9)
			assert.InDelta(t, tt.minutes, s.Battery.Minutes, 1e-9)
			if tt.ah == 0 {
				assert.Contains(t, codes(&s.Report), "power.no-battery")
			}
		})
	}
}

func TestChargerAgainstTheParkedLoad(t *testing.T) {
	c := small()
	c.Chassis[0].Load.ParkedA = 46
	require.Empty(t, c.Prepare())
	f, ok := Budget(c, unit("charger"), nil).Figure("power.charger")
	require.True(t, ok)
	assert.InDelta(t, -1, f.Margin(), 1e-9, "46 A parked, 45 A from the charger")
	assert.Contains(t, codes(&Budget(c, unit("charger"), nil).Report), "power.charger")
	assert.NotContains(t, codes(&Budget(fixture(t), unit("charger"), nil).Report), "power.charger", "2 A parked")
	assert.Contains(t, codes(&Budget(fixture(t), unit(), nil).Report), "power.charger", "2 A parked, no charger")
}

func TestNoBattery(t *testing.T) {
	c := small()
	c.Chassis[0].Supply.BatteryAh = 0
	require.Empty(t, c.Prepare())
	s := Budget(c, unit(), nil)
	assert.Contains(t, codes(&s.Report), "power.no-battery")
	_, ok := s.Figure("power.battery-minutes")
	assert.False(t, ok, "nothing is better than a number out of nothing")
}
