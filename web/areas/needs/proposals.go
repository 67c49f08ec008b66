package needs

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/told"
)

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
		El("div", Class("fields close"),
			page.LongField(p.Page, "title", "Unit name or number", d.Title, "Heads every page of the quote"),
			page.Choose(p.Page, "needs.duty", "Duty", n.Duty, "", words(quote.Duties, "any")),
			size(p, "crew", "people", "Driver and crew; blank = any"),
			size(p, "patients", "at once", ""),
			page.Choose(p.Page, "needs.type", "Type", n.Type, "", []page.Choice{{"", "any"}, {"I", "I, cab-chassis"},
				{"II", "II, van"}, {"III", "III, cutaway"}, {quote.MediumDuty, "medium-duty"}}),
			page.Choose(p.Page, "needs.fuel", "Fuel", n.Fuel, "", []page.Choice{{"", "either"}, {"gasoline",
				"gasoline"}, {"diesel", "diesel"}}),
			page.Choose(p.Page, "needs.drive", "Drive", n.Drive, "", []page.Choice{{"", "either"}, {"4x2", "4x2"},
				{"4x4", "4x4"}}),
			page.Choose(p.Page, "needs.roads", "Roads", n.Roads, "Snow and grades ask for four-wheel drive",
				words(quote.RoadKinds, "any")),
			page.Choose(p.Page, "needs.climate", "Climate", n.Climate, "", words(quote.Climates, "any")),
			page.Choose(p.Page, "terms.buyer", "Who buys", d.Terms.Buyer, "Decides the sales tax that is assumed",
				page.BuyerChoices()),
			howMany(p),
			when(p),
			page.Number(p.Page, "terms.budget", "Budget", page.Blank(d.Terms.Budget), p.Q.Book.Currency,
				"For the whole order: "+p.Q.Price.Basis()),
		),
		sizes(p),
		wishes(p),
		asks(p),
		El("div", Class("row-tools"), At("id", "proposing-row"), At("tabindex", "-1"),
			page.Action("propose", "", "", "Propose three units", Class("main"), At("id", "propose")), begunOn(p),
			If(p.View.Proposed != "" && p.Search == nil && !p.Proposing,
				El("span", Class("soft"), Text("The needs have changed: propose again.")))),
		When(p.toldHere(), func() Part { return p.Told.Draw() }),
		When(p.Proposing || p.Search != nil, func() Part {
			return El("section", At("id", "answer"), At("tabindex", "-1"), At("aria-label", "What fits the needs"),
				If(p.leads() != "", At("data-leads", p.leads())),
				If(p.Proposing, El("div", At("id", "proposing"), page.Working())),
				When(p.Search != nil, func() Part { return proposed(p) }))
		}),
	)
}

// begunOn names the chassis that proposals begin with, and lets the customer drop it.
func begunOn(p *Page) Part {
	c := p.Q.Edition.Cat.ChassisByID(p.Q.Draft.Needs.Begun)
	if c == nil {
		return nil
	}
	return El("p", Text("Proposals start with your chassis: "+c.Label+" "),
		page.Action("begun-off", "", "", "Any chassis", Class("quiet"), At("id", "begun-off")))
}

// howMany asks how many units are wanted, as Price does; of an order of several kinds
// the numbers stand there.
func howMany(p *Page) Part {
	d := p.Q.Draft
	if len(d.More) > 0 {
		return nil
	}
	return page.Number(p.Page, "item.0.units", "How many alike", page.Whole(d.Terms.Count()), "units", "")
}

// toldHere reports whether the last press took a unit that was proposed.
func (p *Page) toldHere() bool { return p.Told != nil && told.IsUnit(p.Told.Told.At) }

// sizes asks for what module, station and road allow, folded; what was asked of them is listed
// below, and named on the fold.
func sizes(p *Page) Part {
	hints := []struct{ id, hint string }{{"module", ""}, {"module_most", ""}, {"headroom", "At least, over the floor"},
		{"height", "The bay's door, roof equipment included"}, {"length", "The bay, bumpers and steps included"},
		{"loading", "At most, at the rear, loaded"}, {"turning", "At most, between curbs"}}
	n := 0
	for _, x := range hints {
		if quote.SizeByID(x.id).Asked(&p.Q.Draft.Needs) != 0 {
			n++
		}
	}
	said := "lengths, headroom, heights, turning circle"
	if n > 0 {
		said = page.Count(n, "size", "sizes") + " asked for"
	}
	return El("details", At("id", "sizes"),
		page.Summary("h3", "Module, station and road", Text(": "+said)),
		El("div", Class("fields close"), Each(hints, func(_ int, x struct{ id, hint string }) Part {
			return size(p, x.id, "", x.hint)
		})))
}

