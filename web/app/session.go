package app

import (
	"encoding/json"
	"fmt"

	"boxwright/config/rules"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/view"
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
	view   *view.State
	pins   []string
	faults []string
	notice string
	steps  []Step
	effort int // how often the table was already asked for more certainty
}

// session takes the state from the request. A draft that does not read is put
// aside with a fault, and a fresh one takes its place, so that the page always
// has something to show. One of another edition stays as it is.
func (a *App) session(req *Request) *session {
	s := &session{app: a, req: req}
	if json.Unmarshal(req.View, &s.view) != nil || s.view == nil {
		s.view = &view.State{Area: "needs", OnlyDif: true}
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
	f, known := acts[act.Do]
	if !known {
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
	}
}

// reply computes the draft and draws the page.
func (s *session) reply() (*Reply, error) {
	s.begin()
	q, err := quote.Settle(s.app.edition, s.draft, s.effort)
	if err != nil {
		return nil, err
	}
	text := s.draft.Issued
	if text == "" && s.view.Area == "quote" && s.other == nil {
		if text, err = link.Encode(q); err != nil {
			s.fault("No link can be made: %s.", sentence(err))
		}
	}
	p := &view.Page{
		Q: q, State: s.view, Link: text, Base: s.req.Base, Undo: s.req.Undo, Redo: s.req.Redo, Kept: s.req.Kept, Notice: s.notice,
	}
	s.explain(p)
	s.mountings(p)
	s.proposals(p)
	s.private(p)
	if s.view.Area == "quote" {
		s.trust(p)
		s.shelf(p)
	}
	if s.view.Area == "compare" {
		p.Others = s.others()
	}
	s.keepers(p)
	s.elsewhere(p)
	kept := s.draft
	if s.other != nil {
		kept = s.other
	}
	r := &Reply{Draft: kept, View: s.view, Pins: s.pins, Regions: view.Regions(p), Title: view.Title(p), Say: view.Live(p), Said: s.said(), Gist: s.gist(q), Do: s.steps, Unsettled: len(q.Answer.Undecided) > 0 && s.effort < maxEffort}
	for i, f := range s.faults {
		if i > 0 {
			r.Fault += " "
		}
		r.Fault += f
	}
	return r, nil
}

// explain answers the open "why": what stands in the way, and the ways out.
func (s *session) explain(p *view.Page) {
	id := s.view.Asked
	if id == "" {
		return
	}
	ed, limits := s.app.edition.For(&s.draft.Unit), s.limits()
	if p.Q.Answer.Of(id) == rules.Open && !s.draft.Unit.Has(id) {
		p.Offers = quote.Offers(p.Q, id)
		return
	}
	p.Reasons = ed.Rules.Why(&s.draft.Unit, limits, id)
	p.Mends = ed.Rules.Mend(&s.draft.Unit, limits, id, nil)
}

// others computes the quotes set aside.
func (s *session) others() []view.Other {
	var out []view.Other
	for _, pin := range s.pins {
		o := view.Other{Link: pin}
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
