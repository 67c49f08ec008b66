package session

import (
	"cmp"
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/rules"
	"boxwright/pricing/editions"
	"boxwright/pricing/quote"
)

// ChangeEdition takes another edition into use. The quote in work is carried
// over, if so wanted; one that is signed stays as it is, and so does one that
// waits to be moved.
func (s *Session) ChangeEdition(h Held, carry bool) {
	s.Memory.Use(h)
	d := s.Draft
	if s.Other != nil {
		d = s.Other
	}
	switch {
	case d == nil:
	case d.Unit.Edition == h.Ed.Cat.Hash() && s.Memory.Suits(d) == nil:
		s.Draft, s.Other = d, nil
	case s.Other != nil || d.Issued != "" || !carry:
		s.Draft, s.Other = nil, d
	default:
		moved, lost, changes := quote.Move(h.Ed, d)
		s.Draft = moved
		if len(lost) > 0 {
			s.Fault("The new edition does not have: %s. These were left out; Undo brings the earlier state back.",
				strings.Join(lost, ", "))
		}
		s.Tell(changes)
	}
}

// Keeping a catalogue. An edition that comes in is set beside the one in use,
// checked and compared, and taken into use at a press. Quotes made with another
// edition stay as they are until somebody moves them.

// Held is an edition with the text of its file.
type Held struct {
	Ed   *quote.Edition
	File []byte
}

// Keeping is what the core remembers for whoever keeps the catalogue.
type Keeping struct {
	BuiltIn  Held
	InUse    Held
	Refused  string // name of what was not taken
	Problems []config.Problem
	Linted   *quote.Edition // that findings are of
	Findings []config.Finding
	Stopped  string         // where going through it was stopped; empty when it was not
	Linting  *rules.Linter  // under way
	LintOf   *quote.Edition // that it goes through
	From, To Held           // the two compared; one of them is in use
	Diff     *editions.Comparison
	Touched  []Touched
	More     bool
}

// Use takes an edition into use.
func (m *Memory) Use(h Held) {
	if b := m.Keep.BuiltIn.Ed; b != nil && b != h.Ed {
		h.Ed.Cat.KeepRevoked(b.Cat)
	}
	m.Edition, m.Keep.InUse = h.Ed, h
	if h.Ed != m.Keep.From.Ed && h.Ed != m.Keep.To.Ed {
		m.Keep.Apart()
	}
}

// Apart forgets the two editions that were compared.
func (k *Keeping) Apart() { k.From, k.To, k.Diff, k.Touched, k.More = Held{}, Held{}, nil, nil, false }

// Candidate is the edition that is set beside the one in use, if there is one.
func (k *Keeping) Candidate() *Held {
	if k.Diff != nil && k.To.Ed != k.InUse.Ed {
		return &k.To
	}
	return nil
}

// Looked is the edition that is checked, saved and handed out.
func (k *Keeping) Looked() *Held {
	if b := k.Candidate(); b != nil {
		return b
	}
	return &k.InUse
}

// NameOf is how a list calls a quote, without a price.
func NameOf(cat *config.Catalogue, d *quote.Draft) (name, line string) {
	name = letters.Isolate(cmp.Or(d.Title, cat.LabelOf(d.Unit.Chassis)))
	line = strings.TrimSpace(letters.Isolate(d.Number) + " · " + letters.Isolate(d.Buyer.Name))
	return name, strings.Trim(line, "· ")
}

// Touched is what a change of editions means for a kept quote.
type Touched struct {
	ID, Name, Line string
	Touch          *editions.Touch // nil where the quote cannot be read
	Fault          string
	Moved          bool // it was moved to the new edition since
}

// Suits reports whether the edition in hand can compute the draft.
func (m *Memory) Suits(d *quote.Draft) error {
	if ps := m.Edition.Cat.CheckUnit(&d.Unit); len(ps) > 0 {
		return ps
	}
	if d.Unit.Edition != m.Edition.Cat.Hash() {
		return fmt.Errorf("it was made with another edition of the catalogue (%.12s)", d.Unit.Edition)
	}
	return nil
}
