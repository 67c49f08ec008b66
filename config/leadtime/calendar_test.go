package leadtime_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/config/leadtime"
)

func TestCalendarAdd(t *testing.T) {
	p := plant()
	c := leadtime.NewCalendar(&p)
	tests := []struct {
		from   string
		n      int
		want   string
		reason string
	}{
		{"2026-11-25", 0, "2026-11-25", "no working day further is the day itself"},
		{"2026-11-25", 1, "2026-11-27", "Thanksgiving, the fourth Thursday of November, is skipped"},
		{"2026-11-27", 1, "2026-11-30", "a weekend is skipped"},
		{"2026-11-28", 1, "2026-11-30", "counting from a Saturday"},
		{"2026-12-23", 1, "2027-01-04", "the shutdown, the year's end, 1 January and a weekend in one stride"},
		{"2027-12-30", 1, "2028-01-03", "1 January 2028 is observed on Friday 31 December 2027"},
		{"2027-01-04", -1, "2026-12-23", "backwards over the same shutdown"},
		{"2026-11-30", -2, "2026-11-25", "backwards over Thanksgiving"},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			assert.Equal(t, test.want, c.Add(day(test.from), test.n).String(), "%s", test.reason)
		})
	}
	assert.Equal(t, "shutdown", c.Closed(day("2026-12-28")))
	assert.Equal(t, "Christmas Day", c.Closed(day("2026-12-25")), "a holiday is named before a shutdown")
	assert.Equal(t, "weekend", c.Closed(day("2026-11-28")))
	assert.Empty(t, c.Closed(day("2026-11-27")), "the day after Thanksgiving is no federal holiday")
}

func TestCalendarLaws(t *testing.T) {
	p := plant()
	c := leadtime.NewCalendar(&p)
	rapid.Check(t, func(t *rapid.T) {
		d := day("2026-01-01").AddDays(rapid.IntRange(0, 2000).Draw(t, "day"))
		n := rapid.IntRange(1, 400).Draw(t, "n")
		e := c.Add(d, n)
		assert.True(t, c.Working(e))
		assert.Equal(t, n, c.Between(d, e), "Between undoes Add")
		assert.Equal(t, -n, c.Between(e, d))
		assert.Equal(t, e, c.Following(d, n)[n], "one walk lists what Add finds")
		assert.Equal(t, n-1, c.Between(d, e.AddDays(-1)), "the nth working day is the last one counted")
		assert.Equal(t, c.Closed(d) == "", c.Working(d))
	})
}

// A plant of four long days that works on the lesser holidays: 2026-10-12 is Columbus
// Day, 2026-11-26 Thanksgiving, each by the calendar of that month.
func TestCalendarIsThePlants(t *testing.T) {
	p := config.Plant{Workdays: []string{"Mon", "Tue", "Wed", "Thu"},
		Holidays: []string{"Thanksgiving Day", "Christmas Day"}}
	c := leadtime.NewCalendar(&p)
	assert.Equal(t, "2026-11-30", c.Add(day("2026-11-25"), 1).String(), "Thanksgiving, a Friday off and a weekend")
	assert.Equal(t, "weekend", c.Closed(day("2026-11-27")))
	assert.True(t, c.Working(day("2026-10-12")))
	assert.False(t, leadtime.NewCalendar(&config.Plant{}).Working(day("2026-10-12")), "a plant that says nothing")
	assert.Len(t, c.Holidays(2026), 2)
	none := leadtime.NewCalendar(&config.Plant{Holidays: []string{config.NoHoliday}})
	assert.True(t, none.Working(day("2026-11-26")))
	assert.Empty(t, none.Holidays(2026))
	all := leadtime.NewCalendar(&config.Plant{})
	for i, h := range all.Holidays(2026) {
		assert.Equal(t, config.FederalHolidays[i], h.Name, "the words for the holidays")
	}
}

func TestCalendarNeverWorking(t *testing.T) {
	shut := config.Plant{Shutdowns: []config.Shutdown{{First: day("1900-01-01"), Last: day("2199-12-31")}}}
	c := leadtime.NewCalendar(&shut)
	assert.Equal(t, "2199-12-31", c.Add(day("2026-01-01"), 1).String(), "it stops at the calendar's end")
	assert.Equal(t, 0, c.Between(day("2026-01-01"), day("2199-12-31")))
	assert.Equal(t, "shutdown", c.Closed(day("2026-11-25")), "a shutdown without a label")
	backward := config.Plant{Shutdowns: []config.Shutdown{{First: day("2026-12-31"), Last: day("2026-01-01")}}}
	assert.True(t, leadtime.NewCalendar(&backward).Working(day("2026-11-25")),
		"a shutdown that ends before it begins closes nothing")
	assert.NotPanics(t, func() {
		leadtime.NewCalendar(&config.Plant{}).Between(config.Date{}, config.Date{Year: 99999, Month: 77, Day: -3})
	})
}
