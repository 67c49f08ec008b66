package space

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/web/session"
)

// ---- the purchaser's own limits ----

// ownField sets the purchaser's value in place of the rules' limit on a figure;
// empty takes the rules' again.
func ownField(figure string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		if _, known := standards.SenseOf(figure); !known {
			return fmt.Errorf("no rule set limits %q", figure)
		}
		unit := unitOf(figure)
		v, err := s.Between(a.Value, unit, 0, 1e6)
		if err == nil && unit == quantity.Count { // no part of a seat
			_, err = session.CountOf(a.Value, 0, 1e6)
		}
		if err != nil {
			return err
		}
		u := &s.Draft.Unit
		given := strings.TrimSpace(a.Value) != ""
		if figure == "weight.payload" {
			u.PayloadLb = quantity.Mass(min(v, 20000))
			return nil
		}
		u.Own = slices.DeleteFunc(slices.Clone(u.Own), func(o config.OwnLimit) bool { return o.Figure == figure })
		if given {
			u.Own = append(u.Own, config.OwnLimit{Figure: figure, Value: v})
			slices.SortFunc(u.Own, func(a, b config.OwnLimit) int { return cmp.Compare(a.Figure, b.Figure) })
		}
		return nil
	}
}

// unitOf a figure, as the clause tables have it.
func unitOf(figure string) string {
	for _, set := range standards.Sets() {
		for _, c := range set.Clauses {
			if c.Figure == figure && c.Unit != "" {
				return c.Unit
			}
		}
	}
	return ""
}

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
	s.Notice = fmt.Sprintf("Stowed %d of %d things by the catalogue's rules and for balance; what was stowed by hand "+
		"stayed.", stowed, stowed+left) + session.Unplaced(left)
}
