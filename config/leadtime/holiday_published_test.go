package leadtime_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/config/leadtime"
)

// Federal holidays as observed. Rules: 5 USC 6103 (list read at
// okwb.uscourts.gov/holidays).
func TestPublishedHolidays(t *testing.T) {
	tests := []struct {
		year   int
		days   string
		source string
	}{
		{2024, "01-01 01-15 02-19 05-27 06-19 07-04 09-02 10-14 11-11 11-28 12-25", "published: okep.uscourts.gov/office-holidays"},
		{2026, "01-01 01-19 02-16 05-25 06-19 07-03 09-07 10-12 11-11 11-26 12-25", "derived from the rules; 4 July is a Saturday"},
		{2027, "01-01 01-18 02-15 05-31 06-18 07-05 09-06 10-11 11-11 11-25 12-24 12-31", "derived from the rules; 1 January 2028 is a Saturday, observed in 2027"},
		{2028, "01-17 02-21 05-29 06-19 07-04 09-04 10-09 11-10 11-23 12-25", "derived from the rules; 11 November is a Saturday"},
	}
	c := leadtime.NewCalendar(&config.Plant{})
	for _, test := range tests {
		t.Run(test.days, func(t *testing.T) {
			var got []string
			for _, h := range c.Holidays(test.year) {
				assert.Equal(t, test.year, h.Date.Year)
				got = append(got, h.Date.String()[5:])
				assert.False(t, c.Working(h.Date), "%s %s", h.Date, h.Name)
				assert.Equal(t, h.Name, c.Closed(h.Date))
			}
			assert.Equal(t, test.days, strings.Join(got, " "), "%d: %s", test.year, test.source)
		})
	}
}
