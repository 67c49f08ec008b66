package catalogue_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/standards"
	"boxwright/config/weight"
)

func engine(t *testing.T, cat *config.Catalogue) *rules.Engine {
	t.Helper()
	e, err := rules.Compile(cat)
	require.NoError(t, err)
	return e
}

// unit with the picks, judged by the default rule set.
func unit(chassis, body string, picks ...string) *config.Unit {
	u := &config.Unit{Chassis: chassis, Body: body, RuleSet: standards.Default(),
		OrderOn: config.Date{Year: 2026, Month: 11, Day: 25}}
	for _, id := range picks {
		u.Set(config.Pick{Option: id, Qty: 1})
	}
	return u
}

// limits of weight and power on whatever chassis and body the engine asks for.
func limits(cat *config.Catalogue, u *config.Unit) *rules.Limits {
	return &rules.Limits{For: func(chassis, body string) []config.Linear {
		v := u.Clone()
		v.Chassis, v.Body = chassis, body
		as := standards.Assume(v.RuleSet, cat, &v)
		return append(weight.Limits(cat, &v, &as), power.Limits(cat, &v, &as)...)
	}}
}

const settle = 200_000 // conflicts: enough that nothing is left undecided

func TestEveryChoiceIsToBeHadSomewhere(t *testing.T) {
	cat := read(t)
	e := engine(t, cat)
	seen := map[string]bool{}
	for i := range cat.Chassis {
		bodies := 0
		for j := range cat.Bodies {
			u := unit(cat.Chassis[i].ID, cat.Bodies[j].ID)
			if !e.AnswerWithin(u, nil, 0).Satisfiable {
				continue
			}
			a := e.AnswerWithin(u, limits(cat, u), settle)
			require.Empty(t, a.Undecided, "%s with %s", u.Chassis, u.Body)
			if !a.Satisfiable {
				continue
			}
			bodies++
			seen[u.Chassis], seen[u.Body] = true, true
			for k := range cat.Options {
				if id := cat.Options[k].ID; a.State(id) == rules.Open || a.State(id) == rules.Forced {
					seen[id] = true
				}
			}
		}
		assert.Positive(t, bodies, "%s carries some body within its ratings", cat.Chassis[i].ID)
	}
	for i := range cat.Chassis {
		assert.True(t, seen[cat.Chassis[i].ID], "%s can be had on some unit", cat.Chassis[i].ID)
	}
	for i := range cat.Bodies {
		assert.True(t, seen[cat.Bodies[i].ID], "%s can be had on some unit", cat.Bodies[i].ID)
	}
	for i := range cat.Options {
		assert.True(t, seen[cat.Options[i].ID], "%s can be had on some unit", cat.Options[i].ID)
	}
}

// The standard options together make a unit on the chassis that is ordered
// most, and leave room for choices.
func TestStandardUnit(t *testing.T) {
	cat := read(t)
	u := unit("cut-14500-158-gas", "mod-153-72")
	for i := range cat.Options {
		if cat.Options[i].Standard {
			u.Set(config.Pick{Option: cat.Options[i].ID, Qty: 1})
		}
	}
	assert.True(t, engine(t, cat).AnswerWithin(u, limits(cat, u), settle).Satisfiable)

	as := standards.Assume(u.RuleSet, cat, u)
	sheet := weight.Weigh(cat, u, &as)
	for code, least := range map[string]float64{"weight.front-axle": 100, "weight.rear-axle": 500, "weight.gross": 1000,
		"weight.payload": 500} {
		t.Run(code, func(t *testing.T) {
			f, ok := sheet.Figure(code)
			require.True(t, ok, code)
			assert.Greater(t, f.Margin(), least, code)
		})
	}
	scene, ok := power.Budget(cat, u, &as).Figure("power.scene")
	require.True(t, ok)
	assert.Greater(t, scene.Margin(), 20.0, "amperes left on scene")
}

