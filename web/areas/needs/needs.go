// Package needs is the Needs area: what the unit must do and by when, and the purchaser's list.
package needs

import (
	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/areas"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
	"boxwright/web/told"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "needs",
	Name:     "Needs",
	Section:  areas.Ask,
	Codes:    []string{"unit", "needs"},
	Gist:     gist,
	Clear:    func(p *page.Page) Part { return page.MarkIf(p.Q.Draft.Needs.Any()) },
	Words:    words,
	Load:     load,
	Acts:     acts,
	Fields:   fields,
	Families: families,
	Tells:    true,
	Rehearse: []func(*session.Session){rehearseList},
}

// rehearseList has the core ready for a purchaser's list.
func rehearseList(s *session.Session) {
	bid.ReadAhead(s.Memory.Edition, nil)
	if w, err := s.Work(); err == nil {
		bid.Rehearse(w.Quote, quantity.System(s.View.Metric))
	}
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	View      *session.View
	Told      *told.Page      // what the last press changed beyond itself
	Search    *propose.Search // proposals, while they answer the needs as they are
	Proposing bool            // they are still worked out
	Giving    *propose.Giving // what would have to go; nil while it is worked out
	List      *List           // the purchaser's list, when there is one
}

func gist(p *page.Page) string {
	for _, d := range quote.Duties {
		if d.ID == p.Q.Draft.Needs.Duty {
			return d.Label
		}
	}
	return "no duty chosen yet"
}

func draw(p *Page) Part {
	return Many(
		When(!p.toldHere() && !p.Told.IsAnswers(), func() Part { return p.Told.Draw() }),
		page.Heading("Needs", "Say what the unit must do and by when, and press Propose: you get up to "+
			"three complete units: lowest price, most remaining payload, earliest delivery. A must is always kept. A want "+
			"may be missed, and you see it."),
		proposals(p),
		El("div", At("id", "purchasers-list"), requirements(p)), // who clears the list stays there
	)
}

// when asks for the days that decide.
func when(p *Page) Part {
	return Many(
		page.OrderDay(p.Page, "Delivery is counted from here"),
		page.Day(p.Page, "unit.needed_by", "Needed by", p.Q.Draft.Unit.NeededBy,
			"Checked against the 90 % date; blank = no date"))
}
