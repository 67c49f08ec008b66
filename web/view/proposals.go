package view

import (
	"cmp"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	. "boxwright/web/view/markup"
)

// mostFound is how many options a search among wishes shows.
const mostFound = 12

// proposals asks for the needs in the trade's words and answers them.
func proposals(p *Page) Part {
	d := p.Q.Draft
	n := d.Needs
	words := func(list []quote.Need, none string) []choice {
		out := []choice{{"", none}}
		for _, w := range list {
			out = append(out, choice{w.ID, w.Label})
		}
		return out
	}
	return El("section", Class("block screen"), At("id", "proposals"), At("tabindex", "-1"), El("h2", Text("What it is for")),
		El("p", Class("lead"), Text("Say what the unit must do, and three full units that can be built are proposed: the lowest price, the most carrying margin, the earliest delivery. The day it is needed, the standard, the equipment and the people's weights count too.")),
		El("div", Class("fields"),
			choose(p, "needs.duty", "Duty", n.Duty, "", words(quote.Duties, "any")),
			number(p, "needs.crew", "Seats for", dayCount(n.Crew), "people", "Driver and crew; empty takes what comes"),
			number(p, "needs.patients", "Patients on cots", dayCount(n.Patients), "at once", ""),
			choose(p, "needs.roads", "Roads", n.Roads, "Snow and grades ask for four-wheel drive", words(quote.RoadKinds, "any")),
			choose(p, "needs.climate", "Climate", n.Climate, "", words(quote.Climates, "any")),
			choose(p, "needs.type", "Type", n.Type, "", []choice{{"", "any"}, {"I", "I, cab-chassis"}, {"II", "II, van"}, {"III", "III, cutaway"}}),
			choose(p, "needs.fuel", "Fuel", n.Fuel, "", []choice{{"", "either"}, {"gasoline", "gasoline"}, {"diesel", "diesel"}}),
			number(p, "terms.budget", "Budget", blank(d.Terms.Budget), p.Q.Book.Currency, "For the whole order"),
		),
		wishes(p),
		El("div", Class("row-tools"), action("propose", "", "", "Propose three units", Class("main"), At("id", "propose")),
			If(p.State.Proposed != "" && p.Search == nil && !p.Proposing, El("span", Class("soft"), Text("The needs have changed: propose again.")))),
		If(p.Proposing, El("div", At("id", "proposals"), At("tabindex", "-1"), working())),
		When(p.Search != nil, func() Part { return proposed(p) }),
	)
}

// wishes are the options asked for by name, and a search for more.
func wishes(p *Page) Part {
	cat, n := p.Q.Edition.Cat, p.Q.Draft.Needs
	must, like := n.Wishes(cat)
	list := func(label, kind string, ids, own []string) Part {
		if ids == nil {
			return nil
		}
		return Many(El("h3", Text(label)), El("ul", Class("wishes"), Each(ids, func(_ int, id string) Part {
			if !slices.Contains(own, id) {
				return El("li", Text(cat.LabelOf(id)+" "), El("span", Class("tag"), Text("from the needs")))
			}
			return El("li", Text(cat.LabelOf(id)+" "), action("wish", id, "", "Take off", Class("quiet"), At("id", "unwish-"+id), At("aria-label", "Take off: "+cat.LabelOf(id))))
		})))
	}
	var found []Part
	if words := strings.Fields(strings.ToLower(p.State.Find)); len(words) > 0 {
		for i := range cat.Options {
			o := &cat.Options[i]
			text := strings.ToLower(o.Label + " " + o.Spec + " " + cat.GroupByID(o.Group).Label)
			if len(found) == mostFound || !p.shown(o) || slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(text, w) }) {
				continue
			}
			press := func(kind, label string) Part {
				return action("wish", o.ID, kind, label, Class("quiet"), At("id", kind+"-"+o.ID), At("aria-label", label+": "+o.Label))
			}
			found = append(found, El("li", Text(o.Label+" "), press("must", "Must have"), press("like", "Would like")))
		}
		if found == nil {
			found = append(found, El("li", Class("soft"), Text("No option has these words.")))
		}
	}
	return Many(
		El("div", Class("columns"), El("div", list("Must have", "must", must, n.Must)), El("div", list("Would like", "like", like, n.Like))),
		El("div", Class("field"), El("label", At("for", "f-find"), Text("Ask for an option by name")),
			El("input", Class("find"), At("type", "search"), At("id", "f-find"), At("data-act", "find"), At("data-live", "1"), At("value", p.State.Find), At("placeholder", "Words of it, such as powered cot"), At("autocomplete", "off"))),
		If(found != nil, El("ul", Class("wishes"), Many(found...))))
}

