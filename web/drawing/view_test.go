package drawing

import (
	"bufio"
	"bytes"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
)

// without is a view less what some sizes leave out.
func without(v View, skip func(Group) bool) *View {
	out := View{}
	for _, g := range v.Groups {
		if !skip(g) {
			out.Groups = append(out.Groups, g)
		}
	}
	return &out
}

// What is drawn is as long, as wide and as high as the figures say, on every chassis.
func TestViewsMeasureWhatTheFiguresSay(t *testing.T) {
	ed := quotetest.Demo(t)
	for i := range ed.Cat.Chassis {
		id := ed.Cat.Chassis[i].ID
		t.Run(id, func(t *testing.T) {
			m := pagetest.Of(t, ed, id, true).Q.Space.Model
			o := m.Overall()
			kinds := map[string]string{}
			for _, p := range m.Parts {
				kinds[p.ID] = p.Kind
			}
			left, right, _, high := without(ViewOf(m, "street"), func(g Group) bool {
				return kinds[g.ID] == "antenna"
			}).Bounds()
			assert.InDelta(t, float64(o.LengthIn), right-left, 0.01, "length")
			assert.InDelta(t, float64(o.HeightIn), high, 0.01, "height")
			left, right, _, high = without(ViewOf(m, "rear"), func(g Group) bool {
				return kinds[g.ID] == "antenna" || kinds[g.ID] == "mirror"
			}).Bounds()
			assert.InDelta(t, float64(o.WidthIn), right-left, 0.01, "width")
			assert.InDelta(t, float64(o.HeightIn), high, 0.01, "height from behind")
			for _, way := range ways {
				text := Picture(ViewOf(m, way.id), "said", "", nil).String()
				for _, bad := range []string{"NaN", "Inf"} {
					assert.NotContains(t, text, bad, way.id)
				}
			}
		})
	}
}

// Each option that has a place is seen from somewhere, where and as large as that place.
func TestWhatHasAPlaceIsSeen(t *testing.T) {
	ed := quotetest.Demo(t)
	placed := 0
	for i := range ed.Cat.Options {
		o := &ed.Cat.Options[i]
		if len(o.Places) == 0 {
			continue
		}
		placed++
		t.Run(o.ID, func(t *testing.T) {
			u := &config.Unit{Chassis: "cut-14500-158-gas", Body: "mod-146-72",
				Picks: []config.Pick{{Option: o.ID, Qty: 1}}}
			m := body.Of(ed.Cat, u)
			require.NotNil(t, m)
			boxes := map[string]body.Box{}
			for _, p := range m.Parts {
				boxes[p.ID] = p.Box
			}
			seen := false
			for _, way := range ways {
				v := ViewOf(m, way.id)
				for _, g := range v.Groups {
					if g.Option != o.ID || len(g.Shapes) == 0 || way.inside {
						seen = seen || g.Option == o.ID
						continue
					}
					seen = true
					left, right, low, high := (&View{Groups: []Group{g}}).Bounds()
					f := way.flat(boxes[g.ID])
					for k, want := range []float64{f.u0, f.u1, f.v0, f.v1} {
						assert.InDelta(t, want, []float64{left, right, low, high}[k], 0.01, "%s, %s", way.id, g.ID)
					}
				}
			}
			assert.True(t, seen)
			for _, at := range o.Places {
				if slices.ContainsFunc(ways, func(w way) bool { return w.id == at.Face && !w.inside }) {
					v := ViewOf(m, at.Face)
					assert.True(t, slices.ContainsFunc(v.Groups, func(g Group) bool { return g.Option == o.ID }),
						"it is seen square on from the %s", at.Face)
				}
			}
		})
	}
	assert.Greater(t, placed, 50)
}

