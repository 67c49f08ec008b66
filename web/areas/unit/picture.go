package unit

import (
	"cmp"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// picture shows the unit as it is chosen so far beside the options, from the side that
// most of the chapter is seen from, or from where one asked to see it.
func picture(p *Page) Part {
	m := p.Q.Space.Model
	if m == nil {
		return nil
	}
	ids, labels := drawing.Views()
	id := p.View.Look
	if id == "" {
		id = viewOf(p.Q.Edition.Cat, p.View.ChapterIn(p.Q.Edition.Cat))
	}
	v := drawing.ViewOf(m, id)
	o := m.Overall()
	size := func(v quantity.Length) string { return p.Show(float64(v), quantity.Inch) }
	said := v.Title + ", to scale. " + size(o.LengthIn) + " long, " + size(o.WidthIn) + " wide, " +
		size(o.HeightIn) + " high with everything on."
	return El("details", Class("seen"), At("id", "seen"), Flag("open", true),
		El("summary", Text("Picture: "+v.Title)),
		El("div", Class("looks"), At("role", "group"), At("aria-label", "Seen from"),
			Each(ids, func(i int, way string) Part {
				return page.Action("look", way, "", labels[i], Class("quiet"), At("id", "look-"+way),
					If(way == v.ID, At("aria-current", "true")))
			})),
		drawing.Picture(v, said, p.View.Asked),
		El("p", Class("small soft"), Text(said+" "+missing(p)+" "),
			page.Action("save-dxf", "", "", "Save all views for CAD (DXF)", Class("quiet"))),
	)
}

// missing counts the choices that the catalogue gives no place, which no picture shows.
func missing(p *Page) string {
	n := 0
	for _, x := range p.Q.Draft.Unit.Picks {
		o := p.Q.Edition.Cat.OptionByID(x.Option)
		if o != nil && len(o.Places)+len(o.Compartments)+len(o.Seats) == 0 {
			n++
		}
	}
	return page.Count(n, "item has no place", "items have no place") + " in the catalogue and cannot be seen."
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
func look(s *session.Session, a session.Act) { s.View.Look = a.ID }

// find goes from a part that was pressed in the picture to the option that brings it.
func find(s *session.Session, a session.Act) {
	cat := s.Memory.Edition.Cat
	o := cat.OptionByID(a.ID)
	if o == nil {
		s.Fault("There is no option %q in this edition.", a.ID)
		return
	}
	s.View.Chapter, s.View.Search = cat.GroupByID(o.Group).Chapter, ""
	s.Step(session.Step{Do: "show", ID: "row-" + o.ID})
	s.Step(session.Step{Do: "focus", ID: "o-" + o.ID})
}

// saveDXF hands out every view in one drawing.
func saveDXF(s *session.Session, _ session.Act) {
	w, err := s.Work()
	if err != nil || w.Quote.Space.Model == nil {
		s.Fault("There is no unit to draw yet: choose a chassis and a module.")
		return
	}
	ids, _ := drawing.Views()
	var all []drawing.View
	for _, id := range ids {
		all = append(all, drawing.ViewOf(w.Quote.Space.Model, id))
	}
	s.Step(session.Step{Do: "save", Name: session.FileName(cmp.Or(s.Draft.Number, "unit")) + ".dxf",
		Type: "application/dxf", Text: string(drawing.DXF(all...))})
}
