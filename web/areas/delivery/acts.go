package delivery

import (
	"fmt"
	"strconv"
	"strings"

	"boxwright/web/session"
)

// setChance is the chance, in a hundred, at which a delivery date is asked for.
func setChance(s *session.Session, a session.Act) error {
	c, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(a.Value), "%")))
	if err != nil || c < 1 || c > 99 {
		return fmt.Errorf("a whole number from 1 to 99")
	}
	s.View.Chance = c
	return nil
}
