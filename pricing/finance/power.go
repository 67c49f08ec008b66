package finance

import (
	"github.com/shopspring/decimal"

	"boxwright/pricing/money"
)

// places is how many decimals every quotient and power on the way is carried
// to. The worst case, a rate of a millionth of a percent, cancels ten of them
// and a sum of millions costs another few, so that 20 decimals of a payment can
// be relied on: tests hold them against exact rational arithmetic.
const places = 36

// rateDecimals is to how many decimals a rate that was computed is given, in
// percent.
const rateDecimals = 4

var (
	one     = decimal.NewFromInt(1)
	hundred = money.PercentOf(decimal.NewFromInt(100))
)

// growth is base to the power n, each product cut to the stated places.
func growth(base decimal.Decimal, n int) decimal.Decimal {
	result := one
	for ; n > 0; n >>= 1 {
		if n&1 == 1 {
			result = result.Mul(base).Round(places)
		}
		base = base.Mul(base).Round(places)
	}
	return result
}

// power is base above zero to any exponent, to the stated places.
func power(base, exponent decimal.Decimal) decimal.Decimal {
	p, err := base.PowWithPrecision(exponent, places)
	if err != nil {
		return decimal.Zero
	}
	return p
}

// percent gives a fraction as a percentage, rounded half up.
func percent(fraction decimal.Decimal) money.Percent {
	return money.PercentOf(fraction.Shift(2).Round(rateDecimals))
}
