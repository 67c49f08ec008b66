package pricing_test

// The federal excise on heavy trucks against the text of the law.
//
// 26 USC 4051(a)(1): 12 percent of the amount for which the article is sold, on
// the first retail sale; (a)(2): not on chassis and bodies "suitable for use
// with a vehicle which has a gross vehicle weight of 33,000 pounds or less" (uscode.house.gov).
// 26 USC 4053(4), exempt: "Any ambulance, hearse, or combination
// ambulance-hearse." (law.lawstack.com/usc/26/4053, 2026).

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing"
)

func TestFederalExcise(t *testing.T) {
	for _, c := range []struct {
		use    string
		gvwr   float64
		due    bool
		source string
	}{
		{pricing.UseAmbulance, 14500, false, "4053(4): exempt by name"},
		{pricing.UseAmbulance, 33001, false, "4053(4): exempt by name at any weight"},
		{pricing.UseAmbulance, 62000, false, "4053(4): exempt by name at any weight"},
		{pricing.UseHearse, 35000, false, "4053(4)"},
		{pricing.UseCombination, 35000, false, "4053(4)"},
		{pricing.UseOther, 33000, false, "4051(a)(2): 33,000 pounds or less"},
		{pricing.UseOther, 33001, true, "4051(a)(1)"},
		{"", 35000, true, "a use that is not exempt by name"},
	} {
		t.Run(c.use, func(t *testing.T) {
			assert.Equal(t, c.due, pricing.ExciseDue(c.use, c.gvwr), "%s at %.0f lb: %s", c.use, c.gvwr, c.source)
		})
	}
	assert.Equal(t, "12", pricing.ExciseRate.String(), "26 USC 4051(a)(1)")
}

func TestExciseOnTheSheet(t *testing.T) {
	b, cat := book(t)
	in2027 := config.Date{Year: 2027, Month: 4, Day: 1}
	for _, c := range []struct {
		chassis, body, use string
		want, clause       string
		reason             string
	}{
		{"heavy", "module", "", "0.00", "26 USC 4053(4)", "an ambulance on a 35,000 lb chassis: exempt, and the sheet names the section"},
		{"heavy", "rescue-body", "", "24000.00", "26 USC 4051(a)", "12 % of 90,000.00 and 110,000.00: the body is tagged as no ambulance"},
		{"heavy", "module", pricing.UseOther, "22440.00", "26 USC 4051(a)", "12 % of 187,000.00: the terms say what it is used as"},
		{"heavy", "rescue-body", pricing.UseHearse, "0.00", "26 USC 4053(4)", "the terms have the last word"},
		{"cutaway", "rescue-body", "", "0.00", "26 USC 4051(a)(2)", "no ambulance, but light"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			u := &config.Unit{Chassis: c.chassis, Body: c.body}
			s, err := pricing.Build(b, cat, u, &pricing.Terms{Use: c.use, TaxExempt: true}, in2027)
			require.NoError(t, err)
			assert.Equal(t, c.want, s.Sum(pricing.LineExcise).String(), c.reason)
			found := false
			for _, f := range s.Findings {
				if f.Clause == c.clause {
					found = true
					assert.Equal(t, config.ReadInText, f.Basis)
				}
			}
			assert.True(t, found, "%s: %v", c.reason, s.Findings)
		})
	}
}
