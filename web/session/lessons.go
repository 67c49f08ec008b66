package session

import (
	"encoding/json"
	"slices"
	"strings"

	"boxwright/config/weight"
	"boxwright/pricing/quote"
)

// Lesson is a scale ticket of another quote that could count in this one.
type Lesson struct {
	ID     string
	Ticket weight.Ticket
}

// LessonsOf gives tickets with the unit they weighed a name each, and each once.
func LessonsOf(list []weight.Ticket) (out []Lesson) {
	for _, t := range list {
		if id := Hashed(json.Marshal(t)); !slices.ContainsFunc(out, func(l Lesson) bool { return l.ID == id }) {
			out = append(out, Lesson{ID: id, Ticket: t})
		}
	}
	return out
}

// Holds reports whether a ticket is in the list.
func Holds(list []Lesson, id string) bool {
	return slices.ContainsFunc(list, func(l Lesson) bool { return l.ID == id })
}

// maxLessons bounds how many are looked at, and how many are remembered as
// brought by others.
const maxLessons = 40

// Lessons are the tickets of other quotes kept in the browser that this edition
// can use.
func (s *Session) Lessons() []Lesson {
	var list []weight.Ticket
	if len(s.Req.Weighed) == 0 || json.Unmarshal(s.Req.Weighed, &list) != nil {
		return nil
	}
	return LessonsOf(slices.DeleteFunc(list[:min(len(list), maxLessons)], func(t weight.Ticket) bool {
		return t.Unit == nil || t.Unit.Catalogue != s.Memory.Edition.Cat.ID || quote.TicketFault(&t) != "" ||
			len(s.Memory.Edition.Cat.CheckUnit(t.Unit)) > 0
	}))
}

// Brought remembers the tickets that came with somebody's link or file: they
// count in that quote, and teach no other one.
func (s *Session) Brought(d *quote.Draft) {
	for _, l := range LessonsOf(d.Lessons()) {
		s.View.Brought = append(s.View.Brought, l.ID)
	}
	s.View.Brought = s.View.Brought[max(len(s.View.Brought)-maxLessons, 0):]
}

// Taught are the tickets of the quote in work that the next ones learn from.
func (s *Session) Taught() (out []weight.Ticket) {
	for _, l := range LessonsOf(s.Draft.Lessons()) {
		if !slices.Contains(s.View.Brought, l.ID) {
			out = append(out, l.Ticket)
		}
	}
	return out
}

// Learn counts the tickets of earlier units on the same chassis with the same
// module, and no longer those of units that have neither.
func (s *Session) Learn() {
	u, list := &s.Draft.Unit, s.Lessons()
	if list == nil {
		return
	}
	var out []weight.Ticket
	var have []Lesson
	for _, t := range s.Draft.Tickets {
		id := Hashed(json.Marshal(t))
		if !Holds(list, id) || t.Unit.Chassis == u.Chassis || t.Unit.Body == u.Body {
			out, have = append(out, t), append(have, Lesson{ID: id})
		}
	}
	before := len(out)
	for _, l := range list {
		if t := l.Ticket; t.Unit.Chassis == u.Chassis && t.Unit.Body == u.Body && len(out) < quote.MaxTickets &&
			!Holds(have, l.ID) {
			out = append(out, t)
		}
	}
	s.Draft.Tickets = out
	if len(out) > before {
		s.Notice = strings.TrimSpace(s.Notice + " Its weights are corrected by the scale ticket of an earlier unit " +
			"on the same chassis with the same module; the Weight area names it and takes it out.")
	}
}
