package needs

import (
	"strings"

	"boxwright/pricing/bid"
	"boxwright/pricing/bid/terms"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// standing shows the seller's standing answers to terms of the bid, while asked for.
func standing(p *Page) Part {
	open := p.View.Standing != nil
	press := page.Action("standing-list", "", "", "Your standing answers to terms of a bid…", Class("quiet"),
		At("id", "standing-answers"), At("aria-expanded", page.Either(open, "true", "false")))
	if !open {
		return El("div", Class("row-tools"), press)
	}
	t := page.Table{Caption: "Answers to terms of a bid, in every list", Class: "stack answers",
		Heads: []string{"Term", "Answer", "In words"}}
	for _, k := range terms.Kinds {
		own, id := p.View.Standing[k.ID], "stand."+k.ID
		t.Rows = append(t.Rows, []Part{Text(k.Name),
			El("select", At("id", "f-"+id+".verdict"), At("data-act", "set"), At("data-id", id+".verdict"),
				At("aria-label", "Standing answer to "+k.Name), page.Options(string(own.Verdict), []page.Choice{
					{"", "none kept"}, {string(quote.Meets), "Comply"}, {string(quote.Excepted), "Exception"},
					{string(quote.Clarify), "Clarification"}})),
			page.Bare(p.Page, id+".answer", "text", own.Answer, "Standing words to "+k.Name)})
	}
	return Many(El("div", Class("row-tools"), press), El("div", Class("block"), At("id", "standing-list"),
		El("p", Class("how"), Text("Kept on this device, for the next list. Lines that are answered already stay as "+
			"they are. \"Save everything as one file\" in Quote holds these too.")), t.Draw()))
}

// standingAnswers shows them, or puts them away.
func standingAnswers(s *session.Session, _ session.Act) {
	if s.View.Standing != nil {
		s.View.Standing = nil
		return
	}
	s.View.Standing = bid.ReadBook(s.Req.Bids).Standing
	if s.View.Standing == nil {
		s.View.Standing = map[string]bid.Own{}
	}
}

// standingField keeps one of them.
func standingField(name string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		term, what, _ := strings.Cut(name, ".")
		book := bid.ReadBook(s.Req.Bids)
		own := book.Standing[term]
		switch what {
		case "verdict":
			own.Verdict = quote.Outcome(a.Value)
		case "answer":
			own.Answer = strings.TrimSpace(a.Value)
		}
		if err := book.Stand(term, own); err != nil {
			return err
		}
		s.View.Standing = book.Standing
		s.Step(session.Step{Do: "keep-bids", Text: book.Text()})
		return nil
	}
}
