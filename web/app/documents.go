package app

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/csv"
	"boxwright/config/quantity"
	"boxwright/pricing/bid"
	"boxwright/pricing/money"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/areas/compare"
	"boxwright/web/areas/needs"
	papers "boxwright/web/areas/quote"
)

// ---- needs and proposals ----

func needField(name string) setter {
	return func(s *session, a Act) error {
		before := s.draft.Needs
		n := &s.draft.Needs
		texts := map[string]*string{"duty": &n.Duty, "roads": &n.Roads, "climate": &n.Climate, "type": &n.Type, "fuel": &n.Fuel}
		counts := map[string]*int{"crew": &n.Crew, "patients": &n.Patients}
		if to := texts[name]; to != nil {
			*to = a.Value
		} else if to := counts[name]; to != nil {
			v, err := s.between(a.Value, quantity.Count, 0, 20)
			if err != nil {
				return err
			}
			*to = int(v)
		} else {
			return fmt.Errorf("there is no field %q", name)
		}
		if ps := s.draft.Check(); len(ps) > 0 {
			s.draft.Needs = before
			return ps
		}
		return nil
	}
}

// wish makes an option one the unit must have, would have, or neither.
func wish(s *session, a Act) {
	if s.app.edition.Cat.OptionByID(a.ID) == nil {
		s.fault("There is no option %q in this edition.", a.ID)
		return
	}
	n := &s.draft.Needs
	is := func(id string) bool { return id == a.ID }
	n.Must, n.Like = slices.DeleteFunc(slices.Clone(n.Must), is), slices.DeleteFunc(slices.Clone(n.Like), is)
	switch a.Value {
	case "must":
		n.Must = append(n.Must, a.ID)
	case "like":
		n.Like = append(n.Like, a.ID)
	}
	if ps := s.draft.Check(); len(ps) > 0 {
		s.fault("%s", sentence(ps))
		n.Must, n.Like = slices.DeleteFunc(n.Must, is), slices.DeleteFunc(n.Like, is)
	}
}

// needsKey names what proposals depend on.
func (s *session) needsKey() string { return hashed(propose.Basis(s.draft, s.app.edition.Cat).Bytes()) }

// proposed answers the needs, once for as long as they stay.
func (s *session) proposed() *propose.Search {
	key := s.needsKey()
	if s.app.proposed.key != key {
		s.app.proposed.key, s.app.proposed.search = key, propose.Propose(s.app.edition, s.draft)
	}
	return &s.app.proposed.search
}

func findProposals(s *session, _ Act) {
	s.view.Proposed = s.needsKey()
	s.step(Step{Do: "focus", ID: "proposals"})
}

func takeProposal(s *session, a Act) {
	for _, p := range s.proposed().Proposals {
		if string(p.Goal) == a.ID {
			aside := s.pinDraft()
			said := s.draft.Unit.Details
			s.draft.Unit = p.Unit.Clone()
			s.draft.Unit.Details = said
			s.notice = p.Title + " is in work."
			if aside {
				s.notice += " The unit worked on before is set aside in Compare."
			}
			return
		}
	}
	s.fault("That proposal is no longer there: ask again.")
}

// proposals shows those that answer the needs as they are now.
func (s *session) proposals(p *needs.Page) {
	if s.view.Proposed == "" || s.view.Proposed != s.needsKey() {
		return
	}
	if s.app.proposed.key != s.view.Proposed && !s.settling() {
		p.Proposing, s.soon = true, true
		return
	}
	p.Search = s.proposed()
}

// ---- the buyer's requirement list ----

// pasteList reads a list that was pasted, or a file.
func pasteList(s *session, a Act) error {
	if strings.TrimSpace(a.Value) == "" {
		return nil
	}
	list, err := bid.ReadRequirements(a.Value)
	if err != nil {
		return err
	}
	s.draft.Requirements = list
	s.notice = strconv.Itoa(len(list)) + " lines are read. Check how each was understood."
	return nil
}

func requirementField(name string) setter {
	return func(s *session, a Act) error {
		at, what, _ := strings.Cut(name, ".")
		i, err := strconv.Atoi(at)
		if err != nil || i < 0 || i >= len(s.draft.Requirements) {
			return errors.New("there is no such line")
		}
		before := s.draft.Requirements
		s.draft.Requirements = slices.Clone(before)
		r := &s.draft.Requirements[i]
		switch what {
		case "pick":
			r.Pick = a.Value
		case "verdict":
			r.Verdict = quote.Outcome(a.Value)
		case "answer":
			r.Answer = a.Value
		}
		if ps := s.draft.Check(); len(ps) > 0 {
			s.draft.Requirements = before
			return ps
		}
		return nil
	}
}

