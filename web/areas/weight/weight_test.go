package weight

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/weight"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
)

// Every load stands under its own head in the tables of Weight.
func TestLoadsStandUnderTheirHeads(t *testing.T) {
	p := &Page{Page: pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false)}
	g := &p.Q.Weight.Gross
	g.TotalLb, g.FrontLb, g.RearLb, g.LeftLb, g.RightLb, g.XIn, g.ZIn = 13001, 4502, 8499, 6603, 6398, 105, 41
	g.Wheels = []weight.Wheel{
		{Pos: "LF", Lb: 2301, Tires: 1, PerTireLb: 2301, RatedLb: 3042}, {Pos: "RF", Lb: 2202, Tires: 1, PerTireLb: 2202, RatedLb: 3042},
		{Pos: "LR", Lb: 4304, Tires: 2, PerTireLb: 2152, RatedLb: 5556}, {Pos: "RR", Lb: 6000, Tires: 2, PerTireLb: 3000, RatedLb: 5556},
	}
	html := conditions(p).String()
	heads := pagetest.RowOf(t, html, "")
	row := pagetest.RowOf(t, html, g.Label)
	require.Len(t, heads, len(row))
	for i, head := range heads {
		want := map[string]string{"Total": "13,001 lb", "Front axle": "4,502 lb", "Rear axle": "8,499 lb",
			"Street side": "6,603 lb", "Curb side": "6,398 lb"}[head]
		if want != "" {
			assert.Equal(t, want, row[i], head)
		}
	}
	assert.Contains(t, row[6], "105.0 in", "behind the front axle")
	assert.Contains(t, row[7], "41.0 in", "its height")
	for name, want := range map[string][]string{
		"Left front (street side)": {"2,301 lb", "1", "2,301 lb", "3,042 lb", "+741 lb"},
		"Right front (curb side)":  {"2,202 lb", "1", "2,202 lb", "3,042 lb", "+840 lb"},
		"Left rear (street side)":  {"4,304 lb", "2", "2,152 lb", "5,556 lb", "+1,252 lb"},
		"Right rear (curb side)":   {"6,000 lb", "2", "3,000 lb", "5,556 lb", "-444 lb"},
	} {
		t.Run(name, func(t *testing.T) {
			row := pagetest.RowOf(t, strings.ReplaceAll(html, "−", "-"), name)
			load, doubt, _ := strings.Cut(row[1], "± ")
			assert.Equal(t, want, append([]string{load}, row[2:]...))
			assert.Regexp(t, `^[1-9]\d* lb$`, doubt)
		})
	}
}
