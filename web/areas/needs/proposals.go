package needs

import (
	"slices"
	"strings"

	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// mostFound is how many options a search among wishes shows.
const mostFound = 12

// proposals asks for the needs in the trade's words and answers them.
func proposals(p *Page) Part {
	d := p.Q.Draft
	n := d.Needs
	words := func(list []quote.Need, none string) []page.Choice {
		out := []page.Choice{{"", none}}
		for _, w := range list {
			out = append(out, page.Choice{w.ID, w.Label})
		}
		return out
	}
	return El("section", Class("block screen"), At("id", "proposals"), At("tabindex", "-1"),
		El("h2", Text("What it is for")),
		El("p", Class("lead"),
			Text("Say what the unit must do, and three full units that can be built are proposed: the lowest price, "+
				"the most carrying margin, the earliest delivery. The day it is needed, the standard, the equipment "+
				"and the people's weights count too.")),
		El("div", Class("fields"),
			page.Choose(p.Page, "needs.duty", "Duty", n.Duty, "", words(quote.Duties, "any")),
			page.Number(p.Page, "needs.crew", "Seats for", page.DayCount(n.Crew), "people",
				"Driver and crew; empty takes what comes"),
			page.Number(p.Page, "needs.patients", "Patients on cots", page.DayCount(n.Patients), "at once", ""),
			page.Choose(p.Page, "needs.roads", "Roads", n.Roads, "Snow and grades ask for four-wheel drive",
				words(quote.RoadKinds, "any")),
			page.Choose(p.Page, "needs.climate", "Climate", n.Climate, "", words(quote.Climates, "any")),
			page.Choose(p.Page, "needs.type", "Type", n.Type, "",
				[]page.Choice{{"", "any"}, {"I", "I, cab-chassis"}, {"II", "II, van"}, {"III", "III, cutaway"}}),
			page.Choose(p.Page, "needs.fuel", "Fuel", n.Fuel, "",
				[]page.Choice{{"", "either"}, {"gasoline", "gasoline"}, {"diesel", "diesel"}}),
			page.Number(p.Page, "terms.budget", "Budget", page.Blank(d.Terms.Budget), p.Q.Book.Currency,
				"For the whole order"),
		),
		wishes(p),
		El("div", Class("row-tools"), page.Action("propose", "", "", "Propose three units", Class("main"),
			At("id", "propose")),
			If(p.View.Proposed != "" && p.Search == nil && !p.Proposing,
				El("span", Class("soft"), Text("The needs have changed: propose again.")))),
		If(p.Proposing, El("div", At("id", "proposals"), At("tabindex", "-1"), page.Working())),
		When(p.Search != nil, func() Part { return proposed(p) }),
	)
}

// wishes are the options asked for by name, and a search for more.
func wishes(p *Page) Part {
	cat, n := p.Q.Edition.Cat, p.Q.Draft.Needs
	must, like := n.Wishes(cat)
	list := func(label, kind string, ids, own []string) Part {
		if ids == nil {
			return nil
		}
		return Many(El("h3", Text(label)), El("ul", Class("wishes"), Each(ids, func(_ int, id string) Part {
			if !slices.Contains(own, id) {
				return El("li", Text(cat.LabelOf(id)+" "), El("span", Class("tag"), Text("from the needs")))
			}
			return El("li", Text(cat.LabelOf(id)+" "), page.Action("wish", id, "", "Take off", Class("quiet"),
				At("id", "unwish-"+id), At("aria-label", "Take off: "+cat.LabelOf(id))))
		})))
	}
	var found []Part
	if words := strings.Fields(strings.ToLower(p.View.Find)); len(words) > 0 {
		for i := range cat.Options {
			o := &cat.Options[i]
			text := strings.ToLower(o.Label + " " + o.Spec + " " + cat.GroupByID(o.Group).Label)
			if len(found) == mostFound || !p.Shown(o) ||
				slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(text, w) }) {
				continue
			}
			press := func(kind, label string) Part {
				return page.Action("wish", o.ID, kind, label, Class("quiet"), At("id", kind+"-"+o.ID),
					At("aria-label", label+": "+o.Label))
			}
			found = append(found, El("li", Text(o.Label+" "), press("must", "Must have"), press("like", "Would like")))
		}
		if found == nil {
			found = append(found, El("li", Class("soft"), Text("No option has these words.")))
		}
	}
	return Many(
		El("div", Class("columns"), El("div", list("Must have", "must", must, n.Must)),
			El("div", list("Would like", "like", like, n.Like))),
		El("div", Class("field"), El("label", At("for", "f-find"), Text("Ask for an option by name")),
			El("input", Class("find"), At("type", "search"), At("id", "f-find"), At("data-act", "find"),
				At("data-live", "1"), At("value", p.View.Find), At("placeholder", "Words of it, such as powered cot"),
				At("autocomplete", "off"))),
		If(found != nil, El("ul", Class("wishes"), Many(found...))))
}

