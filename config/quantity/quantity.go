// Package quantity gives each physical quantity of a vehicle its own type,
// held in the unit the trade's limits are written in (lb, in, A, W, ft3), so
// that no round trip through metric can blur a boundary. Metric is a display
// choice made at the very edge, by System.
package quantity

import (
	"math"
	"strconv"
	"strings"
)

// The quantities. Each is a plain number in the unit its name's comment gives;
// the JSON field that carries one ends in that unit.
type (
	Mass    float64 // pounds, lb; a weight reading in the trade's sense
	Length  float64 // inches, in
	Feet    float64 // feet, ft: of turning circles
	Current float64 // amperes, A
	Power   float64 // watts, W
	Volume  float64 // cubic feet, ft3
	Charge  float64 // ampere-hours, Ah
	Hours   float64 // hours of work
)

// System is the display system: US customary or metric.
type System bool

// The two systems a reader can choose.
const (
	US     System = false
	Metric System = true
)

// Exact conversion factors.
// Source: NIST SP 811 appendix B (international pound and inch are exact).
const (
	KilogramsPerPound = 0.45359237
	MillimetersPerIn  = 25.4
	LitersPerCubicFt  = 28.316846592
)

// Unit names used in figures and findings. A figure's number is always in one
// of these; System.Show turns it into the reader's unit.
const (
	Pound     = "lb"
	Inch      = "in"
	Foot      = "ft"
	Amp       = "A"
	Watt      = "W"
	CubicFoot = "ft3"
	AmpHour   = "Ah"
	Minute    = "min"
	Hour      = "h"
	Percent   = "%"
	Degree    = "degrees"
	Volt      = "V"
	Liter     = "L"
	Gallon    = "gal"
	Day       = "working days"
	Ratio     = ""
	Count     = "places" // seats, patients: a plain whole number
)

// shown says how a unit is displayed in each system: factor, name, decimals.
type shown struct {
	metricFactor       float64
	usName, metricName string
	usDec, metricDec   int
}

var display = map[string]shown{
	Pound:       {KilogramsPerPound, "lb", "kg", 0, 0},
	Inch:        {MillimetersPerIn, "in", "mm", 1, 0},
	Foot:        {12 * MillimetersPerIn / 1000, "ft", "m", 1, 1},
	Amp:         {1, "A", "A", 1, 1},
	Watt:        {1, "W", "W", 0, 0},
	CubicFoot:   {LitersPerCubicFt, "ft³", "L", 1, 0},
	AmpHour:     {1, "Ah", "Ah", 0, 0},
	Minute:      {1, "min", "min", 0, 0},
	Hour:        {1, "h", "h", 1, 1},
	Percent:     {1, "%", "%", 1, 1},
	Degree:      {1, "degrees", "degrees", 1, 1},
	Dollar:      {1, "dollars", "dollars", 2, 2},
	Mile:        {1, "mi", "mi", 0, 0}, // a price is by the mile
	SquareFoot:  {144 * MillimetersPerIn * MillimetersPerIn / 1e6, "ft²", "m²", 1, 2},
	LiterMinute: {1, "L/min", "L/min", 0, 0},
	CalendarDay: {1, "days", "days", 0, 0},
	Month:       {1, "months", "months", 0, 0},
	Year:        {1, "years", "years", 0, 0},
	Volt:        {1, "V", "V", 2, 2},
	Liter:       {1, "L", "L", 0, 0},
	Gallon:      {3.785411784, "gal", "L", 0, 0},
	Day:         {1, "working days", "working days", 0, 0},
	Ratio:       {1, "", "", 2, 2},
	Count:       {1, "", "", 0, 0},
}

// Show formats value, given in unit (one of the names above), for a reader.
// An unknown unit is shown as it is with two decimals; NaN and infinities read
// "not known".
func (s System) Show(value float64, unit string) string {
	d, known := display[unit]
	if !known {
		d = shown{1, unit, unit, 2, 2}
	}
	name, dec := d.usName, d.usDec
	if s == Metric {
		value, name, dec = value*d.metricFactor, d.metricName, d.metricDec
	}
	if unit == Minute && math.Abs(value) < 10 {
		dec = 1 // half a minute counts in few
	}
	text := Group(value, dec)
	switch {
	case text == "not known", name == "":
		return text
	case name == "%":
		return text + " %"
	}
	return text + " " + name
}

// Hundredths of a chance, halves rounded up: 12.5 % is 13 wherever it is written.
func Hundredths(chance float64) int {
	if !(chance > 0) {
		return 0
	}
	return int(min(chance, 1)*100 + .5)
}

// Chance writes a chance without ever claiming certainty.
func Chance(chance float64) string {
	switch n := Hundredths(chance); {
	case n > 99:
		return "over 99 %"
	case n < 1:
		return "under 1 %"
	default:
		return strconv.Itoa(n) + " %"
	}
}

// Group formats v with the given decimals and thousands separated by commas.
// Negative zero is shown as zero. NaN, infinities and what no float holds to the digit,
// above 1e15, read "not known".
func Group(v float64, decimals int) string {
	if !(math.Abs(v) <= 1e15) {
		return "not known"
	}
	text := strconv.FormatFloat(math.Abs(v), 'f', decimals, 64)
	whole, frac, _ := strings.Cut(text, ".")
	var b strings.Builder
	if v < 0 && strings.Trim(text, "0.") != "" {
		b.WriteString("−") // a true minus sign, legible at a distance
	}
	for i, digit := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteByte(',')
		}
		b.WriteRune(digit)
	}
	if frac != "" {
		b.WriteByte('.')
		b.WriteString(frac)
	}
	return b.String()
}
