package space

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Unstowed says why things that ride nowhere yet have no place in a unit as the rest of it
// is stowed, by their ids; empty where a place takes one. Room is what can be proven: what
// is said to leave none may still be packed by hand.
func Unstowed(cat *config.Catalogue, u *config.Unit, in quantity.System) map[string]string {
	if !slices.ContainsFunc(u.Carried, func(c config.Carried) bool { return c.Compartment == "" }) {
		return nil
	}
	b := gather(cat, u, nil, new(config.Report))
	if b == nil {
		return nil
	}
	l := newLayout(b)
	said := map[string]string{}
	for at := range l.loose {
		said[l.loose[at].id] = l.unplaced(at, in)
	}
	return said
}

// unplaced is that for one of the loose things.
func (l *layout) unplaced(at int, in quantity.System) string {
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
		said = "Where it could go, what already rides there leaves no proven room: " + strings.Join(full, "; ") + "."
	}
	if barred != nil {
		said += " Large enough, but made for something else: " + strings.Join(barred, "; ") + "."
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
