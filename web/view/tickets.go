package view

import (
	"strconv"

	"boxwright/config/quantity"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
	. "boxwright/web/view/markup"
)

// conditionWords are the states a finished unit can be weighed in.
var conditionWords = []choice{{"", "curb: full fluids, nobody and nothing loose aboard"}, {"crewed", "with its crew"}, {"gross", "full load"}}

// tickets takes certified scale readings and shows what they change.
func tickets(p *Page) Part {
	return block("Scale tickets",
		El("p", Class("lead"), Text("A certified scale knows better than any computation. Enter its reading of the chassis as it arrived or of the finished unit: the masses move by as little as agrees with it, doubtful ones most, and every figure follows. The next unit learns from it too.")),
		ticketList(p), correction(p), ticketForm(p))
}

func ticketList(p *Page) Part {
	list := p.Q.Draft.Tickets
	if len(list) == 0 {
		return nil
	}
	t := table{caption: "Tickets entered", heads: []string{"Ticket", "Readings", ""}}
	for i, k := range list {
		name := k.Number
		if name == "" {
			name = strconv.Itoa(i + 1)
		}
		what := "the chassis"
		if k.What == weight.TicketUnit {
			for _, c := range conditionWords {
				if c.value == k.Condition {
					what = "the unit, " + c.label
				}
			}
		}
		if !k.Date.IsZero() {
			what = k.Date.Long() + ", " + what
		}
		if k.FuelPart > 0 && k.FuelPart < 1 {
			what += ", tank " + p.show(100*k.FuelPart, quantity.Percent) + " full"
		}
		note := ""
		if k.Unit != nil {
			note = "Of an earlier unit on " + p.Q.Edition.Cat.LabelOf(k.Unit.Chassis) + ": it teaches about what both have, less surely."
		}
		tol := k.TolLb
		if tol == 0 {
			tol = 10
		}
		readings := ""
		for j, m := range append([]quantity.Mass{k.TotalLb, k.FrontLb, k.RearLb}, k.WheelsLb[:]...) {
			if m > 0 {
				readings += [...]string{"total ", "front axle ", "rear axle ", "LF ", "RF ", "LR ", "RR "}[j] + p.show(float64(m), quantity.Pound) + "; "
			}
		}
		id := strconv.Itoa(i)
		t.rows = append(t.rows, []Part{Many(El("b", Text(name)), El("span", Class("how"), Text(what)), If(note != "", El("span", Class("how"), Text(note)))),
			Text(readings + "each ± " + p.show(float64(tol), quantity.Pound)),
			El("span", Class("nowrap screen"), action("drop-ticket", id, "edit", "Change", Class("quiet"), At("id", "edit-ticket-"+id), At("aria-label", "Change ticket "+name)),
				action("drop-ticket", id, "", "Take out", Class("quiet"), At("id", "drop-ticket-"+id), At("aria-label", "Take out ticket "+name)))})
	}
	return t.draw()
}

// correction shows the readings before and after, and which masses moved.
func correction(p *Page) Part {
	c := p.Q.Weight.Correction
	if c == nil || len(c.Readings) == 0 {
		return nil
	}
	lb := func(m quantity.Mass) string { return p.show(float64(m), quantity.Pound) }
	r := table{caption: "Readings against the model", heads: []string{"Reading", ">Measured", ">Computed before", ">After", ">Left unexplained", "Surprise"}}
	for _, x := range c.Readings {
		d, surprise := max(x.Deviation, -x.Deviation), "as the tolerances lead one to expect"
		switch {
		case d > 3:
			surprise = "far off: check the ticket and the catalogue"
		case d > 2:
			surprise = "more than the tolerances lead one to expect"
		}
		r.rows = append(r.rows, texts(x.Label, lb(x.MeasuredLb), lb(x.BeforeLb), lb(x.AfterLb), p.signed(float64(x.ResidualLb()), quantity.Pound), surprise))
	}
	m := table{caption: "Masses moved, largest first", heads: []string{"Mass", ">From", ">To", ">By"}}
	for _, x := range c.Moves {
		m.rows = append(m.rows, texts(x.Label, lb(x.FromLb), lb(x.ToLb), p.signed(float64(x.ToLb-x.FromLb), quantity.Pound)))
	}
	return Many(r.draw(), fold("moves", "Masses moved ("+strconv.Itoa(len(m.rows))+")", m.draw()))
}

// ticketForm holds the ticket being entered.
func ticketForm(p *Page) Part {
	t := p.State.Ticket
	if t == nil {
		t = &weight.Ticket{What: weight.TicketUnit}
	}
	lb := p.unitName(quantity.Pound)
	reading := func(id, label string, v quantity.Mass, hint string) Part {
		value := ""
		if v > 0 {
			value = p.plain(float64(v), quantity.Pound)
		}
		return number(p, "ticket."+id, label, value, lb, hint)
	}
	fuel := ""
	if t.FuelPart > 0 {
		fuel = p.plain(100*t.FuelPart, quantity.Percent)
	}
	var wheels []Part
	for i, id := range []string{"lf", "rf", "lr", "rr"} {
		wheels = append(wheels, reading(id, wheelNames[i], t.WheelsLb[i], ""))
	}
	wrong := p.State.Wrong["ticket"]
	return El("details", Class("screen ticket"), At("id", "fold-ticket"), Flag("open", p.State.Ticket != nil || wrong != ""),
		El("summary", El("b", Text("Enter a scale ticket"))),
		El("div", Class("fields"),
			choose(p, "ticket.what", "What was weighed", t.What, "", []choice{{weight.TicketUnit, "the finished unit"}, {weight.TicketChassis, "the chassis as it arrived"}}),
			If(t.What == weight.TicketUnit, choose(p, "ticket.condition", "In which condition", t.Condition, "", conditionWords)),
			field(p, "ticket.number", "Number on the ticket", t.Number, ""),
			day(p, "ticket.date", "Day of weighing", t.Date, ""),
			number(p, "ticket.fuel", "Tank filled to", fuel, "%", "Empty means full"),
			reading("tol", "Scale reads within ±", t.TolLb, "Empty takes "+p.show(10, quantity.Pound)+", half of a 20 lb division: common practice, no source"),
			reading("total", "Total", t.TotalLb, "Enter what was read; any mix will do"), reading("front", "Front axle", t.FrontLb, ""), reading("rear", "Rear axle", t.RearLb, ""), Many(wheels...)),
		If(wrong != "", El("p", Class("wrong"), At("role", "alert"), Text("The ticket is not entered: "+wrong+"."))),
		El("div", Class("row-tools"), action("add-ticket", "", "", "Enter the ticket", Class("main"), At("id", "add-ticket")),
			El("span", Class("soft"), Text("At most "+strconv.Itoa(quote.MaxTickets)+". A ticket of the finished unit holds for the unit as it stands; change the unit, and the ticket counts as that of an earlier one."))))
}
