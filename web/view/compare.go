package view

import (
	"strconv"
	"strings"

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
		drawings(p, quotes),
		differences(p, quotes),
		rivals(p),
	)
}

// MaxRivals is how many other bids are set beside the quotes.
const MaxRivals = 3

// rivals are bids from elsewhere, typed in.
func rivals(p *Page) Part {
	cur := p.Q.Book.Currency
	return El("section", Class("block screen"), El("h2", Text("Other bids")),
		El("p", Class("lead"), Text("Bids from elsewhere stand in the comparison as you type them in. They stay in this browser and are part of no quote and no link.")),
		Each(p.State.Rivals, func(i int, r quote.Rival) Part {
			id := "rival." + strconv.Itoa(i)
			payload := ""
			if r.PayloadLb > 0 {
				payload = p.plain(float64(r.PayloadLb), quantity.Pound)
			}
			return El("div", Class("fields entry"),
				field(p, id+".name", "Bidder", r.Name, ""), number(p, id+".price", "Price", blank(r.Price), cur, ""), day(p, id+".date", "Delivery promised", r.Date, ""),
				number(p, id+".payload", "Payload", payload, p.unitName(quantity.Pound), ""), field(p, id+".warranty", "Warranty", r.Warranty, ""), field(p, id+".notes", "Notes", r.Notes, ""),
				El("div", Class("row-tools"), action("drop-rival", strconv.Itoa(i), "", "Take out", Class("quiet"), At("id", "drop-"+id), At("aria-label", "Take out: "+r.Name))))
		}),
		If(len(p.State.Rivals) < MaxRivals, El("p", Class("row-tools"), action("add-rival", "", "", "Add another bid", At("id", "add-rival")))))
}

// drawings are the side views on one scale.
func drawings(p *Page, quotes []*quote.Quote) Part {
	const margin = 84 // beside the vehicle, for dimensions
	of := *p
	n := 0
	for _, q := range quotes {
		if q != nil {
			o := outlineOf(q)
			of.span = max(of.span, o.rear-o.front+margin)
			n++
		}
	}
	if n < 2 {
		return nil
	}
	return block("Side views, on one scale", El("div", Class("scaled"), Each(quotes, func(_ int, q *quote.Quote) Part {
		if q == nil {
			return nil
		}
		of.Q = q
		return El("div", El("h3", Text(titleOf(q))), sideView(&of))
	})))
}

func titleOf(q *quote.Quote) string {
	if q.Draft.Title != "" {
		return q.Draft.Title
	}
	return q.Chassis.Label
}

// comparison is one table: figures first, then what each unit holds.
func comparison(p *Page, quotes []*quote.Quote, heads []Part) Part {
	rows := quote.Compare(quotes, p.State.Rivals, p.system())
	names := []string{}
	for _, q := range quotes {
		if q == nil {
			names = append(names, "not computed")
		} else {
			names = append(names, titleOf(q))
		}
	}
	for _, r := range p.State.Rivals {
		names = append(names, r.Name)
		heads = append(heads, Many(El("b", Text(r.Name)), El("span", Class("how"), Text("as typed in"))))
	}
	body := make([]Part, 0, len(rows))
	for i, r := range rows {
		if p.State.OnlyDif && (!r.Differs || r.Heading && !differs(rows[i+1:])) {
			continue
		}
		if r.Heading {
			body = append(body, El("tr", El("th", At("scope", "rowgroup"), At("colspan", strconv.Itoa(len(heads)+1)), Text(r.Label))))
			continue
		}
		cells := Each(r.Cells, func(i int, c string) Part { return El("td", At("data-head", names[i]), Text(c)) })
		body = append(body, El("tr", If(r.Differs, Class("differs")), El("th", At("scope", "row"), Text(r.Label)), cells))
	}
	if len(body) == 0 {
		none := "Nothing differs."
		if len(heads) == 1 {
			none = "There is nothing yet to set beside it."
		}
		body = append(body, El("tr", El("td", At("colspan", strconv.Itoa(len(heads)+1)), Text(none))))
	}
	return El("div", Class("block scroll"), At("tabindex", "0"), At("role", "region"), At("aria-label", "Comparison"),
		El("table", Class("compare"),
			El("thead", El("tr", El("td"), Each(heads, func(_ int, h Part) Part { return El("th", At("scope", "col"), h) }))),
			El("tbody", body...)))
}

// differs reports whether anything differs before the next heading.
func differs(rows []quote.Row) bool {
	for _, r := range rows {
		if r.Heading {
			return false
		}
		if r.Differs {
			return true
		}
	}
	return false
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
		t := table{caption: "From the unit in work to " + titleOf(q), class: "cards", heads: []string{"Line", ">Present", ">Other", ">Difference"}}
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
	for _, r := range p.State.Rivals {
		var said []string
		if !r.Price.IsZero() {
			by, than := p.Q.Price.Total.Sub(r.Price), "more"
			if by.Sign() < 0 {
				by, than = r.Price.Sub(p.Q.Price.Total), "less"
			}
			said = append(said, "the unit in work is "+p.Q.Price.Currency+" "+by.Show()+" "+than)
		}
		if !r.Date.IsZero() {
			days, side := r.Date.DaysUntil(p.Q.Plan.NineInTen), "before"
			if days < 0 {
				days, side = -days, "after"
			}
			said = append(said, "promised "+count(days, "day", "days")+" "+side+" ours at nine in ten")
		}
		if f, ok := p.Q.Figure("weight.payload"); ok && r.PayloadLb > 0 {
			said = append(said, "our payload less theirs is "+p.signed(f.Value-float64(r.PayloadLb), quantity.Pound))
		}
		if said != nil {
			out = append(out, El("p", El("b", Text(r.Name+": ")), Text(strings.Join(said, "; ")+".")))
		}
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
