package weight

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
)

// fixture is a small catalogue, invented and round: a cutaway with dual rear
// wheels, a module, a van, and options of every sort that weigh something.
func fixture() *config.Catalogue {
	seat := func(id, kind string, x, y, z float64) config.Seat {
		return config.Seat{ID: id, Label: id, Kind: kind, XIn: in(x), YIn: in(y), ZIn: in(z)}
	}
	mass := func(lb, tol float64, zone string, x, y, z float64) *config.Mass {
		return &config.Mass{Lb: lbs(lb), TolLb: lbs(tol), Zone: zone, XIn: in(x), YIn: in(y), ZIn: in(z)}
	}
	box := func(id, side string, x, y, z, w, d, h float64) config.Compartment {
		return config.Compartment{ID: id, Label: id, Side: side, XIn: in(x), YIn: in(y), ZIn: in(z), WidthIn: in(w),
			DepthIn: in(d), HeightIn: in(h)}
	}
	return &config.Catalogue{
		Format: config.CatalogueFormat, ID: "fixture", Title: "Invented, for tests", Edition: "1",
		Chapters: []config.Chapter{{ID: "all", Label: "All"}},
		Chassis: []config.Chassis{{
			ID: "cutaway", Label: "Cutaway 14,500 lb, 158 in wheelbase", Type: "III", Cab: "cutaway", Drive: "4x2",
			Fuel:        "gasoline",
			WheelbaseIn: 158, CabToAxleIn: 100, FrontOverhangIn: 34, BodyStartIn: 52, FrameHeightIn: 30,
			FloorHeightIn: 34, CabHeightIn: 82, WidthIn: 80,
			TrackFrontIn: 68, TrackRearIn: 76, DualSpacingIn: 10, FrameEndIn: 50,
			GVWRLb: 14500, GAWRFrontLb: 5000, GAWRRearLb: 9880, CurbFrontLb: 3400, CurbRearLb: 2500, CurbTolLb: 100,
			CGHeightIn: 30,
			FrontTires: config.Tires{Size: "LT235/85R16 E", Count: 2, LoadLb: 3042, PressurePSI: 80},
			RearTires:  config.Tires{Size: "LT235/85R16 E", Count: 4, LoadLb: 2778, PressurePSI: 80},
			FuelGal:    55,
			CabSeats:   []config.Seat{seat("driver", "cab", 50, -18, 50), seat("passenger", "cab", 50, 18, 50)},
		}},
		Bodies: []config.Body{{
			ID: "module-168", Label: "Module 168 in", Kind: "module", LengthIn: 168, WidthIn: 95, HeightIn: 88,
			HeadroomIn: 72, AisleIn: 20,
			Shell: &config.Shell{SideDoors: 1, RearDoors: 2},
			Mass:  *mass(420, 40, config.ZoneModuleMid, 0, 0, 30),
			Compartments: []config.Compartment{
				box("street-front", "street", 18, -37, 40, 26, 20, 76), box("street-rear", "street", 148, -37, 30, 30,
					20, 40),
				box("cabinet", "inside", 80, -38, 52, 90, 18, 20),
			},
		}, {
			ID: "van", Label: "Van conversion", Kind: "van", LengthIn: 140, WidthIn: 78, HeightIn: 80, HeadroomIn: 62,
			Mass: *mass(1500, 100, config.ZoneModuleMid, 0, 0, 28),
		}},
		Groups: []config.Group{{ID: "any", Label: "Any", Chapter: "all", Choose: config.ChooseAny}},
		Options: []config.Option{
			{ID: "winch", Group: "any", Label: "Winch bumper", Mass: mass(190, 10, config.ZoneBumper, -4, 0, 28)},
			{ID: "step", Group: "any", Label: "Rear step", Mass: mass(95, 0, config.ZoneModuleRear, 6, 0, -8)},
			{ID: "no-spare", Group: "any", Label: "Delete spare wheel", Mass: mass(-80, 4, config.ZoneRearAxle, 30, 0, 30)},
			{ID: "scene-light", Group: "any", Label: "Scene light", MaxQty: 6, Mass: mass(7, 1, config.ZoneModuleMid, 0, 46, 80)},
			{ID: "bench", Group: "any", Label: "Squad bench", Mass: mass(160, 15, config.ZonePlaces, 5, -4, -17), Seats: []config.Seat{seat("bench-1", "bench", 70, 34, 22), seat("bench-2", "bench", 95, 34, 22), seat("bench-3", "bench", 120, 34, 22)}},
			{ID: "attendant", Group: "any", Label: "Attendant seat", Mass: mass(75, 5, config.ZonePlaces, 0, 0, -13), Seats: []config.Seat{seat("attendant-seat", "attendant", 26, 0, 24)}},
			{ID: "cot", Group: "any", Label: "Cot mount", Mass: mass(110, 8, config.ZonePlaces, 3, 0, -14), Seats: []config.Seat{seat("cot-place", "cot", 92, -4, 26)}},
			{ID: "stitch", Group: "any", Label: "Stitch-welded", Shell: &config.ShellChange{Weld: "stitch"}},
			{ID: "thin-posts", Group: "any", Label: "Thin corner posts", Shell: &config.ShellChange{CornerPostIn: 0.125}},
			{ID: "thick-insulation", Group: "any", Label: "3 in insulation", Shell: &config.ShellChange{InsulationIn: 3}},
			{ID: "dense-insulation", Group: "any", Label: "Dense insulation", Shell: &config.ShellChange{InsulationLbFt3: 2.6}},
			{ID: "curb-box", Group: "any", Label: "Curb compartment", Mass: mass(85, 6, config.ZonePlaces, 0, 0, 0), Compartments: []config.Compartment{box("curb-rear", "curb", 140, 36, 20, 30, 20, 40)}},
			{ID: "in-the-shell", Group: "any", Label: "Counted elsewhere", Mass: &config.Mass{Lb: 500, Derived: true}},
		},
		Equipment: []config.Equipment{
			{ID: "stretcher", Label: "Powered cot", MassLb: 132, LengthIn: 80, WidthIn: 23, HeightIn: 30},
			{ID: "tools", Label: "Tool box", MassLb: 60, LengthIn: 24, WidthIn: 12, HeightIn: 12},
		},
		Plant: config.Plant{HoursPerDay: 8},
	}
}

