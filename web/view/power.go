package view

import (
	"strconv"
	"strings"

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
	modes := table{caption: "12 V load by duty mode", class: "cards", heads: []string{"Mode", ">Load", ">Alternator, hot", ">Remaining"}}
	for _, m := range s.Modes {
		supply, left := "shore line", "–"
		if m.SupplyA > 0 {
			supply, left = p.amps(m.SupplyA), p.amps(m.RemainingA)
		}
		modes.rows = append(modes.rows, texts(m.Label, p.amps(m.LoadA), supply, left))
	}
	return Many(
		heading("Power", "Whether the alternator carries the load when it is hot, how long the batteries last without it, and what the shore line feeds."),
		findings(p, s.Findings, "The 12 V and 125 V supplies carry the unit."),
		block("Duty modes", El("div", Class("columns"), loadBars(p), El("div", modes.draw(), tag(p)))),
		block("Against the supply", figures(p, "Power figures", s.Figures)),
		El("div", Class("columns"), battery(p), El("div",
			mains(p, "Shore line, 125 V", s.Shore, p.amps(s.Shore.RatedA)+" inlet", "the inlet"),
			mains(p, "Inverter, 125 V", s.Inverter, p.show(float64(s.Inverter.RatedW), quantity.Watt)+" continuous", "the inverter"),
		)),
		circuits(p),
		Each(s.Modes, func(_ int, m power.Mode) Part { return modeItems(p, m) }),
		cautions(power.Caution),
	)
}

func (p *Page) amps(a quantity.Current) string { return p.show(float64(a), quantity.Amp) }

// tag is what the specification asks to be posted in the unit.
func tag(p *Page) Part {
	f, ok := p.Q.Figure("power.remaining")
	if !ok {
		return nil
	}
	return El("div", Class("plate"), At("role", "group"), At("aria-label", "Tag for the unit"),
		El("p", Text("Generating capacity remaining at 200 F after the total load as built, options included")),
		El("p", Class("plate-figure"), Text(p.show(f.Value, f.Unit))),
		El("p", Class("small"), Text(subject(p)+" · "+p.amps(p.Q.Power.Hot.HighIdleA)+" at high idle · computed for the quote of "+p.Q.Draft.Date.Long()+"; the test of the finished unit decides what is engraved.")))
}

func modeItems(p *Page, m power.Mode) Part {
	t := table{caption: m.Label, heads: []string{"Load", ">Current", ">Shed"}}
	for _, it := range m.Items {
		shed := "never"
		if it.Shed > 0 {
			shed = strconv.Itoa(it.Shed)
		}
		t.rows = append(t.rows, texts(it.Label, p.amps(it.Amps), shed))
	}
	t.sums = append(t.sums, texts("Together", p.amps(m.LoadA), ""))
	return fold(m.Code, "Loads: "+m.Label+" ("+p.amps(m.LoadA)+")", t.draw())
}

func battery(p *Page) Part {
	s := p.Q.Power
	minutes := func(v float64) string {
		if v <= 0 {
			return "not known"
		}
		return p.show(v, quantity.Minute)
	}
	t := table{caption: "Scene load with the engine off, shedding in this order", heads: []string{"Step", ">Load left", ">Lasts"}}
	t.rows = append(t.rows, texts("Everything on", p.amps(s.Battery.LoadA), minutes(s.Battery.Minutes)))
	for _, x := range s.Shed {
		var names []string
		for _, it := range x.Items {
			names = append(names, it.Label)
		}
		t.rows = append(t.rows, texts(strconv.Itoa(x.Order)+". Shed "+strings.Join(names, "; "), p.amps(x.LeftA), minutes(x.Minutes)))
	}
	return block("Batteries: "+p.show(float64(s.Battery.AmpHours), quantity.AmpHour), t.draw(),
		El("p", Class("how"), Text("By Peukert's law with an exponent of 1.2 (the likely range from 1.1 to 1.3), half of the capacity kept for starting: common practice, no source.")))
}

// mains is one 125 V supply with what it may have to feed at once.
func mains(p *Page, title string, m power.Mains, rating, of string) Part {
	t := table{caption: rating, heads: []string{"Load", ">Power", ">Current"}}
	row := func(label string, w quantity.Power) []Part {
		return texts(label, p.show(float64(w), quantity.Watt), p.amps(quantity.Current(w/power.MainsVolts)))
	}
	for _, it := range m.Items {
		t.rows = append(t.rows, row(it.Label, it.Watts))
	}
	t.sums = append(t.sums, row("Together", m.LoadW))
	if m.RatedA > 0 {
		steady := quantity.Power(power.ContinuousShare * power.MainsVolts * float64(m.RatedA))
		t.sums = append(t.sums, row("80 % of "+of+", for a steady load", steady), row("Left of that", steady-m.LoadW))
	}
	return block(title, t.draw())
}

// circuits is the schedule by which the unit is wired and marked.
func circuits(p *Page) Part {
	w := p.Q.Draft.Wiring
	usual := w.Sizing()
	percent := func(v float64) string {
		if v == 0 {
			return ""
		}
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	t := table{caption: "Circuit schedule, conductor areas by " + usual.Areas.Name, class: "cards", heads: []string{"Wire and marking", ">Load", ">Run", ">Fuse", ">Conductor", ">Drop"}}
	for _, c := range p.Q.Power.Circuits {
		size := c.Gauge
		if size == "" {
			size = "none serves"
		}
		limit := percent(c.LimitPct) + " % allowed; " + p.show(c.HotV, quantity.Volt) + " at 75 C"
		if c.Critical {
			limit = "critical: " + limit
		}
		note := func(text, small string) Part { return Many(Text(text), El("span", Class("how"), Text(small))) }
		run := quantity.Group(c.RunFt, 0) + " ft"
		if p.State.Metric {
			run = quantity.Group(c.RunFt*0.3048, 1) + " m"
		}
		t.rows = append(t.rows, []Part{
			Many(El("b", Text(c.Number)), Text(" "+strings.ToUpper(c.Function))), Text(p.amps(c.Amps)), Text(run), Text(percent(c.FuseA) + " A"),
			note(size, map[bool]string{true: "by " + c.Decided}[c.Decided != ""]), note(p.show(c.DropV, quantity.Volt)+", "+p.show(c.DropPct, quantity.Percent), limit),
		})
	}
	return fold("circuits", "Circuit schedule ("+count(len(t.rows), "circuit", "circuits")+")",
		El("div", Class("fields screen"),
			choose(p, "wiring.areas", "Conductor areas", w.Areas, "The same number holds 5 to 12 % less copper in an automotive cable", []choice{{"", power.SAE.Name}, {"awg", power.AWG.Name}}),
			number(p, "wiring.drop", "Voltage drop allowed", percent(w.DropPct), "%", "Empty takes 10 %, common practice"),
			number(p, "wiring.critical", "Drop allowed for critical circuits", percent(w.CriticalPct), "%", "Empty takes 3 %, common practice"),
		),
		El("p", Class("how"), Text("Mark every wire with its number and function every 4 in. Fuse: next standard size above 125 % of the load. Wire: carries 125 % of the fuse and keeps the drop, out and back. Ampacities of 125 C cross-linked insulation and the fuse sizes are from memory: defaults for quoting.")),
		t.draw())
}
