package view

import (
	"slices"
	"strconv"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/quantity"
	. "boxwright/web/view/markup"
)

func gistDelivery(p *Page) string { return p.Q.Plan.EvenOdds.Long() }

func delivery(p *Page) Part {
	s := p.Q.Plan
	return Many(
		heading("Delivery", "When the unit can be handed over, at any chance you ask for, and what decides it."),
		findings(p, s.Findings, "Nothing endangers the date."),
		block("When",
			El("div", Class("fields"),
				day(p, "unit.order_on", "Order placed on", p.Q.Draft.Unit.OrderOn, ""),
				day(p, "unit.needed_by", "Needed by", p.Q.Draft.Unit.NeededBy, "Leave empty when there is no such day"),
				number(p, "chance", "With a chance of", strconv.Itoa(p.chance()), "in 100", "From 1 to 99"),
			),
			asked(p),
			dates(p),
			chanceChart(p),
		),
		block("The work, day by day", scheduleChart(p), El("p", Class("how"), Text("Filled: expected work, in the accent where the delivery waits for it. Dashed: float. Small marks on the framing line: its open slots."))),
		When(p.Q.Draft.Count() > 1, func() Part { return block("Every unit of the quote", deliveriesTable(p)) }),
		steps(p),
		slots(p),
		delays(p),
		tooLate(p),
		cautions("Dates are estimates from three-point durations. A date is promised only by the plant's written confirmation of the slot and of the chassis."),
	)
}

// chance is the one asked for, in a hundred.
func (p *Page) chance() int {
	if c := p.State.Chance; c >= 1 && c <= 99 {
		return c
	}
	return 80
}

// asked answers for the chance asked for, and judges the needed date.
func asked(p *Page) Part {
	s, c := p.Q.Plan, float64(p.chance())/100
	in := strconv.Itoa(p.chance()) + " in 100"
	needed := p.Q.Draft.Unit.NeededBy
	text := Many(Text("At "+in+": "), El("b", Text(s.At(c).Long())), Text("."))
	if needed.IsZero() {
		return El("p", text)
	}
	verdict, last := mark(config.Warn), "no order date would do"
	if !needed.Before(s.NineInTen) {
		verdict = mark("")
	}
	if d := s.LatestOrderFor(needed, c); !d.IsZero() {
		last = "order by " + d.Long()
	}
	return Many(El("p", text),
		El("p", verdict, Text(" The chance of having it by "+needed.Long()+" is "), El("b", Text(hundred(s.Chance(needed)))), Text(". To have it by then at "+in+": "), El("b", Text(last)), Text(".")))
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
		If(s.TooHopefulAtNine > 0, El("p", Class("how"), Text("Looking at the critical path alone is too hopeful by "+quantity.Group(s.TooHopefulAtNine, 1)+" working days at nine in ten and "+quantity.Group(s.TooHopefulAtEven, 1)+" at even odds, because other paths can come in later. The quote uses the simulated dates."))),
		If(!s.Slot.IsZero(), El("p", Text("Framing starts in the slot of "+s.Slot.Long()+"."))),
		If(!s.LatestOrder.IsZero(), El("p", Text("To have it by the needed day at nine in ten, order by "), El("b", Text(s.LatestOrder.Long())), Text("."))),
	)
}

// chanceChart draws how the chance rises from day to day.
func chanceChart(p *Page) Part {
	list := p.Q.Plan.Spread
	if len(list) < 2 {
		return nil
	}
	const left, right, top, bottom = 34.0, 470.0, 8.0, 98.0
	x := func(i int) float64 { return left + (right-left)*float64(i)/float64(len(list)-1) }
	y := func(c float64) float64 { return bottom - (bottom-top)*c }
	said := "Chance of delivery by date:"
	line := ""
	var parts []Part
	for _, c := range []float64{.1, .5, .9} {
		parts = append(parts, words("small end", left-4, y(c)+3, hundred(c)), path("thin", "M"+n(left)+" "+n(y(c))+"H"+n(right)))
	}
	for i, c := range list {
		line += map[bool]string{true: "M", false: "L"}[i == 0] + n(x(i)) + " " + n(y(c.Chance))
		if i%max(len(list)/6, 1) == 0 {
			parts = append(parts, words("small mid", x(i), bottom+10, c.On.MonthName()+" "+strconv.Itoa(c.On.Day)))
			said += " " + c.On.Long() + " " + hundred(c.Chance) + ";"
		}
	}
	parts = append(parts, path("curve", line))
	if needed := p.Q.Draft.Unit.NeededBy; !needed.IsZero() {
		if i := slices.IndexFunc(list, func(c leadtime.Chance) bool { return !c.On.Before(needed) }); i >= 0 && !needed.Before(list[0].On) {
			parts = append(parts, path("limit", "M"+n(x(i))+" "+n(top)+"V"+n(bottom)), words("small mid", x(i), top-1, "needed"))
		}
	}
	return chart(said, 490, bottom+14, parts)
}

