package space

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
)

// A patient who lies takes this much around the station of the place, which lies above
// the mattress. Common practice, no source.
const (
	lyingHalfLength = 36.0
	lyingHalfWidth  = 10.0
	aboveMattress   = 4.0
)

// litters gives the least clear height over a patient who lies, up to a litter, a cabinet
// or the ceiling, and finds seats under them.
func (s *Sheet) litters(b *vehicle) {
	least, over, assumed := math.Inf(1), "", ""
	for _, p := range s.Cots {
		x, y, z := float64(p.XIn), float64(p.YIn), float64(p.ZIn)
		lies := body.Box{X0: x - lyingHalfLength, X1: x + lyingHalfLength, Y0: y - lyingHalfWidth,
			Y1: y + lyingHalfWidth, Z0: z - aboveMattress, Z1: z}
		if clear, what, about := b.above(&lies); clear < least {
			least, over, assumed = clear, p.Label+", up to "+what, about
			if slices.ContainsFunc(b.model.Parts, func(c body.Part) bool { return c.About && c.Label == p.Label }) {
				assumed = cmp.Or(assumed, p.Label)
			}
		}
		for _, seat := range b.model.Seats {
			at := float64(seat.XIn)
			if seat.Kind != "cot" && at > lies.X0 && at < lies.X1 && math.Abs(float64(seat.YIn)-y) < lyingHalfWidth &&
				float64(seat.ZIn) < z {
				s.add(config.Finding{Code: "space.seat-under", Severity: config.Warn, Basis: config.Computed,
					Text:   fmt.Sprintf("%s is a seat under a patient: %s.", seat.Label, p.Label),
					Remedy: "Choose a place for the patient with nobody under it, or leave the litter out."})
			}
		}
	}
	if math.IsInf(least, 1) {
		return
	}
	f := config.Figure{Code: "space.litter", Label: "Least clear height over a patient: " + over, Value: least,
		Low: least, High: least, Unit: quantity.Inch, Assumed: assumed}
	b.Assume.Assume(&f, config.LitterClearance, config.AtLeast, "clear height over a patient")
	s.bind(b, f)
}

// above is the clear height from the mattress of who lies to what is over it, what that is,
// and what of it has a size that is only assumed.
func (b *vehicle) above(lies *body.Box) (clear float64, what, assumed string) {
	headroom, assumed := b.model.Headroom()
	clear, what = headroom-lies.Z0, "the ceiling"
	for i := range b.model.Parts {
		p := &b.model.Parts[i]
		switch p.Kind {
		case "litter", "cabinet":
		default:
			continue
		}
		box := p.Box
		box.X0, box.X1 = box.X0-b.model.Front, box.X1-b.model.Front
		box.Z0, box.Z1 = box.Z0-b.model.Floor, box.Z1-b.model.Floor
		if box.X0 < lies.X1 && box.X1 > lies.X0 && box.Y0 < lies.Y1 && box.Y1 > lies.Y0 && box.Z0 > lies.Z1 &&
			box.Z0-lies.Z0 < clear {
			clear, what, assumed = box.Z0-lies.Z0, p.Label, ""
			if p.About {
				assumed = p.Label
			}
		}
	}
	return clear, what, assumed
}
