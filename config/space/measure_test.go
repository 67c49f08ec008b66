package space

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func in(v float64) quantity.Length { return quantity.Length(v) }
func mass(v float64) quantity.Mass { return quantity.Mass(v) }

func TestMeasureFigures(t *testing.T) {
	van := unit()
	van.Body = "van"
	two := unit()
	two.Set(config.Pick{Option: "cabinet-tall", Qty: 2})
	for _, tt := range []struct {
		reason string
		unit   *config.Unit
		code   string
		want   float64
	}{
		{"front overhang, then the module's end at 70 + 150 beats the frame's at 160 + 58", unit(), "space.length", 253},
		{"the module is wider than the cab", unit(), "space.width", 96},
		{"floor at 32, floor build-up 2 + 0.125 + 0.75, module 88 high", unit(), "space.height", 32 - 2.875 + 88},
		{"a van is as high as its cab says, or floor and body", van, "space.height", 108},
		{"88 high, less 2.875 of floor and 2 + 0.09 + 0.25 of roof", unit(), "space.headroom", 82.785},
		{"an option takes headroom", unit("ceiling-duct"), "space.headroom", 78.785},
		{"the module ends 60 in behind an axle at 160", unit(), "space.rear-overhang", 37.5},
		{"96 in wide, 117.125 high, 16 clear below the bumper", unit(), "space.frontal", 96 * 101.125 / 144},
		{"the cot takes walkway", unit("cot"), "space.aisle", 16},
		{"two walls of 2 + 0.125 + 0.25 come off", unit(), "space.inside-length", 145.25},
		{"36 x 16 x 30 in inside, nothing from outside compartments", unit(), "space.storage", 10},
		{"an option's stated volume counts, its compartment not again", two, "space.storage", 34},
		{"an option may take storage", unit("no-cabinet"), "space.storage", 5},
		{"2 x 24x20x60 + 40x20x60 + 30x20x60, over 1728", unit(), "space.compartments", (2*28800.0 + 48000 + 36000) / 1728},
		{"cab 2, bench 2; the cot is no seat", unit("bench", "cot"), "space.seats", 4},
		{"one cot", unit("bench", "cot"), "space.patients", 1},
		{"stated by the bench's place", unit("bench"), "space.bench", 72},
		{"stated by the bench's place", unit("bench"), "space.bench-width", 22},
	} {
		t.Run(tt.reason, func(t *testing.T) {
			f, ok := Measure(fixture(t), tt.unit, nil).Figure(tt.code)
			require.True(t, ok, tt.code+": "+tt.reason)
			assert.InDelta(t, tt.want, f.Value, 1e-9, tt.code+": "+tt.reason)
			assert.LessOrEqual(t, f.Low, f.Value)
			assert.LessOrEqual(t, f.Value, f.High)
		})
	}
	over, ok := Measure(fixture(t), unit("cot"), nil).Figure("space.litter")
	require.True(t, ok)
	_, ceiling := body.Of(fixture(t), unit("cot")).Headroom()
	require.NotEmpty(t, ceiling)
	assert.Equal(t, ceiling, over.Assumed, "clear height ends at a ceiling of an assumed thickness")
	_, ok = Measure(fixture(t), unit(), nil).Figure("space.bench")
	assert.False(t, ok, "no bench, no figure")
	cat := fixture(t)
	bench := cat.OptionByID("bench")
	stated, _ := Measure(cat, unit("bench"), nil).Figure("space.bench")
	assert.Empty(t, stated.Assumed)
	bench.Places[0].About = true
	most := &config.Assumptions{Limits: map[string]config.Limit{"space.bench": {Value: 80, Sense: config.AtLeast}}}
	s := Measure(cat, unit("bench"), most)
	about, _ := s.Figure("space.bench")
	assert.Equal(t, bench.Label, about.Assumed, "a figure says that it rests on an assumed size")
	i := slices.IndexFunc(s.Findings, func(f config.Finding) bool { return f.Code == "space.bench" })
	require.GreaterOrEqual(t, i, 0)
	assert.Contains(t, s.Findings[i].Text, "Assumed size, not stated: "+bench.Label)
}

// Every figure of the road and the bay that rests on an assumed size says so, as the model
// of the unit does.
func TestOutsideFiguresSayWhatIsAssumed(t *testing.T) {
	cat := fixture(t)
	cat.ChassisByID(unit().Chassis).TurningFt = 52
	cat.OptionByID("bench").Places = []config.Place{
		{Kind: "bumper", Face: config.FaceFront, Along: config.AlongBumper, Level: config.LevelGround, ZIn: 25,
			LengthIn: 14, WidthIn: 120, HeightIn: 14, OutIn: 14, About: true},
		{Kind: "mast", Face: config.FaceRoof, XIn: 26, LengthIn: 14, WidthIn: 14, HeightIn: 16, OutIn: 14, About: true}}
	m := body.Of(cat, unit("bench"))
	all, bay := m.Overall(), m.Bay()
	_, wall := m.WallFt()
	s := Measure(cat, unit("bench"), nil)
	for code, want := range map[string]string{"space.length-all": all.AssumedLength, "space.height-all": all.AssumedHeight,
		"space.bay-length": bay.AssumedLength, "space.turning-wall": wall,
		"space.frontal": all.AssumedHeight} {
		f, ok := s.Figure(code)
		require.True(t, ok, code)
		assert.NotEmpty(t, want, code)
		assert.Equal(t, want, f.Assumed, code)
	}
}

