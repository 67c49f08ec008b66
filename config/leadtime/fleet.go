package leadtime

import (
	"cmp"
	"fmt"
	"slices"

	"boxwright/config"
)

// Fleet plans several units of one quote through the plant together, each in
// the order given. A unit takes the first slot of the framing line that the
// ones before it left, and waits where they hold every bay of a station.
//
// The bays are booked at expected durations: that another unit may run late is
// not drawn for, so a fleet's later units are a little more certain here than
// in the plant. A bay is free for other units between two steps of one unit.
func Fleet(cat *config.Catalogue, units []*config.Unit, sim Simulation) ([]*Plan, error) {
	if cat == nil || len(units) == 0 {
		return nil, config.Problems{{Code: "time.nothing", Where: "the fleet",
			Text: "needs a catalogue and at least one unit"}}
	}
	f := fleet{bays: map[string]int{}, held: map[string][]hold{}}
	for i := range cat.Plant.Stations {
		f.bays[cat.Plant.Stations[i].ID] = cat.Plant.Stations[i].Bays
	}
	slots := slices.Clone(cat.Plant.Slots)
	plans := make([]*Plan, len(units))
	for k, u := range units {
		j, err := newJob(cat, u, slices.Clone(slots))
		if err == nil {
			err = f.book(j)
		}
		if err == nil {
			plans[k], err = j.plan(sim)
		}
		if err != nil {
			return nil, inUnit(k, err)
		}
		f.take(slots, plans[k])
	}
	return plans, nil
}

func inUnit(k int, err error) error {
	ps, ok := err.(config.Problems)
	if !ok {
		return err
	}
	out := make(config.Problems, len(ps))
	for i, p := range ps {
		p.Where = fmt.Sprintf("units[%d] %s", k, p.Where)
		out[i] = p
	}
	return out
}

// fleet is which bays are held when, counted in working days from the first
// unit's order.
type fleet struct {
	first *line
	bays  map[string]int
	held  map[string][]hold
}

type hold struct{ from, to float64 }

// book gives each step of the unit its bay, in the network's order, and holds
// back those for which none is free yet.
func (f *fleet) book(j *job) error {
	if f.first == nil {
		f.first = j.line
	}
	c, err := j.net.compile()
	if err != nil {
		return err
	}
	origin := float64(f.first.until(j.unit.OrderOn))
	end := make([]float64, len(c.acts))
	for _, i := range c.order {
		a := &c.acts[i]
		ready := 0.0
		for _, p := range c.pred[i] {
			ready = max(ready, end[p])
		}
		if a.Gate != nil {
			ready = a.Gate.open(ready)
		}
		start, days := ready, Expected(a.Span())
		if station := j.steps[i].Station; station != "" && days > 0 && f.bays[station] > 0 {
			for {
				start = f.free(station, origin+start, days) - origin
				if a.Gate == nil || a.Gate.open(start) <= start+tiny {
					break
				}
				start = a.Gate.open(start)
			}
			f.held[station] = append(f.held[station], hold{origin + start, origin + start + days})
		}
		if start > ready+tiny {
			j.net.Activities[i].NotBefore = start
		}
		end[i] = start + days
	}
	return nil
}

// free is the first time from ready on at which a bay of the station is free
// for so many days. How many bays are held can only rise where a hold begins,
// and a better start can only be where one ends.
func (f *fleet) free(station string, ready, days float64) float64 {
	var near []hold
	for _, h := range f.held[station] {
		if h.to > ready+tiny {
			near = append(near, h)
		}
	}
	at := func(t float64) (busy int) {
		for _, h := range near {
			if h.from <= t+tiny && h.to > t+tiny {
				busy++
			}
		}
		return busy
	}
	fits := func(start float64) bool {
		if at(start) >= f.bays[station] {
			return false
		}
		for _, h := range near {
			if h.from > start && h.from < start+days-tiny && at(h.from) >= f.bays[station] {
				return false
			}
		}
		return true
	}
	slices.SortStableFunc(near, func(a, b hold) int { return cmp.Compare(a.to, b.to) })
	if fits(ready) {
		return ready
	}
	for _, h := range near {
		if fits(h.to) {
			return h.to
		}
	}
	return ready // not reached: after the last hold every bay is free
}

// take uses up the slot that the unit starts framing in.
func (f *fleet) take(slots []config.Slot, p *Plan) {
	if p.Slot.IsZero() {
		return
	}
	for i := range slots {
		s := &slots[i]
		if s.Open > 0 && p.job.line.cal.Add(s.Start.AddDays(-1), 1) == p.Slot {
			s.Open--
			return
		}
	}
}