// proposed are the three units and how they were found.
func proposed(p *Page) Part {
	s := p.Search
	said := count(s.Pairs, "pair", "pairs") + " of chassis and module can meet the needs"
	if s.Refused > 0 {
		said += ", " + quantityOf(s.Refused) + " cannot"
	}
	if s.Unlooked > 0 {
		said += ", " + quantityOf(s.Unlooked) + " were not looked at"
	}
	said += ". For each aim the most promising were worked out to the last option, " + quantityOf(s.Finished) + " in all; of the others a plain unit was weighed, priced and dated. Nothing better was found; that none exists is not proven."
	if s.Unknown != nil {
		said += " The catalogue says nothing of: " + strings.Join(s.Unknown, ", ") + "."
	}
	if len(s.Proposals) == 0 {
		return El("p", Class("notice"), Text("No unit of this catalogue meets these needs. Take a must-have off, or ask for fewer seats or patients. "+said))
	}
	return Many(El("div", Class("three"), Each(s.Proposals, func(_ int, x propose.Proposal) Part { return card(p, &x) })), El("p", Class("how"), Text(said)))
}

func card(p *Page, x *propose.Proposal) Part {
	q := x.Quote
	figure := func(code string) Part {
		f, _ := q.Figure(code)
		if f.Sense != "" {
			return Many(Text(p.signed(f.Margin(), f.Unit)+" "), mark(severityOf(f)))
		}
		return Text(p.show(f.Value, f.Unit))
	}
	list := func(label string, items []string) Part {
		return If(items != nil, Many(El("h4", Text(label)), El("ul", Class("plain"), Each(items, func(_ int, t string) Part { return El("li", Text(t)) }))))
	}
	row := func(label string, value Part) Part { return Many(El("dt", Text(label)), El("dd", value)) }
	return El("section", Class("card"),
		El("h3", Text(x.Title)), El("p", Class("big"), Text(q.Total())),
		El("p", Text(q.Chassis.Label+" · "+q.Body.Label)),
		El("dl", row("Payload left", figure("weight.payload-left")), row("Front axle", figure("weight.front-axle")), row("Amps, hot idle", figure("power.idle")), row("Seats", figure("space.seats")),
			row("Even odds", Text(q.Plan.EvenOdds.Long())), row("Nine in ten", Text(q.Plan.NineInTen.Long()))),
		If(x.Ties != nil, El("p", Class("notice"), Text(strings.Join(x.Ties, " ")))),
		list("Does not meet", x.Misses), list("Gives up", x.Gives),
		action("take-proposal", string(x.Goal), "", "Take this one", At("id", "take-"+string(x.Goal)), At("aria-label", "Take: "+x.Title)))
}

// ---- the buyer's requirement list ----

var outcomeMarks = map[quote.Outcome]config.Severity{quote.Excepted: config.Stop, quote.MeetsWith: config.Warn, quote.ByHand: config.Warn}

// tallyOf counts the answers of each kind.
func tallyOf(list []bid.Answer) string {
	var said []string
	for _, o := range []struct {
		outcome   quote.Outcome
		one, many string
	}{{quote.Meets, "met", "met"}, {quote.MeetsWith, "met with picks", "met with picks"}, {quote.Excepted, "exception", "exceptions"}, {quote.ByHand, "to answer by hand", "to answer by hand"}} {
		n := 0
		for _, a := range list {
			if a.Outcome == o.outcome {
				n++
			}
		}
		if n > 0 || o.outcome == quote.Meets {
			said = append(said, count(n, o.one, o.many))
		}
	}
	return strings.Join(said, ", ")
}

