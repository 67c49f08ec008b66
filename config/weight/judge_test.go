package weight

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
)

func TestSeverityFollowsTheBasis(t *testing.T) {
	cat := prepared(t)
	payload := Weigh(cat, typical(), people(175)).Figures
	var value float64
	for _, f := range payload {
		if f.Code == "weight.payload" {
			value = f.Value
		}
	}
	for _, c := range []struct {
		minimum float64
		basis   config.Basis
		code    string
		want    config.Severity
		reason  string
	}{
		{value + 1, config.ReadInText, "weight.payload.short", config.Stop, "a rule that was read, missed by a pound"},
		{value + 1, config.Purchaser, "weight.payload.short", config.Stop, "the purchaser's own minimum"},
		{value + 1000, config.FromMemory, "weight.payload.short", config.Note, "from memory never stops a unit"},
		{value + 1000, config.CommonPractice, "weight.payload.short", config.Warn, "nor does common practice"},
		{value - 1, config.ReadInText, "weight.payload.near", config.Warn, "kept, but not surely"},
		{value - 1000, config.ReadInText, "", "", "kept by far"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			as := people(175)
			as.Limits["weight.payload"] = config.Limit{Value: c.minimum, Sense: config.AtLeast, Source: "test",
				Basis: c.basis}
			s := Weigh(cat, typical(), as)
			if c.code == "" {
				assert.Nil(t, finding(s, "weight.payload.short"), c.reason)
				assert.Nil(t, finding(s, "weight.payload.near"), c.reason)
				return
			}
			f := finding(s, c.code)
			require.NotNil(t, f, c.reason)
			assert.Equal(t, c.want, f.Severity, c.reason)
			assert.Equal(t, c.minimum, f.Figure.Limit, c.reason)
			assert.NotEmpty(t, f.Picks, c.reason)
			if strings.HasSuffix(c.code, ".near") {
				assert.Contains(t, f.Text, " lb, 1.0 lb above the limit of ", c.reason)
			}
		})
	}
}

func TestOverloads(t *testing.T) {
	for _, c := range []struct {
		spoil  func(*config.Chassis)
		code   string
		reason string
	}{
		{func(c *config.Chassis) { c.GVWRLb = 10900 }, "weight.gross.over", "GVWR"},
		{func(c *config.Chassis) { c.GAWRFrontLb = 4100 }, "weight.front-axle.over", "front GAWR"},
		{func(c *config.Chassis) { c.GAWRRearLb = 6700 }, "weight.rear-axle.over", "rear GAWR"},
		{func(c *config.Chassis) {
			c.FrontTires.LoadLb = 2050
		}, "weight.front-tires.over", "front tires below the axle's rating"},
		{func(c *config.Chassis) {
			c.RearTires.LoadLb = 1650
		}, "weight.rear-tires.over", "rear tires below the axle's rating"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			cat := fixture()
			c.spoil(&cat.Chassis[0])
			require.Empty(t, cat.Prepare())
			f := finding(Weigh(cat, typical(), people(175)), c.code)
			require.NotNil(t, f, c.reason)
			assert.Equal(t, config.Stop, f.Severity, c.reason)
			assert.Equal(t, config.Rating, f.Basis, c.reason)
			assert.Less(t, f.Figure.Margin(), 0., c.reason)
			assert.Greater(t, f.Figure.Chance, 0.5, c.reason)
		})
	}
}

func TestHeavyUnitOnTheRoad(t *testing.T) {
	cat := fixture()
	cat.Chassis[0].CurbFrontLb, cat.Chassis[0].CurbRearLb = 21000, 21000
	require.Empty(t, cat.Prepare())
	s := Weigh(cat, typical(), people(175))
	assert.NotNil(t, finding(s, "weight.road-axle.over"))
	assert.NotNil(t, finding(s, "weight.road-gross.over"))
	assert.Equal(t, config.Warn, finding(s, "weight.road-gross.over").Severity)
}

func TestOneWheelEndTooHeavy(t *testing.T) {
	cat := fixture()
	cat.Chassis[0].GAWRFrontLb = 4300
	cat.Options[0].Mass.Lb, cat.Options[0].Mass.YIn = 60, 34
	require.Empty(t, cat.Prepare())
	u := typical()
	u.Set(config.Pick{Option: "winch", Qty: 1})
	s := Weigh(cat, u, people(175))
	require.Nil(t, finding(s, "weight.front-axle.over"))
	f := finding(s, "weight.wheel.over")
	require.NotNil(t, f, "the axle holds but its right wheel does not")
	assert.Equal(t, config.Warn, f.Severity)
	assert.Contains(t, f.Where, "Right front wheel end")

	cat.Chassis[0].GAWRFrontLb = 2 * (s.Gross.Wheels[1].Lb - 0.4)
	assert.Nil(t, finding(Weigh(cat, u, people(175)), "weight.wheel.over"), "0 lb over is kept")
}

