package view

import (
	"strconv"
	"strings"

	"boxwright/config/leadtime"
	"boxwright/pricing"
	. "boxwright/web/view/markup"
)

func gistPrice(p *Page) string { return p.Q.Total() }

func price(p *Page) Part {
	return Many(
		heading("Price", "Every line says how it came about. Amounts are exact to the cent."),
		findings(p, p.Q.Price.Findings, ""),
		fleetBlock(p),
		block("Build-up", priceTable(p)),
		If(p.Costs != nil, costsBlock(p)), // beside what moves it
		terms(p),
		block("Payments", paymentTable(p), milestones(p)),
		leaseBlock(p),
		serviceBlock(p),
		If(p.Costs == nil, costsBlock(p)),
	)
}

// ledger is the build-up as a table: bodies of rows, some of which fold.
type ledger struct {
	p      *Page
	bodies []Part
}

func (l *ledger) body(class string, rows ...Part) {
	l.bodies = append(l.bodies, El("tbody", Class(class), Many(rows...)))
}

func ledgerRow(class string, label Part, qty, each, amount string) Part {
	return El("tr", Class(class), El("th", At("scope", "row"), label), El("td", Class("num wide-only"), Text(qty)), El("td", Class("num wide-only"), Text(each)), El("td", Class("num"), Text(amount)))
}

// line is a step of the price with how it came about.
func (l *ledger) line(x pricing.Line) Part {
	class, amount := "line", x.Amount.Show()
	how := strings.TrimPrefix(strings.TrimPrefix(x.How, "price book"), ", included at no charge") // as the caption says
	if x.Amount.IsZero() {
		class, amount = "line free", "included"
	}
	if x.Qty.Show() != "1" {
		how = x.Qty.Show() + " × " + x.Price.Show() + strings.TrimSuffix(": "+strings.TrimPrefix(how, ", "), ": ")
	}
	return ledgerRow(class, Many(Text(x.Label), If(how != "", El("span", Class("how"), Text(how)))), x.Qty.Show()+" "+x.Each, x.Price.Show(), amount)
}

// sum is a subtotal: of one unit beside the prices of one where there are more.
func (l *ledger) sum(label string, each, amount string) {
	if amount == "" && l.p.Q.Price.Units == 1 {
		each, amount = "", each
	}
	l.body("", ledgerRow("sum", Text(label), "", each, amount))
}

// chapters folds the options' lines under a sum for each chapter.
func (l *ledger) chapters(item int, lines []pricing.Line) {
	cat := l.p.Q.Edition.Cat
	for _, ch := range cat.Chapters {
		var rows []Part
		var sum pricing.Amount
		free := 0
		for _, x := range lines {
			o := cat.OptionByID(x.ID)
			if x.Code != pricing.LineOption || x.Item != item || o == nil || cat.GroupByID(o.Group).Chapter != ch.ID {
				continue
			}
			rows = append(rows, l.line(x))
			sum = sum.Add(x.Amount)
			if x.Amount.IsZero() {
				free++
			}
		}
		if rows == nil {
			continue
		}
		say := count(len(rows), "line", "lines")
		if free > 0 {
			say += ", " + strconv.Itoa(free) + " included"
		}
		head := El("details", At("id", "lines-"+strconv.Itoa(item)+"-"+ch.ID), El("summary", Text(ch.Label+" "), El("span", Class("soft small"), Text(say))))
		l.body("fold", ledgerRow("", head, "", "", sum.Show()), Many(rows...))
	}
}

// Lines of the whole order, though some name a unit.
var ofOrder = map[string]bool{pricing.LinePrepay: true, pricing.LineExcise: true}

// Lines that follow the sum before taxes.
var afterTaxes = map[string]bool{pricing.LineExcise: true, pricing.LineTradeIn: true, pricing.LineTax: true, pricing.LineBond: true}