// fieldLabels are those of fields that say more than the name of their size.
var fieldLabels = map[string]string{"crew": "Seats for", "module": "Module length, at least",
	"module_most": "Module length, at most"}

// size is the field of a need that is a number.
func size(p *Page, id, unit, hint string) Part {
	s := quote.SizeByID(id)
	value := ""
	if v := s.Asked(&p.Q.Draft.Needs); v != 0 {
		value = p.Plain(v, s.Unit)
	}
	if unit == "" {
		unit = p.UnitName(s.Unit)
	}
	return page.Number(p.Page, "needs."+id, cmp.Or(fieldLabels[id], s.Label), value, unit, hint)
}

// found says how many pairs of chassis and module were looked at, and how far.
func found(s *propose.Search, finished int) string {
	said := "No pair of chassis and module can meet the musts"
	switch {
	case s.Pairs > 0:
		said = page.Count(s.Pairs, "pair", "pairs") + " of chassis and module can meet the musts"
		if s.Refused > 0 {
			said += ", " + page.Whole(s.Refused) + " more of the kind asked for cannot"
		}
	case s.Refused > 0:
		said += ", none of the " + page.Whole(s.Refused) + " of the kind asked for"
	}
	said += "; " + page.Count(finished, "unit was", "units were") + " worked out to the last option"
	if s.Unlooked > 0 {
		said += ", and " + page.Count(s.Unlooked, "pair was", "pairs were") + " left at an estimate of price, date " +
			"and weight"
	}
	return said + ". Nothing better was found that keeps as much of the standard; that none exists is not proven."
}

// proposed are the three units, what would have to go where none meets everything,
// and how they were found.
func proposed(p *Page) Part {
	s := p.Search
	finished := s.Finished
	if p.Giving != nil {
		finished += p.Giving.Finished
	}
	said := found(s, finished)
	if s.Unknown != nil {
		said += " The catalogue says nothing of: " + strings.Join(s.Unknown, ", ") + "."
	}
	offered := s.Offered()
	if units := distinct(offered); len(units) > 0 && p.View.Find == "" {
		p.Answer = page.Count(len(units), "proposal.", "proposals.")
		for _, x := range units {
			p.Answer += " " + x.Title + ": " + x.Quote.Chassis.Label + ", " + x.Quote.Total() + "."
		}
	}
	return Many(
		When(s.Begun != nil, func() Part {
			why := s.Begun.Why(p.System())
			return If(why != "", El("p", Class("notice"), At("id", "begun-none"), Text(why)))
		}),
		giveUps(p),
		When(len(offered) > 0, func() Part {
			return El("div", Class("three"),
				Each(distinct(offered), func(i int, x propose.Proposal) Part {
					return card(p, &x, If(i == 0, Many(At("id", firstCard), At("tabindex", "-1"))))
				}),
			)
		}),
		When(s.Aside != nil, func() Part {
			x := s.Aside
			return El("details", At("id", "aside"),
				page.Summary("h3", x.Title, Text(": "+x.Quote.Total()+", "+x.Quote.Chassis.Label)),
				El("div", Class("three"), card(p, x, nil)))
		}),
		If(len(s.Proposals) == 0 && p.Giving != nil && len(p.Giving.List) == 0,
			El("p", Class("notice"), Text("No unit of this catalogue meets the "+
				"musts, nor does one without any of them that was tried."))),
		El("p", Class("how"), Text(said)))
}

