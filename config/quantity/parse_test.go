package quantity_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
)

func ExampleSystem_Parse() {
	lb, _ := quantity.US.Parse("1,750 lbs", quantity.Pound)
	in, _ := quantity.Metric.Parse("1016 mm", quantity.Inch)
	_, err := quantity.US.Parse("12,5", quantity.Pound)
	fmt.Println(lb, in)
	fmt.Println(err)
	// Output:
	// 1750 40
	// “12,5” can be read in two ways: write 12.5 or 125
}

func ExampleScan() {
	line := "9'-2\" overall height, at most"
	m, n, _ := quantity.Scan(line)
	fmt.Println(m.Value, m.Unit, line[n:])
	// Output:
	// 110 in  overall height, at most
}

// writings are quantities as people write them: the unit asked for, what is read or
// the code of the fault, and why.
var writings = []struct {
	text   string
	unit   string
	want   float64
	code   string
	reason string
}{
	{"1750", quantity.Pound, 1750, "", "digits"},
	{"1,750", quantity.Pound, 1750, "", "thousands"},
	{"1,750 lbs", quantity.Pound, 1750, "", "the plural the trade writes"},
	{"1750 lb", quantity.Pound, 1750, "", "the singular"},
	{"1750lb.", quantity.Pound, 1750, "", "joined, with a point behind"},
	{"1,750 LBS", quantity.Pound, 1750, "", "capitals"},
	{"1750#", quantity.Pound, 1750, "", "the sign for pounds"},
	{"12 pounds", quantity.Pound, 12, "", "the word"},
	{"2 tons", quantity.Pound, 4000, "", "short tons"},
	{"5 lb 8 oz", quantity.Pound, 5.5, "", "pounds and ounces"},
	{"45.359237 kg", quantity.Pound, 100, "", "kilograms are converted"},
	{"19.5k", quantity.Pound, 19500, "", "thousands as k"},
	{" 12.5 lb ", quantity.Pound, 12.5, "", "spaces around"},
	{"1\u202f750 lb", quantity.Pound, 1750, "", "a narrow space between thousands"},
	{"1\u00a0750", quantity.Pound, 1750, "", "a hard space between thousands"},
	{"−250", quantity.Pound, -250, "", "a true minus, as Show writes it"},
	{"-250", quantity.Pound, -250, "", "a hyphen"},
	{"one hundred and seventy-five (175) pounds", quantity.Pound, 175, "", "words and digits"},

	{"72", quantity.Inch, 72, "", "a bare number of inches"},
	{"72 in.", quantity.Inch, 72, "", "the short form with its point"},
	{`72"`, quantity.Inch, 72, "", "the sign"},
	{"72”", quantity.Inch, 72, "", "a curly quote"},
	{"72″", quantity.Inch, 72, "", "a double prime"},
	{"72''", quantity.Inch, 72, "", "two single quotes"},
	{"6 ft", quantity.Inch, 72, "", "feet"},
	{"6'", quantity.Inch, 72, "", "the sign for feet"},
	{"5 ft 8 in", quantity.Inch, 68, "", "feet and inches"},
	{"6 ft 6 in", quantity.Inch, 78, "", "feet and inches again"},
	{"5ft8in", quantity.Inch, 68, "", "joined"},
	{"5 feet, 8 inches", quantity.Inch, 68, "", "in full, with a comma"},
	{"5 feet and 8 inches", quantity.Inch, 68, "", "in full, with and"},
	{`9'-2"`, quantity.Inch, 110, "", "as on a drawing"},
	{"9’-2”", quantity.Inch, 110, "", "the same in curly quotes"},
	{"9′ 2″", quantity.Inch, 110, "", "the same in primes"},
	{"9'2", quantity.Inch, 110, "", "the inches without a sign"},
	{"6 ft 6", quantity.Inch, 78, "", "the inches without a unit"},
	{`5' 8 1/2"`, quantity.Inch, 68.5, "", "a fraction of an inch"},
	{`5'-8-1/2"`, quantity.Inch, 68.5, "", "a fraction behind a hyphen"},
	{"5′ 8½″", quantity.Inch, 68.5, "", "a fraction as one sign"},
	{"8 1/2 in", quantity.Inch, 8.5, "", "a mixed number"},
	{"8-1/2 in", quantity.Inch, 8.5, "", "a mixed number with a hyphen"},
	{"3/8 in", quantity.Inch, .375, "", "a fraction"},
	{"73.375", quantity.Inch, 73.375, "", "three decimals of an inch are eighths"},
	{"153-inch", quantity.Inch, 153, "", "an adjective"},
	{"1.5 m", quantity.Inch, 1500 / 25.4, "", "meters"},
	{"254 mm", quantity.Inch, 10, "", "millimeters"},

	{"54", quantity.Foot, 54, "", "a bare number of feet"},
	{"54 ft 6 in", quantity.Foot, 54.5, "", "feet and inches where feet are asked for"},
	{"648 in", quantity.Foot, 54, "", "inches where feet are asked for"},

	{"$18,500", quantity.Dollar, 18500, "", "dollars"},
	{"$385,000.00", quantity.Dollar, 385000, "", "dollars and cents"},
	{"345k", quantity.Dollar, 345000, "", "thousands"},
	{"$345K", quantity.Dollar, 345000, "", "thousands of dollars"},
	{"1.2M", quantity.Dollar, 1.2e6, "", "millions"},
	{"$1.2 million", quantity.Dollar, 1.2e6, "", "millions in full"},
	{"18.5 thousand dollars", quantity.Dollar, 18500, "", "thousands in full"},
	{"-$500", quantity.Dollar, -500, "", "a credit"},
	{"$-500", quantity.Dollar, -500, "", "a credit with the sign inside"},
	{"USD 500", quantity.Dollar, 500, "", "the code before"},
	{"500 dollars", quantity.Dollar, 500, "", "the word behind"},

	{"412 mi", quantity.Mile, 412, "", "miles"},
	{"412 miles", quantity.Mile, 412, "", "miles in full"},
	{"160.9344 km", quantity.Mile, 100, "", "kilometers"},
	{"2kW", quantity.Watt, 2000, "", "kilowatts"},
	{"1.125 kW", quantity.Watt, 1125, "", "three decimals of a kilowatt"},
	{"200 amps", quantity.Amp, 200, "", "amperes"},
	{"200A", quantity.Amp, 200, "", "amperes, joined"},
	{"48 months", quantity.Month, 48, "", "months"},
	{"4 years", quantity.Month, 48, "", "years are months too"},
	{"18 months", quantity.Year, 1.5, "", "months in years"},
	{"6 weeks", quantity.CalendarDay, 42, "", "weeks"},
	{"30 working days", quantity.CalendarDay, 30, "", "days of either kind, one for one"},
	{"2 h", quantity.Minute, 120, "", "hours"},
	{"90 min", quantity.Hour, 1.5, "", "minutes in hours"},
	{"40 ft3", quantity.CubicFoot, 40, "", "cubic feet"},
	{"40 ft³", quantity.CubicFoot, 40, "", "cubic feet as shown"},
	{"40 cu. ft.", quantity.CubicFoot, 40, "", "cubic feet as abbreviated"},
	{"283.16846592 L", quantity.CubicFoot, 10, "", "liters"},
	{"1728 cubic inches", quantity.CubicFoot, 1, "", "cubic inches"},
	{"10 sq ft", quantity.SquareFoot, 10, "", "square feet"},
	{"10 gpm", quantity.LiterMinute, 37.85411784, "", "a flow"},
	{"8.25 %", quantity.Percent, 8.25, "", "a percentage"},
	{"8.625", quantity.Percent, 8.625, "", "three decimals of a tax rate"},
	{"12.5", quantity.Ratio, 12.5, "", "a plain number"},
	{"6", quantity.Count, 6, "", "a count"},
	{"6 seats", quantity.Count, 6, "", "with what is counted"},
	{"one (1)", quantity.Count, 1, "", "in words and digits"},
	{"(2)", quantity.Count, 2, "", "in parentheses"},
	{"twenty-four", quantity.Count, 24, "", "in words"},
	{"2 ea.", quantity.Count, 2, "", "each"},

	{"12,5", quantity.Pound, 0, quantity.TwoWays, "12.5, or 125 with a comma that slipped in"},
	{"1.750", quantity.Pound, 0, quantity.TwoWays, "1,750, or one and three quarters"},
	{"1.750 lb", quantity.Pound, 0, quantity.TwoWays, "the same with its unit"},
	{"1.750 kg", quantity.Pound, 0, quantity.TwoWays, "the same in kilograms"},
	{"1.750,5", quantity.Pound, 0, quantity.TwoWays, "thousands and decimals the other way round"},
	{"1.750.000", quantity.Dollar, 0, quantity.TwoWays, "points between thousands"},
	{"0,5", quantity.Inch, 0, quantity.TwoWays, "a decimal comma for certain"},
	{"0,500", quantity.Inch, 0, quantity.TwoWays, "no thousands begin with 0"},
	{"1,75", quantity.Inch, 0, quantity.TwoWays, "two digits behind a comma"},
	{"1750,5", quantity.Pound, 0, quantity.TwoWays, "four digits before a comma"},
	{"$18.500", quantity.Dollar, 0, quantity.TwoWays, "18,500 or 18.50"},
	{"8,625 %", quantity.Percent, 0, quantity.TwoWays, "no percentage has thousands"},
	{"10-12 in", quantity.Inch, 0, quantity.TwoValues, "a span"},
	{"10–12", quantity.Inch, 0, quantity.TwoValues, "a span with a dash"},
	{"12 13", quantity.Pound, 0, quantity.TwoValues, "two numbers"},
	{"1 750", quantity.Pound, 0, quantity.TwoValues, "a plain space may be a slip"},
	{"two (3)", quantity.Count, 0, quantity.TwoValues, "words and digits differ"},
	{"45 stones", quantity.Pound, 0, quantity.NoUnit, "a unit nobody uses here"},
	{"6 seats", quantity.Pound, 0, quantity.NoUnit, "a count where a weight is asked for"},
	{"1e999", quantity.Pound, 0, quantity.NoUnit, "no exponents"},
	{"48 months", quantity.Pound, 0, quantity.OtherKind, "a time where a weight is asked for"},
	{"$500", quantity.Pound, 0, quantity.OtherKind, "money where a weight is asked for"},
	{"$500", quantity.Count, 0, quantity.OtherKind, "money where a count is asked for"},
	{"72 in", quantity.Dollar, 0, quantity.OtherKind, "a length where money is asked for"},
	{"5 ft 14 in", quantity.Inch, 0, quantity.OutOfSpan, "more than a foot behind the feet"},
	{"2000000000", quantity.Pound, 0, quantity.OutOfSpan, "more than can be meant"},
	{"1234567890123456", quantity.Pound, 0, quantity.OutOfSpan, "more digits than are held"},
	{"", quantity.Pound, 0, quantity.NoNumber, "nothing"},
	{"  ", quantity.Pound, 0, quantity.NoNumber, "spaces"},
	{"lb", quantity.Pound, 0, quantity.NoNumber, "a unit alone"},
	{"heavy", quantity.Pound, 0, quantity.NoNumber, "a word"},
	{"not known", quantity.Pound, 0, quantity.NoNumber, "what Show says of no number"},
	{"NaN", quantity.Pound, 0, quantity.NoNumber, "no number, written out"},
	{"Infinity", quantity.Pound, 0, quantity.NoNumber, "no end, written out"},
	{"∞", quantity.Pound, 0, quantity.NoNumber, "no end, as a sign"},
	{"3.7.6", quantity.Inch, 0, quantity.NoNumber, "a paragraph"},
	{"2027/06/01", quantity.Inch, 0, quantity.NoNumber, "a date"},
	{"4/0", quantity.Inch, 0, quantity.NoNumber, "a cable"},
	{"($500)", quantity.Dollar, 0, quantity.NoNumber, "a credit to a bookkeeper, 500 to others"},
	{strings.Repeat("1", 10000), quantity.Pound, 0, quantity.NoNumber, "very long"},
	{strings.Repeat("(", 10000), quantity.Pound, 0, quantity.NoNumber, "very deep"},
}

