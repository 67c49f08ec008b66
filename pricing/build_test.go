package pricing_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/money"
)

var day = config.Date{Year: 2026, Month: 11, Day: 25}

func unit(picks ...config.Pick) *config.Unit {
	u := &config.Unit{Catalogue: "small", Chassis: "cutaway", Body: "module"}
	for _, p := range picks {
		u.Set(p)
	}
	return u
}

func scenePicks() *config.Unit {
	return unit(config.Pick{Option: "winch", Qty: 1}, config.Pick{Option: "lights", Qty: 2},
		config.Pick{Option: "camera", Qty: 1})
}

func percent(t testing.TB, text string) money.Percent {
	t.Helper()
	p, err := money.ParsePercent(text)
	require.NoError(t, err)
	return p
}

func quantity(t testing.TB, text string) money.Quantity {
	t.Helper()
	q, err := money.ParseQuantity(text)
	require.NoError(t, err)
	return q
}

// Every kind of line at once, each amount worked out by hand.
func TestBuildEveryLineByHand(t *testing.T) {
	b, cat := book(t)
	terms := &pricing.Terms{
		DiscountPercent: percent(t, "1.5"), DiscountReason: "opening order", Prepay: "on-arrival",
		PrepayDays:   120,
		FreightMiles: quantity(t, "250"), TrainingDays: quantity(t, "3"),
		Extras:  []pricing.Extra{{Label: "Portable radio", Qty: 2, Price: amount(t, "1234.56")}},
		TradeIn: amount(t, "12000"), Bond: true, DepositPercent: percent(t, "5"),
	}
	s, err := pricing.Build(b, cat, scenePicks(), terms, day)
	require.NoError(t, err)

	want := []struct{ code, source, amount, reason string }{
		{"chassis", "cutaway", "60000.00", "list"},
		{"body", "module", "95000.00", "list"},
		{"option", "camera", "499.99", "list"},
		{"option", "lights", "700.00", "2 x 350.00"},
		{"option", "winch", "2000.00", "list; the edition of January is not in force yet"},
		{"surcharge", "aluminum", "1425.00", "1.5 % of 95,000.00"},
		{"surcharge", "display", "25.00", "one camera"},
		{"credit", "scene-pack-plus", "-260.00", "takes the place of the smaller credit"},
		{"discount", "discount_percent", "-2390.85", "1.5 % of 159,389.99 is 2,390.84985"},
		{"prepay", "on-arrival", "-945.60", "1.6 % of the chassis at 60,000.00 less its part of the discount, 900.00"},
		{"freight", "freight", "650.00", "(250 - 50) x 3.25"},
		{"training", "training", "2300.00", "(3 - 1) x 1,150.00"},
		{"fee", "documents", "185.00", "always charged"},
		{"extra", "extras", "2469.12", "2 x 1,234.56"},
		{"trade-in", "trade_in", "-12000.00", "as allowed"},
		{"tax", "tax", "9673.47", "6.5 % of 148,822.66 is 9,673.4729; freight and title fee are untaxed"},
		{"bond", "bond", "1911.97", "1.2 % of 159,331.13 is 1,911.97356"},
	}
	require.Len(t, s.Lines, len(want))
	for i, w := range want {
		t.Run(w.reason, func(t *testing.T) {
			l := s.Lines[i]
			assert.Equal(t, []string{w.code, w.source, w.amount}, []string{l.Code, l.Source, l.Amount.String()},
				w.reason)
			assert.NotEmpty(t, l.How, w.code)
			assert.NotEmpty(t, l.Label, w.code)
		})
	}
	// 0.016/0.984 x 365/120, and (1/0.984)^(365/120) - 1; the formula is checked
	// against its published row in package finance.
	assert.Contains(t, s.Lines[9].How, "4.9458 % a year simple, 5.0284 % compounded")
	assert.Equal(t, "159649.99", s.Subtotal(pricing.SubList, 1).String())
	assert.Equal(t, "156999.14", s.Subtotal(pricing.SubUnits, 0).String())
	assert.Equal(t, "148822.66", s.Subtotal(pricing.SubTaxed, 0).String())
	assert.Equal(t, "161243.10", s.Total.String())
	assert.Equal(t, "2027-01-24", s.ValidUntil.String(), "60 days of the book")

	var paid []string
	for _, p := range s.Payments {
		paid = append(paid, p.ID+" "+p.Amount.String())
	}
	assert.Equal(t, []string{"deposit 8062.16", "order 15318.10", "chassis 45954.28", "delivery 91908.56"}, paid,
		"5 % is 8,062.155; of 153,180.94 the cent left over goes to the first of the largest fractions")
}

