package view

import (
	"boxwright/config/quantity"
	. "boxwright/web/view/markup"
)

// loadBars shows each duty mode against the hot alternator at idle and at high
// idle.
func loadBars(p *Page) Part {
	s := p.Q.Power
	const left, right, row = 130.0, 390.0, 20.0
	top := max(float64(s.Hot.HighIdleA), float64(s.Hot.IdleA), 1)
	for _, m := range s.Modes {
		top = max(top, float64(m.LoadA))
	}
	top *= 1.08
	x := func(a quantity.Current) float64 { return left + (right-left)*float64(a)/top }
	var parts []Part
	said := "12 V load by duty mode. Alternator when hot: " + p.show(float64(s.Hot.IdleA), quantity.Amp) + " at idle, " + p.show(float64(s.Hot.HighIdleA), quantity.Amp) + " at high idle."
	for i, m := range s.Modes {
		y := 8 + row*float64(i)
		class := "work"
		if m.SupplyA > 0 && m.LoadA > m.SupplyA {
			class = "over"
		}
		parts = append(parts, words("end", left-5, y+10, m.Label), rect("slot", left, y, right-left, 13), rect(class, left, y, x(m.LoadA)-left, 13), words("strong", x(m.LoadA)+3, y+10, p.show(float64(m.LoadA), quantity.Amp)))
		said += " " + m.Label + " " + p.show(float64(m.LoadA), quantity.Amp) + "."
	}
	bottom := 8 + row*float64(len(s.Modes))
	for i, a := range []quantity.Current{s.Hot.IdleA, s.Hot.HighIdleA} {
		name := []string{"hot, idle ", "hot, high idle "}[i]
		parts = append(parts, path("limit", "M"+n(x(a))+" 4V"+n(bottom+4)), words("small mid", x(a), bottom+12+float64(i)*9, name+p.show(float64(a), quantity.Amp)))
	}
	return chart(said, 430, bottom+26, parts)
}

func chart(said string, w, h float64, parts []Part) Part {
	return El("figure", El("svg", Class("drawing chart"), At("role", "img"), At("aria-label", said), At("viewBox", "0 0 "+n(w)+" "+n(h)), Many(parts...)))
}
