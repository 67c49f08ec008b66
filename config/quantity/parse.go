package quantity

import (
	"math"
	"strconv"
	"strings"
)

// most is the largest number anything here may be; more is a slip of the finger.
const most = 1e9

// Parse reads a quantity the way a person types it, brought to unit: "1,750",
// "1750 lbs", "345k", "6 ft 6 in", "one (1)". A bare number is taken in the unit
// that Show would show; a unit of the same dimension is converted. It never accepts
// NaN, infinities or an unknown word. The error is a *Fault.
func (s System) Parse(text, unit string) (float64, error) {
	m, f := s.read(text, unit)
	if f != nil {
		return 0, f
	}
	v, ok := m.In(unit)
	if !ok {
		return 0, s.otherKind(text, m.Unit, unit)
	}
	if !(math.Abs(v) <= most) {
		return 0, faultIn(OutOfSpan, text, " is more than can be meant: write a number up to "+Group(most, 0))
	}
	return v, nil
}

// Between is Parse for a quantity that must lie in a span.
func (s System) Between(text, unit string, least, most float64) (float64, error) {
	v, err := s.Parse(text, unit)
	if err != nil {
		return 0, err
	}
	if !(v >= least && v <= most) {
		return 0, faultIn(OutOfSpan, text, outside(v < least, s.Show(least, unit), s.Show(most, unit)))
	}
	return v, nil
}

func outside(low bool, least, most string) string {
	if low {
		return " is too little: write " + least + " to " + most
	}
	return " is too much: write " + least + " to " + most
}

// Whole reads a whole number of things, of days, months or years.
func Whole(text, unit string, least, most int) (int, error) {
	v, err := US.Parse(text, unit)
	if err != nil {
		return 0, err
	}
	if v != math.Trunc(v) {
		return 0, faultIn(NotWhole, text, " is not a whole number: write "+Group(math.Floor(v), 0)+" or "+
			Group(math.Ceil(v), 0))
	}
	span := "write " + Group(float64(least), 0) + " to " + Group(float64(most), 0)
	if v < float64(least) {
		return 0, faultIn(OutOfSpan, text, " is too few: "+span)
	} else if v > float64(most) {
		return 0, faultIn(OutOfSpan, text, " is too many: "+span)
	}
	return int(v), nil
}

// Digits reads an amount, a percentage or a number that is kept exactly, and gives
// it in plain digits: "$18,500" is "18500", "1.2M" dollars are "1200000".
func Digits(text, unit string) (string, error) {
	m, f := US.read(text, unit)
	if f != nil {
		return "", f
	}
	v, ok := m.In(unit)
	switch {
	case !ok:
		return "", US.otherKind(text, m.Unit, unit)
	case !(math.Abs(v) <= most):
		return "", faultIn(OutOfSpan, text, " is more than can be meant: write a number up to "+Group(most, 0))
	case m.Digits == "":
		return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64), nil
	}
	return m.Digits, nil
}

// read takes a whole text apart. A bare number gets the unit that is shown.
func (s System) read(text, unit string) (Measure, *Fault) {
	r := newReader(strings.TrimSpace(text))
	name, own := s.own(unit)
	none := faultIn(NoNumber, text, " is not a number"+of(name)+": write one such as "+example(unit, name))
	if len(r.letters) == maxRunes {
		return Measure{}, none
	}
	n, end, f := r.number(0)
	if f != nil {
		return Measure{}, f
	}
	if end == 0 {
		return Measure{}, none
	}
	bare := r.past(end)
	word := strings.TrimSuffix(r.text(bare, len(r.letters)), ".")
	if unit == Dollar && word == "m" {
		n.value, n.digits, word = n.value*1e6, shifted(n.digits, 6), ""
	}
	if word == "" || (unit == Count || unit == Ratio) && counted[word] {
		if n.money && unit != Dollar {
			return Measure{}, s.otherKind(text, Dollar, unit)
		}
		if f := n.askedIn(own, text); f != nil {
			return Measure{}, f
		}
		if own.times != own.over {
			return Measure{n.value * own.times / own.over, unit, ""}, nil
		}
		return Measure{n.value, unit, n.digits}, nil
	}
	m, end, f := r.measure(0, false)
	if f != nil {
		return Measure{}, f
	}
	rest := strings.Trim(r.text(end, len(r.letters)), ". "+string(narrow))
	if rest != "" && isDigit(rune(rest[0])) {
		return Measure{}, faultIn(TwoValues, text, " gives more than one number: write one, without spaces in it")
	} else if rest != "" || m.Unit == "" {
		return Measure{}, faultIn(NoUnit, text, " is a number and “"+rest+"”, which is not understood here: write one "+
			"such as "+example(unit, name))
	}
	if unit == Day && m.Unit == CalendarDay || unit == CalendarDay && m.Unit == Day {
		m.Unit = unit
	}
	return m, nil
}

// own is the unit a bare number is in, by its name and scale.
func (s System) own(unit string) (string, scale) {
	d, known := display[unit]
	if !known {
		return unit, scale{unit, 1, 1}
	}
	if s == Metric && d.metricFactor != 1 {
		return d.metricName, scale{unit, 1, d.metricFactor}
	}
	return d.usName, scale{unit, 1, 1}
}

func of(name string) string {
	if name == "" {
		return ""
	}
	return " of " + name
}

// example is a number as it may be written.
func example(unit, name string) string {
	switch unit {
	case Dollar:
		return "18500 or $18,500"
	case Count, Ratio:
		return "2"
	case Percent:
		return "8.25"
	case Inch:
		if name == "in" {
			return "72 or 6 ft"
		}
	case Foot:
		if name == "ft" {
			return "54 or 54 ft"
		}
	}
	if name == "" {
		return "2"
	}
	return "1750 or 1,750 " + name
}

func (s System) otherKind(text, got, want string) *Fault {
	name, _ := s.own(want)
	return faultIn(OtherKind, text, " is "+dimensions[base(got).unit]+", and "+dimensions[base(want).unit]+
		" is needed here: write one such as "+example(want, name))
}
