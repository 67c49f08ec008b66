package drawing

import (
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page"
	"boxwright/web/page/pagetest"
)

// On no sheet of any unit does a text or a number cover another, or run off the paper, and
// each number in the drawing stands in the list.
func TestTheDrawingSetIsLegibleOnEveryChassis(t *testing.T) {
	ed := quotetest.Demo(t)
	for i := range ed.Cat.Chassis {
		id := ed.Cat.Chassis[i].ID
		t.Run(id, func(t *testing.T) {
			p := pagetest.Of(t, ed, id, true)
			set := Set(p, nil)
			require.GreaterOrEqual(t, len(set), 11, "and the cover")
			open := strings.HasPrefix(set[5].Title, "Compartments open")
			assert.NotEqual(t, open, set[4].Notes != nil, "either they are drawn, or the floor says that there are none")
			for _, x := range set {
				require.Positive(t, x.Scale, "%s: something is drawn on every sheet", x.Title)
				svg := x.Drawing().String()
				assert.LessOrEqual(t, x.Scale, smallest, "%s is too small to measure", x.Title)
				assert.NotContains(t, svg, "NaN")
				high := plateHigh
				for k, a := range x.boxes {
					assert.True(t, a[0] >= -1 && a[2] <= plateWide+1 && a[1] >= -1 && a[3] <= high+1,
						"%s: a label runs off the sheet: %v", x.Title, a)
					for _, b := range x.boxes[:k] {
						apart := a[0] >= b[2]-0.1 || b[0] >= a[2]-0.1 || a[1] >= b[3]-0.1 || b[1] >= a[3]-0.1
						assert.True(t, apart, "%s: labels cover each other: %v, %v", x.Title, a, b)
					}
				}
				numbered, said := 0, map[string]bool{}
				for _, l := range x.List {
					if l.N > 0 {
						numbered++
						assert.Contains(t, svg, `>`+strconv.Itoa(l.N)+`</text>`, x.Title)
					}
					if x.Title == "Consoles" {
						assert.False(t, said[l.Words()], "%s: twice in the list: %s", x.Title, l.Words())
					}
					said[l.Words()] = true
				}
				balloons := strings.Count(svg, `class="balloon"`)
				assert.True(t, balloons >= numbered && (balloons == numbered || strings.HasPrefix(x.Title, "Front and rear") ||
					x.Title == "Consoles"), "%s: %d balloons for %d numbers: only what two views show has two",
					x.Title, balloons, numbered)
			}
		})
	}
}

// What is measured by the bar is what the dimensions say: a module of so many inches is so
// long on paper.
func TestAPlateIsToItsScale(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", true)
	x := Set(p, nil)[0]
	svg := x.Drawing().String()
	k := 100 / float64(x.Scale)
	_, after, _ := strings.Cut(svg, `class="bar-dark"`)
	_, after, _ = strings.Cut(after, `d="M4 `)
	_, after, _ = strings.Cut(after, "L")
	wide, _, _ := strings.Cut(after, " ")
	bar, err := strconv.ParseFloat(wide, 64)
	require.NoError(t, err)
	assert.InDelta(t, 12*k, bar-4, 0.06, "a foot on the bar")
	m := p.Q.Space.Model
	assert.Contains(t, svg, p.Show(m.RearAxle, "in"), "the wheelbase")
	assert.Contains(t, svg, p.Show(m.Rear-m.Front, "in"), "the module")
}

// Everything written on a sheet's file is within its frame, long words and long lists too,
// and says what the sheet of the page says.
func TestASheetsFileKeepsToItsFrame(t *testing.T) {
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", true)
	x := Sheet{Plate: Set(p, nil)[4], N: 5, Total: 14, Note: strings.Repeat("note ", 30),
		Revisions: [][3]string{{"0", "Wed, Nov 25, 2026", "First drawing"}}}
	for i := range 8 {
		x.Cells = append(x.Cells, [2]string{"Label", strings.Repeat("W", 20*i) + " end"})
	}
	cover := x
	cover.Plate = Plate{Title: "Cover"}
	for i := range 80 {
		c := Chapter{Label: "Chapter " + strconv.Itoa(i)}
		for range 12 {
			c.Items = append(c.Items, [2]string{"Group", strings.Repeat("choice ", 6)})
		}
		cover.Chapters = append(cover.Chapters, c)
	}
	for _, sheet := range []Sheet{x, cover} {
		t.Run(sheet.Title, func(t *testing.T) {
			all := sheet.framed()
			for _, s := range all {
				for _, at := range s.Along {
					assert.True(t, at.U >= frameAt && at.U <= frameEnd && -at.V >= frameAt && -at.V <= footEnd, "%v", s)
				}
				if s.Set == fromLeft && s.Text != "" {
					wide := plateEm * s.Size * float64(utf8.RuneCountInString(s.Text))
					assert.LessOrEqual(t, s.Along[0].U+wide, frameEnd+1, s.Text)
				}
			}
			for _, l := range sheet.List {
				assert.True(t, strings.Contains(SheetsSVG(sheet), strings.Fields(l.Label)[0]), l.Label)
			}
		})
	}
	assert.True(t, strings.Contains(SheetsSVG(cover), "and more"))
	twice := SheetsSVG(x, cover)
	assert.Contains(t, twice[:200], `width="17.00in" height="22.00in"`)
	assert.False(t, strings.Contains(twice, "NaN"))
}

