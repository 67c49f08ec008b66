// Package weight answers whether a unit may carry what it is meant to carry:
// the mass and place of everything aboard, axle and wheel loads, payload,
// balance and stability, each with its likely range and the chance that a
// limit is exceeded.
//
// Computed weights do not replace a certified scale; the final-stage
// manufacturer certifies.
//
// How well masses are known: a tolerance is the half width of the range that
// holds the mass 95 times in 100, errors are normal, pieces of one thing err
// together; a tolerance that is not stated is 5 percent. Besides, what the plant
// builds errs together, one unit differs from the next, a chassis' weight may be
// split otherwise than stated, and every station has its own tolerance: the
// assumed factors of package config, see estimate. People weigh what the rule in
// force stipulates. Likely ranges are root sums of squares with the same odds.
//
// Signs: x inches behind the front axle, y inches right of the centerline
// (curb side positive), z inches above the ground. Masses are pounds.
package weight

import (
	"boxwright/config"
	"boxwright/config/quantity"
)

// Sheet is the weigh-up of one unit: every mass and where it sits, three
// conditions, and the figures and findings drawn from them.
type Sheet struct {
	config.Report

	Items  []Item    `json:"items"`
	Curb   Condition `json:"curb"`   // full fluids, nobody and nothing loose aboard
	Crewed Condition `json:"crewed"` // curb with a person on every designated seat
	Gross  Condition `json:"gross"`  // crewed with patients and loose equipment

	// TakeOff is the module's take-off with the construction options in; nil
	// for a van.
	TakeOff *TakeOff `json:"take_off,omitempty"`
	// Correction says what scale tickets changed; nil without tickets.
	Correction *Correction `json:"correction,omitempty"`

	est                    *estimate
	wheelbase, front, rear float64 // and the tracks; 0 where they cannot be reckoned with
}

// Kind of a mass.
type Kind string

// The kinds, in the order of the sheet.
const (
	KindChassis   Kind = "chassis"
	KindFluid     Kind = "fluid"
	KindModule    Kind = "module"
	KindOption    Kind = "option"
	KindPerson    Kind = "person"
	KindPatient   Kind = "patient"
	KindEquipment Kind = "equipment"
)

// Item is one mass of the weigh-up. FrontLb and RearLb are its shares on the
// axles; one of them is negative when it hangs beyond an axle.
type Item struct {
	ID      string          `json:"id"`
	Label   string          `json:"label"`
	Kind    Kind            `json:"kind"`
	Option  string          `json:"option,omitempty"` // the option that brings it
	Qty     int             `json:"qty"`
	Lb      quantity.Mass   `json:"lb"`     // of all Qty together
	TolLb   quantity.Mass   `json:"tol_lb"` // half width of the range that holds it 95 times in 100
	XIn     quantity.Length `json:"x_in"`
	YIn     quantity.Length `json:"y_in"`
	ZIn     quantity.Length `json:"z_in"`
	FrontLb quantity.Mass   `json:"front_lb"`
	RearLb  quantity.Mass   `json:"rear_lb"`

	err   float64 // standard deviation of Lb before any ticket
	key   int     // of its thing's first error in the estimate
	shell bool    // from the module's take-off
	built bool    // by the plant: it errs with all that the plant builds
	// of the chassis, for how far its weight moves when its split is another
	wheelbase float64
}

// Condition is the vehicle with a given load aboard. Left is the street side.
type Condition struct {
	Label   string          `json:"label"`
	TotalLb quantity.Mass   `json:"total_lb"`
	FrontLb quantity.Mass   `json:"front_lb"`
	RearLb  quantity.Mass   `json:"rear_lb"`
	LeftLb  quantity.Mass   `json:"left_lb"`
	RightLb quantity.Mass   `json:"right_lb"`
	Wheels  []Wheel         `json:"wheels"` // left front, right front, left rear, right rear
	XIn     quantity.Length `json:"x_in"`   // center of gravity
	YIn     quantity.Length `json:"y_in"`
	ZIn     quantity.Length `json:"z_in"`
	// XTolIn, YTolIn and ZTolIn are half widths of its likely range.
	XTolIn quantity.Length `json:"x_tol_in"`
	YTolIn quantity.Length `json:"y_tol_in"`
	ZTolIn quantity.Length `json:"z_tol_in"`
}

// Wheel end: one tire, or a pair on duals.
type Wheel struct {
	Pos       string        `json:"pos"` // "LF", "RF", "LR" or "RR"
	Lb        quantity.Mass `json:"lb"`
	Tires     int           `json:"tires"`
	PerTireLb quantity.Mass `json:"per_tire_lb"`
	RatedLb   quantity.Mass `json:"rated_lb"` // what the tires here may carry together
}

// Weigh computes the weigh-up and corrects it by scale tickets; see Ticket. It never
// fails: what cannot be computed is left out and a finding says why and what to do.
func Weigh(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions, tickets ...Ticket) *Sheet {
	s := &Sheet{}
	l := newLoader(cat, u, assume)
	if l == nil || !l.usable() {
		s.Findings = refusals(cat, u, l)
		return s
	}
	s.Items = l.unit()
	est := newEstimate(l.assume, s.Items)
	if len(tickets) > 0 {
		s.Correction = est.correct(l, s.Items, tickets)
		for i := range s.Items {
			l.share(&s.Items[i])
		}
	}
	if l.body.Shell != nil {
		s.TakeOff = l.takeOff()
	}
	s.Curb = l.condition("Curb, full fluids", s.Items, inCurb, est)
	s.Crewed = l.condition("With crew", s.Items, inCrewed, est)
	s.Gross = l.condition("Full load", s.Items, inGross, est)
	s.Figures = l.figures(s.Items, est)
	s.est, s.wheelbase = est, float64(l.ch.WheelbaseIn)
	if l.tracks {
		s.front, s.rear = float64(l.ch.TrackFrontIn), float64(l.ch.TrackRearIn)
	}
	l.judge(s)
	s.Findings = l.findings
	return s
}

