// Package body is the one geometric model of a unit: where every door, compartment,
// window, wheel box, step, seat, bench, cot, cabinet, tank, lamp and bumper is, in
// inches, from chassis, body and picks; what stands in what; and the sizes, heights and
// angles that follow. Weight takes its stations from it, space its figures, drawings
// their shapes.
//
// Axes: x behind the front axle, y right of the centerline (curb side positive), z above
// the ground, as the vehicle stands loaded.
package body

import (
	"fmt"
	"slices"

	"boxwright/config"
)

// Part is one thing with its place.
type Part struct {
	ID     string // "wheel/front", "comp/ID", "seat/ID", or "OPTION#n"
	Kind   string // of config.PlaceKinds, or one of the kinds below
	Label  string
	Option string // that brings it; empty: chassis or body
	Face   string // of config.PlaceFaces
	Box
	About bool // assumed: the catalogue does not state it

	Hinge, Color, Text string // of config.Hinges, config.ColorNames; what is lettered on it
	Backward           bool   // its text is to be read in a mirror
	Flat               bool   // paint, film or lettering, which stands out of nothing
	Slot               bool   // a bracket or slot for what is carried, which may be in something hollow
	Fitted             bool   // with others in a compartment of the body; what room is left there is counted apart
}

// assumed is the part's name where its size is assumed.
func (p *Part) assumed() string {
	if p.About {
		return p.Label
	}
	return ""
}

// Kinds that no option brings.
const (
	KindWheel    = "wheel"
	KindWheelBox = "wheel-box"
	KindFuel     = "fuel"
	KindCab      = "cab"    // outline of cab, or of the whole van
	KindModule   = "module" // outline of the module
	KindFrame    = "frame"
	KindFlare    = "flare" // covers tires that stand out of the body
)

// solid reports whether nothing else may stand where a part does.
func (p *Part) solid() bool {
	if p.Slot {
		return true
	}
	switch p.Kind {
	case KindWheelBox, KindFuel:
		return true
	case KindCab, KindModule, KindFrame:
		return false
	case "tank":
		return p.Face == config.FaceUnder // a cylinder stands in what holds it
	}
	return config.PlaceKinds[p.Kind]
}

// Model is a unit's geometry.
type Model struct {
	Planes
	Chassis      *config.Chassis
	Body         *config.Body
	Parts        []Part
	Compartments []config.Compartment // x behind the front wall, y right of the centerline, z above the floor
	CabSeats     []config.Seat        // x behind the front axle, z above the ground
	Seats        []config.Seat        // x behind the front wall, z above the floor
	Look         config.Look          // of the whole, as options and what was typed make it
	details      func(option string) string
	headroom     float64 // that options leave
	lowers       float64
}

// Of builds the model of a unit; nil when its chassis or body is not in the edition.
func Of(cat *config.Catalogue, u *config.Unit) *Model {
	if cat == nil || u == nil {
		return nil
	}
	ch, b := cat.ChassisByID(u.Chassis), cat.BodyOf(u)
	if ch == nil || b == nil {
		return nil
	}
	m := bare(ch, b)
	m.details = u.Detail
	m.dress(cat, u)
	m.stow(cat.CompartmentsOf(u), cat, u)
	for _, p := range u.Picks {
		if o := cat.OptionByID(p.Option); o != nil && p.Qty > 0 {
			m.option(o, p.Qty)
		}
	}
	m.Seats = cat.Untaken(u, m.Seats)
	m.leaves()
	return m
}

// Bare is the model of a chassis with a body before any option.
func Bare(ch *config.Chassis, b *config.Body) *Model {
	m := bare(ch, b)
	for _, c := range b.Compartments {
		m.compartment(c, nil)
	}
	return m
}

func bare(ch *config.Chassis, b *config.Body) *Model {
	m := &Model{Planes: PlanesOf(ch, b), Chassis: ch, Body: b, CabSeats: ch.CabSeats,
		details: func(string) string { return "" }}
	m.headroom = HeadroomIn(b)
	m.truck()
	m.openings()
	return m
}

