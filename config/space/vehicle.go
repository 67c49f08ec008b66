package space

import (
	"slices"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
)

// area is what the package's findings stand under.
const area = "Space"

// vehicle is what every part of the sheet reads.
type vehicle struct {
	*config.Vehicle
	model *body.Model
}

// gather finds the parts of the unit; nil when there is nothing to measure.
func gather(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions, r *config.Report) *vehicle {
	v := config.VehicleOf(cat, u, assume, area, r, config.Fields{Chassis: badChassis, Body: badBody, Option: badOption})
	if v == nil {
		return nil
	}
	return &vehicle{v, body.Of(cat, u)}
}

// The fields of chassis, body and option that count as zero.

func badChassis(c *config.Chassis) (bad config.Unclean) {
	bad.Look("front_overhang_in", float64(c.FrontOverhangIn))
	bad.Look("body_start_in", float64(c.BodyStartIn))
	bad.Look("floor_height_in", float64(c.FloorHeightIn))
	bad.Look("wheelbase_in", float64(c.WheelbaseIn))
	bad.Look("frame_height_in", float64(c.FrameHeightIn))
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
		if o.Compartments[i].Side == "inside" && o.Compartments[i].Holds == nil {
			v += Inside(&o.Compartments[i])
		}
	}
	return v
}

// bench is the longest squad bench, one that people ride on; a bench to dress on is none.
func (b *vehicle) bench() (length, width quantity.Length, assumed string, known bool) {
	for _, p := range b.Picks {
		if len(p.Seats) == 0 {
			continue
		}
		for i := range p.Places {
			if at := &p.Places[i]; at.Kind == "bench" && config.Clean(at.LengthIn) > length {
				length, width, assumed, known = config.Clean(at.LengthIn), config.Clean(at.WidthIn), "", true
				if at.About {
					assumed = p.Label
				}
			}
		}
	}
	return length, width, assumed, known
}

// Clauses whose options say which lamps are flood lights, and which compartment is the one
// at the right front.
const (
	floodClause = "kkk-flood"
	frontClause = "kkk-front-compartment"
)

// floods is the height of the lowest flood light, at its middle.
func (b *vehicle) floods() (z float64, assumed string, known bool) {
	for i := range b.model.Parts {
		p := &b.model.Parts[i]
		o := b.Cat.OptionByID(p.Option)
		if o == nil || p.Kind != "lamp" || !slices.Contains(o.Clauses, floodClause) {
			continue
		}
		if _, _, at := p.Center(); !known || at < z {
			z, assumed, known = at, "", true
			if p.About {
				assumed = p.Label
			}
		}
	}
	return z, assumed, known
}

// frontRoom is the size of the compartment at the right front in percent of 30 in wide, 18
// deep and 40 high, where it is least. Which of its sides is its width depends on where it
// opens.
func (b *vehicle) frontRoom() (percent float64, known bool) {
	for _, p := range b.Picks {
		if !slices.Contains(p.Clauses, frontClause) {
			continue
		}
		for i := range p.Compartments {
			c := &p.Compartments[i]
			wide, deep := float64(config.Clean(c.WidthIn)), float64(config.Clean(c.DepthIn))
			least := 100 * min(max(wide, deep)/30, min(wide, deep)/18, float64(config.Clean(c.HeightIn))/40)
			if !known || least > percent {
				percent, known = least, true
			}
		}
	}
	return percent, known
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
