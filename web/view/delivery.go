package view

import (
	"boxwright/config/leadtime"
	"boxwright/config/quantity"
	. "boxwright/web/view/markup"
)

func gistDelivery(p *Page) string { return p.Q.Plan.EvenOdds.Long() }

func delivery(p *Page) Part {
	s := p.Q.Plan
	return Many(
		heading("Delivery", "When the unit can be handed over, at even odds and at nine in ten, and what decides it."),
		findings(p, s.Findings, "Nothing endangers the date."),
		block("When",
			El("div", Class("fields"),
				day(p, "unit.order_on", "Order placed on", p.Q.Draft.Unit.OrderOn, ""),
				day(p, "unit.needed_by", "Needed by", p.Q.Draft.Unit.NeededBy, "Leave empty when there is no such day"),
			),
			dates(p),
		),
		block("The work, day by day", scheduleChart(p)),
		steps(p),
		delays(p),
		cautions("Dates are estimates from three-point durations. A date is promised only by the plant's written confirmation of the slot and of the chassis."),
	)
}

func dates(p *Page) Part {
	s := p.Q.Plan
	t := table{caption: "Delivery", heads: []string{"", "Even odds", "Nine in ten"}}
	row := func(name string, r leadtime.Reckoning) {
		t.rows = append(t.rows, []Part{Text(name), Text(r.EvenOdds.Long() + " (" + quantity.Group(r.EvenOddsDays, 0) + " working days)"), Text(r.NineInTen.Long() + " (" + quantity.Group(r.NineInTenDays, 0) + ")")})
	}
	row("All paths, simulated", s.Simulated)
	row("Critical path alone", s.Analytic)
	return Many(t.draw(),
		If(s.TooHopefulAtNine > 0, El("p", Class("how"), Text("Looking at the critical path alone is too hopeful by "+quantity.Group(s.TooHopefulAtNine, 1)+" working days at nine in ten, because other paths can come in later. The quote uses the simulated dates."))),
		If(!s.Slot.IsZero(), El("p", Text("Framing starts in the slot of "+s.Slot.Long()+"."))),
		If(!s.LatestOrder.IsZero(), El("p", Text("To have it by the needed day at nine in ten, order by "), El("b", Text(s.LatestOrder.Long())), Text("."))),
	)
}

func steps(p *Page) Part {
	t := table{caption: "Steps", heads: []string{"Step", ">Working days", "Start", "Finish", ">Float", "What your choices add"}}
	for _, s := range p.Q.Plan.Steps {
		added := ""
		for i, a := range s.Added {
			if i == 4 {
				added += " and " + count(len(s.Added)-i, "more", "more")
				break
			}
			if i > 0 {
				added += ", "
			}
			added += a.Label + " " + p.show(float64(a.Hours), quantity.Hour)
		}
		name := Many(Text(s.Label))
		if s.Critical {
			name = Many(El("b", Text(s.Label)), Text(" "), El("span", Class("tag"), Text("decides the date")))
		}
		t.rows = append(t.rows, []Part{name, Text(quantity.Group(s.Expected, 1)), Text(s.Start.Long()), Text(s.Finish.Long()), Text(quantity.Group(s.Float, 1)), Text(added)})
	}
	return fold("steps", "Every step with its dates", t.draw())
}

// delays names the choices that push the date out.
func delays(p *Page) Part {
	list := p.Q.Plan.Delays()
	if len(list) == 0 {
		return block("What your choices do to the date", El("p", Text("None of the options in the unit delays it by itself.")))
	}
	t := table{caption: "Without it, delivery would be earlier by", heads: []string{"Option", ">Working days, on average", ">at nine in ten"}}
	for i, d := range list {
		if i == 12 {
			break
		}
		t.rows = append(t.rows, []Part{Text(p.Q.Edition.Cat.LabelOf(d.Option)), Text(quantity.Group(d.Days, 1)), Text(quantity.Group(d.AtNine, 1))})
	}
	return block("What your choices do to the date", t.draw())
}
