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

func TestNoBattery(t *testing.T) {
	c := small()
	c.Chassis[0].Supply.BatteryAh = 0
	require.Empty(t, c.Prepare())
	s := Budget(c, unit(), nil)
	assert.Contains(t, codes(&s.Report), "power.no-battery")
	_, ok := s.Figure("power.battery-minutes")
	assert.False(t, ok, "nothing is better than a number out of nothing")
}
