// Package costs is the seller's private side of a price: what each line costs,
// the margin, what a discount does to it, and how far each role may go. Nothing
// of it may reach a quote, a print or a link: packages that make those must not
// import this one (a test sees to it), and a cost sheet is stored sealed only.
package costs

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/money"
	"boxwright/pricing/seal"
)

// Format is the value of Sheet.Format this program reads.
const Format = "boxwright-costs/1"

// purpose binds a sealed cost sheet to being one.
const purpose = "costs"

// Sheet is a private cost sheet.
type Sheet struct {
	Format    string `json:"format"`    // always Format
	Catalogue string `json:"catalogue"` // id of the catalogue it belongs to
	Title     string `json:"title"`
	// Costs by the same keys as prices, for each one.
	Costs map[string]money.Amount `json:"costs,omitempty"`
	// Shares of the list price that stand for the cost where Costs has no key;
	// by line code: "chassis", "body", "option".
	Shares map[string]money.Percent `json:"shares,omitempty"`
	// Charges are the shares of other lines' amounts that are cost, by line
	// code; Passed has those that are left out.
	Charges   map[string]money.Percent `json:"charges,omitempty"`
	Overheads []Overhead               `json:"overheads,omitempty"`
	Roles     []Role                   `json:"roles,omitempty"`
}

// Overhead is a cost of each unit that is on no line of the price.
type Overhead struct {
	ID     string       `json:"id"`
	Label  string       `json:"label"`
	Amount money.Amount `json:"amount"`
}

// Role is who may agree to what.
type Role struct {
	ID          string        `json:"id"`
	Label       string        `json:"label"`
	MaxDiscount money.Percent `json:"max_discount"` // agreed discount, of the units' price
	MinMargin   money.Percent `json:"min_margin"`   // of the price kept
}

// Passed is the share of a line's amount that is cost where the cost sheet does not
// say: all of what is paid on to others, nothing of what is taken off the price.
var Passed = map[string]money.Percent{
	pricing.LineSurcharge: whole, pricing.LineContractFee: whole, pricing.LineFreight: whole,
	pricing.LineTraining: whole,
	pricing.LineFee:      whole, pricing.LineExtra: whole, pricing.LineExcise: whole, pricing.LineTradeIn: whole,
	pricing.LineTax: whole, pricing.LineBond: whole,
	pricing.LineCredit: none, pricing.LineContract: none, pricing.LineFleet: none, pricing.LineDiscount: none,
	pricing.LinePrepay: none,
}

var (
	whole = money.PercentOf(decimal.NewFromInt(100))
	none  money.Percent
)

// listed are the line codes that have costs by key.
var listed = []string{pricing.LineChassis, pricing.LineBody, pricing.LineOption}

// outside are the lines that are no price the seller keeps: a margin is not
// counted on them.
var outside = []string{pricing.LineExcise, pricing.LineTradeIn, pricing.LineTax, pricing.LineBond}

const (
	maxText    = 400
	maxEntries = 200
)

// Read decodes a cost sheet strictly and checks it against its catalogue and
// price book. The error is a config.Problems. Its texts quote nothing of the
// sheet but keys.
func Read(file []byte, cat *config.Catalogue, b *pricing.Book) (*Sheet, error) {
	if len(file) > seal.MaxBytes {
		return nil, config.Problems{{Code: "costs.too-large", Where: "the cost sheet",
			Text: fmt.Sprintf("is %d bytes; the most that is read is %d", len(file), seal.MaxBytes)}}
	}
	s := new(Sheet)
	p := pricing.Decode(file, s)
	if p == nil {
		p = config.Repeated(file)
	}
	if p != nil {
		p.Code = "costs." + p.Code
		return nil, config.Problems{*p}
	}
	if ps := s.check(cat, b); len(ps) > 0 {
		return nil, ps
	}
	return s, nil
}

// Open reads a sealed cost sheet.
func Open(sealed []byte, passphrase string, cat *config.Catalogue, b *pricing.Book) (*Sheet, error) {
	file, err := seal.Open(purpose, passphrase, sealed)
	if err != nil {
		return nil, err
	}
	return Read(file, cat, b)
}

