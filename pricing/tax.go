package pricing

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/money"
)

// The federal excise on heavy trucks, as read in the text of the law.
//
// Source: 26 USC 4051(a)(1), 12 % of the price at the first retail sale;
// 4051(a)(2), not on chassis and bodies suitable for a vehicle of 33,000 lb
// gross vehicle weight or less; 4053(4), exempt is "Any ambulance, hearse, or
// combination ambulance-hearse", whatever its weight.
const (
	ExciseOverLb = 33000
	ExciseSource = "26 USC 4051(a)"
	ExemptSource = "26 USC 4053(4)"
)

// ExciseRate is the rate of 26 USC 4051(a)(1).
var ExciseRate = money.PercentOf(decimal.NewFromInt(12))

// NotAmbulance is the tag of a body that is none, such as a rescue body.
const NotAmbulance = "not-ambulance"

// AskUse is the use of a duty that may be an ambulance or not: the purchaser says which.
const AskUse = "ask"

// UseOf is what a unit counts as for the excise: what the terms say, else what its
// duty says, else what the body is. One that its duty leaves open counts as other.
func UseOf(t *Terms, cat *config.Catalogue, u *config.Unit) string {
	body := cat.BodyByID(u.Body)
	if t.Use != "" {
		return t.Use
	}
	switch d := cat.DutyOf(u); {
	case d == nil || d.Use == "":
	case d.Use == AskUse:
		return UseOther
	default:
		return d.Use
	}
	if slices.Contains(body.Tags, NotAmbulance) {
		return UseOther
	}
	return UseAmbulance
}

// ExciseDue reports whether the federal excise reaches a vehicle of this use
// and gross vehicle weight rating.
//
// Source: 26 USC 4051(a)(2), 4053(4).
// Units: gvwr in lb.
// Valid: any weight; any use but the three exempt by name counts as other.
// Example: a 35,000 lb ambulance, no; a 35,000 lb command post, yes; one of
// 33,000 lb, no.
func ExciseDue(use string, gvwr float64) bool {
	return use != UseAmbulance && use != UseHearse && use != UseCombination && gvwr > ExciseOverLb
}

// excise adds the federal excise where it reaches, and says where it does not
// and why.
func (o *order) excise() {
	sold := o.sold()
	for i := range o.priced {
		p := &o.priced[i]
		ch := o.cat.ChassisByID(p.item.Unit.Chassis)
		use := UseOf(o.t, o.cat, p.item.Unit)
		gvwr := float64(ch.GVWRLb)
		if d := o.cat.DutyOf(p.item.Unit); o.t.Use == "" && d != nil && d.Use == AskUse && gvwr > ExciseOverLb {
			o.sheet.Findings = append(o.sheet.Findings, config.Finding{Code: "price.excise-ask", Severity: config.Warn,
				Where: "federal excise", Clause: ExemptSource, Basis: config.ReadInText,
				Text: fmt.Sprintf("%s: whether a unit for %s is an ambulance, which is exempt, depends on how it "+
					"serves. Until it is said it counts as none.", p.label, strings.ToLower(d.Label)),
				Remedy: "Say in Price what it serves as."})
		}
		if !ExciseDue(use, gvwr) {
			text, source := fmt.Sprintf("%s: no federal excise tax. Ambulances and hearses are exempt by name at any "+
				"weight.", p.label), ExemptSource
			if use == UseOther {
				text, source = fmt.Sprintf("%s: no federal excise tax. At %s it is not above %s.", p.label,
					pounds(gvwr), pounds(ExciseOverLb)), "26 USC 4051(a)(2)"
			}
			o.sheet.Findings = append(o.sheet.Findings, config.Finding{Code: "price.excise-none", Severity: config.Note,
				Where: "federal excise", Text: text, Clause: source, Basis: config.ReadInText})
			continue
		}
		base := sold[i]
		tax := base.Share(ExciseRate, o.r)
		o.line(Line{Code: LineExcise, Item: i + 1, Label: "Federal excise tax", Qty: money.Count(1), Each: "order",
			Price: tax, Amount: tax, Taxed: !o.b.Tax.ExciseUntaxed,
			How: fmt.Sprintf("%s of %s, which is %s less discount and prepayment: not an ambulance, and at %s "+
				"above %s", ExciseRate.Show(), base.Show(), unitsText(p.count), pounds(gvwr), pounds(ExciseOverLb)),
			Source: ExciseSource})
		o.sheet.Findings = append(o.sheet.Findings, config.Finding{Code: "price.excise", Severity: config.Warn,
			Where: "federal excise", Clause: ExciseSource, Basis: config.ReadInText,
			Text: fmt.Sprintf("%s: federal excise tax of %s on the first retail sale is included. It is worked on "+
				"the whole unit at the price it is sold for; parts added within six months of service are taxed too "+
				"(26 USC 4051(b)).", p.label, ExciseRate.Show()),
			Remedy: "Have a tax adviser confirm the price it is on and any exemption of the buyer."})
	}
}