// priceTable is the whole build-up, line by line.
func priceTable(p *Page) Part {
	s := p.Q.Price
	l := &ledger{p: p}
	items := p.Q.Draft.Items()
	for i := range items {
		n := i + 1
		if len(items) > 1 {
			l.body("", El("tr", El("th", Class("unit-head"), At("colspan", "4"), At("scope", "rowgroup"), Text(p.Q.NameOf(i)))))
		}
		var listed, surcharges, rest []Part
		for _, x := range s.Lines {
			switch {
			case x.Item != n || x.Code == pricing.LineOption || ofOrder[x.Code]:
			case x.Code == pricing.LineChassis || x.Code == pricing.LineBody:
				listed = append(listed, l.line(x))
			case x.Code == pricing.LineSurcharge:
				surcharges = append(surcharges, l.line(x))
			default:
				rest = append(rest, l.line(x))
			}
		}
		l.body("", listed...)
		l.chapters(n, s.Lines)
		l.body("", surcharges...)
		l.sum("One unit at list", s.Subtotal(pricing.SubList, n).Show(), "")
		if rest != nil {
			l.body("", rest...)
			l.sum("One unit as sold", s.Subtotal(pricing.SubUnit, n).Show(), "")
		}
	}
	if s.Units > 1 {
		l.sum("All "+strconv.Itoa(s.Units)+" units", "", s.Subtotal(pricing.SubUnits, 0).Show())
	}
	var order []Part
	before := false
	for _, x := range s.Lines {
		if x.Item > 0 && !ofOrder[x.Code] {
			continue
		}
		if afterTaxes[x.Code] && !before {
			before = true
			l.body("", order...)
			order = nil
			l.sum("Before taxes", "", s.Subtotal(pricing.SubBefore, 0).Show())
		}
		order = append(order, l.line(x))
	}
	l.body("", order...)
	l.sum("Total, "+s.Currency, "", s.Total.Show())
	return Many(
		El("div", Class("scroll"), At("tabindex", "0"), At("role", "region"), At("aria-label", "Price build-up"), El("table", Class("data ledger"),
			El("caption", Text("Price in "+s.Currency+", at the price book in force on "+s.On.Long()), El("span", Class("how"), Text("A line without a note is the book's price."))),
			El("thead", El("tr", El("th", At("scope", "col"), Text("Line")), El("th", At("scope", "col"), Class("num wide-only"), Text("How many")), El("th", At("scope", "col"), Class("num wide-only"), Text("Each")), El("th", At("scope", "col"), Class("num"), Text("Amount")))),
			Many(l.bodies...))),
		If(!s.ValidUntil.IsZero(), El("p", Class("how"), Text("Stands until "+s.ValidUntil.Long()+". "+s.Rounding))),
		Each(s.Notes, func(_ int, n string) Part { return El("p", Class("how"), Text(n)) }))
}

// dueOn is when the plan expects the event that a payment hangs on.
func dueOn(id string, plan *leadtime.Plan) string {
	switch st := plan.Step(id); {
	case id == "order" || id == "deposit":
		return plan.Order.Long()
	case id == "delivery":
		return "expected " + plan.EvenOdds.Long()
	case st != nil:
		return "expected " + st.Finish.Long()
	}
	return "as agreed"
}

func paymentTable(p *Page) Part {
	t := table{caption: "When what is due", heads: []string{"Payment", ">Amount"}}
	for _, x := range p.Q.Price.Payments {
		due := dueOn(x.ID, p.Q.Plan)
		if p.Q.Draft.Count() > 1 {
			due = "for each unit as its day comes"
		}
		t.rows = append(t.rows, []Part{Many(Text(x.Label), El("span", Class("how"), Text(x.How+", "+due))), Text(x.Amount.Show())})
	}
	t.sums = append(t.sums, []Part{Text("Together"), Text(p.Q.Total())})
	return t.draw()
}

// milestones are the seller's own payments in place of the price book's.
func milestones(p *Page) Part {
	list := p.Q.Draft.Terms.Milestones
	if list == nil {
		return El("p", Class("row-tools"), Text("The payments are the price book's. "), action("add", "milestone", "", "Change them", At("id", "milestone-own")))
	}
	last := len(list) - 1
	return Many(
		Each(list, func(i int, m pricing.Milestone) Part {
			id := "milestone." + strconv.Itoa(i)
			share := number(p, id+".percent", "Part", m.Percent.String(), "%", "")
			if i == last {
				share = El("p", Class("field"), Text("The rest: "+m.Percent.Show()))
			}
			return El("div", Class("fields entry"), field(p, id+".label", "Due", m.Label, ""), share,
				If(i < last, El("div", Class("row-tools"), action("drop", id, "", "Take out", Class("quiet"), At("id", "drop-"+id), At("aria-label", "Take out: "+m.Label)))))
		}),
		El("p", Class("row-tools"), action("add", "milestone", "", "Add a payment", At("id", "add-milestone")), action("drop", "milestones", "", "Back to the price book's", Class("quiet"), At("id", "drop-milestones"))),
	)
}

// blank is what a field shows of a number: nothing where it is nought.
func blank(v interface {
	IsZero() bool
	String() string
}) string {
	if v.IsZero() {
		return ""
	}
	return v.String()
}

