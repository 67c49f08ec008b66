package power

import (
	"testing"

	"boxwright/config"

	"github.com/stretchr/testify/require"
)

// fixture is a small invented catalogue: one chassis and the options that the
// tests of this package pick from.
func fixture(t testing.TB) *config.Catalogue {
	t.Helper()
	c := small()
	require.Empty(t, c.Prepare(), "the fixture must be a sound catalogue")
	return c
}

func small() *config.Catalogue {
	ch := config.Chassis{ID: "c1", Label: "Cutaway 14,000 lb", Type: "III", Cab: "cutaway", Drive: "4x2",
		Fuel:        "gasoline",
		WheelbaseIn: 158, GVWRLb: 14000, GAWRFrontLb: 5000, GAWRRearLb: 9500, CurbFrontLb: 3500, CurbRearLb: 2500,
		TrackFrontIn: 69, TrackRearIn: 77,
		CGHeightIn: 30, FloorHeightIn: 32, FrontTires: config.Tires{Count: 2, LoadLb: 2700},
		RearTires: config.Tires{Count: 4, LoadLb: 2500},
		Load:      config.Load{ParkedA: 2, DrivingA: 40, RespondingA: 42, SceneA: 38},
		Supply:    config.Supply{HotIdleA: 110, HotHighIdleA: 175, ColdA: 220, BatteryAh: 140, ShoreA: 20}}
	opt := func(id string, o config.Option) config.Option {
		o.ID, o.Label, o.Group = id, "Option "+id, "g"
		return o
	}
	return &config.Catalogue{Format: config.CatalogueFormat, ID: "small", Title: "Small, invented", Edition: "1",
		Chapters: []config.Chapter{{ID: "all", Label: "All"}},
		Groups:   []config.Group{{ID: "g", Label: "All", Chapter: "all", Choose: config.ChooseAny}},
		Chassis:  []config.Chassis{ch}, Bodies: []config.Body{{ID: "b1", Label: "Van", Kind: "van", LengthIn: 120,
			WidthIn: 78, HeightIn: 80, HeadroomIn: 66}},
		Options: []config.Option{
			opt("ac", config.Option{Load: &config.Load{DrivingA: 30, RespondingA: 30, SceneA: 30, Shed: 2},
				Circuit: &config.Circuit{Function: "MODULE A/C", Amps: 30, RunFt: 18}}),
			opt("alternator-big",
				config.Option{Supply: &config.Supply{HotIdleA: 180, HotHighIdleA: 270, ColdA: 320, Replaces: true}}),
			opt("alternator-huge",
				config.Option{Supply: &config.Supply{HotIdleA: 200, HotHighIdleA: 330, Replaces: true}}),
			opt("alternator-idle", config.Option{Supply: &config.Supply{HotIdleA: 190, Replaces: true}}),
			opt("alternator-second", config.Option{Supply: &config.Supply{HotIdleA: 60, HotHighIdleA: 100}}),
			opt("battery-agm", config.Option{MaxQty: 4, Supply: &config.Supply{BatteryAh: 100, Replaces: true}}),
			opt("charger", config.Option{Load: &config.Load{ACW: 1000}, Supply: &config.Supply{ChargeA: 45},
				Tags: []string{TagShoreOnly}}),
			opt("heater", config.Option{MaxQty: 2, Load: &config.Load{ACW: 1250, ACDuty: &config.ACDuty{Scene: 0.2}}}),
			opt("house-lithium", config.Option{MaxQty: 2,
				Supply: &config.Supply{BatteryAh: 200, Chemistry: "lithium", Job: "house"}}),
			opt("inlet-30", config.Option{Supply: &config.Supply{ShoreA: 30, Replaces: true}}),
			opt("inverter", config.Option{Supply: &config.Supply{InverterW: 1000}, Load: &config.Load{SceneA: 2}}),
			opt("lightbar", config.Option{Load: &config.Load{RespondingA: 25, SceneA: 20, Shed: 1},
				Circuit: &config.Circuit{Function: "FRONT LIGHT BAR", Amps: 25, RunFt: 22}}),
			opt("receptacle", config.Option{MaxQty: 3, Load: &config.Load{ACW: 300}}),
			opt("scene-light", config.Option{MaxQty: 8, Load: &config.Load{SceneA: 9, Shed: 1},
				Circuit: &config.Circuit{Function: "SCENE LIGHT", Amps: 9, RunFt: 20, Critical: true}}),
		},
		Plant: config.Plant{HoursPerDay: 8}}
}

// unit picks options, given in order of id, one of each.
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
