package quote

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
)

// A change order lists the station that has no work any more, and the one that had none.
func TestAStationThatIsEmptied(t *testing.T) {
	full := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false).Q
	cat := full.Edition.Cat
	chosen := func(no string) bool { return cat.OptionByID(no) != nil }
	stations := full.Stations()
	i := slices.IndexFunc(stations, func(s quote.Station) bool {
		return s.ID != "" && !slices.ContainsFunc(s.Lines, func(l quote.StationLine) bool { return !chosen(l.No) })
	})
	require.GreaterOrEqual(t, i, 0, "a station at which only options are worked on")
	station, bare := stations[i], *full
	bare.Draft = full.Draft.Clone()
	bare.Draft.Unit.Picks = slices.DeleteFunc(bare.Draft.Unit.Picks, func(p config.Pick) bool {
		return slices.ContainsFunc(station.Lines, func(l quote.StationLine) bool { return l.No == p.Option })
	})
	row := "<th scope=\"row\">" + station.Label + "</th>"
	drawn := stationsChanged(full, &bare, "").String()
	assert.Contains(t, drawn, row)
	assert.Contains(t, drawn, "no work now")
	drawn = stationsChanged(&bare, full, "").String()
	assert.Contains(t, drawn, row)
	assert.Contains(t, drawn, ">no work<")
	assert.NotContains(t, drawn, "not given")
}

// A change order of several units tells where it leaves each of them, by its name.
func TestAChangeOrderNamesEachUnit(t *testing.T) {
	ed := quotetest.Demo(t)
	d := pagetest.Of(t, ed, "cut-14500-158-gas", false).Q.Draft.Clone()
	d.Title = "Medic 1"
	require.True(t, d.Duplicate())
	d.Title = "Medic 2"
	d.WorkOn(0)
	was, err := quote.Compute(ed, d)
	require.NoError(t, err)
	later := d.Clone()
	later.WorkOn(1)
	require.True(t, later.Duplicate())
	later.Title = "Medic 3"
	later.WorkOn(0)
	p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false)}
	p.Q, err = quote.Compute(ed, later)
	require.NoError(t, err)
	frozen := &link.Frozen{Total: was.Total()}
	p.Trust = &Trust{Before: &Before{Q: was, Frozen: frozen}}
	drawn := changePaper(p).String()
	for i, name := range []string{"1. Medic 1", "2. Medic 2", "3. Medic 3"} {
		row := pagetest.RowOf(t, drawn, name)
		assert.Regexp(t, `20\d\d.*20\d\d.*lb`, strings.Join(row[1:], " "))
		assert.Equal(t, i == 2, strings.Contains(row[1], "new on this quote"), name)
	}
	assert.NotContains(t, drawn, "of 1. Medic 1")
	assert.Contains(t, drawn, "At the plant hours and days stay as they were for 1. Medic 1")
}

// A change order whose first unit went tells of the others what they were before.
func TestAChangeOrderFollowsEachUnit(t *testing.T) {
	ed := quotetest.Demo(t)
	d := pagetest.Of(t, ed, "cut-14500-158-gas", false).Q.Draft.Clone()
	d.Title = "Medic 1"
	require.True(t, d.Duplicate())
	d.Title = "Medic 2"
	d.Unit.Picks = slices.DeleteFunc(d.Unit.Picks, func(p config.Pick) bool { return p.Option == "cot-manual" })
	d.Unit.Set(config.Pick{Option: "cot-power", Qty: 1})
	was, err := quote.Compute(ed, d)
	require.NoError(t, err)
	later := d.Clone()
	later.Remove(0)
	p := &Page{Page: pagetest.Of(t, ed, "cut-14500-158-gas", false)}
	p.Q, err = quote.Compute(ed, later)
	require.NoError(t, err)
	p.work = p.Q
	p.Trust = &Trust{Before: &Before{Q: was, Frozen: &link.Frozen{Total: was.Total()}}}
	drawn := changePaper(p).String()
	row := pagetest.RowOf(t, drawn, "Medic 2")
	assert.Contains(t, row[3], "as before", "the payload is that of the same unit")
	assert.Equal(t, []string{"Unit 1", "1. Medic 1", "–"}, pagetest.RowOf(t, drawn, "Unit 1"))
	assert.NotContains(t, drawn, "Powered cot, 130 lb</td>", "which it had")
	assert.NotContains(t, drawn, "Margins")
	assert.Contains(t, changedWork(p).String(), "No work and no circuit changed", "nor anything for the plant")
	assert.Empty(t, sheetsOf(p)[0].Notes, "nor is anything left out of the drawings")
}
