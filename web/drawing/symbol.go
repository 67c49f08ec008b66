package drawing

import (
	"cmp"
	"math"

	"boxwright/config"
	"boxwright/config/body"
)

// symbol draws a part in the rectangle that it takes. Seen square to the face it is
// fixed to it shows what it is; from elsewhere its outline.
func symbol(m *body.Model, p *body.Part, f frame2, square bool) []Shape {
	var s sheet
	switch draw, ok := symbols[p.Kind]; {
	case !square && p.Kind == "mirror":
		s.rounded(layerEdge, f, 1.5)
	case !square && p.Kind == "antenna":
		s.rect(layerThin, frame2{f.u0, f.u1, f.v0, f.v0 + f.high()/8})
		s.upright(layerThin, f, 0.5)
	case !square:
		if p.Flat {
			return nil // paint and film show no edge
		}
		s.rect(plain(p.Kind), f)
	case p.Kind == "lettering":
		s.text(f, p.Text)
		s.shapes[0].Backward = p.Backward
	case p.Kind == "compartment":
		outsideDoor(&s, f, cmp.Or(p.Hinge, m.Look.Doors))
	case p.Kind == "cabinet":
		cabinet(&s, f, cmp.Or(p.Hinge, m.Look.Cabinets))
	case p.Kind == "door":
		leaf(&s, f, p.Hinge)
	case p.Kind == "window":
		draw(&s, f)
		glaze(&s, f, m.Look.Glass)
	case ok:
		draw(&s, f)
	default:
		s.rect(plain(p.Kind), f)
	}
	tint(&s, p, f, square)
	return s.shapes
}

// tint gives lamps, marks and lettering their color, and lamps the letter of it.
func tint(s *sheet, p *body.Part, f frame2, square bool) {
	if p.Color == "" {
		return
	}
	lamp := false
	for i := range s.shapes {
		x := &s.shapes[i]
		switch x.Layer {
		case layerLamp, layerMark, layerText:
			lamp = lamp || x.Layer == layerLamp
			x.Tint = p.Color
		case layerThin: // lines across a lamp stand on its tint
			if lamp {
				x.Tint = p.Color
			}
		}
	}
	if lamp && square && f.wide() > 2 && f.high() > 1 {
		mid, half := f.at(0.5, 0.5), math.Min(math.Min(f.wide(), f.high())*0.42, letterIn/2)
		s.text(frame2{mid.U - half, mid.U + half, mid.V - half, mid.V + half}, config.ColorNames[p.Color])
		s.shapes[len(s.shapes)-1].Tint = p.Color
	}
}

// letterIn is how high a lamp's letter is at most.
const letterIn = 5.0

// glaze shows what was done to a window.
func glaze(s *sheet, f frame2, look string) {
	switch look {
	case "dark":
		for i := 1.0; i < 5; i++ {
			s.line(layerThin, f.at(i/6, 0.1), f.at(i/6+0.12, 0.9))
		}
	case "frosted":
		for i := 1.0; i < 5; i++ {
			s.across(layerThin, f.in(1), i/10)
		}
	}
}

// plain is the layer of a part's outline.
func plain(kind string) string {
	switch kind {
	case "lamp", "bar", "strip":
		return layerLamp
	case "window":
		return layerGlass
	case "seat", "bench", "litter":
		return layerSeat
	case "flap":
		return layerTire
	case "cot":
		return layerCot
	case "band", "check", "sweep", "chevron", "star":
		return layerMark
	case "cabinet", "counter", "compartment", "console", "drawer":
		return layerStore
	case "rail", "trim", "arch", "antenna", "camera", "duct", "speaker", "outlet", "plate", "panel", "screen", "hook",
		"gas", "grille", "fitting", "mount":
		return layerThin
	case body.KindFuel, body.KindFrame, body.KindWheelBox, "tank", "battery":
		return layerHidden
	}
	return layerEdge
}

