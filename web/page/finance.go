package page

import (
	"slices"
	"strconv"

	"github.com/shopspring/decimal"

	"boxwright/pricing"
	"boxwright/pricing/finance"
	"boxwright/pricing/money"
	. "boxwright/web/page/markup"
)

// BuyersRate is what money costs the buyer a year.
func BuyersRate(p *Page) pricing.Percent {
	if s := p.Q.Draft.Terms.Service; s != nil {
		return s.Rates.Discount
	}
	return money.PercentOf(decimal.NewFromInt(4))
}

// LeaseSummary is the lease in six figures.
func LeaseSummary(p *Page) Part {
	x := p.Q.Price.Lease
	if x == nil {
		return nil
	}
	t := Table{Caption: "Lease-purchase of " + x.Lease.Principal.Show() + " at " + x.Lease.Rate.Show() + " a year",
		Class: "tight", Heads: []string{"", ">" + p.Q.Price.Currency}}
	row := func(label, how, value string) {
		t.Rows = append(t.Rows, []Part{Many(Text(label), If(how != "", El("span", Class("how"), Text(how)))),
			Text(value)})
	}
	every := map[int]string{12: "month", 4: "quarter", 2: "half-year", 1: "year"}[x.Lease.PerYear]
	when := "at the end of each " + every
	if x.Lease.Advance {
		when = "at the beginning of each " + every
	}
	row("Level payment", strconv.Itoa(x.Lease.Periods)+" payments, "+when+"; the last one settles",
		x.Schedule.Payment.Show())
	if !x.Lease.Balloon.IsZero() {
		row("Balloon", "at the end", x.Lease.Balloon.Show())
	}
	row("Paid together", "", x.Schedule.Paid.Show())
	row("Interest in it", "effective rate "+x.Effective.Show()+" a year", x.Schedule.Interest.Show())
	// On a grid of months, since the first period may begin late.
	rate := BuyersRate(p)
	flows := make([]pricing.Amount, x.Schedule.Rows[len(x.Schedule.Rows)-1].Months+1)
	for _, r := range x.Schedule.Rows {
		flows[r.Months] = flows[r.Months].Add(r.Payment)
	}
	years := 10
	if s := p.Q.Draft.Terms.Service; s != nil {
		years = s.This.Years
	}
	if y, err := finance.EquivalentAnnual(rate, 12, flows, years); err == nil {
		row("Present worth at delivery", "at "+rate.Show()+" a year in monthly periods; paid at once it would be "+
			x.Lease.Principal.Show(), y.Worth.Show())
		row("Equivalent yearly cost of it", "spread over "+Count(years, "year", "years")+
			" of service at the effective "+
			"rate of "+y.Effective.Show()+" a year", y.PerYear.Show())
	}
	return t.Draw()
}

// LeaseSchedule is every payment of the lease.
func LeaseSchedule(p *Page) Part {
	x := p.Q.Price.Lease
	t := Table{Caption: "Payment plan of the lease, months after delivery", Class: "tight",
		Heads: []string{"No.", ">Month", ">Payment", ">Interest", ">Principal", ">Still owed"}}
	for _, r := range x.Schedule.Rows {
		t.Rows = append(t.Rows, Texts(strconv.Itoa(r.N), strconv.Itoa(r.Months), r.Payment.Show(), r.Interest.Show(),
			r.Principal.Show(), r.Balance.Show()))
	}
	t.Sums = append(t.Sums, Texts("", "", x.Schedule.Paid.Show(), x.Schedule.Interest.Show(), x.Lease.Principal.Show(),
		""))
	return t.Draw()
}

// ServicePicture is the comparison and what it hangs on.
func ServicePicture(p *Page) Part {
	c := p.Q.Price.Service
	if c == nil {
		return nil
	}
	t := Table{Caption: "Cost of a year of service, in today's money", Class: "cards",
		Heads: []string{"Way", ">a year", ">Years", ">Warranty left", ">Break-even price"}}
	var how []Part
	for i, w := range c.Ways {
		name := Many(Text(w.Choice.Label),
			If(i == c.Cheapest && w.PerYear.Sign() > 0, Many(Text(" "), El("span", Class("tag ok"), Text("least")))),
			If(w.PerYear.IsZero(), El("span", Class("how"), Text("no cost is entered for it yet"))))
		how = append(how, El("p", Class("how"), Text(w.Choice.Label+": "+w.How)))
		even := w.BreakEven.Show()
		if w.BreakEven.Sign() < 0 {
			even = "not even for nothing"
		}
		t.Rows = append(t.Rows, []Part{name, El("b", Text(w.PerYear.Show())), Text(strconv.Itoa(w.Choice.Years)),
			Many(Text(Count(w.Choice.Warranty, "year", "years")),
				If(w.Uncovered > 0, El("span", Class("how"), Text(strconv.Itoa(w.Uncovered)+" without")))),
			Many(Text(even), El("span", Class("how"), Text("against: "+c.Ways[w.Against].Choice.Label)))})
	}
	return Many(t.Draw(), Many(how...),
		El("p", Class("how"),
			Text("At its break-even price a way costs as much a year as the cheapest of the others: a remount is "+
				"worth having for less than that.")),
		El("h3", Text("What it hangs on")), sensitivity(p, c))
}

// sensitivity draws how far each assumption moves the cost of a year, on one
// scale for all ways.
func sensitivity(p *Page, c *finance.Comparison) Part {
	low, high := c.Ways[0].PerYear.Float(), c.Ways[0].PerYear.Float()
	for _, w := range c.Ways {
		for _, s := range w.Swings {
			low, high = min(low, s.Low.Float(), s.High.Float()), max(high, s.Low.Float(), s.High.Float())
		}
	}
	if high <= low {
		return nil
	}
	const left, right, row = 150.0, 370.0, 13.0
	x := func(v float64) float64 { return left + (right-left)*(v-low)/(high-low) }
	y := 10.0
	said := "What a year costs when one assumption changes."
	var parts []Part
	for _, w := range c.Ways {
		top := y
		parts = append(parts, Label("strong", 0, y+7, w.Choice.Label+": "+w.PerYear.Show()+" a year"))
		y += row
		said += " " + w.Choice.Label + ", " + w.PerYear.Show() + ":"
		slices.SortStableFunc(w.Swings, func(a, b finance.Swing) int { return b.Width().Cmp(a.Width()) })
		for _, s := range w.Swings {
			if s.Width().IsZero() {
				continue
			}
			a, b := x(s.Low.Float()), x(s.High.Float())
			parts = append(parts, Label("small end", left-4, y+7, s.Text), Rect("slot", left, y, right-left, 8),
				Rect("critical", min(a, b), y, max(max(a, b)-min(a, b), 0.8), 8),
				Label("small", max(a, b)+3, y+7, s.Low.Show()+" to "+s.High.Show()))
			said += " " + s.Text + " gives " + s.Low.Show() + " to " + s.High.Show() + ";"
			y += row
		}
		at := x(w.PerYear.Float())
		parts = append(parts, Path("limit", "M"+Coord(at)+" "+Coord(top+row-2)+"V"+Coord(y)))
		y += 8
	}
	return Chart(said, 500, y, parts)
}
