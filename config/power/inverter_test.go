package power

import (
	"math"
	"testing"

	"boxwright/config"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A = W / (V x efficiency), worked by hand; 85 to 92 % is common practice, no source.
func TestInverterAmpsByHand(t *testing.T) {
	for _, tt := range []struct {
		reason         string
		watts, v, want float64
	}{
		{"300 W at 12.5 V and 88 %", 300, 12.5, 27.3},
		{"1,000 W", 1000, 12.5, 90.9},
		{"300 W with the engine running", 300, 14, 24.4},
		{"nothing drawn", 0, 12.5, 0},
		{"senseless power", -300, 12.5, 0},
		{"senseless voltage", 300, 0, 0},
		{"no number", math.NaN(), 12.5, 0},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			assert.InDelta(t, tt.want, float64(InverterAmps(quantityPower(tt.watts), tt.v, 0.88)), 0.05)
		})
	}
}

func TestInverterLoadByMode(t *testing.T) {
	loads := func(u *config.Unit) map[string]float64 {
		out := map[string]float64{}
		for _, m := range Budget(fixture(t), u, nil).Modes {
			out[m.Code] = float64(m.LoadA)
		}
		return out
	}
	none, plug := loads(unit("receptacle")), 300/(14*.88)
	with := loads(unit("inverter", "receptacle"))
	assert.InDelta(t, 38, none["power.scene"], 1e-9, "no inverter: the receptacle lives on the shore line")
	assert.InDelta(t, 38+2+plug, with["power.scene"], 1e-9)
	assert.InDelta(t, 42+plug, with["power.responding"], 1e-9)
	assert.InDelta(t, 40, with["power.driving"], 1e-9, "without a call nothing is in use")
	assert.InDelta(t, 2, with["power.parked"], 1e-9, "parked, the shore line feeds it")
	heated := loads(unit("heater", "inverter"))
	assert.InDelta(t, 38+2+0.2*1250/(14*.88), heated["power.scene"], 1e-9, "a fifth of the time")
	assert.InDelta(t, 42, heated["power.responding"], 1e-9)
}

func TestFactorsReplaceTheUsualValues(t *testing.T) {
	as := &config.Assumptions{Factors: map[string]float64{config.InverterShare: 92, config.OffVolts: 12,
		config.LeadUsable: 60, config.LeadExponent: 1.15}}
	s := Budget(fixture(t), unit("inverter", "receptacle"), as)
	load := 38 + 2 + 300/(12*.92)
	assert.InDelta(t, load, float64(s.Battery.LoadA), 1e-9)
	assert.InDelta(t, 60*.6*20*math.Pow(140/(load*20), 1.15), s.Battery.Minutes, 1e-9)
}

// The feed of a 3,000 W inverter: 300 A, a fuse of 400 A, 500 A for the wire. The
// largest of the table carries 475 A, so two of 1/0 are run side by side.
func TestParallelConductors(t *testing.T) {
	w := WiringOf(nil)
	c, f := w.run(config.Picked{Option: &config.Option{ID: "x", Circuit: &config.Circuit{Amps: 300, RunFt: 6}}, Qty: 1})
	require.Nil(t, f)
	assert.Equal(t, 400.0, c.FuseA)
	assert.Equal(t, "1/0", c.Gauge)
	assert.Equal(t, 2, c.Parallel)
	assert.InDelta(t, 10.75*150*12/98980, c.DropV, 1e-9, "half of the current in each")
	w.Parallel = 1
	_, f = w.run(config.Picked{Option: &config.Option{ID: "x", Circuit: &config.Circuit{Amps: 300, RunFt: 6}}, Qty: 1})
	require.NotNil(t, f)
	assert.Equal(t, "power.no-conductor", f.Code)
}

func TestChanceOfAnOverload(t *testing.T) {
	assert.InDelta(t, 0.5, chanceAbove(0, 10), 1e-6)
	assert.InDelta(t, 0.025, chanceAbove(-10, 10), 1e-6, "half of what lies outside the 95 in 100")
	assert.Equal(t, 1.0, chanceAbove(1, 0))
	assert.Equal(t, 0.0, chanceAbove(0, 0))
}
