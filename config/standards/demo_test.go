package standards_test

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// demo reads the demonstration catalogue; this package may not import its.
func demo(t testing.TB) *config.Catalogue {
	t.Helper()
	file, err := os.ReadFile("../../web/assets/catalogue/demo.json")
	require.NoError(t, err)
	cat, err := config.Read(file)
	require.NoError(t, err)
	return cat
}

// eachUnit visits every chassis under every body that goes with it, with the
// standard options.
func eachUnit(cat *config.Catalogue, visit func(u *config.Unit)) {
	for _, ch := range cat.Chassis {
		for _, b := range cat.Bodies {
			if (ch.Cab == "van") != (b.Kind == "van") {
				continue
			}
			u := &config.Unit{Chassis: ch.ID, Body: b.ID}
			for _, o := range cat.Options {
				if o.Standard {
					u.Set(config.Pick{Option: o.ID, Qty: 1})
				}
			}
			visit(u)
		}
	}
}

func everySet() string {
	var ids []string
	for _, s := range standards.Sets() {
		ids = append(ids, s.ID)
	}
	return standards.Join(ids...)
}

// A figure that a clause reads must be one that a calculator reports, or the
// clause would silently never be judged.
func TestClausesReadFiguresThatExist(t *testing.T) {
	cat := demo(t)
	eachUnit(cat, func(u *config.Unit) {
		as := standards.Assume(everySet(), cat, u)
		w, p, s := weight.Weigh(cat, u, &as), power.Budget(cat, u, &as), space.Measure(cat, u, &as)
		for _, v := range standards.Judge(everySet(), u, cat, &w.Report, &p.Report, &s.Report) {
			assert.NotContains(t, v.Note, "is not known for this unit", "%s with %s: %s", u.Chassis, u.Body, v.Clause)
			if v.Figure != nil {
				assert.False(t, math.IsNaN(v.Figure.Margin()) || math.IsInf(v.Figure.Margin(), 0), v.Clause)
			}
		}
	})
}

// Every clause an option declares is one of the tables'.
func TestDeclaredClausesExist(t *testing.T) {
	for _, o := range demo(t).Options {
		for _, id := range o.Clauses {
			_, c, ok := standards.Lookup(id)
			assert.True(t, ok, "option %s declares %s, which no table has", o.ID, id)
			assert.Equal(t, id, c.ID)
		}
	}
}

// Los Angeles County's clear lengths ahead of the cot and behind it are judged on the usual
// pairs: in a van 10.4 in are left to the doors, in every module 12 in and more.
func TestClearLengthsAtTheCot(t *testing.T) {
	cat := demo(t)
	judged := 0
	eachUnit(cat, func(u *config.Unit) {
		ch := cat.ChassisByID(u.Chassis)
		if ch.UsualBody != u.Body {
			return
		}
		as := standards.Assume(standards.LACounty, cat, u)
		s := space.Measure(cat, u, &as)
		for _, v := range standards.Judge(standards.LACounty, u, cat, &s.Report) {
			want := standards.Met
			switch v.Clause {
			case "ca-la-cot-door":
				if ch.Cab == "van" {
					want = standards.NotMet
				}
			case "ca-la-seat-cot":
			default:
				continue
			}
			judged++
			assert.Equal(t, want, v.Outcome, "%s, %s: %v", ch.ID, v.Clause, v.Figure)
		}
	})
	assert.Equal(t, 2*len(cat.Chassis), judged)
}

// Indiana's 110 in are "with warning devices, less the antenna": a beacon that stands 17 in
// over a roof of 94 in is over them, one of 16 in is at them, and a whip of 40 in is not counted.
func TestIndianasHeightHasTheWarningDevices(t *testing.T) {
	for _, c := range []struct {
		kind string
		high quantity.Length
		want standards.Outcome
	}{{"lamp", 16, standards.Met}, {"lamp", 17, standards.NotMet}, {"antenna", 40, standards.Met}} {
		t.Run(fmt.Sprintf("%s of %v in", c.kind, c.high), func(t *testing.T) {
			cat := demo(t)
			cat.Options = append(cat.Options, config.Option{ID: "zz", Label: "On the roof", Group: "warn-front", Places: []config.Place{{Kind: c.kind,
				Face: config.FaceRoof, Along: config.AlongMiddle, LengthIn: 6, WidthIn: 6, HeightIn: c.high, OutIn: c.high}}})
			require.Empty(t, cat.Prepare())
			u := &config.Unit{Chassis: "van-9500-148-gas", Body: "van-60"}
			u.Set(config.Pick{Option: "zz", Qty: 1})
			as := standards.Assume(standards.Indiana, cat, u)
			s := space.Measure(cat, u, &as)
			roof, _ := s.Figure("space.height")
			require.InDelta(t, 94, roof.Value, 1e-9)
			for _, v := range standards.Judge(standards.Indiana, u, cat, &s.Report) {
				if v.Clause == "in-height" {
					assert.Equal(t, c.want, v.Outcome, "%v in", v.Figure.Value)
				}
			}
		})
	}
}

