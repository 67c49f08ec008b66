// Package drawing draws the unit to scale: as SVG for screen and paper, and as SVG and DXF files. In the side
// view and the plan a drawing unit is an inch and the front is to the left; the side view shows the street side,
// the plan has the curb side above. Sizes that the catalogue does not give (hood, glass, doors, lamps) are drawn
// as is usual and carry no number there.
package drawing

import (
	"math"
	"strings"
	"unicode/utf8"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// picture is a drawing in the making; it knows where its labels stand, so that
// no two cover each other.
type picture struct {
	parts []Part
	taken [][4]float64 // left, top, right, bottom of labels
	shade [4]float64   // of the range of a center of gravity, where labels stand only for want of other room
}

func (d *picture) add(parts ...Part) { d.parts = append(d.parts, parts...) }

// Size of lettering on a narrow screen, where it is largest against the
// drawing; labels are kept clear at that size.
const (
	lettering = 10.0
	perLetter = 6.3
)

// label is centered on x with its foot on y. It gives way to labels that stand
// there already, to the nearest free place.
func (d *picture) label(class string, x, y float64, text string) {
	half := perLetter * float64(utf8.RuneCountInString(text)) / 2
	best, bx, by := math.Inf(1), x, y
	step := max(half, lettering) / 2
	for i := range 13 * 13 {
		dx, dy := float64(i%13-6)*step, float64(i/13-6)*lettering/2
		if far := math.Hypot(dx, 1.5*dy); far < best && d.free(x+dx-half, y+dy-lettering+1, x+dx+half, y+dy+1) {
			best, bx, by = far, x+dx, y+dy
		}
	}
	d.taken = append(d.taken, [4]float64{bx - half, by - lettering + 1, bx + half, by + 1})
	d.add(page.Label(strings.TrimSpace(class+" mid"), bx, by, text))
}

// labelIn puts a label into a box, as far up and as near its middle as it stands free; where
// the box has no room, beside the others around its top.
func (d *picture) labelIn(class string, box [4]float64, text string) {
	half := perLetter * float64(utf8.RuneCountInString(text)) / 2
	mid, top := (box[0]+box[2])/2, box[1]+13
	shade := d.shade
	defer func() { d.shade = shade }()
	for range 2 {
		for y := top; y < box[3]-2; y += lettering / 4 {
			for dx := 0.0; dx == 0 || dx < (box[2]-box[0])/2-half; dx += lettering / 4 {
				for _, x := range []float64{mid - dx, mid + dx} {
					if d.free(x-half, y-lettering, x+half, y+2) { // lines one below the other have room between them
						d.label(class, x, y, text)
						return
					}
				}
			}
		}
		d.shade = [4]float64{}
	}
	d.label(class, mid, top, text)
}

func (d *picture) free(left, top, right, bottom float64) bool {
	for _, t := range append(d.taken, d.shade) {
		if left < t[2] && right > t[0] && top < t[3] && bottom > t[1] {
			return false
		}
	}
	return true
}

// across is a horizontal dimension from one x to another, its text above.
func (d *picture) across(from, to, y float64, text string) {
	d.add(page.Trace("dim", "MHMVMV", from, y, to, from, y-3, y+3, to, y-3, y+3), arrow(from, y, 4, 0),
		arrow(to, y, -4, 0))
	d.label("small", (from+to)/2, y-2, text)
}

// up is a vertical dimension with its text along the line.
func (d *picture) up(x, from, to float64, text string) {
	mid := (from + to) / 2
	d.add(page.Trace("dim", "MVMHMH", x, from, to, x-3, from, x+3, x-3, to, x+3), arrow(x, from, 0, -4),
		arrow(x, to, 0, 4),
		El("text", Class("small mid"), At("x", page.Coord(x-2)), At("y", page.Coord(mid)),
			At("transform", "rotate(-90 "+page.Coord(x-2)+" "+page.Coord(mid)+")"), Text(text)))
}

// arrow is a filled head with its point at x, y, which comes from where dx and
// dy point to.
func arrow(x, y, dx, dy float64) Part {
	return page.Trace("head", "MLLZ", x, y, x+dx+dy/3, y+dy+dx/3, x+dx-dy/3, y+dy-dx/3)
}

// rangeScale is how much larger than the drawing the likely range of the center
// of gravity is drawn: at scale nobody would see it.
const rangeScale = 20

const gravityRadius = 2.8 // of the mark

// clear keeps labels off the mark of a center of gravity.
func (d *picture) clear(x, y, xTol, yTol float64) {
	const r = gravityRadius
	w, h := max(xTol*rangeScale, r), max(yTol*rangeScale, r)
	d.taken = append(d.taken, [4]float64{x - r, y - r, x + r, y + r})
	d.shade = [4]float64{x - w, y - h, x + w, y + h}
}

// gravity marks a center of gravity and the likely range around it.
func (d *picture) gravity(x, y, xTol, yTol float64) {
	const r = gravityRadius
	d.add(El("ellipse", Class("cg-range"), At("cx", page.Coord(x)), At("cy", page.Coord(y)),
		At("rx", page.Coord(xTol*rangeScale)), At("ry", page.Coord(yTol*rangeScale))),
		El("circle", Class("cg-ring"), At("cx", page.Coord(x)), At("cy", page.Coord(y)), At("r", page.Coord(r))),
		page.Trace("cg", "MVALHAZ", x, y, y-r, r, 1, x+r, y, x, y, x-r, r, 0, x, y+r))
}

// frame closes the picture. The text alternative carries its numbers; the
// legend beneath explains what is lettered in it.
func (d *picture) frame(kind, said string, x, y, w, h float64, legend ...Part) Part {
	return El("figure", El("svg", Class("drawing", kind), At("role", "img"), At("aria-label", said),
		At("viewBox", page.Coord(x)+" "+page.Coord(y)+" "+page.Coord(w)+" "+page.Coord(h)), Many(d.parts...)),
		El("figcaption", Class("legend"), Many(legend...)))
}

// outline is what both views need of the vehicle, in inches.
type outline struct {
	ahead, behind float64 // bumper's face, and end of module or frame, with the bumpers and steps of options
	start, end    float64 // module's walls; of a van its lining's front and its doors
	floor, roof   float64
	top           float64 // highest point, antennas left out
	wheelbase     float64
	width         float64
	van           bool
	model         *body.Model
}

func outlineOf(q *quote.Quote) outline {
	m := q.Space.Model
	o := outline{
		ahead: m.Bumper, behind: math.Max(m.Rear, m.FrameEnd), start: m.Front, end: m.Rear, wheelbase: m.RearAxle,
		floor: m.Floor, roof: m.Roof, top: math.Max(m.Roof, m.CabRoof), width: float64(m.Bare().WidthIn),
		van: m.Van, model: m,
	}
	for i := range m.Parts {
		p := &m.Parts[i]
		switch {
		case p.Option == "":
		case p.Kind == "bumper" || p.Kind == "step":
			o.ahead, o.behind = math.Min(o.ahead, p.X0), math.Max(o.behind, p.X1)
		case p.Kind != "antenna":
			o.top = math.Max(o.top, p.Z1)
		}
	}
	return o
}

// Length of a unit over all, in.
func Length(q *quote.Quote) float64 {
	o := outlineOf(q)
	return o.behind - o.ahead
}

// Letter names the compartment at a place in the list, the same in both views,
// in the table and in the legend.
func Letter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return Letter(i/26-1) + Letter(i%26)
}

// gravityWords say where the center is and how well that is known.
func gravityWords(p *page.Page) string {
	g := p.Q.Weight.Gross
	in := func(v quantity.Length) string { return p.Show(float64(v), quantity.Inch) }
	side := "right"
	if g.YIn < 0 {
		side = "left"
	}
	return "Center of gravity at full load " + in(g.XIn) + " behind the front axle, likely within " + in(g.XTolIn) +
		"; " + in(g.ZIn) + " above the ground, within " + in(g.ZTolIn) +
		"; " + in(quantity.Length(math.Abs(float64(g.YIn)))) + " " + side + " of the middle, within " + in(g.YTolIn) +
		"."
}

const rangeNote = " The shaded ellipse is that range, drawn twenty times as large."

// seats of the unit with their stations behind the front axle.
func seatsOf(q *quote.Quote) []config.Seat {
	m := q.Space.Model
	out := append([]config.Seat(nil), m.CabSeats...)
	for _, s := range m.Seats {
		s.XIn += q.Chassis.BodyStartIn
		out = append(out, s)
	}
	return out
}
