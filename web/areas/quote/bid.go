package quote

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// responseForm is the purchaser's list as it goes back: every line in their number and
// words, what is answered, what is offered and where the quote says it.
func responseForm(p *Page) Part {
	list := p.List
	if list == nil {
		return Many(El("h1", Text("Response to the requirement list")), noList(p))
	}
	t := page.Table{Caption: "Line by line", Class: "tight form answered",
		Heads: []string{"No.", "Requirement", "Response", "Offered", "In the quote"}}
	for _, a := range list {
		if a.Head {
			t.Rows = append(t.Rows, []Part{Text(a.No), page.Bold(a.Text), nil, nil, nil})
			continue
		}
		words := a.Outcome.Words()
		if a.Outcome == quote.MeetsWith {
			words += " additions" // which are told beside it
		}
		t.Rows = append(t.Rows, []Part{Text(a.NoOf()), Text(a.Text), page.Bold(words),
			Text(a.Response(p.Q, p.System())), places("at-"+strconv.Itoa(a.At), a.Where)})
	}
	return Many(bidHead(p, "Response to the requirement list", list), t.Draw(), bidSignature(list))
}

// exceptions lists what is not complied with, and what is to be clarified, alone.
func exceptions(p *Page) Part {
	list := p.List
	if list == nil {
		return Many(El("h1", Text("Schedule of exceptions")), noList(p))
	}
	table := func(caption string, outcome quote.Outcome) Part {
		t := page.Table{Caption: caption, Class: "tight form",
			Heads: []string{"No.", "Requirement", "Offered", "In the quote"}}
		for _, a := range list {
			if !a.Head && a.Outcome == outcome {
				t.Rows = append(t.Rows, append(page.Texts(a.NoOf(), a.Text, a.Response(p.Q, p.System())),
					places("at-"+strconv.Itoa(a.At), a.Where)))
			}
		}
		return If(t.Rows != nil, t.Draw())
	}
	excepted, clarified := table("Exceptions", quote.Excepted), table("Clarifications", quote.Clarify)
	none := excepted == nil && clarified == nil
	return Many(bidHead(p, "Schedule of exceptions", list), excepted, clarified,
		If(none && bid.Open(list) == 0, El("p", Text("No exception is taken to any line."))), bidSignature(list))
}

// purchaserSpecification is the unit as a specification that a purchaser can put out to
// bid.
func purchaserSpecification(p *Page) Part {
	t := page.Table{Caption: "Requirements", Class: "tight form filled-in",
		Heads: []string{"No.", "Requirement", "Comply (Y/N)", "Exception"}}
	for _, c := range bid.Specification(p.Q, p.System()) {
		text := Text(c.Text)
		if c.Head {
			text = page.Bold(c.Text)
		}
		t.Rows = append(t.Rows, []Part{Text(c.No), text, nil, nil})
	}
	return Many(El("h1", Text("Specification for "+bid.Kind(p.Q))),
		El("p", Text("Written from one unit, in words that name no maker. Each limit is what that unit reaches, "+
			"where that is computed the poor end of its likely range, and rounded so that the unit keeps it: “not "+
			"less than” down, “not more than” up. As they stand, the limits may shut out every other unit. Before "+
			"you ask for bids, set each to what your service needs.")), t.Draw())
}

// noList is there while nothing is answered.
func noList(p *Page) Part {
	if n := len(p.Q.Draft.Requirements); n > 0 {
		return page.Reading(p.ListRead, n)
	}
	return El("p", Text("No requirement list was entered. "),
		El("span", Class("screen"), Text("Paste the purchaser's list in Needs.")))
}

// bidHead says whose list it is, for which unit, and counts the answers.
func bidHead(p *Page, title string, list []bid.Answer) Part {
	d := p.Q.Draft
	open := bid.Open(list)
	unnumbered := ""
	if slices.ContainsFunc(list, func(a bid.Answer) bool { return !a.Head && a.No == "" }) {
		unnumbered = " A number in brackets is a line's place in the list, where the purchaser gave it none."
	}
	return Many(El("h1", Text(title)),
		If(open > 0, El("p", page.Mark(config.Warn),
			El("b", Text(" Draft, not to be sent: "+page.Count(open, "line is", "lines are")+
				" not answered yet.")), Text(" Open: "+strings.Join(bid.OpenNumbers(list), ", ")+"."))),
		El("p", Text("Purchaser: "+cmp.Or(letters.Isolate(d.Buyer.Name), "not named yet")+" · Bidder: "+
			cmp.Or(letters.Isolate(d.Seller.Name), "not named yet")+
			" · Unit: "+cmp.Or(letters.Isolate(d.Title), p.Q.Chassis.Label+", "+p.Q.Body.Label))),
		El("p", El("b", Text(page.Count(bid.Lines(list), "line", "lines")+": "+bid.Tally(list)+"."))),
		El("p", Class("how"),
			Text("Figures are computed for the unit as quoted, at full load. Delivery is the safe date (90 %), "+
				"counted from an order on "+d.Unit.OrderOn.Long()+"."+unnumbered)))
}

// bidSignature is there when every line is answered.
func bidSignature(list []bid.Answer) Part {
	if n := bid.Open(list); n > 0 {
		return El("p", Class("how"), Text("The place for the signature appears when "+strconv.Itoa(n)+" more "+
			page.Either(n == 1, "line is", "lines are")+" answered."))
	}
	return El("div", Class("sign"), El("div", Text("For the bidder: name and title")),
		El("div", Text("Signature and date")))
}
