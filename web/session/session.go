package session

import (
	"fmt"

	"boxwright/pricing/quote"
)

// MaxEffort ends the doubling of what is spent on one question.
const MaxEffort = 12

// Session is one request being worked on.
type Session struct {
	Memory  *Memory
	Req     *Request
	Draft   *quote.Draft
	Other   *quote.Draft // as it came, when it was made with another edition: draft is then what it would be
	View    *View
	Pins    []string
	Faults  []string
	Notice  string
	Steps   []Step
	Effort  int  // how often the table was already asked for more certainty
	Private bool // what is shown is the seller's own: the page never keeps it
	Soon    bool // something that takes long is left out of this reply
}

// Fault adds a sentence to the alert that is shown.
func (s *Session) Fault(format string, args ...any) {
	s.Faults = append(s.Faults, fmt.Sprintf(format, args...))
}

// Step asks the browser for something that only it can do.
func (s *Session) Step(st Step) { s.Steps = append(s.Steps, st) }

// GoTo takes the reader to an area.
func (s *Session) GoTo(area string) {
	s.View.Area, s.View.Asked, s.View.Keeping = area, "", false
	s.Step(Step{Do: "top"})
}
