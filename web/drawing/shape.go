package drawing

import (
	"math"
	"slices"

	"boxwright/config"
)

// Layers of a drawing: how heavy a line is and what is filled. They are the classes of
// the page's style sheet, and in capitals the layers of a DXF file.
const (
	layerEdge   = "edge"   // outlines
	layerRim    = "rim"    // edges of doors and lids, which have the color of what they are in
	layerThin   = "thin"   // edges within them
	layerDoor   = "door"   // handles, hinges, swings
	layerHidden = "hidden" // behind or above what is drawn
	layerGlass  = "glass"
	layerLamp   = "lamp"
	layerTire   = "tire"
	layerHub    = "hub"
	layerSeat   = "seat"
	layerCot    = "cot"
	layerStore  = "store" // cabinets and compartments
	layerMark   = "mark"  // stripes, chevrons, emblems
	layerText   = "text"  // what is lettered on the unit, and the letters of lamps
)

// Point of a view in true inches: u to the right, v up.
type Point struct{ U, V float64 }

// Shape is a run of straight lines, or a circle.
type Shape struct {
	Layer  string
	Along  []Point // of a circle its center alone
	Closed bool
	Radius float64 // above 0: a circle
	Tint   string  // of config.ColorNames; empty: none
	// Of a text the corners of its box stand in Along, the lower left one first; of one that
	// has a size, where it is set.
	Text     string
	Backward bool
	Size     float64 // of the letters; 0: as the box allows
	Set      setting
}

// setting is how a text stands at its place.
type setting uint8

const (
	centered setting = iota
	fromLeft
	upward // centered, read from the right
)

// Group is one thing in a view.
type Group struct {
	ID, Label, Option string // of the body's part; the option is empty for chassis and body
	Shapes            []Shape
	Class             string // how it is marked; empty: not
}

// View is a unit seen from one side.
type View struct {
	ID, Title string
	Groups    []Group
	Ghosts    []Group // of what is not in the unit, drawn where it would go
	Wide      float64 // of the picture, in, where it is set beside another on one scale
}

// Bounds are the edges of what is drawn; zeros for an empty view.
func (v *View) Bounds() (left, right, low, high float64) {
	left, right, low, high = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, g := range v.Groups {
		for _, s := range g.Shapes {
			for _, p := range s.Along {
				left, right = math.Min(left, p.U-s.Radius), math.Max(right, p.U+s.Radius)
				low, high = math.Min(low, p.V-s.Radius), math.Max(high, p.V+s.Radius)
			}
		}
	}
	if left > right {
		return 0, 0, 0, 0
	}
	return left, right, low, high
}

// Letters are those on the lamps of a view, each with its color.
func (v *View) Letters() (list []string) {
	for _, g := range v.Groups {
		for _, s := range g.Shapes {
			if s.Text == "" || config.ColorNames[s.Tint] != s.Text {
				continue
			}
			if said := s.Text + " " + s.Tint; !slices.Contains(list, said) {
				list = append(list, said)
			}
		}
	}
	slices.Sort(list)
	return list
}

// shapes of all things in the view, what is nearest last.
func (v *View) shapes() []Shape {
	var all []Shape
	for _, g := range v.Groups {
		all = append(all, g.Shapes...)
	}
	return all
}

// frame2 is a rectangle in a view.
type frame2 struct{ u0, u1, v0, v1 float64 }

func (f frame2) wide() float64 { return f.u1 - f.u0 }
func (f frame2) high() float64 { return f.v1 - f.v0 }

// in is the rectangle with its edges moved inward; at least a line stays.
func (f frame2) in(by float64) frame2 {
	du, dv := math.Min(by, f.wide()/2), math.Min(by, f.high()/2)
	return frame2{f.u0 + du, f.u1 - du, f.v0 + dv, f.v1 - dv}
}

// at is the point at these shares of width and height.
func (f frame2) at(u, v float64) Point { return Point{f.u0 + u*f.wide(), f.v0 + v*f.high()} }

// sheet collects the shapes of a group.
type sheet struct{ shapes []Shape }

func (s *sheet) line(layer string, points ...Point) {
	s.shapes = append(s.shapes, Shape{Layer: layer, Along: points})
}

func (s *sheet) area(layer string, points ...Point) {
	s.shapes = append(s.shapes, Shape{Layer: layer, Along: points, Closed: true})
}

func (s *sheet) rect(layer string, f frame2) {
	s.area(layer, Point{f.u0, f.v0}, Point{f.u1, f.v0}, Point{f.u1, f.v1}, Point{f.u0, f.v1})
}

func (s *sheet) circle(layer string, center Point, radius float64) {
	s.shapes = append(s.shapes, Shape{Layer: layer, Along: []Point{center}, Radius: radius})
}

// text is written into a rectangle, as high as that allows.
func (s *sheet) text(f frame2, words string) {
	s.shapes = append(s.shapes, Shape{Layer: layerText, Along: []Point{f.at(0, 0), f.at(1, 1)}, Text: words})
}

// across and upright are lines through a rectangle at a share of its height or width.
func (s *sheet) across(layer string, f frame2, v float64) { s.line(layer, f.at(0, v), f.at(1, v)) }

func (s *sheet) upright(layer string, f frame2, u float64) { s.line(layer, f.at(u, 0), f.at(u, 1)) }

// rounded is a rectangle with its corners cut round.
func (s *sheet) rounded(layer string, f frame2, radius float64) {
	r := math.Min(radius, math.Min(f.wide(), f.high())/2)
	p := pen{}
	for i, c := range []Point{{f.u1 - r, f.v1 - r}, {f.u0 + r, f.v1 - r}, {f.u0 + r, f.v0 + r}, {f.u1 - r, f.v0 + r}} {
		from := float64(i) * math.Pi / 2
		p.arc(c, r, from, from+math.Pi/2)
	}
	s.area(layer, p.points...)
}

// pen follows an outline; curves become straight pieces short enough to look round.
type pen struct{ points []Point }

func (p *pen) to(u, v float64) { p.points = append(p.points, Point{u, v}) }

// bend goes to a point in a quadratic curve drawn toward a third.
func (p *pen) bend(cu, cv, u, v float64) {
	const pieces = 6
	from := p.points[len(p.points)-1]
	for i := 1; i <= pieces; i++ {
		t := float64(i) / pieces
		a, b, c := (1-t)*(1-t), 2*t*(1-t), t*t
		p.to(a*from.U+b*cu+c*u, a*from.V+b*cv+c*v)
	}
}

// arc goes around a center from one angle to another, in radians, counterclockwise
// when the second is larger.
func (p *pen) arc(center Point, radius, from, to float64) {
	step := math.Pi / 12
	if radius < 4 {
		step = math.Pi / 4 // as round as it is small
	}
	pieces := int(math.Ceil(math.Abs(to-from)/step - 1e-9))
	for i := range pieces + 1 {
		a := from + (to-from)*float64(i)/float64(max(pieces, 1))
		p.to(center.U+radius*math.Cos(a), center.V+radius*math.Sin(a))
	}
}

// arch goes over a wheel, from behind it to ahead of it, where the edge is at height z.
func (p *pen) arch(x, wheel, clear, z float64) {
	r := wheel + clear
	a := math.Asin(math.Max(math.Min((z-wheel)/r, 1), -1))
	p.arc(Point{x, wheel}, r, a, math.Pi-a)
}
