package needs

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/bid/terms"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// ---- the purchaser's requirement list ----

// List is the purchaser's list as it is shown.
type List struct {
	Answers []bid.Answer           // nil while they are worked out
	Read    int                    // lines of it read so far
	Chosen  []bid.Answer           // those of the kind that is shown
	From    int                    // the first of these on the screen
	Shorter map[int]*bid.Shortened // without what was not read, by the line
	Preview *bid.Preview           // what taking all would do, while asked for
	Looking bool                   // that is being worked out
}

// mostAtOnce is how many lines stand on the screen together.
const mostAtOnce = 50

// loadList answers the list.
func loadList(s *session.Session, p *Page, w *session.Worked) {
	if len(w.Quote.Draft.Requirements) == 0 {
		return
	}
	p.List = &List{}
	if p.List.Answers, p.List.Read = w.Answered(s); p.List.Answers == nil {
		return
	}
	p.List.choose(&s.View.List)
	p.List.Shorter = map[int]*bid.Shortened{}
	for _, x := range w.Shortened(s, p.List.onScreen()) {
		p.List.Shorter[x.Answer.At] = &x
	}
	if !s.View.List.Taking {
		return
	}
	var there bool
	p.List.Preview, there = w.Preview(s, p.List.Answers)
	p.List.Looking = !there
}

// choose finds the lines of the kind that is shown, and where the screen begins.
func (l *List) choose(v *session.ListView) {
	has := shows[0].has
	for _, x := range shows {
		if x.id == v.Show {
			has = x.has
		}
	}
	for i := range l.Answers {
		if has(&l.Answers[i]) {
			l.Chosen = append(l.Chosen, l.Answers[i])
		}
	}
	if v.From < len(l.Chosen) {
		l.From = v.From
	}
}

func (l *List) onScreen() []bid.Answer { return l.Chosen[l.From:min(l.From+mostAtOnce, len(l.Chosen))] }

// marks of the answers.
var outcomeMarks = map[quote.Outcome]config.Severity{quote.Excepted: config.Stop, quote.MeetsWith: config.Warn,
	quote.Clarify:    config.Note,
	quote.Unanswered: config.Warn}

// shows are the parts of the list that can be looked at.
var shows = []struct {
	id, label string
	has       func(*bid.Answer) bool
}{
	{"", "All lines", func(*bid.Answer) bool { return true }},
	{"open", "Not answered", func(a *bid.Answer) bool { return !a.Head && a.Outcome == quote.Unanswered }},
	{"with", "Comply with", func(a *bid.Answer) bool { return a.Outcome == quote.MeetsWith }},
	{"exceptions", "Exceptions", func(a *bid.Answer) bool { return a.Outcome == quote.Excepted }},
	{"terms", "Terms of the bid", func(a *bid.Answer) bool { return a.Term != "" }},
}

