package session

import (
	"fmt"

	"boxwright/config/letters"
	"boxwright/config/rules"
	"boxwright/pricing/quote"
)

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
	Spoken  string            // is read out, and not shown
	Telling bool              // View.Told is of this request
	Pressed string            // what was pressed, where that is no option, chassis or body
	For     map[string]string // by what was taken, the line of the purchaser's list that asks for it
	Changes []rules.Change    // that completing the unit made in this request, with their causes
	Steps   []Step
	Effort  int  // spent on what is undecided, see quote.ComputeWith
	Private bool // what is shown is the seller's own: the page never keeps it
	worked  bool // this reply has a later part that the page did not show
	Partial bool // a part that takes long is left out of this reply
}

// Fault adds a sentence to the alert that is shown.
func (s *Session) Fault(format string, args ...any) {
	for i, a := range args {
		switch a := a.(type) {
		case string: // often a name that a stranger gave
			args[i] = letters.Isolate(letters.Calm(a))
		case error:
			args[i] = letters.Calm(a.Error())
		}
	}
	s.Faults = append(s.Faults, fmt.Sprintf(format, args...))
}

// Step asks the browser for something that only it can do.
func (s *Session) Step(st Step) { s.Steps = append(s.Steps, st) }

// GoTo takes the reader to an area.
func (s *Session) GoTo(area string) {
	s.View.Area, s.View.Asked = area, ""
	s.Step(Step{Do: "top"})
}
