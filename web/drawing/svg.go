package drawing

import (
	"strconv"
	"strings"

	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// marginIn is the paper around a view.
const marginIn = 6.0

// Picture is a view on the screen: each thing a group of its own, so that a press
// changes little of it. The parts of one option can be marked.
func Picture(v View, said, marked string) Part {
	left, right, low, high := v.Bounds()
	return El("svg", Class("drawing view"), At("role", "img"), At("aria-label", said),
		At("viewBox", page.Coord(left-marginIn)+" "+page.Coord(-high-marginIn)+" "+
			page.Coord(right-left+2*marginIn)+" "+page.Coord(high-low+2*marginIn)),
		Each(v.Groups, func(_ int, g Group) Part {
			return El("g", If(marked != "" && g.Option == marked, Class("marked")),
				If(g.Option != "", Many(At("data-part", g.Option), At("data-act", "part"), At("data-id", g.Option))), If(g.Label != "", El("title", Text(g.Label))),
				Many(paths(g.Shapes)...))
		}))
}

// onGround puts a view into another picture, its ground at y.
func onGround(v View, y float64) Part {
	return El("g", At("transform", "translate(0 "+page.Coord(y)+")"),
		Each(v.Groups, func(_ int, g Group) Part { return Many(paths(g.Shapes)...) }))
}

// paths writes shapes with the ground at zero and up as less, as SVG counts.
func paths(list []Shape) []Part {
	var out []Part
	for _, s := range list {
		if s.Radius > 0 {
			out = append(out, El("circle", Class(s.Layer), At("cx", page.Coord(s.Along[0].U)),
				At("cy", page.Coord(-s.Along[0].V)), At("r", page.Coord(s.Radius))))
			continue
		}
		var d strings.Builder
		for i, p := range s.Along {
			d.WriteString([]string{"M", "L"}[min(i, 1)])
			d.WriteString(short(p.U))
			d.WriteByte(' ')
			d.WriteString(short(-p.V))
		}
		if s.Closed {
			d.WriteByte('Z')
		}
		out = append(out, page.Path(s.Layer, d.String()))
	}
	return out
}

// short writes a coordinate to a tenth of an inch, without a zero that says nothing.
func short(v float64) string {
	text := strconv.FormatFloat(v, 'f', 1, 64)
	return strings.TrimSuffix(text, ".0")
}
