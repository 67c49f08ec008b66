package money

import (
	"strings"

	"github.com/shopspring/decimal"
)

// Quantity is how many or how much is priced: pieces, units, miles, days.
// Valid from 0 to 999,999.999; the zero value is none.
type Quantity struct {
	_ incomparable
	d decimal.Decimal
}

// ParseQuantity reads "3" or "412.5"; a sign, an exponent or more than three
// decimals is a *FormError.
func ParseQuantity(text string) (Quantity, error) {
	if !quantityForm.fits(text) {
		return Quantity{}, formError("a quantity", text, `digits with at most three decimals, such as "412.5"`)
	}
	d, err := decimal.NewFromString(text)
	return Quantity{d: d}, err
}

// Count makes a quantity of n pieces; a negative n counts as none.
func Count(n int) Quantity { return Quantity{d: decimal.NewFromInt(int64(max(n, 0)))} }

// Less is how much of q stands above r, none when r is the larger.
func (q Quantity) Less(r Quantity) Quantity {
	if q.d.LessThan(r.d) {
		return Quantity{}
	}
	return Quantity{d: q.d.Sub(r.d)}
}

// IsZero reports whether there is none.
func (q Quantity) IsZero() bool { return q.d.IsZero() }

// String is the form of the files, without trailing zeros: "412.5".
func (q Quantity) String() string { return plain(q.d) }

// Show is the form for readers: "1,412.5".
func (q Quantity) Show() string {
	whole, rest, dotted := strings.Cut(q.String(), ".")
	if dotted {
		return grouped(whole) + "." + rest
	}
	return grouped(whole)
}

// MarshalJSON writes the form of the files.
func (q Quantity) MarshalJSON() ([]byte, error) { return []byte(`"` + q.String() + `"`), nil }

// UnmarshalJSON reads the form of the files; a JSON number is refused.
func (q *Quantity) UnmarshalJSON(raw []byte) error {
	return unmarshal(raw, func(s string) (err error) {
		*q, err = ParseQuantity(s)
		return err
	}, "a quantity", `digits with at most three decimals, such as "412.5"`)
}
