package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/web/assets/catalogue"
)

// modelOf is a unit with just these picks.
func modelOf(t *testing.T, chassis, module string, picks ...string) *body.Model {
	t.Helper()
	u := &config.Unit{Chassis: chassis, Body: module}
	for _, id := range picks {
		u.Picks = append(u.Picks, config.Pick{Option: id, Qty: 1})
	}
	m := body.Of(demoCat(), u)
	require.NotNil(t, m)
	return m
}

// demoCat is the demonstration catalogue, read once.
var demoCat = sync.OnceValue(func() *config.Catalogue {
	cat, err := config.Read(catalogue.Demo)
	if err != nil {
		panic(err)
	}
	return cat
})

// holds reports whether a point is inside a closed outline.
func holds(outline []Point, p Point) bool {
	in := false
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if a.V > p.V != (b.V > p.V) && p.U < a.U+(b.U-a.U)*(p.V-a.V)/(b.V-a.V) {
			in = !in
		}
	}
	return in
}

// What the body hides is drawn below it, from ahead, from behind and from above.
func TestTheBodyHidesWhatIsBehindIt(t *testing.T) {
	m := modelOf(t, "cut-14500-158-gas", "mod-153-72", "wf-bar", "rbd-plate", "ws-three")
	for _, x := range []struct{ view, option string }{{"rear", "wf-bar"}, {"rear", "rbd-plate"},
		{"front", "ws-three"}} {
		t.Run(x.view+" "+x.option, func(t *testing.T) {
			v := ViewOf(m, x.view)
			hull := slices.IndexFunc(v.Groups, func(g Group) bool { return g.ID == "shell" })
			seen := 0
			for i, g := range v.Groups {
				if g.Option == x.option {
					seen++
					assert.Less(t, i, hull)
				}
			}
			assert.Positive(t, seen)
		})
	}
}

// One color meets the next at one height on the side and on the end beside it, and the roof
// has the color that is uppermost.
func TestPaintGoesRoundTheCorner(t *testing.T) {
	m := modelOf(t, "cut-14500-158-gas", "mod-153-72", "paint-three-tone")
	paint := m.Look.Paint
	require.NotNil(t, paint)
	require.NotZero(t, paint.RiseIn)
	// top of what has a color in a view, near a place of it
	top := func(view, color string, at float64) float64 {
		high := math.Inf(-1)
		v := ViewOf(m, view)
		for _, s := range v.shapes() {
			if s.Layer != layerEdge || s.Tint != color {
				continue
			}
			for _, p := range s.Along {
				if math.Abs(p.U-at) < 6 {
					high = math.Max(high, p.V)
				}
			}
		}
		return high
	}
	for _, color := range paint.Colors[1:] {
		rear := top("rear", color, m.Half)
		assert.InDelta(t, top("street", color, m.Rear), rear, 0.5, "%s at the rear corner", color)
		assert.InDelta(t, top("curb", color, -m.Rear), rear, 0.5, "%s at the other rear corner", color)
		assert.Less(t, top("front", color, m.Half), rear, "%s rises to the rear", color)
	}
	roof := ViewOf(m, "roof")
	for _, s := range roof.shapes() {
		left, right, _, _ := (&View{Groups: []Group{{Shapes: []Shape{s}}}}).Bounds()
		if s.Layer == layerEdge && left >= m.Front-0.1 && right <= m.Rear+0.1 && right-left > 100 {
			assert.Equal(t, paint.Colors[0], s.Tint, "the roof")
		}
	}
}

// The mirrors that are chosen stand in place of the chassis' own.
func TestMirrorsAreNotDrawnTwice(t *testing.T) {
	for _, view := range []string{"street", "front", "roof"} {
		count := func(m *body.Model) (n int) {
			for _, g := range ViewOf(m, view).Groups {
				if g.ID == "shell" {
					n = len(g.Shapes)
				}
			}
			return n
		}
		bare := count(modelOf(t, "med-19500-175-diesel", "mod-170-74"))
		with := count(modelOf(t, "med-19500-175-diesel", "mod-170-74", "mir-heated"))
		assert.Equal(t, map[string]int{"street": 1, "front": 2, "roof": 2}[view], bare-with, view)
	}
}

