package quote

import (
	"slices"

	"boxwright/config"
)

// Move takes a draft over to another edition: what both know is kept, what the
// new one lacks is left out and named.
func Move(ed *Edition, d *Draft) (*Draft, []string) {
	cat := ed.Cat
	var lost []string
	m := d.Clone()
	fresh := New(ed, d.Unit.Chassis, d.Unit.Body, d.Unit.OrderOn)
	for _, x := range []struct{ had, has string }{{d.Unit.Chassis, fresh.Unit.Chassis}, {d.Unit.Body, fresh.Unit.Body}} {
		if x.had != x.has {
			lost = append(lost, x.had)
		}
	}
	m.Unit.Catalogue, m.Unit.Edition = cat.ID, cat.Hash()
	m.Unit.Chassis, m.Unit.Body = fresh.Unit.Chassis, fresh.Unit.Body
	m.Unit.Picks = []config.Pick{}
	for _, p := range d.Unit.Picks {
		o := cat.OptionByID(p.Option)
		if o == nil {
			if !p.Filled {
				lost = append(lost, p.Option)
			}
			continue
		}
		p.Qty = min(p.Qty, max(o.MaxQty, 1))
		m.Unit.Set(p)
	}
	m.Unit.Details = slices.DeleteFunc(m.Unit.Details, func(x config.Detail) bool { return cat.OptionByID(x.Option) == nil })
	m.Unit.Carried = nil
	for _, c := range d.Unit.Carried {
		if cat.EquipmentByID(c.Equipment) == nil {
			lost = append(lost, c.Equipment)
			continue
		}
		m.Unit.Carried = append(m.Unit.Carried, c)
	}
	return m, lost
}
