package needs

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/standards"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// startNew begins a quote on a chassis, keeping the parties.
func startNew(s *session.Session, a session.Act) {
	old := s.Draft
	s.Draft = quote.Begin(s.Memory.Edition, a.ID, a.Value, s.Req.Today)
	s.Draft.Seller, s.Draft.Buyer, s.Draft.Title, s.Draft.Number = old.Seller, old.Buyer, old.Title, old.Number
	s.Draft.Needs, s.Draft.Requirements = old.Needs, old.Requirements
	s.Draft.Unit.RuleSet, s.Draft.Unit.NeededBy, s.Draft.Unit.Details = old.Unit.RuleSet, old.Unit.NeededBy,
		old.Unit.Details
	s.Draft.Tickets, s.Draft.Wiring = old.Tickets, old.Wiring
	s.Weighed(&old.Unit)
	s.Notice = "A new unit was begun. Undo brings the earlier one back."
	s.Learn()
}

// ---- needs and proposals ----

func needField(name string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		before := s.Draft.Needs
		n := &s.Draft.Needs
		texts := map[string]*string{"duty": &n.Duty, "roads": &n.Roads, "climate": &n.Climate, "type": &n.Type,
			"fuel": &n.Fuel}
		counts := map[string]*int{"crew": &n.Crew, "patients": &n.Patients}
		if to := texts[name]; to != nil {
			*to = a.Value
		} else if to := counts[name]; to != nil {
			v, err := session.CountOf(a.Value, 0, 20)
			if err != nil {
				return err
			}
			*to = v
		} else {
			return fmt.Errorf("there is no field %q", name)
		}
		if ps := s.Draft.Check(); len(ps) > 0 {
			s.Draft.Needs = before
			return ps
		}
		return nil
	}
}

// wish makes an option one the unit must have, would have, or neither.
func wish(s *session.Session, a session.Act) {
	if s.Memory.Edition.Cat.OptionByID(a.ID) == nil {
		s.Fault("There is no option %q in this edition.", a.ID)
		return
	}
	n := &s.Draft.Needs
	is := func(id string) bool { return id == a.ID }
	n.Must, n.Like = slices.DeleteFunc(slices.Clone(n.Must), is), slices.DeleteFunc(slices.Clone(n.Like), is)
	switch a.Value {
	case "must":
		n.Must = append(n.Must, a.ID)
	case "like":
		n.Like = append(n.Like, a.ID)
	}
	if ps := s.Draft.Check(); len(ps) > 0 {
		s.Fault("%s", session.Sentence(ps))
		n.Must, n.Like = slices.DeleteFunc(n.Must, is), slices.DeleteFunc(n.Like, is)
	}
}

// needsKey names what proposals depend on.
func needsKey(s *session.Session) string {
	return session.Hashed(propose.Basis(s.Draft, s.Memory.Edition.Cat).Bytes())
}

// answerNeeds answers the needs as they are.
func answerNeeds(s *session.Session) *propose.Search {
	answer := propose.Propose(s.Memory.Edition, s.Draft)
	return &answer
}

func findProposals(s *session.Session, _ session.Act) {
	s.View.Proposed = needsKey(s)
	s.Step(session.Step{Do: "focus", ID: "proposals"})
}

func takeProposal(s *session.Session, a session.Act) {
	answer := s.Memory.Proposals.Now(needsKey(s), func() *propose.Search { return answerNeeds(s) })
	for _, p := range answer.Proposals {
		if string(p.Goal) == a.ID {
			aside := s.PinDraft()
			said := s.Draft.Unit.Details
			s.Draft.Unit = p.Unit.Clone()
			s.Draft.Unit.Details = said
			s.Notice = p.Title + " is in work."
			if aside {
				s.Notice += " The unit worked on before is set aside in Compare."
			}
			return
		}
	}
	s.Fault("That proposal is no longer there: ask again.")
}

// loadProposals shows those that answer the needs as they are now.
func loadProposals(s *session.Session, p *Page) {
	if s.View.Proposed == "" || s.View.Proposed != needsKey(s) {
		return
	}
	var there bool
	p.Search, there = s.Memory.Proposals.For(s, needsKey(s), func() *propose.Search { return answerNeeds(s) })
	p.Proposing = !there
}

// ---- what rides where ----

// carry sets how many of a thing are aboard. More of it waits to be stowed;
// fewer takes away first what is not stowed.
func carry(s *session.Session, a session.Act) {
	if s.Memory.Edition.Cat.EquipmentByID(a.ID) == nil {
		return
	}
	want, err := session.CountOf(a.Value, 0, 99)
	if err != nil {
		s.Wrong("carry-"+a.ID, a.Value, err.Error())
		return
	}
	s.Right("carry-" + a.ID)
	list := slices.Clone(s.Draft.Unit.Carried)
	for i := range list {
		if c := &list[i]; c.Equipment == a.ID && c.Compartment != "" {
			c.Qty = min(c.Qty, want)
			want -= c.Qty
		} else if c.Equipment == a.ID {
			c.Qty = 0
		}
	}
	s.Stowed(append(list, config.Carried{Equipment: a.ID, Qty: want}))
}

// ruleField is the box of a rule set.
func ruleField(id string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		setRule(s, id, a.On)
		return nil
	}
}

// setRule chooses a base rule set, or puts an add-on beside it or takes it away.
func setRule(s *session.Session, id string, on bool) {
	set, known := standards.Find(id)
	if !known {
		s.Fault("There is no rule set %q.", id)
		return
	}
	chosen, _ := standards.Split(s.Draft.Unit.RuleSet)
	var ids []string
	for _, c := range chosen {
		if c.ID != id && (c.AddOn || set.AddOn) {
			ids = append(ids, c.ID)
		}
	}
	if on {
		ids = append(ids, id)
	}
	s.Draft.Unit.RuleSet = standards.Join(ids...)
}