// With the warning devices that it has, each pair that can be had keeps Indiana's height; with
// a light mast, which stands 14 in over the roof when nested, where roof and mast come to 110 in.
func TestPairsKeepIndianasHeight(t *testing.T) {
	cat := demo(t)
	engine, err := rules.Compile(cat)
	require.NoError(t, err)
	pairs := 0
	eachUnit(cat, func(u *config.Unit) {
		if !engine.AnswerWithin(&config.Unit{Chassis: u.Chassis, Body: u.Body}, nil, 0).Satisfiable {
			return // nobody can have this pair
		}
		pairs++
		as := standards.Assume(standards.Indiana, cat, u)
		bare := space.Measure(cat, u, &as)
		roof, _ := bare.Figure("space.height")
		for _, mast := range []bool{false, true} {
			want := standards.Met
			if mast {
				u.Set(config.Pick{Option: "sc-mast", Qty: 1})
				if roof.Value+14 > 110 {
					want = standards.NotMet
				}
			}
			s := space.Measure(cat, u, &as)
			for _, v := range standards.Judge(standards.Indiana, u, cat, &s.Report) {
				if v.Clause == "in-height" {
					assert.Equal(t, want, v.Outcome, "%s %s, mast %v", u.Chassis, u.Body, mast)
				}
			}
		}
	})
	assert.Greater(t, pairs, 20)
}

// The standard units of the demonstration are sound electrically and stow
// what they carry; where a suggestion is taken it is proven to fit.
func TestDemoUnitsPowerAndStowage(t *testing.T) {
	cat := demo(t)
	engine, err := rules.Compile(cat)
	require.NoError(t, err)
	sound := 0
	eachUnit(cat, func(u *config.Unit) {
		if !engine.AnswerWithin(&config.Unit{Chassis: u.Chassis, Body: u.Body}, nil, 0).Satisfiable {
			return // nobody can have this pair
		}
		as := standards.Assume(standards.KKK, cat, u)
		ch := cat.ChassisByID(u.Chassis)
		if slices.Contains(cat.BodyByID(u.Body).Tags, "not-ambulance") {
			return // it carries other things
		}
		for _, e := range cat.Equipment {
			if slices.ContainsFunc(cat.Duties, func(d config.Duty) bool {
				return d.Bodies != nil && slices.ContainsFunc(d.Aboard, func(a config.Aboard) bool {
					return a.Equipment == e.ID
				})
			}) {
				continue // it rides on those
			}
			u.Carried = append(u.Carried, config.Carried{Equipment: e.ID, Qty: 1})
		}
		scale := func(u *config.Unit) space.Trim {
			g := weight.Weigh(cat, u, &as).Gross
			return space.Trim{FrontLb: g.FrontLb, RearLb: g.RearLb, LeftLb: g.LeftLb, RightLb: g.RightLb,
				FrontLimitLb: ch.GAWRFrontLb, RearLimitLb: ch.GAWRRearLb}
		}
		before := scale(u)
		u.Carried = space.Suggest(cat, u, scale)
		after := scale(u)
		name := fmt.Sprintf("%s with %s", u.Chassis, u.Body)
		// Most outside compartments are on the street side: practice may cost as much balance as one
		// thing inside instead of outside (300), at the wrong height (60) and beside dirt (60).
		assert.Less(t, after.Uneven(), 1.02*before.Uneven()+420,
			"%s: the suggestion should not stand much worse than gear "+
				"on the floor", name)
		for _, f := range power.Budget(cat, u, &as).Findings {
			assert.NotEqual(t, config.Stop, f.Severity, "%s: %s", name, f.Text)
			assert.False(t, strings.HasPrefix(f.Code, "power.no-") || f.Code == "power.circuit-unsized" ||
				f.Code == "power.bad-number", "%s: %s", name, f.Text)
		}
		for _, f := range space.Measure(cat, u, &as).Findings {
			assert.NotContains(t, []string{"space.too-big", "space.overloaded", "space.unproven", "space.bad-number",
				"space.same-compartment", "space.not-there"}, f.Code, "%s: %s", name, f.Text)
		}
		// Where no axle is short, practice is followed: of 32 things a few find their place taken.
		against := 0
		for _, line := range u.Carried {
			if p := space.PracticeOf(cat, u, line); !p.Met {
				against++
			}
		}
		if float64(after.FrontLb) < float64(after.FrontLimitLb)-300 &&
			float64(after.RearLb) < float64(after.RearLimitLb)-300 {
			assert.LessOrEqual(t, against, 3, "%s: things ride against practice", name)
			sound++
		}
	})
	assert.Greater(t, sound, 15, "units with axles to spare")
}

func BenchmarkDemo(b *testing.B) {
	cat := demo(b)
	var u *config.Unit
	eachUnit(cat, func(x *config.Unit) { u = x })
	for _, e := range cat.Equipment {
		u.Carried = append(u.Carried, config.Carried{Equipment: e.ID, Qty: 1})
	}
	as := standards.Assume(standards.KKK, cat, u)
	p, s := power.Budget(cat, u, &as), space.Measure(cat, u, &as)
	b.Run("assume", func(b *testing.B) {
		for b.Loop() {
			standards.Assume(standards.KKK, cat, u)
		}
	})
	b.Run("judge", func(b *testing.B) {
		for b.Loop() {
			standards.Judge(standards.KKK, u, cat, &p.Report, &s.Report)
		}
	})
	b.Run("budget", func(b *testing.B) {
		for b.Loop() {
			power.Budget(cat, u, &as)
		}
	})
	b.Run("measure", func(b *testing.B) {
		for b.Loop() {
			space.Measure(cat, u, &as)
		}
	})
	b.Run("suggest", func(b *testing.B) {
		for b.Loop() {
			space.Suggest(cat, u, func(u *config.Unit) space.Trim {
				g := weight.Weigh(cat, u, &as).Gross
				return space.Trim{FrontLb: g.FrontLb, RearLb: g.RearLb, LeftLb: g.LeftLb, RightLb: g.RightLb}
			})
		}
	})
}