// A margin of tenths is said in tenths, and a limit without a source names its
// basis.
func TestNearMissesAreSaidPlainly(t *testing.T) {
	cat := prepared(t)
	payload := figure(t, Weigh(cat, typical(), people(175)), "weight.payload").Value
	as := people(175)
	as.Limits["weight.payload"] = config.Limit{Value: payload + 0.3, Sense: config.AtLeast, Basis: config.Purchaser}
	f := finding(Weigh(cat, typical(), as), "weight.payload.short")
	require.NotNil(t, f)
	assert.Contains(t, f.Text, "0.3 lb short of")
	assert.Contains(t, f.Text, "(set by the purchaser)")
	assert.Contains(t, f.Text, "Given how well the weights are known, the chance of missing it is 50 %")
	assert.Contains(t, f.Remedy, "0.3 lb")
}

// An axle that is over as a whole is one finding, not three.
func TestAnOverloadedAxleIsSaidOnce(t *testing.T) {
	cat := fixture()
	cat.Chassis[0].GAWRRearLb = 6000
	require.Empty(t, cat.Prepare())
	s := Weigh(cat, typical(), people(175))
	assert.NotNil(t, finding(s, "weight.rear-axle.over"))
	assert.Nil(t, finding(s, "weight.wheel.over"))
	assert.Nil(t, finding(s, "weight.rear-tires.over"))
}

// The chance of being over is that of a normal quantity; a limit at the value
// itself is even odds, one at the edge of the likely range one in forty.
func TestChance(t *testing.T) {
	cat := fixture()
	require.Empty(t, cat.Prepare())
	gross := figure(t, Weigh(cat, typical(), people(175)), "weight.gross")
	at := func(limit float64) float64 {
		cat.Chassis[0].GVWRLb = lbs(limit)
		return figure(t, Weigh(cat, typical(), people(175)), "weight.gross").Chance
	}
	assert.InDelta(t, 0.5, at(gross.Value), 1e-6)
	assert.InDelta(t, 0.025, at(gross.High), 1e-6)
	assert.InDelta(t, 0.975, at(gross.Low), 1e-6)
	assert.Equal(t, 0., chanceAbove(5, 0, 5), "a sure load at its limit is not over")
	assert.Equal(t, 1., chanceAbove(5.1, 0, 5))
}

// Likely ranges add by root sum square; pieces of one thing err together.
func TestLikelyRanges(t *testing.T) {
	cat := fixture()
	cat.Chassis[0].CurbTolLb = 60
	cat.Bodies[1].Mass.TolLb = 80
	require.Empty(t, cat.Prepare())
	u := &config.Unit{Chassis: "cutaway", Body: "van"}
	f := figure(t, Weigh(cat, u, people(175)), "weight.gross")
	assert.InDelta(t, 100, f.High-f.Value, 1e-5, "3-4-5")
	u.Picks = []config.Pick{{Option: "scene-light", Qty: 6}}
	f = figure(t, Weigh(cat, u, people(175)), "weight.gross")
	assert.InDelta(t, math.Hypot(100, 6), f.High-f.Value, 1e-5,
		"six lights of 1 lb either way are 6 lb, not the root of 6")
}

func TestSideRangeNeverGoesBelowLevel(t *testing.T) {
	cat := fixture()
	require.Empty(t, cat.Prepare())
	u := &config.Unit{Chassis: "cutaway", Body: "van"}
	f := figure(t, Weigh(cat, u, people(175)), "weight.side")
	assert.Equal(t, "Left-right difference, of gross, level", f.Label)
	assert.Zero(t, f.Low)
	// Two pounds on the right: by hand, 2 x y (front share / track + ...).
	u.Picks = picks("bench")
	f = figure(t, Weigh(cat, u, people(175)), "weight.side")
	assert.Contains(t, f.Label, "right side heavy")
}

// A lean beyond the assumed one is noted where nobody has set a limit, and stops nothing;
// what the unit assumes in its place decides then.
func TestALeanIsNotedWithoutALimit(t *testing.T) {
	cat := fixture()
	require.Empty(t, cat.Prepare())
	u := &config.Unit{Chassis: "cutaway", Body: "van", Picks: picks("bench")}
	as := people(175)
	delete(as.Factors, config.SideUsual)
	lean := func() (config.Figure, *config.Finding) {
		s := Weigh(cat, u, as)
		i := slices.IndexFunc(s.Findings, func(f config.Finding) bool {
			return strings.HasPrefix(f.Code, "weight.side.")
		})
		if i < 0 {
			return figure(t, s, "weight.side"), nil
		}
		return figure(t, s, "weight.side"), &s.Findings[i]
	}
	f, said := lean()
	require.Greater(t, f.Value, 5.0)
	assert.Equal(t, config.FromMemory, f.Basis)
	assert.True(t, f.Noted)
	require.NotNil(t, said, "the lean is not noted")
	assert.Equal(t, config.Note, said.Severity)
	assert.Contains(t, said.Text, "over the limit of 5.0 % (usual between sides; from memory)")
	assert.Contains(t, said.Remedy, "side: 100 lb moved 60 in across")
	as.Set([]config.Assumed{{Factor: config.SideUsual, Value: f.Value + 0.1}})
	f, said = lean()
	assert.Nil(t, said, "it keeps what is assumed, and a range beyond it is not noted")
	assert.Greater(t, f.High, f.Limit)
	assert.Contains(t, f.Source, "own limit")
	as.Set([]config.Assumed{{Factor: config.SideUsual, Value: f.Value - 1}})
	_, said = lean()
	assert.Equal(t, config.Note, said.Severity)
	as.Limits = map[string]config.Limit{"weight.side": {Value: 1, Sense: config.AtMost, Basis: config.Purchaser}}
	f, said = lean()
	assert.Equal(t, 1.0, f.Limit, "the purchaser's limit goes before")
	assert.Equal(t, config.Stop, said.Severity)
}

