package app

import (
	"slices"

	"boxwright/config"
	"boxwright/web/areas/catalogue"
	tour "boxwright/web/guide"
	"boxwright/web/page"
	"boxwright/web/page/markup"
)

// screen is what is shown of the draft: the area that the reader is in with all
// that stands around it.
type screen struct {
	*page.Page
	name   string // of the area
	notice string
	draw   func() markup.Part // the area
	frame  *page.Frame
	guide  *tour.Page
	guided bool                 // the guide has just come to another step
	strip  *catalogue.Elsewhere // while the quote is one of another edition
}

// screen loads what is shown of the draft.
func (s *session) screen() (*screen, error) {
	s.begin()
	guided := s.guided()
	w, err := s.work()
	if err != nil {
		return nil, err
	}
	here := areaOf(s.view.Area)
	p := &page.Page{
		Q: w.quote, Area: here.ID, Metric: s.view.Metric, Typed: s.view.Typed, Wrong: s.view.Wrong, Glossary: glossary,
	}
	strip := s.elsewhere()
	if strip != nil {
		q := *w.quote
		q.Findings = slices.Concat([]config.Finding{otherEditionFinding}, q.Findings)
		p.Q = &q
	}
	if s.view.Keeping && s.view.Area == "needs" {
		here = &keeping
	}
	p.Words = here.Words
	draw := here.load(s, p, w)
	p.Soon = s.soon
	frame := &page.Frame{Page: p, Theme: s.view.Theme, Undo: s.req.Undo, Redo: s.req.Redo, Kept: s.req.Kept}
	for _, a := range tabs {
		frame.Tabs = append(frame.Tabs, page.Tab{ID: a.ID, Name: a.Name, Gist: a.Gist(p), Codes: a.Codes})
	}
	return &screen{p, here.Name, s.notice, draw, frame, s.guidePage(p), guided, strip}, nil
}

// regions draws every region of the page, by the id of its element: one piece of
// HTML after another.
func (v *screen) regions() map[string][]string {
	next := v.guide.Point()
	area := markup.Many(tour.Strip(v.guide), v.strip.Draw(), v.draw()).Pieces()
	tabs := v.frame.Areas().Pieces()
	for _, pieces := range [][]string{area, tabs} {
		for i := range pieces {
			pieces[i] = tour.Pointed(pieces[i], next)
		}
	}
	return map[string][]string{
		"masthead": v.frame.Masthead().Pieces(), "areas": tabs, "main": area, "standing": page.Standing(v.Page).Pieces(),
	}
}

// title of the browser window.
func (v *screen) title() string {
	if v.name == keeping.Name {
		return "Catalogue – Boxwright"
	}
	return v.name + " – " + page.Subject(v.Page) + " – Boxwright"
}

// said is read out after a change.
func (v *screen) said() string {
	instruction := ""
	if v.guided {
		instruction = v.guide.Instruction()
	}
	return page.Live(v.Page, instruction, v.notice)
}