var symbols = map[string]func(*sheet, frame2){
	"lamp": func(s *sheet, f frame2) {
		s.rounded(layerLamp, f, 1)
		s.rounded(layerThin, f.in(math.Min(1, f.high()/5)), 0.6)
	},
	"bar": func(s *sheet, f frame2) {
		s.rounded(layerLamp, f, 1.5)
		n := math.Max(2, math.Round(f.wide()/9))
		for i := 1.0; i < n; i++ {
			s.upright(layerThin, f, i/n)
		}
	},
	"strip": func(s *sheet, f frame2) { s.rect(layerLamp, f); s.across(layerThin, f, 0.5) },
	"window": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 2)
		s.rounded(layerGlass, f.in(1), 1.5)
	},
	"door": nil, "compartment": nil, "cabinet": nil, "lettering": nil, // drawn by how they open or what they say
	"hatch":   func(s *sheet, f frame2) { s.rounded(layerEdge, f, 2); s.rounded(layerThin, f.in(2), 1) },
	"counter": func(s *sheet, f frame2) { s.rect(layerStore, f); s.across(layerThin, f, 0.92) },
	"console": func(s *sheet, f frame2) { s.rounded(layerStore, f, 1); s.rounded(layerThin, f.in(1.5), 1) },
	"step": func(s *sheet, f frame2) {
		s.rect(layerEdge, f)
		n := math.Max(2, math.Round(f.wide()/4))
		for i := 1.0; i < n; i++ {
			s.upright(layerThin, f, i/n)
		}
	},
	"vent": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 1)
		for i := 1.0; i < 5; i++ {
			s.across(layerThin, f, i/5)
		}
	},
	"unit": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 2)
		s.circle(layerThin, f.at(0.5, 0.5), math.Min(f.wide(), f.high())*0.38)
	},
	"camera": func(s *sheet, f frame2) {
		s.rect(layerEdge, f)
		s.circle(layerThin, f.at(0.5, 0.5), math.Min(f.wide(), f.high())/4)
	},
	"seat": func(s *sheet, f frame2) {
		s.rounded(layerSeat, f, 3)
		s.rounded(layerSeat, frame2{f.u0, f.u1, f.v0, f.v0 + f.high()*0.35}, 2)
	},
	"speaker": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 1)
		for i := 1.0; i < 4; i++ {
			s.upright(layerThin, f, i/4)
		}
	},
	body.KindFlare: flare, "arch": flare,
	"grille": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 1)
		n := math.Max(2, math.Round(f.high()/2))
		for i := 1.0; i < n; i++ {
			s.across(layerThin, f, i/n)
		}
	},
	"plate": func(s *sheet, f frame2) { // tread
		s.rect(layerEdge, f)
		n := math.Max(1, math.Round(f.wide()/6))
		for i := 0.0; i < n; i++ {
			s.line(layerThin, f.at((i+0.2)/n, 0.2), f.at((i+0.8)/n, 0.8))
		}
	},
	"outlet": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 0.5)
		for _, v := range []float64{0.3, 0.7} {
			s.circle(layerThin, f.at(0.5, v), math.Min(f.wide(), f.high())*0.14)
		}
	},
	"drawer": func(s *sheet, f frame2) {
		s.rect(layerStore, f)
		s.rect(layerThin, f.in(0.7))
		s.line(layerDoor, f.at(0.4, 0.5), f.at(0.6, 0.5))
	},
	"panel": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 0.8)
		for i := 1.0; i < 4; i++ {
			s.circle(layerThin, f.at(i/4, 0.3), math.Min(f.wide(), f.high())*0.07)
		}
		s.across(layerThin, f, 0.6)
	},
	"opening": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 1)
		s.line(layerDoor, f.at(0.2, 0.5), f.at(0.8, 0.5), f.at(0.65, 0.53))
	},
	"screen": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 0.6)
		s.rect(layerGlass, f.in(math.Min(0.8, f.high()/6)))
	},
	"hook": func(s *sheet, f frame2) {
		s.rect(layerThin, f)
		s.line(layerEdge, f.at(0.5, 1), f.at(0.5, 0.2), f.at(0.9, 0.2))
	},
	"gas": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, 0.8)
		s.circle(layerEdge, f.at(0.5, 0.5), math.Min(f.wide(), f.high())*0.3)
	},
	"mirror": func(s *sheet, f frame2) { s.rounded(layerEdge, f, 1.5); s.rounded(layerGlass, f.in(1), 1) },
	"rail": func(s *sheet, f frame2) {
		s.rounded(layerEdge, f, math.Min(f.wide(), f.high())/2)
	},
	"flap": func(s *sheet, f frame2) { s.rect(layerTire, f) },
	"band": func(s *sheet, f frame2) { s.rect(layerMark, f) },
	"check": func(s *sheet, f frame2) {
		s.rect(layerEdge, f)
		side := f.high() / 2
		n := math.Max(2, math.Round(f.wide()/side))
		for i := 0.0; i < n; i++ {
			low := math.Mod(i, 2) / 2
			s.area(layerMark, f.at(i/n, low), f.at((i+1)/n, low), f.at((i+1)/n, low+0.5), f.at(i/n, low+0.5))
		}
	},
	"sweep": func(s *sheet, f frame2) {
		s.area(layerMark, f.at(0, 0), f.at(0.55, 0), f.at(0.8, 0.12), f.at(1, 0.7), f.at(1, 1), f.at(0.72, 0.34),
			f.at(0.5, 0.2), f.at(0, 0.2))
	},
	"chevron": chevrons,
	"star": func(s *sheet, f frame2) { // six bars on a white disc
		r := math.Min(f.wide(), f.high()) / 2
		c := f.at(0.5, 0.5)
		s.circle(layerEdge, c, r)
		for i := range 3 {
			a := math.Pi/2 + float64(i)*math.Pi/3
			u, v := 0.95*r*math.Cos(a), 0.95*r*math.Sin(a)
			p, q := -v*0.28, u*0.28
			s.area(layerMark, Point{c.U + u + p, c.V + v + q}, Point{c.U + u - p, c.V + v - q},
				Point{c.U - u - p, c.V - v - q}, Point{c.U - u + p, c.V - v + q})
		}
	},
	"bumper": func(s *sheet, f frame2) {
		if f.high() < guardIn {
			s.rounded(layerEdge, f, 2)
			s.across(layerThin, f, 0.3)
			s.across(layerThin, f, 0.75)
			return
		}
		for _, u := range []float64{0, 0.25, 0.72, 0.97} { // a guard of tubes, which hides little
			s.rect(layerEdge, frame2{f.at(u, 0).U, f.at(u+0.03, 0).U, f.v0, f.v1})
		}
		for _, v := range []float64{0.05, 0.5, 0.92} {
			s.rect(layerEdge, frame2{f.u0, f.u1, f.at(0, v).V, f.at(0, v+0.06).V})
		}
	},
	"bench": func(s *sheet, f frame2) {
		s.rounded(layerSeat, f, 2)
		for _, u := range []float64{1.0 / 3, 2.0 / 3} {
			s.upright(layerThin, f, u)
		}
	},
}