// Wheel loads of one mass by hand: 1,000 lb over the rear axle, 19 in to the
// right on a track of 76 in, puts 750 on the right and 250 on the left.
func TestWheelsByHand(t *testing.T) {
	l, r := Wheels(1000, 1000*19, 76)
	assert.Equal(t, 250., l)
	assert.Equal(t, 750., r)
	l, r = Wheels(1000, 5, 0)
	assert.Equal(t, 500., l)
	assert.Equal(t, 500., r)
}

// The front axle of a cutaway, with a winch bumper and without.
func ExampleWeigh() {
	cat := fixture()
	cat.Prepare()
	as := &config.Assumptions{OccupantLb: config.Limit{Value: 175}}
	u := &config.Unit{Chassis: "cutaway", Body: "module-168"}
	for range 2 {
		f, _ := Weigh(cat, u, as).Figure("weight.front-axle")
		fmt.Printf("%.0f lb, likely %.0f to %.0f, %.0f lb left\n", f.Value, f.Low, f.High, f.Margin())
		u.Set(config.Pick{Option: "winch", Qty: 1})
	}
	// Output:
	// 4206 lb, likely 4076 to 4335, 794 lb left
	// 4442 lb, likely 4310 to 4573, 558 lb left
}

// Full load without a list of equipment is not full: an allowance that can be set stands
// in its place, says so, and goes as soon as something is listed.
func TestAllowanceUntilEquipmentIsListed(t *testing.T) {
	cat, u := prepared(t), typical()
	u.Carried = nil
	as := people(175)
	without := Weigh(cat, u, as)
	as.Factors[config.EquipmentAllowance] = 700
	with := Weigh(cat, u, as)
	assert.InDelta(t, 700, float64(with.Gross.TotalLb-without.Gross.TotalLb), 1e-6)
	assert.Equal(t, without.Curb.TotalLb, with.Curb.TotalLb, "curb weight holds nothing loose")
	assert.NotNil(t, finding(with, "weight.equipment.allowance"))
	assert.Nil(t, finding(without, "weight.equipment.allowance"))
	f, _ := with.Figure("weight.payload-left")
	g, _ := without.Figure("weight.payload-left")
	assert.InDelta(t, 700, g.Value-f.Value, 1e-6, "the payload is judged with it")
	u.Carried = []config.Carried{{Equipment: cat.Equipment[0].ID, Qty: 1}}
	assert.Nil(t, finding(Weigh(cat, u, as), "weight.equipment.allowance"))
	for _, l := range Limits(cat, &config.Unit{Chassis: u.Chassis, Body: u.Body}, as) {
		if l.Code == "weight.gross" {
			assert.Greater(t, l.Base, float64(cat.Chassis[0].CurbFrontLb+cat.Chassis[0].CurbRearLb)+700, "limits hold it too")
		}
	}
}

// Trays that would carry more than the unit may are said to, with what they carry now.
func TestTraysRatedBeyondTheRemainingPayload(t *testing.T) {
	cat := fixture()
	cat.Bodies[0].Compartments[0].Slot, cat.Bodies[0].Compartments[1].Slot = "front", "rear"
	cat.Options = append(cat.Options, config.Option{ID: "tray", Label: "Tray", Group: "any", MaxQty: 2,
		Mass:   &config.Mass{Lb: 40, Zone: config.ZoneModule},
		Fitted: &config.Fitted{Slots: []string{"front", "rear"}, HeightIn: 3}})
	require.Empty(t, cat.Prepare())
	u := typical()
	u.Set(config.Pick{Option: "tray", Qty: 2})
	u.Carried = []config.Carried{{Equipment: "tools", Compartment: "street-rear", Qty: 2}}
	gross, _ := Weigh(cat, u, people(175)).Figure("weight.gross")
	tools := 2 * float64(cat.EquipmentByID("tools").MassLb)
	require.Greater(t, gross.Margin(), 0.0)
	for _, c := range []struct {
		beyond float64
		said   bool
		reason string
	}{{-1, false, "both together can be loaded to their rating"}, {1, true, "the unit would be a pound over"}} {
		t.Run(c.reason, func(t *testing.T) {
			cat.OptionByID("tray").Fitted.RatedLb = lbs((gross.Margin() + tools + c.beyond) / 2)
			f := finding(Weigh(cat, u, people(175)), "weight.trays")
			require.Equal(t, c.said, f != nil, c.reason)
			if f != nil {
				assert.Equal(t, config.Note, f.Severity)
				assert.Contains(t, f.Text, "carry "+lb(tools)+" here")
			}
		})
	}
}
