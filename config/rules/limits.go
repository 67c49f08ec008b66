package rules

import (
	"fmt"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/solve"
)

// Limits hands the engine the linear limits of a unit. They may differ from
// chassis to chassis and body to body, so it asks for the pair it judges.
//
// The contribution of an option is Per[id] times its quantity in the unit, or
// times one when the unit does not have it.
type Limits struct {
	// For lists the limits on this chassis with this body.
	For func(chassis, body string) []config.Linear
	// Key names everything but chassis, body and picks that For depends on. Two
	// calls with equal keys promise equal limits, which lets the engine skip the
	// call; an empty key promises nothing.
	Key string
}

// Scale is how many whole steps the engine makes of one unit of a limit.
//
// A contribution is rounded up to the next step and a limit down, so that the
// engine never calls something open that breaks a limit; the error is at most
// one step (0.0001 lb, A, ...) for each pick. Numbers within a hundredth of a
// step of a whole one are taken to be it, so that 0.1 + 0.2 is 0.3.
const Scale = 10000

// largest absolute number taken in a limit, in its unit. With it, sums over
// the most options a catalogue may have stay exact.
const largest = 1e9

func roundUp(x float64) int64   { return int64(math.Ceil(x*Scale - 0.01)) }
func roundDown(x float64) int64 { return int64(math.Floor(x*Scale + 0.01)) }

func usable(x float64) bool { return math.Abs(x) <= largest } // false for NaN too

// weighed is a limit made whole numbers: cost of one, by variable.
type weighed struct {
	linear config.Linear
	room   int64 // limit less base
	cost   []int64
}

// limitSet is what the solver currently holds of limits. A slot keeps its
// guard over the engine's life; its content changes.
type limitSet struct {
	choices [][]solve.Lit // sets of which exactly one holds

	guards   []solve.Lit
	inForce  []weighed
	quantity map[int]int // by variable, where above one

	known []*onPair // those used longest ago first
}

// onPair are the limits of a chassis with a body, made whole numbers.
type onPair struct {
	pair     [2]string
	key      string
	list     []weighed
	problems config.Problems
}

// mostPairs bounds the memory that limits take.
const mostPairs = 48

// has reports whether the limits of a pair are known.
func (ls *limitSet) has(pair [2]string, limits *Limits) bool {
	return limits.Key != "" && slices.ContainsFunc(ls.known, func(p *onPair) bool {
		return p.pair == pair && p.key == limits.Key
	})
}

// forPair lists the limits of a pair.
func (ls *limitSet) forPair(e *Engine, pair [2]string, limits *Limits) *onPair {
	i := slices.IndexFunc(ls.known, func(p *onPair) bool { return p.pair == pair })
	var p *onPair
	if i >= 0 {
		p = ls.known[i]
		ls.known = slices.Delete(ls.known, i, i+1)
	} else if len(ls.known) == mostPairs {
		ls.known = slices.Delete(ls.known, 0, 1)
	}
	if p == nil || limits.Key == "" || p.key != limits.Key {
		p = &onPair{pair: pair, key: limits.Key}
		p.list, p.problems = e.weigh(limits.For(pair[0], pair[1]))
	}
	ls.known = append(ls.known, p)
	return p
}

// behind is the limit that a guard stands for.
func (ls *limitSet) behind(guard solve.Lit) *weighed {
	return &ls.inForce[slices.Index(ls.guards, guard)]
}

// limitsEach is what bringing the limits of a pair into a solver takes for each id,
// in steps.
const limitsEach = 20

