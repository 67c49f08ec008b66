package propose

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// A chassis that cannot have what the customer must have is passed over; what the customer
// only wants passes nothing over.
func TestAWantPassesNoChassisOver(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	d := quote.Begin(ed, "cut-14500-158-gas", "", config.Date{Year: 2026, Month: 11, Day: 25})
	d.Needs.Fuel = "diesel"
	assert.True(t, neverMeets(d, ed.Cat, &d.Unit), "a must")
	d.Needs.Wants = []string{"fuel"}
	assert.False(t, neverMeets(d, ed.Cat, &d.Unit), "a want")
}
