package space

import (
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Unstowed says why something that rides nowhere yet has no place in a unit as the rest of
// it is stowed; empty where a place takes it, or where none of it waits. Room is what can be
// proven: what is said to leave none may still be packed by hand.
func Unstowed(cat *config.Catalogue, u *config.Unit, equipment string, in quantity.System) string {
	b := gather(cat, u, nil, new(config.Report))
	if b == nil {
		return ""
	}
	l := newLayout(b)
	at := -1
	for i := range l.loose {
		if l.loose[i].id == equipment {
			at = i
		}
	}
	if at < 0 {
		return ""
	}
	x := &l.loose[at]
	var full, barred []string
	for h := range l.holds {
		c := &l.holds[h].Compartment
		switch {
		case l.takes(h, at, -1):
			return ""
		case x.barred[h] && c.Holds == nil && alone(c, x):
			barred = append(barred, c.Label)
		case !x.barred[h] && alone(c, x):
			full = append(full, c.Label)
		}
	}
	inch := func(side int) string { return in.Show(x.box[side], quantity.Inch) }
	said := fmt.Sprintf("No compartment of this unit holds it: it is %s by %s by %s and %s.", inch(0), inch(1), inch(2),
		in.Show(float64(x.massLb), quantity.Pound))
	if full != nil {
		said = "Where it would go, what rides there leaves no proven room: " + strings.Join(full, "; ") + "."
	}
	if barred != nil {
		said += " Large enough, but not for it: " + strings.Join(barred, "; ") + "."
	}
	return said
}

// alone reports whether an empty compartment takes a thing.
func alone(c *config.Compartment, x *loose) bool {
	if overRated(x.massLb, config.Clean(c.LimitLb)) {
		return false
	}
	if c.Holds != nil {
		return holdsOf(c, x.id) > 0
	}
	_, ok := arrange(hollow(c), []piece{x.piece})
	return ok
}
