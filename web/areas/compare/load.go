package compare

import (
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
	v := &Page{Page: p, View: s.View, Others: loadOthers(s)}
	if len(v.Others) > 0 {
		about := "compare " + v.View.Look + " " + strconv.FormatBool(v.Metric) + " " + strings.Join(s.Pins, " ")
		drawn, there := w.Pictures.For(s, about, func() markup.Part { return markup.Written(sights(v, v.columns())) })
		if v.Sights = drawn; !there {
			v.Sights = page.Working()
		}
	}
	return func() markup.Part { return draw(v) }
}

// loadOthers computes the quotes set aside. One that says the same as the quote shown,
// or as one before it, is left out: no quote stands there twice.
func loadOthers(s *session.Session) []Other {
	var out []Other
	shown := []*quote.Draft{s.Draft}
	for i, pin := range s.Pins {
		o := Other{Link: pin, At: i}
		d, _, err := link.Decode(s.Memory.Edition.Cat, pin)
		if err == nil {
			if slices.ContainsFunc(shown, func(x *quote.Draft) bool { return session.SameQuote(x, d) }) {
				continue
			}
			shown = append(shown, d)
			o.Q, err = quote.Compute(s.Memory.Edition, d)
		}
		if err != nil {
			o.Fault = session.Sentence(err)
		}
		out = append(out, o)
	}
	return out
}
