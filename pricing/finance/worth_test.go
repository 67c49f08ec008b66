package finance_test

import (
	"math/big"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/pricing/finance"
	"boxwright/pricing/money"
)

func TestPresentWorthAgainstExactRationals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rate := money.PercentOf(decimal.New(rapid.Int64Range(-90_000, 300_000).Draw(t, "rate, 1e-4 percent"), -4))
		cents := rapid.SliceOfN(rapid.Int64Range(-50_000_000, 50_000_000), 1, 40).Draw(t, "flows, cents")
		flows := make([]money.Amount, len(cents))
		v := new(big.Rat).Inv(new(big.Rat).Add(big.NewRat(1, 1), rat(rate.Fraction())))
		at, want := big.NewRat(1, 1), new(big.Rat)
		for i, c := range cents {
			flows[i] = money.Cents(c)
			want.Add(want, new(big.Rat).Mul(rat(flows[i].Decimal()), at))
			at = new(big.Rat).Mul(at, v)
		}
		got := worth(t, rate, flows)
		off := new(big.Rat).Sub(rat(got.Decimal()), want)
		bound, _ := new(big.Rat).SetString("0.0050000000000000000001")
		assert.True(t, off.Abs(off).Cmp(bound) <= 0, "off by %s", off.FloatString(25))
	})
}

func TestEarlyPaymentOutOfRange(t *testing.T) {
	for _, c := range []struct {
		discount   string
		days, year int
		reason     string
	}{
		{"100", 30, 365, "everything for nothing"},
		{"-1", 30, 365, "a surcharge"},
		{"2", 0, 365, "no time gained"},
		{"2", 20, 0, "a year without days"},
		{"50", 1, 365, "36,500 % a year says nothing"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			_, err := finance.EarlyPayment(percent(t, c.discount), c.days, c.year)
			assert.Error(t, err, c.reason)
		})
	}
	y, err := finance.EarlyPayment(percent(t, "0"), 20, 365)
	require.NoError(t, err)
	assert.True(t, y.Simple.IsZero() && y.Compounded.IsZero(), "no discount, no yield")
}

// What the yield of an early payment says, the rate of return of its two
// payments says too.
func TestEarlyPaymentIsARateOfReturn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hundredths := rapid.Int64Range(1, 900).Draw(t, "discount, 0.01 %")
		days := rapid.IntRange(20, 720).Draw(t, "days")
		d := money.PercentOf(decimal.New(hundredths, -2))
		y, err := finance.EarlyPayment(d, days, 365)
		require.NoError(t, err)
		r := rateOfReturn([]money.Amount{money.Cents(1_000_000 - 100*hundredths).Neg(), money.Cents(1_000_000)})
		simple := decimal.NewFromFloat(r).Mul(decimal.NewFromInt(365)).Div(decimal.NewFromInt(int64(days)))
		assert.True(t, simple.Sub(y.Simple.Decimal()).Abs().LessThan(decimal.New(1, -3)), "%s and %s", simple, y.Simple)
		assert.True(t, y.Compounded.Cmp(y.Simple) >= 0 == (days <= 365) ||
			y.Compounded.Decimal().Sub(y.Simple.Decimal()).Abs().LessThan(decimal.New(1, -3)),
			"interest on interest adds within a year")
	})
}

// rateOfReturn is the rate, in percent a period, at which a series of payments is worth
// nothing now: found by halving, in plain arithmetic.
func rateOfReturn(flows []money.Amount) float64 {
	worth := func(rate float64) float64 {
		sum := 0.0
		for k := len(flows) - 1; k >= 0; k-- {
			sum = sum/(1+rate) + flows[k].Decimal().InexactFloat64()
		}
		return sum
	}
	low, high := -0.5, 5.0
	for range 60 {
		mid := (low + high) / 2
		if worth(mid) < 0 == (worth(low) < 0) {
			low = mid
		} else {
			high = mid
		}
	}
	return 100 * low
}

func TestEquivalentAnnualRefusesAbsurdRatesAndYears(t *testing.T) {
	one := []money.Amount{money.Dollars(1)}
	for _, p := range []string{"-51", "501"} {
		_, err := finance.EquivalentAnnual(percent(t, p), 1, one, 1)
		assert.Error(t, err, p)
	}
	_, err := finance.EquivalentAnnual(percent(t, "5"), 1, one, 0)
	assert.Error(t, err)
	y, err := finance.EquivalentAnnual(percent(t, "0"), 1, []money.Amount{money.Dollars(70)}, 7)
	require.NoError(t, err)
	assert.Equal(t, "10.00", y.PerYear.String())
}

// Payments in each month over just the years they are spread over come, each year,
// to what the year's twelve payments have grown to at its end: 1,000.00 a month at
// 4 % in months is 12,222.46 a year, and 4 % so paid is 4.0742 % a year. At the
// nominal rate it would be 0.4 % less.
func TestMonthlyPaymentsByTheYear(t *testing.T) {
	for _, c := range []struct {
		name, rate, payment, perYear, effective string
		years                                   int
	}{
		{"4 % over ten years", "4", "1000", "12222.46", "4.0742", 10},
		{"4 % over one year", "4", "1000", "12222.46", "4.0742", 1},
		{"12 % over five years", "12", "1000", "12682.50", "12.6825", 5},
		{"no interest", "0", "1000", "12000.00", "0", 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			flows := make([]money.Amount, 12*c.years+1)
			for i := 1; i < len(flows); i++ {
				flows[i] = amount(t, c.payment)
			}
			y, err := finance.EquivalentAnnual(percent(t, c.rate), 12, flows, c.years)
			require.NoError(t, err)
			assert.Equal(t, c.perYear, y.PerYear.String())
			assert.Equal(t, c.effective, y.Effective.String())
		})
	}
	for _, c := range []struct {
		name           string
		rate           string
		perYear, years int
	}{{"no year", "4", 12, 0}, {"too many periods", "4", 13, 5}, {"no periods", "4", 0, 5}, {"a rate beyond reason",
		"900",
		1, 5}} {
		t.Run(c.name, func(t *testing.T) {
			_, err := finance.EquivalentAnnual(percent(t, c.rate), c.perYear, nil, c.years)
			assert.Error(t, err)
		})
	}
}
