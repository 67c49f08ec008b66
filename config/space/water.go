package space

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/quantity"
)

// water holds what a unit washes people with against what it takes back.
func (s *Sheet) water(b *vehicle) {
	fresh, waste, flow := 0.0, 0.0, 0.0
	for _, p := range b.Picks {
		if w := p.Water; w != nil {
			fresh += config.Clean(w.FreshGal) * float64(p.Qty)
			waste += config.Clean(w.WasteGal) * float64(p.Qty)
			flow += config.Clean(w.FlowGPM) * float64(p.Qty)
		}
	}
	if !(fresh > 0 && flow > 0) {
		return
	}
	record(s, b, "space.water", "Shower water, tanks full", fresh, quantity.Gallon)
	record(s, b, "space.water-minutes", fmt.Sprintf("Shower at %.0f gal a minute lasts", flow), fresh/flow,
		quantity.Minute)
	f := config.Figure{Code: "space.waste", Label: "Waste tanks, against all the water carried", Value: waste,
		Low: waste, High: waste, Unit: quantity.Gallon, Limit: fresh, Sense: config.AtLeast, Source: "water carried",
		Basis: config.Computed}
	s.Figures = append(s.Figures, f)
	if !f.Met() {
		s.add(config.Finding{Code: f.Code, Severity: config.Warn, Figure: &f, Basis: f.Basis,
			Text:   fmt.Sprintf("The waste tanks take %s of the %s carried.", show(waste, f.Unit), show(fresh, f.Unit)),
			Remedy: "Choose a larger waste tank or less water."})
	}
}
