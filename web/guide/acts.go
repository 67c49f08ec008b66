package guide

import (
	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	"boxwright/web/session"
)

// Load is what the guided quote is drawn from.
func Load(s *session.Session, p *page.Page) *Page {
	return &Page{Page: p, View: s.View, Undo: s.Req.Undo, Kept: s.Req.Kept}
}

// Act begins the guided quote, and does what its strip offers.
func Act(s *session.Session, a session.Act) {
	v := s.View
	switch a.ID {
	case "start":
		startGuide(s)
	case "go", "see":
		if id := GoThere(v, s.Memory.Edition.Cat, a.ID == "see"); id != "" {
			s.Step(session.Step{Do: "focus", ID: id})
		} else {
			s.Step(session.Step{Do: "top"})
		}
	case "told":
		s.Step(session.Step{Do: "focus", ID: "told"})
	case "skip":
		v.Guide++
	case "on":
		v.GuideOff = false
		s.Step(session.Step{Do: "top"})
	case "end":
		v.GuideOff = true
		s.Step(session.Step{Do: "focus", ID: "main"})
	}
}

// startGuide begins a quote of its own, so that none that is worked on is lost:
// it stays among those kept or, where the browser keeps none, in Compare.
func startGuide(s *session.Session) {
	if !Has(s.Memory.Edition.Cat) {
		s.Fault("The catalogue in use has no guided quote.")
		return
	}
	old, v, g := s.Draft, s.View, s.Memory.Edition.Cat.Guide
	if !s.Req.Kept {
		s.KeepAside()
	} else if s.Req.Undo > 0 || !Untouched(old) {
		s.Pins = nil
		s.Step(session.Step{Do: "new-quote"})
	}
	s.Draft = quote.Begin(s.Memory.Edition, g.From, "", s.Req.Today)
	s.Draft.Seller, s.Draft.Title, s.Draft.Terms.Buyer = old.Seller, g.Title, g.Buyer
	s.Draft.Buyer.Name, s.Draft.Number = g.Service, g.Number
	if s.Draft.Seller.Name == "" {
		s.Draft.Seller.Name = g.Dealer
	}
	s.Draft.Needs.Crew, s.Draft.Needs.Patients = g.Seats, g.Patients
	s.View = &session.View{Area: "start", Metric: v.Metric, Theme: v.Theme, Address: v.Address, Guide: 1}
	s.Notice = "A quote to try things on was begun; no other was changed."
	s.Step(session.Step{Do: "top"})
}

// Follow moves the guide on past what was done, and reports whether it did.
func Follow(s *session.Session) bool {
	moved := false
	for {
		further, began := Advance(s.View, s.Draft, s.Memory.Edition.Cat, func(act string) bool {
			for _, a := range s.Req.Acts {
				if a.Do == act {
					return true
				}
			}
			return false
		})
		moved = moved || further
		if !began {
			break
		}
		for _, id := range s.Memory.Edition.Cat.Guide.Brings {
			s.Draft.Unit.Set(config.Pick{Option: id, Qty: 1})
		}
		s.Refill()
	}
	if moved {
		s.Step(session.Step{Do: "show", ID: "guide"})
	}
	return moved
}
