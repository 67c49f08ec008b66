package space

import (
	"boxwright/config"
	"boxwright/config/quantity"
)

// Outside is the size that a station's bay and a loading crew meet: what chassis
// and body give before any option. An option adds its config.Outside to the length
// and takes it off the loading height; of those above the roof the highest counts.
type Outside struct {
	LengthIn  quantity.Length // with the chassis' own bumper
	HeightIn  quantity.Length // roof of module or cab, whichever is higher
	LoadingIn quantity.Length // module floor above ground at the rear, loaded
	RoofIn    quantity.Length // of the module alone, which roof equipment stands on
}

// OutsideOf measures a chassis with a body.
//
//	length  = front overhang + max(body start + body length, wheelbase + frame end)
//	height  = max(cab, max(top of frame, floor - floor build-up) + body height)
//	loading = floor height
//
// Source: the drawing of the unit. Units: in. Valid: sizes above zero; one that is
// negative or no number counts as zero. Example: 36 + 86 + 153: 275 in long.
func OutsideOf(ch *config.Chassis, body *config.Body) Outside {
	b := vehicle{&config.Vehicle{Chassis: ch, Body: body}}
	floor := config.Clean(ch.FloorHeightIn)
	under := max(min(config.Clean(ch.FrameHeightIn), floor), floor-b.floorThickness())
	roof := under + config.Clean(body.HeightIn)
	return Outside{
		LengthIn: bareLength(ch, body), HeightIn: max(config.Clean(ch.CabHeightIn), roof), LoadingIn: floor,
		RoofIn: roof,
	}
}

// bareLength is from the chassis' own bumper to the end of module or frame.
func bareLength(ch *config.Chassis, body *config.Body) quantity.Length {
	return config.Clean(ch.FrontOverhangIn) + max(config.Clean(ch.BodyStartIn)+config.Clean(body.LengthIn),
		config.Clean(ch.WheelbaseIn)+config.Clean(ch.FrameEndIn))
}

// length of the unit with what its options add at either end.
func (b *vehicle) length() quantity.Length {
	l := bareLength(b.Chassis, b.Body)
	for _, p := range b.Picks {
		if x := p.Outside; x != nil {
			l += (config.Clean(x.AheadIn) + config.Clean(x.BehindIn)) * quantity.Length(p.Qty)
		}
	}
	return l
}

// height of the unit with the highest of what stands on its roof.
func (b *vehicle) height() quantity.Length {
	out := OutsideOf(b.Chassis, b.Body)
	h := out.HeightIn
	for _, p := range b.Picks {
		if x := p.Outside; x != nil {
			h = max(h, out.RoofIn+config.Clean(x.AboveIn))
		}
	}
	return h
}

// loading is how high the rear floor is when the unit is loaded and lowered.
func (b *vehicle) loading() quantity.Length {
	h := config.Clean(b.Chassis.FloorHeightIn)
	for _, p := range b.Picks {
		if x := p.Outside; x != nil {
			h -= config.Clean(x.LowersIn) * quantity.Length(p.Qty)
		}
	}
	return h
}
