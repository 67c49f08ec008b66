package compare

import (
	"boxwright/web/page/markup"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/link"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/pricing/sign"
	"boxwright/web/page/pagetest"
	"boxwright/web/session"
)

// A rival's bid is told against ours in the right direction.
func TestRivalsAreToldInTheRightDirection(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false), View: &session.View{}}
	total, ours := p.Q.Price.Total, p.Q.Plan.NineInTen
	payload, _ := p.Q.Figure("weight.payload")
	dollars := func(n int64) money.Amount { return money.Cents(n * 100) }
	for _, c := range []struct {
		name, reason string
		rival        quote.Rival
		want         string
	}{
		{"cheaper than ours", "our price is the higher one", quote.Rival{Price: total.Sub(dollars(1500))}, "the unit showing now is USD 1,500.00 more"},
		{"dearer than ours", "our price is the lower one", quote.Rival{Price: total.Add(dollars(1500))}, "the unit showing now is USD 1,500.00 less"},
		{"sooner", "their date lies before ours", quote.Rival{Date: ours.AddDays(-9)}, "promised 9 days before ours at 90 %"},
		{"later", "their date lies after ours", quote.Rival{Date: ours.AddDays(1)}, "promised 1 day after ours at 90 %"},
		{"carries less", "ours less theirs", quote.Rival{PayloadLb: quantity.Mass(payload.Value - 100)}, "our payload less theirs is +100 lb"},
		{"carries more", "ours less theirs", quote.Rival{PayloadLb: quantity.Mass(payload.Value + 100)}, "our payload less theirs is -100 lb"},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.rival.Name = "Other bidder"
			p.View.Rivals = []quote.Rival{c.rival}
			html := differences(p, []column{{q: p.Q, name: "a"}}).String()
			assert.Contains(t, strings.ReplaceAll(html, "−", "-"), c.want, c.reason)
		})
	}
}

// How much later or earlier another quote arrives, and what it costs against
// ours.
func TestDifferencesAreToldInTheRightDirection(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false), View: &session.View{}}
	for _, c := range []struct {
		name string
		days int
		want string
	}{{"later", 8, "It arrives 8 calendar days later"}, {"a day earlier", -1, "It arrives 1 calendar day earlier"},
		{"the same", 0, "It arrives on the same day"}} {
		t.Run(c.name, func(t *testing.T) {
			other, plan, price := *p.Q, *p.Q.Plan, *p.Q.Price
			plan.EvenOdds = plan.EvenOdds.AddDays(c.days)
			price.Total = price.Total.Add(money.Cents(250_00))
			other.Plan, other.Price = &plan, &price
			columns := []column{{q: p.Q, name: "a"}, {q: &other, name: "b"}}
			assert.Contains(t, reasons(columns).String(), c.want)
			html := differences(p, columns).String()
			assert.NotContains(t, html, c.want, "the date is told once")
			assert.Equal(t, []string{p.Q.Price.Total.Show(), price.Total.Show(), "250.00"},
				pagetest.RowOf(t, html, "Total")[1:])
		})
	}
}

// Two quotes of one title and number are told apart by what they differ in.
func TestQuotesOfOneNumberAreToldApart(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false), View: &session.View{}}
	key, err := sign.New(strings.NewReader(strings.Repeat("k", 32)))
	require.NoError(t, err)
	draft := func(days, rev int) *quote.Draft {
		d := p.Q.Draft.Clone()
		d.Title, d.Number, d.Rev, d.Date = "Rescue 4", "Q-1", rev, d.Date.AddDays(days)
		return d
	}
	of := func(d *quote.Draft, cents int64) column {
		q, price := *p.Q, *p.Q.Price
		price.Total = price.Total.Add(money.Cents(cents))
		q.Draft, q.Price = d, &price
		return column{q: &q, d: d, name: "Rescue 4"}
	}
	plain := of(draft(0, 0), 0)
	text, err := link.Encode(plain.q)
	require.NoError(t, err)
	signed := plain
	signed.link, err = link.Sign(text, p.Q.Edition.Cat, key)
	require.NoError(t, err)
	for _, c := range []struct {
		name   string
		other  column
		of, to string
	}{
		{"revision", of(draft(0, 1), 0), "Q-1", "Q-1, revision 1"},
		{"day", of(draft(3, 0), 0), "Q-1, dated " + plain.d.Date.Long(), "Q-1, dated " + plain.d.Date.AddDays(3).Long()},
		{"signer", signed, "Q-1, not signed", "Q-1, signed by somebody unknown"},
		{"price", of(draft(0, 0), 500), "Q-1, " + plain.q.Total(), "Q-1, " + of(draft(0, 0), 500).q.Total()},
		{"nothing that is known", plain, "Q-1", "Q-1 (2)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			set := []column{plain, c.other}
			p.distinguish(set)
			assert.Equal(t, []string{"Rescue 4, " + c.of, "Rescue 4, " + c.to}, []string{set[0].name, set[1].name})
		})
	}
}