// requirements reads the buyer's list and answers it line by line.
func requirements(p *Page) Part {
	list := bid.Answers(p.Q, p.system())
	paste := Many(textField(p, "list", "Paste the list: one line each, or a table as CSV", "", "A column headed Requirement is read, and one headed No. A pasted list takes the place of the one here."),
		El("div", Class("row-tools"), action("from-field", "", "paste-list", "Read the list", At("data-field", "f-list"), At("id", "read-list")),
			El("label", Class("button"), At("for", "f-list-file"), Text("Open a file…")),
			El("input", Class("hidden-text"), At("type", "file"), At("id", "f-list-file"), At("accept", ".csv,.txt,text/csv,text/plain"), At("data-act", "paste-list"))))
	if len(list) == 0 {
		return fold("requirements", "The buyer's requirement list", paste)
	}
	unsure := slices.ContainsFunc(list, func(a bid.Answer) bool { return !a.Sure && a.Outcome != quote.ByHand })
	t := table{caption: "Line by line", class: "stack answers", heads: []string{"Requirement", "Answer", "Read as", "Offered"}}
	for _, a := range list {
		t.rows = append(t.rows, answerRow(p, a))
	}
	return El("section", Class("block screen"), At("id", "requirements"), El("h2", Text("The buyer's requirement list")),
		El("p", El("b", Text(count(len(list), "line", "lines")+": "+tallyOf(list)+"."))),
		El("div", Class("row-tools"),
			If(slices.ContainsFunc(list, func(a bid.Answer) bool { return a.Takes != "" }), action("take-answer", "", "", "Take all the picks", Class("main"), At("id", "take-answers"))),
			If(unsure, action("confirm-answers", "", "", "All are read rightly", At("id", "confirm-answers"))),
			action("save-answers", "", "", "Save the answers as CSV", At("id", "save-answers")),
			action("paper", "exceptions", "", "Schedule of exceptions", At("id", "to-exceptions")),
			action("clear-list", "", "", "Clear the list", Class("quiet"), At("id", "clear-list"))),
		If(unsure, El("p", Class("how"), Text("A question mark says: read so, not yet confirmed. Choose what the line asks for, or confirm all at once."))),
		t.draw(),
		fold("list", "Paste another list", paste))
}

func answerRow(p *Page, a bid.Answer) []Part {
	id := "req." + quantityOf(a.At)
	cat := p.Q.Edition.Cat
	outcome := Many(mark(outcomeMarks[a.Outcome]), Text(" "+string(a.Outcome)))
	if a.Takes != "" {
		label := cat.LabelOf(a.Takes)
		outcome = Many(outcome, Text(" "+label+" "), action("take-answer", quantityOf(a.At), "", "Take it", Class("quiet"), At("id", "take-"+id), At("aria-label", "Take "+label)))
	}
	as := Text(a.ReadAs)
	if len(a.Matches) > 0 {
		picks := []choice{{quote.NoPick, "none of these: answer by hand"}}
		if a.Pick == "" {
			picks = append(picks, choice{"", "? " + orNone(a.ReadAs)})
		} else if a.Pick != quote.NoPick && !slices.Contains(a.Matches, a.Pick) {
			picks = append(picks, choice{a.Pick, cat.LabelOf(a.Pick)})
		}
		for _, m := range a.Matches {
			picks = append(picks, choice{m, cat.LabelOf(m)})
		}
		as = El("select", At("id", "f-"+id+".pick"), At("data-act", "set"), At("data-id", id+".pick"), At("aria-label", "Line "+quantityOf(a.At+1)+" read as"), options(a.Pick, picks))
	}
	offered := Text(a.Offered)
	if a.Outcome == quote.ByHand || a.Verdict != "" {
		offered = Many(
			El("select", At("id", "f-"+id+".verdict"), At("data-act", "set"), At("data-id", id+".verdict"), At("aria-label", "Answer to line "+quantityOf(a.At+1)), options(string(a.Verdict), []choice{{"", "not answered"}, {string(quote.Meets), "meets"}, {string(quote.Excepted), "exception"}})),
			bare(p, id+".answer", "text", a.Answer, "What is offered for line "+quantityOf(a.At+1)))
	}
	return []Part{Text(strings.TrimSpace(a.No + " " + a.Text)), outcome, as, offered}
}

func orNone(text string) string {
	if text == "" {
		return "not understood"
	}
	return text
}

