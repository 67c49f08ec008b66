package finance

import (
	"fmt"

	"github.com/shopspring/decimal"

	"boxwright/pricing/money"
)

// maxFlows bounds a series of payments.
const maxFlows = 1200

// checkRate is for a discount rate of one period; below zero it is a rate
// after inflation.
func checkRate(rate money.Percent) error {
	if rate.Decimal().LessThan(decimal.NewFromInt(-50)) || rate.Decimal().GreaterThan(decimal.NewFromInt(500)) {
		return fmt.Errorf("finance: rate %s is outside -50 to 500 %%", rate.Show())
	}
	return nil
}

// worth is the exact present worth, by Horner's rule from the last flow.
func worth(i decimal.Decimal, flows []money.Amount) decimal.Decimal {
	v, sum := one.DivRound(one.Add(i), places), decimal.Zero
	for k := len(flows) - 1; k >= 0; k-- {
		sum = sum.Mul(v).Round(places).Add(flows[k].Decimal())
	}
	return sum
}

// factor is the present worth of 1.00 at the end of each of n periods:
// A(n,i) = (1 - (1+i)^-n) / i; n where i is zero.
func factor(i decimal.Decimal, n int) decimal.Decimal {
	if i.IsZero() {
		return decimal.NewFromInt(int64(n))
	}
	v := one.DivRound(one.Add(i), places)
	return one.Sub(growth(v, n)).DivRound(i, places)
}

// Yearly is what a series of payments comes to in each year of service.
type Yearly struct {
	Worth     money.Amount  // of all payments, now
	PerYear   money.Amount  // the same at the end of each year
	Effective money.Percent // the yearly rate with interest on interest, to four decimals
}

// EquivalentAnnual spreads a series of payments evenly over years of service. The
// flows stand perYear to the year, the first of them now; the rate is nominal, in
// as many periods.
//
// Source: EAC = present worth / A(n,e) with e = (1 + i/m)^m - 1, the effective
// yearly rate: what is due once a year is discounted by the same money as what is
// due in each period. The worth is not rounded on the way.
// Units: dollars, dollars a year, both rounded to the cent half up at the end; the
// rate nominal a year in percent.
// Valid: rate from -50 to 500 % a period, 1 to 12 periods a year, at most 1,200
// flows, 1 to 100 years.
// Example: 50,000 and 13,000 a year for 3 years at 5 % is 31,360.43 a year; 4 % in
// months is 4.0742 % effective.
func EquivalentAnnual(rate money.Percent, perYear int, flows []money.Amount, years int) (*Yearly, error) {
	if perYear < 1 || perYear > 12 {
		return nil, fmt.Errorf("finance: %d periods a year; choose 1 to 12", perYear)
	}
	if years < 1 || years > 100 {
		return nil, fmt.Errorf("finance: %d years; choose 1 to 100", years)
	}
	i := rate.Fraction().DivRound(decimal.NewFromInt(int64(perYear)), places)
	if err := checkRate(money.PercentOf(i.Shift(2))); err != nil {
		return nil, err
	}
	if len(flows) > maxFlows {
		return nil, fmt.Errorf("finance: %d payments; at most %d", len(flows), maxFlows)
	}
	now, effective := worth(i, flows), growth(one.Add(i), perYear).Sub(one)
	return &Yearly{
		Worth:     money.HalfUp.Cent(now),
		PerYear:   money.HalfUp.Cent(now.DivRound(factor(effective, years), places)),
		Effective: percent(effective),
	}, nil
}
