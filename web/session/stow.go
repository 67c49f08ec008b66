package session

import (
	"fmt"

	"boxwright/config"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
)

// Stow puts what is not yet stowed where the catalogue's rules have it, and so that the
// unit balances. It returns how many things it stowed, and for how many no place was
// proven.
func (s *Session) Stow() (stowed, left int) {
	cat, u := s.Memory.Edition.Cat, &s.Draft.Unit
	assume := standards.Assume(u.RuleSet, cat, u)
	ch := cat.ChassisByID(u.Chassis)
	before := loose(u.Carried)
	s.Stowed(space.Suggest(cat, u, func(v *config.Unit) space.Trim {
		g := weight.Weigh(cat, v, &assume).Gross
		return space.Trim{FrontLb: g.FrontLb, RearLb: g.RearLb, LeftLb: g.LeftLb, RightLb: g.RightLb,
			FrontLimitLb: ch.GAWRFrontLb, RearLimitLb: ch.GAWRRearLb}
	}))
	left = loose(u.Carried)
	return before - left, left
}

// Unplaced says for how many things no place was found; empty for none.
func Unplaced(left int) string {
	if left == 0 {
		return ""
	}
	return fmt.Sprintf(" No place that surely fits was found for the other %d: they are to stow by hand.", left)
}

// loose counts the things that ride nowhere yet.
func loose(list []config.Carried) (n int) {
	for _, c := range list {
		if c.Compartment == "" {
			n += c.Qty
		}
	}
	return n
}
