package drawing

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/quantity"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/page/pagetest"
)

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

// onUnit reports whether a text is lettered on the unit itself.
func onUnit(attributes string) bool { return strings.Contains(attributes, `class="text`) }

// labels of a picture and its frame.
func labels(t *testing.T, svg string) (list []lettered, frame [4]float64) {
	t.Helper()
	for i, v := range strings.Fields(viewBox.FindStringSubmatch(svg)[1]) {
		f, err := strconv.ParseFloat(v, 64)
		require.NoError(t, err)
		frame[i] = f
	}
	for _, m := range svgText.FindAllStringSubmatch(svg, -1) {
		if onUnit(m[1]) {
			continue
		}
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
	ed := quotetest.Demo(t)
	for i := range ed.Cat.Chassis {
		c := &ed.Cat.Chassis[i]
		for _, loaded := range []bool{false, true} {
			p := pagetest.Of(t, ed, c.ID, loaded)
			for _, metric := range []bool{false, true} {
				p.Metric = metric
				for name, svg := range map[string]string{"side": Side(p).String(), "plan": Plan(p).String()} {
					where := c.ID + " " + name
					for _, bad := range []string{"NaN", "Inf", "not known"} {
						assert.NotContains(t, svg, bad, where)
					}
					legible(t, svg, where)
				}
			}
		}
	}
}

// legible holds that no label of a drawing covers another or runs out of it.
func legible(t *testing.T, svg, where string) {
	t.Helper()
	list, frame := labels(t, svg)
	assert.NotEmpty(t, list, where)
	for k, a := range list {
		assert.True(t, a.left >= frame[0] && a.right <= frame[0]+frame[2] && a.top >= frame[1] &&
			a.bottom <= frame[1]+frame[3], "%s: %q runs out of the picture", where, a.words)
		for _, b := range list[:k] {
			apart := a.left >= b.right || b.left >= a.right || a.top >= b.bottom || b.top >= a.bottom
			assert.True(t, apart, "%s: %q covers %q", where, a.words, b.words)
		}
	}
}

func TestTextAlternativesCarryTheSameNumbers(t *testing.T) {
	ed := quotetest.Demo(t)
	p := pagetest.Of(t, ed, "cut-14500-158-gas", true)
	for name, svg := range map[string]string{"side": Side(p).String(), "plan": Plan(p).String()} {
		_, said, _ := strings.Cut(svg, `aria-label="`)
		said, _, _ = strings.Cut(said, `"`)
		said = strings.ReplaceAll(said, ",", "")
		for _, m := range svgText.FindAllStringSubmatch(svg, -1) {
			// Two dimensions are sums of others that are said.
			if onUnit(m[1]) || strings.HasPrefix(m[2], "module") || name == "side" &&
				(m[2] == p.Show(31, quantity.Inch) ||
					m[2] == p.Show(57, quantity.Inch) || m[2] == p.Show(32, quantity.Inch)) {
				continue
			}
			for _, number := range aNumber.FindAllString(strings.ReplaceAll(m[2], ",", ""), -1) {
				assert.Contains(t, said, number, "%s: %q stands in the picture only", name, m[2])
			}
		}
	}
}

func TestEveryPartOfTheUnitIsInItsDrawing(t *testing.T) {
	ed := quotetest.Demo(t)
	p := pagetest.Of(t, ed, "med-26000-189-diesel", true)
	svg := Plan(p).String()
	for i, u := range p.Q.Space.Compartments {
		assert.Contains(t, svg, Letter(i)+" "+u.Label, "compartment in the legend")
	}
	for _, s := range seatsOf(p.Q) {
		assert.Contains(t, svg, s.Label, "place in the legend")
	}
	assert.Equal(t, len(p.Q.Space.Compartments), strings.Count(svg, `class="store`))
	side := Side(p).String()
	for _, v := range []quantity.Mass{p.Q.Weight.Gross.FrontLb, p.Q.Weight.Gross.RearLb, p.Q.Chassis.GAWRFrontLb} {
		assert.Contains(t, side, ">"+p.Show(float64(v), quantity.Pound)+"<", "axle loads are lettered")
		break
	}
	assert.Contains(t, side, "of "+p.Show(float64(p.Q.Chassis.GAWRRearLb), quantity.Pound))
	assert.Equal(t, "AB", Letter(27), "the letters go on")
}
