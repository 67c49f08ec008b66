package quote

import (
	"cmp"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Task is one line of the maintenance schedule.
type Task struct {
	Months, Miles int    // whichever comes first; 0 miles: by months alone
	What          string // in the words of this very unit
	First         config.Date
}

// Tasks is the maintenance schedule of the unit, the most frequent first.
// Intervals are common practice, no source; where the maker of the chassis or
// of a part asks for more, that goes first.
func (q *Quote) Tasks(in quantity.System) []Task {
	c := q.Chassis
	psi := func(t config.Tires) string { return quantity.Group(t.PressurePSI, 0) + " psi (" + t.Size + ")" }
	figure := func(code string) string {
		f, _ := q.Figure(code)
		return in.Show(f.Value, f.Unit)
	}
	s := q.Power
	module := q.Body.Kind == "module"
	var out []Task
	for _, t := range []struct {
		months, miles int
		applies       bool
		what          string
	}{
		{1, 1000, true, "Tire pressures, cold: front " + psi(c.FrontTires) + ", rear " + psi(c.RearTires) + "; tread and sidewalls"},
		{1, 0, true, "Warning, scene and inside lights, siren, door-open warning: each found in order"},
		{1, 0, len(q.Space.Cots) > 0, "Cot fastening: latches, lock and wear plates cleaned and tried with the cot loaded"},
		{1, 0, q.Space.Oxygen.Liters > 0, "Oxygen: gauges, outlets and brackets; piping for leaks, by those licensed to"},
		{3, 5000, true, "Wheel nuts to the chassis maker's torque; also 100 miles after every wheel change"},
		{6, 7500, true, "Engine oil, filters and brakes by the chassis maker's book for severe service"},
		{6, 7500, c.Fuel == "diesel", "Exhaust fluid, fuel separator and regeneration"},
		{6, 0, true, "Belts, anchors and seat tracks of " + allSeats(len(q.Space.Seats))},
		{6, 10000, module, "Entry and compartment doors: hinges, latches and seals adjusted and greased"},
		{6, 10000, !module, "Sliding and rear doors: tracks, rollers, latches and seals cleaned and greased"},
		{12, 15000, module, "Module mounts: bolts to torque, isolators and frame rails looked over"},
		{12, 15000, !module, "Partition, raised roof and floor anchors, steps and bumpers: cracks, corrosion; drain holes open, undercoat made good"},
		{12, 15000, module, "Weld seams and corners of the body, steps and bumpers: cracks, corrosion; drain holes open, undercoat made good"},
		{12, 15000, c.Drive == "4x4", "Transfer case and front axle: oil and joints"},
		{12, 0, true, "Alternator, hot: " + in.Show(float64(s.Hot.IdleA), quantity.Amp) + " at idle and " +
			in.Show(float64(s.Hot.HighIdleA), quantity.Amp) + " at high idle; the scene uses " + figure("power.scene")},
		{12, 0, true, "Batteries, " + in.Show(float64(s.Battery.AmpHours), quantity.AmpHour) + ": load test; " + figure("power.battery-minutes") + " of scene load computed when new"},
		{12, 0, s.Shore.RatedA > 0, "Shore line inlet, " + in.Show(float64(s.Shore.RatedA), quantity.Amp) + ": contacts, ground and ground-fault protection"},
		{12, 0, s.Inverter.RatedW > 0, "Inverter capacity, " + in.Show(float64(s.Inverter.RatedW), quantity.Watt) +
			": output under load, ground"},
		{12, 0, true, "Climate: filters, drains, refrigerant charge, heat"},
		{12, 0, true, "Certified scale: curb weight against " + in.Show(float64(q.Weight.Curb.TotalLb), quantity.Pound) + ", and after every change of equipment"},
		{24, 30000, true, "Suspension bushings, steering joints and shock absorbers"},
		{36, 0, true, "Batteries renewed where the load test asks for it"},
		{60, 0, module, "Roof and lamp seams resealed; insulation looked into where water entered"},
		{60, 0, q.Space.Oxygen.Liters > 0, "Oxygen cylinders and hoses: test or exchange by the date stamped on them"},
	} {
		if t.applies {
			out = append(out, Task{t.months, t.miles, t.what, q.Plan.EvenOdds.AddMonths(t.months)})
		}
	}
	for _, p := range q.Draft.Unit.Picks {
		if o := q.Edition.Cat.OptionByID(p.Option); o != nil {
			for _, c := range o.Care {
				t := Task{c.Months, c.Miles, c.What, q.Plan.EvenOdds.AddMonths(c.Months)}
				if !slices.Contains(out, t) { // two options may ask for the same
					out = append(out, t)
				}
			}
		}
	}
	if q.OfDuty != nil {
		for i := range out {
			out[i].What = q.OfDuty.Say(out[i].What)
		}
	}
	slices.SortStableFunc(out, func(a, b Task) int { return cmp.Compare(a.Months, b.Months) })
	return out
}

// allSeats names the designated seats that are there, counted.
func allSeats(n int) string {
	switch n {
	case 1:
		return "the one designated seat"
	case 2:
		return "both designated seats"
	}
	return "all " + quantity.Group(float64(n), 0) + " designated seats"
}

// ServiceTag marks options that are promises rather than parts, and UpkeepTag those of them that a unit is kept up
// by: plans, spare parts, warranties.
const (
	ServiceTag = "service"
	UpkeepTag  = "upkeep"
)

// Service lists the chosen options that are promises rather than parts:
// warranty, maintenance plan, training, papers and delivery.
func (q *Quote) Service() []*config.Option {
	var out []*config.Option
	for i := range q.Edition.Cat.Options {
		o := &q.Edition.Cat.Options[i]
		if slices.Contains(o.Tags, ServiceTag) && q.Draft.Unit.Has(o.ID) {
			out = append(out, o)
		}
	}
	return out
}
