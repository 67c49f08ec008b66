package app

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/config/weight"
	"boxwright/pricing/quote"
	sess "boxwright/web/session"
)

// families are fields that come by the dozen, by the first part of their id;
// what follows the point says which one.
var families = map[string]func(name string) setter{"ticket": ticketField, "own": ownLimit, "wiring": wiringField, "existing": existingField, "needs": needField, "req": requirementField, "reading": reading, "rival": rivalField, "detail": detailField, "edition": editionField}

// ---- what options ask ----

// detailField takes what is said to an option that asks. Who says something to
// an option means to have it.
func detailField(option string) setter {
	return func(s *session, a Act) error {
		u := &s.draft.Unit
		if len(a.Value) > config.MaxDetail {
			return fmt.Errorf("%d bytes are too many; the most is %d", len(a.Value), config.MaxDetail)
		}
		if !u.Has(option) {
			return fmt.Errorf("the unit does not have %q", option)
		}
		u.Tell(option, strings.TrimSpace(a.Value))
		if u.Detail(option) != "" {
			keep(s, Act{ID: option})
		}
		return nil
	}
}

// ---- scale tickets ----

// ticket being entered, which lives beside the draft until it is whole.
func (s *session) ticket() *weight.Ticket {
	if s.view.Ticket == nil {
		s.view.Ticket = &weight.Ticket{What: weight.TicketUnit}
	}
	return s.view.Ticket
}

func ticketField(name string) setter {
	return func(s *session, a Act) (err error) {
		t := s.ticket()
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
			t.Number = clip(a.Value, 60)
		case "date":
			t.Date, err = config.ReadDate(a.Value)
		case "fuel":
			var v float64
			if v, err = s.between(a.Value, quantity.Percent, 1, 100); err == nil {
				t.FuelPart = v / 100
			}
		default:
			at := readings[name]
			if at == nil {
				return fmt.Errorf("there is no field %q", name)
			}
			var v float64
			if v, err = s.between(a.Value, quantity.Pound, 0, 200000); err == nil {
				*at = quantity.Mass(v)
			}
		}
		return err
	}
}

// between reads a number in a unit; empty is nought, whatever the least is.
func (s *session) between(typed, unit string, least, most float64) (float64, error) {
	if strings.TrimSpace(typed) == "" {
		return 0, nil
	}
	sys := quantity.System(s.view.Metric)
	v, err := sys.Parse(typed, unit)
	if err == nil && !(v >= least && v <= most) {
		err = fmt.Errorf("a number from %s to %s", sys.Show(least, unit), sys.Show(most, unit))
	}
	return v, err
}

func addTicket(s *session, _ Act) {
	t := s.ticket()
	why := quote.TicketFault(t)
	if why == "" && len(s.draft.Tickets) >= quote.MaxTickets {
		why = fmt.Sprintf("%d tickets are entered already: take one out first", quote.MaxTickets)
	}
	if why != "" {
		s.wrong("ticket", "", why)
		return
	}
	s.draft.Tickets = append(slices.Clone(s.draft.Tickets), *t)
	s.view.Ticket = nil
	s.right("ticket")
	s.notice = "The ticket is entered; the weights follow it."
}

// dropTicket takes a ticket out and puts it back into the form.
func dropTicket(s *session, a Act) {
	i, err := strconv.Atoi(a.ID)
	if err != nil || i < 0 || i >= len(s.draft.Tickets) {
		return
	}
	t := s.draft.Tickets[i]
	s.draft.Tickets = slices.Delete(slices.Clone(s.draft.Tickets), i, i+1)
	if a.Value == "edit" {
		s.view.Ticket = &t
		s.notice = "The ticket is back in the form; enter it again when it is right."
	}
}

// weighed keeps tickets true when the unit they weighed is no longer the one
// being quoted.
func (s *session) weighed(was *config.Unit) {
	s.draft.Tickets = quote.Weighed(s.draft.Tickets, was, &s.draft.Unit)
}

// lessonsOf gives tickets with the unit they weighed a name each, and each once.
func lessonsOf(list []weight.Ticket) (out []sess.Lesson) {
	for _, t := range list {
		if id := hashed(json.Marshal(t)); !slices.ContainsFunc(out, func(l sess.Lesson) bool { return l.ID == id }) {
			out = append(out, sess.Lesson{ID: id, Ticket: t})
		}
	}
	return out
}

