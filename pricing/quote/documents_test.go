package quote_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/csv"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
)

func begun(t *testing.T, chassis string) *quote.Quote {
	ed := demo(t)
	q, err := quote.Compute(ed, quote.Begin(ed, chassis, "", today))
	require.NoError(t, err)
	return q
}

// Every hour of work that the plan counts stands on the order sheet once.
func TestStations(t *testing.T) {
	q := begun(t, "cut-14500-158-gas")
	sum, want := 0.0, 0.0
	seen := map[string]bool{}
	for _, s := range q.Stations() {
		sum += s.Hours
		for _, l := range s.Lines {
			seen[l.Label] = true
		}
		if s.ID != "" {
			assert.False(t, s.Finish.Before(s.Start), s.Label)
		}
	}
	for _, w := range append(q.Chassis.Work, q.Body.Work...) {
		want += float64(w.Hours)
	}
	for _, p := range q.Draft.Unit.Picks {
		o := q.Edition.Cat.OptionByID(p.Option)
		for _, w := range o.Work {
			want += float64(w.Hours) * float64(p.Qty)
		}
		assert.True(t, seen[o.Label], "%s is on the sheet", o.Label)
	}
	assert.InDelta(t, want, sum, 1e-9)
	assert.NotEmpty(t, q.LongLead())
}

func TestChecks(t *testing.T) {
	for _, chassis := range []string{"cut-14500-158-gas", "van-9500-148-gas", "med-26000-189-diesel"} {
		q := begun(t, chassis)
		ids := map[string]bool{}
		for _, c := range q.Checks() {
			assert.False(t, ids[c.ID], "%s stands once", c.ID)
			ids[c.ID] = true
			assert.False(t, math.IsNaN(c.Low) || math.IsInf(c.Low, 0), c.ID)
			assert.LessOrEqual(t, c.Low, c.Want, c.ID)
			assert.GreaterOrEqual(t, c.High, c.Want, c.ID)
			v := c.Want
			q.Draft.Read(c.ID, &v)
		}
		require.Empty(t, q.Draft.Check(), "readings can be kept")
		for _, c := range q.Checks() {
			assert.True(t, c.Good(), "%s: what is expected is accepted", c.ID)
		}
		total := float64(q.Weight.Curb.TotalLb) + 400
		q.Draft.Read("weigh.total", &total)
		assert.False(t, q.Checks()[0].Good(), "400 lb too much is not")
		q.Draft.Read("weigh.total", nil)
		assert.Nil(t, q.Checks()[0].Reading)
	}
}

func TestUpkeep(t *testing.T) {
	cut, diesel := begun(t, "cut-14500-158-gas"), begun(t, "cab-17500-169-4x4-diesel")
	words := func(q *quote.Quote) (all string) {
		last := 0
		for _, task := range q.Tasks(quantity.US) {
			assert.GreaterOrEqual(t, task.Months, last, "the most frequent first")
			last = task.Months
			all += task.What + "\n"
		}
		return all
	}
	assert.NotContains(t, words(cut), "Transfer case")
	assert.Contains(t, words(diesel), "Transfer case")
	assert.Contains(t, words(diesel), "regeneration")
	assert.Contains(t, words(cut), "psi (", "pressures are this unit's")
	assert.NotEmpty(t, cut.Service())
}

func TestEverything(t *testing.T) {
	q := begun(t, "")
	q.Draft.Title = `=HYPERLINK("x")`
	text := csv.Write(q.Everything())
	back, err := csv.Read(text)
	require.NoError(t, err)
	assert.Equal(t, q.Everything(), back, "the saved table reads back")
	assert.NotContains(t, strings.ReplaceAll(text, "'=HYPERLINK", ""), "=HYPERLINK", "no formula")
	assert.Contains(t, text, "Total,,,"+q.Price.Total.String())
}