// terms are what buyer and seller agreed.
func terms(p *Page) Part {
	t, b := &p.Q.Draft.Terms, p.Q.Book
	contracts, prepay := []choice{{"", "none"}}, []choice{{"", "none"}}
	for _, c := range b.Contracts {
		contracts = append(contracts, choice{c.ID, c.Label})
	}
	for _, c := range b.Prepayments {
		prepay = append(prepay, choice{c.ID, c.Label})
	}
	uses := []choice{{"", "as the body is built"}}
	for _, u := range pricing.Uses {
		uses = append(uses, choice{u, u})
	}
	uses[3].label = "combination ambulance-hearse"
	tax := ""
	if t.TaxRate != nil {
		tax = t.TaxRate.String()
	}
	cur := b.Currency
	fields := func(parts ...Part) Part { return El("div", Class("fields"), Many(parts...)) }
	return Many(El("div", Class("columns"),
		block("Contract and discount", fields(
			choose(p, "terms.contract", "Cooperative contract", t.Contract, "Those in force on the day of the quote", contracts),
			number(p, "terms.discount_percent", "Discount", blank(t.DiscountPercent), "%", ""),
			number(p, "terms.discount_amount", "Discount, amount", blank(t.DiscountAmount), cur, "Once, on the whole order"),
			field(p, "terms.discount_reason", "Reason for the discount", t.DiscountReason, "Printed beside it"),
			number(p, "terms.trade_in", "Trade-in allowance", blank(t.TradeIn), cur, ""),
			field(p, "terms.trade_in_text", "What is traded in", t.TradeInText, ""),
			number(p, "terms.budget", "Budget", blank(t.Budget), cur, "The most the whole order may come to"),
			number(p, "terms.validity_days", "Quote stands for", dayCount(t.ValidityDays), "days", "Empty takes the price book's "+strconv.Itoa(b.ValidityDays)),
		)),
		block("Tax, deposit and bond", fields(
			number(p, "terms.tax_rate", "Sales tax rate", tax, "%", "Empty takes "+b.Tax.Rate.Show()+"; the buyer's own authority decides what is taxed"),
			check(p, "terms.tax_exempt", "The buyer is exempt from sales tax", t.TaxExempt),
			field(p, "terms.exempt_reason", "Exemption certificate", t.ExemptReason, ""),
			choose(p, "deal.use", "Federal excise: it serves as", t.Use, "12 % above 33,000 lb GVWR, "+pricing.ExciseSource+"; ambulances and hearses are exempt by name, "+pricing.ExemptSource, uses),
			number(p, "terms.deposit_percent", "Deposit with the order", blank(t.DepositPercent), "%", ""),
			number(p, "deal.deposit_amount", "Deposit, amount", blank(t.DepositAmount), cur, "Instead of the percentage"),
			check(p, "terms.bond", "A performance bond is asked for", t.Bond),
		))),
		block("Chassis paid early", fields(
			choose(p, "terms.prepay", "Chassis paid early", t.Prepay, "", prepay),
			number(p, "deal.prepay_days", "Days early", dayCount(t.PrepayDays), "days", "Empty takes the price book's"),
		), yields(p)),
		block("Freight, training and what is added", fields(
			number(p, "terms.freight_miles", "Miles from the plant", blank(t.FreightMiles), "miles", ""),
			number(p, "terms.training_days", "Days of training", blank(t.TrainingDays), "days", ""),
			Each(b.Fees, func(_ int, f pricing.Fee) Part {
				on := false
				for _, id := range t.Fees {
					on = on || id == f.ID
				}
				return If(f.Choice, check(p, "fee."+f.ID, f.Label+", "+f.Amount.Show()+" per "+f.Per, on))
			})),
			extras(p)),
	)
}

// extras are lines typed in by hand.
func extras(p *Page) Part {
	return Many(
		Each(p.Q.Draft.Terms.Extras, func(i int, x pricing.Extra) Part {
			id := "extra." + strconv.Itoa(i)
			return El("div", Class("fields entry"),
				field(p, id+".label", "What", x.Label, ""),
				number(p, id+".qty", "How many", strconv.Itoa(max(x.Qty, 1)), "", ""),
				number(p, id+".price", "Each", x.Price.String(), p.Q.Book.Currency, "Below nought is an allowance"),
				check(p, id+".untaxed", "No sales tax on it", x.Untaxed),
				El("div", Class("row-tools"), action("drop", id, "", "Take out", Class("quiet"), At("id", "drop-"+id), At("aria-label", "Take out: "+x.Label))))
		}),
		El("p", Class("row-tools"), action("add", "extra", "", "Add a line of your own", At("id", "add-extra"))))
}

// check is a box to tick with its label.
func check(p *Page, id, label string, on bool) Part {
	return El("div", Class("field"), El("label", At("for", "f-"+id),
		El("input", At("type", "checkbox"), At("id", "f-"+id), At("data-act", "set"), At("data-id", id), Flag("checked", on)), Text(" "+label)), help(id))
}
