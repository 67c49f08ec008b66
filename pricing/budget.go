package pricing

import (
	"slices"

	"github.com/shopspring/decimal"

	"boxwright/config"
	"boxwright/pricing/money"
)

// BudgetCode is the code of the figure and of the linear limit.
const BudgetCode = "price.total"

// Limits gives the budget of the terms, if they name one, as a limit that the
// rules engine can count with: what each option adds to the total of the order
// after every percentage that applies to it. Hand it b.AsOf(day).
//
// The numbers are whole dollars, rounded half up, and exact in sum for the unit
// as it stands. Package credits count as the unit earns them now, and a minimum
// or a step of the bond as it binds now: a pick that changes one of these is
// judged to the cent by Build, not here. A unit that cannot be priced yields no
// limit.
func Limits(b *Book, cat *config.Catalogue, u *config.Unit, t *Terms) []config.Linear {
	if b == nil || cat == nil || u == nil || t == nil || t.Budget.Sign() <= 0 {
		return nil
	}
	sheet, err := Build(b, cat, u, t, config.Date{})
	if err != nil {
		return nil
	}
	per, base := map[string]float64{}, sheet.Total
	listed, passed := b.marginal(cat, u, t, sheet)
	factor := listed.Mul(passed)
	for i := range cat.Options {
		o := &cat.Options[i]
		key := KeyOf(o)
		price := b.Prices[key].Decimal()
		added := price.Mul(factor)
		for _, s := range b.Surcharges {
			if slices.Contains(s.Keys, key) {
				added = added.Add(s.Amount.Decimal().Add(price.Mul(s.Percent.Fraction())).Mul(passed))
			}
		}
		dollars := added.Round(0).IntPart()
		if dollars == 0 {
			continue
		}
		per[o.ID] = float64(dollars)
		if n := u.Qty(o.ID); n > 0 {
			base = base.Sub(money.Dollars(dollars).Times(n))
		}
	}
	return []config.Linear{{Code: BudgetCode, Label: "Price of the order", Unit: b.Currency, Base: base.Float(),
		Per: per, Limit: t.Budget.Float()}}
}

// marginal is what a dollar of an option's price becomes: listed with the
// surcharges on options, and passed on by every later step into the total of
// the order.
func (b *Book) marginal(cat *config.Catalogue, u *config.Unit, t *Terms, s *Sheet) (listed, passed decimal.Decimal) {
	one := decimal.NewFromInt(1)
	listed, passed = one, one
	for _, x := range b.Surcharges {
		if len(x.Keys) == 0 && x.On.covers(optionPart) {
			listed = listed.Add(x.Percent.Fraction())
		}
	}
	o := &order{b: b, t: t, sheet: new(Sheet)}
	contract := o.findContract()
	fee := decimal.Zero
	if contract != nil {
		for _, d := range contract.Discounts {
			if d.On.covers(optionPart) {
				passed = passed.Mul(one.Sub(d.Percent.Fraction()))
			}
		}
		fee = contract.Fee.Fraction()
	}
	if f := b.FleetBreaks; f != nil && f.On.covers(optionPart) && (contract == nil || !contract.NoFleetBreak) {
		if x := f.at(s.Units); x != nil {
			passed = passed.Mul(one.Sub(x.Percent.Fraction()))
		}
	}
	passed = passed.Mul(one.Sub(t.DiscountPercent.Fraction()))

	grows, taxed := one.Add(fee), one.Add(fee)
	if ExciseDue(UseOf(t, cat, u), float64(cat.ChassisByID(u.Chassis).GVWRLb)) {
		grows = grows.Add(ExciseRate.Fraction())
		if !b.Tax.ExciseUntaxed {
			taxed = taxed.Add(ExciseRate.Fraction())
		}
	}
	rate, _ := t.rateOf(&b.Tax)
	if exempt, _ := t.Exempt(&b.Tax); !exempt {
		grows = grows.Add(taxed.Mul(rate.Fraction()))
	}
	if t.Bond {
		at := s.Total.Sub(s.Sum(LineBond))
		for i := len(b.Bond) - 1; i >= 0; i-- {
			if at.Cmp(b.Bond[i].Over) > 0 {
				grows = grows.Mul(one.Add(b.Bond[i].Percent.Fraction()))
				break
			}
		}
	}
	// Nine decimals keep a price of millions to the cent.
	return listed, passed.Mul(grows).Mul(decimal.NewFromInt(int64(s.Units))).Round(9)
}

// BudgetFor is the budget that a total needs: the next hundred that is not less.
func BudgetFor(total Amount) Amount {
	return money.Dollars(100 * total.Decimal().Shift(-2).Ceil().IntPart())
}
