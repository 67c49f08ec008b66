package body

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Collision is two parts that stand in one place.
type Collision struct {
	A, B    Part
	X, Y, Z float64 // how far they stand into each other, in
}

// touching is an overlap that building tolerances take up, in. Common practice, no source.
const touching = 0.26

// Least is the shortest way to move one out of the other, in.
func (c *Collision) Least() float64 { return math.Min(c.X, math.Min(c.Y, c.Z)) }

// Text says who stands in whom, and how far.
func (c *Collision) Text() string {
	in := func(v float64) string { return quantity.US.Show(v, quantity.Inch) }
	return fmt.Sprintf("%s and %s stand in one place: %s along, %s across and %s in height.", c.A.Label, c.B.Label,
		in(c.X), in(c.Y), in(c.Z))
}

// Collisions finds every pair of solid parts that stand in one place. Pieces of one
// option are the plant's own matter, and so are those of the bare chassis.
func (m *Model) Collisions() []Collision { return collisions(m.Parts, m.Parts) }

// PartsOf is what one of an option brings, its compartments too.
func (m *Model) PartsOf(o *config.Option) []Part {
	out := m.partsOf(o)
	for _, c := range o.Compartments {
		if c.Holds != nil && len(o.Places) > 0 {
			continue // a mount is a place of its option already
		}
		c = m.Planes.CompartmentOf(o, c)
		kind := "compartment"
		if c.Side == "inside" {
			kind = "cabinet"
		}
		out = append(out, Part{ID: "comp/" + c.ID, Kind: kind, Label: c.Label, Option: o.ID, Face: c.Side,
			Box: m.hollow(&c), Slot: c.Holds != nil, Fitted: o.Fitted != nil})
	}
	return out
}

// Against finds what an option would stand in: of the bare chassis and body, less the
// compartments that it takes the place of. own are its parts.
func (m *Model) Against(o *config.Option, own []Part) []Collision {
	base := m.Parts
	if len(o.Displaces) > 0 {
		base = nil
		for _, p := range m.Parts {
			taken := false
			for _, c := range m.Body.Compartments {
				taken = taken || p.ID == "comp/"+c.ID && o.Takes(c)
			}
			if !taken {
				base = append(base, p)
			}
		}
	}
	return collisions(own, base)
}

// Between finds where parts of two options stand in one place.
func Between(as, bs []Part) []Collision { return collisions(as, bs) }

// Bounds of looking for collisions: a body with more of them is wrong all over, and one
// with more pairs of parts side by side is not one that anybody builds.
const (
	mostCollisions = 200
	mostPairs      = 1_000_000
)

// collisions of the parts of one list with those of another, each pair once, in the order
// of the lists.
func collisions(as, bs []Part) []Collision {
	var out []Collision
	same := len(as) > 0 && len(bs) > 0 && &as[0] == &bs[0]
	ahead := solids(bs)
	pairs := 0
	for i := range as {
		a := &as[i]
		if !a.solid() {
			continue
		}
		var hit []int
		for _, k := range ahead {
			b := &bs[k]
			if b.X0 >= a.X1 {
				break
			}
			if pairs++; pairs > mostPairs {
				return out
			}
			if x, y, z, ok := a.Overlap(b.Box); ok && math.Min(x, math.Min(y, z)) > touching && (!same || k > i) &&
				!mayShare(a, b) {
				hit = append(hit, k)
			}
		}
		slices.Sort(hit)
		for _, k := range hit {
			if len(out) == mostCollisions {
				return out
			}
			x, y, z, _ := a.Overlap(bs[k].Box)
			out = append(out, Collision{*a, bs[k], x, y, z})
		}
	}
	return out
}

// solids are the solid ones of a list, from the front of the vehicle to its rear.
func solids(list []Part) []int {
	var at []int
	for i := range list {
		if list[i].solid() {
			at = append(at, i)
		}
	}
	slices.SortFunc(at, func(i, k int) int { return cmp.Compare(list[i].X0, list[k].X0) })
	return at
}

// hollow kinds hold things: a slot for something that is carried may be in them.
var hollow = map[string]bool{"compartment": true, "cabinet": true, "bench": true, "counter": true, "console": true}

// mayShare reports whether two parts are made to stand in or on each other.
func mayShare(a, b *Part) bool {
	switch {
	case a.Slot && b.Slot:
		return a.Fitted && b.Fitted || a.Option == b.Option
	case a.Slot && hollow[b.Kind], b.Slot && hollow[a.Kind]:
		return true
	}
	if a.Option == b.Option && (a.Option != "" || !ofBody(a) && !ofBody(b)) {
		return true
	}
	is := func(k, l string) bool { return a.Kind == k && b.Kind == l || a.Kind == l && b.Kind == k }
	return is("window", "door") || is("bumper", "bumper") || is("bumper", "lamp") || is("bench", KindWheelBox) ||
		is("bench", KindWheel) ||
		is("door", "door") || is(KindWheel, KindWheelBox)
}

// ofBody reports whether a part without an option belongs to the body.
func ofBody(p *Part) bool { return p.Kind == "compartment" || p.Kind == "cabinet" || p.Kind == "door" }

// Finding of a collision.
func (c *Collision) Finding() config.Finding {
	least := c.Least()
	text, assumed := c.Text(), ""
	switch {
	case c.A.About && c.B.About:
		assumed = c.A.Label + " and " + c.B.Label
	case c.A.About || c.B.About:
		assumed = cmp.Or(c.A.assumed(), c.B.assumed())
	}
	remedy := "Choose another layout or leave one of them out."
	if assumed != "" {
		text += " Assumed size, not stated: " + assumed + "."
		remedy += " First ask the plant for the size."
	}
	f := config.Finding{Code: "space.collision", Severity: config.Warn, Text: text, Basis: config.Computed,
		Figure: &config.Figure{Code: "space.collision", Label: c.A.Label + " into " + c.B.Label, Value: least,
			Low: least, High: least, Unit: quantity.Inch, Sense: config.AtMost, Source: "one place holds one thing",
			Basis: config.Computed, Assumed: assumed}, Remedy: remedy}
	for _, id := range []string{c.A.Option, c.B.Option} {
		if id != "" {
			f.Picks = append(f.Picks, id)
		}
	}
	return f
}
