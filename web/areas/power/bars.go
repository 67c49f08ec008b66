package power

import (
	"boxwright/config/quantity"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// line is a load, or what the alternator gives.
type line struct {
	label, class string
	amps         quantity.Current
	low, high    float64
}

// saidOf tells the bars: the three lines, and of each load the highest that it passes.
func saidOf(p *Page, lines []line) string {
	said := "What the alternator gives, "
	for i, l := range lines {
		said += l.label + ": " + p.amps(l.amps) + page.Either(i == 2, ". 12 V loads, ", "; ")
		for _, given := range lines[:3] {
			if i > 2 && l.amps > given.amps {
				said = said[:len(said)-2] + ", over " + page.Small(given.label) + "; "
				break
			}
		}
	}
	return said[:len(said)-2] + "."
}

// loadBars are each duty mode's load, with its likely range, across three named lines: what
// the alternator gives hot at idle, hot at high idle and cold by its nameplate.
func loadBars(p *Page) Part {
	s := p.Q.Power
	const left, right, row, named, gap, wide = 4.0, 326.0, 29.0, 15.0, 5.0, 150.0
	lines := []line{
		{"Nameplate, cold", "given", s.Hot.ColdA, 0, 0},
		{"High idle, hot", "given", s.Hot.HighIdleA, 0, 0},
		{"Low idle, hot", "given", s.Hot.IdleA, 0, 0},
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
	head := 4 + named*3 + gap
	foot := head + row*float64(len(s.Modes))
	var parts, over []Part
	y := 4.0
	for i, l := range lines {
		end := x(float64(l.amps))
		value := p.Show(float64(l.amps), quantity.Amp)
		if l.class == "given" {
			path, at := "MV", []float64{end, y, head} // from its name down, and over each bar
			for i := range s.Modes {
				bar := head + row*float64(i) + 11
				path, at = path+"MV", append(at, end, bar-1, bar+10)
			}
			over = append(over, page.Trace("limit", path, at...))
			if end > wide {
				over = append(over, page.Label("strong end", end-4, y+9, l.label+": "+value))
			} else {
				over = append(over, page.Label("strong", end+4, y+9, l.label+": "+value))
			}
			y += named
			if i == 2 {
				y = head
			}
			continue
		}
		parts = append(parts, page.Rect("slot", left, y+13, right-left, 9), page.Rect(l.class, left, y+13, end-left, 9))
		if l.high > l.low {
			over = append(over, page.Trace("range", "MHMVMV", x(l.low), y+17.5, x(l.high), x(l.low), y+14.5, y+20.5,
				x(l.high), y+14.5, y+20.5))
		}
		over = append(over, page.Label("strong", left, y+9, l.label+": "+value))
		y += row
	}
	return El("div", Class("load-chart"), page.Chart(saidOf(p, lines), 330, foot+2, append(parts, over...)))
}
