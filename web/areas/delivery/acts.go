package delivery

import (
	"boxwright/config/quantity"
	"boxwright/web/session"
)

// setChance is the chance, in a hundred, at which a delivery date is asked for.
func setChance(s *session.Session, a session.Act) error {
	c, err := quantity.Whole(a.Value, quantity.Percent, 1, 99)
	if err != nil {
		return err
	}
	s.View.Chance = c
	return nil
}
