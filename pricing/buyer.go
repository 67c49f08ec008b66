package pricing

import (
	"fmt"
	"slices"
)

// A Buyer is a kind of buyer, by which sales tax is assumed.
type Buyer struct {
	ID    string
	Label string // with its article, as in a sentence
}

// Buyers are the kinds of buyer.
var Buyers = []Buyer{
	{"county", "a county"},
	{"city", "a city"},
	{"fire-district", "a fire district"},
	{"hospital", "a hospital"},
	{"private", "a private service"},
}

// PublicBodies are the kinds of buyer that pay no sales tax until said otherwise,
// where a price book does not say who. Common practice, no source.
var PublicBodies = []string{"county", "city", "fire-district"}

// BuyerLabel is a kind of buyer in words; "a buyer" where it is not said.
func BuyerLabel(id string) string {
	if i := slices.IndexFunc(Buyers, func(b Buyer) bool { return b.ID == id }); i >= 0 {
		return Buyers[i].Label
	}
	return "a buyer"
}

// spares reports whether a kind of buyer is exempt until said otherwise.
func (t *Tax) spares(buyer string) bool {
	list := t.ExemptBuyers
	if list == nil {
		list = PublicBodies
	}
	return slices.Contains(list, buyer)
}

// Exempt reports whether an order is priced without sales tax, and whether that is
// assumed of who buys rather than said. It is said where the terms choose it, where
// a rate is typed in, and where a certificate is named.
func (t *Terms) Exempt(tax *Tax) (exempt, assumed bool) {
	if t.TaxExempt || t.Taxed || t.TaxRate != nil {
		return t.TaxExempt, false
	}
	exempt = tax.spares(t.Buyer)
	return exempt, exempt && t.ExemptReason == ""
}

// KeepBuyer takes over what was said of the buyer in other terms: who buys, what tax
// is paid, and the budget.
func (t *Terms) KeepBuyer(of *Terms) {
	t.Buyer, t.TaxRate, t.TaxExempt, t.Taxed, t.ExemptReason, t.Budget = of.Buyer, of.TaxRate, of.TaxExempt, of.Taxed,
		of.ExemptReason, of.Budget
}

// rateOf is the sales tax rate of an order, and where it comes from.
func (t *Terms) rateOf(tax *Tax) (rate Percent, source string) {
	if t.TaxRate != nil {
		return *t.TaxRate, "tax_rate"
	}
	return tax.Rate, "tax"
}

// SalesTax is how sales tax stands in a price.
type SalesTax struct {
	Label   string  `json:"label"`
	Buyer   string  `json:"buyer,omitempty"` // kind of buyer; empty where it is not said
	Rate    Percent `json:"rate,omitzero"`   // that is charged, or would be
	Amount  Amount  `json:"amount,omitzero"` // within the total
	Exempt  bool    `json:"exempt,omitempty"`
	Assumed bool    `json:"assumed,omitempty"` // of who buys, until said otherwise
	Would   Amount  `json:"would,omitzero"`    // what it would come to for a buyer who is not exempt
}

// Words says how much of a total is sales tax.
func (s *SalesTax) Words() string { return s.words("sales tax of ") }

// UnderHead is Words where the head beside it says that it is sales tax.
func (s *SalesTax) UnderHead() string { return s.words("") }

func (s *SalesTax) words(of string) string {
	switch {
	case s.Exempt && s.Assumed:
		return fmt.Sprintf("No sales tax: %s is taken as exempt", BuyerLabel(s.Buyer))
	case s.Exempt:
		return "No sales tax: the buyer is exempt"
	case s.Rate.IsZero():
		return "No sales tax: the rate is 0 %"
	}
	return fmt.Sprintf("Includes %s%s, %s", of, s.Amount.Show(), s.Rate.Show())
}

// Basis says what a budget is compared with: how many units, with or without tax.
func (s *Sheet) Basis() string {
	units := "the unit"
	if s.Units > 1 {
		units = fmt.Sprintf("all %d units", s.Units)
	}
	if s.SalesTax.Exempt || s.SalesTax.Amount.IsZero() {
		return units + ", no sales tax"
	}
	return units + ", sales tax included"
}

// EachWords says what one of several units comes to; empty for a single unit.
func (s *Sheet) EachWords() string {
	if s.Units < 2 {
		return ""
	}
	low, high := s.Shares[0].Amount, s.Shares[0].Amount
	for _, x := range s.Shares {
		if x.Amount.Cmp(low) < 0 {
			low = x.Amount
		}
		if x.Amount.Cmp(high) > 0 {
			high = x.Amount
		}
	}
	if s.Shares[len(s.Shares)-1].Item == 1 {
		return fmt.Sprintf("%d units at %s each", s.Units, s.Each(1))
	}
	return fmt.Sprintf("%d units at %s to %s each", s.Units, low.Show(), high.Show())
}

// Each is what one unit of an item comes to, to the cent where it cannot be shared
// out evenly; items count from 1.
func (s *Sheet) Each(item int) string {
	var first Amount
	n := 0
	for _, x := range s.Shares {
		if x.Item != item {
			continue
		}
		if n++; n == 1 {
			first = x.Amount
		} else if !x.Amount.Equal(first) {
			return "about " + first.Show()
		}
	}
	return first.Show()
}
