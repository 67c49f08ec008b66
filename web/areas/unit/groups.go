package unit

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/rules"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// listed is a group with the options of it that are shown, by their places in the
// catalogue.
type listed struct {
	group   *config.Group
	members []int
	folded  bool // it is a line
}

// offered leaves out of the members of a group what this unit is not offered.
func (p *Page) offered(members []int) []int {
	return slices.DeleteFunc(slices.Clone(members), func(m int) bool {
		return !p.Shown(&p.Q.Edition.Cat.Options[m])
	})
}

// mostInSight is how many options a chapter shows at once. Of one with more, each group
// is a line that opens.
const mostInSight = 120

// groups draws the options of some groups, of which all are judged at once.
func groups(p *Page, list []listed) Part {
	shown := 0
	for _, l := range list {
		shown += len(l.members)
	}
	folds := p.View.Search == "" && shown > mostInSight
	var ids []string
	for i := range list {
		l := &list[i]
		if l.folded = folds && !p.opened(l); l.folded {
			continue
		}
		for _, m := range l.members {
			ids = append(ids, p.Q.Edition.Cat.Options[m].ID)
		}
	}
	p.Q.Judge(ids...)
	return Each(list, func(_ int, l listed) Part {
		switch {
		case len(l.members) == 0:
			return nil
		case l.folded:
			return foldedGroup(p, l)
		}
		return group(p, l, folds)
	})
}

// opened reports whether the options of a group that may be a line are shown: it was
// opened, or something is asked or told of one of them.
func (p *Page) opened(l *listed) bool {
	return slices.Contains(p.View.Opened, l.group.ID) || slices.ContainsFunc(l.members, func(m int) bool {
		id := p.Q.Edition.Cat.Options[m].ID
		return p.View.Asked == id || p.toldAt(id)
	})
}

// mostNamed options of the unit stand on the line of their group.
const mostNamed = 2

// foldedGroup is the line of a group whose options are not shown: what it offers and
// what of it is in the unit.
func foldedGroup(p *Page, l listed) Part {
	var in []string
	more := 0
	for _, m := range l.members {
		switch o := &p.Q.Edition.Cat.Options[m]; {
		case !p.Q.Draft.Unit.Has(o.ID):
		case len(in) == mostNamed:
			more++
		default:
			in = append(in, o.Label)
		}
	}
	if more > 0 {
		in = append(in, strconv.Itoa(more)+" more")
	}
	of, taken := "of-"+l.group.ID, ""
	if in != nil {
		taken = " in-" + l.group.ID
	}
	return El("div", Class("group folded"), At("id", "group-"+l.group.ID),
		El("h3", opener(l.group, false, At("aria-describedby", of+taken))),
		El("span", Class("soft"), At("id", of),
			Text("choose "+choices[l.group.Choose]+" of "+strconv.Itoa(len(l.members)))),
		If(in != nil, El("span", Class("taken"), At("id", "in-"+l.group.ID),
			Text("In the unit: "+strings.Join(in, "; ")+"."))))
}

// opener opens and closes the options of a group.
func opener(g *config.Group, open bool, more ...Part) Part {
	return page.Action("group", g.ID, "", g.Label, Class("quiet"), At("id", "open-"+g.ID),
		At("aria-expanded", strconv.FormatBool(open)), Many(more...))
}

// choices says how many of a group may be chosen.
var choices = map[string]string{config.ChooseOne: "one", config.ChooseAtMostOne: "one or none", config.ChooseAny: "any"}

// mostFound is how many options a search shows; who sees more than that reads none.
const mostFound = 100

// found lists the options whose words match the search, in their groups.
func found(p *Page) Part {
	cat, finds := p.Q.Edition.Cat, p.finder()
	var list []listed
	hits, shown := 0, 0
	for i := range cat.Groups {
		g := &cat.Groups[i]
		members := slices.DeleteFunc(p.offered(cat.Members(g.ID)), func(m int) bool { return !finds(m) })
		hits += len(members)
		members = members[:min(len(members), mostFound-shown)]
		shown += len(members)
		list = append(list, listed{group: g, members: members})
	}
	said := page.Count(hits, "option", "options") + " found for “" + p.View.Search + "”"
	if hits > shown {
		said += "; the first " + strconv.Itoa(shown) + " are shown, another word finds fewer"
	}
	p.Answer = said
	return Many(El("p", Class("lead"), Text(said+". "),
		page.Action("chapter", p.View.Chapter, "", "Back to the chapters", Class("quiet"))), groups(p, list))
}

