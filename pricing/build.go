package pricing

import (
	"errors"
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/pricing/money"
)

// Item is one kind of unit on an order, and how many are alike.
type Item struct {
	Label string       // such as "Medic 3"; empty: the chassis' and body's labels
	Unit  *config.Unit // need not be complete
	Units int          // 0 counts as 1
	Due   config.Date  // when it is to be delivered; zero not said
}

// Build prices a unit, or several alike by the terms, on a day. The error is a
// config.Problems where the unit or the terms cannot be priced; what can be
// priced but needs a decision is a finding of the sheet.
func Build(b *Book, cat *config.Catalogue, u *config.Unit, t *Terms, day config.Date) (*Sheet, error) {
	if t == nil {
		t = new(Terms)
	}
	return BuildFleet(b, cat, []Item{{Unit: u, Units: t.Units}}, t, day)
}

// BuildFleet prices several kinds of unit on one order: they share quantity
// breaks, discounts and charges. The number of units comes from the items, not
// from the terms.
func BuildFleet(b *Book, cat *config.Catalogue, items []Item, t *Terms, day config.Date) (*Sheet, error) {
	if b == nil || cat == nil {
		return nil, errors.New("pricing: a price needs a price book and its catalogue")
	}
	if t == nil {
		t = new(Terms)
	}
	if ps := checkOrder(cat, items, t); len(ps) > 0 {
		return nil, ps
	}
	dated := b.AsOf(day)
	o := &order{b: dated, cat: cat, t: t, r: dated.Rounding, sheet: &Sheet{
		Currency: b.Currency, On: day, Notes: b.Notes,
		Rounding: "Each line that a percentage or a distance enters is rounded once, for one unit, " +
			dated.Rounding.Words() + "; sums are exact. Payments and shares are split by largest remainder, so that " +
			"they add up to the total.",
	}}
	for _, it := range items {
		o.units += max(it.Units, 1)
	}
	o.sheet.Units = o.units
	o.contract = o.findContract()

	// The order of the steps is the order of the sheet.
	for i, it := range items {
		o.unit(i+1, it)
	}
	o.discount()
	o.subtotal(SubUnits, 0, "All units", o.total)
	o.prepay()
	o.contractFee()
	o.freight()
	o.training()
	o.fees()
	o.extras()
	o.subtotal(SubBefore, 0, "Before taxes", o.total)
	o.excise()
	o.tradeIn()
	o.salesTax()
	o.bond()
	o.sheet.Total = o.total
	o.payments()
	o.share()
	o.lease()
	o.service()
	o.validity()
	o.judge()
	return o.sheet, nil
}

func checkOrder(cat *config.Catalogue, items []Item, t *Terms) config.Problems {
	ps := t.Check()
	if len(items) == 0 {
		ps = append(ps, config.Problem{Code: "terms.missing", Where: "units", Text: "an order holds at least one unit"})
	}
	units := 0
	for i, it := range items {
		where := fmt.Sprintf("unit %d", i+1)
		if it.Units < 0 || it.Units > MaxUnits {
			ps = append(ps, config.Problem{Code: "terms.range", Where: where,
				Text: fmt.Sprintf("%d is outside 0 to %d units", it.Units, MaxUnits)})
		}
		if units += max(it.Units, 1); units > MaxUnits {
			return append(ps, config.Problem{Code: "terms.range", Where: where,
				Text: fmt.Sprintf("an order holds at most %d units", MaxUnits)})
		}
		if it.Unit == nil {
			ps = append(ps, config.Problem{Code: "unit.missing", Where: where, Text: "there is no unit to price"})
			continue
		}
		for _, p := range cat.CheckUnit(it.Unit) {
			p.Where = where + " " + p.Where
			ps = append(ps, p)
		}
	}
	return ps
}

// order is a price being worked out.
type order struct {
	b        *Book // as it stands on the day
	cat      *config.Catalogue
	t        *Terms
	r        Rounding
	contract *Contract
	units    int
	priced   []priced
	rank     map[string]int // place of each group in the catalogue
	total    Amount
	sheet    *Sheet
}

// priced is one unit of an item after its discounts: the price of each part,
// which later charges are on.
type priced struct {
	item  Item
	count int
	label string
	part  [partCount]Amount
}

func (p *priced) sum() Amount { return money.Sum(p.part[:]...) }

// line adds a step; its amount is the price for the quantity.
func (o *order) line(l Line) {
	o.total = o.total.Add(l.Amount)
	o.sheet.Lines = append(o.sheet.Lines, l)
}

// whole adds a step that concerns the whole order.
func (o *order) whole(code, label string, a Amount, taxed bool, how, source string) {
	o.line(Line{Code: code, Label: label, Qty: money.Count(1), Each: "order", Price: a, Amount: a, Taxed: taxed,
		How: how, Source: source})
}

func (o *order) subtotal(code string, item int, label string, a Amount) {
	o.sheet.Subtotals = append(o.sheet.Subtotals, Subtotal{code, item, label, a})
}

func (o *order) find(code string, s config.Severity, where, text, remedy string) {
	o.sheet.Findings = append(o.sheet.Findings, config.Finding{Code: "price." + code, Severity: s, Where: where,
		Text: text, Remedy: remedy})
}

// findContract returns the contract of the terms if it is in force.
func (o *order) findContract() *Contract {
	if o.t.Contract == "" {
		return nil
	}
	i := slices.IndexFunc(o.b.Contracts, func(c Contract) bool { return c.ID == o.t.Contract })
	if i < 0 {
		o.find("contract", config.Warn, "contract",
			fmt.Sprintf("Contract %q is not in force on this day in this price book; it was left out.", o.t.Contract),
			"Choose a contract in force, or none.")
		return nil
	}
	return &o.b.Contracts[i]
}

// validity dates the sheet.
func (o *order) validity() {
	if o.sheet.On.IsZero() {
		return
	}
	days := o.t.ValidityDays
	if days == 0 {
		days = o.b.ValidityDays
	}
	o.sheet.ValidUntil = o.sheet.On.AddDays(days)
}

// judge adds the findings that need the whole sheet.
func (o *order) judge() {
	s := o.sheet
	if !s.On.IsZero() && s.On.Before(o.cat.ValidFrom) {
		o.find("early", config.Warn, "price",
			fmt.Sprintf("This edition is valid from %s; the price is worked out for an earlier day.",
				o.cat.ValidFrom.Long()), "Load the edition in force on the day of the quote.")
	}
	if s.Total.Sign() < 0 {
		o.find("negative", config.Stop, "price", "The total is below zero: credits, discounts and trade-in come to "+
			"more than the price.", "Take back a discount or the trade-in.")
	}
	if !o.t.Budget.IsZero() {
		f := s.Figure(o.t)
		finding := config.Finding{Code: "price.budget", Severity: config.Note, Where: "budget", Figure: &f,
			Basis: config.Purchaser,
			Text: fmt.Sprintf("The price keeps the budget of %s with %s left (%s).", o.t.Budget.Show(),
				o.t.Budget.Sub(s.Total).Show(), s.Basis())}
		if s.Total.Cmp(o.t.Budget) > 0 {
			finding.Severity = config.Warn
			finding.Text = fmt.Sprintf("The price is %s above the budget of %s (%s).",
				s.Total.Sub(o.t.Budget).Show(), o.t.Budget.Show(), s.Basis())
			finding.Remedy = "Raise the budget to " + BudgetFor(s.Total).Show() +
				", or press Propose in Needs for the " +
				"lowest price that meets the needs."
		}
		s.Findings = append(s.Findings, finding)
	}
}
