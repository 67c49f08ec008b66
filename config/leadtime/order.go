package leadtime

import (
	"sort"

	"boxwright/config"
)

// LatestOrderFor is the last working day on which to order for delivery on or
// before the day with the given chance. It is zero when none within the
// calendar would do, such as when no slot of the framing line is early enough.
func (p *Plan) LatestOrderFor(by config.Date, chance float64) config.Date {
	cal := p.job.line.cal
	gated := p.job.gated >= 0 && p.job.net.Activities[p.job.gated].Gate != nil
	days := p.odds.At(chance)
	if gated {
		// Without the gate the unit is never later; this bounds the search.
		days = p.job.without(p.sim).At(chance)
	}
	// The nth working day after the order must not be after by.
	hi := cal.Add(cal.Add(by.AddDays(1), -whole(days)), -1)
	if whole(days) == 0 {
		hi = by
	}
	if hi.Year <= 1900 {
		return config.Date{}
	}
	if !gated {
		return hi
	}
	// Ordering later never delivers earlier, so the answer is where keeping
	// the date turns into missing it.
	const back = 400 // working days; slots are not published further ahead
	n := sort.Search(back, func(n int) bool {
		order := cal.Add(hi, -n)
		return !by.Before(p.job.orderedOn(order, p.sim, chance))
	})
	if n == back {
		return config.Date{}
	}
	return cal.Add(hi, -n)
}

// without plays the unit through with the framing line free.
func (j *job) without(sim Simulation) *Odds {
	n := Network{Activities: append([]Activity(nil), j.net.Activities...)}
	n.Activities[j.gated].Gate = nil
	c, _ := n.compile() // it has compiled before
	return c.simulate(sim)
}

// orderedOn is the delivery at the given chance if the order were placed on
// another day.
func (j *job) orderedOn(order config.Date, sim Simulation, chance float64) config.Date {
	other := job{cat: j.cat, unit: j.unit, line: newLine(j.line.cal, order), gated: j.gated, steps: j.steps}
	other.net.Activities = append([]Activity(nil), j.net.Activities...)
	other.net.Activities[j.gated].Gate = nil
	other.slots()
	c, _ := other.net.compile() // it has compiled before
	return other.line.finishes(c.simulate(sim).At(chance))
}
