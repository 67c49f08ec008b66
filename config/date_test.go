package config_test

import (
	"encoding/json"
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
)

func ExampleParseDate() {
	d, err := config.ParseDate("2026-11-25")
	fmt.Println(d.Long(), err)
	_, err = config.ParseDate("25/11/2026")
	fmt.Println(err)
	// Output:
	// Wed, Nov 25, 2026 <nil>
	// "25/11/2026" is not a date: write year-month-day, such as 2027-03-31
}

func TestOnlyRealDaysAreRead(t *testing.T) {
	for _, c := range []struct {
		text   string
		ok     bool
		reason string
	}{
		{"", true, "not given"},
		{"2026-11-25", true, "a plain day"},
		{"1900-01-01", true, "the earliest"},
		{"2199-12-31", true, "the latest"},
		{"2028-02-29", true, "a leap year"},
		{"2000-02-29", true, "a century that is a leap year"},
		{"2100-02-29", false, "a century that is none"},
		{"2027-02-29", false, "no leap year"},
		{"2027-04-31", false, "April has 30 days"},
		{"2027-00-10", false, "no month zero"},
		{"2027-13-01", false, "no thirteenth month"},
		{"2027-01-00", false, "no day zero"},
		{"2027-01-32", false, "no day 32"},
		{"1899-12-31", false, "before the earliest"},
		{"2200-01-01", false, "after the latest"},
		{"0000-00-00", false, "nothing at all, written out"},
		{"2027-1-5", false, "digits left out"},
		{"2027-01-5", false, "a digit left out"},
		{"27-01-05", false, "a short year"},
		{"12027-01-05", false, "a long year"},
		{"2027/01/05", false, "slashes"},
		{"05-01-2027", false, "day first"},
		{"2027-01-05T00:00:00Z", false, "a time of day"},
		{" 2027-01-05", false, "a space before"},
		{"2027-01-05 ", false, "a space behind"},
		{"2027--1-05", false, "a sign for a digit"},
		{"+027-01-05", false, "a sign for a digit"},
		{"２027-01-5", false, "a digit of another script"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			d, err := config.ParseDate(c.text)
			assert.Equal(t, c.ok, err == nil, "%q: %s", c.text, c.reason)
			if err != nil {
				assert.True(t, d.IsZero(), c.text)
				assert.ErrorContains(t, err, fmt.Sprintf("%q", c.text))
				return
			}
			assert.Equal(t, c.text, d.String(), c.reason)
		})
	}
}