// exceptions is the schedule that goes back with the bid.
func exceptions(p *Page) Part {
	list := bid.Answers(p.Q, p.system())
	all := table{caption: "Every line", class: "tight", heads: []string{"No.", "Requirement", "Answer", "Offered"}}
	not := table{caption: "Exceptions", class: "tight", heads: []string{"No.", "Requirement", "Offered"}}
	for _, a := range list {
		no := a.No
		if no == "" {
			no = quantityOf(a.At + 1)
		}
		outcome := string(a.Outcome)
		if a.Takes != "" {
			outcome += " " + p.Q.Edition.Cat.LabelOf(a.Takes)
		}
		all.rows = append(all.rows, texts(no, a.Text, outcome, a.Offered))
		if a.Outcome == quote.Excepted {
			not.rows = append(not.rows, texts(no, a.Text, a.Offered))
		}
	}
	open := 0
	for _, a := range list {
		if !a.Sure {
			open++
		}
	}
	return Many(El("h1", Text("Schedule of exceptions")), El("p", Text(cmp.Or(p.Q.Draft.Title, p.Q.Draft.Buyer.Name, "Unit")+" · "+p.Q.Chassis.Label+" · "+p.Q.Body.Label)),
		If(len(list) == 0, El("p", Text("No requirement list was entered. Paste the buyer's list in Needs."))),
		If(len(list) > 0, El("p", El("b", Text(count(len(list), "line", "lines")+": "+tallyOf(list)+".")))),
		If(not.rows != nil, not.draw()), If(len(list) > 0 && not.rows == nil, El("p", Text("There is no exception."))),
		If(open > 0, El("p", mark(config.Warn), Text(" "+count(open, "line is", "lines are")+" answered as this program read them and not yet confirmed: look at each in Needs before this goes out."))),
		If(len(list) > 0, Many(all.draw(), El("div", Class("sign"), El("div", Text("For the bidder: name and title")), El("div", Text("Signature and date"))))))
}

// orderSheet tells the plant what to build, station by station.
func orderSheet(p *Page) Part {
	q := p.Q
	out := []Part{El("h1", Text("Order sheet: "+subject(p))), El("p", Text(q.Chassis.Label+" · "+q.Body.Label+" · rules: "+q.Assume.Label)),
		El("p", Text("Order "+q.Plan.Order.Long()+" · delivery at even odds "+q.Plan.EvenOdds.Long()+", at nine in ten "+q.Plan.NineInTen.Long()+". Dates by station are those expected."))}
	lead := table{caption: "Long lead: order these first", class: "tight", heads: []string{"Part", ">Working days, likely", "Expected", "Needed at the latest"}}
	for _, s := range q.LongLead() {
		lead.rows = append(lead.rows, texts(s.Label, quantity.Group(s.Days.Likely, 0), s.Finish.Long(), s.LatestFinish.Long()))
	}
	out = append(out, lead.draw())
	for _, s := range q.Stations() {
		head := s.Label + ", " + quantity.Group(s.Hours, 1) + " h"
		if s.ID == "" {
			head = "Fitted or delivered without hours of its own"
		} else if !s.Start.IsZero() {
			head += ", " + s.Start.Long() + " to " + s.Finish.Long()
		}
		t := table{caption: head, class: "tight", heads: []string{"What", ">How many", ">Hours", "Done"}}
		for _, l := range s.Lines {
			hours := ""
			if l.Hours != 0 {
				hours = quantity.Group(l.Hours, 1)
			}
			t.rows = append(t.rows, []Part{Many(El("b", Text(l.Label+". ")), Text(l.Spec), told(l.Told)), Text(quantityOf(l.Qty)), Text(hours), Text("☐")})
		}
		out = append(out, t.draw())
	}
	if cuts := cutList(p); cuts != nil {
		out = append(out, El("h2", Text("Cut list")), cuts)
	}
	w := table{caption: "Every 12 V circuit", class: "tight", heads: []string{"No.", "Function", ">Amps", ">Run, ft", ">Fuse, A", "Wire", ">Drop", "Sized by"}}
	for _, c := range q.Power.Circuits {
		w.rows = append(w.rows, texts(c.Number, c.Function, quantity.Group(float64(c.Amps), 1), quantity.Group(c.RunFt, 0), quantity.Group(c.FuseA, 0), c.Gauge, quantity.Group(c.DropPct, 1)+" %", c.Decided))
	}
	return Many(Many(out...), El("h2", Text("Circuit schedule")), w.draw(), El("p", Class("how"), Text("For building to, once a licensed designer of record has gone over it. Mark number and function every 4 in where the option says so.")))
}