// sold is what each item is sold for in the end, all its units: less its part
// of the discount on the whole order and its own prepayment credit.
func (o *order) sold() []Amount {
	list := make([]Amount, len(o.priced))
	for i := range o.priced {
		list[i] = o.priced[i].sum().Times(o.priced[i].count)
	}
	for i, less := range money.Allocate(o.t.DiscountAmount, list) {
		list[i] = list[i].Sub(less)
	}
	for _, l := range o.sheet.Lines {
		if l.Code == LinePrepay {
			list[l.Item-1] = list[l.Item-1].Add(l.Amount)
		}
	}
	return list
}

func (o *order) tradeIn() {
	if o.t.TradeIn.IsZero() {
		return
	}
	how := "allowance for the unit handed in"
	if o.t.TradeInText != "" {
		how = o.t.TradeInText
	}
	o.whole(LineTradeIn, "Trade-in", o.t.TradeIn.Neg(), !o.b.Tax.TradeInTaxed, how, "trade_in")
}

// salesTax is on the lines marked as taxed.
func (o *order) salesTax() {
	var base Amount
	for _, l := range o.sheet.Lines {
		if l.Taxed {
			base = base.Add(l.Amount)
		}
	}
	rate, source := o.t.rateOf(&o.b.Tax)
	label := o.b.Tax.Label
	if label == "" {
		label = "Sales tax"
	}
	due := Amount{}
	if base.Sign() > 0 {
		due = base.Share(rate, o.r)
	}
	tax := &o.sheet.SalesTax
	*tax = SalesTax{Label: label, Buyer: o.t.Buyer, Rate: rate}
	if tax.Exempt, tax.Assumed = o.t.Exempt(&o.b.Tax); tax.Exempt {
		tax.Would = due
		how, source := "exempt", "tax_exempt"
		if tax.Assumed {
			how, source = "exempt: "+BuyerLabel(o.t.Buyer)+" pays none until said otherwise", "buyer"
			o.find("tax-assumed", config.Note, "sales tax", fmt.Sprintf("No sales tax is charged, since %s "+
				"buys; at %s it would be %s.", BuyerLabel(o.t.Buyer), rate.Show(), due.Show()),
				"Ask for the exemption certificate, or say in Price that the buyer pays sales tax.")
		}
		if o.t.ExemptReason != "" {
			how += "; " + o.t.ExemptReason
		}
		o.whole(LineTax, label, Amount{}, false, how, source)
		return
	}
	if due.IsZero() {
		return
	}
	tax.Amount = due
	o.subtotal(SubTaxed, 0, "Taxed price", base)
	how := fmt.Sprintf("%s of the taxed price of %s", rate.Show(), base.Show())
	if o.t.TaxRate == nil {
		how = because(how, o.b.Tax.Reason)
	}
	o.whole(LineTax, label, due, false, how, source)
	o.find("tax", config.Note, "sales tax", "Sales tax is worked out as the price book or the terms say; what is "+
		"taxed and who is exempt differs by place.", "Let the buyer's tax authority decide.")
}

func pounds(v float64) string { return quantity.Group(v, 0) + "\u00a0lb" }
