package bid

import (
	"boxwright/config"
	"boxwright/pricing"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
)

// price is the list price of a thing.
func (j *judge) price(id string) float64 {
	return pricing.PriceOf(j.q.Book, j.q.Edition.Cat, id).Float()
}

// PriceOf is what taking something adds to the list price, less what gives way to it.
func PriceOf(q *quote.Quote, t Take) pricing.Amount {
	cat := q.Edition.Cat
	sum := pricing.PriceOf(q.Book, cat, t.ID)
	o := cat.OptionByID(t.ID)
	if o == nil {
		was := q.Chassis.ID
		if cat.BodyByID(t.ID) != nil {
			was = q.Body.ID
		}
		return sum.Sub(pricing.PriceOf(q.Book, cat, was))
	}
	for range t.Qty - 1 - q.Draft.Unit.Qty(t.ID) {
		sum = sum.Add(pricing.PriceOf(q.Book, cat, t.ID))
	}
	if cat.GroupByID(o.Group).Choose != config.ChooseAny {
		for _, m := range cat.Members(o.Group) {
			if other := cat.Options[m].ID; q.Draft.Unit.Has(other) {
				sum = sum.Sub(pricing.PriceOf(q.Book, cat, other))
			}
		}
	}
	return sum
}

// MassOf is what taking something adds to the unit's weight, lb, less what gives way
// to it.
func MassOf(q *quote.Quote, t Take) float64 {
	cat := q.Edition.Cat
	o := cat.OptionByID(t.ID)
	if o == nil {
		return 0
	}
	mass := func(o *config.Option) float64 {
		if o.Mass == nil {
			return 0
		}
		return float64(o.Mass.Lb)
	}
	sum := mass(o) * float64(max(t.Qty-q.Draft.Unit.Qty(t.ID), 1))
	if cat.GroupByID(o.Group).Choose != config.ChooseAny {
		for _, m := range cat.Members(o.Group) {
			if other := &cat.Options[m]; q.Draft.Unit.Has(other.ID) {
				sum -= mass(other)
			}
		}
	}
	return sum
}

// Taken is what becomes of the unit when lines are met.
type Taken struct {
	Unit    config.Unit
	Lines   int   // that could be met
	Refused []int // positions of those that no longer could
}

// TakeAnswers puts into the unit what the lines would be met with: one of them,
// or all, in the order of the list.
func TakeAnswers(q *quote.Quote, lines []Answer) Taken {
	on := q.Draft.Clone()
	var out Taken
	for _, a := range lines {
		if len(a.Takes) == 0 || a.Outcome != quote.MeetsWith {
			continue
		}
		with := on.Clone()
		ok := true
		for _, t := range a.Takes {
			ok = ok && take(q.Edition, with, t)
		}
		if !ok {
			out.Refused = append(out.Refused, a.At)
			continue
		}
		on = with
		out.Lines++
	}
	out.Unit = on.Unit
	return out
}

// take puts one thing into a draft's unit; false when it does not go with the rest.
func take(ed *quote.Edition, d *quote.Draft, t Take) bool {
	var full config.Unit
	ok := false
	switch {
	case ed.Cat.OptionByID(t.ID) != nil:
		if d.Unit.Qty(t.ID) >= max(t.Qty, 1) {
			return true
		}
		with := d.Clone()
		if t.Qty > 1 {
			with.Unit.Set(config.Pick{Option: t.ID, Qty: t.Qty})
		}
		full, _, ok = propose.Take(ed, with, t.ID)
	case ed.Cat.ChassisByID(t.ID) != nil:
		with := d.Clone()
		with.Unit.Chassis = t.ID
		full, _, ok = ed.Rules.Fill(&with.Unit, quote.Limits(ed, with))
	default:
		with := d.Clone()
		with.Unit.Body = t.ID
		full, _, ok = ed.Rules.Fill(&with.Unit, quote.Limits(ed, with))
	}
	if ok {
		d.Unit = full
	}
	return ok
}