// Seal makes a cost sheet's file fit for storage. Random is as in seal.Seal.
func Seal(random io.Reader, passphrase string, file []byte) ([]byte, error) {
	return seal.Seal(random, purpose, passphrase, file)
}

func (s *Sheet) check(cat *config.Catalogue, b *pricing.Book) config.Problems {
	var ps config.Problems
	add := func(code, where, format string, args ...any) {
		ps = append(ps, config.Problem{Code: "costs." + code, Where: where, Text: fmt.Sprintf(format, args...)})
	}
	if s.Format != Format {
		add("format", "format", "is %.40q; this program reads %q", s.Format, Format)
		return ps
	}
	if s.Catalogue != cat.ID {
		add("catalogue", "catalogue", "is for %.60q, but the catalogue loaded is %q", s.Catalogue, cat.ID)
	}
	if len(s.Title) > maxText || len(s.Overheads) > maxEntries || len(s.Roles) > maxEntries {
		add("too-large", "the cost sheet", "has a title above %d bytes or a list above %d entries", maxText, maxEntries)
		return ps
	}
	s.checkCosts(add, cat, b)
	s.checkShares(add)
	seen := map[string]bool{}
	named := func(where, id, label string) {
		if !config.ValidID(id) || seen[where[:4]+id] {
			add("id", where, "an id is 1 to 48 small letters, digits and hyphens, and stands once")
		}
		seen[where[:4]+id] = true
		if strings.TrimSpace(label) == "" || len(label) > maxText {
			add("missing", where+" label", "needs a text of at most %d bytes", maxText)
		}
	}
	for i, o := range s.Overheads {
		w := fmt.Sprintf("overheads[%d]", i)
		named(w, o.ID, o.Label)
		if o.Amount.Sign() < 0 {
			add("negative", w+" amount", "is below zero")
		}
	}
	for i, r := range s.Roles {
		w := fmt.Sprintf("roles[%d]", i)
		named(w, r.ID, r.Label)
		if r.MaxDiscount.Sign() < 0 || r.MaxDiscount.Cmp(whole) > 0 || r.MinMargin.Cmp(whole) > 0 {
			add("range", w, "max_discount is 0 to 100 %%, min_margin at most 100 %%")
		}
	}
	return ps
}

type adder func(code, where, format string, args ...any)

// checkCosts wants a cost, or a share, for everything that has a price.
func (s *Sheet) checkCosts(add adder, cat *config.Catalogue, b *pricing.Book) {
	known := map[string]bool{}
	need := func(code, key string) {
		known[key] = true
		if _, ok := s.Costs[key]; ok {
			return
		}
		if _, ok := s.Shares[code]; !ok {
			add("missing-cost", fmt.Sprintf("costs %q", key),
				"has a price but neither a cost nor a share of its list price for %q", code)
		}
	}
	for _, c := range cat.Chassis {
		need(pricing.LineChassis, c.ID)
	}
	for _, c := range cat.Bodies {
		need(pricing.LineBody, c.ID)
	}
	for i := range cat.Options {
		need(pricing.LineOption, pricing.KeyOf(&cat.Options[i]))
	}
	for _, key := range slices.Sorted(maps.Keys(s.Costs)) {
		if _, ok := b.Prices[key]; !known[key] || !ok {
			add("unknown-key", fmt.Sprintf("costs %.60q", key), "is no key of the price book")
		}
	}
}

func (s *Sheet) checkShares(add adder) {
	for _, code := range slices.Sorted(maps.Keys(s.Shares)) {
		if !slices.Contains(listed, code) {
			add("unknown-key", fmt.Sprintf("shares %.60q", code), "is not one of %s", strings.Join(listed, ", "))
		}
		if p := s.Shares[code]; p.Sign() < 0 {
			add("negative", "shares "+code, "is below zero")
		}
	}
	for _, code := range slices.Sorted(maps.Keys(s.Charges)) {
		if _, ok := Passed[code]; !ok {
			add("unknown-key", fmt.Sprintf("charges %.60q", code), "is no line code beside chassis, body and option")
		}
		if p := s.Charges[code]; p.Sign() < 0 {
			add("negative", fmt.Sprintf("charges %.60q", code), "is below zero")
		}
	}
}
