package quote_test

import (
	"fmt"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// A new unit, everything computed from it, and a figure by its code.
func ExampleCompute() {
	ed, err := quote.OpenEdition(catalogue.Demo)
	if err != nil {
		fmt.Println(err)
		return
	}
	d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", config.Date{Year: 2026, Month: 11, Day: 25})
	q, err := quote.Compute(ed, d)
	if err != nil {
		fmt.Println(err)
		return
	}
	front, _ := q.Figure("weight.front-axle")
	fmt.Printf("front axle %.0f lb, %s %.0f lb\n", front.Value, front.Sense, front.Limit)
	fmt.Println("can be issued:", !q.Stopped())
	// Output:
	// front axle 4832 lb, at most 5000 lb
	// can be issued: true
}
