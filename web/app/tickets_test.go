package app

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
)

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
