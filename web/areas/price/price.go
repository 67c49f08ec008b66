// Package price is the Price area: the build-up of the price, and the terms.
package price

import (
	"slices"
	"strconv"

	"boxwright/pricing"
	"boxwright/web/areas"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:       "price",
	Name:     "Price",
	Section:  areas.Offer,
	Codes:    []string{"price"},
	Gist:     gist,
	Clear:    func(p *page.Page) Part { return page.MarkIf(p.Q.Draft.Terms.Budget.Sign() > 0) },
	Words:    words,
	Load:     load,
	Acts:     acts,
	Fields:   fields,
	Families: families,
	Joined:   true,
}

func load(_ *session.Session, p *page.Page, _ *session.Worked) func() Part {
	return func() Part { return draw(p) }
}

func gist(p *page.Page) string {
	if n := p.Q.Price.Units; n > 1 {
		return page.Whole(n) + " units, " + p.Q.Price.Total.Show()
	}
	return p.Q.Total()
}

func draw(p *page.Page) Part {
	return Many(
		page.Heading("Price", "Every line shows how it was worked out, to the cent."),
		page.Found(p, p.Q.Price.Findings, ""),
		fleetBlock(p),
		terms(p),
		page.Block("Build-up", page.PriceTable(p)),
		page.Fold("payments", "Payments", page.PaymentTable(p), milestones(p)),
		leaseBlock(p),
		serviceBlock(p),
		El("p", Class("how screen"), Text("What it costs you, and your margin: "),
			page.Action("go", "seller", "", "Costs and keys", Class("quiet"), At("id", "go-costs"))),
	)
}

// milestones are the seller's own payments in place of the price book's.
func milestones(p *page.Page) Part {
	list := p.Q.Draft.Terms.Milestones
	if list == nil {
		return El("p", Class("row-tools"), Text("The payments are the price book's. "),
			page.Action("add", "milestone", "", "Change them", At("id", "milestone-own")))
	}
	last := len(list) - 1
	return Many(
		Each(list, func(i int, m pricing.Milestone) Part {
			id := "milestone." + strconv.Itoa(i)
			share := page.Number(p, id+".percent", "Part", m.Percent.String(), "%", "")
			if i == last {
				share = El("p", Class("field"), Text("The rest: "+m.Percent.Show()))
			}
			return El("div", Class("fields entry"), page.Field(p, id+".label", "Due", m.Label, ""), share,
				If(i < last, El("div", Class("row-tools"), page.Action("drop", id, "", "Take out", Class("quiet"),
					At("id", "drop-"+id), At("aria-label", "Take out: "+m.Label)))))
		}),
		El("p", Class("row-tools"), page.Action("add", "milestone", "", "Add a payment", At("id", "add-milestone")),
			page.Action("drop", "milestones", "", "Back to the price book's", Class("quiet"),
				At("id", "drop-milestones"))),
	)
}

