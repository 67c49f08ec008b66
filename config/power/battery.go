package power

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// RatedHours is the rate at which a battery's capacity is stated.
const RatedHours = 20.0

// Half widths of the likely range of Peukert's exponent: common practice, no source.
const (
	leadExponentSpread    = 0.05
	lithiumExponentSpread = 0.02
)

// Battery is the bank that feeds the module, and how long it carries the scene load
// with the engine off.
type Battery struct {
	AmpHours quantity.Charge  // at the 20-hour rate
	LoadA    quantity.Current // on scene, engine off, nothing shed
	Volts    float64          // of that current
	House    bool             // a bank of its own; else the engine starts from the same batteries
	Kept     quantity.Charge  // of batteries that feed only the engine
	// Chemistry of the bank, "lead", "lithium" or "lead and lithium".
	Chemistry string
	Usable    float64 // share of AmpHours, 0 to 1
	Exponent  float64 // Peukert's
	Minutes   float64 // until the usable share is taken; 0 when not known
	Low, High float64 // likely range of Minutes
}

// ShedStep is the scene load on battery after shedding everything up to and
// including this step.
type ShedStep struct {
	Order   int
	Items   []Item
	LeftA   quantity.Current
	Minutes float64
}

// Peukert is the time a battery lasts at a steady current.
//
//	t = H (C / (I H))^k
//
// Source: Peukert's law (1897), as commonly written for a capacity C stated at
// an H-hour rate. Units: C in Ah, H in h, I in A, t in h, k without unit.
// Valid: C from 0.001 to 1e6, H from 0.001 to 1e4, I from 0.001 to 1e6, k from 1 to 1.6;
// otherwise an error; below the rated current C/H no
// gain is counted, so t = C / I there. Example: 200 Ah at 20 h, 10 A, any k:
// 20 h; 200 Ah, 40 A, k 1.2: 20 x (200/800)^1.2 = 3.79 h.
func Peukert(c quantity.Charge, hours float64, load quantity.Current, k float64) (float64, error) {
	ah, i := float64(c), float64(load)
	switch {
	case !(ah >= 1e-3 && ah <= 1e6):
		return 0, fmt.Errorf("a battery of %v Ah lasts no time: state a capacity above zero", ah)
	case !(hours >= 1e-3 && hours <= 1e4):
		return 0, fmt.Errorf("%v h is no rating: state the hours of the rating, usually 20", hours)
	case !(i >= 1e-3 && i <= 1e6):
		return 0, fmt.Errorf("%v A is no load: state a current above zero", i)
	case !(k >= 1 && k <= 1.6):
		return 0, errors.New("the exponent must be from 1 to 1.6; 1.2 is usual for lead-acid")
	}
	if i*hours <= ah {
		return ah / i, nil
	}
	return hours * math.Pow(ah/(i*hours), k), nil
}

// battery fills the minutes with the engine off and the order of shedding.
func (s *Sheet) battery(b *vehicle) {
	bank := b.bank()
	s.Battery = bank.Battery
	scene := s.Modes[len(s.Modes)-1]
	var load quantity.Current
	for _, it := range scene.Items {
		load += it.OffA
	}
	s.Battery.LoadA, s.Battery.Volts = load, b.Assume.Factor(config.OffVolts)
	if s.Battery.AmpHours <= 0 {
		text := "No battery capacity is stated, so the minutes on battery are not known."
		if s.Battery.Kept > 0 {
			text = "The batteries feed only the engine, so the module has none with the engine off."
		}
		s.add(config.Finding{Code: "power.no-battery", Severity: config.Warn, Text: text,
			Remedy: "State the ampere-hours of the batteries, or choose a battery option."})
	}
	s.Battery.Minutes = bank.minutes(load, bank.Exponent, 1)
	s.kept(b, &bank)
	left := load
	for _, order := range sheddings([]Mode{scene}) {
		step := ShedStep{Order: order}
		for _, it := range scene.Items {
			if it.Shed == order {
				step.Items = append(step.Items, it)
				left -= it.OffA
			}
		}
		left = max(left, 0)
		step.LeftA, step.Minutes = left, bank.minutes(left, bank.Exponent, 1)
		s.Shed = append(s.Shed, step)
	}
	if s.Battery.Minutes <= 0 {
		return
	}
	s.Battery.Low, s.Battery.High = bank.likely(load, b.offSpread(scene.Items), b.Assume.Factor(
		config.BatteryAhSpread)/100)
	f := config.Figure{Code: "power.battery-minutes",
		Label: fmt.Sprintf("Minutes on battery, scene load, engine off, %.0f %% of the capacity used", 100*bank.Usable),
		Unit:  quantity.Minute, Value: s.Battery.Minutes, Low: s.Battery.Low, High: s.Battery.High}
	b.Assume.Bind(&f)
	s.Figures = append(s.Figures, f)
	if !f.Met() {
		s.add(config.Finding{Code: f.Code, Severity: f.Basis.Severity(), Figure: &f, Basis: f.Basis,
			Text: fmt.Sprintf("The batteries carry the scene load for %.0f minutes; %.0f are asked for.", f.Value,
				f.Limit), Remedy: "Choose more battery capacity, or shed more loads."})
	}
}