// What the maker of the chassis allows stops the unit that is beyond it.
func TestWhatTheMakerAllows(t *testing.T) {
	cat := fixture(t)
	ch := cat.ChassisByID(unit().Chassis)
	ch.OverhangMostPct, ch.FrontalMostFt2 = 38, 70
	assert.Empty(t, codes(&Measure(cat, unit(), nil).Report), "both are kept")
	ch.OverhangMostPct, ch.FrontalMostFt2 = 37, 67
	s := Measure(cat, unit(), nil)
	assert.Subset(t, codes(&s.Report), []string{"space.rear-overhang", "space.frontal"})
	for _, f := range s.Findings {
		assert.Equal(t, config.Stop, f.Severity, f.Code)
	}
}

func TestLimitSeverity(t *testing.T) {
	for _, tt := range []struct {
		basis config.Basis
		want  config.Severity
	}{{config.ReadInText, config.Stop}, {config.FromMemory, config.Note}, {config.CommonPractice, config.Warn},
		{config.Purchaser, config.Warn}} {
		t.Run(fmt.Sprint(tt.basis), func(t *testing.T) {
			as := &config.Assumptions{Limits: map[string]config.Limit{"space.headroom": {Value: 83,
				Sense:  config.AtLeast,
				Source: "a text", Basis: tt.basis}}}
			s := Measure(fixture(t), unit(), as)
			require.Len(t, s.Findings, 1)
			assert.Equal(t, "space.headroom", s.Findings[0].Code)
			assert.Equal(t, tt.want, s.Findings[0].Severity, "%s", tt.basis)
		})
	}
}

func TestLimitsAgreeWithMeasure(t *testing.T) {
	cat := fixture(t)
	as := &config.Assumptions{Limits: map[string]config.Limit{
		"space.headroom": {Value: 60, Sense: config.AtLeast, Basis: config.ReadInText}, "space.aisle": {Value: 18, Sense: config.AtLeast, Basis: config.ReadInText},
		"space.storage": {Value: 35, Sense: config.AtLeast, Basis: config.ReadInText}}}
	rapid.Check(t, func(rt *rapid.T) {
		u := unit()
		for _, o := range cat.Options {
			if n := rapid.IntRange(0, max(o.MaxQty, 1)).Draw(rt, o.ID); n > 0 {
				u.Set(config.Pick{Option: o.ID, Qty: n})
			}
		}
		s := Measure(cat, u, as)
		limits := Limits(cat, u, as)
		require.Len(rt, limits, 3)
		for _, l := range limits {
			sum := l.Base
			for _, p := range u.Picks {
				sum += l.Per[p.Option] * float64(p.Qty)
			}
			f, ok := s.Figure(l.Code)
			require.True(rt, ok)
			assert.InDelta(rt, f.Margin(), l.Limit-sum, 1e-9, l.Code)
		}
	})
	as.Limits["space.headroom"] = config.Limit{Value: 60, Sense: config.AtLeast, Basis: config.FromMemory}
	assert.Len(t, Limits(cat, unit(), as), 2, "a number from memory rules nothing out")
}

func TestHostileNumbersNeverSpread(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -5, 0, 1e300} {
		c := small()
		ch, b := &c.Chassis[0], &c.Bodies[0]
		ch.WheelbaseIn, ch.FloorHeightIn, ch.FrontOverhangIn = in(bad), in(bad), in(bad)
		b.LengthIn, b.HeadroomIn, b.WidthIn = in(bad), in(bad), in(bad)
		b.Compartments[0].WidthIn, b.Shell.FrameTubeIn = in(bad), in(bad)
		c.Options[1].StorageFt3 = quantity.Volume(bad)
		c.Options[5].Oxygen.LitersPerPSI, c.Options[5].Oxygen.FullPSI = bad, bad
		c.Equipment[1].MassLb, c.Equipment[1].LengthIn = mass(bad), in(bad)
		c.Prepare() // fills the index; its problems are another test's
		u := unit("bench", "cabinet-tall", "cot", "oxygen-m")
		u.Carried = []config.Carried{{Equipment: "bag", Compartment: "left-front", Qty: 3},
			{Equipment: "chair", Qty: 2}}
		s := Measure(c, u, nil)
		if bad != 0 {
			assert.Contains(t, codes(&s.Report), "space.bad-number", "%v must be named", bad)
		}
		for _, f := range s.Figures {
			for _, v := range []float64{f.Value, f.Low, f.High} {
				assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%v gave %s = %v", bad, f.Code, v)
			}
		}
		Suggest(c, u, func(*config.Unit) Trim {
			return Trim{FrontLb: mass(bad), LeftLb: mass(bad), FrontLimitLb: mass(bad), RearLimitLb: 1}
		})
	}
}

func TestNothingToMeasure(t *testing.T) {
	for _, tt := range []struct {
		cat  *config.Catalogue
		unit *config.Unit
		code string
	}{
		{nil, unit(), "space.no-unit"}, {fixture(t), nil, "space.no-unit"}, {fixture(t), &config.Unit{}, "space.no-chassis"},
		{fixture(t), unit("gone"), "space.unknown-option"},
		{fixture(t), &config.Unit{Chassis: "c1", Body: "b1", Carried: []config.Carried{{Equipment: "gone", Qty: 1}}}, "space.unknown-equipment"},
	} {
		t.Run(tt.code, func(t *testing.T) {
			s := Measure(tt.cat, tt.unit, nil)
			assert.Contains(t, codes(&s.Report), tt.code)
			assert.NotPanics(t, func() { Suggest(tt.cat, tt.unit, nil); Limits(tt.cat, tt.unit, nil) })
		})
	}
}
