package view

import (
	"slices"
	"strconv"

	"github.com/shopspring/decimal"

	"boxwright/pricing"
	"boxwright/pricing/finance"
	"boxwright/pricing/money"
	. "boxwright/web/view/markup"
)

// yields sets the credits for paying the chassis early beside what they earn.
func yields(p *Page) Part {
	t := table{caption: "What paying early earns", heads: []string{"Credit", ">a year, simple", ">compounded"}}
	for _, x := range p.Q.Book.Prepayments {
		days := x.Days
		if p.Q.Draft.Terms.PrepayDays > 0 {
			days = p.Q.Draft.Terms.PrepayDays
		}
		if y, err := finance.EarlyPayment(x.Percent, days, 365); err == nil {
			t.rows = append(t.rows, []Part{Many(Text(x.Label), El("span", Class("how"), Text(x.Percent.Show()+" of the chassis, "+strconv.Itoa(days)+" days early"))), Text(y.Simple.Show()), Text(y.Compounded.Show())})
		}
	}
	if t.rows == nil {
		return nil
	}
	return Many(t.draw(), El("p", Class("how"), Text("Worth taking while the buyer's own money earns less than the yearly rate.")))
}

// buyersRate is what money costs the buyer a year.
func buyersRate(p *Page) pricing.Percent {
	if s := p.Q.Draft.Terms.Service; s != nil {
		return s.Rates.Discount
	}
	return money.PercentOf(decimal.NewFromInt(4))
}

func leaseBlock(p *Page) Part {
	l, s := p.Q.Draft.Terms.Lease, p.Q.Draft.Terms.Service
	if l == nil {
		return block("Lease-purchase", El("p", Class("row-tools"), action("add", "lease", "", "Work out a lease-purchase", At("id", "add-lease")), El("span", Class("small soft"), Text("Level payments to the cent beside the payments above. No offer of credit."))))
	}
	cur := p.Q.Book.Currency
	per := []choice{{"12", "monthly"}, {"4", "quarterly"}, {"2", "half-yearly"}, {"1", "yearly"}}
	return block("Lease-purchase",
		El("div", Class("fields"),
			number(p, "lease.principal", "Sum financed", blank(l.Principal), cur, "Empty takes the total less the deposit"),
			number(p, "lease.rate", "Rate a year", l.Rate.String(), "%", "As the lessor states it, in the periods of payment"),
			choose(p, "lease.per_year", "Payments", strconv.Itoa(l.PerYear), "", per),
			number(p, "lease.periods", "How many", strconv.Itoa(l.Periods), "", ""),
			number(p, "lease.balloon", "Balloon at the end", blank(l.Balloon), cur, ""),
			number(p, "lease.first_due", "First period begins", dayCount(l.FirstDue), "months", "After delivery"),
			When(s == nil || len(s.Others) == 0, func() Part { // else it stands beneath
				return number(p, "rates.discount", "What money costs the buyer", buyersRate(p).String(), "% a year", "For the present worth; inflation included")
			}),
			check(p, "lease.advance", "Each payment at the beginning of its period", l.Advance),
			field(p, "lease.label", "Note", l.Label, ""),
		),
		leaseSummary(p),
		When(p.Q.Price.Lease != nil, func() Part {
			return El("details", At("id", "fold-lease"), El("summary", El("b", Text("Every payment"))), leaseSchedule(p))
		}),
		El("p", Class("row-tools"), action("drop", "lease", "", "Leave the lease out", Class("quiet"), At("id", "drop-lease"))),
	)
}

