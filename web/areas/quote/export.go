package quote

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/config/weight"
	"boxwright/pricing/bid"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	"boxwright/pricing/seal"
	"boxwright/pricing/sign"
	"boxwright/web/page"
	"boxwright/web/session"
)

// ExportFormat is the value of Export.Format this program reads.
const ExportFormat = "boxwright-kept/1"

// Export is everything kept in a browser as one file: every quote with the
// states that undo goes back to, the catalogue in use, and what is sealed there, as it
// is sealed.
type Export struct {
	Format    string      `json:"format"`
	Quotes    []KeptQuote `json:"quotes"`
	Catalogue string      `json:"catalogue,omitempty"` // the catalogue file's text, when one was loaded
	Bids      string      `json:"bids,omitempty"`      // what is kept for the next requirement list, as bid.Book
	// Behind passphrases, in base64: the signing key with its public half, the cost
	// sheet, and quotes that were sealed.
	Key    *SealedKey `json:"key,omitempty"`
	Costs  string     `json:"costs,omitempty"`
	Sealed string     `json:"sealed,omitempty"`

	Left []string `json:"-"` // what is no quote, cannot be used, and was left out
}

// SealedKey is a signing key as a browser keeps it.
type SealedKey struct {
	Sealed string `json:"sealed"`
	Public string `json:"public"`
}

// KeptQuote is one quote of an Export.
type KeptQuote struct {
	ID    string       `json:"id"`
	Name  string       `json:"name"`
	Line  string       `json:"line"`
	Saved string       `json:"saved"`
	Draft *quote.Draft `json:"draft"`
	Pins  []string     `json:"pins"`
	Steps []KeptStep   `json:"steps"`
	At    int          `json:"at"` // which of the steps the draft is

	Weighed []weight.Ticket `json:"weighed,omitempty"` // as in Gist, drawn from the draft
}

// KeptStep is a state that undo goes back to.
type KeptStep struct {
	Draft *quote.Draft `json:"draft"`
	Said  string       `json:"said"`
	When  string       `json:"when"`
}

// Limits on a file of kept quotes, checked before and after decoding.
const (
	MaxExportBytes = 16 << 20
	MaxKept        = 500
	MaxSteps       = 101 // states of one quote that can be gone back to
)

// ReadExport decodes a file of kept quotes strictly and checks every part of
// it. The error is a config.Problems that names the place.
func ReadExport(file []byte) (*Export, error) {
	fail := func(code, where, format string, args ...any) (*Export, error) {
		return nil, config.Problems{{Code: "kept." + code, Where: where, Text: fmt.Sprintf(format, args...)}}
	}
	if len(file) > MaxExportBytes {
		return fail("too-large", "the file", "is %d bytes; the most that is read is %d", len(file), MaxExportBytes)
	}
	e := new(Export)
	if p := config.DecodeStrict(file, e); p != nil {
		p.Code = "kept." + p.Code
		return nil, config.Problems{*p}
	}
	if e.Format != ExportFormat {
		return fail("format", "format", "is %q; this program reads %q", e.Format, ExportFormat)
	}
	if len(e.Quotes) > MaxKept {
		return fail("too-large", "quotes", "has %d; the most is %d", len(e.Quotes), MaxKept)
	}
	for i := range e.Quotes {
		k := &e.Quotes[i]
		where := fmt.Sprintf("quotes[%d] %q", i, session.Clip(k.Name, 60))
		if len(k.ID) == 0 || len(k.ID) > 60 || len(k.Name) > session.MaxSaid || len(k.Line) > 2*session.MaxSaid ||
			len(k.Saved) > 40 || len(k.Steps) > MaxSteps || len(k.Pins) > session.MaxPins {
			return fail("range", where, "has a text or a list that is too long, or no id")
		}
		if len(k.Steps) > 0 && (k.At < 0 || k.At >= len(k.Steps)) {
			return fail("range", where+" at", "%d is no place among %d steps", k.At, len(k.Steps))
		}
		for _, pin := range k.Pins {
			if len(pin) > link.MaxText {
				return fail("range", where+" pins", "a link has %d characters; the most is %d", len(pin), link.MaxText)
			}
		}
		drafts := []*quote.Draft{k.Draft}
		for _, s := range k.Steps {
			if len(s.Said) > session.MaxSaid || len(s.When) > 40 {
				return fail("range", where+" steps", "has a text that is too long")
			}
			drafts = append(drafts, s.Draft)
		}
		for n, d := range drafts {
			if d == nil {
				return fail("missing", where, "has no draft in it, or a step without one")
			}
			data, err := d.Bytes()
			if err == nil {
				_, err = quote.ReadDraft(data)
			}
			if err != nil {
				return fail("draft", fmt.Sprintf("%s draft %d", where, n), "%s", session.Sentence(err))
			}
		}
	}
	e.leaveOut()
	return e, nil
}

