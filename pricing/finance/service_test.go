package finance_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/pricing/finance"
	"boxwright/pricing/money"
)

// An invented comparison with round figures.
func threeWays() (keep, fresh, remount finance.Choice) {
	keep = finance.Choice{ID: "keep", Label: "Keep", Years: 3, Yearly: money.Dollars(24000),
		Residual: money.Dollars(4000), Warranty: 2}
	fresh = finance.Choice{ID: "new", Label: "Buy new", Price: money.Dollars(282000), TradeIn: money.Dollars(12000),
		Years: 10, Yearly: money.Dollars(9000), Residual: money.Dollars(15000), Warranty: 20}
	remount = finance.Choice{ID: "remount", Label: "Remount", Price: money.Dollars(194000), Years: 8,
		Yearly: money.Dollars(9500), Residual: money.Dollars(9000), Warranty: 20,
		Later: []finance.Outlay{{Year: 4, Amount: money.Dollars(6000), Label: "Cabinet refurbishing"}}}
	return keep, fresh, remount
}

func TestCostPerYearWithoutRatesIsASimpleMean(t *testing.T) {
	keep, fresh, remount := threeWays()
	for _, c := range []struct {
		choice    finance.Choice
		perYear   string
		uncovered int
		reason    string
	}{
		{keep, "22666.67", 1, "(3 x 24,000 - 4,000) / 3; a year beyond the warranty"},
		{fresh, "34500.00", 0, "(282,000 - 12,000 + 10 x 9,000 - 15,000) / 10"},
		{remount, "33375.00", 0, "(194,000 + 8 x 9,500 + 6,000 - 9,000) / 8"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			s, err := finance.CostPerYear(c.choice, finance.Rates{})
			require.NoError(t, err)
			assert.Equal(t, c.perYear, s.PerYear.String(), c.reason)
			assert.Equal(t, c.uncovered, s.Uncovered, c.reason)
			assert.Len(t, s.Years, c.choice.Years+1)
			assert.NotEmpty(t, s.How)
		})
	}
}

// Where prices rise as fast as money costs, time does not matter.
func TestInflationEqualToDiscountCancels(t *testing.T) {
	_, fresh, _ := threeWays()
	s, err := finance.CostPerYear(fresh, finance.Rates{Inflation: percent(t, "3"), Discount: percent(t, "3")})
	require.NoError(t, err)
	assert.Equal(t, "34500.00", s.PerYear.String())
	assert.Equal(t, "9270.00", s.Years[1].Paid.String(), "in the money of its year upkeep has risen by 3 %")
	assert.Equal(t, "9000.00", s.Years[1].Worth.String())
}

func TestAgeingRaisesUpkeepYearByYear(t *testing.T) {
	c := finance.Choice{Label: "Keep", Years: 3, Yearly: money.Dollars(10000), Aging: percent(t, "10")}
	s, err := finance.CostPerYear(c, finance.Rates{})
	require.NoError(t, err)
	assert.Equal(t, "11033.33", s.PerYear.String(), "(10,000 + 11,000 + 12,100) / 3")
}

func anyRates(t *rapid.T) finance.Rates {
	hundredth := rapid.Int64Range(0, 900)
	return finance.Rates{Inflation: percentOf(hundredth.Draw(t, "inflation")),
		Discount: percentOf(hundredth.Draw(t, "discount"))}
}

func percentOf(hundredths int64) money.Percent {
	return money.PercentOf(money.Cents(hundredths).Decimal())
}

// At the break-even price the two cost the same a year, and a cent on each
// dollar of it more or less decides.
func TestBreakEvenIsWhereTheYearsCostTheSame(t *testing.T) {
	_, fresh, remount := threeWays()
	rapid.Check(t, func(t *rapid.T) {
		r := anyRates(t)
		remount.Years = rapid.IntRange(4, 15).Draw(t, "years")
		most, err := finance.BreakEven(remount, fresh, r)
		require.NoError(t, err)
		want, err := finance.CostPerYear(fresh, r)
		require.NoError(t, err)
		c := remount
		c.Price = most
		at, err := finance.CostPerYear(c, r)
		require.NoError(t, err)
		assert.LessOrEqual(t, at.PerYear.Sub(want.PerYear).Abs().Cmp(money.Cents(1)), 0, "%s and %s", at.PerYear,
			want.PerYear)
		c.Price = most.Add(money.Dollars(100))
		above, err := finance.CostPerYear(c, r)
		require.NoError(t, err)
		assert.Equal(t, 1, above.PerYear.Cmp(want.PerYear))
	})
	same, err := finance.BreakEven(fresh, fresh, finance.Rates{Inflation: percent(t, "2.5"), Discount: percent(t, "4")})
	require.NoError(t, err)
	assert.Equal(t, "282000.00", same.String(), "against itself it may cost what it costs")
}

