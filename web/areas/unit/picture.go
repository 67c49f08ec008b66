package unit

import (
	"cmp"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// seen is the picture of the unit beside the options. It is drawn in the second part of
// an answer; until then what stands on the page is left as it is.
func seen(s *session.Session, p *Page, w *session.Worked) Part {
	if p.Q.Space.Model == nil {
		return nil
	}
	cat, chapter := p.Q.Edition.Cat, p.View.ChapterIn(p.Q.Edition.Cat)
	id := cmp.Or(p.View.Look, viewOf(cat, chapter))
	about := strings.Join(append([]string{id, chapter, p.View.Asked, strconv.FormatBool(p.Metric), "fresh"},
		p.View.Fresh...), " ")
	drawn, there := w.Pictures.For(s, about, func() Part { return Written(picture(p, id, chapter)) })
	if !there {
		return frame(At("data-stays", "1"), El("summary", Text("Picture")), page.Working())
	}
	return drawn
}

// frame is the element that the picture stands in.
func frame(parts ...Part) Part {
	return El("details", append([]Part{Class("seen"), At("id", "seen")}, parts...)...)
}

// picture shows the unit as it is chosen so far, from the side that most of the chapter is
// seen from, or from where one asked to see it.
func picture(p *Page, id, chapter string) Part {
	m := p.Q.Space.Model
	v := drawing.ViewOf(m, id)
	v.Ghosts = drawing.Ghosts(m, id, absent(p, chapter))
	o := m.Overall()
	size := func(v quantity.Length) string { return p.Show(float64(v), quantity.Inch) }
	said := v.Title + ", to scale. " + size(o.LengthIn) + " long, " + size(o.WidthIn) + " wide, " +
		size(o.HeightIn) + " high with everything on."
	return frame(
		El("summary", Text("Picture: "+v.Title)),
		drawing.Looks(v.ID),
		drawing.Picture(v, said, p.View.Asked, p.View.Fresh),
		If(len(p.View.Fresh) > 0, El("p", Class("small"), Text(brought(p)))),
		El("p", Class("small soft"), Text(said+" "+colors(&v)+" "+missing(p)+" "),
			page.Action("save-dxf", "", "", "Save all views for CAD (DXF)", Class("quiet")), Text(" "),
			page.Action("save-svg", "", "", "as SVG", Class("quiet")), Text(" or this view alone: "),
			page.Action("save-dxf", v.ID, "", "this view as DXF", Class("quiet")), Text(" "),
			page.Action("save-svg", v.ID, "", "this view as SVG", Class("quiet"))),
	)
}

// absent are the options of a chapter that are shown and not in the unit: where each would
// go is drawn while it has the focus.
func absent(p *Page, chapter string) (list []*config.Option) {
	cat := p.Q.Edition.Cat
	for i := range cat.Groups {
		if cat.Groups[i].Chapter != chapter {
			continue
		}
		for _, k := range cat.Members(cat.Groups[i].ID) {
			if o := &cat.Options[k]; !p.Q.Draft.Unit.Has(o.ID) && p.Shown(o) {
				list = append(list, o)
			}
		}
	}
	return list
}

// mostBrought things of the last press are named under the picture.
const mostBrought = 3

// brought says what the last press brought in, with weight and price.
func brought(p *Page) string {
	var said []string
	for _, id := range p.View.Fresh[:min(len(p.View.Fresh), mostBrought)] {
		o := p.Q.Edition.Cat.OptionByID(id)
		if o == nil {
			continue
		}
		words := o.Label + ": " + priceText(p, id)
		if mass := massText(p, o); mass != "" {
			words = o.Label + ": " + mass + ", " + priceText(p, id)
		}
		said = append(said, words)
	}
	if more := len(p.View.Fresh) - mostBrought; more > 0 {
		said = append(said, strconv.Itoa(more)+" more")
	}
	return "Last change: " + strings.Join(said, "; ") + "."
}

// missing counts the choices that no picture shows, by the reason.
func missing(p *Page) string {
	n := map[string]int{}
	for _, x := range p.Q.Draft.Unit.Picks {
		if o := p.Q.Edition.Cat.OptionByID(x.Option); o != nil && !o.Drawn() {
			n[o.Unseen]++
		}
	}
	var said []string
	for _, why := range []string{"inside", "same", "finish", "service", "none", "loose"} {
		if n[why] > 0 {
			said = append(said, strconv.Itoa(n[why])+" "+unseen[why])
		}
	}
	if n[""] > 0 {
		said = append(said, strconv.Itoa(n[""])+" of which the catalogue does not say where they go")
	}
	if len(said) == 0 {
		return ""
	}
	return "Not visible: " + strings.Join(said, ", ") + "."
}

// unseen is how the choices are called that a picture does not show, by the reason.
var unseen = map[string]string{"inside": "within walls, floor, cabinets or chassis",
	"finish": "colors, finishes and details too small to draw",
	"same":   "that look as the unit does without them", "service": "papers and services", "none": "left out",
	"loose": "carried loose or differing from unit to unit"}

// colors are explained where some are shown.
func colors(v *drawing.View) string {
	letters := v.Letters()
	said := "Colors on screen are no paint sample."
	if len(letters) == 0 {
		return said
	}
	return said + " Letters on lights: " + strings.Join(letters, ", ") + "."
}

// seenFrom is the view in which a face is seen square on; the street side for others.
var seenFrom = map[string]string{config.FaceCurb: "curb", config.FaceFront: "front", config.FaceRear: "rear",
	config.FaceRoof: "roof", config.FaceStreetWall: "street-wall", config.FaceCurbWall: "curb-wall",
	config.FaceFrontWall: "bulkhead", config.FaceRearWall: "rear-inside", config.FaceCeiling: "floor",
	config.FaceFloor: "floor", config.FaceFree: "floor", "inside": "floor"}

// viewOf is the view in which most of a chapter's options are seen.
func viewOf(cat *config.Catalogue, chapter string) string {
	count, best := map[string]int{}, "street"
	add := func(face string) {
		id := cmp.Or(seenFrom[face], "street")
		if count[id]++; count[id] > count[best] {
			best = id
		}
	}
	for i := range cat.Groups {
		if cat.Groups[i].Chapter != chapter {
			continue
		}
		for _, k := range cat.Members(cat.Groups[i].ID) {
			o := &cat.Options[k]
			for _, at := range o.Places {
				add(at.Face)
			}
			for _, c := range o.Compartments {
				add(c.Side)
			}
			for range o.Seats {
				add(config.FaceFloor)
			}
		}
	}
	return best
}

// look turns the picture.
func look(s *session.Session, a session.Act) { s.View.Look, s.View.Fresh = a.ID, nil }

// find goes from a part that was pressed in the picture to the option that brings it.
func find(s *session.Session, a session.Act) {
	cat := s.Memory.Edition.Cat
	o := cat.OptionByID(a.ID)
	if o == nil {
		s.Fault("There is no option %q in this edition.", a.ID)
		return
	}
	if to := cat.GroupByID(o.Group).Chapter; to != s.View.ChapterIn(cat) {
		s.View.Chapter, s.View.Search, s.View.Opened = to, "", nil
	}
	open(s, o.Group)
	s.Step(session.Step{Do: "show", ID: "row-" + o.ID})
	s.Step(session.Step{Do: "focus", ID: "o-" + o.ID})
}

// toName goes to the field of an option that asks for a word of the customer.
func toName(s *session.Session, a session.Act) {
	s.GoTo("unit")
	find(s, a)
	s.Step(session.Step{Do: "focus", ID: "f-detail." + a.ID})
}

// saveDXF hands out one view, or every one in one drawing, for CAD, saveSVG as a picture.
func saveDXF(s *session.Session, a session.Act) {
	saveViews(s, a.ID, ".dxf", "application/dxf", func(all []drawing.View) string {
		return string(drawing.DXF(all...))
	})
}

func saveSVG(s *session.Session, a session.Act) {
	saveViews(s, a.ID, ".svg", "image/svg+xml", func(all []drawing.View) string { return drawing.SVG(all...) })
}

// saveViews hands out the view with an id, or all of them without one.
func saveViews(s *session.Session, id, ending, kind string, write func([]drawing.View) string) {
	w, err := s.Work()
	if err != nil || w.Quote.Space.Model == nil {
		s.Fault("There is no unit to draw yet: choose a chassis and a module.")
		return
	}
	list, what := drawing.Views(w.Quote.Space.Model), "drawings"
	if id != "" {
		one := drawing.ViewOf(w.Quote.Space.Model, id)
		list, what = []drawing.View{one}, one.ID
	}
	s.Step(session.Step{Do: "save", Name: s.NameFile(what, ending), Type: kind, Text: write(list)})
}
