package needs

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config/csv"
	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/bid/terms"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	"boxwright/web/session"
	"boxwright/web/told"
)

// ---- the purchaser's requirement list ----

// readList is the button beside the field of the list, or a file.
func readList(s *session.Session, a session.Act) {
	switch empty := strings.TrimSpace(a.Value) == ""; {
	case empty && len(s.Draft.Requirements) > 0: // leaving the field had it read
		s.Notice = "The list is read, and its answers stand below. To take another, paste that into the field."
		s.Step(session.Step{Do: "reveal", ID: "requirements"})
		return
	case empty:
		s.Fault("There is nothing to read yet: paste the list into the field first.")
		return
	}
	a.ID = "list"
	s.Set(a, pasteList)
}

// pasteList takes a list that was pasted, or a file, and leads to its answers.
func pasteList(s *session.Session, a session.Act) error {
	if strings.TrimSpace(a.Value) == "" {
		return nil
	}
	list, said, err := bid.ReadRequirements(a.Value)
	if err != nil {
		return err
	}
	corrected, standing := bid.ReadBook(s.Req.Bids).Apply(s.Memory.Edition, list, s.Draft.Buyer.Name)
	before := s.Draft.Requirements
	s.Draft.Requirements = list
	if ps := s.Draft.Check(); len(ps) > 0 {
		s.Draft.Requirements = before
		return ps
	}
	s.View.List = session.ListView{}
	s.Notice = "Read: " + said + "."
	s.Step(session.Step{Do: "reveal", ID: "requirements"})
	if corrected > 0 {
		s.Notice += " Answered as before for this purchaser: " + strconv.Itoa(corrected) + "."
	}
	if standing > 0 {
		s.Notice += " From your standing answers: " + strconv.Itoa(standing) + "."
	}
	return nil
}

func requirementField(name string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		at, what, _ := strings.Cut(name, ".")
		i, err := strconv.Atoi(at)
		if err != nil || i < 0 || i >= len(s.Draft.Requirements) {
			return errors.New("there is no such line")
		}
		before := s.Draft.Requirements
		s.Draft.Requirements = slices.Clone(before)
		r := &s.Draft.Requirements[i]
		switch what {
		case "pick":
			r.Pick, r.Meant = a.Value, ""
		case "meant", "leave":
			r.Pick, r.Meant = "", strings.TrimSpace(a.Value)
			if what == "leave" { // the button goes; what it put there can be read and changed
				s.Step(session.Step{Do: "focus", ID: "f-req." + at + ".meant"})
			}
		case "verdict":
			r.Verdict = quote.Outcome(a.Value)
		case "answer":
			r.Answer = a.Value
		case "head":
			r.Head = false
		}
		if ps := s.Draft.Check(); len(ps) > 0 {
			s.Draft.Requirements = before
			return ps
		}
		book := bid.ReadBook(s.Req.Bids)
		book.Learn(s.Draft.Buyer.Name, *r, what == "head")
		s.Step(session.Step{Do: "keep-bids", Text: book.Text()})
		if w, err := s.Work(); err == nil && what != "head" {
			s.Spoken = answered(w.Quote, &w.Judged(s)[i], what == "pick" || what == "meant" || what == "leave")
		}
		return nil
	}
}

// answered is what became of a line that was corrected, in words.
func answered(q *quote.Quote, a *bid.Answer, reread bool) string {
	said := "Line " + a.NoOf()
	if read := strings.Join(a.Read, "; "); reread && read != "" {
		said += ", read as " + read
	}
	said += ": " + a.Outcome.Words()
	for _, t := range a.Takes {
		said += ", " + q.Edition.Cat.LabelOf(t.ID)
	}
	return said + "."
}

