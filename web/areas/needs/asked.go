package needs

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

const (
	mostNeeds = 6  // beyond these, needs that are met are folded
	mostFound = 12 // options that a search among wishes shows
	mostAsked = 6  // options asked for by name that stand open
)

// asks lists what was asked for beside what the unit showing now has, and lets the customer say
// what is a must: what is not met stands first, and of many needs those that are met are folded.
// Options stand apart: those asked for by name, and those for the duty, the roads and the climate.
func asks(p *Page) Part {
	list := p.Q.Asks(p.System())
	if len(list) == 0 {
		return nil
	}
	var met, missed, named, suited []quote.Ask
	for _, a := range list {
		switch option := p.Q.Edition.Cat.OptionByID(a.ID) != nil; {
		case option && a.Said:
			named = append(named, a)
		case option:
			suited = append(suited, a)
		case a.Missed == "":
			met = append(met, a)
		default:
			missed = append(missed, a)
		}
	}
	const title = "What the customer asked for, and this unit"
	needs := askTable(p, title, slices.Concat(missed, met))
	if len(met)+len(missed) > mostNeeds && met != nil {
		said := page.Count(len(met), "need is met", "needs are met")
		needs = Many(If(missed != nil, askTable(p, title, missed)),
			El("details", At("id", "met"), El("summary", page.Mark(""), Text(" "+said)), askTable(p, said, met)))
	}
	rest := min(len(named), mostAsked)
	return Many(needs,
		If(named != nil, Many(El("h3", Text("Options asked for by name")), optionAsks(p, named[:rest]))),
		askFold(p, "asked-more", page.Whole(len(named)-rest)+" more asked for by name", named[rest:]),
		askFold(p, "suited", page.Count(len(suited), "option", "options")+" for the duty, roads and climate", suited))
}

func askTable(p *Page, caption string, list []quote.Ask) Part {
	t := page.Table{Caption: caption, Class: "asks dense",
		Heads: []string{"Need", "Asked for", "The unit has", "How firm"}}
	for _, a := range list {
		t.Rows = append(t.Rows, askRow(p, a))
	}
	return t.Draw()
}

// askFold is a fold of options, which says how many of them the unit has; nothing of none.
func askFold(p *Page, id, title string, list []quote.Ask) Part {
	in := 0
	for _, a := range list {
		if a.Missed == "" {
			in++
		}
	}
	said := page.Whole(in) + " in the unit"
	switch in {
	case 0:
		said = "none in the unit"
	case len(list):
		said = "all in the unit"
	}
	return If(len(list) > 0, El("details", At("id", id), El("summary", Text(title+": "+said)), optionAsks(p, list)))
}

func askRow(p *Page, a quote.Ask) []Part {
	has := Many(askMark(a), Text(" "+strings.TrimPrefix(a.Has+", "+a.Missed, ", ")+" "), loosening(p, a.ID))
	if a.Missed == "" {
		has = Many(askMark(a), Text(" "+a.Has))
	}
	return []Part{Many(Text(a.Label), If(a.From != "Needs", El("span", Class("how"), Text(a.From)))),
		Text(a.Wanted), has, firmness(a, a.Label+", "+a.Wanted)}
}

func askMark(a quote.Ask) Part {
	switch {
	case a.Missed == "":
		return page.Mark("")
	case a.Must:
		return page.Mark(config.Stop)
	}
	return page.Mark(config.Warn)
}

// firmness says whether a need is a must or a want, and lets the customer say so where that is
// for them to say.
func firmness(a quote.Ask, name string) Part {
	is := page.Either(a.Must, "must", "want")
	if !a.Said {
		return Text(is)
	}
	return El("select", At("id", "f-strength."+a.ID), At("data-act", "set"), At("data-id", "strength."+a.ID),
		At("aria-label", "How firm: "+name), page.Options(is, []page.Choice{{"must", "must"}, {"want", "want"}}))
}

// optionAsks are options asked for, each with its mark and what can be said of it.
func optionAsks(p *Page, list []quote.Ask) Part {
	return El("ul", Class("asked"), Each(list, func(_ int, a quote.Ask) Part {
		said := ""
		if a.Missed != "" {
			said = ", " + a.Missed
		}
		return El("li", askMark(a), El("span", Text(a.Label), El("span", Class("hidden-text"), Text(said)),
			If(!a.Said, El("span", Class("how"), Text(a.From)))), firmness(a, a.Label), wished(p, a))
	}))
}

// loosening offers the budget or the day that the unit showing now would keep.
func loosening(p *Page, id string) Part {
	label := ""
	switch id {
	case quote.AskBudget:
		label = "Raise it to " + pricing.BudgetFor(p.Q.Price.Total).Show()
	case quote.AskDate:
		label = "Move it to " + p.Q.LastSafe().Long()
	default:
		return nil
	}
	return page.Action("loosen", id, "", label, Class("quiet"), At("id", "loosen-"+id))
}

// wished takes an option that was asked for by name off again, or makes a must of one that the
// duty, the roads or the climate only suggest.
func wished(p *Page, a quote.Ask) Part {
	o, n := p.Q.Edition.Cat.OptionByID(a.ID), p.Q.Draft.Needs
	press := func(kind, label, id string) Part {
		return page.Action("wish", a.ID, kind, label, Class("quiet"), At("id", id+a.ID), At("aria-label", label+": "+a.Label))
	}
	switch {
	case o == nil:
		return nil
	case slices.Contains(n.Must, a.ID) || slices.Contains(n.Like, a.ID):
		return press("", "Take off", "unwish-")
	case !a.Must:
		return press("must", "Must have", "firm-")
	}
	return nil
}

// wishes searches for options to ask for by name.
func wishes(p *Page) Part {
	cat := p.Q.Edition.Cat
	var found []Part
	if words := strings.Fields(strings.ToLower(p.View.Find)); len(words) > 0 {
		texts := page.OptionTexts(p.Q.Edition)
		var named, described []*config.Option
		for i := range cat.Options {
			switch o := &cat.Options[i]; {
			case !p.Shown(o) || !page.Finds(texts[i], words):
			case page.Finds(strings.ToLower(o.Label), words):
				named = append(named, o)
			default:
				described = append(described, o)
			}
		}
		list := slices.Concat(named, described)
		for _, o := range list[:min(len(list), mostFound)] {
			press := func(kind, label string) Part {
				return page.Action("wish", o.ID, kind, label, Class("quiet"), At("id", kind+"-"+o.ID),
					At("aria-label", label+": "+o.Label))
			}
			found = append(found, El("li", Text(o.Label+" "), press("must", "Must have"), press("like", "Would like")))
		}
		p.Answer = page.Count(len(found), "option", "options") + " found for “" + p.View.Find + "”."
		if found == nil {
			found = append(found, El("li", Class("soft"), Text("No option has these words.")))
		}
	}
	return Many(
		El("div", Class("field"), El("label", At("for", "f-find"), Text("Ask for an option by name")),
			El("input", Class("find"), At("type", "search"), At("id", "f-find"), At("data-act", "find"),
				At("data-live", "1"), At("value", p.View.Find), At("placeholder", "Words of it, such as powered cot"),
				At("autocomplete", "off"))),
		If(found != nil, El("ul", Class("wishes"), Many(found...))))
}
