package solve

import "slices"

// pool keeps answers found, from click to click: most of them still tell
// something after one more pick.
type pool struct {
	known []known
	click int
}

// known is an answer found earlier.
type known struct {
	bits []uint64 // by variable of the solver
	kept []int8   // by slot: whether the limit is kept: holds, refuted, or open where it was not weighed yet
	used int      // click at which it last told something new
}

// poolMost bounds the answers kept; the ones longest without use go first.
const poolMost = 384

// add puts in an answer that keeps the limits of the guards; the pointer is
// good until the next call.
func (p *pool) add(model []bool, s *Solver, guards []Lit) *known {
	var k known
	if len(p.known) == poolMost {
		oldest := 0
		for i := range p.known {
			if p.known[i].used < p.known[oldest].used {
				oldest = i
			}
		}
		k = p.known[oldest]
		p.known = slices.Delete(p.known, oldest, oldest+1)
	}
	k.bits = pack(k.bits, model)
	k.kept = slices.Grow(k.kept[:0], len(s.limits))[:len(s.limits)]
	clear(k.kept)
	for _, g := range guards {
		k.kept[s.guards[g.Var()]] = holds
	}
	k.used = p.click
	p.known = append(p.known, k)
	return &p.known[len(p.known)-1]
}

// pack an answer into bits, in the room given where that suffices.
func pack(bits []uint64, model []bool) []uint64 {
	words := (len(model) + 63) / 64
	bits = slices.Grow(bits[:0], words)[:words]
	clear(bits)
	for v, b := range model {
		if b {
			bits[v/64] |= 1 << (v % 64)
		}
	}
	return bits
}

// forget a slot's limit, which is new.
func (p *pool) forget(slot int) {
	for i := range p.known {
		if k := &p.known[i]; slot < len(k.kept) {
			k.kept[slot] = open
		}
	}
}

// keeps reports whether the answer keeps the limits of the guards.
func (k *known) keeps(s *Solver, guards []Lit) bool {
	for len(k.kept) < len(s.limits) {
		k.kept = append(k.kept, open)
	}
	for _, g := range guards {
		slot := s.guards[g.Var()]
		if k.kept[slot] == open {
			k.kept[slot] = refuted
			if l := &s.limits[slot]; k.sum(l) <= l.max {
				k.kept[slot] = holds
			}
		}
		if k.kept[slot] == refuted {
			return false
		}
	}
	return true
}

// sum is what a limit's choices cost in the answer.
func (k *known) sum(l *limit) int64 {
	var sum int64
	for _, g := range l.groups {
		for _, c := range g {
			if bit(k.bits, c.Lit) {
				sum += c.Cost
			}
		}
	}
	return sum
}

// bit reads a literal from an answer.
func bit(bits []uint64, l Lit) bool {
	v := l.Var()
	if v/64 >= len(bits) {
		return l.Negative() // a variable that came later
	}
	return (bits[v/64]>>(v%64)&1 == 1) != l.Negative()
}

// set of literals, the positive and the negative ones apart so that a whole
// answer is added a word at a time.
type set struct{ pos, neg []uint64 }

func (s *set) reset(vars int) {
	words := (vars + 63) / 64
	s.pos = slices.Grow(s.pos[:0], words)[:words]
	s.neg = slices.Grow(s.neg[:0], words)[:words]
	clear(s.pos)
	clear(s.neg)
}

func (s *set) side(l Lit) []uint64 {
	if l.Negative() {
		return s.neg
	}
	return s.pos
}

func (s *set) has(l Lit) bool { return s.side(l)[l.Var()/64]>>(l.Var()%64)&1 == 1 }

// add reports whether the literal is new.
func (s *set) add(l Lit) bool {
	word, mask := &s.side(l)[l.Var()/64], uint64(1)<<(l.Var()%64)
	news := *word&mask == 0
	*word |= mask
	return news
}

// addAll adds what an answer has of the first variables, and reports whether
// any of it is new. Bits beyond the last variable may be set; nobody asks.
func (s *set) addAll(bits []uint64, vars int) bool {
	news := uint64(0)
	for i := range (vars + 63) / 64 {
		news |= bits[i]&^s.pos[i] | ^bits[i]&^s.neg[i]
		s.pos[i] |= bits[i]
		s.neg[i] |= ^bits[i]
	}
	return news != 0
}
