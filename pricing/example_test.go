package pricing_test

import (
	"fmt"
	"testing"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/money"
)

// A unit with one option, priced for a tax-exempt buyer 250 miles away.
func ExampleBuild() {
	b, cat := book(new(testing.T))
	u := &config.Unit{Chassis: "cutaway", Body: "module", Picks: []config.Pick{{Option: "winch", Qty: 1}}}
	miles, _ := money.ParseQuantity("250")
	terms := &pricing.Terms{FreightMiles: miles, TaxExempt: true}

	sheet, err := pricing.Build(b, cat, u, terms, config.Date{Year: 2027, Month: 8, Day: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range sheet.Lines {
		fmt.Printf("%-8s %10s  %s\n", l.Code, l.Amount.Show(), l.How)
	}
	fmt.Println("total", sheet.Total.Show(), sheet.Currency)
	// Output:
	// chassis   60,000.00  price book
	// body      97,000.00  edition 2027-01 of the price book: Yearly change.
	// option     2,300.00  edition 2027-07 of the price book: Mid-year change.
	// freight      650.00  250 miles less 50 included, at 3.25
	// fee          185.00  Passed through.
	// tax            0.00  exempt
	// total 160,135.00 USD
}

// Three ambulances and a bariatric unit on one order share a quantity break.
func ExampleBuildFleet() {
	b, cat := book(new(testing.T))
	items := []pricing.Item{
		{Label: "Medic", Unit: &config.Unit{Chassis: "cutaway", Body: "module"}, Units: 3},
		{Label: "Bariatric", Unit: &config.Unit{Chassis: "heavy", Body: "module"}},
	}
	sheet, err := pricing.BuildFleet(b, cat, items, &pricing.Terms{TaxExempt: true},
		config.Date{Year: 2027, Month: 8, Day: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range sheet.Lines {
		if l.Code == pricing.LineFleet {
			fmt.Println(l.Amount.Show(), "-", l.How)
		}
	}
	for _, s := range sheet.Shares {
		fmt.Println(s.Label, s.Amount.Show())
	}
	// Output:
	// −2,910.00 - 1 % of body and options at 97,000.00, on each of 3 units: Fewer change-overs.
	// −970.00 - 1 % of body and options at 97,000.00: Fewer change-overs.
	// Medic, 1 of 3 156,215.00
	// Medic, 2 of 3 156,215.00
	// Medic, 3 of 3 156,215.00
	// Bariatric 186,215.00
}