// requirements shows the purchaser's list and how the unit answers it.
func requirements(p *Page) Part {
	paste := Many(page.TextField(p.Page, "list", "Paste the list", "",
		"From a word processor, a spreadsheet, a PDF or a mail. Headings, numbers and words stay as they are. It replaces "+
			"the list here."),
		El("div", Class("row-tools"), page.Action("from-field", "", "paste-list", "Read the list", At("data-field",
			"f-list"), At("id", "read-list")),
			page.FileButton("f-list-file", "paste-list", "Open a file…",
				".csv,.txt,.docx,.xlsx,text/csv,text/plain", At("aria-describedby", "h-list-file")),
			El("span", Class("hint"), At("id", "h-list-file"),
				Text("CSV, text, .docx or .xlsx, up to "+page.Whole(quote.MaxRequirements)+" lines"))))
	const title = "The purchaser's requirement list"
	if p.List == nil {
		return page.Fold("requirements", title, paste, standing(p))
	}
	section := func(parts ...Part) Part {
		return El("section", Class("block screen"), At("id", "requirements"), At("tabindex", "-1"),
			At("aria-label", title), El("h2", Text(title)),
			When(p.Told.IsAnswers(), func() Part { return p.Told.Draw() }), Many(parts...))
	}
	list := p.List.Answers
	if list == nil {
		return section(page.Reading(p.List.Read, len(p.Q.Draft.Requirements)))
	}
	return section(
		El("p", El("b", Text(page.Count(bid.Lines(list), "line", "lines")+": "+bid.Tally(list)+"."))),
		goesOut(list),
		El("div", Class("row-tools"),
			If(slices.ContainsFunc(list, func(a bid.Answer) bool { return a.Outcome == quote.MeetsWith }),
				El("div", At("id", "take-all"),
					page.Action("preview-answers", "", "", "Take all that can be complied with…", Class("main"),
						At("id", "preview-answers"), At("aria-expanded", strconv.FormatBool(p.View.List.Taking))),
					preview(p))),
			page.Action("paper", "response", "", "Response form", At("id", "to-response")),
			page.Action("paper", "exceptions", "", "Exceptions", At("id", "to-exceptions")),
			page.Action("save-answers", "", "", "Save as CSV", At("id", "save-answers")),
			page.FileButton("f-fill-file", "fill-sheet", "Fill in the purchaser's spreadsheet…", ".csv,.xlsx,text/csv"),
			page.Action("clear-list", "", "", "Clear the list", Class("quiet"), At("id", "clear-list"))),
		El("div", Class("chapters"), At("role", "toolbar"), At("aria-label", "Lines shown"),
			Each(shows, func(_ int, x struct {
				id, label string
				has       func(*bid.Answer) bool
			}) Part {
				n := 0
				for i := range list {
					if x.has(&list[i]) && !list[i].Head {
						n++
					}
				}
				return page.Action("show-list", x.id, "", x.label+" "+page.Whole(n), At("id", "show-list-"+x.id),
					page.InRow(p.View.List.Show == x.id),
					At("aria-pressed", strconv.FormatBool(p.View.List.Show == x.id)))
			})),
		lines(p),
		page.Inner("list", "Paste another list", paste), standing(p))
}

// goesOut says whether the list can go out.
func goesOut(list []bid.Answer) Part {
	if n := bid.Open(list); n > 0 {
		return El("p", page.Mark(config.Warn), Text(" "+page.Count(n, "line is", "lines are")+
			" not answered yet. The list goes out, and is signed, when none is."))
	}
	return El("p", Class("how"),
		Text("Every line is answered. Read them before the list goes out: it is the bidder who signs."))
}

// preview says what taking all would do.
func preview(p *Page) Part {
	if !p.View.List.Taking {
		return nil
	}
	v := p.List.Preview
	if v == nil {
		said := "Nothing of it goes with the unit as it is."
		if p.List.Looking {
			said = "Working out what it changes…"
		}
		if !p.List.Looking {
			p.Answer = said
		}
		return El("p", At("id", "taking"), Text(said))
	}
	price := p.Q.Price.Currency + " " + v.Price.Show()
	if v.Price.Sign() >= 0 {
		price = p.Q.Price.Currency + " +" + v.Price.Show()
	}
	date := "Delivery stays " + v.Is.Long() + " (90 %)."
	if days := v.Was.DaysUntil(v.Is); days != 0 {
		date = "Delivery " + v.Is.Long() + " (90 %), now " + v.Was.Long() + "."
	}
	var numbers []string
	for _, at := range v.Refused {
		numbers = append(numbers, p.List.Answers[at].NoOf())
	}
	p.Answer = "Meets " + page.Count(v.Lines, "more line", "more lines") + ". Price " + price + ". Remaining payload " +
		bid.Signed(p.System(), v.Payload, quantity.Pound) + ". " + date
	said := El("p", Text(p.Answer))
	var against []Part
	warn := func(s config.Severity, text string) {
		p.Answer += " " + text
		against = append(against, El("p", page.Mark(s), Text(" "+page.Held(text))))
	}
	if numbers != nil {
		warn(config.Warn, "Not together with the rest: line "+strings.Join(numbers, ", ")+".")
	}
	if v.Lost != nil {
		warn(config.Warn, "No longer complied with: line "+strings.Join(v.Lost, ", ")+".")
	}
	for _, f := range v.Broken {
		warn(f.Severity, page.Capital(f.Where)+": "+f.Text)
	}
	return El("div", Class("note"), At("id", "taking"), said, Many(against...),
		El("div", Class("row-tools"), page.Action("take-answer", "", "", "Take them", Class("main"),
			At("id", "take-answers")),
			page.Action("preview-answers", "", "", "Leave it", Class("quiet"), At("id", "leave-answers"))))
}

