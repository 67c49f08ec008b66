package body

import (
	"math"

	"boxwright/config"
	"boxwright/config/quantity"
)

// along is where x of a place counts from.
func (p *Planes) along(name string) float64 {
	switch name {
	case config.AlongMiddle:
		return (p.Front + p.Rear) / 2
	case config.AlongRearWall:
		return p.Rear
	case config.AlongDoor:
		return p.DoorTo
	case config.AlongRearAxle:
		return p.RearAxle
	case config.AlongBumper:
		return p.Bumper
	case config.AlongFrontAxle:
		return 0
	case config.AlongCabBack:
		return p.CabBack
	}
	return p.Front
}

// level is where z of a place counts from.
func (p *Planes) level(name string) float64 {
	switch name {
	case config.LevelRoof:
		return p.Roof
	case config.LevelBelt:
		return p.Belt
	case config.LevelCeiling:
		return p.Ceiling
	case config.LevelSkirt:
		return p.Skirt
	case config.LevelGround:
		return 0
	case config.LevelFrame:
		return p.Frame
	case config.LevelCabRoof:
		return p.CabRoof
	case config.LevelHood:
		return p.Hood
	}
	return p.Floor
}

// Boxes are where the pieces of a place stand.
func (p *Planes) Boxes(at *config.Place) []Box {
	n := max(at.Count, 1)
	pitch := float64(at.PitchIn)
	across := at.Face == config.FaceFront || at.Face == config.FaceRear || at.Face == config.FaceRoof ||
		at.Face == config.FaceFrontWall || at.Face == config.FaceRearWall
	first := p.box(at)
	if at.Spread {
		first, pitch = p.spread(at, first, across, n)
	}
	if at.Kind == "arch" && at.Along == config.AlongRearAxle {
		first = p.arch(first)
	}
	var out []Box
	for i := range n {
		d := (float64(i) - float64(n-1)/2) * pitch
		b := first.Moved(d, 0)
		if across {
			b = first.Moved(0, d)
		}
		if at.Kind == "window" {
			b = p.inDoor(at.Face, b)
		}
		out = append(out, b)
		if at.Both {
			out = append(out, b.Mirrored())
		}
	}
	return out
}

// archIn is how wide the trim around a wheel opening is.
const archIn = 1.5

// arch is the box of the trim around the rear wheel opening, which is as large as the tire
// asks for and ends at the skirt.
func (p *Planes) arch(b Box) Box {
	r := p.RearWheel.Radius + OpeningIn + archIn
	b.X0, b.X1, b.Z0, b.Z1 = p.RearAxle-r, p.RearAxle+r, p.Skirt, p.RearWheel.Radius+r
	if b.Z1 <= b.Z0 {
		b.Z0 = b.Z1 - r
	}
	return b
}

// frameIn is what a door's frame leaves around its window, at least.
const frameIn = 2.0

// inDoor moves a window that is in a door until it is within the leaf.
func (p *Planes) inDoor(face string, b Box) Box {
	x, y, _ := b.Center()
	switch {
	case face == config.FaceCurb && x > p.DoorFrom && x < p.DoorTo:
		b.Z0, b.Z1 = down(b.Z0, b.Z1, p.DoorHead-frameIn)
	case face == config.FaceRear && math.Abs(y) < p.RearDoorHalf:
		b.Z0, b.Z1 = down(b.Z0, b.Z1, p.RearDoorHead-frameIn)
		if y < 0 {
			near, far := down(-b.Y1, -b.Y0, p.RearDoorHalf-frameIn)
			b.Y0, b.Y1 = -far, -near
		} else {
			b.Y0, b.Y1 = down(b.Y0, b.Y1, p.RearDoorHalf-frameIn)
		}
	}
	return b
}

// down moves a span until its end is at a limit.
func down(from, to, limit float64) (float64, float64) {
	by := math.Max(to-limit, 0)
	return from - by, to - by
}

// spread puts the middle piece of a row at the middle of its face and says how far apart
// the pieces are; one piece alone becomes as long as the face, less its edges.
func (p *Planes) spread(at *config.Place, b Box, across bool, n int) (middle Box, pitch float64) {
	half, front, rear := p.Half, p.Front, p.Rear
	if at.OnChassis() {
		half, front, rear = p.CabHalf, p.Bumper, p.CabBack
	}
	edge := float64(at.EdgeIn)
	lo, hi, size := front+edge, rear-edge, b.X1-b.X0
	if across {
		lo, hi, size = -half+edge, half-edge, b.Y1-b.Y0
	}
	hi = math.Max(hi, lo+size)
	if n == 1 {
		size = hi - lo
	} else {
		pitch = (hi - lo - size) / float64(n-1)
	}
	mid := (lo + hi) / 2
	if across {
		b.Y0, b.Y1 = mid-size/2, mid+size/2
	} else {
		b.X0, b.X1 = mid-size/2, mid+size/2
	}
	return b, pitch
}

