package quote

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/body"
	"boxwright/config/quantity"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

const drawingsID = "drawings"

// drawings is the drawing set, once it is drawn.
func drawings(p *Page) Part {
	if p.Plates == nil {
		return page.Working()
	}
	return p.Plates
}

// aboutDrawings names what the drawing set hangs on besides the draft.
func (p *Page) aboutDrawings() string {
	about := "set " + strconv.FormatBool(p.Metric)
	if p.Trust != nil && p.Trust.Before != nil {
		about += " " + p.Trust.Before.Number + " " + strconv.Itoa(p.Trust.Before.Rev) + " " +
			strconv.FormatBool(p.Trust.Before.Q != nil)
	}
	return about
}

// drawingSet is the unit on some thirteen sheets, to approve by signing. A fleet's first unit
// leads.
func drawingSet(p *Page) Part {
	if p.Q.Space.Model == nil {
		return El("p", Text("There is no unit to draw yet: choose a chassis and a module."))
	}
	var was *body.Model
	if p.Trust != nil && p.Trust.Before != nil && p.Trust.Before.Q != nil {
		was = p.Trust.Before.Q.Space.Model
	}
	var left []string
	if was != nil {
		left = drawing.LeftOut(p.Q.Space.Model, was)
	}
	list := drawing.Set(p.Page, was)
	total := len(list) + 1
	return El("div", Class("plates"),
		plateSheet(p, 1, total, "Cover", "none", was != nil, Many(
			If(len(left) > 0, El("p", Text("Left out since the quote before: "+strings.Join(left, "; ")+"."))),
			El("div", Class("choices-list"), schedule(p)))),
		Each(list, func(i int, x drawing.Plate) Part {
			return plateSheet(p, i+2, total, x.Title, x.ScaleWords(), was != nil, Many(x.Drawing, balloonList(&x),
				Each(x.Notes, func(_ int, t string) Part { return El("p", Text(t)) })))
		}))
}

// balloonList names what the numbers in the drawing stand for.
func balloonList(x *drawing.Plate) Part {
	return El("ol", Class("balloon-list"), Each(x.List, func(_ int, l drawing.Line) Part {
		text := l.Label
		if l.Count > 1 {
			text = strconv.Itoa(l.Count) + " × " + text
		}
		return El("li", El("b", Text(strconv.Itoa(l.N))), Text(" "+text),
			If(l.Size != "", El("span", Class("soft"), Text(" "+l.Size))), If(l.Changed, El("b", Text(" changed"))))
	}))
}

// plateSheet frames a sheet: its content, the title block, notes, revisions and the lines
// to approve on.
func plateSheet(p *Page, n, total int, title, scale string, revised bool, content Part) Part {
	d, cat := p.Q.Draft, p.Q.Edition.Cat
	cell := func(label, value string) Part {
		return El("div", El("span", Text(label)), El("b", Text(value)))
	}
	rev := "none"
	if d.Rev > 0 {
		rev = strconv.Itoa(d.Rev)
	}
	return El("section", Class("drawn-sheet"), At("aria-label", "Sheet "+strconv.Itoa(n)+", "+title),
		El("div", Class("plate-body"), content),
		El("div", Class("plate-foot"),
			El("div", Class("plate-notes"), El("b", Text("Notes")),
				El("p", Text("Sizes are along × across × high, in "+p.UnitName(quantity.Inch)+
					", the unit standing loaded. ~ marks a size that the catalogue does not state; the plant's "+
					"drawing decides. Colors are no paint sample. Quoting drawing, not for manufacture."))),
			El("table", Class("plate-revisions"), El("caption", Text("Revisions")),
				El("tr", El("th", Text("Rev.")), El("th", Text("Date")), El("th", Text("What"))),
				revisionRows(p, rev, revised)),
			El("div", Class("plate-approval"),
				Each([]string{"Approved", "Approved as noted"}, func(_ int, t string) Part {
					return El("p", El("i", Class("tick")), Text(t))
				}),
				El("p", Class("line"), Text("Signature")), El("p", Class("line"), Text("Date"))),
			El("div", Class("plate-title"),
				cell("Unit", p.Q.NameOf(0)), cell("Purchaser", d.Buyer.Name), cell("Quote", page.NumberOf(d)),
				cell("Revision", rev),
				cell("Date", d.Date.Long()), cell("Scale", scale), cell("Sheet", strconv.Itoa(n)+" of "+
					strconv.Itoa(total)+": "+title),
				cell("Drawn from", cat.Title+", edition "+cat.Edition+", content "+cat.Hash()[:16]))))
}

// revisionRows are the quote before, where it is at hand, and this one.
func revisionRows(p *Page, rev string, revised bool) Part {
	row := func(rev, date, what string) Part {
		return El("tr", El("td", Text(rev)), El("td", Text(date)), El("td", Text(what)))
	}
	if !revised {
		return row(rev, p.Q.Draft.Date.Long(), "First drawing")
	}
	b := p.Trust.Before
	return Many(row(strconv.Itoa(b.Rev), b.Date.Long(), "Quote before"),
		row(rev, p.Q.Draft.Date.Long(), "What changed is clouded"))
}

// schedule lists every choice by chapter and group.
func schedule(p *Page) Part {
	cat, u := p.Q.Edition.Cat, &p.Q.Draft.Unit
	return Many(
		El("h2", Text(cat.LabelOf(u.Chassis))), El("h3", Text(cat.LabelOf(u.Body))),
		Each(cat.Chapters, func(_ int, c config.Chapter) Part {
			var rows []Part
			for _, x := range cat.Chosen(u, c.ID) {
				text := x.Option.Label
				if x.Qty > 1 {
					text += " × " + strconv.Itoa(x.Qty)
				}
				if said := u.Detail(x.Option.ID); said != "" {
					text += " (" + said + ")"
				}
				rows = append(rows, El("li", El("span", Class("soft"), Text(x.Group.Label+": ")), Text(text)))
			}
			return If(len(rows) > 0, El("section", El("h4", Text(c.Label)), El("ul", Many(rows...))))
		}))
}