func TestParse(t *testing.T) {
	for _, c := range writings {
		t.Run(c.text[:min(len(c.text), 40)]+" as "+c.unit, func(t *testing.T) {
			got, err := quantity.US.Parse(c.text, c.unit)
			if c.code == "" {
				require.NoError(t, err, c.reason)
				assert.InDelta(t, c.want, got, 1e-12*math.Abs(c.want), c.reason)
				return
			}
			var f *quantity.Fault
			require.True(t, errors.As(err, &f), "%s: %v", c.reason, got)
			assert.Equal(t, c.code, f.Code, "%s: %s", c.reason, f.Says)
			assert.Zero(t, got)
		})
	}
}

// What is asked says both readings, or how to write the one.
func TestFaultsSayWhatToWrite(t *testing.T) {
	for _, c := range []struct{ text, unit, says string }{
		{"12,5", quantity.Pound, "“12,5” can be read in two ways: write 12.5 or 125"},
		{"1.750 lb", quantity.Pound, "“1.750 lb” can be read in two ways: write 1.750 or 1750"},
		{"0,5", quantity.Inch, "“0,5” has a decimal comma: write 0.5"},
		{"1.750,5", quantity.Pound, "“1.750,5” has a decimal comma: write 1750.5"},
		{"1.750.000", quantity.Dollar, "“1.750.000” has points between thousands: write 1750000"},
		{"heavy", quantity.Pound, "“heavy” is not a number of lb: write one such as 1750 or 1,750 lb"},
		{"", quantity.Inch, "“” is not a number of in: write one such as 72 or 6 ft"},
		{"48 months", quantity.Pound,
			"“48 months” is a time in months, and a weight is needed here: write one such as " +
				"1750 or 1,750 lb"},
		{"45 stones", quantity.Pound, "“45 stones” is a number and “stones”, which is not understood here: write one " +
			"such as 1750 or 1,750 lb"},
		{"2e9", quantity.Watt, "“2e9” is a number and “e9”, which is not understood here: write one such as 1750 or " +
			"1,750 W"},
	} {
		_, err := quantity.US.Parse(c.text, c.unit)
		assert.EqualError(t, err, c.says)
	}
}

