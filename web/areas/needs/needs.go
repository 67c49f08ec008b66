// Package needs is the Needs area: who buys, what the unit must carry and what judges it.
package needs

import (
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/areas"
	"boxwright/web/guide"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
	"boxwright/web/told"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "needs",
	Name:     "Needs",
	Codes:    []string{"unit", "needs"},
	Gist:     gist,
	Words:    words,
	Load:     load,
	Acts:     acts,
	Fields:   fields,
	Families: families,
	Tells:    true,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	View           *session.View
	Guide          *guide.Page
	Told           *told.Page       // what the last press changed beyond itself
	Search         *propose.Search  // proposals, while they answer the needs as they are
	Proposing      bool             // they are still worked out
	Giving         *propose.Giving  // what would have to go; nil while it is worked out
	Mountings      []quote.Mounting // the existing module on every chassis, while asked for
	MountingsKnown bool             // else they are still worked out
	List           *List            // the purchaser's list, when there is one
}

func gist(p *page.Page) string {
	if p.Q.Draft.Buyer.Name == "" {
		return "who, what, by when"
	}
	return p.Q.Draft.Buyer.Name
}

func draw(p *Page) Part {
	d := p.Q.Draft
	return Many(
		guide.Offer(p.Guide),
		When(!p.toldHere(), func() Part { return p.Told.Draw() }),
		page.Heading(p.Page, "Needs", "Who buys, what the unit must carry, which rules judge it and when it is "+
			"needed. Everything else follows from here."),
		El("div", Class("columns"),
			page.Block("Buyer",
				El("div", Class("fields"),
					page.Field(p.Page, "title", "What the buyer calls the unit", d.Title,
						"Heads every page of the quote"),
					page.Field(p.Page, "buyer.name", "Service or department", d.Buyer.Name, ""),
					page.Choose(p.Page, "terms.buyer", "Who buys", d.Terms.Buyer,
						"Decides the sales tax that is assumed",
						page.BuyerChoices()),
					page.Field(p.Page, "buyer.person", "Person", d.Buyer.Person, ""),
					page.Field(p.Page, "buyer.reach", "Telephone or mail", d.Buyer.Reach, ""),
					El("div", Class("field wide"), page.TextField(p.Page, "buyer.address", "Address", d.Buyer.Address,
						"")),
				)),
			page.Block("When",
				El("div", Class("fields"),
					page.OrderDay(p.Page, "Delivery is counted from here"),
					page.Day(p.Page, "unit.needed_by", "Needed by", d.Unit.NeededBy,
						"Held against the safe date (90 %); empty when there is no such day"),
				),
				El("p", Text("Likely date (50 %): "), El("b", Class("nowrap"), Text(p.Q.Plan.EvenOdds.Long())),
					Text(", safe date (90 %): "), El("b", Class("nowrap"), Text(p.Q.Plan.NineInTen.Long())), Text(".")),
			),
		),
		proposals(p),
		requirements(p),
		ruleSets(p),
		begin(p),
		remount(p),
		equipment(p),
		El("div", Class("columns"),
			page.Block("Seller",
				El("div", Class("fields"),
					page.Field(p.Page, "seller.name", "Distributor", d.Seller.Name, ""),
					page.Field(p.Page, "seller.person", "Person", d.Seller.Person, ""),
					page.Field(p.Page, "seller.reach", "Telephone or mail", d.Seller.Reach, ""),
					page.Field(p.Page, "number", "Quote number", d.Number, ""),
					page.Day(p.Page, "date", "Quote dated", d.Date, "The price book in force on this day is used"),
					El("div", Class("field wide"), page.TextField(p.Page, "notes", "Notes printed in the quote",
						d.Notes, "Never write cost or margin here: every reader of the quote sees it")),
				)),
			catalogueBlock(p),
		),
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
		return "Empty takes " + p.Show(l.Value, quantity.Pound) + ": " + l.Source + ", " + string(l.Basis)
	}
	minimum := "Empty takes the rule set's minimum"
	if l, ok := p.Q.Assume.Limits["weight.payload"]; ok {
		minimum = "Empty takes the rule set's; in force: " + p.Show(l.Value, quantity.Pound) + ", " + l.Source + ", " +
			string(l.Basis)
	}
	return page.Block("Rules that judge it",
		El("div", Class("columns"),
			El("fieldset", El("legend", Text("Standard")),
				El("ul", Class("picks"),
					Each(base, func(_ int, s standards.Set) Part { return set("radio", "base-set", s) }))),
			El("fieldset", El("legend", Text("State or county texts beside it")),
				El("ul", Class("picks"),
					Each(add, func(_ int, s standards.Set) Part { return set("checkbox", "", s) }))),
		),
		El("div", Class("fields"),
			page.Number(p.Page, "unit.occupant_lb", "Each seated person", mass(u.OccupantLb), unitName,
				usual(p.Q.Assume.OccupantLb)),
			page.Number(p.Page, "unit.patient_lb", "Each patient on a cot", mass(u.PatientLb), unitName,
				usual(p.Q.Assume.PatientLb)),
			page.Number(p.Page, "unit.payload_lb", "Payload the unit must have", mass(u.PayloadLb), unitName, minimum),
		),
	)
}

