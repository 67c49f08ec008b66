package unit

import (
	"boxwright/config/rules"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
)

func load(s *session.Session, p *page.Page, w *session.Worked) func() markup.Part {
	v := &Page{Page: p, View: s.View, Notice: s.Notice}
	explain(s, v, w)
	return func() markup.Part { return draw(v) }
}

// answer to "why not?", and how to have a thing nevertheless.
type answer struct {
	reasons []rules.Reason
	mends   []rules.Mend
	offers  []propose.Offer
}

// answerFor works the answer out for one thing. What the rules let in beside the
// customer's own choices needs no reason, but changes much of the rest.
func answerFor(s *session.Session, w *session.Worked, id string) answer {
	q := w.Quote
	if q.Answer.Of(id) == rules.Open && !q.Draft.Unit.Has(id) {
		return answer{offers: propose.Offers(q, id)}
	}
	u, limits := &q.Draft.Unit, quote.Limits(s.Memory.Edition, q.Draft)
	return answer{reasons: q.Edition.Rules.Why(u, limits, id), mends: q.Edition.Rules.Mend(u, limits, id, nil)}
}

// waysOut is the answer for a thing of which a way is taken that was offered.
func waysOut(s *session.Session, id string) answer {
	w, err := s.Work()
	if err != nil {
		return answer{}
	}
	return w.Kept("why "+id, func() any { return answerFor(s, w, id) }).(answer)
}

// explain answers the open "why": what stands in the way, and the ways out.
func explain(s *session.Session, p *Page, w *session.Worked) {
	if id := s.View.Asked; id != "" {
		a, _ := s.Later(w, "why "+id, func() any { return answerFor(s, w, id) }).(answer)
		p.Reasons, p.Mends, p.Offers = a.reasons, a.mends, a.offers
	}
}
