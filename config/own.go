package config

import (
	"fmt"
	"strconv"
	"strings"

	"boxwright/config/quantity"
)

// Bounds of what a purchaser adds to the list of equipment.
const (
	MaxOwnItems  = 60
	MaxOwnLabel  = 80   // bytes
	MostOwnLb    = 2000 // lb
	MostOwnIn    = 200  // in, each way
	ownItemsCall = "own-"
)

// AddOwn puts an item of the purchaser's own on the list under the next free id.
func (u *Unit) AddOwn(e Equipment) string {
	next := 1
	for _, x := range u.OwnItems {
		if n, err := strconv.Atoi(strings.TrimPrefix(x.ID, ownItemsCall)); err == nil && n >= next {
			next = n + 1
		}
	}
	e.ID = ownItemsCall + strconv.Itoa(next)
	u.OwnItems = append(u.OwnItems, e)
	return e.ID
}

// DropOwn takes an item of the purchaser's own off the list, and out of the unit.
func (u *Unit) DropOwn(id string) {
	var items []Equipment
	for _, e := range u.OwnItems {
		if e.ID != id {
			items = append(items, e)
		}
	}
	var carried []Carried
	for _, c := range u.Carried {
		if c.Equipment != id {
			carried = append(carried, c)
		}
	}
	u.OwnItems, u.Carried = items, carried
}

// OwnFault says what is wrong with an item of the purchaser's own; empty when nothing is.
func OwnFault(e *Equipment) string {
	size := func(v quantity.Length) bool { return v > 0 && v <= MostOwnIn }
	switch {
	case strings.TrimSpace(e.Label) == "":
		return "an item needs a name"
	case len(e.Label) > MaxOwnLabel:
		return fmt.Sprintf("its name has %d bytes; the most is %d", len(e.Label), MaxOwnLabel)
	case !(e.MassLb > 0 && e.MassLb <= MostOwnLb):
		return fmt.Sprintf("it needs a weight, up to %d lb", MostOwnLb)
	case !size(e.LengthIn) || !size(e.WidthIn) || !size(e.HeightIn):
		return fmt.Sprintf("it needs length, width and height, each up to %d in", MostOwnIn)
	case e.Stow != nil && e.Stow.Place != "" && e.Stow.Place != StowInside && e.Stow.Place != StowOutside:
		return fmt.Sprintf("it rides %q or %q", StowInside, StowOutside)
	case e.Stow != nil && (e.Stow.Height != "" || e.Stow.Dirt != "" || e.Stow.Needs != "" || e.Stow.Apart != nil ||
		e.Stow.Why != ""):
		return "nothing but the place is said of it"
	}
	return ""
}

// checkOwnItems says what of the purchaser's own items cannot be taken.
func (u *Unit) checkOwnItems(c *Catalogue) (ps Problems) {
	seen := map[string]bool{}
	for i := range u.OwnItems {
		e := &u.OwnItems[i]
		text := OwnFault(e)
		switch {
		case !strings.HasPrefix(e.ID, ownItemsCall) || seen[e.ID] || c.EquipmentByID(e.ID) != nil:
			text = "each has an id of its own that begins with " + ownItemsCall
		case i == MaxOwnItems:
			text = fmt.Sprintf("there are more than %d", MaxOwnItems)
		}
		if text != "" {
			ps = append(ps, Problem{"unit.own-item", fmt.Sprintf("own_items[%d] %q", i, e.Label), text})
		}
		seen[e.ID] = true
	}
	return ps
}
