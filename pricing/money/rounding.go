package money

import "github.com/shopspring/decimal"

// Rounding says where an exact half of a cent goes.
type Rounding string

// HalfUp takes a half cent away from zero, as an invoice does; HalfEven takes
// it to the even cent, so that many halves cancel.
const (
	HalfUp   Rounding = "half-up"
	HalfEven Rounding = "half-even"
)

// Roundings lists them.
var Roundings = []Rounding{HalfUp, HalfEven}

// Cent rounds an exact number of dollars to the cent. An unknown rounding
// rounds half up.
func (r Rounding) Cent(exact decimal.Decimal) Amount {
	if r == HalfEven {
		return Amount{d: exact.RoundBank(2)}
	}
	return Amount{d: exact.Round(2)}
}

// Words is the rule as printed beneath a price.
func (r Rounding) Words() string {
	if r == HalfEven {
		return "to the nearest cent, an exact half cent to the even cent"
	}
	return "to the nearest cent, an exact half cent away from zero"
}
