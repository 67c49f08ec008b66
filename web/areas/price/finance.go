package price

import (
	"strconv"

	"boxwright/pricing/finance"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// yields sets the credits for paying the chassis early beside what they earn.
func yields(p *page.Page) Part {
	t := page.Table{Caption: "What paying early earns", Heads: []string{"Credit", ">a year, simple", ">compounded"}}
	for _, x := range p.Q.Book.Prepayments {
		days := p.Q.DaysEarly(&x)
		if y, err := finance.EarlyPayment(x.Percent, days, 365); err == nil {
			t.Rows = append(t.Rows,
				[]Part{Many(Text(x.Label),
					El("span", Class("how"), Text(x.Percent.Show()+" of the chassis, "+strconv.Itoa(days)+
						" days early"))), Text(y.Simple.Show()), Text(y.Compounded.Show())})
		}
	}
	if t.Rows == nil {
		return nil
	}
	return Many(t.Draw(),
		El("p", Class("how"), Text("Worth taking while the buyer's own money earns less than the yearly rate.")))
}

func leaseBlock(p *page.Page) Part {
	l, s := p.Q.Draft.Terms.Lease, p.Q.Draft.Terms.Service
	if l == nil {
		return page.Block("Lease-purchase",
			El("p", Class("row-tools"), page.Action("add", "lease", "", "Work out a lease-purchase",
				At("id", "add-lease")),
				El("span", Class("small soft"),
					Text("Level payments to the cent beside the payments above. No offer of credit."))))
	}
	cur := p.Q.Book.Currency
	per := []page.Choice{{"12", "monthly"}, {"4", "quarterly"}, {"2", "half-yearly"}, {"1", "yearly"}}
	fields := El("div", Class("fields"),
		page.Number(p, "lease.principal", "Sum financed", page.Blank(l.Principal), cur,
			"Blank = the total less the deposit"),
		page.Number(p, "lease.rate", "Rate a year", l.Rate.String(), "%",
			"As the lessor states it, in the periods of payment"),
		page.Choose(p, "lease.per_year", "Payments", strconv.Itoa(l.PerYear), "", per),
		page.Number(p, "lease.periods", "How many", strconv.Itoa(l.Periods), "", ""),
		page.Number(p, "lease.balloon", "Balloon at the end", page.Blank(l.Balloon), cur, ""),
		page.Number(p, "lease.first_due", "First period begins", page.DayCount(l.FirstDue), "months",
			"After delivery"),
		When(s == nil || len(s.Others) == 0, func() Part { // else it stands beneath
			return page.Number(p, "rates.discount", "What money costs the buyer",
				page.BuyersRate(p).String(), "% a year", "For the present worth; inflation included")
		}),
		page.Check(p, "lease.advance", "Each payment at the beginning of its period", l.Advance),
		page.Field(p, "lease.label", "Note", l.Label, ""),
	)
	return page.Block("Lease-purchase",
		El("details", At("id", "fold-lease-terms"), Flag("open", p.Q.Price.Lease == nil),
			page.Summary("h3", "Rate, payments and what is financed"), fields),
		page.LeaseSummary(p),
		When(p.Q.Price.Lease != nil, func() Part {
			return page.Inner("lease", "Every payment", page.LeaseSchedule(p))
		}),
		El("p", Class("row-tools"), page.Action("drop", "lease", "", "Leave the lease out", Class("quiet"),
			At("id", "drop-lease"))),
	)
}

// serviceBlock compares ways of having a unit over the years.
func serviceBlock(p *page.Page) Part {
	add := func(kind, label string) Part {
		return page.Action("add", "way."+kind, "", label, At("id", "add-way-"+kind))
	}
	tools := El("p", Class("row-tools"), add("keep", "Keep the old unit"), add("remount", "Remount a module"),
		add("offer", "Another offer"))
	s := p.Q.Draft.Terms.Service
	if s == nil || len(s.Others) == 0 {
		return page.Block("Years of service",
			El("p", Class("lead"),
				Text("What a year of service costs, this way and others.")), tools)
	}
	out := []Part{
		El("div", Class("fields"),
			page.Number(p, "rates.inflation", "Inflation", s.Rates.Inflation.String(), "% a year", "Yours to set"),
			page.Number(p, "rates.discount", "What money costs", s.Rates.Discount.String(), "% a year",
				"Yours to set; inflation included")),
		wayFields(p, 0, &s.This),
	}
	for i := range s.Others {
		out = append(out, wayFields(p, i+1, &s.Others[i]))
	}
	return page.Block("Years of service", Many(out...), tools, page.ServicePicture(p))
}

func wayFields(p *page.Page, at int, c *finance.Choice) Part {
	id := "way." + strconv.Itoa(at)
	cur := p.Q.Book.Currency
	title := c.Label
	if title == "" {
		title = "This quote"
	}
	return El("details", At("id", "fold-"+id),
		page.Summary("h3", title, El("span", Class("soft"), Text(" · "+page.Count(c.Years, "year", "years")))),
		El("div", Class("fields"),
			page.Field(p, id+".label", "Name", c.Label, ""),
			When(at > 0, func() Part {
				return page.Number(p, id+".price", "Price now", page.Blank(c.Price), cur, "")
			}),
			page.Number(p, id+".trade_in", "The old unit brings", page.Blank(c.TradeIn), cur, ""),
			page.Number(p, id+".years", "Years of service", strconv.Itoa(c.Years), "years", ""),
			page.Number(p, id+".yearly", "Upkeep in the first year", page.Blank(c.Yearly), cur,
				"Maintenance plan included"),
			page.Number(p, id+".aging", "Upkeep rises", page.Blank(c.Aging), "% a year", "Beyond inflation"),
			page.Number(p, id+".residual", "Worth at the end", page.Blank(c.Residual), cur, "In today's money"),
			page.Number(p, id+".warranty", "Structural warranty left", page.DayCount(c.Warranty), "years",
				strconv.Itoa(finance.StructureYears)+" on a new or remounted module is common practice, no source"),
		),
		Each(c.Later, func(k int, o finance.Outlay) Part {
			later := "later." + strconv.Itoa(at) + "." + strconv.Itoa(k)
			return El("div", Class("fields entry"), page.Field(p, later+".label", "Single cost", o.Label, ""),
				page.Number(p, later+".year", "In year", strconv.Itoa(o.Year), "", ""), page.Number(p,
					later+".amount", "Amount", page.Blank(o.Amount), cur, ""),
				El("div", Class("row-tools"), page.Action("drop", later, "", "Take out", Class("quiet"),
					At("id", "drop-"+later), At("aria-label", "Take out: "+o.Label))))
		}),
		El("p", Class("row-tools"), page.Action("add", "later."+strconv.Itoa(at), "", "Add a single cost",
			At("id", "add-later-"+strconv.Itoa(at))),
			If(at > 0, page.Action("drop", id, "", "Take this way out", Class("quiet"), At("id", "drop-"+id)))),
	)
}