// With a slim locker at the front wall the front axle alone stands in the way of the winch
// bumper, and lighter wheels let it in.
func TestFrontAxleRulesOutTheWinchBumper(t *testing.T) {
	cat := read(t)
	e := engine(t, cat)
	picks := []string{"rest-four", "cot-power", "mount-power", "front-locker", "street-full", "build-ply", "bench-72",
		"o2-m1", "rbd-plate"}
	for _, c := range []struct {
		wheels string
		want   rules.State
		reason string
	}{
		{"whl-steel", rules.RuledOut, "a few tens of pounds too many on the front axle"},
		{"whl-aluminium", rules.Open, "the front wheels are lighter by more than that"},
	} {
		u := unit("cut-14500-158-gas", "mod-146-72", append(picks, c.wheels)...)
		rulesAlone := e.AnswerWithin(u, nil, settle)
		assert.Equal(t, rules.Open, rulesAlone.State("fb-winch"), "no rule forbids it")
		full := e.AnswerWithin(u, limits(cat, u), settle)
		assert.True(t, full.Satisfiable)
		assert.Equal(t, c.want, full.State("fb-winch"), c.reason)
	}
}

// A drawer or a tray in an outside compartment is not drawn in the room.
func TestADrawerInACompartmentIsNotDrawnInTheRoom(t *testing.T) {
	for _, o := range read(t).Options {
		if o.Fitted == nil {
			continue
		}
		for _, at := range o.Places {
			assert.False(t, at.Kind == "drawer" && (at.Face == config.FaceStreetWall || at.Face == config.FaceCurbWall), o.ID)
		}
	}
}

// What a mount holds goes into it, at a slant at least, in the compartment where it stands on each body that
// can have it.
func TestMountsTakeWhatTheyHold(t *testing.T) {
	cat := read(t)
	e := engine(t, cat)
	slant := func(c config.Compartment) float64 {
		return math.Hypot(math.Hypot(float64(c.WidthIn), float64(c.DepthIn)), float64(c.HeightIn))
	}
	tried := 0
	for i := range cat.Bodies {
		b := &cat.Bodies[i]
		for _, o := range cat.Options {
			if o.Fitted == nil || o.Compartments == nil {
				continue
			}
			on := slices.IndexFunc(cat.Chassis, func(ch config.Chassis) bool {
				return e.AnswerWithin(unit(ch.ID, b.ID, o.ID), nil, 0).Satisfiable
			})
			if on < 0 {
				continue
			}
			p := body.PlanesOf(&cat.Chassis[on], b)
			for _, c := range o.Compartments {
				c = p.CompartmentOf(&o, c)
				for _, h := range c.Holds {
					tried++
					x := cat.EquipmentByID(h.Equipment)
					assert.LessOrEqual(t, float64(max(x.LengthIn, x.WidthIn, x.HeightIn)), slant(c), "%s in %s on %s", x.ID,
						o.ID, b.ID)
				}
			}
		}
	}
	assert.Greater(t, tried, 10)
}

// The plant has a part before the step that does most of the work on its option; a cot comes with what
// is loaded last.
func TestPartsComeBeforeTheStationThatFitsThem(t *testing.T) {
	cat := read(t)
	acts := cat.Plant.Activities
	waits := func(o *config.Option, station string) bool {
		from := map[string]bool{}
		for _, id := range o.PartsFor {
			from[id] = true
		}
		for range acts { // what comes after what waits
			for _, a := range acts {
				from[a.ID] = from[a.ID] || slices.ContainsFunc(a.After, func(id string) bool {
					return from[id] || id == "parts" && o.PartsFor == nil
				})
			}
		}
		return slices.ContainsFunc(acts, func(a config.Activity) bool { return a.Station == station && from[a.ID] })
	}
	tried := 0
	for i := range cat.Options {
		o := &cat.Options[i]
		if o.Parts == nil || o.Group == "cot" {
			continue
		}
		most := quantity.Hours(0)
		for _, w := range o.Work {
			if w.Station != "test" {
				most = max(most, w.Hours)
			}
		}
		if most == 0 {
			continue
		}
		tried++
		assert.True(t, slices.ContainsFunc(o.Work, func(w config.Work) bool {
			return w.Hours == most && waits(o, w.Station)
		}), "%s comes after most of its work is done", o.ID)
	}
	assert.Greater(t, tried, 80)
}

// The schedule numbers runs alike; a name that numbers them too stands for one wire that looks like two.
func TestACircuitIsNotNamedForTwo(t *testing.T) {
	for _, o := range read(t).Options {
		if o.Circuit != nil {
			assert.NotRegexp(t, `\d-\d`, o.Circuit.Function, "%s has several runs", o.ID)
		}
	}
}