// flare goes around a wheel opening.
func flare(s *sheet, f frame2) {
	var p pen
	ring := func(in float64, from, to float64) {
		for i := range 13 {
			a := from + (to-from)*float64(i)/12
			p.to((f.u0+f.u1)/2+(f.wide()/2-in)*math.Cos(a), f.v0+(f.high()-in)*math.Sin(a))
		}
	}
	ring(0, 0, math.Pi)
	ring(1.5, math.Pi, 0)
	s.area(layerRim, p.points...)
}

// guardIn is how high a bumper is that is a guard of tubes, at least.
const guardIn = 16.0

// chevrons are slanted bars that point up to the middle.
func chevrons(s *sheet, f frame2) {
	const bar = 6.0
	s.rect(layerEdge, f)
	mid := f.wide() / 2
	for v := -mid; v < f.high(); v += 2 * bar {
		for _, side := range []float64{-1, 1} {
			// A bar rises by its run from the edge to the middle; what stands out of the frame is cut.
			p := []Point{{side * mid, v}, {0, v + mid}, {0, v + mid + bar}, {side * mid, v + bar}}
			p = clipped(p, func(p Point) float64 { return p.V })
			p = clipped(p, func(p Point) float64 { return f.high() - p.V })
			for i := range p {
				p[i] = Point{f.u0 + mid + p[i].U, f.v0 + p[i].V}
			}
			if len(p) > 2 {
				s.area(layerMark, p...)
			}
		}
	}
}

// clipped is the part of an outline where a linear measure is zero or more.
func clipped(list []Point, measure func(Point) float64) (out []Point) {
	for i, p := range list {
		q := list[(i+1)%len(list)]
		a, b := measure(p), measure(q)
		if a >= 0 {
			out = append(out, p)
		}
		if a >= 0 != (b >= 0) {
			t := a / (a - b)
			out = append(out, Point{p.U + t*(q.U-p.U), p.V + t*(q.V-p.V)})
		}
	}
	return out
}

