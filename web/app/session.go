package app

import (
	"cmp"
	"encoding/json"
	"strings"

	"boxwright/config/standards"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// session takes the state from the request. A draft that does not read is put
// aside with a fault, and a fresh one takes its place, so that the page always
// has something to show. One of another edition stays as it is.
func (a *App) session(req *session.Request) *session.Session {
	s := &session.Session{Memory: &a.memory, Req: req}
	if json.Unmarshal(req.View, &s.View) != nil || s.View == nil {
		s.View = &session.View{Area: tabs[0].ID}
	}
	if json.Unmarshal(req.Pins, &s.Pins) != nil {
		s.Pins = nil
	}
	s.Pins = s.Pins[:min(len(s.Pins), session.MaxPins)]
	if len(req.Draft) > 0 && string(req.Draft) != "null" {
		d, err := a.memory.Read(req.Draft)
		if err == nil && d.Unit.Edition != a.memory.Edition.Cat.Hash() {
			s.Other = d
			return s
		}
		if err == nil {
			err = a.memory.Suits(d)
		}
		if err != nil {
			s.Fault("The saved quote could not be opened, and a new one was begun; the saved one stays as it is "+
				"under Saved quotes. %s", session.Sentence(err))
		} else {
			s.Draft = d
		}
	} else if s.View.Guide > 0 { // another quote is begun
		s.View.Guide, s.View.GuideOff = 0, true
	}
	if s.Draft == nil {
		s.View.Reading, s.View.Frozen = false, nil
	}
	return s
}

// do carries out one act on the draft or the view.
func do(s *session.Session, act session.Act) {
	f, edition := actOf(act.Do)
	if f == nil {
		s.Fault("The page asked for %q, which the core does not know: reload the page.", act.Do)
		return
	}
	if edition {
		f(s, act)
		return
	}
	s.Begin()
	was, began, other := s.Draft.Clone(), s.Draft, s.Other
	s.Pressed, s.For = "", nil
	f(s, act)
	if s.HoldReading(was, began, other) {
		return
	}
	switch {
	case s.Draft != began:
		if h := s.View.Heard; h != nil {
			s.View.Heard = &session.Heard{Place: h.Place, Area: h.Area} // all its figures are news
		}
		s.Other, s.View.Told = nil, nil // another quote was taken up, and what was typed wrong was of the one before
		s.View.Typed, s.View.Wrong = nil, nil
	case s.Other == nil:
		if s.Refuse(was) {
			return
		}
		suitRules(s, was)
		s.TellFrom(was, cmp.Or(s.Pressed, act.ID, act.Do))
		s.Weighed(&was.Unit)
		if now := &s.Draft.Unit; now.Chassis != was.Unit.Chassis || now.Body != was.Unit.Body {
			s.Learn()
		}
	case other != nil && session.Canonical(was) != session.Canonical(s.Draft):
		s.Draft, s.Notice = was, ""
		s.Fault("This quote was made with another edition of the catalogue and is kept as it is. Move it to the " +
			"edition in use first, at the top of the page.")
	}
}

// suitRules puts rules in force that judge the unit's duty, where an act gave it another.
func suitRules(s *session.Session, was *quote.Draft) {
	cat := s.Memory.Edition.Cat
	duty := cat.DutyOf(&s.Draft.Unit)
	if duty == cat.DutyOf(&was.Unit) {
		return
	}
	u := &s.Draft.Unit
	if to := standards.Suit(u.RuleSet, duty); to != u.RuleSet {
		u.RuleSet = to
		s.Notice = strings.TrimSpace(s.Notice + " The rules in force follow what the unit is for.")
	}
}

// reply computes the draft and draws the page.
func (a *App) reply(s *session.Session) (*Reply, error) {
	p, w, err := a.load(s)
	if err != nil {
		return nil, err
	}
	s.Rest()
	draft := w.Draft
	if s.Other != nil {
		if draft, err = s.Other.Bytes(); err != nil {
			return nil, err
		}
	}
	r := &Reply{
		Draft: draft, View: s.View, Pins: s.Pins, Title: p.title(), Said: said(s), Notice: s.Notice,
		Gist: s.Gist(p.Q), Do: s.Steps, Partial: s.Partial,
	}
	r.Regions, r.Shown = a.changed(p.regions(), s.Req.Shown)
	r.Say = p.spoken(s)           // of what was drawn
	r.Undecided = p.Q.Undecided() // of what was drawn
	r.Gist.Weighed = s.Taught()
	r.Private = s.Private
	for i, f := range s.Faults {
		if i > 0 {
			r.Fault += " "
		}
		r.Fault += f
	}
	return r, nil
}
