package leadtime_test

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/leadtime"
)

// A network of its own needs no plant: name the steps, what each comes after,
// and three durations.
func Example() {
	n := leadtime.Network{Activities: []leadtime.Activity{
		{ID: "frame", Days: config.Span{Low: 4, Likely: 5, High: 8}},
		{ID: "chassis", Days: config.Span{Low: 5, Likely: 6, High: 9}},
		{ID: "mount", After: []string{"frame", "chassis"}, Days: config.Span{Low: 1, Likely: 2, High: 3}},
	}}
	s, err := n.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f days through %v\n", s.Days, s.Path)
	fmt.Printf("frame may be %.1f days late\n", s.Timings[0].Float)
	// Output:
	// 8.33 days through [chassis mount]
	// frame may be 1.0 days late
}

// The simulation lets the later of merging paths decide, so it promises less.
func Example_simulation() {
	n := leadtime.Network{Activities: []leadtime.Activity{
		{ID: "left", Days: config.Span{Low: 10, Likely: 20, High: 30}},
		{ID: "right", Days: config.Span{Low: 10, Likely: 20, High: 30}},
	}}
	s, _ := n.Solve()
	o, _ := n.Simulate(leadtime.Standard)
	fmt.Printf("within 20 days: %.0f %% analytic, %.0f %% simulated\n", 100*s.Within(20), 100*o.Within(20))
	// Output: within 20 days: 50 % analytic, 25 % simulated
}

func ExampleCalendar_Add() {
	c := leadtime.NewCalendar(&config.Plant{})
	order := config.Date{Year: 2027, Month: 12, Day: 30}
	fmt.Println(c.Add(order, 1).Long())
	// Output: Mon, Jan 3, 2028
}

// catalogue and unit are this package's small test fixture; any loaded
// catalogue does.
func ExampleSchedule() {
	c := catalogue()
	u := unit("cot", "camera")
	u.NeededBy = config.Date{Year: 2027, Month: 4, Day: 1}
	p, err := leadtime.Schedule(c, u, leadtime.Standard)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("even odds:", p.EvenOdds.Long())
	fmt.Println("nine in ten:", p.NineInTen.Long())
	fmt.Println("critical:", p.Critical)
	fmt.Println("order by:", p.LatestOrder.Long())
	for _, f := range p.Findings {
		fmt.Println(f.Severity, f.Code)
	}
	d := p.Delays()[0]
	fmt.Printf("%s: %.0f working days\n", d.Label, d.Days)
	// Output:
	// even odds: Fri, Apr 2, 2027
	// nine in ten: Mon, Apr 26, 2027
	// critical: [drawings parts:cot interior test deliver]
	// order by: Fri, Oct 30, 2026
	// warn time.needed-by.missed
	// note time.parts-critical
	// Option cot: 23 working days
}
