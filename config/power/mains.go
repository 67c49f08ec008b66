package power

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// MainsVolts is the nominal voltage of shore line and inverter (KKK-A-1822
// speaks of 125 V circuits).
const MainsVolts = 125.0

// ContinuousShare of a branch that a steady load should use, the trade's 80 %
// rule: 16 A of a 20 A inlet.
// Source: practitioner's advice (forums.mikeholt.com); practice, not a text.
const ContinuousShare = 0.80

// TagShoreOnly marks an option whose 125 V load never runs from the inverter:
// a battery charger, a block heater.
const TagShoreOnly = "shore-only"

// Mains is a 125 V supply and everything it may have to feed at once.
type Mains struct {
	Items  []MainsItem
	LoadW  quantity.Power
	LoadA  quantity.Current // LoadW / MainsVolts
	RatedA quantity.Current // of the inlet; for the inverter RatedW / MainsVolts
	RatedW quantity.Power
}

// MainsItem is one 125 V load.
type MainsItem struct {
	ID, Label string
	Watts     quantity.Power
}

// mains holds the 125 V loads against the inlet and against the inverter.
func (s *Sheet) mains(b *vehicle) {
	shore, inverter := config.Clean(b.Chassis.Supply.ShoreA), config.Clean(b.Chassis.Supply.InverterW)
	own := quantity.Power(0) // of the inverters that feed only what must run on
	for _, p := range b.Picks {
		if p.Supply != nil && p.Supply.InverterKept {
			own += config.Clean(p.Supply.InverterW) * quantity.Power(p.Qty)
		}
	}
	alternators := 0
	for _, p := range b.Picks {
		if p.Supply != nil {
			dShore, dInverter := b.mainsChange(p.Supply)
			shore += dShore * quantity.Current(p.Qty)
			if !p.Supply.InverterKept {
				inverter += dInverter * quantity.Power(p.Qty)
			}
			if p.Supply.Replaces && replacesAlternator(p.Supply) {
				alternators += p.Qty
			}
		}
		if p.Load == nil || config.Clean(p.Load.ACW) == 0 {
			continue
		}
		it := MainsItem{p.ID, p.Label, config.Clean(p.Load.ACW) * quantity.Power(p.Qty)}
		s.Shore.take(it)
		if !slices.Contains(p.Tags, TagShoreOnly) && (own == 0 || !p.Load.Kept) {
			s.Inverter.take(it)
		}
	}
	if alternators > 1 {
		s.add(config.Finding{Code: "power.two-alternators", Severity: config.Stop,
			Text: fmt.Sprintf("%d alternators each replace the one on the chassis; there is room for one.",
				alternators), Remedy: "Keep one of them."})
	}
	s.Shore.rate(quantity.Power(shore * MainsVolts))
	s.Inverter.rate(inverter)
	s.inlet(b)
	if inverter > 0 {
		s.inverter(b)
	}
	s.generator(b)
	s.keptOn(float64(inverter), float64(own), float64(shore))
}

// mainsChange is what one option does to the inlet and the inverter.
func (b *vehicle) mainsChange(s *config.Supply) (shore quantity.Current, inverter quantity.Power) {
	shore, inverter = config.Clean(s.ShoreA), config.Clean(s.InverterW)
	if s.Replaces && shore > 0 {
		shore -= config.Clean(b.Chassis.Supply.ShoreA)
	}
	if s.Replaces && inverter > 0 {
		inverter -= config.Clean(b.Chassis.Supply.InverterW)
	}
	return shore, inverter
}

func (m *Mains) take(it MainsItem) {
	m.Items = append(m.Items, it)
	m.LoadW += it.Watts
}

func (m *Mains) rate(w quantity.Power) {
	m.RatedW = w
	m.RatedA = quantity.Current(w / MainsVolts)
	m.LoadA = quantity.Current(m.LoadW / MainsVolts)
}

// ShoreLoad is what SteadyShore, the figure against the 80 % rule, measures.
const (
	ShoreLoad   = "125 V load, all at once"
	SteadyShore = "power.shore"
)

// inlet gives two figures: the breaker's rating, which stops, and the 80 %
// rule for loads that run for hours, which asks for a decision.
func (s *Sheet) inlet(b *vehicle) {
	a := float64(s.Shore.LoadA)
	full := config.Figure{Code: "power.inlet", Label: ShoreLoad + ", against the inlet's breaker", Value: a,
		Low: a, High: a, Unit: quantity.Amp,
		Limit: float64(s.Shore.RatedA), Sense: config.AtMost, Source: "rating of the shore line inlet",
		Basis: config.Rating}
	steady := full
	steady.Code, steady.Label = SteadyShore, ShoreLoad+", against 80 % of the inlet"
	steady.Limit *= ContinuousShare
	steady.Source, steady.Basis = "80 % rule for continuous loads", config.CommonPractice
	s.Figures = append(s.Figures, steady, full)
	const remedy = "Choose a larger inlet or a second one, or fewer 125 V loads."
	switch {
	case !full.Met() && s.Shore.RatedA <= 0:
		s.add(config.Finding{Code: full.Code, Severity: config.Stop, Figure: &full, Basis: full.Basis,
			Text:   fmt.Sprintf("The unit has 125 V loads of %.0f W and no shore line inlet.", float64(s.Shore.LoadW)),
			Remedy: "Choose a shore line inlet."})
	case !full.Met():
		s.add(config.Finding{Code: full.Code, Severity: config.Stop, Figure: &full, Basis: full.Basis,
			Text: fmt.Sprintf("Together the 125 V loads draw %.1f A; the inlet's breaker opens above %.0f A.", a,
				full.Limit), Remedy: remedy})
	case !steady.Met():
		s.add(config.Finding{Code: steady.Code, Severity: config.Warn, Figure: &steady, Basis: steady.Basis,
			Text: fmt.Sprintf("Together the 125 V loads draw %.1f A, more than the %.1f A that the inlet should "+
				"carry for hours.", a, steady.Limit), Remedy: remedy})
	}
}

func (s *Sheet) inverter(b *vehicle) {
	w := float64(s.Inverter.LoadW)
	s.rated(config.Figure{Code: "power.inverter", Label: "125 V load on the inverter, all at once", Value: w,
		Unit: quantity.Watt, Limit: float64(s.Inverter.RatedW), Source: "continuous rating of the inverter"},
		fmt.Sprintf("The loads the inverter may feed add up to %.0f W; it gives %.0f W, so not all can run at once.",
			w, float64(s.Inverter.RatedW)), "Choose a larger inverter, or keep some loads for the shore line.")
}

// rated adds a load that its source's rating must carry, and warns where it does not.
func (s *Sheet) rated(f config.Figure, text, remedy string) {
	f.Low, f.High, f.Sense, f.Basis = f.Value, f.Value, config.AtMost, config.Rating
	s.Figures = append(s.Figures, f)
	if !f.Met() {
		s.add(config.Finding{Code: f.Code, Severity: config.Warn, Figure: &f, Basis: f.Basis, Text: text,
			Remedy: remedy})
	}
}
