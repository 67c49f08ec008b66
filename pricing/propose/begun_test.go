package propose_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// Proposals begin on the chassis that the customer began on, or say why none stands on it.
func TestProposalsBeginOnTheChassisBegunOn(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, c := range []struct {
		name    string
		chassis string
		needs   quote.Needs
		why     string // that none stands on it; empty: one does
	}{
		{"any unit", "med-19500-175-diesel", quote.Needs{}, ""},
		{"a rescue", "med-19500-175-diesel", quote.Needs{Duty: "rescue"}, ""},
		{"another type than asked for", "cut-14500-158-gas", quote.Needs{Type: "I"}, "Type III-AD instead of Type I."},
		{"no medium-duty chassis", "cut-14500-158-gas", quote.Needs{Type: quote.MediumDuty},
			"Type III-AD instead of medium-duty."},
		{"a kind that has no body there", "van-9500-148-gas", quote.Needs{Duty: "rescue"},
			"This edition has no module for the kind of unit asked for on it."},
		{"options that do not go on it", "van-9500-148-gas",
			quote.Needs{Must: []string{"lay-rescue", "cot-power"}}, "too much for a chassis below 14,500 lb."},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := quote.Begin(ed, "", "", quotetest.Today)
			plain := propose.Propose(ed, d)
			assert.Nil(t, plain.Begun, "the page's own first unit is no choice of the customer")
			d.Needs = c.needs
			d.Needs.Begun = c.chassis
			s := propose.Propose(ed, d)
			require.NotNil(t, s.Begun)
			why := s.Begun.Why(quantity.US)
			if c.why != "" {
				assert.Nil(t, s.Begun.Proposal)
				assert.Contains(t, why, c.why)
				t.Log(why)
				assert.Equal(t, s.Proposals, s.Offered())
				return
			}
			require.NotNil(t, s.Begun.Proposal)
			assert.Empty(t, why)
			first := s.Offered()[0]
			assert.Equal(t, c.chassis, first.Unit.Chassis)
			assert.Equal(t, "On the chassis you began on", first.Title)
			assert.False(t, first.Quote.Stopped())
			assert.Len(t, s.Offered(), len(s.Proposals)+1, "the others follow")
			t.Log(first.Quote.Chassis.Label, first.Quote.Body.Label, first.Quote.Total(), s.Gives(&first, quantity.US))
		})
	}
}
