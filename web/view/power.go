package view

import (
	"boxwright/config/power"
	"boxwright/config/quantity"
	. "boxwright/web/view/markup"
)

func gistPower(p *Page) string {
	f, ok := p.Q.Figure("power.remaining")
	if !ok {
		return "not known"
	}
	return p.show(f.Value, f.Unit) + " left when hot"
}

func powerArea(p *Page) Part {
	s := p.Q.Power
	amps := func(a quantity.Current) Part { return Text(p.show(float64(a), quantity.Amp)) }
	modes := table{caption: "12 V load by duty mode", heads: []string{"Mode", ">Load", ">Alternator, hot", ">Remaining"}}
	for _, m := range s.Modes {
		supply, left := Text("shore line"), Text("–")
		if m.SupplyA > 0 {
			supply, left = amps(m.SupplyA), amps(m.RemainingA)
		}
		modes.rows = append(modes.rows, []Part{Text(m.Label), amps(m.LoadA), supply, left})
	}
	return Many(
		heading("Power", "Whether the alternator carries the load when it is hot, how long the batteries last without it, and what the shore line feeds."),
		findings(p, s.Findings, "The 12 V and 125 V supplies carry the unit."),
		block("Against the supply", figures(p, "Power figures", s.Figures)),
		block("Duty modes", loadBars(p), modes.draw()),
		El("div", Class("columns"),
			battery(p),
			mains(p, "Shore line, 125 V", s.Shore, p.show(float64(s.Shore.RatedA), quantity.Amp)+" inlet, 80 % for a steady load"),
			mains(p, "Inverter, 125 V", s.Inverter, p.show(float64(s.Inverter.RatedW), quantity.Watt)+" continuous"),
		),
		Each(s.Modes, func(_ int, m power.Mode) Part { return modeItems(p, m) }),
		cautions(power.Caution),
	)
}

func modeItems(p *Page, m power.Mode) Part {
	t := table{caption: m.Label, heads: []string{"Load", ">Current"}}
	for _, it := range m.Items {
		t.rows = append(t.rows, []Part{Text(it.Label), Text(p.show(float64(it.Amps), quantity.Amp))})
	}
	t.sums = append(t.sums, []Part{Text("Together"), Text(p.show(float64(m.LoadA), quantity.Amp))})
	return fold(m.Code, "Loads: "+m.Label+" ("+p.show(float64(m.LoadA), quantity.Amp)+")", t.draw())
}

func battery(p *Page) Part {
	s := p.Q.Power
	t := table{caption: "With the engine off", heads: []string{"Shed", ">Load left", ">Lasts"}}
	t.rows = append(t.rows, []Part{Text("nothing"), Text(p.show(float64(s.Battery.LoadA), quantity.Amp)), Text(p.show(s.Battery.Minutes, quantity.Minute))})
	for _, x := range s.Shed {
		names := ""
		for i, it := range x.Items {
			if i > 0 {
				names += ", "
			}
			names += it.Label
		}
		t.rows = append(t.rows, []Part{Text("and " + names), Text(p.show(float64(x.LeftA), quantity.Amp)), Text(p.show(x.Minutes, quantity.Minute))})
	}
	return block("Batteries: "+p.show(float64(s.Battery.AmpHours), quantity.AmpHour), t.draw(),
		El("p", Class("how"), Text("Peukert's law with exponent 1.2 and half of the capacity kept for starting: common practice, no source.")))
}

func mains(p *Page, title string, m power.Mains, rating string) Part {
	t := table{caption: rating, heads: []string{"Load", ">Power"}}
	for _, it := range m.Items {
		t.rows = append(t.rows, []Part{Text(it.Label), Text(p.show(float64(it.Watts), quantity.Watt))})
	}
	t.sums = append(t.sums, []Part{Text("Together"), Text(p.show(float64(m.LoadW), quantity.Watt) + ", " + p.show(float64(m.LoadA), quantity.Amp))})
	return block(title, t.draw())
}