// testSheet is filled in at the finished unit; what is typed in is judged.
func testSheet(p *Page) Part {
	list := p.Q.Checks()
	out := []Part{El("h1", Text("Test sheet: "+subject(p))), El("p", Text(p.Q.Chassis.Label+" · "+p.Q.Body.Label+" · serial number ____________________"))}
	read, bad := 0, 0
	for len(list) > 0 {
		end := 1
		for end < len(list) && list[end].Section == list[0].Section {
			end++
		}
		t := table{caption: list[0].Section, class: "tight readings", heads: []string{"What", ">Expected", "Accepted", "Reading"}}
		if list[0].Works {
			t.heads = []string{"What", "Found"}
		}
		for _, c := range list[:end] {
			if c.Reading != nil {
				read++
				if !c.Good() {
					bad++
				}
			}
			t.rows = append(t.rows, checkRow(p, c))
		}
		out = append(out, t.draw(), If(!list[0].Works, El("p", Class("how"), Text("Accepted by: "+bases(list[:end])+"."))))
		list = list[end:]
	}
	said := "No reading is entered yet."
	if read > 0 {
		said = count(read, "reading", "readings") + " entered, " + quantityOf(bad) + " outside what is accepted."
	}
	return Many(Many(out...), El("p", El("b", Text(said))), El("div", Class("sign"), El("div", Text("Tested by, date")), El("div", Text("Approved by, date"))))
}

func checkRow(p *Page, c quote.Check) []Part {
	id := "reading." + c.ID
	verdict := Text("")
	if c.Reading != nil {
		verdict = Many(Text(" "), mark(map[bool]config.Severity{true: "", false: config.Stop}[c.Good()]))
	}
	if c.Works {
		value := ""
		if c.Reading != nil {
			value = quantityOf(int(*c.Reading))
		}
		return []Part{Text(c.What), Many(El("select", At("id", "f-"+id), At("data-act", "set"), At("data-id", id), At("aria-label", "Found: "+c.What), options(value, []choice{{"", "☐"}, {"1", "in order"}, {"0", "a fault"}})), verdict)}
	}
	value := ""
	if c.Reading != nil {
		value = p.plain(*c.Reading, c.Unit)
	}
	accepted := p.show(c.Low, c.Unit) + " to " + p.show(c.High, c.Unit)
	if c.High > 1e9 {
		accepted = "at least " + p.show(c.Low, c.Unit)
	} else if c.Low == 0 {
		accepted = "at most " + p.show(c.High, c.Unit)
	}
	return []Part{Text(c.What), Text(p.show(c.Want, c.Unit)), Text(accepted), Many(bare(p, id, "decimal", value, "Reading: "+c.What), verdict)}
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

// upkeep is the maintenance schedule of this very unit.
func upkeep(p *Page) Part {
	t := table{caption: "By months and miles, whichever comes first", class: "tight", heads: []string{">Months", ">Miles", "What", "First due by"}}
	for _, x := range p.Q.Tasks(p.system()) {
		miles := "–"
		if x.Miles > 0 {
			miles = quantityOf(x.Miles)
		}
		t.rows = append(t.rows, texts(quantityOf(x.Months), miles, x.What, x.First.Long()))
	}
	return Many(El("h1", Text("Maintenance schedule: "+subject(p))), El("p", Text(p.Q.Chassis.Label+" · "+p.Q.Body.Label)),
		t.draw(),
		El("p", Class("how"), Text("Intervals are common practice, no source; where the maker of the chassis or of a part asks for more, that goes first. Days are counted from delivery at even odds.")),
		El("h2", Text("Plan, warranty and service")), service(p))
}

// service lists the promises that go with the unit.
func service(p *Page) Part {
	return El("ul", Class("spec-list two-up"), Each(p.Q.Service(), func(_ int, o *config.Option) Part { return El("li", El("b", Text(o.Label+". ")), Text(o.Spec)) }))
}