// A bumper that stands 12 in ahead makes the outline longer, more lamps more shapes.
func TestWhatIsChosenShows(t *testing.T) {
	ed := quotetest.Demo(t)
	of := func(picks ...string) View {
		u := &config.Unit{Chassis: "cut-14500-158-gas", Body: "mod-146-72"}
		for _, id := range picks {
			u.Picks = append(u.Picks, config.Pick{Option: id, Qty: 1})
		}
		return ViewOf(body.Of(ed.Cat, u), "street")
	}
	longest, bare := "", of()
	left, right, _, _ := bare.Bounds()
	for i := range ed.Cat.Options {
		o := &ed.Cat.Options[i]
		for _, at := range o.Places {
			v := of(o.ID)
			if l, r, _, _ := v.Bounds(); at.Kind == "bumper" && r-l > right-left+6 {
				longest = o.ID
			}
		}
	}
	assert.NotEmpty(t, longest, "a bumper of the demonstration stands ahead")
}

// entity of a DXF file: its type, layer, and its numbers by code.
type entity struct {
	kind, layer string
	at          map[int][]float64
}

// readDXF reads the entities by the rules of the format: a code on a line, its value
// on the next.
func readDXF(t *testing.T, file []byte) (list []entity) {
	t.Helper()
	lines := bufio.NewScanner(bytes.NewReader(file))
	section, last := "", ""
	for lines.Scan() {
		code, err := strconv.Atoi(strings.TrimSpace(lines.Text()))
		require.NoError(t, err)
		require.True(t, lines.Scan(), "a value follows each code")
		value := strings.TrimRight(lines.Text(), "\r")
		switch {
		case code == 0:
			last = value
			if section == "ENTITIES" && value != "ENDSEC" {
				list = append(list, entity{kind: value, at: map[int][]float64{}})
			}
			if value == "ENDSEC" {
				section = ""
			}
		case code == 2 && last == "SECTION":
			section = value
		case section == "ENTITIES" && code == 8:
			list[len(list)-1].layer = value
		case section == "ENTITIES" && code >= 10 && code < 60:
			v, err := strconv.ParseFloat(value, 64)
			require.NoError(t, err)
			list[len(list)-1].at[code] = append(list[len(list)-1].at[code], v)
		}
	}
	require.Equal(t, "EOF", last)
	return list
}

func TestTheSideLookedFromIsMarked(t *testing.T) {
	html := Looks("rear").String()
	assert.Equal(t, len(ways), strings.Count(html, `data-act="look"`))
	require.Equal(t, 1, strings.Count(html, "aria-current"))
	assert.Regexp(t, `id="look-rear"[^>]*aria-current`, html)
}

func TestDXFHoldsTheViewInTrueInches(t *testing.T) {
	m := pagetest.Of(t, quotetest.Demo(t), "med-26000-189-diesel", true).Q.Space.Model
	v := ViewOf(m, "street")
	list := readDXF(t, DXF(v, ViewOf(m, "rear")))
	left, right, low, high := v.Bounds()
	var l, r, lo, hi = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	shapes, circles, closed := 0, 0, false
	for _, e := range list {
		switch e.kind {
		case "POLYLINE", "CIRCLE":
			shapes++
		case "TEXT":
			if e.layer != "TITLE" {
				shapes++
			}
		}
		if e.kind == "CIRCLE" && e.at[10][0] < right-left {
			circles++
		}
		require.NotEqual(t, "", e.layer)
		if e.kind == "VERTEX" && e.at[10][0] <= right-left+1e-6 {
			l, r = math.Min(l, e.at[10][0]), math.Max(r, e.at[10][0])
			lo, hi = math.Min(lo, e.at[20][0]), math.Max(hi, e.at[20][0])
		}
	}
	closed = bytes.Contains(DXF(v), []byte("70\r\n1\r\n0\r\nVERTEX"))
	want := 0
	for _, view := range []View{v, ViewOf(m, "rear")} {
		for _, g := range view.Groups {
			want += len(g.Shapes)
		}
	}
	assert.Equal(t, want, shapes, "each shape is an entity")
	assert.GreaterOrEqual(t, circles, 8, "wheels")
	assert.True(t, closed)
	assert.InDelta(t, right-left, r-l, 0.01)
	assert.InDelta(t, high, hi, 0.01)
	assert.GreaterOrEqual(t, lo, low-0.01)
}

