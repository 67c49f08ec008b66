package app

import (
	"slices"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/areas/catalogue"
	"boxwright/web/guide"
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
	"boxwright/web/told"
)

// screen is what is shown of the draft: the area that the reader is in with all
// that stands around it.
type screen struct {
	*page.Page
	name    string             // of the area
	draw    func() markup.Part // the area
	frame   *page.Frame
	guide   *guide.Page
	guided  bool                 // the guide has just come to another step
	strip   *catalogue.Elsewhere // while the quote is one of another edition
	told    *told.Page           // what the last press changed beyond itself
	bar     markup.Part          // stands for the masthead and the tabs while a quote is read; nil otherwise
	foreign *quote.Draft         // the quote that is read, of an edition that is not at hand; nil otherwise
}

// load takes from the session what is shown of the draft.
func (a *App) load(s *session.Session) (*screen, *session.Worked, error) {
	s.Begin()
	guided := guide.Follow(s)
	w, err := s.Work()
	if err != nil {
		return nil, nil, err
	}
	s.Rest()
	if s.View.Reading && s.View.Area != "compare" {
		s.View.Area = "quote"
	}
	here := areaOf(s.View.Area)
	// A quote of an edition that is not at hand is read alone, beside nothing of the one in work.
	foreign, _ := s.Foreign()
	if here.ID != "quote" && here.ID != "compare" {
		foreign = nil
	}
	p := &page.Page{
		Q: w.Quote, Today: s.Req.Today, Area: here.ID, Metric: s.View.Metric, Typed: s.View.Typed, Wrong: s.View.Wrong,
		Glossary: glossary, Reading: s.View.Reading || foreign != nil,
	}
	strip := catalogue.LoadElsewhere(s)
	if p.Reading {
		strip = nil
	}
	if strip != nil {
		q := *w.Quote
		q.Findings = slices.Concat([]config.Finding{catalogue.OtherEdition}, q.Findings)
		p.Q = &q
	}
	p.Rows = &a.rows
	area := here.Load(s, p, w)
	draw := func() markup.Part { return markup.Many(area(), page.WordsOf(here.ID, "Words explained", here.Words)) }
	var changes *told.Page
	if !here.Tells {
		changes = told.Load(s, p, w)
	}
	frame := &page.Frame{Page: p, Theme: s.View.Theme, Undo: s.Req.Undo, Redo: s.Req.Redo, Kept: s.Req.Kept,
		Unkept: s.Req.Unkept, Elsewhere: s.Req.Elsewhere}
	for _, a := range tabs {
		gist := ""
		if strip == nil || strip.Frozen == nil {
			gist = a.Gist(p)
		}
		t := page.Tab{ID: a.ID, Name: a.Name, Section: a.Section, Gist: gist, Codes: a.Codes}
		if a.Clear != nil {
			t.Clear = a.Clear(p)
		}
		frame.Tabs = append(frame.Tabs, t)
	}
	v := &screen{Page: p, name: here.Name, draw: draw, frame: frame, strip: strip}
	switch {
	case foreign != nil:
		v.bar, v.foreign = frame.ForeignBar(foreign, !s.View.Reading), foreign
		return v, w, nil
	case s.View.Reading:
		v.bar = frame.ReadingBar(s.Subject(), s.Req.Key != "")
		return v, w, nil
	}
	v.guide, v.guided, v.told = guide.Load(s, p), guided, changes
	return v, w, nil
}

// regions draws every region of the page, by the id of its element: one piece of
// HTML after another.
func (v *screen) regions() map[string][]string {
	if v.bar != nil {
		return map[string][]string{
			"masthead": v.bar.Pieces(), "areas": nil, "main": markup.Many(v.frame.NotKept(), v.draw()).Pieces(),
			"standing": nil,
		}
	}
	next := v.guide.Point()
	area := markup.Many(v.frame.NotKept(), guide.Strip(v.guide), v.strip.Draw(), v.told.Draw(), v.draw()).Pieces()
	tabs := v.frame.Areas().Pieces()
	for _, pieces := range [][]string{area, tabs} {
		for i := range pieces {
			pieces[i] = guide.Pointed(pieces[i], next)
		}
	}
	standing := page.Standing
	if v.signedElsewhere() {
		standing = v.strip.Standing
	}
	return map[string][]string{
		"masthead": v.frame.Masthead().Pieces(), "areas": tabs, "main": area, "standing": standing(v.Page).Pieces(),
	}
}

// signedElsewhere reports whether the quote was signed with another edition: its own
// figures are then shown, and those of the edition in use only in the areas.
func (v *screen) signedElsewhere() bool { return v.strip != nil && v.strip.Frozen != nil }

// title of the browser window.
func (v *screen) title() string {
	if v.Area == catalogue.Area.ID {
		return v.name + " – Boxwright"
	}
	if v.foreign != nil {
		return v.name + " – " + page.NumberOf(v.foreign) + " – Boxwright"
	}
	return v.name + " – " + page.Subject(v.Page) + " – Boxwright"
}
