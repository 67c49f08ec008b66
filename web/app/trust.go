package app

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"errors"
	"strings"

	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/seal"
	"boxwright/pricing/sign"
	papers "boxwright/web/areas/quote"
)

// Signing and what a reader is told about a signature. The signing key is opened
// for one signature at a time and never kept open; the page keeps it sealed,
// beside its public half.

// newKey makes a signing key and seals it: Value is the passphrase, Random 64
// random bytes.
func newKey(s *session, a Act) {
	random, _ := base64.StdEncoding.DecodeString(a.Random)
	source := bytes.NewReader(random)
	k, err := sign.New(source)
	if err != nil {
		s.fault("No key was made: %s.", plain(err))
		return
	}
	s.keepKey(k, source, a.Value, "A signing key was made, sealed with your passphrase and kept in this browser. Save its file too, and give the public key to whoever keeps the catalogue's roster.")
}

// importKey takes a key from a file, sealed or not yet.
func importKey(s *session, a Act) {
	file, err := base64.StdEncoding.DecodeString(a.File)
	if err != nil || len(file) == 0 {
		s.fault("There is no key to take: choose its file.")
		return
	}
	if !seal.Is(file) {
		k, err := sign.Read(file)
		if err != nil {
			s.fault("The key was not taken: %s.", plain(err))
			return
		}
		random, _ := base64.StdEncoding.DecodeString(a.Random)
		s.keepKey(k, bytes.NewReader(random), a.Value, "The signing key is sealed with your passphrase and kept in this browser.")
		return
	}
	k, err := sign.Open(file, a.Value)
	if err != nil {
		s.fault("The key was not taken: %s.", plain(err))
		return
	}
	s.step(Step{Do: "keep-key", Text: a.File, ID: sign.Text(k.Public())})
	s.req.Key = sign.Text(k.Public())
	s.notice = "The signing key is kept in this browser, sealed as it was."
}

func (s *session) keepKey(k *sign.Key, random *bytes.Reader, passphrase, said string) {
	sealed, err := k.Seal(random, passphrase)
	if err != nil {
		s.fault("The key was not kept: %s.", plain(err))
		return
	}
	s.req.Key = sign.Text(k.Public())
	s.step(Step{Do: "keep-key", Text: base64.StdEncoding.EncodeToString(sealed), ID: s.req.Key})
	s.notice = said
}

// exportKey saves the sealed file that the page keeps.
func exportKey(s *session, a Act) {
	if a.File == "" {
		s.fault("No signing key is kept in this browser.")
		return
	}
	s.step(Step{Do: "save", Name: "signing-key.sealed", Type: "application/octet-stream", Text: a.File, Base64: true})
}

func forgetKey(s *session, _ Act) {
	s.req.Key = ""
	s.step(Step{Do: "keep-key"})
	s.notice = "The signing key was taken out of this browser."
}

// signQuote signs the quote as it stands: Value is the passphrase and File the
// sealed key.
func signQuote(s *session, a Act) {
	if s.draft.Issued != "" {
		s.fault("The quote is signed as it stands.")
		return
	}
	file, err := base64.StdEncoding.DecodeString(a.File)
	if err != nil || len(file) == 0 {
		s.fault("No signing key is kept in this browser: make one, or take one from its file.")
		return
	}
	q, err := s.compute()
	if err != nil {
		s.fault("%s", sentence(err))
		return
	}
	if q.Stopped() {
		s.fault("The quote cannot be signed as it stands: settle what stops it first.")
		return
	}
	k, err := sign.Open(file, a.Value)
	if err != nil {
		s.fault("The quote was not signed: %s.", plain(err))
		return
	}
	text, err := link.Encode(q)
	if err == nil {
		text, err = link.Sign(text, k)
	}
	if err != nil {
		s.fault("The quote was not signed: %s.", plain(err))
		return
	}
	s.draft.Issued = text
	s.notice = "The quote is signed. Any change from here on makes a new revision, which is not signed."
}

// issued remembers what the last signed link holds, since every request of a
// signed quote asks for it.
type issued struct {
	text   string
	bytes  []byte
	draft  *quote.Draft
	frozen *link.Frozen
	err    error
}

func (a *App) openIssued(text string) *issued {
	if a.issued == nil || a.issued.text != text || a.issuedFor != a.edition {
		i := &issued{text: text}
		if i.draft, i.frozen, i.err = link.Decode(a.edition.Cat, text); i.err == nil {
			if i.draft.Issued == "" {
				i.err = errors.New("it is not signed")
			} else {
				i.bytes, i.err = settled(i.draft)
			}
		}
		a.issued, a.issuedFor = i, a.edition
	}
	return a.issued
}

// covered is a signed link with its cover; alone when it does not hold.
func (s *session) covered(text string) string {
	if text == "" {
		return ""
	}
	i := s.app.openIssued(text)
	d, frozen := i.draft, i.frozen
	if e, ok := errors.AsType[*link.Error](i.err); ok {
		d, frozen = e.Draft, e.Frozen
	}
	if d == nil || frozen == nil {
		return text
	}
	return link.WithCover(text, link.Cover(d, frozen))
}

// settled is a draft's bytes without what may differ while it stays the same
// quote: the links it holds, and which of its units is being looked at.
func settled(d *quote.Draft) ([]byte, error) {
	c := d.Clone()
	c.Issued, c.Earlier = "", ""
	c.WorkOn(0)
	return c.Bytes()
}

