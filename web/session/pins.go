package session

import (
	"maps"
	"slices"

	"boxwright/config"
	"boxwright/pricing/link"
)

// KeepAside pins the present draft when it holds any deliberate choice.
func (s *Session) KeepAside() bool {
	chosen := slices.ContainsFunc(s.Draft.Unit.Picks, func(p config.Pick) bool { return !p.Filled })
	if !chosen && s.Draft.Buyer.Name == "" {
		return false
	}
	return s.PinDraft()
}

// PinDraft sets the draft as it is aside for comparison, and reports whether it could.
func (s *Session) PinDraft() bool {
	q, err := s.Compute()
	if err != nil {
		return false
	}
	text, err := link.Encode(q)
	if err != nil {
		return false
	}
	if slices.Contains(s.Pins, text) {
		return true
	}
	if len(s.Pins) >= MaxPins {
		s.Pins = s.Pins[1:]
	}
	s.Pins = append(s.Pins, text)
	s.NameCompared(text, s.View.Names[""])
	s.NameCompared("", "")
	return true
}

// NameCompared names a quote of the comparison by its link, or the quote itself by none, and
// forgets the names of what is compared no more. Without a name it is called by its title.
func (s *Session) NameCompared(text, name string) {
	names := map[string]string{"": s.View.Names[""]}
	for _, pin := range s.Pins {
		names[link.Name(pin)] = s.View.Names[link.Name(pin)]
	}
	names[link.Name(text)] = name
	maps.DeleteFunc(names, func(_, name string) bool { return name == "" })
	s.View.Names = names
}

// MaxPins is how many quotes can be set aside for comparison.
const MaxPins = 3