// begin offers to start afresh on each chassis.
func begin(p *Page) Part {
	cat := p.Q.Edition.Cat
	t := page.Table{Caption: "Begin a unit on", Class: "cards",
		Heads: []string{"Chassis", "Type", ">GVWR", ">Wheelbase", "Drive", ""}}
	for i := range cat.Chassis {
		c := &cat.Chassis[i]
		here := c.ID == p.Q.Draft.Unit.Chassis
		state := page.Action("new", c.ID, "", "Begin on this", At("id", "begin-"+c.ID),
			At("aria-label", "Begin on this: "+c.Label))
		if here {
			state = Many(El("span", Class("tag mine"), Text("in work")), Text(" "),
				page.Action("new", c.ID, "", "begin again", At("id", "begin-"+c.ID), Class("quiet"),
					At("aria-label", "Begin again on "+c.Label)))
		}
		t.Rows = append(t.Rows, []Part{Text(c.Label), Text(c.Type), Text(p.Show(float64(c.GVWRLb), quantity.Pound)),
			Text(p.Show(float64(c.WheelbaseIn), quantity.Inch)), Text(c.Drive + " " + c.Fuel), state})
	}
	return page.Block("Start",
		El("p", Class("lead"),
			Text("A new unit comes complete with what is standard. Undo brings the earlier one back.")), t.Draw(),
		guide.Again(p.Guide))
}

// equipment is what the service carries loose.
func equipment(p *Page) Part {
	cat := p.Q.Edition.Cat
	total := 0.0
	t := page.Table{Caption: "Loose equipment carried", Class: "cards",
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
		El("p", Class("lead"), Text("Where each item rides is set in Space; it counts on the axles from there.")),
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
	return El("p", Class("row-tools"), page.Action("carry-usual", d.ID, "", "Count the usual equipment for "+
		strings.ToLower(d.Label), At("id", "carry-usual")),
		El("span", Class("how"), Text("A list of the plant's, until you say what rides; it takes the place of what is "+
			"listed now.")))
}

func catalogueBlock(p *Page) Part {
	cat := p.Q.Edition.Cat
	return page.Block("Catalogue in use",
		page.EditionLine(p.Q.Edition),
		El("p", Class("how"), Text(cat.Notice)),
		El("div", Class("row-tools"),
			page.FileButton("f-catalogue", "load-catalogue", "Load a catalogue file…", ".json,application/json"),
			page.Action("demo-catalogue", "", "", "Use the built-in one"),
			page.Action("keeping", "", "", "Keep the catalogue: tables, checks, editions", Class("quiet"),
				At("id", "keeping")),
		),
		El("h3", Text("Quote files")),
		El("div", Class("row-tools"),
			page.Action("save-draft", "", "", "Save this quote as a file"),
			page.FileButton("f-draft", "open-draft", "Open a quote file…", ".json,application/json"),
		),
	)
}
