package rules

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/solve"
)

// form is a condition with every negation pushed down to the literals.
type form struct {
	op   op
	lit  solve.Lit
	n    int // of atLeast
	kids []form
}

type op int8

const (
	isLit op = iota
	and
	or
	atLeast
)

var never = form{op: or} // a disjunction of nothing

// deepest bounds the nesting that is followed, so that a hostile catalogue
// cannot exhaust the stack.
const deepest = 64

// Sizes that rules may have as clauses, in literals: one rule, and all of them.
// Every solver holds them all, and a request may need dozens of solvers.
const (
	mostOfRule  = 60_000
	mostOfRules = 600_000
)

// form reads a condition, or with want false its opposite.
//
// Exactly one chassis and one body are always in the unit, so a test of an
// attribute is "one of those that pass" and its opposite "one of the others".
func (e *Engine) form(c *config.Cond, want bool, depth int) (form, error) {
	if depth == 0 {
		e.formed = 0
	}
	if depth > deepest {
		return form{}, fmt.Errorf("conditions are nested more than %d deep", deepest)
	}
	if err := e.count(c, want); err != nil {
		return form{}, err
	}
	list := func(op op, n int, conds []config.Cond, want bool) (form, error) {
		f := form{op: op, n: n}
		for i := range conds {
			kid, err := e.form(&conds[i], want, depth+1)
			if err != nil {
				return form{}, err
			}
			f.kids = append(f.kids, kid)
		}
		return f, nil
	}
	allOf, anyOf := and, or
	if !want {
		allOf, anyOf = or, and
	}
	switch {
	case c.Pick != "":
		v, known := e.vars[c.Pick]
		if !known {
			return form{}, fmt.Errorf("%q is no option, chassis or body", c.Pick)
		}
		if want {
			return form{lit: solve.Pos(v)}, nil
		}
		return form{lit: solve.Neg(v)}, nil
	case c.Not != nil:
		return e.form(c.Not, !want, depth+1)
	case c.All != nil:
		return list(allOf, 0, c.All, want)
	case c.Any != nil:
		return list(anyOf, 0, c.Any, want)
	case c.AtLeast != nil && want:
		return list(atLeast, c.AtLeast.N, c.AtLeast.Of, true)
	case c.AtLeast != nil: // fewer than n hold: at least len-n+1 fail
		return list(atLeast, len(c.AtLeast.Of)-c.AtLeast.N+1, c.AtLeast.Of, false)
	case c.AtMost != nil && want:
		return list(atLeast, len(c.AtMost.Of)-c.AtMost.N, c.AtMost.Of, false)
	case c.AtMost != nil:
		return list(atLeast, c.AtMost.N+1, c.AtMost.Of, true)
	case c.Chassis != nil:
		f := never
		for i := range e.cat.Chassis {
			text, number, known := e.cat.Chassis[i].Attr(c.Chassis.Attr)
			if !known {
				return form{}, fmt.Errorf("there is no attribute %q of a chassis", c.Chassis.Attr)
			}
			if c.Chassis.Holds(text, number) == want {
				f.kids = append(f.kids, form{lit: solve.Pos(i)})
			}
		}
		return f, nil
	case c.Body != nil:
		f := never
		for i := range e.cat.Bodies {
			text, number, known := e.cat.Bodies[i].Attr(c.Body.Attr)
			if !known {
				return form{}, fmt.Errorf("there is no attribute %q of a body", c.Body.Attr)
			}
			if c.Body.Holds(text, number) == want {
				f.kids = append(f.kids, form{lit: solve.Pos(len(e.cat.Chassis) + i)})
			}
		}
		return f, nil
	}
	return form{}, fmt.Errorf("a condition says nothing; give it a pick, all, any, not, at_least, at_most, chassis " +
		"or body")
}

// count adds what a condition without those inside it takes as clauses, about, and
// refuses it when its rule becomes too large. A count of n among k takes a grid of
// n by k-n.
func (e *Engine) count(c *config.Cond, want bool) error {
	e.formed++
	grid := func(n, k int) {
		if n > 1 && n < k {
			e.formed += 5 * n * (k - n + 1)
		}
	}
	switch {
	case c.AtLeast != nil && want:
		grid(c.AtLeast.N, len(c.AtLeast.Of))
	case c.AtLeast != nil:
		grid(len(c.AtLeast.Of)-c.AtLeast.N+1, len(c.AtLeast.Of))
	case c.AtMost != nil && want:
		grid(len(c.AtMost.Of)-c.AtMost.N, len(c.AtMost.Of))
	case c.AtMost != nil:
		grid(c.AtMost.N+1, len(c.AtMost.Of))
	case c.Chassis != nil:
		e.formed += len(e.cat.Chassis)
	case c.Body != nil:
		e.formed += len(e.cat.Bodies)
	}
	if e.formed > mostOfRule {
		return fmt.Errorf("is too large: written out it takes more than %d terms. Split it into several rules, or "+
			"count among fewer conditions", mostOfRule)
	}
	return nil
}

