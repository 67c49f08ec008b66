package weight

import (
	"fmt"
	"slices"
	"strconv"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// ---- scale tickets ----

// entered is the ticket being entered, which lives beside the draft until it is whole.
func entered(s *session.Session) *weight.Ticket {
	if s.View.Ticket == nil {
		s.View.Ticket = &weight.Ticket{What: weight.TicketUnit}
	}
	return s.View.Ticket
}

func ticketField(name string) session.Setter {
	return func(s *session.Session, a session.Act) (err error) {
		t := entered(s)
		readings := map[string]*quantity.Mass{
			"total": &t.TotalLb, "front": &t.FrontLb, "rear": &t.RearLb, "tol": &t.TolLb,
			"lf": &t.WheelsLb[0], "rf": &t.WheelsLb[1], "lr": &t.WheelsLb[2], "rr": &t.WheelsLb[3],
		}
		switch name {
		case "what":
			t.What = a.Value
		case "condition":
			t.Condition = a.Value
		case "number":
			t.Number = session.Clip(a.Value, 60)
		case "date":
			t.Date, err = config.ReadDate(a.Value)
		case "fuel":
			var v float64
			if v, err = s.Between(a.Value, quantity.Percent, 1, 100); err == nil {
				t.FuelPart = v / 100
			}
		default:
			at := readings[name]
			if at == nil {
				return fmt.Errorf("there is no field %q", name)
			}
			var v float64
			if v, err = s.Between(a.Value, quantity.Pound, 0, 200000); err == nil {
				*at = quantity.Mass(v)
			}
		}
		if err == nil {
			s.Right("ticket") // why it could not be entered is judged anew
		}
		return err
	}
}

func addTicket(s *session.Session, _ session.Act) {
	t := entered(s)
	why := quote.TicketFault(t)
	if why == "" && len(s.Draft.Tickets) >= quote.MaxTickets {
		why = fmt.Sprintf("%d tickets are entered already: take one out first", quote.MaxTickets)
	}
	if why != "" {
		s.Wrong("ticket", "", why)
		return
	}
	s.Draft.Tickets = append(slices.Clone(s.Draft.Tickets), *t)
	s.View.Ticket = nil
	s.Right("ticket")
	s.Notice = "The ticket is entered; the weights follow it."
}

// dropTicket takes a ticket out and puts it back into the form.
func dropTicket(s *session.Session, a session.Act) {
	i, err := strconv.Atoi(a.ID)
	if err != nil || i < 0 || i >= len(s.Draft.Tickets) {
		return
	}
	t := s.Draft.Tickets[i]
	s.Draft.Tickets = slices.Delete(slices.Clone(s.Draft.Tickets), i, i+1)
	if a.Value == "edit" {
		s.View.Ticket = &t
		s.Notice = "The ticket is back in the form; enter it again when it is right."
	}
}

// offered are the tickets of earlier units that do not count yet and have the
// chassis or the module in common with this one.
func offered(s *session.Session) []session.Lesson {
	u, mine := &s.Draft.Unit, session.LessonsOf(s.Draft.Lessons())
	return slices.DeleteFunc(s.Lessons(), func(l session.Lesson) bool {
		return l.Ticket.Unit.Chassis != u.Chassis && l.Ticket.Unit.Body != u.Body || session.Holds(mine, l.ID)
	})
}

// countTicket takes one of them in.
func countTicket(s *session.Session, a session.Act) {
	for _, l := range offered(s) {
		if l.ID == a.ID && len(s.Draft.Tickets) < quote.MaxTickets {
			s.Draft.Tickets = append(slices.Clone(s.Draft.Tickets), l.Ticket)
			s.Notice = "The ticket of the earlier unit counts; the weights follow it."
		}
	}
}
