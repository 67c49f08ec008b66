package pricing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
)

// Who buys decides the sales tax that is assumed; what is said goes first.
func TestWhoBuysDecidesTheTax(t *testing.T) {
	b, cat := book(t)
	rate := percent(t, "8.25")
	noRate := percent(t, "0")
	for _, c := range []struct {
		name            string
		terms           pricing.Terms
		exempt, assumed bool
		words           string
	}{
		{"nobody said", pricing.Terms{}, false, false, "Includes sales tax of 10,167.63, 6.5 %"},
		{"a county", pricing.Terms{Buyer: "county"}, true, true, "No sales tax: a county is taken as exempt"},
		{"a city", pricing.Terms{Buyer: "city"}, true, true, "No sales tax: a city is taken as exempt"},
		{"a fire district", pricing.Terms{Buyer: "fire-district"}, true, true,
			"No sales tax: a fire district is taken as exempt"},
		{"a hospital", pricing.Terms{Buyer: "hospital"}, false, false, "Includes sales tax of 10,167.63, 6.5 %"},
		{"a private service", pricing.Terms{Buyer: "private"}, false, false, "Includes sales tax of 10,167.63, 6.5 %"},
		{"a county that pays", pricing.Terms{Buyer: "county", Taxed: true}, false, false,
			"Includes sales tax of 10,167.63, 6.5 %"},
		{"a county with a rate", pricing.Terms{Buyer: "county", TaxRate: &rate}, false, false,
			"Includes sales tax of 12,905.06, 8.25 %"},
		{"a rate of nothing", pricing.Terms{Buyer: "private", TaxRate: &noRate}, false, false,
			"No sales tax: the rate is 0 %"},
		{"a hospital with a certificate", pricing.Terms{Buyer: "hospital", TaxExempt: true, ExemptReason: "number 12"},
			true,
			false, "No sales tax: the buyer is exempt"},
		{"a county with a certificate", pricing.Terms{Buyer: "county", ExemptReason: "number 12"}, true, false,
			"No sales tax: the buyer is exempt"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := pricing.Build(b, cat, unit(), &c.terms, day)
			require.NoError(t, err)
			assert.Equal(t, c.exempt, s.SalesTax.Exempt)
			assert.Equal(t, c.assumed, s.SalesTax.Assumed)
			assert.Equal(t, c.words, s.SalesTax.Words())
			assert.True(t, s.SalesTax.Amount.Equal(s.Sum(pricing.LineTax)), "what is said is what is charged")
			if c.exempt {
				assert.Equal(t, "10167.63", s.SalesTax.Would.String(), "what another buyer would pay")
			}
			found := false
			for _, code := range codes(s) {
				found = found || code == "price.tax-assumed"
			}
			assert.Equal(t, c.assumed, found, "an assumption is said")
		})
	}
}

// A price book may name other kinds of buyer.
func TestABookNamesWhoIsExempt(t *testing.T) {
	b, cat := book(t)
	x := *b
	x.Tax.ExemptBuyers = []string{"hospital"}
	s, err := pricing.Build(&x, cat, unit(), &pricing.Terms{Buyer: "hospital"}, day)
	require.NoError(t, err)
	assert.True(t, s.SalesTax.Exempt)
	s, err = pricing.Build(&x, cat, unit(), &pricing.Terms{Buyer: "county"}, day)
	require.NoError(t, err)
	assert.False(t, s.SalesTax.Exempt)
}

func TestBuyersAreChecked(t *testing.T) {
	for _, c := range []struct {
		name  string
		terms pricing.Terms
		code  string
	}{
		{"unknown", pricing.Terms{Buyer: "circus"}, "terms.value"},
		{"both", pricing.Terms{Taxed: true, TaxExempt: true}, "terms.value"},
	} {
		t.Run(c.name, func(t *testing.T) {
			ps := c.terms.Check()
			require.Len(t, ps, 1)
			assert.Equal(t, c.code, ps[0].Code)
		})
	}
}

// A budget is held against what the buyer is charged, and says so; so does the
// limit that the rules count with.
func TestABudgetSaysItsBasis(t *testing.T) {
	b, cat := book(t)
	for _, c := range []struct {
		name  string
		terms pricing.Terms
		text  string
	}{
		{"one, taxed", pricing.Terms{}, "The price keeps the budget of 170,000.00 with 3,222.37 left (the unit, " +
			"sales tax " +
			"included)."},
		{"one, exempt", pricing.Terms{Buyer: "county"},
			"The price keeps the budget of 170,000.00 with 13,390.00 left " +
				"(the unit, no sales tax)."},
		{"several", pricing.Terms{Buyer: "county", Units: 2},
			"The price is 141,291.50 above the budget of 170,000.00 (all " +
				"2 units, no sales tax)."},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.terms.Budget = amount(t, "170000")
			s, err := pricing.Build(b, cat, unit(), &c.terms, day)
			require.NoError(t, err)
			var f *config.Finding
			for i := range s.Findings {
				if s.Findings[i].Code == "price.budget" {
					f = &s.Findings[i]
				}
			}
			require.NotNil(t, f)
			assert.Equal(t, c.text, f.Text)
			limits := pricing.Limits(b.AsOf(day), cat, unit(), &c.terms)
			require.Len(t, limits, 1)
			assert.InDelta(t, s.Total.Float(), limits[0].Base, 1)
		})
	}
}

// Quantity and price each stand wherever a total is of several units.
func TestEachOfSeveralUnits(t *testing.T) {
	b, cat := book(t)
	s, err := pricing.Build(b, cat, unit(), &pricing.Terms{Buyer: "county"}, day)
	require.NoError(t, err)
	assert.Empty(t, s.EachWords())
	s, err = pricing.Build(b, cat, unit(), &pricing.Terms{Buyer: "county", Units: 2}, day)
	require.NoError(t, err)
	assert.Equal(t, "2 units at 155,645.75 each", s.EachWords())
	s, err = pricing.Build(b, cat, unit(), &pricing.Terms{Buyer: "county", Units: 2, DiscountAmount: amount(t, "0.01")},
		day)
	require.NoError(t, err)
	assert.Equal(t, "2 units at about 155,645.74 each", s.EachWords())
	heavy := unit()
	heavy.Chassis = "heavy"
	s, err = pricing.BuildFleet(b, cat, []pricing.Item{{Unit: unit()}, {Unit: heavy}}, &pricing.Terms{Buyer: "county"},
		day)
	require.NoError(t, err)
	assert.Contains(t, s.EachWords(), "2 units at 155,645.75 to ")
}