// leaseSummary is the lease in six figures.
func leaseSummary(p *Page) Part {
	x := p.Q.Price.Lease
	if x == nil {
		return nil
	}
	t := table{caption: "Lease-purchase of " + x.Lease.Principal.Show() + " at " + x.Lease.Rate.Show() + " a year", heads: []string{"", ">" + p.Q.Price.Currency}}
	row := func(label, how, value string) {
		t.rows = append(t.rows, []Part{Many(Text(label), If(how != "", El("span", Class("how"), Text(how)))), Text(value)})
	}
	every := map[int]string{12: "month", 4: "quarter", 2: "half-year", 1: "year"}[x.Lease.PerYear]
	when := "at the end of each " + every
	if x.Lease.Advance {
		when = "at the beginning of each " + every
	}
	row("Level payment", strconv.Itoa(x.Lease.Periods)+" payments, "+when+"; the last one settles", x.Schedule.Payment.Show())
	if !x.Lease.Balloon.IsZero() {
		row("Balloon", "at the end", x.Lease.Balloon.Show())
	}
	row("Paid together", "", x.Schedule.Paid.Show())
	row("Interest in it", "effective rate "+x.Effective.Show()+" a year", x.Schedule.Interest.Show())
	// On a grid of months, since the first period may begin late.
	rate := buyersRate(p)
	flows := make([]pricing.Amount, x.Schedule.Rows[len(x.Schedule.Rows)-1].Months+1)
	for _, r := range x.Schedule.Rows {
		flows[r.Months] = flows[r.Months].Add(r.Payment)
	}
	monthly := money.PercentOf(rate.Decimal().DivRound(decimal.NewFromInt(12), 6))
	if worth, err := finance.PresentWorth(monthly, flows); err == nil {
		row("Present worth at delivery", "at "+rate.Show()+" a year in monthly periods; paid at once it would be "+x.Lease.Principal.Show(), worth.Show())
		years := 10
		if s := p.Q.Draft.Terms.Service; s != nil {
			years = s.This.Years
		}
		if a, err := finance.EquivalentAnnual(worth, rate, years); err == nil {
			row("Equivalent annual cost of it", "spread over "+count(years, "year", "years")+" of service", a.Show())
		}
	}
	return t.draw()
}

func leaseSchedule(p *Page) Part {
	x := p.Q.Price.Lease
	t := table{caption: "Payment plan of the lease, months after delivery", heads: []string{"No.", ">Month", ">Payment", ">Interest", ">Principal", ">Still owed"}}
	for _, r := range x.Schedule.Rows {
		t.rows = append(t.rows, texts(strconv.Itoa(r.N), strconv.Itoa(r.Months), r.Payment.Show(), r.Interest.Show(), r.Principal.Show(), r.Balance.Show()))
	}
	t.sums = append(t.sums, texts("", "", x.Schedule.Paid.Show(), x.Schedule.Interest.Show(), x.Lease.Principal.Show(), ""))
	return t.draw()
}

// financePaper prints the payment plan of a lease and what a year of service
// costs, where the terms ask for them.
func financePaper(p *Page) Part {
	return Many(
		When(p.Q.Price.Lease != nil, func() Part {
			return Many(El("h3", Text("Lease-purchase, as worked out for the buyer; no offer of credit")), leaseSummary(p), leaseSchedule(p))
		}),
		When(p.Q.Price.Service != nil, func() Part { return Many(El("h2", Text("Years of service")), servicePicture(p)) }))
}

// serviceBlock compares ways of having a unit over the years.
func serviceBlock(p *Page) Part {
	add := func(kind, label string) Part {
		return action("add", "way."+kind, "", label, At("id", "add-way-"+kind))
	}
	tools := El("p", Class("row-tools"), add("keep", "Keep the old unit"), add("remount", "Remount a module"), add("offer", "Another offer"))
	s := p.Q.Draft.Terms.Service
	if s == nil || len(s.Others) == 0 {
		return block("Years of service", El("p", Class("lead"), Text("What a year of service costs: this quote beside keeping the old unit, remounting its module on a new chassis, or another offer.")), tools)
	}
	out := []Part{
		El("div", Class("fields"),
			number(p, "rates.inflation", "Inflation", s.Rates.Inflation.String(), "% a year", "Yours to set"),
			number(p, "rates.discount", "What money costs", s.Rates.Discount.String(), "% a year", "Yours to set; inflation included")),
		wayFields(p, 0, &s.This),
	}
	for i := range s.Others {
		out = append(out, wayFields(p, i+1, &s.Others[i]))
	}
	return block("Years of service", Many(out...), tools, servicePicture(p))
}

