package power

import (
	"math"
	"slices"
	"strings"
	"testing"

	"boxwright/config"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestCircuitSchedule(t *testing.T) {
	u := unit("ac", "lightbar")
	u.Set(config.Pick{Option: "scene-light", Qty: 2})
	runs, findings := Circuits(fixture(t), u, WiringOf(nil))
	require.Empty(t, findings)
	var numbers []string
	for _, r := range runs {
		numbers = append(numbers, r.Number+" "+r.Function)
	}
	assert.Equal(t, []string{"101 MODULE A/C", "102 FRONT LIGHT BAR", "103-1 SCENE LIGHT", "103-2 SCENE LIGHT"},
		numbers)

	ac := runs[0]
	assert.Equal(t, 40.0, ac.FuseA, "1.25 x 30 = 37.5, next size 40")
	assert.InDelta(t, 10.75*30*36/1.2, ac.NeedCM, 1e-9)
	assert.Equal(t, "8", ac.Gauge, "12 carries 1.25 x 40 A, but 9,675 CM is more than SAE 10 with 9,343")
	assert.Equal(t, "voltage drop", ac.Decided)
	w := WiringOf(nil)
	w.Areas = AWG
	runs, _ = Circuits(fixture(t), u, w)
	assert.Equal(t, "10", runs[0].Gauge, "AWG 10 has 10,380: the area table decides")
}

func TestScheduleNumbersStayWithTheCircuit(t *testing.T) {
	one, _ := Circuits(fixture(t), unit("lightbar"), WiringOf(nil))
	two, _ := Circuits(fixture(t), unit("ac", "lightbar"), WiringOf(nil))
	assert.Equal(t, one[0], two[1], "what else a unit holds must not renumber a wire")
}

// Two outlets on their own circuits have a wire, a fuse and a number each.
func TestRunsAlikeAreEachOnTheSchedule(t *testing.T) {
	cat := fixture(t)
	cat.OptionByID("lightbar").Circuit.Count = 2
	u := unit("lightbar")
	list, _ := Circuits(cat, u, WiringOf(nil))
	require.Len(t, list, 2)
	assert.Equal(t, list[0].Number, strings.TrimSuffix(list[1].Number, "-2")+"-1")
	assert.Equal(t, list[0].FuseA, list[1].FuseA)
	u.Picks[0].Qty = 2
	list, _ = Circuits(cat, u, WiringOf(nil))
	assert.Len(t, list, 4, "of each of two")
}

func TestCircuitWithoutAnswer(t *testing.T) {
	for _, tt := range []struct {
		reason string
		amps   float64
		ft     float64
		code   string
	}{
		{"no current", 0, 10, "power.circuit-unsized"},
		{"no length", 10, 0, "power.circuit-unsized"},
		{"not a number", math.NaN(), 10, "power.circuit-unsized"},
		{"a load no fuse serves", 900, 5, "power.no-fuse"},
		{"a run no wire serves", 390, 500, "power.no-conductor"},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			w := WiringOf(nil)
			c, f := w.run(config.Picked{Option: &config.Option{ID: "x",
				Circuit: &config.Circuit{Amps: quantityCurrent(tt.amps), RunFt: tt.ft}}, Qty: 1})
			require.NotNil(t, f, tt.reason)
			assert.Equal(t, tt.code, f.Code, tt.reason)
			assert.Equal(t, config.Warn, f.Severity, "sizes from memory never stop a unit")
			assert.Empty(t, c.Gauge, tt.reason)
		})
	}
}

// Whatever is sized keeps the 125 % rules and its drop, by both area tables.
func TestSizedCircuitsKeepTheRules(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		w := WiringOf(nil)
		if rapid.Bool().Draw(rt, "awg") {
			w.Areas = AWG
		}
		amps, ft := rapid.Float64Range(0.1, 250).Draw(rt, "amps"), rapid.Float64Range(1, 60).Draw(rt, "ft")
		circuit := config.Circuit{Amps: quantityCurrent(amps), RunFt: ft, Critical: rapid.Bool().Draw(rt, "critical")}
		c, f := w.run(config.Picked{Option: &config.Option{ID: "x", Circuit: &circuit}, Qty: 1})
		if f != nil {
			assert.Contains(rt, []string{"power.no-conductor", "power.no-fuse"}, f.Code)
			return
		}
		g := w.Areas.Rows[slices.IndexFunc(w.Areas.Rows, func(a Area) bool { return a.Gauge.String() == c.Gauge })].Gauge
		assert.GreaterOrEqual(rt, c.FuseA, 1.25*amps)
		assert.GreaterOrEqual(rt, w.Ampacity[g]*float64(c.Parallel), 1.25*c.FuseA)
		assert.LessOrEqual(rt, c.DropPct, c.LimitPct*(1+1e-12))
		assert.InDelta(rt, c.DropV, 10.75*amps*2*ft/must(w.Areas.Area(g)).CircMil/float64(c.Parallel), 1e-9)
	})
}

func TestGaugeText(t *testing.T) {
	for text, g := range map[string]Gauge{"18": 18, "10": 10, "2": 2, "1": 1, "1/0": 0, "2/0": -1, "3/0": -2, "4/0": -3} {
		assert.Equal(t, text, g.String())
	}
}
