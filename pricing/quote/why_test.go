package quote_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
)

// What takes the place of something else is one reason with it: the chassis is dearer
// by the difference, not by its price.
func TestWhyPriceNetsSwaps(t *testing.T) {
	ed := quotetest.Demo(t)
	made := func(chassis string, change func(*quote.Draft)) *quote.Quote {
		d := quote.Begin(ed, chassis, "", quotetest.Today)
		change(d)
		q, err := quote.Compute(ed, d)
		require.NoError(t, err)
		return q
	}
	nothing := func(*quote.Draft) {}
	road, mountain := made("cab-16500-169-diesel", nothing), made("cab-17500-169-4x4-diesel", nothing)
	says := quote.WhyPrice(road, mountain)
	assert.Contains(t, says, "chassis +8,700.00", "80,500 in the place of 71,800")
	assert.NotContains(t, says, "80,500")
	assert.Contains(t, says, "more: ")
	back := quote.WhyPrice(mountain, road)
	assert.Contains(t, back, "chassis −8,700.00")
	assert.Contains(t, back, "less: ")
	assert.Equal(t, "It costs the same.", quote.WhyPrice(road, road))

	three := made("cab-17500-169-4x4-diesel", func(d *quote.Draft) { d.Terms.Units = 3 })
	assert.Regexp(t,
		`^It costs USD \S+ more, for 3 units instead of 1; one unit costs USD \S+ more: chassis \+8,700.00;`,
		quote.WhyPrice(road, three), "what one unit has more, not three of all")

	exempt := made("cab-16500-169-diesel", func(d *quote.Draft) { d.Terms.TaxExempt = true })
	require.NotEqual(t, road.Total(), exempt.Total())
	assert.Equal(t, "It costs the same before sales tax, from which only one of them is exempt.",
		quote.WhyPrice(road, exempt), "on the same basis of tax")
}

// Why a quote arrives later names what takes longer on the way to it.
func TestWhyDateNamesWhatTakesLonger(t *testing.T) {
	ed := quotetest.Demo(t)
	made := func(chassis string) *quote.Quote {
		q, err := quote.Compute(ed, quote.Begin(ed, chassis, "", quotetest.Today))
		require.NoError(t, err)
		return q
	}
	road, mountain := made("cab-16500-169-diesel"), made("cab-17500-169-4x4-diesel")
	require.True(t, road.Plan.EvenOdds.Before(mountain.Plan.EvenOdds))
	says := quote.WhyDate(road, mountain)
	assert.Regexp(t,
		regexp.MustCompile(`^It arrives \d+ calendar days later by the likely date \(50 %\): .*[Cc]hassis.* \+\d+ working days`), says)
	assert.Contains(t, quote.WhyDate(mountain, road), "earlier by the likely date (50 %): ")
	assert.Equal(t, "It arrives on the same day by the likely date (50 %).", quote.WhyDate(road, road))

	// Of the van the day hangs on its chassis, of the cutaway on a place in the plant.
	van, cutaway := made("van-9900-148-4x4"), made("cut-12500-138-gas")
	assert.Contains(t, quote.WhyDate(van, cutaway), "earlier by the likely date (50 %): the later one waits for "+
		"“Chassis arrives”.")
	// The chassis of both arrive; that of one is waited for. What it takes more is said, not all that it takes.
	days := regexp.MustCompile(`Chassis arrives \+(\d+) working`).FindStringSubmatch(
		quote.WhyDate(made("cut-14500-158-gas"), made("cut-14500-158-4x4")))
	require.NotNil(t, days)
	n, err := strconv.Atoi(days[1])
	require.NoError(t, err)
	assert.Less(t, n, 40)

	// The chassis comes 8 working days later, and the unit 6 calendar days: both are said, and why they differ.
	gas := made("cut-14500-158-gas")
	require.Less(t, gas.Plan.EvenOdds.DaysUntil(road.Plan.EvenOdds), 8)
	assert.Regexp(t, regexp.MustCompile(
		`Chassis arrives \+8 working days; other work or waiting offsets part of it\.$`), quote.WhyDate(gas, road))
	assert.Regexp(t, regexp.MustCompile(
		`Chassis arrives −8 working days; other work or waiting offsets part of it\.$`), quote.WhyDate(road, gas))

	d := road.Draft.Clone()
	d.Unit.OrderOn = d.Unit.OrderOn.AddDays(21)
	late, err := quote.Compute(ed, d)
	require.NoError(t, err)
	assert.True(t, strings.Contains(quote.WhyDate(road, late), "ordered 21 days later"))
}
