package config

import "boxwright/config/quantity"

// Limit is one number of a rule set, with where it is written and how well
// that is known.
type Limit struct {
	Value  float64 `json:"value"`
	Sense  Sense   `json:"sense"`
	Clause string  `json:"clause,omitempty"` // id in the clause table
	Source string  `json:"source"`
	Basis  Basis   `json:"basis"`
}

// Assumptions are what the rule set in force, or the purchaser's own value in
// its place, hands to the calculators: masses of people, and limits by figure
// code.
type Assumptions struct {
	RuleSet    string           `json:"rule_set"`
	Label      string           `json:"label"`
	OccupantLb Limit            `json:"occupant_lb"` // per designated seat
	PatientLb  Limit            `json:"patient_lb"`  // per patient on a cot
	Limits     map[string]Limit `json:"limits"`      // by Figure.Code
	// Factors are the assumed numbers that the plant or the unit sets, by code; see Factor.
	Factors map[string]float64 `json:"factors,omitempty"`
}

// Bind puts the limit for the figure's code, if the rule set has one, on the
// figure. A limit already there (a rating of the part) stays.
func (a *Assumptions) Bind(f *Figure) {
	l, ok := a.Limits[f.Code]
	if !ok || f.Sense != "" {
		return
	}
	f.Limit, f.Sense, f.Source, f.Basis = l.Value, l.Sense, l.Source, l.Basis
}

// Linear is a limit that picks add up to: Base + sum of Per[option] x quantity
// must be at most Limit. Calculators hand these to the rules engine, so that
// weight, current, money and days take part in what can still be chosen.
// Base holds everything that is not an option; a contribution may be negative.
type Linear struct {
	Code  string             `json:"code"` // of the figure it bounds
	Label string             `json:"label"`
	Unit  string             `json:"unit"`
	Base  float64            `json:"base"`
	Per   map[string]float64 `json:"per"` // by option id, for one of it
	Limit float64            `json:"limit"`
}

// StationAt resolves a station to inches behind the front axle, right of the
// centerline and above the ground, for an item mounted on this chassis with
// this body. An unknown zone counts from the front axle.
func StationAt(ch *Chassis, b *Body, zone string, x, y, z quantity.Length) (px, py, pz quantity.Length) {
	switch zone {
	case ZoneBumper:
		return x - ch.FrontOverhangIn, y, z
	case ZoneRearAxle:
		return x + ch.WheelbaseIn, y, z
	case ZoneModule:
		return x + ch.BodyStartIn, y, z + ch.FloorHeightIn
	case ZoneModuleMid:
		return x + ch.BodyStartIn + b.LengthIn/2, y, z + ch.FloorHeightIn
	case ZoneModuleRear:
		return x + ch.BodyStartIn + b.LengthIn, y, z + ch.FloorHeightIn
	}
	return x, y, z
}