// Lamps on the front of a raised roof are on that roof, and the sliding door is there.
func TestAVanCarriesWhatIsOnIt(t *testing.T) {
	for _, x := range [][2]string{{"van-9500-148-gas", "van-60"}, {"van-9900-148-4x4", "van-72"}} {
		t.Run(x[1], func(t *testing.T) {
			m := modelOf(t, x[0], x[1], "wf-five")
			outline := cabSide(m)[0].Along
			lamps := 0
			for i := range m.Parts {
				if p := &m.Parts[i]; p.Option == "wf-five" {
					lamps++
					assert.True(t, holds(outline, Point{p.X1, (p.Z0 + p.Z1) / 2}), "%s hangs in the air", p.ID)
				}
			}
			assert.Equal(t, 5, lamps)
			v := ViewOf(m, "curb")
			assert.True(t, slices.ContainsFunc(v.Groups, func(g Group) bool { return g.ID == "door/side" }))
		})
	}
}

// A window in a door is within its leaf, on every unit; no low compartment reaches into a
// wheel opening.
func TestOpeningsKeepClear(t *testing.T) {
	cat := demoCat()
	for i := range cat.Chassis {
		for k := range cat.Bodies {
			c, b := &cat.Chassis[i], &cat.Bodies[k]
			if (c.Cab == "van") != (b.Kind == "van") || len(body.Bare(c, b).Collisions()) > 0 {
				continue
			}
			where := fmt.Sprintf("%s with %s", c.ID, b.ID)
			m := modelOf(t, c.ID, b.ID, "swin-fixed", "rwin-fixed")
			opening := m.RearWheel.Radius + body.OpeningIn
			for n := range m.Parts {
				p := &m.Parts[n]
				x, y, _ := p.Center()
				switch {
				case p.Kind == "window" && p.Face == config.FaceRear:
					assert.True(t, math.Abs(y) < m.RearDoorHalf && p.Z1 <= m.RearDoorHead &&
						math.Max(p.Y1, -p.Y0) <= m.RearDoorHalf, "%s: %s", where, p.Label)
				case p.Kind == "window" && p.Face == config.FaceCurb && x < m.DoorTo:
					assert.LessOrEqual(t, p.Z1, m.DoorHead, "%s: %s", where, p.Label)
				case p.Kind == "cabinet":
					assert.GreaterOrEqual(t, p.Z0, m.Floor-0.01, "%s: %s stands in the floor", where, p.Label)
				case p.Kind == "compartment" && b.Kind == "module":
					far := math.Max(math.Max(p.X0-m.RearAxle, m.RearAxle-p.X1), 0)
					high := math.Max(p.Z0-m.RearWheel.Radius, 0)
					assert.GreaterOrEqual(t, math.Hypot(far, high), opening-0.01, "%s: %s", where, p.Label)
				}
			}
		}
	}
}

// Cots and wheels that differ are drawn differently.
func TestModelsOfAKindDiffer(t *testing.T) {
	for _, x := range []struct {
		view string
		list []string
	}{{"floor", []string{"cot-none", "cot-manual", "cot-power", "cot-power-wide", "cot-incubator"}},
		{"street", []string{"whl-steel", "whl-liners", "whl-aluminium"}},
		{"rear", []string{"rdoor-flush", "rdoor-tall"}}, {"curb", []string{"sdoor-30", "sdoor-36"}}} {
		seen := map[string]string{}
		for _, id := range x.list {
			m := modelOf(t, "cut-14500-158-gas", "mod-153-72", "mount-power", id)
			text := Picture(ViewOf(m, x.view), "said", "", nil).String()
			if id == "cot-manual" || id == "cot-none" { // an unknown cot is drawn as a plain one
				continue
			}
			assert.Empty(t, seen[text], "%s looks like it", id)
			seen[text] = id
		}
	}
	wide := Picture(ViewOf(modelOf(t, "cut-14500-158-gas", "mod-153-72", "mount-latch", "cot-wide"), "floor"), "s", "",
		nil)
	plain := Picture(ViewOf(modelOf(t, "cut-14500-158-gas", "mod-153-72", "mount-latch", "cot-manual"), "floor"), "s",
		"",
		nil)
	assert.NotEqual(t, plain.String(), wide.String())
}

