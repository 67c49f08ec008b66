package session

import (
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
)

// Factors are the fields of an area's assumed numbers: one for each code that begins
// with the area. Empty takes the plant's value again.
func Factors(area string) SetterByName {
	return func(name string) Setter {
		f := config.FactorByCode(area + "." + name)
		if f == nil {
			return nil
		}
		return func(s *Session, a Act) error {
			if strings.TrimSpace(a.Value) == "" {
				s.Draft.Unit.SetFactor(f.Code, nil)
				return nil
			}
			v, err := quantity.System(s.View.Metric).Between(a.Value, f.Unit, f.Least, f.Most)
			if err == nil {
				s.Draft.Unit.SetFactor(f.Code, &v)
			}
			return err
		}
	}
}
