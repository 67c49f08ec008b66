package space

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// area is what the package's findings stand under.
const area = "Space"

// vehicle is what every part of the sheet reads.
type vehicle struct{ *config.Vehicle }

// gather finds the parts of the unit; nil when there is nothing to measure.
func gather(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions, r *config.Report) *vehicle {
	v := config.VehicleOf(cat, u, assume, area, r, config.Fields{Chassis: badChassis, Body: badBody, Option: badOption})
	if v == nil {
		return nil
	}
	return &vehicle{v}
}

// The fields of chassis, body and option that count as zero.

func badChassis(c *config.Chassis) (bad config.Unclean) {
	bad.Look("front_overhang_in", float64(c.FrontOverhangIn))
	bad.Look("body_start_in", float64(c.BodyStartIn))
	bad.Look("floor_height_in", float64(c.FloorHeightIn))
	bad.Look("wheelbase_in", float64(c.WheelbaseIn))
	bad.Look("width_in", float64(c.WidthIn))
	return bad
}

func badBody(b *config.Body) (bad config.Unclean) {
	bad.Look("length_in", float64(b.LengthIn))
	bad.Look("width_in", float64(b.WidthIn))
	bad.Look("height_in", float64(b.HeightIn))
	bad.Look("headroom_in", float64(b.HeadroomIn))
	bad.Look("aisle_in", float64(b.AisleIn))
	return bad
}

func badOption(o *config.Option) (bad config.Unclean) {
	bad.Look("headroom_in", float64(o.HeadroomIn))
	bad.Look("aisle_in", float64(o.AisleIn))
	if x := o.Oxygen; x != nil {
		bad.Look("liters_per_psi", x.LitersPerPSI)
		bad.Look("full_psi", x.FullPSI)
		bad.Look("oxygen count", float64(x.Count))
	}
	return bad
}

// headroom of the body less what options take from it.
func (b *vehicle) headroom() quantity.Length {
	h := config.Clean(b.Body.HeadroomIn)
	for _, p := range b.Picks {
		h -= config.Clean(p.HeadroomIn) * quantity.Length(p.Qty)
	}
	return h
}

// aisle of the body less what options take from it.
func (b *vehicle) aisle() quantity.Length {
	a := config.Clean(b.Body.AisleIn)
	for _, p := range b.Picks {
		a -= config.Clean(p.AisleIn) * quantity.Length(p.Qty)
	}
	return a
}

// storage counts the body's inside compartments and what options add or take.
func (b *vehicle) storage() quantity.Volume {
	v := bodyStorage(b.Body)
	for _, p := range b.Picks {
		v += storageOf(p.Option) * quantity.Volume(p.Qty)
	}
	return v
}

func bodyStorage(body *config.Body) quantity.Volume {
	var v quantity.Volume
	for i := range body.Compartments {
		if body.Compartments[i].Side == "inside" {
			v += Inside(&body.Compartments[i])
		}
	}
	return v
}

// storageOf one of an option: the volume it states, or else that of the inside
// compartments it adds, never both. The stated one may be negative.
func storageOf(o *config.Option) quantity.Volume {
	if o.StorageFt3 != 0 {
		if v := o.StorageFt3; v > -1e4 && v < 1e4 {
			return v
		}
		return 0
	}
	var v quantity.Volume
	for i := range o.Compartments {
		if o.Compartments[i].Side == "inside" {
			v += Inside(&o.Compartments[i])
		}
	}
	return v
}

// BenchTag begins the tag of an option that brings a squad bench of a stated
// size: "bench-72x22" is 72 in long and 22 in wide.
const BenchTag = "bench-"

// bench is the longest squad bench whose size an option states.
func (b *vehicle) bench() (length, width quantity.Length, known bool) {
	for _, p := range b.Picks {
		for _, tag := range p.Tags {
			size, ok := strings.CutPrefix(tag, BenchTag)
			if !ok {
				continue
			}
			l, w, ok := strings.Cut(size, "x")
			if !ok {
				continue
			}
			ln, err1 := strconv.ParseFloat(l, 64)
			wd, err2 := strconv.ParseFloat(w, 64)
			if err1 == nil && err2 == nil && config.Clean(ln) > float64(length) {
				length, width, known = quantity.Length(ln), quantity.Length(config.Clean(wd)), true
			}
		}
	}
	return length, width, known
}

// wallThickness of a module, from skin to lining; a van's inside sizes are
// what its conversion states.
func (b *vehicle) wallThickness() quantity.Length {
	s := b.Body.Shell
	if s == nil {
		return 0
	}
	return or(s.FrameTubeIn, tubeIn) + or(s.SideSkinIn, skinIn) + linerIn
}

// floorThickness of a module, from the underside of its frame to the floor.
func (b *vehicle) floorThickness() quantity.Length {
	s := b.Body.Shell
	if s == nil {
		return 0
	}
	return or(s.FrameTubeIn, tubeIn) + or(s.FloorSheetIn, skinIn) + boardIn
}

func or(v, usual quantity.Length) quantity.Length {
	if v = config.Clean(v); v > 0 {
		return v
	}
	return usual
}

// Inside is the volume of a compartment.
//
//	V = width x depth x height / 1728
//
// Source: 1 ft = 12 in. Units: in, ft3. Valid: sizes above zero; a negative
// size or one that is no number counts as zero. Example: 24 x 20 x 36 in: 10 ft3.
func Inside(c *config.Compartment) quantity.Volume {
	return volume(config.Clean(c.WidthIn), config.Clean(c.DepthIn), config.Clean(c.HeightIn))
}

const cubicInchesPerFt3 = 1728

func volume(a, b, c quantity.Length) quantity.Volume {
	return quantity.Volume(float64(a) * float64(b) * float64(c) / cubicInchesPerFt3)
}