// encoder turns forms into clauses. Helper variables are made only where
// multiplying out would take more clauses than it saves; each implies what it
// stands for and nothing more, which is enough since forms hold no negation.
type encoder struct {
	newVar  func() int
	clauses [][]solve.Lit
}

// mostProduct is how many clauses multiplying out may take.
const mostProduct = 8

func (x *encoder) demand(f form) { x.clauses = append(x.clauses, x.cnf(f)...) }

func (x *encoder) cnf(f form) [][]solve.Lit {
	switch f.op {
	case isLit:
		return [][]solve.Lit{{f.lit}}
	case and:
		var out [][]solve.Lit
		for _, k := range f.kids {
			out = append(out, x.cnf(k)...)
		}
		return out
	case or:
		return x.disjunction(f.kids)
	}
	return x.atLeast(f.n, f.kids)
}

func (x *encoder) disjunction(kids []form) [][]solve.Lit {
	out := [][]solve.Lit{nil}
	for _, k := range kids {
		cs := x.cnf(k)
		if len(cs) == 0 {
			return nil // one of them always holds
		}
		if len(cs) > 1 && len(out)*len(cs) > mostProduct {
			cs = [][]solve.Lit{{x.named(cs)}}
		}
		if len(cs) == 1 { // the usual case, without copying what is there again and again
			for i := range out {
				out[i] = append(out[i], cs[0]...)
			}
			continue
		}
		var product [][]solve.Lit
		for _, a := range out {
			for _, b := range cs {
				product = append(product, append(append([]solve.Lit(nil), a...), b...))
			}
		}
		out = product
	}
	return out
}

// named is a helper literal that implies the clauses.
func (x *encoder) named(cs [][]solve.Lit) solve.Lit {
	h := solve.Pos(x.newVar())
	for _, c := range cs {
		x.clauses = append(x.clauses, append([]solve.Lit{h.Not()}, c...))
	}
	return h
}

func (x *encoder) atLeast(n int, kids []form) [][]solve.Lit {
	k := len(kids)
	switch {
	case n <= 0:
		return nil
	case n > k:
		return [][]solve.Lit{{}}
	case n == 1:
		return x.disjunction(kids)
	case n == k:
		return x.cnf(form{op: and, kids: kids})
	}
	lits := make([]solve.Lit, 0, k)
	for _, kid := range kids {
		switch cs := x.cnf(kid); {
		case len(cs) == 0:
			n--
		case len(cs) == 1 && len(cs[0]) == 0: // never holds
		case len(cs) == 1 && len(cs[0]) == 1:
			lits = append(lits, cs[0][0])
		default:
			lits = append(lits, x.named(cs))
		}
	}
	if n <= 0 {
		return nil
	}
	if n > len(lits) {
		return [][]solve.Lit{{}}
	}
	if c := choose(len(lits), n-1); c <= 2*mostProduct {
		return subsets(lits, len(lits)-n+1)
	}
	return [][]solve.Lit{{x.counter(n, lits)}}
}

// subsets lists every way to take size of the literals: if at least n hold, no
// k-n+1 of them all fail.
func subsets(lits []solve.Lit, size int) [][]solve.Lit {
	if size == 0 {
		return [][]solve.Lit{{}}
	}
	var out [][]solve.Lit
	for i := 0; i+size <= len(lits); i++ {
		for _, rest := range subsets(lits[i+1:], size-1) {
			out = append(out, append([]solve.Lit{lits[i]}, rest...))
		}
	}
	return out
}

func choose(n, k int) int {
	c := 1
	for i := range min(k, n-k) {
		if c = c * (n - i) / (i + 1); c > 1<<20 {
			return c
		}
	}
	return c
}

// counter is a literal that implies that at least n of the literals hold: the
// sequential counter, of which only the needed half is written. r[j] for the
// first i literals implies that at least j of these hold.
func (x *encoder) counter(n int, lits []solve.Lit) solve.Lit {
	r := make([]solve.Lit, n+1) // r[0] is never looked at
	for i, l := range lits {
		next := make([]solve.Lit, n+1)
		for j := 1; j <= min(n, i+1); j++ {
			if n-j > len(lits)-1-i {
				continue // too few literals follow for this to matter
			}
			h := solve.Pos(x.newVar())
			next[j] = h
			grow := []solve.Lit{h.Not(), l}
			if j <= i { // the earlier literals alone may suffice
				grow = append(grow, r[j])
			}
			x.clauses = append(x.clauses, grow)
			if j > 1 {
				x.clauses = append(x.clauses, []solve.Lit{h.Not(), r[j-1]})
			}
		}
		r = next
	}
	return r[n]
}
