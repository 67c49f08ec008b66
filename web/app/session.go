package app

import (
	"encoding/json"
	"fmt"

	"boxwright/config/leadtime"
	"boxwright/config/rules"
	"boxwright/pricing/link"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/areas/compare"
	"boxwright/web/areas/delivery"
	"boxwright/web/areas/unit"
	sess "boxwright/web/session"
)

// maxPins is how many quotes can be set aside for comparison.
const maxPins = 3

// maxEffort ends the doubling of what is spent on one question.
const maxEffort = 12

// session is one request being worked on.
type session struct {
	app    *App
	req    *Request
	draft  *quote.Draft
	other  *quote.Draft // as it came, when it was made with another edition: draft is then what it would be
	view   *sess.View
	pins   []string
	faults []string
	notice string
	steps  []Step
	effort int  // how often the table was already asked for more certainty
	soon   bool // something that takes long is left out of this reply
}

// session takes the state from the request. A draft that does not read is put
// aside with a fault, and a fresh one takes its place, so that the page always
// has something to show. One of another edition stays as it is.
func (a *App) session(req *Request) *session {
	s := &session{app: a, req: req}
	if json.Unmarshal(req.View, &s.view) != nil || s.view == nil {
		s.view = &sess.View{Area: "needs", OnlyDif: true}
	}
	if json.Unmarshal(req.Pins, &s.pins) != nil {
		s.pins = nil
	}
	s.pins = s.pins[:min(len(s.pins), maxPins)]
	if len(req.Draft) > 0 && string(req.Draft) != "null" {
		d, err := quote.ReadDraft(req.Draft)
		if err == nil && d.Unit.Edition != a.edition.Cat.Hash() {
			s.other = d
			return s
		}
		if err == nil {
			err = a.suits(d)
		}
		if err != nil {
			s.fault("The kept draft could not be used and a new one was begun. %s", sentence(err))
		} else {
			s.draft = d
		}
	} else if s.view.Guide > 0 { // another quote is begun
		s.view.Guide, s.view.GuideOff = 0, true
	}
	return s
}

// suits reports whether the edition in hand can compute the draft.
func (a *App) suits(d *quote.Draft) error {
	if ps := a.edition.Cat.CheckUnit(&d.Unit); len(ps) > 0 {
		return ps
	}
	if d.Unit.Edition != a.edition.Cat.Hash() {
		return fmt.Errorf("it was made with another edition of the catalogue (%.12s)", d.Unit.Edition)
	}
	return nil
}

func (s *session) fault(format string, args ...any) {
	s.faults = append(s.faults, fmt.Sprintf(format, args...))
}

func (s *session) step(st Step) { s.steps = append(s.steps, st) }

// do carries out one act on the draft or the view.
func (s *session) do(act Act) {
	f := acts[act.Do]
	if f == nil {
		s.fault("The page asked for %q, which the core does not know: reload the page.", act.Do)
		return
	}
	if otherEdition[act.Do] {
		f(s, act)
		return
	}
	s.begin()
	was, began, other := s.draft.Clone(), s.draft, s.other
	f(s, act)
	switch {
	case s.draft != began:
		s.other = nil // another quote was taken up
	case s.other == nil:
		s.weighed(&was.Unit)
		if is := &s.draft.Unit; is.Chassis != was.Unit.Chassis || is.Body != was.Unit.Body {
			s.learn()
		}
	case other != nil && canonical(was) != canonical(s.draft):
		s.draft, s.notice = was, ""
		s.fault("This quote was made with another edition of the catalogue and is kept as it is. Move it to the edition in use first, at the top of the page.")
	}
}

// begin has a draft to work on or to look at.
func (s *session) begin() {
	if s.draft == nil && s.other != nil {
		s.draft, _, _ = quote.Move(s.app.edition, s.other)
		s.draft.Issued = ""
	}
	if s.draft == nil {
		s.draft = quote.Begin(s.app.edition, "", "", s.req.Today)
		s.learn()
	}
}

// reply computes the draft and draws the page.
func (s *session) reply() (*Reply, error) {
	p, err := s.screen()
	if err != nil {
		return nil, err
	}
	kept := s.draft
	if s.other != nil {
		kept = s.other
	}
	draft, err := kept.Bytes()
	if err != nil {
		return nil, err
	}
	r := &Reply{
		Draft: draft, View: s.view, Pins: s.pins, Regions: p.regions(), Title: p.title(), Say: p.said(), Said: s.said(),
		Gist: s.gist(p.Q), Do: s.steps, Soon: s.soon,
		Unsettled: len(p.Q.Answer.Undecided) > 0 && s.effort < maxEffort,
	}
	r.Gist.Weighed = s.taught()
	for i, f := range s.faults {
		if i > 0 {
			r.Fault += " "
		}
		r.Fault += f
	}
	return r, nil
}

// why is the answer to "why not?", and how to have a thing nevertheless.
type why struct {
	reasons []rules.Reason
	mends   []rules.Mend
	offers  []propose.Offer
}

// why works the answer out for one thing. What the rules let in beside the
// customer's own choices needs no reason, but changes much of the rest.
func (s *session) why(w *worked, id string) why {
	q := w.quote
	if q.Answer.Of(id) == rules.Open && !q.Draft.Unit.Has(id) {
		return why{offers: propose.Offers(q, id)}
	}
	u, limits := &q.Draft.Unit, quote.Limits(s.app.edition, q.Draft)
	return why{reasons: q.Edition.Rules.Why(u, limits, id), mends: q.Edition.Rules.Mend(u, limits, id, nil)}
}

// ways is the answer for a thing of which a way is taken that was offered.
func (s *session) ways(id string) why {
	w, err := s.work()
	if err != nil {
		return why{}
	}
	return w.kept("why "+id, func() any { return s.why(w, id) }).(why)
}

// explain answers the open "why": what stands in the way, and the ways out.
func (s *session) explain(p *unit.Page, w *worked) {
	if id := s.view.Asked; id != "" {
		a, _ := s.later(w, "why "+id, func() any { return s.why(w, id) }).(why)
		p.Reasons, p.Mends, p.Offers = a.reasons, a.mends, a.offers
	}
}

// dates says what the picks do to the date, in the area that shows it.
func (s *session) dates(p *delivery.Page, w *worked) {
	plan := w.quote.Plan
	p.Delays, _ = s.later(w, "delays", func() any { return plan.Delays() }).([]leadtime.Delay)
	if needed := s.draft.Unit.NeededBy; s.view.Late && !needed.IsZero() {
		p.TooLate, _ = s.later(w, "too late", func() any { return plan.TooLate(needed) }).(map[string]float64)
	}
}

// others computes the quotes set aside.
func (s *session) others() []compare.Other {
	var out []compare.Other
	for _, pin := range s.pins {
		o := compare.Other{Link: pin}
		if d, _, err := link.Decode(s.app.edition.Cat, pin); err != nil {
			o.Fault = sentence(err)
		} else if o.Q, err = quote.Compute(s.app.edition, d); err != nil {
			o.Fault = sentence(err)
		}
		out = append(out, o)
	}
	return out
}

// refill completes the unit after a change and tells what gave way.
func (s *session) refill() {
	full, changes, _ := s.rules().Fill(&s.draft.Unit, s.limits())
	s.draft.Unit = full // where something cannot stand together the findings say so
	s.tell(changes)
}
