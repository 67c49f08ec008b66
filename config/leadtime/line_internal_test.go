package leadtime

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
)

// A plant that is closed for good, or for years, is dated as one that is closed day by day.
func TestYearsWithoutWork(t *testing.T) {
	date := func(y, m, d int) config.Date { return config.Date{Year: y, Month: m, Day: d} }
	for name, shut := range map[string][]config.Shutdown{
		"for three years and some": {{First: date(2026, 12, 10), Last: date(2030, 2, 3)}},
		"year by year": {{First: date(2027, 1, 1), Last: date(2027, 12, 31)},
			{First: date(2028, 1, 1), Last: date(2028, 12, 31)}},
		"for good":    {{First: date(2027, 3, 1), Last: date(2199, 12, 31)}},
		"from always": {{First: date(1900, 1, 1), Last: date(2199, 12, 31)}},
	} {
		t.Run(name, func(t *testing.T) {
			var daily []config.Shutdown // the same, a month at a time
			for _, s := range shut {
				for d := s.First; !s.Last.Before(d); d = d.AddDays(28) {
					last := d.AddDays(27)
					if s.Last.Before(last) {
						last = s.Last
					}
					daily = append(daily, config.Shutdown{First: d, Last: last})
				}
			}
			whole, parts := NewCalendar(&config.Plant{Shutdowns: shut}), NewCalendar(&config.Plant{Shutdowns: daily})
			for _, from := range []config.Date{date(2026, 11, 2), date(2028, 2, 29), date(2031, 7, 4)} {
				require.Equal(t, parts.Following(from, 60), whole.Following(from, 60))
				for _, n := range []int{-700, -1, 1, 30, 900} {
					require.Equal(t, parts.Add(from, n), whole.Add(from, n), "%v %d", from, n)
				}
				for _, to := range []config.Date{date(2026, 1, 1), date(2035, 6, 1), date(2199, 12, 31)} {
					require.Equal(t, parts.Between(from, to), whole.Between(from, to))
					l := newLine(whole, from)
					l.at(100_000)
					require.Equal(t, parts.Between(from, to), l.until(to))
				}
			}
		})
	}
}

// The calendar of a plant that is closed for good is gone through once for a plan.
func TestAPlantThatIsClosedForGoodIsAskedOnce(t *testing.T) {
	c := NewCalendar(&config.Plant{Shutdowns: []config.Shutdown{{First: config.Date{Year: 2027, Month: 3, Day: 1},
		Last: config.Date{Year: 2199, Month: 12, Day: 31}}}})
	l := newLine(c, config.Date{Year: 2026, Month: 11, Day: 2})
	require.True(t, l.ended)
	days := len(l.days)
	l.cal = nil // whoever asks it again fails
	require.Equal(t, l.days[days-1], l.at(5000))
	require.Equal(t, days-1, l.until(config.Date{Year: 2100, Month: 1, Day: 1}))
}
