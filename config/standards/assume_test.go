package standards

import (
	"math"
	"testing"

	"boxwright/config"
	"boxwright/config/quantity"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func mass(v float64) quantity.Mass { return quantity.Mass(v) }

func TestAssumeLimits(t *testing.T) {
	for _, tt := range []struct {
		reason  string
		set     string
		chassis string
		figure  string
		value   float64
		basis   config.Basis
	}{
		{"the payload minimum follows the type", KKK, "t2", "weight.payload", 1500, config.ReadInText},
		{"the payload minimum follows the type", KKK, "t3ad", "weight.payload", 2250, config.ReadInText},
		{"and under ASTM the rear wheels", ASTM, "t3srw", "weight.payload", 1500, config.ReadInText},
		{"recalled numbers say so", KKK, "t3", "space.headroom", 60, config.FromMemory},
		{"a number that was read goes before a stricter one that was not", KKK + "+wa", "t3", "space.headroom", 53, config.ReadInText},
		{"of two that were read the stricter", "nv+wa", "t3", "space.headroom", 60, config.ReadInText},
		{"in either order", "wa+nv", "t3", "space.headroom", 60, config.ReadInText},
		{"Indiana has a least and a most width; the most is the limit", "in", "t3", "space.width", 96, config.ReadInText},
		{"the medical load on scene", KKK, "t3", "power.medical-load", 20, config.ReadInText},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			l := Assume(tt.set, fixture(t), on(tt.chassis)).Limits[tt.figure]
			assert.Equal(t, tt.value, l.Value, tt.reason)
			assert.Equal(t, tt.basis, l.Basis, tt.reason)
			assert.NotEmpty(t, l.Source, tt.reason)
			assert.NotEmpty(t, l.Clause, tt.reason)
		})
	}
	for _, tt := range []struct{ reason, set, chassis, figure string }{
		{"front share was not read by anybody", KKK, "t3", "weight.front-share"},
		{"nor left and right", KKK, "t3", "weight.side"},
		{"no payload is built in where the purchaser sets it", Own, "t3", "weight.payload"},
		{"none was found for ASTM's additional duty", ASTM, "t3ad", "weight.payload"},
		{"facts of the chassis are judged, not handed out", KKK, "t1", "chassis.gvwr"},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			_, there := Assume(tt.set, fixture(t), on(tt.chassis)).Limits[tt.figure]
			assert.False(t, there, tt.reason)
		})
	}
}

func TestAssumePeople(t *testing.T) {
	heavy := on("t3")
	heavy.OccupantLb, heavy.PatientLb = 250, 300
	bad := on("t3")
	bad.OccupantLb, bad.PatientLb, bad.PayloadLb = mass(math.NaN()), mass(math.Inf(1)), -5
	for _, tt := range []struct {
		reason   string
		set      string
		unit     *config.Unit
		occupant float64
		basis    config.Basis
	}{
		{"KKK's form, recalled", KKK, on("t3"), 175, config.FromMemory},
		{"federal where the set is silent", ASTM, on("t3"), 150, config.ReadInText},
		{"an add-on leaves the base set's", KKK + "+nv", on("t3"), 175, config.FromMemory},
		{"the unit's own wins", KKK, heavy, 250, config.Purchaser},
		{"what is no mass is not taken", KKK, bad, 175, config.FromMemory},
		{"a set nobody knows", "moon", on("t3"), 150, config.ReadInText},
		{"no unit", KKK, nil, 175, config.FromMemory},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			as := Assume(tt.set, fixture(t), tt.unit)
			assert.Equal(t, tt.occupant, as.OccupantLb.Value, tt.reason)
			assert.Equal(t, tt.basis, as.OccupantLb.Basis, tt.reason)
			assert.Positive(t, as.PatientLb.Value, tt.reason)
			assert.False(t, math.IsInf(as.PatientLb.Value, 0), tt.reason)
		})
	}
	as := Assume(KKK, fixture(t), bad)
	assert.Equal(t, 1750.0, as.Limits["weight.payload"].Value, "a negative payload is no wish")
}

