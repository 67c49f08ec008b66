package page

import (
	"strconv"
	"strings"

	. "boxwright/web/page/markup"
)

// Chart is a drawing of figures; said is its text alternative.
func Chart(said string, w, h float64, parts []Part) Part {
	return chart("wide-chart", said, w, h, parts)
}

// NarrowChart takes the place of a chart with many days or long names on a phone.
func NarrowChart(said string, w, h float64, parts []Part) Part {
	return chart("narrow-chart", said, w, h, parts)
}

func chart(class, said string, w, h float64, parts []Part) Part {
	return El("figure", Class(class), At("data-scroll", ""), El("svg", Class("drawing chart"), At("role", "img"),
		At("aria-label", said), At("viewBox", "0 0 "+Coord(w)+" "+Coord(h)), Many(parts...)))
}

// Coord writes a coordinate, to a tenth of a drawing unit.
func Coord(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }

// Rect is a rectangle with its top left corner at x, y.
func Rect(class string, x, y, w, h float64, parts ...Part) Part {
	return El("rect", Class(class), At("x", Coord(x)), At("y", Coord(y)), At("width", Coord(w)), At("height", Coord(h)),
		Many(parts...))
}

// Path is a path with its commands in d.
func Path(class, d string) Part { return El("path", Class(class), At("d", d)) }

// Trace writes a path: every letter of form takes the coordinates it needs from
// the list, "HV" one, "MLT" two, "Q" four, "A" radius, sweep, x and y.
func Trace(class, form string, at ...float64) Part {
	var d strings.Builder
	take := func(count int) {
		for range count {
			d.WriteString(Coord(at[0]) + " ")
			at = at[1:]
		}
	}
	for _, letter := range form {
		d.WriteRune(letter)
		switch letter {
		case 'H', 'V':
			take(1)
		case 'M', 'L', 'T':
			take(2)
		case 'Q':
			take(4)
		case 'A':
			r := Coord(at[0])
			d.WriteString(r + " " + r + " 0 0 " + strconv.Itoa(int(at[1])) + " ")
			at = at[2:]
			take(2)
		}
	}
	return Path(class, d.String())
}

// Label is a text that begins at x with its foot on y.
func Label(class string, x, y float64, text string) Part {
	return El("text", Class(class), At("x", Coord(x)), At("y", Coord(y)), Text(text))
}
