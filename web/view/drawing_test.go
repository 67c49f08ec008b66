package view

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
	"boxwright/web/assets/catalogue"
)

// today of every test.
var today = config.Date{Year: 2026, Month: 11, Day: 25}

func demo(t *testing.T) *quote.Edition {
	t.Helper()
	ed, err := quote.OpenEdition(catalogue.Demo)
	require.NoError(t, err)
	return ed
}

// pageOf is the page of a new unit on a chassis, with everything loose the
// catalogue knows aboard and stowed when loaded.
func pageOf(t *testing.T, ed *quote.Edition, chassis string, loaded bool) *Page {
	t.Helper()
	d := quote.Begin(ed, chassis, "", today)
	if loaded {
		for i := range ed.Cat.Equipment {
			d.Unit.Carried = append(d.Unit.Carried, config.Carried{Equipment: ed.Cat.Equipment[i].ID, Qty: 1})
		}
		as := standards.Assume(d.Unit.RuleSet, ed.Cat, &d.Unit)
		d.Unit.Carried = space.Suggest(ed.Cat, &d.Unit, func(u *config.Unit) space.Trim {
			g := weight.Weigh(ed.Cat, u, &as).Gross
			return space.Trim{FrontLb: g.FrontLb, RearLb: g.RearLb, LeftLb: g.LeftLb, RightLb: g.RightLb}
		})
	}
	q, err := quote.Compute(ed, d)
	require.NoError(t, err)
	return &Page{Q: q, State: &State{}}
}

// lettered is a text of a drawing with the space it takes on a narrow screen.
type lettered struct {
	words                    string
	left, top, right, bottom float64
}

var (
	svgText  = regexp.MustCompile(`<text([^>]*)>([^<]*)</text>`)
	viewBox  = regexp.MustCompile(`viewBox="([^"]*)"`)
	svgValue = regexp.MustCompile(`(\w+)="([^"]*)"`)
	aNumber  = regexp.MustCompile(`-?\d+(\.\d+)?`)
)

// labels of a picture and its frame.
func labels(t *testing.T, svg string) (list []lettered, frame [4]float64) {
	t.Helper()
	for i, v := range strings.Fields(viewBox.FindStringSubmatch(svg)[1]) {
		f, err := strconv.ParseFloat(v, 64)
		require.NoError(t, err)
		frame[i] = f
	}
	for _, m := range svgText.FindAllStringSubmatch(svg, -1) {
		at := map[string]string{}
		for _, a := range svgValue.FindAllStringSubmatch(m[1], -1) {
			at[a[1]] = a[2]
		}
		num := func(name string) float64 {
			f, err := strconv.ParseFloat(at[name], 64)
			require.NoError(t, err)
			return f
		}
		x, y := num("x"), num("y")
		wide := 0.58 * lettering * float64(utf8.RuneCountInString(m[2]))
		l := lettered{m[2], x, y - 0.75*lettering, x + wide, y}
		if strings.Contains(at["class"], "mid") {
			l.left, l.right = x-wide/2, x+wide/2
		}
		if strings.HasPrefix(at["transform"], "rotate") {
			l = lettered{m[2], x - 0.75*lettering, y - wide/2, x, y + wide/2}
		}
		list = append(list, l)
	}
	return list, frame
}

func TestDrawingsAreLegibleOnEveryChassis(t *testing.T) {
	ed := demo(t)
	for i := range ed.Cat.Chassis {
		c := &ed.Cat.Chassis[i]
		for _, loaded := range []bool{false, true} {
			p := pageOf(t, ed, c.ID, loaded)
			for _, metric := range []bool{false, true} {
				p.State.Metric = metric
				for name, svg := range map[string]string{"side": sideView(p).String(), "plan": planView(p).String()} {
					where := c.ID + " " + name
					for _, bad := range []string{"NaN", "Inf", "not known"} {
						assert.NotContains(t, svg, bad, where)
					}
					list, frame := labels(t, svg)
					assert.NotEmpty(t, list, where)
					for k, a := range list {
						assert.True(t, a.left >= frame[0] && a.right <= frame[0]+frame[2] && a.top >= frame[1] && a.bottom <= frame[1]+frame[3], "%s: %q runs out of the picture", where, a.words)
						for _, b := range list[:k] {
							apart := a.left >= b.right || b.left >= a.right || a.top >= b.bottom || b.top >= a.bottom
							assert.True(t, apart, "%s: %q covers %q", where, a.words, b.words)
						}
					}
				}
			}
		}
	}
}

func TestTextAlternativesCarryTheSameNumbers(t *testing.T) {
	ed := demo(t)
	p := pageOf(t, ed, "cut-14500-158-gas", true)
	for name, svg := range map[string]string{"side": sideView(p).String(), "plan": planView(p).String(), "loads": loadBars(p).String()} {
		_, said, _ := strings.Cut(svg, `aria-label="`)
		said, _, _ = strings.Cut(said, `"`)
		said = strings.ReplaceAll(said, ",", "")
		for _, m := range svgText.FindAllStringSubmatch(svg, -1) {
			// Two dimensions are sums of others that are said.
			if strings.HasPrefix(m[2], "module") || name == "side" && (m[2] == p.show(31, quantity.Inch) || m[2] == p.show(47, quantity.Inch) || m[2] == p.show(32, quantity.Inch)) {
				continue
			}
			for _, number := range aNumber.FindAllString(strings.ReplaceAll(m[2], ",", ""), -1) {
				assert.Contains(t, said, number, "%s: %q stands in the picture only", name, m[2])
			}
		}
	}
}

func TestEveryPartOfTheUnitIsInItsDrawing(t *testing.T) {
	ed := demo(t)
	p := pageOf(t, ed, "med-26000-189-diesel", true)
	svg := planView(p).String()
	for i, u := range p.Q.Space.Compartments {
		assert.Contains(t, svg, letter(i)+" "+u.Label, "compartment in the legend")
	}
	for _, s := range seatsOf(p.Q) {
		assert.Contains(t, svg, s.Label, "place in the legend")
	}
	assert.Equal(t, len(p.Q.Space.Compartments), strings.Count(svg, `class="store`))
	side := sideView(p).String()
	for _, v := range []quantity.Mass{p.Q.Weight.Gross.FrontLb, p.Q.Weight.Gross.RearLb, p.Q.Chassis.GAWRFrontLb} {
		assert.Contains(t, side, ">"+p.show(float64(v), quantity.Pound)+"<", "axle loads are lettered")
		break
	}
	assert.Contains(t, side, "of "+p.show(float64(p.Q.Chassis.GAWRRearLb), quantity.Pound))
	assert.Equal(t, "AB", letter(27), "the letters go on")
}
