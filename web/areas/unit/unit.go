// Package unit is the Unit area: choosing chassis, module and options, and why something cannot be had.
package unit

import (
	"cmp"
	"slices"

	"boxwright/config"
	"boxwright/pricing/propose"
	"boxwright/web/areas"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
	"boxwright/web/told"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "unit",
	Name:     "Unit",
	Section:  areas.Build,
	Codes:    []string{"rules"},
	Gist:     gist,
	Words:    words,
	Load:     load,
	Acts:     acts,
	Families: families,
	Tells:    true,
	Rehearse: []func(*session.Session){showChassis, pickAny},
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	View *session.View
	Ways *propose.Ways // answers the open "why"; nil while it is worked out
	Told *told.Page    // what the last press changed beyond itself

	Picture Part // of the unit; its frame alone while it is drawn
}

func gist(p *page.Page) string {
	mine := 0
	for _, x := range p.Q.Draft.Unit.Picks {
		if !x.Filled {
			mine++
		}
	}
	return page.Count(mine, "choice", "choices") + " of " + page.Whole(len(p.Q.Draft.Unit.Picks))
}

func draw(p *Page) Part {
	u := p.Q.Draft.Unit
	cat := p.Q.Edition.Cat
	return Many(
		page.Heading("Unit", "Choose what the customer wants. The rest is filled in, and your choices replace it."),
		El("p", Class("subject"), El("b", Text(cat.LabelOf(u.Chassis))), Text(" · "), El("b", Text(cat.LabelOf(u.Body)))),
		page.Found(p.Page, page.Only(p.Q.Findings, "rules."), ""),
		completions(p),
		When(!p.toldInRow(), func() Part { return p.Told.Draw() }),
		chapters(p),
		El("div", Class("choices"), At("id", "options"), At("tabindex", "-1"), chapter(p)),
		p.Picture,
	)
}

// toldAt reports whether the last press was at this thing and changed others.
func (p *Page) toldAt(id string) bool { return p.Told != nil && p.Told.Told.At == id }

// toldInRow reports whether the row of what was pressed is in sight.
func (p *Page) toldInRow() bool {
	if p.Told == nil {
		return false
	}
	at, here := p.Told.Told.At, p.View.ChapterIn(p.Q.Edition.Cat)
	cat := p.Q.Edition.Cat
	switch o := cat.OptionByID(at); {
	case o != nil && p.View.Search != "":
		m := slices.IndexFunc(cat.Options, func(x config.Option) bool { return x.ID == at })
		return p.Shown(o) && p.finder()(m)
	case o != nil:
		return cat.GroupByID(o.Group).Chapter == here && p.Shown(o)
	case cat.ChassisByID(at) != nil:
		return here == session.ChapterChassis
	}
	return cat.BodyByID(at) != nil && here == session.ChapterModule
}

// chapters is the row of headings, and the search beside it.
func chapters(p *Page) Part {
	here := p.View.ChapterIn(p.Q.Edition.Cat)
	list := []config.Chapter{{ID: session.ChapterChassis, Label: "Chassis"}, {ID: session.ChapterModule, Label: "Module"}}
	for _, c := range p.Q.Edition.Cat.Chapters {
		if p.offers(c.ID) {
			list = append(list, c)
		}
	}
	return El("div", Class("chapters"),
		El("div", Class("row"), At("role", "toolbar"), At("aria-label", "Chapters"),
			Each(list, func(i int, c config.Chapter) Part {
				return page.Action("chapter", c.ID, "", c.Label, At("id", "chapter-"+c.ID),
					page.InRow(c.ID == here || here == "" && i == 0), If(c.ID == here, At("aria-current", "true")))
			})),
		El("input", Class("find"), At("type", "search"), At("id", "f-search"), At("data-act", "search"),
			At("data-live", "1"), At("value", p.View.Search), At("placeholder", "Find an option"), At("aria-label",
				"Find an option"), At("autocomplete", "off")),
	)
}

// completions fill what the customer left open, for one aim at a press.
func completions(p *Page) Part {
	press := func(id, label string) Part { return page.Action("complete", id, "", label, At("id", "complete-"+id)) }
	return El("div", Class("row-tools complete"), El("span", Class("soft"), Text("Keep my choices and fill the rest:")),
		press("", "as standard"), press("cheapest", "cheapest"), press("lightest", "lightest"), press("soonest",
			"soonest"))
}

func chapter(p *Page) Part {
	cat := p.Q.Edition.Cat
	switch id := p.View.ChapterIn(p.Q.Edition.Cat); id {
	case "":
		return Many(p.heading("Options found"), found(p))
	case session.ChapterChassis:
		return Many(p.heading("Chassis"), chassisChoice(p))
	case session.ChapterModule:
		return Many(p.heading("Module"), moduleChoice(p))
	default:
		var list []listed
		for i := range cat.Groups {
			if g := &cat.Groups[i]; g.Chapter == id {
				list = append(list, listed{group: g, members: p.offered(cat.Members(g.ID))})
			}
		}
		at := slices.IndexFunc(cat.Chapters, func(c config.Chapter) bool { return c.ID == id })
		return Many(p.heading(cat.Chapters[at].Label), groups(p, list))
	}
}

// heading of a chapter, for those who go by headings; others see which button is lit.
func (p *Page) heading(label string) Part {
	p.Answer = cmp.Or(p.Answer, label)
	return El("h2", Class("hidden-text"), Text(label))
}

// offers reports whether a chapter has anything to show.
func (p *Page) offers(chapter string) bool {
	cat := p.Q.Edition.Cat
	for i := range cat.Groups {
		if g := &cat.Groups[i]; g.Chapter == chapter &&
			slices.ContainsFunc(cat.Members(g.ID), func(m int) bool { return p.Shown(&cat.Options[m]) }) {
			return true
		}
	}
	return false
}