func holds(list []sess.Lesson, id string) bool {
	return slices.ContainsFunc(list, func(l sess.Lesson) bool { return l.ID == id })
}

// maxLessons bounds how many are looked at, and how many are remembered as
// brought by others.
const maxLessons = 40

// lessons are the tickets of other quotes kept in the browser that this edition
// can use.
func (s *session) lessons() []sess.Lesson {
	var list []weight.Ticket
	if len(s.req.Weighed) == 0 || json.Unmarshal(s.req.Weighed, &list) != nil {
		return nil
	}
	return lessonsOf(slices.DeleteFunc(list[:min(len(list), maxLessons)], func(t weight.Ticket) bool {
		return t.Unit == nil || t.Unit.Catalogue != s.app.edition.Cat.ID || quote.TicketFault(&t) != "" || len(s.app.edition.Cat.CheckUnit(t.Unit)) > 0
	}))
}

// brought remembers the tickets that came with somebody's link or file: they
// count in that quote, and teach no other one.
func (s *session) brought(d *quote.Draft) {
	for _, l := range lessonsOf(d.Lessons()) {
		s.view.Brought = append(s.view.Brought, l.ID)
	}
	s.view.Brought = s.view.Brought[max(len(s.view.Brought)-maxLessons, 0):]
}

// taught are the tickets of the quote in work that the next ones learn from.
func (s *session) taught() (out []weight.Ticket) {
	for _, l := range lessonsOf(s.draft.Lessons()) {
		if !slices.Contains(s.view.Brought, l.ID) {
			out = append(out, l.Ticket)
		}
	}
	return out
}

// learn counts the tickets of earlier units on the same chassis with the same
// module, and no longer those of units that have neither.
func (s *session) learn() {
	u, list := &s.draft.Unit, s.lessons()
	if list == nil {
		return
	}
	var out []weight.Ticket
	var have []sess.Lesson
	for _, t := range s.draft.Tickets {
		id := hashed(json.Marshal(t))
		if !holds(list, id) || t.Unit.Chassis == u.Chassis || t.Unit.Body == u.Body {
			out, have = append(out, t), append(have, sess.Lesson{ID: id})
		}
	}
	before := len(out)
	for _, l := range list {
		if t := l.Ticket; t.Unit.Chassis == u.Chassis && t.Unit.Body == u.Body && len(out) < quote.MaxTickets && !holds(have, l.ID) {
			out = append(out, t)
		}
	}
	s.draft.Tickets = out
	if len(out) > before {
		s.notice = strings.TrimSpace(s.notice + " Its weights are corrected by the scale ticket of an earlier unit on the same chassis with the same module; the Weight area names it and takes it out.")
	}
}

// offered are the tickets of earlier units that do not count yet and have the
// chassis or the module in common with this one.
func (s *session) offered() []sess.Lesson {
	u, mine := &s.draft.Unit, lessonsOf(s.draft.Lessons())
	return slices.DeleteFunc(s.lessons(), func(l sess.Lesson) bool {
		return l.Ticket.Unit.Chassis != u.Chassis && l.Ticket.Unit.Body != u.Body || holds(mine, l.ID)
	})
}

// countTicket takes one of them in.
func countTicket(s *session, a Act) {
	for _, l := range s.offered() {
		if l.ID == a.ID && len(s.draft.Tickets) < quote.MaxTickets {
			s.draft.Tickets = append(slices.Clone(s.draft.Tickets), l.Ticket)
			s.notice = "The ticket of the earlier unit counts; the weights follow it."
		}
	}
}

// ---- the purchaser's own limits ----

