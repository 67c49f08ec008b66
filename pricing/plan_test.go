package pricing_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/finance"
	"boxwright/pricing/money"
)

func TestLeaseIsOnWhatTheDepositLeaves(t *testing.T) {
	b, cat := book(t)
	terms := &pricing.Terms{TaxExempt: true, DepositAmount: amount(t, "7185"),
		Lease: &finance.Lease{Rate: percent(t, "6"), PerYear: 1, Periods: 5, Advance: true}}
	s, err := pricing.Build(b, cat, unit(), terms, config.Date{Year: 2027, Month: 4, Day: 1})
	require.NoError(t, err)
	assert.Equal(t, "157185.00", s.Total.String())
	require.NotNil(t, s.Lease)
	assert.Equal(t, "150000.00", s.Lease.Lease.Principal.String())
	// 150,000 x 0.06 / (1 - 1.06^-5) / 1.06 is 33,593.8305...
	assert.Equal(t, "33593.83", s.Lease.Schedule.Payment.String())
	assert.Equal(t, "6", s.Lease.Effective.String())
	assert.True(t, terms.Lease.Principal.IsZero(), "the terms stay as they were")
	assert.Contains(t, codes(s), "price.lease-offer")

	terms.Lease.Periods = 0
	s, err = pricing.Build(b, cat, unit(), terms, day)
	require.NoError(t, err)
	assert.Nil(t, s.Lease)
	assert.Contains(t, codes(s), "price.lease")
}

func TestYearsOfServiceTakeThePriceOfTheSheet(t *testing.T) {
	b, cat := book(t)
	terms := &pricing.Terms{Units: 2, TaxExempt: true, Service: &pricing.Service{
		This:   finance.Choice{Years: 10, Yearly: amount(t, "9000")},
		Others: []finance.Choice{{ID: "keep", Label: "Keep the old one", Years: 3, Yearly: amount(t, "24000")}},
	}}
	s, err := pricing.Build(b, cat, unit(), terms, config.Date{Year: 2027, Month: 4, Day: 1})
	require.NoError(t, err)
	require.NotNil(t, s.Service)
	// Two units reach a break of 1 % on the body, 970.00 each.
	assert.Equal(t, "156215.00", s.Service.Ways[0].Choice.Price.String(), "60,000 + 97,000 - 970 + 185 for one")
	assert.Equal(t, "24621.50", s.Service.Ways[0].PerYear.String(), "(156,215 + 90,000) / 10")
	assert.Equal(t, 1, s.Service.Cheapest)
	assert.Equal(t, "150000.00", s.Service.Ways[0].BreakEven.String(), "10 x (24,000 - 9,000)")

	terms.Service.Others[0].Years = 0
	s, err = pricing.Build(b, cat, unit(), terms, day)
	require.NoError(t, err)
	assert.Nil(t, s.Service)
	assert.Contains(t, codes(s), "price.service")
}

func TestPlansFromALinkAreBounded(t *testing.T) {
	long := strings.Repeat("x", 500)
	for _, x := range []pricing.Terms{
		{Lease: &finance.Lease{Label: long}},
		{Service: &pricing.Service{This: finance.Choice{Label: long}}},
		{Service: &pricing.Service{Others: make([]finance.Choice, 8)}},
		{Service: &pricing.Service{This: finance.Choice{Later: make([]finance.Outlay, 61)}}},
		{Service: &pricing.Service{This: finance.Choice{Later: []finance.Outlay{{Label: long}}}}},
	} {
		assert.NotEmpty(t, x.Check())
	}
}

func TestCloneSharesNothing(t *testing.T) {
	rate := percent(t, "6")
	terms := pricing.Terms{Fees: []string{"trip"}, TaxRate: &rate, Lease: &finance.Lease{Periods: 5},
		Service: &pricing.Service{This: finance.Choice{Later: []finance.Outlay{{Year: 1}}},
			Others: []finance.Choice{{Later: []finance.Outlay{{Year: 1}}}}}}
	before, err := json.Marshal(terms)
	require.NoError(t, err)
	c := terms.Clone()
	c.Fees[0], *c.TaxRate, c.Lease.Periods = "", percent(t, "7"), 6
	c.Service.This.Later[0].Year, c.Service.Others[0].Later[0].Year, c.Service.Others[0].Years = 2, 2, 9
	after, err := json.Marshal(terms)
	require.NoError(t, err)
	assert.Equal(t, string(before), string(after))
}

// The excise is on the price the unit is sold for in the end.
func TestExciseFollowsDiscountAndPrepayment(t *testing.T) {
	b, cat := book(t)
	heavy := &config.Unit{Chassis: "heavy", Body: "rescue-body"}
	s, err := pricing.BuildFleet(b, cat, []pricing.Item{{Unit: heavy}, {Unit: unit()}},
		&pricing.Terms{TaxExempt: true, DiscountAmount: amount(t, "3550.30"), Prepay: "on-arrival"},
		config.Date{Year: 2027, Month: 4, Day: 1})
	require.NoError(t, err)
	// 198,900.00 and 156,030.00 after the break of 1 % on the bodies; of the
	// discount 3,550.30 x 198,900 / 354,930 = 1,989.56 falls on the first, and
	// its prepayment credit is 1,440.00.
	assert.Equal(t, "23456.45", s.Sum(pricing.LineExcise).String(), "12 % of 195,470.44 is 23,456.4528")
}

func TestFigureOfTheTotal(t *testing.T) {
	s := &pricing.Sheet{Currency: "USD", Total: money.Dollars(180000)}
	assert.True(t, s.Figure(nil).Met())
	f := s.Figure(&pricing.Terms{Budget: money.Dollars(170000)})
	assert.False(t, f.Met())
	assert.Equal(t, -10000.0, f.Margin())
	assert.Equal(t, config.Purchaser, f.Basis)
}

// A payment at the mounting of a module is called otherwise where a van is converted.
func TestPaymentsFollowWhatIsBuilt(t *testing.T) {
	m := pricing.Milestone{ID: "mount", Label: "When the module is mounted", Van: "When the van is lined",
		Percent: percent(t, "100")}
	b, cat := book(t)
	van := *cat.BodyByID("module")
	van.ID, van.Kind = "van-body", "van"
	cat.Bodies = append(cat.Bodies, van)
	text, err := json.Marshal(cat)
	require.NoError(t, err)
	cat, err = config.Read(text)
	require.NoError(t, err)
	b.Milestones = []pricing.Milestone{m}
	b.Prices["van-body"] = b.Prices["module"]
	module := pricing.Item{Unit: unit()}
	lined := pricing.Item{Unit: unit()}
	lined.Unit.Body = "van-body"
	for _, c := range []struct {
		name  string
		items []pricing.Item
		due   string
	}{
		{"a module", []pricing.Item{module}, "When the module is mounted"},
		{"a van", []pricing.Item{lined}, "When the van is lined"},
		{"both", []pricing.Item{module, lined}, "When the module is mounted, or when the van is lined"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := pricing.BuildFleet(b, cat, c.items, nil, day)
			require.NoError(t, err)
			require.Len(t, s.Payments, 1)
			assert.Equal(t, c.due, s.Payments[0].Label)
		})
	}
	assert.Equal(t, []pricing.Milestone{{ID: "mount", Label: m.Van, Percent: m.Percent}}, b.Agreed(true),
		"terms of a van's own")
}