// Against the quote before only what stands otherwise is clouded.
func TestWhatChangedIsClouded(t *testing.T) {
	ed := quotetest.Demo(t)
	p := pagetest.Of(t, ed, "cut-14500-158-gas", true)
	for _, x := range Set(p, p.Q.Space.Model) {
		if x.Scale > 0 {
			assert.NotContains(t, x.Drawing().String(), `class="cloud"`, "nothing changed: %s", x.Title)
		}
	}
	was := *p.Q.Space.Model
	was.Parts = nil
	for _, x := range p.Q.Space.Model.Parts {
		if x.Kind != "step" {
			was.Parts = append(was.Parts, x)
		}
	}
	street := Set(p, &was)[0]
	assert.Contains(t, street.Drawing().String(), `class="cloud"`)
	changed := 0
	for _, l := range street.List {
		if l.Changed {
			changed++
		}
	}
	assert.Positive(t, changed)
	assert.Less(t, changed, len(street.List))
}

// A wall with nothing on it says so, and both walls say what is dashed.
func TestABareWallSaysThatItIsBare(t *testing.T) {
	ed := quotetest.Demo(t)
	d := quote.New(ed, "med-19500-175-diesel", "rescue-164", quotetest.Today)
	d.Unit.Picks = []config.Pick{{Option: "dp-rescue", Qty: 1}}
	d.Unit, _ = ed.Rules.Start(&d.Unit, nil)
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	bare := 0
	for _, x := range Set(&page.Page{Q: q}, nil) {
		if !strings.HasSuffix(x.Title, "side wall") {
			continue
		}
		assert.Contains(t, x.Notes, behindWall, x.Title)
		if x.List == nil {
			bare++
			assert.Contains(t, x.Notes, "Nothing is fixed to this wall.", x.Title)
		}
	}
	assert.Positive(t, bare)
}

// Balloons stand side by side in one row only where each is near what it numbers.
func TestBalloonsAreNearWhatTheyNumber(t *testing.T) {
	ends := frame2{0, 400, 0, 100}
	for _, c := range []struct {
		reason string
		at     []float64
		rows   int
	}{{"far apart", []float64{40, 100, 200, 300}, 1}, {"a few together", []float64{100, 110, 120}, 1},
		{"many in one place", []float64{100, 105, 110, 115, 120, 125, 130}, 2}} {
		t.Run(c.reason, func(t *testing.T) {
			d, high := &plate{}, map[float64]bool{}
			var list []balloon
			for i, x := range c.at {
				list = append(list, balloon{n: float64(i + 1), x: x})
			}
			d.row(list, ends, 0, -rowHigh)
			for _, s := range d.shapes {
				if s.Layer == "balloon" {
					high[s.Along[0].V] = true
				}
			}
			assert.Len(t, high, c.rows)
		})
	}
}

// What stands in an outside compartment is behind its door, and is no door itself.
func TestAMountIsBehindTheDoorOfItsCompartment(t *testing.T) {
	m := modelOf(t, "med-19500-175-diesel", "rescue-164", "rsq-struts", "rsq-rope", "rsq-stokes", "df-scba-brackets")
	for _, view := range []string{"street", "curb", "rear"} {
		for _, g := range ViewOf(m, view).Groups {
			assert.Empty(t, g.Option, "%s from %s", g.Label, view)
		}
	}
}

// A dimension that has no room between its arrows stands beside them, across and upright.
func TestADimensionIsClearOfItsArrows(t *testing.T) {
	for name, measure := range map[string]func(*plate, float64){
		"across":  func(d *plate, long float64) { d.measureAcross(100, 100+long, 80, 120, "12.0 in") },
		"upright": func(d *plate, long float64) { d.measureUp(100+long, 100, 80, 120, "12.0 in") },
	} {
		for _, long := range []float64{20, 45, 60, 200} {
			d := new(plate)
			measure(d, long)
			from, to := d.boxes[0][0], d.boxes[0][2]
			if name == "upright" {
				from, to = d.boxes[0][1], d.boxes[0][3]
			}
			within, apart := from >= 107 && to <= 100+long-7, to <= 100 || from >= 100+long
			assert.True(t, within || apart, "%s %v: from %v to %v", name, long, from, to)
		}
	}
}
