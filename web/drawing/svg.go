package drawing

import (
	"maps"
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
	if s.Size > 0 {
		return s.Size
	}
	a, b := s.Along[0], s.Along[1]
	return math.Min((b.V-a.V)/0.72, (b.U-a.U)/(perEm*float64(max(utf8.RuneCountInString(s.Text), 1))))
}

// foot is where a text is set, with the size of its letters.
func (s *Shape) foot() (at Point, size float64) {
	size = s.size()
	if s.Size > 0 {
		return s.Along[0], size
	}
	a, b := s.Along[0], s.Along[1]
	return Point{(a.U + b.U) / 2, (a.V+b.V)/2 - size*0.36}, size
}

// wording writes a text at its place or into the middle of its box.
func wording(s *Shape, class string) Part {
	p, size := s.foot()
	at := "translate(" + page.Coord(p.U) + " " + page.Coord(-p.V) + ")"
	if s.Backward {
		at += " scale(-1 1)"
	}
	if s.Set == upward {
		at += " rotate(-90)"
	}
	if s.Set != fromLeft {
		class += " mid"
	}
	return El("text", Class(class), At("transform", at), At("font-size", page.Coord(size)), Text(s.Text))
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

// tones of the colors on screen, as the page's style sheet has them.
var tones = map[string]uint32{"red": 0xd3202f, "amber": 0xf0a202, "blue": 0x2f66d0, "green": 0x257d41,
	"yellow": 0xf3d321, "orange": 0xee6c1f, "black": 0x22262a, "gray": 0x8b9298, "silver": 0xc3c8cc,
	"gold": 0xb8962e, "navy": 0x1f335e, "lime": 0xb6d733}

// pale mixes a tone with white, so that black lines and letters stand out on it.
func pale(tone uint32, share float64) string {
	out := "#"
	for _, shift := range []uint{16, 8, 0} {
		c := 255 - share*(255-float64(tone>>shift&255))
		out += strconv.FormatInt(0x100+int64(math.Round(c)), 16)[1:]
	}
	return out
}

// styled is how drawings look in a file of their own, their lines so many times as wide as
// those of a view.
func styled(wide float64) string {
	line := func(v float64) string {
		return "stroke:#000;stroke-width:" + strconv.FormatFloat(v*wide, 'g', 3, 64) + "}"
	}
	css := "path,circle{fill:none;" + line(0.2) + ".edge,.frame{" + line(0.5) +
		".rim,.lamp,.glass,.seat,.cot,.store,.mark,.hub{" + line(0.3) +
		".edge,.hub,.lamp,.mark,.cot,.balloon{fill:#fff}.glass,.seat{fill:#e8f0f2}.store{fill:#f5f4f0}.tire{fill:#333}" +
		".hidden{stroke-dasharray:" + strconv.FormatFloat(2*wide, 'g', 3, 64) + "}" +
		".head,.dot,.bar-dark{fill:#000;stroke:none}.cloud{stroke:#b3261e}" +
		"text{font-family:'Liberation Sans',Arial,sans-serif}.text,.title,.bold{font-weight:bold}.mid{text-anchor:middle}"
	for _, name := range slices.Sorted(maps.Keys(tones)) {
		css += ".edge.t-" + name + "{fill:" + pale(tones[name], 0.25) + "}.lamp.t-" + name + ",.mark.t-" + name +
			"{fill:" + pale(tones[name], 0.6) + "}"
	}
	return css
}

// Titles of views have letters of so many inches of the unit, bold ones some three fifths as wide
// as that.
const (
	titleIn  = 7.0
	boldWide = 0.6
)

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
			El("text", Class("title"), At("x", page.Coord(left)), At("y", page.Coord(14-low)),
				At("font-size", page.Coord(titleIn)), Text(v.Title))))
		x += math.Max(right-left, titleIn*boldWide*float64(len(v.Title))) + 36
	}
	return file(x-36+2*marginIn, top+marginIn-bottom, -marginIn, -top-marginIn, 20, styled(1), parts)
}

// file is an SVG file of a width and height from a left top corner, with so many of its units
// to an inch of paper.
func file(wide, high, left, top, perIn float64, style string, parts []Part) string {
	size := func(v float64) string { return strconv.FormatFloat(v/perIn, 'f', 2, 64) + "in" }
	return El("svg", At("xmlns", "http://www.w3.org/2000/svg"), At("width", size(wide)), At("height", size(high)),
		At("viewBox", page.Coord(left)+" "+page.Coord(top)+" "+page.Coord(wide)+" "+page.Coord(high)),
		El("style", Text(style)), Many(parts...)).String() + "\n"
}
