package quote

import (
	"slices"

	"boxwright/config"
	"boxwright/config/rules"
)

// Move takes a draft over to another edition: in each of its units what both
// know is kept, what the new one lacks is left out and named, and what was
// filled in gives way or is added until the unit is whole again. The changes
// are those of all units.
func Move(ed *Edition, d *Draft) (moved *Draft, lost []string, changes []rules.Change) {
	m := d.Clone()
	for i := range m.More {
		it := &m.More[i]
		single := m.Clone() // the limits of a unit are asked for as if it were the one in work
		single.Unit, single.Tickets = it.Unit, it.Tickets
		if it.Needs != nil {
			single.Needs = it.Needs.clone()
		}
		gone, changed := ed.take(single)
		it.Unit = single.Unit
		lost, changes = append(lost, gone...), append(changes, changed...)
	}
	gone, changed := ed.take(m)
	return m, append(lost, gone...), append(changes, changed...)
}

// take fits the unit in work to the edition.
func (ed *Edition) take(d *Draft) (lost []string, changes []rules.Change) {
	cat, u := ed.Cat, &d.Unit
	fresh := New(ed, u.Chassis, u.Body, u.OrderOn).Unit
	for _, x := range []struct{ had, has string }{{u.Chassis, fresh.Chassis}, {u.Body, fresh.Body}} {
		if x.had != x.has {
			lost = append(lost, x.had)
		}
	}
	u.Catalogue, u.Edition, u.Chassis, u.Body = cat.ID, cat.Hash(), fresh.Chassis, fresh.Body
	had := u.Picks
	u.Picks = []config.Pick{}
	for _, p := range had {
		o := cat.OptionByID(p.Option)
		if o == nil {
			if !p.Filled {
				lost = append(lost, p.Option)
			}
			continue
		}
		p.Qty = min(p.Qty, max(o.MaxQty, 1))
		u.Set(p)
	}
	u.LeftOut = slices.DeleteFunc(slices.Clone(u.LeftOut), func(id string) bool { return cat.OptionByID(id) == nil })
	if len(u.LeftOut) == 0 {
		u.LeftOut = nil
	}
	u.Details = slices.DeleteFunc(slices.Clone(u.Details), func(x config.Detail) bool {
		return cat.OptionByID(x.Option) == nil
	})
	if len(u.Details) == 0 {
		u.Details = nil
	}
	u.Carried = slices.DeleteFunc(slices.Clone(u.Carried), func(c config.Carried) bool {
		gone := cat.EquipmentOf(u, c.Equipment) == nil
		if gone {
			lost = append(lost, c.Equipment)
		}
		return gone
	})
	if len(u.Carried) == 0 {
		u.Carried = nil
	}
	// Where something cannot stand together the findings say so.
	*u, changes, _ = ed.For(u).Rules.Fill(u, Limits(ed, d))
	return lost, changes
}
