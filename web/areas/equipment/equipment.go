// Package equipment is the Equipment area: what the service carries loose, and where it rides.
package equipment

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
	"boxwright/web/areas"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "equipment",
	Name:     "Equipment",
	Section:  areas.Ask,
	Codes:    []string{"space.stow"},
	Gist:     gist,
	Clear:    func(p *page.Page) Part { return page.MarkIf(len(p.Q.Draft.Unit.Carried) > 0) },
	Words:    words,
	Load:     load,
	Acts:     acts,
	Families: families,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	View *session.View
}

func gist(p *page.Page) string {
	n := 0
	for _, c := range p.Q.Draft.Unit.Carried {
		n += c.Qty
	}
	if n == 0 {
		return "not listed yet"
	}
	return page.Count(n, "thing", "things") + " aboard"
}

func load(s *session.Session, p *page.Page, _ *session.Worked) func() Part {
	return func() Part { return draw(&Page{p, s.View}) }
}

func draw(p *Page) Part {
	return Many(
		page.Heading("Equipment", "What the service carries loose, and where each item rides."),
		equipment(p),
		stowage(p),
	)
}

// equipment is what the service carries loose: what a unit of its kind usually does, then the
// rest of the plant's list, folded.
func equipment(p *Page) Part {
	cat := p.Q.Edition.Cat
	u := &p.Q.Draft.Unit
	d := kindOf(p)
	usual, others := table("Loose equipment carried"), table("Other equipment carried")
	total, aboard, aside := 0.0, 0, 0
	row := func(e *config.Equipment, own bool) {
		qty := 0
		for _, c := range u.Carried {
			if c.Equipment == e.ID {
				qty += c.Qty
			}
		}
		aboard += qty
		total += float64(qty) * float64(e.MassLb)
		t := &usual
		if d != nil && !own && !slices.ContainsFunc(d.Aboard, func(a config.Aboard) bool { return a.Equipment == e.ID }) {
			t = &others
			aside += qty
		}
		t.Rows = append(t.Rows, item(p, e, qty, own))
	}
	for i := range cat.Equipment {
		row(&cat.Equipment[i], false)
	}
	for i := range u.OwnItems {
		row(&u.OwnItems[i], true)
	}
	rest := Part(nil)
	if others.Rows != nil {
		label := "Other equipment of the plant's list: " + page.Count(len(others.Rows), "kind", "kinds")
		if aside > 0 {
			label += ", " + page.Whole(aside) + " aboard"
		}
		rest = El("details", At("id", "other-equipment"), page.Summary("h4", label), others.Draw())
	}
	title := "Count what is carried"
	if aboard > 0 {
		title = page.Count(aboard, "thing", "things") + " aboard, " + p.Show(total, quantity.Pound) + ": change the list"
	}
	return page.Block("What it carries",
		El("p", Class("lead"), Text("Each item loads the axles from where it rides.")), allowance(p),
		usualEquipment(p),
		El("details", At("id", "fold-carried"), Flag("open", aboard == 0), page.Summary("h3", title), usual.Draw(), rest),
		ownItem(p))
}

// allowance says what is counted while nothing is listed: the first thing listed takes its place,
// and may well weigh less.
func allowance(p *Page) Part {
	for _, x := range p.Q.Weight.Items {
		if x.ID == weight.AllowanceItem {
			return El("p", At("id", "allowance"), Text("Nothing is listed yet, so "+p.Show(float64(x.Lb), quantity.Pound)+
				" is counted in the middle of the module. Your list takes its place. Only a total is known? Set it "+
				"under Assumed factors in "), page.Action("go", "weight", "", "Weight", Class("quiet"),
				At("id", "go-weight")))
		}
	}
	return nil
}

func table(caption string) page.Table {
	return page.Table{Caption: caption, Class: "dense cards", Heads: []string{"Item", ">Each", "Weight from", ">How many"}}
}

// item is the row of one thing that may be carried.
func item(p *Page, e *config.Equipment, qty int, own bool) []Part {
	value := ""
	if qty > 0 {
		value = strconv.Itoa(qty)
	}
	id := "carry-" + e.ID
	if typed, kept := p.Typed[id]; kept {
		value = typed
	}
	from := Text(e.Basis)
	if own {
		from = page.Action("own-drop", e.ID, "", "Take off the list", Class("quiet"), At("id", "own-drop-"+e.ID),
			At("aria-label", "Take off the list: "+e.Label))
	}
	return []Part{Text(e.Label), Text(p.Show(float64(e.MassLb), quantity.Pound)), from,
		Many(El("input", Class("qty"), At("type", "text"), At("inputmode", "numeric"), At("id", "f-"+id),
			At("data-act", "carry"), At("data-id", e.ID), At("value", value), At("aria-label", "How many: "+
				e.Label), page.Describe(p.Page, id, "")),
			If(p.Wrong[id] != "", El("span", Class("wrong"), At("id", "w-"+id), Text(p.Wrong[id]))))}
}

// ownItem takes what the service carries that is not on the list.
func ownItem(p *Page) Part {
	x := &p.View.OwnItem
	inches, pounds := p.UnitName(quantity.Inch), p.UnitName(quantity.Pound)
	return El("details", At("id", "own-item"), page.Summary("h3", "Add an item of your own"),
		El("div", Class("fields"),
			page.Field(p.Page, "own-item.name", "Name", x.Name, "", At("maxlength", strconv.Itoa(config.MaxOwnLabel))),
			page.Number(p.Page, "own-item.mass", "Weight", x.Mass, pounds, ""),
			page.Number(p.Page, "own-item.length", "Length", x.Length, inches, ""),
			page.Number(p.Page, "own-item.width", "Width", x.Width, inches, ""),
			page.Number(p.Page, "own-item.height", "Height", x.Height, inches, ""),
			page.Choose(p.Page, "own-item.place", "Rides", x.Place, "", []page.Choice{{"", "anywhere"},
				{config.StowInside, "inside"}, {config.StowOutside, "in an outside compartment"}})),
		El("div", Class("row-tools"), page.Action("own-add", "", "", "Add to the list, one aboard",
			At("id", "own-add"))),
		If(p.Wrong["own-add"] != "", El("span", Class("wrong"), At("id", "w-own-add"), Text(p.Wrong["own-add"]))))
}

// kindOf is the kind of unit whose usual equipment is known: that of the unit, or else what
// is asked for.
func kindOf(p *Page) *config.Duty {
	d := p.Q.Edition.Cat.DutyByID(p.Q.Draft.Needs.Duty)
	if of := p.Q.OfDuty; of != nil {
		d = of
	}
	if d == nil || len(d.Aboard) == 0 {
		return nil
	}
	return d
}

// usualEquipment offers what a unit of the duty carries, with one press.
func usualEquipment(p *Page) Part {
	d := kindOf(p)
	if d == nil {
		return nil
	}
	kind := strings.ToLower(d.Label)
	unusual, _ := p.Q.Edition.Cat.UnusualLoads(d, &p.Q.Draft.Unit)
	return Many(
		If(unusual != nil, El("p", Text("Aboard, but not on the usual list for "+kind+": "+strings.Join(unusual, ", ")+
			"."))),
		El("p", Class("row-tools"), page.Action("carry-usual", d.ID, "", "Count the usual equipment for "+kind,
			At("id", "carry-usual")),
			El("span", Class("how"), Text("The plant's usual list. It replaces what is listed now."))))
}
