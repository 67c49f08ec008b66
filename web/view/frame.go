package view

import (
	"math"
	"slices"
	"strconv"

	"boxwright/config"
	"boxwright/config/quantity"
	. "boxwright/web/view/markup"
)

func masthead(p *Page) Part {
	d := p.Q.Draft
	who := d.Buyer.Name
	if who == "" {
		who = "No buyer named yet"
	}
	number := d.Number
	if number == "" {
		number = "not numbered"
	}
	kept := "kept in this browser"
	if !p.Kept {
		kept = "NOT kept: this browser refuses storage"
	}
	theme := p.State.Theme
	return Many(
		El("p", Class("brand"), Text("Boxwright")),
		El("p", Class("subject"), El("b", Text(subject(p))), Text(" · "+who+" · quote "+number), El("span", Class("small"), Text(" · "+kept))),
		El("div", Class("tools"),
			action("undo", "", "", "Undo", At("aria-disabled", strconv.FormatBool(p.Undo == 0)), At("title", "Ctrl Z")),
			action("redo", "", "", "Redo", At("aria-disabled", strconv.FormatBool(p.Redo == 0)), At("title", "Ctrl Y")),
			action("units", "", "", map[bool]string{false: "US units", true: "Metric"}[p.State.Metric], At("aria-label", "Units shown: press to change"), At("title", "Press for the other system")),
			El("select", At("id", "f-theme"), At("data-act", "theme"), At("aria-label", "Appearance"),
				options(theme, []choice{{"", "As the device"}, {"light", "Light"}, {"dark", "Dark"}, {"contrast", "High contrast"}})),
			action("quotes", "", "", "Kept quotes", At("id", "go-quotes")),
			action("print", "", "", "Print"),
		),
	)
}

func areas(p *Page) Part {
	return El("ol", Each(Areas, func(_ int, a Area) Part {
		here := a.ID == AreaByID(p.State.Area).ID
		var state Part
		if a.codes != nil {
			state = mark(worst(p.Q.Findings, a.codes))
		} else {
			state = El("span", Class("mark"))
		}
		return El("li", action("go", a.ID, "", "", At("id", "area-"+a.ID), If(here, At("aria-current", "page")),
			state, El("span", Class("name"), Text(a.Name)), El("span", Class("gist"), Text(a.gist(p)))))
	}))
}

// gauges are the figures that stand beside every area, in this order.
var gauges = []struct{ code, label string }{
	{"weight.payload-left", "Payload left, loaded"},
	{"weight.front-axle", "Front axle"},
	{"weight.rear-axle", "Rear axle"},
	{"power.idle", "Amps at hot idle"},
}

func standing(p *Page) Part {
	q := p.Q
	return Many(summaryLine(p), El("div", Class("inner"), At("tabindex", "0"), At("role", "region"), At("aria-label", "Figures and what is to settle"),
		El("h2", Text("Where it stands")),
		El("div", Class("gauges"), Each(gauges, func(_ int, g struct{ code, label string }) Part {
			f, ok := q.Figure(g.code)
			if !ok {
				return nil
			}
			f.Label = g.label
			return gauge(p, f)
		})),
		learned(p),
		El("h3", Text("Delivery")),
		El("dl",
			El("dt", Text("Even odds")), El("dd", Text(q.Plan.EvenOdds.Long())),
			El("dt", Text("Nine in ten")), El("dd", Text(q.Plan.NineInTen.Long())),
		),
		El("h3", Text("Price")),
		El("p", Class("big"), Text(q.Total())),
		standingFindings(p),
		wordsOf("standing"),
	))
}

// summaryLine stays in sight at the foot of a narrow screen.
func summaryLine(p *Page) Part {
	cell := func(label, value string, s config.Severity) Part {
		return El("span", El("small", mark(s), Text(" "+label)), El("b", Text(value)))
	}
	out := []Part{Class("line"), At("aria-hidden", "true")} // the same is read out from below
	for _, g := range gauges[:2] {
		if f, ok := p.Q.Figure(g.code); ok {
			v := f.Value
			if f.Sense != "" {
				v = f.Margin()
			}
			out = append(out, cell([]string{"Payload left", "Front axle"}[min(len(out)-2, 1)], p.show(v, f.Unit), severityOf(f)))
		}
	}
	out = append(out, cell("Delivery", p.Q.Plan.EvenOdds.Short(), worst(p.Q.Findings, []string{"time"})), cell("Price", p.Q.Price.Total.Show(), worst(p.Q.Findings, []string{"price"})))
	return El("div", out...)
}

func gauge(p *Page, f config.Figure) Part {
	var under Part
	value := p.show(f.Value, f.Unit)
	if f.Sense != "" {
		word := "to spare"
		if !f.Met() {
			word = "over"
			if f.Sense == config.AtLeast {
				word = "short"
			}
		}
		value = p.show(math.Abs(f.Margin()), f.Unit) + " " + word
		under = El("div", Class("under"), El("span", Text(p.show(f.Value, f.Unit))), El("span", Text(string(f.Sense)+" "+p.show(f.Limit, f.Unit))))
	}
	return El("div", Class("gauge"),
		El("div", Class("line"), El("span", Text(f.Label)), El("span", Class("value"), mark(severityOf(f)), Text(" "+value))),
		bar(f), under)
}

// standingFindings shows what stops the unit, then what needs a decision.
func standingFindings(p *Page) Part {
	var urgent []config.Finding
	for _, f := range p.Q.Findings {
		if f.Severity != config.Note {
			f.Remedy, f.Basis, f.Clause = "", "", "" // those stand in its area
			urgent = append(urgent, f)
		}
	}
	const shown = 6
	rest := len(urgent) - shown
	if rest > 0 {
		urgent = slices.Clone(urgent[:shown])
	}
	return Many(
		El("h2", Text("To settle")),
		findings(p, urgent, "Nothing stands in the way."),
		If(rest > 0, El("p", Class("small soft"), Text("and "+count(rest, "more, in its area", "more, in their areas")))),
	)
}

// Live is the sentence read out after a change.
func Live(p *Page) string {
	text := ""
	if p.GuidedOn {
		text = p.instruction() + " "
	}
	if p.Notice != "" {
		text = p.Notice + " "
	}
	if f, ok := p.Q.Figure("weight.payload-left"); ok {
		text += "Payload left " + p.show(f.Value, quantity.Pound) + ". "
	}
	return text + "Delivery " + p.Q.Plan.EvenOdds.Long() + ". Price " + p.Q.Total() + "."
}
