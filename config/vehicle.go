package config

import "fmt"

// Vehicle is a unit with its parts as one edition has them, for a calculator.
type Vehicle struct {
	Cat     *Catalogue
	Unit    *Unit
	Chassis *Chassis
	Body    *Body // nil when it is not known and the calculator needs none
	Picks   []Picked
	Assume  *Assumptions
}

// Fields name the numbers that a calculator reads and takes for zero. Body is nil in
// a calculator that needs no body.
type Fields struct {
	Chassis func(*Chassis) Unclean
	Body    func(*Body) Unclean
	Option  func(*Option) Unclean
}

// VehicleOf finds the parts of a unit and reports what is left out, see Picked. It is
// nil when there is nothing to compute from.
func VehicleOf(cat *Catalogue, u *Unit, assume *Assumptions, area string, r *Report, bad Fields) *Vehicle {
	if cat == nil || u == nil {
		r.Tell(area, "no-unit", Stop, "There is no catalogue or no unit to compute from.",
			"Open a catalogue and a unit.")
		return nil
	}
	v := &Vehicle{Cat: cat, Unit: u, Chassis: cat.ChassisByID(u.Chassis), Body: cat.BodyOf(u), Assume: assume}
	if v.Assume == nil {
		v.Assume = new(Assumptions)
	}
	if v.Chassis == nil {
		r.Tell(area, "no-chassis", Stop, fmt.Sprintf("Chassis %q is not in this edition.", u.Chassis),
			"Choose a chassis.")
		return nil
	}
	r.BadNumbers(area, v.Chassis.Label, bad.Chassis(v.Chassis))
	if bad.Body != nil {
		if v.Body == nil {
			r.Tell(area, "no-body", Stop, fmt.Sprintf("Body %q is not in this edition.", u.Body), "Choose a body.")
			return nil
		}
		r.BadNumbers(area, v.Body.Label, bad.Body(v.Body))
	}
	v.Picks = cat.Picked(u, area, r, bad.Option)
	return v
}