// giveUps offers what would have to go, the mildest first.
func giveUps(p *Page) Part {
	if !p.Search.Short {
		return nil
	}
	const title = "No unit found has everything"
	section := func(parts ...Part) Part {
		return El("section", Class("give-ups"), At("id", giveUpList), At("tabindex", "-1"), At("aria-label", title),
			El("h3", Text(title)), Many(parts...))
	}
	if p.Giving == nil {
		return section(El("p", Class("soft"), Text("Looking for the least that would have to go …")))
	}
	if len(p.Giving.List) == 0 {
		return nil
	}
	ways := page.Count(len(p.Giving.List), "way", "ways") + " to go on."
	p.Answer = strings.TrimSpace(title + ". " + p.Giving.Cause + " " + ways + " " + p.Answer)
	undue := map[string]bool{} // what was said once of a declaration
	few := min(len(p.Giving.List), fewWays)
	way := func(i int, g propose.GiveUp) Part {
		n := strconv.Itoa(i)
		how := p.Q.Edition.Cat.LabelOf(g.Unit.Chassis) + " · " + p.Q.Edition.Cat.LabelOf(g.Unit.Body) + ". " +
			p.Q.Price.Currency + " " + g.Price.Show() + ", safe date (90 %) " + g.Safe.Long() + ", " +
			p.Show(float64(g.Payload), quantity.Pound) + " of remaining payload."
		said := " " + g.Undue
		if undue[g.Undue] {
			said = " Its declaration is not kept either, by the same figures."
		}
		undue[g.Undue] = true
		head, items := lacks(p, g.Missing, g.Other)
		return El("li", El("p", Text(g.Said(p.System()))),
			When(g.Thin != nil, func() Part { // said before it can be pressed
				return El("p", Class("how"), page.Mark(config.Warn),
					Text(" Little to spare. "+propose.ThinWords(g.Thin, p.System())))
			}),
			If(g.Undue != "", El("p", Class("how"), page.Mark(config.Warn), Text(said))),
			page.Action("give-up", n, "", g.Press(p.System()), At("id", "give-up-"+n)),
			El("span", Class("how"), Text(how)), named("lacks-"+n, head, items))
	}
	return section(
		El("p", Text(p.Giving.Cause+" Any one of these is enough:")),
		El("ul", Class("mends"), Each(p.Giving.List[:few], way)),
		If(few < len(p.Giving.List), El("details", At("id", "more-ways"),
			El("summary", Text(page.Count(len(p.Giving.List)-few, "more way", "more ways"))),
			El("ul", Class("mends"), Each(p.Giving.List[few:], func(i int, g propose.GiveUp) Part {
				return way(few+i, g)
			})))),
		If(p.Giving.Barest.Sign() > 0, El("p", Class("how"), Text("With nothing in it but what is asked for and what "+
			"the rules need, the least found is "+p.Q.Price.Currency+" "+p.Giving.Barest.Show()+"."))))
}

// fewWays stand open of what would have to go.
const fewWays = 2

// fewNames are named of a longer list; the rest is a press away.
const fewNames = 3

// lacks names what of the standard a unit goes without and what it has in the place of
// it, what matters most first, with a head for them.
func lacks(p *Page, missing []string, other []propose.Exchange) (head string, items []string) {
	cat := p.Q.Edition.Cat
	var heads []string
	if n := len(missing); n > 0 {
		heads = append(heads, "leaves out "+page.Count(n, "standard item", "standard items"))
		items = append(items, labels(p, missing)...)
	}
	if n := len(other); n > 0 {
		heads = append(heads, "has another in the place of "+page.Count(n, "standard item", "standard items"))
		for _, x := range other {
			items = append(items, cat.LabelOf(x.Instead)+" for "+cat.LabelOf(x.Standard))
		}
	}
	if items == nil {
		return "", nil
	}
	return page.Capital(strings.Join(heads, " and ")), items
}

// named lists items after what is said of them, those above the first few in a fold; nothing of
// none.
func named(id, head string, items []string) Part {
	if len(items) <= fewNames+1 {
		return If(items != nil, El("p", Class("how"), Text(head+": "+strings.Join(items, "; ")+".")))
	}
	return El("details", At("id", id),
		El("summary", Class("how"), Text(head+": "+strings.Join(items[:fewNames], "; ")+" and "+
			page.Count(len(items)-fewNames, "more", "more"))), plain(items[fewNames:]))
}

func plain(items []string) Part {
	return El("ul", Class("plain"), Each(items, func(_ int, item string) Part { return El("li", Text(item)) }))
}

