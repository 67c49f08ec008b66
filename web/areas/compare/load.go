package compare

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
)

func load(s *session.Session, p *page.Page, w *session.Worked) func() markup.Part {
	v := &Page{Page: p, View: s.View, Others: loadOthers(s), Sent: sentOwn(s, w.Quote), Link: s.Subject().Issued}
	if d, frozen := s.Foreign(); d != nil {
		v.Link, v.Draft, v.Sent = s.View.Foreign, d, frozen
	}
	if len(v.Others) > 0 {
		about := "compare " + v.View.Look + " " + strconv.FormatBool(v.Metric) + " " + strings.Join(s.Pins, " ") +
			fmt.Sprint(s.View.Names)
		drawn, there := w.Pictures.For(s, about, func() markup.Part { return markup.Written(sights(v, v.columns())) })
		if v.Sights = drawn; !there {
			v.Sights = page.Working()
		}
	}
	return func() markup.Part { return draw(v) }
}

// sentOwn are the figures of the quote shown as it was sent, where the page computes
// others; nil where it computes the same, and for a quote that nobody sent.
func sentOwn(s *session.Session, q *quote.Quote) *link.Frozen {
	f := s.View.Frozen
	if f == nil && s.Other != nil && s.Other.Issued != "" {
		f = link.FrozenIn(s.Memory.Edition.Cat, s.Other.Issued)
	}
	if f == nil || s.Other == nil && f.Agrees(link.Freeze(q)) {
		return nil
	}
	return f
}

// loadOthers computes the quotes set aside. One that says the same as the quote shown,
// or as one before it, is left out: no quote stands there twice.
func loadOthers(s *session.Session) []Other {
	var out []Other
	own := s.Subject()
	shown, issued := []*quote.Draft{own}, own.Issued
	if d, _ := s.Foreign(); d != nil {
		shown, issued = nil, s.View.Foreign
	}
	for i, pin := range s.Pins {
		if issued != "" && link.Name(issued) == link.Name(pin) {
			continue
		}
		o := Other{Link: pin, At: i}
		d, frozen, err := link.Decode(s.Memory.Edition.Cat, pin)
		if e, ok := errors.AsType[*link.Error](err); ok && e.Code == link.UnknownEdition {
			o.Draft, o.Sent, err = e.Draft, e.Frozen, nil
		} else if err == nil {
			if slices.ContainsFunc(shown, func(x *quote.Draft) bool { return session.SameQuote(x, d) }) {
				continue
			}
			shown = append(shown, d)
			o.Q, err = quote.Compute(s.Memory.Edition, d)
			if err == nil && d.Issued != "" && !frozen.Agrees(link.Freeze(o.Q)) {
				o.Draft, o.Sent, o.Q = d, frozen, nil
			}
		}
		if err != nil {
			o.Fault = session.Sentence(err)
		}
		out = append(out, o)
	}
	return out
}
