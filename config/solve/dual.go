package solve

import "math"

// dual prices limits and clauses instead of keeping them. What is left to
// choose is one literal of each group: the cheapest, prices included. For any
// prices that are not negative, these together are a bound on what an answer
// costs, and the prices that raise it most are the dual of the linear program
// that lets a choice be a fraction.
//
// It sees clauses, limits and costs at once, where a search sees them one by
// one. So it proves what is cheapest, and near the limit its choice is where a
// search for any answer at all should begin.
//
// Source: Lagrangian relaxation with subgradient steps (Held and Karp, 1971;
// Camerini, Fratta and Maffioli, 1975), described there, written anew here.
type dual struct {
	s      *Solver
	lits   []Lit     // still possible, group by group
	from   []int32   // by group: where it begins in lits; one more at the end
	at     []int32   // by literal: its place in lits, or -1
	group  []int32   // by place
	cost   []int64   // by place: of the sum to make least
	fixed  int64     // what is chosen already adds to that
	rows   []row     // the limits, then the clauses
	limits int       // so many of the rows are limits
	price  []float64 // by row
	priced []float64 // by place: the cost, prices included
	choice []int32   // by group: the place of the cheapest
}

// row demands that what is counted of the literals sums to at most max.
type row struct {
	at    []int32 // places
	count []int64
	share []float64 // the same in units of the largest, so that rows compare
	max   int64
	unit  float64
}

// newDual is for the answers beside the assumptions; nil when propagation finds
// that there are none.
func newDual(s *Solver, assumptions []Lit, costs [][]Choice) *dual {
	if _, ok := s.Implied(assumptions); !ok {
		return nil
	}
	d := &dual{s: s, at: make([]int32, 2*s.Vars())}
	for l := range d.at {
		d.at[l] = -1
	}
	limits := s.limitsIn(assumptions)
	grouped := make([]bool, s.Vars())
	d.addGroups(costs, grouped)
	for _, l := range limits {
		d.addGroups(l.groups, grouped)
	}
	for v := range grouped {
		if !grouped[v] && s.guards[v] < 0 {
			d.addGroup([]Choice{{Lit: Pos(v)}, {Lit: Neg(v)}})
		}
	}
	d.from = append(d.from, int32(len(d.lits)))
	d.choice = make([]int32, len(d.from)-1)
	d.cost = make([]int64, len(d.lits))
	sum := row{}
	d.count(&sum, costs)
	d.fixed = -sum.max
	for i, at := range sum.at {
		d.cost[at] += sum.count[i]
	}
	for _, l := range limits {
		r := row{max: l.max}
		d.count(&r, l.groups)
		d.addRow(r)
	}
	d.limits = len(d.rows)
	for c := range int32(len(s.input.ends)) {
		d.addClause(s.input.clause(c))
	}
	d.price = make([]float64, len(d.rows))
	d.priced = make([]float64, len(d.lits))
	return d
}

func (d *dual) addGroups(groups [][]Choice, grouped []bool) {
	for _, g := range groups {
		if v := g[0].Lit.Var(); !grouped[v] && g[len(g)-1].Lit.Var() != v {
			for _, c := range g {
				grouped[c.Lit.Var()] = true
			}
			d.addGroup(g)
		}
	}
}

// addGroup takes what is still possible of a set of which exactly one holds.
func (d *dual) addGroup(g []Choice) {
	from := int32(len(d.lits))
	for _, c := range g {
		if d.s.val[c.Lit] == open {
			d.at[c.Lit] = int32(len(d.lits))
			d.lits = append(d.lits, c.Lit)
			d.group = append(d.group, int32(len(d.from)))
		}
	}
	if int(from) < len(d.lits) {
		d.from = append(d.from, from)
	}
}

func (d *dual) count(r *row, groups [][]Choice) {
	for _, g := range groups {
		for _, c := range g {
			d.add(r, c.Lit, c.Cost)
		}
	}
}

// add a literal to a row: as it is, as one less its opposite, or, when it holds
// already, as a number.
func (d *dual) add(r *row, l Lit, count int64) {
	at := d.at[l]
	switch {
	case count == 0 || d.s.val[l] == refuted:
		return
	case d.s.val[l] == holds:
		r.max -= count
		return
	case at < 0:
		r.max -= count
		at, count = d.at[l.Not()], -count
	}
	r.at = append(r.at, at)
	r.count = append(r.count, count)
}

