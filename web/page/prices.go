package page

import (
	"strconv"
	"strings"

	"boxwright/config/leadtime"
	"boxwright/pricing"
	"boxwright/pricing/quote"
	. "boxwright/web/page/markup"
)

// BuyerChoices are the kinds of buyer to choose from.
func BuyerChoices() []Choice {
	out := []Choice{{"", "not said"}}
	for _, b := range pricing.Buyers {
		out = append(out, Choice{b.ID, b.Label})
	}
	return out
}

// ShareOf is what all units of an item bear of the total.
func ShareOf(q *quote.Quote, at int) (sum pricing.Amount) {
	for _, s := range q.Price.Shares {
		if s.Item == at+1 {
			sum = sum.Add(s.Amount)
		}
	}
	return sum
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
	last := Text(amount)
	if amount == "" { // of one unit alone: on a phone in the column that is left
		last = El("span", Class("times"), Text(each))
	}
	return El("tr", Class(class), El("th", At("scope", "row"), label), El("td", Class("num wide-only"), Text(qty)),
		El("td", Class("num wide-only"), Text(each)), El("td", Class("num"), last))
}

// line is a step of the price with how it came about.
func (l *ledger) line(x pricing.Line) Part {
	class, amount := "line", x.Amount.Show()
	how := strings.TrimPrefix(strings.TrimPrefix(x.How, "price book"), ", included at no charge") // as the caption says
	if x.Amount.IsZero() {
		class, amount = "line free", "included"
		if x.Code == pricing.LineTax {
			amount = "none"
		}
	}
	each, times := x.Each, ""
	if x.Qty.Show() != "1" {
		if each != "each" {
			each += "s"
		}
		if !x.Amount.IsZero() {
			times = x.Qty.Show() + " × " + x.Price.Show()
			if how = strings.TrimPrefix(how, ", "); how != "" {
				times += ": "
			}
		}
	}
	name := quote.Titled(l.p.Q.Edition.Cat, x.ID, x.Label)
	return ledgerRow(class, Many(Text(name), If(how+times != "", El("span", Class("how"),
		El("span", Class("times"), Text(times)), Text(how)))), x.Qty.Show()+" "+each, x.Price.Show(), amount)
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
			if x.Code != pricing.LineOption || x.Item != item || o == nil || cat.GroupByID(o.Group).Chapter != ch.ID ||
				o.IsNone() && x.Amount.IsZero() {
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
		say := Count(len(rows), "line", "lines")
		if free > 0 {
			say += ", " + strconv.Itoa(free) + " included"
		}
		head := El("details", At("id", "lines-"+strconv.Itoa(item)+"-"+ch.ID),
			El("summary", Text(ch.Label+" "), El("span", Class("soft small"), Text(say))))
		l.body("fold", ledgerRow("", head, "", "", sum.Show()), Many(rows...))
	}
}

// Lines of the whole order, though some name a unit.
var ofOrder = map[string]bool{pricing.LinePrepay: true, pricing.LineExcise: true}

// Lines that follow the sum before taxes.
var afterTaxes = map[string]bool{pricing.LineExcise: true, pricing.LineTradeIn: true, pricing.LineTax: true,
	pricing.LineBond: true}

// PriceTable is the whole build-up, line by line.
func PriceTable(p *Page) Part {
	s := p.Q.Price
	l := &ledger{p: p}
	items := p.Q.Draft.Items()
	for i := range items {
		n := i + 1
		if len(items) > 1 {
			l.body("", El("tr", El("th", Class("unit-head"), At("colspan", "4"), At("scope", "rowgroup"),
				Text(p.Q.NameOf(i)))))
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
	l.body("", El("tr", El("td", At("colspan", "4"), Class("how"), Text(p.Q.PriceWords()))))
	return Many(
		El("div", Class("scroll"), At("data-scroll", "Price build-up"),
			El("table", Class("data ledger"),
				El("caption", Text("Price in "+s.Currency+", at the price book in force on "+s.On.Long()),
					El("span", Class("how"), Text("A line without a note is the book's price."))),
				El("thead", El("tr", El("th", At("scope", "col"), Text("Line")),
					El("th", At("scope", "col"), Class("num wide-only"), Text("How many")), El("th", At("scope", "col"),
						Class("num wide-only"), Text("Each")),
					El("th", At("scope", "col"), Class("num"), Text("Amount")))),
				Many(l.bodies...))),
		If(!s.ValidUntil.IsZero(),
			El("p", Class("how"), Text("Price good through "+s.ValidUntil.Long()+". "+s.Rounding))),
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

// PaymentTable says when what is due.
func PaymentTable(p *Page) Part {
	t := Table{Caption: "When what is due", Heads: []string{"Payment", ">Amount"}}
	for _, x := range p.Q.Price.Payments {
		due := dueOn(x.ID, p.Q.Plan)
		if p.Q.Draft.Count() > 1 {
			due = "for each unit as its day comes"
		}
		t.Rows = append(t.Rows, []Part{Many(Text(x.Label), El("span", Class("how"), Text(x.How+", "+due))),
			Text(x.Amount.Show())})
	}
	t.Sums = append(t.Sums, []Part{Text("Total"), Text(p.Q.Total())})
	return t.Draw()
}
