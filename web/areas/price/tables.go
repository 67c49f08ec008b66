package price

import (
	"boxwright/config/quantity"
	"boxwright/pricing"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"add":     add,
	"drop":    drop,
	"work-on": workOn,
}

// fields are set by the id of their input.
var fields = map[string]session.Setter{
	"terms.units":            session.Whole(quantity.Count, 1, pricing.MaxUnits, func(d *quote.Draft) *int { return &d.Terms.Units }),
	"terms.validity_days":    session.Whole(quantity.CalendarDay, 0, 3650, func(d *quote.Draft) *int { return &d.Terms.ValidityDays }),
	"terms.contract":         session.Text(100, func(d *quote.Draft) *string { return &d.Terms.Contract }),
	"terms.prepay":           session.Text(100, func(d *quote.Draft) *string { return &d.Terms.Prepay }),
	"terms.discount_reason":  session.Text(200, func(d *quote.Draft) *string { return &d.Terms.DiscountReason }),
	"terms.trade_in_text":    session.Text(200, func(d *quote.Draft) *string { return &d.Terms.TradeInText }),
	"terms.exempt_reason":    session.Text(200, func(d *quote.Draft) *string { return &d.Terms.ExemptReason }),
	"terms.discount_percent": session.Percent(func(d *quote.Draft) *pricing.Percent { return &d.Terms.DiscountPercent }),
	"terms.deposit_percent":  session.Percent(func(d *quote.Draft) *pricing.Percent { return &d.Terms.DepositPercent }),
	"terms.discount_amount":  session.Amount(func(d *quote.Draft) *pricing.Amount { return &d.Terms.DiscountAmount }),
	"terms.trade_in":         session.Amount(func(d *quote.Draft) *pricing.Amount { return &d.Terms.TradeIn }),
	"terms.budget":           session.Amount(func(d *quote.Draft) *pricing.Amount { return &d.Terms.Budget }),
	"terms.freight_miles":    session.Number(quantity.Mile, func(d *quote.Draft) *pricing.Quantity { return &d.Terms.FreightMiles }),
	"terms.training_days":    session.Number(quantity.CalendarDay, func(d *quote.Draft) *pricing.Quantity { return &d.Terms.TrainingDays }),
	"terms.tax_rate":         taxRate,
	"terms.buyer":            checked(func(t *pricing.Terms, typed string) { t.Buyer = typed }),
	"deal.tax":               checked(sayTax),
	"terms.bond":             session.Flag(func(d *quote.Draft) *bool { return &d.Terms.Bond }),
}