// finder tells of an option, by its place in the catalogue, whether the search finds it.
func (p *Page) finder() func(m int) bool {
	texts, words := page.OptionTexts(p.Q.Edition), strings.Fields(strings.ToLower(p.View.Search))
	return func(m int) bool { return page.Finds(texts[m], words) }
}

// group draws a group with its options; where they may be folded, its name closes it.
func group(p *Page, l listed, folds bool) Part {
	g := l.group
	name, how := Text(g.Label), El("span", Class("soft"), Text("choose "+choices[g.Choose]))
	if folds {
		name = opener(g, true)
	}
	return El("fieldset", Class("group"), At("id", "group-"+g.ID),
		El("legend", El("h3", name), how, If(g.Help != "", El("span", Class("soft"), Text(g.Help)))),
		When(hasNone(p, g), func() Part { return noneRow(p, g) }),
		optionRows(p, g, l.members),
	)
}

// hasNone reports whether at most one of several may be chosen, so that none is a choice.
func hasNone(p *Page, g *config.Group) bool {
	return g.Choose == config.ChooseAtMostOne && len(p.Q.Edition.Cat.Members(g.ID)) > 1
}

// noneRow is the choice of no option of a group.
func noneRow(p *Page, g *config.Group) Part {
	cat := p.Q.Edition.Cat
	some := slices.ContainsFunc(cat.Members(g.ID), func(m int) bool { return p.Q.Draft.Unit.Has(cat.Options[m].ID) })
	class := "option"
	if !some {
		class += " in"
	}
	return El("div", Class(class), El("input", At("type", "radio"), At("id", "none-"+g.ID), At("name", "g-"+g.ID),
		At("data-act", "none"), At("data-id", g.ID), Flag("checked", !some)),
		El("div", El("label", At("for", "none-"+g.ID), Text("None"),
			El("span", Class("hidden-text"), Text(" of: "+g.Label)))))
}

// fewBlocked options of a group are shown among the others.
const fewBlocked = 1

// optionRows are the rows of a group. What this build does not allow is one line that
// opens, unless somebody looks for it or asks about it.
func optionRows(p *Page, g *config.Group, members []int) Part {
	var open, blocked []Part
	for _, m := range members {
		o := &p.Q.Edition.Cat.Options[m]
		if p.View.Search == "" && p.View.Asked != o.ID && !p.toldAt(o.ID) && p.Q.State(o.ID) == rules.RuledOut &&
			!p.Q.Draft.Unit.Has(o.ID) {
			blocked = append(blocked, option(p, g, o))
		} else {
			open = append(open, option(p, g, o))
		}
	}
	if len(blocked) <= fewBlocked {
		return El("div", Each(members, func(_ int, m int) Part { return option(p, g, &p.Q.Edition.Cat.Options[m]) }))
	}
	return El("div", Many(open...), El("details", Class("blocked"), At("id", "blocked-"+g.ID),
		El("summary", Text(strconv.Itoa(len(blocked))+" of "+strconv.Itoa(len(members))+
			" not available with this build")), Many(blocked...)))
}

// toggleGroup shows the options of a group of a large chapter, or its line again.
func toggleGroup(s *session.Session, a session.Act) {
	cat := s.Memory.Edition.Cat
	g := cat.GroupByID(a.ID)
	if g == nil {
		s.Fault("There is no group %q in this edition.", a.ID)
		return
	}
	if i := slices.Index(s.View.Opened, g.ID); i >= 0 {
		s.View.Opened = slices.Delete(s.View.Opened, i, i+1)
		s.View.Asked, s.View.Told = "", nil
		s.Spoken = letters.Isolate(g.Label) + " is closed."
		return
	}
	open(s, g.ID)
	s.Spoken = letters.Isolate(g.Label) + " is open: choose " + choices[g.Choose] + "."
}

// open shows the options of a group where the chapter is so large that it may be a line.
func open(s *session.Session, group string) {
	if !slices.Contains(s.View.Opened, group) && len(s.View.Opened) < mostInSight {
		s.View.Opened = append(s.View.Opened, group)
	}
}
