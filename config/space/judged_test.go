package space

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
)

// What clauses ask of doorway, flood lights and the compartment at the right front, worked
// by hand: the module's roof stands 32 - 2.875 + 88 = 117.125 in high.
func TestSizesThatClausesAskFor(t *testing.T) {
	cat := small()
	cat.Bodies[0].Doors.RearWidthIn, cat.Bodies[0].Doors.RearHeightIn = 50, 44
	lamp := func(z float64) []config.Place {
		return []config.Place{{Kind: "lamp", Face: config.FaceStreet, Level: config.LevelRoof, XIn: 40, ZIn: in(z),
			LengthIn: 9, WidthIn: 3, HeightIn: 4}}
	}
	front := func(w, d, h float64) []config.Compartment {
		return []config.Compartment{{ID: "rf", Label: "Right front", Side: "curb", XIn: 12, ZIn: 30, WidthIn: in(w),
			DepthIn: in(d), HeightIn: in(h)}}
	}
	for _, o := range []config.Option{
		{ID: "flood-high", Clauses: []string{floodClause}, Places: lamp(-8)},
		{ID: "flood-low", Clauses: []string{floodClause}, Places: lamp(-45)},
		{ID: "lamp-lowest", Places: lamp(-80)},
		{ID: "front-large", Clauses: []string{frontClause}, Compartments: front(18, 30, 40)},
		{ID: "front-small", Clauses: []string{frontClause}, Compartments: front(31, 19, 37)},
	} {
		o.Label, o.Group = o.ID, "g"
		cat.Options = append(cat.Options, o)
	}
	require.Empty(t, cat.Prepare())
	for _, c := range []struct {
		reason, pick, code string
		want               float64
	}{
		{"the lower size of the doorway", "", "space.rear-door", 44},
		{"8 in below the roof", "flood-high", "space.flood-height", 109.125},
		{"45 in below it", "flood-low", "space.flood-height", 72.125},
		{"another lamp is no flood light", "lamp-lowest", "space.flood-height", -1},
		{"turned, it is as large as asked for", "front-large", "space.front-compartment", 100},
		{"37 in high, of 40", "front-small", "space.front-compartment", 92.5},
		{"none is ordered", "", "space.front-compartment", -1},
	} {
		t.Run(c.reason, func(t *testing.T) {
			u := unit()
			if c.pick != "" {
				u.Set(config.Pick{Option: c.pick, Qty: 1})
			}
			f, ok := Measure(cat, u, nil).Figure(c.code)
			if c.want == -1 {
				assert.False(t, ok, "there is none")
				return
			}
			require.True(t, ok)
			assert.InDelta(t, c.want, f.Value, 1e-9)
		})
	}
	u := unit()
	u.Set(config.Pick{Option: "flood-high", Qty: 1})
	u.Set(config.Pick{Option: "flood-low", Qty: 1})
	f, _ := Measure(cat, u, nil).Figure("space.flood-height")
	assert.InDelta(t, 72.125, f.Value, 1e-9, "the lowest decides")
}

// The lengths ahead of a cot and behind it, worked by hand: the cot is 76 in long around its
// station, a seat 22 in; the rear doors are as thick as a wall of 2.375 in.
func TestEndsOfTheCot(t *testing.T) {
	seat := func(x, forward float64, more ...config.Place) config.Option {
		return config.Option{Places: more, Seats: []config.Seat{{ID: "att", Label: "Attendant", Kind: "attendant",
			XIn: in(x), ZIn: 20, ForwardIn: in(forward)}}}
	}
	cot := func(x, y float64) config.Option {
		return config.Option{Seats: []config.Seat{{ID: "lies", Label: "Cot", Kind: "cot", XIn: in(x), YIn: in(y),
			ZIn: 30}}}
	}
	counter := config.Option{Places: []config.Place{{Kind: "counter", Face: config.FaceFree, XIn: 8, ZIn: 20,
		LengthIn: 10, WidthIn: 30, HeightIn: 20}}}
	long := float64(small().Bodies[0].LengthIn)
	for _, c := range []struct {
		reason     string
		options    []config.Option
		seat, door float64 // -1: not known
	}{
		{"seat to 29 in, cot from 41 to 117", []config.Option{seat(18, 0), cot(79, -8)}, 12, long - 117 - 2.375},
		{"the seat slides 10 in ahead", []config.Option{seat(28, 10), cot(79, -8)}, 12, long - 117 - 2.375},
		{"a counter 13 in deep lets it slide 4 in", []config.Option{seat(28, 10), cot(79, -8), counter}, 6,
			long - 117 - 2.375},
		{"the front wall lets it slide 4.625 in", []config.Option{seat(18, 10), cot(79, -8)}, 16.625,
			long - 117 - 2.375},
		{"a seat beside the cot is not ahead of it", []config.Option{seat(18, 0), cot(79, -25)}, -1,
			long - 117 - 2.375},
		{"no cot", []config.Option{seat(18, 0)}, -1, -1},
	} {
		t.Run(c.reason, func(t *testing.T) {
			cat, u := small(), unit()
			for i, o := range c.options {
				o.ID = []string{"zz-one", "zz-two", "zz-three"}[i]
				o.Label, o.Group = o.ID, "g"
				cat.Options = append(cat.Options, o)
				u.Set(config.Pick{Option: o.ID, Qty: 1})
			}
			require.Empty(t, cat.Prepare())
			s := Measure(cat, u, nil)
			for code, want := range map[string]float64{"space.seat-cot": c.seat, "space.cot-door": c.door} {
				f, known := s.Figure(code)
				if want == -1 {
					assert.False(t, known, code)
				} else if assert.True(t, known, code) {
					assert.InDelta(t, want, f.Value, 1e-9, code)
				}
			}
		})
	}
}
