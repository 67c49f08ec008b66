package quote

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// before is the quote before this one, where it can be computed; nil where there is none.
func (p *Page) before() *Before {
	if p.Trust == nil || p.Trust.Before == nil || p.Trust.Before.Q == nil {
		return nil
	}
	return p.Trust.Before
}

// unitBefore is a unit of the quote as the quote before had it; nil for one that is new, and
// where there is no quote before.
func unitBefore(b *Before, now *quote.Draft, unit int) *quote.Quote {
	if b == nil {
		return nil
	}
	return b.unit(quote.Pairs(b.Q.Draft, now)[unit])
}

// unit is one of the units of the quote before, by its place; nil where it has none, or that cannot be computed.
func (b *Before) unit(at int) *quote.Quote {
	if at < 0 {
		return nil
	}
	was, err := b.Q.Dated(at)
	if err != nil {
		return nil
	}
	return was
}

// revisionPaper is what a revision begins with: what it changes and what that costs.
func revisionPaper(p *Page) Part {
	b := p.before()
	if b == nil {
		return nil
	}
	return Many(El("h2", Text("Change order to "+issueOf(b.Rev, b.Date))), changeOrder(p, b))
}

// issueOf names one of a quote's issues: the first has no number on its own pages either.
func issueOf(rev int, on config.Date) string {
	name := "the first issue"
	if rev > 0 {
		name = "revision " + strconv.Itoa(rev)
	}
	return name + " of " + on.Long()
}

// changeOrder prices the difference alone.
func changeOrder(p *Page, b *Before) Part {
	was, now := leading(b.Q), leading(p.Q)
	what := page.Table{Caption: "What changed", Class: "tight", Heads: []string{"What", "Before", "Now"}}
	for _, c := range quote.Changes(was, now) {
		what.Rows = append(what.Rows, page.Texts(page.Capital(c.Where), page.OrDash(c.From),
			page.OrDash(c.To)))
	}
	several := len(was.Draft.More)+len(now.Draft.More) > 0
	d := quote.Difference(was, now)
	if what.Rows == nil && d.Lines == nil {
		return El("p", Text("Nothing was changed."))
	}
	cost := page.Table{Caption: "What it costs", Class: "tight",
		Heads: []string{"Line", ">Before", ">Now", ">Change order"}}
	for _, l := range d.Lines {
		cost.Rows = append(cost.Rows, page.Texts(l.Label, l.From.Show(), l.To.Show(), l.By.Show()))
	}
	cost.Sums = append(cost.Sums, page.Texts("Total", was.Price.Total.Show(), now.Price.Total.Show(), d.Total.Show()))
	otherwise := If(was.Total() != b.Frozen.Total,
		El("p", page.Mark(config.Warn), Text(" The earlier quote was issued at "+b.Frozen.Total+
			"; this copy of the page computes "+was.Total()+" for it. What was signed stands.")))
	return Many(
		If(what.Rows != nil, what.Draw()),
		If(d.Lines != nil, cost.Draw()), otherwise,
		El("p", El("b", Text("The change order comes to "+now.Price.Currency+" "+d.Total.Show()+". ")),
			If(!several, Text(moved("The likely date (50 %)", was.Plan.EvenOdds, now.Plan.EvenOdds)+" "+
				moved("The safe date (90 %)", was.Plan.NineInTen, now.Plan.NineInTen)+left(p, was, now)))),
		When(several, func() Part { return eachMoved(p, b, now) }),
	)
}

// eachMoved is where a change order leaves dates and payload of each of several units.
func eachMoved(p *Page, b *Before, now *quote.Quote) Part {
	t := page.Table{Caption: "Dates and payload now", Class: "tight", Heads: []string{"Unit", "Likely date (50 %)",
		"Safe date (90 %)", "Remaining payload"}}
	for i, at := range quote.Pairs(b.Q.Draft, now.Draft) {
		after, err := now.Dated(i)
		if err != nil {
			continue
		}
		payload := func(q *quote.Quote) string {
			f, ok := q.Figure("weight.payload-left")
			return page.Either(ok, p.Show(f.Value, f.Unit), "–")
		}
		cells := [][2]string{{"", after.Plan.EvenOdds.Long()}, {"", after.Plan.NineInTen.Long()}, {"", payload(after)}}
		if before := b.unit(at); before != nil {
			cells[0][0], cells[1][0] = before.Plan.EvenOdds.Long(), before.Plan.NineInTen.Long()
			cells[2][0] = payload(before)
		}
		row := []Part{Text(now.NameOf(i))}
		for _, c := range cells {
			how := "as before"
			if c[0] == "" {
				how = "new on this quote"
			} else if c[0] != c[1] {
				how = "before: " + c[0]
			}
			row = append(row, Many(El("div", Text(page.Held(c[1]))), El("span", Class("how"), Text(how))))
		}
		t.Rows = append(t.Rows, row)
	}
	return t.Draw()
}

// left says what a change order leaves of the payload.
func left(p *Page, was, now *quote.Quote) string {
	before, known := was.Figure("weight.payload-left")
	after, also := now.Figure("weight.payload-left")
	from, to := p.Show(before.Value, before.Unit), p.Show(after.Value, after.Unit)
	switch {
	case !known || !also:
		return ""
	case from == to:
		return page.Held(" Remaining payload stays at " + to + ".")
	}
	return page.Held(" Remaining payload goes from " + from + " to " + to + ".")
}

