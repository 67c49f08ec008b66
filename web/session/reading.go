package session

import (
	"errors"

	"boxwright/pricing/link"
	"boxwright/pricing/quote"
)

// Subject is the quote that is shown: the draft, or the one of another edition that
// is kept as it is.
func (s *Session) Subject() *quote.Draft {
	if s.Other != nil {
		return s.Other
	}
	return s.Draft
}

// Foreign is the quote of a link whose edition is not at hand, with the figures it carries;
// nil when none was opened, and once its edition is in use.
func (s *Session) Foreign() (*quote.Draft, *link.Frozen) {
	if s.View.Foreign == "" {
		return nil, nil
	}
	_, _, err := link.Decode(s.Memory.Edition.Cat, s.View.Foreign)
	if e, ok := errors.AsType[*link.Error](err); ok && e.Code == link.UnknownEdition {
		return e.Draft, e.Frozen
	}
	return nil, nil
}

// takesUp reports whether another quote is taken up, in a record of its own.
func (s *Session) takesUp() bool {
	for _, step := range s.Steps {
		if step.Do == "new-quote" {
			return true
		}
	}
	return false
}

// HoldReading takes back what an act changed in a quote that is only read, and says
// how editing begins. It is given a copy of the draft before, the draft and the one of
// another edition, and reports whether it took anything back.
func (s *Session) HoldReading(was, began, other *quote.Draft) bool {
	if !s.View.Reading || s.takesUp() || s.Draft == began && s.Other == other && was.Issued == s.Draft.Issued &&
		SameQuote(was, s.Draft) {
		return false
	}
	s.Draft, s.Other, s.Notice, s.Changes = was, other, "", nil
	s.Fault("Nothing was changed: this quote was sent to you, and you are reading it. Press Make my own copy to work " +
		"on one of your own.")
	return true
}

// SameQuote reports whether two drafts say the same quote.
func SameQuote(a, b *quote.Draft) bool {
	one, err := content(a)
	if err != nil {
		return false
	}
	other, err := content(b)
	return err == nil && string(one) == string(other)
}
