// Package money holds the three number types of a price: Amount, Percent and
// Quantity. They are different types so that no price can be added to a rate,
// and every step that could lose a fraction of a cent takes a Rounding, so that
// each such step is visible where it stands.
//
// In files all three are texts of plain digits ("1234.00"), never JSON numbers:
// a text keeps its decimals exactly and cannot carry an exponent.
package money

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
)

// The forms of the texts in files. The bounds keep every sum of a quote far
// inside what a reader, a spreadsheet and the arithmetic can hold.
const (
	AmountPattern   = `^-?[0-9]{1,9}(\.[0-9]{1,2})?$`
	PercentPattern  = `^-?[0-9]{1,3}(\.[0-9]{1,6})?$`
	QuantityPattern = `^[0-9]{1,6}(\.[0-9]{1,3})?$`
)

// form is one of the patterns above, in numbers. The page checks texts with it: a
// regular expression would make the core larger by a twentieth.
type form struct {
	sign          bool // may begin with a minus
	whole, places int  // most digits before and after the point
}

var (
	amountForm   = form{true, 9, 2}
	percentForm  = form{true, 3, 6}
	finerForm    = form{true, 3, 40} // a percentage that is too fine
	quantityForm = form{false, 6, 3}
)

func (f form) fits(text string) bool {
	if f.sign {
		text = strings.TrimPrefix(text, "-")
	}
	whole, places, point := strings.Cut(text, ".")
	return digits(whole, f.whole) && (!point || digits(places, f.places))
}

// digits reports whether the text is 1 to most digits.
func digits(text string, most int) bool {
	for i := range len(text) {
		if text[i] < '0' || text[i] > '9' {
			return false
		}
	}
	return len(text) >= 1 && len(text) <= most
}

// FormError says that a text is not an amount, percentage or quantity. Text is
// what stood there, at most 40 bytes of it.
type FormError struct {
	Kind string
	Text string
	Want string
}

func (e *FormError) Error() string {
	return fmt.Sprintf("%q is not %s: write %s", e.Text, e.Kind, e.Want)
}

func formError(kind, text, want string) error {
	if len(text) > 40 {
		text = text[:40]
	}
	return &FormError{kind, text, want}
}

// unmarshal takes the text out of a JSON string, for the three types alike.
func unmarshal(raw []byte, parse func(string) error, kind, want string) error {
	var text string
	if json.Unmarshal(raw, &text) != nil {
		return formError(kind, string(raw), want+`, between quotation marks`)
	}
	return parse(text)
}

// incomparable makes == on the types a compile error: two decimals can be equal
// and yet differ in form.
type incomparable [0]func()

// grouped writes digits with a comma before every third: "1,234,567".
func grouped(digits string) string {
	var b strings.Builder
	for i, c := range digits {
		if i > 0 && (len(digits)-i)%3 == 0 {
			b.WriteByte(',')
		}
		b.WriteRune(c)
	}
	return b.String()
}

// plain writes a decimal without trailing zeros: "8.25", "12".
func plain(d decimal.Decimal) string {
	s := d.String()
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "" || s == "-" || s == "-0" {
		return "0"
	}
	return s
}
