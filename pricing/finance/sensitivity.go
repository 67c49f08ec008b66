package finance

import (
	"fmt"

	"github.com/shopspring/decimal"

	"boxwright/pricing/money"
)

// Swing is what one assumption does to the cost of a year: its cost with the
// assumption low and high, everything else as it was.
type Swing struct {
	Code string       `json:"code"` // "price", "years", "yearly", "residual", "inflation", "discount"
	Text string       `json:"text"` // the two values tried, in words
	Low  money.Amount `json:"low"`  // cost of a year at the lower value
	High money.Amount `json:"high"` // at the higher value
}

// Width is how far apart the two are: the longest bar of the picture matters
// most.
func (s Swing) Width() money.Amount { return s.High.Sub(s.Low).Abs() }

// Sensitivity tries each assumption of a choice low and high: price by 10 %,
// upkeep by 20 %, residual by 50 %, years of service by 2, and the two rates by
// one percentage point. A value that would be out of range stays as it was.
//
// Source: one assumption at a time, as CostPerYear.
// Units: dollars a year in today's money.
// Valid: as CostPerYear. The steps are usual ones, common practice, no source.
// Example: a choice with no residual shows equal low and high for it.
func Sensitivity(c Choice, r Rates) ([]Swing, error) {
	base, err := CostPerYear(c, r)
	if err != nil {
		return nil, err
	}
	year := func(change func(*Choice, *Rates)) money.Amount {
		c2, r2 := c, r
		change(&c2, &r2)
		if s, err := CostPerYear(c2, r2); err == nil {
			return s.PerYear
		}
		return base.PerYear
	}
	var list []Swing
	// amount tries an amount lower and higher by a share of it, in hundredths.
	amount := func(code, name string, share int64, of func(*Choice) *money.Amount) {
		try := func(hundredths int64) (tried, cost money.Amount) {
			cost = year(func(c *Choice, _ *Rates) {
				a := of(c)
				*a = money.HalfUp.Cent(a.Decimal().Mul(decimal.New(hundredths, -2)))
				tried = *a
			})
			return tried, cost
		}
		low, lowCost := try(100 - share)
		high, highCost := try(100 + share)
		list = append(list, Swing{code, fmt.Sprintf("%s %s to %s", name, low.Show(), high.Show()), lowCost, highCost})
	}
	// point tries a rate one percentage point lower and higher.
	point := func(code, name string, of func(*Rates) *money.Percent) {
		try := func(step decimal.Decimal) (tried money.Percent, cost money.Amount) {
			cost = year(func(_ *Choice, r *Rates) {
				p := of(r)
				*p = p.Add(money.PercentOf(step))
				tried = *p
			})
			return tried, cost
		}
		low, lowCost := try(one.Neg())
		high, highCost := try(one)
		list = append(list, Swing{code, fmt.Sprintf("%s %s to %s", name, low.Show(), high.Show()), lowCost, highCost})
	}
	amount("price", "price", 10, func(c *Choice) *money.Amount { return &c.Price })
	amount("yearly", "upkeep", 20, func(c *Choice) *money.Amount { return &c.Yearly })
	amount("residual", "residual", 50, func(c *Choice) *money.Amount { return &c.Residual })
	short, long := max(c.Years-2, 1), c.Years+2
	list = append(list, Swing{"years", fmt.Sprintf("%d to %d years of service", short, long),
		year(func(c *Choice, _ *Rates) { c.Years = short }), year(func(c *Choice, _ *Rates) { c.Years = long })})
	point("inflation", "inflation", func(r *Rates) *money.Percent { return &r.Inflation })
	point("discount", "cost of money", func(r *Rates) *money.Percent { return &r.Discount })
	return list, nil
}
