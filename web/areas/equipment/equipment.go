// Package equipment is the Equipment area: what the service carries loose, and where it rides.
package equipment

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
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
		return "nothing loose yet"
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

// equipment is what the service carries loose.
func equipment(p *Page) Part {
	cat := p.Q.Edition.Cat
	total := 0.0
	t := page.Table{Caption: "Loose equipment carried", Class: "dense cards",
		Heads: []string{"Item", ">Each", "Mass from", ">How many"}}
	u := &p.Q.Draft.Unit
	for i := range len(cat.Equipment) + len(u.OwnItems) {
		var e *config.Equipment
		own := i - len(cat.Equipment)
		if own >= 0 {
			e = &u.OwnItems[own]
		} else {
			e = &cat.Equipment[i]
		}
		qty := 0
		for _, c := range p.Q.Draft.Unit.Carried {
			if c.Equipment == e.ID {
				qty += c.Qty
			}
		}
		total += float64(qty) * float64(e.MassLb)
		value := ""
		if qty > 0 {
			value = strconv.Itoa(qty)
		}
		id := "carry-" + e.ID
		if typed, kept := p.Typed[id]; kept {
			value = typed
		}
		from := Text(e.Basis)
		if own >= 0 {
			from = page.Action("own-drop", e.ID, "", "Take off the list", Class("quiet"), At("id", "own-drop-"+e.ID),
				At("aria-label", "Take off the list: "+e.Label))
		}
		t.Rows = append(t.Rows, []Part{Text(e.Label), Text(p.Show(float64(e.MassLb), quantity.Pound)), from,
			Many(El("input", Class("qty"), At("type", "text"), At("inputmode", "numeric"), At("id", "f-"+id),
				At("data-act", "carry"), At("data-id", e.ID), At("value", value), At("aria-label", "How many: "+
					e.Label), page.Describe(p.Page, id, "")),
				If(p.Wrong[id] != "", El("span", Class("wrong"), At("id", "w-"+id), Text(p.Wrong[id]))))})
	}
	t.Sums = append(t.Sums, []Part{Text("Together"), Text(p.Show(total, quantity.Pound)), Text(""), Text("")})
	return page.Block("What it carries",
		El("p", Class("lead"), Text("It counts on the axles from where it rides.")),
		usualEquipment(p),
		t.Draw(),
		ownItem(p))
}

// ownItem takes what the service carries that is not on the list.
func ownItem(p *Page) Part {
	x := &p.View.OwnItem
	inches, pounds := p.UnitName(quantity.Inch), p.UnitName(quantity.Pound)
	return El("details", At("id", "own-item"), El("summary", Text("Add an item of your own")),
		El("div", Class("fields"),
			page.Field(p.Page, "own-item.name", "Name", x.Name, "", At("maxlength", strconv.Itoa(config.MaxOwnLabel))),
			page.Number(p.Page, "own-item.mass", "Mass", x.Mass, pounds, ""),
			page.Number(p.Page, "own-item.length", "Length", x.Length, inches, ""),
			page.Number(p.Page, "own-item.width", "Width", x.Width, inches, ""),
			page.Number(p.Page, "own-item.height", "Height", x.Height, inches, ""),
			page.Choose(p.Page, "own-item.place", "Rides", x.Place, "", []page.Choice{{"", "anywhere"},
				{config.StowInside, "inside"}, {config.StowOutside, "in an outside compartment"}})),
		El("div", Class("row-tools"), page.Action("own-add", "", "", "Add to the list, one aboard",
			At("id", "own-add"))),
		If(p.Wrong["own-add"] != "", El("span", Class("wrong"), At("id", "w-own-add"), Text(p.Wrong["own-add"]))))
}

// usualEquipment offers what a unit of the duty carries, with one press.
func usualEquipment(p *Page) Part {
	d := p.Q.Edition.Cat.DutyByID(p.Q.Draft.Needs.Duty)
	if of := p.Q.OfDuty; of != nil {
		d = of
	}
	if d == nil || len(d.Aboard) == 0 {
		return nil
	}
	kind := strings.ToLower(d.Label)
	unusual, _ := p.Q.Edition.Cat.UnusualLoads(d, &p.Q.Draft.Unit)
	return Many(
		If(unusual != nil, El("p", Text("Aboard, but not on the usual list for "+kind+": "+strings.Join(unusual, ", ")+
			"."))),
		El("p", Class("row-tools"), page.Action("carry-usual", d.ID, "", "Count the usual equipment for "+kind,
			At("id", "carry-usual")),
			El("span", Class("how"), Text("A list of the plant's, until you say what rides; it takes the place of what is "+
				"listed now."))))
}
