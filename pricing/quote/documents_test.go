package quote_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/csv"
	"boxwright/config/quantity"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

func begun(t *testing.T, chassis string) *quote.Quote {
	ed := quotetest.Demo(t)
	q, err := quote.Compute(ed, quote.Begin(ed, chassis, "", quotetest.Today))
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

// What an option asks for is printed wherever the option is, and asked for
// until it is said; an open question stops nothing.
func TestDetails(t *testing.T) {
	q := begun(t, "cut-14500-158-gas")
	asked := func(q *quote.Quote) (config.Finding, bool) {
		for _, f := range q.Findings {
			if f.Code == "rules.detail" {
				return f, true
			}
		}
		return config.Finding{}, false
	}
	printed := func(q *quote.Quote) string {
		text := csv.Write(q.Everything())
		for _, s := range q.Stations() {
			for _, l := range s.Lines {
				text += "\n" + l.Label + " " + l.Told
			}
		}
		for _, r := range quote.Compare([]*quote.Quote{q, q}, nil, quantity.US) {
			text += "\n" + strings.Join(r.Cells, " ")
		}
		return text
	}
	f, found := asked(q)
	require.True(t, found)
	assert.Equal(t, config.Note, f.Severity)
	assert.Contains(t, f.Picks, "mrk-unit-number")
	assert.Equal(t, 2, strings.Count(printed(q), "Unit number: to be named"), "in the table and on the order sheet")
	for _, id := range f.Picks {
		q.Draft.Unit.Tell(id, "Medic 7 & <b>")
	}
	after, err := quote.Compute(q.Edition, q.Draft)
	require.NoError(t, err)
	_, found = asked(after)
	assert.False(t, found)
	assert.Equal(t, 2, strings.Count(printed(after), "Unit number: Medic 7 & <b>"))
	assert.Contains(t, printed(after), "Unit number on four sides (Medic 7 & <b>)", "quotes are compared by it too")
	assert.NotContains(t, printed(after), "to be named")

	moved, lost, _ := quote.Move(q.Edition, q.Draft)
	assert.Empty(t, lost)
	assert.Equal(t, q.Draft.Unit.Details, moved.Unit.Details)
	assert.Empty(t, propose.Basis(q.Draft, q.Edition.Cat).Unit.Details, "no proposal depends on it")
	for reason, wrong := range map[string][]config.Detail{
		"too long":     {{Option: "mrk-unit-number", Text: strings.Repeat("7", config.MaxDetail+1)}},
		"empty":        {{Option: "mrk-unit-number"}},
		"unknown":      {{Option: "mrk-none", Text: "7"}},
		"twice":        {{Option: "mrk-unit-number", Text: "7"}, {Option: "mrk-unit-number", Text: "8"}},
		"out of order": {{Option: "mrk-unit-number", Text: "7"}, {Option: "let-plain", Text: "8"}},
	} {
		t.Run(reason, func(t *testing.T) {
			q.Draft.Unit.Details = wrong
			_, err := quote.Compute(q.Edition, q.Draft)
			assert.ErrorContains(t, err, "details[", reason)
		})
	}
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
	assert.Contains(t, text, "Total,,1,"+q.Price.Total.String())
	assert.Contains(t, text, "Price,Of it,\"Includes sales tax of ", "what of the total is tax")
}
