package quote

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
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