// painted puts the colors of the body on its outlines, from the top down; where one meets
// the next there is a line. From above the hood before a module has the color of its height,
// all else the first.
func painted(m *body.Model, list []Shape, from string) []Shape {
	paint := m.Look.Paint
	if paint == nil {
		return list
	}
	var out []Shape
	outlines := 0
	for _, s := range list {
		large := s.Layer == layerEdge && s.Closed && (&View{Groups: []Group{{Shapes: []Shape{s}}}}).area() > 2000
		if !large {
			out = append(out, s)
			continue
		}
		outlines++
		s.Tint = paint.Colors[0]
		out = append(out, s)
		for i, b := range paint.BreaksIn {
			below := s.Along
			if from == "roof" {
				if outlines > 1 || m.Van {
					break // the roof of the module has the first color
				}
				hood := formOf(m)
				if hood.hood > m.Floor+float64(b)+rise(m, hood.cowlX) {
					break
				}
				below = clipped(below, func(p Point) float64 { return hood.cowlX - p.U })
			} else {
				level := func(p Point) float64 {
					return m.Floor + float64(b) + rise(m, stationOf(m, from, outlines, p))
				}
				below = clipped(below, func(p Point) float64 { return level(p) - p.V })
			}
			if len(below) > 2 {
				out = append(out, Shape{Layer: layerEdge, Along: below, Closed: true, Tint: paint.Colors[i+1]})
			}
		}
	}
	return out
}

// rise of a break between two colors at a station, above its height at the module's middle.
func rise(m *body.Model, x float64) float64 {
	return float64(m.Look.Paint.RiseIn) * (x - (m.Front+m.Rear)/2) / math.Max(m.Rear-m.Front, 1)
}

// stationOf is how far behind the front axle a point of an outline is. From ahead the
// first outline is the module, the second the cab.
func stationOf(m *body.Model, from string, outline int, p Point) float64 {
	switch {
	case from == "curb":
		return -p.U
	case from == "rear":
		return m.Rear
	case from == "front" && outline > 1:
		return formOf(m).cowlX
	case from == "front":
		return m.Front
	}
	return p.U
}

// area of the rectangle around a view.
func (v *View) area() float64 {
	left, right, low, high := v.Bounds()
	return (right - left) * (high - low)
}

// hinges of a leaf at its left or right edge: u is 0 or 1.
func hinges(s *sheet, f frame2, u float64) {
	half := math.Min(1.5, f.high()*0.1)
	for _, v := range []float64{0.12, 0.5, 0.88} {
		p := f.at(u, v)
		s.line(layerDoor, Point{p.U, p.V - half}, Point{p.U, p.V + half})
	}
}

// leaf is a door with its handle on the side away from its hinges; one that slides has
// a track instead.
func leaf(s *sheet, f frame2, hinge string) {
	s.rounded(layerRim, f, 2)
	s.rounded(layerThin, f.in(1.5), 1.5)
	switch hinge {
	case "slide":
		s.line(layerDoor, f.at(0, 0.97), f.at(1.6, 0.97))
		s.line(layerDoor, f.at(0.12, 0.46), f.at(0.3, 0.46))
	case "left":
		s.line(layerDoor, f.at(0.88, 0.46), f.at(0.7, 0.46))
		hinges(s, f, 0)
	default:
		s.line(layerDoor, f.at(0.12, 0.46), f.at(0.3, 0.46))
		hinges(s, f, 1)
	}
}

// outsideDoor is that of an outside compartment: a frame, a leaf or two, and latches; or
// slats that roll up.
func outsideDoor(s *sheet, f frame2, hinge string) {
	s.rounded(layerRim, f, 1.5)
	s.rounded(layerThin, f.in(1.2), 1)
	latch := func(u, v float64) {
		c, half := f.at(u, v), math.Min(2, f.wide()/5)
		c.U = math.Max(math.Min(c.U, f.u1-half-1), f.u0+half+1) // within its leaf
		s.rounded(layerDoor, frame2{c.U - half, c.U + half, c.V - 1.5, c.V + 1.5}, 0.8)
	}
	switch {
	case hinge == "roll":
		n := math.Max(2, math.Round(f.high()/5))
		for i := 1.0; i < n; i++ {
			s.across(layerThin, f.in(1.2), i/n)
		}
		latch(0.5, 0.5/n)
	case hinge == "top":
		latch(0.5, 0.15)
	case hinge == "bottom":
		latch(0.5, 0.85)
	case f.wide() > 34 || hinge == "pair": // two leaves
		s.upright(layerThin, f.in(1.2), 0.5)
		latch(0.5, 0.5)
		hinges(s, f, 0)
		hinges(s, f, 1)
	default:
		latch(0.16, 0.5)
		hinges(s, f, 1)
	}
}

