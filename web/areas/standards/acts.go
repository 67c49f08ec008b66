package standards

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// fields are set by the id of their input.
var fields = map[string]session.Setter{
	"unit.occupant_lb": session.Mass(func(d *quote.Draft) *quantity.Mass { return &d.Unit.OccupantLb }),
	"unit.patient_lb":  session.Mass(func(d *quote.Draft) *quantity.Mass { return &d.Unit.PatientLb }),
	"unit.payload_lb":  session.Mass(func(d *quote.Draft) *quantity.Mass { return &d.Unit.PayloadLb }),
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"own":  ownField,
	"rule": ruleField,
}

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

// ruleField is the box of a rule set.
func ruleField(id string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		setRule(s, id, a.On)
		return nil
	}
}

// setRule chooses a base rule set, or puts an add-on beside it or takes it away.
func setRule(s *session.Session, id string, on bool) {
	set, known := standards.Find(id)
	if !known {
		s.Fault("There is no rule set %q.", id)
		return
	}
	chosen, _ := standards.Split(s.Draft.Unit.RuleSet)
	var ids []string
	for _, c := range chosen {
		if c.ID != id && (c.AddOn || set.AddOn) {
			ids = append(ids, c.ID)
		}
	}
	if on {
		ids = append(ids, id)
	}
	s.Draft.Unit.RuleSet = standards.Join(ids...)
}
