package weight

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
)

// assertFinite walks every number of the sheet that a reader can see.
func assertFinite(t testing.TB, s *Sheet) {
	t.Helper()
	num := func(what string, vs ...float64) {
		if !finite(vs...) {
			t.Errorf("%s is not finite: %v", what, vs)
		}
	}
	for _, f := range s.Figures {
		num(f.Code, f.Value, f.Low, f.High, f.Limit, f.Chance)
		if !(f.Low <= f.Value && f.Value <= f.High) || f.Chance < 0 || f.Chance > 1 {
			t.Errorf("%s: %v is not within %v to %v, or its chance of %v is none", f.Code, f.Value, f.Low, f.High,
				f.Chance)
		}
	}
	for _, f := range s.Findings {
		if f.Figure != nil {
			num(f.Code, f.Figure.Value, f.Figure.Limit)
		}
		if f.Code == "" || f.Where == "" || f.Text == "" || f.Remedy == "" || f.Severity == "" {
			t.Errorf("finding lacks a word: %+v", f)
		}
		assert.NotContains(t, f.Text+f.Remedy, "mass", "a weight is called that")
	}
	for _, it := range s.Items {
		num(it.ID, float64(it.Lb), float64(it.TolLb), float64(it.FrontLb), float64(it.RearLb), float64(it.XIn),
			float64(it.YIn), float64(it.ZIn))
	}
	for _, c := range []Condition{s.Curb, s.Crewed, s.Gross} {
		num(c.Label, float64(c.TotalLb), float64(c.FrontLb), float64(c.LeftLb), float64(c.XIn), float64(c.YIn),
			float64(c.ZIn), float64(c.XTolIn), float64(c.YTolIn), float64(c.ZTolIn))
		for _, w := range c.Wheels {
			num(w.Pos, float64(w.Lb), float64(w.PerTireLb), float64(w.RatedLb))
		}
	}
	if s.TakeOff != nil {
		num("take-off", float64(s.TakeOff.Lb), float64(s.TakeOff.XIn), float64(s.TakeOff.YIn), float64(s.TakeOff.ZIn))
	}
}

func TestBadInputGivesFindings(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		reason string
		spoil  func(*config.Catalogue, *config.Unit)
		code   string
	}{
		{"zero wheelbase", func(c *config.Catalogue, u *config.Unit) { c.Chassis[0].WheelbaseIn = 0 },
			"weight.chassis.bad"},
		{"NaN wheelbase", func(c *config.Catalogue, u *config.Unit) { c.Chassis[0].WheelbaseIn = in(nan) },
			"weight.chassis.bad"},
		{"negative curb weight", func(c *config.Catalogue, u *config.Unit) { c.Chassis[0].CurbFrontLb = -1 },
			"weight.chassis.bad"},
		{"infinite GVWR", func(c *config.Catalogue, u *config.Unit) { c.Chassis[0].GVWRLb = lbs(inf) },
			"weight.chassis.bad"},
		{"zero track", func(c *config.Catalogue, u *config.Unit) { c.Chassis[0].TrackRearIn = 0 },
			"weight.chassis.bad"},
		{"NaN height of the center", func(c *config.Catalogue, u *config.Unit) { c.Chassis[0].CGHeightIn = in(nan) },
			"weight.chassis.bad"},
		{"NaN option mass", func(c *config.Catalogue, u *config.Unit) { c.OptionByID("step").Mass.Lb = lbs(nan) },
			"weight.item.bad"},
		{"infinite option mass", func(c *config.Catalogue, u *config.Unit) { c.OptionByID("step").Mass.Lb = lbs(inf) },
			"weight.item.bad"},
		{"NaN tolerance", func(c *config.Catalogue, u *config.Unit) { c.OptionByID("step").Mass.TolLb = lbs(nan) },
			"weight.item.bad"},
		{"negative tolerance", func(c *config.Catalogue, u *config.Unit) { c.OptionByID("step").Mass.TolLb = -1 },
			"weight.item.bad"},
		{"NaN station", func(c *config.Catalogue, u *config.Unit) { c.OptionByID("step").Mass.XIn = in(nan) },
			"weight.item.bad"},
		{"a station beside the road", func(c *config.Catalogue, u *config.Unit) { c.OptionByID("step").Mass.YIn = 400 },
			"weight.item.place"},
		{"negative equipment", func(c *config.Catalogue, u *config.Unit) { c.Equipment[1].MassLb = -60 },
			"weight.item.bad"},
		{"negative body", func(c *config.Catalogue, u *config.Unit) { c.Bodies[0].Mass.Lb = -60 }, "weight.item.bad"},
		{"unknown chassis", func(c *config.Catalogue, u *config.Unit) { u.Chassis = "gone" }, "weight.chassis.unknown"},
		{"unknown body", func(c *config.Catalogue, u *config.Unit) { u.Body = "gone" }, "weight.body.unknown"},
		{"unknown option", func(c *config.Catalogue, u *config.Unit) { u.Set(config.Pick{Option: "gone", Qty: 1}) },
			"weight.option.unknown"},
		{"a quantity of none", func(c *config.Catalogue, u *config.Unit) {
			u.Picks[0].Qty = 0
		}, "weight.option.quantity"},
		{"a huge quantity", func(c *config.Catalogue, u *config.Unit) { u.Picks[0].Qty = math.MaxInt },
			"weight.option.quantity"},
		{"unknown equipment", func(c *config.Catalogue, u *config.Unit) { u.Carried[0].Equipment = "gone" },
			"weight.equipment.unknown"},
		{"equipment by the million", func(c *config.Catalogue, u *config.Unit) { u.Carried[0].Qty = 1e6 },
			"weight.equipment.quantity"},
		{"unknown compartment", func(c *config.Catalogue, u *config.Unit) { u.Carried[1].Compartment = "gone" },
			"weight.equipment.no-place"},
		{"two compartments alike", func(c *config.Catalogue, u *config.Unit) {
			c.Bodies[0].Compartments[0].ID = "curb-rear"
		}, "weight.compartment.twice"},
		{"no module length", func(c *config.Catalogue, u *config.Unit) { c.Bodies[0].LengthIn = 0 },
			"weight.shell.bad"},
		{"an impossible shell change", func(c *config.Catalogue, u *config.Unit) {
			c.OptionByID("stitch").Shell.FrameSpacingIn = -3
			u.Set(config.Pick{Option: "stitch", Qty: 1})
		}, "weight.shell.bad"},
		{"construction options together", func(c *config.Catalogue, u *config.Unit) {
			u.Set(config.Pick{Option: "thick-insulation", Qty: 1})
			u.Set(config.Pick{Option: "dense-insulation", Qty: 1})
		}, "weight.shell.together"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			cat, u := prepared(t), typical()
			c.spoil(cat, u)
			s := Weigh(cat, u, people(175))
			assert.NotNil(t, finding(s, c.code), c.reason)
			assertFinite(t, s)
			for _, l := range Limits(cat, u, everyLimit()) {
				assert.True(t, finite(l.Base, l.Limit), "%s: %s", c.reason, l.Code)
				for id, v := range l.Per {
					assert.True(t, finite(v), "%s: %s of %s", c.reason, l.Code, id)
				}
			}
		})
	}
}

