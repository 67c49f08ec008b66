package app

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing/quote"
	"boxwright/web/areas/needs"
)

// rules judge the unit in work: for a remount, with the measured module.
func (s *session) rules() *rules.Engine { return s.app.edition.For(&s.draft.Unit).Rules }

// startRemount begins the remount of an existing module, keeping the parties
// and what was measured before.
func startRemount(s *session, a Act) {
	old := s.draft
	d, ok := quote.BeginRemount(s.app.edition, a.ID, &old.Unit, s.req.Today)
	if !ok {
		s.fault("This catalogue offers no body that stands for an existing module.")
		return
	}
	d.Seller, d.Buyer = old.Seller, old.Buyer
	d.Tickets, d.Wiring = old.Tickets, old.Wiring
	s.draft = d
	s.weighed(&old.Unit)
	s.notice = "A remount was begun: enter what was measured. Undo brings the earlier unit back."
}

// remountYears sets the remount beside a new unit in the Price area.
func remountYears(s *session, _ Act) {
	service, err := quote.AgainstNew(s.app.edition, s.draft)
	if err != nil {
		s.fault("%s", sentence(err))
		return
	}
	s.draft.Terms.Service = service
	goArea(s, Act{ID: "price"})
	s.notice = "This remount stands beside a new unit under Years of service. Set years, upkeep and worth at the end."
}

// existingField reads what was measured of an existing module; empty is "not
// measured".
func existingField(name string) setter {
	return func(s *session, a Act) error {
		u := &s.draft.Unit
		if u.Existing == nil {
			u.Existing = &config.Existing{}
		}
		before := *u.Existing
		if err := s.measure(u.Existing, name, a); err != nil {
			*u.Existing = before
			return err
		}
		if ps := s.app.edition.Cat.CheckUnit(u); len(ps) > 0 {
			*u.Existing = before
			return ps
		}
		s.refill() // another length may need another choice
		return nil
	}
}

func (s *session) measure(e *config.Existing, name string, a Act) error {
	if to := map[string]*string{"maker": &e.Maker, "weighed": &e.Weighed, "notes": &e.Notes}[name]; to != nil {
		*to = a.Value
		return nil
	}
	if name == "estimated" {
		e.Estimated = a.On
		return nil
	}
	least, most := config.ExistingRange(name)
	if to := map[string]*int{"built": &e.Built, "warranty_years": &e.WarrantyYears}[name]; to != nil {
		typed := strings.TrimSpace(a.Value)
		if typed == "" {
			*to = 0
			return nil
		}
		v, err := strconv.Atoi(typed)
		if err != nil || float64(v) < least || float64(v) > most {
			return fmt.Errorf("a whole number from %v to %v", least, most)
		}
		*to = v
		return nil
	}
	if to := map[string]*quantity.Mass{"mass_lb": &e.MassLb, "tol_lb": &e.TolLb}[name]; to != nil {
		v, err := s.between(a.Value, quantity.Pound, least, most)
		*to = quantity.Mass(v)
		return err
	}
	to := map[string]*quantity.Length{"length_in": &e.LengthIn, "width_in": &e.WidthIn, "height_in": &e.HeightIn, "headroom_in": &e.HeadroomIn, "aisle_in": &e.AisleIn, "x_in": &e.XIn, "y_in": &e.YIn, "z_in": &e.ZIn}[name]
	if to == nil {
		return fmt.Errorf("there is no field %q", name)
	}
	v, err := s.between(a.Value, quantity.Inch, least, most)
	*to = quantity.Length(v)
	return err
}

// mountings looks at the module on every chassis, while that is shown.
func (s *session) mountings(p *needs.Page, w *worked) {
	if s.view.Mountings && p.Q.Remount() {
		name := fmt.Sprint("mountings ", s.view.Metric)
		p.Mountings, _ = s.later(w, name, func() any {
			return quote.Mountings(s.app.edition, w.quote.Draft, quantity.System(s.view.Metric))
		}).([]quote.Mounting)
	}
}

// restart fits what is standard when a unit turns from a new module to an
// existing one or back; deliberate picks stay.
func (s *session) restart(before *config.Unit) {
	u := &s.draft.Unit
	was, _ := s.app.edition.Cat.Measured(before)
	if is, _ := s.app.edition.Cat.Measured(u); is != was {
		u.Picks = slices.DeleteFunc(u.Picks, func(p config.Pick) bool { return p.Filled })
		*u, _ = s.rules().Start(u, s.limits())
	}
}
