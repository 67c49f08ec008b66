package finance_test

import (
	"fmt"
	"math/big"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/pricing/finance"
	"boxwright/pricing/money"
)

// anyLease draws a lease of the sizes that quotes have.
func anyLease(t *rapid.T) finance.Lease {
	principal := rapid.Int64Range(100_000, 500_000_000).Draw(t, "principal, cents")
	return finance.Lease{
		Principal: money.Cents(principal),
		Rate:      money.PercentOf(decimal.New(rapid.Int64Range(0, 250_000).Draw(t, "rate, 1e-4 percent"), -4)),
		PerYear:   rapid.SampledFrom([]int{1, 2, 4, 12}).Draw(t, "per year"),
		Periods:   rapid.IntRange(1, 60).Draw(t, "periods"),
		Advance:   rapid.Bool().Draw(t, "advance"),
		Balloon:   money.Cents(rapid.Int64Range(0, principal).Draw(t, "balloon, cents")),
	}
}

func rat(d decimal.Decimal) *big.Rat { return d.Rat() }

// ratPayment is the level payment in exact rational arithmetic: what is left
// of the principal less the balloon's worth, over the sum of the discounts.
func ratPayment(l *finance.Lease) *big.Rat {
	r := new(big.Rat).Quo(rat(l.Rate.Fraction()), big.NewRat(int64(l.PerYear), 1))
	v := new(big.Rat).Inv(new(big.Rat).Add(big.NewRat(1, 1), r))
	at, sum := big.NewRat(1, 1), new(big.Rat)
	for k := 0; k <= l.Periods; k++ {
		if k < l.Periods && l.Advance || k > 0 && !l.Advance {
			sum.Add(sum, at)
		}
		if k < l.Periods {
			at = new(big.Rat).Mul(at, v)
		}
	}
	owed := new(big.Rat).Sub(rat(l.Principal.Decimal()), new(big.Rat).Mul(rat(l.Balloon.Decimal()), at))
	return owed.Quo(owed, sum)
}

func TestPaymentAgainstExactRationals(t *testing.T) {
	bound, _ := new(big.Rat).SetString("1/100000000000000000000") // 1e-20, as promised
	rapid.Check(t, func(t *rapid.T) {
		l := anyLease(t)
		got, err := l.Exact()
		require.NoError(t, err)
		off := new(big.Rat).Sub(rat(got), ratPayment(&l))
		assert.True(t, off.Abs(off).Cmp(bound) < 0, "off by %s", off.FloatString(30))
	})
}

func TestScheduleSettlesToTheCent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLease(t)
		s, err := l.Schedule()
		if err == finance.ErrTooSmall {
			t.Skip("whole cents cannot settle it")
		}
		require.NoError(t, err)
		period := new(big.Rat).Quo(rat(l.Rate.Fraction()), big.NewRat(int64(l.PerYear), 1))
		half := big.NewRat(1, 200)
		balance, principal, paid := l.Principal, money.Amount{}, money.Amount{}
		for i, r := range s.Rows {
			require.True(t, r.Payment.Equal(r.Interest.Add(r.Principal)), "row %d", r.N)
			exact := new(big.Rat).Mul(rat(balance.Decimal()), period)
			if l.Advance && i == 0 || !l.Advance && r.N > l.Periods {
				exact = new(big.Rat) // no time has passed
			}
			off := new(big.Rat).Sub(rat(r.Interest.Decimal()), exact)
			most := half
			if r.N > l.Periods {
				most = big.NewRat(2, 100) // the balloon is as agreed: its interest takes the odd cent
			}
			require.True(t, off.Abs(off).Cmp(most) <= 0, "row %d: interest %s is not that on %s", r.N, r.Interest,
				balance)
			if r.N < l.Periods {
				require.True(t, r.Payment.Equal(s.Payment), "level until the last")
			}
			balance = balance.Sub(r.Principal)
			require.True(t, balance.Equal(r.Balance))
			principal, paid = principal.Add(r.Principal), paid.Add(r.Payment)
		}
		require.True(t, balance.IsZero(), "nothing is left owing")
		require.True(t, principal.Equal(l.Principal), "the whole principal is repaid")
		require.True(t, paid.Equal(s.Paid) && paid.Sub(l.Principal).Equal(s.Interest))
		if !l.Balloon.IsZero() {
			require.True(t, s.Rows[len(s.Rows)-1].Payment.Equal(l.Balloon), "the balloon is as agreed")
		}
	})
}

// The cost of a lease to the borrower, found from its payments alone, is its
// own rate.
func TestPaymentsHaveTheRateOfTheLease(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLease(t)
		l.Principal = money.Dollars(rapid.Int64Range(100_000, 900_000).Draw(t, "principal"))
		l.Balloon = money.Amount{}
		l.Periods = max(l.Periods, 4)
		s, err := l.Schedule()
		require.NoError(t, err)
		flows := []money.Amount{l.Principal}
		for i, r := range s.Rows {
			if l.Advance && i == 0 {
				flows[0] = flows[0].Sub(r.Payment)
				continue
			}
			flows = append(flows, r.Payment.Neg())
		}
		want := l.Rate.Decimal().InexactFloat64() / float64(l.PerYear)
		assert.InDelta(t, want, rateOfReturn(flows), 1e-4, "payments are rounded to the cent")
	})
}

