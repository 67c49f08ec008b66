package app

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/weight"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
	papers "boxwright/web/areas/quote"
)

// The page keeps quotes in the browser by itself. The core names them for the
// list, and checks a file of kept quotes before anything of it is taken in.

// Gist is how a quote is called in the list of those kept.
type Gist struct {
	Name   string `json:"name"`
	Line   string `json:"line"`
	Issued string `json:"issued,omitempty"` // its signed link

	Weighed []weight.Ticket `json:"weighed,omitempty"` // what other quotes can learn from it
}

func gist(q *quote.Quote) Gist {
	d := q.Draft
	g := Gist{Name: d.Title, Issued: d.Issued}
	if g.Name == "" {
		g.Name = q.Chassis.Label
	}
	g.Line = q.Total()
	if d.Buyer.Name != "" {
		g.Line = d.Buyer.Name + " · " + g.Line
	}
	if d.Number != "" {
		g.Line = d.Number + " · " + g.Line
	}
	if d.Rev > 0 {
		g.Line += fmt.Sprintf(" · revision %d", d.Rev)
	}
	if d.Issued != "" {
		g.Line += " · signed"
	}
	return g
}

// gist is that of the quote in work. One of another edition is not called by a
// price that it does not have.
func (s *session) gist(q *quote.Quote) Gist {
	g := gist(q)
	if s.other != nil {
		g.Name, g.Line = nameOf(s.app.edition.Cat, s.other)
		g.Line, g.Issued = strings.TrimPrefix(g.Line+" · made with another edition of the catalogue", " · "), s.other.Issued
		if g.Issued != "" {
			g.Line += " · signed"
		}
	}
	return g
}

// ExportFormat is the value of Export.Format this program reads.
const ExportFormat = "boxwright-kept/1"

// Export is everything kept in a browser as one file: every quote with the
// states that undo goes back to, and the catalogue in use. Sealed files, such as
// a signing key or a cost sheet, are no part of it.
type Export struct {
	Format    string      `json:"format"`
	Quotes    []KeptQuote `json:"quotes"`
	Catalogue string      `json:"catalogue,omitempty"` // the catalogue file's text, when one was loaded
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
	MaxExportBytes = 8 << 20
	maxKept        = 500
	maxSteps       = 101
	maxSaid        = 600
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
	if len(e.Quotes) > maxKept {
		return fail("too-large", "quotes", "has %d; the most is %d", len(e.Quotes), maxKept)
	}
	for i := range e.Quotes {
		k := &e.Quotes[i]
		where := fmt.Sprintf("quotes[%d] %q", i, clip(k.Name, 60))
		if len(k.ID) == 0 || len(k.ID) > 60 || len(k.Name) > maxSaid || len(k.Line) > 2*maxSaid || len(k.Saved) > 40 || len(k.Steps) > maxSteps || len(k.Pins) > maxPins {
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
			if len(s.Said) > maxSaid || len(s.When) > 40 {
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
				return fail("draft", fmt.Sprintf("%s draft %d", where, n), "%s", sentence(err))
			}
		}
	}
	if e.Catalogue != "" {
		if _, err := quote.OpenEdition([]byte(e.Catalogue)); err != nil {
			return fail("catalogue", "catalogue", "%s", sentence(err))
		}
	}
	return e, nil
}

// importKept checks a file of kept quotes and hands it to the page.
func importKept(s *session, a Act) {
	e, err := ReadExport([]byte(a.Value))
	if err != nil {
		s.fault("%s was not taken in; what is kept here stays as it is. %s", a.ID, sentence(err))
		return
	}
	for i := range e.Quotes {
		e.Quotes[i].Weighed = e.Quotes[i].Draft.Lessons()
	}
	data, err := json.Marshal(e)
	if err != nil {
		s.fault("%s was not taken in: %s.", a.ID, err)
		return
	}
	s.step(Step{Do: "import", Text: string(data)})
	s.notice = fmt.Sprintf("%d kept quotes were taken in from %s. None that was here was changed.", len(e.Quotes), clip(a.ID, 100))
}

// shelf is what the page says it keeps, within reason.
func (s *session) shelf(p *papers.Page) {
	p.Saved = slices.Clone(s.req.Saved[:min(len(s.req.Saved), maxKept)])
	for i := range p.Saved {
		if g := s.gist(p.Q); p.Saved[i].Here { // as it is now, not as it was when the page asked
			p.Saved[i].Name, p.Saved[i].Line = g.Name, g.Line
		}
	}
	p.Trail = s.req.Trail[:min(len(s.req.Trail), maxSteps)]
}

// said is what was done in a few words, for the list of earlier states.
func (s *session) said() string {
	if s.notice != "" || len(s.req.Acts) == 0 {
		return clip(s.notice, maxSaid)
	}
	a := s.req.Acts[len(s.req.Acts)-1]
	switch cat := s.app.edition.Cat; {
	case a.Said != "" && (a.Do == "set" || a.Do == "carry"):
		return clip(a.Said, maxSaid)
	case a.Do == "set":
		return strings.NewReplacer(".", ", ", "_", " ").Replace(clip(a.ID, 60)) + ": " + clip(a.Value, 60)
	case a.Do == "start":
		return "begun"
	case cat.OptionByID(a.ID) != nil || cat.ChassisByID(a.ID) != nil || cat.BodyByID(a.ID) != nil:
		return cat.LabelOf(a.ID)
	}
	return ""
}