// standAnswer makes the own answer to a line the standing one to its term, and answers
// the other lines of that term with it that have none.
func standAnswer(s *session.Session, a session.Act) {
	_, list := answers(s)
	i, err := strconv.Atoi(a.ID)
	if err != nil || i < 0 || i >= len(list) || list[i].Term == "" {
		return
	}
	r := s.Draft.Requirements[i]
	book := bid.ReadBook(s.Req.Bids)
	if err := book.Stand(list[i].Term, bid.Own{Verdict: r.Verdict, Answer: r.Answer}); err != nil {
		s.Fault("%s", session.Sentence(err))
		return
	}
	if s.View.Standing != nil {
		s.View.Standing = book.Standing
	}
	s.Step(session.Step{Do: "keep-bids", Text: book.Text()})
	s.Draft.Requirements = slices.Clone(s.Draft.Requirements)
	n := 0
	for k := range list {
		other := &s.Draft.Requirements[k]
		if list[k].Term == list[i].Term && list[k].Sure && other.Verdict == "" && r.Verdict != "" {
			other.Verdict, other.Answer = r.Verdict, r.Answer
			n++
		}
	}
	s.Notice = "Kept on this device as the standing answer to: " + terms.Name(list[i].Term) + "."
	if n > 0 {
		s.Notice += fmt.Sprintf(" It answers %d more of the lines.", n)
	}
}

// answers computes the draft and goes through the list.
func answers(s *session.Session) (*quote.Quote, []bid.Answer) {
	w, err := s.Work()
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return nil, nil
	}
	return w.Quote, w.AnsweredNow(s)
}

// takeAnswers puts in what would meet a line, or all lines.
func takeAnswers(s *session.Session, a session.Act) {
	q, list := answers(s)
	if i, err := strconv.Atoi(a.ID); err == nil && i >= 0 && i < len(list) {
		list = list[i : i+1]
	}
	if q == nil {
		return
	}
	taken := bid.TakeAnswers(q, list)
	s.Draft.Unit = taken.Unit
	s.View.List.Taking = false
	s.Pressed, s.For = told.Answers, map[string]string{}
	for _, l := range list {
		for _, t := range l.Takes {
			if l.Outcome == quote.MeetsWith && s.For[t.ID] == "" {
				s.For[t.ID] = l.NoOf()
			}
		}
	}
	// The last of these that is there: of one line, its row.
	for _, id := range []string{"requirements", "told", "stands-req." + a.ID} {
		s.Step(session.Step{Do: "focus", ID: id})
	}
	s.Notice = fmt.Sprintf("Added for %d of the lines.", taken.Lines)
	if n := len(taken.Refused); n > 0 {
		s.Notice += fmt.Sprintf(" For %d it does not go with the rest.", n)
	}
}

func saveAnswers(s *session.Session, _ session.Act) {
	if q, list := answers(s); q != nil && closed(s, list) {
		s.Save("requirements", bid.FormRows(q, list, quantity.System(s.View.Metric)))
	}
}

// closed reports whether every line is answered; otherwise it says how many are not.
func closed(s *session.Session, list []bid.Answer) bool {
	n := bid.Open(list)
	if n > 0 {
		s.Fault("The list cannot go out: %d of its lines are not answered yet. Show them with the button above "+
			"the list.", n)
	}
	return n == 0
}

// fillSheet puts the answers into the purchaser's own spreadsheet, which comes as
// rows. A table of text is saved; of another file the page fills the cells.
func fillSheet(s *session.Session, a session.Act) {
	q, list := answers(s)
	if q == nil || !closed(s, list) {
		return
	}
	rows, err := csv.Read(a.Value)
	if err != nil {
		s.Fault("%s cannot be read: %s.", a.ID, err)
		return
	}
	cells, found, err := bid.Fill(rows, q, list, quantity.System(s.View.Metric))
	if err != nil {
		s.Fault("%s.", page.Capital(err.Error()))
		return
	}
	if missing := bid.Lines(list) - found; missing > 0 {
		s.Fault("%d of the lines do not stand in %s; they are not in the file that was saved.", missing, a.ID)
	}
	if strings.HasSuffix(strings.ToLower(a.ID), ".xlsx") {
		s.Step(session.Step{Do: "fill-sheet", Name: a.ID, Text: session.JSON(cells)})
		return
	}
	for _, c := range cells {
		for len(rows[c.Row]) <= c.Col {
			rows[c.Row] = append(rows[c.Row], "")
		}
		rows[c.Row][c.Col] = c.Text
	}
	s.Save("answered", rows)
}

// showList chooses which lines are shown.
func showList(s *session.Session, a session.Act) {
	s.View.List.Show, s.View.List.From = a.ID, 0
}

// turnList goes to another part of a long list.
func turnList(s *session.Session, a session.Act) {
	if n, err := strconv.Atoi(a.ID); err == nil && n >= 0 && n < quote.MaxRequirements {
		s.View.List.From = n
	}
}
