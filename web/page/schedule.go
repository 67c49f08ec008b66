package page

import (
	"math"
	"slices"
	"strconv"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/quantity"
	. "boxwright/web/page/markup"
)

// Dates are the delivery dates at both chances, and with why how they came about.
func Dates(p *Page, why bool) Part {
	s := p.Q.Plan
	t := Table{Caption: "Delivery", Class: "tight", Heads: []string{"", "Likely date (50 %)", "Safe date (90 %)"}}
	row := func(name string, r leadtime.Reckoning) {
		even, nine := r.Whole()
		t.Rows = append(t.Rows, []Part{Text(name), Text(r.EvenOdds.Long() + " (" + strconv.Itoa(even) + " working days)"),
			Text(r.NineInTen.Long() + " (" + strconv.Itoa(nine) + ")")})
	}
	if why {
		row("All steps together, which this quote uses", s.Simulated)
		row("The longest chain of steps alone", s.Analytic)
	} else {
		row("Ordered "+s.Order.Long(), s.Simulated)
	}
	even := ""
	if s.TooHopefulAtEven > 0 {
		even = " and " + quantity.Group(s.TooHopefulAtEven, 1) + " at 50 %"
	}
	common := ""
	if s.TogetherAtNine >= 0.1 {
		common = " (on that path alone, " + quantity.Group(s.TogetherAtNine, 1) + ")"
	}
	return Many(t.Draw(),
		If(why && s.EvenOdds.Before(s.Analytic.EvenOdds),
			El("p", Class("how"), Text("At 50 % the longest chain alone comes out later: it adds up mean durations, and "+
				"where a step can run long its mean lies above its 50 % mark."))),
		If(why && s.TooHopefulAtNine > 0,
			El("p", Class("how"),
				Text("The longest chain alone would be too hopeful by "+quantity.Group(s.TooHopefulAtNine, 1)+
					" working days at 90 %"+even+": other steps can end later, a slot can be missed, and "+
					"delays come together"+common+"."))),
		If(!s.Slot.IsZero(), El("p", Text("Framing starts in the slot of "+s.Slot.Long()+"."))),
		If(!s.LatestOrder.IsZero() && !s.LatestOrder.Before(p.FirstOrder()),
			El("p", Text("To have it by the needed day at 90 %, order by "),
				El("b", Text(s.LatestOrder.Long())), Text("."))),
	)
}

// longestStep is how many letters of a step's name there is room for before its bar, and above it.
const longestStep = 46

// ScheduleChart is a bar for each step from order to delivery under a calendar,
// with the steps that decide the date in the accent and float as a dashed line. On a phone
// another stands in its place, with each name above its bar.
func ScheduleChart(p *Page) Part { return Many(steps(p, false), steps(p, true)) }

// waiting joins the parts that nothing waits for into one row of the chart: from the first
// order of one to the last arrival, with the float of the one that has least.
func waiting(list []leadtime.Step, plant *config.Plant) []leadtime.Step {
	var out []leadtime.Step
	joined := -1
	for _, st := range list {
		if st.Source != config.SourceParts || st.Critical {
			out = append(out, st)
			continue
		}
		if joined < 0 {
			joined = len(out)
			out = append(out, st)
			continue
		}
		j := &out[joined]
		j.Option = "" // of several
		if i := slices.IndexFunc(plant.Activities, func(a config.Activity) bool {
			return a.Source == config.SourceParts
		}); i >= 0 {
			j.Label = plant.Activities[i].Label
		}
		spare := min(j.LF-j.EF, st.LF-st.EF)
		j.ES, j.EF = min(j.ES, st.ES), max(j.EF, st.EF)
		j.LF = j.EF + spare
	}
	return out
}

// month is the beginning of one, so many working days after the order.
type month struct {
	on  config.Date
	day float64
}

// months that begin until so many working days after an order.
func months(cal *leadtime.Calendar, order config.Date, end float64) (list []month) {
	first := config.Date{Year: order.Year, Month: order.Month, Day: 1}
	for {
		first = first.AddDays(32)
		first.Day = 1
		at := float64(cal.Between(order, first.AddDays(-1)))
		if at > end {
			return list
		}
		list = append(list, month{first, at})
	}
}

// monthNames stand above the beginning of each month, the year with January and the first
// where there is room for it before the next.
func monthNames(list []month, x func(float64) float64, y, letter, width float64) (parts []Part) {
	for i, m := range list {
		name, room := m.on.MonthName(), width-x(m.day)
		if i+1 < len(list) {
			room = x(list[i+1].day) - x(m.day)
		}
		dated := name + " ’" + strconv.Itoa(m.on.Year)[2:]
		if (m.on.Month == 1 || i == 0) && letter*float64(len(dated)-2) < room {
			name = dated
		}
		class, at := "small", x(m.day)+1
		if letter*float64(len(name)) > width-at {
			class, at = "small end", width
		}
		parts = append(parts, Label(class, at, y, name))
	}
	return parts
}

