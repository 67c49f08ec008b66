package pricing

import (
	"fmt"

	"boxwright/config"
	"boxwright/pricing/money"
)

// depositID is the id of the deposit among the payments.
const depositID = "deposit"

// payments splits the total: first the deposit, then what it leaves over the
// milestones.
func (o *order) payments() {
	s := o.sheet
	left := s.Total
	if left.Sign() <= 0 {
		return
	}
	deposit, how := o.t.DepositAmount, "as agreed"
	if !o.t.DepositPercent.IsZero() {
		deposit, how = s.Total.Share(o.t.DepositPercent, o.r), o.t.DepositPercent.Show()+" of the total"
	}
	if deposit.Cmp(left) > 0 {
		o.find("deposit", config.Warn, "deposit",
			fmt.Sprintf("The deposit of %s is more than the total; the total is asked for instead.", deposit.Show()),
			"Lower the deposit.")
		deposit = left
	}
	rest := "of the total"
	if deposit.Sign() > 0 {
		s.Payments = append(s.Payments, Payment{depositID, "Deposit with the order", deposit, how})
		left, rest = left.Sub(deposit), "of what the deposit leaves"
	}
	plan := o.t.Milestones
	if len(plan) == 0 {
		plan = o.b.Milestones
	}
	if len(plan) == 0 {
		plan = []Milestone{{ID: "delivery", Label: "On acceptance at delivery", Percent: hundred}}
	}
	if left.IsZero() {
		return
	}
	shares := make([]Percent, len(plan))
	for i, m := range plan {
		shares[i] = m.Percent
	}
	vans, modules := o.kinds()
	for i, a := range money.AllocatePercents(left, shares) {
		s.Payments = append(s.Payments, Payment{plan[i].ID, plan[i].due(vans, modules), a,
			plan[i].Percent.Show() + " " + rest})
	}
}

// kinds reports whether vans are on the order, and whether modules are.
func (o *order) kinds() (vans, modules bool) {
	for i := range o.priced {
		van := o.cat.IsVan(o.priced[i].item.Unit.Body)
		vans, modules = vans || van, modules || !van
	}
	return vans, modules
}

// share gives every single unit its part of the total: its own price, what is
// charged for each unit, and of everything else a part in proportion to its
// price.
func (o *order) share() {
	var each, rest Amount
	own := make([]Amount, len(o.priced))
	for n := range o.priced {
		own[n] = o.priced[n].sum().Times(o.priced[n].count)
	}
	for _, l := range o.sheet.Lines {
		switch {
		case l.Code == LinePrepay || l.Code == LineExcise:
			own[l.Item-1] = own[l.Item-1].Add(l.Amount)
		case l.Item > 0: // in the unit's own price
		case l.Each == "unit":
			each = each.Add(l.Price)
		default:
			rest = rest.Add(l.Amount)
		}
	}
	var weights []Amount
	for n := range o.priced {
		p := &o.priced[n]
		for i, a := range money.Allocate(own[n], make([]Amount, p.count)) {
			label := p.label
			if p.count > 1 {
				label = fmt.Sprintf("%s, %d of %d", p.label, i+1, p.count)
			}
			o.sheet.Shares = append(o.sheet.Shares,
				Share{Item: n + 1, Label: label, Due: p.item.Due, Amount: a.Add(each)})
			weights = append(weights, p.sum())
		}
	}
	for i, a := range money.Allocate(rest, weights) {
		o.sheet.Shares[i].Amount = o.sheet.Shares[i].Amount.Add(a)
	}
}
