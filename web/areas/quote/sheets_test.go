package quote

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
)

// Who plans the work reads the customer's date beside the plant's own.
func TestTheOrderSheetHasTheCustomersDate(t *testing.T) {
	ed := quotetest.Demo(t)
	p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false)}
	safe := p.Q.Plan.NineInTen
	for _, c := range []struct {
		reason string
		by     config.Date
		want   string
	}{
		{"none was given", config.Date{}, safe.Long() + ". Station dates"},
		{"the safe date keeps it", safe, " · the customer needs it by " + safe.Long() + ". Station dates"},
		{"the safe date does not", safe.AddDays(-1),
			" · the customer needs it by " + safe.AddDays(-1).Long() + ", before the safe date. Station dates"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			d := p.Q.Draft.Clone()
			d.Unit.NeededBy = c.by
			q, err := quote.Compute(ed, d)
			require.NoError(t, err)
			p.Q = q
			assert.Contains(t, orderSheet(p).String(), c.want)
		})
	}
}
