package pricing

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/pricing/money"
)

// unit prices one kind of unit: list, surcharges, package credits, contract,
// fleet break and the agreed percentage, in that order, each on what the steps
// before it left.
func (o *order) unit(n int, it Item) {
	p := &priced{item: it, count: max(it.Units, 1), label: it.Label}
	ch, body := o.cat.ChassisByID(it.Unit.Chassis), o.cat.BodyByID(it.Unit.Body)
	if p.label == "" {
		p.label = ch.Label + ", " + body.Label
	}
	picks := o.inCatalogueOrder(it.Unit)
	o.sheet.Lines = slices.Grow(o.sheet.Lines, len(picks)+16)

	o.list(n, p, LineChassis, ch.ID, ch.ID, ch.Label, 1, chassisPart)
	o.list(n, p, LineBody, body.ID, body.ID, body.Label, 1, bodyPart)
	for _, x := range picks {
		o.list(n, p, LineOption, x.option.ID, KeyOf(x.option), x.option.Label, x.qty, optionPart)
	}
	o.surcharges(n, p, it.Unit, picks)
	o.subtotal(SubList, n, "One unit at list: "+p.label, p.sum())
	o.credits(n, p, it.Unit)
	if c := o.contract; c != nil {
		for _, d := range c.Discounts {
			o.rebate(n, p, LineContract, d.On, d.Percent, c.Label, c.Reason, c.ID)
		}
	}
	o.fleetBreak(n, p)
	o.rebate(n, p, LineDiscount, OnUnit, o.t.DiscountPercent, "Discount", o.t.DiscountReason, "discount_percent")
	o.subtotal(SubUnit, n, "One unit: "+p.label, p.sum())
	o.priced = append(o.priced, *p)
}

type picked struct {
	option *config.Option
	rank   int // of its group in the catalogue
	qty    int
}

// inCatalogueOrder lists the picks as the catalogue shows them: by group, then
// by id.
func (o *order) inCatalogueOrder(u *config.Unit) []picked {
	if o.rank == nil {
		o.rank = make(map[string]int, len(o.cat.Groups))
		for i, g := range o.cat.Groups {
			o.rank[g.ID] = i
		}
	}
	list := make([]picked, len(u.Picks))
	for i, p := range u.Picks {
		option := o.cat.OptionByID(p.Option)
		list[i] = picked{option, o.rank[option.Group], p.Qty}
	}
	slices.SortStableFunc(list, func(a, b picked) int { return a.rank - b.rank })
	return list
}

// list adds a line at the book's price.
func (o *order) list(n int, p *priced, code, id, key, label string, qty int, to part) {
	price := o.b.Prices[key]
	how, why := "price book", ""
	if price.IsZero() {
		how = "price book, included at no charge"
	}
	if e := o.b.dated[key]; e != nil {
		how, why = "edition "+e.ID+" of the price book", e.Reason
	}
	if qty > 1 {
		how += fmt.Sprintf(", %d a unit on %s", qty, unitsText(p.count))
	}
	each := price.Times(qty)
	o.line(Line{Code: code, Item: n, ID: id, Label: label, Qty: money.Count(qty * p.count), Each: "each", Price: price,
		Amount: each.Times(p.count), Taxed: true, How: because(how, why), Source: key})
	p.part[to] = p.part[to].Add(each)
}

// because joins the figures of a line and the reason for it.
func because(figures, reason string) string {
	switch {
	case reason == "":
		return figures
	case figures == "":
		return reason
	}
	return figures + ": " + reason
}

// adjust adds a line of so much for each unit, and books it on a part.
func (o *order) adjust(n int, p *priced, code, label string, each Amount, how, why, source string, parts []part) {
	if p.count > 1 {
		if how != "" {
			how += ", "
		}
		how += "on each of " + unitsText(p.count)
	}
	o.line(Line{Code: code, Item: n, Label: label, Qty: money.Count(p.count), Each: "unit", Price: each,
		Amount: each.Times(p.count), Taxed: true, How: because(how, why), Source: source})
	weights := make([]Amount, len(parts))
	for i, x := range parts {
		weights[i] = p.part[x]
	}
	for i, a := range money.Allocate(each, weights) {
		p.part[parts[i]] = p.part[parts[i]].Add(a)
	}
}

