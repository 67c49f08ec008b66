package finance_test

import (
	"fmt"

	"boxwright/pricing/finance"
	"boxwright/pricing/money"
)

// A unit on a five-year lease-purchase with yearly payments in advance and a
// dollar at the end.
func ExampleLease_Schedule() {
	rate, _ := money.ParsePercent("5.25")
	l := finance.Lease{Principal: money.Dollars(282000), Rate: rate, PerYear: 1, Periods: 5, Advance: true,
		Balloon: money.Dollars(1)}
	s, err := l.Schedule()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range s.Rows {
		fmt.Printf("month %2d  %10s  interest %9s  owed %10s\n", r.Months, r.Payment.Show(), r.Interest.Show(),
			r.Balance.Show())
	}
	fmt.Println("interest in all", s.Interest.Show())
	// Output:
	// month  0   62,314.01  interest      0.00  owed 219,685.99
	// month 12   62,314.01  interest 11,533.51  owed 168,905.49
	// month 24   62,314.01  interest  8,867.54  owed 115,459.02
	// month 36   62,314.01  interest  6,061.60  owed  59,206.61
	// month 48   62,314.01  interest  3,108.35  owed       0.95
	// month 60        1.00  interest      0.05  owed       0.00
	// interest in all 29,571.05
}

// The most that a remount may cost before a new unit is the cheaper way.
func ExampleBreakEven() {
	inflation, _ := money.ParsePercent("2.5")
	discount, _ := money.ParsePercent("4")
	rates := finance.Rates{Inflation: inflation, Discount: discount}
	fresh := finance.Choice{Label: "Buy new", Price: money.Dollars(282000), Years: 10, Yearly: money.Dollars(9000)}
	remount := finance.Choice{Label: "Remount", Price: money.Dollars(194000), Years: 8, Yearly: money.Dollars(9500)}

	a, _ := finance.CostPerYear(fresh, rates)
	b, _ := finance.CostPerYear(remount, rates)
	most, _ := finance.BreakEven(remount, fresh, rates)
	fmt.Println("new", a.PerYear.Show(), "a year")
	fmt.Println("remount", b.PerYear.Show(), "a year")
	fmt.Println("break-even remount", most.Show())
	// Output:
	// new 39,519.20 a year
	// remount 35,374.01 a year
	// break-even remount 225,080.09
}
