package start

import (
	"boxwright/config/letters"
	"boxwright/config/standards"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"new":           startNew,
	"remount":       startRemount,
	"remount-years": remountYears,
	"mountings":     func(s *session.Session, _ session.Act) { s.View.Mountings = !s.View.Mountings },
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{"existing": existingField}

// startNew begins a quote on a chassis, keeping the parties.
func startNew(s *session.Session, a session.Act) {
	old := s.Draft
	s.Draft = quote.BeginFor(s.Memory.Edition, a.ID, a.Value, s.Req.Today, &old.Needs)
	s.Draft.Needs.Begun = ""
	if s.Memory.Edition.Cat.ChassisByID(a.ID) != nil {
		s.Draft.Needs.Begun = a.ID
	}
	s.Draft.Seller, s.Draft.Buyer, s.Draft.Title, s.Draft.Number = old.Seller, old.Buyer, old.Title, old.Number
	s.Draft.Requirements = old.Requirements
	s.Draft.Terms.KeepBuyer(&old.Terms)
	keepOrder(s.Draft, old)
	u := &s.Draft.Unit
	u.RuleSet = standards.Suit(old.Unit.RuleSet, s.Memory.Edition.Cat.DutyOf(u))
	u.NeededBy, u.Details = old.Unit.NeededBy, old.Unit.Details
	s.Draft.Tickets, s.Draft.Wiring = old.Tickets, old.Wiring
	s.Weighed(&old.Unit)
	if s.Refuse(old) {
		return
	}
	s.Notice = "A new unit was begun on " + letters.Isolate(s.Memory.Edition.Cat.LabelOf(s.Draft.Unit.Chassis)) +
		". Undo brings the earlier one back."
	s.Learn()
}

// keepOrder keeps the other units of a quote and the terms they are ordered at, where
// one of several units is begun anew.
func keepOrder(d, old *quote.Draft) {
	if len(old.More) == 0 {
		return
	}
	d.At, d.More = old.At, old.More
	service := d.Terms.Service
	d.Terms = old.Terms
	d.Terms.Service = service
}