func TestFleetOfUnlikeUnitsSharesTheBreak(t *testing.T) {
	b, cat := book(t)
	heavy := unit()
	heavy.Chassis = "heavy"
	day := config.Date{Year: 2027, Month: 2, Day: 1} // no aluminum surcharge, module at 97,000.00
	s, err := pricing.BuildFleet(b, cat, []pricing.Item{
		{Label: "Medic", Unit: unit(config.Pick{Option: "winch", Qty: 1}), Units: 3},
		{Label: "Bariatric", Unit: heavy, Units: 2, Due: config.Date{Year: 2028, Month: 1, Day: 10}},
	}, &pricing.Terms{DiscountAmount: amount(t, "1000"), TaxExempt: true, ExemptReason: "certificate 7"}, day)
	require.NoError(t, err)
	// Five units reach 2.25 % on body and options: of 99,150.00 and of 97,000.00.
	assert.Equal(t, "156919.12", s.Subtotal(pricing.SubUnit, 1).String(),
		"60,000.00 + 99,150.00 - 2,230.88 (2,230.875)")
	assert.Equal(t, "184817.50", s.Subtotal(pricing.SubUnit, 2).String(), "90,000.00 + 97,000.00 - 2,182.50")
	assert.Equal(t, "839392.36", s.Subtotal(pricing.SubUnits, 0).String(), "3 and 2 of them less 1,000.00")
	assert.Equal(t, "840317.36", s.Total.String(), "and five title fees")
	require.Len(t, s.Shares, 5)
	assert.Equal(t, "Bariatric, 2 of 2", s.Shares[4].Label)
	// Its own 184,817.50 and 185.00, less 1,000.00 x 184,817.50 / 840,392.36.
	assert.Equal(t, "184782.58", s.Shares[4].Amount.String())
	assert.Equal(t, "2028-01-10", s.Shares[4].Due.String())
	assert.Equal(t, "0.00", s.Sum(pricing.LineTax).String())
}

func TestContractStandsInsteadOfTheBreak(t *testing.T) {
	b, cat := book(t)
	s, err := pricing.Build(b, cat, unit(), &pricing.Terms{Units: 5, Contract: "coop", TaxExempt: true},
		config.Date{Year: 2027, Month: 4, Day: 1})
	require.NoError(t, err)
	assert.True(t, s.Sum(pricing.LineFleet).IsZero())
	assert.Equal(t, "-22400.00", s.Sum(pricing.LineContract).String(),
		"five times 1 % of 60,000.00 and 4 % of 97,000.00")
	assert.Equal(t, "3813.00", s.Sum(pricing.LineContractFee).String(), "0.5 % of 762,600.00")

	s, err = pricing.Build(b, cat, unit(), &pricing.Terms{Contract: "coop"}, config.Date{Year: 2029, Month: 1, Day: 1})
	require.NoError(t, err)
	assert.True(t, s.Sum(pricing.LineContract).IsZero(), "it has ended")
	assert.Contains(t, codes(s), "price.contract")
}

func TestEditionIsNamedInTheLine(t *testing.T) {
	b, cat := book(t)
	s, err := pricing.Build(b, cat, unit(config.Pick{Option: "winch", Qty: 1}), nil,
		config.Date{Year: 2027, Month: 8, Day: 1})
	require.NoError(t, err)
	assert.Contains(t, s.Lines[1].How, "edition 2027-01")
	assert.Contains(t, s.Lines[2].How, "edition 2027-07")
	assert.Equal(t, "2300.00", s.Lines[2].Amount.String())
}

func TestSurchargesOfEveryForm(t *testing.T) {
	b, cat := book(t)
	long := config.Date{Year: 2020, Month: 1, Day: 1}
	for _, c := range []struct {
		s      pricing.Surcharge
		want   string
		reason string
	}{
		{pricing.Surcharge{Amount: amount(t, "75")}, "150.00", "for each of two units"},
		{pricing.Surcharge{On: pricing.OnOptions, Percent: percent(t, "2")}, "128.00", "2 % of 3,199.99 is 63.9998, 64.00 for one unit"},
		{pricing.Surcharge{On: pricing.OnUnit, Percent: percent(t, "1")}, "3164.00", "1 % of 158,199.99 is 1,581.9999"},
		{pricing.Surcharge{Keys: []string{"lights", "winch"}, Amount: amount(t, "10")}, "60.00", "for each of three pieces"},
		{pricing.Surcharge{Keys: []string{"lights", "camera"}, Percent: percent(t, "3")}, "72.00", "3 % of 700.00 is 21.00 and of 499.99 is 15.00 (14.9997)"},
		{pricing.Surcharge{Keys: []string{"cutaway", "module"}, Amount: amount(t, "10")}, "40.00", "on chassis and body by name"},
		{pricing.Surcharge{Keys: []string{"mount"}, Amount: amount(t, "10")}, "0.00", "what is not there costs nothing"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			x := *b
			c.s.ID, c.s.Label, c.s.From, c.s.Reason = "x", "X", long, "A reason."
			x.Surcharges, x.FleetBreaks, x.Credits = []pricing.Surcharge{c.s}, nil, nil
			s, err := pricing.Build(&x, cat, scenePicks(), &pricing.Terms{Units: 2}, day)
			require.NoError(t, err)
			assert.Equal(t, c.want, s.Sum(pricing.LineSurcharge).String(), c.reason)
		})
	}
}