// box of one piece, the middle one of a row.
func (p *Planes) box(at *config.Place) Box {
	l, w, h, o := float64(at.LengthIn), float64(at.WidthIn), float64(at.HeightIn), float64(at.OutIn)
	x, y, z := p.along(at.Along)+float64(at.XIn), float64(at.YIn), p.level(at.Level)+float64(at.ZIn)
	half, front, rear, roof, under := p.Half, p.Front, p.Rear, p.Roof, p.Under
	if at.OnChassis() {
		half, front, rear, roof, under = p.CabHalf, p.Bumper, p.CabBack, p.CabRoof, p.Frame
	}
	lined := half - p.Wall
	b := about(x, y, z, l, w, h)
	switch at.Face {
	case config.FaceStreet:
		b.Y0, b.Y1 = -half-o+y, -half-o+w+y
	case config.FaceCurb:
		b.Y0, b.Y1 = half+o-w-y, half+o-y
	case config.FaceFront:
		b.X0, b.X1 = front-o+float64(at.XIn), front-o+l+float64(at.XIn)
	case config.FaceRear:
		b.X0, b.X1 = rear+o-l-float64(at.XIn), rear+o-float64(at.XIn)
	case config.FaceRoof:
		b.Z0, b.Z1 = roof+o-h-float64(at.ZIn), roof+o-float64(at.ZIn)
	case config.FaceUnder:
		b.Z0, b.Z1 = under-h-float64(at.ZIn), under-float64(at.ZIn)
	case config.FaceStreetWall:
		b.Y0, b.Y1 = -lined+y, -lined+w+y
	case config.FaceCurbWall:
		b.Y0, b.Y1 = lined-w-y, lined-y
	case config.FaceFrontWall:
		b.X0, b.X1 = front+p.Wall+float64(at.XIn), front+p.Wall+l+float64(at.XIn)
	case config.FaceRearWall:
		b.X0, b.X1 = rear-p.Wall-l-float64(at.XIn), rear-p.Wall-float64(at.XIn)
	case config.FaceCeiling:
		b.Z0, b.Z1 = p.Ceiling-h-float64(at.ZIn), p.Ceiling-float64(at.ZIn)
	case config.FaceFloor:
		b.Z0, b.Z1 = p.Floor+float64(at.ZIn), p.Floor+h+float64(at.ZIn)
	}
	return b
}

// Compartment gives one its place in the module: x behind the front wall, y right of
// the centerline, z above the floor.
func (p *Planes) Compartment(c config.Compartment) config.Compartment {
	depth := num(c.DepthIn)
	switch {
	case c.Wall == config.FaceStreetWall:
		c.YIn += quantity.Length(-p.Half + p.Wall + depth/2)
	case c.Wall == config.FaceCurbWall:
		c.YIn = quantity.Length(p.Half-p.Wall-depth/2) - c.YIn
	case c.YIn != 0:
	case c.Side == "street":
		c.YIn = quantity.Length(-p.Half + depth/2)
	case c.Side == "curb":
		c.YIn = quantity.Length(p.Half - depth/2)
	}
	c.XIn += quantity.Length(p.along(c.Along) - p.Front)
	c.Along, c.Wall = "", ""
	return c
}

// CompartmentOf gives one that an option brings its place. Fitted gear that has none of its
// own in any compartment of the body that it goes into stands in the middle of the first.
func (p *Planes) CompartmentOf(o *config.Option, c config.Compartment) config.Compartment {
	c = p.Compartment(c)
	if o == nil || o.Fitted == nil || c.Holds == nil {
		return c
	}
	var first *config.Compartment
	for _, slot := range o.Fitted.Slots {
		for _, room := range p.compartments {
			if room.Slot != slot {
				continue
			}
			room = p.Compartment(room)
			x, y := math.Abs(float64(room.XIn-c.XIn)), math.Abs(float64(room.YIn-c.YIn))
			if x < num(room.WidthIn)/2 && y < num(room.DepthIn)/2 {
				return within(c, &room)
			}
			if first == nil {
				first = &room
			}
		}
	}
	if first != nil {
		c.XIn, c.YIn, c.Side = first.XIn, first.YIn, first.Side
		return within(c, first)
	}
	return c
}