// kept gives how long the batteries alone carry what must run on, through an inverter
// where it takes 125 V, with everything else shut off.
func (s *Sheet) kept(b *vehicle, k *bank) {
	var amps quantity.Current
	name := ""
	share, volts := b.Assume.Factor(config.InverterShare)/100, b.Assume.Factor(config.OffVolts)
	var watts quantity.Power
	var items []Item
	for _, p := range b.Picks {
		if l := p.Load; l != nil && l.Kept && share > 0 && volts > 0 {
			each := config.Clean(l.SceneA) + quantity.Current(float64(config.Clean(l.ACW))/share/volts)
			amps, name = amps+each*quantity.Current(p.Qty), p.Label
			watts += config.Clean(l.ACW) * quantity.Power(p.Qty)
			items = append(items, Item{Amps: each * quantity.Current(p.Qty)})
		}
	}
	s.keptWatts, s.keptName = watts, name
	if minutes := k.minutes(amps, k.Exponent, 1); amps > 0 && minutes > 0 {
		low, high := k.likely(amps, b.spread(items), b.Assume.Factor(config.BatteryAhSpread)/100)
		s.Figures = append(s.Figures, config.Figure{Code: "power.kept-minutes", Label: name +
			", minutes on battery alone, engine and all else off", Unit: quantity.Minute, Value: minutes, Low: low,
			High: high})
	}
}

func (b *vehicle) offSpread(items []Item) float64 {
	off := slices.Clone(items)
	for i := range off {
		off[i].Amps = off[i].OffA
	}
	return b.spread(off)
}

// bank is the batteries that feed the module, and the doubt about their exponent.
type bank struct {
	Battery
	spread float64
}

// bank gathers the batteries by their job. A replacing option takes the place of the
// chassis' own. Where there is a house bank it alone feeds the module; else those that
// start the engine do, as far as the engine still starts.
func (b *vehicle) bank() bank {
	own, replaced := &b.Chassis.Supply, false
	for _, p := range b.Picks {
		if p.Supply != nil && p.Supply.Job != "house" {
			replaced = replaced || p.Supply.Replaces && config.Clean(p.Supply.BatteryAh) > 0
		}
	}
	var house, both []config.Supply
	var kept quantity.Charge
	take := func(s *config.Supply, n int) {
		one := *s
		if one.BatteryAh = config.Clean(s.BatteryAh) * quantity.Charge(n); one.BatteryAh <= 0 {
			return
		}
		switch s.Job {
		case "house":
			house = append(house, one)
		case "starting":
			kept += one.BatteryAh
		default:
			both = append(both, one)
		}
	}
	if !replaced {
		take(own, 1)
	}
	for _, p := range b.Picks {
		if p.Supply != nil {
			take(p.Supply, p.Qty)
		}
	}
	list := both
	if len(house) > 0 {
		for _, s := range both {
			kept += s.BatteryAh
		}
		list = house
	}
	out := bank{}
	out.House, out.Kept = len(house) > 0, kept
	for i := range list {
		out.add(b, &list[i])
	}
	if ah := float64(out.AmpHours); ah > 0 {
		out.Usable, out.Exponent, out.spread = out.Usable/ah, out.Exponent/ah, out.spread/ah
	}
	return out
}

