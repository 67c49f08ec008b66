package quote_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/standards"
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

// The usual pairs of the demonstration are declared to the rule set they begin with, and
// no clause of it is missed; a declaration of a unit that misses one stops the quote.
func TestUsualPairsMeetWhatTheyAreDeclaredTo(t *testing.T) {
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	day := config.Date{Year: 2026, Month: 11, Day: 25}
	for i := range ed.Cat.Chassis {
		q, err := quote.Compute(ed, quote.Begin(ed, ed.Cat.Chassis[i].ID, "", day))
		require.NoError(t, err)
		assert.True(t, q.Draft.Unit.Has("doc-declaration"), q.Chassis.Label)
		for _, v := range q.Verdicts {
			assert.NotEqual(t, standards.NotMet, v.Outcome, "%s: %s", q.Chassis.Label, v.Title)
		}
	}
	d := quote.Begin(ed, "cut-14500-158-gas", "", day)
	d.Unit.Set(config.Pick{Option: "hvac-roof", Qty: 1})
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	i := slices.IndexFunc(q.Findings, func(f config.Finding) bool { return f.Code == "standard.declared" })
	require.GreaterOrEqual(t, i, 0)
	assert.Contains(t, q.Findings[i].Text, "Overall height")
	assert.True(t, q.Stopped())
}
