package config

import (
	"fmt"
	"slices"

	"boxwright/config/quantity"
)

// Place is where one piece of an option stands, how large it is and how far it
// stands out, so that it follows modules of other lengths and widths.
type Place struct {
	Kind  string `json:"kind"`            // what it is, see PlaceKinds
	Label string `json:"label,omitempty"` // for readers; the option's own when empty
	Face  string `json:"face"`            // what it is fixed to, see PlaceFaces
	Along string `json:"along,omitempty"` // where x counts from, see PlaceAlongs; the module's front wall when empty
	Level string `json:"level,omitempty"` // where z counts from, see PlaceLevels; the module floor when empty

	// Of its center, from Along, from the centerline and from Level. At a side wall
	// y counts inward from the wall, at the front wall and the rear wall x does from
	// theirs, on roof, ceiling, floor and underside z does from theirs: there 0 means
	// that it touches.
	XIn quantity.Length `json:"x_in,omitempty"`
	YIn quantity.Length `json:"y_in,omitempty"`
	ZIn quantity.Length `json:"z_in,omitempty"`

	LengthIn quantity.Length `json:"length_in"` // along the vehicle
	WidthIn  quantity.Length `json:"width_in"`  // across
	HeightIn quantity.Length `json:"height_in"`
	OutIn    quantity.Length `json:"out_in,omitempty"` // how far of that it stands out of its face

	// Lb is what of the option's weight all its pieces have. Places without it share the rest by
	// their volume.
	Lb quantity.Mass `json:"lb,omitempty"`

	Count   int             `json:"count,omitempty"`    // pieces in a row; 0 and 1 both mean one
	PitchIn quantity.Length `json:"pitch_in,omitempty"` // from one to the next, along a side, across an end
	// The row goes over the whole face, to EdgeIn from both ends of it; one piece is that long.
	Spread bool            `json:"spread,omitempty"`
	EdgeIn quantity.Length `json:"edge_in,omitempty"`
	Both   bool            `json:"both,omitempty"`  // the same on the other side
	About  bool            `json:"about,omitempty"` // assumed until the plant's drawing says it

	Hinge string `json:"hinge,omitempty"` // where its leaf hangs, as seen from before it, see Hinges
	Color string `json:"color,omitempty"` // see ColorNames, or ColorWarn or ColorAsks
	// Text that it shows until the customer types another, which counts up to the first comma.
	Text string `json:"text,omitempty"`
	// it is written to be read in a mirror
	Backward bool `json:"backward,omitempty"`
}

// Flat reports whether a kind is paint, film or lettering on a face.
func (p *Place) Flat() bool {
	switch p.Kind {
	case "band", "check", "sweep", "chevron", "lettering", "star":
		return true
	}
	return false
}

// PlaceKinds are what a piece can be. Solid ones take the room that they stand in;
// the rest is flat, small, or rides in or on something else.
var PlaceKinds = map[string]bool{
	"bumper": true, "step": true, "board": true, "mirror": false, "rail": false, "flap": false, "trim": false,
	"lamp": true, "bar": true, "strip": false, "speaker": false, "camera": false, "antenna": false,
	"door": true, "window": true, "hatch": true, "compartment": true, "cabinet": true, "counter": true,
	"bench": true, "seat": true, "cot": true, "litter": true, "mount": false, "tank": false, "battery": false,
	"opening": false, "arch": false, "unit": true, "duct": false, "console": true, "fitting": false, "mast": true, "vent": true, "wheel": true,
	"grille": false, "plate": false, "outlet": false, "drawer": false, "panel": false, "screen": false, "hook": false,
	"gas": false, "band": false, "check": false, "sweep": false, "chevron": false, "lettering": false, "star": false,
}

// Faces that a place can be fixed to. The first six are the outside of the module,
// or of the chassis when x counts from a part of that.
const (
	FaceStreet     = "street"
	FaceCurb       = "curb"
	FaceFront      = "front"
	FaceRear       = "rear"
	FaceRoof       = "roof"
	FaceUnder      = "under"
	FaceStreetWall = "street-wall" // inside
	FaceCurbWall   = "curb-wall"
	FaceFrontWall  = "front-wall"
	FaceRearWall   = "rear-wall"
	FaceCeiling    = "ceiling"
	FaceFloor      = "floor"
	FaceFree       = "free" // by its own x, y and z
)

// PlaceFaces lists them all.
var PlaceFaces = []string{FaceStreet, FaceCurb, FaceFront, FaceRear, FaceRoof, FaceUnder, FaceStreetWall, FaceCurbWall,
	FaceFrontWall, FaceRearWall, FaceCeiling, FaceFloor, FaceFree}

