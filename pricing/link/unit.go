package link

import (
	"errors"
	"slices"

	"boxwright/config"
)

const (
	maxQty     = 1000
	maxCarried = 2000
)

// choosing are the odds of what a unit is made of: they begin at 50 %, and learn
// from option to option how much of this unit is as the plant builds it.
type choosing struct {
	in, filled [64]odds
	qty        sizes
	place      sizes
	much       sizes
}

// unit codes what a unit is made of by positions in the edition: chassis, body,
// options, quantities, loose equipment. Reading fills in a unit that holds
// everything else.
func (c *coder) unit(cat *config.Catalogue, u *config.Unit) error {
	var know choosing
	chassis := c.below(len(cat.Chassis),
		slices.IndexFunc(cat.Chassis, func(x config.Chassis) bool { return x.ID == u.Chassis }))
	body := c.below(len(cat.Bodies), slices.IndexFunc(cat.Bodies, func(x config.Body) bool { return x.ID == u.Body }))
	if c.reading {
		u.Catalogue, u.Edition, u.Chassis, u.Body = cat.ID, cat.Hash(), cat.Chassis[chassis].ID, cat.Bodies[body].ID
		u.Picks = []config.Pick{}
	}
	taken := make(map[string]bool, len(cat.Groups))
	// What is standard in these groups differs between a new unit and a remount,
	// and the catalogue at hand may be that of either.
	differs := make(map[string]bool)
	for i := range cat.Options {
		if cat.Options[i].Remount {
			differs[cat.Options[i].Group] = true
		}
	}
	before := 0
	for i := range cat.Options {
		o := &cat.Options[i]
		group := cat.GroupByID(o.Group)
		one, few := group.Choose != config.ChooseAny, len(group.Only) > 0
		standard := o.Standard && !differs[o.Group]
		kind := bits(standard, o.Remount, one, taken[o.Group], cat.Bodies[body].Existing, few)
		p := u.Find(o.ID)
		if c.reading {
			p = nil
		}
		if !c.flip(&know.in[kind], p != nil) {
			continue
		}
		taken[o.Group] = true
		pick := config.Pick{Option: o.ID, Qty: 1}
		if p != nil {
			pick = *p
		}
		pick.Filled = c.flip(&know.filled[bits(standard, one)<<2|before], pick.Filled)
		before = before<<1&2 | bits(pick.Filled)
		if o.MaxQty > 1 {
			pick.Qty = 1 + c.number(&know.qty, pick.Qty-1)
		}
		if c.reading {
			u.Set(pick)
		}
	}
	return c.carried(cat, u, &know)
}

// carried codes the loose equipment, unless something is stowed where the unit,
// since changed, has no compartment: such a list stays in the text of the draft.
func (c *coder) carried(cat *config.Catalogue, u *config.Unit, know *choosing) error {
	places := cat.CompartmentsOf(u)
	list := u.Carried
	if c.reading || astray(cat, u) {
		list = nil
	}
	n := c.number(new(sizes), len(list))
	if n > maxCarried || n > 0 && len(cat.Equipment) == 0 {
		c.bad = true
	}
	for i := 0; i < n && !c.bad; i++ {
		var x config.Carried
		if !c.reading {
			x = list[i]
		}
		what := c.below(len(cat.Equipment),
			slices.IndexFunc(cat.Equipment, func(e config.Equipment) bool { return e.ID == x.Equipment }))
		place := c.number(&know.place, 1+slices.IndexFunc(places, func(p config.Compartment) bool {
			return x.Compartment != "" && p.ID == x.Compartment
		}))
		x.Qty = c.number(&know.much, x.Qty)
		if !c.reading {
			continue
		}
		if place > len(places) || x.Qty >= maxQty {
			return errors.New("it stows something in a compartment the unit does not have")
		}
		x.Equipment = cat.Equipment[what].ID
		if place > 0 {
			x.Compartment = places[place-1].ID
		}
		u.Carried = append(u.Carried, x)
	}
	if c.bad {
		return errPacked
	}
	return nil
}

// bits makes a number of yes and no.
func bits(list ...bool) int {
	n := 0
	for _, yes := range list {
		n <<= 1
		if yes {
			n++
		}
	}
	return n
}

// astray reports whether something is stowed where the unit has no compartment, or is not
// of the catalogue.
func astray(cat *config.Catalogue, u *config.Unit) bool {
	places := cat.CompartmentsOf(u)
	return slices.ContainsFunc(u.Carried, func(c config.Carried) bool {
		return cat.EquipmentByID(c.Equipment) == nil || c.Compartment != "" &&
			!slices.ContainsFunc(places, func(p config.Compartment) bool {
				return p.ID == c.Compartment
			})
	})
}
