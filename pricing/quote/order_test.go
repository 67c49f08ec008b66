package quote_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// The plant of a revision is told station by station what it builds otherwise: what comes
// in, what goes, what was named since, and which circuits change. The rest is not listed.
func TestWorkThatARevisionChanges(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "cut-14500-158-gas", "mod-146-72", quotetest.Today)
	compute := func(d *quote.Draft) *quote.Quote {
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		return q
	}
	was := compute(d)
	assert.Empty(t, quote.WorkChanges(was, compute(d.Clone())))

	to := d.Clone()
	to.Unit.Drop("cam-rear")
	to.Unit.Set(config.Pick{Option: "chx-chains", Qty: 1})
	to.Unit.Tell("let-plain", "Alder County EMS, gold")
	var got []string
	for _, w := range quote.WorkChanges(was, compute(to)) {
		got = append(got, w.Station+" | "+w.No+" | "+w.Before+" | "+w.Now)
	}
	assert.Equal(t, []string{
		"Electrical | cam-rear | 1, 2.0 h | ",
		"Electrical | chx-chains |  | 1, 2.0 h",
		"Exterior and marking | cam-rear | 1, 0.5 h | ",
		"Exterior and marking | let-plain | 1, 5.0 h, Name as it is to read, and its color: to be named | " +
			"1, 5.0 h, Name as it is to read, and its color: Alder County EMS, gold",
		"Mount and chassis | chx-chains |  | 1, 9.0 h",
		"Circuits | 180 | 16 wire, 5 A fuse | ",
	}, got)
}