// lines are the rows that are shown, a part of a long list at a time.
func lines(p *Page) Part {
	shown, from := p.List.onScreen(), p.List.From
	if len(shown) == 0 {
		return El("p", Text("There is no such line."))
	}
	to, all := from+len(shown), len(p.List.Chosen)
	t := page.Table{Caption: "Line by line", Class: "stack answers",
		Heads: []string{"Requirement", "Answer", "Offered", "Read as"}}
	for _, a := range shown {
		t.Rows = append(t.Rows, answerRow(p, a))
	}
	turn := func(at int, label, id string) Part {
		return page.Action("turn-list", strconv.Itoa(at), "", label, At("id", id))
	}
	return Many(If(len(p.List.Shorter) > 0, El("p", Class("how"), Text("A marked word was not read, and the line can be "+
		"answered without it. Leave it out only where it asks for nothing. The purchaser's words stay as they are."))),
		t.Draw(), If(all > mostAtOnce, El("div", Class("row-tools"),
			If(from > 0, turn(max(from-mostAtOnce, 0), "Lines before", "list-before")),
			El("span", Text("Lines "+page.Whole(from+1)+" to "+page.Whole(to)+" of "+page.Whole(all))),
			If(to < all, turn(to, "Next lines", "list-next")))))
}

// answerRow is one line: what the purchaser wrote, the answer, what is offered, and
// what the line was read as, each to be corrected.
func answerRow(p *Page, a bid.Answer) []Part {
	id := "req." + strconv.Itoa(a.At)
	name := "line " + a.NoOf()
	shorter := p.List.Shorter[a.At]
	text := Many(If(a.No != "", El("b", Text(a.No+" "))), marked(a.Text, shorter))
	if a.Head {
		return []Part{El("b", text), page.Action("set", id+".head", "", "It is a requirement", Class("quiet"),
			At("id", "asks-"+id),
			At("aria-label", "It is a requirement: "+a.Text)), nil, nil}
	}
	cat := p.Q.Edition.Cat
	outcome := []Part{page.Mark(outcomeMarks[a.Outcome]), Text(" " + a.Outcome.Words())}
	for i, t := range a.Takes {
		said := ": "
		if i > 0 {
			said = "; "
		}
		outcome = append(outcome, Text(said+bid.AddWords(p.Q, t, p.System())))
	}
	if a.Outcome == quote.MeetsWith {
		date := a.DateWords(p.Q)
		if date != "" {
			date += " "
		}
		outcome = append(outcome, Text(". Not in the price yet. "+date),
			page.Action("take-answer", strconv.Itoa(a.At), "", "Take it", Class("quiet"),
				At("id", "take-"+id), At("aria-label", "Take it: what meets "+name)))
	}
	outcome = append(outcome, leaveOut(p, shorter, id, name))
	picks := []page.Choice{{"", "as read"}, {quote.NoPick, "nothing listed here"}}
	if a.Pick != "" && a.Pick != quote.NoPick && !slices.Contains(a.Matches, a.Pick) &&
		!strings.HasPrefix(a.Pick, bid.TermPick) {
		picks = append(picks, page.Choice{a.Pick, cat.LabelOf(a.Pick)})
	}
	for _, m := range a.Matches {
		picks = append(picks, page.Choice{m, cat.LabelOf(m)})
	}
	if a.Term != "" || strings.HasPrefix(a.Pick, bid.TermPick) || len(a.Read) == 0 {
		for _, k := range terms.Kinds {
			picks = append(picks, page.Choice{bid.TermPick + k.ID, "Term: " + k.Name})
		}
	}
	correct := Many(El("select", At("id", "f-"+id+".pick"), At("data-act", "set"), At("data-id", id+".pick"),
		At("aria-label", "What "+name+" asks for"), page.Options(a.Pick, picks)), meant(p, &a, id, name))
	if len(a.Read) > 0 && a.Unread == 0 && a.Pick == "" && a.Meant == "" {
		correct = El("details", El("summary", Class("quiet"), page.Named("Correct the reading", "of "+name)), correct)
	}
	read := Many(readAs(&a),
		If(a.Meant != "", El("span", Class("how"), Text("Read in your words; the purchaser's stay as they are."))),
		correct)
	undecided := "as worked out"
	if a.Outcome == quote.Unanswered {
		undecided = "not answered"
	}
	verdict := El("select", At("id", "f-"+id+".verdict"), At("data-act", "set"), At("data-id", id+".verdict"),
		At("aria-label", "Own answer to "+name), page.Options(string(a.Verdict), []page.Choice{{"", undecided},
			{string(quote.Meets), "Comply"}, {string(quote.Excepted), "Exception"}, {string(quote.Clarify),
				"Clarification"}}))
	offered := Many(Text(a.Offered),
		If(a.Nearest != "",
			El("span", Class("how"), Text("Nearest available: "+strings.TrimSuffix(a.Nearest, ".")+"."))))
	if a.Outcome == quote.Unanswered || a.Verdict != "" || a.Answer != "" || a.Term != "" {
		offered = Many(If(a.Answer == "", offered), verdict,
			page.Bare(p.Page, id+".answer", "text", a.Answer, "Own words to "+name),
			If(a.Term != "" && a.Verdict != "",
				page.Action("standing", strconv.Itoa(a.At), "", "Keep as standing answer",
					Class("quiet"), At("id", "stand-"+id), At("aria-label", "Keep as standing answer: "+
						terms.Name(a.Term)))))
	} else {
		offered = Many(offered, El("details", El("summary", Class("quiet"), page.Named("Answer otherwise", name)), verdict,
			page.Bare(p.Page, id+".answer", "text", a.Answer, "Own words to "+name)))
	}
	stands := El("div", At("id", "stands-"+id), At("tabindex", "-1"), Many(outcome...)) // who takes it is led there
	return []Part{text, stands, offered, read}
}

