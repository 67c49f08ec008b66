package quantity

import "math"

// Measure is a quantity as it was read: so many of a unit.
type Measure struct {
	Value  float64
	Unit   string // one of this package's names; empty for a bare number
	Digits string // the number exactly, as written, in plain digits; empty when it was converted
}

// In is the measure in another unit of its dimension; not ok when it measures
// something else, or what comes out is no number.
func (m Measure) In(unit string) (v float64, ok bool) {
	from, to := base(m.Unit), base(unit)
	if from.unit != to.unit {
		return 0, false
	}
	if m.Unit != unit {
		m.Value *= from.times / from.over * to.over / to.times
	}
	if !(math.Abs(m.Value) <= math.MaxFloat64) {
		return 0, false
	}
	return m.Value, true
}

// Scan reads the quantity that a text begins with, as people write it in a
// requirement: "1,750 lbs", "5 ft 8 in", "9'-2\"", "one (1)", "$18,500", "48
// months", "153-inch". n is how many bytes it takes, 0 when none begins there. A
// fault with n above 0 says that a quantity stands there and why it cannot be
// taken, such as "12,5 lb", which may mean 12.5 or 125.
//
// Units: a Measure is in Inch, Pound, Dollar, Mile, Watt, Amp, AmpHour, Volt,
// Minute, Hour, CalendarDay, Day, Month, Year, CubicFoot, Liter, SquareFoot,
// LiterMinute or Percent, whichever of them the text names or converts to. Words
// that say what is counted, such as seats, are left in the text.
func Scan(text string) (m Measure, n int, f *Fault) {
	r := newReader(text)
	m, end, f := r.measure(0, true)
	if f != nil && end == 0 {
		return Measure{}, 0, nil
	}
	return m, r.bytes[end], f
}

// measure reads a number with its unit, and what belongs to both, as in 5 ft 8 in.
func (r *reader) measure(i int, prose bool) (m Measure, end int, f *Fault) {
	n, end, f := r.number(i)
	if f != nil {
		_, end = r.unit(end)
		return m, end, f
	} else if end == i {
		return m, i, nil
	}
	if to := r.notOne(end); to > end {
		return m, to, faultIn(TwoValues, r.said(i, to), " gives more than one number: write one")
	}
	s, to := r.unit(end)
	if n.money && (to == end || s.unit != Dollar) {
		s, to = scale{Dollar, 1, 1}, end
	} else if prose && to > end && r.idle(end, to) {
		s, to = scale{}, end
	}
	if prose && to == end && isLetter(r.at(end)) { // 4x4, 6th
		return m, i, nil
	}
	if f := n.askedIn(s, r.said(i, to)); f != nil {
		return m, to, f
	}
	m = Measure{n.value, s.unit, n.digits}
	end = to
	if s.unit != "" && s.times != s.over {
		m.Value, m.Digits = n.value*s.times/s.over, ""
	}
	if s.unit == Inch && s.times == 12 || s.unit == Pound && s.over == 1 && s.times == 1 {
		return r.second(m, i, end, prose)
	}
	return m, end, nil
}

// askedIn is the question about a separator that may be meant in another way, in
// this unit; nil when it is clear.
func (n *number) askedIn(s scale, typed string) *Fault {
	var f *Fault
	switch {
	case n.ifGroups != "" && inThousands(s):
		f = twoWays(n.digits, n.ifGroups)
	case n.ifDecimal != "" && s.unit == Percent:
		f = twoWays(n.ifDecimal, n.digits)
	default:
		return nil
	}
	return faultIn(f.Code, typed, f.Says)
}

// notOne goes over what makes a number one of several, as in 10-12 or 2027-06-01.
func (r *reader) notOne(i int) int {
	at := r.past(i)
	if r.at(at) == '/' || r.at(at) == '-' {
		if next := r.past(at + 1); isDigit(r.at(next)) {
			return r.run(next, func(c rune) bool { return isDigit(c) || c == '-' || c == '/' || c == ',' || c == '.' })
		}
	}
	return i
}

// idle reports whether the unit that was read in a sentence is a word of it: "6 in
// the rear", "2 a day".
func (r *reader) idle(from, to int) bool {
	start := r.past(from)
	switch r.text(start, to) {
	case "in":
		next := r.past(to)
		word := r.text(next, r.run(next, isLetter))
		switch word {
		case "the", "a", "an", "each", "all", "any", "its", "their", "this", "that", "accordance", "addition", "total",
			"front", "rear", "number", "use", "service", "place", "line", "case", "one", "every", "both":
			return next > to
		}
	case "a":
		return start > from && r.typed[start] == 'a'
	}
	return false
}

// second reads the inches behind feet or the ounces behind pounds.
func (r *reader) second(m Measure, start, end int, prose bool) (Measure, int, *Fault) {
	at := r.past(end)
	joined := at == end
	if r.at(at) == ',' {
		at = r.past(at + 1)
	} else if to, ok := r.says(at, "and"); ok {
		at = r.past(to)
	} else if r.at(at) == '-' {
		at = r.past(at + 1)
		joined = true
	}
	if !isDigit(r.at(at)) && vulgar[r.at(at)] == 0 && r.at(at) != '.' {
		return m, end, nil
	}
	n, to, f := r.plain(at)
	if f != nil {
		return m, to, r.around(f, at, to)
	} else if to == at {
		return m, end, nil
	}
	s, behind := r.unit(to)
	small := scale{Inch, 1, 1}
	most := 12.
	if m.Unit == Pound {
		small, most = scale{Pound, 1, 16}, 16
	}
	bare := behind == to && m.Unit == Inch && (joined || !prose) && !isLetter(r.at(to))
	if s != small && !bare {
		return m, end, nil
	}
	if n.value >= most {
		return m, behind, faultIn(OutOfSpan, r.said(start, behind), " has more than a whole in its second part: write "+
			"it in one unit")
	}
	m.Digits = ""
	if m.Value < 0 {
		n.value = -n.value
	}
	m.Value += n.value * small.times / small.over
	return m, behind, nil
}
