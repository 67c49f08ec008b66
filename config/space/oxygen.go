package space

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Usual values of the oxygen figures. Common practice, no source.
const (
	ReservePSI = 200.0 // not counted on, so that a cylinder is changed in time
	FlowLPM    = 15.0  // a high-flow mask
)

// Flows for which the sheet lists the hours, L/min. Common practice, no source.
var Flows = []float64{2, 6, 10, 15}

// Oxygen is what the unit carries and how long it lasts.
type Oxygen struct {
	Cylinders []Cylinder
	Liters    float64   // down to an empty gauge
	Hours     []HoursAt // by flow, down to ReservePSI
	Caution   string    // printed with the figures
}

// Cylinder is one kind of cylinder aboard.
type Cylinder struct {
	ID, Label string // of the option
	Kind      string // "D", "E", "M", "H"
	Count     int
	FullPSI   float64
	Liters    float64 // of all of them, full, down to an empty gauge
	Usable    float64 // down to ReservePSI
}

// HoursAt one flow.
type HoursAt struct {
	LPM, Hours float64
}

// Usable is what a cylinder gives, in liters, until it is down to a residual pressure; at
// a steady flow it lasts that over the flow.
//
//	V = (P - residual) x factor, t = V / flow
//
// Source: tank duration formula of respiratory-care teaching
// (respiratorytherapyzone.com, E factor 0.28 L/psi). Units: L/psi, psi, psi, L. Valid: all
// from 0 up, otherwise 0; at or below the residual nothing is left. Example: E cylinder,
// 1,000 psi, no residual: 280 L, at 2 L/min 140 min.
func Usable(factor, psi, residual float64) float64 {
	if config.Clean(residual) != residual {
		return 0
	}
	return config.Clean(factor) * max(config.Clean(psi)-residual, 0)
}

// AirLPM is the flow of medical air that hours are given for: common practice, no source.
const AirLPM = 10.0

// air gives the hours of medical air, where the unit has any.
func (s *Sheet) air(b *vehicle) {
	usable := 0.0
	for _, p := range b.Picks {
		if c, ok := cylinderOf(p, p.Air); ok {
			s.AirCylinders = append(s.AirCylinders, c)
			usable += c.Usable
		}
	}
	for _, flow := range Flows {
		if usable > 0 {
			s.AirHours = append(s.AirHours, HoursAt{flow, usable / flow / 60})
		}
	}
	if usable > 0 {
		record(s, b, "space.air-hours", fmt.Sprintf("Medical air at %.0f L/min, down to %.0f psi", AirLPM, ReservePSI),
			usable/AirLPM/60, quantity.Hour)
	}
}

// cylinderOf reckons the gas that an option carries, if it carries any.
func cylinderOf(p config.Picked, x *config.Oxygen) (c Cylinder, ok bool) {
	if x == nil || x.Count < 1 || x.Count > 999 {
		return c, false
	}
	c = Cylinder{ID: p.ID, Label: p.Label, Kind: x.Cylinder, Count: x.Count * p.Qty, FullPSI: config.Clean(x.FullPSI)}
	c.Liters = float64(c.Count) * Usable(x.LitersPerPSI, x.FullPSI, 0)
	c.Usable = float64(c.Count) * Usable(x.LitersPerPSI, x.FullPSI, ReservePSI)
	return c, true
}

func (s *Sheet) oxygen(b *vehicle) {
	var usable float64
	for _, p := range b.Picks {
		c, ok := cylinderOf(p, p.Oxygen)
		if !ok {
			continue
		}
		s.Oxygen.Liters += c.Liters
		usable += c.Usable
		s.Oxygen.Cylinders = append(s.Oxygen.Cylinders, c)
	}
	s.Oxygen.Caution = "Assumes full cylinders, a true gauge and no leaks; the flow is for all patients together. " +
		"The medical director's protocol decides what is carried."
	record(s, b, "space.oxygen", "Oxygen, cylinders full", s.Oxygen.Liters, quantity.Liter)
	for _, flow := range Flows {
		s.Oxygen.Hours = append(s.Oxygen.Hours, HoursAt{flow, usable / flow / 60})
	}
	if usable > 0 {
		patients, one := len(s.Cots), ""
		if patients > 1 {
			one = " for one patient"
		}
		label := fmt.Sprintf("Oxygen%s at %.0f L/min, down to %.0f psi", one, FlowLPM, ReservePSI)
		record(s, b, "space.oxygen-hours", label, usable/FlowLPM/60, quantity.Hour)
		if patients > 1 {
			label = fmt.Sprintf("Oxygen for %d patients at %.0f L/min each, down to %.0f psi", patients, FlowLPM, ReservePSI)
			record(s, b, "space.oxygen-hours-each", label, usable/FlowLPM/60/float64(patients), quantity.Hour)
		}
	}
}
