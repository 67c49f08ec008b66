package space

import (
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
)

func load(_ *session.Session, p *page.Page, _ *session.Worked) func() markup.Part {
	return func() markup.Part { return draw(&Page{Page: p}) }
}
