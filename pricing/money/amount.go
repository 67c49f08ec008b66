package money

import (
	"math/big"
	"strings"

	"github.com/shopspring/decimal"
)

// Amount is money in the currency of the price book, always whole cents;
// negative is a credit. The zero value is 0.00.
type Amount struct {
	_ incomparable
	d decimal.Decimal
}

// ParseAmount reads "1234.00", "-250" or "0.5"; anything with more than two
// decimals, nine digits before the point, an exponent or a separator is a
// *FormError.
func ParseAmount(text string) (Amount, error) {
	if !amountForm.fits(text) {
		return Amount{}, formError("an amount", text, `dollars and cents in digits, such as "1234.00"`)
	}
	d, err := decimal.NewFromString(text)
	return Amount{d: d}, err
}

// Cents makes an amount from a whole number of cents.
func Cents(n int64) Amount { return Amount{d: decimal.New(n, -2)} }

func fromCents(n *big.Int) Amount { return Amount{d: decimal.NewFromBigInt(n, -2)} }

// Dollars makes an amount from a whole number of dollars.
func Dollars(n int64) Amount { return Amount{d: decimal.New(n, 0)} }

// Add is a + b, exactly.
func (a Amount) Add(b Amount) Amount { return Amount{d: a.d.Add(b.d)} }

// Sub is a - b, exactly.
func (a Amount) Sub(b Amount) Amount { return Amount{d: a.d.Sub(b.d)} }

// Neg is -a.
func (a Amount) Neg() Amount { return Amount{d: a.d.Neg()} }

// Times is a for n of them, exactly.
func (a Amount) Times(n int) Amount {
	if n == 1 {
		return a // most lines are for one
	}
	return Amount{d: a.d.Mul(decimal.NewFromInt(int64(n)))}
}

// Each is what one of n has of a, to the cent by r.
func (a Amount) Each(n int, r Rounding) Amount {
	if n < 2 {
		return a
	}
	return r.Cent(a.d.DivRound(decimal.NewFromInt(int64(n)), 8))
}

// For is the price of q at a each, to the cent by r.
func (a Amount) For(q Quantity, r Rounding) Amount { return r.Cent(a.d.Mul(q.d)) }

// Share is p of a, to the cent by r.
func (a Amount) Share(p Percent, r Rounding) Amount { return r.Cent(a.d.Mul(p.Fraction())) }

// Cmp is -1, 0 or 1 as a is less than, equal to or more than b.
func (a Amount) Cmp(b Amount) int { return a.d.Cmp(b.d) }

// Equal reports whether the two are the same money.
func (a Amount) Equal(b Amount) bool { return a.d.Equal(b.d) }

// IsZero reports whether nothing is due.
func (a Amount) IsZero() bool { return a.d.IsZero() }

// Sign is -1 for a credit, 0 or 1.
func (a Amount) Sign() int { return a.d.Sign() }

// Abs is the amount without its sign.
func (a Amount) Abs() Amount { return Amount{d: a.d.Abs()} }

// Decimal is the exact value in dollars, for arithmetic in other packages.
func (a Amount) Decimal() decimal.Decimal { return a.d }

// Float is the value in dollars for a drawing or for the rules engine; no
// money is ever computed from it.
func (a Amount) Float() float64 { return a.d.InexactFloat64() }

// String is the form of the files: "1234.00".
func (a Amount) String() string {
	if a.d.IsZero() {
		return "0.00"
	}
	return a.d.StringFixed(2)
}

// Show is the form for readers: "1,234.00", "−250.00" with a true minus sign.
func (a Amount) Show() string {
	whole, cents, _ := strings.Cut(a.Abs().String(), ".")
	s := grouped(whole) + "." + cents
	if a.Sign() < 0 {
		return "−" + s
	}
	return s
}

// Signed is Show with a plus in front of what is above zero.
func (a Amount) Signed() string {
	if a.Sign() > 0 {
		return "+" + a.Show()
	}
	return a.Show()
}

// MarshalJSON writes the form of the files.
func (a Amount) MarshalJSON() ([]byte, error) { return []byte(`"` + a.String() + `"`), nil }

// UnmarshalJSON reads the form of the files; a JSON number is refused.
func (a *Amount) UnmarshalJSON(raw []byte) error {
	return unmarshal(raw, func(s string) (err error) {
		*a, err = ParseAmount(s)
		return err
	}, "an amount", `dollars and cents in digits, such as "1234.00"`)
}

// Sum adds them all.
func Sum(all ...Amount) Amount {
	var s Amount
	for _, a := range all {
		s = s.Add(a)
	}
	return s
}
