package propose

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
)

// OnBegun names the proposal on the chassis that the customer began on.
const OnBegun Goal = "begun"

// Begun is what the chassis that the customer began on has to offer.
type Begun struct {
	Chassis  string    // its label
	Proposal *Proposal // the cheapest unit on it; nil where none keeps every must

	never *GiveUp  // what asked for no unit on it ever has
	whys  []string // what else stands against one on it
}

// begun looks for the cheapest unit on the chassis that the customer began on; nil where
// he began on none.
func (f *finder) begun(base *quote.Draft, seen *found) *Begun {
	c := f.ed.Cat.ChassisByID(base.Needs.Begun)
	if c == nil {
		return nil
	}
	b := &Begun{Chassis: c.Label}
	var looks []look
	tried := 0
	for _, u := range pairsFor(f.ed, base) {
		if u.Chassis != c.ID || tried == perGoal {
			continue
		}
		of := f.ed.For(&u)
		if neverMeets(base, of.Cat, &u) {
			if b.never == nil {
				missed := base.Needs.Missed(of.Cat, &u)
				missed = slices.DeleteFunc(missed, func(m quote.Miss) bool { return !m.Never || m.Want })
				b.never = &GiveUp{Unit: u, cat: of.Cat, asked: base, missed: missed}
			}
			continue
		}
		l := seen.at(&u)
		if l == nil {
			tried++
			if started, ok := f.start(base, u.Chassis, u.Body); ok {
				l = &started
			}
		}
		if l == nil {
			b.note(f.conflict(base, u))
			continue
		}
		looks = append(looks, *l)
	}
	if len(looks) == 0 {
		return b
	}
	best := f.wishedFor(base, looks, Cheapest)
	if p, ok := f.proposal(base, &best, OnBegun); ok {
		p.Title = "On the chassis you began on"
		b.Proposal = &p
		return b
	}
	on := base.Clone()
	on.Unit = best.unit
	if q, err := quote.Compute(f.ed, on); err == nil {
		for _, x := range q.OwnFindings() {
			if stops(x) {
				b.note(x.Text)
			}
		}
	}
	return b
}

// conflict words why the musts cannot stand together on a chassis with a body.
func (f *finder) conflict(base *quote.Draft, u config.Unit) string {
	on := base.Clone()
	on.Unit = u
	of := f.ed.For(&u)
	q, err := quote.Compute(f.ed, on)
	if err != nil {
		return ""
	}
	for _, r := range of.Rules.Conflict(&on.Unit, fit(of, on)) {
		return q.Words(r, quantity.US)
	}
	return ""
}

func (b *Begun) note(why string) {
	if why != "" && !slices.Contains(b.whys, why) {
		b.whys = append(b.whys, why)
	}
}

// Why says why no unit that was proposed stands on the chassis begun on; empty where one does.
func (b *Begun) Why(in quantity.System) string {
	if b.Proposal != nil {
		return ""
	}
	said := b.whys
	if b.never != nil {
		said = append([]string{"It would be: " + b.never.Given(in)}, said...)
	}
	if len(said) == 0 {
		said = []string{"This edition has no module for the kind of unit asked for on it."}
	}
	return "Nothing on the chassis you began on, " + b.Chassis + ", keeps every must. " + strings.Join(said, " ")
}
