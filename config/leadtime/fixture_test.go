package leadtime_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/leadtime"
)

func day(text string) config.Date {
	d, err := config.ParseDate(text)
	if err != nil {
		panic(err)
	}
	return d
}

func span(low, likely, high float64) config.Span {
	return config.Span{Low: low, Likely: likely, High: high}
}

// plant is an invented plant of 17 steps; three paths merge at the mount.
func plant() config.Plant {
	return config.Plant{
		HoursPerDay: 8,
		Stations: []config.PlantStation{
			{ID: "drawing", Label: "Drawing office", Bays: 3, Shifts: 1, Crew: 1},
			{ID: "framing", Label: "Framing jigs", Bays: 2, Shifts: 1, Crew: 3},
			{ID: "doors", Label: "Doors", Bays: 2, Shifts: 1, Crew: 2},
			{ID: "electrical", Label: "Electrical", Bays: 3, Shifts: 2, Crew: 2},
			{ID: "paint", Label: "Paint booth", Bays: 1, Shifts: 1, Crew: 2},
			{ID: "cabinets", Label: "Cabinet shop", Bays: 3, Shifts: 1, Crew: 2},
			{ID: "interior", Label: "Interior", Bays: 3, Shifts: 1, Crew: 2},
			{ID: "mount", Label: "Mount bay", Bays: 1, Shifts: 1, Crew: 3},
			{ID: "test", Label: "Test bay", Bays: 1, Shifts: 1, Crew: 2},
		},
		Activities: []config.Activity{
			{ID: "drawings", Label: "Drawings approved", Station: "drawing", Days: span(5, 8, 15)},
			{ID: "chassis", Label: "Chassis arrives", Source: config.SourceChassis},
			{ID: "parts", Label: "Parts arrive", After: []string{"drawings"}, Source: config.SourceParts, Days: span(8, 12, 18)},
			{ID: "frame", Label: "Frame", After: []string{"drawings"}, Station: "framing", Only: "module", Source: config.SourceSlot, Days: span(4, 5, 8)},
			{ID: "skin", Label: "Skin, weld and grind", After: []string{"frame"}, Station: "framing", Only: "module", Days: span(4, 5, 7)},
			{ID: "doors", Label: "Doors hung", After: []string{"skin"}, Station: "doors", Only: "module", Days: span(2, 3, 5)},
			{ID: "wiring", Label: "Wiring", After: []string{"doors"}, Station: "electrical", Days: span(3, 4, 6)},
			{ID: "prime", Label: "Prime", After: []string{"doors"}, Station: "paint", Only: "module", Days: span(2, 3, 4)},
			{ID: "prime-cure", Label: "Primer cures", After: []string{"prime"}, Only: "module", Days: span(1, 1, 2)},
			{ID: "paint", Label: "Paint", After: []string{"prime-cure"}, Station: "paint", Only: "module", Days: span(3, 4, 6)},
			{ID: "cabinets", Label: "Cabinets built", After: []string{"drawings"}, Station: "cabinets", Days: span(8, 10, 14)},
			{ID: "mount", Label: "Module mounted", After: []string{"chassis", "paint", "wiring"}, Station: "mount", Only: "module", Days: span(1, 2, 3)},
			{ID: "interior", Label: "Interior", After: []string{"chassis", "mount", "cabinets", "parts", "wiring"}, Station: "interior", Days: span(8, 10, 14)},
			{ID: "finish", Label: "Exterior fitted", After: []string{"mount", "parts", "chassis"}, Station: "electrical", Days: span(4, 5, 8)},
			{ID: "test", Label: "Test and inspection", After: []string{"interior", "finish"}, Station: "test", Days: span(2, 3, 5)},
			{ID: "deliver", Label: "Delivery", After: []string{"test"}, Days: span(1, 2, 4)},
		},
		Shutdowns: []config.Shutdown{{First: day("2026-12-24"), Last: day("2027-01-01"), Label: "Year-end shutdown"}},
	}
}

// catalogue is small, invented and checked like any other.
func catalogue(change ...func(*config.Catalogue)) *config.Catalogue {
	tires := config.Tires{Size: "225/70R19.5", Count: 4, LoadLb: 3415}
	chassis := config.Chassis{
		ID: "cutaway", Label: "Cutaway 14,500 lb, 158 in wheelbase", Type: "III", Cab: "cutaway", Drive: "4x2",
		Fuel:        "gasoline",
		WheelbaseIn: 158, GVWRLb: 14500, GAWRFrontLb: 5000, GAWRRearLb: 9600, CurbFrontLb: 3600, CurbRearLb: 2500,
		TrackFrontIn: 68, TrackRearIn: 70,
		CGHeightIn: 30, FloorHeightIn: 34, FrontTires: config.Tires{Count: 2, LoadLb: 3000}, RearTires: tires,
		Arrive: span(30, 40, 60),
	}
	option := func(id string, o config.Option) config.Option {
		o.ID, o.Group, o.Label = id, "all", "Option "+id
		return o
	}
	c := &config.Catalogue{
		Format: config.CatalogueFormat, ID: "fixture", Title: "Fixture", Edition: "1",
		Chapters: []config.Chapter{{ID: "all", Label: "All"}},
		Chassis:  []config.Chassis{chassis},
		Bodies: []config.Body{
			{ID: "module-152", Label: "Module 152 in", Kind: "module", Shell: &config.Shell{}, Work: []config.Work{{Station: "framing", Hours: 24}}},
			{ID: "van-body", Label: "Van conversion", Kind: "van"},
		},
		Groups: []config.Group{{ID: "all", Label: "All", Chapter: "all", Choose: config.ChooseAny}},
		Options: []config.Option{
			option("camera", config.Option{Work: []config.Work{{Station: "electrical", Hours: 6}}}),
			option("cot", config.Option{Parts: &config.Span{Low: 40, Likely: 55, High: 90}}),
			option("extra-coat", config.Option{Work: []config.Work{{Station: "paint", Hours: 32}}}),
			option("drawer", config.Option{MaxQty: 8, Work: []config.Work{{Station: "cabinets", Hours: 8}}}),
			option("harness", config.Option{Parts: &config.Span{Low: 20, Likely: 30, High: 45},
				PartsFor: []string{"wiring", "finish"}}),
			option("jig", config.Option{Parts: &config.Span{Low: 20, Likely: 30, High: 45},
				PartsFor: []string{"doors"}}),
			option("panel", config.Option{Parts: &config.Span{Low: 20, Likely: 30, High: 45},
				PartsFor: []string{"cabinets"}, Work: []config.Work{{Station: "cabinets", Hours: 4}}}),
			option("plain", config.Option{}),
			option("prewired", config.Option{Work: []config.Work{{Station: "electrical", Hours: -16}}}),
			option("pump", config.Option{Parts: &config.Span{Low: 10, Likely: 15, High: 25},
				Work: []config.Work{{Station: "interior", Hours: 12}}}),
		},
		Plant: plant(),
	}
	for _, f := range change {
		f(c)
	}
	if ps := c.Prepare(); len(ps) > 0 {
		panic(ps.Error())
	}
	return c
}

func unit(picks ...string) *config.Unit {
	u := &config.Unit{Chassis: "cutaway", Body: "module-152", OrderOn: day("2026-11-25")}
	for _, p := range picks {
		u.Set(config.Pick{Option: p, Qty: 1})
	}
	return u
}

func schedule(t testing.TB, c *config.Catalogue, u *config.Unit) *leadtime.Plan {
	t.Helper()
	p, err := leadtime.Schedule(c, u, leadtime.Standard)
	require.NoError(t, err)
	return p
}
