package leadtime

import (
	"cmp"
	"math"
	"slices"

	"boxwright/config"
)

// line counts the working days of one plan from its order date, which is 0.
// A step that begins at time t of the network first touches working day
// floor(t)+1 after the order; one that ends at t leaves on working day ceil(t).
type line struct {
	cal   *Calendar
	days  []config.Date // days[n] is the nth working day after the order
	ended bool          // the calendar has no more
}

func newLine(cal *Calendar, order config.Date) *line {
	l := &line{cal: cal, days: []config.Date{order}}
	l.extend(320)
	return l
}

// extend lists n more working days, where the calendar has as many.
func (l *line) extend(n int) {
	if l.ended {
		return
	}
	more := l.cal.Following(l.days[len(l.days)-1], n)[1:]
	l.days, l.ended = append(l.days, more...), len(more) < n
}

// at is the nth working day after the order. Beyond the calendar's last year
// it is the last working day there.
func (l *line) at(n int) config.Date {
	n = max(n, 0)
	if n >= len(l.days) {
		l.extend(n - len(l.days) + 101)
	}
	return l.days[min(n, len(l.days)-1)]
}

// until counts the working days after the order up to and including d;
// negative when d is before the order.
func (l *line) until(d config.Date) int {
	if d.Before(l.days[0]) {
		return l.cal.Between(l.days[0], d)
	}
	if l.days[len(l.days)-1].Before(d) {
		l.at(len(l.days) + 250) // a year more
		if last := l.days[len(l.days)-1]; last.Before(d) {
			if l.ended {
				return len(l.days) - 1
			}
			return len(l.days) - 1 + l.cal.Between(last, d)
		}
	}
	n, found := slices.BinarySearchFunc(l.days, d, func(a, b config.Date) int {
		return cmp.Or(a.Year-b.Year, a.Month-b.Month, a.Day-b.Day)
	})
	if found {
		return n
	}
	return n - 1
}

func (l *line) starts(t float64) config.Date   { return l.at(int(math.Floor(t+dust)) + 1) }
func (l *line) finishes(t float64) config.Date { return l.at(whole(t)) }

// dust is the last digit that is kept of a time: sums come out alike on every
// machine only when what lies below is dropped before rounding to whole days.
const dust = 1e-6

// whole is the number of working days that cover t.
func whole(t float64) int { return int(math.Ceil(t - dust)) }

// round keeps what lies above dust; adding zero turns a negative zero into zero.
func round(t float64) float64 { return math.Round(t/dust)/(1/dust) + 0 }
