// Package power is the Power area: the 12 V and 125 V supplies and the circuits.
package power

import (
	"math"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/web/areas"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "power",
	Name:     "Power",
	Section:  areas.Check,
	Codes:    []string{"power"},
	Gist:     gist,
	Words:    words,
	Load:     load,
	Fields:   fields,
	Families: families,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
}

func gist(p *page.Page) string {
	f, ok := p.Q.Figure("power.remaining")
	if !ok {
		return "not known"
	}
	return p.Show(f.Value, f.Unit) + " left when hot"
}

func draw(p *Page) Part {
	s := p.Q.Power
	return Many(
		page.Heading("Power", "Whether the alternator carries the load when it is hot, how long the "+
			"batteries last without it, and what the shore line feeds."),
		page.Found(p.Page, s.Findings, "The 12 V and 125 V supplies carry the unit."),
		page.Block("Duty modes", El("div", Class("columns"), loadBars(p), tag(p))),
		page.Block("Against the supply", page.Figures(p.Page, "power", "Power figures", s.Figures)),
		El("div", Class("columns thirds"), battery(p),
			mains(p, "Shore line, 125 V", s.Shore, p.amps(s.Shore.RatedA)+" inlet", "the inlet"),
			mains(p, "Inverter, 125 V", s.Inverter, p.Show(float64(s.Inverter.RatedW), quantity.Watt)+" continuous",
				"the inverter")),
		circuits(p),
		page.Factors(p.Page, "power", "What the currents and minutes are based on. The plant's values replace the "+
			"usual ones; what is set here holds for this unit and travels with the quote."),
		El("div", Class("columns halves"),
			Each(s.Modes, func(_ int, m power.Mode) Part { return modeItems(p, m) })),
		page.Cautions(power.Caution),
	)
}

func (p *Page) amps(a quantity.Current) string { return p.Show(float64(a), quantity.Amp) }

// tag is what the specification asks to be posted in the unit.
func tag(p *Page) Part {
	f, ok := p.Q.Figure("power.remaining")
	if !ok {
		return nil
	}
	return El("div", Class("plate"), page.Group("Tag for the unit"),
		El("p", Text("Generating capacity remaining at 200 F after the total load as built, options included")),
		El("p", Class("plate-figure"), Text(p.Show(f.Value, f.Unit))),
		El("p", Class("small"),
			Text(page.Subject(p.Page)+" · "+p.amps(p.Q.Power.Hot.HighIdleA)+
				" at high idle · computed for the quote of "+p.Q.Draft.Date.Long()+
				"; the test of the finished unit decides what is engraved.")))
}

func modeItems(p *Page, m power.Mode) Part {
	t := page.Table{Caption: m.Label, Heads: []string{"Load", ">Current", ">Shed"}}
	for _, it := range m.Items {
		shed := "never"
		if it.Shed > 0 {
			shed = strconv.Itoa(it.Shed)
		}
		t.Rows = append(t.Rows, page.Texts(it.Name(), p.amps(it.Amps), shed))
	}
	t.Sums = append(t.Sums, page.Texts("Total", p.amps(m.LoadA), ""))
	return page.Fold(m.Code, "Loads: "+m.Label+" ("+p.amps(m.LoadA)+")", t.Draw())
}

func battery(p *Page) Part {
	b := p.Q.Power.Battery
	name, feeds := "Batteries: ", "These batteries start the engine too; the rest is kept for that."
	if b.House {
		name, feeds = "House batteries: ", "They feed the module alone."
	}
	if b.Kept > 0 {
		feeds += " " + p.Show(float64(b.Kept), quantity.AmpHour) + " more only start the engine."
	}
	how := feeds
	if b.Minutes > 0 {
		how = "Likely " + page.Between(p.Page, b.Low, b.High, quantity.Minute) +
			". Engine off, at " + p.Show(b.Volts, quantity.Volt) + ", without what only a running engine needs. " +
			p.Show(100*b.Usable, quantity.Percent) + " of the capacity is used, by Peukert's law with an exponent of " +
			strconv.FormatFloat(math.Round(100*b.Exponent)/100, 'f', -1, 64) + " (" + b.Chemistry + "). " + feeds
	}
	return page.Fold("battery", name+p.Show(float64(b.AmpHours), quantity.AmpHour), page.SheddingTable(p.Page),
		El("p", Class("how"), Text(how)))
}