// Package time is the second opinion on which days there are and how they are
// written.
func TestDatesAgreeWithPackageTime(t *testing.T) {
	day := time.Date(1899, 12, 25, 0, 0, 0, 0, time.UTC)
	for ; day.Year() < 2201; day = day.AddDate(0, 0, 1) {
		text := day.Format("2006-01-02")
		d, err := config.ParseDate(text)
		if day.Year() < 1900 || day.Year() > 2199 {
			require.Error(t, err, text)
			continue
		}
		require.NoError(t, err)
		require.Equal(t, config.DateOf(day), d)
		require.Equal(t, text, d.String())
		require.Equal(t, day.Format("Mon, Jan 2, 2006"), d.Long())
	}
	rapid.Check(t, func(t *rapid.T) {
		d := config.Date{Year: rapid.IntRange(1900, 2199).Draw(t, "year"),
			Month: rapid.IntRange(1, 12).Draw(t, "month"), Day: rapid.IntRange(1, 28).Draw(t, "day")}
		for _, form := range []string{"1/2/2006", "01/02/2006", "Jan 2, 2006", "January 2 2006",
			"Monday, January 2, 2006", "2006-01-02"} {
			text := d.Time().Format(form)
			read, err := config.ReadDate(text)
			require.NoError(t, err)
			require.Equal(t, d, read, text)
		}
		for _, text := range []string{d.Long(), d.Short()} {
			read, err := config.ReadDate(text)
			require.NoError(t, err)
			require.Equal(t, d, read, "what is shown can be typed: %s", text)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9+-]{3,5}-[0-9 -]{1,3}-[0-9 ]{1,3}`).Draw(t, "text")
		at, wrong := time.Parse("2006-01-02", text)
		d, err := config.ParseDate(text)
		require.Equal(t, wrong == nil && at.Year() >= 1900 && at.Year() <= 2199, err == nil, text)
		if err == nil {
			require.Equal(t, config.DateOf(at), d)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		d := config.Date{Year: rapid.IntRange(-20000, 20000).Draw(t, "year"),
			Month: rapid.IntRange(-30, 30).Draw(t, "month"), Day: rapid.IntRange(-400, 400).Draw(t, "day")}
		if d.IsZero() {
			return
		}
		require.Equal(t, d.Time().Format("2006-01-02"), d.String(),
			"a day that was computed need not be in the calendar's form")
		require.Equal(t, d.Time().Format("Mon, Jan 2, 2006"), d.Long())
	})
}

func ExampleReadDate() {
	d, err := config.ReadDate("3/31/2027")
	fmt.Println(d.Long(), err)
	_, err = config.ReadDate("31.3.2027")
	fmt.Println(err)
	// Output:
	// Wed, Mar 31, 2027 <nil>
	// "31.3.2027" is not a date: write month/day/year, such as 3/31/2027, or Mar 31, 2027
}

func TestDaysAsPeopleWriteThem(t *testing.T) {
	for _, c := range []struct{ text, want, reason string }{
		{"", "", "not given"},
		{"  ", "", "nor with spaces"},
		{" 2027-03-31 ", "2027-03-31", "the form of the files"},
		{"3/31/2027", "2027-03-31", "month first"},
		{"03/31/27", "2027-03-31", "a short year is of this century"},
		{"mar 31 2027", "2027-03-31", "small letters, no comma"},
		{"Sept. 7, 2027", "2027-09-07", "a name shortened another way"},
		{"Wed, Mar 31, 2027", "2027-03-31", "as the page writes it"},
		{"2/29/2028", "2028-02-29", "a leap year"},
		{"31/3/2027", "wrong", "day first is never guessed at"},
		{"31.3.2027", "wrong", "nor are dots"},
		{"2/29/2027", "wrong", "no leap year"},
		{"Thu, Mar 31, 2027", "wrong", "it is a Wednesday: one of the two is a slip"},
		{"Ma 31, 2027", "wrong", "March or May"},
		{"Mar 31, 27", "wrong", "a short year beside a name"},
		{"Mar 31", "wrong", "no year"},
		{"3/31", "wrong", "no year"},
		{"3/31/027", "wrong", "no year"},
		{"3/-1/2027", "wrong", "a sign"},
		{"1/2/3/2027", "wrong", "four numbers"},
		{"3/31/-7", "wrong", "a sign for a digit"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			d, err := config.ReadDate(c.text)
			if c.want == "wrong" {
				assert.Error(t, err, "%q: %s", c.text, c.reason)
				assert.True(t, d.IsZero(), c.text)
				return
			}
			assert.NoError(t, err, c.reason)
			assert.Equal(t, c.want, d.String(), c.reason)
		})
	}
}

func TestDaysAreCounted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := config.DateOf(time.Date(2000, 1, rapid.IntRange(-36000, 70000).Draw(t, "day"), 0, 0, 0, 0, time.UTC))
		n := rapid.IntRange(-3000, 3000).Draw(t, "days")
		e := d.AddDays(n)
		require.Equal(t, n, d.DaysUntil(e))
		require.Equal(t, -n, e.DaysUntil(d))
		require.Equal(t, n > 0, d.Before(e))
		require.Equal(t, d, e.AddDays(-n))
	})
}

func TestMonthsAreCounted(t *testing.T) {
	day := config.Date{Year: 2027, Month: 8, Day: 31}
	for months, want := range map[int]string{0: "2027-08-31", 1: "2027-09-30", 4: "2027-12-31", 6: "2028-02-29",
		18: "2029-02-28", 60: "2032-08-31"} {
		assert.Equal(t, want, day.AddMonths(months).String(), "%d months", months)
	}
}

func TestDateInFiles(t *testing.T) {
	type file struct {
		On config.Date `json:"on"`
		By config.Date `json:"by,omitzero"`
	}
	data, err := json.Marshal(file{On: config.Date{Year: 2027, Month: 3, Day: 1}})
	require.NoError(t, err)
	assert.JSONEq(t, `{"on":"2027-03-01"}`, string(data), "a date that was not given is left out")
	var back file
	require.NoError(t, json.Unmarshal(data, &back))
	assert.Equal(t, "2027-03-01", back.On.String())
	assert.Equal(t, []string{"", "not given"}, []string{back.By.String(), back.By.Long()})
	assert.Error(t, json.Unmarshal([]byte(`{"on":"2027-02-30"}`), &back))
}