func (m *Model) add(p Part) { m.Parts = append(m.Parts, p) }

// truck places what the chassis brings.
func (m *Model) truck() {
	p, ch := &m.Planes, m.Chassis
	end := p.CabBack
	if p.Van {
		end = p.Rear
	} else {
		m.add(Part{ID: "frame", Kind: KindFrame, Label: "Frame", Face: config.FaceFree,
			Box: Box{20, p.FrameEnd, -17, 17, p.Frame - 8, p.Frame}, About: true})
		m.add(Part{ID: "module", Kind: KindModule, Label: m.Body.Label, Face: config.FaceFree,
			Box: Box{p.Front, p.Rear, -p.Half, p.Half, p.Under, p.Roof}})
	}
	roof := p.CabRoof
	if p.Van {
		roof = p.Roof
	}
	m.add(Part{ID: "cab", Kind: KindCab, Label: ch.Label, Face: config.FaceFree,
		Box: Box{p.Bumper, end, -p.CabHalf, p.CabHalf, or(ch.ClearanceIn, clearanceIn), roof}})
	low := or(ch.BumperLowIn, bumperLowIn)
	m.add(Part{ID: "bumper", Kind: "bumper", Label: "Front bumper", Face: config.FaceFront, About: ch.BumperLowIn == 0,
		Box: Box{p.Bumper, p.Bumper + 8, -p.CabHalf, p.CabHalf, low, low + 9}})
	m.wheels()
	m.tank()
	for _, s := range ch.CabSeats {
		x, y, z := float64(s.XIn), float64(s.YIn), float64(s.ZIn)
		m.add(Part{ID: "seat/" + s.ID, Kind: "seat", Label: s.Label, Face: config.FaceFree, About: true,
			Box: Box{x - 18, x + 2, y - 9.5, y + 9.5, z - 8, z + 22}})
	}
}

// seatBox is the room of a seat in the module around its station, which lies above the
// cushion and in the middle of it; a folding one is less wide. Of a cot it is that of the
// cot with who lies on it.
func (p *Planes) seatBox(s *config.Seat) Box {
	at := p.Seat(*s)
	x, y, z := p.Front+float64(at.XIn), float64(at.YIn), p.Floor+float64(at.ZIn)
	half := seatHalf(s.Kind)
	if s.Kind == "cot" {
		return about(x, y, p.Floor+20, cotLongIn, 2*half, 40)
	}
	return Box{x - 11, x + 11, y - half, y + half, z - 8, z + 22}
}

// SeatForward is a seat of the module where it locks foremost: as far ahead of its station as
// its track lets it and what stands before it; false where the model does not place it.
func (m *Model) SeatForward(s *config.Seat) (Part, bool) {
	i := slices.IndexFunc(m.Parts, func(p Part) bool { return p.ID == "seat/"+s.ID })
	if i < 0 {
		return Part{}, false
	}
	seat := m.Parts[i]
	room := min(num(s.ForwardIn), seat.X0-m.Front-m.Wall)
	for k := range m.Parts {
		o := &m.Parts[k]
		if k == i || !o.solid() || o.Y0 >= seat.Y1 || o.Y1 <= seat.Y0 || o.Z0 >= seat.Z1 || o.Z1 <= seat.Z0 {
			continue
		}
		if o.X1 <= seat.X0+1 {
			room = min(room, seat.X0-o.X1)
		}
	}
	seat.Box = seat.Moved(-max(room, 0), 0)
	return seat, true
}

// trimOutIn is how far the trim around a wheel opening stands out, at least: it covers a
// tire that stands out of the body no more than that. Common practice, no source.
const trimOutIn = 0.75

