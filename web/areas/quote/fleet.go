package quote

import (
	"strconv"

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
	t := page.Table{Caption: "Units of this quote", Heads: []string{"Unit", ">How many", ">Each", ">Together"}}
	for i, it := range p.Q.Draft.Items() {
		t.Rows = append(t.Rows,
			[]Part{Many(Text(p.Q.NameOf(i)),
				El("span", Class("how"),
					Text(p.Q.Edition.Cat.LabelOf(it.Unit.Chassis)+", "+p.Q.Edition.Cat.LabelOf(it.Unit.Body)))),
				Text(strconv.Itoa(it.Count())), Text(p.Q.Price.Each(i + 1)), Text(page.ShareOf(p.Q, i).Show())})
	}
	t.Sums = append(t.Sums, []Part{Text("All"), Text(strconv.Itoa(p.Q.Price.Units)), nil, Text(p.Q.Total())})
	return Many(El("h2", Text("Units")), t.Draw())
}

// otherUnits prints the specification and the weights of the units beside the
// first.
func otherUnits(p *Page) Part {
	var out []Part
	for i := range p.Q.Draft.Items() {
		q, err := p.Q.Item(i)
		if i == p.Q.Draft.At || err != nil {
			continue
		}
		single := p.with(q)
		weights := page.FiguresOf(&q.Weight.Report, "weight.")
		out = append(out, El("h2", Text(p.Q.NameOf(i))), specification(single), drawing.Side(single.Page),
			tight(single, "At full load: "+p.Q.NameOf(i), weights))
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