// add weighs in a battery by its capacity.
func (k *bank) add(b *vehicle, s *config.Supply) {
	name, usable, exponent, spread := "lead", config.LeadUsable, config.LeadExponent, leadExponentSpread
	if s.Chemistry == "lithium" {
		name, usable, exponent, spread = "lithium", config.LithiumUsable, config.LithiumExponent, lithiumExponentSpread
	}
	own := func(v, least, most, scale float64, usual string) float64 {
		if v >= least && v <= most {
			return v / scale
		}
		return b.Assume.Factor(usual) / scale
	}
	ah := float64(s.BatteryAh)
	k.AmpHours += s.BatteryAh
	k.Usable += ah * own(s.UsablePct, 1, 100, 100, usable)
	k.Exponent += ah * own(s.Exponent, 1, 1.6, 1, exponent)
	k.spread += ah * spread
	if k.Chemistry != "" && k.Chemistry != name {
		name = "lead and lithium"
	}
	k.Chemistry = name
}

// minutes until the usable share of so much of the capacity is taken.
func (k *bank) minutes(load quantity.Current, exponent, capacity float64) float64 {
	h, err := Peukert(k.AmpHours*quantity.Charge(capacity), RatedHours, load, exponent)
	if err != nil {
		return 0
	}
	return 60 * k.Usable * h
}

// likely is the range of the minutes: load, capacity and exponent each at the end of
// its own range, their effects joined as a root sum of squares.
func (k *bank) likely(load quantity.Current, loadSpread, ahSpread float64) (low, high float64) {
	mid := k.minutes(load, k.Exponent, 1)
	worse, better := 0.0, 0.0
	for _, v := range []float64{
		k.minutes(load+quantity.Current(loadSpread), k.Exponent, 1), k.minutes(load, k.Exponent, 1-ahSpread),
		k.minutes(load, min(k.Exponent+k.spread, 1.6), 1),
	} {
		worse += sq(mid - v)
	}
	for _, v := range []float64{
		k.minutes(max(load-quantity.Current(loadSpread), load/10), k.Exponent, 1),
		k.minutes(load, k.Exponent, 1+ahSpread), k.minutes(load, max(k.Exponent-k.spread, 1), 1),
	} {
		better += sq(v - mid)
	}
	return max(0, mid-math.Sqrt(worse)), mid + math.Sqrt(better)
}

// charger holds what the unit draws while parked against what its charger delivers: a
// charger that gives less lets the batteries run down on the shore line.
func (s *Sheet) charger(b *vehicle) {
	gives := config.Clean(b.Chassis.Supply.ChargeA)
	for _, p := range b.Picks {
		if p.Supply != nil {
			gives += config.Clean(p.Supply.ChargeA) * quantity.Current(p.Qty)
		}
	}
	parked := s.Modes[0]
	f, _ := s.Figure(parked.Code)
	f.Code, f.Label, f.Chance = "power.charger", "Parked, 12 V load against the charger", 0
	f.Limit, f.Sense, f.Source, f.Basis = float64(gives), config.AtMost, "output of the battery charger", config.Rating
	s.Figures = append(s.Figures, f)
	if f.Met() {
		return
	}
	text := fmt.Sprintf("Parked, the unit draws %.1f A and the charger delivers %.0f A: the batteries run down on the "+
		"shore line.", f.Value, f.Limit)
	if gives <= 0 {
		text = fmt.Sprintf("Parked, the unit draws %.1f A and no charger keeps the batteries up.", f.Value)
	}
	s.add(config.Finding{Code: f.Code, Severity: config.Warn, Figure: &f, Basis: f.Basis, Text: text,
		Remedy: "Choose a larger charger, or fewer loads that stay on when parked.", Picks: heaviest(parked.Items)})
}

// sheddings are the places in the order of shedding that loads of some modes have.
func sheddings(modes []Mode) []int {
	var out []int
	for _, m := range modes {
		for _, it := range m.Items {
			if it.Shed > 0 && !slices.Contains(out, it.Shed) {
				out = append(out, it.Shed)
			}
		}
	}
	slices.Sort(out)
	return out
}

// numberShedding counts the steps in which this unit sheds from 1 on: places in the order
// of the catalogue that none of its loads has are no steps.
func (s *Sheet) numberShedding() {
	places := sheddings(s.Modes)
	for _, m := range s.Modes {
		for i := range m.Items {
			if it := &m.Items[i]; it.Shed > 0 {
				it.Shed = slices.Index(places, it.Shed) + 1
			}
		}
	}
}
