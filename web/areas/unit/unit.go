// Package unit is the Unit area: choosing chassis, module and options, and why something cannot be had.
package unit

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing"
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
		page.Findings(p.Page, page.Only(p.Q.Findings, "rules."), ""),
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
				list = append(list, listed{g, p.offered(cat.Members(g.ID))})
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

// listed is a group with the options of it that are shown, by their places in the
// catalogue.
type listed struct {
	group   *config.Group
	members []int
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
	for _, l := range list {
		if folds && !p.opened(l) {
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
		case folds && !p.opened(l):
			return foldedGroup(p, l)
		}
		return group(p, l, folds)
	})
}

// opened reports whether the options of a group that may be a line are shown: it was
// opened, or something is asked or told of one of them.
func (p *Page) opened(l listed) bool {
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
	return El("div", Class("group folded"), At("id", "group-"+l.group.ID),
		El("h3", opener(l.group, false)),
		El("span", Class("soft"), Text("choose "+choices[l.group.Choose]+" of "+strconv.Itoa(len(l.members)))),
		If(in != nil, El("span", Class("taken"), Text("In the unit: "+strings.Join(in, "; ")+"."))))
}

// opener opens and closes the options of a group.
func opener(g *config.Group, open bool) Part {
	return page.Action("group", g.ID, "", g.Label, Class("quiet"), At("id", "open-"+g.ID),
		At("aria-expanded", strconv.FormatBool(open)))
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
		list = append(list, listed{g, members})
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

// option is the row of an option, drawn before or now.
func option(p *Page, g *config.Group, o *config.Option) Part {
	pick := p.Q.Draft.Unit.Find(o.ID)
	state := p.Q.State(o.ID)
	own := p.View.Asked == o.ID || p.toldAt(o.ID) || pick != nil && len(p.Typed)+len(p.Wrong) > 0
	if p.Rows == nil || own {
		return optionRow(p, g, o, pick, state)
	}
	key := rowKey{option: o.ID, state: state, metric: p.Metric}
	if pick != nil {
		key.qty, key.filled, key.detail = pick.Qty, pick.Filled, p.Q.Draft.Unit.Detail(o.ID)
	}
	return p.Rows.Row(p.Q.Edition.Cat, p.Q.Book, key, func() Part { return optionRow(p, g, o, pick, state) })
}

// rowKey is all that a row hangs on beside catalogue and price book.
type rowKey struct {
	option string
	state  rules.State
	metric bool
	qty    int // none when it is not in the unit
	filled bool
	detail string
}

func optionRow(p *Page, g *config.Group, o *config.Option, pick *config.Pick, state rules.State) Part {
	out := state == rules.RuledOut && pick == nil
	kind := "checkbox"
	if g.Choose == config.ChooseOne || hasNone(p, g) {
		kind = "radio"
	}
	class := "option"
	switch {
	case out:
		class += " out"
	case pick != nil:
		class += " in"
	}
	return El("div", Class(class), At("id", "row-"+o.ID),
		El("input", At("type", kind), At("id", "o-"+o.ID), At("name", "g-"+g.ID), At("data-act", "pick"),
			At("data-id", o.ID), At("data-value", "1"),
			Flag("checked", pick != nil), describedBy(o.ID)),
		El("div",
			El("label", At("for", "o-"+o.ID), Text(o.Label)),
			El("span", Class("tags"), optionTags(p, o, pick, state)),
			El("p", Class("spec"), At("id", "d-"+o.ID), Text(p.Q.Edition.Cat.Sentences(o))),
			If(pick != nil && o.Unseen != "", El("p", Class("small soft"), Text("Not in the picture. "+
				config.UnseenReasons[o.Unseen]))),
			When(pick != nil && o.MaxQty > 1, func() Part { return quantityField(p, o, pick) }),
			When(pick != nil && o.AsksLb != "", func() Part {
				lb := ""
				if v := p.Q.Draft.Unit.DetailLb(o.ID); v > 0 {
					lb = p.Plain(float64(v), quantity.Pound)
				}
				return page.Number(p.Page, "weighed."+o.ID, o.AsksLb, lb, p.UnitName(quantity.Pound), "")
			}),
			When(pick != nil && o.Asks != "", func() Part {
				return page.Field(p.Page, "detail."+o.ID, o.Asks, p.Q.Draft.Unit.Detail(o.ID), "",
					At("maxlength", strconv.Itoa(config.MaxDetail)))
			}),
		),
		El("span", Class("mass"), At("id", "m-"+o.ID), Text(massText(p, o))),
		El("span", Class("price"), At("id", "p-"+o.ID), Text(priceText(p, o.ID))),
		When(out, func() Part { return refusal(p, o.ID, o.Label) }),
		If(state == rules.Checking && pick == nil,
			El("div", Class("reason soft"), At("id", "t-"+o.ID), Text("Still checking whether it fits the weights."))),
		When(p.toldAt(o.ID), func() Part { return p.Told.Draw() }),
		When(p.View.Asked == o.ID, func() Part { return why(p, o.ID) }),
	)
}

// describedBy has the control say how it stands, what it costs and weighs, and what it is.
func describedBy(id string) Part {
	return At("aria-describedby", "t-"+id+" p-"+id+" m-"+id+" d-"+id)
}

// refusal says that a thing is not available, and opens the reasons.
func refusal(p *Page, id, name string) Part {
	asked := p.View.Asked == id
	label := "Why not"
	if asked {
		label = "Close why not"
	}
	return El("div", Class("reason"), El("b", At("id", "t-"+id), Text("Not available with this build. ")),
		page.Action("why", id, "", "", Class("quiet"), At("aria-expanded", strconv.FormatBool(asked)),
			At("id", "ask-"+id), page.Named(label, name)))
}

func optionTags(p *Page, o *config.Option, pick *config.Pick, state rules.State) Part {
	switch {
	case pick == nil && !o.Drawn() && o.Unseen != "same" && o.Unseen != "none":
		return El("span", Class("tag"), Text("not drawn"))
	case pick == nil:
		return nil
	case state == rules.Forced && pick.Filled:
		return Many(El("span", Class("tag"), At("id", "t-"+o.ID), Text("needed by your choices")),
			page.Action("why", o.ID, "", "", Class("quiet"), At("id", "ask-"+o.ID),
				At("aria-expanded", strconv.FormatBool(p.View.Asked == o.ID)), page.Named("why", o.Label)))
	case pick.Filled:
		return filledIn(o.ID, o.Label, o.Standard)
	}
	return Many(El("span", Class("tag mine"), At("id", "t-"+o.ID), Text("your choice")), page.Action("release", o.ID, "",
		"", Class("quiet"), At("id", "rel-"+o.ID), page.Named("unlock", o.Label)))
}

// filledIn marks what the program chose, which the customer may make an own
// choice.
func filledIn(id, label string, standard bool) Part {
	tag := "filled in"
	if standard {
		tag = "standard"
	}
	return Many(El("span", Class("tag"), At("id", "t-"+id), Text(tag)), page.Action("keep", id, "", "",
		Class("quiet"), At("id", "keep-"+id), page.Named("lock in", label)))
}

func quantityField(p *Page, o *config.Option, pick *config.Pick) Part {
	id := "qty-" + o.ID
	value := strconv.Itoa(pick.Qty)
	if typed, wrong := p.Typed[id]; wrong {
		value = typed
	}
	return El("p", El("label", At("for", "f-"+id), Text("How many, up to "+strconv.Itoa(o.MaxQty)+" ")),
		El("input", Class("qty"), At("type", "text"), At("inputmode", "numeric"), At("id", "f-"+id),
			At("data-act", "qty"), At("data-id", o.ID), At("value", value), page.Describe(p.Page, id, "")),
		If(p.Wrong[id] != "", El("span", Class("wrong"), At("id", "w-"+id), Text(" "+p.Wrong[id]))))
}

func massText(p *Page, o *config.Option) string {
	if o.Mass == nil || o.Mass.Lb == 0 {
		return ""
	}
	return p.Show(float64(o.Mass.Lb), quantity.Pound)
}

func priceText(p *Page, id string) string {
	a := pricing.PriceOf(p.Q.Book, p.Q.Edition.Cat, id)
	if a.IsZero() {
		return "included"
	}
	return a.Show()
}

// why answers what stands in the way and offers the ways out, each at a press.
func why(p *Page, id string) Part {
	q, ways := p.Q, p.Ways
	if ways == nil {
		ways = new(propose.Ways)
	}
	return El("div", Class("why"), At("id", "why-"+id), At("tabindex", "-1"), At("role", "group"),
		At("aria-label", "Why not: "+q.Edition.Cat.LabelOf(id)),
		If(len(ways.Reasons) > 0, El("p", Class("head"), Text("Why not"))),
		If(p.Ways == nil, page.Working()),
		Each(p.reasons(ways), func(i int, r reason) Part {
			if i == 0 {
				n := len(ways.Mends) + len(ways.Offers) + len(ways.Yields)
				p.Answer = r.words + " " + page.Count(n, "way out.", "ways out.")
			}
			return Many(El("p", Text(r.words)),
				If(r.chosen != "", El("p", Class("how"), Text(r.chosen))),
				Each(r.Limits, func(n int, a rules.Arithmetic) Part { return p.makeUp(&a, strconv.Itoa(i)+"-"+strconv.Itoa(n)) }),
				folded("background-"+strconv.Itoa(i), playing(r.Reason), q.Background(r.Reason)))
		}),
		When(len(ways.Mends) > 0, func() Part {
			return waysOut("What would help", len(ways.Mends), func(i int) Part {
				m := &ways.Mends[i]
				return wayOut("mend", id, i, propose.MendWords(q, m), propose.MendEffect(q, ways, m, p.System()))
			})
		}),
		When(len(ways.Offers) > 0, func() Part {
			title := "It fits the unit as it is"
			here := slices.IndexFunc(ways.Offers, func(o propose.Offer) bool { return o.Chassis == "" })
			if n := propose.Things(q.Edition.Cat, ways.Offers[here].Changes); n > 0 {
				where := ""
				if len(ways.Offers) > 1 {
					where = " on this chassis"
				}
				title = "It fits your choices, but" + where + " " + page.Count(n, "thing", "things") +
					" filled in would change"
			}
			return waysOut(title, len(ways.Offers), func(i int) Part {
				o := &ways.Offers[i]
				effect := propose.Effect(q, &o.Unit, o.Changes, nil, p.System())
				return wayOut("offer", id, i, o.Words(q.Edition.Cat), effect)
			})
		}),
		When(len(ways.Yields) > 0, func() Part {
			return waysOut("If the customer gives up a need", len(ways.Yields), func(i int) Part {
				y := &ways.Yields[i]
				effect := propose.Effect(q, &y.Unit, y.Changes, nil, p.System())
				return wayOut("yield", id, i, y.Words(), effect)
			})
		}),
		When(p.Ways != nil, func() Part { return waysLeft(ways, q.Draft.Unit.Has(id)) }),
	)
}

// folded is a list that opens; nil where it is empty.
func folded(id, title string, list []string) Part {
	return If(len(list) > 0, El("details", At("id", id), El("summary", Class("small"), Text(title)),
		El("ul", Each(list, func(_ int, t string) Part { return El("li", Text(t)) }))))
}

// makeUp folds what a sum is made of: the five choices that add most, and the rest.
func (p *Page) makeUp(a *rules.Arithmetic, id string) Part {
	return folded("sum-"+id, "What it is made of", p.Q.MakeUp(a, p.System()))
}

// playing says what the rules do that stand behind a sum.
func playing(r rules.Reason) string {
	heavy := func(a rules.Arithmetic) bool { return a.Unit == quantity.Pound }
	if slices.ContainsFunc(r.Limits, heavy) {
		return "Rules that keep a full unit from being lighter"
	}
	return "Rules that play a part in it"
}

// waysLeft says what there is beside the ways out that are shown: with none, that none
// helps, and where looking took more work than is allowed, that there may be more.
func waysLeft(ways *propose.Ways, has bool) Part {
	none := len(ways.Mends)+len(ways.Offers)+len(ways.Yields) == 0
	switch {
	case ways.More && none:
		return El("p", Text("No way was found with the work allowed. In a catalogue of this size there may be one "+
			"nevertheless: take out one of your choices that has to do with it, and look again."))
	case ways.More:
		return El("p", Class("small"), Text("There may be more ways: in a catalogue of this size not all of them are "+
			"looked for."))
	case none && !has:
		return El("p", Text("No change of your other choices makes it possible in this catalogue."))
	}
	return nil
}

// reason is one that is shown, with what no reason before it has said.
type reason struct {
	rules.Reason
	words, chosen string
}

// reasons leaves out those that tell the same sum again, and sentences that stand
// already.
func (p *Page) reasons(ways *propose.Ways) []reason {
	var out []reason
	summed := false
	said := map[string]bool{}
	for _, r := range ways.Reasons {
		if len(r.Limits) > 0 && summed {
			continue
		}
		fresh := slices.DeleteFunc(p.Q.Sentences(r, p.System()), func(text string) bool { return said[text] })
		if len(fresh) == 0 {
			continue
		}
		summed = summed || len(r.Limits) > 0
		shown := reason{Reason: r, words: strings.Join(fresh, " ")}
		if len(r.Picks) > 0 {
			if chosen := p.Q.Chosen(r.Picks); !said[chosen] {
				shown.chosen = chosen
			}
		}
		for _, text := range append(fresh, shown.chosen) {
			said[text] = true
		}
		out = append(out, shown)
	}
	return out
}

// waysOut lists buttons, each with what it does written beneath.
func waysOut(title string, n int, way func(i int) Part) Part {
	list := make([]Part, n)
	for i := range list {
		list[i] = way(i)
	}
	return Many(El("p", Class("head"), Text(title)), El("ul", Class("mends"), Many(list...)))
}

// wayOut is a button, and aligned beneath it the price, what is to spare, the date and the weight.
func wayOut(do, id string, i int, label string, o propose.Outcome) Part {
	n := strconv.Itoa(i)
	cell := func(label, value, more string) Part {
		return If(value != "", El("div", El("dt", Text(label)),
			El("dd", Text(value), If(more != "", El("small", Text(" "+more))))))
	}
	return El("li", page.Action(do, id, n, label, At("id", do+"-"+id+"-"+n)),
		If(o.Risk != "", El("p", page.Mark(config.Warn), Text(" "+o.Risk))),
		El("dl", cell("Price", o.Price, ""),
			Each(o.Spare, func(_ int, s propose.Spare) Part { return cell(s.Label, s.Words, "") }),
			If(!o.Date.IsZero(), cell("Likely delivery", o.Date.Short(), o.Later)), cell("Full load", o.Weight, "")),
		If(o.Exchange != "", El("p", Class("how"), Text(o.Exchange))))
}

func chassisChoice(p *Page) Part {
	cat := p.Q.Edition.Cat
	return El("fieldset", Class("group"), At("id", "group-chassis"),
		El("legend", El("h3", Text("Chassis")), El("span", Class("soft"), Text("choose one"))),
		El("div", Each(cat.Chassis, func(_ int, c config.Chassis) Part {
			gist := "Type " + c.Type + " · GVWR " + p.Show(float64(c.GVWRLb), quantity.Pound) + " · axles " +
				p.Show(float64(c.GAWRFrontLb), quantity.Pound) + " and " +
				p.Show(float64(c.GAWRRearLb), quantity.Pound) + " · " + c.Drive + " " + c.Fuel
			return thing(p, "chassis", c.ID, c.Label, c.Spec, gist, c.ID == p.Q.Draft.Unit.Chassis)
		})))
}

func moduleChoice(p *Page) Part {
	cat := p.Q.Edition.Cat
	return El("fieldset", Class("group"), At("id", "group-module"),
		El("legend", El("h3", Text("Module")), El("span", Class("soft"), Text("choose one"))),
		El("div", Each(cat.Bodies, func(_ int, b config.Body) Part {
			gist := "Headroom " + p.Show(float64(b.HeadroomIn), quantity.Inch)
			if b.Kind == "module" {
				gist = "Length " + p.Show(float64(b.LengthIn), quantity.Inch) + " · width " +
					p.Show(float64(b.WidthIn), quantity.Inch) + " · " + strings.ToLower(gist[:1]) + gist[1:]
			}
			return thing(p, "body", b.ID, b.Label, b.Spec, gist, b.ID == p.Q.Draft.Unit.Body)
		})))
}

// thing is a row of the chassis or module list.
func thing(p *Page, do, id, label, spec, gist string, in bool) Part {
	state := p.Q.State(id)
	out := state == rules.RuledOut && !in
	class := "option plain"
	if out {
		class += " out"
	} else if in {
		class += " in"
	}
	asked := p.View.Asked == id
	return El("div", Class(class), At("id", "row-"+id),
		El("input", At("type", "radio"), At("id", "o-"+id), At("name", do), At("data-act", do), At("data-id", id),
			Flag("checked", in), describedBy(id)),
		El("div", El("label", At("for", "o-"+id), Text(label)),
			If(in && p.Q.Draft.Unit.Filled(id), El("span", Class("tags"), filledIn(id, label, false))), El("p", Class("small"),
				At("id", "m-"+id), Text(gist)), El("p", Class("spec"), At("id", "d-"+id), Text(spec))),
		El("span", Class("price"), At("id", "p-"+id), Text(priceText(p, id))),
		When(out, func() Part { return refusal(p, id, label) }),
		When(p.toldAt(id), func() Part { return p.Told.Draw() }),
		When(asked, func() Part { return why(p, id) }),
	)
}
