package pricing_test

import (
	"encoding/json"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/money"
)

func anyUnit(t *rapid.T) *config.Unit {
	u := &config.Unit{Chassis: rapid.SampledFrom([]string{"cutaway", "heavy"}).Draw(t, "chassis"),
		Body: rapid.SampledFrom([]string{"module", "rescue-body"}).Draw(t, "body")}
	for _, o := range []struct {
		id   string
		most int
	}{{"winch", 1}, {"lights", 4}, {"camera", 2}, {"no-spare", 1}, {"mount", 1}} {
		if n := rapid.IntRange(0, o.most).Draw(t, o.id); n > 0 {
			u.Set(config.Pick{Option: o.id, Qty: n})
		}
	}
	return u
}

func anyTerms(t *rapid.T) *pricing.Terms {
	percent := func(name string, most int64) money.Percent {
		return money.PercentOf(decimal.New(rapid.Int64Range(0, most*10000).Draw(t, name), -4))
	}
	cents := func(name string, most int64) money.Amount {
		return money.Cents(rapid.Int64Range(0, most*100).Draw(t, name))
	}
	miles, err := money.ParseQuantity(decimal.New(rapid.Int64Range(0, 3_000_000).Draw(t, "miles"), -3).String())
	require.NoError(t, err)
	x := &pricing.Terms{
		Contract: rapid.SampledFrom([]string{"", "coop", "unknown"}).Draw(t, "contract"),
		Use:      rapid.SampledFrom(append([]string{""}, pricing.Uses...)).Draw(t, "use"),
		Prepay:   rapid.SampledFrom([]string{"", "on-arrival"}).Draw(t, "prepay"),

		DiscountPercent: percent("discount", 20), DiscountAmount: cents("less", 5000), TradeIn: cents("trade-in",
			40000),
		FreightMiles: miles, TrainingDays: money.Count(rapid.IntRange(0, 9).Draw(t, "training")),
		TaxExempt: rapid.Bool().Draw(t, "exempt"), Bond: rapid.Bool().Draw(t, "bond"),
		DepositPercent: percent("deposit", 30),
		Extras: []pricing.Extra{{Label: "Extra", Qty: rapid.IntRange(0, 9).Draw(t, "extras"),
			Price: cents("extra", 900)}},
	}
	x.Buyer = rapid.SampledFrom([]string{"", "county", "private"}).Draw(t, "buyer")
	x.Taxed = !x.TaxExempt && rapid.Bool().Draw(t, "taxed")
	if rapid.Bool().Draw(t, "own rate") {
		rate := percent("tax", 12)
		x.TaxRate = &rate
	}
	return x
}

// Whatever the units and terms: lines, payments and shares each add up to the
// total, every line says how, every amount is whole cents, and the same input
// gives the same bytes.
func TestEverySheetAddsUp(t *testing.T) {
	b, cat := book(t)
	rapid.Check(t, func(t *rapid.T) {
		var items []pricing.Item
		for range rapid.IntRange(1, 4).Draw(t, "kinds") {
			items = append(items, pricing.Item{Unit: anyUnit(t), Units: rapid.IntRange(0, 7).Draw(t, "units")})
		}
		terms := anyTerms(t)
		on := day.AddDays(rapid.IntRange(-300, 1200).Draw(t, "days"))
		s, err := pricing.BuildFleet(b, cat, items, terms, on)
		require.NoError(t, err)

		var lines, paid, shares money.Amount
		for _, l := range s.Lines {
			lines = lines.Add(l.Amount)
			require.NotEmpty(t, l.How, l.Code)
			require.True(t, l.Amount.Decimal().Equal(l.Amount.Decimal().Round(2)), "%s: whole cents", l.Code)
			require.True(t, l.Price.For(l.Qty, money.HalfUp).Equal(l.Amount), "%s: %s for %s is not %s", l.Code,
				l.Price, l.Qty, l.Amount)
		}
		require.True(t, lines.Equal(s.Total))
		for _, p := range s.Payments {
			paid = paid.Add(p.Amount)
			require.GreaterOrEqual(t, p.Amount.Sign(), 0)
		}
		if s.Total.Sign() > 0 {
			require.True(t, paid.Equal(s.Total))
		}
		require.Len(t, s.Shares, s.Units)
		for _, p := range s.Shares {
			shares = shares.Add(p.Amount)
		}
		require.True(t, shares.Equal(s.Total))

		data, err := json.Marshal(s)
		require.NoError(t, err)
		copied := terms.Clone()
		again, err := pricing.BuildFleet(b, cat, items, &copied, on)
		require.NoError(t, err)
		data2, err := json.Marshal(again)
		require.NoError(t, err)
		require.Equal(t, string(data), string(data2))
		if contains(s, pricing.LineExcise) {
			require.NotEqual(t, pricing.UseAmbulance, terms.Use)
		}
	})
}