func (d *dual) addRow(r row) {
	for _, c := range r.count {
		r.unit = max(r.unit, math.Abs(float64(c)))
	}
	for _, c := range r.count {
		r.share = append(r.share, float64(c)/r.unit)
	}
	if len(r.at) > 0 {
		d.rows = append(d.rows, r)
	}
}

// longPair is how many literals of a clause are looked at for two of one group that
// exclude each other: what groups say stands in clauses of two.
const longPair = 16

// addClause leaves out what holds already and what the groups say anyway.
func (d *dual) addClause(clause []Lit) {
	r := row{max: -1}
	for i, l := range clause {
		if d.s.val[l] == holds {
			return
		}
		d.add(&r, l, -1)
		p := d.at[l.Not()]
		for _, other := range clause[:min(i, longPair)] {
			if q := d.at[other.Not()]; p >= 0 && q >= 0 && d.group[p] == d.group[q] && l.Not() != other {
				return // not both of one group
			}
		}
	}
	if len(r.at) > 0 {
		g := d.group[r.at[0]]
		n := d.from[g+1] - d.from[g]
		for i, at := range r.at {
			if d.group[at] == g && r.count[i] < 0 {
				n--
			}
		}
		if n == 0 {
			return // one of a whole group
		}
	}
	d.addRow(r)
}

// bound at the present prices for what the solver's trail leaves possible.
func (d *dual) bound() float64 {
	for i, c := range d.cost {
		d.priced[i] = float64(c)
	}
	bound := float64(d.fixed)
	for k, p := range d.price {
		if p == 0 {
			continue
		}
		r := &d.rows[k]
		bound -= p * float64(r.max) / r.unit
		for j, at := range r.at {
			d.priced[at] += p * r.share[j]
		}
	}
	for g := range d.choice {
		if p := cheapest(d, g, d.priced); p >= 0 {
			d.choice[g] = p
			bound += d.priced[p]
		}
	}
	return bound
}

// cheapest place of a group that the trail leaves; -1 when it leaves none.
func cheapest[T int64 | float64](d *dual, g int, priced []T) int32 {
	best := int32(-1)
	for p := d.from[g]; p < d.from[g+1]; p++ {
		if d.s.val[d.lits[p]] != refuted && (best < 0 || priced[p] < priced[best]) {
			best = p
		}
	}
	return best
}

const (
	raisings = 300 // steps, from no prices; measured: within 0.1 % of the linear program
	patience = 10  // steps without gain before they are made shorter
	momentum = 0.7 // of the last step in the next

	usualTerms    = 50000 // of all limits and clauses; with more, fewer steps are taken
	leastRaisings = 40
	mostTerms     = 2_000_000 // a tenth of what one raising visits at most: two hundredths of a second
)

// raise moves the prices so that the bound comes near the linear program's:
// what the choice overloads becomes dearer, what it leaves free cheaper, by a
// step that fits how far the bound is from the target, what an answer is known
// to cost, in at most so many steps, fewer where each takes long.
func (d *dual) raise(target float64, steps int) {
	sharp := make([]float64, len(d.price))
	way := make([]float64, len(d.price))
	chosen := make([]bool, len(d.lits))
	sharpest := math.Inf(-1)
	length, idle := 1.0, 0
	terms := 0
	for k := range d.rows {
		terms += len(d.rows[k].at)
	}
	if terms > usualTerms {
		steps = min(max(leastRaisings, steps*usualTerms/terms), 1+mostTerms*10/terms)
	}
	for range steps {
		if d.s.rest(); d.s.Spent() {
			break
		}
		d.s.Stats.Steps += int64(terms) / 64
		b := d.bound()
		if b > sharpest {
			if b-sharpest > 1e-4*(target-b) {
				idle = 0
			}
			sharpest = b
			copy(sharp, d.price)
		}
		if idle++; idle > patience {
			if length /= 2; length < 1e-4 {
				break
			}
			idle = 0
			copy(d.price, sharp)
			b = d.bound()
			clear(way)
		}
		clear(chosen)
		for _, p := range d.choice {
			chosen[p] = true
		}
		norm, best := 0.0, true // best: nothing is overloaded, nothing that has a price left free
		for k := range d.rows {
			r := &d.rows[k]
			over := -float64(r.max) / r.unit
			for j, at := range r.at {
				if chosen[at] {
					over += r.share[j]
				}
			}
			best = best && over <= 0 && (over == 0 || d.price[k] == 0)
			if way[k] = over + momentum*way[k]; way[k] < 0 && d.price[k] == 0 {
				way[k] = 0
			}
			norm += way[k] * way[k]
		}
		if best || b >= target {
			break
		}
		if norm == 0 {
			continue
		}
		step := length * (target - b) / norm
		for k := range d.price {
			d.price[k] = max(0, d.price[k]+step*way[k])
		}
	}
	copy(d.price, sharp)
}

