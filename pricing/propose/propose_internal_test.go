package propose

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// The search judges a unit by the very price, margin and date that its quote
// shows: a unit that is better by a day or a dollar cannot be passed over.
func TestTheSearchJudgesByWhatTheQuoteShows(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	d := quote.Begin(ed, "", "", config.Date{Year: 2026, Month: 11, Day: 25})
	d.Needs = quote.Needs{Duty: "als", Climate: "cold", Crew: 5}
	d.Terms.Units = 3
	base := Basis(d, ed.Cat)
	for _, p := range Propose(ed, d).Proposals {
		l := glance(ed, base, p.Unit)
		assert.Equal(t, p.Quote.Price.Total.Float(), l.metric[Cheapest], p.Title)
		assert.Equal(t, -marginOf(p.Quote), l.metric[Lightest], p.Title)
		assert.Equal(t, waitOf(d.Date, p.Quote.Plan.NineInTen, p.Quote.Plan.EvenOdds), l.metric[Soonest], p.Title)
	}
}

// What might still be saved is told in dollars and cents or in pounds, as the goal counts.
func TestWhatMightStillBeSavedIsTold(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	for _, c := range []struct {
		goal  Goal
		bound int64
		says  string
	}{
		{Cheapest, 100_000, "the best found: at most USD 234.50 could still be saved."},
		{Lightest, 100_000, "the best found: at most 2345.0 lb could still be saved."},
		{Cheapest, 123_450, "proven: no other has lower list prices."},
		{Lightest, 123_450, "proven: no other has a lower weight of its options."},
	} {
		said := least(ed, c.goal, &rules.Completion{Found: true, Cost: 123_450, Bound: c.bound})
		assert.Equal(t, "The "+string(c.goal)+" unit that keeps your choices, "+c.says, said)
	}
}

// Of units that are alike by a goal the one with more of what is liked is taken,
// then the cheaper; what meets the needs goes before everything.
func TestBetter(t *testing.T) {
	of := func(misses, liked int, days, price float64) *look {
		return &look{misses: misses, liked: liked, metric: map[Goal]float64{Soonest: days, Cheapest: price}}
	}
	for _, c := range []struct {
		reason string
		a, b   *look
	}{
		{"meets the needs", of(0, 0, 90, 9), of(1, 5, 50, 1)},
		{"a day earlier", of(0, 0, 89, 9), of(0, 5, 90, 1)},
		{"more of what is liked", of(0, 5, 90, 9), of(0, 4, 90, 1)},
		{"cheaper", of(0, 5, 90, 1), of(0, 5, 90, 9)},
	} {
		t.Run(c.reason, func(t *testing.T) {
			assert.Negative(t, better(c.a, c.b, Soonest), c.reason)
			assert.Positive(t, better(c.b, c.a, Soonest), c.reason)
		})
	}
}
