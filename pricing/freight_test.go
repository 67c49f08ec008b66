package pricing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing"
)

// Freight by hand: 3.25 a mile beyond 50 free ones, at least 450.00 a unit where
// anything is charged.
func TestFreightByDistance(t *testing.T) {
	b, cat := book(t)
	for _, c := range []struct {
		name, miles string
		units       int
		each, sum   string
		how, reason string
	}{
		{"within the free miles", "30", 1, "0.00", "0.00", "30 miles, within the 50 included",
			"nothing is charged, not the minimum"},
		{"just the free miles", "50", 1, "0.00", "0.00", "50 miles, within the 50 included",
			"the last free mile is free"},
		{"one mile beyond", "51", 1, "450.00", "450.00", "comes to 3.25; the minimum of 450.00 is charged",
			"the minimum goes before the distance"},
		{"below the minimum", "188", 1, "450.00", "450.00", "comes to 448.50; the minimum", "138 x 3.25 = 448.50"},
		{"above the minimum", "189", 1, "451.75", "451.75", "189 miles less 50 included, at 3.25",
			"139 x 3.25 = 451.75"},
		{"two units", "250", 2, "650.00", "1300.00", "for each of 2 units", "each unit is driven by itself"},
	} {
		t.Run(c.name, func(t *testing.T) {
			terms := &pricing.Terms{FreightMiles: quantity(t, c.miles), Units: c.units}
			s, err := pricing.Build(b, cat, scenePicks(), terms, day)
			require.NoError(t, err)
			found := 0
			for _, l := range s.Lines {
				if l.Code != pricing.LineFreight {
					continue
				}
				found++
				assert.True(t, amount(t, c.each).Equal(l.Price), "%s: %s each, not %s", c.reason, c.each,
					l.Price.Show())
				assert.True(t, amount(t, c.sum).Equal(l.Amount), "%s: %s in all, not %s", c.reason, c.sum,
					l.Amount.Show())
				assert.Contains(t, l.How, c.how, c.reason)
			}
			assert.Equal(t, 1, found)
		})
	}
}
