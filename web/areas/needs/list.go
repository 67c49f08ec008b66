package needs

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// ---- the buyer's requirement list ----

// pasteList reads a list that was pasted, or a file.
func pasteList(s *session.Session, a session.Act) error {
	if strings.TrimSpace(a.Value) == "" {
		return nil
	}
	list, err := bid.ReadRequirements(a.Value)
	if err != nil {
		return err
	}
	s.Draft.Requirements = list
	s.Notice = strconv.Itoa(len(list)) + " lines are read. Check how each was understood."
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
			r.Pick = a.Value
		case "verdict":
			r.Verdict = quote.Outcome(a.Value)
		case "answer":
			r.Answer = a.Value
		}
		if ps := s.Draft.Check(); len(ps) > 0 {
			s.Draft.Requirements = before
			return ps
		}
		return nil
	}
}

// Answers computes the draft and goes through the list.
func Answers(s *session.Session) (*quote.Quote, []bid.Answer) {
	q, err := s.Compute()
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return nil, nil
	}
	return q, bid.Answers(q, quantity.System(s.View.Metric))
}

// takeAnswers takes the picks that would meet a line, or all lines.
func takeAnswers(s *session.Session, a session.Act) {
	q, list := Answers(s)
	if i, err := strconv.Atoi(a.ID); err == nil && i >= 0 && i < len(list) {
		list = list[i : i+1]
	}
	if q == nil {
		return
	}
	u, taken, refused := bid.TakeAnswers(q, list)
	s.Draft.Unit = u
	s.Notice = fmt.Sprintf("Taken for %d of the lines.", taken)
	if refused > 0 {
		s.Notice += fmt.Sprintf(" For %d it no longer goes with the other choices.", refused)
	}
}

// confirmAnswers says of every line that was understood that it was understood
// rightly.
func confirmAnswers(s *session.Session, _ session.Act) {
	_, list := Answers(s)
	s.Draft.Requirements = slices.Clone(s.Draft.Requirements)
	for i, a := range list {
		if !a.Sure && a.Outcome != quote.ByHand {
			s.Draft.Requirements[i].Pick = a.Matches[0]
		}
	}
}

func saveAnswers(s *session.Session, _ session.Act) {
	if q, list := Answers(s); q != nil {
		s.Save("requirements", bid.AnswerRows(q, list))
	}
}
