package weight

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/quantity"
)

// existing says what of a module to be remounted still rests on a guess.
func (l *loader) existing() {
	remount, e := l.cat.Measured(l.u)
	if !remount {
		return
	}
	m := &l.body.Mass
	if e == nil || e.MassLb == 0 {
		l.note(config.Warn, "weight.existing.unmeasured", "existing module",
			fmt.Sprintf("The module to be remounted has not been weighed; the usual %s, give or take %s, is counted.",
				lb(float64(m.Lb)), lb(float64(m.TolLb))),
			"Weigh it as it will be mounted, with what stays in it, and enter the figure in Start.")
	}
	if e == nil || e.XIn == 0 || e.Estimated {
		l.note(config.Warn, "weight.existing.center", "existing module",
			fmt.Sprintf("Where the center of the module lies is estimated: each %s it really lies further forward "+
				"puts %s more on the front axle.",
				quantity.US.Show(1, quantity.Inch), lb(float64(m.Lb)/float64(l.ch.WheelbaseIn))),
			"Weigh the module on two supports: its center lies behind the front one by the rear reading times their "+
				"distance, divided by the sum of both.")
	}
	l.contradicting()
}

// What the sizes and the weight of a module leave for what lies between them. Common
// practice, no source: outside it somebody most likely read a tape wrongly.
const (
	roofAndFloorLeastIn, roofAndFloorMostIn = 3, 12
	lightestLbFt3, heaviestLbFt3            = 4, 14 // by outside volume, with cabinets
	farOffCenter                            = 0.15  // of the length
)

// contradicting asks about measurements that do not agree with each other.
func (l *loader) contradicting() {
	b := l.body
	ask := func(code, text string) {
		l.note(config.Warn, "weight.existing."+code, "existing module", text, "Measure both again, or say why in the "+
			"notes on its condition.")
	}
	inch := func(v quantity.Length) string { return quantity.US.Show(float64(v), quantity.Inch) }
	if gap := b.HeightIn - b.HeadroomIn; gap < roofAndFloorLeastIn || gap > roofAndFloorMostIn {
		ask("height", fmt.Sprintf("%s high outside with %s of headroom leaves %s for floor and roof; %d to %d in are "+
			"usual.", inch(b.HeightIn), inch(b.HeadroomIn), inch(gap), roofAndFloorLeastIn, roofAndFloorMostIn))
	}
	if b.LengthIn < b.WidthIn {
		ask("length", fmt.Sprintf("%s long and %s wide: a module is longer than wide.", inch(b.LengthIn),
			inch(b.WidthIn)))
	}
	ft3 := float64(b.LengthIn*b.WidthIn*b.HeightIn) / 1728
	if m := float64(b.Mass.Lb); ft3 > 0 && (m/ft3 < lightestLbFt3 || m/ft3 > heaviestLbFt3) {
		ask("mass", fmt.Sprintf("%s for %s by %s by %s is %.1f lb for each cubic foot outside; %d to %d are usual.",
			lb(m),
			inch(b.LengthIn), inch(b.WidthIn), inch(b.HeightIn), m/ft3, lightestLbFt3, heaviestLbFt3))
	}
	if _, e := l.cat.Measured(l.u); e != nil && e.XIn != 0 {
		if off := float64(e.XIn - b.LengthIn/2); max(off, -off) > farOffCenter*float64(b.LengthIn) {
			ask("off-center",
				fmt.Sprintf("A center %s behind the front wall is %s from the middle of a module %s long.",
					inch(e.XIn), quantity.US.Show(max(off, -off), quantity.Inch), inch(b.LengthIn)))
		}
	}
}
