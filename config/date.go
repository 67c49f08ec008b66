package config

import (
	"fmt"
	"strings"
	"time"
)

// Date is a calendar day, without a clock or a zone, written "2026-11-25".
// The zero Date means "not given". Valid years are 1900 to 2199.
type Date struct {
	Year  int
	Month int
	Day   int
}

// ParseDate reads the form of the files, "2026-11-25". An empty text is the zero
// Date; anything else that is not a real day of the calendar is an error naming
// the text.
func ParseDate(text string) (Date, error) {
	if text == "" {
		return Date{}, nil
	}
	var d Date
	if len(text) == 10 && text[4] == '-' && text[7] == '-' {
		d = Date{digits(text[:4]), digits(text[5:7]), digits(text[8:])}
	}
	if !d.real() {
		return Date{}, fmt.Errorf("%q is not a date: write year-month-day, such as 2027-03-31", text)
	}
	return d, nil
}

// ReadDate reads a day as a person writes it: "3/31/2027" or "3/31/27", month
// first; "Mar 31, 2027", with its weekday before it or without; or the form of
// the files. An empty text is the zero Date. The error names the text; a weekday
// that the day does not fall on is one.
func ReadDate(text string) (Date, error) {
	text = strings.TrimSpace(text)
	d, err := ParseDate(text)
	if err == nil {
		return d, nil
	}
	weekday := ""
	if parts := strings.Split(text, "/"); len(parts) == 3 {
		d = Date{digits(parts[2]), digits(parts[0]), digits(parts[1])}
		if len(parts[2]) == 2 && d.Year >= 0 {
			d.Year += 2000
		}
	} else {
		words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r == ' ' || r == ',' })
		if len(words) == 4 {
			weekday, words = words[0], words[1:]
		}
		if len(words) == 3 {
			d = Date{Year: digits(words[2]), Day: digits(words[1])}
			for m := time.January; m <= time.December; m++ {
				if shortens(words[0], m.String()) {
					d.Month = int(m)
				}
			}
		}
	}
	if !d.real() || weekday != "" && !shortens(weekday, d.Time().Weekday().String()) {
		return Date{}, fmt.Errorf("%q is not a date: write month/day/year, such as 3/31/2027, or Mar 31, 2027", text)
	}
	return d, nil
}

// shortens reports whether a word in small letters is a name or its beginning,
// such as "sept." of September.
func shortens(word, name string) bool {
	word = strings.TrimSuffix(word, ".")
	return len(word) >= 3 && strings.HasPrefix(strings.ToLower(name), word)
}

// real reports whether the calendar has the day within the valid years. A day
// it does not have, such as February 30, moves when it is taken to a time and
// back.
func (d Date) real() bool { return d.Year >= 1900 && d.Year <= 2199 && d == DateOf(d.Time()) }

// digits reads a number of plain digits; -1 when there is anything else.
func digits(text string) int {
	n := 0
	for i := range len(text) {
		if text[i] < '0' || text[i] > '9' {
			return -1
		}
		n = 10*n + int(text[i]-'0')
	}
	return n
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

// AddMonths gives the same day so many months later, or the last day of a month that has no such day.
func (d Date) AddMonths(n int) Date {
	end := DateOf(time.Date(d.Year, time.Month(d.Month+n+1), 0, 0, 0, 0, 0, time.UTC))
	return Date{end.Year, end.Month, min(d.Day, end.Day)}
}

// DaysUntil counts calendar days from d to e; negative when e is earlier.
func (d Date) DaysUntil(e Date) int { return int(e.Time().Sub(d.Time()).Hours() / 24) }

// String is the form of the files, "2026-11-25", or "" for the zero Date.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return d.Time().Format(time.DateOnly)
}

// Long is the form for readers: "Wed, Nov 25, 2026", or "not given".
func (d Date) Long() string {
	if d.IsZero() {
		return d.Short()
	}
	return d.Time().Format("Mon, ") + d.Short()
}

// Short is the form for readers where room is scarce: "Nov 25, 2026", or "not
// given".
func (d Date) Short() string {
	if d.IsZero() {
		return "not given"
	}
	return d.Time().Format("Jan 2, 2006")
}

// MonthName is the month in three letters: "Nov".
func (d Date) MonthName() string { return d.Time().Format("Jan") }

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
