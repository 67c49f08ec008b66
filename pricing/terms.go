package pricing

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/pricing/finance"
)

// Terms are the buyer's side of a price and what was agreed. The zero Terms
// price one unit at list. Everything is known to the buyer: cost and margin
// have no place here.
type Terms struct {
	Units    int    `json:"units,omitempty"`    // how many alike; 0 counts as 1
	Contract string `json:"contract,omitempty"` // id of a cooperative contract
	Use      string `json:"use,omitempty"`      // one of Uses; empty: an ambulance, unless the body says otherwise

	DiscountPercent Percent `json:"discount_percent,omitzero"` // agreed, on the units after contract and fleet break
	DiscountAmount  Amount  `json:"discount_amount,omitzero"`  // agreed, on the whole order after the percentage
	DiscountReason  string  `json:"discount_reason,omitempty"`

	Prepay     string `json:"prepay,omitempty"`      // id of a chassis prepayment
	PrepayDays int    `json:"prepay_days,omitempty"` // how much earlier it is paid; 0 takes the schedule's

	TradeIn     Amount `json:"trade_in,omitzero"` // allowance, above zero
	TradeInText string `json:"trade_in_text,omitempty"`

	FreightMiles Quantity `json:"freight_miles,omitzero"` // plant to buyer, one way
	TrainingDays Quantity `json:"training_days,omitzero"`
	Fees         []string `json:"fees,omitempty"` // ids of the fees that are charged only when asked for
	Extras       []Extra  `json:"extras,omitempty"`

	Buyer        string   `json:"buyer,omitempty"`    // one of Buyers, who decides the tax assumed; empty not said
	TaxRate      *Percent `json:"tax_rate,omitempty"` // nil takes the book's
	TaxExempt    bool     `json:"tax_exempt,omitempty"`
	Taxed        bool     `json:"taxed,omitempty"`         // the buyer pays sales tax, whoever it is
	ExemptReason string   `json:"exempt_reason,omitempty"` // such as the certificate's number

	Bond bool `json:"bond,omitempty"` // a performance bond is asked for

	DepositPercent Percent     `json:"deposit_percent,omitzero"` // of the total, due with the order
	DepositAmount  Amount      `json:"deposit_amount,omitzero"`  // instead of the percentage
	Milestones     []Milestone `json:"milestones,omitempty"`     // of what the deposit leaves; none takes the book's

	ValidityDays int    `json:"validity_days,omitempty"` // 0 takes the book's
	Budget       Amount `json:"budget,omitzero"`         // the most the whole order may come to; 0 not stated

	// shown beside the payments; a principal of 0 takes the total less the deposit
	Lease   *finance.Lease `json:"lease,omitempty"`
	Service *Service       `json:"service,omitempty"` // the quoted unit against other ways, by what a year costs
}

// Service asks what a year of service costs. This is the quoted unit: its price
// is its share of the total, whatever is written there.
type Service struct {
	Rates  finance.Rates    `json:"rates"`
	This   finance.Choice   `json:"this"`
	Others []finance.Choice `json:"others"` // keep the old one, a remount, another offer
}

// Extra is a line typed in by hand, such as equipment bought with the unit.
type Extra struct {
	Label   string `json:"label"`
	Qty     int    `json:"qty,omitempty"` // 0 counts as 1
	Price   Amount `json:"price"`         // each; negative is an allowance
	Untaxed bool   `json:"untaxed,omitempty"`
}

// The uses that the federal excise rule tells apart.
const (
	UseAmbulance   = "ambulance"
	UseHearse      = "hearse"
	UseCombination = "combination" // ambulance and hearse
	UseOther       = "other"
)

// Uses lists them.
var Uses = []string{UseAmbulance, UseHearse, UseCombination, UseOther}

// Count is the number of units, at least one.
func (t *Terms) Count() int { return max(t.Units, 1) }

// Clone is a deep copy.
func (t *Terms) Clone() Terms {
	c := *t
	c.Fees, c.Extras, c.Milestones = slices.Clone(t.Fees), slices.Clone(t.Extras), slices.Clone(t.Milestones)
	if t.TaxRate != nil {
		rate := *t.TaxRate
		c.TaxRate = &rate
	}
	if t.Lease != nil {
		lease := *t.Lease
		c.Lease = &lease
	}
	if t.Service != nil {
		service := *t.Service
		service.This.Later = slices.Clone(service.This.Later)
		service.Others = slices.Clone(service.Others)
		for i := range service.Others {
			service.Others[i].Later = slices.Clone(service.Others[i].Later)
		}
		c.Service = &service
	}
	return c
}

