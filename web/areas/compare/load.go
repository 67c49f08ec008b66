package compare

import (
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
)

func load(s *session.Session, p *page.Page, _ *session.Worked) func() markup.Part {
	v := &Page{Page: p, View: s.View, Others: loadOthers(s)}
	return func() markup.Part { return draw(v) }
}

// loadOthers computes the quotes set aside.
func loadOthers(s *session.Session) []Other {
	var out []Other
	for _, pin := range s.Pins {
		o := Other{Link: pin}
		if d, _, err := link.Decode(s.Memory.Edition.Cat, pin); err != nil {
			o.Fault = session.Sentence(err)
		} else if o.Q, err = quote.Compute(s.Memory.Edition, d); err != nil {
			o.Fault = session.Sentence(err)
		}
		out = append(out, o)
	}
	return out
}
