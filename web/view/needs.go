package view

import (
	"strconv"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	. "boxwright/web/view/markup"
)

func gistNeeds(p *Page) string {
	if p.Q.Draft.Buyer.Name == "" {
		return "who, what, by when"
	}
	return p.Q.Draft.Buyer.Name
}

func needs(p *Page) Part {
	d := p.Q.Draft
	return Many(
		guideOffer(p),
		heading("Needs", "Who buys, what the unit must carry, which rules judge it and when it is needed. Everything else follows from here."),
		El("div", Class("columns"),
			block("Buyer",
				El("div", Class("fields"),
					field(p, "title", "What the buyer calls the unit", d.Title, "Heads every page of the quote"),
					field(p, "buyer.name", "Service or department", d.Buyer.Name, ""),
					field(p, "buyer.person", "Person", d.Buyer.Person, ""),
					field(p, "buyer.reach", "Telephone or mail", d.Buyer.Reach, ""),
					El("div", Class("field wide"), textField(p, "buyer.address", "Address", d.Buyer.Address, "")),
				)),
			block("When",
				El("div", Class("fields"),
					day(p, "unit.order_on", "Order placed on", d.Unit.OrderOn, "Delivery is counted from here"),
					day(p, "unit.needed_by", "Needed by", d.Unit.NeededBy, "Held against the date at nine in ten; empty when there is no such day"),
				),
				El("p", Text("Delivery at even odds: "), El("b", Class("nowrap"), Text(p.Q.Plan.EvenOdds.Long())), Text(", at nine in ten: "), El("b", Class("nowrap"), Text(p.Q.Plan.NineInTen.Long())), Text(".")),
			),
		),
		proposals(p),
		requirements(p),
		ruleSets(p),
		begin(p),
		remount(p),
		equipment(p),
		El("div", Class("columns"),
			block("Seller",
				El("div", Class("fields"),
					field(p, "seller.name", "Distributor", d.Seller.Name, ""),
					field(p, "seller.person", "Person", d.Seller.Person, ""),
					field(p, "seller.reach", "Telephone or mail", d.Seller.Reach, ""),
					field(p, "number", "Quote number", d.Number, ""),
					day(p, "date", "Quote dated", d.Date, "The price book in force on this day is used"),
					El("div", Class("field wide"), textField(p, "notes", "Notes printed in the quote", d.Notes, "Never write cost or margin here: every reader of the quote sees it")),
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
			El("input", At("type", kind), At("id", id), At("name", name), At("data-act", "set"), At("data-id", "rule."+s.ID), Flag("checked", has(s.ID))),
			El("b", Text(" "+s.Label)), El("span", Class("how"), Text(s.Note))))
	}
	mass := func(v quantity.Mass) string {
		if v == 0 {
			return ""
		}
		return p.plain(float64(v), quantity.Pound)
	}
	unitName := p.unitName(quantity.Pound)
	usual := func(l config.Limit) string {
		return "Empty takes " + p.show(l.Value, quantity.Pound) + ": " + l.Source + ", " + string(l.Basis)
	}
	minimum := "Empty takes the rule set's minimum"
	if l, ok := p.Q.Assume.Limits["weight.payload"]; ok {
		minimum = "Empty takes the rule set's; in force: " + p.show(l.Value, quantity.Pound) + ", " + l.Source + ", " + string(l.Basis)
	}
	return block("Rules that judge it",
		El("div", Class("columns"),
			El("fieldset", El("legend", Text("Standard")), El("ul", Class("picks"), Each(base, func(_ int, s standards.Set) Part { return set("radio", "base-set", s) }))),
			El("fieldset", El("legend", Text("State or county texts beside it")), El("ul", Class("picks"), Each(add, func(_ int, s standards.Set) Part { return set("checkbox", "", s) }))),
		),
		El("div", Class("fields"),
			number(p, "unit.occupant_lb", "Each seated person", mass(u.OccupantLb), unitName, usual(p.Q.Assume.OccupantLb)),
			number(p, "unit.patient_lb", "Each patient on a cot", mass(u.PatientLb), unitName, usual(p.Q.Assume.PatientLb)),
			number(p, "unit.payload_lb", "Payload the unit must have", mass(u.PayloadLb), unitName, minimum),
		),
	)
}

// begin offers to start afresh on each chassis.
func begin(p *Page) Part {
	cat := p.Q.Edition.Cat
	t := table{caption: "Begin a unit on", class: "cards", heads: []string{"Chassis", "Type", ">GVWR", ">Wheelbase", "Drive", ""}}
	for i := range cat.Chassis {
		c := &cat.Chassis[i]
		here := c.ID == p.Q.Draft.Unit.Chassis
		state := action("new", c.ID, "", "Begin on this", At("id", "begin-"+c.ID), At("aria-label", "Begin a unit on "+c.Label))
		if here {
			state = Many(El("span", Class("tag mine"), Text("in work")), Text(" "), action("new", c.ID, "", "begin again", At("id", "begin-"+c.ID), Class("quiet"), At("aria-label", "Begin again on "+c.Label)))
		}
		t.rows = append(t.rows, []Part{Text(c.Label), Text(c.Type), Text(p.show(float64(c.GVWRLb), quantity.Pound)), Text(p.show(float64(c.WheelbaseIn), quantity.Inch)), Text(c.Drive + " " + c.Fuel), state})
	}
	return block("Start", El("p", Class("lead"), Text("A new unit comes complete with what is standard. Undo brings the earlier one back.")), t.draw(), guideAgain(p))
}

// equipment is what the service carries loose.
func equipment(p *Page) Part {
	cat := p.Q.Edition.Cat
	total := 0.0
	t := table{caption: "Loose equipment carried", class: "cards", heads: []string{"Item", ">Each", "Mass from", ">How many"}}
	for i := range cat.Equipment {
		e := &cat.Equipment[i]
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
		if typed, kept := p.State.Typed[id]; kept {
			value = typed
		}
		t.rows = append(t.rows, []Part{Text(e.Label), Text(p.show(float64(e.MassLb), quantity.Pound)), Text(e.Basis),
			Many(El("input", Class("qty"), At("type", "text"), At("inputmode", "numeric"), At("id", "f-"+id), At("data-act", "carry"), At("data-id", e.ID), At("value", value), At("aria-label", "How many: "+e.Label), describe(p, id, "")),
				If(p.State.Wrong[id] != "", El("span", Class("wrong"), At("id", "w-"+id), Text(p.State.Wrong[id]))))})
	}
	t.sums = append(t.sums, []Part{Text("Together"), Text(p.show(total, quantity.Pound)), Text(""), Text("")})
	return block("What it carries", El("p", Class("lead"), Text("Where each item rides is set in Space; it counts on the axles from there.")), t.draw())
}

func catalogueBlock(p *Page) Part {
	cat := p.Q.Edition.Cat
	return block("Catalogue in use",
		editionLine(p.Q.Edition),
		El("p", Class("how"), Text(cat.Notice)),
		El("div", Class("row-tools"),
			fileButton("f-catalogue", "load-catalogue", "Load a catalogue file…", ".json,application/json"),
			action("demo-catalogue", "", "", "Use the built-in one"),
			action("keeping", "", "", "Keep the catalogue: tables, checks, editions", Class("quiet"), At("id", "keeping")),
		),
		El("h3", Text("Quote files")),
		El("div", Class("row-tools"),
			action("save-draft", "", "", "Save this quote as a file"),
			fileButton("f-draft", "open-draft", "Open a quote file…", ".json,application/json"),
		),
	)
}
