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

// scheduleChart is a bar for each step from order to delivery, with the steps
// that decide the date in the accent and float as a dashed line.
func scheduleChart(p *Page) Part {
	s := p.Q.Plan
	const left, right, row = 132.0, 460.0, 13.0
	end := 1.0
	for _, st := range s.Steps {
		end = max(end, st.LF, st.EF)
	}
	x := func(d float64) float64 { return left + (right-left)*d/end }
	var parts []Part
	said := "Schedule from " + s.Order.Long() + ". Steps that decide the date:"
	for i, st := range s.Steps {
		y := 6 + row*float64(i)
		class := "work"
		if st.Critical {
			class = "critical"
			said += " " + st.Label + " until " + st.Finish.Long() + ";"
		}
		parts = append(parts, words("small end", left-4, y+8, st.Label), rect("slot", left, y, right-left, 9), rect(class, x(st.ES), y, max(x(st.EF)-x(st.ES), 0.8), 9))
		if st.LF > st.EF+0.05 {
			parts = append(parts, path("float", "M"+n(x(st.EF))+" "+n(y+4.5)+"H"+n(x(st.LF))))
		}
	}
	bottom := 6 + row*float64(len(s.Steps))
	for i := 0; i <= 4; i++ {
		d := end * float64(i) / 4
		parts = append(parts, words("small mid", x(d), bottom+9, quantity.Group(d, 0)))
	}
	parts = append(parts, words("small mid", (left+right)/2, bottom+19, "working days from the order; delivery at even odds "+s.EvenOdds.Long()))
	return chart(said+" delivery at even odds "+s.EvenOdds.Long()+".", 480, bottom+24, parts)
}
