package config

import (
	"slices"

	"boxwright/config/quantity"
)

// Fitted is how pieces of an option stand in outside compartments of the body: the first
// in the first of the slots that the body has, each further one in the next.
type Fitted struct {
	Slots []string `json:"slots"`
	// what each takes of its compartment, inside; 0: nothing of that way
	WidthIn  quantity.Length `json:"width_in,omitempty"`
	DepthIn  quantity.Length `json:"depth_in,omitempty"`
	HeightIn quantity.Length `json:"height_in,omitempty"`
	// what each carries, as a tray or a drawer on slides does, of all that rides in its compartment
	RatedLb quantity.Mass `json:"rated_lb,omitempty"`
}

// times is the compartment of so many of the option that brings it: mounts hold so many
// times as much, shelves and boards carry so much more.
func (c Compartment) times(n int) Compartment {
	if n <= 1 || n > 99 {
		return c
	}
	c.LimitLb *= quantity.Mass(n)
	if c.Holds == nil {
		c.WidthIn *= quantity.Length(n)
		return c
	}
	c.Holds = slices.Clone(c.Holds)
	for i := range c.Holds {
		c.Holds[i].Qty *= n
	}
	return c
}

// Pieces calls a function with each piece of fitted gear of a unit and the place in the list
// of the compartment that it stands in; -1 where none is left for it.
func (c *Catalogue) Pieces(u *Unit, list []Compartment, each func(at int, o *Option)) {
	for _, p := range u.Picks {
		o := c.OptionByID(p.Option)
		if o == nil || o.Fitted == nil {
			continue
		}
		left := min(p.Qty, 99)
		for _, slot := range o.Fitted.Slots {
			i := slices.IndexFunc(list, func(x Compartment) bool { return x.Slot == slot })
			if i >= 0 && left > 0 {
				left--
				each(i, o)
			}
		}
		for ; left > 0; left-- {
			each(-1, o)
		}
	}
}

// Left is what fitted gear leaves of compartments of a unit: room, and rated load. What is
// on a tray or in a drawer counts against its rating, and its own weight against the limit of the
// compartment. The list is changed.
func (c *Catalogue) Left(u *Unit, list []Compartment) []Compartment {
	c.Pieces(u, list, func(at int, o *Option) {
		if at >= 0 {
			list[at].fit(o)
		}
	})
	return list
}

// leastRoomIn is the least that is left of a compartment in any direction and still counts
// as room: nothing is stowed in a slit beside a tray or under a ceiling. Common practice,
// no source.
const leastRoomIn = 5

// fit puts one piece of an option into the compartment. A thing that takes of its height
// stands on its floor.
func (c *Compartment) fit(o *Option) {
	f := o.Fitted
	less := func(v *quantity.Length, by quantity.Length) { *v = max(*v-Clean(by), 0) }
	less(&c.WidthIn, f.WidthIn)
	less(&c.DepthIn, f.DepthIn)
	before := c.HeightIn
	less(&c.HeightIn, f.HeightIn)
	if min(c.WidthIn, c.DepthIn, c.HeightIn) < leastRoomIn {
		c.HeightIn = 0
	}
	c.ZIn += (before - c.HeightIn) / 2
	if c.LimitLb > 0 && o.Mass != nil {
		c.LimitLb = max(c.LimitLb-Clean(o.Mass.Lb), 1)
	}
	if r := Clean(f.RatedLb); r > 0 && (c.LimitLb == 0 || r < c.LimitLb) {
		c.LimitLb = r
	}
}

// fitted checks how an option stands in compartments, what its mounts hold, its water, and
// what of it the purchaser weighs.
func (k *checker) fitted(w string, o *Option) {
	if f := o.Fitted; f != nil {
		if len(f.Slots) < max(o.MaxQty, 1) {
			k.add("value", w+" fitted slots", "names %d for a quantity of up to %d", len(f.Slots), max(o.MaxQty, 1))
		}
		for _, slot := range f.Slots {
			if !slices.ContainsFunc(k.c.Bodies, func(b Body) bool { return b.slot(slot) >= 0 }) {
				k.add("value", w+" fitted slots", "no compartment of any body has the slot %q", slot)
			}
		}
		k.between(w+" fitted", 0, 200, map[string]float64{"width_in": float64(f.WidthIn),
			"depth_in": float64(f.DepthIn), "height_in": float64(f.HeightIn)})
		k.between(w+" fitted", 0, 5000, map[string]float64{"rated_lb": float64(f.RatedLb)})
	}
	for _, c := range o.Compartments {
		for _, h := range c.Holds {
			if k.c.EquipmentByID(h.Equipment) == nil || h.Qty < 1 || h.Qty > 99 {
				k.add("value", w+" compartments "+c.ID+" holds", "%q is not equipment, or is not held 1 to 99 times",
					h.Equipment)
			}
		}
	}
	if x := o.Water; x != nil {
		k.between(w+" water", 0, 2000, map[string]float64{"fresh_gal": x.FreshGal, "waste_gal": x.WasteGal,
			"flow_gpm": x.FlowGPM})
		if x.FreshGal > 0 && !(x.FlowGPM > 0) {
			k.add("missing", w+" water flow_gpm", "water needs a flow, from which its minutes follow")
		}
	}
	if len(o.AsksLb) > MaxDetail {
		k.add("too-long", w+" asks_lb", "has %d bytes; the most is %d", len(o.AsksLb), MaxDetail)
	}
	if o.AsksLb != "" && (o.Mass == nil || o.Mass.Zone == "") {
		k.add("missing", w+" mass zone", "what the purchaser weighs needs a place: a mass of 0 lb with its station")
	}
}
