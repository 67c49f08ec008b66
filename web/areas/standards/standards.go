// Package standards is the Standards area: which rules judge the unit, what they say about
// it, and the purchaser's own limits.
package standards

import (
	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/web/areas"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "standards",
	Name:     "Standards",
	Section:  areas.Ask,
	Codes:    []string{"standard"},
	Gist:     gist,
	Clear:    clear,
	Words:    words,
	Load:     load,
	Fields:   fields,
	Families: families,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
}

// missed is how many clauses the unit does not meet.
func missed(p *page.Page) (n int) {
	for _, v := range p.Q.Verdicts {
		if v.Outcome == standards.NotMet {
			n++
		}
	}
	return n
}

func gist(p *page.Page) string {
	if n := missed(p); n > 0 {
		return page.Count(n, "clause", "clauses") + " not met"
	}
	return "no clause missed"
}

func clear(p *page.Page) Part {
	if missed(p) > 0 {
		return page.Mark(config.Warn)
	}
	return page.Mark("")
}

func load(_ *session.Session, p *page.Page, _ *session.Worked) func() Part {
	return func() Part { return draw(&Page{p}) }
}

func draw(p *Page) Part {
	return Many(
		page.Heading("Standards", "Which rules judge the unit, and what they say about it."),
		page.Found(p.Page, page.Only(p.Q.Findings, "standard."), ""),
		ruleSets(p),
		compliance(p),
		ownLimits(p),
	)
}

// ruleSets chooses what judges the unit, and the purchaser's own values.
func ruleSets(p *Page) Part {
	u := p.Q.Draft.Unit
	chosen, _ := standards.Split(u.RuleSet)
	has := func(id string) bool {
		for _, s := range chosen {
			if s.ID == id {
				return true
			}
		}
		return false
	}
	var base, add []standards.Set
	for _, s := range standards.Sets() {
		if s.AddOn {
			add = append(add, s)
		} else {
			base = append(base, s)
		}
	}
	set := func(kind string, name string, s standards.Set) Part {
		id := "rule-" + s.ID
		return El("li", El("label", At("for", id),
			El("input", At("type", kind), At("id", id), At("name", name), At("data-act", "set"),
				At("data-id", "rule."+s.ID), Flag("checked", has(s.ID))),
			El("b", Text(" "+s.Label)), El("span", Class("how"), Text(s.Note))))
	}
	mass := func(v quantity.Mass) string {
		if v == 0 {
			return ""
		}
		return p.Plain(float64(v), quantity.Pound)
	}
	unitName := p.UnitName(quantity.Pound)
	usual := func(l config.Limit) string {
		return "Blank = " + p.Show(l.Value, quantity.Pound) + ": " + l.Basis.Known(l.Source)
	}
	minimum := "Blank = the rule set's minimum"
	if l, ok := p.Q.Assume.Limits["weight.payload"]; ok {
		minimum = "Blank = the rule set's; in force: " + p.Show(l.Value, quantity.Pound) + ", " +
			l.Basis.Known(l.Source)
	}
	return page.Block("Rules that judge it",
		El("div", Class("columns"),
			El("fieldset", El("legend", Text("Standard")),
				El("ul", Class("picks"),
					Each(base, func(_ int, s standards.Set) Part { return set("radio", "base-set", s) }))),
			El("fieldset", El("legend", Text("State and county rules")),
				El("ul", Class("picks"),
					Each(add, func(_ int, s standards.Set) Part { return set("checkbox", "", s) }))),
		),
		El("div", Class("fields"),
			page.Number(p.Page, "unit.occupant_lb", "Each seated person", mass(u.OccupantLb), unitName,
				usual(p.Q.Assume.OccupantLb)),
			When(len(p.Q.Space.Cots) > 0, func() Part {
				return page.Number(p.Page, "unit.patient_lb", "Each patient on a cot", mass(u.PatientLb), unitName,
					usual(p.Q.Assume.PatientLb))
			}),
			page.Number(p.Page, "unit.payload_lb", "Payload the unit must have", mass(u.PayloadLb), unitName, minimum),
		),
	)
}
