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
			"Weigh it as it will be mounted, with what stays in it, and enter the figure in Needs.")
	}
	if e == nil || e.XIn == 0 || e.Estimated {
		l.note(config.Warn, "weight.existing.center", "existing module",
			fmt.Sprintf("Where the center of the module lies is estimated: each %s it really lies further forward "+
				"puts %s more on the front axle.",
				quantity.US.Show(1, quantity.Inch), lb(float64(m.Lb)/float64(l.ch.WheelbaseIn))),
			"Weigh the module on two supports: its center lies behind the front one by the rear reading times their "+
				"distance, divided by the sum of both.")
	}
}
