package quote

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
)

// The plant reads off the order sheet what of 125 V is fitted where, what feeds it, and what
// the catalogue leaves to the designer.
func TestTheOrderSheetHasThe125VoltSide(t *testing.T) {
	ed := quotetest.Demo(t)
	d := pagetest.Of(t, ed, "cut-14500-158-gas", false).Q.Draft.Clone()
	for _, id := range []string{"cot-incubator", "df-incubator-power", "gen-6"} {
		d.Unit.Set(config.Pick{Option: id, Qty: 1})
	}
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false)}
	p.Q = q
	drawn := orderSheet(p).String()
	from := drawn[strings.Index(drawn, "125 V: inlet"):]
	loads := drawn[strings.Index(drawn, "125 V loads"):]
	for _, c := range []struct {
		table, what, rest string
	}{
		{from, "20 A inlet", "shore-20 1 20 A – Electrical, Exterior and marking"},
		{from, "1,000 W pure sine inverter", "inv-1000 1 1,000 W continuous 157 INVERTER 1000 W FEED Electrical"},
		{from, "20 A charger and conditioner", "chg-20 1 20 A of charge at 12 V 154 CHARGER OUTPUT Electrical"},
		{from, "Generator, 6 kW, in a compartment", "gen-6 1 6,000 W continuous – " +
			"Electrical, Exterior and marking, Test and inspection"},
		{loads, "20 A charger and conditioner", "chg-20 1 350 2.8 shore line, generator Electrical"},
		{loads, "Two duplex receptacles in the action area", "rec-action 1 300 2.4 shore line, generator, inverter Electrical"},
		{loads, "Transport incubator on a sled, 196 lb", "cot-incubator 1 450 3.6 shore line, generator, its own inverter " +
			"Electrical, Interior, Test and inspection"},
	} {
		t.Run(c.what, func(t *testing.T) {
			assert.Equal(t, c.rest, strings.Join(pagetest.RowOf(t, c.table, c.what)[1:], " "))
		})
	}
	assert.Contains(t, drawn, "The catalogue states no rating of a branch breaker")
}

// The circuit schedule says once what most wires are sized by, and in a column only where some are
// sized otherwise.
func TestWhatWiresAreSizedBy(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)}
	p.notes, p.said = new(notes), map[string]string{}
	p.work = p.Q
	for i := range p.Q.Power.Circuits {
		p.Q.Power.Circuits[i].Decided = "voltage drop"
	}
	drawn := orderSheet(p).String()
	assert.Contains(t, drawn, "Wires are sized by voltage drop.")
	assert.NotContains(t, drawn, "Sized by")
	p.Q.Power.Circuits[3].Decided = "ampacity"
	drawn = orderSheet(p).String()
	assert.Contains(t, drawn, "Wires are sized by voltage drop, but where the last column says otherwise.")
	assert.Equal(t, 1, strings.Count(drawn, "voltage drop"))
	assert.Equal(t, 1, strings.Count(drawn, "ampacity"))
	p.Q.Power.Circuits = nil
	assert.NotContains(t, orderSheet(p).String(), "Wires are sized")
}