func TestSensitivityPointsTheRightWay(t *testing.T) {
	_, fresh, _ := threeWays()
	r := finance.Rates{Inflation: percent(t, "2.5"), Discount: percent(t, "4")}
	base, err := finance.CostPerYear(fresh, r)
	require.NoError(t, err)
	list, err := finance.Sensitivity(fresh, r)
	require.NoError(t, err)
	require.Len(t, list, 6)
	for _, s := range list {
		lowFirst := map[string]bool{"price": true, "yearly": true, "discount": true}[s.Code]
		low, high := s.Low, s.High
		if !lowFirst {
			low, high = high, low
		}
		assert.Equal(t, -1, low.Cmp(base.PerYear), s.Text)
		assert.Equal(t, 1, high.Cmp(base.PerYear), s.Text)
		assert.Equal(t, 1, s.Width().Sign())
	}
	assert.Equal(t, "price 253,800.00 to 310,200.00", list[0].Text)
	assert.Equal(t, "282000.00", fresh.Price.String(), "trying changes nothing")
}

func TestBadChoiceIsAnError(t *testing.T) {
	for _, c := range []struct {
		change func(*finance.Choice, *finance.Rates)
		reason string
	}{
		{func(c *finance.Choice, _ *finance.Rates) { c.Years = 0 }, "no service"},
		{func(c *finance.Choice, _ *finance.Rates) { c.Years = 41 }, "too long"},
		{func(c *finance.Choice, _ *finance.Rates) { c.Price = money.Dollars(-1) }, "a negative price"},
		{func(c *finance.Choice, _ *finance.Rates) { c.Residual = money.Dollars(-1) }, "a negative residual"},
		{func(c *finance.Choice, _ *finance.Rates) { c.Aging = percent(t, "51") }, "upkeep out of reason"},
		{func(c *finance.Choice, _ *finance.Rates) { c.Warranty = -1 }, "a negative warranty"},
		{func(c *finance.Choice, _ *finance.Rates) {
			c.Later = []finance.Outlay{{Year: 11}}
		}, "an outlay after the end"},
		{func(_ *finance.Choice, r *finance.Rates) { r.Discount = percent(t, "-11") }, "a rate out of reason"},
		{func(_ *finance.Choice, r *finance.Rates) { r.Inflation = percent(t, "31") }, "a rate out of reason"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			_, fresh, _ := threeWays()
			r := finance.Rates{}
			c.change(&fresh, &r)
			_, err := finance.CostPerYear(fresh, r)
			assert.Error(t, err, c.reason)
			_, err = finance.BreakEven(fresh, fresh, r)
			assert.Error(t, err, c.reason)
			_, err = finance.Sensitivity(fresh, r)
			assert.Error(t, err, c.reason)
		})
	}
}

func TestCompareFindsTheCheapestAndTheBreakEven(t *testing.T) {
	keep, fresh, remount := threeWays()
	c, err := finance.Compare([]finance.Choice{fresh, remount, keep}, finance.Rates{})
	require.NoError(t, err)
	assert.Equal(t, 2, c.Cheapest, "keeping costs 22,666.67 a year, while it lasts")
	assert.Equal(t, []int{2, 2, 1}, []int{c.Ways[0].Against, c.Ways[1].Against, c.Ways[2].Against})
	assert.Equal(t, "108333.33", c.Ways[1].BreakEven.String(), "8 x 22,666.67 - 76,000 - 6,000 + 9,000, cut to the "+
		"cent below")
	assert.Len(t, c.Ways[0].Swings, 6)

	c, err = finance.Compare([]finance.Choice{fresh, fresh}, finance.Rates{})
	require.NoError(t, err)
	assert.Equal(t, 0, c.Cheapest, "the earlier of two equals")

	_, err = finance.Compare([]finance.Choice{fresh}, finance.Rates{})
	assert.Error(t, err, "one way is no comparison")
	_, err = finance.Compare([]finance.Choice{fresh, {}}, finance.Rates{})
	assert.Error(t, err, "a way without years")
}
