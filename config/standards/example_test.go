package standards_test

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
)

// catalogue is the least one a unit can be judged by, invented.
func catalogue() *config.Catalogue {
	c := &config.Catalogue{Format: config.CatalogueFormat, ID: "example", Title: "Invented", Edition: "1",
		Chassis: []config.Chassis{{ID: "cutaway", Label: "Cutaway 14,000 lb", Type: "III", Cab: "cutaway", Drive: "4x2",
			Fuel: "gasoline", WheelbaseIn: 158, FloorHeightIn: 32,
			GVWRLb: 14000, GAWRFrontLb: 5000, GAWRRearLb: 9500, CurbFrontLb: 3500, CurbRearLb: 2500, TrackFrontIn: 69,
			TrackRearIn: 77, CGHeightIn: 30,
			FrontTires: config.Tires{Count: 2, LoadLb: 2700}, RearTires: config.Tires{Count: 4, LoadLb: 2500}}},
		Bodies: []config.Body{{ID: "van", Label: "Van", Kind: "van"}},
		Plant:  config.Plant{HoursPerDay: 8}}
	if ps := c.Prepare(); len(ps) > 0 {
		panic(ps)
	}
	return c
}

func ExampleAssume() {
	unit := &config.Unit{Chassis: "cutaway", Body: "van"}
	as := standards.Assume(standards.Join(standards.KKK, standards.Nevada), catalogue(), unit)
	fmt.Println(as.Label)
	fmt.Printf("a seat counts %.0f lb (%s)\n", as.OccupantLb.Value, as.OccupantLb.Basis)
	for _, code := range []string{"weight.payload", "space.storage", "space.oxygen"} {
		l := as.Limits[code]
		fmt.Printf("%s %s %.0f (%s: %s)\n", code, l.Sense, l.Value, l.Clause, l.Basis)
	}
	// Output:
	// KKK-A-1822F + Nevada, NAC 450B.550
	// a seat counts 175 lb (from memory)
	// weight.payload at least 1750 (kkk-payload: read from the text)
	// space.storage at least 35 (nv-storage: read from the text)
	// space.oxygen at least 3000 (kkk-oxygen: from memory)
}

func ExampleJudge() {
	unit := &config.Unit{Chassis: "cutaway", Body: "van"}
	weighed := &config.Report{Figures: []config.Figure{{Code: "weight.payload", Label: "Payload", Value: 1749,
		Unit: quantity.Pound}}}
	for _, v := range standards.Judge(standards.KKK, unit, catalogue(), weighed) {
		switch v.Clause {
		case "kkk-payload", "kkk-gvwr-most", "kkk-flash", "kkk-front-share":
			fmt.Println(v.Title+":", v.Outcome)
		}
	}
	// Output:
	// Payload: not met
	// GVWR band, most: met
	// Weight on the front axle: not judged
	// Flash rate: not judged
}

func ExampleFindings() {
	unit := &config.Unit{Chassis: "cutaway", Body: "van"}
	weighed := &config.Report{Figures: []config.Figure{{Code: "weight.payload", Label: "Payload", Value: 1749,
		Unit: quantity.Pound}}}
	for _, f := range standards.Findings(standards.Judge(standards.KKK, unit, catalogue(), weighed), weighed) {
		fmt.Println(f.Severity, f.Code, f.Figure.Margin())
	}
	// Output: stop standard.kkk-payload -1
}
