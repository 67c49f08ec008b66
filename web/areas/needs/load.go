package needs

import (
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
	"boxwright/web/told"
)

func load(s *session.Session, p *page.Page, w *session.Worked) func() markup.Part {
	v := &Page{Page: p, View: s.View, Told: told.Load(s, p, w)}
	loadProposals(s, v)
	loadList(s, v, w)
	return func() markup.Part { return draw(v) }
}
