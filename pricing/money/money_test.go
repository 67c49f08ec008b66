package money_test

import (
	"encoding/json"
	"fmt"
	"regexp"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/pricing/money"
)

func ExampleAllocate() {
	for _, part := range money.Allocate(money.Dollars(100),
		[]money.Amount{money.Cents(1), money.Cents(1), money.Cents(1)}) {
		fmt.Println(part)
	}
	// Output:
	// 33.34
	// 33.33
	// 33.33
}

func ExampleAmount_Share() {
	tax, _ := money.ParsePercent("8.875")
	price, _ := money.ParseAmount("1234.50")
	fmt.Println(price.Share(tax, money.HalfUp).Show(), "is", tax.Show(), "of", price.Show())
	// Output: 109.56 is 8.875 % of 1,234.50
}

func TestOnlyPlainDigitsAreRead(t *testing.T) {
	for _, c := range []struct {
		kind, text string
		ok         bool
		reason     string
	}{
		{"amount", "0", true, "nothing"},
		{"amount", "1234.5", true, "one decimal"},
		{"amount", "-310.00", true, "a credit"},
		{"amount", "999999999.99", true, "the largest"},
		{"amount", "1000000000", false, "above the largest"},
		{"amount", "1e9999999", false, "an exponent could hang the arithmetic"},
		{"amount", "1.005", false, "half a cent"},
		{"amount", "1,000", false, "a separator"},
		{"amount", "+5", false, "a plus sign"},
		{"amount", " 5", false, "a space"},
		{"amount", "5.", false, "no decimals after the point"},
		{"amount", ".5", false, "no digit before the point"},
		{"amount", "", false, "nothing written"},
		{"amount", "NaN", false, "no number"},
		{"amount", "Infinity", false, "no number"},
		{"amount", "٣", false, "digits of another script"},
		{"amount", "5\n", false, "a line end"},
		{"percent", "8.25", true, "a tax rate"},
		{"percent", "0.000001", true, "the finest"},
		{"percent", "8.25%", false, "a sign"},
		{"percent", "1000", false, "above the largest"},
		{"quantity", "412.5", true, "miles"},
		{"quantity", "-1", false, "less than none"},
		{"quantity", "1000000", false, "above the largest"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			var err error
			switch c.kind {
			case "amount":
				_, err = money.ParseAmount(c.text)
			case "percent":
				_, err = money.ParsePercent(c.text)
			default:
				_, err = money.ParseQuantity(c.text)
			}
			assert.Equal(t, c.ok, err == nil, "%s %q: %s", c.kind, c.text, c.reason)
			if err != nil {
				var f *money.FormError
				require.ErrorAs(t, err, &f)
				assert.LessOrEqual(t, len(f.Text), 40)
			}
		})
	}
}

func TestTextsOfFilesAndReaders(t *testing.T) {
	for _, c := range []struct{ text, file, show string }{
		{"1234567.5", "1234567.50", "1,234,567.50"}, {"-0.5", "-0.50", "−0.50"}, {"0", "0.00", "0.00"}, {"-0", "0.00", "0.00"},
		{"999", "999.00", "999.00"}, {"-1000", "-1000.00", "−1,000.00"},
	} {
		t.Run(c.text, func(t *testing.T) {
			a, err := money.ParseAmount(c.text)
			require.NoError(t, err)
			assert.Equal(t, []string{c.file, c.show}, []string{a.String(), a.Show()})
		})
	}
	p, err := money.ParsePercent("8.250000")
	require.NoError(t, err)
	assert.Equal(t, "8.25 %", p.Show())
	_, err = money.ParsePercent("8.12345678")
	require.EqualError(t, err, `"8.12345678" is not a percentage of at most six decimals: write "8.123457"`)
	p, err = money.ParsePercent("100")
	require.NoError(t, err)
	assert.Equal(t, "100", p.String(), "a whole hundred keeps its zeros")
	q, err := money.ParseQuantity("12345.500")
	require.NoError(t, err)
	assert.Equal(t, "12,345.5", q.Show())
	assert.Equal(t, "300", money.Count(300).String())
	assert.True(t, money.Count(-4).IsZero())
}

