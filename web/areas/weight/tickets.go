package weight

import (
	"strconv"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// conditionWords are the states a finished unit can be weighed in.
var conditionWords = []page.Choice{{"", "curb: full fluids, nobody and nothing loose aboard"},
	{"crewed", "with its crew"}, {"gross", "full load"}}

// tickets takes certified scale readings and shows what they change.
func tickets(p *Page) Part {
	some := len(p.Q.Draft.Tickets)+len(p.Lessons) > 0 || p.View.Ticket != nil
	return El("details", Class("block"), At("id", "fold-tickets"), Flag("open", some),
		page.Summary("h2", "Scale tickets"),
		El("p", Class("lead"),
			Text("A certified scale beats any computation. Enter what it read for the chassis as it arrived or the finished "+
				"unit, and every figure follows; weights in doubt move most. The next quote of the same chassis and module "+
				"starts from what it taught.")),
		ticketList(p), moved(p), correction(p), lessons(p), ticketForm(p))
}

func ticketList(p *Page) Part {
	list := p.Q.Draft.Tickets
	if len(list) == 0 {
		return nil
	}
	t := page.Table{Caption: "Tickets that count", Heads: []string{"Ticket", "Readings"}}
	for i := range list {
		id := strconv.Itoa(i)
		name := page.TicketName(&list[i], i)
		t.Rows = append(t.Rows, p.ticketRow(&list[i], name,
			page.Action("drop-ticket", id, "edit", "Change", Class("quiet"), At("id", "edit-ticket-"+id),
				At("aria-label", "Change ticket "+name)),
			page.Action("drop-ticket", id, "", "Take out", Class("quiet"), At("id", "drop-ticket-"+id),
				At("aria-label", "Take out ticket "+name))))
	}
	return t.Draw()
}

// lessons offers the tickets of earlier units that do not count yet.
func lessons(p *Page) Part {
	if len(p.Lessons) == 0 {
		return nil
	}
	t := page.Table{Caption: "Earlier units that were weighed, in quotes saved on this device",
		Heads: []string{"Ticket", "Readings"}}
	for i := range p.Lessons {
		k := &p.Lessons[i]
		name := page.TicketName(&k.Ticket, i)
		t.Rows = append(t.Rows,
			p.ticketRow(&k.Ticket, name, page.Action("count-ticket", k.ID, "", "Count it here too", Class("quiet"),
				At("id", "count-ticket-"+strconv.Itoa(i)), At("aria-label", "Count it here too: ticket "+name))))
	}
	return El("div", Class("screen"), t.Draw())
}

// ticketRow says what was weighed and what the scale read, with what to do about it.
func (p *Page) ticketRow(k *weight.Ticket, name string, tools ...Part) []Part {
	what := "the chassis"
	if k.What == weight.TicketUnit {
		for _, c := range conditionWords {
			if c[0] == k.Condition {
				what = "the unit, " + c[1]
			}
		}
	}
	if !k.Date.IsZero() {
		what = k.Date.Long() + ", " + what
	}
	if k.FuelPart > 0 && k.FuelPart < 1 {
		what += ", tank " + p.Show(100*k.FuelPart, quantity.Percent) + " full"
	}
	earlier := p.OfEarlier(k)
	tol := k.TolLb
	if tol == 0 {
		tol = 10
	}
	readings := ""
	for j, m := range append([]quantity.Mass{k.TotalLb, k.FrontLb, k.RearLb}, k.WheelsLb[:]...) {
		if m > 0 {
			readings += [...]string{"total ", "front axle ", "rear axle ", "LF ", "RF ", "LR ", "RR "}[j] +
				p.Show(float64(m), quantity.Pound) + "; "
		}
	}
	return []Part{Many(El("b", Text(name)), El("span", Class("how"), Text(what)),
		If(earlier != "",
			El("span", Class("how"), Text("Of "+earlier+": it teaches about what both have, less surely."))),
		El("div", Class("screen"), Many(tools...))),
		Text(readings + "each ± " + p.Show(float64(tol), quantity.Pound))}
}

// moved sets the margins as computed beside those that follow the tickets.
func moved(p *Page) Part {
	c := p.Q.Weight.Correction
	if c == nil || len(c.Moves) == 0 {
		return nil
	}
	plain := weight.Weigh(p.Q.Edition.Cat, &p.Q.Draft.Unit, &p.Q.Assume)
	t := page.Table{Caption: "What the tickets moved, at full load", Class: "cards",
		Heads: []string{"Margin", ">Computed", ">With the tickets", ">Moved by"}}
	for _, g := range page.Gauges[:3] {
		was, known := plain.Figure(g.Code)
		now, _ := p.Q.Weight.Figure(g.Code)
		if !known {
			continue
		}
		value := func(f config.Figure) float64 {
			if f.Sense != "" {
				return f.Margin()
			}
			return f.Value
		}
		t.Rows = append(t.Rows, page.Texts(g.Label, p.Show(value(was), was.Unit), p.Show(value(now), now.Unit),
			p.Signed(value(now)-value(was), now.Unit)))
	}
	return t.Draw()
}

// correction shows the readings before and after, and which weights moved.
func correction(p *Page) Part {
	c := p.Q.Weight.Correction
	if c == nil || len(c.Readings) == 0 {
		return nil
	}
	lb := func(m quantity.Mass) string { return p.Show(float64(m), quantity.Pound) }
	r := page.Table{Caption: "Readings against the model", Class: "cards", Heads: []string{"Reading", ">Measured",
		">Computed before", ">Difference", ">After", ">Left unexplained", "Surprise"}}
	for _, x := range c.Readings {
		d, surprise := max(x.Deviation, -x.Deviation), "as the tolerances lead one to expect"
		switch {
		case d > 3:
			surprise = "far off: check the ticket and the catalogue"
		case d > 2:
			surprise = "more than the tolerances lead one to expect"
		}
		r.Rows = append(r.Rows,
			page.Texts(x.Label, lb(x.MeasuredLb), lb(x.BeforeLb), p.Signed(float64(x.MeasuredLb-x.BeforeLb),
				quantity.Pound), lb(x.AfterLb), p.Signed(float64(x.ResidualLb()), quantity.Pound), surprise))
	}
	m := page.Table{Caption: "Weights moved, largest first", Class: "cards",
		Heads: []string{"Part", ">From", ">To", ">By"}}
	for _, x := range c.Moves {
		m.Rows = append(m.Rows,
			page.Texts(x.Label, lb(x.FromLb), lb(x.ToLb), p.Signed(float64(x.ToLb-x.FromLb), quantity.Pound)))
	}
	return Many(r.Draw(), page.Inner("moves", "Weights moved ("+strconv.Itoa(len(m.Rows))+")", m.Draw()))
}

// ticketForm holds the ticket being entered.
func ticketForm(p *Page) Part {
	t := p.View.Ticket
	if t == nil {
		t = &weight.Ticket{What: weight.TicketUnit}
	}
	lb := p.UnitName(quantity.Pound)
	reading := func(id, label string, v quantity.Mass, hint string) Part {
		value := ""
		if v > 0 {
			value = p.Plain(float64(v), quantity.Pound)
		}
		return page.Number(p.Page, "ticket."+id, label, value, lb, hint)
	}
	fuel := ""
	if t.FuelPart > 0 {
		fuel = p.Plain(100*t.FuelPart, quantity.Percent)
	}
	var wheels []Part
	for i, id := range []string{"lf", "rf", "lr", "rr"} {
		wheels = append(wheels, reading(id, wheelNames[i], t.WheelsLb[i], ""))
	}
	wrong, earlier := p.Wrong["ticket"], p.OfEarlier(t)
	return El("details", Class("screen ticket"), At("id", "fold-ticket"),
		Flag("open", p.View.Ticket != nil || wrong != ""),
		page.Summary("h3", "Enter a scale ticket"),
		If(earlier != "", El("p", Text("Of "+earlier+"."))),
		El("div", Class("fields"),
			page.Choose(p.Page, "ticket.what", "What was weighed", t.What, "",
				[]page.Choice{{weight.TicketUnit, "the finished unit"},
					{weight.TicketChassis, "the chassis as it arrived"}}),
			If(t.What == weight.TicketUnit, page.Choose(p.Page, "ticket.condition", "In which condition", t.Condition,
				"", conditionWords)),
			page.Field(p.Page, "ticket.number", "Number on the ticket", t.Number, ""),
			page.Day(p.Page, "ticket.date", "Day of weighing", t.Date, ""),
			page.Number(p.Page, "ticket.fuel", "Tank filled to", fuel, "%", "Blank = full"),
			reading("tol", "Scale reads within ±", t.TolLb, "Blank = "+p.Show(10, quantity.Pound)+
				", half of a 20 lb division: common practice, no source"),
			reading("total", "Total", t.TotalLb, "Enter what was read; any mix will do"), reading("front", "Front axle",
				t.FrontLb, ""), reading("rear", "Rear axle", t.RearLb, ""), Many(wheels...)),
		If(wrong != "", El("p", Class("wrong"), At("role", "alert"), Text("The ticket is not entered: "+wrong+"."))),
		El("div", Class("row-tools"), page.Action("add-ticket", "", "", "Enter the ticket", Class("main"),
			At("id", "add-ticket")),
			El("span", Class("soft"),
				Text("At most "+strconv.Itoa(quote.MaxTickets)+". A ticket of the finished unit holds for the unit "+
					"as it stands; change the unit, and the ticket counts as that of an earlier one."))))
}
