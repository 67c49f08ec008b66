package finance_test

// The published rows of engineering economics. Each row names its source; the
// code is held to as many digits as the source prints.

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/finance"
	"boxwright/pricing/money"
)

func amount(t testing.TB, text string) money.Amount {
	t.Helper()
	a, err := money.ParseAmount(text)
	require.NoError(t, err)
	return a
}

func percent(t testing.TB, text string) money.Percent {
	t.Helper()
	p, err := money.ParsePercent(text)
	require.NoError(t, err)
	return p
}

func lease(t testing.TB, principal, rate string, perYear, periods int) *finance.Lease {
	t.Helper()
	return &finance.Lease{Principal: amount(t, principal), Rate: percent(t, rate), PerYear: perYear, Periods: periods}
}

// F-1. numpy-financial, _financial.py, pmt: a 200,000 loan at 7.5 % over 15
// years printed as -1854.0247200054619. The source works in binary floating
// point; exact rational arithmetic gives 1854.02472000547624..., so that its
// last four printed digits are rounding noise. Held to the fourteen digits that
// are not, and to the exact value beyond them.
func TestF1LevelPayment(t *testing.T) {
	exact, err := lease(t, "200000", "7.5", 12, 180).Exact()
	require.NoError(t, err)
	printed := decimal.RequireFromString("1854.0247200054619")
	assert.Equal(t, printed.Round(10).String(), exact.Round(10).String())
	assert.Equal(t, "1854.0247200054762477869071", exact.Round(22).String())
}

// F-2. numpy-financial, _financial.py, ipmt: 2,500 at 8.24 % over 12 months,
// the table of principal, interest and balance, and 112.98 of interest in all.
// The source rounds only what it prints.
func TestF2Schedule(t *testing.T) {
	l := lease(t, "2500", "8.24", 12, 12)
	payment, err := l.Exact()
	require.NoError(t, err)
	assert.Equal(t, "217.7486", payment.Round(4).String())
	printed := [][3]string{
		{"200.58", "17.17", "2299.42"}, {"201.96", "15.79", "2097.46"}, {"203.35", "14.40", "1894.11"},
		{"204.74", "13.01", "1689.37"}, {"206.15", "11.60", "1483.22"}, {"207.56", "10.18", "1275.66"},
		{"208.99", "8.76", "1066.67"}, {"210.42", "7.32", "856.25"}, {"211.87", "5.88", "644.38"},
		{"213.32", "4.42", "431.05"}, {"214.79", "2.96", "216.26"}, {"216.26", "1.49", "0.00"},
	}
	rows := exactRows(t, l)
	require.Len(t, rows, len(printed))
	interest := decimal.Zero
	for i, r := range rows {
		assert.Equal(t, printed[i], [3]string{r.principal.StringFixed(2), r.interest.StringFixed(2),
			r.balance.Abs().StringFixed(2)}, "month %d", i+1)
		interest = interest.Add(r.interest)
	}
	assert.Equal(t, "112.98", interest.StringFixed(2))

	// What is owed to the cent differs from the printed table by a cent or two
	// and settles exactly.
	s, err := l.Schedule()
	require.NoError(t, err)
	for i, r := range s.Rows {
		assert.LessOrEqual(t, r.Balance.Sub(amount(t, printed[i][2])).Abs().Cmp(money.Cents(2)), 0, "month %d", i+1)
	}
	assert.True(t, s.Rows[11].Balance.IsZero())
}

// exactRow is one payment as it would be if cents could be split.
type exactRow struct{ interest, principal, balance decimal.Decimal }

// exactRows is the schedule of a lease in arrears without rounding, for comparison with tables
// that only print rounded.
func exactRows(t *testing.T, l *finance.Lease) []exactRow {
	t.Helper()
	payment, err := l.Exact()
	require.NoError(t, err)
	rows, balance := make([]exactRow, l.Periods), l.Principal.Decimal()
	period := l.Rate.Fraction().DivRound(decimal.NewFromInt(int64(l.PerYear)), 40)
	for i := range rows {
		interest := balance.Mul(period)
		balance = balance.Sub(payment.Sub(interest))
		rows[i] = exactRow{interest, payment.Sub(interest), balance}
	}
	return rows
}

// worth is what a series of payments, the first of them now, is worth now.
func worth(t require.TestingT, rate money.Percent, flows []money.Amount) money.Amount {
	y, err := finance.EquivalentAnnual(rate, 1, flows, 1)
	require.NoError(t, err)
	return y.Worth
}