// wheels and the boxes that the rear ones turn and jounce in.
func (m *Model) wheels() {
	p := &m.Planes
	for _, axle := range []struct {
		id, label string
		x         float64
		w         Wheel
		stated    bool
	}{{"front", "Front wheel", 0, p.FrontWheel, sized(m.Chassis.FrontTires.Size)},
		{"rear", "Rear wheels", p.RearAxle, p.RearWheel, sized(m.Chassis.RearTires.Size)}} {
		b := Box{axle.x - axle.w.Radius, axle.x + axle.w.Radius, axle.w.Inner, axle.w.Outer, 0, 2 * axle.w.Radius}
		for _, side := range []struct {
			id, label string
			box       Box
		}{{"curb", ", curb side", b}, {"street", ", street side", b.Mirrored()}} {
			m.add(Part{ID: "wheel/" + axle.id + "-" + side.id, Kind: KindWheel, Label: axle.label + side.label,
				Face: side.id, Box: side.box, About: !axle.stated})
		}
	}
	r := p.RearWheel
	b := Box{p.RearAxle - r.Radius - wheelRoomIn, p.RearAxle + r.Radius + wheelRoomIn, r.Inner - wheelRoomIn,
		max(p.Half, r.Outer), 0, 2*r.Radius + p.Jounce + 1}
	for _, side := range []struct {
		id, label string
		box       Box
	}{{"curb", "Wheel box, curb side", b}, {"street", "Wheel box, street side", b.Mirrored()}} {
		m.add(Part{ID: "wheel-box/" + side.id, Kind: KindWheelBox, Label: side.label, Face: side.id, Box: side.box,
			About: m.Chassis.JounceIn == 0})
	}
	if r.Outer <= p.Half+trimOutIn {
		return
	}
	b = p.arch(Box{Y0: p.Half, Y1: r.Outer})
	m.add(Part{ID: "flare/curb", Kind: KindFlare, Label: "Fender flare, curb side", Face: config.FaceCurb, Box: b,
		About: true})
	m.add(Part{ID: "flare/street", Kind: KindFlare, Label: "Fender flare, street side", Face: config.FaceStreet,
		Box: b.Mirrored(), About: true})
}

func sized(size string) bool {
	_, _, ok := TireSize(size)
	return ok
}

// tank of fuel, as long as its gallons ask for in a usual section.
func (m *Model) tank() {
	x, y, z, ok := m.Fuel(m.Chassis)
	if !ok {
		return
	}
	length := float64(m.Chassis.FuelGal) * cubicPerGal / (tankHeightIn * tankWidthIn)
	m.add(Part{ID: "fuel", Kind: KindFuel, Label: "Fuel tank", Face: config.FaceFree, About: true,
		Box: about(x, y, z, length, tankWidthIn, tankHeightIn)})
}

// Fuel is the center of the fuel tank; false for a chassis without one.
func (p *Planes) Fuel(ch *config.Chassis) (x, y, z float64, ok bool) {
	if !(ch.FuelGal > 0 && ch.FuelGal < 1e3) {
		return 0, 0, 0, false
	}
	return or(ch.FuelXIn, fuelAlong*p.RearAxle), float64(ch.FuelYIn), p.Frame - fuelBelowIn, true
}

// openings are the doorways.
func (m *Model) openings() {
	p, stated := &m.Planes, m.Body.Doors
	deep := max(p.Wall, 2)
	hinge := ""
	if p.Van {
		hinge = "slide"
	}
	m.add(Part{ID: "door/side", Kind: "door", Label: "Side entry", Face: config.FaceCurb, About: stated.SideXIn == 0,
		Hinge: hinge, Box: Box{p.DoorFrom, p.DoorTo, p.Half - deep, p.Half, p.Floor, p.DoorHead}})
	w := p.RearDoorHalf
	m.add(Part{ID: "door/rear", Kind: "door", Label: "Rear doors", Face: config.FaceRear,
		About: stated.RearWidthIn == 0,
		Box:   Box{p.Rear - deep, p.Rear, -w, w, p.Floor, p.RearDoorHead}})
}

// headIn is what tall rear doors leave below the ceiling for header and lamps.
const headIn = 6.0

