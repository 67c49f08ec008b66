package power

import (
	"math"
	"slices"

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

// items lists a mode's loads: those at 12 V, and behind them what the inverter feeds.
func (b *vehicle) items(d duty) []Item {
	var out []Item
	add := func(id, label string, l *config.Load, qty int) {
		if a := b.drawn(d, l); a > 0 {
			n := quantity.Current(qty)
			out = append(out, Item{ID: id, Label: label, Amps: a * n, OffA: b.off(d, l) * n, Shed: l.Shed})
		}
	}
	add("", "Chassis: "+b.Chassis.Label, &b.Chassis.Load, 1)
	if a := b.allowance(d); a > 0 {
		out = append(out, Item{Label: "Medical load, allowance of the rule set", Amps: a, OffA: a})
	}
	in := b.inverter()
	stays := b.keepsOnMains(d) && !in.unshed
	for _, p := range b.Picks {
		if p.Load == nil {
			continue
		}
		l := *p.Load
		if stays && p.Supply != nil && config.Clean(p.Supply.InverterW) > 0 {
			l.Shed = 0
		}
		add(p.ID, p.Label, &l, p.Qty)
	}
	if in.watts <= 0 {
		return out
	}
	for _, p := range b.Picks {
		w := b.inverted(d, p.Option) * quantity.Power(p.Qty)
		if w <= 0 {
			continue
		}
		shed, own := in.shed, p.Load.Shed
		switch {
		case p.Load.Kept:
			shed = 0
		case stays, own > 0 && (shed == 0 || own < shed):
			shed = own
		}
		out = append(out, Item{ID: p.ID, Label: p.Label, Watts: w, Shed: shed,
			Amps: b.dc(w, d.volts, in.share), OffA: b.dc(w, config.OffVolts, in.share)})
	}
	return out
}

// drawn is what a load draws in a mode at the mode's voltage.
func (b *vehicle) drawn(d duty, l *config.Load) quantity.Current {
	v := b.Assume.Factor(d.volts)
	return shifted(config.Clean(d.draw(l)), l, v, v)
}

// off is what it draws with the engine off, at the batteries' voltage.
func (b *vehicle) off(d duty, l *config.Load) quantity.Current {
	a := max(0, config.Clean(d.draw(l))-config.Clean(l.EngineA))
	return shifted(a, l, b.Assume.Factor(d.volts), b.Assume.Factor(config.OffVolts))
}

// shifted is a stated current at voltage v. Without a voltage of its own it was stated
// at home.
func shifted(a quantity.Current, l *config.Load, home, v float64) quantity.Current {
	if at := l.AtV; at >= leastVolts && at <= mostVolts {
		home = at
	}
	if a == 0 || home == v {
		return a
	}
	return AtVolts(a, l.Behaves, home, v)
}

// What a 12 V system can be at.
const leastVolts, mostVolts = 9.0, 16.0

// AtVolts is the current of a load at another voltage than its own.
//
//	resistive I V/V0; constant power I V0/V; any other I
//
// Source: Ohm's law, and P = V I.
// Units: A, V. Valid: a current from 0 up, voltages of 9 to 16 V; otherwise 0.
// Example: 10 A at 14 V, resistive, draws 8.93 A at 12.5 V; of constant power 11.2 A.
func AtVolts(a quantity.Current, behaves string, from, to float64) quantity.Current {
	if !(a >= 0 && a <= 1e6) || !(from >= leastVolts && from <= mostVolts) || !(to >= leastVolts && to <= mostVolts) {
		return 0
	}
	switch behaves {
	case "resistive":
		return a * quantity.Current(to/from)
	case "power":
		return a * quantity.Current(from/to)
	}
	return a
}

// InverterAmps is what an inverter takes from the 12 V side for a load at 125 V.
//
//	A = W / (V x efficiency)
//
// Source: energy in is energy out over efficiency; 85 to 92 % is common practice.
// Units: W, V, efficiency as a share; A. Valid: 0 W up, 9 to 16 V, a share above 0 and up
// to 1; otherwise 0. Example: 300 W at 12.5 V and 88 % is 27.3 A; 1,000 W 90.9 A.
func InverterAmps(w quantity.Power, v, share float64) quantity.Current {
	if !(w >= 0 && w <= 1e6) || !(v >= leastVolts && v <= mostVolts) || !(share >= 0.01 && share <= 1) {
		return 0
	}
	return quantity.Current(float64(w) / (v * share))
}

func (b *vehicle) dc(w quantity.Power, volts string, share float64) quantity.Current {
	return InverterAmps(w, b.Assume.Factor(volts), share)
}

// inverterOf is what a unit's inverters are together.
type inverterOf struct {
	watts quantity.Power
	share float64 // efficiency
	shed  int     // when they are shed; 0 never
	// one of them is never shed, and feeds what must run on
	unshed bool
}

// keepsOnMains reports whether an inverter feeds what must run on: then one of them is
// not shed, whatever the catalogue says of it.
func (b *vehicle) keepsOnMains(d duty) bool {
	return slices.ContainsFunc(b.Picks, func(p config.Picked) bool {
		return p.Load != nil && p.Load.Kept && b.inverted(d, p.Option) > 0
	})
}

func (b *vehicle) inverter() inverterOf {
	in := inverterOf{}
	taken := 0.0 // W on the 12 V side
	add := func(s *config.Supply, w quantity.Power) {
		in.watts += w
		taken += float64(w) / b.share(s)
	}
	add(&b.Chassis.Supply, config.Clean(b.Chassis.Supply.InverterW))
	for _, p := range b.Picks {
		if p.Supply == nil || config.Clean(p.Supply.InverterW) == 0 {
			continue
		}
		_, w := b.mainsChange(p.Supply)
		add(p.Supply, w*quantity.Power(p.Qty))
		if p.Load != nil {
			in.shed = max(in.shed, p.Load.Shed)
		}
		in.unshed = in.unshed || p.Load == nil || p.Load.Shed == 0
	}
	if in.share = float64(in.watts) / taken; !(in.share >= 0.01 && in.share <= 1) {
		in.share = b.share(&config.Supply{})
	}
	return in
}

// share is the efficiency of an inverter.
func (b *vehicle) share(s *config.Supply) float64 {
	if p := s.InverterPct; p >= 1 && p <= 100 {
		return p / 100
	}
	return b.Assume.Factor(config.InverterShare) / 100
}

// inverted is the power of one of an option that the inverter, where there is one,
// feeds in a mode.
func (b *vehicle) inverted(d duty, o *config.Option) quantity.Power {
	if o.Load == nil || slices.Contains(o.Tags, TagShoreOnly) {
		return 0
	}
	duty := o.Load.ACDuty
	if duty == nil {
		duty = &config.ACDuty{Responding: 1, Scene: 1}
	}
	share := d.inUse(duty)
	if !(share >= 0 && share <= 1) {
		return 0
	}
	return config.Clean(o.Load.ACW) * quantity.Power(share)
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
		bad.Look("engine_a", float64(l.EngineA))
	}
	if s != nil {
		bad.Look("hot_idle_a", float64(s.HotIdleA))
		bad.Look("hot_high_idle_a", float64(s.HotHighIdleA))
		bad.Look("cold_a", float64(s.ColdA))
		bad.Look("battery_ah", float64(s.BatteryAh))
		bad.Look("shore_a", float64(s.ShoreA))
		bad.Look("inverter_w", float64(s.InverterW))
		bad.Look("charge_a", float64(s.ChargeA))
	}
	if c != nil {
		bad.Look("amps", float64(c.Amps))
		bad.Look("run_ft", c.RunFt)
	}
	return bad
}

func sq(v float64) float64 { return v * v }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