// binds reports whether a limit has a price.
func (d *dual) binds() bool {
	for _, p := range d.price[:d.limits] {
		if p > 0 {
			return true
		}
	}
	return false
}

// prefer makes the present choice the first that the solver tries.
func (d *dual) prefer() {
	for _, l := range d.lits {
		d.s.Prefer(l.Not())
	}
	for _, p := range d.choice {
		d.s.Prefer(d.lits[p])
	}
}

// whole is the present pricing in whole numbers: for every answer, unit times
// what it costs is at least fixed and what is priced of its choices, exactly,
// whatever the prices. It is false when the numbers would become too large.
func (d *dual) whole(target int64) (priced []int64, fixed, unit int64, ok bool) {
	size := math.Abs(float64(d.fixed)) + math.Abs(float64(target))
	for _, c := range d.cost {
		size += math.Abs(float64(c))
	}
	for k, p := range d.price {
		r := &d.rows[k]
		sum := math.Abs(float64(r.max)) / r.unit
		for _, c := range r.share {
			sum += math.Abs(c)
		}
		size += p * sum
	}
	if unit = int64(min(1<<40, (1<<60)/(size+1))); unit < 1 {
		return nil, 0, 0, false
	}
	priced = make([]int64, len(d.cost))
	for i, c := range d.cost {
		priced[i] = c * unit
	}
	fixed = d.fixed * unit
	for k, p := range d.price {
		r := &d.rows[k]
		if times := int64(p / r.unit * float64(unit)); times > 0 {
			fixed -= times * r.max
			for j, at := range r.at {
				priced[at] += times * r.count[j]
			}
		}
	}
	return priced, fixed, unit, true
}

// exceeds reports whether every answer that the trail leaves costs more than
// the target.
func (d *dual) exceeds(target int64) bool {
	priced, least, unit, ok := d.whole(target)
	if !ok {
		return false
	}
	for g := range d.choice {
		if p := cheapest(d, g, priced); p >= 0 {
			least += priced[p]
		}
	}
	return least > target*unit
}

// loads are all limits as one sum, each in its unit, and what that can come to
// at most. They are rounded so that no answer is lost.
func (s *Solver) loads(limits []*limit) (sum [][]Choice, most int64) {
	const fine = 1e6
	for _, l := range limits {
		scale := fine / l.unit()
		most += int64(math.Ceil(float64(l.max)*scale)) + 1
		for _, choices := range l.groups {
			cs := make([]Choice, len(choices))
			for i, c := range choices {
				cs[i] = Choice{c.Lit, int64(math.Floor(float64(c.Cost) * scale))}
			}
			sum = append(sum, cs)
		}
	}
	return sum, most
}

// limit is what the pricing demands of an answer that costs at most target,
// and the least that any can cost.
func (d *dual) limit(target int64) (l Limit, bound int64, ok bool) {
	priced, fixed, unit, ok := d.whole(target)
	if !ok {
		return l, 0, false
	}
	l.Max = target*unit - fixed
	least := fixed
	for g := range d.choice {
		choices := make([]Choice, 0, d.from[g+1]-d.from[g])
		for p := d.from[g]; p < d.from[g+1]; p++ {
			choices = append(choices, Choice{d.lits[p], priced[p]})
		}
		least += priced[cheapest(d, g, priced)]
		l.Groups = append(l.Groups, choices)
	}
	bound = least / unit
	if least > 0 && least%unit > 0 {
		bound++
	}
	return l, bound, true
}
