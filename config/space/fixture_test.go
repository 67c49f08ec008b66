package space

import (
	"testing"

	"boxwright/config"

	"github.com/stretchr/testify/require"
)

// small is an invented catalogue: one module with four outside compartments
// and an inside one, and the options the tests pick from.
func small() *config.Catalogue {
	hole := func(id, side string, x, y, w, d, h float64) config.Compartment {
		return config.Compartment{ID: id, Label: "Compartment " + id, Side: side, XIn: in(x), YIn: in(y), ZIn: 10,
			WidthIn: in(w), DepthIn: in(d), HeightIn: in(h)}
	}
	ch := config.Chassis{ID: "c1", Label: "Cutaway", Type: "III", Cab: "cutaway", Drive: "4x2", Fuel: "gasoline",
		WheelbaseIn: 160, FrontOverhangIn: 33, BodyStartIn: 70, FrameHeightIn: 27, FloorHeightIn: 32, CabHeightIn: 82,
		WidthIn: 80, FrameEndIn: 58,
		GVWRLb: 14000, GAWRFrontLb: 5000, GAWRRearLb: 9500, CurbFrontLb: 3500, CurbRearLb: 2500, TrackFrontIn: 69,
		TrackRearIn: 77, CGHeightIn: 30,
		FrontTires: config.Tires{Count: 2, LoadLb: 2700}, RearTires: config.Tires{Count: 4, LoadLb: 2500},
		CabSeats: []config.Seat{{ID: "driver", Kind: "cab"}, {ID: "officer", Kind: "cab"}}}
	body := config.Body{ID: "b1", Label: "Module 150 in", Kind: "module", LengthIn: 150, WidthIn: 96, HeightIn: 88,
		HeadroomIn: 72, AisleIn: 18, Shell: &config.Shell{FrameSpacingIn: 16}, Doors: config.Doors{SideXIn: 4},
		Compartments: []config.Compartment{
			hole("left-front", "street", 20, -38, 24, 20, 60), hole("left-rear", "street", 128, -38, 40, 20, 60),
			hole("right-front", "curb", 57, 38, 24, 20, 60), hole("right-rear", "curb", 132, 38, 30, 20, 60),
			hole("cabinet", "inside", 51, -30, 36, 16, 30)}}
	body.Compartments[1].LimitLb = 200
	opt := func(id string, o config.Option) config.Option {
		o.ID, o.Label, o.Group = id, "Option "+id, "g"
		return o
	}
	gear := func(id string, lb, l, w, h float64) config.Equipment {
		return config.Equipment{ID: id, Label: "Gear " + id, MassLb: mass(lb), LengthIn: in(l), WidthIn: in(w),
			HeightIn: in(h)}
	}
	return &config.Catalogue{Format: config.CatalogueFormat, ID: "small", Title: "Small, invented", Edition: "1",
		Chapters: []config.Chapter{{ID: "all", Label: "All"}},
		Groups:   []config.Group{{ID: "g", Label: "All", Chapter: "all", Choose: config.ChooseAny}},
		Chassis:  []config.Chassis{ch}, Bodies: []config.Body{body,
			{ID: "van", Label: "Van", Kind: "van", LengthIn: 125,
				WidthIn: 78, HeightIn: 76, HeadroomIn: 68, AisleIn: 14}},
		Options: []config.Option{
			opt("bench", config.Option{Places: []config.Place{{Kind: "bench", Face: config.FaceCurbWall, XIn: 40,
				ZIn:      60,
				LengthIn: 72, WidthIn: 22, HeightIn: 4}},
				Seats: []config.Seat{{ID: "b1", Kind: "bench"}, {ID: "b2", Kind: "bench"}}}),
			opt("cabinet-tall", config.Option{MaxQty: 3, StorageFt3: 12,
				Compartments: []config.Compartment{hole("tall", "inside", 100, -30, 20, 20, 60)}}),
			opt("ceiling-duct", config.Option{HeadroomIn: 4}),
			opt("cot", config.Option{Seats: []config.Seat{{ID: "cot", Kind: "cot"}}, AisleIn: 2}),
			opt("no-cabinet", config.Option{StorageFt3: -5}),
			opt("oxygen-m",
				config.Option{MaxQty: 2, Oxygen: &config.Oxygen{Cylinder: "M", LitersPerPSI: 1.56, FullPSI: 2200,
					Count: 1}}),
		},
		Equipment: []config.Equipment{gear("backboard", 15, 72, 16, 2), gear("bag", 20, 20, 14, 12),
			gear("chair", 30, 36, 20, 10), gear("ladder", 25, 80, 14, 4), gear("tools", 90, 22, 18, 14)},
		Plant: config.Plant{HoursPerDay: 8}}
}

func fixture(t testing.TB) *config.Catalogue {
	t.Helper()
	c := small()
	require.Empty(t, c.Prepare(), "the fixture must be a sound catalogue")
	return c
}

func unit(picks ...string) *config.Unit {
	u := &config.Unit{Chassis: "c1", Body: "b1"}
	for _, id := range picks {
		u.Set(config.Pick{Option: id, Qty: 1})
	}
	return u
}

func codes(r *config.Report) []string {
	var out []string
	for _, f := range r.Findings {
		out = append(out, f.Code)
	}
	return out
}
