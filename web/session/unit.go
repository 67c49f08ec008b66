package session

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/quote"
)

// Tell words what the program changed to keep the unit whole.
func (s *Session) Tell(changes []rules.Change) {
	cat := s.Memory.Edition.Cat
	for i, c := range changes {
		if i == 4 {
			s.Notice += " And " + strconv.Itoa(len(changes)-i) + " more."
			break
		}
		if c.Added {
			s.Notice += " Also added: " + cat.LabelOf(c.Option) + "."
		} else {
			s.Notice += " Gave way: " + cat.LabelOf(c.Option) + "."
		}
	}
	s.Notice = strings.TrimSpace(s.Notice)
}

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

// Refill completes the unit after a change and tells what gave way.
func (s *Session) Refill() {
	full, changes, _ := s.Rules().Fill(&s.Draft.Unit, s.Limits())
	s.Draft.Unit = full // where something cannot stand together the findings say so
	s.Tell(changes)
}
