package quote_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// Every chassis of the demonstration catalogue must give a new unit that can
// be issued as it stands.
func TestNewUnitsCanBeIssued(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	for i := range ed.Cat.Chassis {
		d := quote.Begin(ed, ed.Cat.Chassis[i].ID, "", config.Date{Year: 2026, Month: 11, Day: 25})
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		for _, f := range q.Findings {
			assert.NotEqual(t, config.Stop, f.Severity, "%s: %s %s", d.Unit.Chassis, f.Code, f.Text)
		}
	}
}
