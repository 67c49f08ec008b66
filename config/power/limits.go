package power

import (
	"math"

	"boxwright/config"
)

// Limits hands the ratings that stop a unit to the rules engine, in the form
// base + sum of per-option change <= limit: driving, responding and scene load
// against the hot output at high idle, and the 125 V load against the inlet's
// breaker. An option that generates enters with a negative change. For every
// unit, Limit less the sum is exactly the margin of Budget's figure with the
// same code. Amperes.
func Limits(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions) []config.Linear {
	b := gather(cat, u, assume, new(config.Report))
	if b == nil {
		return nil
	}
	own := hot(&b.Chassis.Supply)
	var out []config.Linear
	for _, d := range duties {
		if !d.fed {
			continue
		}
		l := config.Linear{Code: d.code, Label: d.label + ", 12 V load against the hot output at high idle", Unit: "A",
			Per:  map[string]float64{},
			Base: float64(config.Clean(d.draw(&b.Chassis.Load)) + b.allowance(d)), Limit: float64(own.HighIdleA)}
		for i := range cat.Options {
			o := &cat.Options[i]
			var per float64
			if o.Load != nil {
				per += float64(config.Clean(d.draw(o.Load)))
			}
			if o.Supply != nil {
				per -= float64(b.change(o.Supply).HighIdleA)
			}
			put(l.Per, o.ID, per)
		}
		out = append(out, l)
	}
	inlet := config.Linear{Code: "power.inlet", Label: "125 V load against the inlet's breaker", Unit: "A",
		Per: map[string]float64{}, Limit: float64(config.Clean(b.Chassis.Supply.ShoreA))}
	for i := range cat.Options {
		o := &cat.Options[i]
		var per float64
		if o.Load != nil {
			per += float64(config.Clean(o.Load.ACW)) / MainsVolts
		}
		if o.Supply != nil {
			shore, _ := b.mainsChange(o.Supply)
			per -= float64(shore)
		}
		put(inlet.Per, o.ID, per)
	}
	return append(out, inlet)
}

func put(per map[string]float64, id string, v float64) {
	if v != 0 && !math.IsNaN(v) {
		per[id] = v
	}
}
