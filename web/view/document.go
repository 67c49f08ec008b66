package view

import (
	"strings"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	. "boxwright/web/view/markup"
)

func gistQuote(p *Page) string {
	if p.Q.Stopped() {
		return "cannot be issued yet"
	}
	return "ready to print"
}

// document is the quote as it is printed, with the tools to send it above.
func document(p *Page) Part {
	return Many(
		El("div", Class("screen"),
			heading("Quote", "The document as it prints, and the link that carries it."),
			If(p.Q.Stopped(), El("p", mark(config.Stop), Text(" The quote cannot be issued as it stands; what stops it is printed on it."))),
			El("div", Class("row-tools"), action("print", "", "", "Print or save as PDF", Class("main"), At("id", "print-quote")), action("save-draft", "", "", "Save as a file")),
			linkBox(p),
			trust(p),
		),
		paper(p),
	)
}

func linkBox(p *Page) Part {
	base, text := p.State.Address, p.Link
	if base == "" && !strings.HasPrefix(p.Base, "file:") {
		base = p.Base
	}
	whole := text
	if base != "" {
		whole = base + "#" + text
	}
	hint := "The link holds the whole quote and needs no server. It never holds cost or margin."
	if base == "" {
		hint += " This copy of the page was opened from disk: give the address where your buyers find the page, or send the text below; they paste it in Compare."
	}
	return block("Link", El("div", Class("link-box"),
		field(p, "address", "Address where buyers find the page", p.State.Address, "Empty takes the address this page was opened from"),
		El("div", Class("field"), El("label", At("for", "link-text"), Text("The link, "+count(len(whole), "character", "characters"))),
			El("textarea", At("id", "link-text"), Flag("readonly", true), Text(whole)), El("p", Class("hint"), Text(hint))),
		El("div", Class("row-tools"), action("copy-link", "", whole, "Copy the link", At("id", "copy-link"))),
		El("div", Class("field"), field(p, "open-link", "Open a link", "", "Paste a link; the quote worked on now is set aside in Compare")),
	))
}

// paper is the quote itself. A table carries the running head and foot, since
// every browser repeats those on each page.
func paper(p *Page) Part {
	p = leading(p)
	d := p.Q.Draft
	cat := p.Q.Edition.Cat
	number := d.Number
	if number == "" {
		number = "not numbered"
	}
	head := El("div", Class("running"), El("span", Text("Quote "+number+" · "+d.Date.Long())), El("span", Text(d.Buyer.Name)))
	foot := El("div", Class("running foot"), El("span", Text("Catalogue "+cat.Title+", edition "+cat.Edition)), El("span", Text("Content "+cat.Hash()[:16])))
	return El("article", Class("paper"), At("aria-label", "Quote document"), El("table", Class("sheet"), At("role", "presentation"),
		El("thead", El("tr", El("td", head))),
		El("tfoot", El("tr", El("td", foot))),
		El("tbody", El("tr", El("td",
			cover(p),
			fleetPaper(p),
			specification(p),
			El("h2", Text("Weights")), sideView(p), figures(p, "At full load", figuresOf(&p.Q.Weight.Report, "weight.")),
			El("h2", Text("Electrical")), figures(p, "12 V and 125 V", figuresOf(&p.Q.Power.Report, "power.")),
			El("h2", Text("Space")), planView(p), figures(p, "Inside and outside", figuresOf(&p.Q.Space.Report, "space.")),
			El("h2", Text("Compliance: "+p.Q.Assume.Label)), complianceTable(p),
			El("h2", Text("Delivery")), dates(p), deliveriesTable(p),
			El("h2", Text("Price")), priceTable(p),
			El("h2", Text("Payments")), paymentTable(p), financePaper(p),
			otherUnits(p),
			printedCautions(),
			acceptance(p),
			signatures(p),
		))),
	))
}

