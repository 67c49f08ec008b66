package space_test

import (
	"boxwright/config"
	"boxwright/config/quantity"
)

func mass(n int) quantity.Mass { return quantity.Mass(n) }

// catalogue is the least one a module can be measured by, invented.
func catalogue() *config.Catalogue {
	c := &config.Catalogue{Format: config.CatalogueFormat, ID: "example", Title: "Invented", Edition: "1",
		Chassis: []config.Chassis{{ID: "cutaway", Label: "Cutaway", Type: "III", Cab: "cutaway", Drive: "4x2",
			Fuel: "gasoline", WheelbaseIn: 158, BodyStartIn: 70, FloorHeightIn: 32,
			GVWRLb: 14000, GAWRFrontLb: 5000, GAWRRearLb: 9500, CurbFrontLb: 3500, CurbRearLb: 2500, TrackFrontIn: 69,
			TrackRearIn: 77, CGHeightIn: 30,
			FrontTires: config.Tires{Count: 2, LoadLb: 2700}, RearTires: config.Tires{Count: 4, LoadLb: 2500}}},
		Bodies: []config.Body{{ID: "module", Label: "Module 150 in", Kind: "module", LengthIn: 150, WidthIn: 96,
			HeightIn: 88, HeadroomIn: 72, AisleIn: 18, Shell: &config.Shell{},
			Compartments: []config.Compartment{
				{ID: "left", Label: "Left", Side: "street", XIn: 20, YIn: -40, WidthIn: 24, DepthIn: 20, HeightIn: 60},
				{ID: "right", Label: "Right", Side: "curb", XIn: 20, YIn: 40, WidthIn: 24, DepthIn: 20, HeightIn: 60}}}},
		Equipment: []config.Equipment{{ID: "bag", Label: "Bag", MassLb: 20, LengthIn: 20, WidthIn: 20, HeightIn: 10}},
		Plant:     config.Plant{HoursPerDay: 8}}
	if ps := c.Prepare(); len(ps) > 0 {
		panic(ps)
	}
	return c
}