func TestParseMetric(t *testing.T) {
	for _, c := range []struct {
		text   string
		unit   string
		want   float64
		code   string
		reason string
	}{
		{"1016", quantity.Inch, 40, "", "a bare number of millimeters"},
		{"254 mm", quantity.Inch, 10, "", "millimeters"},
		{"72 in", quantity.Inch, 72, "", "inches are inches in either system"},
		{`9'-2"`, quantity.Inch, 110, "", "and feet are feet"},
		{"45.359237", quantity.Pound, 100, "", "kilograms"},
		{"1,016", quantity.Inch, 40, "", "thousands of millimeters"},
		{"1.016", quantity.Inch, 0, quantity.TwoWays, "1,016 mm, or one and a bit"},
		{"1.016 mm", quantity.Inch, 0, quantity.TwoWays, "the same with its unit"},
		{"1.225", quantity.CubicFoot, 0, quantity.TwoWays, "1,225 L, or one and a bit"},
		{"12,5", quantity.Pound, 0, quantity.TwoWays, "12.5 kg, or 125"},
	} {
		t.Run(c.text+" as "+c.unit, func(t *testing.T) {
			got, err := quantity.Metric.Parse(c.text, c.unit)
			if c.code == "" {
				require.NoError(t, err, c.reason)
				assert.InDelta(t, c.want, got, 1e-12, c.reason)
				return
			}
			var f *quantity.Fault
			require.True(t, errors.As(err, &f), "%s: %v", c.reason, got)
			assert.Equal(t, c.code, f.Code, c.reason)
		})
	}
}

