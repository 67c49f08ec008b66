package quote

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/web/drawing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// fleetPaper prints what a quote of several units holds.
func fleetPaper(p *Page) Part {
	if p.Q.Draft.Count() == 1 {
		return nil
	}
	t := page.Table{Caption: "Units of this quote, each with its share of fees and tax", Class: "tight",
		Heads: []string{"Unit", ">How many", ">Remaining payload",
			">Front, rear axle margin", ">Delivery, first of the kind", ">Each", ">Together"}}
	for i, it := range p.Q.Draft.Items() {
		named := strings.TrimSpace(it.Label) != "" // else its name is that of chassis and body
		row := []Part{Many(Text(p.Q.NameOf(i)),
			If(named, El("div", Class("how"),
				Text(p.Q.Edition.Cat.LabelOf(it.Unit.Chassis)+", "+p.Q.Edition.Cat.LabelOf(it.Unit.Body))))),
			Text(strconv.Itoa(it.Count())), nil, nil, nil, Text(p.Q.Price.Each(i + 1)),
			Text(page.ShareOf(p.Q, i).Show())}
		if q, err := p.Q.Dated(i); err == nil {
			front, _ := q.Figure("weight.front-axle")
			rear, _ := q.Figure("weight.rear-axle")
			if left, ok := q.Figure("weight.payload-left"); ok {
				row[2] = Text(p.Show(left.Value, left.Unit))
			}
			row[3] = Many(El("div", Text(p.Signed(front.Margin(), front.Unit))),
				El("div", Text(p.Signed(rear.Margin(), rear.Unit))))
			row[4] = Many(El("div", Text(q.Plan.EvenOdds.Long())),
				El("span", Class("how"), Text("safe (90 %) "+q.Plan.NineInTen.Long())))
		}
		t.Rows = append(t.Rows, row)
	}
	t.Sums = append(t.Sums, []Part{Text("All"), Text(strconv.Itoa(p.Q.Price.Units)), nil, nil, nil, nil,
		Text(p.Q.Total())})
	return Many(El("h2", Text("Units")), t.Draw())
}

// fleetDates are the first day on which one of several units is likely to come, and the last
// on which one of them comes at 90 %.
func fleetDates(p *Page, box func(label, value string, under ...string) Part) Part {
	if p.Q.Draft.Count() == 1 {
		return nil
	}
	var first, last config.Date
	for _, x := range p.Q.Deliveries() {
		if first.IsZero() || x.Plan.EvenOdds.Before(first) {
			first = x.Plan.EvenOdds
		}
		if last.Before(x.Plan.NineInTen) {
			last = x.Plan.NineInTen
		}
	}
	return Many(box("First unit, likely (50 %)", first.Long()), box("Last unit, safe (90 %)", last.Long()))
}

// fleetTitle names the quote by its unit, or by all of its units.
func fleetTitle(p *Page) string {
	items := p.Q.Draft.Items()
	if len(items) == 1 {
		return page.Subject(p.Page)
	}
	var names []string
	for i := range items {
		name := p.Q.NameOf(i)
		if n := items[i].Count(); n > 1 {
			name += ", " + strconv.Itoa(n) + " units"
		}
		names = append(names, name)
	}
	return strings.Join(names, "; ")
}

// sheet is a part of a document with a running head of its own.
type sheet struct {
	of   string // what its running head says of the units it is for
	body Part
}

// sheets of a document: one, or one for each kind of unit of the quote, in the order they
// go through the plant. What is typed in belongs to the unit in work. A sheet lies on a
// bench by itself, so each of its pages says which kind it is for and how many of it.
func (k paperKind) sheets(p *Page) (out []sheet) {
	build := func(n int) string {
		if !k.counts {
			return ""
		}
		return " · build " + page.Count(n, "unit", "units")
	}
	items := p.Q.Draft.Items()
	if !k.each || len(items) == 1 {
		return []sheet{{build(p.Q.Draft.Count()), k.draw(p)}}
	}
	for i := range items {
		of := p.Q
		if i == p.work.Draft.At {
			of = p.work
		}
		q, err := of.Dated(i)
		if err != nil {
			continue
		}
		one := p.with(q)
		one.unit, one.at, one.printed = p.Q.NameOf(i), i, of != p.work
		out = append(out, sheet{" · kind " + strconv.Itoa(i+1) + " of " + strconv.Itoa(len(items)) + build(items[i].Count()),
			k.draw(one)})
	}
	return out
}

// subject is what the document's unit is called.
func (p *Page) subject() string { return cmp.Or(p.unit, page.Subject(p.Page)) }

// otherUnits prints the specification and the figures of the units beside the first.
func otherUnits(p *Page) Part {
	var out []Part
	for i := range p.Q.Draft.Items() {
		q, err := p.Q.Item(i)
		if i == p.Q.Draft.At || err != nil {
			continue
		}
		single := p.with(q)
		name := p.Q.NameOf(i)
		out = append(out, El("h2", Text(name)), specifiedApart(single, p), leftOut(single), drawing.Side(single.Page),
			page.Learned(single.Page),
			tight(single, "At full load: "+name, weights(q)),
			page.Arrangements(single.Page), unweighed(single),
			tight(single, "12 V and 125 V: "+name, page.FiguresOf(&q.Power.Report, "power.")),
			drawing.Plan(single.Page),
			tight(single, "Inside and outside: "+name, page.FiguresOf(&q.Space.Report, "space.")),
			page.Loads(single.Page),
			El("h3", Text(string(quote.ComplianceSection)+": "+name+", "+q.Assume.Label)), compliancePaper(single),
			When(!slices.Equal(q.Service(), p.Q.Service()), func() Part {
				return Many(El("h3", Text(string(quote.ServiceSection)+": "+name)), service(single))
			}), p.notes.foot(name))
	}
	return Many(out...)
}

// leading is the quote as it is printed: one of several units begins with the
// first of them, whichever is in work.
func leading(q *quote.Quote) *quote.Quote {
	if q.Draft.At == 0 {
		return q
	}
	d := q.Draft.Clone()
	d.WorkOn(0)
	first, err := quote.Compute(q.Edition, d)
	if err != nil {
		return q
	}
	return first
}

// with is the same page of another quote.
func (p *Page) with(q *quote.Quote) *Page {
	base, single := *p.Page, *p
	base.Q = q
	single.Page = &base
	return &single
}