func contains(s *pricing.Sheet, code string) bool {
	for _, l := range s.Lines {
		if l.Code == code {
			return true
		}
	}
	return false
}

// A larger discount never raises the total, and one more piece of an option
// that has a price never lowers it, while no package credit turns on it.
func TestTotalMovesTheRightWay(t *testing.T) {
	b, cat := book(t)
	bare := *b
	bare.Credits = nil
	rapid.Check(t, func(t *rapid.T) {
		u, terms := anyUnit(t), anyTerms(t)
		at := func(u *config.Unit, x *pricing.Terms) money.Amount {
			s, err := pricing.Build(&bare, cat, u, x, day)
			require.NoError(t, err)
			return s.Total
		}
		before := at(u, terms)
		more := u.Clone()
		more.Set(config.Pick{Option: "lights", Qty: u.Qty("lights") + 1})
		if u.Qty("lights") < 4 {
			require.Equal(t, 1, at(&more, terms).Cmp(before))
		}
		less := terms.Clone()
		less.DiscountPercent = less.DiscountPercent.Add(money.PercentOf(decimal.NewFromInt(1)))
		require.Equal(t, -1, at(u, &less).Cmp(before))
	})
}

// The linear limit agrees with the whole price: exactly for the unit it was
// made from, and to a dollar a pick for its neighbors.
func TestLinearLimitFollowsThePrice(t *testing.T) {
	b, cat := book(t)
	bare := *b
	bare.Credits = nil
	rapid.Check(t, func(t *rapid.T) {
		u, terms := anyUnit(t), anyTerms(t)
		terms.Bond = false // its steps are not linear
		terms.Units = rapid.IntRange(1, 3).Draw(t, "units")
		terms.Budget = money.Dollars(700000)
		in := bare.AsOf(day)
		limits := pricing.Limits(in, cat, u, terms)
		require.Len(t, limits, 1)
		s, err := pricing.Build(in, cat, u, terms, day)
		require.NoError(t, err)
		require.InDelta(t, s.Total.Float(), total(limits[0], u), 0.001)
		other := anyUnit(t)
		other.Chassis, other.Body = u.Chassis, u.Body
		s, err = pricing.Build(in, cat, other, terms, day)
		require.NoError(t, err)
		pieces := 0.0
		for _, o := range []string{"winch", "lights", "camera", "no-spare", "mount"} {
			pieces += float64(max(u.Qty(o), other.Qty(o)))
		}
		require.InDelta(t, s.Total.Float(), total(limits[0], other), 0.5*pieces+0.5)
	})
}

func FuzzReadBook(f *testing.F) {
	cat := catalogue(f)
	f.Add([]byte(bookText))
	f.Add([]byte(`{"currency":"USD","rounding":"half-up","prices":{"cutaway":"1e99"}}`))
	f.Add([]byte(`[[[[`))
	f.Fuzz(func(t *testing.T, data []byte) {
		b, err := pricing.ReadBook(data, cat)
		if err != nil {
			return
		}
		s, err := pricing.Build(b, cat, scenePicks(), &pricing.Terms{Bond: true, Units: 3}, day)
		require.NoError(t, err, "a book that passes its check prices every unit")
		var sum money.Amount
		for _, l := range s.Lines {
			sum = sum.Add(l.Amount)
		}
		require.True(t, sum.Equal(s.Total))
	})
}
