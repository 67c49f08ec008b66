package view

import (
	"strconv"

	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	. "boxwright/web/view/markup"
)

func gistCompare(p *Page) string {
	return "side by side"
}

func compare(p *Page) Part {
	quotes := []*quote.Quote{p.Q}
	heads := []Part{Many(El("b", Text(titleOf(p.Q))), El("span", Class("how"), Text("in work")))}
	for i, o := range p.Others {
		n := strconv.Itoa(i)
		tools := Many(action("swap", n, "", "Work on this", Class("quiet"), At("id", "swap-"+n)), action("unpin", n, "", "Take out", Class("quiet"), At("id", "unpin-"+n)))
		if o.Q == nil {
			heads = append(heads, Many(El("span", Class("tag out"), Text("not computed")), El("span", Class("how"), Text(o.Fault)), tools))
		} else {
			heads = append(heads, Many(El("b", Text(titleOf(o.Q))), El("span", Class("how"), tools)))
		}
		quotes = append(quotes, o.Q)
	}
	return Many(
		heading("Compare", "Up to four quotes side by side. Set the present unit aside, change it, and see what the change costs."),
		El("div", Class("row-tools screen"),
			action("pin", "", "", "Set the present unit aside", Class("main"), At("id", "pin")),
			El("label", At("for", "f-only-dif"), El("input", At("type", "checkbox"), At("id", "f-only-dif"), At("data-act", "only-dif"), Flag("checked", p.State.OnlyDif)), Text(" only what differs")),
		),
		El("div", Class("block screen"), El("div", Class("fields"),
			field(p, "pin-link", "Add a quote by its link", "", "Paste the whole link; it is checked before anything is shown"))),
		comparison(p, quotes, heads),
		differences(p, quotes),
	)
}

func titleOf(q *quote.Quote) string {
	if q.Draft.Title != "" {
		return q.Draft.Title
	}
	return q.Chassis.Label
}

// comparison is one table: figures first, then what each unit holds.
func comparison(p *Page, quotes []*quote.Quote, heads []Part) Part {
	rows := quote.Compare(quotes, p.system())
	body := make([]Part, 0, len(rows))
	for _, r := range rows {
		if p.State.OnlyDif && !r.Differs {
			continue
		}
		if r.Heading {
			body = append(body, El("tr", El("th", At("scope", "rowgroup"), At("colspan", strconv.Itoa(len(heads)+1)), Text(r.Label))))
			continue
		}
		cells := Each(r.Cells, func(_ int, c string) Part { return El("td", Text(c)) })
		body = append(body, El("tr", If(r.Differs, Class("differs")), El("th", At("scope", "row"), Text(r.Label)), cells))
	}
	return El("div", Class("block scroll"), At("tabindex", "0"), At("role", "region"), At("aria-label", "Comparison"),
		El("table", Class("compare"),
			El("thead", El("tr", El("td"), Each(heads, func(_ int, h Part) Part { return El("th", At("scope", "col"), h) }))),
			El("tbody", body...)))
}

// differences explains, line by line, what separates each quote from the one
// in work.
func differences(p *Page, quotes []*quote.Quote) Part {
	var out []Part
	for i, q := range quotes[1:] {
		if q == nil {
			continue
		}
		d := quote.Difference(p.Q, q)
		t := table{caption: "From the unit in work to " + titleOf(q), heads: []string{"Line", ">Present", ">Other", ">Difference"}}
		for _, l := range d.Lines {
			t.rows = append(t.rows, texts(l.Label, l.From.Show(), l.To.Show(), l.By.Show()))
		}
		t.sums = append(t.sums, texts("Total", p.Q.Price.Total.Show(), q.Price.Total.Show(), d.Total.Show()))
		when := "It arrives on the same day at even odds."
		if d.Days > 0 {
			when = "It arrives " + count(d.Days, "calendar day", "calendar days") + " later at even odds."
		} else if d.Days < 0 {
			when = "It arrives " + count(-d.Days, "calendar day", "calendar days") + " earlier at even odds."
		}
		out = append(out, El("section", Class("block"), At("id", "difference-"+strconv.Itoa(i)), El("h2", Text("Why the price differs: "+titleOf(q))), t.draw(), El("p", Text(when))))
	}
	return Many(out...)
}

func quantityOf(n int) string { return quantity.Group(float64(n), 0) }

// dayCount is empty for nought.
func dayCount(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}
