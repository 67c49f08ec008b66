package quote

import (
	"encoding/base64"
	"errors"

	"boxwright/pricing/link"
	"boxwright/pricing/sign"
	"boxwright/web/session"
)

// signQuote signs the quote as it stands: Value is the passphrase and File the
// sealed key.
func signQuote(s *session.Session, a session.Act) {
	if s.Draft.Issued != "" {
		s.Fault("The quote is signed as it stands.")
		return
	}
	file, err := base64.StdEncoding.DecodeString(a.File)
	if err != nil || len(file) == 0 {
		s.Fault("No signing key is saved on this device: make or open one in Costs and keys.")
		return
	}
	q, err := s.Compute()
	if err != nil {
		s.Fault("%s", session.Sentence(err))
		return
	}
	if missing := stopping(s, q); missing != "" {
		s.Fault("The quote cannot be signed as it stands. %s", missing)
		return
	}
	k, err := sign.Open(file, a.Value)
	if err != nil {
		s.Fault("The quote was not signed: %s.", session.Plain(err))
		return
	}
	standing := sign.Judge(s.Memory.Edition.Cat, k.Public(), s.Draft.Date, s.Req.Today)
	if why := barred(q, s.Memory.Edition.Cat, standing); why != "" {
		s.Fault("The quote was not signed. %s", why)
		return
	}
	text, err := link.Encode(q)
	if err == nil {
		text, err = link.Sign(text, s.Memory.Edition.Cat, k)
	}
	if err != nil {
		s.Fault("The quote was not signed: %s.", session.Plain(err))
		return
	}
	s.Draft.Issued = text
	s.Step(session.Step{Do: "focus", ID: "copy-link"})
	s.Notice = "The quote is signed. Any change from here on makes a new revision, which is not signed."
}

// setEarlier takes the link of the quote that this one revises.
func setEarlier(s *session.Session, a session.Act) error {
	if !s.Attach(link.Trim(a.Value)) {
		return errors.New("this is not the quote that this revision names: ask the seller for the link of the one " +
			"before it")
	}
	s.Notice = "What changed since the earlier quote is shown."
	return nil
}
