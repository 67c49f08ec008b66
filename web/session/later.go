package session

import (
	"hash/fnv"
	"slices"
	"strconv"
)

// Later is a part of an area that takes long to work out. The first part of an
// answer leaves it out, so that what is quick is drawn at once; the page then asks
// for the rest. Where the page shows the part already, it is not left out again.
type Later[T any] struct {
	name  string // of the part, and of what it is worked out of
	known latest[T]
}

// For gives the part about something, such as an option; false while it is left
// out.
func (l *Later[T]) For(s *Session, about string, work func() T) (part T, there bool) {
	if !s.includes(l.name + " " + about) {
		return part, false
	}
	s.Rest()
	return l.Now(about, work), true
}

// Rest pauses between two pieces of work that nobody waits for, see solve.Pauses.
func (s *Session) Rest() { s.Memory.Edition.Rules.Pauses().Rest() }

// Next is For in a reply of its own: it waits where this one has worked out another
// part, so that what is there is shown meanwhile.
func (l *Later[T]) Next(s *Session, about string, work func() T) (part T, there bool) {
	if s.worked && !slices.Contains(s.View.Parts, short(l.name+" "+about)) {
		s.Partial = true
		return part, false
	}
	return l.For(s, about, work)
}

// Now gives the part without waiting for the rest of the answer.
func (l *Later[T]) Now(about string, work func() T) T {
	part, _ := l.known.get(about, func() (T, error) { return work(), nil })
	return part
}

// mostParts bounds what is said of the parts that the page shows.
const mostParts = 8

// includes reports whether this reply has a part. What it depends on travels with
// the request, so that a core that was restarted answers alike.
func (s *Session) includes(part string) bool {
	part = short(part)
	if slices.Contains(s.View.Parts, part) {
		return true
	}
	if !s.Resting() {
		s.Partial = true
		return false
	}
	s.worked = true
	s.View.Parts = append(s.View.Parts, part)
	s.View.Parts = s.View.Parts[max(len(s.View.Parts)-mostParts, 0):]
	return true
}

// Resting reports whether the page asks for the rest of an answer, or for more
// certainty, and for nothing else.
func (s *Session) Resting() bool { return Resting(s.Req.Acts) }

// Resting reports whether these acts are only such.
func Resting(acts []Act) bool {
	for _, a := range acts {
		if a.Do != "rest" && a.Do != "decide" {
			return false
		}
	}
	return len(acts) > 0
}

// short is a name of few letters for a text.
func short(text string) string {
	h := fnv.New64a()
	h.Write([]byte(text))
	return strconv.FormatUint(h.Sum64(), 36)
}
