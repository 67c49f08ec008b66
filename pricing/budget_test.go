package pricing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/money"
)

// total reads a linear limit as the rules engine does.
func total(l config.Linear, u *config.Unit) float64 {
	sum := l.Base
	for _, p := range u.Picks {
		sum += l.Per[p.Option] * float64(p.Qty)
	}
	return sum
}

func TestBudgetAsALinearLimit(t *testing.T) {
	b, cat := book(t)
	b = b.AsOf(day)
	terms := &pricing.Terms{
		Units: 5, DiscountPercent: percent(t, "1.5"), Bond: true, FreightMiles: quantity(t, "300"),
		Budget: amount(t, "900000"), Prepay: "on-arrival", Contract: "coop",
	}
	for _, c := range []struct {
		name   string
		change func(*config.Unit)
		within float64
		reason string
	}{
		{"as it stands", func(*config.Unit) {}, 0.005, "exact to the cent for the unit it was made from"},
		{"without the camera", func(u *config.Unit) { u.Drop("camera") }, 1, "a whole dollar is the unit of the limit"},
		{"a deletion", func(u *config.Unit) { u.Set(config.Pick{Option: "no-spare", Qty: 1}) }, 1,
			"credits count downward"},
		{"two more lamps", func(u *config.Unit) { u.Set(config.Pick{Option: "lights", Qty: 3}) }, 3,
			"half a dollar each at most, and rounding of the lines of five units"},
	} {
		t.Run(c.name, func(t *testing.T) {
			u := unit(config.Pick{Option: "lights", Qty: 1}, config.Pick{Option: "camera", Qty: 1})
			limits := pricing.Limits(b, cat, u, terms)
			require.Len(t, limits, 1)
			assert.Equal(t, 900000.0, limits[0].Limit)
			assert.Equal(t, "price.total", limits[0].Code)
			c.change(u)
			s, err := pricing.Build(b, cat, u, terms, day)
			require.NoError(t, err)
			assert.InDelta(t, s.Total.Float(), total(limits[0], u), c.within, c.reason)
		})
	}
}

func TestBudgetReachesThroughExcise(t *testing.T) {
	b, cat := book(t)
	u := unit()
	u.Chassis, u.Body = "heavy", "rescue-body"
	terms := &pricing.Terms{Budget: money.Dollars(300000)}
	limits := pricing.Limits(b, cat, u, terms)
	require.Len(t, limits, 1)
	// 2,000.00 x (1 + 0.12) x (1 + 0.065)
	assert.Equal(t, 2386.0, limits[0].Per["winch"], "2,385.60 in whole dollars")
}

func TestNoBudgetNoLimit(t *testing.T) {
	b, cat := book(t)
	assert.Empty(t, pricing.Limits(b, cat, unit(), &pricing.Terms{}))
	assert.Empty(t, pricing.Limits(b, cat, nil, &pricing.Terms{Budget: money.Dollars(1)}))
	assert.Empty(t, pricing.Limits(b, cat, &config.Unit{}, &pricing.Terms{Budget: money.Dollars(1)}),
		"a unit that cannot be priced")
}
