package page

import (
	"strconv"
	"strings"

	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
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

// Tally counts the answers of each kind.
func Tally(list []bid.Answer) string {
	var said []string
	for _, o := range []struct {
		outcome   quote.Outcome
		one, many string
	}{{quote.Meets, "met", "met"}, {quote.MeetsWith, "met with picks", "met with picks"}, {quote.Excepted, "exception",
		"exceptions"}, {quote.ByHand, "to answer by hand", "to answer by hand"}} {
		n := 0
		for _, a := range list {
			if a.Outcome == o.outcome {
				n++
			}
		}
		if n > 0 || o.outcome == quote.Meets {
			said = append(said, Count(n, o.one, o.many))
		}
	}
	return strings.Join(said, ", ")
}

// OrDash is the text, or a dash where there is none.
func OrDash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}
