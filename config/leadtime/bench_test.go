package leadtime_test

import (
	"testing"

	"boxwright/config"
	"boxwright/config/leadtime"
)

// A whole plan: network, 10,000 draws, dates, figures and findings.
func BenchmarkSchedule(b *testing.B) {
	c, u := catalogue(), unit("camera", "cot", "pump")
	for b.Loop() {
		if _, err := leadtime.Schedule(c, u, leadtime.Standard); err != nil {
			b.Fatal(err)
		}
	}
}

// The 10,000 draws alone, on the published network of 14 activities.
func BenchmarkSimulate10000(b *testing.B) {
	n := networkP2()
	for b.Loop() {
		if _, err := n.Simulate(leadtime.Standard); err != nil {
			b.Fatal(err)
		}
	}
}

// A plan of the demonstration catalogue, with the latest order date.
func BenchmarkScheduleDemo(b *testing.B) {
	c, u := demo(b)
	u.NeededBy = day("2027-06-01")
	for b.Loop() {
		if _, err := leadtime.Schedule(c, u, leadtime.Standard); err != nil {
			b.Fatal(err)
		}
	}
}

// What each pick of the demonstration unit costs in days.
func BenchmarkDelaysDemo(b *testing.B) {
	c, u := demo(b)
	p := schedule(b, c, u)
	for b.Loop() {
		p.Delays()
	}
}

// Which of the demonstration catalogue's options would miss the date: the worst
// case, with no day to spare, and with ten to spare.
func BenchmarkTooLateDemo(b *testing.B) {
	c, u := demo(b)
	p := schedule(b, c, u)
	for b.Loop() {
		p.TooLate(p.NineInTen)
	}
}

func BenchmarkTooLateDemoSlack(b *testing.B) {
	c, u := demo(b)
	p := schedule(b, c, u)
	for b.Loop() {
		p.TooLate(p.NineInTen.AddDays(14))
	}
}

// The limits that a near date puts on the demonstration catalogue's options.
func BenchmarkLimitsDemo(b *testing.B) {
	c, u := demo(b)
	p := schedule(b, c, u)
	for b.Loop() {
		p.Limits(p.NineInTen)
	}
}

// Two hundred units through one plant, 1,000 draws each.
func BenchmarkFleet200(b *testing.B) {
	c, u := demo(b)
	units := make([]*config.Unit, 200)
	for i := range units {
		units[i] = u
	}
	for b.Loop() {
		if _, err := leadtime.Fleet(c, units, few); err != nil {
			b.Fatal(err)
		}
	}
}
