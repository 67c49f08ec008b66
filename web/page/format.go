package page

import (
	"strconv"

	"boxwright/config/quantity"
)

// Whole writes a whole number with thousands set apart.
func Whole(n int) string { return quantity.Group(float64(n), 0) }

// DayCount is empty for zero.
func DayCount(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// shortened keeps a label within so many letters.
func shortened(text string, most int) string {
	if r := []rune(text); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return text
}

// Percent shows a chance.
func Percent(chance float64) string {
	switch n := int(chance*100 + .5); {
	case n > 99:
		return "over 99 %"
	case n < 1:
		return "under 1 %"
	default:
		return strconv.Itoa(n) + " %"
	}
}

// Blank is what a field shows of a number: nothing where it is zero.
func Blank(v interface {
	IsZero() bool
	String() string
}) string {
	if v.IsZero() {
		return ""
	}
	return v.String()
}

// OrDash is the text, or a dash where there is none.
func OrDash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}