func steps(p *Page, narrow bool) Part {
	s := p.Q.Plan
	left, right, row, bar, top, ahead, letter := 212.0, 484.0, 10.5, 7.5, 16.0, 0.0, 4.7
	width := 500.0
	if narrow {
		left, right, row, bar, ahead, letter, width = 4.0, 326.0, 27.0, 9.0, 14.0, 7.4, 330
	}
	end, list := max(s.Simulated.NineInTenDays, 1), waiting(s.Steps, &p.Q.Edition.Cat.Plant)
	for _, st := range list {
		end = max(end, st.LF, st.EF)
	}
	x := func(d float64) float64 { return left + (right-left)*d/end }
	cal := leadtime.NewCalendar(&p.Q.Edition.Cat.Plant)
	bottom := top + row*float64(len(list))
	var parts, names []Part
	legend := "* decides the date"
	begin := months(cal, s.Order, end)
	for _, m := range begin {
		parts = append(parts, Path("thin", "M"+Coord(x(m.day))+" "+Coord(top-3)+"V"+Coord(bottom)))
	}
	parts = append(parts, monthNames(begin, x, top-5, letter, width)...)
	for i := range list {
		st := &list[i]
		y := top + row*float64(i) + ahead
		if st.Option != "" {
			st.Label = "Waits for " + p.Q.Edition.Cat.LabelOf(st.Option)
		}
		class, decides := "work", ""
		if st.Critical {
			class, decides = "critical", " *"
		}
		name := Label("small end", left-4, y+bar-1, shortened(st.Label, longestStep)+decides)
		if narrow {
			name = Label("small", left, y-3, shortened(st.Label, longestStep)+decides)
		}
		names = append(names, name)
		parts = append(parts, Rect("slot", left, y, right-left, bar),
			Rect(class, x(st.ES), y, max(x(st.EF)-x(st.ES), 0.8), bar))
		if st.LF > st.EF+0.05 {
			parts = append(parts, Path("float", "M"+Coord(x(st.EF))+" "+Coord(y+bar/2)+"H"+Coord(x(st.LF))))
		}
		if st.Source == config.SourceSlot {
			for _, slot := range p.Q.Edition.Cat.Plant.Slots {
				if at := float64(cal.Between(s.Order, slot.Start)); slot.Open > 0 && at > 0 && at <= end {
					if !narrow { // there is no room
						legend = "* decides the date; red marks: open framing slots"
					}
					parts = append(parts, Path("tick", "M"+Coord(x(at))+" "+Coord(y-1)+"v3.500"))
				}
			}
		}
	}
	line := 8.0
	if narrow {
		line = 13
	}
	for i, m := range []struct {
		d    float64
		word string
	}{{s.Simulated.EvenOddsDays, "50 %"}, {s.Simulated.NineInTenDays, "90 %"}} {
		parts = append(parts, Path("limit", "M"+Coord(x(m.d))+" "+Coord(top)+"V"+Coord(bottom+2)))
		names = append(names, Label("small end", x(m.d), bottom+line+1+line*float64(i), m.word))
	}
	parts = append(parts, names...) // no line runs through lettering
	said := saidOf(s, list)
	parts = append(parts, Label("small", 4, bottom+line+1, legend))
	if narrow {
		return NarrowChart(said, width, bottom+2*line+6, parts)
	}
	return Chart(said, width, bottom+22, parts)
}

// saidOf tells the bars: from when to when the work runs, what decides the date, and what can
// wait longest.
func saidOf(s *leadtime.Plan, list []leadtime.Step) string {
	var decide []leadtime.Step
	var calm leadtime.Step
	for _, st := range list {
		if st.Critical {
			decide = append(decide, st)
		} else if st.LF-st.EF > calm.LF-calm.EF {
			calm = st
		}
	}
	said := "From the order on " + s.Order.Long() + " to delivery: likely (50 %) " + s.EvenOdds.Long() + ", safe (90 %) " +
		s.NineInTen.Long() + "."
	if n := len(decide); n > 0 {
		first, last := decide[0], decide[n-1]
		said += " Of " + Count(len(list), "bar", "bars") + " " + Count(n, "decides", "decide") +
			" the date, from " + first.Label +
			", which begins " + first.Start.Long() + ", to " + last.Label + ", which ends " + last.Finish.Long()
		if float := math.Round(calm.LF - calm.EF); float >= 1 {
			said += "; most float has " + calm.Label + ", " + Count(int(float), "working day", "working days")
		}
		said += "."
	}
	return said
}

// EveryKind has DeliveriesTable date the units of all kinds.
const EveryKind = -1

// DeliveriesTable dates every single unit of a quote of several, or those of one kind.
func DeliveriesTable(p *Page, kind int) Part {
	if p.Q.Draft.Count() == 1 {
		return nil
	}
	t := Table{Caption: "Delivery of every unit", Class: "cards dates tight",
		Heads: []string{"Unit", "Ordered", "Likely date (50 %)", "Safe date (90 %)", "Needed by", "Framing slot"}}
	for _, x := range p.Q.Deliveries() {
		name := p.Q.NameOf(x.Item)
		switch {
		case kind != EveryKind && kind != x.Item:
			continue
		case kind == x.Item:
			name = strconv.Itoa(x.N) + " of " + strconv.Itoa(x.Alike)
		case x.Alike == p.Q.Draft.Count():
			name = "Unit " + strconv.Itoa(x.N) + " of " + strconv.Itoa(x.Alike)
		case x.Alike > 1:
			name += ", " + strconv.Itoa(x.N) + " of " + strconv.Itoa(x.Alike)
		}
		due := p.Q.Draft.Items()[x.Item].Unit.NeededBy
		judged := Text(due.Long())
		if !due.IsZero() {
			worst, how := config.Severity(""), "kept at 90 %"
			if due.Before(x.Plan.NineInTen) {
				worst, how = config.Warn, "chance "+quantity.Chance(x.Plan.Chance(due))
			}
			judged = Many(Mark(worst), Text(" "+due.Long()), El("span", Class("how"), Text(how)))
		}
		slot := ""
		if !x.Plan.Slot.IsZero() {
			slot = x.Plan.Slot.Long()
		}
		t.Rows = append(t.Rows, []Part{Text(name), Text(x.Plan.Order.Long()), Text(x.Plan.EvenOdds.Long()),
			Text(x.Plan.NineInTen.Long()), judged, Text(slot)})
	}
	return t.Draw()
}