// Limits on terms, which may come from a stranger's link.
const (
	maxExtras  = 60
	maxExtraOf = 9999
	maxWays    = 7
)

// Check says what of the terms is out of range; an empty answer means that they
// can be priced. Ids are not judged here, since a price book may have dropped
// one: Build leaves such a term out and says so.
func (t *Terms) Check() config.Problems {
	var ps config.Problems
	add := func(code, where, format string, args ...any) {
		ps = append(ps, config.Problem{Code: "terms." + code, Where: where, Text: fmt.Sprintf(format, args...)})
	}
	count := func(where string, n, most int) {
		if n < 0 || n > most {
			add("range", where, "%d is outside 0 to %d", n, most)
		}
	}
	count("units", t.Units, MaxUnits)
	count("prepay_days", t.PrepayDays, maxDays)
	count("validity_days", t.ValidityDays, maxDays)
	count("fees", len(t.Fees), maxEntries)
	count("extras", len(t.Extras), maxExtras)
	count("milestones", len(t.Milestones), maxExtras)
	if t.Use != "" && !slices.Contains(Uses, t.Use) {
		add("value", "use", "%q is not one of %s", t.Use, strings.Join(Uses, ", "))
	}
	if t.Buyer != "" && !slices.ContainsFunc(Buyers, func(b Buyer) bool { return b.ID == t.Buyer }) {
		add("value", "buyer", "%.40q is not one of the buyers known here", t.Buyer)
	}
	if t.Taxed && t.TaxExempt {
		add("value", "taxed", "a buyer is exempt from sales tax or pays it")
	}
	for _, x := range []struct {
		where string
		a     Amount
	}{{"discount_amount", t.DiscountAmount}, {"trade_in", t.TradeIn}, {"deposit_amount", t.DepositAmount}, {"budget",
		t.Budget}} {
		if x.a.Sign() < 0 {
			add("negative", x.where, "%s is below zero; write it without a sign", x.a)
		}
	}
	rates := map[string]Percent{"discount_percent": t.DiscountPercent, "deposit_percent": t.DepositPercent}
	if t.TaxRate != nil {
		rates["tax_rate"] = *t.TaxRate
	}
	for _, where := range []string{"deposit_percent", "discount_percent", "tax_rate"} {
		if p := rates[where]; p.Sign() < 0 || p.Cmp(hundred) > 0 {
			add("range", where, "%s is outside 0 to 100 %%", p)
		}
	}
	if !t.DepositPercent.IsZero() && !t.DepositAmount.IsZero() {
		add("value", "deposit", "a deposit is either a percentage or an amount")
	}
	for _, x := range []struct{ where, text string }{{"contract", t.Contract}, {"prepay", t.Prepay},
		{"discount_reason", t.DiscountReason}, {"trade_in_text", t.TradeInText}, {"exempt_reason", t.ExemptReason}} {
		if len(x.text) > maxText {
			add("too-long", x.where, "is %d bytes; the most is %d", len(x.text), maxText)
		}
	}
	for i, id := range t.Fees {
		if len(id) > maxText {
			add("too-long", fmt.Sprintf("fees[%d]", i), "is %d bytes; the most is %d", len(id), maxText)
		}
	}
	for i, x := range t.Extras {
		w := fmt.Sprintf("extras[%d]", i)
		count(w+" qty", x.Qty, maxExtraOf)
		if strings.TrimSpace(x.Label) == "" || len(x.Label) > maxText {
			add("missing", w+" label", "says what it is, in at most %d bytes", maxText)
		}
	}
	checkMilestones(add, t.Milestones)
	if t.Lease != nil && len(t.Lease.Label) > maxText {
		add("too-long", "lease label", "is %d bytes; the most is %d", len(t.Lease.Label), maxText)
	}
	if t.Service != nil {
		count("service others", len(t.Service.Others), maxWays)
		for i, c := range append([]finance.Choice{t.Service.This}, t.Service.Others...) {
			w := fmt.Sprintf("service way %d", i+1)
			count(w+" later", len(c.Later), maxExtras)
			if len(c.ID)+len(c.Label) > maxText {
				add("too-long", w+" label", "is above %d bytes", maxText)
			}
			for _, o := range c.Later {
				if len(o.Label) > maxText {
					add("too-long", w+" later", "has a label above %d bytes", maxText)
				}
			}
		}
	}
	return ps
}