func wayFields(p *Page, at int, c *finance.Choice) Part {
	id := "way." + strconv.Itoa(at)
	cur := p.Q.Book.Currency
	title := c.Label
	if title == "" {
		title = "This quote"
	}
	return El("details", At("id", "fold-"+id), El("summary", El("b", Text(title)), El("span", Class("soft"), Text(" · "+count(c.Years, "year", "years")))),
		El("div", Class("fields"),
			field(p, id+".label", "Name", c.Label, ""),
			When(at > 0, func() Part { return number(p, id+".price", "Price now", blank(c.Price), cur, "") }),
			number(p, id+".trade_in", "The old unit brings", blank(c.TradeIn), cur, ""),
			number(p, id+".years", "Years of service", strconv.Itoa(c.Years), "years", ""),
			number(p, id+".yearly", "Upkeep in the first year", blank(c.Yearly), cur, "Maintenance plan included"),
			number(p, id+".ageing", "Upkeep rises", blank(c.Ageing), "% a year", "Beyond inflation"),
			number(p, id+".residual", "Worth at the end", blank(c.Residual), cur, "In today's money"),
			number(p, id+".warranty", "Structural warranty left", dayCount(c.Warranty), "years", strconv.Itoa(finance.StructureYears)+" on a new or remounted module is common practice, no source"),
		),
		Each(c.Later, func(k int, o finance.Outlay) Part {
			later := "later." + strconv.Itoa(at) + "." + strconv.Itoa(k)
			return El("div", Class("fields entry"), field(p, later+".label", "Single cost", o.Label, ""), number(p, later+".year", "In year", strconv.Itoa(o.Year), "", ""), number(p, later+".amount", "Amount", blank(o.Amount), cur, ""),
				El("div", Class("row-tools"), action("drop", later, "", "Take out", Class("quiet"), At("id", "drop-"+later), At("aria-label", "Take out: "+o.Label))))
		}),
		El("p", Class("row-tools"), action("add", "later."+strconv.Itoa(at), "", "Add a single cost", At("id", "add-later-"+strconv.Itoa(at))),
			If(at > 0, action("drop", id, "", "Take this way out", Class("quiet"), At("id", "drop-"+id)))),
	)
}

// servicePicture is the comparison and what it hangs on.
func servicePicture(p *Page) Part {
	c := p.Q.Price.Service
	if c == nil {
		return nil
	}
	t := table{caption: "Cost of a year of service, in today's money", class: "cards", heads: []string{"Way", ">a year", ">Years", ">Warranty left", ">Break-even price"}}
	var how []Part
	for i, w := range c.Ways {
		name := Many(Text(w.Choice.Label), If(i == c.Cheapest && w.PerYear.Sign() > 0, Many(Text(" "), El("span", Class("tag ok"), Text("least")))), If(w.PerYear.IsZero(), El("span", Class("how"), Text("no cost is entered for it yet"))))
		how = append(how, El("p", Class("how"), Text(w.Choice.Label+": "+w.How)))
		even := w.BreakEven.Show()
		if w.BreakEven.Sign() < 0 {
			even = "not even for nothing"
		}
		t.rows = append(t.rows, []Part{name, El("b", Text(w.PerYear.Show())), Text(strconv.Itoa(w.Choice.Years)), Many(Text(count(w.Choice.Warranty, "year", "years")), If(w.Uncovered > 0, El("span", Class("how"), Text(strconv.Itoa(w.Uncovered)+" without")))), Many(Text(even), El("span", Class("how"), Text("against: "+c.Ways[w.Against].Choice.Label)))})
	}
	return Many(t.draw(), Many(how...),
		El("p", Class("how"), Text("At its break-even price a way costs as much a year as the cheapest of the others: a remount is worth having for less than that.")),
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
	const left, right, row = 150.0, 470.0, 12.0
	x := func(v float64) float64 { return left + (right-left)*(v-low)/(high-low) }
	y := 10.0
	said := "What a year costs when one assumption changes."
	var parts []Part
	for _, w := range c.Ways {
		top := y
		parts = append(parts, words("strong", 0, y+7, w.Choice.Label+": "+w.PerYear.Show()+" a year"))
		y += row
		said += " " + w.Choice.Label + ", " + w.PerYear.Show() + ":"
		slices.SortStableFunc(w.Swings, func(a, b finance.Swing) int { return b.Width().Cmp(a.Width()) })
		for _, s := range w.Swings {
			if s.Width().IsZero() {
				continue
			}
			a, b := x(s.Low.Float()), x(s.High.Float())
			parts = append(parts, words("small end", left-4, y+7, s.Text), rect("slot", left, y, right-left, 8), rect("critical", min(a, b), y, max(max(a, b)-min(a, b), 0.8), 8),
				words("small", max(a, b)+3, y+7, s.Low.Show()+" to "+s.High.Show()))
			said += " " + s.Text + " gives " + s.Low.Show() + " to " + s.High.Show() + ";"
			y += row
		}
		at := x(w.PerYear.Float())
		parts = append(parts, path("limit", "M"+n(at)+" "+n(top+row-2)+"V"+n(y)))
		y += 8
	}
	return chart(said, 560, y, parts)
}
