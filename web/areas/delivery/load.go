package delivery

import (
	"boxwright/config/leadtime"
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
)

func load(s *session.Session, p *page.Page, w *session.Worked) func() markup.Part {
	v := &Page{Page: p, View: s.View}
	loadDates(s, v, w)
	return func() markup.Part { return draw(v) }
}

// loadDates says what the picks do to the date, in the area that shows it.
func loadDates(s *session.Session, p *Page, w *session.Worked) {
	plan := w.Quote.Plan
	p.Delays, _ = s.Later(w, "delays", func() any { return plan.Delays() }).([]leadtime.Delay)
	if needed := s.Draft.Unit.NeededBy; s.View.Late && !needed.IsZero() {
		p.TooLate, _ = s.Later(w, "too late", func() any { return plan.TooLate(needed) }).(map[string]float64)
	}
}
