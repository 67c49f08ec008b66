package power

import (
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
)

const wireDrop = "power.wire-drop"

// circuits adds the schedule to the sheet, and what it keeps.
func (s *Sheet) circuits(b *vehicle) {
	var findings []config.Finding
	s.Circuits, findings = b.schedule(WiringOf(b.Assume))
	s.Findings = append(s.Findings, findings...)
	for _, f := range wired(s.Circuits) {
		b.Assume.Bind(&f)
		if f.Code == wireDrop { // Source: that of WiringOf
			b.Assume.Assume(&f, config.WireDrop, config.AtMost, "voltage drop of what is not critical")
		}
		s.Figures = append(s.Figures, f)
	}
}

// Rewire makes the schedule anew by another table of conductors.
func (s *Sheet) Rewire(cat *config.Catalogue, u *config.Unit, w Wiring) {
	var findings []config.Finding
	s.Circuits, findings = Circuits(cat, u, w)
	s.Findings = append(slices.DeleteFunc(s.Findings, func(f config.Finding) bool {
		return slices.Contains([]string{"power.circuit-unsized", "power.no-fuse", "power.no-conductor"}, f.Code)
	}), findings...)
	for _, f := range wired(s.Circuits) {
		i := slices.IndexFunc(s.Figures, func(x config.Figure) bool { return x.Code == f.Code })
		if i >= 0 {
			was := &s.Figures[i]
			was.Label, was.Value, was.Low, was.High = f.Label, f.Value, f.Low, f.High
		}
	}
}

// wired is what a schedule keeps in its worst circuits, which it names: what the wire may
// carry in percent of its fuse, nothing where none fits, and the voltage drop in percent
// of nominal.
func wired(list []Conductor) []config.Figure {
	var carry, drop config.Figure
	worst := func(code, label string, c *Conductor, v float64) config.Figure {
		return config.Figure{Code: code, Label: label + ": " + c.Number + " " + c.Function, Value: v, Low: v, High: v,
			Unit: quantity.Percent}
	}
	for i := range list {
		c := &list[i]
		if !(c.FuseA > 0) {
			continue
		}
		if v := 100 * c.CarryA / c.FuseA; carry.Code == "" || v < carry.Value {
			carry = worst("power.wire-carry", "Wire against its fuse, worst", c, v)
		}
		if drop.Code == "" || c.DropPct > drop.Value {
			drop = worst(wireDrop, "Voltage drop, worst", c, c.DropPct)
		}
	}
	if carry.Code == "" {
		return nil
	}
	return []config.Figure{carry, drop}
}
