package config

import (
	"fmt"
	"time"
)

// Date is a calendar day, without a clock or a zone, written "2026-11-25".
// The zero Date means "not given". Valid years are 1900 to 2199.
type Date struct {
	Year  int
	Month int
	Day   int
}

// ParseDate reads "2026-11-25". An empty text is the zero Date; anything else
// that is not a real day of the calendar is an error naming the text.
func ParseDate(text string) (Date, error) {
	if text == "" {
		return Date{}, nil
	}
	t, err := time.Parse("2006-01-02", text)
	if err != nil || t.Year() < 1900 || t.Year() > 2199 {
		return Date{}, fmt.Errorf("%q is not a date: write year-month-day, such as 2027-03-31", text)
	}
	return DateOf(t), nil
}

// DateOf takes the day of t in t's own zone.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	return Date{y, int(m), d}
}

// Time is midnight UTC of the day.
func (d Date) Time() time.Time {
	return time.Date(d.Year, time.Month(d.Month), d.Day, 0, 0, 0, 0, time.UTC)
}

// IsZero reports whether the date was not given.
func (d Date) IsZero() bool { return d == Date{} }

// Before reports whether d is earlier than e.
func (d Date) Before(e Date) bool { return d.Time().Before(e.Time()) }

// AddDays moves by calendar days; n may be negative.
func (d Date) AddDays(n int) Date { return DateOf(d.Time().AddDate(0, 0, n)) }

// DaysUntil counts calendar days from d to e; negative when e is earlier.
func (d Date) DaysUntil(e Date) int { return int(e.Time().Sub(d.Time()).Hours() / 24) }

// String is the form of the files, "2026-11-25", or "" for the zero Date.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return d.Time().Format("2006-01-02")
}

// Long is the form for readers: "Wed 25 Nov 2026", or "not given".
func (d Date) Long() string {
	if d.IsZero() {
		return "not given"
	}
	return d.Time().Format("Mon 2 Jan 2006")
}

// MarshalText writes the file form.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads the file form.
func (d *Date) UnmarshalText(text []byte) error {
	parsed, err := ParseDate(string(text))
	if err != nil {
		return err
	}
	*d = parsed
	return nil
}