func cover(p *Page) Part {
	q, d := p.Q, p.Q.Draft
	box := func(label, value string) Part { return El("div", El("span", Text(label)), El("b", Text(value))) }
	payload, front := "not known", "not known"
	if f, ok := q.Figure("weight.payload"); ok {
		payload = p.show(f.Value, f.Unit)
	}
	if f, ok := q.Figure("weight.front-axle"); ok {
		front = p.show(f.Margin(), f.Unit)
	}
	lines := func(x quote.Party) Part {
		var out []Part
		for _, t := range []string{x.Name, x.Person, x.Address, x.Reach} {
			if t != "" {
				out = append(out, El("p", Text(t)))
			}
		}
		if out == nil {
			out = append(out, El("p", Class("soft"), Text("not named")))
		}
		return Many(out...)
	}
	var stops []config.Finding
	for _, f := range q.Findings {
		if f.Severity == config.Stop {
			stops = append(stops, f)
		}
	}
	return Many(
		El("h1", Text(subject(p))),
		El("p", Text(q.Chassis.Label+" · "+q.Body.Label)),
		El("div", Class("two"), El("div", El("h2", Class("plain"), Text("For")), lines(d.Buyer)), El("div", El("h2", Class("plain"), Text("From")), lines(d.Seller))),
		El("div", Class("cover"), box("Price", q.Total()), box("Delivery, even odds", q.Plan.EvenOdds.Long()), box("Delivery, nine in ten", q.Plan.NineInTen.Long()), box("Payload", payload), box("Front axle margin", front), box("Stands until", q.Price.ValidUntil.Long())),
		If(len(stops) > 0, Many(El("h3", Text("This quote cannot be issued yet")), findings(p, stops, ""))),
		If(d.Notes != "", El("p", Text(d.Notes))),
		El("p", Class("how"), Text(q.Edition.Cat.Notice)),
	)
}

// specification says what the buyer gets, in sentences, chapter by chapter.
func specification(p *Page) Part {
	cat := p.Q.Edition.Cat
	out := []Part{
		El("h2", Text("Specification")),
		El("ul", Class("spec-list"),
			El("li", El("b", Text(p.Q.Chassis.Label+". ")), Text(p.Q.Chassis.Spec)),
			El("li", El("b", Text(p.Q.Body.Label+". ")), Text(p.Q.Body.Spec)),
			remountWords(p),
		),
	}
	for _, ch := range cat.Chapters {
		var items []Part
		for i := range cat.Groups {
			g := &cat.Groups[i]
			if g.Chapter != ch.ID {
				continue
			}
			for _, m := range cat.Members(g.ID) {
				o := &cat.Options[m]
				n := p.Q.Draft.Unit.Qty(o.ID)
				if n == 0 {
					continue
				}
				name := o.Label
				if n > 1 {
					name += " × " + quantity.Group(float64(n), 0)
				}
				items = append(items, El("li", El("b", Text(name+". ")), Text(o.Spec)))
			}
		}
		if items != nil {
			out = append(out, El("h3", Text(ch.Label)), El("ul", Class("spec-list"), Many(items...)))
		}
	}
	var carried []Part
	for _, c := range p.Q.Draft.Unit.Carried {
		carried = append(carried, El("li", Text(quantity.Group(float64(c.Qty), 0)+" × "+cat.LabelOf(c.Equipment))))
	}
	if carried != nil {
		out = append(out, El("h3", Text("Loose equipment counted in the weights")), El("ul", Class("spec-list"), Many(carried...)))
	}
	return Many(out...)
}

func printedCautions() Part {
	return Many(El("h2", Text("Cautions")), cautions(
		"Computed weights do not replace a certified scale. The final-stage manufacturer certifies the finished vehicle.",
		power.Caution,
		"Figures marked as from memory or common practice were not read in a standard's text. The purchaser's authority having jurisdiction decides which rules apply.",
		"Dates are estimates until the plant confirms slot and chassis in writing.",
	))
}

func acceptance(p *Page) Part {
	line := func(t string) Part { return El("div", Text(t)) }
	return Many(
		El("h2", Text("Acceptance")),
		El("p", Text("The buyer accepts this quote, number "+p.Q.Draft.Number+", at "+p.Q.Total()+", with the specification and terms above.")),
		El("div", Class("sign"), line("For the buyer: name and title"), line("For the seller: name and title"), line("Signature and date"), line("Signature and date")),
	)
}