func TestRoundingIsNamed(t *testing.T) {
	for _, c := range []struct{ exact, up, even string }{
		{"0.005", "0.01", "0.00"}, {"0.015", "0.02", "0.02"}, {"-0.005", "-0.01", "0.00"}, {"-0.015", "-0.02", "-0.02"},
		{"2.3449999", "2.34", "2.34"}, {"2.345", "2.35", "2.34"}, {"2.3450001", "2.35", "2.35"},
	} {
		t.Run(c.exact, func(t *testing.T) {
			d := decimal.RequireFromString(c.exact)
			assert.Equal(t, c.up, money.HalfUp.Cent(d).String(), c.exact)
			assert.Equal(t, c.even, money.HalfEven.Cent(d).String(), c.exact)
		})
	}
	assert.NotEqual(t, money.HalfUp.Words(), money.HalfEven.Words())
}

func TestFilesKeepEveryDigit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := money.Cents(rapid.Int64Range(-99_999_999_999, 99_999_999_999).Draw(t, "cents"))
		p := money.PercentOf(decimal.New(rapid.Int64Range(-999_999_999, 999_999_999).Draw(t, "millionths"), -6))
		data, err := json.Marshal([]any{a, p})
		require.NoError(t, err)
		var texts []string
		require.NoError(t, json.Unmarshal(data, &texts))
		assert.Regexp(t, regexp.MustCompile(money.AmountPattern), texts[0])
		assert.Regexp(t, regexp.MustCompile(money.PercentPattern), texts[1])
		a2, err := money.ParseAmount(texts[0])
		require.NoError(t, err)
		p2, err := money.ParsePercent(texts[1])
		require.NoError(t, err)
		assert.True(t, a.Equal(a2) && p.Equal(p2))
	})
}

func TestAllocationAlwaysSumsToTheCent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		total := money.Cents(rapid.Int64Range(-9_999_999_999, 9_999_999_999).Draw(t, "total, cents"))
		weights := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) money.Amount {
			return money.Cents(rapid.Int64Range(0, 99_999_999).Draw(t, "weight"))
		}), 1, 60).Draw(t, "weights")
		parts := money.Allocate(total, weights)
		require.Len(t, parts, len(weights))
		require.True(t, money.Sum(parts...).Equal(total), "%s of %s", money.Sum(parts...), total)
		all := money.Sum(weights...)
		if all.IsZero() {
			return
		}
		for i, p := range parts {
			// Nobody is more than a cent from the exact share.
			exact := total.Decimal().Mul(weights[i].Decimal()).DivRound(all.Decimal(), 20)
			require.True(t, p.Decimal().Sub(exact).Abs().LessThan(decimal.New(1, -2)), "part %d is %s, exactly %s", i,
				p, exact)
			for j := range parts[:i] {
				if weights[i].Cmp(weights[j]) > 0 {
					require.GreaterOrEqual(t, p.Abs().Cmp(parts[j].Abs()), 0, "the larger weight never gets less")
				}
			}
		}
	})
}

func TestAllocationOfOddWeights(t *testing.T) {
	assert.Nil(t, money.Allocate(money.Dollars(1), nil))
	for _, c := range []struct {
		weights []int64
		want    string
		reason  string
	}{
		{[]int64{0, 0}, "[0.51 0.50]", "no weights: evenly, the odd cent to the first"},
		{[]int64{-5, 1}, "[0.00 1.01]", "a negative weight counts as zero"},
		{[]int64{1, 0, 1}, "[0.51 0.00 0.50]", "zero gets nothing"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			var w []money.Amount
			for _, x := range c.weights {
				w = append(w, money.Cents(x))
			}
			assert.Equal(t, c.want, fmt.Sprint(money.Allocate(money.Cents(101), w)), c.reason)
		})
	}
	p := func(s string) money.Percent { x, _ := money.ParsePercent(s); return x }
	assert.Equal(t, "[33.33 66.67]",
		fmt.Sprint(money.AllocatePercents(money.Dollars(100), []money.Percent{p("33.333333"), p("66.666667")})))
}

func BenchmarkAllocate200(b *testing.B) {
	weights := make([]money.Amount, 200)
	for i := range weights {
		weights[i] = money.Cents(int64(25_000_000 + 977*i))
	}
	b.ReportAllocs()
	for b.Loop() {
		money.Allocate(money.Cents(5_400_123_457), weights)
	}
}
