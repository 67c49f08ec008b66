package power_test

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/power"
)

// demo is the least catalogue a budget can be made from.
func demo() *config.Catalogue {
	return must(config.Read([]byte(`{
	"format": "boxwright-catalogue/1", "id": "example", "title": "Invented", "edition": "1", "valid_from": "2026-01-01", "notice": "", "rules": [], "equipment": [], "price_book": null,
	"chapters": [{"id": "all", "label": "All"}], "groups": [{"id": "any", "label": "Any", "chapter": "all", "choose": "any"}],
	"chassis": [{"id": "cutaway", "label": "Cutaway 14,000 lb", "spec": "", "type": "III", "cab": "cutaway", "drive": "4x2", "fuel": "gasoline",
		"wheelbase_in": 158, "cab_to_axle_in": 84, "front_overhang_in": 33, "body_start_in": 70, "frame_height_in": 28, "floor_height_in": 32, "cab_height_in": 82, "width_in": 80,
		"track_front_in": 69, "track_rear_in": 77, "dual_spacing_in": 12, "frame_end_in": 60, "gvwr_lb": 14000, "gawr_front_lb": 5000, "gawr_rear_lb": 9500,
		"curb_front_lb": 3500, "curb_rear_lb": 2500, "curb_tol_lb": 50, "cg_height_in": 30, "fuel_gal": 50, "cab_seats": [],
		"front_tires": {"size": "", "count": 2, "load_lb": 2700, "pressure_psi": 80}, "rear_tires": {"size": "", "count": 4, "load_lb": 2500, "pressure_psi": 80},
		"load": {"scene_a": 38}, "supply": {"hot_idle_a": 110, "hot_high_idle_a": 175, "battery_ah": 140, "shore_a": 20}, "arrive": {"low": 0, "likely": 0, "high": 0}, "work": []}],
	"bodies": [{"id": "van", "label": "Van", "spec": "", "kind": "van", "length_in": 120, "width_in": 78, "height_in": 80, "headroom_in": 66, "aisle_in": 12, "mass": {"lb": 0}, "compartments": [], "work": []}],
	"options": [{"id": "lightbar", "group": "any", "label": "Light bar", "spec": "", "load": {"scene_a": 20, "shed": 1}, "circuit": {"function": "FRONT LIGHT BAR", "amps": 20, "run_ft": 22}}],
	"plant": {"activities": [], "hours_per_day": 8, "shutdowns": [], "slots": [], "stations": []}}`)))
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func ExampleBudget() {
	unit := &config.Unit{Chassis: "cutaway", Body: "van", Picks: []config.Pick{{Option: "lightbar", Qty: 1}}}
	sheet := power.Budget(demo(), unit, nil)
	for _, code := range []string{"power.scene", "power.remaining", "power.idle"} {
		f, _ := sheet.Figure(code)
		fmt.Printf("%s: %.0f A, margin %.0f\n", f.Code, f.Value, f.Margin())
	}
	fmt.Printf("on battery: %.0f min\n", sheet.Battery.Minutes)
	// Output:
	// power.scene: 58 A, margin 117
	// power.remaining: 117 A, margin 0
	// power.idle: 58 A, margin 52
	// on battery: 47 min
}

func ExampleCircuits() {
	unit := &config.Unit{Chassis: "cutaway", Body: "van", Picks: []config.Pick{{Option: "lightbar", Qty: 1}}}
	wiring := power.WiringOf(nil)
	for _, table := range []power.AreaTable{power.SAE, power.AWG} {
		wiring.Areas = table
		runs, _ := power.Circuits(demo(), unit, wiring)
		r := runs[0]
		fmt.Printf("%s %s: fuse %.0f A, wire %s by %s, drop %.2f V (%s)\n", r.Number, r.Function, r.FuseA, r.Gauge,
			r.Table, r.DropV, r.Decided)
	}
	// Output:
	// 101 FRONT LIGHT BAR: fuse 25 A, wire 10 by SAE J1127/J1128, drop 1.01 V (voltage drop)
	// 101 FRONT LIGHT BAR: fuse 25 A, wire 10 by AWG (NEC chapter 9 table 8), drop 0.91 V (voltage drop)
}

func ExampleLimits() {
	for _, l := range power.Limits(demo(), &config.Unit{Chassis: "cutaway", Body: "van"}, nil) {
		fmt.Printf("%s: %.0f + %v <= %.0f %s\n", l.Code, l.Base, l.Per, l.Limit, l.Unit)
	}
	// Output:
	// power.driving: 0 + map[] <= 175 A
	// power.responding: 0 + map[] <= 175 A
	// power.scene: 38 + map[lightbar:20] <= 175 A
	// power.inlet: 0 + map[] <= 20 A
}

func ExamplePeukert() {
	hours, _ := power.Peukert(200, 20, 40, 1.2)
	fmt.Printf("%.2f h\n", hours)
	_, err := power.Peukert(0, 20, 40, 1.2)
	fmt.Println(err)
	// Output:
	// 3.79 h
	// a battery of 0 Ah lasts no time: state a capacity above zero
}