// leaves makes the doorways as large as options have them: tall doors reach further up, a
// door that widens the side entry becomes one leaf with it.
func (m *Model) leaves() {
	side := -1
	for i := range m.Parts {
		switch p := &m.Parts[i]; {
		case p.ID == "door/rear" && m.Look.TallDoors:
			p.Z1 = max(p.Z1, m.Ceiling-headIn)
			m.RearDoorHead = p.Z1
		case p.ID == "door/side":
			side = i
		case p.Kind == "door" && p.Face == config.FaceCurb && side >= 0 && p.X0 <= m.DoorTo && p.X1 > m.DoorTo:
			p.X0, p.Z0, p.Z1 = m.DoorFrom, m.Floor, m.DoorHead
			m.DoorTo = p.X1
			m.Parts = append(m.Parts[:side], m.Parts[side+1:]...)
			return
		}
	}
}

// stow places the unit's compartments.
func (m *Model) stow(list []config.Compartment, cat *config.Catalogue, u *config.Unit) {
	from := map[string]*config.Option{}
	for _, p := range u.Picks {
		if o := cat.OptionByID(p.Option); o != nil {
			for _, c := range o.Compartments {
				from[c.ID] = o
			}
		}
	}
	for _, c := range m.Body.Compartments {
		delete(from, c.ID)
	}
	for _, c := range list {
		m.compartment(c, from[c.ID])
	}
}

// compartment places one that an option brings, or the body.
func (m *Model) compartment(c config.Compartment, o *config.Option) {
	c = m.Planes.CompartmentOf(o, c)
	m.Compartments = append(m.Compartments, c)
	option := ""
	if o != nil {
		option = o.ID
	}
	if c.Holds != nil && o != nil && len(o.Places) > 0 {
		return // a mount is a place of its option already
	}
	kind, face := "compartment", c.Side
	if c.Side == "inside" {
		kind, face = "cabinet", config.FaceFree
	}
	m.add(Part{ID: "comp/" + c.ID, Kind: kind, Label: c.Label, Option: option, Face: face, Box: m.hollow(&c),
		Slot: c.Holds != nil, Fitted: o != nil && o.Fitted != nil})
}

// option places what an option brings besides compartments.
func (m *Model) option(o *config.Option, qty int) {
	m.headroom -= num(o.HeadroomIn) * float64(qty)
	m.lowers += num(o.LowersIn) * float64(qty)
	m.Parts = append(m.Parts, m.partsOf(o)...)
	for range qty {
		for _, s := range o.Seats {
			m.Seats = append(m.Seats, m.Planes.Seat(s))
		}
	}
}

// partsOf one of an option: its places and its seats.
func (m *Model) partsOf(o *config.Option) []Part {
	var out []Part
	bench := false
	for i := range o.Places {
		at := &o.Places[i]
		bench = bench || at.Kind == "bench" || at.Kind == "seat" || at.Kind == "cot" || at.Kind == "litter"
		label := at.Label
		if label == "" {
			label = o.Label
		}
		for n, b := range m.Boxes(at) {
			p := Part{ID: fmt.Sprintf("%s#%d", o.ID, len(out)+1), Kind: at.Kind, Label: label, Option: o.ID,
				Face: at.Face, Box: b, About: at.About, Hinge: at.Hinge, Text: at.Text, Backward: at.Backward,
				Flat: at.Flat()}
			if at.Both {
				p.Face, n = mirroredFace(at.Face, n%2 == 1), n/2
			}
			p.Color = m.color(o, at, p.Face, n)
			if said := m.said(o); said != "" && at.Kind == "lettering" && o.Asks != "" {
				p.Text = said
			}
			out = append(out, p)
		}
	}
	if bench {
		return out // its seats are on what is placed
	}
	for _, s := range o.Seats {
		p := Part{ID: "seat/" + s.ID, Kind: "seat", Label: s.Label, Option: o.ID, Face: config.FaceFloor,
			Box: m.seatBox(&s), About: true}
		if s.Kind == "cot" {
			p.Kind = "cot"
		}
		out = append(out, p)
	}
	return out
}
