package weight

import "boxwright/config"

// Limits hands the limits of the unit's chassis and body to the rules engine
// as sums over option picks. Base holds what no option brings: chassis, module,
// the cab's people and the loose equipment; Per what one of an option adds,
// with its seats, patients and its change of the module shell.
//
// Only limits that may rule an option out are handed over: ratings of parts,
// limits read in the text of a rule, and the purchaser's own. A limit from
// memory or common practice warns in the weigh-up but forbids nothing.
//
// For every set of picks, Base + sum(Per x quantity) - Limit is the amount by
// which Weigh finds the limit missed (for a ratio, times the gross weight or
// its moment), but for rounding in the last digits: allow 1e-6 of the sum.
// Loose equipment stowed in a compartment that an option brings moves with the
// option, except when several of that option can be had: then it stays where
// it is in this unit. An answer of nil means that nothing can be weighed.
//
// Scale tickets correct the masses. A ticket without a unit of its own is taken to
// have weighed u; set the ticket's Unit when the picks of u may still change.
func Limits(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions, tickets ...Ticket) []config.Linear {
	l := newLoader(cat, u, assume)
	if l == nil || !l.usable() {
		return nil
	}
	est := &estimate{}
	if len(tickets) > 0 {
		items := l.unit()
		est = newEstimate(l.assume, items)
		est.correct(l, items, tickets)
	}
	base := l.base()
	stowage := l.stowage(true)
	moves, leaves := l.movable(stowage), l.displaced(stowage)
	base = append(base, l.carried(stowage)...)
	est.apply(base)

	var out []config.Linear
	var sums []func([]Item) float64
	for _, m := range l.measures() {
		if !m.hard(l) {
			continue
		}
		signs := []float64{1}
		switch {
		case m.magnitude:
			signs = []float64{1, -1} // neither side too heavy: a limit each
		case m.sense == config.AtLeast:
			signs = []float64{-1}
		}
		for _, sign := range signs {
			lin, sum := m.linear(sign, len(cat.Options))
			lin.Base = sum(base)
			out = append(out, lin)
			sums = append(sums, sum)
		}
	}
	for i := range cat.Options {
		o := &cat.Options[i]
		items := append(append(l.option(o), moves[o.ID]...), leaves[o.ID]...)
		est.apply(items)
		for k, sum := range sums {
			if v := sum(items); v != 0 {
				out[k].Per[o.ID] = v
			}
		}
	}
	return out
}

// hard reports whether the measure's limit may rule an option out and is not
// covered by a tighter one.
func (m *measure) hard(l *loader) bool {
	if m.sense == "" || m.judged || m.magnitude && m.sense == config.AtLeast {
		return false
	}
	switch {
	case m.code == "weight.front-tires" && m.limit >= float64(l.ch.GAWRFrontLb) && l.ch.GAWRFrontLb > 0,
		m.code == "weight.rear-tires" && m.limit >= float64(l.ch.GAWRRearLb) && l.ch.GAWRRearLb > 0:
		return false
	}
	return firm(m.basis)
}

// firm tells a limit that stands in a text, on a part or in the purchaser's
// order from a default that somebody remembers.
func firm(b config.Basis) bool {
	return b == config.Rating || b == config.ReadInText || b == config.Purchaser
}

// linear turns the measure into a sum that must be at most a number; sign is
// minus one where large values are the good ones. A ratio of at most r becomes
// top - r bottom of at most zero.
func (m *measure) linear(sign float64, options int) (config.Linear, func([]Item) float64) {
	lin := config.Linear{Code: m.code, Label: m.label, Unit: m.unit, Per: make(map[string]float64, options)}
	if m.bottom == nil {
		lin.Limit = sign * (m.limit - m.offset)
		return lin, func(items []Item) float64 {
			top, _ := m.sums(items)
			return sign * m.scale * top
		}
	}
	limit := sign * m.limit
	if m.magnitude {
		limit = m.limit
	}
	return lin, func(items []Item) float64 {
		top, bottom := m.sums(items)
		return sign*(m.scale*top+m.offset*bottom) - limit*bottom
	}
}

// displaced returns by option how loose equipment leaves the compartments of the body
// that the option takes the place of.
func (l *loader) displaced(stowage map[string]stow) map[string][]Item {
	moves := map[string][]Item{}
	for _, c := range l.u.Carried {
		at, here := stowage[c.Compartment]
		e := l.cat.EquipmentOf(l.u, c.Equipment)
		if !here || at.option != "" || at.Slot == "" || e == nil || c.Qty < 1 || c.Qty > 999 {
			continue
		}
		there, loose := l.equipment(e, c.Qty, at, true), l.equipment(e, c.Qty, stow{}, false)
		if !l.sound(&there) || !l.sound(&loose) {
			continue
		}
		there.Lb, there.err = -there.Lb, -there.err
		for i := range l.cat.Options {
			if o := &l.cat.Options[i]; o.Takes(at.Compartment) {
				moves[o.ID] = append(moves[o.ID], loose, there)
			}
		}
	}
	return moves
}

// movable takes out of the stowage what an option of which a unit has at most
// one brings, and returns by option how loose equipment moves into it.
func (l *loader) movable(stowage map[string]stow) map[string][]Item {
	owner := map[string]stow{}
	for i := range l.cat.Options {
		o := &l.cat.Options[i]
		if o.MaxQty > 1 {
			continue
		}
		for _, c := range o.Compartments {
			if at, here := stowage[c.ID]; here && at.option != o.ID {
				continue
			}
			if _, taken := owner[c.ID]; !taken {
				owner[c.ID] = stow{l.planes.CompartmentOf(o, c), o.ID}
			}
		}
	}
	moves := map[string][]Item{}
	for _, c := range l.u.Carried {
		at, ok := owner[c.Compartment]
		e := l.cat.EquipmentOf(l.u, c.Equipment)
		if !ok || e == nil || c.Qty < 1 || c.Qty > 999 {
			continue
		}
		delete(stowage, c.Compartment)
		there, loose := l.equipment(e, c.Qty, at, true), l.equipment(e, c.Qty, stow{}, false)
		if !l.sound(&there) || !l.sound(&loose) {
			continue
		}
		loose.Lb, loose.err = -loose.Lb, -loose.err
		moves[at.option] = append(moves[at.option], there, loose)
	}
	return moves
}
