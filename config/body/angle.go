package body

import (
	"math"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Ramp is the slope, in degrees, of the line from a point to the tire it has to clear:
// the point is d behind or ahead of the axle and h above the ground.
//
//	angle = asin(R / L) - atan((R - h) / d), L = sqrt(d^2 + (R - h)^2)
//
// Source: the tangent to a circle from a point; approach and departure angles are taken
// that way. Units: in; degrees. Valid: d and R above zero, the point outside the tire;
// otherwise 90. Example: 36 in ahead of an axle with 30 in tires, 16 in up: 26.2.
func Ramp(d, h, radius float64) float64 {
	switch {
	case h < 0:
		return 0
	case !(d <= 1e6) || !(h <= 1e6) || !(radius <= 1e6):
		return 90
	}
	l := math.Hypot(d, radius-h)
	if !(d > 0) || !(radius > 0) || !(l > radius) {
		return 90
	}
	return (math.Asin(radius/l) - math.Atan((radius-h)/d)) * 180 / math.Pi
}

// Angle in degrees, and the part that decides it where its size is assumed.
type Angle struct {
	Deg     float64
	Assumed string
}

func (a *Angle) least(deg float64, assumed string) {
	if deg < a.Deg {
		*a = Angle{deg, assumed}
	}
}

// Angles are approach, departure and breakover: the least that any part leaves in front of
// the front wheels, behind the rear ones, and between them.
func (m *Model) Angles() (approach, departure, breakover Angle) {
	approach.Deg, departure.Deg, breakover.Deg = 90, 90, 180
	rf, rr := m.FrontWheel.Radius, m.RearWheel.Radius
	for i := range m.Parts {
		p := &m.Parts[i]
		switch p.Kind {
		case KindWheel, KindWheelBox, KindModule, "flap", "antenna", "door":
			continue
		}
		for _, x := range []float64{p.X0, p.X1} {
			z := p.Z0
			if p.Kind == KindCab && (x < 0 || x > m.RearAxle) {
				continue // what is lowest of the chassis is between the axles
			}
			switch {
			case x < -rf:
				approach.least(Ramp(-x, z, rf), p.assumed())
			case x > m.RearAxle+rr:
				departure.least(Ramp(x-m.RearAxle, z, rr), p.assumed())
			case x > rf && x < m.RearAxle-rr:
				breakover.least(Ramp(x, z, rf)+Ramp(m.RearAxle-x, z, rr), p.assumed())
			}
		}
	}
	if mid := or(m.Chassis.ClearanceIn, clearanceIn); m.RearAxle > 0 { // a sill at half the wheelbase
		assumed := ""
		if !(m.Chassis.ClearanceIn > 0) {
			assumed = "clearance below the chassis"
		}
		breakover.least(Ramp(m.RearAxle/2, mid, rf)+Ramp(m.RearAxle/2, mid, rr), assumed)
	}
	return approach, departure, breakover
}

// RearOverhang in percent of the wheelbase, of module or frame, without steps.
func (p *Planes) RearOverhang() float64 {
	if !(p.RearAxle >= 1) {
		return 0
	}
	return 100 * (math.Max(p.Rear, p.FrameEnd) - p.RearAxle) / p.RearAxle
}

// TurningFt is the turning circle between curbs, across: from wheelbase, track and the
// cut of the inner wheel where the chassis states that, else as stated; 0 when neither is.
//
//	circle = 2 (sqrt((L / tan(cut) + T)^2 + L^2) + tire / 2) / 12
//
// Source: Ackermann geometry; the outer front tire runs on the circle. Units: in,
// degrees; ft. Valid: a cut of 1 degree and more. Example: 158 in, 69.4 in track, 39.6 degrees,
// 8.9 in tire: 51.5 ft.
func TurningFt(ch *config.Chassis) quantity.Feet {
	cut, l := ch.SteerDeg, num(ch.WheelbaseIn)
	if !(cut >= 1 && cut < 60) || !(l > 0) {
		return config.Clean(ch.TurningFt)
	}
	_, section, _ := TireSize(ch.FrontTires.Size)
	r := math.Hypot(l/math.Tan(cut*math.Pi/180)+num(ch.TrackFrontIn), l) + section/2
	return quantity.Feet(2 * r / 12)
}

// WallFt is the turning circle between walls: what the front corner of the unit sweeps;
// and the bumper that stands there, where its size is assumed.
func (m *Model) WallFt() (circle quantity.Feet, assumed string) {
	ft := float64(TurningFt(m.Chassis))
	if !(ft > 0) {
		return 0, ""
	}
	_, section, _ := TireSize(m.Chassis.FrontTires.Size)
	r := ft*12/2 - section/2
	center := math.Sqrt(math.Max(r*r-m.RearAxle*m.RearAxle, 0)) - num(m.Chassis.TrackFrontIn)/2
	front := m.Bumper
	for i := range m.Parts {
		if p := &m.Parts[i]; p.Kind == "bumper" && p.X0 < front {
			front, assumed = p.X0, p.assumed()
		}
	}
	return quantity.Feet(2 * math.Hypot(center+m.CabHalf, m.RearAxle-front) / 12), assumed
}
