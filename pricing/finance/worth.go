package finance

import (
	"errors"
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

// PresentWorth is what a series of payments is worth now.
//
// Source: sum of flow k / (1 + i)^k, the first flow now.
// Units: dollars, rounded to the cent half up once, at the end; rate of one
// period in percent.
// Valid: rate from -50 to 500 %, at most 1,200 flows, of either sign.
// Example: -40,000, 5,000, 8,000, 12,000, 30,000 at 8 % is worth 3,065.22.
func PresentWorth(rate money.Percent, flows []money.Amount) (money.Amount, error) {
	if err := checkRate(rate); err != nil {
		return money.Amount{}, err
	}
	if len(flows) > maxFlows {
		return money.Amount{}, fmt.Errorf("finance: %d payments; at most %d", len(flows), maxFlows)
	}
	return money.HalfUp.Cent(worth(rate.Fraction(), flows)), nil
}

// worth is the exact present worth, by Horner's rule from the last flow.
func worth(i decimal.Decimal, flows []money.Amount) decimal.Decimal {
	v, sum := one.DivRound(one.Add(i), places), decimal.Zero
	for k := len(flows) - 1; k >= 0; k-- {
		sum = sum.Mul(v).Round(places).Add(flows[k].Decimal())
	}
	return sum
}

// AnnuityFactor is the present worth of 1.00 at the end of each of n periods.
//
// Source: A(n,i) = (1 - (1+i)^-n) / i; n where i is zero.
// Units: rate of one period in percent; a plain number.
// Valid: rate from -50 to 500 %, n from 1 to 1,200.
// Example: 5 % over 3 years is 2.723, over 8 years 6.463.
func AnnuityFactor(rate money.Percent, n int) (decimal.Decimal, error) {
	if err := checkRate(rate); err != nil {
		return decimal.Decimal{}, err
	}
	if n < 1 || n > maxFlows {
		return decimal.Decimal{}, fmt.Errorf("finance: %d periods; choose 1 to %d", n, maxFlows)
	}
	return factor(rate.Fraction(), n), nil
}

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

// RateTolerance is how near a solved rate is to the true one, as a fraction of
// one period: the bracket is halved until it is narrower.
const RateTolerance = "0.000000000001"

var rateTolerance = decimal.RequireFromString(RateTolerance)

// Errors of RateOfReturn.
var (
	ErrNoRate    = errors.New("finance: payments all of one sign have no rate of return")
	ErrManyRates = errors.New("finance: payments that change sign more than once may have several rates of return; " +
		"compare present worths instead")
	ErrRateRange = errors.New("finance: the rate of return is not above -50 and up to 500 % a period")
)

// RateOfReturn is the rate of one period at which a series is worth nothing
// now. Of money lent it is the yield, of money borrowed the cost.
//
// Source: the root of the present worth; unique above -100 % where the payments
// change sign once (Descartes' rule of signs). Found by halving a bracket in
// decimal arithmetic.
// Units: percent of one period, to eight decimals; within RateTolerance.
// Valid: exactly one change of sign, a root above -50 and up to 500 %.
// Example: -100, 39, 59, 55, 20 returns 28.095 %.
func RateOfReturn(flows []money.Amount) (money.Percent, error) {
	if len(flows) > maxFlows {
		return money.Percent{}, fmt.Errorf("finance: %d payments; at most %d", len(flows), maxFlows)
	}
	changes, last := 0, 0
	for _, f := range flows {
		if s := f.Sign(); s != 0 {
			if last != 0 && s != last {
				changes++
			}
			last = s
		}
	}
	switch {
	case changes == 0:
		return money.Percent{}, ErrNoRate
	case changes > 1:
		return money.Percent{}, ErrManyRates
	}
	low, high := decimal.New(-5, -1), decimal.NewFromInt(5)
	side := worth(low, flows).Sign()
	if side == 0 || side*worth(high, flows).Sign() > 0 {
		return money.Percent{}, ErrRateRange
	}
	two := decimal.NewFromInt(2)
	for high.Sub(low).GreaterThan(rateTolerance) {
		mid := low.Add(high).DivRound(two, 20)
		if s := worth(mid, flows).Sign(); s == side {
			low = mid
		} else {
			high = mid
		}
	}
	return money.PercentOf(low.Add(high).DivRound(two, 20).Shift(2).Round(8)), nil
}
