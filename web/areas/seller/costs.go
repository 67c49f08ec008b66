package seller

import (
	"strings"

	"boxwright/pricing/costs"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// Costs are the seller's own figures on a price. They are drawn in this area on the
// screen and nowhere else.
type Costs struct {
	Title   string
	Margins *costs.Margins
	Steps   []costs.Step
	Most    map[string]string // by role: the largest discount it may grant
}

// costsBlock is the cost sheet, with the margins while it is open. Paper leaves it out.
func costsBlock(p *Page) Part {
	return El("section", Class("block screen private"), At("id", "costs"),
		El("h2", Text("Cost and margin")), costsInside(p))
}

func costsInside(p *Page) Part {
	if p.Costs != nil {
		return margins(p)
	}
	unlock := Many()
	if p.CostsKept {
		unlock = Many(El("button", At("type", "button"), At("id", "costs-unlock"), Class("main"),
			At("data-act", "open-costs"), At("data-secret", "costs-pass"), Text("Unlock")),
			page.Action("forget-costs", "", "", "Remove it from this device", Class("quiet"),
				At("id", "costs-forget")))
	}
	return Many(
		El("p", Class("lead"), Text("A cost sheet is a private file. It is sealed with a passphrase before it is "+
			"saved here, and open only while you look at it.")),
		page.Passphrase("costs-pass", "Passphrase of the cost sheet",
			"Four plain words that do not belong together are good. It is not kept anywhere."),
		El("div", Class("row-tools"), unlock, sealedFile("f-costs", "open-costs", "costs-pass", "Open a cost sheet…",
			"Type the passphrase first. A sheet that is not sealed yet is sealed with it, and saved.")),
	)
}

func margins(p *Page) Part {
	m := p.Costs.Margins
	t := page.Table{Caption: "Margin by line", Class: "cards",
		Heads: []string{"Line", ">Price", ">Cost", ">Margin", ">of the price"}}
	row := func(x costs.LineMargin) []Part {
		return []Part{Many(Text(x.Label), El("span", Class("how"), Text(x.How))), Text(x.Price.Show()),
			Text(x.Cost.Show()), Text(x.Margin.Show()), Text(x.Percent.Show())}
	}
	hidden := 0
	for _, x := range append(m.Lines, m.Overheads...) {
		if x.Price.IsZero() && x.Cost.IsZero() {
			hidden++
			continue
		}
		t.Rows = append(t.Rows, row(x))
	}
	whole := page.Texts("Total, without taxes, trade-in and bond", m.Price.Show(), m.Cost.Show(), m.Margin.Show(),
		m.Percent.Show())
	t.Sums = append(t.Sums, whole)
	roles := page.Table{Caption: "Who may agree to it: the discount now is " + m.Discount.Show(), Class: "cards",
		Heads: []string{"Role", "This price", ">Largest discount", ">Least margin", ">May grant here"}}
	for _, v := range m.Roles {
		state := Many(page.Mark(""), Text(" may agree"))
		if !v.May {
			state = Many(page.Mark("warn"), Text(" "+v.Why))
		}
		most := p.Costs.Most[v.Role.ID]
		if most == "" {
			most = "none"
		}
		roles.Rows = append(roles.Rows, []Part{Text(v.Role.Label), state, Text(v.Role.MaxDiscount.Show()),
			Text(v.Role.MinMargin.Show()), Text("up to " + most)})
	}
	effect := page.Table{Caption: "What a discount does to the margin", Class: "cards",
		Heads: []string{"Discount", ">The buyer pays", ">Margin", ">of the price", ">Margin lost", "Who may agree"}}
	for _, s := range p.Costs.Steps {
		who := strings.Join(s.Roles, ", ")
		if who == "" {
			who = "nobody"
		}
		effect.Rows = append(effect.Rows, page.Texts(s.Discount.Show(), s.Total.Show(), s.Margin.Show(),
			s.Percent.Show(), s.Lost.Show(), who))
	}
	summary := page.Table{Caption: p.Costs.Title, Class: "cards",
		Heads: []string{"", ">Price", ">Cost", ">Margin", ">of the price"}, Rows: [][]Part{whole}}
	return Many(
		El("div", Class("row-tools"), page.Action("lock-costs", "", "", "Lock", Class("main"), At("id", "costs-lock")),
			El("span", Class("small soft"),
				Text("Open in this page only. It is not printed; closing the page locks it."))),
		summary.Draw(), roles.Draw(), effect.Draw(),
		page.Inner("margins", "Margin by line", t.Draw(),
			If(hidden > 0,
				El("p", Class("how"),
					Text(page.Count(hidden, "line", "lines")+" without price and cost are left out.")))),
	)
}
