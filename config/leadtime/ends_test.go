package leadtime_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/leadtime"
)

// A day is closed for a reason exactly when it is not worked: at both ends of a
// shutdown, around them, and through every day of two years.
func TestClosedDaysHaveAReason(t *testing.T) {
	p := plant()
	p.Shutdowns = append(p.Shutdowns, config.Shutdown{First: day("2027-07-12"), Last: day("2027-07-23"),
		Label: "Summer"}, config.Shutdown{First: day("2027-08-11"), Last: day("2027-08-11"), Label: "Stock taking"})
	c := leadtime.NewCalendar(&p)
	for _, x := range []struct{ day, closed, reason string }{
		{"2027-07-09", "", "the Friday before the shutdown"},
		{"2027-07-12", "shutdown", "its first day"},
		{"2027-07-17", "weekend", "a Saturday within it"},
		{"2027-07-23", "shutdown", "its last day"},
		{"2027-07-26", "", "the Monday after it"},
		{"2027-08-10", "", "the day before a shutdown of one day"},
		{"2027-08-11", "shutdown", "a shutdown of one day"},
		{"2027-08-12", "", "the day after it"},
	} {
		t.Run(x.day, func(t *testing.T) { assert.Equal(t, x.closed, c.Closed(day(x.day)), x.reason) })
	}
	for d := day("2026-01-01"); d.Before(day("2028-01-01")); d = d.AddDays(1) {
		require.Equal(t, c.Closed(d) == "", c.Working(d), "%s", d)
	}
}

// Each delivery figure stands at its own chance, with the range its own chances
// give: one in ten to nine in ten, and even odds to ninety-nine in a hundred.
func TestDeliveryFiguresAndTheirRanges(t *testing.T) {
	u := unit("cot", "camera")
	u.NeededBy = day("2027-06-01")
	p := schedule(t, catalogue(), u)
	figure := func(code string) config.Figure {
		f, ok := p.Figure(code)
		require.True(t, ok, code)
		return f
	}
	even, nine := figure("time.even-odds"), figure("time.nine-in-ten")
	for _, c := range []struct {
		name, reason string
		days         float64
		chance       float64
	}{
		{"even odds, low", "one in ten", even.Low, .1},
		{"even odds", "even odds", even.Value, .5},
		{"even odds, high", "nine in ten", even.High, .9},
		{"nine in ten, low", "even odds", nine.Low, .5},
		{"nine in ten", "nine in ten", nine.Value, .9},
		{"nine in ten, high", "ninety-nine in a hundred", nine.High, .99},
	} {
		t.Run(c.name, func(t *testing.T) {
			c2 := leadtime.NewCalendar(&config.Plant{Shutdowns: plant().Shutdowns})
			assert.Equal(t, p.At(c.chance), c2.Add(u.OrderOn, int(c.days)), c.reason)
		})
	}
	assert.Less(t, even.Low, even.Value)
	assert.Less(t, even.Value, nine.Value)
	assert.Less(t, nine.Value, nine.High)
}

// A wait is told once, by what is waited for.
func TestAWaitIsToldByWhatIsWaitedFor(t *testing.T) {
	c := catalogue(withSlots, func(c *config.Catalogue) { c.Chassis[0].Arrive = span(1, 1, 1) })
	p := schedule(t, c, unit())
	require.Equal(t, "2027-01-11", p.Slot.String())
	assert.Contains(t, codes(p), "time.slot-wait", "ready for framing before its slot")
	assert.NotContains(t, codes(p), "time.bay-wait", "no other unit holds a bay")
}