// moved says where a change order leaves a date.
func moved(what string, from, to config.Date) string {
	days, side := from.DaysUntil(to), "later"
	if days == 0 {
		return page.Held(what + " stays on " + to.Long() + ".")
	} else if days < 0 {
		days, side = -days, "earlier"
	}
	return page.Held(what + " moves " + page.Count(days, "calendar day", "calendar days") + " " + side + ", to " +
		to.Long() + ".")
}

// changePaper is a change order by itself: what changed, what it costs, what it means for the
// plant and for the unit's margins, and where to sign.
func changePaper(p *Page) Part {
	b := p.before()
	out := []Part{El("h1", Text("Change order: "+fleetTitle(p))),
		El("p", Text("From "+issueOf(b.Rev, b.Date)+" to "+issueOf(p.Q.Draft.Rev, p.Q.Draft.Date)+".")),
		changeOrder(p, b)}
	var same []string // units whose work is as it was
	for i, at := range quote.Pairs(b.Q.Draft, p.Q.Draft) {
		was := b.unit(at)
		now, err := p.Q.Dated(i)
		if was == nil || err != nil {
			continue
		}
		of := ""
		if len(p.Q.Draft.More) > 0 {
			of = ": " + p.Q.NameOf(i)
		}
		stations := stationsChanged(was, now, of)
		if stations == nil {
			same = append(same, p.Q.NameOf(i))
		}
		out = append(out, stations, figuresChanged(p, was, now, of))
	}
	if same != nil {
		text := "At the plant hours and days stay as they were"
		if len(p.Q.Draft.More) > 0 {
			text += " for " + strings.Join(same, "; ")
		}
		out = append(out, El("p", Text(text+".")))
	}
	line := func(t string) Part { return El("div", Text(t)) }
	return Many(Many(out...), El("section", Class("whole"), El("h2", Text("Agreed")),
		El("div", Class("sign"), line("For the buyer: name, signature and date"),
			line("For the seller: name, signature and date"), line("Entered at the plant: name and date"),
			line("Earlier order sheets withdrawn: name and date"))))
}

// stationsChanged are the stations whose hours or days are others now, and the parts to order;
// nil where there are neither.
func stationsChanged(was, now *quote.Quote, of string) Part {
	t := page.Table{Caption: "At the plant" + of, Class: "tight",
		Heads: []string{"Station", ">Hours before", ">Hours now", "Began", "Begins now", "Ends now"}}
	before, after := was.Stations(), now.Stations()
	for _, b := range before {
		if b.ID != "" && stationIn(after, b.ID).ID == "" {
			t.Rows = append(t.Rows, page.Texts(b.Label, quantity.Group(b.Hours, 1), "0", b.Start.Long(), "no work now", "–"))
		}
	}
	for _, a := range after {
		b := stationIn(before, a.ID)
		began := b.Start.Long()
		if b.ID == "" {
			began = "no work"
		}
		if a.ID != "" && (b.Hours != a.Hours || b.Start != a.Start || b.Finish != a.Finish) {
			t.Rows = append(t.Rows, page.Texts(a.Label, quantity.Group(b.Hours, 1), quantity.Group(a.Hours, 1),
				began, a.Start.Long(), a.Finish.Long()))
		}
	}
	var parts []string
	for _, s := range now.LongLead() {
		if was.Plan.Step(s.ID) == nil {
			parts = append(parts, s.Label+" ("+quantity.Group(s.Days.Likely, 0)+" working days, needed at the latest "+
				s.LatestFinish.Long()+")")
		}
	}
	if t.Rows == nil && parts == nil {
		return nil
	}
	return Many(If(t.Rows != nil, t.Draw()),
		If(parts != nil, El("p", El("b", Text("Long lead, order now: ")), Text(strings.Join(parts, "; ")+"."))))
}

// stationIn is the station of a list with an id; one without work where there is none.
func stationIn(list []quote.Station, id string) quote.Station {
	if i := slices.IndexFunc(list, func(s quote.Station) bool { return s.ID == id }); i >= 0 {
		return list[i]
	}
	return quote.Station{}
}

// figuresChanged are the figures with a limit that are others now.
func figuresChanged(p *Page, was, now *quote.Quote, of string) Part {
	t := page.Table{Caption: "Margins" + of, Class: "tight long",
		Heads: []string{"Figure", ">Before", ">Now", ">Limit", ">Margin now"}}
	for _, report := range []*config.Report{&now.Weight.Report, &now.Power.Report, &now.Space.Report} {
		for _, f := range report.Figures {
			before, after := "–", p.Show(f.Value, f.Unit)
			if a, ok := was.Figure(f.Code); ok {
				before = p.Show(a.Value, a.Unit)
			}
			if f.Sense != "" && before != after {
				t.Rows = append(t.Rows, []Part{Text(page.Held(f.Label)), Text(before), Text(after),
					Text(bound(p, f)), Many(Text(p.Signed(f.Margin(), f.Unit)+" "), page.Mark(page.SeverityOf(f)))})
			}
		}
	}
	return If(t.Rows != nil, t.Draw())
}
