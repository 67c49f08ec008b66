package view

import (
	"strconv"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
	. "boxwright/web/view/markup"
)

// conditionWords are the states a finished unit can be weighed in.
var conditionWords = []choice{{"", "curb: full fluids, nobody and nothing loose aboard"}, {"crewed", "with its crew"}, {"gross", "full load"}}

// Lesson is a scale ticket of another quote that could count in this one.
type Lesson struct {
	ID     string
	Ticket weight.Ticket
}

// tickets takes certified scale readings and shows what they change.
func tickets(p *Page) Part {
	return block("Scale tickets",
		El("p", Class("lead"), Text("A certified scale knows better than any computation. Enter its reading of the chassis as it arrived or of the finished unit: the masses move by as little as agrees with it, doubtful ones most, and every figure follows. The next quote of the same chassis and module begins with what it teaches.")),
		ticketList(p), moved(p), correction(p), lessons(p), ticketForm(p))
}

func ticketList(p *Page) Part {
	list := p.Q.Draft.Tickets
	if len(list) == 0 {
		return nil
	}
	t := table{caption: "Tickets that count", heads: []string{"Ticket", "Readings"}}
	for i := range list {
		id := strconv.Itoa(i)
		name := ticketName(&list[i], i)
		t.rows = append(t.rows, p.ticketRow(&list[i], name,
			action("drop-ticket", id, "edit", "Change", Class("quiet"), At("id", "edit-ticket-"+id), At("aria-label", "Change ticket "+name)),
			action("drop-ticket", id, "", "Take out", Class("quiet"), At("id", "drop-ticket-"+id), At("aria-label", "Take out ticket "+name))))
	}
	return t.draw()
}

// lessons offers the tickets of earlier units that do not count yet.
func lessons(p *Page) Part {
	if len(p.Lessons) == 0 {
		return nil
	}
	t := table{caption: "Earlier units that were weighed, in the quotes kept in this browser", heads: []string{"Ticket", "Readings"}}
	for i := range p.Lessons {
		k := &p.Lessons[i]
		name := ticketName(&k.Ticket, i)
		t.rows = append(t.rows, p.ticketRow(&k.Ticket, name, action("count-ticket", k.ID, "", "Count it here too", Class("quiet"), At("id", "count-ticket-"+strconv.Itoa(i)), At("aria-label", "Count ticket "+name+" here too"))))
	}
	return El("div", Class("screen"), t.draw())
}

// ticketName is what the i-th ticket of a list is called.
func ticketName(k *weight.Ticket, i int) string {
	if k.Number == "" {
		return strconv.Itoa(i + 1)
	}
	return k.Number
}

// ofEarlier says which earlier unit a ticket weighed; empty when it weighed the
// unit in hand.
func (p *Page) ofEarlier(k *weight.Ticket) string {
	u, cat := k.Unit, p.Q.Edition.Cat
	switch is := &p.Q.Draft.Unit; {
	case u == nil:
		return ""
	case u.Chassis == is.Chassis && u.Body == is.Body:
		return "an earlier unit on the same chassis with the same module"
	case u.Chassis == is.Chassis:
		return "an earlier unit on the same chassis with " + cat.LabelOf(u.Body)
	}
	return "an earlier unit on " + cat.LabelOf(u.Chassis)
}

// ticketRow says what was weighed and what the scale read, with what to do about it.
func (p *Page) ticketRow(k *weight.Ticket, name string, tools ...Part) []Part {
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
	of := p.ofEarlier(k)
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
	return []Part{Many(El("b", Text(name)), El("span", Class("how"), Text(what)), If(of != "", El("span", Class("how"), Text("Of "+of+": it teaches about what both have, less surely."))), El("div", Class("screen"), Many(tools...))),
		Text(readings + "each ± " + p.show(float64(tol), quantity.Pound))}
}

// learned says on the quote, and beside every area, what its weights rest on
// beside computation.
func learned(p *Page) Part {
	list := p.Q.Draft.Tickets
	if len(list) == 0 {
		return nil
	}
	said := "Weights corrected by scale ticket "
	for i := range list {
		if i > 0 {
			said += "; "
		}
		said += ticketName(&list[i], i)
		if of := p.ofEarlier(&list[i]); of != "" {
			said += ", of " + of
		}
	}
	return El("p", Class("how"), Text(said+"."))
}

// moved sets the margins as computed beside those that follow the tickets.
func moved(p *Page) Part {
	c := p.Q.Weight.Correction
	if c == nil || len(c.Moves) == 0 {
		return nil
	}
	plain := weight.Weigh(p.Q.Edition.Cat, &p.Q.Draft.Unit, &p.Q.Assume)
	t := table{caption: "What the tickets moved, at full load", class: "cards", heads: []string{"Margin", ">Computed", ">With the tickets", ">Moved by"}}
	for _, g := range gauges[:3] {
		was, known := plain.Figure(g.code)
		is, _ := p.Q.Weight.Figure(g.code)
		if !known {
			continue
		}
		of := func(f config.Figure) float64 {
			if f.Sense != "" {
				return f.Margin()
			}
			return f.Value
		}
		t.rows = append(t.rows, texts(g.label, p.show(of(was), was.Unit), p.show(of(is), is.Unit), p.signed(of(is)-of(was), is.Unit)))
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
	r := table{caption: "Readings against the model", class: "cards", heads: []string{"Reading", ">Measured", ">Computed before", ">Difference", ">After", ">Left unexplained", "Surprise"}}
	for _, x := range c.Readings {
		d, surprise := max(x.Deviation, -x.Deviation), "as the tolerances lead one to expect"
		switch {
		case d > 3:
			surprise = "far off: check the ticket and the catalogue"
		case d > 2:
			surprise = "more than the tolerances lead one to expect"
		}
		r.rows = append(r.rows, texts(x.Label, lb(x.MeasuredLb), lb(x.BeforeLb), p.signed(float64(x.MeasuredLb-x.BeforeLb), quantity.Pound), lb(x.AfterLb), p.signed(float64(x.ResidualLb()), quantity.Pound), surprise))
	}
	m := table{caption: "Masses moved, largest first", class: "cards", heads: []string{"Mass", ">From", ">To", ">By"}}
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
	wrong, of := p.State.Wrong["ticket"], p.ofEarlier(t)
	return El("details", Class("screen ticket"), At("id", "fold-ticket"), Flag("open", p.State.Ticket != nil || wrong != ""),
		El("summary", El("b", Text("Enter a scale ticket"))),
		If(of != "", El("p", Text("Of "+of+"."))),
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
