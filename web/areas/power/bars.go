package power

import (
	"boxwright/config/quantity"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// loadBars sets each duty mode's load, with its likely range, against what the
// alternator gives hot at idle, hot at high idle and cold by its nameplate.
func loadBars(p *Page) Part {
	s := p.Q.Power
	const left, right, row = 4.0, 326.0, 24.0
	type line struct {
		label, class string
		amps         quantity.Current
		low, high    float64
	}
	lines := []line{
		{"Alternator cold, nameplate", "given", s.Hot.ColdA, 0, 0},
		{"Alternator at 200 F, high idle", "given", s.Hot.HighIdleA, 0, 0},
		{"Alternator at 200 F, idle", "given", s.Hot.IdleA, 0, 0},
	}
	for _, m := range s.Modes {
		l := line{m.Label, "work", m.LoadA, 0, 0}
		if f, ok := p.Q.Figure(m.Code); ok {
			l.low, l.high = f.Low, f.High
		}
		if m.SupplyA > 0 && m.LoadA > m.SupplyA {
			l.class = "over"
		}
		lines = append(lines, l)
	}
	top := 1.0
	for _, l := range lines {
		top = max(top, float64(l.amps), l.high)
	}
	x := func(a float64) float64 { return left + (right-left-2)*a/top }
	foot := 4 + row*float64(len(lines))
	said := "12 V loads against the alternator."
	var parts, over []Part
	for i, l := range lines {
		y, end := 4+row*float64(i), x(float64(l.amps))
		value := p.Show(float64(l.amps), quantity.Amp)
		said += " " + l.label + ": " + value + "."
		parts = append(parts, page.Rect("slot", left, y+11, right-left, 9), page.Rect(l.class, left, y+11, end-left, 9))
		if l.class == "given" {
			over = append(over, page.Trace("limit", "MV", end, y+20, foot))
		}
		if l.high > l.low {
			over = append(over, page.Trace("range", "MHMVMV", x(l.low), y+15.5, x(l.high), x(l.low), y+12.5, y+18.5,
				x(l.high), y+12.5, y+18.5))
		}
		over = append(over, page.Label("strong", left, y+9, l.label+": "+value))
	}
	return El("div", Class("load-chart"), page.Chart(said, 330, foot+2, append(parts, over...)))
}