func TestOwnValuesWin(t *testing.T) {
	u := on("t3")
	u.PayloadLb = 2000
	u.Own = []config.OwnLimit{{Figure: "space.headroom", Value: 66}, {Figure: "space.no-such", Value: 1},
		{Figure: "weight.front-share", Value: 30}, {Figure: "weight.side", Value: math.NaN()}}
	as := Assume(KKK, fixture(t), u)
	for figure, want := range map[string]float64{"weight.payload": 2000, "space.headroom": 66,
		"weight.front-share": 30} {
		t.Run(figure, func(t *testing.T) {
			assert.Equal(t, want, as.Limits[figure].Value, figure)
			assert.Equal(t, config.Purchaser, as.Limits[figure].Basis, figure)
			assert.Equal(t, config.AtLeast, as.Limits[figure].Sense, figure)
		})
	}
	assert.NotContains(t, as.Limits, "space.no-such")
	assert.NotContains(t, as.Limits, "weight.side")
}

func TestDatedRows(t *testing.T) {
	for _, tt := range []struct {
		reason string
		on     config.Date
		value  float64
		basis  config.Basis
	}{
		{"no date takes the newest", config.Date{}, 1750, config.ReadInText},
		{"the day revision F begins", day(2007, 8, 1), 1750, config.ReadInText},
		{"the day before, revision E by rear wheels", day(2007, 7, 31), 1500, config.FromMemory},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			u := on("t3srw")
			u.OrderOn = tt.on
			l := Assume(KKK, fixture(t), u).Limits["weight.payload"]
			assert.Equal(t, tt.value, l.Value, tt.reason)
			assert.Equal(t, tt.basis, l.Basis, tt.reason)
		})
	}
	u := on("t3srw")
	u.OrderOn = day(1990, 1, 1)
	assert.NotContains(t, Assume(KKK, fixture(t), u).Limits, "weight.payload",
		"before revision E the table has nothing")
}

func TestJoinAndSplit(t *testing.T) {
	assert.Equal(t, "kkk-a-1822f+nv+wa", Join("wa", KKK, "nv", "moon"))
	assert.Empty(t, Join())
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.StringMatching(`[a-z+0-9-]{0,40}`).Draw(rt, "text")
		chosen, unknown := Split(text)
		assert.LessOrEqual(rt, len(chosen)+len(unknown), maxSets)
		var ids []string
		for _, s := range chosen {
			ids = append(ids, s.ID)
		}
		again, none := Split(Join(ids...))
		assert.Len(rt, again, len(chosen))
		if len(chosen) > 0 {
			assert.Empty(rt, none)
		}
	})
}

// Adding a set never loosens what was read, and never changes a limit that
// was read into one that was not.
func TestAddingASetNeverLoosens(t *testing.T) {
	cat := fixture(t)
	var ids []string
	for _, s := range Sets() {
		ids = append(ids, s.ID)
	}
	rapid.Check(t, func(rt *rapid.T) {
		few := rapid.SliceOfNDistinct(rapid.SampledFrom(ids), 1, 4, rapid.ID[string]).Draw(rt, "sets")
		more := append([]string{rapid.SampledFrom(ids).Draw(rt, "another")}, few...)
		u := on(rapid.SampledFrom([]string{"t1", "t1ad", "t2", "t3", "t3srw", "t3ad"}).Draw(rt, "chassis"))
		was, is := Assume(Join(few...), cat, u).Limits, Assume(Join(more...), cat, u).Limits
		for code, a := range was {
			b, there := is[code]
			assert.True(rt, there, code)
			assert.False(rt, a.Basis == config.ReadInText && better(a, b), "%s: %v became %v", code, a, b)
		}
	})
}
