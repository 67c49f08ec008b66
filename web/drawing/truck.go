package drawing

import (
	"math"
	"slices"

	"boxwright/config/body"
)

// form of a cab's sheet metal as is usual: height of sill, nose and hood, foot
// of the windshield, where it meets the roof, and the front edge of the door.
type form struct{ sill, nose, hood, cowlX, headX, door float64 }

var forms = map[string]form{
	"van":         {17, 31, 42, 15, 45, 23},
	"cutaway":     {17, 31, 42, 15, 42, 23},
	"cab-chassis": {19, 35, 50, 27, 49, 33},
	"medium":      {24, 42, 59, 19, 35, 25},
}

func formOf(m *body.Model) form {
	if f, ok := forms[m.Chassis.Cab]; ok {
		return f
	}
	return forms["cutaway"]
}

// noseIn is how far the hood's front stands behind the bumper's face.
const noseIn = 3.0

// turned are shapes seen from the other side.
func turned(list []Shape) []Shape {
	for i := range list {
		for k := range list[i].Along {
			list[i].Along[k].U *= -1
		}
	}
	return list
}

// cabSide is the chassis' own sheet metal from the street side, front to the left:
// hood and cab, or the whole van.
func cabSide(m *body.Model) []Shape {
	f, nose := formOf(m), m.Bumper+noseIn
	front, rear := m.FrontWheel.Radius, m.RearWheel.Radius
	back, top, roofX := m.CabBack+1, m.CabRoof, f.headX
	var p pen
	p.to(nose, f.sill)
	p.to(nose, f.nose)
	p.bend(nose, f.hood-3, nose+9, f.hood)
	p.bend(f.cowlX-14, f.hood+2, f.cowlX, m.Hood)
	p.to(f.headX, m.CabRoof-5)
	if m.Van && m.Roof > m.CabRoof { // a raised roof, whose front carries the lamps
		top, roofX = m.Roof, m.Front-4
		p.to(roofX, top-8)
	}
	p.bend(roofX+2, top, roofX+6, top)
	if m.Van {
		back = m.Rear
		p.to(back-14, top)
		p.bend(back-3, top, back-2, top-9)
		p.to(back, m.Hood)
		p.to(back, f.sill)
		p.arch(m.RearAxle, rear, 3.5, f.sill)
	} else {
		p.to(back, top)
		p.to(back, f.sill)
	}
	p.arch(0, front, 3.5, f.sill)
	var s sheet
	s.area(layerEdge, p.points...)
	end := math.Min(m.CabBack-2, f.door+44)
	head, foot := m.CabRoof-9, m.Hood+1
	s.area(layerGlass, Point{f.cowlX + 8, foot}, Point{f.headX + 5, head}, Point{end - 3, head}, Point{end - 3, foot})
	s.area(layerThin, Point{f.door, f.sill + 4}, Point{f.door, foot - 3}, Point{f.headX + 3, head + 3},
		Point{end, head + 3}, Point{end, f.sill + 4})
	s.line(layerDoor, Point{end - 10, m.Hood - 5}, Point{end - 4, m.Hood - 5})
	s.rounded(layerLamp, frame2{nose, nose + 8, f.nose + 1, f.nose + 7}, 2)
	if !has(m, "mirror") {
		s.rounded(layerEdge, frame2{f.cowlX + 7, f.cowlX + 11, foot, foot + 11}, 1.5)
	}
	if m.Van {
		s.line(layerThin, Point{end, m.Hood - 3}, Point{back, m.Hood - 3})
		s.rect(layerLamp, frame2{back - 5, back - 1, m.Hood - 10, m.Hood + 4})
	}
	return s.shapes
}

// has reports whether an option brings a part of a kind, in place of the chassis' own.
func has(m *body.Model, kind string) bool {
	return slices.ContainsFunc(m.Parts, func(p body.Part) bool { return p.Kind == kind && p.Option != "" })
}

// moduleSide is the box from the street side: roof radius, corner posts, roof rail,
// skirt with its wheel arch.
func moduleSide(m *body.Model) []Shape {
	const corner = 4.0
	var p pen
	p.to(m.Front, m.Skirt)
	p.arc(Point{m.Front + corner, m.Roof - corner}, corner, math.Pi, math.Pi/2)
	p.arc(Point{m.Rear - corner, m.Roof - corner}, corner, math.Pi/2, 0)
	p.to(m.Rear, m.Skirt)
	p.arch(m.RearAxle, m.RearWheel.Radius, body.OpeningIn, m.Skirt)
	var s sheet
	s.area(layerEdge, p.points...)
	for _, x := range []float64{m.Front + 3, m.Rear - 3} {
		s.line(layerThin, Point{x, m.Skirt}, Point{x, m.Roof - 3})
	}
	s.line(layerThin, Point{m.Front, m.Roof - 4.5}, Point{m.Rear, m.Roof - 4.5})
	half := math.Sqrt(math.Max(math.Pow(m.RearWheel.Radius+body.OpeningIn, 2)-math.Pow(m.Skirt+5-m.RearWheel.Radius, 2),
		1))
	s.line(layerThin, Point{m.Front, m.Skirt + 5}, Point{m.RearAxle - half, m.Skirt + 5})
	s.line(layerThin, Point{m.RearAxle + half, m.Skirt + 5}, Point{m.Rear, m.Skirt + 5})
	return s.shapes
}