// marked are the purchaser's words, with those that the line is read without marked.
func marked(text string, s *bid.Shortened) Part {
	if s == nil {
		return Text(text)
	}
	var out []Part
	from := 0
	for _, at := range s.Left {
		out = append(out, Text(text[from:at[0]]), El("mark", Text(text[at[0]:at[1]])))
		from = at[1]
	}
	return Many(append(out, Text(text[from:]))...)
}

// leaveOut offers to read a line without words that were not read, and says what its answer is then.
func leaveOut(p *Page, s *bid.Shortened, id, name string) Part {
	if s == nil {
		return nil
	}
	words, it := "“"+strings.Join(s.Words(), "”, “")+"”", "it"
	if len(s.Left) > 1 {
		it = "them"
	}
	said := strings.ToLower(s.Answer.Outcome.Words())
	var takes []string
	for _, t := range s.Answer.Takes {
		takes = append(takes, bid.AddWords(p.Q, t, p.System()))
	}
	if offered := cmp.Or(strings.Join(takes, "; "), s.Answer.Offered); offered != "" {
		said += ": " + strings.TrimSuffix(offered, ".")
	}
	return El("p", Text("Not read: "+words+". Without "+it+": "+said+". "),
		page.Action("set", id+".leave", s.Meant, "Leave "+it+" out", Class("quiet"), At("id", "leave-"+id),
			At("aria-label", "Leave "+it+" out: "+words+" of "+name)))
}

// readAs says what a line was read as; each of several claims in its words, with its own answer.
func readAs(a *bid.Answer) Part {
	list := a.Claims()
	if len(list) < 2 || a.Term != "" || a.Pick != "" {
		return Many(Text(strings.Join(a.Read, "; ")),
			If(a.Unread > 0 && a.Term == "", El("span", Class("how"), Text("Not all of it was read."))))
	}
	return El("ul", Class("claims"), Each(list, func(_ int, c bid.Piece) Part {
		said := "not read"
		if c.Read {
			said = strings.ToLower(c.Outcome.Words()) + ": " + c.As
		}
		return El("li", Text("“"+c.Text+"” "), El("span", Class("how"), Text(said)))
	}))
}

// meant is the field in which what a line asks for is put in other words, such as
// another amount.
func meant(p *Page, a *bid.Answer, id, name string) Part {
	words := a.Meant
	if words == "" && a.Term == "" && a.Pick == "" {
		if words = strings.Join(a.Read, "; "); a.Unread > 0 {
			words = a.Text
		}
	}
	return page.Bare(p.Page, id+".meant", "text", words, "What "+name+" asks for, in your words")
}
