package session

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
)

// Issued is what a signed link holds. It is kept, since every request of a signed
// quote asks for it.
type Issued struct {
	bytes  []byte
	Draft  *quote.Draft
	Frozen *link.Frozen
	Err    error
}

// OpenIssued reads a signed link.
func (m *Memory) OpenIssued(text string) *Issued {
	i, _ := m.issued.get(m.Edition.Cat.Hash()+text, func() (*Issued, error) {
		return openIssued(m.Edition.Cat, text), nil
	})
	return i
}

func openIssued(cat *config.Catalogue, text string) *Issued {
	i := &Issued{}
	if i.Draft, i.Frozen, i.Err = link.Decode(cat, text); i.Err != nil {
		return i
	}
	if i.Draft.Issued == "" {
		i.Err = errors.New("it is not signed")
		return i
	}
	i.bytes, i.Err = content(i.Draft)
	return i
}

// content is a draft's bytes without what may differ while it stays the same
// quote: the links it holds, and which of its units is being looked at.
func content(d *quote.Draft) ([]byte, error) {
	c := d.Clone()
	c.Issued, c.Earlier = "", ""
	c.WorkOn(0)
	return c.Bytes()
}

// Unsign makes a signed quote that was changed into a revision of its own. It
// runs before every reply, so that nothing is ever shown as signed that is not.
func (s *Session) Unsign() {
	d := s.Draft
	if d == nil || d.Issued == "" || s.Other != nil {
		return
	}
	was := s.Memory.OpenIssued(d.Issued)
	now, err := content(d)
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

// Untie makes a quote of its own of what a reader asked for, once a seller's name stands on
// it: what it was copied from is no business of whoever it is sent to.
func (s *Session) Untie() {
	if d := s.Draft; d != nil && d.AsksBack() && d.Seller.Name != "" && d.Issued == "" && !s.View.Reading {
		d.Prev, d.Earlier = "", ""
	}
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

// AsSent refuses an unsigned quote whose link carries other figures than what it holds
// comes to. Of a signed one the figures that were signed are shown.
func (s *Session) AsSent(d *quote.Draft, was *link.Frozen) error {
	if d.Issued != "" {
		return nil
	}
	before := s.Draft
	s.Draft = d
	q, err := s.Compute() // which is asked for again when the quote is shown
	s.Draft = before
	if err != nil {
		return err
	}
	now := link.Freeze(q)
	if was.Agrees(now) {
		return nil
	}
	return &link.Error{Code: link.OtherFigures,
		Text: fmt.Sprintf("This quote was not opened. It is not signed, and it says %s and %s, while what is in it "+
			"comes to %s and %s: somebody changed it, or another copy of the page made it. Ask the sender for a "+
			"signed quote.", was.Total, was.Dates(), now.Total, now.Dates())}
}
