package session

import (
	"cmp"
	"fmt"
	"strings"

	"boxwright/config/letters"
	"boxwright/config/weight"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
)

// The page keeps quotes in the browser by itself. The core names them for the
// list, and checks a file of kept quotes before anything of it is taken in.

// MaxSaid bounds what the list of earlier states says of each.
const MaxSaid = 600

// Gist is how a quote is called in the list of those kept.
type Gist struct {
	Name   string `json:"name"`
	Line   string `json:"line"`
	Issued string `json:"issued,omitempty"` // its signed link
	Number string `json:"number,omitempty"` // of a signed quote
	Rev    int    `json:"rev,omitempty"`    // of a signed quote

	Weighed []weight.Ticket `json:"weighed,omitempty"` // what other quotes can learn from it
}

// GistOf is how the list calls a quote of the edition in use.
func GistOf(q *quote.Quote) Gist {
	d := q.Draft
	g := Gist{Name: letters.Isolate(cmp.Or(d.Title, q.Chassis.Label)), Issued: d.Issued}
	g.Line = q.Total()
	if n := q.Price.Units; n > 1 {
		g.Line = fmt.Sprintf("%d units, %s", n, g.Line)
	}
	if d.Buyer.Name != "" {
		g.Line = letters.Isolate(d.Buyer.Name) + " · " + g.Line
	}
	if d.Number != "" {
		g.Line = letters.Isolate(d.Number) + " · " + g.Line
	}
	if d.Rev > 0 {
		g.Line += fmt.Sprintf(" · revision %d", d.Rev)
	}
	if d.Issued != "" {
		g.Line += " · signed"
		g.Number, g.Rev = d.Number, d.Rev
	}
	return g
}

// Gist is that of the quote in work. One that is read, or is of another edition, is not
// called by a price that it does not have.
func (s *Session) Gist(q *quote.Quote) Gist {
	g := GistOf(q)
	frozen := s.View.Frozen
	if s.Other != nil {
		if frozen == nil && s.Other.Issued != "" {
			frozen = link.FrozenIn(s.Memory.Edition.Cat, s.Other.Issued)
		}
		g.Name, g.Line = NameOf(s.Memory.Edition.Cat, s.Other)
		if frozen != nil {
			g.Line += " · " + frozen.Total
		}
		g.Line, g.Issued = strings.TrimPrefix(g.Line+" · made with another edition of the catalogue", " · "),
			s.Other.Issued
		if g.Issued != "" {
			g.Line += " · signed"
			g.Number, g.Rev = s.Other.Number, s.Other.Rev
		}
	} else if frozen != nil {
		g.Line = strings.Replace(g.Line, q.Total(), frozen.Total, 1)
	}
	return g
}
