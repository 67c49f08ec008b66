package needs

import (
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// ---- the buyer's requirement list ----

var outcomeMarks = map[quote.Outcome]config.Severity{quote.Excepted: config.Stop, quote.MeetsWith: config.Warn,
	quote.ByHand: config.Warn}

// requirements reads the buyer's list and answers it line by line.
func requirements(p *Page) Part {
	list := bid.Answers(p.Q, p.System())
	paste := Many(page.TextField(p.Page, "list", "Paste the list: one line each, or a table as CSV", "",
		"A column headed Requirement is read, and one headed No. A pasted list takes the place of the one here."),
		El("div", Class("row-tools"), page.Action("from-field", "", "paste-list", "Read the list",
			At("data-field", "f-list"), At("id", "read-list")),
			El("label", Class("button"), At("for", "f-list-file"), Text("Open a file…")),
			El("input", Class("hidden-text"), At("type", "file"), At("id", "f-list-file"),
				At("accept", ".csv,.txt,text/csv,text/plain"), At("data-act", "paste-list"))))
	if len(list) == 0 {
		return page.Fold("requirements", "The buyer's requirement list", paste)
	}
	unsure := slices.ContainsFunc(list, func(a bid.Answer) bool { return !a.Sure && a.Outcome != quote.ByHand })
	t := page.Table{Caption: "Line by line", Class: "stack answers",
		Heads: []string{"Requirement", "Answer", "Read as", "Offered"}}
	for _, a := range list {
		t.Rows = append(t.Rows, answerRow(p, a))
	}
	return El("section", Class("block screen"), At("id", "requirements"),
		El("h2", Text("The buyer's requirement list")),
		El("p", El("b", Text(page.Count(len(list), "line", "lines")+": "+page.Tally(list)+"."))),
		El("div", Class("row-tools"),
			If(slices.ContainsFunc(list, func(a bid.Answer) bool { return a.Takes != "" }),
				page.Action("take-answer", "", "", "Take all the picks", Class("main"), At("id", "take-answers"))),
			If(unsure, page.Action("confirm-answers", "", "", "All are read rightly", At("id", "confirm-answers"))),
			page.Action("save-answers", "", "", "Save the answers as CSV", At("id", "save-answers")),
			page.Action("paper", "exceptions", "", "Schedule of exceptions", At("id", "to-exceptions")),
			page.Action("clear-list", "", "", "Clear the list", Class("quiet"), At("id", "clear-list"))),
		If(unsure, El("p", Class("how"),
			Text("A question mark says: read so, not yet confirmed. Choose what the line asks for, or confirm all "+
				"at once."))),
		t.Draw(),
		page.Fold("list", "Paste another list", paste))
}

func answerRow(p *Page, a bid.Answer) []Part {
	id := "req." + page.Whole(a.At)
	cat := p.Q.Edition.Cat
	outcome := Many(page.Mark(outcomeMarks[a.Outcome]), Text(" "+string(a.Outcome)))
	if a.Takes != "" {
		label := cat.LabelOf(a.Takes)
		outcome = Many(outcome, Text(" "+label+" "), page.Action("take-answer", page.Whole(a.At), "", "Take it",
			Class("quiet"), At("id", "take-"+id), At("aria-label", "Take "+label)))
	}
	as := Text(a.ReadAs)
	if len(a.Matches) > 0 {
		picks := []page.Choice{{quote.NoPick, "none of these: answer by hand"}}
		if a.Pick == "" {
			picks = append(picks, page.Choice{"", "? " + orNone(a.ReadAs)})
		} else if a.Pick != quote.NoPick && !slices.Contains(a.Matches, a.Pick) {
			picks = append(picks, page.Choice{a.Pick, cat.LabelOf(a.Pick)})
		}
		for _, m := range a.Matches {
			picks = append(picks, page.Choice{m, cat.LabelOf(m)})
		}
		as = El("select", At("id", "f-"+id+".pick"), At("data-act", "set"), At("data-id", id+".pick"),
			At("aria-label", "Line "+page.Whole(a.At+1)+" read as"), page.Options(a.Pick, picks))
	}
	offered := Text(a.Offered)
	if a.Outcome == quote.ByHand || a.Verdict != "" {
		offered = Many(
			El("select", At("id", "f-"+id+".verdict"), At("data-act", "set"), At("data-id", id+".verdict"),
				At("aria-label", "Answer to line "+page.Whole(a.At+1)), page.Options(string(a.Verdict),
					[]page.Choice{{"", "not answered"}, {string(quote.Meets), "meets"},
						{string(quote.Excepted), "exception"}})),
			page.Bare(p.Page, id+".answer", "text", a.Answer, "What is offered for line "+page.Whole(a.At+1)))
	}
	return []Part{Text(strings.TrimSpace(a.No + " " + a.Text)), outcome, as, offered}
}

func orNone(text string) string {
	if text == "" {
		return "not understood"
	}
	return text
}