func (o *order) surcharges(n int, p *priced, u *config.Unit, picks []picked) {
	listed := p.part // percentages are on list prices, not on other surcharges
	for _, s := range o.b.Surcharges {
		switch {
		case len(s.Keys) > 0:
			o.keyedSurcharge(n, p, s, u, picks)
		case s.Percent.IsZero():
			o.adjust(n, p, LineSurcharge, s.Label, s.Amount, "", s.Reason, s.ID, []part{bodyPart})
		default:
			var base Amount
			for _, x := range partsOf[s.On] {
				base = base.Add(listed[x])
			}
			if each := base.Share(s.Percent, o.r); each.Sign() > 0 {
				how := fmt.Sprintf("%s of %s at %s", s.Percent.Show(), s.On.Words(), base.Show())
				o.adjust(n, p, LineSurcharge, s.Label, each, how, s.Reason, s.ID, partsOf[s.On])
			}
		}
	}
}

// keyedSurcharge is on named things only: chassis, body or options.
func (o *order) keyedSurcharge(n int, p *priced, s Surcharge, u *config.Unit, picks []picked) {
	var listed, each [partCount]Amount
	var pieces [partCount]int
	add := func(to part, key string, qty int) {
		if slices.Contains(s.Keys, key) {
			price := o.b.Prices[key].Times(qty)
			pieces[to] += qty
			listed[to] = listed[to].Add(price)
			each[to] = each[to].Add(s.Amount.Times(qty)).Add(price.Share(s.Percent, o.r))
		}
	}
	add(chassisPart, u.Chassis, 1)
	add(bodyPart, u.Body, 1)
	for _, x := range picks {
		add(optionPart, KeyOf(x.option), x.qty)
	}
	for to, a := range each {
		if a.Sign() <= 0 {
			continue
		}
		how := fmt.Sprintf("%s for each of %d", s.Amount.Show(), pieces[to])
		if s.Amount.IsZero() {
			how = fmt.Sprintf("%s of %s", s.Percent.Show(), listed[to].Show())
		}
		o.adjust(n, p, LineSurcharge, s.Label, a, how, s.Reason, s.ID, []part{part(to)})
	}
}

// credits takes off every package credit that the unit earns and that no
// larger one it earns replaces.
func (o *order) credits(n int, p *priced, u *config.Unit) {
	earned := o.b.earned(u)
	for _, c := range earned {
		o.adjust(n, p, LineCredit, c.Label, c.Amount.Neg(), "for "+o.labels(c.When)+" together", c.Reason, c.ID,
			[]part{optionPart})
	}
}

// earned lists the package credits of a unit.
func (b *Book) earned(u *config.Unit) []*Credit {
	var list []*Credit
	ousted := map[string]bool{}
	for i := range b.Credits {
		c := &b.Credits[i]
		if slices.ContainsFunc(c.When, func(id string) bool { return !u.Has(id) && u.Chassis != id && u.Body != id }) {
			continue
		}
		list = append(list, c)
		for _, id := range c.Ousts {
			ousted[id] = true
		}
	}
	return slices.DeleteFunc(list, func(c *Credit) bool { return ousted[c.ID] })
}

func (o *order) labels(ids []string) string {
	text := ""
	for i, id := range ids {
		if i > 0 {
			text += ", "
		}
		text += o.cat.LabelOf(id)
	}
	return text
}

func (o *order) fleetBreak(n int, p *priced) {
	f := o.b.FleetBreaks
	if f == nil || o.contract != nil && o.contract.NoFleetBreak {
		return
	}
	if x := f.at(o.units); x != nil {
		o.rebate(n, p, LineFleet, f.On, x.Percent, fmt.Sprintf("Quantity break from %d units", x.Units), f.Reason,
			fmt.Sprintf("fleet_breaks %d", x.Units))
	}
}

// at is the break that a number of units has reached, or nil.
func (f *FleetTable) at(units int) *FleetBreak {
	var reached *FleetBreak
	for i := range f.Breaks {
		if f.Breaks[i].Units <= units {
			reached = &f.Breaks[i]
		}
	}
	return reached
}

// rebate takes a percentage off a scope of one unit.
func (o *order) rebate(n int, p *priced, code string, scope Scope, percent Percent, label, why, source string) {
	var base Amount
	for _, x := range partsOf[scope] {
		base = base.Add(p.part[x])
	}
	each := base.Share(percent, o.r)
	if each.Sign() <= 0 {
		return
	}
	how := fmt.Sprintf("%s of %s at %s", percent.Show(), scope.Words(), base.Show())
	o.adjust(n, p, code, label, each.Neg(), how, why, source, partsOf[scope])
}

func unitsText(n int) string {
	if n == 1 {
		return "1 unit"
	}
	return fmt.Sprintf("%d units", n)
}