// The earlier quote stands first, whichever is in work, and no two have one name.
func TestColumns(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false), View: &session.View{}}
	at := func(days int, title string) *quote.Quote {
		q, d := *p.Q, p.Q.Draft.Clone()
		d.Date, d.Title = d.Date.AddDays(days), title
		q.Draft = d
		return &q
	}
	const own = "Cutaway 14,500 lb" // of a label that goes on
	for _, c := range []struct {
		name    string
		reading bool
		others  []Other
		want    []string
	}{
		{"alone", false, nil, []string{own}},
		{"of one day, set aside first", false, []Other{{Q: at(0, "Before")}}, []string{"Before", own}},
		{"of one day, the one that is read first", true, []Other{{Q: at(0, "Before")}}, []string{own, "Before"}},
		{"a later one", false, []Other{{Q: at(3, "Later")}}, []string{own, "Later"}},
		{"an earlier one, while another is read", true, []Other{{Q: at(-3, "Earlier")}}, []string{"Earlier", own}},
		{"of one name", true, []Other{{Q: at(0, "")}}, []string{own + ", not numbered", own + ", not numbered (2)"}},
		{"two chassis that begin alike", false, []Other{{Q: like(p.Q, "Cutaway 14,500 lb 4x4, 158 in wheelbase, diesel")}},
			[]string{"Cutaway 14,500 lb 4x4", "Cutaway 14,500 lb, 158 in wheelbase"}},
		{"one that cannot be read", false, []Other{{Fault: "x"}, {Q: at(-1, "Earlier")}}, []string{"Earlier", own, "not computed"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p.Reading, p.Others = c.reading, c.others
			var names []string
			for _, column := range p.columns() {
				names = append(names, column.name)
			}
			assert.Equal(t, c.want, names)
		})
	}
}

// like is a quote with a chassis of another name.
func like(q *quote.Quote, label string) *quote.Quote {
	other, chassis := *q, *q.Chassis
	chassis.Label = label
	other.Chassis = &chassis
	return &other
}

// What differs stands open; what is the same is counted, folded and said once for all columns.
func TestWhatIsTheSameIsFolded(t *testing.T) {
	of := func(label string, differs bool, cells ...string) quote.Row {
		return quote.Row{Label: label, Differs: differs, Cells: cells}
	}
	rows := []quote.Row{{Label: "Figures", Heading: true, Differs: true}, of("Payload", true, "1 lb", "2 lb"),
		of("Seats", false, "4", "4"), {Label: "Vehicle", Heading: true, Differs: true}, of("Module", false, "A", "A"),
		of("Bid", false, "A", "–")}
	names := []string{"one", "two"}
	differs, n := rowsOf(rows, names, func(r quote.Row) bool { return r.Differs })
	assert.Equal(t, 1, n)
	html := markup.Many(differs...).String()
	assert.Contains(t, html, "Figures")
	assert.NotContains(t, html, "Vehicle", "a heading without rows")
	assert.Equal(t, []string{"Payload", "1\u00a0lb", "2\u00a0lb"}, pagetest.RowOf(t, html, "Payload"))
	same, n := rowsOf(rows, names, func(r quote.Row) bool { return !r.Differs })
	assert.Equal(t, 3, n)
	html = markup.Many(same...).String()
	assert.Equal(t, []string{"Seats", "4"}, pagetest.RowOf(t, html, "Seats"), "once")
	assert.Equal(t, []string{"Bid", "A", "–"}, pagetest.RowOf(t, html, "Bid"), "not of a bid that does not say")

	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false), View: &session.View{}}
	of2 := []column{{q: p.Q, d: p.Q.Draft, name: "one"}, {q: p.Q, d: p.Q.Draft, name: "two"}}
	html = comparison(p, of2).String()
	assert.Contains(t, html, "Nothing differs.")
	assert.Regexp(t, `id="fold-same"><summary><h2>\d+ lines are the same</h2>`, html)
	html = comparison(p, of2[:1]).String()
	assert.Contains(t, html, "Nothing to compare it with yet.")
	assert.NotContains(t, html, "the same</b>", "of one there is nothing that could differ")
}
