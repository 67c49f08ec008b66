package rules

import (
	"cmp"
	"math"
	"slices"

	"boxwright/config/solve"
)

// arithmetic of a limit for the literal asked about (or nothing, when
// it is below zero) beside all the picks, the other limits of the same reason kept.
func (e *Engine) arithmetic(w *weighed, l solve.Lit, picks, others []solve.Lit, quantity map[int]int) Arithmetic {
	amount := func(x solve.Lit) float64 {
		if x.Negative() {
			return 0
		}
		return w.linear.Per[e.ids[x.Var()]] * float64(max(quantity[x.Var()], 1))
	}
	a := Arithmetic{Code: w.linear.Code, Label: w.linear.Label, Unit: w.linear.Unit, Base: w.linear.Base,
		Limit: w.linear.Limit}
	for _, p := range picks {
		if share := amount(p); share != 0 {
			a.Shares = append(a.Shares, Share{e.ids[p.Var()], share})
			a.Picked += share
		}
	}
	slices.SortStableFunc(a.Shares, func(x, y Share) int { return cmp.Compare(math.Abs(y.Amount), math.Abs(x.Amount)) })
	ask := slices.Clone(others)
	p := e.prover()
	for _, sw := range p.switches {
		ask = append(ask, sw)
	}
	ask = append(ask, picks...)
	if l >= 0 {
		a.Asked = amount(l)
		ask = append(ask, l)
	}
	if p.gauge == 0 {
		p.gauge = p.solver.AddLimit(solve.Limit{})
	}
	best := p.solver.Minimize(ask, e.solveLimit(w, quantity).Groups, p.gauge, proofBudget/10)
	a.Exact = best.Proven()
	a.Rest = float64(best.Bound)/Scale - a.Picked - a.Asked
	if math.Abs(a.Rest) < 0.01 { // rounding to whole steps, no real mass
		a.Rest = 0
	}
	a.Total = a.Base + a.Picked + a.Asked + a.Rest
	a.Over = a.Total - a.Limit
	return a
}
