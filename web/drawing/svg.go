package drawing

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"boxwright/config"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// marginIn is the paper around a view.
const marginIn = 6.0

// Picture is a view on the screen: each thing a group of its own, so that a press
// changes little of it. The parts of one option can be marked, and those of some are lit
// for a moment.
func Picture(v View, said, marked string, fresh []string) Part {
	left, right, low, high := v.Bounds()
	if more := v.Wide - (right - left); more > 0 {
		left, right = left-more/2, right+more/2
	}
	return El("svg", Class("drawing view"), At("role", "img"), At("aria-label", said),
		At("viewBox", page.Coord(left-marginIn)+" "+page.Coord(-high-marginIn)+" "+
			page.Coord(right-left+2*marginIn)+" "+page.Coord(high-low+2*marginIn)),
		Each(v.Groups, func(_ int, g Group) Part {
			return El("g", If(marked != "" && g.Option == marked, Class("marked")),
				If(g.Option != "" && slices.Contains(fresh, g.Option), Class("fresh")),
				If(g.Class != "", Class(g.Class)),
				If(g.Option != "", Many(At("data-part", g.Option), At("data-act", "part"), At("data-id", g.Option))),
				If(g.Label != "", El("title", Text(g.Label))), Many(paths(g.Shapes)...))
		}),
		Each(v.Ghosts, func(_ int, g Group) Part {
			return El("g", Class("ghost"), At("data-ghost", g.Option), Many(paths(g.Shapes)...))
		}))
}

// onGround puts shapes into another picture, their ground at y.
func onGround(list []Shape, y float64) Part {
	return El("g", At("transform", "translate(0 "+page.Coord(y)+")"), Many(paths(list)...))
}

// paths writes shapes with the ground at zero and up as less, as SVG counts.
func paths(list []Shape) []Part {
	var out []Part
	for _, s := range list {
		class := s.Layer
		if s.Tint != "" {
			class += " t-" + s.Tint
		}
		if s.Text != "" && config.ColorNames[s.Tint] == s.Text { // the letter of a lamp stands on its tint
			class = strings.Replace(class, layerText, layerText+" letter", 1)
		}
		if s.Text != "" {
			out = append(out, wording(&s, class))
			continue
		}
		if s.Radius > 0 {
			out = append(out, El("circle", Class(class), At("cx", page.Coord(s.Along[0].U)),
				At("cy", page.Coord(-s.Along[0].V)), At("r", page.Coord(s.Radius))))
			continue
		}
		var d []byte
		for i, p := range s.Along {
			d = append(d, "ML"[min(i, 1)])
			d = append(appendTenths(d, p.U), ' ')
			d = appendTenths(d, -p.V)
		}
		if s.Closed {
			d = append(d, 'Z')
		}
		out = append(out, page.Path(class, string(d)))
	}
	return out
}

// perEm is the usual width of a letter in shares of its size.
const perEm = 0.62

// size of the letters of a text that fits its box.
func (s *Shape) size() float64 {
	a, b := s.Along[0], s.Along[1]
	return math.Min((b.V-a.V)/0.72, (b.U-a.U)/(perEm*float64(max(utf8.RuneCountInString(s.Text), 1))))
}

// wording writes a text into the middle of its box.
func wording(s *Shape, class string) Part {
	a, b, size := s.Along[0], s.Along[1], s.size()
	u, v := (a.U+b.U)/2, (a.V+b.V)/2-size*0.36
	at := "translate(" + page.Coord(u) + " " + page.Coord(-v) + ")"
	if s.Backward {
		at += " scale(-1 1)"
	}
	return El("text", Class(class+" mid"), At("transform", at), At("font-size", page.Coord(size)), Text(s.Text))
}

// appendTenths writes a coordinate to a tenth of an inch. A press writes thousands, so
// it counts in whole tenths, which strconv does three times as fast.
func appendTenths(to []byte, v float64) []byte {
	n := int64(math.Round(v * 10))
	if n < 0 {
		to, n = append(to, '-'), -n
	}
	to = strconv.AppendInt(to, n/10, 10)
	if n%10 != 0 {
		to = append(to, '.', byte('0'+n%10))
	}
	return to
}

// plainStyle is how views look in a file of their own.
const plainStyle = ".edge{fill:#fff;stroke:#000;stroke-width:.5}.rim,.thin,.door,.lamp,.glass,.seat,.cot,.store,.mark,.hub{" +
	"fill:none;stroke:#000;stroke-width:.25}.hidden{fill:none;stroke:#000;stroke-width:.2;stroke-dasharray:2 " +
	"1}.tire{fill:#333}" +
	".hub{fill:#fff}.text{font-family:sans-serif;font-weight:bold;text-anchor:middle}.title{font:5px sans-serif}"

// SVG writes views side by side as a drawing in true inches of the unit, one to twenty on
// paper, each with its title under it.
func SVG(views ...View) string {
	var parts []Part
	x, bottom, top := 0.0, 0.0, 0.0
	for _, v := range views {
		left, right, low, high := v.Bounds()
		bottom, top = math.Min(bottom, low-20), math.Max(top, high)
		var groups []Part
		for _, g := range v.Groups {
			groups = append(groups, El("g", If(g.Label != "", El("title", Text(g.Label))), Many(paths(g.Shapes)...)))
		}
		parts = append(parts, El("g", At("transform", "translate("+page.Coord(x-left)+" 0)"), Many(groups...),
			page.Label("title", left, -low+14, v.Title)))
		x += right - left + 36
	}
	x, top = x-36+2*marginIn, top+marginIn
	size := func(v float64) string { return strconv.FormatFloat(v/20, 'f', 2, 64) + "in" }
	return El("svg", At("xmlns", "http://www.w3.org/2000/svg"), At("width", size(x)), At("height", size(top-bottom)),
		At("viewBox", page.Coord(-marginIn)+" "+page.Coord(-top)+" "+page.Coord(x)+" "+page.Coord(top-bottom)),
		El("style", Text(plainStyle)), Many(parts...)).String() + "\n"
}
