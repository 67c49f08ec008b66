package weight

import (
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
)

func load(s *session.Session, p *page.Page, _ *session.Worked) func() markup.Part {
	v := &Page{Page: p, View: s.View, Lessons: offered(s)}
	return func() markup.Part { return draw(v) }
}
