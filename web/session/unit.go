package session

import (
	"cmp"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/quote"
)

// Tell notes what completing the unit changed, and why; see TellFrom.
func (s *Session) Tell(changes []rules.Change) { s.Changes = append(s.Changes, changes...) }

// Limits of the draft as it is.
func (s *Session) Limits() *rules.Limits { return quote.Limits(s.Memory.Edition, s.Draft) }

// Weighed keeps tickets true when the unit they weighed is no longer the one
// being quoted.
func (s *Session) Weighed(was *config.Unit) {
	s.Draft.Tickets = quote.Weighed(s.Draft.Tickets, was, &s.Draft.Unit)
}

// Stowed takes over a list of what rides where, like lines as one.
func (s *Session) Stowed(list []config.Carried) {
	slices.SortStableFunc(list, func(a, b config.Carried) int {
		return cmp.Or(cmp.Compare(a.Equipment, b.Equipment), cmp.Compare(a.Compartment, b.Compartment))
	})
	var out []config.Carried
	for _, c := range list {
		switch last := len(out) - 1; {
		case c.Qty < 1:
		case last >= 0 && out[last].Equipment == c.Equipment && out[last].Compartment == c.Compartment:
			out[last].Qty += c.Qty
		default:
			out = append(out, c)
		}
	}
	s.Draft.Unit.Carried = out
}

// Rules judge the unit in work: for a remount, with the measured module.
func (s *Session) Rules() *rules.Engine { return s.Memory.Edition.For(&s.Draft.Unit).Rules }

// Begin has a draft to work on or to look at.
func (s *Session) Begin() {
	if s.Draft == nil && s.Other != nil {
		s.Draft, _, _ = quote.Move(s.Memory.Edition, s.Other)
		s.Draft.Issued = ""
	}
	if s.Draft == nil {
		s.Draft = quote.Begin(s.Memory.Edition, "", "", s.Req.Today)
		s.Learn()
	}
}

// Refill completes the unit after a change, with what is standard coming back where
// it can, and notes what changed.
func (s *Session) Refill() {
	full, changes, _ := s.Rules().Restore(&s.Draft.Unit, s.Limits())
	s.Draft.Unit = full // where something cannot stand together the findings say so
	s.Tell(changes)
}

// Breaks lists the musts that another draft's unit kept and this one's does not, as
// they are asked for now.
func (s *Session) Breaks(was *quote.Draft) []string {
	n, ed := &s.Draft.Needs, s.Memory.Edition
	held := n.Held(ed.For(&was.Unit).Cat, &was.Unit)
	if len(held) == 0 {
		return nil
	}
	now := n.Held(ed.For(&s.Draft.Unit).Cat, &s.Draft.Unit)
	return slices.DeleteFunc(held, func(code string) bool { return slices.Contains(now, code) })
}

// Refuse takes back a press that would break a must which the unit of the draft
// before kept, and says so.
func (s *Session) Refuse(was *quote.Draft) bool {
	broken := s.Breaks(was)
	if len(broken) == 0 {
		return false
	}
	s.Draft, s.Notice, s.Changes = was, "", nil
	q, err := s.Compute()
	if err != nil {
		return true
	}
	var names []string
	for _, code := range broken {
		names = append(names, q.LabelOfNeed(code))
	}
	s.Fault("That was not done, since the unit would no longer have what the customer asked for: %s. Where that "+
		"is no must, say so in Needs.", strings.Join(names, "; "))
	return true
}