// mark names the quote as it stands, whatever is signed or at hand beside it;
// empty when it cannot be named.
func (s *session) mark() string { return hashed(settled(s.draft)) }

// hashed is a short name of contents by their hash.
func hashed(data []byte, err error) string {
	if err != nil {
		return ""
	}
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:8])
}

// unsign makes a signed quote that was changed into a revision of its own. It
// runs before every reply, so that nothing is ever shown as signed that is not.
func (s *session) unsign() {
	d := s.draft
	if d == nil || d.Issued == "" || s.other != nil {
		return
	}
	was := s.app.openIssued(d.Issued)
	now, err := settled(d)
	if was.err == nil && err == nil && bytes.Equal(was.bytes, now) {
		return
	}
	known, isLink := errors.AsType[*link.Error](was.err)
	if was.err != nil && (!isLink || known.Code != link.UnknownEdition) {
		d.Issued = ""
		s.fault("The signature kept with this quote does not hold, and was taken off: %s", sentence(was.err))
		return
	}
	d.Prev, d.Earlier, d.Issued = link.Name(d.Issued), d.Issued, ""
	before := was.draft
	if before == nil && known != nil {
		before = known.Draft
	}
	if before == nil || d.Rev == before.Rev {
		d.Rev = min(d.Rev+1, 999)
	}
	s.notice = strings.TrimSpace(s.notice + " This is a new revision now, and not signed; the signed quote stands as it was sent.")
}

// setEarlier takes the link of the quote that this one revises.
func setEarlier(s *session, a Act) error {
	if !s.attach(a.Value) {
		return errors.New("this is not the quote that this revision names: ask the seller for the link of the one before it")
	}
	s.notice = "What changed since the earlier quote is shown."
	return nil
}

// attach keeps the earlier quote's link with the draft when it is the one that
// the draft names.
func (s *session) attach(text string) bool {
	if s.draft.Prev == "" || link.Name(text) != s.draft.Prev {
		return false
	}
	s.draft.Earlier, _, _ = link.Split(text)
	return true
}

// recall looks for the earlier quote among the links at hand.
func (s *session) recall(links ...string) {
	for _, text := range links {
		if s.draft.Earlier == "" && s.attach(text) {
			return
		}
	}
}

// trust tells the reader how far the quote can be relied on.
func (s *session) trust(p *papers.Page) {
	t := &papers.Trust{Today: s.req.Today, OwnKey: s.req.Key}
	p.Trust = t
	cat := s.app.edition.Cat
	if own := publicKey(s.req.Key); own != nil {
		t.Own = sign.Judge(cat, own, s.draft.Date)
	}
	if s.draft.Issued != "" {
		key, err := link.Signer(s.draft.Issued)
		was := s.app.openIssued(s.draft.Issued)
		if err == nil && was.err == nil {
			t.Signature = &papers.Signature{Key: key, Standing: sign.Judge(cat, key, s.draft.Date), As: *was.frozen}
		}
	}
	if s.draft.Prev != "" {
		t.Before = s.before(p)
	}
}

func publicKey(text string) []byte {
	raw, err := base64.RawURLEncoding.DecodeString(text)
	if err != nil || len(raw) != sign.KeyBytes {
		return nil
	}
	return raw
}

// before compares the quote with the one it revises.
func (s *session) before(p *papers.Page) *papers.Before {
	b := &papers.Before{}
	if s.draft.Earlier == "" || link.Name(s.draft.Earlier) != s.draft.Prev {
		return b
	}
	b.Along = link.With(p.Covered, s.draft.Earlier)
	d, frozen, err := link.Decode(s.app.edition.Cat, s.draft.Earlier)
	if e, ok := errors.AsType[*link.Error](err); ok && e.Code == link.UnknownEdition {
		b.Number, b.Rev, b.Date = e.Draft.Number, e.Draft.Rev, e.Draft.Date
		b.As = e.Frozen
	}
	if err != nil {
		return b
	}
	b.Number, b.Rev, b.Date, b.As = d.Number, d.Rev, d.Date, frozen
	if key, err := link.Signer(s.draft.Earlier); err == nil && key != nil {
		b.Signer = sign.Judge(s.app.edition.Cat, key, d.Date).Words()
	}
	if b.Q, err = quote.Compute(s.app.edition, d); err != nil {
		b.Q = nil
	}
	return b
}

// foreign is the quote of an edition that is not at hand, as it was issued; nil
// when no such quote was opened.
func (s *session) foreign() *papers.Foreign {
	if s.view.Foreign == "" {
		return nil
	}
	_, _, err := link.Decode(s.app.edition.Cat, s.view.Foreign)
	e, _ := errors.AsType[*link.Error](err)
	if err == nil {
		return &papers.Foreign{Known: true}
	}
	if e == nil || e.Frozen == nil {
		s.view.Foreign = ""
		return nil
	}
	f := &papers.Foreign{Today: s.req.Today, As: *e.Frozen, Draft: e.Draft}
	if key, err := link.Signer(s.view.Foreign); err == nil && key != nil {
		f.Key, f.Standing = key, sign.Judge(s.app.edition.Cat, key, e.Draft.Date)
	}
	return f
}
