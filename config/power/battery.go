package power

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Usual values of the battery figures. Common practice, no source.
const (
	RatedHours   = 20.0 // a battery's capacity is stated at the 20-hour rate
	PeukertUsual = 1.20 // lead-acid; the likely range runs from PeukertLow to PeukertHigh
	PeukertLow   = 1.10
	PeukertHigh  = 1.30
	UsableShare  = 0.50 // of the capacity, so that the engine still starts
)

// Battery is how long the scene load can be carried with the engine off.
type Battery struct {
	AmpHours quantity.Charge  // at the 20-hour rate
	LoadA    quantity.Current // on scene, nothing shed
	Minutes  float64          // to UsableShare; 0 when not known
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
// Valid: C > 0, H > 0, I > 0, 1 <= k <= 1.6; below the rated current C/H no
// gain is counted, so t = C / I there. Example: 200 Ah at 20 h, 10 A, any k:
// 20 h; 200 Ah, 40 A, k 1.2: 20 x (200/800)^1.2 = 3.79 h.
func Peukert(c quantity.Charge, hours float64, load quantity.Current, k float64) (float64, error) {
	ah, i := float64(c), float64(load)
	switch {
	case !(ah > 0) || !finite(ah):
		return 0, fmt.Errorf("a battery of %v Ah lasts no time: state a capacity above zero", ah)
	case !(hours > 0) || !finite(hours):
		return 0, fmt.Errorf("%v h is no rating: state the hours of the rating, usually 20", hours)
	case !(i > 0) || !finite(i):
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
	s.Battery.AmpHours = batteryOf(b)
	scene := s.Modes[len(s.Modes)-1]
	s.Battery.LoadA = scene.LoadA
	if s.Battery.AmpHours <= 0 {
		s.add(config.Finding{Code: "power.no-battery", Severity: config.Warn, Text: "No battery capacity is stated, " +
			"so the minutes on battery are not known.", Remedy: "State the ampere-hours of the batteries, or choose " +
			"a battery option."})
	}
	minutes := func(load quantity.Current, k float64) float64 {
		h, err := Peukert(s.Battery.AmpHours, RatedHours, load, k)
		if err != nil {
			return 0
		}
		return 60 * UsableShare * h
	}
	s.Battery.Minutes = minutes(scene.LoadA, PeukertUsual)
	left := scene.LoadA
	for _, order := range shedOrders(scene.Items) {
		step := ShedStep{Order: order}
		for _, it := range scene.Items {
			if it.Shed == order {
				step.Items = append(step.Items, it)
				left -= it.Amps
			}
		}
		left = max(left, 0)
		step.LeftA, step.Minutes = left, minutes(left, PeukertUsual)
		s.Shed = append(s.Shed, step)
	}
	if s.Battery.Minutes <= 0 {
		return
	}
	f := config.Figure{Code: "power.battery-minutes", Label: "Minutes on battery, scene load, engine off, to half " +
		"capacity", Unit: quantity.Minute,
		Value: s.Battery.Minutes, Low: minutes(scene.LoadA, PeukertHigh), High: minutes(scene.LoadA, PeukertLow)}
	b.Assume.Bind(&f)
	s.Figures = append(s.Figures, f)
	if !f.Met() {
		s.add(config.Finding{Code: f.Code, Severity: severity(f.Basis), Figure: &f, Basis: f.Basis,
			Text: fmt.Sprintf("The batteries carry the scene load for %.0f minutes; %.0f are asked for.", f.Value,
				f.Limit), Remedy: "Take more battery capacity, or let more loads be shed."})
	}
}

// batteryOf sums the capacity; replacing options together take the chassis'
// place.
func batteryOf(b *vehicle) quantity.Charge {
	own, replaced := config.Clean(b.Chassis.Supply.BatteryAh), false
	var sum quantity.Charge
	for _, p := range b.Picks {
		if p.Supply == nil {
			continue
		}
		ah := config.Clean(p.Supply.BatteryAh)
		sum += ah * quantity.Charge(p.Qty)
		replaced = replaced || (p.Supply.Replaces && ah > 0)
	}
	if replaced {
		return sum
	}
	return own + sum
}

func shedOrders(items []Item) []int {
	var out []int
	for _, it := range items {
		if it.Shed > 0 && !slices.Contains(out, it.Shed) {
			out = append(out, it.Shed)
		}
	}
	slices.Sort(out)
	return out
}