// Outlines are black or white, what is hidden is dashed; a text in a picture file keeps the
// size of its letters.
func TestFilesOfViewsReadAsDrawings(t *testing.T) {
	m := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", true).Q.Space.Model
	file := string(DXF(ViewOf(m, "street")))
	assert.Contains(t, file, "2\r\nEDGE\r\n70\r\n0\r\n62\r\n7\r\n6\r\nCONTINUOUS")
	assert.Contains(t, file, "2\r\nHIDDEN\r\n70\r\n0\r\n62\r\n8\r\n6\r\nDASHED")
	assert.Contains(t, file, "0\r\nLTYPE\r\n2\r\nDASHED")
	svg := SVG(ViewOf(m, "street"))
	_, style, _ := strings.Cut(svg, "<style>")
	style, _, _ = strings.Cut(style, "</style>")
	assert.NotEmpty(t, style)
	assert.NotRegexp(t, `font:|font-size`, style, "a size in the style would win over each text's own")
	page, err := os.ReadFile("../assets/style.css")
	require.NoError(t, err)
	for name, tone := range tones {
		assert.Contains(t, string(page), fmt.Sprintf(".t-%s { --tone: #%06x;", name, tone),
			"a file has the page's colors")
	}
}

func TestCoordinatesAreWrittenInTenths(t *testing.T) {
	for _, x := range []struct {
		v    float64
		want string
	}{{0, "0"}, {-0.04, "0"}, {0.05, "0.1"}, {-0.26, "-0.3"}, {12, "12"}, {-158.44, "-158.4"}, {99.96, "100"}} {
		t.Run(x.want, func(t *testing.T) { assert.Equal(t, x.want, string(appendTenths(nil, x.v))) })
	}
}

func partOf(m *body.Model, g Group) *body.Part {
	if i := slices.IndexFunc(m.Parts, func(p body.Part) bool { return p.ID == g.ID }); i >= 0 {
		return &m.Parts[i]
	}
	return nil
}

// Seams of doors run across what is painted on them, and rub rails end at the wheels.
func TestSeamsCrossStripesAndRailsEndAtWheels(t *testing.T) {
	m := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", false).Q.Space.Model
	for _, side := range []string{"street", "curb", "rear"} {
		t.Run(side, func(t *testing.T) {
			stripe, door := -1, -1
			for i, g := range ViewOf(m, side).Groups {
				switch p := partOf(m, g); {
				case p == nil:
				case p.Kind == "band" && p.Face != config.FaceRoof:
					stripe = i
				case door < 0 && (p.Kind == "door" || p.Kind == "compartment"):
					door = i
				}
			}
			require.GreaterOrEqual(t, stripe, 0, "the stripe is drawn")
			require.Less(t, stripe, door)
		})
	}
	axle, radius := m.RearAxle, m.RearWheel.Radius
	rails := 0
	for _, g := range ViewOf(m, "street").Groups {
		if p := partOf(m, g); p == nil || p.Kind != "rail" || p.Z0 > 2*radius {
			continue
		}
		for _, s := range g.Shapes {
			rails++
			for _, at := range s.Along {
				require.Greater(t, math.Abs(at.U-axle), radius/2, "no rail runs across the wheel")
			}
		}
		require.Len(t, g.Shapes, 2)
	}
	require.Positive(t, rails)
}

// A title longer than its view, as of a van's end walls, is not cut in a file of that view.
func TestTitlesFitTheirFiles(t *testing.T) {
	m := pagetest.Of(t, quotetest.Demo(t), "van-9500-148-gas", false).Q.Space.Model
	for _, v := range Views(m) {
		var left, top, wide, high float64
		_, box, _ := strings.Cut(SVG(v), `viewBox="`)
		_, err := fmt.Sscanf(box, "%g %g %g %g", &left, &top, &wide, &high)
		require.NoError(t, err)
		// Measured in DejaVu Sans Bold, a wide face: "Inside, toward the cab" is 12.7 times its size.
		require.Greater(t, wide-2*marginIn, 7*12.7/22*float64(len(v.Title)), v.Title)
	}
}