// cabFront is the cab seen from ahead: hood, grille, windshield and lamps.
func cabFront(m *body.Model) []Shape {
	f, half, top := formOf(m), m.CabHalf, m.CabRoof
	var s sheet
	s.area(layerEdge, Point{-half, f.sill}, Point{half, f.sill}, Point{half, m.Hood}, Point{half - 7, top - 4},
		Point{half - 12, top}, Point{-half + 12, top}, Point{-half + 7, top - 4}, Point{-half, m.Hood})
	s.area(layerGlass, Point{-half + 5, m.Hood + 1}, Point{half - 5, m.Hood + 1}, Point{half - 10, top - 7},
		Point{-half + 10, top - 7})
	s.line(layerThin, Point{-half, f.hood}, Point{half, f.hood})
	grille := frame2{-half * 0.55, half * 0.55, f.sill + 7, f.hood - 4}
	s.rounded(layerThin, grille, 3)
	for i := 1; i < 4; i++ {
		s.across(layerThin, grille, float64(i)/4)
	}
	for _, side := range []float64{-1, 1} {
		a, b := side*half*0.62, side*half*0.95
		s.rounded(layerLamp, frame2{math.Min(a, b), math.Max(a, b), f.nose - 1, f.nose + 7}, 2)
		if !has(m, "mirror") {
			c, d := side*(half+1), side*(half+8)
			s.rounded(layerEdge, frame2{math.Min(c, d), math.Max(c, d), m.Hood + 1, m.Hood + 12}, 1.5)
		}
	}
	return s.shapes
}

// boxEnd is the module or the van from ahead or behind.
func boxEnd(m *body.Model) []Shape {
	var s sheet
	low := m.Skirt
	if m.Van {
		low = formOf(m).sill
	}
	s.rounded(layerEdge, frame2{-m.Half, m.Half, low, m.Roof}, 4)
	return s.shapes
}

// rearEnd is the module or the van from behind, with its stop, turn and backup lamps.
func rearEnd(m *body.Model) []Shape {
	s := sheet{shapes: boxEnd(m)}
	low := m.Skirt + 4
	if m.Van {
		low = m.Hood - 12
	}
	for _, side := range []float64{-1, 1} {
		a, b := side*(m.Half-6), side*(m.Half-2)
		f := frame2{math.Min(a, b), math.Max(a, b), low, low + 15}
		s.rounded(layerLamp, f, 1)
		s.across(layerThin, f, 1.0/3)
		s.across(layerThin, f, 2.0/3)
	}
	return s.shapes
}

// shellTop is what is seen from above: hood and cab with their glass, then the box.
func shellTop(m *body.Model) []Shape {
	f, half, nose := formOf(m), m.CabHalf, m.Bumper+noseIn
	back := m.CabBack + 1
	if m.Van {
		back = m.Rear
	}
	var p pen
	p.to(back, half)
	p.to(nose+14, half)
	p.bend(nose+1, half, nose, half-16)
	p.bend(nose-2*noseIn, 0, nose, -half+16) // bowed, so that its middle is the bumper's face
	p.bend(nose+1, -half, nose+14, -half)
	p.to(back, -half)
	var s sheet
	s.area(layerEdge, p.points...)
	p = pen{}
	p.to(f.cowlX+4, half-3)
	p.bend(f.cowlX-8, 0, f.cowlX+4, -half+3)
	p.to(f.headX+5, -half+8)
	p.bend(f.headX-3, 0, f.headX+5, half-8)
	s.area(layerGlass, p.points...)
	for _, side := range []float64{1, -1} {
		s.line(layerThin, Point{m.Bumper + 8, side * (half - 14)}, Point{f.cowlX - 4, side * (half - 10)})
		if !has(m, "mirror") {
			a, b := side*half, side*(half+7)
			s.rounded(layerEdge, frame2{f.cowlX + 8, f.cowlX + 12, math.Min(a, b), math.Max(a, b)}, 1.5)
		}
	}
	if !m.Van {
		s.rounded(layerEdge, wallsOf(m), 3)
	}
	return s.shapes
}

// wallsTop are the walls of the room from above, with their lining.
func wallsTop(m *body.Model) []Shape {
	var s sheet
	s.rect(layerEdge, wallsOf(m))
	s.rect(layerThin, lining(m))
	return s.shapes
}

// wallsOf is the outside of the module from above.
func wallsOf(m *body.Model) frame2 { return frame2{m.Front, m.Rear, -m.Half, m.Half} }

// lining is its inside.
func lining(m *body.Model) frame2 { return wallsOf(m).in(math.Max(m.Wall, 1)) }

// room is the section through the module: skin, floor and ceiling.
func room(left, right, wall float64, m *body.Model) []Shape {
	var s sheet
	s.rect(layerEdge, frame2{left, right, m.Under, m.Roof})
	s.rect(layerThin, frame2{left + wall, right - wall, m.Floor, m.Ceiling})
	return s.shapes
}

// wheelSide is a wheel seen from the side; one that is forged has round holes for the
// hand, a liner shows the nuts around the hub.
func wheelSide(f frame2, look string) []Shape {
	var s sheet
	center, r := f.at(0.5, 0.5), f.high()/2
	s.circle(layerTire, center, r)
	s.circle(layerHub, center, r*0.62)
	s.circle(layerThin, center, r*0.5)
	n, at, size := 0, 0.0, 0.0
	switch look {
	case "forged":
		n, at, size = 8, 0.4, 0.07
	case "liners":
		n, at, size = 10, 0.28, 0.04
	}
	for i := range n {
		a := 2 * math.Pi * float64(i) / float64(n)
		s.circle(layerThin, Point{center.U + r*at*math.Cos(a), center.V + r*at*math.Sin(a)}, r*size)
	}
	s.circle(layerTire, center, r*0.14)
	return s.shapes
}
