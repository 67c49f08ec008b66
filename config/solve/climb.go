package solve

import "slices"

// climb looks for the cheapest answer from below: it assumes that every group
// takes its cheapest choice and pays, conflict by conflict, the least that each
// demands, until an answer is left. The bound it proves on the way is far
// sharper than a sum of cheapest choices, since it sees the clauses too.
//
// Source: core-guided optimization with soft cardinalities (Andres et al.,
// 2012; Morgado et al., 2014), described there, written anew here.
func (s *Solver) climb(assumptions []Lit, costs [][]Choice, best Optimum, conflicts int64) Optimum {
	c := climber{s: s, costs: costs, fixed: slices.Clone(assumptions), price: map[Lit]int64{}, tally: map[Lit]*tally{},
		best: best}
	c.model = slices.Clone(s.model)
	for _, g := range costs {
		least := g[0].Cost
		for _, x := range g {
			least = min(least, x.Cost)
		}
		c.bound += least
		for _, x := range g {
			s.Prefer(x.Lit.Not())
			if x.Cost > least {
				c.pay(x.Lit, x.Cost-least)
			} else {
				s.Prefer(x.Lit)
			}
		}
	}
	c.run(conflicts)
	c.best.Bound = max(c.best.Bound, c.bound)
	if c.best.Found {
		c.best.Bound = min(c.best.Bound, c.best.Cost)
		copy(s.model, c.model)
	}
	return c.best
}

// climber keeps what is paid for: a literal with a price costs it when it
// holds. The sum of all prices and the bound is at all times the cost of an
// answer.
type climber struct {
	s     *Solver
	costs [][]Choice
	fixed []Lit
	price map[Lit]int64
	order []Lit // literals ever priced, in the order that came about
	tally map[Lit]*tally
	bound int64
	best  Optimum
	model []bool
}

// tally counts how many literals of a conflict hold. at[i] holds if at least
// so many of the first i+1 do.
type tally struct {
	lits []Lit
	at   []Lit // for the present count
	n    int
}

func (c *climber) pay(l Lit, price int64) {
	if _, known := c.price[l]; !known {
		c.order = append(c.order, l)
	}
	c.price[l] += price
}

// run works on the dearest literals first and takes in cheaper ones when these
// are settled, so that early answers are good and conflicts small.
func (c *climber) run(conflicts int64) {
	s := c.s
	start := s.work()
	stratum := int64(0)
	for _, p := range c.price {
		stratum = max(stratum, p)
	}
	for {
		if c.best.Found && c.bound >= c.best.Cost {
			return
		}
		left := int64(0)
		if conflicts > 0 {
			if left = conflicts - (s.work() - start); left <= 0 {
				return
			}
		}
		ask := slices.Clone(c.fixed)
		next := int64(0) // dearest price below the stratum
		for _, l := range c.order {
			switch p := c.price[l]; {
			case p <= 0:
			case p >= stratum:
				ask = append(ask, l.Not())
			default:
				next = max(next, p)
			}
		}
		switch s.solve(ask, left) {
		case Unknown:
			return
		case Sat:
			c.note()
			if next == 0 {
				c.bound = c.best.Cost
				return
			}
			stratum = max(next/2, 1)
		case Unsat:
			core := slices.DeleteFunc(slices.Clone(s.Core()), func(l Lit) bool { return c.price[l.Not()] <= 0 })
			if len(core) == 0 {
				if c.best.Found {
					c.bound = c.best.Cost
				}
				return // no answer, or none better
			}
			c.settle(c.smaller(core))
		}
	}
}

// note keeps an answer if it is the best so far.
func (c *climber) note() {
	cost := c.s.sum(c.costs)
	if !c.best.Found || cost < c.best.Cost {
		c.best.Found, c.best.Cost = true, cost
		c.model = append(c.model[:0], c.s.model...)
	}
}

// smaller leaves members out of a conflict as long as little work does it.
func (c *climber) smaller(core []Lit) []Lit {
	if len(core) > 40 {
		return core
	}
	for i := len(core) - 1; i >= 0 && len(core) > 1; i-- {
		ask := slices.Concat(c.fixed, core[:i], core[i+1:])
		if c.s.solve(ask, 30) == Unsat {
			kept := c.s.Core()
			core = slices.DeleteFunc(core, func(l Lit) bool { return !slices.Contains(kept, l) })
			i = min(i, len(core))
		}
	}
	return core
}

// settle pays the least that a conflict demands: at least one of the opposites
// of its members holds. What more than one would cost stays priced, on a count
// of them.
func (c *climber) settle(core []Lit) {
	if len(core) == 0 {
		return
	}
	least := c.price[core[0].Not()]
	for _, l := range core {
		least = min(least, c.price[l.Not()])
	}
	c.bound += least
	lits := make([]Lit, 0, len(core))
	for _, l := range core {
		x := l.Not()
		c.price[x] -= least
		lits = append(lits, x)
		if t := c.tally[x]; t != nil { // that count is reached; the next may be too
			c.count(t, least)
		}
	}
	if len(lits) > 1 {
		c.count(&tally{lits: lits, at: lits, n: 1}, least)
	} else {
		c.fixed = append(c.fixed, lits[0])
	}
}

// count prices the next higher count of a tally.
func (c *climber) count(t *tally, price int64) {
	if t.n >= len(t.lits) {
		return
	}
	s := c.s
	next := &tally{lits: t.lits, at: make([]Lit, len(t.lits)), n: t.n + 1}
	sofar, prefix := noLit, noLit // at least n+1, and at least n, of the literals before
	for i, l := range t.lits {
		h := noLit
		if prefix != noLit || sofar != noLit {
			h = Pos(s.NewVar())
			if sofar != noLit {
				s.AddClause(sofar.Not(), h)
			}
			if prefix != noLit {
				s.AddClause(prefix.Not(), l.Not(), h)
			}
		}
		next.at[i] = h
		if h != noLit {
			sofar = h
		}
		if t.n == 1 { // at least one of the first: any of them
			if i == 0 {
				prefix = l
			} else {
				p := Pos(s.NewVar())
				s.AddClause(prefix.Not(), p)
				s.AddClause(l.Not(), p)
				prefix = p
			}
		} else {
			prefix = t.at[i]
		}
	}
	top := next.at[len(next.at)-1]
	c.tally[top] = next
	c.pay(top, price)
}