// distinct are proposals with each unit once, under all that it is best by.
func distinct(list []propose.Proposal) []propose.Proposal {
	var out []propose.Proposal
	for _, x := range list {
		if x.Also != "" {
			x.Title += ", " + x.Also
		}
		same := func(o propose.Proposal) bool { return quote.SameLoad(&o.Unit, &x.Unit, false) }
		if i := slices.IndexFunc(out, same); i >= 0 {
			out[i].Title += ", " + strings.ToLower(x.Title)
			out[i].Among = cmp.Or(out[i].Among, x.Among)
			continue
		}
		out = append(out, x)
	}
	return out
}

// Where the reader stands once the needs are answered: at what would have to go, if something
// must, and else at the first proposal.
const (
	giveUpList = "give-ups"
	firstCard  = "first-proposal"
)

// leads is the one of them that there is; empty while neither is.
func (p *Page) leads() string {
	switch {
	case p.Search == nil:
		return ""
	case p.Search.Short && (p.Giving == nil || len(p.Giving.List) > 0):
		return giveUpList
	case p.Search.Offered() != nil:
		return firstCard
	}
	return ""
}

func card(p *Page, x *propose.Proposal, mark Part) Part {
	q := x.Quote
	taken := quote.SameLoad(&x.Unit, &p.Q.Draft.Unit, false)
	figure := func(code string) Part {
		f, _ := q.Figure(code)
		if f.Sense != "" {
			return Many(Text(p.Signed(f.Margin(), f.Unit)+" "), page.Mark(page.SeverityOf(f)))
		}
		s := page.SeverityIn(q, f)
		return Many(Text(p.Show(f.Value, f.Unit)+" "), If(s != "", page.Mark(s)))
	}
	left := page.AmpsLeft(q)
	amps := Many(Text(p.Show(left.Value, left.Unit)+" "), page.Mark(page.SeverityOf(left)))
	list := func(label string, items []string) Part {
		return If(items != nil,
			Many(El("h4", Text(label)), plain(items)))
	}
	lackHead, lackItems := lacks(p, x.Missing, x.Other)
	row := func(label string, value Part) Part { return Many(El("dt", Text(label)), El("dd", value)) }
	title := x.Title
	if x.Among != "" {
		title += ", " + x.Among
	}
	return El("section", Class("card"), mark, page.Group(title),
		El("h3", Text(title)), El("p", Class("big"), Text(q.Total())), El("p", Class("how"), Text(q.PriceWords())),
		El("p", Text(q.Chassis.Label+" · "+q.Body.Label)),
		El("dl", row("Remaining payload", figure("weight.payload-left")), row("Front axle", figure("weight.front-axle")),
			row("Rear axle", figure("weight.rear-axle")), row("Amps left, hot", amps), row("Seats", figure("space.seats")),
			row("Likely (50 %)", Text(q.Plan.EvenOdds.Short())),
			row("Safe (90 %)", Text(q.Plan.NineInTen.Short()))),
		When(x.Thin != nil, func() Part {
			return El("p", Class("notice warn"), page.Mark(config.Warn), El("b", Text(" Little to spare. ")),
				Text(propose.ThinWords(x.Thin, p.System())+" "+p.Search.Sounder(x, p.System())))
		}),
		If(taken, El("p", El("span", Class("tag mine"), Text("Showing now")))),
		list("Does not meet", x.Misses), list("To check", x.Checks),
		page.Action("take-proposal", string(x.Goal), "", "Take this one", At("id", "take-"+string(x.Goal)),
			At("aria-label", "Take this one: "+title)),
		givesUp(x, list("Beside the others", p.Search.Gives(x, p.System())),
			list("Wants that it does without", labels(p, x.Dropped)), list(lackHead, lackItems)))
}

// givesUp folds what a proposal gives up; nothing where that is nothing.
func givesUp(x *propose.Proposal, lists ...Part) Part {
	if !slices.ContainsFunc(lists, func(l Part) bool { return l != nil }) {
		return nil
	}
	said := "What it gives up"
	if n := len(x.Dropped); n > 0 {
		said += ", " + page.Count(n, "want", "wants") + " among it"
	}
	return El("details", At("id", "gives-"+string(x.Goal)), El("summary", Text(said)), Many(lists...))
}

// labels are the names of options; nil of none.
func labels(p *Page, ids []string) []string {
	var out []string
	for _, id := range ids {
		out = append(out, p.Q.Edition.Cat.LabelOf(id))
	}
	return out
}