func TestScheduleByHand(t *testing.T) {
	for _, c := range []struct {
		l      finance.Lease
		want   []string // payment interest balance
		months []int
		reason string
	}{
		{finance.Lease{Principal: amount(t, "1000"), PerYear: 1, Periods: 3},
			[]string{"333.33 0.00 666.67", "333.33 0.00 333.34", "333.34 0.00 0.00"}, []int{12, 24, 36},
			"without interest the last payment takes the odd cent"},
		{finance.Lease{Principal: amount(t, "1000"), Rate: percent(t, "10"), PerYear: 1, Periods: 2},
			[]string{"576.19 100.00 523.81", "576.19 52.38 0.00"}, []int{12, 24},
			"1,000 x 0.1 / (1 - 1.1^-2) is 576.1905"},
		{finance.Lease{Principal: amount(t, "1000"), Rate: percent(t, "10"), PerYear: 1, Periods: 2, Advance: true},
			[]string{"523.81 0.00 476.19", "523.81 47.62 0.00"}, []int{0, 12},
			"in advance the first payment is all principal"},
		{finance.Lease{Principal: amount(t, "1000"), Rate: percent(t, "8"), PerYear: 4, Periods: 2, Balloon: amount(t, "500"), FirstDue: 3},
			[]string{"267.52 20.00 752.48", "267.53 15.05 500.00", "500.00 0.00 0.00"}, []int{6, 9, 9},
			"a balloon in arrears falls due with the last payment"},
		{finance.Lease{Principal: amount(t, "1000"), Rate: percent(t, "10"), PerYear: 1, Periods: 1, Advance: true, Balloon: amount(t, "550")},
			[]string{"500.00 0.00 500.00", "550.00 50.00 0.00"}, []int{0, 12}, "a balloon in advance falls due a " +
				"period later and bears its interest"},
		{finance.Lease{Principal: amount(t, "1000"), Rate: percent(t, "10"), PerYear: 1, Periods: 2, Balloon: amount(t, "1000")},
			[]string{"100.00 100.00 1000.00", "100.00 100.00 1000.00", "1000.00 0.00 0.00"}, []int{12, 24, 24},
			"interest only"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			s, err := c.l.Schedule()
			require.NoError(t, err, c.reason)
			var got []string
			var months []int
			for _, r := range s.Rows {
				got = append(got, fmt.Sprintf("%s %s %s", r.Payment, r.Interest, r.Balance))
				months = append(months, r.Months)
			}
			assert.Equal(t, c.want, got, c.reason)
			assert.Equal(t, c.months, months, c.reason)
		})
	}
}

func TestBadLeaseIsAnError(t *testing.T) {
	good := *lease(t, "1000", "5", 12, 12)
	for _, c := range []struct {
		change func(*finance.Lease)
		reason string
	}{
		{func(l *finance.Lease) { l.Principal = money.Amount{} }, "nothing is financed"},
		{func(l *finance.Lease) { l.Principal = money.Dollars(-1) }, "a negative sum"},
		{func(l *finance.Lease) { l.Rate = percent(t, "61") }, "a rate out of reason"},
		{func(l *finance.Lease) { l.Rate = percent(t, "-1") }, "a negative rate"},
		{func(l *finance.Lease) { l.PerYear = 0 }, "no periods in a year"},
		{func(l *finance.Lease) { l.PerYear = 365 }, "daily payments"},
		{func(l *finance.Lease) { l.Periods = 0 }, "no payments"},
		{func(l *finance.Lease) { l.Periods = 601 }, "too many payments"},
		{func(l *finance.Lease) { l.Balloon = money.Dollars(1001) }, "a balloon above the principal"},
		{func(l *finance.Lease) { l.Balloon = money.Dollars(-1) }, "a negative balloon"},
		{func(l *finance.Lease) { l.FirstDue = 121 }, "the first period is too far away"},
		{func(l *finance.Lease) { l.Principal, l.Rate, l.Periods = money.Cents(3), money.Percent{}, 600 },
			"three cents over 600 payments"},
		{func(l *finance.Lease) {
			l.Rate, l.Periods, l.PerYear = percent(t, "60"), 600, 1
		}, "half a cent grows beyond the payment at that rate and length"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			l := good
			c.change(&l)
			_, err := l.Schedule()
			assert.Error(t, err, c.reason)
		})
	}
}

func TestEffectiveRate(t *testing.T) {
	e, err := lease(t, "1000", "12", 12, 12).Effective()
	require.NoError(t, err)
	assert.Equal(t, "12.6825", e.String(), "1.01^12 - 1 is 0.12682503")
}

func BenchmarkSchedule180(b *testing.B) {
	l := lease(b, "250000", "5.25", 12, 180)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := l.Schedule(); err != nil {
			b.Fatal(err)
		}
	}
}
