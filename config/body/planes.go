package body

import (
	"cmp"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Planes are the walls and levels of a chassis with a body that everything counts
// from: x inches behind the front axle, y right of the centerline, z above the
// ground, loaded.
type Planes struct {
	Bumper   float64 // face of the chassis' own bumper, negative
	RearAxle float64
	CabBack  float64
	FrameEnd float64
	Front    float64 // outside of the module's walls
	Rear     float64
	Half     float64 // half the module's width
	CabHalf  float64
	Wall     float64 // from skin to lining
	DoorFrom float64 // side entry: edges of its opening
	DoorTo   float64
	DoorHead float64 // upper edge of it

	RearDoorHalf float64 // half the width of the rear doorway
	RearDoorHead float64

	Frame   float64
	Under   float64 // underside of the module
	Floor   float64
	Ceiling float64
	Roof    float64
	CabRoof float64
	Hood    float64 // where it meets the windshield
	Skirt   float64 // lower edge of the module's sides
	Belt    float64

	FrontWheel, RearWheel Wheel
	Jounce                float64
	Van                   bool

	compartments []config.Compartment // of the body, for what is fitted into them
}

// Usual build-up of a module and clearances where the catalogue is silent, in inches.
// Common practice, no source.
const (
	tubeIn       = 2.0
	skinIn       = 0.125
	roofSkinIn   = 0.090
	linerIn      = 0.25
	boardIn      = 0.75
	beltIn       = 30.0 // belt line above the floor
	skirtIn      = 13.0 // lower edge of the sides below the floor
	vanFloorIn   = 3.0  // floor of a van above its underside
	jounceIn     = 3.0
	wheelRoomIn  = 2.0 // around the tire in its box
	sideDoorXIn  = 21.0
	sideDoorIn   = 30.0 // entry door of 30 x 63 in: KKK-A-1822, from memory
	sideDoorHIn  = 63.0
	rearDoorIn   = 48.0
	rearDoorHIn  = 60.0
	bumperLowIn  = 16.0
	clearanceIn  = 8.0
	fuelAlong    = 0.75 // of the wheelbase
	fuelBelowIn  = 8.0  // center of the tank below the top of the frame
	cubicPerGal  = 231.0
	tankHeightIn = 14.0
	tankWidthIn  = 22.0
)

// hoodIn is how high the hood meets the windshield, by the kind of cab, in. Common practice,
// no source.
var hoodIn = map[string]float64{"van": 52, "cutaway": 52, "cab-chassis": 55, "medium": 66}

// OpeningIn is from the tire to the edge of the wheel opening in a module's skirt.
const OpeningIn = 2.5

// or is v, or the usual value where the catalogue says nothing.
func or[T ~float64](v T, usual float64) float64 {
	if v = config.Clean(v); v > 0 {
		return float64(v)
	}
	return usual
}

// num is a length of the catalogue; one that is negative or no number counts as zero.
func num[T ~float64](v T) float64 { return float64(config.Clean(v)) }

// PlanesOf measures a chassis with a body.
func PlanesOf(ch *config.Chassis, b *config.Body) Planes {
	p := Planes{
		Bumper: -num(ch.FrontOverhangIn), RearAxle: num(ch.WheelbaseIn), Front: num(ch.BodyStartIn),
		FrameEnd: num(ch.WheelbaseIn) + num(ch.FrameEndIn), CabBack: num(ch.BodyStartIn) - 2,
		Half: num(b.WidthIn) / 2, CabHalf: num(ch.WidthIn) / 2, Frame: num(ch.FrameHeightIn),
		Floor: num(ch.FloorHeightIn), CabRoof: num(ch.CabHeightIn), Jounce: or(ch.JounceIn, jounceIn),
		Hood: cmp.Or(hoodIn[ch.Cab], hoodIn["cutaway"]),
		Van:  b.Kind == "van", compartments: b.Compartments,
		FrontWheel: wheelOf(ch.FrontTires, num(ch.TrackFrontIn), 0),
		RearWheel:  wheelOf(ch.RearTires, num(ch.TrackRearIn), num(ch.DualSpacingIn)),
	}
	p.Rear = p.Front + num(b.LengthIn)
	p.Wall, p.Under = WallIn(b), p.Floor-FloorIn(b)
	p.Roof, p.Ceiling = p.Under+num(b.HeightIn), p.Floor+HeadroomIn(b)
	if p.Van {
		p.Under, p.Roof = p.Floor-vanFloorIn, max(p.CabRoof, p.Floor+num(b.HeightIn))
		p.Rear = max(p.Rear, p.FrameEnd)
		p.Half = max(p.Half, p.CabHalf)
		p.Wall = max(p.Half-num(b.WidthIn)/2, 0)
	}
	p.Skirt, p.Belt = p.Floor-skirtIn, p.Floor+or(b.BeltIn, beltIn)
	d := DoorsOf(b)
	p.DoorFrom = p.Front + float64(d.SideXIn)
	p.DoorTo = p.DoorFrom + float64(d.SideWidthIn)
	head := p.Ceiling - 2 // a doorway ends below the roof rail
	p.DoorHead = min(p.Floor+float64(d.SideHeightIn), head)
	p.RearDoorHalf, p.RearDoorHead = float64(d.RearWidthIn)/2, min(p.Floor+float64(d.RearHeightIn), head)
	return p
}

// DoorsOf are the doorways of a body, the usual sizes where it states none.
func DoorsOf(b *config.Body) config.Doors {
	set := func(v quantity.Length, usual float64) quantity.Length { return quantity.Length(or(v, usual)) }
	d := b.Doors
	return config.Doors{SideXIn: set(d.SideXIn, sideDoorXIn), SideWidthIn: set(d.SideWidthIn, sideDoorIn),
		SideHeightIn: set(d.SideHeightIn, sideDoorHIn), RearWidthIn: set(d.RearWidthIn, rearDoorIn),
		RearHeightIn: set(d.RearHeightIn, rearDoorHIn)}
}

// FloorIn is from the underside of a module to the top of its floor; 0 for a van,
// whose sizes inside are what its conversion states.
func FloorIn(b *config.Body) float64 {
	if s := b.Shell; s != nil {
		return or(s.FrameTubeIn, tubeIn) + or(s.FloorSheetIn, skinIn) + boardIn
	}
	if b.Kind == "van" {
		return 0
	}
	return tubeIn + skinIn + boardIn
}

// WallIn is from the skin of a side to its lining; 0 where the sizes inside are stated.
func WallIn(b *config.Body) float64 {
	if s := b.Shell; s != nil {
		return or(s.FrameTubeIn, tubeIn) + or(s.SideSkinIn, skinIn) + linerIn
	}
	if b.Kind != "van" {
		return tubeIn + skinIn + linerIn
	}
	return 0
}

// HeadroomIn is from the floor to the ceiling, before options take from it: of a
// new module its height less floor and roof, else what is stated or was measured.
//
//	headroom = height - (frame tube + floor sheet + board) - (frame tube + roof skin + lining)
//
// Source: the section through floor and roof. Units: in. Valid: a module higher than
// both. Example: 76 in outside with 2 in tube is 70.79 in inside, not 72.
func HeadroomIn(b *config.Body) float64 {
	s := b.Shell
	if s == nil {
		return num(b.HeadroomIn)
	}
	roof := or(s.FrameTubeIn, tubeIn) + or(s.RoofSkinIn, roofSkinIn) + linerIn
	return max(num(b.HeightIn)-FloorIn(b)-roof, 0)
}
