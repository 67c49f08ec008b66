package body

import (
	"cmp"
	"math"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Outside is the size that a station's bay and a loading crew meet.
type Outside struct {
	LengthIn  quantity.Length
	WidthIn   quantity.Length
	HeightIn  quantity.Length
	LoadingIn quantity.Length // module floor above ground at the rear, loaded

	// The part that decides, where its size is assumed; of the length, either of two.
	AssumedLength, AssumedWidth, AssumedHeight string
}

// Bare sizes of a chassis with a body before any option.
//
//	length = front overhang + max(body start + body length, wheelbase + frame end)
//	width  = max(cab, module, outside of the rear tires)
//	height = max(cab, underside of the module + its height)
//
// Source: the drawing of the unit. Units: in. Valid: sizes above zero; one that is
// negative or no number counts as zero. Example: 36 + 86 + 153: 275 in long.
func (p *Planes) Bare() Outside {
	return Outside{
		LengthIn:  quantity.Length(math.Max(p.Rear, p.FrameEnd) - p.Bumper),
		WidthIn:   quantity.Length(2 * math.Max(math.Max(p.Half, p.CabHalf), p.RearWheel.Outer)),
		HeightIn:  quantity.Length(math.Max(p.Roof, p.CabRoof)),
		LoadingIn: quantity.Length(p.Floor),
	}
}

// Reach is how far an option makes the unit longer, wider to each side, and how high
// it stands above the ground; zero where it does not.
type Reach struct{ Ahead, Behind, Aside, Top float64 }

// Reach of an option on a chassis with a body. Length counts bumpers and steps, height
// everything but antennas, width everything but mirrors.
func (p *Planes) Reach(o *config.Option) Reach {
	var r Reach
	end := math.Max(p.Rear, p.FrameEnd)
	side := float64(p.Bare().WidthIn) / 2
	for i := range o.Places {
		at := &o.Places[i]
		for _, b := range p.Boxes(at) {
			if at.Kind == "bumper" || at.Kind == "step" {
				r.Ahead, r.Behind = math.Max(r.Ahead, p.Bumper-b.X0), math.Max(r.Behind, b.X1-end)
			}
			if at.Kind != "antenna" {
				r.Top = math.Max(r.Top, b.Z1)
			}
			if at.Kind != "mirror" && at.Kind != "antenna" {
				r.Aside = math.Max(r.Aside, math.Max(b.Y1, -b.Y0)-side)
			}
		}
	}
	return r
}

// Overall is the unit's size with everything on: bumpers and steps in its length, lamps
// and roof equipment in its height, lamps and rails in its width, less mirrors and
// antennas.
func (m *Model) Overall() Outside {
	o := m.Bare()
	front, rear := m.Bumper, math.Max(m.Rear, m.FrameEnd)
	side, top := float64(o.WidthIn)/2, float64(o.HeightIn)
	var ahead, behind, aside, above string
	for i := range m.Parts {
		p := &m.Parts[i]
		if p.Option == "" {
			continue
		}
		if p.Kind == "bumper" || p.Kind == "step" {
			if p.X0 < front {
				front, ahead = p.X0, p.assumed()
			}
			if p.X1 > rear {
				rear, behind = p.X1, p.assumed()
			}
		}
		if p.Kind == "antenna" {
			continue
		}
		if p.Z1 > top {
			top, above = p.Z1, p.assumed()
		}
		if out := math.Max(p.Y1, -p.Y0); p.Kind != "mirror" && out > side {
			side, aside = out, p.assumed()
		}
	}
	return Outside{quantity.Length(rear - front), quantity.Length(2 * side), quantity.Length(top),
		quantity.Length(m.Floor - m.lowers), cmp.Or(ahead, behind), aside, above}
}

// Bay is what the unit takes up with rear doors and side door open.
func (m *Model) Bay() Outside {
	bay, bare := m.Overall(), m.Bare()
	across := (bay.WidthIn + bare.WidthIn) / 2
	behind := func(door float64, assumed string) {
		if end := bare.LengthIn + quantity.Length(door); end > bay.LengthIn {
			bay.LengthIn, bay.AssumedLength = end, assumed
		}
	}
	if m.Van { // its side door slides
		behind(float64(DoorsOf(m.Body).RearWidthIn)/2, "")
	}
	for i := range m.Parts {
		p := &m.Parts[i]
		switch {
		case p.Kind != "door" || p.Option == "" && m.Van:
		case p.Face == config.FaceRear:
			behind((p.Y1-p.Y0)/2, p.assumed())
		case p.Face == config.FaceCurb:
			if wide := across + quantity.Length(p.X1-p.X0); wide > bay.WidthIn {
				bay.WidthIn, bay.AssumedWidth = wide, cmp.Or(p.assumed(), bay.AssumedWidth)
			}
		}
	}
	return bay
}

// FrontalFt2 is what the air meets: overall width by overall height less the clearance
// below the bumper.
//
//	A = W (H - h) / 144
//
// Source: the outline as body builders reckon it, common practice, no source. Units: in,
// ft2. Valid: sizes above zero; else 0. Example: 98 in, 106 in, 14 in clear: 62.6 ft2.
func (m *Model) FrontalFt2() float64 {
	o := m.Overall()
	h := float64(o.HeightIn) - or(m.Chassis.BumperLowIn, bumperLowIn)
	if !(h > 0) || !(o.WidthIn > 0) {
		return 0
	}
	return float64(o.WidthIn) * h / 144
}

// Headroom under the ceiling, with what options take from it, and what of floor and roof
// is of an assumed thickness.
func (m *Model) Headroom() (inches float64, assumed string) {
	if m.Body.Shell != nil {
		assumed = "floor board and ceiling lining"
	}
	return m.headroom, assumed
}
