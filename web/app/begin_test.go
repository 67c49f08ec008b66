package app

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Tickets entered for one unit say which unit stood on the scale as soon as
// another is begun, whatever was or was not pressed in between.
func TestANewUnitKeepsWhatTheOldOneWeighed(t *testing.T) {
	const old = "cut-14500-158-gas"
	for _, c := range []struct {
		name, what, reason string
		next               string
		weighed            string // chassis the ticket names; empty: it is still that of the unit in hand
	}{
		{"unit, other chassis", "unit", "the new unit was never on a scale", "cut-14000-158-gas", old},
		{"unit, same chassis", "unit", "the picks are those of a plain unit again, which weighs the same", old, ""},
		{"chassis, other chassis", "chassis", "another chassis was weighed", "cut-14000-158-gas", old},
		{"chassis, same chassis", "chassis", "the chassis on the scale is the one in hand", old, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := begun(t)
			total := map[string]string{"unit": "11,096", "chassis": "5,700"}[c.what]
			p.do(set("ticket.what", c.what), set("ticket.total", total), Act{Do: "add-ticket"})
			d := draftOf(t, p.do(Act{Do: "new", ID: c.next}))
			require.Len(t, d.Tickets, 1)
			if c.weighed == "" {
				assert.Nil(t, d.Tickets[0].Unit, c.reason)
				return
			}
			require.NotNil(t, d.Tickets[0].Unit, c.reason)
			assert.Equal(t, c.weighed, d.Tickets[0].Unit.Chassis, c.reason)
		})
	}
}

// What a new unit takes over from the quote before it, and what it leaves.
func TestANewUnitKeepsTheParties(t *testing.T) {
	p := begun(t)
	p.do(set("buyer.name", "Hollow County EMS"), set("seller.name", "Inland Rescue Sales"), set("title",
		"Medic 4"), set("number", "Q-7"),
		set("unit.needed_by", "2028-01-01"), set("needs.crew", "3"), Act{Do: "pick", ID: "fb-push", On: true})
	d := draftOf(t, p.do(Act{Do: "new", ID: "cut-14000-158-gas"}))
	for _, c := range []struct{ name, want, is string }{
		{"buyer", "Hollow County EMS", d.Buyer.Name},
		{"seller", "Inland Rescue Sales", d.Seller.Name},
		{"title", "Medic 4", d.Title},
		{"number", "Q-7", d.Number},
		{"needed by", "2028-01-01", d.Unit.NeededBy.String()},
		{"chassis", "cut-14000-158-gas", d.Unit.Chassis},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, c.is) })
	}
	assert.Equal(t, 3, d.Needs.Crew)
	assert.False(t, d.Unit.Has("fb-push"), "the options chosen were those of the unit before")
}
