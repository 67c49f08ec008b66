package pricing

import (
	"cmp"
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/pricing/finance"
	"boxwright/pricing/money"
)

// discount takes the agreed sum off the whole order.
func (o *order) discount() {
	if o.t.DiscountAmount.IsZero() {
		return
	}
	why := cmp.Or(o.t.DiscountReason, "a sum off the whole order")
	o.whole(LineDiscount, "Discount", o.t.DiscountAmount.Neg(), true, why, "discount_amount")
}

// prepay credits the buyer for paying each chassis early.
func (o *order) prepay() {
	if o.t.Prepay == "" {
		return
	}
	i := slices.IndexFunc(o.b.Prepayments, func(p Prepay) bool { return p.ID == o.t.Prepay })
	if i < 0 {
		o.find("prepay", config.Warn, "chassis prepayment",
			fmt.Sprintf("The price book has no prepayment %q; it was left out.", o.t.Prepay),
			"Choose one that the book offers, or none.")
		return
	}
	x := o.b.Prepayments[i]
	early := ""
	if days := o.t.PrepayDays; days > 0 {
		early = fmt.Sprintf(", paid %d days early", days)
		if y, err := finance.EarlyPayment(x.Percent, days, 365); err == nil {
			early += fmt.Sprintf(", which is worth %s a year simple, %s compounded", y.Simple.Show(), y.Compounded.Show())
		}
	}
	for n, p := range o.priced {
		each := p.part[chassisPart].Share(x.Percent, o.r)
		if each.Sign() <= 0 {
			continue
		}
		o.line(Line{Code: LinePrepay, Item: n + 1, Label: x.Label, Qty: money.Count(p.count), Each: "unit",
			Price: each.Neg(), Amount: each.Neg().Times(p.count), Taxed: true,
			How: because(fmt.Sprintf("%s of the chassis at %s%s", x.Percent.Show(), p.part[chassisPart].Show(),
				early), x.Reason), Source: x.ID})
	}
}

// contractFee is what a cooperative adds on the units as sold.
func (o *order) contractFee() {
	if o.contract == nil || o.contract.Fee.IsZero() {
		return
	}
	base := o.sheet.Subtotal(SubUnits, 0)
	fee := base.Share(o.contract.Fee, o.r)
	o.whole(LineContractFee, o.contract.Label+", fee", fee, true,
		because(fmt.Sprintf("%s of the units at %s", o.contract.Fee.Show(), base.Show()), o.contract.Reason),
		o.contract.ID)
}

// freight is by the mile, for each unit.
func (o *order) freight() {
	f := o.b.Freight
	if o.t.FreightMiles.IsZero() || f.PerMile.IsZero() && f.Minimum.IsZero() {
		return
	}
	miles := o.t.FreightMiles.Less(f.Free)
	each, how := f.PerMile.For(miles, o.r), fmt.Sprintf("%s miles at %s", o.t.FreightMiles.Show(), f.PerMile.Show())
	switch {
	case miles.IsZero():
		how = fmt.Sprintf("%s miles, within the %s included", o.t.FreightMiles.Show(), f.Free.Show())
	case !f.Free.IsZero():
		how = fmt.Sprintf("%s miles less %s included, at %s", o.t.FreightMiles.Show(), f.Free.Show(), f.PerMile.Show())
	}
	if !miles.IsZero() && each.Cmp(f.Minimum) < 0 {
		how = fmt.Sprintf("%s comes to %s; the minimum of %s is charged", how, each.Show(), f.Minimum.Show())
		each = f.Minimum
	}
	if o.units > 1 {
		how += ", for each of " + unitsText(o.units)
	}
	o.line(Line{Code: LineFreight, Label: "Freight from the plant", Qty: money.Count(o.units), Each: "unit",
		Price: each, Amount: each.Times(o.units), Taxed: !o.b.Tax.FreightUntaxed, How: how, Source: "freight"})
}

// training is by the day, for the whole order.
func (o *order) training() {
	x := o.b.Training
	if o.t.TrainingDays.IsZero() || x.PerDay.IsZero() {
		return
	}
	days := o.t.TrainingDays.Less(x.Free)
	how := fmt.Sprintf("%s days at %s", o.t.TrainingDays.Show(), x.PerDay.Show())
	if !x.Free.IsZero() {
		how = fmt.Sprintf("%s days less %s included, at %s", o.t.TrainingDays.Show(), x.Free.Show(), x.PerDay.Show())
	}
	o.line(Line{Code: LineTraining, Label: "Training at the buyer's place", Qty: days, Each: "day", Price: x.PerDay,
		Amount: x.PerDay.For(days, o.r), Taxed: true, How: how, Source: "training"})
}

func (o *order) fees() {
	for _, f := range o.b.Fees {
		if f.Choice && !slices.Contains(o.t.Fees, f.ID) {
			continue
		}
		n, each := 1, "order"
		if f.Per == PerUnit {
			n, each = o.units, "unit"
		}
		o.line(Line{Code: LineFee, Label: f.Label, Qty: money.Count(n), Each: each, Price: f.Amount,
			Amount: f.Amount.Times(n), Taxed: !f.Untaxed, How: f.Reason, Source: f.ID})
	}
	for _, id := range o.t.Fees {
		if !slices.ContainsFunc(o.b.Fees, func(f Fee) bool { return f.ID == id }) {
			o.find("fee", config.Warn, "fees", fmt.Sprintf("The price book has no fee %q; it was left out.", id),
				"Take it out of the terms.")
		}
	}
}

func (o *order) extras() {
	for _, x := range o.t.Extras {
		n := max(x.Qty, 1)
		o.line(Line{Code: LineExtra, Label: x.Label, Qty: money.Count(n), Each: "each", Price: x.Price,
			Amount: x.Price.Times(n), Taxed: !x.Untaxed, How: "typed in for this quote", Source: "extras"})
	}
}
