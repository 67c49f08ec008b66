package power

import (
	"fmt"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// basis is what every part of the sheet reads: the chassis, the options of the
// unit with their quantities, and the assumptions in force.
type basis struct {
	cat     *config.Catalogue
	chassis *config.Chassis
	picks   []picked
	as      *config.Assumptions
}

type picked struct {
	*config.Option
	qty int
}

// gather finds the parts of the unit, reports what it must leave out, and
// returns nil when there is no chassis to compute from.
func gather(cat *config.Catalogue, u *config.Unit, as *config.Assumptions, r *config.Report) *basis {
	tell := func(code string, sev config.Severity, text, remedy string) {
		r.Findings = append(r.Findings, config.Finding{Code: code, Severity: sev, Where: "Power", Text: text, Remedy: remedy})
	}
	if cat == nil || u == nil {
		tell("power.no-unit", config.Stop, "There is no catalogue or no unit to compute from.", "Open a catalogue and a unit.")
		return nil
	}
	b := &basis{cat: cat, chassis: cat.ChassisByID(u.Chassis), as: as}
	if b.as == nil {
		b.as = new(config.Assumptions)
	}
	if b.chassis == nil {
		tell("power.no-chassis", config.Stop, fmt.Sprintf("Chassis %q is not in this edition.", u.Chassis), "Choose a chassis.")
		return nil
	}
	for _, name := range badNumbers(&b.chassis.Load, &b.chassis.Supply, nil) {
		tell("power.bad-number", config.Warn, fmt.Sprintf("%s: %s is negative or not a number and counts as zero.", b.chassis.Label, name), "Correct the catalogue.")
	}
	for _, p := range u.Picks {
		o := cat.OptionByID(p.Option)
		if o == nil || p.Qty < 1 {
			tell("power.unknown-option", config.Warn, fmt.Sprintf("Option %q (%d) is not counted.", p.Option, p.Qty), "Take it out, or choose one of this edition in a quantity of 1 or more.")
			continue
		}
		for _, name := range badNumbers(o.Load, o.Supply, o.Circuit) {
			tell("power.bad-number", config.Warn, fmt.Sprintf("%s: %s is negative or not a number and counts as zero.", o.Label, name), "Correct the catalogue.")
		}
		b.picks = append(b.picks, picked{o, p.Qty})
	}
	return b
}

// items lists a mode's loads.
func (b *basis) items(d duty) []Item {
	var out []Item
	if a := clean(d.draw(&b.chassis.Load)); a > 0 {
		out = append(out, Item{Label: "Chassis: " + b.chassis.Label, Amps: a})
	}
	if a := b.allowance(d); a > 0 {
		out = append(out, Item{Label: "Medical load, allowance of the rule set", Amps: a})
	}
	for _, p := range b.picks {
		if p.Load == nil {
			continue
		}
		if a := clean(d.draw(p.Load)); a > 0 {
			out = append(out, Item{ID: p.ID, Label: p.Label, Amps: a * quantity.Current(p.qty), Shed: p.Load.Shed})
		}
	}
	return out
}

// allowance is the medical load a rule set adds on scene.
func (b *basis) allowance(d duty) quantity.Current {
	if d.code != "power.scene" {
		return 0
	}
	return clean(quantity.Current(b.as.Limits[CodeMedical].Value))
}

// output of the alternator. Each option that replaces it adds its own figures
// and takes the chassis' away; this keeps the sum linear in the picks, so that
// the rules engine and the budget can never disagree. Two replacements at once
// are reported by mains.
func (b *basis) output() Output {
	o := hot(&b.chassis.Supply)
	for _, p := range b.picks {
		if p.Supply == nil {
			continue
		}
		add, n := b.change(p.Supply), quantity.Current(p.qty)
		o.IdleA += n * add.IdleA
		o.HighIdleA += n * add.HighIdleA
		o.ColdA += n * add.ColdA
	}
	return o
}

// change is what one option does to the alternator's output.
func (b *basis) change(s *config.Supply) Output {
	o := hot(s)
	if s.Replaces && replacesAlternator(s) {
		was := hot(&b.chassis.Supply)
		return Output{o.IdleA - was.IdleA, o.HighIdleA - was.HighIdleA, o.ColdA - was.ColdA}
	}
	return o
}

// hot reads a supply; an alternator gives at high idle no less than at idle.
func hot(s *config.Supply) Output {
	o := Output{clean(s.HotIdleA), clean(s.HotHighIdleA), clean(s.ColdA)}
	o.HighIdleA = max(o.HighIdleA, o.IdleA)
	return o
}

func replacesAlternator(s *config.Supply) bool { return hot(s).HighIdleA > 0 }

// clean makes a hostile number harmless.
func clean[T ~float64](v T) T {
	if !(v >= 0 && v <= 1e6) {
		return 0
	}
	return v
}

// badNumbers names the fields that clean would drop.
func badNumbers(l *config.Load, s *config.Supply, c *config.Circuit) []string {
	var out []string
	look := func(name string, v float64) {
		if clean(v) != v {
			out = append(out, name)
		}
	}
	if l != nil {
		look("parked_a", float64(l.ParkedA))
		look("driving_a", float64(l.DrivingA))
		look("responding_a", float64(l.RespondingA))
		look("scene_a", float64(l.SceneA))
		look("ac_w", float64(l.ACW))
	}
	if s != nil {
		look("hot_idle_a", float64(s.HotIdleA))
		look("hot_high_idle_a", float64(s.HotHighIdleA))
		look("cold_a", float64(s.ColdA))
		look("battery_ah", float64(s.BatteryAh))
		look("shore_a", float64(s.ShoreA))
		look("inverter_w", float64(s.InverterW))
	}
	if c != nil {
		look("amps", float64(c.Amps))
		look("run_ft", c.RunFt)
	}
	return out
}

func sq(v float64) float64 { return v * v }

func contains(list []string, s string) bool { return slices.Contains(list, s) }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