// terms are what buyer and seller agreed.
func terms(p *page.Page) Part {
	t, b := &p.Q.Draft.Terms, p.Q.Book
	contracts, prepay := []page.Choice{{"", "none"}}, []page.Choice{{"", "none"}}
	for _, c := range b.Contracts {
		contracts = append(contracts, page.Choice{c.ID, c.Label})
	}
	for _, c := range b.Prepayments {
		prepay = append(prepay, page.Choice{c.ID, c.Label})
	}
	uses := []page.Choice{{"", "as the body is built"}}
	for _, u := range pricing.Uses {
		uses = append(uses, page.Choice{u, u})
	}
	uses[3][1] = "combination ambulance-hearse"
	tax := ""
	if t.TaxRate != nil {
		tax = t.TaxRate.String()
	}
	cur := b.Currency
	fields := func(parts ...Part) Part { return El("div", Class("fields"), Many(parts...)) }
	return Many(El("div", Class("columns"),
		page.Fold("discount", "Contract and discount"+sum(p, pricing.LineContract, pricing.LineContractFee,
			pricing.LineDiscount, pricing.LineTradeIn), fields(
			page.Choose(p, "terms.contract", "Cooperative contract", t.Contract,
				"Those in force on the day of the quote", contracts),
			page.Number(p, "terms.discount_percent", "Discount", page.Blank(t.DiscountPercent), "%", ""),
			page.Number(p, "terms.discount_amount", "Discount, amount", page.Blank(t.DiscountAmount), cur,
				"Once, on the whole order"),
			page.Field(p, "terms.discount_reason", "Reason for the discount", t.DiscountReason,
				"Printed beside it"),
			page.Number(p, "terms.trade_in", "Trade-in allowance", page.Blank(t.TradeIn), cur, ""),
			page.Field(p, "terms.trade_in_text", "What is traded in", t.TradeInText, ""),
			page.Number(p, "terms.budget", "Budget", page.Blank(t.Budget), cur,
				"The most the whole order may come to"),
			page.Number(p, "terms.validity_days", "Price good for", page.DayCount(t.ValidityDays), "days",
				"Blank = the price book's "+strconv.Itoa(b.ValidityDays)),
		)),
		page.Fold("tax", "Tax, deposit and bond"+sum(p, pricing.LineTax, pricing.LineExcise, pricing.LineBond), fields(
			page.Choose(p, "terms.buyer", "Who buys", t.Buyer, "Decides the sales tax that is assumed",
				page.BuyerChoices()),
			page.Choose(p, "deal.tax", "Sales tax", taxWord(t), p.Q.Price.SalesTax.Words(),
				[]page.Choice{{"", "as who buys"}, {taxExempt, "exempt"}, {taxPaid, "the buyer pays it"}}),
			page.Number(p, "terms.tax_rate", "Sales tax rate", tax, "%", "Blank = "+b.Tax.Rate.Show()+
				"; the buyer's own authority decides what is taxed"),
			page.Field(p, "terms.exempt_reason", "Exemption certificate", t.ExemptReason, ""),
			page.Choose(p, "deal.use", "Federal excise: it serves as", t.Use, "12 % above 33,000 lb GVWR, "+
				pricing.ExciseSource+"; ambulances and hearses are exempt by name, "+pricing.ExemptSource, uses),
			page.Number(p, "terms.deposit_percent", "Deposit with the order", page.Blank(t.DepositPercent), "%",
				""),
			page.Number(p, "deal.deposit_amount", "Deposit, amount", page.Blank(t.DepositAmount), cur,
				"Instead of the percentage"),
			page.Check(p, "terms.bond", "A performance bond is asked for", t.Bond),
		))),
		El("div", Class("columns"), page.Fold("early", "Chassis paid early"+sum(p, pricing.LinePrepay), fields(
			page.Choose(p, "terms.prepay", "Chassis paid early", t.Prepay, "", prepay),
			page.Number(p, "deal.prepay_days", "Days early", page.DayCount(t.PrepayDays), "days",
				"Blank = by the schedule"),
		), yields(p)),
			page.Fold("added", "Freight, training and what is added"+sum(p, pricing.LineFreight, pricing.LineTraining,
				pricing.LineFee, pricing.LineExtra), fields(
				page.Number(p, "terms.freight_miles", "Miles from the plant", page.Blank(t.FreightMiles), "miles", ""),
				page.Number(p, "terms.training_days", "Days of training", page.Blank(t.TrainingDays), "days", ""),
				Each(b.Fees, func(_ int, f pricing.Fee) Part {
					chosen := false
					for _, id := range t.Fees {
						chosen = chosen || id == f.ID
					}
					return If(f.Choice, page.Check(p, "fee."+f.ID, f.Label+", "+f.Amount.Show()+" per "+f.Per, chosen))
				})),
				extras(p))),
	)
}

// sum says on a fold what the lines it decides on come to, so that a discount is seen while it is shut.
func sum(p *page.Page, codes ...string) string {
	var all pricing.Amount
	for _, l := range p.Q.Price.Lines {
		if slices.Contains(codes, l.Code) {
			all = all.Add(l.Amount)
		}
	}
	if all.IsZero() {
		return ""
	}
	return ": " + all.Show()
}

// What is said of sales tax.
const (
	taxExempt = "exempt"
	taxPaid   = "paid"
)

func taxWord(t *pricing.Terms) string {
	switch {
	case t.TaxExempt:
		return taxExempt
	case t.Taxed || t.TaxRate != nil: // who types a rate says that it is paid
		return taxPaid
	}
	return ""
}

// extras are lines typed in by hand.
func extras(p *page.Page) Part {
	return Many(
		Each(p.Q.Draft.Terms.Extras, func(i int, x pricing.Extra) Part {
			id := "extra." + strconv.Itoa(i)
			return El("div", Class("fields entry"),
				page.Field(p, id+".label", "What", x.Label, ""),
				page.Number(p, id+".qty", "How many", strconv.Itoa(max(x.Qty, 1)), "", ""),
				page.Number(p, id+".price", "Each", x.Price.String(), p.Q.Book.Currency,
					"Below zero is an allowance"),
				page.Check(p, id+".untaxed", "No sales tax on it", x.Untaxed),
				El("div", Class("row-tools"), page.Action("drop", id, "", "Take out", Class("quiet"),
					At("id", "drop-"+id), At("aria-label", "Take out: "+x.Label))))
		}),
		El("p", Class("row-tools"), page.Action("add", "extra", "", "Add a line of your own", At("id", "add-extra"))))
}