func prepared(t testing.TB) *config.Catalogue {
	cat := fixture()
	require.Empty(t, cat.Prepare())
	return cat
}

func picks(ids ...string) []config.Pick {
	u := config.Unit{}
	for _, id := range ids {
		u.Set(config.Pick{Option: id, Qty: 1})
	}
	return u.Picks
}

func typical() *config.Unit {
	return &config.Unit{
		Chassis: "cutaway", Body: "module-168", Picks: picks("bench", "attendant", "cot", "step", "curb-box"),
		Carried: []config.Carried{{Equipment: "stretcher", Qty: 1},
			{Equipment: "tools", Compartment: "curb-rear", Qty: 2}},
	}
}

func people(lb float64) *config.Assumptions {
	l := config.Limit{Value: lb, Source: "test", Basis: config.ReadInText}
	return &config.Assumptions{OccupantLb: l, PatientLb: l, Limits: map[string]config.Limit{}, Factors: noDoubt()}
}

// noDoubt sets every assumed factor of weights to zero, so that what is left is each
// thing's own tolerance: for tests that are worked by hand.
func noDoubt() map[string]float64 {
	out := map[string]float64{}
	for _, f := range config.Factors() {
		if strings.HasPrefix(f.Code, "weight.") {
			out[f.Code] = 0
		}
	}
	return out
}

// takenOff is the take-off of a module, with the parts of its construction that change
// overrides.
func takenOff(b *config.Body, change *config.ShellChange) *TakeOff {
	return takeOffOf(b, changed(*b.Shell, change), true)
}