// Where x of a place counts from, positive rearward.
const (
	AlongFrontWall = "front-wall"
	AlongMiddle    = "middle"
	AlongRearWall  = "rear-wall"
	AlongDoor      = "door"      // rear edge of the side entry
	AlongRearAxle  = "rear-axle" // center of the rear wheels
	AlongBumper    = "bumper"    // face of the chassis' own bumper
	AlongFrontAxle = "front-axle"
	AlongCabBack   = "cab-back" // rear wall of the cab
)

// PlaceAlongs lists them all, with the one that empty stands for.
var PlaceAlongs = []string{"", AlongFrontWall, AlongMiddle, AlongRearWall, AlongDoor, AlongRearAxle, AlongBumper,
	AlongFrontAxle, AlongCabBack}

// Where z of a place counts from, positive up.
const (
	LevelFloor   = "floor"
	LevelRoof    = "roof"    // outside
	LevelBelt    = "belt"    // belt line of the module
	LevelCeiling = "ceiling" // inside
	LevelSkirt   = "skirt"   // lower edge of the module
	LevelGround  = "ground"
	LevelFrame   = "frame" // top of the chassis frame
	LevelCabRoof = "cab-roof"
	LevelHood    = "hood" // where the hood meets the windshield
)

// PlaceLevels lists them all, with the one that empty stands for.
var PlaceLevels = []string{"", LevelFloor, LevelRoof, LevelBelt, LevelCeiling, LevelSkirt, LevelGround, LevelFrame,
	LevelCabRoof, LevelHood}

// OnChassis reports whether x counts from a part of the chassis, so that the outside
// faces are those of the cab.
func (p *Place) OnChassis() bool {
	switch p.Along {
	case AlongBumper, AlongFrontAxle, AlongCabBack:
		return true
	}
	return false
}

// StandsOut reports whether an option changes the unit's length, height or loading
// height: a bumper or step, what is on the roof but antennas and paint, or a floor that comes
// down.
func (o *Option) StandsOut() bool {
	return o.LowersIn > 0 || slices.ContainsFunc(o.Places, func(p Place) bool {
		return p.Kind == "bumper" || p.Kind == "step" || p.Face == FaceRoof && p.Kind != "antenna" && !p.Flat()
	})
}

// Stands reports whether an option says where it is: by places, compartments or seats.
func (o *Option) Stands() bool { return len(o.Places)+len(o.Compartments)+len(o.Seats) > 0 }

// station checks that the weight of an option is where the option stands, and in no second
// place.
func (k *checker) station(where string, o *Option) {
	m, stated := o.Mass, quantity.Mass(0)
	for i := range o.Places {
		k.between(fmt.Sprintf("%s places[%d]", where, i), 0, 1e6, map[string]float64{"lb": float64(o.Places[i].Lb)})
		stated += o.Places[i].Lb
	}
	switch {
	case m == nil || m.Lb == 0 || m.Derived:
	case m.Zone == ZonePlaces && !o.Stands():
		k.add("missing", where+" mass zone", "%q needs places, compartments or seats", m.Zone)
	case m.Zone != ZonePlaces && o.Stands():
		k.add("twice", where+" mass zone", "its mass has a second place beside where it stands; write the zone %q, "+
			"with x_in, y_in and z_in from the center of its places", ZonePlaces)
	case stated > max(m.Lb, 0)*(1+1e-9):
		k.add("value", where+" places", "weigh %v lb together, which is more than the option's %v lb", stated, m.Lb)
	}
}

// places checks where an option stands.
func (k *checker) places(where string, list []Place) {
	for i := range list {
		p := &list[i]
		w := fmt.Sprintf("%s places[%d]", where, i)
		if _, known := PlaceKinds[p.Kind]; !known {
			k.add("value", w+" kind", "%q is not a kind of place", p.Kind)
		}
		k.oneOf(w+" face", p.Face, PlaceFaces...)
		k.oneOf(w+" along", p.Along, PlaceAlongs...)
		k.oneOf(w+" level", p.Level, PlaceLevels...)
		k.between(w, 0.05, 400, map[string]float64{"length_in": float64(p.LengthIn), "width_in": float64(p.WidthIn),
			"height_in": float64(p.HeightIn)})
		k.between(w, -400, 400, map[string]float64{"x_in": float64(p.XIn), "y_in": float64(p.YIn),
			"z_in": float64(p.ZIn)})
		k.between(w, 0, 120, map[string]float64{"out_in": float64(p.OutIn), "count": float64(p.Count),
			"pitch_in": float64(p.PitchIn), "edge_in": float64(p.EdgeIn)})
		if p.Count > 1 && p.PitchIn == 0 && !p.Spread {
			k.add("missing", w+" pitch_in", "%d pieces in a row need the distance from one to the next", p.Count)
		}
		k.oneOf(w+" hinge", p.Hinge, Hinges...)
		k.color(w+" color", p.Color)
		if len(p.Text) > MaxDetail {
			k.add("too-long", w+" text", "has %d bytes; the most is %d", len(p.Text), MaxDetail)
		}
	}
}
