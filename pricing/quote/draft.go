// Package quote is the document model: the draft a person works on, everything
// computed from it, and what is printed, compared and linked.
package quote

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/weight"
	"boxwright/pricing"
)

// DraftFormat is the value of Draft.Format this program reads.
const DraftFormat = "boxwright-quote/1"

// Limits on a draft that comes from outside; the first is checked before it is decoded.
const (
	MaxDraftBytes = 512 << 10
	MaxText       = 400
	maxNotes      = 4000
	maxLink       = 16 << 10
)

// Draft is a quote being worked on: the unit, the terms and the parties. It is
// the whole state of the page that matters; everything else is computed.
type Draft struct {
	Format string      `json:"format"`
	Number string      `json:"number"` // the seller's number of the quote
	Rev    int         `json:"rev"`    // 0 for the first issue
	Date   config.Date `json:"date"`   // day the quote is dated
	Title  string      `json:"title"`  // what the buyer calls the unit
	Seller Party       `json:"seller"`
	Buyer  Party       `json:"buyer"`
	Notes  string      `json:"notes,omitempty"` // printed in the quote

	Unit  config.Unit   `json:"unit"`
	Terms pricing.Terms `json:"terms"`
	At    int           `json:"at,omitempty"`   // place of Unit among all units of the quote
	More  []Item        `json:"more,omitempty"` // the others, in their order

	Tickets []weight.Ticket `json:"tickets,omitempty"` // scale tickets that correct the weights
	Wiring  Wiring          `json:"wiring,omitzero"`   // how the circuit schedule is sized

	Needs        Needs         `json:"needs,omitzero"`         // what proposals answer
	Requirements []Requirement `json:"requirements,omitempty"` // the buyer's list, line by line
	Readings     []Reading     `json:"readings,omitempty"`     // from the test sheet, sorted by check

	Prev    string `json:"prev,omitempty"`    // names the quote that this one revises, by the hash of its link
	Earlier string `json:"earlier,omitempty"` // that link, where it is at hand; no link carries it
	Issued  string `json:"issued,omitempty"`  // the signed link, while the draft is what was signed; no link carries it
}

// AsksBack reports whether it is a reader's own copy of the quote it names: what they ask for
// otherwise, and nobody's offer.
func (d *Draft) AsksBack() bool { return d.Prev != "" && d.Rev == 0 }

// FirstOrder is the first day on which the quote can be ordered: the day it is dated,
// or today where that is later.
func (d *Draft) FirstOrder(today config.Date) config.Date {
	if d.Date.Before(today) {
		return today
	}
	return d.Date
}

// Ordered says why no order can be placed on a day, or nil.
func (d *Draft) Ordered(on config.Date) error {
	if !on.IsZero() && on.Before(d.Date) {
		return fmt.Errorf("no order comes before the day of the quote, %s: take a day from then on, or date the "+
			"quote earlier", d.Date.Long())
	}
	return nil
}

// Party is one side of the quote.
type Party struct {
	Name    string `json:"name,omitempty"`
	Person  string `json:"person,omitempty"`
	Address string `json:"address,omitempty"`
	Reach   string `json:"reach,omitempty"` // telephone or mail
}

// ReadDraft decodes a draft strictly and checks what does not need a
// catalogue. The error is a config.Problems.
func ReadDraft(data []byte) (*Draft, error) {
	if len(data) > MaxDraftBytes {
		return nil, config.Problems{{Code: "draft.too-large", Where: "the draft",
			Text: fmt.Sprintf("is %d bytes; the most that is read is %d", len(data), MaxDraftBytes)}}
	}
	d := new(Draft)
	if p := config.DecodeStrict(data, d); p != nil {
		p.Code = "draft." + p.Code
		return nil, config.Problems{*p}
	}
	if letters.Wild(data) {
		config.Calm(d)
	}
	d.moveDrops()
	if ps := d.Check(); len(ps) > 0 {
		return nil, ps
	}
	return d, nil
}

// Check says what of the draft is out of range, whatever the catalogue.
func (d *Draft) Check() config.Problems {
	ps := d.Terms.Check()
	if d.Format != DraftFormat {
		ps = append(ps, config.Problem{Code: "draft.format", Where: "format",
			Text: fmt.Sprintf("is %q; this program reads %q", d.Format, DraftFormat)})
	}
	for _, f := range []struct {
		where, text string
		most        int
	}{
		{"prev", d.Prev, 60}, {"earlier", d.Earlier, maxLink}, {"issued", d.Issued, maxLink},
		{"number", d.Number, 60}, {"title", d.Title, MaxText}, {"notes", d.Notes, maxNotes},
		{"seller name", d.Seller.Name, MaxText}, {"seller person", d.Seller.Person, MaxText}, {"seller address", d.Seller.Address, MaxText}, {"seller reach", d.Seller.Reach, MaxText},
		{"buyer name", d.Buyer.Name, MaxText}, {"buyer person", d.Buyer.Person, MaxText}, {"buyer address", d.Buyer.Address, MaxText}, {"buyer reach", d.Buyer.Reach, MaxText},
	} {
		if len(f.text) > f.most {
			ps = append(ps, config.Problem{Code: "draft.too-long", Where: f.where,
				Text: letters.TooLong(f.text, f.most)})
		}
	}
	if d.Rev < 0 || d.Rev > 999 {
		ps = append(ps, config.Problem{Code: "draft.range", Where: "rev", Text: "a revision is 0 to 999"})
	}
	ps = append(ps, d.Unit.CheckIDs()...)
	for i := range d.More {
		ps = append(ps, d.More[i].Unit.CheckIDs()...)
	}
	return append(append(append(ps, d.checkEngineering()...), d.checkFleet()...), d.checkNeeds()...)
}

// Bytes is the canonical form of the draft: the same draft always gives the
// same bytes. It fails only on a number that is not finite.
func (d *Draft) Bytes() ([]byte, error) { return json.Marshal(d) }

// Fingerprint names the content of the draft: the first 12 hex digits of the
// SHA-256 over its canonical form.
func (d *Draft) Fingerprint() string {
	data, err := d.Bytes()
	if err != nil {
		return "unknown"
	}
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:6])
}

// Clone is a deep copy.
func (d *Draft) Clone() *Draft {
	c := *d
	c.Unit = d.Unit.Clone()
	c.Terms = d.Terms.Clone()
	c.Tickets = cloneTickets(d.Tickets)
	c.More = cloneItems(d.More)
	c.Needs = d.Needs.clone()
	c.Requirements, c.Readings = slices.Clone(d.Requirements), slices.Clone(d.Readings)
	return &c
}
