package drawing

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page"
	"boxwright/web/page/pagetest"
)

// Each wheel end's load stands beside that wheel: at its axle, on its side.
func TestWheelLoadsStandBesideTheirWheels(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", true)
	o := outlineOf(p.Q)
	wheels := []weight.Wheel{{Pos: "LF", Lb: 2101}, {Pos: "RF", Lb: 2202}, {Pos: "LR", Lb: 4303}, {Pos: "RR", Lb: 4404}}
	p.Q.Weight.Gross.Wheels = wheels
	svg := Plan(p).String()
	middle := o.width/2 + 24
	for i, c := range []struct {
		name   string
		x      float64
		street bool
	}{{"left front", 0, true}, {"right front", 0, false}, {"left rear", o.wheelbase, true}, {"right rear", o.wheelbase,
		false}} {
		t.Run(c.name, func(t *testing.T) {
			shown := regexp.QuoteMeta(p.Show(float64(wheels[i].Lb), quantity.Pound))
			at := regexp.MustCompile(`<text class="strong mid" x="([-0-9.]+)" y="([-0-9.]+)">` + shown +
				`</text>`).FindStringSubmatch(svg)
			require.NotNil(t, at, "the load is lettered")
			x, err := strconv.ParseFloat(at[1], 64)
			require.NoError(t, err)
			y, err := strconv.ParseFloat(at[2], 64)
			require.NoError(t, err)
			assert.InDelta(t, c.x, x, o.wheelbase/4, "at its axle")
			assert.Equal(t, c.street, y > middle, "the street side is drawn below")
			assert.Contains(t, svg, wheels[i].Pos+" wheel end "+p.Show(float64(wheels[i].Lb), quantity.Pound))
		})
	}
}

// What a hazmat unit is built for stands in its plan: the wall between clean and dirty end
// with its opening, the desk and the shower, each named once.
func TestPlanShowsWhatIsBuiltIn(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "cut-14500-158-gas", "hazmat-164", quotetest.Today)
	for _, id := range []string{"haz-bulkhead", "haz-desk", "haz-shower"} {
		d.Unit.Set(config.Pick{Option: id, Qty: 1})
	}
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	p := &page.Page{Q: q}
	svg := Plan(p).String()
	o, drawn := outlineOf(p.Q), 0
	for _, part := range p.Q.Space.Model.Parts {
		if !furniture(&part) {
			continue
		}
		drawn++
		assert.Contains(t, svg, page.Rect("thin", part.X0, o.width/2+24-part.Y1, part.X1-part.X0,
			part.Y1-part.Y0).String()[len(`<rect class="thin"`):], part.ID)
		assert.GreaterOrEqual(t, strings.Count(svg, part.Label), 2, "%s is in the words below and in the name heard", part.ID)
	}
	assert.GreaterOrEqual(t, drawn, 5, "shower and tank, desk, bulkhead and its opening")
}

// The letters of compartments that stand one above another, and of gear fitted beside them, keep
// clear of each other on a unit of every kind.
func TestLettersOfThePlanKeepClear(t *testing.T) {
	ed := quotetest.Demo(t)
	for _, duty := range ed.Cat.Duties {
		d := quote.Begin(ed, "", "", quotetest.Today)
		d.Needs.Duty = duty.ID
		s := propose.Propose(ed, d)
		require.NotEmpty(t, s.Proposals, duty.ID)
		for i := range s.Proposals {
			p := &page.Page{Q: s.Proposals[i].Quote}
			legible(t, Plan(p).String(), duty.ID+", "+s.Proposals[i].Title)
		}
	}
}

// A seat is drawn with its back where who sits there leans: a team seat and a bench at the
// wall, a crew seat behind the cab against its front wall.
func TestSeatsHaveTheirBacksBehindWhoSits(t *testing.T) {
	for _, c := range []struct {
		name  string
		inCab bool
		y     float64
		back  side
	}{{"driver", true, -20, rearward}, {"driver of a wide cab", true, -30, rearward}, {"bench at the curb side", false,
		33, curbward},
		{"seat at the street side", false, -26, streetward}, {"crew behind the cab", false, 13.5, forward},
		{"attendant", false, -2, forward}} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.back, backOf(c.inCab, c.y)) })
	}
}

// The plan is as wide as the unit's figure says, tires that stand out of the body among it,
// and what has no gear assigned is told beside the gear that counts all the same.
func TestThePlanSaysWhatTheFiguresSay(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.Begin(ed, "med-26000-189-diesel", "hazmat-164", quotetest.Today)
	d.Unit.Set(config.Pick{Option: "dp-hazmat", Qty: 1})
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	p := pagetest.Of(t, ed, "cut-14500-158-gas", false)
	p.Q = q
	width, _ := q.Figure("space.width")
	assert.InDelta(t, 95.2, width.Value, 0.05)
	assert.Contains(t, width.Label, "over the rear tires")
	svg := Plan(p).String()
	assert.Contains(t, svg, ">"+p.Show(width.Value, width.Unit)+" wide<")
	assert.Contains(t, svg, "<p>The width is over the rear tires; the body is 95.0 in wide. Loads stand")
	assert.NotContains(t, svg, "empty")
	counted := 0.0
	for _, x := range q.Weight.Items {
		if x.ID == weight.AllowanceItem {
			counted = float64(x.Lb)
		}
	}
	said := page.Held("Counted at full load, in the middle of the module: loose equipment, the usual list for hazardous " +
		"materials response, " + p.Show(counted, quantity.Pound) + ".")
	assert.Regexp(t, `No gear assigned yet: A, B, [A-Z, ]+\. `+regexp.QuoteMeta(said), svg)
	_, given := q.Figure("space.stowed")
	assert.False(t, given, "of no gear no share of the room is in use")
}
