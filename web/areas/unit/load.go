package unit

import (
	"boxwright/pricing/propose"
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
	"boxwright/web/told"
)

func load(s *session.Session, p *page.Page, w *session.Worked) func() markup.Part {
	v := &Page{Page: p, View: s.View, Told: told.Load(s, p, w)}
	if id := s.View.Asked; id != "" {
		ways, there := w.Ways.For(s, id, func() propose.Ways { return propose.WaysTo(w.Quote, id) })
		if there {
			v.Ways = &ways
		}
	}
	v.Picture = seen(s, v, w)
	return func() markup.Part { return draw(v) }
}

// waysTo are the ways out that were offered for a thing of which one is taken.
func waysTo(s *session.Session, id string) propose.Ways {
	w, err := s.Work()
	if err != nil {
		return propose.Ways{}
	}
	return w.Ways.Now(id, func() propose.Ways { return propose.WaysTo(w.Quote, id) })
}
