package quantity_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config/quantity"
)

func ExampleSystem_Show() {
	fmt.Println(quantity.US.Show(14500, quantity.Pound))
	fmt.Println(quantity.Metric.Show(14500, quantity.Pound))
	fmt.Println(quantity.US.Show(-3.25, quantity.Inch))
	// Output:
	// 14,500 lb
	// 6,577 kg
	// −3.2 in
}

func TestShow(t *testing.T) {
	for _, c := range []struct {
		system quantity.System
		value  float64
		unit   string
		want   string
		reason string
	}{
		{quantity.US, 0, quantity.Pound, "0 lb", "nothing"},
		{quantity.US, 999.4, quantity.Pound, "999 lb", "no separator below a thousand"},
		{quantity.US, 999.6, quantity.Pound, "1,000 lb", "rounded into a thousand"},
		{quantity.US, 1234567, quantity.Pound, "1,234,567 lb", "two separators"},
		{quantity.US, -1750, quantity.Pound, "−1,750 lb", "a true minus sign"},
		{quantity.US, -0.4, quantity.Pound, "0 lb", "no minus before zero"},
		{quantity.US, math.Copysign(0, -1), quantity.Inch, "0.0 in", "no negative zero"},
		{quantity.US, 158, quantity.Inch, "158.0 in", "lengths to a tenth"},
		{quantity.Metric, 158, quantity.Inch, "4,013 mm", "lengths to a millimeter"},
		{quantity.Metric, 100, quantity.Pound, "45 kg", "mass to a kilogram"},
		{quantity.US, 43.25, quantity.CubicFoot, "43.2 ft³", "volume to a tenth; a half to the even digit"},
		{quantity.Metric, 43.25, quantity.CubicFoot, "1,225 L", "volume in liters"},
		{quantity.Metric, 212.34, quantity.Amp, "212.3 A", "the same in both systems"},
		{quantity.US, 12.5, quantity.Percent, "12.5 %", "a space before the sign"},
		{quantity.US, 0.826, quantity.Ratio, "0.83", "a ratio has no name"},
		{quantity.US, 42, quantity.Day, "42 working days", "days in full"},
		{quantity.US, 3.14159, "furlong", "3.14 furlong", "an unknown unit as it is"},
		{quantity.US, math.NaN(), quantity.Pound, "not known", "no number"},
		{quantity.Metric, math.Inf(1), quantity.Pound, "not known", "no end"},
		{quantity.US, math.Inf(-1), quantity.Percent, "not known", "no end, downward"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			assert.Equal(t, c.want, c.system.Show(c.value, c.unit), c.reason)
		})
	}
}

// What a reader sees can be typed back: the number is the same to half of the
// last digit shown, and is then shown alike.
func TestWhatIsShownCanBeTypedBack(t *testing.T) {
	lastDigit := map[string]float64{ // of the coarser display, in the unit itself
		quantity.Pound: 1 / quantity.KilogramsPerPound, quantity.Inch: 0.1, quantity.CubicFoot: 0.1, quantity.Amp: 0.1,
		quantity.Watt: 1, quantity.Volt: 0.01, quantity.Percent: 0.1, quantity.Ratio: 0.01, quantity.Hour: 0.1,
		quantity.Day: 1,
	}
	units := []string{quantity.Pound, quantity.Inch, quantity.CubicFoot, quantity.Amp, quantity.Watt, quantity.Volt,
		quantity.Percent, quantity.Ratio, quantity.Hour, quantity.Day}
	rapid.Check(t, func(t *rapid.T) {
		s := quantity.System(rapid.Bool().Draw(t, "metric"))
		unit := rapid.SampledFrom(units).Draw(t, "unit")
		v := rapid.Float64Range(-1e6, 1e6).Draw(t, "value")
		shown := s.Show(v, unit)
		back, err := s.Parse(shown, unit)
		require.NoError(t, err, shown)
		require.InDelta(t, v, back, 0.5000001*lastDigit[unit], shown)
		require.Equal(t, shown, s.Show(back, unit))
	})
}

func TestGroup(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     string
	}{
		{0, 0, "0"}, {12, 2, "12.00"}, {-1234.5, 1, "−1,234.5"}, {100000, 0, "100,000"}, {1e15, 0, "1,000,000,000,000,000"}, {-0.004, 2, "0.00"}, {math.NaN(), 2, "not known"},
	} {
		t.Run(c.want, func(t *testing.T) {
			assert.Equal(t, c.want, quantity.Group(c.v, c.decimals))
		})
	}
}

// A chance is one figure wherever it is written, and never certain.
func TestChancesAreRoundedOneWay(t *testing.T) {
	for _, x := range []struct {
		reason string
		chance float64
		want   string
	}{
		{"a half above an even number", .125, "13 %"},
		{"a half above an odd number", .375, "38 %"},
		{"even odds", .5, "50 %"},
		{"the least", .005, "1 %"},
		{"less", .0049, "under 1 %"},
		{"none", 0, "under 1 %"},
		{"the most", .9949, "99 %"},
		{"more", .995, "over 99 %"},
		{"all", 1, "over 99 %"},
	} {
		t.Run(x.reason, func(t *testing.T) { assert.Equal(t, x.want, quantity.Chance(x.chance)) })
	}
}
