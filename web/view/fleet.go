package view

import (
	"strconv"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/quote"
	. "boxwright/web/view/markup"
)

// fleetBlock lists the units of the quote: how many of each, when, and at what
// price; and which is in work.
func fleetBlock(p *Page) Part {
	d := p.Q.Draft
	add := action("add", "item", "", "Add another kind of unit", At("id", "add-item"))
	if len(d.More) == 0 {
		return block("Units on this quote", El("div", Class("fields"), number(p, "item.0.units", "How many alike", quantityOf(d.Terms.Count()), "", "Quantity breaks count every unit of the quote")),
			El("p", Class("row-tools"), add, El("span", Class("small soft"), Text("A copy of this unit joins the quote; change it as you like."))))
	}
	t := table{caption: "Units on this quote, in the order they go through the plant", class: "cards", heads: []string{"Unit", ">How many", "Ordered", "Needed by", ">Price", ""}}
	for i, it := range d.Items() {
		id := "item." + strconv.Itoa(i)
		tools := []Part{action("drop", id, "", "Take off", Class("quiet"), At("id", "drop-"+id), At("aria-label", "Take off: "+p.Q.NameOf(i)))}
		if i == d.At {
			tools = append(tools, El("span", Class("tag mine"), Text("in work")))
		} else {
			tools = append(tools, action("work-on", strconv.Itoa(i), "", "Work on it", At("id", "work-"+strconv.Itoa(i)), At("aria-label", "Work on "+p.Q.NameOf(i))))
		}
		cat := p.Q.Edition.Cat
		t.rows = append(t.rows, []Part{
			Many(bare(p, id+".label", "text", it.Label, "Name of unit "+strconv.Itoa(i+1)), El("span", Class("how"), Text(cat.LabelOf(it.Unit.Chassis)+", "+cat.LabelOf(it.Unit.Body)))),
			bare(p, id+".units", "count", strconv.Itoa(it.Count()), "How many of unit "+strconv.Itoa(i+1)),
			bare(p, id+".order", "date", it.Unit.OrderOn.String(), "Order date of unit "+strconv.Itoa(i+1)),
			bare(p, id+".needed", "date", it.Unit.NeededBy.String(), "Needed date of unit "+strconv.Itoa(i+1)),
			Text(shareOf(p.Q, i).Show()), Many(tools...)})
	}
	t.sums = append(t.sums, []Part{Text(count(p.Q.Price.Units, "unit", "units")), nil, nil, nil, Text(p.Q.Price.Total.Show()), nil})
	return block("Units on this quote", t.draw(), El("p", Class("row-tools"), add,
		El("span", Class("small soft"), Text("Each unit's price is its own and its part of what is shared, to the cent."))))
}

// shareOf is what all units of an item bear of the total.
func shareOf(q *quote.Quote, at int) (sum pricing.Amount) {
	for _, s := range q.Price.Shares {
		if s.Item == at+1 {
			sum = sum.Add(s.Amount)
		}
	}
	return sum
}

// bare is an input in a table, named for those who do not see the heads.
func bare(p *Page, id, kind, value, name string) Part {
	if typed, kept := p.State.Typed[id]; kept {
		value = typed
	}
	mode, class := kind, ""
	if kind == "count" {
		mode, class = "text", "qty"
	}
	return Many(El("input", Class(class), At("type", mode), At("id", "f-"+id), At("data-act", "set"), At("data-id", id), At("value", value), At("aria-label", name), At("autocomplete", "off"), If(kind == "count", At("inputmode", "numeric")), describe(p, id, "")),
		If(p.State.Wrong[id] != "", El("p", Class("wrong"), At("id", "w-"+id), Text(p.State.Wrong[id]))))
}

// deliveriesTable dates every single unit of a quote of several.
func deliveriesTable(p *Page) Part {
	if p.Q.Draft.Count() == 1 {
		return nil
	}
	t := table{caption: "Delivery of every unit", class: "cards", heads: []string{"Unit", "Ordered", "Even odds", "Nine in ten", "Needed by", "Framing slot"}}
	for _, x := range p.Q.Deliveries() {
		name := p.Q.NameOf(x.Item)
		if x.Of > 1 {
			name += ", " + strconv.Itoa(x.N) + " of " + strconv.Itoa(x.Of)
		}
		due := p.Q.Draft.Items()[x.Item].Unit.NeededBy
		judged := Text(due.Long())
		if !due.IsZero() {
			worst, how := config.Severity(""), "kept at nine in ten"
			if due.Before(x.Plan.NineInTen) {
				worst, how = config.Warn, "chance "+hundred(x.Plan.Chance(due))
			}
			judged = Many(Text(due.Long()+" "), mark(worst), El("span", Class("how"), Text(how)))
		}
		slot := ""
		if !x.Plan.Slot.IsZero() {
			slot = x.Plan.Slot.Long()
		}
		t.rows = append(t.rows, []Part{Text(name), Text(x.Plan.Order.Long()), Text(x.Plan.EvenOdds.Long()), Text(x.Plan.NineInTen.Long()), judged, Text(slot)})
	}
	return t.draw()
}

// fleetPaper prints what a quote of several units holds.
func fleetPaper(p *Page) Part {
	if p.Q.Draft.Count() == 1 {
		return nil
	}
	t := table{caption: "Units of this quote", heads: []string{"Unit", ">How many", ">Price"}}
	for i, it := range p.Q.Draft.Items() {
		t.rows = append(t.rows, []Part{Many(Text(p.Q.NameOf(i)), El("span", Class("how"), Text(p.Q.Edition.Cat.LabelOf(it.Unit.Chassis)+", "+p.Q.Edition.Cat.LabelOf(it.Unit.Body)))), Text(strconv.Itoa(it.Count())), Text(shareOf(p.Q, i).Show())})
	}
	t.sums = append(t.sums, []Part{Text("Together"), Text(strconv.Itoa(p.Q.Price.Units)), Text(p.Q.Total())})
	return Many(El("h2", Text("Units")), t.draw())
}

// otherUnits prints the specification and the weights of the units beside the
// first.
func otherUnits(p *Page) Part {
	var out []Part
	for i := range p.Q.Draft.Items() {
		q, err := p.Q.Item(i)
		if i == p.Q.Draft.At || err != nil {
			continue
		}
		of := *p
		of.Q = q
		out = append(out, El("h2", Text(p.Q.NameOf(i))), specification(&of), sideView(&of), tight(&of, "At full load: "+p.Q.NameOf(i), figuresOf(&q.Weight.Report, "weight.")))
	}
	return Many(out...)
}

// leading is the page as it is printed: a quote of several units begins with
// the first of them, whichever is in work.
func leading(p *Page) *Page {
	if p.Q.Draft.At == 0 {
		return p
	}
	d := p.Q.Draft.Clone()
	d.WorkOn(0)
	q, err := quote.Compute(p.Q.Edition, d)
	if err != nil {
		return p
	}
	first := *p
	first.Q = q
	return &first
}

// hundred shows a chance.
func hundred(chance float64) string {
	switch n := int(chance*100 + .5); {
	case n > 99:
		return "over 99 %"
	case n < 1:
		return "under 1 %"
	default:
		return strconv.Itoa(n) + " %"
	}
}
