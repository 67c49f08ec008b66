package start

import (
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// startRemount begins the remount of an existing module, keeping the parties
// and what was measured before.
func startRemount(s *session.Session, a session.Act) {
	old := s.Draft
	d, ok := quote.BeginRemount(s.Memory.Edition, a.ID, old, s.Req.Today)
	if !ok {
		s.Fault("This catalogue offers no body that stands for an existing module.")
		return
	}
	d.Seller, d.Buyer = old.Seller, old.Buyer
	d.Title, d.Number = old.Title, old.Number
	d.Terms.KeepBuyer(&old.Terms)
	keepOrder(d, old)
	d.Tickets, d.Wiring, d.Requirements = old.Tickets, old.Wiring, old.Requirements
	s.Draft = d
	s.Weighed(&old.Unit)
	if s.Refuse(old) {
		return
	}
	s.Notice = "A remount was begun: enter what was measured. Undo brings the earlier unit back."
}

// remountYears sets the remount beside a new unit in the Price area.
func remountYears(s *session.Session, _ session.Act) {
	service, err := quote.AgainstNew(s.Memory.Edition, s.Draft)
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return
	}
	s.Draft.Terms.Service = service
	s.GoTo("price")
	s.Notice = "This remount stands beside a new unit under Years of service. Set years, upkeep and worth at the end."
}

// existingField reads what was measured of an existing module; empty is "not
// measured".
func existingField(name string) session.Setter {
	return func(s *session.Session, a session.Act) error {
		u, before, after := &s.Draft.Unit, s.Draft.Unit.Existing, config.Existing{}
		if before != nil {
			after = *before
		}
		if err := measure(s, &after, name, a); err != nil {
			return err
		}
		u.Existing = &after
		if ps := s.Memory.Edition.Cat.CheckUnit(u); len(ps) > 0 {
			u.Existing = before
			return ps
		}
		s.Refill() // another length may need another choice
		return nil
	}
}

func measure(s *session.Session, e *config.Existing, name string, a session.Act) error {
	if to := map[string]*string{"maker": &e.Maker, "weighed": &e.Weighed, "notes": &e.Notes}[name]; to != nil {
		*to = a.Value
		return nil
	}
	if name == "estimated" {
		e.Estimated = a.On
		return nil
	}
	least, most := config.ExistingRange(name)
	if name == "built" || name == "warranty_years" {
		typed := strings.TrimSuffix(strings.TrimSpace(a.Value), " years")
		v, err := session.CountOf(typed, int(least), int(most))
		switch {
		case err != nil:
		case name == "built":
			e.Built = v
		case typed == "":
			e.WarrantyYears = nil
		default:
			e.WarrantyYears = &v
		}
		return err
	}
	if to := map[string]*quantity.Mass{"mass_lb": &e.MassLb, "tol_lb": &e.TolLb}[name]; to != nil {
		v, err := s.Between(a.Value, quantity.Pound, least, most)
		*to = quantity.Mass(v)
		return err
	}
	to := map[string]*quantity.Length{"length_in": &e.LengthIn, "width_in": &e.WidthIn, "height_in": &e.HeightIn,
		"headroom_in": &e.HeadroomIn, "aisle_in": &e.AisleIn, "x_in": &e.XIn, "y_in": &e.YIn, "z_in": &e.ZIn}[name]
	if to == nil {
		return fmt.Errorf("there is no field %q", name)
	}
	v, err := s.Between(a.Value, quantity.Inch, least, most)
	*to = quantity.Length(v)
	return err
}

// loadMountings looks at the module on every chassis, while that is shown.
func loadMountings(s *session.Session, p *Page, w *session.Worked) {
	if s.View.Mountings && p.Q.Remount() {
		in := quantity.System(s.View.Metric)
		p.Mountings, p.MountingsKnown = w.Mountings.For(s, fmt.Sprint(in), func() []quote.Mounting {
			return quote.Mountings(s.Memory.Edition, w.Quote.Draft, in)
		})
	}
}
