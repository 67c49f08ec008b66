package quote_test

import (
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// A chassis and a needed day give one verdict wherever it is asked for.
func TestOneVerdictForADate(t *testing.T) {
	ed := quotetest.Demo(t)
	late, kept := 0, 0
	for i := range ed.Cat.Chassis {
		d := quote.Begin(ed, ed.Cat.Chassis[i].ID, "", quotetest.Today)
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		for days := -3; days <= 3; days++ {
			needed := q.Plan.NineInTen.AddDays(days)
			on := d.Clone()
			on.Unit.NeededBy = needed
			q, err := quote.Compute(ed, on)
			require.NoError(t, err)
			misses := needed.Before(q.Plan.NineInTen)
			where := func(what string) []any { return []any{"%s by %s: %s", q.Chassis.Label, needed, what} }
			found := false
			for _, f := range q.Findings {
				found = found || f.Code == "time.needed-by.missed"
			}
			assert.Equal(t, misses, found, where("the finding")...)
			f, _ := q.Figure("time.nine-in-ten")
			assert.Equal(t, misses, !f.Met(), where("the figure")...)
			assert.Equal(t, misses, f.Margin() < 0, where("its margin; none is met")...)
			assert.Equal(t, misses, q.Plan.Chance(needed) < .9, where("the chance")...)
			assert.Equal(t, misses, q.Asks(quantity.US)[0].Missed != "", where("what was asked for")...)
			plan, err := quote.NextPlan(ed, on)
			require.NoError(t, err)
			assert.Equal(t, q.Plan.NineInTen, plan.NineInTen, where("a plan of the unit")...)
			if misses {
				late++
			} else {
				kept++
				assert.False(t, q.Plan.LatestOrder.Before(on.Unit.OrderOn), where("the latest order")...)
			}
		}
	}
	assert.Greater(t, late, 20)
	assert.Greater(t, kept, 20)
}

// A module looked at on every chassis costs there, and is delivered, as the unit that
// a press mounts.
func TestMountingsAreTheUnitsThatAPressMakes(t *testing.T) {
	ed := edition(t)
	d := remount(t, ed)
	d.Needs.Crew = 3
	fits := 0
	for _, m := range quote.Mountings(ed, d, quantity.US) {
		if len(m.Stops) > 0 {
			continue
		}
		fits++
		on := d.Clone()
		on.Unit = m.Unit
		q, err := quote.Compute(ed, on)
		require.NoError(t, err)
		assert.Equal(t, q.Plan.EvenOdds, m.Even, m.Chassis.Label)
		assert.True(t, q.Price.Total.Equal(m.Total), m.Chassis.Label)
		full, _, ok := ed.For(&on.Unit).Rules.Restore(&on.Unit, quote.Limits(ed, on))
		assert.True(t, ok, m.Chassis.Label)
		assert.Equal(t, m.Unit.Picks, full.Picks, "%s: nothing more changes", m.Chassis.Label)
		var none config.Date
		assert.NotEqual(t, none, m.Even)
	}
	assert.Greater(t, fits, 1)
}

// The last of several alike is held against the day they are needed; of very many the first.
func TestTheLastIsHeldAgainstTheDay(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		units, of int
		reason    string
	}{{1, 1, "one"}, {2, 2, "two"}, {3, 3, "each has its slot"}, {101, 1, "planning them all takes too long for a press"}} {
		t.Run(c.reason, func(t *testing.T) {
			d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", quotetest.Today)
			d.Terms.Units = c.units
			q, err := quote.Compute(ed, d)
			require.NoError(t, err)
			assert.Equal(t, c.of, d.LastOf(), c.reason)
			first, last, err := quote.Alike(ed, d)
			require.NoError(t, err)
			assert.Equal(t, q.Plan.NineInTen, first.NineInTen)
			assert.Equal(t, last, q.LastSafe())
			assert.Equal(t, c.of > 1, first.NineInTen.Before(last), c.reason)
			d.Unit.NeededBy = last
			asks := q.Asks(quantity.US)
			i := slices.IndexFunc(asks, func(a quote.Ask) bool { return a.ID == quote.AskDate })
			require.GreaterOrEqual(t, i, 0)
			has := last.Long() + " at 90 %"
			if c.of > 1 {
				has += ", the last of " + strconv.Itoa(c.of)
			}
			assert.Equal(t, has, asks[i].Has)
			assert.Empty(t, asks[i].Missed, c.reason)
		})
	}
}
