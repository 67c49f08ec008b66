// Package delivery is the Delivery area: when the unit can be handed over and what decides it.
package delivery

import (
	"slices"
	"strconv"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/quantity"
	"boxwright/web/areas"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Area is the value by which web/app knows the area.
var Area = areas.Area{
	ID:      "delivery",
	Name:    "Delivery",
	Section: areas.Check,
	Codes:   []string{"time"},
	Gist:    gist,
	Clear:   func(p *page.Page) Part { return page.MarkIf(!p.Q.Draft.Unit.NeededBy.IsZero()) },
	Words:   words,
	Load:    load,
	Acts:    acts,
	Fields:  fields,

	Families: families,
}

// Page is what the area is drawn from.
type Page struct {
	*page.Page
	View         *session.View
	Delays       []leadtime.Delay
	DelaysKnown  bool               // else they are still worked out
	TooLate      map[string]float64 // options that would miss the needed day, by how many working days
	TooLateKnown bool
}

func gist(p *page.Page) string { return p.Q.Plan.EvenOdds.Long() }

func draw(p *Page) Part {
	s := p.Q.Plan
	return Many(
		page.Heading("Delivery", "When the unit can be delivered, how sure that is, and what drives the date."),
		page.Found(p.Page, s.Findings, "Nothing endangers the date."),
		page.Block("When",
			El("div", Class("fields"),
				page.OrderDay(p.Page, ""),
				page.Day(p.Page, "unit.needed_by", "Needed by", p.Q.Draft.Unit.NeededBy,
					"Blank = no date"),
				page.Number(p.Page, "chance", "Date at", strconv.Itoa(p.chance()), "%", "How sure, from 1 to 99"),
			),
			asked(p),
			page.Dates(p.Page, true),
			chanceChart(p),
		),
		page.Block("The work, day by day", page.ScheduleChart(p.Page),
			El("p", Class("how"),
				Text("Solid: expected work, colored where delivery waits for it. Dashed: float."),
				If(!s.Slot.IsZero(), Text(" Small marks on the framing line: its open slots.")))),
		When(p.Q.Draft.Count() > 1, func() Part {
			return page.Block("Every unit of the quote", page.DeliveriesTable(p.Page, page.EveryKind))
		}),
		steps(p),
		slots(p),
		delays(p),
		tooLate(p),
		page.Factors(p.Page, "time", "What the dates are based on besides the time each step takes. Delays come together where one "+
			"cause holds up several suppliers or crews; at 0 % each is late on its own, which is too hopeful. The "+
			"plant's values replace the usual ones; what is set here holds for this unit and travels with the "+
			"quote."),
		page.Cautions("Dates are estimates from the shortest, likely and longest time of each step. A date is promised only by the plant's "+
			"written confirmation of the slot and of the chassis."),
	)
}

// chance is the one asked for, in a hundred.
func (p *Page) chance() int {
	if c := p.View.Chance; c >= 1 && c <= 99 {
		return c
	}
	return 80
}

// asked answers for the chance asked for, and judges the needed date.
func asked(p *Page) Part {
	s, c := p.Q.Plan, float64(p.chance())/100
	in := strconv.Itoa(p.chance()) + " %"
	needed := p.Q.Draft.Unit.NeededBy
	p.Answer = "At " + in + ": " + s.At(c).Long() + "."
	text := Many(Text("At "+in+": "), El("b", Text(s.At(c).Long())), Text("."))
	if needed.IsZero() {
		return El("p", text)
	}
	it := "delivery"
	if n := p.Q.Draft.Terms.Count(); n > 1 {
		it = "delivery of the first of " + strconv.Itoa(n)
	}
	verdict, last := page.Mark(config.Warn), "the order is too late"
	if !needed.Before(s.NineInTen) {
		verdict = page.Mark("")
	}
	if d := s.LatestOrderFor(needed, c); !d.IsZero() && !d.Before(p.FirstOrder()) {
		last = "order by " + d.Long()
	}
	chance, share := "The chance of "+it+" by "+needed.Long()+" is ", quantity.Chance(s.Chance(needed))
	p.Answer += " " + chance + share + "."
	return Many(El("p", text),
		El("p", verdict, Text(" "+chance), El("b", Text(share)), Text(". To be "+in+" sure of it, "),
			El("b", Text(last)), Text(".")))
}

// chanceChart draws how the chance rises from day to day; on a phone another with fewer
// days stands in its place.
func chanceChart(p *Page) Part {
	if len(p.Q.Plan.Spread) < 2 {
		return nil
	}
	return Many(chances(p, false), chances(p, true))
}

func chances(p *Page, narrow bool) Part {
	list := p.Q.Plan.Spread
	left, right, top, bottom, days, chart := 34.0, 470.0, 8.0, 98.0, 6, page.Chart
	if narrow {
		left, right, top, bottom, days, chart = 36, 308, 14, 150, 3, page.NarrowChart
	}
	x := func(i float64) float64 { return left + (right-left)*i/float64(len(list)-1) }
	y := func(c float64) float64 { return bottom - (bottom-top)*c }
	line := ""
	var parts []Part
	for _, c := range []float64{.1, .5, .9} {
		parts = append(parts, page.Label("small end", left-4, y(c)+3, quantity.Chance(c)),
			page.Path("thin", "M"+page.Coord(left)+" "+page.Coord(y(c))+"H"+page.Coord(right)))
	}
	for i, c := range list {
		line += page.Either(i == 0, "M", "L") + page.Coord(x(float64(i))) + " " + page.Coord(y(c.Chance))
		if i%max(len(list)/days, 1) == 0 {
			parts = append(parts, page.Label("small mid", x(float64(i)), bottom+13, c.On.MonthName()+" "+strconv.Itoa(c.On.Day)))
		}
	}
	parts = append(parts, page.Path("curve", line))
	names := marked(p, x, y)
	if needed := p.Q.Draft.Unit.NeededBy; !needed.IsZero() {
		word := "needed " + needed.MonthName() + " " + strconv.Itoa(needed.Day)
		i := slices.IndexFunc(list, func(c leadtime.Chance) bool { return !c.On.Before(needed) })
		switch {
		case i < 0:
			names = append(names, page.Label("small end", right, bottom-4, word+" →"))
		case needed.Before(list[0].On):
			names = append(names, page.Label("small", left+2, y(.7), "← "+word))
		default:
			at := x(float64(i))
			parts = append(parts, page.Path("limit", "M"+page.Coord(at)+" "+page.Coord(top)+"V"+page.Coord(bottom)))
			if at > (left+right)/2 {
				names = append(names, page.Label("small end", at-3, bottom-4, word))
			} else {
				names = append(names, page.Label("small", at+3, top+4, word))
			}
		}
	}
	parts = append(parts, names...) // no line runs through lettering
	return chart(saidOf(p), right+20, bottom+17, parts)
}

// saidOf tells the curve: where it begins and ends, and what is marked on it.
func saidOf(p *Page) string {
	s := p.Q.Plan
	on := func(c leadtime.Chance) string { return quantity.Chance(c.Chance) + " on " + c.On.Long() }
	said := "The chance that it is delivered rises from " + on(s.Spread[0]) + " to " + on(s.Spread[len(s.Spread)-1]) + ". "
	for i, m := range points(p) {
		said += page.Either(i == 0, "Marked: ", ", ") + m.word + " " + m.on.Long()
	}
	if needed := p.Q.Draft.Unit.NeededBy; !needed.IsZero() {
		said += ", needed " + needed.Long() + " with a chance of " + quantity.Chance(s.Chance(needed))
	}
	return said + "."
}

// point is a place on the curve.
type point struct {
	chance float64
	word   string
	on     config.Date
}

// points are those that people speak of: the likely and the safe date, and the one at the
// chance asked for.
func points(p *Page) []point {
	s := p.Q.Plan
	list := []point{{.5, "likely", s.EvenOdds}, {.9, "safe", s.NineInTen}}
	if c := float64(p.chance()) / 100; c != .5 && c != .9 {
		list = append(list, point{c, strconv.Itoa(p.chance()) + " %", s.At(c)})
	}
	return list
}

// marked are the points, drawn on the curve.
func marked(p *Page, x func(float64) float64, y func(float64) float64) (parts []Part) {
	list := p.Q.Plan.Spread
	for n, m := range points(p) {
		i := slices.IndexFunc(list, func(c leadtime.Chance) bool { return c.Chance >= m.chance })
		if i < 1 {
			continue
		}
		from := list[i-1].Chance
		at := x(float64(i-1) + (m.chance-from)/(list[i].Chance-from))
		said := m.word + " " + m.on.MonthName() + " " + strconv.Itoa(m.on.Day)
		parts = append(parts, page.Rect("point", at-2, y(m.chance)-2, 4, 4))
		if n == 2 {
			parts = append(parts, page.Label("small", at+5, y(m.chance)+8, said))
		} else {
			parts = append(parts, page.Label("small end", at-5, y(m.chance)-3, said))
		}
	}
	return parts
}

func steps(p *Page) Part {
	t := page.Table{Caption: "Steps", Class: "cards steps",
		Heads: []string{"Step", ">Working days", "Start", "Finish", ">Float", ">Decides", "What your choices add"}}
	for _, s := range p.Q.Plan.Steps {
		added := ""
		for i, a := range s.Added {
			if i == 4 {
				added += " and " + page.Count(len(s.Added)-i, "more", "more")
				break
			}
			if i > 0 {
				added += ", "
			}
			added += a.Label + " " + p.Show(float64(a.Hours), quantity.Hour)
		}
		name := Many(Text(s.Label))
		if s.Critical {
			name = Many(El("b", Text(s.Label)), Text(" "), El("span", Class("tag"), Text("decides the date")))
		}
		t.Rows = append(t.Rows, []Part{name, Text(quantity.Group(s.Expected, 1)), Text(s.Start.Long()),
			Text(s.Finish.Long()), Text(quantity.Group(s.Float, 1)), Text(quantity.Chance(s.Share)), Text(page.Held(added))})
	}
	return page.Fold("steps", "Every step with its dates",
		El("p", Class("how"), Text("Decides: how often delivery waited for the step.")), t.Draw())
}

// slotMonths of open starts are listed; who builds later asks again.
const slotMonths = 12

// slots lists the framing line's open starts from the order on, by the month.
func slots(p *Page) Part {
	if p.Q.Plan.Slot.IsZero() { // nothing of it is framed
		return nil
	}
	t := page.Table{Caption: "Open starts of the framing line", Class: "slots",
		Heads: []string{"Month", ">Open", "Starts, with how many where several are open"}}
	var day config.Date
	open, starts, later := 0, []Part(nil), 0
	end := func() {
		if starts != nil && len(t.Rows) < slotMonths {
			t.Rows = append(t.Rows, []Part{Text(page.Held(day.MonthName() + " " + strconv.Itoa(day.Year))),
				Text(strconv.Itoa(open)), Many(starts...)})
		} else {
			later += open
		}
		open, starts = 0, nil
	}
	for _, s := range p.Q.Edition.Cat.Plant.Slots {
		if s.Open <= 0 || s.Start.Before(p.Q.Plan.Order) {
			continue
		}
		if s.Start.Year != day.Year || s.Start.Month != day.Month {
			end()
		}
		day, open = s.Start, open+s.Open
		said := strconv.Itoa(day.Day)
		if s.Open > 1 {
			said += page.Held(" (" + strconv.Itoa(s.Open) + ")")
		}
		start := Text(said)
		if day == p.Q.Plan.Slot {
			start = El("b", Text(said+", this unit"))
		}
		starts = append(starts, If(starts != nil, Text(", ")), start)
	}
	end()
	if t.Rows == nil {
		return nil
	}
	return page.Fold("slots", "Slots of the framing line", t.Draw(),
		If(later > 0, El("p", Class("how"), Text("and "+strconv.Itoa(later)+" more open later, through "+day.Long()+"."))))
}

// mostDelays choices are named; those that delay less matter little.
const mostDelays = 6

// delays names the choices that push the date out.
func delays(p *Page) Part {
	const title = "What your choices do to the date"
	list := p.Delays
	if !p.DelaysKnown {
		return page.Fold("delays", title, page.Working())
	}
	if len(list) == 0 {
		return page.Fold("delays", title, El("p", Text("None of the options in the unit delays it by itself.")))
	}
	t := page.Table{Caption: "Working days by which delivery would be earlier without it",
		Heads: []string{"Option", ">On average", ">At 90 %"}}
	for i, d := range list {
		if i == mostDelays {
			break
		}
		t.Rows = append(t.Rows, []Part{Text(p.Q.Edition.Cat.LabelOf(d.Option)), Text(quantity.Group(d.Days, 1)),
			Text(quantity.Group(d.AtNine, 1))})
	}
	return page.Fold("delays", title, t.Draw(),
		El("p", Class("how"), Text("Delays do not add up: of two late parts the later hides the other.")))
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
	if p.View.Late {
		label = "Close the list"
		t := page.Table{Caption: "Would miss " + needed.Long() + " at 90 %, by",
			Heads: []string{"Option", ">Working days"}}
		for _, o := range p.Q.Edition.Cat.Options {
			if late := p.TooLate[o.ID]; late > 0 {
				t.Rows = append(t.Rows, page.Texts(o.Label, quantity.Group(late, 0)))
			}
		}
		switch {
		case t.Rows != nil:
			list, p.Answer = t.Draw(), page.Count(len(t.Rows), "option would be", "options would be")+" too late."
		case !p.TooLateKnown:
			list = page.Working()
		default:
			p.Answer = "Every option that can still be added keeps the date."
			list = El("p", Text(p.Answer))
		}
	}
	return page.Block("Options and the needed date",
		El("p", page.Action("too-late", "", "", label, At("id", "too-late"))), list)
}
