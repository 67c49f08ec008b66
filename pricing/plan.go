package pricing

import (
	"strings"

	"boxwright/config"
	"boxwright/pricing/finance"
)

// lease works the lease of the terms out, on the total less the deposit unless
// the terms name a principal.
func (o *order) lease() {
	if o.t.Lease == nil {
		return
	}
	l := *o.t.Lease
	if l.Principal.IsZero() {
		l.Principal = o.sheet.Total
		for _, p := range o.sheet.Payments {
			if p.ID == depositID {
				l.Principal = l.Principal.Sub(p.Amount)
			}
		}
	}
	schedule, err := l.Schedule()
	if err != nil {
		o.find("lease", config.Warn, "lease", "The lease cannot be worked out: "+plain(err)+".",
			"Change the lease's rate, number of payments or balloon.")
		return
	}
	effective, err := l.Effective()
	if err != nil {
		return // the schedule has passed the same check
	}
	o.sheet.Lease = &LeasePlan{l, schedule, effective}
	o.find("lease-offer", config.Note, "lease", "The lease is worked out at the rate that was typed in; it is no "+
		"offer of credit.", "Ask the lessor for its own schedule.")
}

// service compares what a year costs.
func (o *order) service() {
	s := o.t.Service
	if s == nil || len(s.Others) == 0 {
		return
	}
	this := s.This
	this.Price = o.sheet.Shares[0].Amount
	if this.Label == "" {
		this.Label = "This quote"
	}
	c, err := finance.Compare(append([]finance.Choice{this}, s.Others...), s.Rates)
	if err != nil {
		o.find("service", config.Warn, "years of service", "The ways cannot be compared: "+plain(err)+".",
			"Change the figures of that way.")
		return
	}
	o.sheet.Service = c
}

// plain is what an error says to a reader.
func plain(err error) string { return strings.TrimPrefix(err.Error(), "finance: ") }