func TestBetween(t *testing.T) {
	v, err := quantity.US.Between("3 %", quantity.Percent, 0.5, 20)
	require.NoError(t, err)
	assert.Equal(t, 3., v)
	_, err = quantity.US.Between("30", quantity.Percent, 0.5, 20)
	assert.EqualError(t, err, "“30” is too much: write 0.5 % to 20.0 %")
	_, err = quantity.US.Between("0", quantity.Percent, 0.5, 20)
	assert.EqualError(t, err, "“0” is too little: write 0.5 % to 20.0 %")
}

func TestWhole(t *testing.T) {
	for _, c := range []struct {
		text string
		unit string
		want int
		says string
	}{
		{"6", quantity.Count, 6, ""},
		{"6 seats", quantity.Count, 6, ""},
		{"1,200", quantity.Count, 0, "“1,200” is too many: write 1 to 99"},
		{"6.5 seats", quantity.Count, 0, "“6.5 seats” is not a whole number: write 6 or 7"},
		{"0 units", quantity.Count, 0, "“0 units” is too few: write 1 to 99"},
		{"-2", quantity.Count, 0, "“-2” is too few: write 1 to 99"},
		{"2 weeks", quantity.CalendarDay, 14, ""},
		{"18 months", quantity.Year, 0, "“18 months” is not a whole number: write 1 or 2"},
	} {
		t.Run(c.text, func(t *testing.T) {
			got, err := quantity.Whole(c.text, c.unit, 1, 99)
			assert.Equal(t, c.want, got)
			if c.says == "" {
				assert.NoError(t, err)
			} else {
				assert.EqualError(t, err, c.says)
			}
		})
	}
}

