package power

import (
	"maps"
	"math"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Limits hands the ratings that stop a unit to the rules engine, in the form
// base + sum of per-option change <= limit: driving, responding and scene load
// against the hot output at high idle, and the 125 V load against the inlet's
// breaker. An option that generates enters with a negative change. Amperes.
//
// What an inverter feeds counts only where there is one, which a sum cannot say. So a
// mode in which 125 V loads are in use has a sum without them, and for each group of
// options that brings an inverter a second one: in it the loads count, the most that
// they can be is taken off the base, and the inverter puts it back. For every unit the
// largest sum of a code is Budget's load, exactly where its inverters are alike; it is
// never more.
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
			Base: float64(b.drawn(d, &b.Chassis.Load) + b.allowance(d)), Limit: float64(own.HighIdleA)}
		for i := range cat.Options {
			o := &cat.Options[i]
			var per float64
			if o.Load != nil {
				per += float64(b.drawn(d, o.Load))
			}
			if o.Supply != nil {
				per -= float64(b.change(o.Supply).HighIdleA)
			}
			put(l.Per, o.ID, per)
		}
		out = append(out, b.inverted125(d, l)...)
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
	delete(per, id)
	if v != 0 && !math.IsNaN(v) {
		per[id] = v
	}
}

// inverted125 gives a mode's sum, and those with what an inverter feeds. Where the
// chassis brings an inverter its loads always count.
func (b *vehicle) inverted125(d duty, plain config.Linear) []config.Linear {
	watts := map[string]quantity.Power{}
	for i := range b.Cat.Options {
		if w := b.inverted(d, &b.Cat.Options[i]); w > 0 {
			watts[b.Cat.Options[i].ID] = w
		}
	}
	if len(watts) == 0 {
		return []config.Linear{plain}
	}
	with := func(share float64, source []int) config.Linear {
		l := plain
		l.Per = maps.Clone(plain.Per)
		for id, w := range watts {
			put(l.Per, id, l.Per[id]+float64(b.dc(w, d.volts, share)))
		}
		if source == nil {
			return l
		}
		l.Label = d.label + ", 12 V load with what the inverter feeds against the hot output at high idle"
		most := float64(b.dc(b.mostInverted(watts), d.volts, share))
		l.Base -= most
		for _, i := range source {
			id := b.Cat.Options[i].ID
			put(l.Per, id, l.Per[id]+most)
		}
		return l
	}
	sources, best := b.inverterSources()
	if config.Clean(b.Chassis.Supply.InverterW) > 0 {
		return []config.Linear{with(best, nil)}
	}
	out := []config.Linear{plain}
	for _, source := range sources {
		out = append(out, with(best, source))
	}
	return out
}

// inverterSources are the options that bring an inverter, together where their group
// allows one of them, and the efficiency of the best, which takes the least.
func (b *vehicle) inverterSources() (sources [][]int, best float64) {
	best = b.share(&b.Chassis.Supply)
	byGroup := map[string]int{}
	for i := range b.Cat.Options {
		o := &b.Cat.Options[i]
		if o.Supply == nil || config.Clean(o.Supply.InverterW) == 0 || o.MaxQty > 1 {
			continue
		}
		best = max(best, b.share(o.Supply))
		g := b.Cat.GroupByID(o.Group)
		if g == nil || g.Choose == config.ChooseAny {
			sources = append(sources, []int{i})
			continue
		}
		k, seen := byGroup[g.ID]
		if !seen {
			k = len(sources)
			byGroup[g.ID], sources = k, append(sources, nil)
		}
		sources[k] = append(sources[k], i)
	}
	return sources, best
}

// mostInverted is the most that the loads can be together: of a group that allows one
// of its options the largest.
func (b *vehicle) mostInverted(watts map[string]quantity.Power) quantity.Power {
	var sum quantity.Power
	for i := range b.Cat.Groups {
		g := &b.Cat.Groups[i]
		var all, largest quantity.Power
		for _, m := range b.Cat.Members(g.ID) {
			o := &b.Cat.Options[m]
			w := watts[o.ID] * quantity.Power(max(o.MaxQty, 1))
			all, largest = all+w, max(largest, w)
		}
		if g.Choose == config.ChooseAny {
			largest = all
		}
		sum += largest
	}
	return sum
}
