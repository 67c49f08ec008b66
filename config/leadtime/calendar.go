package leadtime

import (
	"slices"
	"sync"
	"time"

	"github.com/rickar/cal/v2"
	"github.com/rickar/cal/v2/us"

	"boxwright/config"
)

// The holiday library computes in a zone it keeps in a package variable. Left
// alone that is the machine's own, where a clock change at midnight can move a
// date; the same input must give the same dates everywhere.
func init() { cal.DefaultLoc = time.UTC }

// Calendar says which days the plant works: its workdays, Monday to Friday unless it
// says otherwise, less the federal holidays that it keeps, as observed, and its own
// shutdowns. It never changes once made, so any number of callers can share one.
type Calendar struct {
	off    [7]bool  // by time.Weekday
	worked holidays // that it does not keep
	shut   []closure
}

// holidays has a bit for each of config.FederalHolidays.
type holidays uint16

// closure is a shutdown in serial days.
type closure struct{ first, last int }

// NewCalendar takes the plant's workdays, holidays and shutdowns. A shutdown that ends
// before it begins closes nothing.
func NewCalendar(p *config.Plant) *Calendar {
	c := &Calendar{shut: make([]closure, len(p.Shutdowns))}
	for i, d := range config.Weekdays {
		c.off[i] = i == int(time.Sunday) || i == int(time.Saturday)
		if len(p.Workdays) > 0 {
			c.off[i] = !slices.Contains(p.Workdays, d)
		}
	}
	for i, h := range config.FederalHolidays {
		if len(p.Holidays) > 0 && !slices.Contains(p.Holidays, h) {
			c.worked |= 1 << i
		}
	}
	for i, s := range p.Shutdowns {
		c.shut[i] = closure{serial(s.First), serial(s.Last)}
	}
	return c
}

// Holiday is a federal holiday and the day it is observed.
type Holiday struct {
	Date config.Date
	Name string
}

// Holidays lists the federal holidays that the plant keeps and the days on which they
// are observed, of a calendar year in order. A
// holiday on a Saturday is observed the Friday before, one on a Sunday the
// Monday after, so New Year's Day can fall into the year before its own.
//
// Source: 5 USC 6103 (list, and the days in lieu).
// Units: calendar days.
// Valid: 1900 to 2199; Juneteenth from 2021, the other ten are taken as they are today.
// Example: 1 January 2028 is a Saturday and is observed on 31 December 2027.
func (c *Calendar) Holidays(year int) []Holiday {
	var out []Holiday
	for y := year; y <= year+1; y++ {
		for i, h := range us.Holidays {
			if c.worked>>i&1 != 0 {
				continue
			}
			if _, observed := h.Calc(y); observed.Year() == year {
				out = append(out, Holiday{config.DateOf(observed), h.Name})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Holiday) int { return serial(a.Date) - serial(b.Date) })
	return out
}

// Add is the nth working day after d; before it when n is negative. The day
// itself does not count, whether it is worked or not, and Add(d, 0) is d.
// The answer stays within 1900 to 2199, even if the plant never works again.
func (c *Calendar) Add(d config.Date, n int) config.Date {
	step := 1
	if n < 0 {
		step, n = -1, -n
	}
	w := walker{c: c}
	day := serial(d)
	for n > 0 && day > firstDay && day < lastDay {
		day += step
		switch {
		case w.working(day):
			n--
		case w.shut && step > 0:
			day = min(w.next-1, lastDay)
		case w.shut:
			day = max(w.start, firstDay)
		}
	}
	return fromSerial(day)
}

// Between counts the working days after d up to and including e: the largest n
// for which Add(d, n) is not after e. It is negative when e is earlier.
func (c *Calendar) Between(d, e config.Date) int {
	from, to, sign := serial(d), serial(e), 1
	if to < from {
		from, to, sign = to, from, -1
	}
	from, to = max(from, firstDay), min(to, lastDay)
	w := walker{c: c}
	n := 0
	for day := from + 1; day <= to; day++ {
		if w.working(day) {
			n += sign
		} else if w.shut {
			day = w.next - 1
		}
	}
	return n
}

// Following lists d itself and then the next n working days, so that a whole
// plan is dated in one walk. It is shorter when the calendar's years end first.
func (c *Calendar) Following(d config.Date, n int) []config.Date {
	out := make([]config.Date, 1, max(n, 0)+1)
	out[0] = d
	w := walker{c: c}
	for day := max(serial(d), firstDay) + 1; len(out) <= n && day <= lastDay; day++ {
		if w.working(day) {
			out = append(out, fromSerial(day))
		} else if w.shut {
			day = w.next - 1
		}
	}
	return out
}

// walker goes through days in order and marks a year's closed days once.
type walker struct {
	c           *Calendar
	start, next int  // serials of 1 January of the marked year and of the next
	closed      year // weekends, holidays and shutdowns
	shut        bool // all year, by one shutdown
}

// year has a bit for each of its days.
type year [6]uint64

func (y *year) mark(day int)     { y[day>>6] |= 1 << (day & 63) }
func (y *year) has(day int) bool { return y[day>>6]>>(day&63)&1 != 0 }
func newYear(y int) (first int)  { return serial(config.Date{Year: y, Month: 1, Day: 1}) }
func weekday(day int) int        { return (day%7 + 11) % 7 } // serial 3, 4 January 1970, was a Sunday
func (w *walker) working(day int) bool {
	if day < w.start || day >= w.next {
		w.turn(day)
	}
	return !w.closed.has(day - w.start)
}

// turn marks the year that a day lies in.
func (w *walker) turn(day int) {
	y := fromSerial(day).Year
	w.start, w.next = newYear(y), newYear(y+1)
	if w.shut = w.c.shutAllYear(w.start, w.next-1); w.shut {
		w.closed = year{^uint64(0), ^uint64(0), ^uint64(0), ^uint64(0), ^uint64(0), ^uint64(0)}
		return
	}
	w.closed = w.c.marks(y)
	for d := w.start; d < w.next; d++ {
		if w.c.off[weekday(d)] {
			w.closed.mark(d - w.start)
		}
	}
	for _, s := range w.c.shut {
		for d := max(s.first, w.start); d <= min(s.last, w.next-1); d++ {
			w.closed.mark(d - w.start)
		}
	}
}

// shutAllYear reports whether one shutdown covers all days from the first to the last.
func (c *Calendar) shutAllYear(first, last int) bool {
	return slices.ContainsFunc(c.shut, func(s closure) bool { return s.first <= first && s.last >= last })
}

// marks are the holidays observed in a year. A year's never change, so they are worked
// out once and kept.
func (c *Calendar) marks(y int) year {
	key := yearOf{y, c.worked}
	if marks, ok := keptMarks.Load(key); ok {
		return marks.(year)
	}
	var marks year
	for _, h := range c.Holidays(y) {
		marks.mark(serial(h.Date) - newYear(y))
	}
	keptMarks.Store(key, marks)
	return marks
}

type yearOf struct {
	year   int
	worked holidays
}

var keptMarks sync.Map // from yearOf to year

// serial numbers the days; fromSerial turns the number back.
func serial(d config.Date) int { return int(d.Time().Unix() / 86400) }

func fromSerial(day int) config.Date { return config.DateOf(time.Unix(int64(day)*86400, 0).UTC()) }

// The days this package walks over.
var (
	firstDay = serial(config.Date{Year: 1900, Month: 1, Day: 1})
	lastDay  = serial(config.Date{Year: 2199, Month: 12, Day: 31})
)