func TestNothingAtAll(t *testing.T) {
	cat := prepared(t)
	for _, s := range []*Sheet{Weigh(nil, nil, nil), Weigh(cat, nil, nil), Weigh(cat, &config.Unit{}, nil),
		Weigh(&config.Catalogue{}, typical(), nil)} {
		require.NotEmpty(t, s.Findings)
		assert.Equal(t, config.Stop, s.Findings[0].Severity)
		assert.Empty(t, s.Figures)
		assertFinite(t, s)
	}
	s := Weigh(cat, typical(), nil)
	assert.NotNil(t, finding(s, "weight.assumptions.missing"))
	assertFinite(t, s)
	for _, v := range []float64{0, -5, math.NaN(), math.Inf(1)} {
		s := Weigh(cat, typical(), people(v))
		assert.NotNil(t, finding(s, "weight.assumptions.occupant"))
		assertFinite(t, s)
	}
}

// FuzzWeigh throws numbers at every field that a formula divides by or builds
// on; the answer is always finite.
func FuzzWeigh(f *testing.F) {
	f.Add(158.0, 68.0, 3400.0, 14500.0, 190.0, 20.0, 88.0, 16.0, 10000.0, 1)
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0)
	f.Add(math.NaN(), math.Inf(1), -1.0, 1e308, math.Inf(-1), 1e-308, math.MaxFloat64, -16.0, 1.0, -1)
	f.Fuzz(func(t *testing.T, wheelbase, track, curb, gvwr, mass, station, height, spacing, weighed float64, qty int) {
		cat, u := prepared(t), typical()
		ch := &cat.Chassis[0]
		ch.WheelbaseIn, ch.TrackFrontIn, ch.CurbFrontLb, ch.GVWRLb = in(wheelbase), in(track), lbs(curb), lbs(gvwr)
		ch.CurbTolLb, ch.FrontTires.LoadLb, ch.FuelGal, ch.FloorHeightIn = lbs(mass), lbs(curb), gvwr, in(height)
		o := cat.OptionByID("step")
		o.Mass = &config.Mass{Lb: lbs(mass), TolLb: lbs(station), Zone: config.ZoneModule, XIn: in(station),
			YIn: in(track), ZIn: in(height)}
		cat.Bodies[0].HeightIn, cat.Bodies[0].Shell.FrameSpacingIn = in(height), in(spacing)
		cat.Bodies[0].Compartments[0].WidthIn = in(station)
		cat.Equipment[0].MassLb = lbs(mass)
		u.Picks[0].Qty, u.Carried[0].Qty = qty, qty
		as := people(mass)
		as.Limits["weight.ssf"] = config.Limit{Value: track, Sense: config.AtLeast, Basis: config.Purchaser}
		ticket := Ticket{What: TicketUnit, TotalLb: lbs(weighed),
			WheelsLb: [4]quantity.Mass{lbs(weighed / 4), 0, lbs(curb)}, TolLb: lbs(station), FuelPart: track}
		assertFinite(t, Weigh(cat, u, as, ticket))
		for _, l := range Limits(cat, u, as, ticket) {
			if !finite(l.Base, l.Limit) {
				t.Errorf("%s: base %v, limit %v", l.Code, l.Base, l.Limit)
			}
		}
	})
}
