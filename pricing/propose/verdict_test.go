package propose_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/money"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// What a proposal, a thing to give up or a way out says of price and date is what the
// quote says once it is taken, also of one of several units.
func TestWhatIsOfferedIsWhatIsQuoted(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		name, reason string
		change       func(d *quote.Draft)
	}{
		{"alone", "one unit", func(*quote.Draft) {}},
		{"three alike", "the budget is for all three", func(d *quote.Draft) { d.Terms.Units = 3 }},
		{"behind another", "it waits for the bays, and shares the budget", func(d *quote.Draft) {
			d.Duplicate()
			d.Terms.Budget = money.Dollars(700_000)
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := quote.Begin(ed, "", "", quotetest.Today)
			d.Needs = quote.Needs{Type: "III", Crew: 5}
			d.Terms.Budget, d.Unit.NeededBy = money.Dollars(260_000), config.Date{Year: 2027, Month: 4, Day: 2}
			c.change(d)
			same := func(what string, u *config.Unit, price string, safe config.Date) *quote.Quote {
				on := d.Clone()
				on.Unit = u.Clone()
				q, err := quote.Compute(ed, on)
				require.NoError(t, err)
				assert.Equal(t, q.Total(), price, "%s: %s", what, c.reason)
				assert.Equal(t, q.Plan.NineInTen, safe, "%s: %s", what, c.reason)
				return q
			}
			s := propose.Propose(ed, d)
			require.Len(t, s.Proposals, 3)
			for _, p := range s.Proposals {
				same(p.Title, &p.Unit, p.Quote.Total(), p.Quote.Plan.NineInTen)
			}
			giving := propose.GiveUps(&s)
			require.NotEmpty(t, giving.List)
			for _, g := range giving.List {
				q := same(g.Said(quantity.US), &g.Unit, "USD "+g.Price.Show(), g.Safe)
				d := d.Clone()
				d.Unit = g.Unit
				q, err := quote.Compute(ed, d)
				require.NoError(t, err)
				assert.Contains(t, propose.Effect(q, &g.Unit, nil, nil, quantity.US).String(),
					"Delivery "+q.Plan.EvenOdds.Long()+", as now.")
			}
			_, said, ok := propose.Complete(ed, d, propose.Soonest)
			require.True(t, ok)
			u, _, _ := propose.Complete(ed, d, propose.Soonest)
			on := d.Clone()
			on.Unit = u
			q, err := quote.Compute(ed, on)
			require.NoError(t, err)
			assert.Contains(t, said, q.Plan.EvenOdds.Long(), "the soonest unit is as soon as its quote says")
			own := on.Clone()
			own.Unit.Picks = slices.DeleteFunc(own.Unit.Picks, func(p config.Pick) bool { return p.Filled })
			bare, err := quote.NextPlan(ed, own)
			require.NoError(t, err)
			assert.Equal(t, bare.EvenOdds == q.Plan.EvenOdds, strings.Contains(said, "proven"),
				"it is proven where the customer's own choices take as long")
		})
	}
}

// What is left out of the standard is what hurts least, and what hurts most of it is
// named first.
func TestTheLeastIsLeftOut(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		budget int64
		reason string
	}{{255_000, "a few exchanges"}, {258_000, "who could pay more is not told less"}} {
		t.Run(fmt.Sprint(c.budget), func(t *testing.T) {
			d := quote.Begin(ed, "", "", quotetest.Today)
			d.Needs = quote.Needs{Crew: 6, Type: "III"}
			d.Terms.Budget = money.Dollars(c.budget)
			s := propose.Propose(ed, d)
			few := 0
			for _, g := range propose.GiveUps(&s).List {
				if len(g.IDs) > 0 {
					continue
				}
				for _, id := range g.Missing {
					assert.True(t, ed.Cat.OptionByID(id).Standard)
					assert.False(t, g.Unit.Has(id))
				}
				for _, x := range g.Other {
					assert.False(t, g.Unit.Has(x.Standard))
					assert.True(t, g.Unit.Filled(x.Instead))
				}
				if n := len(g.Missing) + len(g.Other); n > 0 && n <= 8 {
					few++
				}
			}
			assert.Positive(t, few, "a few things less keep the budget: %s", c.reason)
		})
	}
}
