package quote

import (
	"errors"
	"slices"

	"boxwright/config"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/web/page"
	"boxwright/web/page/markup"
	"boxwright/web/session"
)

func load(s *session.Session, p *page.Page, w *session.Worked) func() markup.Part {
	v := &Page{Page: p, View: s.View, Base: s.Req.Base}
	v.Link, v.Covered = s.Draft.Issued, covered(s, s.Draft.Issued)
	if s.Other != nil {
		v.Link, v.Covered = s.Other.Issued, covered(s, s.Other.Issued)
	} else if v.Link == "" {
		var err error
		if v.Link, err = link.Encode(w.Quote); err != nil {
			s.Fault("No link can be made: %s.", session.Sentence(err))
		} else {
			v.Covered = link.WithCover(v.Link, link.Cover(s.Draft, link.Freeze(w.Quote)))
		}
	}
	if s.Other == nil {
		loadTrust(s, v)
	} else if s.View.Reading {
		v.Trust = trustIn(s, s.Other)
	}
	v.Reading = loadReading(s, v)
	v.Foreign = loadForeign(s)
	loadShelf(s, v)
	if len(w.Quote.Draft.Requirements) > 0 && (s.View.Paper == "response" || s.View.Paper == "exceptions") {
		v.List, v.ListRead = w.Answered(s)
	}
	if v.View.Paper == drawingsID {
		v.Plates, _ = w.Pictures.For(s, v.aboutDrawings(), func() markup.Part {
			return markup.Written(drawingSet(v.with(leading(v.Q))))
		})
	}
	return func() markup.Part { return draw(v) }
}

// loadShelf is what the page says it keeps, within reason.
func loadShelf(s *session.Session, p *Page) {
	p.Saved = slices.Clone(s.Req.Saved[:min(len(s.Req.Saved), MaxKept)])
	for i := range p.Saved {
		if g := s.Gist(p.Q); p.Saved[i].Here { // as it is now, not as it was when the page asked
			p.Saved[i].Name, p.Saved[i].Line = g.Name, g.Line
		}
	}
	if s.Req.Copies != nil {
		p.Copies = *s.Req.Copies
	}
	p.Kept, p.Unkept = s.Req.Kept, s.Req.Unkept
	p.Trail = s.Req.Trail[:min(len(s.Req.Trail), MaxSteps)]
}

// covered is a signed link with its cover; alone when it does not hold.
func covered(s *session.Session, text string) string {
	if text == "" {
		return ""
	}
	i := s.Memory.OpenIssued(text)
	d, frozen := i.Draft, i.Frozen
	if e, ok := errors.AsType[*link.Error](i.Err); ok {
		d, frozen = e.Draft, e.Frozen
	}
	if d == nil || frozen == nil {
		return text
	}
	return link.WithCover(text, link.Cover(d, frozen))
}

// loadTrust tells the reader how far the quote can be relied on.
func loadTrust(s *session.Session, p *Page) {
	t := trustIn(s, s.Draft)
	t.Roster = s.Memory.Edition.Cat
	p.Trust = t
	cat := s.Memory.Edition.Cat
	if own := sign.PublicKey(s.Req.Key); own != nil {
		t.Own = sign.Judge(cat, own, s.Draft.Date, s.Req.Today)
	}
	if g := t.Signature; g != nil {
		g.Figures, g.Over = agreement(p.Q, &g.Frozen), over(p.Q, cat, g.Standing)
	}
	if s.Draft.Prev != "" {
		t.Before = loadBefore(s, p)
	}
}

// trustIn is what the signature of a draft is worth, whether or not its edition is in
// use.
func trustIn(s *session.Session, d *quote.Draft) *Trust {
	t := &Trust{Today: s.Req.Today, OwnKey: s.Req.Key, AsksBack: d.AsksBack()}
	if d.Issued == "" {
		return t
	}
	was := s.Memory.OpenIssued(d.Issued)
	e, _ := errors.AsType[*link.Error](was.Err)
	frozen := was.Frozen
	if e != nil && e.Code == link.UnknownEdition {
		frozen = e.Frozen
	}
	if frozen == nil {
		return t
	}
	t.Signature = signatureOf(s, d.Issued, d.Date, frozen)
	return t
}

// signatureOf is the signature of a sound link; nil when it has none.
func signatureOf(s *session.Session, text string, dated config.Date, frozen *link.Frozen) *Signature {
	key, err := link.Signer(text)
	if err != nil || key == nil {
		return nil
	}
	g := &Signature{Key: key, Standing: sign.Judge(s.Memory.Edition.Cat, key, dated, s.Req.Today), Frozen: *frozen}
	if !link.BindsWhole(text) {
		g.Binds = " It was signed by an older copy of the page: the signature binds the quote, and the first 8 bytes of " +
			"the name of its catalogue edition, not the whole of it."
	}
	return g
}

// loadBefore compares the quote with the one it revises.
func loadBefore(s *session.Session, p *Page) *Before {
	b := &Before{}
	if s.Draft.Earlier == "" || link.Name(s.Draft.Earlier) != s.Draft.Prev {
		return b
	}
	b.Along = link.With(p.Covered, s.Draft.Earlier)
	d, frozen, err := link.Decode(s.Memory.Edition.Cat, s.Draft.Earlier)
	if e, ok := errors.AsType[*link.Error](err); ok && e.Code == link.UnknownEdition {
		b.Number, b.Rev, b.Date = e.Draft.Number, e.Draft.Rev, e.Draft.Date
		b.Frozen = e.Frozen
	}
	if err != nil {
		return b
	}
	b.Number, b.Rev, b.Date, b.Frozen = d.Number, d.Rev, d.Date, frozen
	if key, err := link.Signer(s.Draft.Earlier); err == nil && key != nil {
		b.Key, b.Signer = key, sign.Judge(s.Memory.Edition.Cat, key, d.Date, s.Req.Today).Words()
	}
	if b.Q, err = quote.Compute(s.Memory.Edition, d); err != nil {
		b.Q = nil
	}
	return b
}

// loadForeign is the quote of an edition that is not at hand, as it was issued; nil
// when no such quote was opened.
func loadForeign(s *session.Session) *Foreign {
	if s.View.Foreign == "" {
		return nil
	}
	d, frozen := s.Foreign()
	if d == nil {
		if _, _, err := link.Decode(s.Memory.Edition.Cat, s.View.Foreign); err == nil {
			return &Foreign{Known: true}
		}
		s.View.Foreign = ""
		return nil
	}
	f := &Foreign{Frozen: *frozen, Draft: d}
	f.Trust = &Trust{Today: s.Req.Today, OwnKey: s.Req.Key, Signature: signatureOf(s, s.View.Foreign, d.Date, frozen)}
	k := &s.Memory.Keep
	for _, ed := range []*quote.Edition{k.BuiltIn.Ed, k.From.Ed, k.To.Ed} {
		if ed == nil {
			continue
		}
		if d, _, err := link.Decode(ed.Cat, s.View.Foreign); err == nil {
			f.Included = names(ed.Cat, &d.Unit)
		}
	}
	return f
}