// Doubt is how far a finished unit may be off what is computed of it: half widths of
// the ranges that hold it 95 times in 100.
type Doubt struct{ TotalLb, FrontLb, RearLb, SideLb quantity.Mass }

// CurbDoubt is the doubt about the curb weight, on all wheels, on each axle and on one
// side. It rests on all that the figures' likely ranges rest on.
func (s *Sheet) CurbDoubt() Doubt {
	if s.est == nil {
		return Doubt{}
	}
	within := func(perLb func(*Item) float64) quantity.Mass {
		return quantity.Mass(round6(likely * s.est.sigma(s.Items, func(it *Item) float64 {
			if !inCurb(it.Kind) {
				return 0
			}
			return perLb(it)
		})))
	}
	rear := func(it *Item) float64 { return float64(it.XIn) / s.wheelbase }
	d := Doubt{
		TotalLb: within(func(*Item) float64 { return 1 }),
		FrontLb: within(func(it *Item) float64 { return 1 - rear(it) }),
		RearLb:  within(rear),
	}
	if s.front > 0 && s.rear > 0 {
		d.SideLb = within(func(it *Item) float64 {
			return 0.5 + float64(it.YIn)*((1-rear(it))/s.front+rear(it)/s.rear)
		})
	}
	return d
}

// WheelDoubt is the doubt about the load of each wheel end at full load, in the order of
// Condition.Wheels: half widths of ranges that hold it 95 times in 100. That the frame may share
// a sideways moment otherwise between its axles comes on top.
func (s *Sheet) WheelDoubt() (out [4]quantity.Mass) {
	if s.est == nil || s.front <= 0 || s.rear <= 0 {
		return out
	}
	for i := range out {
		out[i] = quantity.Mass(round6(likely * s.est.sigma(s.Items, func(it *Item) float64 {
			share, track, turn := float64(it.XIn)/s.wheelbase, s.rear, float64(it.YIn)
			if i < 2 { // in front
				share, track = 1-share, s.front
			}
			if i%2 == 0 { // on the left
				turn = -turn
			}
			return share * (.5 + turn/track)
		})))
	}
	return out
}

// What counts in each condition.
func inCurb(k Kind) bool {
	return k != KindPerson && k != KindPatient && k != KindEquipment
}
func inCrewed(k Kind) bool { return inCurb(k) || k == KindPerson }
func inGross(Kind) bool    { return true }

func (l *loader) condition(label string, items []Item, in func(Kind) bool, est *estimate) Condition {
	c := Condition{Label: label}
	var total, front, rear, frontTurn, rearTurn, mx, my, mz float64
	for i := range items {
		it := &items[i]
		if !in(it.Kind) {
			continue
		}
		m, f, r := float64(it.Lb), float64(it.FrontLb), float64(it.RearLb)
		total += m
		front += f
		rear += r
		frontTurn += f * float64(it.YIn)
		rearTurn += r * float64(it.YIn)
		mx += m * float64(it.XIn)
		my += m * float64(it.YIn)
		mz += m * float64(it.ZIn)
	}
	c.TotalLb, c.FrontLb, c.RearLb = quantity.Mass(round6(total)), quantity.Mass(round6(front)),
		quantity.Mass(round6(rear))
	if total > 0 {
		c.XIn, c.YIn, c.ZIn = quantity.Length(mx/total), quantity.Length(my/total), quantity.Length(mz/total)
		tol := func(at func(*Item) quantity.Length, center quantity.Length) quantity.Length {
			return quantity.Length(likely * est.sigma(items, func(it *Item) float64 {
				if !in(it.Kind) {
					return 0
				}
				return float64(at(it)-center) / total
			}))
		}
		c.XTolIn = tol(func(it *Item) quantity.Length { return it.XIn }, c.XIn)
		c.YTolIn = tol(func(it *Item) quantity.Length { return it.YIn }, c.YIn)
		c.ZTolIn = tol(func(it *Item) quantity.Length { return it.ZIn }, c.ZIn)
	}
	if !l.tracks {
		return c
	}
	lf, rf := Wheels(front, frontTurn, float64(l.ch.TrackFrontIn))
	lr, rr := Wheels(rear, rearTurn, float64(l.ch.TrackRearIn))
	c.LeftLb, c.RightLb = quantity.Mass(round6(lf+lr)), quantity.Mass(round6(rf+rr))
	wheel := func(pos string, lb float64, t *config.Tires) Wheel {
		n := max(t.Count/2, 1)
		return Wheel{
			Pos: pos, Lb: quantity.Mass(round6(lb)), Tires: n, PerTireLb: quantity.Mass(round6(lb / float64(n))),
			RatedLb: quantity.Mass(TireCapacity(*t) * float64(n) / float64(max(t.Count, 1))),
		}
	}
	c.Wheels = []Wheel{
		wheel("LF", lf, &l.ch.FrontTires), wheel("RF", rf, &l.ch.FrontTires),
		wheel("LR", lr, &l.ch.RearTires), wheel("RR", rr, &l.ch.RearTires),
	}
	return c
}