// proposed are the three units and how they were found.
func proposed(p *Page) Part {
	s := p.Search
	said := page.Count(s.Pairs, "pair", "pairs") + " of chassis and module can meet the needs"
	if s.Refused > 0 {
		said += ", " + page.Whole(s.Refused) + " cannot"
	}
	if s.Unlooked > 0 {
		said += ", " + page.Whole(s.Unlooked) + " were not looked at"
	}
	said += ". For each aim the most promising were worked out to the last option, " + page.Whole(s.Finished) +
		" in all; of the others a plain unit was weighed, priced and dated. Nothing better was found; that none " +
		"exists is not proven."
	if s.Unknown != nil {
		said += " The catalogue says nothing of: " + strings.Join(s.Unknown, ", ") + "."
	}
	if len(s.Proposals) == 0 {
		return El("p", Class("notice"),
			Text("No unit of this catalogue meets these needs. Take a must-have off, or ask for fewer seats or "+
				"patients. "+said))
	}
	return Many(El("div", Class("three"), Each(s.Proposals, func(_ int, x propose.Proposal) Part {
		return card(p, &x)
	})), El("p", Class("how"), Text(said)))
}

func card(p *Page, x *propose.Proposal) Part {
	q := x.Quote
	figure := func(code string) Part {
		f, _ := q.Figure(code)
		if f.Sense != "" {
			return Many(Text(p.Signed(f.Margin(), f.Unit)+" "), page.Mark(page.SeverityOf(f)))
		}
		return Text(p.Show(f.Value, f.Unit))
	}
	list := func(label string, items []string) Part {
		return If(items != nil,
			Many(El("h4", Text(label)),
				El("ul", Class("plain"), Each(items, func(_ int, t string) Part { return El("li", Text(t)) }))))
	}
	row := func(label string, value Part) Part { return Many(El("dt", Text(label)), El("dd", value)) }
	return El("section", Class("card"),
		El("h3", Text(x.Title)), El("p", Class("big"), Text(q.Total())),
		El("p", Text(q.Chassis.Label+" · "+q.Body.Label)),
		El("dl", row("Payload left", figure("weight.payload-left")), row("Front axle", figure("weight.front-axle")),
			row("Amps, hot idle", figure("power.idle")), row("Seats", figure("space.seats")),
			row("Even odds", Text(q.Plan.EvenOdds.Long())), row("Nine in ten", Text(q.Plan.NineInTen.Long()))),
		If(x.Ties != nil, El("p", Class("notice"), Text(strings.Join(x.Ties, " ")))),
		list("Does not meet", x.Misses), list("Gives up", x.Gives),
		page.Action("take-proposal", string(x.Goal), "", "Take this one", At("id", "take-"+string(x.Goal)),
			At("aria-label", "Take: "+x.Title)))
}
