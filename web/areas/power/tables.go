package power

import (
	"errors"

	"boxwright/web/session"
)

// fields are set by the id of their input.
var fields = map[string]session.Setter{"wiring.areas": conductorAreas}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{"assumed-power": session.Factors("power")}

// conductorAreas chooses the table by which the circuits are sized.
func conductorAreas(s *session.Session, a session.Act) error {
	if a.Value != "" && a.Value != "awg" {
		return errors.New("choose one of the area tables")
	}
	s.Draft.Wiring.Areas = a.Value
	s.Spoken = "Circuits are sized by " + areaTable(a.Value) + "."
	return nil
}
