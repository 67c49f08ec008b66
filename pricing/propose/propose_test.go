package propose_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/money"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

func TestProposals(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		reason string
		needs  quote.Needs
		budget string
		by     config.Date
		ties   string // said of the earliest delivery
	}{
		{"nothing asked", quote.Needs{}, "", config.Date{}, "The same unit as the lowest price: of all that were worked out none is better by either measure."},
		{"advanced life support in snow, crew of six", quote.Needs{Duty: "als", Roads: "snow", Climate: "cold", Crew: 6, Must: []string{"rest-four", "cot-power"}, Like: []string{"sc-mast"}}, "400000", config.Date{Year: 2027, Month: 9, Day: 1}, ""},
		{"a neonatal unit", quote.Needs{Duty: "neonatal", Crew: 4}, "", config.Date{}, "The lowest price is delivered on the same day."},
		{"two patients on gravel", quote.Needs{Duty: "multi", Roads: "gravel", Patients: 2}, "360000", config.Date{}, "The lowest price is delivered on the same day."},
		{"a diesel Type I", quote.Needs{Type: "I", Fuel: "diesel"}, "", config.Date{}, ""},
	} {
		t.Run(c.reason, func(t *testing.T) {
			d := quote.Begin(ed, "", "", quotetest.Today)
			d.Needs, d.Unit.NeededBy = c.needs, c.by
			if c.budget != "" {
				d.Terms.Budget, _ = money.ParseAmount(c.budget)
			}
			s := propose.Propose(ed, d)
			require.Len(t, s.Proposals, 3, c.reason)
			must, like := d.Needs.Wishes(ed.Cat)
			for i, p := range s.Proposals {
				t.Log(c.reason, "|", p.Title, "|", p.Quote.Chassis.Label, p.Quote.Body.Label, p.Quote.Total(),
					p.Quote.Plan.EvenOdds, p.Dropped, p.Misses, p.Gives)
				assert.False(t, p.Quote.Stopped(), "%s: %s can be built", c.reason, p.Title)
				for _, id := range must {
					assert.True(t, p.Unit.Has(id), "%s: %s keeps %s", c.reason, p.Title, id)
				}
				for _, id := range like {
					assert.NotEqual(t, p.Unit.Has(id), contains(p.Dropped, id), "%s: %s says what it does without",
						c.reason, id)
				}
				seats, _ := p.Quote.Figure("space.seats")
				patients, _ := p.Quote.Figure("space.patients")
				assert.GreaterOrEqual(t, seats.Value, float64(c.needs.Crew), c.reason)
				assert.GreaterOrEqual(t, patients.Value, float64(c.needs.Patients), c.reason)
				if c.needs.Roads == "snow" {
					assert.Equal(t, "4x4", p.Quote.Chassis.Drive, c.reason)
				}
				for _, o := range s.Proposals {
					if len(o.Misses) > len(p.Misses) {
						continue // meeting the needs goes first
					}
					switch i {
					case 0:
						assert.LessOrEqual(t, p.Quote.Price.Total.Cmp(o.Quote.Price.Total), 0, "%s: the lowest price",
							c.reason)
					case 1:
						a, _ := p.Quote.Figure("weight.payload-left")
						b, _ := o.Quote.Figure("weight.payload-left")
						assert.GreaterOrEqual(t, a.Value, b.Value, "%s: the most margin", c.reason)
					case 2:
						assert.False(t, o.Quote.Plan.EvenOdds.Before(p.Quote.Plan.EvenOdds), "%s: the earliest",
							c.reason)
					}
				}
			}
			assert.Equal(t, c.ties, strings.Join(s.Proposals[2].Ties, " "), "%s: where two coincide it is said",
				c.reason)
			if len(must) == 0 {
				return // once is enough: the one with the most to look at
			}
			again := propose.Propose(ed, d)
			for i := range s.Proposals {
				assert.Equal(t, s.Proposals[i].Unit, again.Proposals[i].Unit, "%s: the same needs, the same answer",
					c.reason)
			}
		})
	}
}

func TestNoProposal(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Crew: 20}
	s := propose.Propose(ed, d)
	assert.Empty(t, s.Proposals, "no body seats twenty")
	assert.Positive(t, s.Refused, "and it is said how many were refused")
}

func contains(list []string, id string) bool {
	for _, x := range list {
		if x == id {
			return true
		}
	}
	return false
}

func BenchmarkPropose(b *testing.B) {
	ed := quotetest.Demo(b)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Duty: "als", Climate: "cold", Crew: 5}
	for b.Loop() {
		propose.Propose(ed, d)
	}
}
