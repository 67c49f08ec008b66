package leadtime

import (
	"slices"
	"sort"

	"boxwright/config"
)

// LatestOrderFor is the last working day on which to order for delivery on or
// before the day with the given chance, from 0 to 1. It is zero when none
// would do, such as when no slot of the framing line is early enough, and for
// a unit of a fleet that waits for a bay, whose dates depend on the other orders.
func (p *Plan) LatestOrderFor(by config.Date, chance float64) config.Date {
	j := p.job
	if slices.ContainsFunc(j.net.Activities, func(a Activity) bool { return a.NotBefore > 0 }) {
		return config.Date{}
	}
	// An order placed q working days after this one (before, when negative)
	// leaves needed-q days, and sees every slot q days nearer.
	needed := j.line.until(by)
	free, wait := p.odds, (*waiting)(nil)
	if j.gated >= 0 && len(j.slotted) > 0 {
		wait = j.waiting(p.sim)
		free = &Odds{finish: slices.Clone(wait.free)}
		sortDays(free.finish)
	}
	// With the line free the unit is never later, which bounds the search.
	last := needed - whole(free.At(chance))
	if wait != nil {
		// Ordering later never delivers earlier, so the answer is where
		// keeping the date turns into missing it.
		const back = 400 // working days
		n := sort.Search(back, func(n int) bool {
			q := last - n
			return wait.within(j.gate(q), needed-q) >= chance-tiny
		})
		if n == back {
			return config.Date{}
		}
		last -= n
	}
	day := j.line.at(last)
	if last < 0 {
		day = j.line.cal.Add(j.line.days[0], last)
	}
	if day.Year <= 1900 {
		return config.Date{}
	}
	return day
}

// waiting is a played network taken apart around its gate, draw by draw, so
// that the same draws can be held to other slots.
type waiting struct {
	ready []int32 // when the gated activity is ready
	tail  []int32 // from its start to the end
	free  []int32 // the end if the gate is open all the time
}

func (j *job) waiting(sim Simulation) *waiting {
	play := func(n Network) []int32 {
		c, _ := n.compile() // a part of a network that compiles compiles
		return c.play(sim, nil)
	}
	with := func(g *Gate) Network {
		n := Network{Activities: slices.Clone(j.net.Activities)}
		n.Activities[j.gated].Gate = g
		return n
	}
	// Held back until long after everything else, the gated activity alone
	// decides the end.
	w := &waiting{free: play(with(nil)), tail: play(with(&Gate{Free: never})), ready: play(j.before())}
	for k := range w.tail {
		w.tail[k] -= never * milli
	}
	return w
}

// before is the network of what the gated activity waits for, and its start.
func (j *job) before() Network {
	acts := j.net.Activities
	at := make(map[string]int, len(acts))
	for i := range acts {
		at[acts[i].ID] = i
	}
	keep := make([]bool, len(acts))
	var mark func(i int)
	mark = func(i int) {
		if keep[i] {
			return
		}
		keep[i] = true
		for _, id := range acts[i].After {
			mark(at[id])
		}
	}
	mark(j.gated)
	var n Network
	for i, a := range acts {
		if keep[i] {
			if i == j.gated {
				a = Activity{ID: a.ID, After: a.After}
			}
			n.Activities = append(n.Activities, a)
		}
	}
	return n
}

// within is the share of the draws finished in so many working days when the
// gate is this one; nil is always open.
func (w *waiting) within(g *Gate, days int) float64 {
	gate := &drawnGate{}
	if g != nil {
		gate = newGate(g)
	}
	limit := int32(min(max(days, -1), never) * milli)
	n := 0
	for k, end := range w.free {
		if end <= limit && gate.open(w.ready[k])+w.tail[k] <= limit {
			n++
		}
	}
	return float64(n) / float64(len(w.free))
}