// ownLimit sets the purchaser's value in place of the rules' limit on a figure;
// empty takes the rules' again.
func ownLimit(figure string) setter {
	return func(s *session, a Act) error {
		if _, known := standards.SenseOf(figure); !known {
			return fmt.Errorf("no rule set limits %q", figure)
		}
		unit := unitOf(figure)
		v, err := s.between(a.Value, unit, 0, 1e6)
		if err != nil {
			return err
		}
		u := &s.draft.Unit
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

// ---- wiring ----

func wiringField(name string) setter {
	return func(s *session, a Act) error {
		w := s.draft.Wiring
		v, err := 0.0, error(nil)
		if name != "areas" {
			v, err = s.between(a.Value, quantity.Percent, 0.5, 20)
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
			s.draft.Wiring = w
		}
		return err
	}
}

// ---- what rides where ----

// carry sets how many of a thing are aboard. More of it waits to be stowed;
// fewer takes away first what is not stowed.
func carry(s *session, a Act) {
	if s.app.edition.Cat.EquipmentByID(a.ID) == nil {
		return
	}
	n, err := s.between(a.Value, quantity.Count, 0, 99)
	want := int(n)
	if err != nil || float64(want) != n {
		s.wrong("carry-"+a.ID, a.Value, "a whole number from 0 to 99")
		return
	}
	s.right("carry-" + a.ID)
	list := slices.Clone(s.draft.Unit.Carried)
	for i := range list {
		if c := &list[i]; c.Equipment == a.ID && c.Compartment != "" {
			c.Qty = min(c.Qty, want)
			want -= c.Qty
		} else if c.Equipment == a.ID {
			c.Qty = 0
		}
	}
	s.stowed(append(list, config.Carried{Equipment: a.ID, Qty: want}))
}

// stow moves a line of equipment, named "thing" or "thing/compartment", to the
// compartment in Value.
func stow(s *session, a Act) {
	id, from, _ := strings.Cut(a.ID, "/")
	list := slices.Clone(s.draft.Unit.Carried)
	for i := range list {
		if c := &list[i]; c.Equipment == id && c.Compartment == from {
			c.Compartment = a.Value
		}
	}
	s.stowed(list)
}

// takeOut takes one thing out of a compartment, or everything out of all.
func takeOut(s *session, a Act) {
	id, from, one := strings.Cut(a.ID, "/")
	list := slices.Clone(s.draft.Unit.Carried)
	for i := range list {
		if c := &list[i]; !one {
			c.Compartment = ""
		} else if c.Equipment == id && c.Compartment == from {
			c.Qty--
			list = append(list, config.Carried{Equipment: id, Qty: 1})
		}
	}
	s.stowed(list)
}

// suggest stows what is not yet stowed so that axles and sides balance.
func suggest(s *session, _ Act) {
	cat, u := s.app.edition.Cat, &s.draft.Unit
	as := standards.Assume(u.RuleSet, cat, u)
	ch := cat.ChassisByID(u.Chassis)
	before := loose(u.Carried)
	s.stowed(space.Suggest(cat, u, func(v *config.Unit) space.Trim {
		g := weight.Weigh(cat, v, &as).Gross
		return space.Trim{FrontLb: g.FrontLb, RearLb: g.RearLb, LeftLb: g.LeftLb, RightLb: g.RightLb, FrontLimitLb: ch.GAWRFrontLb, RearLimitLb: ch.GAWRRearLb}
	}))
	left := loose(u.Carried)
	s.notice = fmt.Sprintf("Stowed %d of %d things so that axles and sides balance; what was stowed by hand stayed.", before-left, before)
	if left > 0 {
		s.notice += fmt.Sprintf(" For %d no place was proven.", left)
	}
}

func loose(list []config.Carried) (n int) {
	for _, c := range list {
		if c.Compartment == "" {
			n += c.Qty
		}
	}
	return n
}

// stowed takes over a list of what rides where, like lines as one.
func (s *session) stowed(list []config.Carried) {
	slices.SortStableFunc(list, func(a, b config.Carried) int {
		return cmp.Or(cmp.Compare(a.Equipment, b.Equipment), cmp.Compare(a.Compartment, b.Compartment))
	})
	var out []config.Carried
	for _, c := range list {
		switch last := len(out) - 1; {
		case c.Qty < 1:
		case last >= 0 && out[last].Equipment == c.Equipment && out[last].Compartment == c.Compartment:
			out[last].Qty += c.Qty
		default:
			out = append(out, c)
		}
	}
	s.draft.Unit.Carried = out
}
