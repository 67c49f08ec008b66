package finance

import (
	"errors"
	"fmt"

	"github.com/shopspring/decimal"

	"boxwright/pricing/money"
)

// Yield is a yearly rate in its two usual readings.
type Yield struct {
	Simple     money.Percent // rate of the period times the periods in a year
	Compounded money.Percent // rate of the period, with interest on interest
}

// EarlyPayment is the yearly rate that a buyer earns by taking a discount for
// paying earlier: what is paid early is lent for those days, and the discount
// is its interest.
//
// Source: nominal cost of early payment, d/(1-d) x year/days; compounded
// (1 + d/(1-d))^(year/days) - 1.
// Units: discount in percent of the sum due; days early; days of the year (360
// or 365). The yields are in percent, rounded to four decimals, half up.
// Valid: discount from 0 to below 100 %, days and year from 1 to 3,660, and a
// simple yearly rate of at most 1,000 %: above it a yearly rate says nothing.
// Example: 2/10 net 30, which is 2 % for 20 days, is 36.7347 % simple in a year
// of 360 days.
func EarlyPayment(discount money.Percent, days, yearDays int) (Yield, error) {
	if discount.Sign() < 0 || discount.Cmp(hundred) >= 0 {
		return Yield{}, errors.New("finance: an early-payment discount is from 0 to below 100 %; " + discount.Show() +
			" is not")
	}
	if days < 1 || days > 3660 || yearDays < 1 || yearDays > 3660 {
		return Yield{}, errors.New("finance: days early and days of the year are each from 1 to 3,660")
	}
	d, year, early := discount.Fraction(), decimal.NewFromInt(int64(yearDays)), decimal.NewFromInt(int64(days))
	period := d.DivRound(one.Sub(d), places)
	simple := period.Mul(year).DivRound(early, places)
	if simple.GreaterThan(decimal.NewFromInt(10)) {
		return Yield{}, fmt.Errorf("finance: %s for %d days is above 1,000 %% a year; state the discount alone",
			discount.Show(), days)
	}
	grown := power(one.Add(period), year.DivRound(early, places))
	return Yield{Simple: percent(simple), Compounded: percent(grown.Sub(one))}, nil
}