// cabinet is one inside: leaves of some 20 in with their knobs, panes that slide past each
// other, slats, or a net.
func cabinet(s *sheet, f frame2, hinge string) {
	s.rect(layerStore, f)
	in := f.in(1)
	switch hinge {
	case "slide":
		s.rect(layerThin, frame2{in.u0, in.at(0.54, 0).U, in.v0, in.v1})
		s.rect(layerThin, frame2{in.at(0.46, 0).U, in.u1, in.v0, in.v1})
		s.circle(layerDoor, in.at(0.08, 0.5), 0.8)
		s.circle(layerDoor, in.at(0.92, 0.5), 0.8)
		return
	case "roll":
		n := math.Max(2, math.Round(f.wide()/4))
		for i := 1.0; i < n; i++ {
			s.upright(layerThin, in, i/n)
		}
		return
	case "net":
		for i := 0.0; i < 4; i++ {
			s.line(layerThin, in.at(i/4, 0), in.at((i+1)/4, 1))
			s.line(layerThin, in.at((i+1)/4, 0), in.at(i/4, 1))
		}
		return
	}
	n := math.Max(1, math.Round(f.wide()/20))
	for i := range int(n) {
		leaf := frame2{f.u0 + f.wide()*float64(i)/n, f.u0 + f.wide()*float64(i+1)/n, f.v0, f.v1}.in(1)
		s.rect(layerThin, leaf)
		s.circle(layerDoor, leaf.at(0.12, 0.5), 0.7)
	}
}

// cotTop is a cot from above: its mattress between side rails, wider on a wide one; the
// battery of a powered one stands at its foot, the chamber of an incubator on its sled.
func cotTop(f frame2, look string) []Shape {
	var s sheet
	s.rounded(layerCot, f, 4)
	pad := frame2{f.u0 + 1, f.u1 - 1, f.v0 + 3, f.v1 - 3}
	switch look {
	case "incubator":
		box := frame2{f.at(0.12, 0).U, f.at(0.72, 0).U, f.v0 + 2, f.v1 - 2}
		s.rounded(layerGlass, box, 2)
		for _, u := range []float64{0.25, 0.5, 0.75} { // ports for the hands
			s.circle(layerThin, Point{box.at(u, 0).U, box.v0 + 4}, 2.5)
			s.circle(layerThin, Point{box.at(u, 0).U, box.v1 - 4}, 2.5)
		}
		s.rect(layerThin, frame2{box.u1 + 2, f.u1 - 2, f.v0 + 3, f.v1 - 3})
		return s.shapes
	case "wide", "wide-power":
		pad = frame2{f.u0 + 1, f.u1 - 1, f.v0 + 0.8, f.v1 - 0.8}
	}
	if look == "power" || look == "wide-power" {
		box := frame2{f.u1 - 7, f.u1 - 1, f.v0 + 5, f.v1 - 5}
		pad.u1 = box.u0 - 1
		s.rounded(layerThin, box, 1)
		s.line(layerDoor, box.at(0.5, 0.25), box.at(0.5, 0.75))
		s.line(layerDoor, box.at(0.25, 0.5), box.at(0.75, 0.5))
	}
	s.rounded(layerThin, pad, 3)
	s.upright(layerThin, pad, 0.3) // where the back is raised
	s.rounded(layerThin, frame2{pad.u0 + 2, pad.u0 + 13, pad.v0 + 2, pad.v1 - 2}, 3)
	return s.shapes
}

// seatTop is a seat from above, with its back on a side.
func seatTop(f frame2, back side) []Shape {
	var s sheet
	s.rounded(layerSeat, f, 3)
	switch back {
	case rearward:
		s.upright(layerThin, f, 0.85)
	case forward:
		s.upright(layerThin, f, 0.15)
	case curbward:
		s.across(layerThin, f, 0.85)
	case streetward:
		s.across(layerThin, f, 0.15)
	}
	return s.shapes
}

// side is one in a plan.
type side int

const (
	rearward side = iota
	forward
	curbward
	streetward
)

// wallSeatIn is how far from the middle of a unit seats have to be to stand with their backs to a wall.
const wallSeatIn = 20

// backOf is where the back of a seat is: in the cab behind who looks ahead; in the module at
// the wall, and of those in the middle ahead of who looks to the patient or down the aisle.
func backOf(inCab bool, y float64) side {
	switch {
	case inCab:
		return rearward
	case y > wallSeatIn:
		return curbward
	case y < -wallSeatIn:
		return streetward
	}
	return forward
}