// leaveOut takes out what is no quote and cannot be used: it stands in the way of none.
func (e *Export) leaveOut() {
	if e.Costs != "" && !isSealed(e.Costs) {
		e.Costs, e.Left = "", append(e.Left, "a cost sheet that was not sealed here")
	}
	if e.Sealed != "" && !isSealed(e.Sealed) {
		e.Sealed, e.Left = "", append(e.Left, "sealed quotes that were not sealed here")
	}
	if e.Key != nil && (!isSealed(e.Key.Sealed) || sign.PublicKey(e.Key.Public) == nil) {
		e.Key, e.Left = nil, append(e.Left, "a signing key that was not sealed here")
	}
	if e.Catalogue != "" {
		if _, err := quote.Accept([]byte(e.Catalogue)); err != nil {
			e.Left = append(e.Left, "a catalogue that cannot be used ("+session.Clip(session.Plain(err), 300)+")")
			e.Catalogue = ""
		}
	}
}

func isSealed(text string) bool {
	file, err := base64.StdEncoding.DecodeString(text)
	return err == nil && seal.Sealed(file)
}

// importKept checks a file of kept quotes and hands it to the page.
func importKept(s *session.Session, a session.Act) {
	if e := takeIn(s, a.ID, []byte(a.Value), ""); e != nil {
		s.Notice = page.Count(len(e.Quotes), "saved quote was", "saved quotes were") + " taken in from " +
			session.Clip(a.ID, 100) + ". None that was here was changed."
		if len(e.Left) > 0 {
			s.Notice += " Left out: " + strings.Join(e.Left, "; ") + "."
		}
	}
}

// takeIn checks a file of kept quotes and hands it to the page, which does with it what
// the step's id says. It gives what is in the file, nil when it was not taken.
func takeIn(s *session.Session, name string, file []byte, how string) *Export {
	e, err := ReadExport(file)
	if err != nil {
		s.Fault("%s was not taken in; what is saved here stays as it is. %s", name, session.Sentence(err))
		return nil
	}
	for i := range e.Quotes {
		e.Quotes[i].Weighed = e.Quotes[i].Draft.Lessons()
	}
	if e.Bids != "" {
		book := bid.ReadBook(s.Req.Bids)
		book.Merge(bid.ReadBook(e.Bids))
		s.Step(session.Step{Do: "keep-bids", Text: book.Text()})
		e.Bids = ""
	}
	if e.Key != nil && s.Req.Key == "" {
		s.Req.Key = e.Key.Public
		s.Step(session.Step{Do: "keep-key", Text: e.Key.Sealed, ID: e.Key.Public})
	}
	if e.Costs != "" && !s.Req.Costs {
		s.Step(session.Step{Do: "keep-costs", Text: e.Costs})
	}
	e.Key, e.Costs = nil, ""
	data, err := json.Marshal(e)
	if err != nil {
		s.Fault("%s was not taken in: %s.", name, err)
		return nil
	}
	s.Step(session.Step{Do: "import", Text: string(data), ID: how})
	return e
}

// sealedPurpose binds sealed quotes to what they are.
const sealedPurpose = "saved quotes"

// sealKept seals the saved quotes, which come as a file in File: Value is the
// passphrase, Random random bytes. The page then takes the open ones away.
func sealKept(s *session.Session, a session.Act) {
	e, err := ReadExport([]byte(a.File))
	if err != nil {
		s.Fault("The saved quotes were not sealed. %s", session.Sentence(err))
		return
	}
	random, _ := base64.StdEncoding.DecodeString(a.Random)
	sealed, err := seal.Seal(bytes.NewReader(random), sealedPurpose, a.Value, []byte(a.File))
	if err != nil {
		s.Fault("The saved quotes were not sealed: %s.", session.Plain(err))
		return
	}
	s.Step(session.Step{Do: "keep-sealed", Text: base64.StdEncoding.EncodeToString(sealed)})
	s.Notice = page.Count(len(e.Quotes), "saved quote is", "saved quotes are") +
		" sealed. They are opened again with " +
		"the passphrase, under Saved quotes."
}

// openSealed opens quotes that were sealed: Value is the passphrase, File what is sealed.
func openSealed(s *session.Session, a session.Act) {
	file, err := base64.StdEncoding.DecodeString(a.File)
	if err == nil {
		file, err = seal.Open(sealedPurpose, a.Value, file)
	}
	if err != nil {
		s.Fault("The sealed quotes were not opened: %s.", session.Plain(err))
		return
	}
	if e := takeIn(s, "What was sealed", file, "sealed"); e != nil {
		s.Notice = page.Count(len(e.Quotes), "sealed quote is", "sealed quotes are") + " open again."
	}
}
