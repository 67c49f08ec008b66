package session

import (
	"bytes"
	"errors"
	"strings"

	"boxwright/pricing/link"
	"boxwright/pricing/quote"
)

// issued remembers what the last signed link holds, since every request of a
// signed quote asks for it.
type issued struct {
	text   string
	bytes  []byte
	Draft  *quote.Draft
	Frozen *link.Frozen
	Err    error
}

// OpenIssued reads a signed link, the last one from memory.
func (m *Memory) OpenIssued(text string) *issued {
	if m.issued == nil || m.issued.text != text || m.issuedFor != m.Edition {
		i := &issued{text: text}
		if i.Draft, i.Frozen, i.Err = link.Decode(m.Edition.Cat, text); i.Err == nil {
			if i.Draft.Issued == "" {
				i.Err = errors.New("it is not signed")
			} else {
				i.bytes, i.Err = settled(i.Draft)
			}
		}
		m.issued, m.issuedFor = i, m.Edition
	}
	return m.issued
}

// settled is a draft's bytes without what may differ while it stays the same
// quote: the links it holds, and which of its units is being looked at.
func settled(d *quote.Draft) ([]byte, error) {
	c := d.Clone()
	c.Issued, c.Earlier = "", ""
	c.WorkOn(0)
	return c.Bytes()
}

// Mark names the quote as it stands, whatever is signed or at hand beside it;
// empty when it cannot be named.
func (s *Session) Mark() string { return Hashed(settled(s.Draft)) }

// Unsign makes a signed quote that was changed into a revision of its own. It
// runs before every reply, so that nothing is ever shown as signed that is not.
func (s *Session) Unsign() {
	d := s.Draft
	if d == nil || d.Issued == "" || s.Other != nil {
		return
	}
	was := s.Memory.OpenIssued(d.Issued)
	now, err := settled(d)
	if was.Err == nil && err == nil && bytes.Equal(was.bytes, now) {
		return
	}
	known, isLink := errors.AsType[*link.Error](was.Err)
	if was.Err != nil && (!isLink || known.Code != link.UnknownEdition) {
		d.Issued = ""
		s.Fault("The signature kept with this quote does not hold, and was taken off: %s", Sentence(was.Err))
		return
	}
	d.Prev, d.Earlier, d.Issued = link.Name(d.Issued), d.Issued, ""
	before := was.Draft
	if before == nil && known != nil {
		before = known.Draft
	}
	if before == nil || d.Rev == before.Rev {
		d.Rev = min(d.Rev+1, 999)
	}
	s.Notice = strings.TrimSpace(s.Notice + " This is a new revision now, and not signed; the signed quote stands as " +
		"it was sent.")
}

// Attach keeps the earlier quote's link with the draft when it is the one that
// the draft names.
func (s *Session) Attach(text string) bool {
	if s.Draft.Prev == "" || link.Name(text) != s.Draft.Prev {
		return false
	}
	s.Draft.Earlier, _, _ = link.Split(text)
	return true
}

// Recall looks for the earlier quote among the links at hand.
func (s *Session) Recall(links ...string) {
	for _, text := range links {
		if s.Draft.Earlier == "" && s.Attach(text) {
			return
		}
	}
}
