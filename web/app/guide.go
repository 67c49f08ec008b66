package app

import (
	"boxwright/config"
	"boxwright/pricing/quote"
	tour "boxwright/web/guide"
	sess "boxwright/web/session"
)

// guide begins the guided quote, and does what its strip offers.
func guide(s *session, a Act) {
	v := s.view
	switch a.ID {
	case "start":
		startGuide(s)
	case "go", "see":
		if id := tour.GoThere(v, s.app.edition.Cat, a.ID == "see"); id != "" {
			s.step(Step{Do: "focus", ID: id})
		} else {
			s.step(Step{Do: "top"})
		}
	case "skip":
		v.Guide++
	case "on":
		v.GuideOff = false
		s.step(Step{Do: "top"})
	case "end":
		v.GuideOff = true
		s.step(Step{Do: "focus", ID: "main"})
	}
}

// startGuide begins a quote of its own, so that none that is worked on is lost:
// it stays among those kept or, where the browser keeps none, in Compare.
func startGuide(s *session) {
	if !tour.Has(s.app.edition.Cat) {
		s.fault("The catalogue in use is not the one the guided quote tells of.")
		return
	}
	old, v := s.draft, s.view
	if !s.req.Kept {
		s.keepAside()
	} else if s.req.Undo > 0 || !tour.Untouched(old) {
		s.pins = nil
		s.step(Step{Do: "new-quote"})
	}
	s.draft = quote.Begin(s.app.edition, tour.From, "", s.req.Today)
	s.draft.Seller, s.draft.Title = old.Seller, tour.Title
	s.view = &sess.View{Area: "needs", OnlyDif: true, Metric: v.Metric, Theme: v.Theme, Address: v.Address, Guide: 1}
	s.notice = "A quote to try things on was begun; no other was changed."
	s.step(Step{Do: "top"})
}

// guided moves the guide on past what was done, and reports whether it did.
func (s *session) guided() bool {
	moved := false
	for {
		on, began := tour.Advance(s.view, s.draft, s.app.edition.Cat, func(act string) bool {
			for _, a := range s.req.Acts {
				if a.Do == act {
					return true
				}
			}
			return false
		})
		moved = moved || on
		if !began {
			break
		}
		for _, id := range tour.Brings {
			s.draft.Unit.Set(config.Pick{Option: id, Qty: 1})
		}
		s.refill()
	}
	if moved {
		s.step(Step{Do: "show", ID: "guide"})
	}
	return moved
}
