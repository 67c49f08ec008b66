package catalogue_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/power"
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
