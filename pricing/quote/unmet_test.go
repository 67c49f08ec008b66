package quote_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// Options that one word asks for are one stop, which names the word once and each
// of them.
func TestWhatAWordAsksForIsOneStop(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "", "", quotetest.Today)
	d.Needs = quote.Needs{Climate: "cold", Must: []string{"cot-power"}}
	d.Needs.SetFirm("climate", true)
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	var stops []string
	for _, f := range q.OwnFindings() {
		if f.Severity == config.Stop {
			stops = append(stops, f.Text)
		}
	}
	require.Len(t, stops, 1)
	assert.Equal(t, 1, strings.Count(stops[0], "Cold"), stops[0])
	assert.Equal(t, 2, strings.Count(stops[0], "not in the unit"), "of the word, and of the option asked for by name")
	must, _ := d.Needs.Wishes(ed.Cat)
	require.Greater(t, len(must), 4)
	for _, id := range must {
		assert.Equal(t, 1, strings.Count(stops[0], ed.Cat.LabelOf(id)), id)
	}
}

// What stands in the way of a need is named, and how much is missing is said once.
func TestAPickInTheWayOfANeedIsNamed(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "cut-14500-158-gas", "rescue-164", quotetest.Today)
	d.Unit.Picks = []config.Pick{{Option: "dp-rescue", Qty: 1}}
	d.Needs.Crew = 9
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	at := slices.IndexFunc(q.Findings, func(f config.Finding) bool { return f.Code == quote.ConflictCode })
	require.GreaterOrEqual(t, at, 0)
	assert.Regexp(t, `^Seats: the customer asked for 9; with Rescue package no more than \d can be had\.$`,
		q.Findings[at].Text)
}
