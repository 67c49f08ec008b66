package bid

import (
	"iter"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/power"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/space"
	"boxwright/config/standards"
	"boxwright/pricing"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

// sections are the parts of the quote by the beginning of a figure's code.
var sections = []struct {
	code string
	at   quote.Section
}{{"weight.", quote.WeightsSection}, {"power.", quote.ElectricalSection}, {factHotIdle, quote.ElectricalSection},
	{factCold, quote.ElectricalSection}, {ratioScene, quote.ElectricalSection}, {"space.", quote.SpaceSection},
	{marginFront, quote.WeightsSection}, {marginRear, quote.WeightsSection},
	{shareFrontReserve, quote.WeightsSection}, {shareRearReserve, quote.WeightsSection},
	{"gvwr", quote.WeightsSection}, {"gawr", quote.WeightsSection}, {countCompartments, quote.SpaceSection},
	{countBench, quote.SpaceSection}, {countCab, quote.SpaceSection}, {countModule, quote.SpaceSection},
	{factDelivery, quote.DeliverySection}, {factPrice, quote.PriceSection}}

func sectionOf(code string) string {
	for _, s := range sections {
		if strings.HasPrefix(code, s.code) {
			return s.at.Place()
		}
	}
	return quote.SpecificationSection.Place()
}

// figure answers a claim on a figure of the unit.
func (j *judge) figure(c *claim) part {
	g := c.gauge
	if g.code == factDelivery {
		return j.due(c)
	}
	p := part{outcome: quote.Unanswered, read: g.label, where: sectionOf(g.code)}
	f, ok := factOf(j.q, g)
	if !ok {
		return p
	}
	f.Label = g.label
	show := func(v float64) string {
		if g.unit == claims.Money {
			return j.q.Price.Currency + " " + quantity.Group(v, 2)
		}
		return show(j.in, v, countUnit(g.code, g.unit))
	}
	if g.code != ratioScene {
		f.Limit, f.Sense = c.want, c.sense
	}
	p.read = f.Label + ", " + senseWords(f.Sense, c.beyond) + " " + show(f.Limit)
	p.offered = f.Label + ": " + show(f.Value)
	// What is asked for and the figure as it is printed may differ by less than a
	// reader sees.
	same := show(f.Value) == show(f.Limit) && math.Abs(f.Value-f.Limit) <= asPrinted*f.Limit
	switch {
	case c.beyond && same:
	case c.bare() && g.code == factPrice && c.want < leastPrice*f.Value:
		return p // an amount that says not of what is hardly the price of the unit
	case c.sense == atLeast && (slices.Contains(overall, g.code) || c.want < leastLikely*f.Value):
		return p // of something else, "opening 66 in high", "device of 35 lb"
	case same, f.Met() && (c.stated || !g.exact):
		if !(g.code == factPrice && slices.ContainsFunc(c.words, func(w string) bool { return delivering[w] })) ||
			j.delivered() {
			p.outcome = quote.Meets
		}
		return p
	case g.exact && !c.stated:
		p.read = f.Label + ", " + show(f.Limit)
		return p // which way it binds is not said
	}
	if net := f.Value - salesTax(j.q); g.code == factPrice && f.Sense == atMost && net < f.Value && net <= c.want {
		p.offered += ", of it sales tax " + show(f.Value-net)
		return p // whether the limit is with the tax, and whether the purchaser pays it, is not said
	}
	p.outcome = quote.Excepted
	switch short := f.Sense == config.AtLeast; {
	case same && short:
		p.offered += ", and more is asked for"
	case same:
		p.offered += ", and less is asked for"
	case short:
		p.offered += ", " + show(math.Abs(f.Margin())) + " short"
	default:
		p.offered += ", " + show(math.Abs(f.Margin())) + " over"
	}
	best, out := lifted{}, ""
	for l := range j.liftsOf(g.code, f.Sense) {
		with := f
		with.Value = l.value
		switch {
		case with.Met() && !(c.beyond && show(l.value) == show(c.want)) && !l.out:
			p.outcome, p.take = quote.MeetsWith, Take{l.id, 0}
			return p
		case with.Met() && out == "":
			out = l.id
		}
		if l.out {
			continue
		}
		if best.id == "" || (f.Sense == atLeast) == (l.value > best.value) {
			best = l
		}
	}
	if best.id != "" && (f.Sense == atLeast) == (best.value > f.Value) && best.value != f.Value {
		p.nearest = show(best.value) + " with " + j.q.Edition.Cat.LabelOf(best.id)
	}
	if p.nearest == "" && out != "" {
		p.nearest = j.q.Edition.Cat.LabelOf(out) + ". " + j.why(out)
	}
	return p
}

// asPrinted is by what share two amounts that print alike may differ.
const asPrinted = .003

// overall are the sizes that purchasers only ask to be no more than something.
var overall = []string{"space.height", "space.height-all", "space.width", widthAll}

// leastLikely is the share of a figure below which an amount is hardly asked of it as the least, common practice, no
// source.
const leastLikely = .1

// salesTax is the sales tax in the price.
func salesTax(q *quote.Quote) float64 {
	sum := 0.0
	for _, l := range q.Price.Lines {
		if l.Code == pricing.LineTax {
			sum += l.Amount.Float()
		}
	}
	return sum
}

// leastPrice is the share of the price from which an amount of money alone is taken to be
// asked of the whole unit.
const leastPrice = .4

// delivering are words by which a price is to hold at the purchaser's.
var delivering = wordSet("deliver delivery freight shipping")

// delivered reports whether nothing in the unit says that it is not brought to the purchaser
// for its price.
func (j *judge) delivered() bool {
	return !slices.ContainsFunc(j.q.Draft.Unit.Picks, func(p config.Pick) bool {
		return j.v.byID[p.Option].never[deliverWord]
	})
}

var deliverWord = stems("delivered")[0]

// senseWords says how an amount binds; beyond, where the amount itself does not do.
func senseWords(s config.Sense, beyond bool) string {
	switch {
	case beyond && s == atLeast:
		return "more than"
	case beyond && s == atMost:
		return "less than"
	}
	return string(s)
}

// lifted is what a figure comes to with an option in the unit.
type lifted struct {
	id     string
	value  float64
	out    bool // it cannot be had with the unit as it is
	known  bool // it was worked out
	untold bool // and there is no such figure
}

// liftable says which options can raise a figure.
var liftable = map[string]func(*config.Option) bool{
	"space.oxygen":          func(o *config.Option) bool { return o.Oxygen != nil },
	"space.oxygen-hours":    func(o *config.Option) bool { return o.Oxygen != nil },
	countModule:             func(o *config.Option) bool { return len(o.Seats) > o.Cots() },
	countBench:              bench,
	"space.seats":           func(o *config.Option) bool { return len(o.Seats) > o.Cots() },
	"space.patients":        func(o *config.Option) bool { return o.Cots() > 0 },
	"space.storage":         func(o *config.Option) bool { return o.StorageFt3 > 0 },
	"space.compartments":    func(o *config.Option) bool { return len(o.Compartments) > 0 },
	"space.bench":           bench,
	"space.bench-width":     bench,
	countCompartments:       func(o *config.Option) bool { return len(o.Compartments) > 0 },
	"power.battery-minutes": func(o *config.Option) bool { return o.Supply != nil && o.Supply.BatteryAh > 0 },
	"power.remaining":       func(o *config.Option) bool { return o.Supply != nil && o.Supply.HotHighIdleA > 0 },
	factHotIdle:             func(o *config.Option) bool { return o.Supply != nil && o.Supply.HotIdleA > 0 },
	factCold:                func(o *config.Option) bool { return o.Supply != nil && o.Supply.ColdA > 0 },
}

func bench(o *config.Option) bool {
	return slices.ContainsFunc(o.Places, func(at config.Place) bool { return at.Kind == "bench" })
}

// outsides are the figures that change with what stands out of the body.
var outsides = []string{"space.length-all", "space.height-all", "space.loading-height"}

// liftsOf is what a figure comes to with each option that can change it, in the place of
// its rivals, the cheapest first.
func (j *judge) liftsOf(code string, sense config.Sense) iter.Seq[lifted] {
	key := code + " " + string(sense)
	list, known := j.lifts[key]
	if !known {
		list = j.liftable(code, sense)
		j.lifts[key] = list
	}
	return func(yield func(lifted) bool) {
		for i := range list {
			l := &list[i]
			if !l.known {
				if j.measured++; j.measured%mostMeasured == 0 {
					j.q.Edition.Rules.Pauses().Rest()
				}
				f, ok := factOf(j.with(j.q.Edition.Cat.OptionByID(l.id), restsOn(code)), &gauge{code: code})
				l.known, l.value, l.untold, l.out = true, f.Value, !ok, j.q.State(l.id) == rules.RuledOut
			}
			if !l.untold && !yield(*l) {
				return
			}
		}
	}
}

// liftable are the options that can change a figure, the cheapest first.
func (j *judge) liftable(code string, sense config.Sense) []lifted {
	can := liftable[code]
	switch out := slices.Contains(outsides, code); {
	case out && sense == atMost:
		can = j.comesIn
	case out:
		can = j.standsOut
	}
	if can == nil {
		return nil
	}
	var list []lifted
	cat := j.q.Edition.Cat
	for i := range cat.Options {
		if o := &cat.Options[i]; can(o) && !holds(j.q, o.ID) && !slices.Contains(o.Tags, "remount") {
			list = append(list, lifted{id: o.ID})
		}
	}
	slices.SortStableFunc(list, func(a, b lifted) int { return int(j.price(a.id) - j.price(b.id)) })
	return list
}

// mostMeasured is how many units are tried between two pauses of work that nobody waits for.
const mostMeasured = 16

// rest is what a figure rests on beside the unit's own parts.
type rest int

const (
	onParts rest = iota
	onSpace
	onPower
)

func restsOn(code string) rest {
	switch {
	case strings.HasPrefix(code, "space."):
		return onSpace
	case strings.HasPrefix(code, "power."):
		return onPower
	}
	return onParts
}

// tried is an option with what was worked out anew for it.
type tried struct {
	option string
	rest   rest
}

// with is the unit with an option in the place of its rivals, and what a figure rests on worked out
// anew.
func (j *judge) with(o *config.Option, on rest) *quote.Quote {
	if q := j.tried[tried{o.ID, on}]; q != nil {
		return q
	}
	cat := j.q.Edition.Cat
	with, d := *j.q, *j.q.Draft
	d.Unit = d.Unit.Clone()
	if g := cat.GroupByID(o.Group); g.Choose != config.ChooseAny {
		for _, m := range cat.Members(g.ID) {
			d.Unit.Drop(cat.Options[m].ID)
		}
	}
	d.Unit.Set(config.Pick{Option: o.ID, Qty: 1})
	with.Draft = &d
	switch as := standards.Assume(d.Unit.RuleSet, cat, &d.Unit); on {
	case onSpace:
		with.Space = space.Figures(cat, &d.Unit, &as)
	case onPower:
		with.Power = power.Budget(cat, &d.Unit, &as)
	}
	j.tried[tried{o.ID, on}] = &with
	return &with
}

// standsOut reports whether an option, or one in whose place it could be, changes what
// the vehicle measures outside.
func (j *judge) standsOut(o *config.Option) bool {
	cat := j.q.Edition.Cat
	return slices.ContainsFunc(cat.Members(o.Group), func(m int) bool { return cat.Options[m].StandsOut() })
}

// comesIn reports whether an option stands in the place of one that stands out: no other can make
// the vehicle smaller.
func (j *judge) comesIn(o *config.Option) bool {
	cat := j.q.Edition.Cat
	return cat.GroupByID(o.Group).Choose != config.ChooseAny &&
		slices.ContainsFunc(cat.Members(o.Group), func(m int) bool {
			return cat.Options[m].StandsOut() && holds(j.q, cat.Options[m].ID)
		})
}

// due answers a line that asks for delivery by a day, or within a time. It is held
// against the date that nine of ten such units keep.
func (j *judge) due(c *claim) part {
	plan := j.q.Plan
	p := part{outcome: quote.Excepted, where: quote.DeliverySection.Place()}
	if c.sense == atLeast {
		p.outcome, p.read = quote.Unanswered, "Delivery"
		return p
	}
	if c.unit == quantity.Day {
		days := plan.Simulated.NineInTenDays
		p.read = "Delivery within " + quantity.Group(c.want, 0) + " working days"
		p.offered = "Delivery within " + quantity.Group(math.Ceil(days), 0) + " working days"
		if days <= c.want && !(c.beyond && math.Ceil(days) == c.want) {
			p.outcome = quote.Meets
		}
		return p
	}
	by := c.day
	if by.IsZero() {
		days := c.want
		if c.unit == claims.Month {
			days *= shortMonth
		}
		by = j.q.Draft.Unit.OrderOn.AddDays(int(days))
		if c.beyond { // "in less than 90 days"
			by = by.AddDays(-1)
		}
	}
	p.read = "Delivery by " + by.Long()
	p.offered = "Delivery by " + plan.NineInTen.Long()
	if !by.Before(plan.NineInTen) {
		p.outcome = quote.Meets
	}
	return p
}

// shortMonth is the days of a month that a time of delivery in months is taken to
// have: no twelve months are shorter than twelve of them.
const shortMonth = 30
