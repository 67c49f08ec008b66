package standards

import (
	"boxwright/config"
	"boxwright/config/quantity"
)

// factPrefix marks the figures this package reads off the chassis itself.
const factPrefix = "chassis."

// passengerTireDivisor lowers a passenger-car tire's load on a truck or
// multipurpose vehicle. Source: 49 CFR 571.120 S5.1.2 (nhtsa.gov node/71386).
const passengerTireDivisor = 1.10

// facts are figures that need no calculator.
func facts(ch *config.Chassis, assume config.Assumptions) []config.Figure {
	plain := func(code, label string, v float64, unit string) config.Figure {
		return config.Figure{Code: code, Label: label, Value: v, Low: v, High: v, Unit: unit}
	}
	tires := func(code, label string, t config.Tires, gawr quantity.Mass) config.Figure {
		f := plain(code, label, float64(tireCapacity(t)), quantity.Pound)
		f.Limit, f.Sense, f.Source, f.Basis = float64(gawr), config.AtLeast, "axle rating", config.Rating
		return f
	}
	gawr := ch.GAWRFrontLb + ch.GAWRRearLb
	over := plain("chassis.gvwr-over-axles", "GVWR beyond the sum of the axle ratings", float64(ch.GVWRLb-gawr),
		quantity.Pound)
	return []config.Figure{
		plain("chassis.gvwr", "GVWR", float64(ch.GVWRLb), quantity.Pound),
		plain("chassis.wheelbase", "Wheelbase", float64(ch.WheelbaseIn), quantity.Inch),
		plain("chassis.floor-height", "Module floor above ground", float64(ch.FloorHeightIn), quantity.Inch),
		plain("chassis.occupant", "Weight counted for a designated seat", assume.OccupantLb.Value, quantity.Pound),
		over,
		// The codes are package weight's, which reports them only when short.
		tires("weight.gawr-tires-front", "Front tires against front GAWR", ch.FrontTires, ch.GAWRFrontLb),
		tires("weight.gawr-tires-rear", "Rear tires against rear GAWR", ch.RearTires, ch.GAWRRearLb),
	}
}

// tireCapacity is what the tires of one axle carry together; package weight has
// the same rule for its loads.
func tireCapacity(t config.Tires) quantity.Mass {
	load := t.LoadLb
	if !(load >= 0 && load < 1e6) || t.Count < 0 {
		return 0
	}
	if t.Passenger {
		load /= passengerTireDivisor
	}
	return load * quantity.Mass(t.Count)
}
