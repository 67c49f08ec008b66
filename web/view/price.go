package view

import (
	"boxwright/pricing"
	. "boxwright/web/view/markup"
)

func gistPrice(p *Page) string { return p.Q.Total() }

func price(p *Page) Part {
	return Many(
		heading("Price", "Every line says how it came about. Amounts are exact decimals; "+p.Q.Price.Rounding),
		findings(p, p.Q.Price.Findings, ""),
		block("Build-up", priceTable(p)),
		block("Payments", paymentTable(p)),
		terms(p),
	)
}

// priceTable is the whole build-up, line by line.
func priceTable(p *Page) Part {
	s := p.Q.Price
	t := table{caption: "Price in " + s.Currency + ", as of " + s.On.Long(), heads: []string{"Line", ">How many", ">Each", ">Amount"}}
	for _, l := range s.Lines {
		each := l.Price.Show()
		t.rows = append(t.rows, []Part{
			Many(Text(l.Label), El("span", Class("how"), Text(l.How))),
			Text(l.Qty.Show() + " " + l.Each), Text(each), Text(l.Amount.Show()),
		})
	}
	for _, x := range s.Subtotals {
		t.sums = append(t.sums, []Part{Text(x.Label), Text(""), Text(""), Text(x.Amount.Show())})
	}
	t.sums = append(t.sums, []Part{Text("Total"), Text(""), Text(""), Text(p.Q.Total())})
	return Many(t.draw(), If(!s.ValidUntil.IsZero(), El("p", Class("how"), Text("Stands until "+s.ValidUntil.Long()+"."))),
		Each(s.Notes, func(_ int, n string) Part { return El("p", Class("how"), Text(n)) }))
}

func paymentTable(p *Page) Part {
	t := table{caption: "When what is due", heads: []string{"Payment", ">Amount"}}
	for _, x := range p.Q.Price.Payments {
		t.rows = append(t.rows, []Part{Many(Text(x.Label), El("span", Class("how"), Text(x.How))), Text(x.Amount.Show())})
	}
	t.sums = append(t.sums, []Part{Text("Together"), Text(p.Q.Total())})
	return t.draw()
}

// terms are what buyer and seller agreed.
func terms(p *Page) Part {
	t := &p.Q.Draft.Terms
	b := p.Q.Edition.Book
	contracts := []choice{{"", "none"}}
	for _, c := range b.Contracts {
		contracts = append(contracts, choice{c.ID, c.Label})
	}
	prepay := []choice{{"", "none"}}
	for _, c := range b.Prepayments {
		prepay = append(prepay, choice{c.ID, c.Label})
	}
	amount := func(a pricing.Amount) string {
		if a.IsZero() {
			return ""
		}
		return a.String()
	}
	percent := func(x pricing.Percent) string {
		if x.IsZero() {
			return ""
		}
		return x.String()
	}
	quantity := func(x pricing.Quantity) string {
		if x.IsZero() {
			return ""
		}
		return x.String()
	}
	tax := ""
	if t.TaxRate != nil {
		tax = t.TaxRate.String()
	}
	cur := b.Currency
	return block("Terms", El("div", Class("fields"),
		number(p, "terms.units", "Units alike on this quote", quantityOf(t.Count()), "", ""),
		choose(p, "terms.contract", "Cooperative contract", t.Contract, "", contracts),
		number(p, "terms.discount_percent", "Discount", percent(t.DiscountPercent), "%", ""),
		number(p, "terms.discount_amount", "Discount, amount", amount(t.DiscountAmount), cur, ""),
		field(p, "terms.discount_reason", "Reason for the discount", t.DiscountReason, "Printed beside it"),
		choose(p, "terms.prepay", "Chassis paid early", t.Prepay, "", prepay),
		number(p, "terms.trade_in", "Trade-in allowance", amount(t.TradeIn), cur, ""),
		field(p, "terms.trade_in_text", "What is traded in", t.TradeInText, ""),
		number(p, "terms.freight_miles", "Miles from the plant", quantity(t.FreightMiles), "miles", ""),
		number(p, "terms.training_days", "Days of training", quantity(t.TrainingDays), "days", ""),
		number(p, "terms.tax_rate", "Sales tax rate", tax, "%", "Empty takes the price book's; the buyer's own authority decides what is taxed"),
		check(p, "terms.tax_exempt", "The buyer is exempt from sales tax", t.TaxExempt),
		field(p, "terms.exempt_reason", "Exemption certificate", t.ExemptReason, ""),
		check(p, "terms.bond", "A performance bond is asked for", t.Bond),
		number(p, "terms.deposit_percent", "Deposit with the order", percent(t.DepositPercent), "%", ""),
		number(p, "terms.validity_days", "Quote stands for", dayCount(t.ValidityDays), "days", "Empty takes the price book's"),
		number(p, "terms.budget", "Budget", amount(t.Budget), cur, "The most the whole order may come to"),
	))
}

// check is a box to tick with its label.
func check(p *Page, id, label string, on bool) Part {
	return El("div", Class("field"), El("label", At("for", "f-"+id),
		El("input", At("type", "checkbox"), At("id", "f-"+id), At("data-act", "set"), At("data-id", id), Flag("checked", on)), Text(" "+label)))
}
