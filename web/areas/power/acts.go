package power

import (
	"errors"

	"boxwright/config/quantity"
	"boxwright/web/session"
)

// ---- wiring ----

func wiringField(name string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		w := s.Draft.Wiring
		v, err := 0.0, error(nil)
		if name != "areas" {
			v, err = s.Between(a.Value, quantity.Percent, 0.5, 20)
		}
		switch name {
		case "areas":
			w.Areas = a.Value
			if w.Areas != "" && w.Areas != "awg" {
				err = errors.New("choose one of the area tables")
			}
		case "drop":
			w.DropPct = v
		case "critical":
			w.CriticalPct = v
		}
		if err == nil {
			s.Draft.Wiring = w
		}
		return err
	}
}