// answers computes the draft and goes through the list.
func (s *session) answers() (*quote.Quote, []bid.Answer) {
	q, err := s.compute()
	if err != nil {
		s.fault("%s", sentence(err))
		return nil, nil
	}
	return q, bid.Answers(q, quantity.System(s.view.Metric))
}

// takeAnswers takes the picks that would meet a line, or all lines.
func takeAnswers(s *session, a Act) {
	q, list := s.answers()
	if i, err := strconv.Atoi(a.ID); err == nil && i >= 0 && i < len(list) {
		list = list[i : i+1]
	}
	if q == nil {
		return
	}
	u, taken, refused := bid.TakeAnswers(q, list)
	s.draft.Unit = u
	s.notice = fmt.Sprintf("Taken for %d of the lines.", taken)
	if refused > 0 {
		s.notice += fmt.Sprintf(" For %d it no longer goes with the other choices.", refused)
	}
}

// confirmAnswers says of every line that was understood that it was understood
// rightly.
func confirmAnswers(s *session, _ Act) {
	_, list := s.answers()
	s.draft.Requirements = slices.Clone(s.draft.Requirements)
	for i, a := range list {
		if !a.Sure && a.Outcome != quote.ByHand {
			s.draft.Requirements[i].Pick = a.Matches[0]
		}
	}
}

func (s *session) save(suffix string, rows [][]string) {
	name := s.draft.Number
	if name == "" {
		name = "quote"
	}
	s.step(Step{Do: "save", Name: fileName(name) + "-" + suffix + ".csv", Type: "text/csv", Text: "\ufeff" + csv.Write(rows)})
}

func saveAnswers(s *session, _ Act) {
	if q, list := s.answers(); q != nil {
		s.save("requirements", bid.AnswerRows(q, list))
	}
}

func saveTable(s *session, _ Act) {
	if q, _ := s.answers(); q != nil {
		s.save("everything", q.Everything())
	}
}

// ---- which document is shown ----

func setPaper(s *session, a Act) {
	s.view.Paper = papers.PaperOf(a.Value + a.ID)
	s.view.Area = "quote"
}

// reading is a value typed into the test sheet.
func reading(check string) setter {
	return func(s *session, a Act) error {
		q, err := s.compute()
		if err != nil {
			return err
		}
		list := q.Checks()
		i := slices.IndexFunc(list, func(c quote.Check) bool { return c.ID == check })
		if i < 0 {
			return errors.New("the unit has no such check")
		}
		if strings.TrimSpace(a.Value) == "" {
			s.draft.Read(check, nil)
			return nil
		}
		v, err := quantity.System(s.view.Metric).Parse(a.Value, list[i].Unit)
		if err == nil && !(v >= -1e6 && v <= 1e6) {
			err = errors.New("a number up to a million")
		}
		if err == nil {
			s.draft.Read(check, &v)
		}
		return err
	}
}

// ---- rival bids ----

func addRival(s *session, _ Act) {
	if len(s.view.Rivals) < compare.MaxRivals {
		s.view.Rivals = append(slices.Clone(s.view.Rivals), quote.Rival{Name: "Another bid"})
	}
}

func dropRival(s *session, a Act) {
	if i, err := strconv.Atoi(a.ID); err == nil && i >= 0 && i < len(s.view.Rivals) {
		s.view.Rivals = slices.Delete(slices.Clone(s.view.Rivals), i, i+1)
	}
}

func rivalField(name string) setter {
	return func(s *session, a Act) error {
		at, what, _ := strings.Cut(name, ".")
		i, err := strconv.Atoi(at)
		if err != nil || i < 0 || i >= len(s.view.Rivals) {
			return errors.New("there is no such bid")
		}
		r := s.view.Rivals[i]
		typed := clip(strings.TrimSpace(a.Value), 400)
		switch what {
		case "name":
			r.Name = typed
		case "warranty":
			r.Warranty = typed
		case "notes":
			r.Notes = typed
		case "price":
			r.Price = money.Cents(0)
			if typed != "" {
				r.Price, err = money.ParseAmount(strings.ReplaceAll(typed, ",", ""))
			}
		case "date":
			r.Date, err = config.ReadDate(typed)
		case "payload":
			var v float64
			v, err = s.between(typed, quantity.Pound, 0, 100000)
			r.PayloadLb = quantity.Mass(v)
		}
		if err == nil {
			s.view.Rivals[i] = r
		}
		return err
	}
}
