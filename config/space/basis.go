package space

import (
	"fmt"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// basis is what every part of the sheet reads.
type basis struct {
	cat     *config.Catalogue
	unit    *config.Unit
	chassis *config.Chassis
	body    *config.Body
	picks   []picked
	as      *config.Assumptions
}

type picked struct {
	*config.Option
	qty int
}

// gather finds the parts of the unit, reports what it must leave out, and
// returns nil when there is nothing to measure.
func gather(cat *config.Catalogue, u *config.Unit, as *config.Assumptions, r *config.Report) *basis {
	tell := func(code string, sev config.Severity, text, remedy string) {
		r.Findings = append(r.Findings, config.Finding{Code: code, Severity: sev, Where: "Space", Text: text, Remedy: remedy})
	}
	if cat == nil || u == nil {
		tell("space.no-unit", config.Stop, "There is no catalogue or no unit to measure.", "Open a catalogue and a unit.")
		return nil
	}
	b := &basis{cat: cat, unit: u, chassis: cat.ChassisByID(u.Chassis), body: cat.BodyOf(u), as: as}
	if b.as == nil {
		b.as = new(config.Assumptions)
	}
	if b.chassis == nil || b.body == nil {
		tell("space.no-vehicle", config.Stop, fmt.Sprintf("Chassis %q or body %q is not in this edition.", u.Chassis, u.Body), "Choose a chassis and a body.")
		return nil
	}
	bad := func(label string, named ...any) {
		for i := 0; i < len(named); i += 2 {
			if v := named[i+1].(float64); clean(v) != v {
				tell("space.bad-number", config.Warn, fmt.Sprintf("%s: %s is negative or not a number and counts as zero.", label, named[i]), "Correct the catalogue.")
			}
		}
	}
	bad(b.chassis.Label, "front_overhang_in", float64(b.chassis.FrontOverhangIn), "body_start_in", float64(b.chassis.BodyStartIn), "floor_height_in", float64(b.chassis.FloorHeightIn), "wheelbase_in", float64(b.chassis.WheelbaseIn), "width_in", float64(b.chassis.WidthIn))
	bad(b.body.Label, "length_in", float64(b.body.LengthIn), "width_in", float64(b.body.WidthIn), "height_in", float64(b.body.HeightIn), "headroom_in", float64(b.body.HeadroomIn), "aisle_in", float64(b.body.AisleIn))
	for _, p := range u.Picks {
		o := cat.OptionByID(p.Option)
		if o == nil || p.Qty < 1 {
			tell("space.unknown-option", config.Warn, fmt.Sprintf("Option %q (%d) is not counted.", p.Option, p.Qty), "Take it out, or choose one of this edition in a quantity of 1 or more.")
			continue
		}
		bad(o.Label, "headroom_in", float64(o.HeadroomIn), "aisle_in", float64(o.AisleIn))
		if x := o.Oxygen; x != nil {
			bad(o.Label, "litres_per_psi", x.LitresPerPSI, "full_psi", x.FullPSI, "oxygen count", float64(x.Count))
		}
		b.picks = append(b.picks, picked{o, p.Qty})
	}
	return b
}

// headroom of the body less what options take from it.
func (b *basis) headroom() quantity.Length {
	h := clean(b.body.HeadroomIn)
	for _, p := range b.picks {
		h -= clean(p.HeadroomIn) * quantity.Length(p.qty)
	}
	return h
}

// aisle of the body less what options take from it.
func (b *basis) aisle() quantity.Length {
	a := clean(b.body.AisleIn)
	for _, p := range b.picks {
		a -= clean(p.AisleIn) * quantity.Length(p.qty)
	}
	return a
}

// storage counts the body's inside compartments and what options add or take.
func (b *basis) storage() quantity.Volume {
	v := bodyStorage(b.body)
	for _, p := range b.picks {
		v += storageOf(p.Option) * quantity.Volume(p.qty)
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
func (b *basis) bench() (length, width quantity.Length, known bool) {
	for _, p := range b.picks {
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
			if err1 == nil && err2 == nil && clean(ln) > float64(length) {
				length, width, known = quantity.Length(ln), quantity.Length(clean(wd)), true
			}
		}
	}
	return length, width, known
}

// wallThickness of a module, from skin to lining; a van's inside sizes are
// what its conversion states.
func (b *basis) wallThickness() quantity.Length {
	s := b.body.Shell
	if s == nil {
		return 0
	}
	return or(s.FrameTubeIn, tubeIn) + or(s.SideSkinIn, skinIn) + linerIn
}

// floorThickness of a module, from the underside of its frame to the floor.
func (b *basis) floorThickness() quantity.Length {
	s := b.body.Shell
	if s == nil {
		return 0
	}
	return or(s.FrameTubeIn, tubeIn) + or(s.FloorSheetIn, skinIn) + boardIn
}

func or(v, usual quantity.Length) quantity.Length {
	if v = clean(v); v > 0 {
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
	return volume(clean(c.WidthIn), clean(c.DepthIn), clean(c.HeightIn))
}

const cubicInchesPerFt3 = 1728

func volume(a, b, c quantity.Length) quantity.Volume {
	return quantity.Volume(float64(a) * float64(b) * float64(c) / cubicInchesPerFt3)
}

// clean makes a hostile number harmless.
func clean[T ~float64](v T) T {
	if !(v >= 0 && v <= 1e6) {
		return 0
	}
	return v
}