// scheduleChart is a bar for each step from order to delivery under a calendar,
// with the steps that decide the date in the accent and float as a dashed line.
func scheduleChart(p *Page) Part {
	s := p.Q.Plan
	const left, right, row, top = 152.0, 460.0, 13.0, 16.0
	end := max(s.Simulated.NineInTenDays, 1)
	for _, st := range s.Steps {
		end = max(end, st.LF, st.EF)
	}
	x := func(d float64) float64 { return left + (right-left)*d/end }
	cal := leadtime.NewCalendar(&p.Q.Edition.Cat.Plant)
	bottom := top + row*float64(len(s.Steps))
	var parts []Part
	said := "Schedule from " + s.Order.Long() + ". Steps that decide the date:"
	first := config.Date{Year: s.Order.Year, Month: s.Order.Month, Day: 1}
	for last := -99.0; ; {
		first = first.AddDays(32)
		first.Day = 1
		at := float64(cal.Between(s.Order, first.AddDays(-1)))
		if at > end {
			break
		}
		parts = append(parts, path("thin", "M"+n(x(at))+" "+n(top-3)+"V"+n(bottom)))
		if x(at)-last > 29 {
			last = x(at)
			parts = append(parts, words("small", last+1, top-5, first.MonthName()+" ’"+strconv.Itoa(first.Year)[2:]))
		}
	}
	for i, st := range s.Steps {
		y := top + row*float64(i)
		class := "work"
		if st.Critical {
			class = "critical"
			said += " " + st.Label + " until " + st.Finish.Long() + ";"
		}
		parts = append(parts, words("small end", left-4, y+8, shortened(st.Label, 38)), rect("slot", left, y, right-left, 9), rect(class, x(st.ES), y, max(x(st.EF)-x(st.ES), 0.8), 9))
		if st.LF > st.EF+0.05 {
			parts = append(parts, path("float", "M"+n(x(st.EF))+" "+n(y+4.5)+"H"+n(x(st.LF))))
		}
		if st.Source == config.SourceSlot {
			for _, slot := range p.Q.Edition.Cat.Plant.Slots {
				if at := float64(cal.Between(s.Order, slot.Start)); slot.Open > 0 && at > 0 && at <= end {
					parts = append(parts, path("tick", "M"+n(x(at))+" "+n(y-1)+"v3.500"))
				}
			}
		}
	}
	for i, m := range []struct {
		d    float64
		word string
	}{{s.Simulated.EvenOddsDays, "even odds"}, {s.Simulated.NineInTenDays, "nine in ten"}} {
		parts = append(parts, path("limit", "M"+n(x(m.d))+" "+n(top)+"V"+n(bottom+2)), words("small end", x(m.d), bottom+9+8*float64(i), m.word))
	}
	return chart(said+" delivery at even odds "+s.EvenOdds.Long()+", at nine in ten "+s.NineInTen.Long()+".", 480, bottom+22, parts)
}

// shortened keeps a label within so many letters.
func shortened(text string, most int) string {
	if r := []rune(text); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return text
}

func steps(p *Page) Part {
	t := table{caption: "Steps", class: "cards", heads: []string{"Step", ">Working days", "Start", "Finish", ">Float", ">Decides", "What your choices add"}}
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
		t.rows = append(t.rows, []Part{name, Text(quantity.Group(s.Expected, 1)), Text(s.Start.Long()), Text(s.Finish.Long()), Text(quantity.Group(s.Float, 1)), Text(hundred(s.Share)), Text(added)})
	}
	return fold("steps", "Every step with its dates", El("p", Class("how"), Text("Decides: in how many of the draws the delivery waited for the step.")), t.draw())
}

// slots lists the framing line's open starts from the order on.
func slots(p *Page) Part {
	t := table{caption: "Open starts of the framing line", heads: []string{"Slot", ">Open", ""}}
	for _, s := range p.Q.Edition.Cat.Plant.Slots {
		if s.Open > 0 && !s.Start.Before(p.Q.Plan.Order) {
			mine := ""
			if s.Start == p.Q.Plan.Slot {
				mine = "this unit"
			}
			t.rows = append(t.rows, texts(s.Start.Long(), strconv.Itoa(s.Open), mine))
		}
	}
	if t.rows == nil {
		return nil
	}
	return fold("slots", "Slots of the framing line", t.draw())
}

// delays names the choices that push the date out.
func delays(p *Page) Part {
	const title = "What your choices do to the date"
	list := p.Delays
	if list == nil && p.Soon {
		return block(title, working())
	}
	if len(list) == 0 {
		return block(title, El("p", Text("None of the options in the unit delays it by itself.")))
	}
	t := table{caption: "Working days by which delivery would be earlier without it", heads: []string{"Option", ">On average", ">Nine in ten"}}
	for i, d := range list {
		if i == 12 {
			break
		}
		t.rows = append(t.rows, []Part{Text(p.Q.Edition.Cat.LabelOf(d.Option)), Text(quantity.Group(d.Days, 1)), Text(quantity.Group(d.AtNine, 1))})
	}
	return block(title, t.draw(), El("p", Class("how"), Text("Delays do not add up: of two late parts the later hides the other.")))
}

// tooLate lists the options that would miss the needed date; at a press, since
// each is a plan of its own.
func tooLate(p *Page) Part {
	needed := p.Q.Draft.Unit.NeededBy
	if needed.IsZero() || needed.Before(p.Q.Plan.NineInTen) {
		return nil // a unit that is late already is late with anything more
	}
	label := "List the options that would be too late"
	var list Part
	if p.State.Late {
		label = "Close the list"
		t := table{caption: "Would miss " + needed.Long() + " at nine in ten, by", heads: []string{"Option", ">Working days"}}
		for _, o := range p.Q.Edition.Cat.Options {
			if late := p.TooLate[o.ID]; late > 0 {
				t.rows = append(t.rows, texts(o.Label, quantity.Group(late, 0)))
			}
		}
		switch {
		case t.rows != nil:
			list = t.draw()
		case p.TooLate == nil && p.Soon:
			list = working()
		default:
			list = El("p", Text("Every option that can still be added keeps the day."))
		}
	}
	return block("Options and the needed date", El("p", action("too-late", "", "", label, At("id", "too-late"))), list)
}
