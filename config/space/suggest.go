package space

import (
	"cmp"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Trim is how a unit stands on its axles and sides, as weighed; pounds. The
// limits are the axle ratings; 0 leaves the axles out of the balance.
type Trim struct {
	FrontLb, RearLb           quantity.Mass
	LeftLb, RightLb           quantity.Mass
	FrontLimitLb, RearLimitLb quantity.Mass
}

// overWeight makes a pound over an axle's rating count for more than any
// imbalance.
const overWeight = 1000

// Uneven is what Suggest makes small, in pounds: what the sides differ by, what
// an even use of the two axle ratings would shift, and a thousandfold what is
// over a rating.
func (t Trim) Uneven() float64 {
	u := math.Abs(float64(t.LeftLb - t.RightLb))
	if f, r := float64(t.FrontLimitLb), float64(t.RearLimitLb); f > 0 && r > 0 {
		all := float64(t.FrontLb + t.RearLb)
		u += math.Abs(float64(t.FrontLb) - all*f/(f+r))
		u += overWeight * (max(0, float64(t.FrontLb)-f) + max(0, float64(t.RearLb)-r))
	}
	if !(u <= math.MaxFloat64) {
		return math.MaxFloat64
	}
	return u
}

// plus adds m pounds at a place whose effect for one pound is e.
func (t Trim) plus(e Trim, m quantity.Mass) Trim {
	t.FrontLb += e.FrontLb * m
	t.RearLb += e.RearLb * m
	t.LeftLb += e.LeftLb * m
	t.RightLb += e.RightLb * m
	return t
}

// per is the effect of one pound, where m pounds make t the trim with.
func (t Trim) per(with Trim, m quantity.Mass) Trim {
	return Trim{FrontLb: (with.FrontLb - t.FrontLb) / m, RearLb: (with.RearLb - t.RearLb) / m,
		LeftLb: (with.LeftLb - t.LeftLb) / m, RightLb: (with.RightLb - t.RightLb) / m}
}

// maxLoose bounds how many single things are placed at one call, maxRounds how
// often they are looked through for a gain.
const (
	maxLoose  = 200
	maxRounds = 40
)

// Suggest places what is not yet stowed where practice has it, by the catalogue's Stowage of each
// thing, and so that the axles and the two sides balance. It returns the whole list for
// Unit.Carried. What is stowed by hand stays; a thing for which no place is proven stays unstowed.
// weigh is called once more than there are compartments, and must be linear in mass, as statics
// is, once something is carried. The same unit always gets the same suggestion. It is a
// good one, found by placing the largest first and then moving and exchanging while that helps; it
// is not proven the best.
func Suggest(cat *config.Catalogue, u *config.Unit, weigh func(*config.Unit) Trim) []config.Carried {
	b := gather(cat, u, nil, new(config.Report))
	if b == nil {
		if u == nil {
			return nil
		}
		return slices.Clone(u.Carried)
	}
	l := newLayout(b)
	l.weigh(u, weigh)
	for i := range l.loose {
		l.place(i)
	}
	for range maxRounds {
		moved, swapped := l.moves(), l.swaps()
		if !moved && !swapped {
			break
		}
	}
	return l.carried()
}

// layout is a stowage in the making.
type layout struct {
	holds []hold
	loose []loose
	fixed []config.Carried // by hand, or beyond what is placed
	trim  Trim
}

// hold is a compartment with what is in it.
type hold struct {
	config.Compartment
	fixed  []piece // by hand
	clean  int     // things in it that are clean, and that are dirty
	dirty  int
	massLb quantity.Mass
	effect Trim // of one pound in it
}

// loose is one thing to be placed; in is its hold or -1.
type loose struct {
	piece
	massLb quantity.Mass
	in     int
	of     *config.Equipment
	unfit  []float64 // by hold: what counts against it
	barred []bool    // by hold: it never rides there
}

func newLayout(b *vehicle) *layout {
	l := new(layout)
	at := map[string]int{}
	for _, c := range b.Cat.Left(b.Unit, b.Cat.CompartmentsOf(b.Unit)) {
		if _, twice := at[c.ID]; !twice {
			at[c.ID] = len(l.holds)
			l.holds = append(l.holds, hold{Compartment: c})
		}
	}
	for _, c := range b.Unit.Carried {
		e := b.Cat.EquipmentOf(b.Unit, c.Equipment)
		if e == nil || c.Qty < 1 || c.Qty > 999 {
			l.fixed = append(l.fixed, c)
			continue
		}
		p := piece{e.ID, boxOf(e)}
		if i, stowed := at[c.Compartment]; stowed {
			l.fixed = append(l.fixed, c)
			for range c.Qty {
				l.holds[i].fixed = append(l.holds[i].fixed, p)
			}
			l.holds[i].massLb += config.Clean(e.MassLb) * quantity.Mass(c.Qty)
			l.holds[i].count(e, c.Qty)
			continue
		}
		n := min(c.Qty, maxLoose-len(l.loose))
		for range n {
			l.loose = append(l.loose, loose{piece: p, massLb: config.Clean(e.MassLb), in: -1, of: e})
		}
		if n < c.Qty {
			l.fixed = append(l.fixed, config.Carried{Equipment: c.Equipment, Qty: c.Qty - n})
		}
	}
	for i := range l.loose {
		l.loose[i].know(b.Cat, b.Unit, l.holds)
	}
	slices.SortStableFunc(l.loose, func(x, y loose) int {
		return cmp.Or(cmp.Compare(y.volume(), x.volume()), cmp.Compare(y.massLb, x.massLb), cmp.Compare(x.id, y.id))
	})
	return l
}

// know learns what practice says of a thing in each hold.
func (x *loose) know(cat *config.Catalogue, u *config.Unit, holds []hold) {
	x.unfit, x.barred = make([]float64, len(holds)), make([]bool, len(holds))
	for h := range holds {
		x.unfit[h] = unfit(x.of, &holds[h].Compartment)
		x.barred[h] = !mayRide(x.of, &holds[h].Compartment) ||
			slices.ContainsFunc(holds[h].fixed, func(p piece) bool {
				return apart(x.of, cat.EquipmentOf(u, p.id))
			})
	}
}

// count adds n of a thing to what is clean or dirty in a hold.
func (h *hold) count(e *config.Equipment, n int) {
	switch {
	case e.Stow == nil:
	case e.Stow.Dirt == config.StowClean:
		h.clean += n
	case e.Stow.Dirt == config.StowDirty:
		h.dirty += n
	}
}

// against is what counts against thing i in hold h, once thing out has left it; -1
// for none.
func (l *layout) against(h, i, out int) float64 {
	x, hd := &l.loose[i], &l.holds[h]
	v := x.unfit[h]
	if x.of.Stow == nil || x.of.Stow.Dirt == "" {
		return v
	}
	others := hd.clean
	if x.of.Stow.Dirt == config.StowClean {
		others = hd.dirty
	}
	if out >= 0 && l.loose[out].in == h && dirtBeside(x.of, l.loose[out].of) {
		others--
	}
	return v + besideDirt*float64(others)
}

// weigh learns how the bare unit stands and what a pound in each hold does.
func (l *layout) weigh(u *config.Unit, weigh func(*config.Unit) Trim) {
	if weigh == nil || len(l.loose) == 0 {
		return
	}
	probe := slices.MaxFunc(l.loose, func(x, y loose) int { return cmp.Compare(x.massLb, y.massLb) })
	with := func(hold string, n int) Trim {
		v := u.Clone()
		v.Carried = slices.Clone(l.fixed)
		if n > 0 {
			v.Carried = append(v.Carried, config.Carried{Equipment: probe.id, Compartment: hold, Qty: n})
			slices.SortStableFunc(v.Carried, byIDThenPlace)
		}
		return weigh(&v)
	}
	if probe.massLb <= 0 || len(l.holds) == 0 {
		l.trim = with("", 0)
		return
	}
	// A unit that carries nothing may count an allowance instead, so the bare one is one and the
	// same thing less than two.
	one := with(l.holds[0].ID, 1)
	first := one.per(with(l.holds[0].ID, 2), probe.massLb)
	l.trim = one.plus(first, -probe.massLb)
	for i := range l.holds {
		l.holds[i].effect = first
		if i > 0 {
			l.holds[i].effect = l.trim.per(with(l.holds[i].ID, 1), probe.massLb)
		}
	}
}

// takes reports whether hold h, without thing out (-1 for none), takes thing in too.
func (l *layout) takes(h int, in, out int) bool {
	hd := &l.holds[h]
	if l.loose[in].barred[h] {
		return false
	}
	pieces, mass := slices.Clone(hd.fixed), hd.massLb+l.loose[in].massLb
	for i := range l.loose {
		if l.loose[i].in == h && i != out {
			if apart(l.loose[in].of, l.loose[i].of) {
				return false
			}
			pieces = append(pieces, l.loose[i].piece)
		}
	}
	if out >= 0 {
		mass -= l.loose[out].massLb
	}
	if overRated(mass, config.Clean(hd.LimitLb)) {
		return false
	}
	if hd.Holds != nil {
		n := 1
		for _, p := range pieces {
			if p.id == l.loose[in].id {
				n++
			}
		}
		return n <= holdsOf(&hd.Compartment, l.loose[in].id)
	}
	_, ok := arrange(hollow(&hd.Compartment), append(pieces, l.loose[in].piece))
	return ok
}

// leaves reports whether what stays in hold h without thing i still has a proven
// arrangement: the search for one may fail on fewer pieces where it found more.
func (l *layout) leaves(h, i int) bool {
	if l.holds[h].Holds != nil {
		return true
	}
	pieces := slices.Clone(l.holds[h].fixed)
	for k := range l.loose {
		if l.loose[k].in == h && k != i {
			pieces = append(pieces, l.loose[k].piece)
		}
	}
	_, ok := arrange(hollow(&l.holds[h].Compartment), pieces)
	return ok
}

// put moves thing i to hold h, or out of every hold with -1.
func (l *layout) put(i, h int) {
	x := &l.loose[i]
	if x.in >= 0 {
		l.holds[x.in].massLb -= x.massLb
		l.trim = l.trim.plus(l.holds[x.in].effect, -x.massLb)
		l.holds[x.in].count(x.of, -1)
	}
	if x.in = h; h >= 0 {
		l.holds[h].count(x.of, 1)
		l.holds[h].massLb += x.massLb
		l.trim = l.trim.plus(l.holds[h].effect, x.massLb)
	}
}

// gain that a move must bring, in pounds, so that rounding never makes the search circle.
const gain = 0.01

// place puts thing i where practice and balance together want it, if it fits
// anywhere.
func (l *layout) place(i int) bool {
	here, best := l.loose[i].in, -1
	least := math.Inf(1)
	bare := l.trim
	if here >= 0 {
		bare = bare.plus(l.holds[here].effect, -l.loose[i].massLb)
		best, least = here, l.trim.Uneven()+l.against(here, i, -1)-gain
	}
	for h := range l.holds {
		if h == here {
			continue
		}
		v := bare.plus(l.holds[h].effect, l.loose[i].massLb).Uneven() + l.against(h, i, -1)
		if v < least && l.takes(h, i, -1) {
			best, least = h, v
		}
	}
	if best == here || here >= 0 && !l.leaves(here, i) {
		return false
	}
	l.put(i, best)
	return true
}

func (l *layout) moves() (any bool) {
	for i := range l.loose {
		any = l.place(i) || any
	}
	return any
}

// swaps exchanges two things of different holds where that helps.
func (l *layout) swaps() (any bool) {
	for i := range l.loose {
		for j := range i {
			x, y := l.loose[i], l.loose[j]
			if x.in < 0 || y.in < 0 || x.in == y.in || x.id == y.id {
				continue
			}
			t := l.trim.plus(l.holds[x.in].effect, y.massLb-x.massLb).plus(l.holds[y.in].effect, x.massLb-y.massLb)
			now := l.trim.Uneven() + l.against(x.in, i, -1) + l.against(y.in, j, -1)
			then := t.Uneven() + l.against(y.in, i, j) + l.against(x.in, j, i)
			if then < now-gain && l.takes(y.in, i, j) && l.takes(x.in, j, i) {
				l.put(i, y.in)
				l.put(j, x.in)
				any = true
			}
		}
	}
	return any
}

// carried writes the layout as a unit holds it.
func (l *layout) carried() []config.Carried {
	type key struct{ equipment, compartment string }
	sum := map[key]int{}
	for _, c := range l.fixed {
		sum[key{c.Equipment, c.Compartment}] += c.Qty
	}
	for _, x := range l.loose {
		k := key{equipment: x.id}
		if x.in >= 0 {
			k.compartment = l.holds[x.in].ID
		}
		sum[k]++
	}
	out := make([]config.Carried, 0, len(sum))
	for k, n := range sum {
		out = append(out, config.Carried{Equipment: k.equipment, Compartment: k.compartment, Qty: n})
	}
	slices.SortStableFunc(out, byIDThenPlace)
	return out
}

func byIDThenPlace(a, b config.Carried) int {
	return cmp.Or(cmp.Compare(a.Equipment, b.Equipment), cmp.Compare(a.Compartment, b.Compartment))
}