// F-4. numpy-financial, _financial.py, npv at 8 %: 3065.22267.
func TestF4PresentWorth(t *testing.T) {
	now := worth(t, percent(t, "8"), []money.Amount{amount(t, "-40000"), amount(t, "5000"), amount(t, "8000"),
		amount(t, "12000"), amount(t, "30000")})
	assert.Equal(t, "3065.22", now.String(), "printed 3065.22267; ours is money, to the cent")

	// To all printed digits: the same series in units a thousand times larger.
	now = worth(t, percent(t, "8"), []money.Amount{amount(t, "-40000000"), amount(t, "5000000"),
		amount(t, "8000000"), amount(t, "12000000"), amount(t, "30000000")})
	assert.Equal(t, "3065222.67", now.String())
}

// F-6. w3resource.com, ppmt: 401.72223098 for 100,000 at 8.5 %/12 over 144
// months. The page labels it a monthly payment; it is the first month's
// principal, and the payment is 1,110.06.
func TestF6FirstPrincipal(t *testing.T) {
	l := lease(t, "100000", "8.5", 12, 144)
	rows := exactRows(t, l)
	assert.Equal(t, "401.72223098", rows[0].principal.Round(8).String())
	s, err := l.Schedule()
	require.NoError(t, err)
	assert.Equal(t, "1110.06", s.Payment.String())
}

// F-7. liquisearch.com, equivalent annual cost, at 5 %: A 31,360 and B 30,708
// a year, present worths 85,402 and 198,474. (A copy
// elsewhere prints 30,780 for B; it is a misprint.)
func TestF7EquivalentAnnualCost(t *testing.T) {
	for _, c := range []struct {
		name                      string
		buy, yearly               string
		years                     int
		worth, perYear, exactCent string
	}{
		{"A", "50000", "13000", 3, "85402", "31360", "31360.43"},
		{"B", "150000", "7500", 8, "198474", "30708", "30708.27"},
	} {
		flows := []money.Amount{amount(t, c.buy)}
		for range c.years {
			flows = append(flows, amount(t, c.yearly))
		}
		now := worth(t, percent(t, "5"), flows)
		assert.Equal(t, c.worth, now.Decimal().Round(0).String(), c.name)
		y, err := finance.EquivalentAnnual(percent(t, "5"), 1, flows, c.years)
		require.NoError(t, err)
		assert.True(t, y.Worth.Equal(now), c.name)
		assert.Equal(t, c.perYear, y.PerYear.Decimal().Round(0).String(), c.name)
		assert.Equal(t, c.exactCent, y.PerYear.String(), "%s: recomputed at full precision", c.name)
		s, err := finance.CostPerYear(finance.Choice{Price: amount(t, c.buy), Yearly: amount(t, c.yearly),
			Years: c.years}, finance.Rates{Discount: percent(t, "5")})
		require.NoError(t, err)
		assert.Equal(t, c.exactCent, s.PerYear.String(), "%s: the same as a choice of service", c.name)
	}
}

// F-10. briskessays.com, inputs only, at 8 %: 30,000 and 3,000 for 5 years
// against 22,000 and 4,000 for 3. The results are recomputed at full precision.
func TestF10EquivalentAnnualCost(t *testing.T) {
	for _, c := range []struct {
		buy, yearly string
		years       int
		want        string
	}{{"30000", "3000", 5, "10513.69"}, {"22000", "4000", 3, "12536.74"}} {
		s, err := finance.CostPerYear(finance.Choice{Price: amount(t, c.buy), Yearly: amount(t, c.yearly),
			Years: c.years}, finance.Rates{Discount: percent(t, "8")})
		require.NoError(t, err)
		assert.Equal(t, c.want, s.PerYear.String())
		flows := []money.Amount{amount(t, c.buy)}
		for range c.years {
			flows = append(flows, amount(t, c.yearly))
		}
		y, err := finance.EquivalentAnnual(percent(t, "8"), 1, flows, c.years)
		require.NoError(t, err)
		assert.Equal(t, c.want, y.PerYear.String(), "the same as a series of payments")
	}
}

// F-11. mathcelebrity.com: 2/10 net 30 in a year of 360 days is 36.73 %
// (0.367347). In a year of 365 days 37.245 %, compounded 44.585 %: recomputed.
func TestF11EarlyPayment(t *testing.T) {
	y, err := finance.EarlyPayment(percent(t, "2"), 20, 360)
	require.NoError(t, err)
	assert.Equal(t, "36.73", y.Simple.Decimal().Truncate(2).String(), "the source cuts 36.7347 to two decimals")
	assert.Equal(t, "0.367347", y.Simple.Fraction().Round(6).String())
	y, err = finance.EarlyPayment(percent(t, "2"), 20, 365)
	require.NoError(t, err)
	assert.Equal(t, "37.245", y.Simple.Decimal().Round(3).String())
	assert.Equal(t, "44.585", y.Compounded.Decimal().Round(3).String())
}
