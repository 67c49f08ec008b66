package space

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// State of a compartment's load. What it proves is about outside sizes and
// masses only: not that a thing can be reached, lifted through the door
// opening, or restrained in a crash.
type State string

// The states, from good to bad.
const (
	Empty      State = "no gear assigned yet"
	Fits       State = "an arrangement was found"
	Unproven   State = "no arrangement was found, and none is ruled out"
	Overloaded State = "heavier than the rated load"
	TooBig     State = "cannot fit"
)

// StowCaution is printed with the stowage.
const StowCaution = "Stowage is checked by outside sizes and weight. It does not show that a thing can be reached, " +
	"passed through the door or held in a crash; mount equipment by its maker's instructions and the applicable " +
	"standard."

// box is the size of one thing, in inches.
type box [3]float64

func boxOf(e *config.Equipment) box {
	return box{float64(config.Clean(e.LengthIn)), float64(config.Clean(e.WidthIn)), float64(config.Clean(e.HeightIn))}
}

func hollow(c *config.Compartment) box {
	return box{float64(config.Clean(c.WidthIn)), float64(config.Clean(c.DepthIn)), float64(config.Clean(c.HeightIn))}
}

func (b box) volume() float64   { return b[0] * b[1] * b[2] }
func (b box) edges() float64    { return b[0] + b[1] + b[2] }
func (b box) surface() float64  { return 2 * (b[0]*b[1] + b[1]*b[2] + b[2]*b[0]) }
func (b box) diagonal() float64 { return math.Sqrt(b[0]*b[0] + b[1]*b[1] + b[2]*b[2]) }
func (b box) least() float64    { return min(b[0], b[1], b[2]) }

// slack forgives the last bits of a sum of lengths, in or in3.
const slack = 1e-9

// cannotHold says why a box cannot be inside another however it is turned or
// tilted; empty when nothing rules it out. For convex bodies each of these
// grows with the body, so that one that is larger proves the case: least
// width, longest diagonal, mean width (of boxes, the sum of the edges),
// surface and volume.
//
// Source: monotonicity of the intrinsic volumes (Cauchy, Steiner). Example:
// 62 x 2 x 2 in in a hollow of 60 x 20 x 30 in is not ruled out; 72 x 2 x 2 is,
// since the diagonal is 70 in.
func cannotHold(outer, inner box) string {
	switch {
	case inner.least() > outer.least()+slack:
		return fmt.Sprintf("its least side, %.4g in, is more than the compartment's %.4g in", inner.least(),
			outer.least())
	case inner.diagonal() > outer.diagonal()+slack:
		return fmt.Sprintf("it is %.4g in across corners and the compartment %.4g in", inner.diagonal(),
			outer.diagonal())
	case inner.edges() > outer.edges()+slack:
		return "its three sides together are longer than the compartment's"
	case inner.surface() > outer.surface()*(1+slack):
		return "its surface is more than the compartment's"
	case inner.volume() > outer.volume()*(1+slack):
		return "it is larger than the compartment"
	}
	return ""
}

// Placed is where the arrangement puts one thing, inches from the compartment's
// corner along width, depth and height.
type Placed struct {
	Equipment string
	At, Size  [3]float64
}

// maxPieces bounds the search for an arrangement.
const maxPieces = 150

type piece struct {
	id string
	box
}

// arrange looks for one way to put the pieces in, sides parallel to the walls:
// largest first, each at the lowest free corner where it fits in one of its
// six positions. Finding one proves that they fit; finding none proves nothing.
func arrange(outer box, pieces []piece) ([]Placed, bool) {
	if len(pieces) > maxPieces {
		return nil, false
	}
	pieces = slices.Clone(pieces)
	slices.SortStableFunc(pieces, func(a, b piece) int {
		return cmp.Or(cmp.Compare(b.volume(), a.volume()), cmp.Compare(b.edges(), a.edges()), cmp.Compare(a.id, b.id))
	})
	var out []Placed
	corners := [][3]float64{{}}
	for _, p := range pieces {
		placed, ok := place(outer, p, corners, out)
		if !ok {
			return nil, false
		}
		out = append(out, placed)
		for axis := range 3 {
			c := placed.At
			c[axis] += placed.Size[axis]
			corners = append(corners, c)
		}
		slices.SortFunc(corners, func(a, b [3]float64) int {
			return cmp.Or(cmp.Compare(a[2], b[2]), cmp.Compare(a[1], b[1]), cmp.Compare(a[0], b[0]))
		})
	}
	return out, true
}

