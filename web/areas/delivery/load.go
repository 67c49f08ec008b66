package delivery

import (
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
	p.Delays, p.DelaysKnown = w.Delays.For(s, "", plan.Delays)
	if needed := s.Draft.Unit.NeededBy; s.View.Late && !needed.IsZero() {
		p.TooLate, p.TooLateKnown = w.TooLate.For(s, "", func() map[string]float64 { return plan.TooLate(needed) })
	}
}
