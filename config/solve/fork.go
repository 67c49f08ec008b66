package solve

import "slices"

// Fork is a second solver with the same variables, clauses and limits, at a fraction
// of the cost of adding them anew. It is for a solver that was asked nothing; the two
// then live apart.
func (s *Solver) Fork() *Solver {
	if len(s.learned) > 0 {
		panic("solve: only a fresh solver is forked")
	}
	s.cancel(0)
	c := *s
	c.input = s.input.fork()
	c.arena = slices.Clone(s.arena)
	c.watches = flat(s.watches)
	c.limits = slices.Clone(s.limits)
	for i := range c.limits {
		c.limits[i].first = slices.Clone(s.limits[i].first)
	}
	c.uses = room(s.uses)
	c.guards = slices.Clone(s.guards)
	c.val = slices.Clone(s.val)
	c.level = slices.Clone(s.level)
	c.why = slices.Clone(s.why)
	c.place = slices.Clone(s.place)
	c.phase = slices.Clone(s.phase)
	c.activity = slices.Clone(s.activity)
	c.queue = slices.Clone(s.queue)
	c.queuePos = slices.Clone(s.queuePos)
	c.trail = slices.Clone(s.trail)
	c.levels = slices.Clone(s.levels)
	c.model = slices.Clone(s.model)
	c.seen = slices.Clone(s.seen)
	c.stamps = slices.Clone(s.stamps)
	c.sums, c.stale, c.assumed, c.core, c.contrib = nil, nil, nil, nil, nil
	c.seenVars, c.clauseBuf, c.reasonBuf = nil, nil, nil
	return &c
}

// flat copies lists into one piece of memory; each grows on its own later.
func flat[T any](lists [][]T) [][]T {
	n := 0
	for _, l := range lists {
		n += len(l)
	}
	all := make([]T, 0, n)
	out := make([][]T, len(lists))
	for i, l := range lists {
		from := len(all)
		all = append(all, l...)
		out[i] = all[from:len(all):len(all)]
	}
	return out
}

// room is a copy of where literals stand in limits, with room for each to stand in
// some more before its list must grow.
func room(uses [][]limitUse) [][]limitUse {
	const more = 8
	n := 0
	for _, u := range uses {
		n += len(u) + more
	}
	all := make([]limitUse, 0, n)
	out := make([][]limitUse, len(uses))
	for i, u := range uses {
		from := len(all)
		all = append(all, u...)
		out[i], all = all[from:len(all):len(all)+more], all[:len(all)+more]
	}
	return out
}

// fork shares what both only read; either may add clauses of its own.
func (in *input) fork() input {
	c := input{lits: slices.Clip(in.lits), ends: slices.Clip(in.ends), in: make([][]int32, len(in.in)),
		checked: slices.Clone(in.checked), valid: in.valid}
	for l, list := range in.in {
		c.in[l] = slices.Clip(list)
	}
	return c
}
