package quote

import (
	"strconv"

	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// drafts lists the quotes saved in this browser, and the states of this one.
func drafts(p *Page) Part {
	t := page.Table{Caption: "Quotes saved on this device", Class: "cards",
		Heads: []string{"Quote", "Number, buyer and price", "Last changed", ""}}
	for i, k := range p.Saved {
		n := strconv.Itoa(i)
		tools := Many(
			page.Action("open-kept", k.ID, "", "", Class("quiet"), At("id", "kept-open-"+n), page.Named("Open", k.Name)),
			page.Action("drop-kept", k.ID, "", "", Class("quiet"), At("id", "kept-drop-"+n), page.Named("Delete", k.Name)))
		name := Many(El("b", Text(k.Name)))
		if k.Here {
			doing := "being worked on"
			if p.Reading != nil {
				doing = "being read"
			}
			name, tools = Many(El("b", Text(k.Name)), El("span", Class("how"), Text(doing))), Text("")
		}
		t.Rows = append(t.Rows, []Part{name, Text(k.Line), Text(k.When), tools})
	}
	return El("section", Class("block screen"), At("id", "kept-quotes"), At("tabindex", "-1"),
		El("h2", Text("Saved quotes")),
		sealedQuotes(p),
		If(len(p.Saved) > 0, t.Draw()),
		If(len(p.Saved) == 0, El("p", Text("No quote is saved on this device."))),
		El("div", Class("row-tools"),
			page.Action("fresh-kept", "", "", "Begin another quote", At("id", "kept-fresh")),
			If(p.Reading == nil, page.Action("copy-kept", "", "", "Work on a copy", At("id", "kept-copy")))),
		copies(p), trail(p), leaveNothing(p))
}

// trail lists the states of the quote that can be gone back to, the last first.
func trail(p *Page) Part {
	if len(p.Trail) < 2 {
		return nil
	}
	t := page.Table{Caption: "Earlier states of this quote", Heads: []string{"When", "What was done", ""}}
	for i := len(p.Trail) - 1; i >= 0; i-- {
		m := p.Trail[i]
		tool := page.Action("back-to", strconv.Itoa(m.N), "", "", Class("quiet"),
			At("id", "trail-"+strconv.Itoa(m.N)), page.Named("Go there", m.Said))
		if m.Here {
			tool = Text("shown now")
		}
		t.Rows = append(t.Rows, []Part{Text(m.When), Text(page.OrDash(m.Said)), tool})
	}
	return page.Inner("trail", "Earlier states of this quote: "+strconv.Itoa(len(p.Trail)), t.Draw())
}
