package bid

import (
	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
)

// Facts beside the figures of the checks, by the codes they have here.
const (
	factDelivery       = "delivery"
	factPrice          = "price"
	factGVWR           = "gvwr"
	factWheelbase      = "wheelbase"
	factModule         = "module"
	factGAWRFront      = "gawr-front"
	factGAWRRear       = "gawr-rear"
	factGAWRFrontLeast = "gawr-front-least" // "front axle, 5,000 lb": its rating, unless it is a limit on the load
	factGAWRRearLeast  = "gawr-rear-least"
	shareFrontReserve  = "front-reserve"
	shareRearReserve   = "rear-reserve"
	marginFront        = "front-margin"
	marginRear         = "rear-margin"
	countCompartments  = "compartments"
	countBench         = "bench-seats"
	countCab           = "cab-seats"
	countModule        = "module-seats"
	factHotIdle        = "alternator-idle"
	factCold           = "alternator-cold"
	factFuel           = "fuel"
	factFloor          = "floor-height"
	ratioScene         = "scene-load"
	factTurnRadius     = "turning-radius"
	benchAlone         = "bench-alone"
	factSideDoor       = "side-door-height"
	factRearDoor       = "rear-door-height"
	factRearDoorWidth  = "rear-door-width"
)

// factOf is the figure a gauge reads on the unit.
func factOf(q *quote.Quote, g *gauge) (config.Figure, bool) {
	fact := func(v float64) (config.Figure, bool) {
		return config.Figure{Code: g.code, Label: g.label, Value: v, Unit: g.unit}, true
	}
	share := func(code string) (config.Figure, bool) {
		f, ok := q.Figure(code)
		if !ok || f.Limit <= 0 {
			return f, false
		}
		own, one := 1.0, f
		if g.unit == quantity.Percent {
			own = 100 / f.Limit
		}
		margin := func(v float64) float64 { one.Value = v; return one.Margin() * own }
		return config.Figure{Code: g.code, Label: g.label, Value: margin(f.Value), Unit: g.unit,
			Low: min(margin(f.Low), margin(f.High)), High: max(margin(f.Low), margin(f.High))}, true
	}
	switch c := q.Chassis; g.code {
	case factTurnRadius:
		f, ok := q.Figure("space.turning-circle")
		f.Value /= 2
		return f, ok
	case factGVWR:
		return fact(float64(c.GVWRLb))
	case factGAWRFront, factGAWRFrontLeast:
		return fact(float64(c.GAWRFrontLb))
	case factGAWRRear, factGAWRRearLeast:
		return fact(float64(c.GAWRRearLb))
	case factWheelbase:
		return fact(float64(c.WheelbaseIn))
	case factFuel:
		return fact(c.FuelGal)
	case factFloor:
		return fact(float64(c.FloorHeightIn))
	case factModule:
		return fact(float64(q.Body.LengthIn))
	case factPrice:
		return fact(q.Price.Total.Float())
	case shareFrontReserve, marginFront:
		return share("weight.front-axle")
	case shareRearReserve, marginRear:
		return share("weight.rear-axle")
	case factSideDoor, factRearDoor:
		return fact(doorway(q, g.code))
	case factRearDoorWidth:
		return fact(float64(body.DoorsOf(q.Body).RearWidthIn))
	case factHotIdle:
		return fact(output(q, func(s *config.Supply) quantity.Current { return s.HotIdleA }))
	case ratioScene:
		f, ok := q.Figure("power.scene")
		return f, ok && f.Sense == config.AtMost
	case factCold:
		return fact(output(q, func(s *config.Supply) quantity.Current { return s.ColdA }))
	case countCompartments:
		return fact(float64(compartments(q)))
	case countBench, countCab, countModule:
		return fact(float64(seats(q, g.code)))
	}
	return q.Figure(g.code)
}

// doorway is the height of the opening of an entry, in, as far as the ceiling leaves it.
func doorway(q *quote.Quote, code string) float64 {
	d, most := body.DoorsOf(q.Body), body.HeadroomIn(q.Body)
	if code == factSideDoor {
		return min(float64(d.SideHeightIn), most)
	}
	high := float64(d.RearHeightIn)
	for _, p := range q.Draft.Unit.Picks {
		if s := q.Edition.Cat.OptionByID(p.Option).Shell; s != nil && s.RearDoorHIn > 0 {
			high = float64(s.RearDoorHIn)
		}
	}
	return min(high, most)
}

// output is the current that what generates is rated for, before the engine takes its
// share.
func output(q *quote.Quote, of func(*config.Supply) quantity.Current) float64 {
	sum := float64(of(&q.Chassis.Supply))
	for _, p := range q.Draft.Unit.Picks {
		if s := q.Edition.Cat.OptionByID(p.Option).Supply; s != nil && of(s) > 0 {
			if s.Replaces {
				sum = 0
			}
			sum += float64(of(s)) * float64(p.Qty)
		}
	}
	return sum
}

// compartments counts those reached from outside: slots for boards in one are none of their own.
func compartments(q *quote.Quote) int {
	n := 0
	for _, c := range q.Edition.Cat.CompartmentsOf(&q.Draft.Unit) {
		if c.Side != "inside" && c.Holds == nil {
			n++
		}
	}
	return n
}

// seats counts those of a kind.
func seats(q *quote.Quote, code string) int {
	if code == countCab {
		return len(q.Chassis.CabSeats)
	}
	n := 0
	for _, p := range q.Draft.Unit.Picks {
		for _, s := range q.Edition.Cat.OptionByID(p.Option).Seats {
			if s.Kind == "bench" && code == countBench || s.Kind != "cot" && code == countModule {
				n += p.Qty
			}
		}
	}
	return n
}
