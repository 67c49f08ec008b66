package quote

import (
	"cmp"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// orderSheet tells the plant what to build, station by station.
func orderSheet(p *Page) Part {
	q := p.Q
	out := []Part{El("h1", Text("Order sheet: "+p.subject())),
		El("p", El("b", Text("Build "+page.Count(q.Draft.Terms.Count(), "unit", "units alike")+"."+each(q)+p.among()))),
		El("div", Class("small"), specified(q.Chassis.Label, q.Chassis.Spec), specified(q.Body.Label, q.Body.Spec),
			remountWords(p)),
		El("p", Class("small"), Text("Standards: "+q.Assume.Label+". Order "+q.Plan.Order.Long()+
			" · likely delivery (50 %) "+q.Plan.EvenOdds.Long()+", safe date (90 %) "+q.Plan.NineInTen.Long()+
			neededBy(q)+". Station dates are expected dates.")),
		listed("Ask the customer before the work begins", unnamed(q)), changedWork(p)}
	lead := page.Table{Caption: "Long lead: order these first", Class: "tight",
		Heads: []string{"Part", ">Working days, likely", "Expected", "Latest without moving delivery"}}
	for _, s := range q.LongLead() {
		lead.Rows = append(lead.Rows, page.Texts(s.Label, quantity.Group(s.Days.Likely, 0), s.Finish.Long(),
			s.LatestFinish.Long()))
	}
	out = append(out, El("section", Class("whole"), El("h2", Text("The work, day by day"+firstOf(q.Draft.Terms.Count()))),
		page.ScheduleChart(p.Page)),
		// The units alike are planned together with all others, by the quote in work.
		When(q.Draft.Terms.Count() > 1, func() Part { return page.DeliveriesTable(p.with(p.work).Page, q.Draft.At) }),
		lead.Draw(), oldUnit(q))
	said := map[string]bool{} // what an option is, at its first station
	for _, s := range q.Stations() {
		var stays, promised []string // nothing for the floor
		if s.ID == "" {
			s.Lines = slices.DeleteFunc(s.Lines, func(l quote.StationLine) bool {
				o := q.Edition.Cat.OptionByID(l.No)
				switch {
				case !quote.Specified(o):
					promised = append(promised, quote.Titled(q.Edition.Cat, o.ID, l.Label))
				case o.Remount && l.Told == "":
					stays = append(stays, q.Edition.Cat.GroupByID(o.Group).Label)
				default:
					return false
				}
				return true
			})
		}
		head := s.Label + ", " + quantity.Group(s.Hours, 1) + " h"
		if s.ID == "" {
			head = "Fitted or delivered without hours of its own"
		} else if !s.Start.IsZero() {
			head += ", " + s.Start.Long() + " to " + s.Finish.Long()
		}
		t := page.Table{Caption: head, Class: "tight station",
			Heads: []string{"What", "Catalogue no.", ">How many", ">Hours", "Done"}}
		for _, l := range s.Lines {
			hours := ""
			if l.Hours != 0 {
				hours = quantity.Group(l.Hours, 1)
			}
			what := El("b", Text(l.Label))
			if l.Spec != "" && !said[l.No] {
				what, said[l.No] = once(l.Label, l.Spec), true
			}
			t.Rows = append(t.Rows, []Part{Many(what, told(l.Told)), Text(l.No), Text(page.Whole(l.Qty)),
				Text(hours), Text("☐")})
		}
		out = append(out, If(t.Rows != nil, t.Draw()), listed("Stays as the module has it, no work", stays),
			listed("Papers, warranties and service, nothing to fit", promised))
	}
	loose := page.Table{Caption: "Loose equipment, and where it rides", Class: "tight",
		Heads: []string{"What", "Catalogue no.", ">How many", "Where", "Done"}}
	for _, l := range quote.LoadsOf(q.Edition.Cat, &q.Draft.Unit) {
		loose.Rows = append(loose.Rows, page.Texts(l.Label, l.Equipment, page.Whole(l.Qty), l.Where, "☐"))
	}
	out = append(out, If(loose.Rows != nil, loose.Draw()))
	if cuts := page.CutList(p.Page); cuts != nil {
		out = append(out, El("h2", Text("Cut list")), cuts)
	}
	circuits, stay := "Every 12 V circuit", ""
	if q.Remount() {
		circuits, stay = "Every new 12 V circuit", "Circuits that stay in the module are not listed; the harness "+
			"inspection records their numbers, fuses and wires."
	}
	w := page.Table{Caption: circuits, Class: "tight",
		Heads: []string{"No.", "Function", ">Amps", ">Run, ft", ">Fuse, A", ">Wire, AWG", ">Drop at 30 C"}}
	usual, differs := sizedBy(q.Power.Circuits)
	if differs {
		w.Heads = append(w.Heads, "Sized by")
	}
	for _, c := range q.Power.Circuits {
		row := page.Texts(c.Number, c.Function, quantity.Group(float64(c.Amps), 1), quantity.Group(c.RunFt, 0),
			c.Fuse(), cmp.Or(c.Wire(), "none fits"), quantity.Group(c.DropPct, 1)+" %")
		if differs {
			row = append(row, If(c.Decided != usual, Text(c.Decided)))
		}
		w.Rows = append(w.Rows, row)
	}
	sized := ""
	if usual != "" {
		sized = " Wires are sized by " + usual +
			page.Either(differs, ", but where the last column says otherwise", "") + "."
	}
	return Many(Many(out...), El("h2", Text("Circuit schedule")),
		El("p", Class("how lead-in"),
			Text("Build to this once the licensed designer of record has approved it. Mark number and function "+
				"every 4 in where the option says so."+sized)),
		w.Draw(), If(stay != "", El("p", Text(stay))), mains(p), If(len(q.Power.Shed) > 0, page.SheddingTable(p.Page)))
}

// sizedBy is what decides most wires, and whether others are decided otherwise.
func sizedBy(list []power.Conductor) (usual string, differs bool) {
	count := map[string]int{}
	for _, c := range list {
		count[c.Decided]++
		if count[c.Decided] > count[usual] || count[c.Decided] == count[usual] && c.Decided < usual {
			usual = c.Decided
		}
	}
	return usual, len(count) > 1
}

// neededBy is the date that the customer gave, and whether the safe date keeps it.
func neededBy(q *quote.Quote) string {
	by := q.Draft.Unit.NeededBy
	switch {
	case by.IsZero():
		return ""
	case by.Before(q.Plan.NineInTen):
		return " · the customer needs it by " + by.Long() + ", before the safe date"
	}
	return " · the customer needs it by " + by.Long()
}

// unnamed lists what the plant has still to be told.
func unnamed(q *quote.Quote) (out []string) {
	for _, f := range q.Findings {
		if f.Code != quote.StillToBeNamed {
			continue
		}
		for _, id := range f.Picks {
			out = append(out, q.Edition.Cat.OptionByID(id).Asks)
		}
	}
	return out
}

// listed are names in one line.
func listed(head string, names []string) Part {
	return If(names != nil, El("p", Class("small"), El("b", Text(head+": ")), Text(strings.Join(names, "; ")+".")))
}

// oldUnit says by when the unit whose module is mounted anew has to be at the plant.
func oldUnit(q *quote.Quote) Part {
	for _, s := range q.Plan.Steps {
		for _, a := range q.Edition.Cat.Plant.Activities {
			if a.ID == s.ID && a.Only == "existing" {
				return El("p", El("b", Text("The old unit is due at the plant on "+s.Start.Long()+". ")),
					Text("“"+s.Label+"” ends on "+s.Finish.Long()+", at the latest on "+s.LatestFinish.Long()+
						"; no work on the module begins before."))
			}
		}
	}
	return nil
}

// changedWork tells the plant of a revision what it builds otherwise than it was told before.
func changedWork(p *Page) Part {
	if p.Trust == nil || p.Trust.Before == nil {
		return nil
	}
	b := p.Trust.Before
	if b.Q == nil {
		return El("p", page.Mark(config.Warn),
			Text(" This sheet revises one that is not at hand: paste its link in Quote to see which work changed."))
	}
	since := "since " + issueOf(b.Rev, b.Date)
	was := unitBefore(b, p.work.Draft, p.at)
	if was == nil {
		return El("p", Text("This unit was added "+since+"."))
	}
	t := page.Table{Caption: "Work changed " + since, Class: "tight",
		Heads: []string{"Station", "What", "Catalogue no.", "Before", "Now"}}
	for _, w := range quote.WorkChanges(was, p.Q) {
		t.Rows = append(t.Rows, page.Texts(w.Station, w.Label, w.No, page.OrDash(w.Before), page.OrDash(w.Now)))
	}
	if t.Rows == nil {
		return El("p", Text("No work and no circuit changed "+since+"."))
	}
	return t.Draw()
}

// each says that the sheet counts for one unit where several are built.
func each(q *quote.Quote) string {
	if q.Draft.Terms.Count() > 1 {
		return " Numbers and hours below are for each of them; station dates are those of the first."
	}
	return ""
}

// among says what else the order holds.
func (p *Page) among() string {
	if others := p.Q.Draft.Count() - p.Q.Draft.Terms.Count(); others > 0 {
		return " The order holds " + page.Count(others, "more unit", "more units") +
			" of other kinds; each kind has its " +
			"own sheet."
	}
	return ""
}

// testSheet is filled in at the finished unit; what is typed in is judged.
func testSheet(p *Page) Part {
	list := p.Q.Checks()
	out := []Part{El("h1", Text("Test sheet: "+p.subject())),
		El("p", Text(p.Q.Chassis.Label+" · "+p.Q.Body.Label+" · serial number ____________________"))}
	read, bad := 0, 0
	for len(list) > 0 {
		end := 1
		for end < len(list) && list[end].Section == list[0].Section {
			end++
		}
		t := page.Table{Caption: list[0].Section, Class: "tight readings cards",
			Heads: []string{"What", ">Expected", "Accepted", "Reading"}}
		if list[0].Works {
			t.Heads = []string{"What", "How", "Expected", "Accepted", "Found"}
		}
		for _, c := range list[:end] {
			if c.Reading != nil {
				read++
				if !c.Good() {
					bad++
				}
			}
			t.Rows = append(t.Rows, checkRow(p, c))
		}
		out = append(out, t.Draw(),
			If(!list[0].Works, El("p", Class("how"), Text("Accepted by: "+bases(list[:end])+"."))))
		list = list[end:]
	}
	if len(p.Q.Power.Shed) > 0 {
		out = append(out, page.SheddingTable(p.Page))
	}
	said, shown := "No reading is entered yet.", Class("screen")
	if read > 0 {
		shown = nil
		said = page.Count(read, "reading", "readings") + " entered, " + page.Whole(bad) + " outside what is accepted."
	}
	return Many(Many(out...), El("p", shown, El("b", Text(said))),
		El("div", Class("sign"), El("div", Text("Tested by, date")), El("div", Text("Approved by, date"))))
}

func checkRow(p *Page, c quote.Check) []Part {
	id := "reading." + c.ID
	if p.printed {
		return printedRow(p, c)
	}
	verdict := Text("")
	if c.Reading != nil {
		verdict = Many(Text(" "), page.Mark(map[bool]config.Severity{true: "", false: config.Stop}[c.Good()]))
	}
	if c.Works {
		value := ""
		if c.Reading != nil {
			value = page.Whole(int(*c.Reading))
		}
		return []Part{Text(c.What), Text(c.How), Text(page.Held(c.Expect)), Text(page.Held(c.Tolerance)),
			Many(El("select", At("id", "f-"+id), At("data-act", "set"), At("data-id", id),
				At("aria-label", "Found: "+c.What), page.Options(value,
					[]page.Choice{{"", "☐"}, {"1", "in order"}, {"0", "a fault"}})), verdict)}
	}
	value := ""
	if c.Reading != nil {
		value = p.Plain(*c.Reading, c.Unit)
	}
	return []Part{Text(page.Held(c.What)), Text(p.Show(c.Want, c.Unit)), Text(accepted(p, c)),
		Many(page.Bare(p.Page, id, "decimal", value, "Reading: "+c.What), verdict)}
}

// accepted is the range a reading is accepted in.
func accepted(p *Page, c quote.Check) string {
	switch {
	case c.High > 1e9:
		return "at least " + page.Held(p.Show(c.Low, c.Unit))
	case c.Low == 0:
		return "at most " + page.Held(p.Show(c.High, c.Unit))
	}
	return page.Between(p.Page, c.Low, c.High, c.Unit)
}

// printedRow is a check of a unit that is not in work, with room to write.
func printedRow(p *Page, c quote.Check) []Part {
	if c.Works {
		return []Part{Text(c.What), Text(c.How), Text(page.Held(c.Expect)), Text(page.Held(c.Tolerance)), Text("☐")}
	}
	return []Part{Text(page.Held(c.What)), Text(p.Show(c.Want, c.Unit)), Text(accepted(p, c)), Text("__________")}
}

// bases lists what the tolerances of a section rest on, each once.
func bases(list []quote.Check) string {
	var out []string
	for _, c := range list {
		if !slices.Contains(out, c.Basis) {
			out = append(out, c.Basis)
		}
	}
	return strings.Join(out, "; ")
}

// labelData fills in the labels and forms as far as the unit says what stands on them.
func labelData(p *Page) Part {
	out := []Part{El("h1", Text("Label data: "+p.subject())),
		El("p", Text(p.Q.Chassis.Label+" · "+p.Q.Body.Label)),
		El("p", El("b", Text("Data for the certifying manufacturer. This is not a label, and certifies nothing: "+
			"the certifying manufacturer checks every entry, words the statements, and answers for them.")))}
	for _, l := range p.Q.LabelData() {
		t := page.Table{Caption: l.Title, Class: "tight cards", Heads: []string{"Entry", "Data", "From"}}
		for _, x := range l.Lines {
			value := x.Text
			switch {
			case x.Blank:
				value = "____________________"
			case x.Unit == quantity.Pound:
				value = quantity.US.Show(x.Value, x.Unit) + " (" + quantity.Metric.Show(x.Value, x.Unit) + ")"
			case x.Unit != "":
				value = quantity.US.Show(x.Value, x.Unit)
			}
			t.Rows = append(t.Rows, page.Texts(x.What, page.Held(value), page.Held(x.From)))
		}
		out = append(out, El("section", Class("whole"), t.Draw(), El("p", Class("how"), Text(l.Source+"."))))
	}
	return Many(Many(out...), El("p", Class("how"), Text("Weights stand as computed until the scale's readings are "+
		"entered on the test sheet. Records of a certification are kept at least five years "+
		"(trailer-bodybuilders.com, Vehicle Certification Explained).")))
}

// upkeep is the maintenance schedule of this very unit.
func upkeep(p *Page) Part {
	t := page.Table{Caption: "By months and miles, whichever comes first", Class: "tight dated",
		Heads: []string{">Months", ">Miles", "What", "First due by"}}
	for _, x := range p.Q.Tasks(p.System()) {
		miles := "–"
		if x.Miles > 0 {
			miles = page.Whole(x.Miles)
		}
		t.Rows = append(t.Rows, page.Texts(page.Whole(x.Months), miles, x.What, x.First.Long()))
	}
	return Many(El("h1", Text("Maintenance schedule: "+p.subject())),
		El("p", Text(p.Q.Chassis.Label+" · "+p.Q.Body.Label)),
		t.Draw(),
		El("p", Class("how"),
			Text("Intervals are common practice, no source; where the maker of the chassis or of a part asks for "+
				"more, that counts. Days are counted from the likely date (50 %).")),
		service(p))
}

// service lists the promises that the unit is kept up by; delivery and papers are none.
func service(p *Page) Part {
	list := slices.DeleteFunc(p.Q.Service(), func(o *config.Option) bool {
		return !slices.Contains(o.Tags, quote.UpkeepTag)
	})
	return If(len(list) > 0, Many(El("h2", Text("Plan, parts and warranty")), El("ul", Class("spec-list two-up"),
		Each(list, func(_ int, o *config.Option) Part {
			return El("li", El("b", Text(p.Q.Edition.Cat.GroupByID(o.Group).Label+": "+o.Label+". ")), Text(o.Spec))
		}))))
}
