package drawing

import (
	"cmp"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// way is how a unit is looked at.
type way struct {
	id, title string
	label     string // on a button
	flat      func(b body.Box) frame2
	near      func(b body.Box) float64 // larger is nearer to whoever looks
	face      []string                 // faces seen square on
	shows     func(m *body.Model, p *body.Part) bool
	truck     func(m *body.Model) []Shape
	inside    bool
}

// The views of a unit, each with what it is called on a sheet.
var ways = []way{
	{id: "street", title: "Street side", label: "Street side", flat: alongLeft, near: func(b body.Box) float64 {
		return -b.Y0
	},
		face: []string{config.FaceStreet}, shows: outsideFrom(config.FaceStreet), truck: sideOf},
	{id: "curb", title: "Curb side", label: "Curb side", flat: alongRight, near: func(b body.Box) float64 {
		return b.Y1
	},
		face: []string{config.FaceCurb}, shows: outsideFrom(config.FaceCurb),
		truck: func(m *body.Model) []Shape { return turned(sideOf(m)) }},
	{id: "front", title: "Front", label: "Front", flat: acrossLeft, near: func(b body.Box) float64 { return -b.X0 },
		face: []string{config.FaceFront}, shows: ahead, truck: frontOf},
	{id: "rear", title: "Rear", label: "Rear", flat: acrossRight, near: func(b body.Box) float64 { return b.X1 },
		face: []string{config.FaceRear}, shows: behind, truck: rearEnd},
	{id: "roof", title: "Roof plan", label: "Roof", flat: above, near: func(b body.Box) float64 { return b.Z1 },
		face: []string{config.FaceRoof}, shows: aloft, truck: shellTop},
	{id: "floor", title: "Floor plan", label: "Floor", flat: above, near: func(b body.Box) float64 { return b.Z1 },
		shows: indoors, truck: func(m *body.Model) []Shape {
			return append(shellTop(m), wallsTop(m)...)
		}, inside: true},
	{id: "street-wall", title: "Inside, street-side wall", label: "Street wall", flat: alongRight,
		near: func(b body.Box) float64 { return b.Y1 }, face: []string{config.FaceStreetWall, config.FaceFloor},
		shows: func(m *body.Model, p *body.Part) bool { _, y, _ := p.Center(); return within(m, p) && y < -4 },
		truck: func(m *body.Model) []Shape { return room(-m.Rear, -m.Front, m.Wall, m) }, inside: true},
	{id: "curb-wall", title: "Inside, curb-side wall", label: "Curb wall", flat: alongLeft,
		near: func(b body.Box) float64 { return -b.Y0 }, face: []string{config.FaceCurbWall, config.FaceFloor},
		shows: func(m *body.Model, p *body.Part) bool { _, y, _ := p.Center(); return within(m, p) && y > 4 },
		truck: func(m *body.Model) []Shape { return room(m.Front, m.Rear, m.Wall, m) }, inside: true},
	{id: "bulkhead", title: "Inside, toward the cab", label: "Bulkhead", flat: acrossRight,
		near: func(b body.Box) float64 { return b.X1 }, face: []string{config.FaceFrontWall},
		shows: func(m *body.Model, p *body.Part) bool { return within(m, p) && p.X0 < m.Front+depthIn },
		truck: func(m *body.Model) []Shape { return room(-m.Half, m.Half, m.Wall, m) }, inside: true},
	{id: "rear-inside", title: "Inside, toward the rear doors", label: "Rear doors", flat: acrossLeft,
		near: func(b body.Box) float64 { return -b.X0 }, face: []string{config.FaceRearWall, config.FaceRear},
		shows: func(m *body.Model, p *body.Part) bool { return within(m, p) && p.X1 > m.Rear-depthIn },
		truck: func(m *body.Model) []Shape { return room(-m.Half, m.Half, m.Wall, m) }, inside: true},
}

// depthIn is how far from an end wall things still belong to its view.
const depthIn = 30.0

// overheadIn is how far above the floor things hang overhead, and are dashed in its plan.
const overheadIn = 36.0

func alongLeft(b body.Box) frame2   { return frame2{b.X0, b.X1, b.Z0, b.Z1} }
func alongRight(b body.Box) frame2  { return frame2{-b.X1, -b.X0, b.Z0, b.Z1} }
func acrossLeft(b body.Box) frame2  { return frame2{-b.Y1, -b.Y0, b.Z0, b.Z1} }
func acrossRight(b body.Box) frame2 { return frame2{b.Y0, b.Y1, b.Z0, b.Z1} }
func above(b body.Box) frame2       { return frame2{b.X0, b.X1, b.Y0, b.Y1} }

// shell are the outlines, drawn by their own shapes.
func shell(p *body.Part) bool { return p.Kind == body.KindCab || p.Kind == body.KindModule }

// outward reports whether a part is on the outside.
func outward(p *body.Part) bool {
	switch p.Face {
	case config.FaceStreet, config.FaceCurb, config.FaceFront, config.FaceRear, config.FaceRoof, config.FaceUnder:
		return true
	}
	return false
}

// within reports whether a part is in the module or the room of a van.
func within(m *body.Model, p *body.Part) bool {
	if shell(p) || p.X1 <= m.Front {
		return false
	}
	switch p.Kind {
	case body.KindWheel, body.KindFuel, body.KindFrame:
		return false
	case "window", "door", "compartment", body.KindWheelBox, "hatch":
		return true
	}
	return !outward(p)
}

// indoors is what is in the module or in the cab.
func indoors(m *body.Model, p *body.Part) bool {
	switch p.Kind {
	case body.KindWheel, body.KindFuel, body.KindFrame:
		return false
	}
	return within(m, p) || !outward(p) && !shell(p)
}

// outsideFrom is what is seen from a side: its own face, the ends and the roof in
// profile, and beneath it frame and tank.
func outsideFrom(side string) func(*body.Model, *body.Part) bool {
	other := map[string]string{config.FaceStreet: config.FaceCurb, config.FaceCurb: config.FaceStreet}[side]
	return func(m *body.Model, p *body.Part) bool {
		if behindADoor(p) {
			return false
		}
		switch p.Kind {
		case body.KindFrame:
			return true
		case body.KindFuel:
			_, y, _ := p.Center()
			return y == 0 || (y < 0) == (side == config.FaceStreet)
		case body.KindWheelBox:
			return false
		case "door":
			if p.Option == "" {
				return p.Face == side
			}
		case "seat", "cot", "cabinet":
			return false
		}
		return !shell(p) && outward(p) && p.Face != other
	}
}

// behindADoor reports whether a part is a mount or a slot in an outside compartment.
func behindADoor(p *body.Part) bool { return p.Slot && p.Kind == "compartment" }

func ahead(m *body.Model, p *body.Part) bool {
	if p.Kind == body.KindWheel {
		return p.X1 < m.Front
	}
	return standsOut(p) && p.Face != config.FaceRear
}

func behind(m *body.Model, p *body.Part) bool {
	if p.Kind == body.KindWheel {
		return p.X0 > m.RearAxle/2
	}
	return (p.Face == config.FaceRear || standsOut(p)) && p.Face != config.FaceFront && !behindADoor(p)
}

// standsOut reports whether a part shows in profile beyond the outline.
func standsOut(p *body.Part) bool {
	switch p.Kind {
	case body.KindWheelBox, body.KindFuel, body.KindFrame, "compartment", "window", "door":
		return false
	}
	return outward(p) && !shell(p)
}

func aloft(_ *body.Model, p *body.Part) bool {
	return standsOut(p) && p.Face != config.FaceUnder && p.Kind != body.KindWheel
}

func sideOf(m *body.Model) []Shape {
	list := cabSide(m)
	if !m.Van {
		list = append(list, moduleSide(m)...)
	}
	return list
}

func frontOf(m *body.Model) []Shape { return append(boxEnd(m), cabFront(m)...) }

// Views are a unit from every side.
func Views(m *body.Model) (list []View) {
	for i := range ways {
		list = append(list, ViewOf(m, ways[i].id))
	}
	return list
}

// Looks are buttons for the sides that a unit can be seen from; the present one is marked.
func Looks(from string) Part {
	return El("div", Class("looks screen"), At("role", "toolbar"), At("aria-label", "Seen from"),
		Each(ways, func(_ int, w way) Part {
			return page.Action("look", w.id, "", w.label, Class("quiet"), At("id", "look-"+w.id),
				page.InRow(w.id == from), If(w.id == from, At("aria-current", "true")))
		}))
}

// ViewOf draws a unit from one side; an id that is none is the street side.
func ViewOf(m *body.Model, id string) View {
	w := wayOf(id)
	v := View{ID: w.id, Title: w.title}
	var parts []*body.Part
	for i := range m.Parts {
		if p := &m.Parts[i]; w.shows(m, p) && drawable(p) {
			parts = append(parts, p)
		}
	}
	slices.SortStableFunc(parts, func(a, b *body.Part) int {
		return cmp.Or(cmp.Compare(w.rank(m, a), w.rank(m, b)), cmp.Compare(w.nearness(a), w.nearness(b)))
	})
	hull := Group{ID: "shell", Label: m.Chassis.Label, Shapes: w.truck(m)}
	if !w.inside {
		hull.Shapes = painted(m, hull.Shapes, w.id)
	}
	drawn := false
	for _, p := range parts {
		if !drawn && w.rank(m, p) > 0 {
			v.Groups, drawn = append(v.Groups, hull), true
		}
		v.Groups = append(v.Groups, Group{ID: p.ID, Label: p.Label, Option: p.Option, Shapes: w.draw(m, p)})
	}
	if !drawn {
		v.Groups = append(v.Groups, hull)
	}
	return v
}

// Ghosts are the outlines of options that are not in the unit, where they would stand in a
// view. Those that are not seen from there have none.
func Ghosts(m *body.Model, id string, options []*config.Option) (list []Group) {
	w := wayOf(id)
	for _, o := range options {
		g := Group{Option: o.ID, Label: o.Label}
		var s sheet
		for _, p := range m.PartsOf(o) {
			if w.shows(m, &p) && drawable(&p) {
				s.rect(layerHidden, w.flat(p.Box))
			}
		}
		if g.Shapes = s.shapes; len(g.Shapes) > 0 {
			list = append(list, g)
		}
	}
	return list
}

// wayOf is the way a view is looked at; the street side for an id that is none.
func wayOf(id string) *way {
	return &ways[max(slices.IndexFunc(ways, func(w way) bool { return w.id == id }), 0)]
}

// nearness of a part to whoever looks; letters stand on the rails and cases that they cross,
// and what is painted or stuck on the body lies under the seams of the doors that it crosses.
func (w *way) nearness(p *body.Part) float64 {
	switch {
	case p.Kind == "lettering":
		return w.near(p.Box) + depthIn
	case !w.inside && plain(p.Kind) == layerMark:
		return math.Inf(-1)
	}
	return w.near(p.Box)
}

// rank puts what the body hides below its outline.
func (w *way) rank(m *body.Model, p *body.Part) int {
	switch {
	case w.inside:
		return 1
	case p.Kind == body.KindFrame || p.Kind == body.KindFuel:
		return 0
	case p.Kind == body.KindWheel && len(w.face) > 0 && p.Face != w.face[0]:
		return 0
	case w.id == "roof" && p.Z1 < m.Floor+30, w.id == "front" && p.X0 > m.Front, w.id == "rear" && p.X1 < m.Rear:
		return 0 // the body covers it
	}
	return 1
}

// draw gives the shapes of a part.
func (w *way) draw(m *body.Model, p *body.Part) []Shape {
	f := w.flat(p.Box)
	square := slices.Contains(w.face, p.Face) || p.Face == config.FaceFree
	switch {
	case p.Kind == body.KindWheel && (w.id == "street" || w.id == "curb"):
		return wheelSide(f, m.Look.Wheels)
	case p.Kind == body.KindWheel:
		var s sheet
		s.rounded(layerTire, f, 2)
		return s.shapes
	case p.Kind == "rail" && (w.id == "street" || w.id == "curb"):
		var list []Shape
		for _, piece := range w.beside(m, f) {
			list = append(list, symbol(m, p, piece, square)...)
		}
		return list
	case w.id == "floor" && p.Kind == "door":
		return w.swing(p)
	case p.ID == "door/rear" && square:
		return leaves(f)
	case w.id == "floor" && p.Z0 > m.Floor+overheadIn:
		var s sheet
		s.rect(layerHidden, f)
		return s.shapes
	case w.id == "floor" && p.Kind == "cot":
		return cotTop(f, m.Look.Cot)
	case w.id == "floor" && p.Kind == "seat":
		x, y, _ := p.Center()
		return seatTop(f, backOf(x < m.Front, y))
	case w.inside && (p.Kind == "compartment" || p.Kind == body.KindWheelBox), w.id != "floor" && w.inside && low(p):
		var s sheet
		if w.id != "floor" {
			f.v0, f.v1 = math.Max(f.v0, m.Under), math.Min(f.v1, m.Roof)
		}
		s.rect(layerHidden, f) // behind the lining, or in front of the wall
		return s.shapes
	case p.Kind == "seat", w.id == "curb-wall" && (p.Kind == "door" || p.Kind == "window"),
		(w.id == "rear-inside" || w.id == "street-wall") && p.Kind == "window":
		square = true
	case w.id == "floor" && p.Kind == "bench", w.inside && p.Kind == "cabinet" && w.id != "floor":
		square = true
	}
	return symbol(m, p, f, square)
}

// beside is what a wheel opening leaves of something along the side of the body.
func (w *way) beside(m *body.Model, f frame2) []frame2 {
	v := (f.v0 + f.v1) / 2
	axle := w.flat(body.Box{X0: m.RearAxle, X1: m.RearAxle}).u0
	open := math.Pow(m.RearWheel.Radius+body.OpeningIn, 2) - math.Pow(v-m.RearWheel.Radius, 2)
	half := math.Sqrt(math.Max(open, 0))
	if half == 0 || f.u0 > axle-half || f.u1 < axle+half {
		return []frame2{f}
	}
	return []frame2{{f.u0, axle - half, f.v0, f.v1}, {axle + half, f.u1, f.v0, f.v1}}
}

// low reports whether a part stands in the middle of the room, before the walls.
func low(p *body.Part) bool { return p.Kind == "cot" || p.Kind == "litter" }

// leaves are the two of the rear doors, with hinges outside and handles at the middle.
func leaves(f frame2) []Shape {
	var s sheet
	mid := (f.u0 + f.u1) / 2
	for _, leaf := range []frame2{{f.u0, mid, f.v0, f.v1}, {mid, f.u1, f.v0, f.v1}} {
		s.rounded(layerRim, leaf, 2)
		s.rounded(layerThin, leaf.in(1.5), 1.5)
	}
	hinges(&s, f, 0)
	hinges(&s, f, 1)
	s.line(layerDoor, Point{mid + 2, f.v0 + f.high()*0.42}, Point{mid + 2, f.v0 + f.high()*0.56})
	return s.shapes
}

// swing is a doorway in the floor plan, with the way its leaves open.
func (w *way) swing(p *body.Part) []Shape {
	var s sheet
	f := w.flat(p.Box)
	s.rect(layerGlass, f)
	leaf := func(hinge Point, r, from, to float64) {
		q := pen{}
		q.to(hinge.U, hinge.V)
		q.arc(hinge, r, from, to)
		s.line(layerDoor, q.points...)
	}
	switch p.Face {
	case config.FaceRear:
		r := f.high() / 2
		leaf(Point{f.u1, f.v0}, r, 0, math.Pi/2)
		leaf(Point{f.u1, f.v1}, r, 0, -math.Pi/2)
	case config.FaceCurb:
		if p.Hinge == "slide" { // open, along the outside
			s.rect(layerThin, frame2{f.u1, f.u1 + f.wide(), f.v1 + 0.5, f.v1 + 2})
			break
		}
		leaf(Point{f.u0, f.v1}, f.wide(), math.Pi/2, 0)
	}
	return s.shapes
}

// drawable keeps what has a size and a place that is a number.
func drawable(p *body.Part) bool {
	for _, v := range []float64{p.X0, p.X1, p.Y0, p.Y1, p.Z0, p.Z1} {
		if !(math.Abs(v) < 1e5) {
			return false
		}
	}
	return p.X1 >= p.X0 && p.Y1 >= p.Y0 && p.Z1 >= p.Z0
}
