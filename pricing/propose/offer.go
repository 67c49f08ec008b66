package propose

import (
	"cmp"
	"slices"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/pricing/quote"
)

// FewChanges is how many filled-in things may give way to a choice without the
// customer being asked first.
const FewChanges = 4

// Offer is a way to take something that goes with the customer's own choices,
// and what it changes of the rest.
type Offer struct {
	Chassis string // another chassis to take it on; empty for the present one
	Unit    config.Unit
	Changes []rules.Change
	Price   pricing.Amount // total less the present total
}

// mostOffers is how many other chassis are offered, and offersTried what trying them
// may take: one for each of so many options.
const (
	mostOffers  = 2
	offersTried = 20_000
)

// Take completes the unit with one of an option in it, in place of its rivals.
// It is false when the result cannot keep every rule and limit.
func Take(ed *quote.Edition, d *quote.Draft, id string) (config.Unit, []rules.Change, bool) {
	return take(ed, d, id, quote.Limits)
}

// take is Take within other limits.
func take(
	ed *quote.Edition, d *quote.Draft, id string, limits func(*quote.Edition, *quote.Draft) *rules.Limits,
) (config.Unit, []rules.Change, bool) {
	ed = ed.For(&d.Unit)
	u := with(ed, d, id)
	on := *d
	on.Unit = u
	return ed.Rules.Restore(&u, limits(ed, &on))
}

// takeElsewhere is Take on a chassis that is only tried.
func takeElsewhere(ed *quote.Edition, d *quote.Draft, id, chassis string) (config.Unit, []rules.Change, bool) {
	on := *d
	on.Unit = d.Unit.Clone()
	on.Unit.Chassis = chassis
	ed = ed.For(&on.Unit)
	on.Unit = with(ed, &on, id)
	return ed.Rules.RestoreElsewhere(&on.Unit, quote.Limits(ed, &on))
}

// with is the unit of a draft with an option in it, in place of its rivals.
func with(ed *quote.Edition, d *quote.Draft, id string) config.Unit {
	cat, u := ed.Cat, d.Unit.Clone()
	o := cat.OptionByID(id)
	qty := max(u.Qty(id), 1)
	if g := cat.GroupByID(o.Group); g.Choose != config.ChooseAny {
		for _, m := range cat.Members(g.ID) {
			rival := &cat.Options[m]
			u.Drop(rival.ID)
			u.LeaveOut(rival.ID, rival.Standard)
		}
	}
	u.LeaveOut(id, false)
	u.Set(config.Pick{Option: id, Qty: qty})
	return u
}

// Offers lists the ways to take an option: on the present chassis, and on the
// chassis that change less, the fewest changes first. The present chassis goes first, but
// what leaves less than is uncertain stands after what leaves more. It reports
// whether all chassis were tried: of a large catalogue only the first are.
func Offers(q *quote.Quote, id string) (list []Offer, all bool) {
	ed, d := q.Edition, q.Draft
	if ed.Cat.OptionByID(id) == nil {
		return nil, true
	}
	offer := func(chassis string) (Offer, bool) {
		on := d.Clone()
		full, changes, ok := config.Unit{}, []rules.Change(nil), false
		if chassis == "" {
			if full, changes, ok = Take(ed, on, id); ok {
				full, changes = fewest(ed.For(&on.Unit), on, full, changes)
			}
		} else {
			full, changes, ok = takeElsewhere(ed, on, id, chassis)
		}
		if !ok {
			return Offer{}, false
		}
		on.Unit = full
		o := Offer{Chassis: chassis, Unit: full, Changes: changes}
		if s, err := quote.PriceAll(ed, on); err == nil {
			o.Price = s.Total.Sub(q.Price.Total)
		}
		return o, true
	}
	here, fits := offer("")
	if !fits {
		return nil, true
	}
	var others []Offer
	tries := offersTried / len(ed.Cat.Options)
	for i := range ed.Cat.Chassis {
		c := ed.Cat.Chassis[i].ID
		if c == d.Unit.Chassis {
			continue
		}
		if tries--; tries < 0 {
			break
		}
		if q.State(c) == rules.RuledOut {
			continue
		}
		ed.Rules.Pauses().Rest()
		if o, ok := offer(c); ok && len(o.Changes) < len(here.Changes) {
			others = append(others, o)
		}
	}
	slices.SortStableFunc(others, func(a, b Offer) int {
		return cmp.Or(cmp.Compare(len(a.Changes), len(b.Changes)), a.Price.Cmp(b.Price))
	})
	list = append([]Offer{here}, others[:min(len(others), mostOffers)]...)
	slices.SortStableFunc(list, func(a, b Offer) int { return cmp.Compare(riskOf(q, &a.Unit), riskOf(q, &b.Unit)) })
	return list, tries >= 0
}

// riskOf is the greatest chance that a unit misses a limit, in percent, see Risk.
func riskOf(q *quote.Quote, u *config.Unit) int {
	_, percent := Risk(q, u, quantity.US)
	return percent
}

// Words is the label of an offer.
func (o *Offer) Words(cat *config.Catalogue) string {
	if o.Chassis != "" {
		return "Take it on " + cat.LabelOf(o.Chassis)
	}
	return "Take it here"
}
