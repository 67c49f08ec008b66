package price

import (
	"strconv"

	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// fleetBlock lists the units of the quote: how many of each, when, and at what
// price; and which is in work.
func fleetBlock(p *page.Page) Part {
	d := p.Q.Draft
	add := page.Action("add", "item", "", "Add another kind of unit", At("id", "add-item"))
	if len(d.More) == 0 {
		return page.Block("Units on this quote",
			El("div", Class("fields"), page.Number(p, "item.0.units", "How many alike",
				page.Whole(d.Terms.Count()), "", "Quantity breaks count every unit of the quote"),
				El("div", add, El("p", Class("small soft"), Text("A copy of this unit joins the quote; change it as you like.")))))
	}
	t := page.Table{Caption: "Units on this quote, in the order they go through the plant", Class: "cards fleet",
		Heads: []string{"Unit", ">How many", "Ordered", "Needed by", ">Each", ">Together", ""}}
	for i, it := range d.Items() {
		id := "item." + strconv.Itoa(i)
		tools := []Part{page.Action("drop", id, "", "Take off", Class("quiet"), At("id", "drop-"+id),
			At("aria-label", "Take off: "+p.Q.NameOf(i)))}
		if i == d.At {
			tools = append(tools, El("span", Class("tag mine"), Text("showing now")))
		} else {
			tools = append(tools, page.Action("work-on", strconv.Itoa(i), "", "Work on it",
				At("id", "work-"+strconv.Itoa(i)), At("aria-label", "Work on it: "+p.Q.NameOf(i))))
		}
		cat := p.Q.Edition.Cat
		t.Rows = append(t.Rows, []Part{
			Many(page.Bare(p, id+".label", "text", it.Label, "Name of unit "+strconv.Itoa(i+1)),
				El("span", Class("how"), Text(cat.LabelOf(it.Unit.Chassis)+", "+cat.LabelOf(it.Unit.Body)))),
			page.Bare(p, id+".units", "count", strconv.Itoa(it.Count()), "How many of unit "+strconv.Itoa(i+1)),
			page.Bare(p, id+".order", "date", it.Unit.OrderOn.String(), "Order date of unit "+strconv.Itoa(i+1)),
			page.Bare(p, id+".needed", "date", it.Unit.NeededBy.String(), "Needed date of unit "+
				strconv.Itoa(i+1)),
			Text(p.Q.Price.Each(i + 1)), Text(page.ShareOf(p.Q, i).Show()), Many(tools...)})
	}
	t.Sums = append(t.Sums, []Part{Text(page.Count(p.Q.Price.Units, "unit", "units")), nil, nil, nil, nil,
		Text(p.Q.Price.Total.Show()), nil})
	return page.Block("Units on this quote", t.Draw(), El("p", Class("row-tools"), add,
		El("span", Class("small soft"),
			Text("Each unit's price is its own and its part of what is shared, to the cent."))))
}
