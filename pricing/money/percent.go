package money

import "github.com/shopspring/decimal"

// Percent is a rate in hundredths: "8.25" is 8.25 %, which is 0.0825 of the
// whole. Valid from -999.999999 to 999.999999; the zero value is 0 %.
type Percent struct {
	_ incomparable
	d decimal.Decimal
}

// ParsePercent reads "8.25" as 8.25 %; anything with more than six decimals,
// three digits before the point, an exponent or a sign "%" is a *FormError.
func ParsePercent(text string) (Percent, error) {
	switch {
	case percentForm.fits(text):
	case finerForm.fits(text):
		d := decimal.RequireFromString(text) // a form that fits is a number
		return Percent{}, formError("a percentage of at most six decimals", text, `"`+plain(d.Round(6))+`"`)
	default:
		return Percent{}, formError("a percentage", text, `its digits alone, such as "8.25" for 8.25 %`)
	}
	d, err := decimal.NewFromString(text)
	return Percent{d: d}, err
}

// PercentOf makes a percentage from a decimal in hundredths: 8.25 is 8.25 %.
func PercentOf(hundredths decimal.Decimal) Percent { return Percent{d: hundredths} }

// PercentOf is the part that an amount is of another, in percent to two decimals half
// up; 0 of nothing.
func (a Amount) PercentOf(whole Amount) Percent {
	if whole.Sign() <= 0 {
		return Percent{}
	}
	return PercentOf(a.d.Shift(2).DivRound(whole.d, 2))
}

// Fraction is the rate as a part of one: 0.0825 for 8.25 %.
func (p Percent) Fraction() decimal.Decimal { return p.d.Shift(-2) }

// Decimal is the rate in hundredths: 8.25 for 8.25 %.
func (p Percent) Decimal() decimal.Decimal { return p.d }

// Add is p + q.
func (p Percent) Add(q Percent) Percent { return Percent{d: p.d.Add(q.d)} }

// Cmp is -1, 0 or 1 as p is less than, equal to or more than q.
func (p Percent) Cmp(q Percent) int { return p.d.Cmp(q.d) }

// Equal reports whether the two are the same rate.
func (p Percent) Equal(q Percent) bool { return p.d.Equal(q.d) }

// IsZero reports whether the rate is zero.
func (p Percent) IsZero() bool { return p.d.IsZero() }

// Sign is -1, 0 or 1.
func (p Percent) Sign() int { return p.d.Sign() }

// String is the form of the files, without trailing zeros: "8.25".
func (p Percent) String() string { return plain(p.d) }

// Show is the form for readers: "8.25 %".
func (p Percent) Show() string { return p.String() + " %" }

// MarshalJSON writes the form of the files.
func (p Percent) MarshalJSON() ([]byte, error) { return []byte(`"` + p.String() + `"`), nil }

// UnmarshalJSON reads the form of the files; a JSON number is refused.
func (p *Percent) UnmarshalJSON(raw []byte) error {
	return unmarshal(raw, func(s string) (err error) {
		*p, err = ParsePercent(s)
		return err
	}, "a percentage", `its digits alone, such as "8.25" for 8.25 %`)
}
