// Package start is the Start area: a quote begins with a need, a chassis or a link.
package start

import (
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/web/areas"
	"boxwright/web/guide"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "start",
	Name:     "Start",
	Section:  areas.Ask,
	Gist:     func(p *page.Page) string { return "begin or open one" },
	Words:    words,
	Load:     load,
	Acts:     acts,
	Families: families,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	View           *session.View
	Guide          *guide.Page
	Mountings      []quote.Mounting // the existing module on every chassis, while asked for
	MountingsKnown bool             // else they are still worked out
}

func load(s *session.Session, p *page.Page, w *session.Worked) func() Part {
	v := &Page{Page: p, View: s.View, Guide: guide.Load(s, p)}
	loadMountings(s, v, w)
	return func() Part { return draw(v) }
}

func draw(p *Page) Part {
	choice := func(title, text string, tools ...Part) Part {
		return El("section", Class("block"), El("h2", Text(title)), El("p", Text(text)),
			El("div", Class("row-tools"), Many(tools...)))
	}
	return Many(
		guide.Offer(p.Guide),
		page.Heading("Start", "A quote begins in one of three ways."),
		El("div", Class("fields named"), page.Field(p.Page, "title", "Unit name or number", p.Q.Draft.Title, "")),
		El("div", Class("starts"),
			choice("With a need", "Say what the unit must do and what it may cost. You get up to three complete units "+
				"that can be built.",
				page.Action("go", "needs", "", "Say what it must do", Class("main"), At("id", "start-needs"))),
			choice("With a chassis", "Pick one below. It comes complete with what is standard; change what you like.",
				El("a", Class("button way"), At("href", "#begin"), At("id", "start-chassis"), Text("Pick a chassis"))),
			El("section", Class("block"), El("h2", Text("With a link or a file")),
				page.Field(p.Page, "open-link", "Paste a link you were sent", "",
					"The quote showing now stays saved, and is added to Compare"),
				El("div", Class("row-tools"),
					page.FileButton("f-draft", "open-draft", "Open a quote file…", ".json,application/json"),
					page.Action("quotes", "", "", "Saved quotes", At("id", "start-saved"))))),
		begin(p),
		remount(p),
	)
}

// unbroken is a short text that stays on one line.
func unbroken(text string) Part { return El("span", Class("nowrap"), Text(text)) }

// begin offers to start afresh on each chassis.
func begin(p *Page) Part {
	cat := p.Q.Edition.Cat
	t := page.Table{Caption: "Chassis", Class: "cards",
		Heads: []string{"Chassis", "Type", ">GVWR", ">Wheelbase", "Drive", ""}}
	for i := range cat.Chassis {
		c := &cat.Chassis[i]
		here := c.ID == p.Q.Draft.Unit.Chassis
		state := page.Action("new", c.ID, "", "", At("id", "begin-"+c.ID), page.Named("Begin on this", c.Label))
		if here {
			state = Many(El("span", Class("tag mine"), Text("showing now")), Text(" "),
				page.Action("new", c.ID, "", "", At("id", "begin-"+c.ID), Class("quiet"),
					page.Named("begin again", "on "+c.Label)))
		}
		t.Rows = append(t.Rows, []Part{Text(c.Label), unbroken(c.Type), Text(p.Show(float64(c.GVWRLb), quantity.Pound)),
			Text(p.Show(float64(c.WheelbaseIn), quantity.Inch)), unbroken(c.Drive + " " + c.Fuel), state})
	}
	return page.Block("Begin on a chassis",
		El("p", Class("lead"), At("id", "begin"), At("tabindex", "-1"),
			Text("A new unit comes complete with what is standard. Undo brings the earlier one back.")), t.Draw(),
		El("p", Class("how"), Text("From: "+p.Q.Edition.Cat.Title+", edition "+p.Q.Edition.Cat.Edition+". "+
			p.Q.Edition.Cat.Notice)),
		guide.Again(p.Guide))
}
