package propose_test

import (
	"fmt"

	"boxwright/config"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// Everything left open is chosen for an aim; the sentence says what is proven.
func ExampleComplete() {
	ed, err := quote.OpenEdition(catalogue.Demo)
	if err != nil {
		fmt.Println(err)
		return
	}
	d := quote.Begin(ed, "", "", config.Date{Year: 2026, Month: 11, Day: 25})
	d.Unit.Set(config.Pick{Option: "rest-four", Qty: 1}) // the customer's own choice
	_, said, ok := propose.Complete(ed, d, propose.Cheapest)
	fmt.Println(ok, said)
	// Output:
	// true The cheapest unit that keeps your choices, proven: no other has lower list prices.
}
