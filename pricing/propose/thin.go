package propose

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
)

// sure is the chance of missing a limit up to which a customer need not hear of it first:
// one in twenty.
const sure = 0.05

// isThin reports whether a finding is of a limit that is kept, with a chance of missing
// it that a customer has to hear of.
func isThin(x *config.Finding) bool {
	return x.Severity == config.Warn && x.Figure != nil && x.Figure.Sense != "" && x.Figure.Met() &&
		x.Figure.Chance > sure && x.Basis != config.FromMemory && x.Basis != config.CommonPractice
}

// How much dearer and later a unit with enough to spare may be that is offered before one
// with little. Common practice, no source.
const (
	littleDearer = 0.03
	littleLater  = 7 // days
)

// putBehind counts a unit with too little to spare as missing something where one that was
// looked at with enough costs little more and comes little later.
func putBehind(looks []look) {
	for i := range looks {
		l := &looks[i]
		if l.thin != nil && slices.ContainsFunc(looks, func(o look) bool {
			return o.thin == nil && o.misses <= l.misses && o.unmet <= l.unmet &&
				o.price.Float() <= (1+littleDearer)*l.price.Float() && l.safe.DaysUntil(o.safe) <= littleLater
		}) {
			l.misses++
		}
	}
}

// ofUnit reports whether a finding is of the unit itself, not of its date or price, which
// a proposal names apart.
func ofUnit(x *config.Finding) bool {
	return !strings.HasPrefix(x.Code, "time.") && !strings.HasPrefix(x.Code, "price.")
}

// thinOf are the limits that a quote's unit keeps with too little to spare.
func thinOf(q *quote.Quote) []config.Figure {
	var out []config.Figure
	for _, x := range q.OwnFindings() {
		if isThin(&x) && ofUnit(&x) {
			out = append(out, *x.Figure)
		}
	}
	return out
}

// ThinWords says how little there is to spare of limits, and what would make each sure.
func ThinWords(list []config.Figure, in quantity.System) string {
	var said []string
	for _, f := range list {
		side, missed, most := "under", "over it", f.High-f.Limit
		if f.Sense == config.AtLeast {
			side, missed, most = "over", "short of it", f.Limit-f.Low
		}
		if f.Sense == config.AtLeast && f.Limit == 0 {
			said = append(said, fmt.Sprintf("%s is only %s, and the chance of being short is %s.", f.Label,
				in.Show(f.Value, f.Unit), quantity.Chance(f.Chance)))
			continue
		}
		words := fmt.Sprintf("%s is only %s %s %s, and the chance of being %s is %s.", f.Label,
			in.Show(f.Margin(), f.Unit), side, in.Show(f.Limit, f.Unit), missed, quantity.Chance(f.Chance))
		if f.Unit == quantity.Pound && f.Sense == config.AtMost {
			words += fmt.Sprintf(" With %s less on it that would be safe.", in.Show(math.Ceil(most), f.Unit))
		}
		said = append(said, words)
	}
	return strings.Join(said, " ")
}

// Sounder words what the cheapest of the units that were looked at with enough to spare
// would be, for a proposal without: empty where there is none.
func (s *Search) Sounder(p *Proposal, in quantity.System) string {
	var best *look
	for i := range s.seen.looks {
		l := &s.seen.looks[i]
		if l.thin == nil && l.misses < 100 && (best == nil || l.price.Cmp(best.price) < 0) {
			best = l
		}
	}
	if best == nil || len(p.Thin) == 0 {
		return ""
	}
	cat := s.finder.ed.Cat
	what := cat.LabelOf(best.unit.Chassis)
	if best.unit.Chassis == p.Unit.Chassis {
		what = cat.LabelOf(best.unit.Body)
	}
	said := fmt.Sprintf("What would help: %s, with %s of remaining payload", what,
		in.Show(-best.metric[Lightest], quantity.Pound))
	switch by := best.price.Sub(p.Quote.Price.Total); by.Sign() {
	case 1:
		said += ", " + p.Quote.Price.Currency + " " + by.Show() + " more"
	case -1:
		said += ", " + p.Quote.Price.Currency + " " + by.Neg().Show() + " less"
	}
	if days := p.Quote.Plan.NineInTen.DaysUntil(best.safe); days > 0 {
		said += ", " + quote.Days(days) + " later"
	} else if days < 0 {
		said += ", " + quote.Days(-days) + " earlier"
	}
	return said + "."
}