// turns are the six ways a box can stand square.
var turns = [6][3]int{{0, 1, 2}, {1, 0, 2}, {0, 2, 1}, {2, 0, 1}, {1, 2, 0}, {2, 1, 0}}

func place(outer box, p piece, corners [][3]float64, taken []Placed) (Placed, bool) {
	for _, at := range corners {
		for _, t := range turns {
			x := Placed{Equipment: p.id, At: at, Size: [3]float64{p.box[t[0]], p.box[t[1]], p.box[t[2]]}}
			if inside(outer, x) && !slices.ContainsFunc(taken, func(y Placed) bool { return overlap(x, y) }) {
				return x, true
			}
		}
	}
	return Placed{}, false
}

func inside(outer box, x Placed) bool {
	for i := range 3 {
		if x.At[i]+x.Size[i] > outer[i]+slack {
			return false
		}
	}
	return true
}

func overlap(x, y Placed) bool {
	for i := range 3 {
		if x.At[i]+x.Size[i] <= y.At[i]+slack || y.At[i]+y.Size[i] <= x.At[i]+slack {
			return false
		}
	}
	return true
}

// held settles the state of a mount or bracket, which takes what it is made for and
// no more.
func (u *Use) held(of func(id string) *config.Equipment) {
	count := map[string]int{}
	for _, it := range u.Items {
		count[it.Equipment] += it.Qty
		if room := holdsOf(&u.Compartment, it.Equipment); count[it.Equipment] > room {
			u.State = TooBig
			u.Why = of(it.Equipment).Label + ": the place is not made for it"
			if room > 0 {
				u.Why = fmt.Sprintf("%s: made for %d, not for %d", of(it.Equipment).Label, room, count[it.Equipment])
			}
			return
		}
	}
	if u.State = Fits; overRated(u.MassLb, u.LimitLb) {
		u.State, u.Why = Overloaded, fmt.Sprintf("%.0f lb on a rated load of %.0f lb", float64(u.MassLb),
			float64(u.LimitLb))
	}
}

// holdsOf is how many of a thing a mount is made for.
func holdsOf(c *config.Compartment, id string) int {
	for _, h := range c.Holds {
		if h.Equipment == id {
			return h.Qty
		}
	}
	return 0
}

// judge settles a compartment's state from what rides in it.
func (u *Use) judge(of func(id string) *config.Equipment) {
	if len(u.Items) == 0 {
		u.State = Empty
		return
	}
	if u.Holds != nil {
		u.held(of)
		return
	}
	outer := hollow(&u.Compartment)
	var pieces []piece
	for _, it := range u.Items {
		e := of(it.Equipment)
		if why := cannotHold(outer, boxOf(e)); why != "" {
			u.State, u.Why = TooBig, fmt.Sprintf("%s: %s", e.Label, why)
			return
		}
		for range min(it.Qty, maxPieces+1) {
			pieces = append(pieces, piece{e.ID, boxOf(e)})
		}
	}
	switch {
	case float64(u.UsedFt3) > float64(u.Ft3)*(1+slack):
		u.State, u.Why = TooBig, fmt.Sprintf("together %.1f cubic feet, the compartment has %.1f", float64(u.UsedFt3),
			float64(u.Ft3))
		return
	case overRated(u.MassLb, u.LimitLb):
		u.State, u.Why = Overloaded, fmt.Sprintf("%.0f lb on a rated load of %.0f lb", float64(u.MassLb),
			float64(u.LimitLb))
		return
	}
	placed, ok := arrange(outer, pieces)
	if !ok {
		u.State, u.Why = Unproven, "by volume and longest side it may fit; lay it out before promising it"
		return
	}
	u.State, u.Placed = Fits, placed
}

// overRated compares with the rated load of a floor or shelf; 0 is not stated.
func overRated(m, limit quantity.Mass) bool { return limit > 0 && m > limit+slack }
