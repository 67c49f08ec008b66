package app

import (
	"boxwright/pricing/link"
	"boxwright/web/areas"
	"boxwright/web/areas/catalogue"
	"boxwright/web/areas/compare"
	"boxwright/web/areas/delivery"
	"boxwright/web/areas/needs"
	"boxwright/web/areas/power"
	"boxwright/web/areas/price"
	"boxwright/web/areas/quote"
	"boxwright/web/areas/space"
	"boxwright/web/areas/unit"
	"boxwright/web/areas/weight"
	tour "boxwright/web/guide"
	"boxwright/web/page"
	"boxwright/web/page/markup"
)

// area is an area of the page and how it is loaded: load gives what draws it.
type area struct {
	*areas.Area
	load func(*session, *page.Page, *worked) func() markup.Part
}

// tabs are the areas in the order of the job. A new area is a package and a line
// here.
var tabs = []area{
	{&needs.Area, loadNeeds},
	{&unit.Area, loadUnit},
	{&weight.Area, loadWeight},
	{&power.Area, loadPower},
	{&space.Area, loadSpace},
	{&delivery.Area, loadDelivery},
	{&price.Area, loadPrice},
	{&compare.Area, loadCompare},
	{&quote.Area, loadQuote},
}

// keeping is the catalogue's own part, which takes the place of Needs.
var keeping = area{&catalogue.Area, loadKeeping}

// glossary is every word that some area explains.
var glossary = allWords()

func allWords() []*page.Term {
	var out []*page.Term
	for _, a := range tabs {
		out = append(out, a.Words...)
	}
	return out
}

// Areas are the ids of the areas in the order of their tabs.
func Areas() []string {
	var ids []string
	for _, a := range tabs {
		ids = append(ids, a.ID)
	}
	return ids
}

// areaOf finds an area by its id; the first one when there is none of that name.
func areaOf(id string) *area {
	for i := range tabs {
		if tabs[i].ID == id {
			return &tabs[i]
		}
	}
	return &tabs[0]
}

func loadNeeds(s *session, p *page.Page, w *worked) func() markup.Part {
	v := &needs.Page{Page: p, View: s.view, Guide: s.guidePage(p)}
	s.mountings(v, w)
	s.proposals(v)
	return func() markup.Part { return needs.Draw(v) }
}

func loadUnit(s *session, p *page.Page, w *worked) func() markup.Part {
	v := &unit.Page{Page: p, View: s.view, Notice: s.notice}
	s.explain(v, w)
	return func() markup.Part { return unit.Draw(v) }
}

func loadWeight(s *session, p *page.Page, _ *worked) func() markup.Part {
	v := &weight.Page{Page: p, View: s.view, Lessons: s.offered()}
	return func() markup.Part { return weight.Draw(v) }
}

func loadPower(_ *session, p *page.Page, _ *worked) func() markup.Part {
	return func() markup.Part { return power.Draw(&power.Page{Page: p}) }
}

func loadSpace(_ *session, p *page.Page, _ *worked) func() markup.Part {
	return func() markup.Part { return space.Draw(&space.Page{Page: p}) }
}

func loadDelivery(s *session, p *page.Page, w *worked) func() markup.Part {
	v := &delivery.Page{Page: p, View: s.view}
	s.dates(v, w)
	return func() markup.Part { return delivery.Draw(v) }
}

func loadPrice(s *session, p *page.Page, _ *worked) func() markup.Part {
	v := &price.Page{Page: p}
	s.private(v)
	return func() markup.Part { return price.Draw(v) }
}

func loadCompare(s *session, p *page.Page, _ *worked) func() markup.Part {
	v := &compare.Page{Page: p, View: s.view, Others: s.others()}
	return func() markup.Part { return compare.Draw(v) }
}

func loadQuote(s *session, p *page.Page, w *worked) func() markup.Part {
	v := &quote.Page{Page: p, View: s.view, Base: s.req.Base}
	v.Link, v.Covered = s.draft.Issued, s.covered(s.draft.Issued)
	if s.other != nil {
		v.Link, v.Covered = s.other.Issued, s.covered(s.other.Issued)
	} else if v.Link == "" {
		var err error
		if v.Link, err = link.Encode(w.quote); err != nil {
			s.fault("No link can be made: %s.", sentence(err))
		} else {
			v.Covered = link.WithCover(v.Link, link.Cover(s.draft, link.Freeze(w.quote)))
		}
	}
	if s.other == nil {
		s.trust(v)
	}
	v.Foreign = s.foreign()
	s.shelf(v)
	v.Reader = s.view.Received != "" && s.view.Received == s.mark()
	return func() markup.Part { return quote.Draw(v) }
}

func loadKeeping(s *session, p *page.Page, _ *worked) func() markup.Part {
	v := &catalogue.Page{Page: p, Keeper: s.keeper()}
	return func() markup.Part { return catalogue.Draw(v) }
}

// guidePage is what the guided quote is drawn from.
func (s *session) guidePage(p *page.Page) *tour.Page {
	return &tour.Page{Page: p, View: s.view, Undo: s.req.Undo, Kept: s.req.Kept}
}
