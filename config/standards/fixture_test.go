package standards

import (
	"testing"

	"boxwright/config"
	"boxwright/config/quantity"

	"github.com/stretchr/testify/require"
)

// fixture is an invented catalogue with one chassis of every type and one
// option that declares clauses.
func fixture(t testing.TB) *config.Catalogue {
	t.Helper()
	c := &config.Catalogue{Format: config.CatalogueFormat, ID: "small", Title: "Small, invented", Edition: "1",
		Chapters: []config.Chapter{{ID: "all", Label: "All"}},
		Groups:   []config.Group{{ID: "g", Label: "All", Chapter: "all", Choose: config.ChooseAny}},
		Bodies: []config.Body{{ID: "b1", Label: "Van", Kind: "van", LengthIn: 125, WidthIn: 78, HeightIn: 76,
			HeadroomIn: 68}},
		Options: []config.Option{{ID: "tested", Group: "g", Label: "Tested body",
			Clauses: []string{"amd-001", "kkk-flash", "kkk-front-compartment"}}},
		Plant: config.Plant{HoursPerDay: 8}}
	for _, typ := range []struct {
		id, typ string
		gvwr    float64
		rear    int
	}{{"t1", "I", 14000, 4}, {"t1ad", "I-AD", 17500, 4}, {"t2", "II", 9500, 2}, {"t3", "III", 14000, 4}, {"t3srw",
		"III", 10500, 2}, {"t3ad", "III-AD", 14500, 4}} {
		c.Chassis = append(c.Chassis, config.Chassis{ID: typ.id, Label: "Type " + typ.typ, Type: typ.typ,
			Cab: "cutaway", Drive: "4x2", Fuel: "diesel",
			WheelbaseIn: 158, GVWRLb: quantity.Mass(typ.gvwr), GAWRFrontLb: 7000, GAWRRearLb: 11000, CurbFrontLb: 3500,
			CurbRearLb: 2500, TrackFrontIn: 69, TrackRearIn: 77,
			CGHeightIn: 30, FloorHeightIn: 32, FrontTires: config.Tires{Count: 2, LoadLb: 3600},
			RearTires: config.Tires{Count: typ.rear, LoadLb: 11000 / quantity.Mass(typ.rear)}})
	}
	require.Empty(t, c.Prepare(), "the fixture must be a sound catalogue")
	return c
}

func on(chassis string) *config.Unit { return &config.Unit{Chassis: chassis, Body: "b1", RuleSet: KKK} }

func figure(code string, v float64) *config.Report {
	return &config.Report{Figures: []config.Figure{{Code: code, Label: code, Value: v, Low: v, High: v,
		Unit: quantity.Pound}}}
}

// verdict of one clause.
func verdict(t testing.TB, vs []Verdict, clause string) Verdict {
	t.Helper()
	for _, v := range vs {
		if v.Clause == clause {
			return v
		}
	}
	require.Fail(t, "no verdict on "+clause)
	return Verdict{}
}