func TestFindingsAskForADecision(t *testing.T) {
	b, cat := book(t)
	for _, c := range []struct {
		terms  pricing.Terms
		day    config.Date
		code   string
		sev    config.Severity
		reason string
	}{
		{pricing.Terms{Prepay: "never"}, day, "price.prepay", config.Warn, "a term the book no longer offers is left out and said"},
		{pricing.Terms{Fees: []string{"never"}}, day, "price.fee", config.Warn, "likewise a fee"},
		{pricing.Terms{TradeIn: amount(t, "900000")}, day, "price.negative", config.Stop, "nobody pays the buyer to take it"},
		{pricing.Terms{DepositAmount: amount(t, "900000")}, day, "price.deposit", config.Warn, "a deposit above the total"},
		{pricing.Terms{Budget: amount(t, "100000")}, day, "price.budget", config.Warn, "above the budget"},
		{pricing.Terms{Budget: amount(t, "900000")}, day, "price.budget", config.Note, "within the budget"},
		{pricing.Terms{}, config.Date{Year: 2026, Month: 1, Day: 1}, "price.early", config.Warn, "before the edition"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			s, err := pricing.Build(b, cat, unit(), &c.terms, c.day)
			require.NoError(t, err)
			found := false
			for _, f := range s.Findings {
				found = found || f.Code == c.code && f.Severity == c.sev
			}
			assert.True(t, found, "%s: %v", c.reason, s.Findings)
		})
	}
	bare := *b
	bare.Bond = nil
	s, err := pricing.Build(&bare, cat, unit(), &pricing.Terms{Bond: true}, day)
	require.NoError(t, err)
	assert.Contains(t, codes(s), "price.bond")
}

func TestBadInputIsAnErrorThatNamesThePlace(t *testing.T) {
	b, cat := book(t)
	tooMuch := percent(t, "101")
	for _, c := range []struct {
		u      *config.Unit
		terms  pricing.Terms
		code   string
		reason string
	}{
		{nil, pricing.Terms{}, "unit.missing", "no unit"},
		{&config.Unit{Chassis: "nothing", Body: "module"}, pricing.Terms{}, "unit.unknown-chassis", "an unknown chassis has no price"},
		{unit(config.Pick{Option: "sail", Qty: 1}), pricing.Terms{}, "unit.unknown-option", "nor has an unknown option"},
		{unit(config.Pick{Option: "winch", Qty: 9}), pricing.Terms{}, "unit.quantity", "nine winches"},
		{unit(), pricing.Terms{Units: pricing.MaxUnits + 1}, "terms.range", "too many units"},
		{unit(), pricing.Terms{Units: -1}, "terms.range", "fewer than none"},
		{unit(), pricing.Terms{Use: "boat"}, "terms.value", "no such use"},
		{unit(), pricing.Terms{TradeIn: money.Cents(-1)}, "terms.negative", "a trade-in is written without a sign"},
		{unit(), pricing.Terms{TaxRate: &tooMuch}, "terms.range", "a tax above the price"},
		{unit(), pricing.Terms{DepositPercent: percent(t, "5"), DepositAmount: money.Cents(5)}, "terms.value", "two deposits"},
		{unit(), pricing.Terms{Milestones: []pricing.Milestone{{ID: "all", Label: "All", Percent: percent(t, "99")}}}, "terms.sum", "a percent is never paid"},
		{unit(), pricing.Terms{Extras: []pricing.Extra{{Qty: 1}}}, "terms.missing", "an extra without a label"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			_, err := pricing.Build(b, cat, c.u, &c.terms, day)
			var ps config.Problems
			if assert.ErrorAs(t, err, &ps, c.reason) {
				assert.Equal(t, c.code, ps[0].Code, c.reason)
			}
		})
	}
	_, err := pricing.Build(nil, cat, unit(), nil, day)
	assert.Error(t, err)
	_, err = pricing.BuildFleet(b, cat, nil, nil, day)
	assert.Error(t, err)
}

func TestTermsSurviveTheirFile(t *testing.T) {
	rate := percent(t, "8.875")
	terms := pricing.Terms{Units: 2, DiscountPercent: percent(t, "1.5"), TaxRate: &rate,
		FreightMiles: quantity(t, "412.5"), Budget: amount(t, "500000")}
	data, err := json.Marshal(terms)
	require.NoError(t, err)
	assert.JSONEq(t,
		`{"units":2,"discount_percent":"1.5","tax_rate":"8.875","freight_miles":"412.5","budget":"500000.00"}`,
		string(data), "what was not said is not written")
	var back pricing.Terms
	require.Nil(t, pricing.Decode(data, &back))
	again, err := json.Marshal(back.Clone())
	require.NoError(t, err)
	assert.Equal(t, string(data), string(again))

	p := pricing.Decode([]byte(`{"extras":[{"label":"x","price":"1"},{"label":"y","price":"1e99"}]}`), &back)
	require.NotNil(t, p)
	assert.Equal(t, "extras[1].price", p.Where)
}

func codes(s *pricing.Sheet) []string {
	var list []string
	for _, f := range s.Findings {
		list = append(list, f.Code)
	}
	return list
}