// Digits keeps what was written exactly: no cent is lost on the way to a price.
func TestDigits(t *testing.T) {
	for _, c := range []struct{ text, unit, want, code string }{
		{"$18,500", quantity.Dollar, "18500", ""},
		{"$385,000.10", quantity.Dollar, "385000.10", ""},
		{"345k", quantity.Dollar, "345000", ""},
		{"1.25M", quantity.Dollar, "1250000", ""},
		{"1.2345678M", quantity.Dollar, "1234567.8", ""},
		{"0.5k", quantity.Dollar, "500", ""},
		{"-$0.05", quantity.Dollar, "-0.05", ""},
		{".5", quantity.Dollar, "0.5", ""},
		{"007", quantity.Dollar, "7", ""},
		{"8.25 %", quantity.Percent, "8.25", ""},
		{"412 mi", quantity.Mile, "412", ""},
		{"412 km", quantity.Mile, "256.005", ""},
		{"12,5", quantity.Dollar, "", quantity.TwoWays},
		{"2e9", quantity.Dollar, "", quantity.NoUnit},
		{"3 ft", quantity.Dollar, "", quantity.OtherKind},
	} {
		t.Run(c.text, func(t *testing.T) {
			got, err := quantity.Digits(c.text, c.unit)
			assert.Equal(t, c.want, got)
			if c.code == "" {
				require.NoError(t, err)
				return
			}
			var f *quantity.Fault
			require.True(t, errors.As(err, &f))
			assert.Equal(t, c.code, f.Code)
		})
	}
}

// Scan finds the same in a requirement, and leaves the rest of the line.
func TestScan(t *testing.T) {
	for _, c := range []struct {
		text   string
		value  float64
		unit   string
		rest   string
		code   string
		reason string
	}{
		{"1,750 lbs of payload", 1750, quantity.Pound, " of payload", "", "a weight"},
		{"153-inch module", 153, quantity.Inch, " module", "", "an adjective"},
		{"5 ft 8 in of headroom", 68, quantity.Inch, " of headroom", "", "feet and inches"},
		{"6 ft 6 in. minimum", 78, quantity.Inch, " minimum", "", "with its point"},
		{"9'-2\" station bay", 110, quantity.Inch, " station bay", "", "as on a drawing"},
		{"9 ft 2 doors", 108, quantity.Inch, " 2 doors", "", "a bare number is of what follows it"},
		{"$385,000.00 delivered", 385000, quantity.Dollar, " delivered", "", "a price"},
		{"345k", 345000, "", "", "", "bare thousands"},
		{"48 months or 100,000 miles", 48, quantity.Month, " or 100,000 miles", "", "the first of two"},
		{"100,000 miles", 100000, quantity.Mile, "", "", "the second"},
		{"one (1) stair chair", 1, "", " stair chair", "", "words and digits"},
		{"forty-eight (48) months", 48, quantity.Month, "", "", "longer words"},
		{"six seats", 6, "", " seats", "", "what is counted stays"},
		{"6 in the rear", 6, "", " in the rear", "", "in as a word"},
		{"6 in high", 6, quantity.Inch, " high", "", "in as inches"},
		{"2 a day", 2, "", " a day", "", "a as a word"},
		{"200 A", 200, quantity.Amp, "", "", "A as amperes"},
		{"1.750 lb", 0, "", "", quantity.TwoWays, "asked about"},
		{"12,5 kg", 0, "", "", quantity.TwoWays, "asked about"},
		{"10-12 in wide", 0, "", " in wide", quantity.TwoValues, "a span"},
		{"two (3) lights", 0, "", " lights", quantity.TwoValues, "words and digits differ"},
		{"4x4", 0, "", "4x4", "", "a drive"},
		{"6th edition", 0, "", "6th edition", "", "an ordinal"},
		{"3.7.6 Seats", 0, "", "3.7.6 Seats", "", "a paragraph"},
		{"4/0 cable", 0, "", "4/0 cable", "", "a cable"},
		{"12/24 V", 0, "", "12/24 V", "", "two voltages are no fraction"},
		{"payload", 0, "", "payload", "", "a word"},
		{"onetime", 0, "", "onetime", "", "a word that begins as a number does"},
		{"", 0, "", "", "", "nothing"},
		{"5 lb" + strings.Repeat(" x", 5000), 5, quantity.Pound, strings.Repeat(" x", 5000), "", "a long line"},
	} {
		t.Run(c.text[:min(len(c.text), 40)], func(t *testing.T) {
			m, n, f := quantity.Scan(c.text)
			assert.Equal(t, c.rest, c.text[n:], c.reason)
			if c.code != "" {
				require.NotNil(t, f, c.reason)
				assert.Equal(t, c.code, f.Code, c.reason)
				return
			}
			require.Nil(t, f, c.reason)
			assert.InDelta(t, c.value, m.Value, 1e-9, c.reason)
			assert.Equal(t, c.unit, m.Unit, c.reason)
		})
	}
}