// load brings the limits for the unit's chassis and body into the solver and
// returns the guards to assume.
func (ls *limitSet) load(e *Engine, u *config.Unit, limits *Limits) ([]solve.Lit, config.Problems) {
	if limits == nil || limits.For == nil {
		return nil, nil
	}
	quantity := e.quantities(u)
	p := ls.forPair(e, [2]string{u.Chassis, u.Body}, limits)
	for i := range p.list {
		w := &p.list[i]
		same := i < len(ls.inForce) && sameWeights(&ls.inForce[i], w) && sameQuantities(ls.quantity, quantity, w.cost)
		if same {
			continue
		}
		l := e.solveLimit(w, quantity)
		if i < len(ls.guards) {
			e.table.ReplaceLimit(ls.guards[i], l)
		} else {
			ls.guards = append(ls.guards, e.table.AddLimit(l))
		}
	}
	ls.inForce, ls.quantity = p.list, quantity
	return ls.guards[:len(p.list)], p.problems
}

// weigh turns limits into whole numbers and leaves out what cannot be used.
func (e *Engine) weigh(list []config.Linear) ([]weighed, config.Problems) {
	var out []weighed
	var ps config.Problems
	for _, l := range list {
		w := weighed{linear: l, cost: make([]int64, e.n)}
		bad := ""
		if !usable(l.Base) {
			bad = fmt.Sprintf("its base is %v", l.Base)
		}
		if !usable(l.Limit) {
			bad = fmt.Sprintf("its limit is %v", l.Limit)
		}
		for id, per := range l.Per {
			v, known := e.vars[id]
			switch {
			case !usable(per):
				if text := fmt.Sprintf("the contribution of %q is %v", id, per); bad == "" || text < bad {
					bad = text
				}
			case known:
				w.cost[v] = roundUp(per)
			}
		}
		if bad != "" {
			ps = append(ps, config.Problem{Code: "rules.limit-number", Where: fmt.Sprintf("limit %q", l.Code),
				Text: fmt.Sprintf("is left out of what can be chosen: %s; correct it to a number from −1e9 to 1e9",
					bad)})
			continue
		}
		w.room = roundDown(l.Limit) - roundUp(l.Base)
		out = append(out, w)
	}
	return out, ps
}

func sameWeights(a, b *weighed) bool {
	return a == b || a.room == b.room && slices.Equal(a.cost, b.cost)
}

func sameQuantities(a, b map[int]int, cost []int64) bool {
	differ := func(x, y map[int]int) bool {
		for v, q := range x {
			if cost[v] != 0 && y[v] != q {
				return true
			}
		}
		return false
	}
	return !differ(a, b) && !differ(b, a)
}

// mostQuantity of one pick that is counted, as the catalogue's check has it.
const mostQuantity = 99

// quantities above one that the unit has, by variable.
func (e *Engine) quantities(u *config.Unit) map[int]int {
	var m map[int]int
	for _, p := range u.Picks {
		if v, known := e.vars[p.Option]; known && p.Qty > 1 {
			if m == nil {
				m = map[int]int{}
			}
			m[v] = min(p.Qty, mostQuantity)
		}
	}
	return m
}

// solveLimit groups a limit by the sets of which exactly one holds.
func (e *Engine) solveLimit(w *weighed, quantity map[int]int) solve.Limit {
	cost := func(l solve.Lit) int64 {
		v := l.Var()
		if v >= e.n {
			return 0 // "none of the group"
		}
		return w.cost[v] * int64(max(quantity[v], 1))
	}
	l := solve.Limit{Max: w.room}
	for _, set := range e.limits.choices {
		choices := make([]solve.Choice, 0, len(set))
		counts := false
		for _, x := range set {
			choices = append(choices, solve.Choice{Lit: x, Cost: cost(x)})
			counts = counts || cost(x) != 0
		}
		if counts {
			l.Groups = append(l.Groups, choices)
		}
	}
	for v := e.firstOption(); v < e.n; v++ {
		if c := cost(solve.Pos(v)); e.class[v] < 0 && c != 0 {
			l.Groups = append(l.Groups, []solve.Choice{{Lit: solve.Pos(v), Cost: c}, {Lit: solve.Neg(v), Cost: 0}})
		}
	}
	return l
}
