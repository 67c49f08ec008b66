package app

import (
	"encoding/json"
	"html"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

func tick(id string) Act { return Act{Do: "set", ID: id, On: true} }

func (p *browser) draft() *quote.Draft {
	p.t.Helper()
	d, err := quote.ReadDraft(p.req["draft"].(json.RawMessage))
	require.NoError(p.t, err)
	return d
}

func (p *browser) quote() *quote.Quote {
	p.t.Helper()
	q, err := quote.Compute(p.app.memory.Edition, p.draft())
	require.NoError(p.t, err)
	return q
}

func priced(t *testing.T) *browser {
	p := open(t)
	p.do(Act{Do: "new", ID: "cut-14500-158-gas", Value: "mod-146-72"}, Act{Do: "go", ID: "price"})
	return p
}

// What the terms come to is read while they are folded: a discount is not to be looked for.
func TestFoldedTermsSayWhatTheyComeTo(t *testing.T) {
	p := priced(t)
	main := p.do(Act{Do: "go", ID: "price"}).Regions["main"]
	assert.Contains(t, main, ">Contract and discount</h2>")
	main = p.do(set("terms.discount_percent", "14"), set("terms.trade_in", "1000")).Regions["main"]
	var taken pricing.Amount
	for _, l := range p.quote().Price.Lines {
		if l.Code == pricing.LineDiscount || l.Code == pricing.LineTradeIn {
			taken = taken.Add(l.Amount)
		}
	}
	require.Negative(t, taken.Sign())
	assert.Contains(t, main, ">Contract and discount: "+taken.Show()+"</h2>")
}

// Every term that a price knows can be set on the page and stands in the draft.
func TestTermsAreSet(t *testing.T) {
	p := priced(t)
	s := p.do(
		set("terms.contract", "coop-plains"), set("terms.discount_percent", "1.5 %"), set("terms.discount_amount",
			"1,200"), set("terms.discount_reason", "standing order"),
		set("terms.trade_in", "18000"), set("terms.trade_in_text", "2014 unit"), set("terms.budget", "900000"),
		set("terms.validity_days", "45"),
		set("terms.tax_rate", "7.25"), set("deal.tax", "exempt"), set("terms.exempt_reason", "public service"),
		set("deal.use", "other"), set("deal.deposit_amount", "5000"), tick("terms.bond"),
		set("terms.prepay", "chassis-with-order"), set("deal.prepay_days", "150"), set("terms.freight_miles", "412.5"),
		set("terms.training_days", "3"), tick("fee.scale-ticket"),
		Act{Do: "add", ID: "extra"}, set("extra.0.label", "Portable radios"), set("extra.0.qty", "4"),
		set("extra.0.price", "1850.00"), tick("extra.0.untaxed"),
		Act{Do: "add", ID: "lease"}, set("lease.rate", "6.25"), set("lease.per_year", "1"), set("lease.periods", "7"),
		tick("lease.advance"), set("lease.balloon", "20000"), set("lease.first_due", "6"), set("lease.label",
			"County lease"),
	)
	require.Empty(t, s.Fault)
	assert.NotContains(t, string(s.View), `"wrong"`, "%s", s.View)
	d := p.draft()
	text, err := json.Marshal(d.Terms)
	require.NoError(t, err)
	for _, want := range []string{
		`"contract":"coop-plains"`, `"discount_percent":"1.5"`, `"discount_amount":"1200.00"`, `"trade_in":"18000.00"`,
		`"validity_days":45`, `"tax_rate":"7.25"`, `"tax_exempt":true`, `"use":"other"`,
		`"deposit_amount":"5000.00"`, `"bond":true`, `"prepay":"chassis-with-order"`, `"prepay_days":150`,
		`"freight_miles":"412.5"`, `"training_days":"3"`, `"fees":["scale-ticket"]`,
		`{"label":"Portable radios","qty":4,"price":"1850.00","untaxed":true}`, `"per_year":1`, `"periods":7`,
		`"advance":true`, `"balloon":"20000.00"`, `"first_due":6`, `"label":"County lease"`,
	} {
		assert.Contains(t, string(text), want)
	}
	for _, want := range []string{"County lease", "Portable radios", "Every payment", "Paid together"} {
		assert.Contains(t, s.Regions["main"], want)
	}
	s = p.do(Act{Do: "drop", ID: "extra.0"}, Act{Do: "drop", ID: "lease"}, Act{Do: "set", ID: "fee.scale-ticket"})
	require.Empty(t, s.Fault)
	d = p.draft()
	assert.Empty(t, d.Terms.Extras)
	assert.Nil(t, d.Terms.Lease)
	assert.Empty(t, d.Terms.Fees)
}

// Who buys decides the tax that is assumed, and the headline says so beside the price
// the buyer is charged; what is said goes first.
func TestThePriceTheBuyerIsCharged(t *testing.T) {
	p := priced(t)
	s := p.do(Act{Do: "go", ID: "price"})
	assert.Contains(t, s.Regions["standing"], "Includes sales tax of ")
	assert.Contains(t, s.Regions["standing"], "Say in Quote who buys")
	taxed := p.quote().Price.Total

	s = p.do(set("terms.buyer", "county"))
	assert.Contains(t, s.Regions["standing"], "No sales tax: a county is taken as exempt.")
	assert.NotContains(t, s.Regions["standing"], "Say in Quote who buys")
	exempt := p.quote().Price.Total
	assert.Positive(t, taxed.Cmp(exempt))

	s = p.do(set("deal.tax", "paid"))
	assert.True(t, p.quote().Price.Total.Equal(taxed))
	s = p.do(set("deal.tax", "exempt"), set("terms.units", "2"))
	assert.Contains(t, s.Regions["standing"], "2 units at ")
	assert.Contains(t, s.Regions["standing"], "No sales tax: the buyer is exempt.")
	assert.Contains(t, s.Regions["main"], " each. No sales tax")

	s = p.do(Act{Do: "go", ID: "quote"}, Act{Do: "paper", Value: "order"})
	assert.Contains(t, s.Regions["main"], "Build 2 units alike. Numbers and hours below are for each of them; station dates "+
		"are those of the first.")
	assert.Contains(t, s.Regions["main"], "2 of 2", "each has its framing slot")
	s = p.do(Act{Do: "paper", Value: "quote"})
	assert.Contains(t, s.Regions["main"], "for 2 units, with the specification")
	const lease = "A lease-purchase is worked out in an annex"
	assert.NotContains(t, s.Regions["main"], lease)
	s = p.do(Act{Do: "add", ID: "lease"}, Act{Do: "go", ID: "quote"}, Act{Do: "paper", Value: "quote"})
	assert.Contains(t, s.Regions["main"], lease, "the payments lead to it")

	before := string(s.Draft)
	s = p.do(set("terms.buyer", "circus"))
	assert.Equal(t, before, string(s.Draft))
}

// What cannot be taken stays in its field with the reason; the draft is as it
// was, and the page goes on.
func TestWrongTerms(t *testing.T) {
	for _, c := range []struct {
		reason, id, value string
		before            []Act
	}{
		{"a fraction of a cent", "extra.0.price", "1.005", []Act{{Do: "add", ID: "extra"}}},
		{"an empty label", "extra.0.label", " ", []Act{{Do: "add", ID: "extra"}}},
		{"a deposit twice", "deal.deposit_amount", "500", []Act{set("terms.deposit_percent", "10")}},
		{"payments above the whole", "milestone.0.percent", "95", []Act{{Do: "add", ID: "milestone"}}},
		{"no use of the law", "deal.use", "rocket", nil},
		{"no such line", "extra.7.price", "1", nil},
		{"no such field", "lease.color", "red", []Act{{Do: "add", ID: "lease"}}},
		{"a position that is none", "extra.x.price", "1", nil},
		{"more units than a quote holds", "item.0.units", "501", nil},
		{"an order without a date", "item.0.order", "", nil},
		{"words for a number", "way.1.years", "many", []Act{{Do: "add", ID: "way.keep"}}},
		{"a chance beyond certainty", "chance", "100", nil},
	} {
		t.Run(c.reason, func(t *testing.T) {
			p := priced(t)
			s := p.do(append([]Act{{Do: "go", ID: "price"}}, c.before...)...)
			require.Empty(t, s.Fault, c.reason)
			before := string(s.Draft)
			s = p.do(set(c.id, c.value))
			assert.Equal(t, before, string(s.Draft), c.reason)
			assert.Contains(t, string(s.View), `"wrong"`, c.reason)
			assert.NotEmpty(t, s.Regions["main"], c.reason)
		})
	}
}

// One's own payments always make up the whole: the last takes the rest.
func TestMilestonesMakeUpTheWhole(t *testing.T) {
	p := priced(t)
	s := p.do(Act{Do: "add", ID: "milestone"}, set("milestone.0.percent", "12.5"), Act{Do: "add", ID: "milestone"},
		set("milestone.3.label", "When painted"), Act{Do: "drop", ID: "milestone.1"})
	require.Empty(t, s.Fault)
	q := p.quote()
	var sum pricing.Amount
	for _, x := range q.Price.Payments {
		sum = sum.Add(x.Amount)
	}
	assert.True(t, sum.Equal(q.Price.Total))
	assert.Contains(t, s.Regions["main"], "When painted")
	assert.Contains(t, s.Regions["main"], "expected ", "payments carry the day that is expected")
	p.do(Act{Do: "drop", ID: "milestones"})
	assert.Nil(t, p.draft().Terms.Milestones)
}

// The price shown at an option is that of the edition in force on the quote's
// day, as in the build-up.
func TestPricesOfTheDay(t *testing.T) {
	p := priced(t)
	p.do(Act{Do: "go", ID: "unit"}, Act{Do: "chapter", ID: "chassis"})
	s := p.do(set("date", "2026-12-31"))
	assert.Contains(t, s.Regions["main"], "51,800.00")
	s = p.do(set("date", "2027-01-02"))
	assert.Contains(t, s.Regions["main"], "53,200.00", "the edition of January is in force")
	assert.NotContains(t, s.Regions["main"], "51,800.00")
	s = p.do(Act{Do: "go", ID: "price"})
	assert.Contains(t, s.Regions["main"], "53,200.00")
	assert.Contains(t, s.Regions["main"], "Model-year change")
}

// Every line of the price stands in the area and on paper with how it came
// about, but for those that say that there is nothing and cost nothing, and the
// chapters' sums are those of their lines.
func TestBuildUpShowsEveryLine(t *testing.T) {
	p := priced(t)
	for _, area := range []string{"price", "quote"} {
		s := p.do(Act{Do: "go", ID: area})
		for _, l := range p.quote().Price.Lines {
			if o := p.quote().Edition.Cat.OptionByID(l.ID); o != nil && o.IsNone() && l.Amount.IsZero() {
				continue
			}
			assert.Contains(t, s.Regions["main"], escaped(l.Label), area)
			if !strings.HasPrefix(l.How, "price book") {
				assert.Contains(t, s.Regions["main"], escaped(l.How), area)
			}
		}
	}
}

func escaped(text string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", "'", "&#39;", `"`, "&#34;").Replace(text)
}

// Keep, buy new or remount: the comparison stands with its picture and the
// break-even price.
func TestYearsOfService(t *testing.T) {
	p := priced(t)
	s := p.do(Act{Do: "add", ID: "way.keep"}, Act{Do: "add", ID: "way.remount"}, set("way.0.yearly", "6500"),
		set("way.1.yearly", "24000"), set("way.2.price", "155000"), set("way.2.yearly", "9000"),
		set("way.2.residual", "15000"), Act{Do: "add", ID: "later.2"}, set("later.2.0.year", "4"),
		set("later.2.0.amount", "8200"), set("rates.inflation", "3"))
	require.Empty(t, s.Fault)
	q := p.quote()
	require.NotNil(t, q.Price.Service)
	main := s.Regions["main"]
	for _, w := range q.Price.Service.Ways {
		assert.Contains(t, main, w.PerYear.Show())
		assert.Contains(t, main, w.BreakEven.Show())
	}
	assert.Contains(t, main, "What a year costs when one assumption changes.")
	assert.Equal(t, "8200.00", q.Draft.Terms.Service.Others[1].Later[0].Amount.String())
	p.do(Act{Do: "drop", ID: "later.2.0"}, Act{Do: "drop", ID: "way.1"})
	require.Len(t, p.draft().Terms.Service.Others, 1)
	assert.Equal(t, "remount", p.draft().Terms.Service.Others[0].ID)
}

// Two kinds of unit on one quote: each is worked on in turn, and price, dates,
// paper and link hold them all.
func TestFleetOnThePage(t *testing.T) {
	p := priced(t)
	one := p.quote().Price.Total
	s := p.do(set("item.0.units", "2"), set("item.0.label", "Medic"), Act{Do: "add", ID: "item"},
		set("item.1.label", "Reserve"), set("item.1.needed", "2027-09-01"), Act{Do: "chassis", ID: "cut-14000-158-gas"})
	require.Empty(t, s.Fault)
	d := p.draft()
	require.Len(t, d.More, 1)
	assert.Equal(t, 1, d.At)
	assert.Equal(t, "cut-14000-158-gas", d.Unit.Chassis)
	assert.Equal(t, 3, d.Count())
	q := p.quote()
	assert.Equal(t, 3, q.Price.Units)
	assert.True(t, one.Times(3).Cmp(q.Price.Total) > 0, "three units share a quantity break")
	before := q.Price.Total

	s = p.do(Act{Do: "work-on", ID: "0"})
	d = p.draft()
	assert.Equal(t, "Medic", d.Title)
	assert.Equal(t, "cut-14500-158-gas", d.Unit.Chassis)
	assert.True(t, before.Equal(p.quote().Price.Total), "which unit is in work changes nothing")
	s = p.do(Act{Do: "go", ID: "delivery"})
	for _, want := range []string{"1. Medic, 1 of 2", "1. Medic, 2 of 2", "2. Reserve"} {
		assert.Contains(t, s.Regions["main"], want)
	}
	s = p.do(Act{Do: "go", ID: "quote"})
	paper := s.Regions["main"]
	for _, want := range []string{"1. Medic", "2. Reserve", "Cutaway 14,000 lb", "Cutaway 14,500 lb",
		"Delivery of every unit"} {
		assert.Contains(t, paper, want)
	}
	_, reply := p.raw(Act{Do: "work-on", ID: "1"})
	text := linkOf(t, reply)
	whole := p.req["draft"]
	p.do(Act{Do: "new"}, Act{Do: "open-link", Value: text})
	assert.JSONEq(t, string(whole.(json.RawMessage)), string(p.req["draft"].(json.RawMessage)))

	p.do(Act{Do: "own-copy"})
	p.do(set("title", "Medic"), Act{Do: "drop", ID: "item.1"})
	d = p.draft()
	assert.Empty(t, d.More)
	assert.Equal(t, "Medic", d.Title)
	s = p.do(Act{Do: "drop", ID: "item.0"})
	assert.Equal(t, "Medic", p.draft().Title, "the last unit stays")
}

// The paper is the same whichever unit is in work.
func TestPaperOfAFleet(t *testing.T) {
	p := priced(t)
	p.do(set("item.0.label", "Medic"), Act{Do: "add", ID: "item"}, set("item.1.label", "Reserve"),
		Act{Do: "chassis", ID: "cut-14000-158-gas"}, Act{Do: "go", ID: "quote"})
	paper := func(s shown) string {
		_, text, found := strings.Cut(s.Regions["main"], "<article")
		require.True(t, found)
		// The link in the code says which unit its reader sees first.
		return regexp.MustCompile(`<svg class="qr".*?</svg>`).ReplaceAllString(text, "")
	}
	first, second := paper(p.do(Act{Do: "work-on", ID: "0"})), paper(p.do(Act{Do: "work-on", ID: "1"}))
	for i := range min(len(first), len(second)) { // a whole page is too long to print
		if first[i] != second[i] {
			require.Fail(t, "the paper hangs on which unit is in work", "%s\n%s",
				first[max(i-80, 0):min(i+120, len(first))], second[max(i-80, 0):min(i+120, len(second))])
		}
	}
	assert.Len(t, second, len(first))
}

// A unit that is not in work still stops the quote.
func TestAnotherUnitStopsTheQuote(t *testing.T) {
	p := priced(t)
	p.do(Act{Do: "add", ID: "item"}, Act{Do: "work-on", ID: "0"})
	d := p.draft()
	d.More[0].Unit.OccupantLb = 900
	data, err := d.Bytes()
	require.NoError(t, err)
	p.req["draft"] = json.RawMessage(data)
	s := p.do(Act{Do: "start"})
	require.Empty(t, s.Fault)
	q := p.quote()
	found := false
	for _, f := range q.Findings {
		found = found || strings.HasPrefix(f.Where, "2. ")
	}
	assert.True(t, found, "findings of the second unit are told")
	assert.True(t, q.Stopped())
}

// Delivery answers at any chance; the options that would be too late are listed
// on demand only.
func TestDeliveryAtAnyChance(t *testing.T) {
	p := priced(t)
	p.do(Act{Do: "go", ID: "delivery"})
	s := p.do(set("chance", "65"))
	assert.Contains(t, s.Regions["main"], p.quote().Plan.At(.65).Long())
	q := p.quote()
	s = p.do(set("unit.needed_by", q.Plan.NineInTen.AddDays(6).String()))
	assert.NotContains(t, s.Regions["main"], "Would miss")
	s = p.do(Act{Do: "too-late"})
	assert.Contains(t, s.Regions["main"], "Would miss")
	assert.Contains(t, s.Regions["main"], "order by")
	dates := []string{q.Plan.EvenOdds.Long(), q.Plan.NineInTen.Long()}
	for _, area := range []string{"delivery", "quote", "needs"} {
		s = p.do(Act{Do: "go", ID: area})
		for _, d := range dates {
			assert.Contains(t, s.Regions["main"]+s.Regions["standing"], d, "one date in all areas: %s", area)
		}
	}
}

// Fields take quantities as people write them, whichever area they stand in.
func TestFieldsReadWhatPeopleWrite(t *testing.T) {
	p := priced(t)
	p.do(set("terms.budget", "$345k"), set("terms.trade_in", "$18,500"), set("terms.freight_miles", "412 mi"),
		set("terms.discount_percent", "1.5 %"), set("terms.validity_days", "6 weeks"), set("terms.units", "two (2)"),
		set("unit.payload_lb", "1,750 lbs"), set("unit.patient_lb", "79.5 kg"), set("needs.crew", "6 seats"))
	d := p.draft()
	assert.Equal(t, "345000.00", d.Terms.Budget.String())
	assert.Equal(t, "18500.00", d.Terms.TradeIn.String())
	assert.Equal(t, "412", d.Terms.FreightMiles.String())
	assert.Equal(t, "1.5", d.Terms.DiscountPercent.String())
	assert.Equal(t, 42, d.Terms.ValidityDays)
	assert.Equal(t, 2, d.Terms.Units)
	assert.Equal(t, quantity.Mass(1750), d.Unit.PayloadLb)
	assert.InDelta(t, 175.27, float64(d.Unit.PatientLb), 0.01, "another unit is converted")
	assert.Equal(t, 6, d.Needs.Crew)
}

// What may be read in two ways is asked about, and part of a seat or no unit at all
// is refused; the draft stays as it was, and the reason goes when the field is
// mended.
func TestFieldsAskWhatIsMeant(t *testing.T) {
	for _, c := range []struct{ id, typed, says, mended string }{
		{"unit.payload_lb", "12,5", "can be read in two ways: write 12.5 or 125", "1250"},
		{"unit.payload_lb", "1.750", "can be read in two ways: write 1.750 or 1750", "1,750"},
		{"unit.payload_lb", "1e9", "is not understood here", "1750"},
		{"terms.budget", "345.000", "can be read in two ways: write 345.000 or 345000", "345k"},
		{"terms.tax_rate", "8,625", "can be read in two ways: write 8.625 or 8625", "8.625"},
		{"needs.crew", "6.5", "is not a whole number: write 6 or 7", "6"},
		{"own.space.seats", "6.5", "is not a whole number: write 6 or 7", "6"},
		{"needs.turning", "12", "is too little: write 30.0 ft to 100.0 ft", "54 ft"},
		{"terms.trade_in", "-3", "is too little: write 0.00 dollars to ", "$18,500"},
		{"terms.discount_percent", "345k", "is too much: write 0.0 % to 100.0 %", "1.5"},
		{"terms.freight_miles", "-3", "is too little: write 0 mi to ", "412 mi"},
		{"terms.units", "0", "is too few: write 1 to 500", "1"},
		{"item.0.units", "0", "is too few: write 1 to", "2"},
		{"ticket.total", "11,00", "can be read in two ways: write 11.00 or 1100", "11,000 lbs"},
		{"existing.length_in", "12'-11,5\"", "can be read in two ways: write 11.5 or 115", `12'-11 1/2"`},
		{"rival.0.price", "1,75", "can be read in two ways", "$1.75M"},
		{"chance", "80.5 %", "is not a whole number: write 80 or 81", "80 %"},
	} {
		t.Run(c.id+" "+c.typed, func(t *testing.T) {
			p := priced(t)
			before := string(p.do(Act{Do: "add-rival"}).Draft)
			s := p.do(set(c.id, c.typed))
			var view session.View
			require.NoError(t, json.Unmarshal(s.View, &view))
			assert.Contains(t, view.Wrong[c.id], c.says)
			assert.Equal(t, c.typed, view.Typed[c.id], "nothing typed is lost")
			assert.Equal(t, before, string(s.Draft))
			s = p.do(set(c.id, c.mended))
			view = session.View{}
			require.NoError(t, json.Unmarshal(s.View, &view))
			assert.Empty(t, view.Wrong)
			assert.Empty(t, view.Typed)
		})
	}
}

// Every field for a number that is drawn anywhere refuses with a sentence what is none or
// may be read in two ways, keeps what was typed, leaves the draft as it was, and forgets the
// error when the field is emptied or mended.
func TestEveryNumberFieldAsksWhatIsMeant(t *testing.T) {
	p := priced(t)
	p.do(Act{Do: "add-rival"})
	drawn := regexp.MustCompile(`inputmode="decimal" id="f-([^"]+)"[^>]* value="([^"]*)"`)
	seen := map[string]bool{}
	for _, tab := range tabs {
		s := p.do(Act{Do: "go", ID: tab.ID})
		for _, field := range drawn.FindAllStringSubmatch(s.Regions["main"], -1) {
			id, was := field[1], html.UnescapeString(field[2])
			if seen[id] || strings.HasPrefix(id, "find") {
				continue
			}
			seen[id] = true
			for _, typed := range []string{"heavy", "12,5"} {
				before := string(s.Draft)
				s = p.ask(set(id, typed))
				var view session.View
				require.NoError(t, json.Unmarshal(s.View, &view))
				assert.Greater(t, len(view.Wrong[id]), 12, "%s: %q is refused with a sentence", id, typed)
				assert.Equal(t, typed, view.Typed[id], "%s: what was typed stays", id)
				assert.Equal(t, before, string(s.Draft), "%s: %q changes nothing", id, typed)
				s = p.ask(set(id, was))
				view = session.View{}
				require.NoError(t, json.Unmarshal(s.View, &view))
				assert.Empty(t, view.Wrong[id], "%s: %q is taken again", id, was)
			}
		}
	}
	assert.Greater(t, len(seen), 60, "fields were found: %v", slices.Sorted(maps.Keys(seen)))
}

// A value that only another field stood against is taken once that is mended, and
// what was typed wrong into one quote is not shown in the next.
func TestAnOldErrorGoes(t *testing.T) {
	p := priced(t)
	s := p.do(set("terms.deposit_percent", "10"), set("deal.deposit_amount", "$500"))
	assert.Contains(t, string(s.View), `"deal.deposit_amount":"$500"`)
	s = p.do(set("terms.deposit_percent", ""))
	assert.NotContains(t, string(s.View), `"wrong"`)
	assert.Equal(t, "500.00", p.draft().Terms.DepositAmount.String())

	s = p.do(set("terms.budget", "heavy"))
	assert.Contains(t, string(s.View), `"wrong"`)
	s = p.do(Act{Do: "new", ID: p.draft().Unit.Chassis})
	assert.NotContains(t, string(s.View), `"wrong"`)

	s = p.do(Act{Do: "add-ticket"})
	assert.Contains(t, string(s.View), `"wrong"`, "no reading")
	s = p.do(set("ticket.total", "11,000"))
	assert.NotContains(t, string(s.View), `"wrong"`)
}

// A rate that is typed in says that the tax is paid, also where who buys would be exempt; the
// choice beside it says the same, and can take it back.
func TestATypedRateIsPaid(t *testing.T) {
	p := openAt(t, "price")
	s := p.do(set("terms.buyer", "county"), set("terms.tax_rate", "6.5"))
	require.False(t, p.quote().Price.SalesTax.Amount.IsZero())
	require.Contains(t, s.Regions["main"], `<option value="paid" selected>the buyer pays it`)
	s = p.do(set("deal.tax", ""))
	require.True(t, p.quote().Price.SalesTax.Exempt)
	require.Contains(t, s.Regions["main"], `<option value="" selected>as who buys`)
}
