package space_test

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/space"
)

func ExampleUsable() {
	fmt.Printf("%.0f min\n", space.Usable(0.28, 1000, 0)/2) // E cylinder, nothing kept back, 2 L/min
	fmt.Printf("%.0f min with 200 psi kept\n", space.Usable(0.28, 1000, space.ReservePSI)/2)
	// Output:
	// 140 min
	// 112 min with 200 psi kept
}

func ExampleInside() {
	fmt.Println(space.Inside(&config.Compartment{WidthIn: 24, DepthIn: 20, HeightIn: 36}), "ft3")
	// Output: 10 ft3
}

func ExampleMeasure() {
	cat := catalogue()
	unit := &config.Unit{Chassis: "cutaway", Body: "module",
		Carried: []config.Carried{{Equipment: "bag", Compartment: "left", Qty: 2}}}
	sheet := space.Measure(cat, unit, nil)
	for _, code := range []string{"space.headroom", "space.compartments", "space.stowed"} {
		f, _ := sheet.Figure(code)
		fmt.Printf("%s: %.1f %s\n", f.Code, f.Value, f.Unit)
	}
	for _, c := range sheet.Compartments {
		fmt.Printf("%s: %.0f lb, %s\n", c.Label, float64(c.MassLb), c.State)
	}
	// Output:
	// space.headroom: 82.8 in
	// space.compartments: 33.3 ft3
	// space.stowed: 13.9 %
	// Left: 40 lb, an arrangement was found
	// Right: 0 lb, no gear assigned yet
}

func ExampleSuggest() {
	cat := catalogue()
	unit := &config.Unit{Chassis: "cutaway", Body: "module", Carried: []config.Carried{{Equipment: "bag", Qty: 3}}}
	// A scale of one's own; package weight has the real one. Here the unit
	// leans 30 lb to the right and each compartment moves only the sides.
	scale := func(u *config.Unit) space.Trim {
		t := space.Trim{LeftLb: 5000, RightLb: 5030}
		for _, c := range u.Carried {
			switch c.Compartment {
			case "left":
				t.LeftLb += 20 * mass(c.Qty)
			case "right":
				t.RightLb += 20 * mass(c.Qty)
			}
		}
		return t
	}
	for _, c := range space.Suggest(cat, unit, scale) {
		fmt.Println(c.Qty, c.Equipment, "to the", c.Compartment)
	}
	// Output:
	// 2 bag to the left
	// 1 bag to the right
}
