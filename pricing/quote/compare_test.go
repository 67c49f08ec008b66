package quote_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/assets/catalogue"
)

// Every row of a comparison holds what its label says, a column for each quote
// and each rival, and tells rows that differ from those that agree.
func TestCompareRows(t *testing.T) {
	ed := quotetest.Demo(t)
	quotes := make([]*quote.Quote, 2)
	for i, chassis := range []string{"cut-14500-158-gas", "cut-14000-158-gas"} {
		q, err := quote.Compute(ed, quote.Begin(ed, chassis, "", quotetest.Today))
		require.NoError(t, err)
		q.Draft.Seller.Name, q.Draft.Number = "Seller "+chassis, "N-"+chassis
		q.Verdicts = []standards.Verdict{{Outcome: standards.NotMet}, {Outcome: standards.Met},
			{Outcome: standards.NotMet}}[:i+1]
		quotes[i] = q
	}
	rival := quote.Rival{Name: "Other", Price: money.Cents(301_500_00), Date: config.Date{Year: 2027,
		Month: 5, Day: 1}, PayloadLb: 3100, Warranty: "3 years", Notes: "no loose equipment"}
	rows := map[string]quote.Row{}
	for _, r := range quote.Compare([]*quote.Quote{quotes[0], quotes[1], nil}, nil, []quote.Rival{rival}, quantity.US) {
		if !r.Heading {
			require.Len(t, r.Cells, 4, r.Label)
			rows[r.Label] = r
		}
	}
	figure := func(code string) func(*quote.Quote) string {
		return func(q *quote.Quote) string {
			f, ok := q.Figure(code)
			require.True(t, ok, code)
			text := quantity.US.Show(f.Value, f.Unit)
			if f.Sense != "" {
				text += " (margin " + quantity.US.Show(f.Margin(), f.Unit) + ")"
			}
			return text
		}
	}
	none := func(*quote.Quote) string { return "–" }
	for _, c := range []struct {
		label string
		of    func(*quote.Quote) string
		rival string
	}{
		{"Seller", func(q *quote.Quote) string { return q.Draft.Seller.Name }, "–"},
		{"Quote number", func(q *quote.Quote) string { return q.Draft.Number }, "–"},
		{"Rules", func(q *quote.Quote) string { return q.Assume.Label + ", 1 clause not met" }, "–"},
		{"Price", (*quote.Quote).Total, "USD 301,500.00"},
		{"Likely date (50 %)", func(q *quote.Quote) string { return q.Plan.EvenOdds.Long() }, "–"},
		{"Safe date (90 %)", func(q *quote.Quote) string { return q.Plan.NineInTen.Long() }, "–"},
		{"Price good through", func(q *quote.Quote) string { return q.Price.ValidUntil.Long() }, "–"},
		{"Delivery as promised", none, "Sat, May 1, 2027"},
		{"Notes", none, "no loose equipment"},
		{"Payload (GVWR less curb weight)", figure("weight.payload"), "3,100 lb"},
		{"Remaining payload", figure("weight.payload-left"), "–"},
		{"Curb weight", figure("weight.curb"), "–"},
		{"Front axle, loaded", figure("weight.front-axle"), "–"},
		{"Rear axle, loaded", figure("weight.rear-axle"), "–"},
		{"Rollover stability (T/2h)", figure("weight.ssf"), "–"},
		{"Amps left, hot", figure("power.remaining"), "–"},
		{"On battery", figure("power.battery-minutes"), "–"},
		{"Seats", figure("space.seats"), "–"},
		{"Storage inside", figure("space.storage"), "–"},
		{"Headroom", figure("space.headroom"), "–"},
		{"Oxygen", figure("space.oxygen"), "–"},
		{"Chassis", func(q *quote.Quote) string { return q.Chassis.Label }, "–"},
		{"GVWR", func(q *quote.Quote) string {
			return quantity.US.Show(float64(q.Chassis.GVWRLb),
				quantity.Pound)
		}, "–"},
		{"Module", func(q *quote.Quote) string { return q.Body.Label }, "–"},
	} {
		t.Run(c.label, func(t *testing.T) {
			row, ok := rows[c.label]
			require.True(t, ok)
			assert.Equal(t, []string{c.of(quotes[0]), c.of(quotes[1]), "–", c.rival}, row.Cells)
			assert.True(t, row.Differs, "a quote that cannot be computed differs")
		})
	}
	assert.Equal(t, "3 years", rows["Warranty"].Cells[3])

	for _, r := range quote.Compare([]*quote.Quote{quotes[0], quotes[0]}, nil, nil, quantity.US) {
		assert.Equal(t, r.Heading, r.Differs, "%s: a quote beside itself", r.Label)
	}
}

// Prices with and without sales tax are compared without it too; alike ones need no such row.
func TestPricesAreComparedWithoutTax(t *testing.T) {
	ed := quotetest.Demo(t)
	of := func(exempt bool) *quote.Quote {
		d := quote.Begin(ed, "cut-14500-158-gas", "", quotetest.Today)
		d.Terms.TaxExempt, d.Terms.Taxed = exempt, !exempt
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		return q
	}
	untaxed := func(a, b *quote.Quote) []string {
		for _, r := range quote.Compare([]*quote.Quote{a, b}, nil, nil, quantity.US) {
			if r.Label == "Price without sales tax" {
				return r.Cells
			}
		}
		return nil
	}
	assert.Nil(t, untaxed(of(true), of(true)))
	cells := untaxed(of(true), of(false))
	require.Len(t, cells, 2)
	assert.Equal(t, cells[0], cells[1], "one unit costs the same before tax")
}

// Moving to an edition that allows fewer of an option keeps as many as it does.
func TestMoveKeepsWhatTheEditionAllows(t *testing.T) {
	const id = "cfit-shelf"
	mark := []byte(`"id": "` + id + `"`)
	at := bytes.Index(catalogue.Demo, mark)
	require.Positive(t, at)
	end := at + bytes.IndexByte(catalogue.Demo[at:], '\n')
	line := catalogue.Demo[at:end]
	require.Contains(t, string(line), `"max_qty": 6`)
	for _, c := range []struct {
		name, most string
		has, want  int
		reason     string
	}{
		{"fewer allowed", `"max_qty": 4`, 6, 4, "cut to the new most"},
		{"fewer, but enough", `"max_qty": 4`, 3, 3, "what is allowed stays"},
		{"one", `"max_qty": 1`, 6, 1, "a most of one"},
		{"more allowed", `"max_qty": 8`, 6, 6, "nothing is added"},
	} {
		t.Run(c.name, func(t *testing.T) {
			changed := bytes.Replace(line, []byte(`"max_qty": 6`), []byte(c.most), 1)
			to, err := quote.OpenEdition(bytes.Replace(catalogue.Demo, line, changed, 1))
			require.NoError(t, err)
			from := quotetest.Demo(t)
			d := quote.Begin(from, "cut-14500-158-gas", "", quotetest.Today)
			d.Unit.Set(config.Pick{Option: id, Qty: c.has})
			moved, lost, _ := quote.Move(to, d)
			assert.Empty(t, lost)
			assert.Equal(t, c.want, moved.Unit.Qty(id), c.reason)
			assert.Equal(t, c.has, d.Unit.Qty(id), "the draft moved from is left as it was")
			assert.Empty(t, to.Cat.CheckUnit(&moved.Unit), "and the edition knows it")
		})
	}
}
