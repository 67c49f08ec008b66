package pricing

import (
	"boxwright/config"
	"boxwright/pricing/finance"
)

// Sheet is a price worked out: every line, in the order it was worked out in.
// The amounts of the lines add up to the total, to the cent.
type Sheet struct {
	Currency   string              `json:"currency"`
	On         config.Date         `json:"on"`          // day the price was worked out for
	ValidUntil config.Date         `json:"valid_until"` // last day it stands
	Units      int                 `json:"units"`       // on the whole order
	Lines      []Line              `json:"lines"`
	Subtotals  []Subtotal          `json:"subtotals"`
	Total      Amount              `json:"total"`
	SalesTax   SalesTax            `json:"sales_tax"` // how it stands in the total
	Payments   []Payment           `json:"payments"`  // they add up to the total
	Shares     []Share             `json:"shares"`    // of each single unit in the total; they add up to it
	Lease      *LeasePlan          `json:"lease,omitempty"`
	Service    *finance.Comparison `json:"service,omitempty"` // the quoted unit first
	Rounding   string              `json:"rounding"`          // where and how fractions of a cent are rounded
	Notes      []string            `json:"notes,omitempty"`
	Findings   []config.Finding    `json:"findings,omitempty"`
}

// Line is one step of the price.
type Line struct {
	Code   string   `json:"code"`             // one of the Line codes
	Item   int      `json:"item,omitempty"`   // which unit of the order, from 1; 0 the whole order
	ID     string   `json:"id,omitempty"`     // of the chassis, body or option that is priced
	Label  string   `json:"label"`            // for readers
	Qty    Quantity `json:"qty"`              // over all units of the item
	Each   string   `json:"each"`             // what Qty counts: "each", "unit", "day", "order"
	Price  Amount   `json:"price"`            // for one
	Amount Amount   `json:"amount"`           // Price for Qty of them
	Taxed  bool     `json:"taxed,omitempty"`  // counted in the price that sales tax is on
	How    string   `json:"how"`              // how it came about, in words and figures
	Source string   `json:"source,omitempty"` // key in the price book, or the term or law it rests on
}

// Line codes.
const (
	LineChassis     = "chassis"
	LineBody        = "body"
	LineOption      = "option"
	LineSurcharge   = "surcharge"
	LineCredit      = "credit"
	LineContract    = "contract"
	LineFleet       = "fleet"
	LineDiscount    = "discount"
	LinePrepay      = "prepay"
	LineContractFee = "contract-fee"
	LineFreight     = "freight"
	LineTraining    = "training"
	LineFee         = "fee"
	LineExtra       = "extra"
	LineExcise      = "excise"
	LineTradeIn     = "trade-in"
	LineTax         = "tax"
	LineBond        = "bond"
)

// Subtotal is a sum on the way.
type Subtotal struct {
	Code   string `json:"code"`
	Item   int    `json:"item,omitempty"` // as in Line
	Label  string `json:"label"`
	Amount Amount `json:"amount"`
}

// Subtotal codes.
const (
	SubList   = "list"   // one unit of an item, before credits and discounts
	SubUnit   = "unit"   // one unit of an item, as sold
	SubUnits  = "units"  // all units of the order, as sold
	SubBefore = "before" // everything before taxes, trade-in and bond
	SubTaxed  = "taxed"  // what sales tax is on
)

// Payment is a part of the total and when it is due.
type Payment struct {
	ID     string `json:"id"`
	Label  string `json:"label"`
	Amount Amount `json:"amount"`
	How    string `json:"how"`
}

// Share is what one single unit bears of the total: its own price and its part
// of everything shared.
type Share struct {
	Item   int         `json:"item"`
	Label  string      `json:"label"`
	Due    config.Date `json:"due,omitzero"` // when it is to be delivered, if that was said
	Amount Amount      `json:"amount"`
}

// LeasePlan is the lease of the terms, worked out.
type LeasePlan struct {
	Lease     finance.Lease     `json:"lease"` // with the principal that was financed
	Schedule  *finance.Schedule `json:"schedule"`
	Effective Percent           `json:"effective"` // yearly rate with interest on interest
}

// Figure is the total as a figure to decide by; its limit is the budget, if
// there is one.
func (s *Sheet) Figure(t *Terms) config.Figure {
	f := config.Figure{Code: BudgetCode, Label: "Price of the order", Value: s.Total.Float(), Low: s.Total.Float(),
		High: s.Total.Float(), Unit: s.Currency}
	if t != nil && t.Budget.Sign() > 0 {
		f.Limit, f.Sense, f.Source, f.Basis = t.Budget.Float(), config.AtMost, "the buyer's budget for "+
			s.Basis(), config.Purchaser
	}
	return f
}

// Subtotal finds one by code and item; 0.00 when the sheet has none.
func (s *Sheet) Subtotal(code string, item int) Amount {
	for _, x := range s.Subtotals {
		if x.Code == code && x.Item == item {
			return x.Amount
		}
	}
	return Amount{}
}

// AgreedDiscount is the agreed discount in percent of the units' price before it, to
// two decimals half up.
func (s *Sheet) AgreedDiscount() Percent {
	agreed := s.Sum(LineDiscount).Neg()
	return agreed.PercentOf(s.Subtotal(SubUnits, 0).Add(agreed))
}

// Sum adds the lines of a code.
func (s *Sheet) Sum(code string) Amount {
	var sum Amount
	for _, l := range s.Lines {
		if l.Code == code {
			sum = sum.Add(l.Amount)
		}
	}
	return sum
}