// within is a mount no higher than the compartment that it stands in, and moved up or down into it.
func within(c config.Compartment, room *config.Compartment) config.Compartment {
	c.HeightIn = min(c.HeightIn, room.HeightIn)
	slack := (room.HeightIn - c.HeightIn) / 2
	c.ZIn = min(max(c.ZIn, room.ZIn-slack), room.ZIn+slack)
	return c
}

// Seat gives a seat in the module its place there: x behind the front wall. In a room that
// is less wide it stands nearer to the middle, against the lining.
func (p *Planes) Seat(s config.Seat) config.Seat {
	s.XIn += quantity.Length(p.along(s.Along) - p.Front)
	s.Along = ""
	most := quantity.Length(max(p.Half-p.Wall-seatHalf(s.Kind), 0))
	s.YIn = min(max(s.YIn, -most), most)
	if s.Kind == "cot" { // nobody lies through the rear doors
		s.XIn = min(s.XIn, quantity.Length(p.Rear-p.Front-p.Wall-cotLongIn/2))
	}
	return s
}

// cotLongIn is how long who lies on a cot or a litter is taken to be.
const cotLongIn = 76

// seatHalf is half the width that a seat of a kind takes.
func seatHalf(kind string) float64 {
	switch kind {
	case "cot":
		return 11.5
	case "folding":
		return 7.5
	}
	return 9.5
}

// hollow is the box of a compartment that has its place.
func (p *Planes) hollow(c *config.Compartment) Box {
	return about(p.Front+float64(c.XIn), float64(c.YIn), p.Floor+float64(c.ZIn), num(c.WidthIn), num(c.DepthIn),
		num(c.HeightIn))
}

// standing is what an option stands in, and what of its mass each has as far as its places
// state it: its places, or else its compartments, or else its seats.
func (p *Planes) standing(o *config.Option) (boxes []Box, lb []float64) {
	for i := range o.Places {
		pieces := p.Boxes(&o.Places[i])
		for _, b := range pieces {
			boxes, lb = append(boxes, b), append(lb, num(o.Places[i].Lb)/float64(len(pieces)))
		}
	}
	if len(boxes) == 0 {
		for i := range o.Compartments {
			c := p.CompartmentOf(o, o.Compartments[i])
			boxes = append(boxes, p.hollow(&c))
		}
	}
	if len(boxes) == 0 {
		for i := range o.Seats {
			boxes = append(boxes, p.seatBox(&o.Seats[i]))
		}
	}
	return boxes, append(lb, make([]float64, len(boxes)-len(lb))...)
}

// Center of the mass of what an option stands in: of each place by what it is stated to
// weigh, of the others by volume; false when the option stands nowhere.
func (p *Planes) Center(o *config.Option) (x, y, z float64, ok bool) {
	boxes, lb := p.standing(o)
	stated, volume := 0.0, 0.0
	for i := range boxes {
		if stated += lb[i]; lb[i] == 0 {
			volume += boxes[i].Volume()
		}
	}
	rest := 1.0 // of what no place states
	if stated > 0 {
		rest = 0
		if o.Mass != nil {
			rest = max(num(o.Mass.Lb)-stated, 0)
		}
	}
	sum := 0.0
	for i, b := range boxes {
		share := lb[i]
		if share == 0 && volume > 0 {
			share = rest * b.Volume() / volume
		}
		bx, by, bz := b.Center()
		sum, x, y, z = sum+share, x+share*bx, y+share*by, z+share*bz
	}
	if !(sum > 0) {
		return 0, 0, 0, false
	}
	return x / sum, y / sum, z / sum, true
}

// Station resolves a mass to inches behind the front axle, right of the centerline
// and above the ground.
func (p *Planes) Station(ch *config.Chassis, b *config.Body, o *config.Option, m *config.Mass) (x, y,
	z quantity.Length) {
	if m.Zone == config.ZonePlaces && o != nil {
		cx, cy, cz, _ := p.Center(o)
		return quantity.Length(cx) + m.XIn, quantity.Length(cy) + m.YIn, quantity.Length(cz) + m.ZIn
	}
	return config.StationAt(ch, b, m.Zone, m.XIn, m.YIn, m.ZIn)
}
