package quote

import (
	"strconv"
	"strings"

	"boxwright/config/body"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

const drawingsID = "drawings"

// drawings is the drawing set, once it is drawn, with what saves it as files.
func drawings(p *Page) Part {
	if p.Plates == nil {
		return page.Working()
	}
	return Many(El("div", Class("screen row-tools"),
		page.Action("save-set", "dxf", "", "Save the set for CAD (DXF)", At("id", "set-dxf")),
		page.Action("save-set", "svg", "", "Save the set as SVG", At("id", "set-svg"))), p.Plates)
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

// drawingSet is the unit on some dozen sheets, to approve by signing. A fleet's first unit
// leads.
func drawingSet(p *Page) Part {
	list := sheetsOf(p)
	if list == nil {
		return El("p", Text("There is no unit to draw yet: choose a chassis and a module."))
	}
	return El("div", Each(list, func(_ int, x drawing.Sheet) Part {
		return El("section", Class("drawn-sheet"), At("aria-label", "Sheet "+strconv.Itoa(x.N)+", "+x.Title),
			El("div", Class("plate-body"), x.Drawing(), If(len(x.List) > 0, balloonList(&x)),
				Each(x.Notes, func(_ int, t string) Part { return El("p", Text(t)) }),
				If(x.Chapters != nil, El("div", Class("choices-list"), Each(x.Chapters, chapter)))),
			plateFoot(&x))
	}))
}

// sheetsOf the drawing set; nil without a unit to draw.
func sheetsOf(p *Page) (list []drawing.Sheet) {
	m := p.Q.Space.Model
	if m == nil {
		return nil
	}
	var was *body.Model
	cover := drawing.Plate{Title: "Cover"}
	if before := unitBefore(p.before(), p.Q.Draft, p.Q.Draft.At); before != nil {
		was = before.Space.Model
		if left := drawing.LeftOut(m, was); len(left) > 0 {
			cover.Notes = []string{"Left out since the quote before: " + strings.Join(left, "; ") + "."}
		}
	}
	length := "inches"
	if p.Metric {
		length = "millimeters"
	}
	plates := append([]drawing.Plate{cover}, drawing.Set(p.Page, was)...)
	for i := range plates {
		x := drawing.Sheet{Plate: plates[i], N: i + 1, Total: len(plates),
			Note: "Sizes are length × width × height, in " + length +
				"; the unit stands loaded. ~ marks a size that the catalogue does not state; " +
				"the plant's drawing decides. Colors are no paint sample. Quoting drawing, not for manufacture.",
			Revisions: revisionRows(p, was != nil)}
		x.Cells = titleBlock(p, &x)
		if i == 0 {
			x.Chapters = schedule(p)
		}
		list = append(list, x)
	}
	return list
}

// saveSet hands out the drawing set as one file.
func saveSet(s *session.Session, a session.Act) {
	w, err := s.Work()
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return
	}
	p := &Page{Page: &page.Page{Q: leading(w.Quote), Metric: s.View.Metric}}
	if s.Other == nil {
		loadTrust(s, p)
	}
	list := sheetsOf(p)
	if list == nil {
		s.Fault("There is no unit to draw yet: choose a chassis and a module.")
		return
	}
	step := session.Step{Do: "save", Name: s.NameFile("set", "."+a.ID)}
	if a.ID == "dxf" {
		step.Type, step.Text = "application/dxf", string(drawing.SheetsDXF(list...))
	} else {
		step.Type, step.Text = "image/svg+xml", drawing.SheetsSVG(list...)
	}
	s.Step(step)
}

// balloonList names what the numbers in the drawing stand for.
func balloonList(x *drawing.Sheet) Part {
	return El("ol", Class("balloon-list"), Each(x.List, func(_ int, l drawing.Line) Part {
		return El("li", If(l.N > 0, El("b", Text(l.Number()))), Text(l.Words()),
			If(l.Size != "", El("span", Class("soft"), Text(" "+l.Size))), If(l.Changed, El("b", Text(" changed"))))
	}))
}

// plateFoot are notes, revisions, the lines to approve on, and the title block.
func plateFoot(x *drawing.Sheet) Part {
	return El("div", Class("plate-foot"),
		El("div", El("b", Text("Notes")), El("p", Text(x.Note))),
		El("table", Class("plate-revisions"), El("caption", Text("Revisions")),
			El("tr", El("th", Text("Rev.")), El("th", Text("Date")), El("th", Text("What"))),
			Each(x.Revisions, func(_ int, r [3]string) Part {
				return El("tr", El("td", Text(r[0])), El("td", Text(r[1])), El("td", Text(r[2])))
			})),
		El("div", Class("plate-approval"),
			Each(drawing.Approvals, func(_ int, t string) Part { return El("p", El("i", Class("tick")), Text(t)) }),
			Each(drawing.Lines, func(_ int, t string) Part { return El("p", Class("line"), Text(t)) })),
		El("div", Class("plate-title"), Each(x.Cells, func(_ int, c [2]string) Part {
			return El("div", El("span", Text(c[0])), El("b", Text(c[1])))
		})))
}

func titleBlock(p *Page, x *drawing.Sheet) [][2]string {
	d, cat := p.Q.Draft, p.Q.Edition.Cat
	return [][2]string{{"Unit", p.Q.NameOf(0)}, {"Purchaser", d.Buyer.Name}, {"Quote", page.NumberOf(d)},
		{"Revision", revisionOf(p)}, {"Date", d.Date.Long()}, {"Scale", x.ScaleWords()},
		{"Sheet", strconv.Itoa(x.N) + " of " + strconv.Itoa(x.Total) + ": " + x.Title},
		{"Drawn from", cat.Title + ", edition " + cat.Edition + ", content " + cat.Hash()[:16]}}
}

func revisionOf(p *Page) string {
	if p.Q.Draft.Rev > 0 {
		return strconv.Itoa(p.Q.Draft.Rev)
	}
	return "none"
}

// revisionRows are the quote before, where it is at hand, and this one.
func revisionRows(p *Page, revised bool) [][3]string {
	rev, date := revisionOf(p), p.Q.Draft.Date.Long()
	if !revised {
		return [][3]string{{rev, date, "First drawing"}}
	}
	b := p.Trust.Before
	return [][3]string{{strconv.Itoa(b.Rev), b.Date.Long(), "Quote before"}, {rev, date, "What changed is clouded"}}
}

// schedule lists what was chosen by chapter and group, after chassis and body; not what the
// unit goes without.
func schedule(p *Page) []drawing.Chapter {
	cat, u := p.Q.Edition.Cat, &p.Q.Draft.Unit
	list := []drawing.Chapter{{Label: cat.LabelOf(u.Chassis)}, {Label: cat.LabelOf(u.Body)}}
	for _, c := range cat.Chapters {
		chapter := drawing.Chapter{Label: c.Label}
		for _, x := range cat.Chosen(u, c.ID) {
			if x.Option.IsNone() {
				continue
			}
			text := x.Option.Label
			if x.Qty > 1 {
				text += " × " + strconv.Itoa(x.Qty)
			}
			if said := u.Detail(x.Option.ID); said != "" {
				text += " (" + said + ")"
			}
			chapter.Items = append(chapter.Items, [2]string{x.Group.Label, text})
		}
		if len(chapter.Items) > 0 {
			list = append(list, chapter)
		}
	}
	return list
}

// chapter draws a part of the schedule; chassis and body, which come first, are larger.
func chapter(i int, c drawing.Chapter) Part {
	return El("section", El([]string{"h2", "h3", "h4"}[min(i, 2)], Text(c.Label)),
		If(len(c.Items) > 0, El("ul", Each(c.Items, func(_ int, item [2]string) Part {
			return El("li", El("span", Class("soft"), Text(item[0]+": ")), Text(item[1]))
		}))))
}
