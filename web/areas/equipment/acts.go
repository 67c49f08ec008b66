package equipment

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/web/session"
)

// stow moves a line of equipment, named "thing" or "thing/compartment", to the
// compartment in Value.
func stow(s *session.Session, a session.Act) {
	id, from, _ := strings.Cut(a.ID, "/")
	list := slices.Clone(s.Draft.Unit.Carried)
	for i := range list {
		if c := &list[i]; c.Equipment == id && c.Compartment == from {
			c.Compartment = a.Value
		}
	}
	s.Stowed(list)
}

// takeOut takes one thing out of a compartment, or everything out of all.
func takeOut(s *session.Session, a session.Act) {
	id, from, one := strings.Cut(a.ID, "/")
	list := slices.Clone(s.Draft.Unit.Carried)
	for i := range list {
		if c := &list[i]; !one {
			c.Compartment = ""
		} else if c.Equipment == id && c.Compartment == from {
			c.Qty--
			list = append(list, config.Carried{Equipment: id, Qty: 1})
		}
	}
	s.Stowed(list)
}

// suggest stows what is not yet stowed by the catalogue's rules and for balance.
func suggest(s *session.Session, _ session.Act) {
	stowed, left := s.Stow()
	if stowed+left == 0 {
		s.Notice = "Everything aboard is stowed already."
		return
	}
	s.Notice = fmt.Sprintf("Stowed %d of %d things by the catalogue's rules and for balance; what was stowed by hand "+
		"stayed.", stowed, stowed+left) + session.Unplaced(left)
}

// carry sets how many of a thing are aboard. More of it waits to be stowed;
// fewer takes away first what is not stowed.
func carry(s *session.Session, a session.Act) {
	if s.Memory.Edition.Cat.EquipmentOf(&s.Draft.Unit, a.ID) == nil {
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

// carryUsual counts and stows the usual equipment of a duty in place of what was listed.
func carryUsual(s *session.Session, a session.Act) {
	d := s.Memory.Edition.Cat.DutyByID(a.ID)
	if d == nil {
		s.Fault("There is no duty %q in this edition.", a.ID)
		return
	}
	var list []config.Carried
	for _, c := range s.Draft.Unit.Carried { // the purchaser's own stay
		if s.Memory.Edition.Cat.EquipmentByID(c.Equipment) == nil {
			list = append(list, c)
		}
	}
	s.Stowed(append(list, s.Memory.Edition.Cat.UsualLoads(d, &s.Draft.Unit)...))
	_, left := s.Stow()
	s.Notice = "The usual equipment for " + strings.ToLower(d.Label) + " is counted and stowed; where each thing " +
		"rides stands below." + session.Unplaced(left)
}
