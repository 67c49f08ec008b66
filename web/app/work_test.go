package app

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
)

// What was worked out of a draft is kept for that draft alone: acts on the
// draft do not reach it, and another draft is worked out anew.
func TestWorkIsKeptForItsDraft(t *testing.T) {
	a := New()
	require.NoError(t, a.ensure())
	s := a.session(&Request{Today: config.Date{Year: 2026, Month: 11, Day: 25}})
	s.begin()
	first, err := s.work()
	require.NoError(t, err)
	again, err := s.work()
	require.NoError(t, err)
	assert.Same(t, first, again, "the same draft is worked out once")

	before, title := first.quote.Total(), first.quote.Draft.Title
	require.False(t, s.draft.Unit.Has("fb-push"))
	s.draft.Title = "Rescue 9"
	s.draft.Unit.Set(config.Pick{Option: "fb-push", Qty: 1})
	assert.Equal(t, title, first.quote.Draft.Title, "an act does not reach what was worked out before it")
	assert.False(t, first.quote.Draft.Unit.Has("fb-push"))

	second, err := s.work()
	require.NoError(t, err)
	assert.NotSame(t, first, second, "another draft is worked out anew")
	assert.NotEqual(t, before, second.quote.Total())
	assert.Equal(t, "Rescue 9", second.quote.Draft.Title)

	s.draft.Title = title
	s.draft.Unit.Drop("fb-push")
	back, err := s.work()
	require.NoError(t, err)
	assert.Same(t, first, back, "undo finds what was kept")
	for i := range mostWorked + 2 {
		s.draft.Number = string(rune('A' + i))
		_, err = s.work()
		require.NoError(t, err)
	}
	assert.Len(t, a.worked, mostWorked, "no more are kept than are gone back to")
}

// Each field of the form is the reading it is labeled with.
func TestTicketFieldsFillTheirReadings(t *testing.T) {
	p := begun(t)
	p.do(set("ticket.what", "unit"), set("ticket.condition", "crewed"), set("ticket.number", "A-17"),
		set("ticket.date", "2026-11-20"), set("ticket.fuel", "50"),
		set("ticket.total", "12000"), set("ticket.front", "4600"), set("ticket.rear", "7400"),
		set("ticket.tol", "15"),
		set("ticket.lf", "2250"), set("ticket.rf", "2350"), set("ticket.lr", "3650"), set("ticket.rr", "3750"))
	d := draftOf(t, p.do(Act{Do: "add-ticket"}))
	require.Len(t, d.Tickets, 1)
	assert.Equal(t, weight.Ticket{
		What: weight.TicketUnit, Condition: "crewed", Number: "A-17", Date: config.Date{Year: 2026,
			Month: 11, Day: 20}, FuelPart: 0.5,
		TotalLb: 12000, FrontLb: 4600, RearLb: 7400, TolLb: 15, WheelsLb: [4]quantity.Mass{2250, 2350, 3650, 3750},
	}, d.Tickets[0])
}