// What is lettered on a unit is to be read, and a star is whole: no lamp, window or camera of
// any option stands over it, and each is on the body.
func TestMarksAreSeenWhole(t *testing.T) {
	cat := demoCat()
	over := map[string]bool{"lamp": true, "bar": true, "strip": true, "window": true, "camera": true, "panel": true,
		"vent": true, "unit": true, "mast": true}
	for i := range cat.Chassis {
		for k := range cat.Bodies {
			ch, b := &cat.Chassis[i], &cat.Bodies[k]
			if (ch.Cab == "van") != (b.Kind == "van") {
				continue
			}
			m := body.Bare(ch, b)
			all := slices.Clone(m.Parts)
			for n := range cat.Options {
				all = append(all, m.PartsOf(&cat.Options[n])...)
			}
			for _, p := range all {
				if p.Kind != "star" && p.Kind != "lettering" {
					continue
				}
				w := wayOf(p.Face)
				f := w.flat(p.Box)
				if p.Face == config.FaceFront || p.Face == config.FaceRear {
					assert.LessOrEqual(t, math.Max(f.u1, -f.u0), math.Max(m.Half, m.CabHalf), "%s on %s: %s", b.ID, ch.ID, p.ID)
				}
				for _, q := range all {
					haz := strings.HasPrefix(q.Option, "haz-") // on bodies of that kind alone, which have no star
					if q.Face != p.Face || !over[q.Kind] || haz && (b.ID != "hazmat-164" || p.Kind == "star") {
						continue
					}
					g := w.flat(q.Box)
					apart := f.u1 <= g.u0+0.3 || g.u1 <= f.u0+0.3 || f.v1 <= g.v0+0.3 || g.v1 <= f.v0+0.3
					assert.True(t, apart, "%s with %s: %s stands over %s: %v, %v", ch.ID, b.ID, q.ID, p.ID, g, f)
				}
			}
		}
	}
}

// Tires that stand out of a narrow body have flares over them, as wide as the tires.
func TestTiresBesideANarrowBodyAreCovered(t *testing.T) {
	m := modelOf(t, "cut-12500-138-gas", "mod-120-64")
	require.Greater(t, m.RearWheel.Outer, m.Half)
	flares := 0
	for _, p := range m.Parts {
		if p.Kind == body.KindFlare {
			flares++
			assert.InDelta(t, m.RearWheel.Outer, math.Max(p.Y1, -p.Y0), 0.01)
		}
	}
	assert.Equal(t, 2, flares)
	wide := modelOf(t, "cut-14500-158-gas", "mod-153-72")
	require.Greater(t, wide.RearWheel.Outer, wide.Half)
	assert.False(t, slices.ContainsFunc(wide.Parts, func(p body.Part) bool { return p.Kind == body.KindFlare }),
		"none where the trim of the wheel opening covers them")
}

// The fixed window opposite the entry door is in the street side, and seen from within.
func TestTheWindowOppositeTheDoorIsDrawn(t *testing.T) {
	for _, id := range []string{"swin-slide", "swin-fixed"} {
		m := modelOf(t, "cut-14500-158-gas", "mod-153-72", id)
		for _, view := range []string{"street", "street-wall", "curb", "curb-wall"} {
			n := 0
			for _, g := range ViewOf(m, view).Groups {
				if g.Option == id {
					n++
				}
			}
			assert.Equal(t, 1, n, "%s from %s", id, view)
		}
	}
}
