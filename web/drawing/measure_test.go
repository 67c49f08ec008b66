package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
)

// extent is how wide and how high a group is in a view.
func extent(v View, id string) (wide, high float64, ok bool) {
	for _, g := range v.Groups {
		if g.ID == id {
			left, right, low, top := (&View{Groups: []Group{g}}).Bounds()
			return right - left, top - low, len(g.Shapes) > 0
		}
	}
	return 0, 0, false
}

// Areas and volumes measured in the drawing are those of the space sheet, on every chassis:
// the room, each compartment, and the bench.
func TestWhatIsMeasuredInTheDrawingIsWhatSpaceSays(t *testing.T) {
	ed := quotetest.Demo(t)
	rooms, compartments, benches := 0, 0, 0
	for i := range ed.Cat.Chassis {
		id := ed.Cat.Chassis[i].ID
		t.Run(id, func(t *testing.T) {
			q := pagetest.Of(t, ed, id, true).Q
			m := q.Space.Model
			floor := ViewOf(m, "floor")
			plan, section := wallsTop(m), room(-m.Half, m.Half, m.Wall, m)
			inner := func(list []Shape) (wide, high float64) { // its lining
				left, right, low, top := (&View{Groups: []Group{{Shapes: list[1:]}}}).Bounds()
				return right - left, top - low
			}
			long, across := inner(plan)
			_, high := inner(section)
			if f, ok := q.Figure("space.interior"); ok && !m.Van {
				rooms++
				assert.InDelta(t, f.Value, long*across*high/1728, 0.01*f.Value, "the room, ft3")
			}
			outside := 0.0
			for i, u := range q.Space.Compartments {
				wide, deep, ok := extent(floor, "comp/"+u.ID)
				require.True(t, ok, u.ID)
				tall := 0.0
				for _, side := range []string{"street", "curb", "street-wall", "curb-wall", "bulkhead"} {
					if _, h, there := extent(ViewOf(m, side), "comp/"+u.ID); there {
						tall = h
						break
					}
				}
				compartments++
				drawn := wide * deep * tall / 1728
				if len(u.Gear) == 0 { // else what is fitted takes of it
					assert.InDelta(t, float64(u.Ft3), drawn, 0.01, "%s, ft3", u.Label)
				}
				assert.Equal(t, m.Compartments[i].ID, u.ID)
				if u.Side != "inside" && u.Holds == nil {
					outside += drawn
				}
			}
			all, ok := q.Figure("space.compartments")
			assert.True(t, ok)
			assert.InDelta(t, all.Value, outside, 0.01, "all outside compartments, ft3")
			long, has := 0.0, false
			for k := range m.Parts {
				if p := &m.Parts[k]; p.Kind == "bench" {
					long, across, has = extent(floor, p.ID)
				}
			}
			if f, ok := q.Figure("space.bench"); ok && has {
				benches++
				assert.InDelta(t, f.Value, long, 0.01, "bench, in")
				w, _ := q.Figure("space.bench-width")
				assert.InDelta(t, w.Value, across, 0.01, "its width, in")
			}
		})
	}
	assert.Greater(t, rooms, 5)
	assert.Greater(t, compartments, 30)
	assert.Positive(t, benches)
}
