package power

import (
	"math"

	"boxwright/config"
	"boxwright/config/quantity"
)

// area is what the package's findings stand under.
const area = "Power"

// vehicle is what every part of the sheet reads.
type vehicle struct{ *config.Vehicle }

// gather finds the parts of the unit; nil when there is no chassis to compute from.
func gather(cat *config.Catalogue, u *config.Unit, assume *config.Assumptions, r *config.Report) *vehicle {
	v := config.VehicleOf(cat, u, assume, area, r, config.Fields{
		Chassis: func(c *config.Chassis) config.Unclean { return badNumbers(&c.Load, &c.Supply, nil) },
		Option:  func(o *config.Option) config.Unclean { return badNumbers(o.Load, o.Supply, o.Circuit) },
	})
	if v == nil {
		return nil
	}
	return &vehicle{v}
}

// items lists a mode's loads.
func (b *vehicle) items(d duty) []Item {
	var out []Item
	if a := config.Clean(d.draw(&b.Chassis.Load)); a > 0 {
		out = append(out, Item{Label: "Chassis: " + b.Chassis.Label, Amps: a})
	}
	if a := b.allowance(d); a > 0 {
		out = append(out, Item{Label: "Medical load, allowance of the rule set", Amps: a})
	}
	for _, p := range b.Picks {
		if p.Load == nil {
			continue
		}
		if a := config.Clean(d.draw(p.Load)); a > 0 {
			out = append(out, Item{ID: p.ID, Label: p.Label, Amps: a * quantity.Current(p.Qty), Shed: p.Load.Shed})
		}
	}
	return out
}

// allowance is the medical load a rule set adds on scene.
func (b *vehicle) allowance(d duty) quantity.Current {
	if d.code != "power.scene" {
		return 0
	}
	return config.Clean(quantity.Current(b.Assume.Limits[CodeMedical].Value))
}

// output of the alternator. Each option that replaces it adds its own figures
// and takes the chassis' away; this keeps the sum linear in the picks, so that
// the rules engine and the budget can never disagree. Two replacements at once
// are reported by mains.
func (b *vehicle) output() Output {
	o := hot(&b.Chassis.Supply)
	for _, p := range b.Picks {
		if p.Supply == nil {
			continue
		}
		add, n := b.change(p.Supply), quantity.Current(p.Qty)
		o.IdleA += n * add.IdleA
		o.HighIdleA += n * add.HighIdleA
		o.ColdA += n * add.ColdA
	}
	return o
}

// change is what one option does to the alternator's output.
func (b *vehicle) change(s *config.Supply) Output {
	o := hot(s)
	if s.Replaces && replacesAlternator(s) {
		was := hot(&b.Chassis.Supply)
		return Output{o.IdleA - was.IdleA, o.HighIdleA - was.HighIdleA, o.ColdA - was.ColdA}
	}
	return o
}

// hot reads a supply; an alternator gives at high idle no less than at idle.
func hot(s *config.Supply) Output {
	o := Output{config.Clean(s.HotIdleA), config.Clean(s.HotHighIdleA), config.Clean(s.ColdA)}
	o.HighIdleA = max(o.HighIdleA, o.IdleA)
	return o
}

func replacesAlternator(s *config.Supply) bool { return hot(s).HighIdleA > 0 }

// badNumbers names the fields that count as zero.
func badNumbers(l *config.Load, s *config.Supply, c *config.Circuit) (bad config.Unclean) {
	if l != nil {
		bad.Look("parked_a", float64(l.ParkedA))
		bad.Look("driving_a", float64(l.DrivingA))
		bad.Look("responding_a", float64(l.RespondingA))
		bad.Look("scene_a", float64(l.SceneA))
		bad.Look("ac_w", float64(l.ACW))
	}
	if s != nil {
		bad.Look("hot_idle_a", float64(s.HotIdleA))
		bad.Look("hot_high_idle_a", float64(s.HotHighIdleA))
		bad.Look("cold_a", float64(s.ColdA))
		bad.Look("battery_ah", float64(s.BatteryAh))
		bad.Look("shore_a", float64(s.ShoreA))
		bad.Look("inverter_w", float64(s.InverterW))
	}
	if c != nil {
		bad.Look("amps", float64(c.Amps))
		bad.Look("run_ft", c.RunFt)
	}
	return bad
}

func sq(v float64) float64 { return v * v }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
