package power

import (
	"math"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

// circuits adds the schedule to the sheet, and what it keeps.
func (s *Sheet) circuits(b *vehicle) {
	var findings []config.Finding
	s.Circuits, findings = b.schedule(UsualWiring())
	s.Findings = append(s.Findings, findings...)
	for _, f := range wired(s.Circuits) {
		b.Assume.Bind(&f)
		s.Figures = append(s.Figures, f)
	}
}

// Rewire makes the schedule anew in another way than the usual one.
func (s *Sheet) Rewire(cat *config.Catalogue, u *config.Unit, w Wiring) {
	var findings []config.Finding
	s.Circuits, findings = Circuits(cat, u, w)
	s.Findings = append(slices.DeleteFunc(s.Findings, func(f config.Finding) bool {
		return slices.Contains([]string{"power.circuit-unsized", "power.no-fuse", "power.no-conductor"}, f.Code)
	}), findings...)
	for _, f := range wired(s.Circuits) {
		i := slices.IndexFunc(s.Figures, func(x config.Figure) bool { return x.Code == f.Code })
		if i >= 0 {
			s.Figures[i].Value, s.Figures[i].Low, s.Figures[i].High = f.Value, f.Low, f.High
		}
	}
}

// wired is what a schedule keeps in its worst circuits: what the wire may carry in percent
// of its fuse, nothing where none serves, and the voltage drop in percent of nominal.
func wired(list []Conductor) []config.Figure {
	carry, drop := math.Inf(1), 0.0
	for i := range list {
		if c := &list[i]; c.FuseA > 0 {
			carry, drop = math.Min(carry, 100*c.CarryA/c.FuseA), math.Max(drop, c.DropPct)
		}
	}
	if math.IsInf(carry, 1) {
		return nil
	}
	return []config.Figure{
		{Code: "power.wire-carry", Label: "Least that the wire of a circuit may carry, of its fuse", Value: carry,
			Low: carry, High: carry, Unit: quantity.Percent},
		{Code: "power.wire-drop", Label: "Greatest voltage drop of a circuit, of 12 V", Value: drop, Low: drop,
			High: drop, Unit: quantity.Percent},
	}
}