func TestMeasureIn(t *testing.T) {
	for _, c := range []struct {
		m    quantity.Measure
		unit string
		want float64
		ok   bool
	}{
		{quantity.Measure{Value: 1, Unit: quantity.CubicFoot}, quantity.Liter, quantity.LitersPerCubicFt, true},
		{quantity.Measure{Value: 2, Unit: quantity.Hour}, quantity.Minute, 120, true},
		{quantity.Measure{Value: 24, Unit: quantity.Month}, quantity.Year, 2, true},
		{quantity.Measure{Value: 72, Unit: quantity.Inch}, quantity.Inch, 72, true},
		{quantity.Measure{Value: 72, Unit: quantity.Inch}, quantity.Pound, 0, false},
		{quantity.Measure{Value: 72}, quantity.Pound, 0, false},
	} {
		got, ok := c.m.In(c.unit)
		assert.Equal(t, c.ok, ok)
		assert.InDelta(t, c.want, got, 1e-12)
	}
}

// Whatever is typed, nothing panics, what is read is a number somebody can have
// meant, and what is refused says what was typed.
func FuzzParse(f *testing.F) {
	units := []string{quantity.Pound, quantity.Inch, quantity.Dollar, quantity.Mile, quantity.Watt, quantity.Amp,
		quantity.Minute, quantity.Month, quantity.CubicFoot, quantity.Liter, quantity.SquareFoot, quantity.LiterMinute,
		quantity.Percent, quantity.Count, quantity.Ratio, quantity.Day, "furlong"}
	for _, c := range writings {
		f.Add(c.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, unit := range units {
			for _, sys := range []quantity.System{quantity.US, quantity.Metric} {
				v, err := sys.Parse(text, unit)
				if err == nil && !(math.Abs(v) <= 1e9) {
					t.Fatalf("%q as %s is %v", text, unit, v)
				}
				var fault *quantity.Fault
				if err != nil && (!errors.As(err, &fault) || fault.Code == "" || !strings.HasPrefix(fault.Says, "“")) {
					t.Fatalf("%q as %s: %v", text, unit, err)
				}
			}
			digits, err := quantity.Digits(text, unit)
			if err == nil && strings.Trim(digits, "-0123456789.") != "" || err == nil && digits == "" {
				t.Fatalf("%q as %s is written %q", text, unit, digits)
			}
			if n, err := quantity.Whole(text, unit, -5, 5000); err == nil && (n < -5 || n > 5000) {
				t.Fatalf("%q is the whole number %d", text, n)
			}
		}
		m, n, fault := quantity.Scan(text)
		if n < 0 || n > len(text) || n == 0 && (fault != nil || m != quantity.Measure{}) || m.Value-m.Value != 0 {
			t.Fatalf("%q is scanned as %v, %d bytes, %v", text, m, n, fault)
		}
	})
}