// mains is one 125 V supply with what it may have to feed at once.
func mains(p *Page, title string, m power.Mains, rating, rated string) Part {
	t := page.Table{Caption: rating, Heads: []string{"Load", ">Power", ">Current"}}
	row := func(label string, w quantity.Power) []Part {
		return page.Texts(label, p.Show(float64(w), quantity.Watt), p.amps(quantity.Current(w/power.MainsVolts)))
	}
	for _, it := range m.Items {
		t.Rows = append(t.Rows, row(it.Label, it.Watts))
	}
	t.Sums = append(t.Sums, row("Total", m.LoadW))
	if m.RatedA > 0 {
		steady := quantity.Power(power.ContinuousShare * power.MainsVolts * float64(m.RatedA))
		t.Sums = append(t.Sums, row("80 % of "+rated+", for continuous loads", steady),
			row("Left of it", steady-m.LoadW))
	}
	return page.Fold("mains-"+strings.ToLower(title[:5]), title, t.Draw())
}

// areaTable names the table by which conductors are sized.
func areaTable(id string) string {
	if id == "awg" {
		return power.AWG.Name
	}
	return power.SAE.Name
}

// circuits is the schedule by which the unit is wired and marked.
func circuits(p *Page) Part {
	w, share := p.Q.Draft.Wiring, func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) + " %" }
	allowed := func(code string) string { return share(p.Q.Assume.Factor(code)) }
	t := page.Table{Caption: "Circuit schedule, conductor areas by " + areaTable(w.Areas), Class: "cards",
		Heads: []string{"Wire and marking", ">Load", ">Run", ">Fuse", ">Conductor", ">Drop at 30 C"}}
	for _, c := range p.Q.Power.Circuits {
		size := c.Wire()
		if size == "" {
			size = "none fits"
		}
		limit := share(c.LimitPct) + " allowed; hot, at 75 C: " + p.Show(c.HotV, quantity.Volt)
		if c.Critical {
			limit = "critical: " + limit
		}
		note := func(text, small string) Part { return Many(Text(text), El("span", Class("how"), Text(small))) }
		run := quantity.Group(c.RunFt, 0) + " ft"
		if p.Metric {
			run = quantity.Group(c.RunFt*0.3048, 1) + " m"
		}
		t.Rows = append(t.Rows, []Part{
			Many(El("b", Text(c.Number)), Text(" "+strings.ToUpper(c.Function))), Text(p.amps(c.Amps)), Text(run),
			Text(c.Fuse() + " A"),
			note(size, page.Either(c.Decided != "", "by "+c.Decided, "")), note(p.Show(c.DropV, quantity.Volt)+
				", "+p.Show(c.DropPct, quantity.Percent), limit),
		})
	}
	return page.Fold("circuits", "Circuit schedule ("+page.Count(len(t.Rows), "circuit", "circuits")+")",
		El("div", Class("fields screen"),
			page.Choose(p.Page, "wiring.areas", "Conductor areas", w.Areas, "The same number holds 5 to 12 % less "+
				"copper in an automotive cable", []page.Choice{{"", power.SAE.Name}, {"awg", power.AWG.Name}}),
		),
		El("p", Class("how"),
			Text("Mark every wire with its number and function every 4 in. Fuse: next standard size above 125 % of "+
				"the load. Wire: carries 125 % of the fuse and keeps the drop, out and back: "+allowed(config.WireDrop)+
				", and "+allowed(config.CriticalDrop)+" in main feeds, for medical devices, radios and brakes, and "+
				"where a patient is moved or air kept clean (both are assumed factors, below), in copper at some 30 C; "+
				"the drop in a hot wire, at 75 C, is given for comparison. Ampacities of 125 C "+
				"cross-linked insulation, the fuse sizes and conductors side by side (1/0 and larger, alike in "+
				"size and "+
				"length) are from memory: defaults for quoting.")),
		t.Draw())
}
