package quote

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/letters"
	"boxwright/config/weight"
	"boxwright/pricing"
)

// MaxItems is the most kinds of unit on one quote.
const MaxItems = 24

// Item is one kind of unit on the quote. When it is ordered and needed stands
// in the unit.
type Item struct {
	Label   string          `json:"label,omitempty"`
	Units   int             `json:"units,omitempty"` // how many alike; 0 counts as 1
	Unit    config.Unit     `json:"unit"`
	Tickets []weight.Ticket `json:"tickets,omitempty"`
	Needs   *Needs          `json:"needs,omitempty"` // that this unit answers; nil: those of the unit in work
}

func (i *Item) clone() Item {
	c := *i
	c.Unit, c.Tickets = i.Unit.Clone(), cloneTickets(i.Tickets)
	if i.Needs != nil {
		n := i.Needs.clone()
		c.Needs = &n
	}
	return c
}

// Count is the number of units, at least one.
func (i *Item) Count() int { return max(i.Units, 1) }

// Items lists every kind of unit in the order they go through the plant; the
// one being edited is at d.At. They share the draft's memory.
func (d *Draft) Items() []Item {
	own := Item{d.Title, d.Terms.Units, d.Unit, d.Tickets, &d.Needs}
	return slices.Insert(slices.Clone(d.More), min(d.At, len(d.More)), own)
}

// Count is the number of units on the quote.
func (d *Draft) Count() int {
	n := 0
	for _, it := range d.Items() {
		n += it.Count()
	}
	return n
}

// WorkOn puts the unit in work back to its place and takes up another one.
// Nothing of the quote but that changes.
func (d *Draft) WorkOn(at int) {
	if at < 0 || at > len(d.More) || at == d.At {
		return
	}
	needs := d.Needs.clone() // what is asked of the unit that is put back
	items := d.Items()
	items[min(d.At, len(d.More))].Needs = &needs
	it := items[at]
	d.Title, d.Terms.Units, d.Unit, d.Tickets = it.Label, it.Units, it.Unit, it.Tickets
	if it.Needs != nil {
		d.Needs = *it.Needs
	}
	d.At, d.More = at, slices.Delete(items, at, at+1)
}

// Duplicate adds a copy of the unit in work behind it and works on the copy,
// one of it. It reports whether there was room.
func (d *Draft) Duplicate() bool {
	if len(d.More)+1 >= MaxItems || d.Count() >= pricing.MaxUnits {
		return false
	}
	it := (&Item{Label: d.Title, Units: 1, Unit: d.Unit, Tickets: d.Tickets, Needs: &d.Needs}).clone()
	d.More = slices.Insert(d.More, d.At, it)
	d.WorkOn(d.At + 1)
	return true
}

// Remove takes a kind of unit off the quote; the last one stays.
func (d *Draft) Remove(at int) {
	if at < 0 || at > len(d.More) || len(d.More) == 0 {
		return
	}
	if at == d.At {
		d.WorkOn(map[bool]int{true: at - 1, false: at + 1}[at > 0])
	}
	k := at
	if at > d.At {
		k--
	} else {
		d.At--
	}
	d.More = slices.Delete(d.More, k, k+1)
	if len(d.More) == 0 {
		d.More = nil
	}
}

func (d *Draft) checkFleet() config.Problems {
	var ps config.Problems
	add := func(where, format string, args ...any) {
		ps = append(ps, config.Problem{Code: "draft.fleet", Where: where, Text: fmt.Sprintf(format, args...)})
	}
	if len(d.More)+1 > MaxItems {
		add("more", "has %d kinds of unit; the most is %d", len(d.More)+1, MaxItems)
		return ps
	}
	if d.At < 0 || d.At > len(d.More) {
		add("at", "%d is outside 0 to %d", d.At, len(d.More))
	}
	units := d.Terms.Count()
	for i, it := range d.More {
		if len(it.Label) > MaxText || it.Units < 0 || it.Units > pricing.MaxUnits {
			add(fmt.Sprintf("more[%d]", i), "has a label above %d bytes or a count outside 0 to %d", MaxText,
				pricing.MaxUnits)
			return ps
		}
		units += it.Count()
		ps = append(ps, (&Draft{Tickets: it.Tickets}).checkEngineering()...)
		if it.Needs != nil {
			ps = append(ps, (&Draft{Needs: *it.Needs}).checkNeeds()...)
		}
	}
	if units > pricing.MaxUnits {
		add("units", "%d are on the quote; the most is %d", units, pricing.MaxUnits)
	}
	return ps
}

func cloneItems(list []Item) []Item {
	if list == nil {
		return nil
	}
	c := make([]Item, len(list))
	for i := range list {
		c[i] = list[i].clone()
	}
	return c
}

// Luck is what every date of a quote is drawn with: few draws, so that a click
// is answered at once, and the same everywhere, so that all areas agree.
func Luck(units int) leadtime.Simulation {
	if units > 20 {
		return leadtime.Simulation{Draws: 500, Seed: 1}
	}
	return leadtime.Simulation{Draws: 2000, Seed: 1}
}

// Delivery is when one single unit of the quote can be handed over.
type Delivery struct {
	Item     int // position among the draft's items
	N, Alike int // the Nth, from 1, of so many alike
	Plan     *leadtime.Plan
}

// Deliveries plans all units of the quote through the plant together. A long
// fleet takes a while, so only those up to the unit in work are planned with
// every change; the others when this is first asked for.
func (q *Quote) Deliveries() []Delivery {
	list, _ := q.planned(toAll) // what is ahead was planned before
	return list
}

// planned are the deliveries at least as far as asked; what was planned before serves again
// where it reaches that far.
func (q *Quote) planned(until reach) ([]Delivery, error) {
	if q.deliveries == nil || q.reached < until {
		list, err := plans(q.Edition, q.Draft, until)
		if err != nil {
			return nil, err
		}
		if q.deliveries, q.reached = list, until; len(list) == q.Draft.Count() {
			q.reached = toAll
		}
	}
	return q.deliveries, nil
}

// reach is how far into a quote the plant's plan goes.
type reach int

const (
	toFirst reach = iota // the first unit of the item in work
	toAlike              // all units alike of that item
	toAll                // every unit of the quote
)

// plans lists the deliveries as far as asked.
func plans(ed *Edition, d *Draft, until reach) ([]Delivery, error) {
	var out []Delivery
	var units []*config.Unit
	items := d.Items()
	for i := range items {
		n := items[i].Count()
		if until == toFirst && i == d.At {
			n = 1
		}
		for k := range n {
			out = append(out, Delivery{Item: i, N: k + 1, Alike: items[i].Count()})
			units = append(units, &items[i].Unit)
		}
		if until != toAll && i == d.At {
			break
		}
	}
	list, err := leadtime.Fleet(ed.Cat, units, Luck(d.Count()))
	if err != nil {
		return nil, err
	}
	for i := range out {
		out[i].Plan = list[i]
	}
	return out, nil
}

// schedule plans the unit in work: the first of those alike, behind the units
// that stand before it.
func (q *Quote) schedule() error {
	list, err := q.planned(toFirst)
	if err != nil {
		return err
	}
	q.Plan = list[len(list)-1].Plan
	return nil
}

// NextPlan plans the unit in work alone: the first of those alike, behind the
// units that stand before it.
func NextPlan(ed *Edition, d *Draft) (*leadtime.Plan, error) {
	list, err := plans(ed, d, toFirst)
	if err != nil {
		return nil, err
	}
	return list[len(list)-1].Plan, nil
}

// mostAlike are so many units alike that the last is held against the day they are needed
// with every press: to plan five hundred takes most of a second.
const mostAlike = 100

// LastOf is of how many units alike the last is held against the day they are needed; 1
// where that is the first, of one or of very many.
func (d *Draft) LastOf() int {
	if n := d.Terms.Count(); n <= mostAlike {
		return n
	}
	return 1
}

// Alike plans the units alike of the item in work: the first, and the day by which the
// last of them, see LastOf, is delivered at nine in ten.
func Alike(ed *Edition, d *Draft) (first *leadtime.Plan, last config.Date, err error) {
	until := toAlike
	if d.LastOf() == 1 {
		until = toFirst
	}
	list, err := plans(ed, d, until)
	if err != nil {
		return nil, config.Date{}, err
	}
	of := list[len(list)-d.LastOf():]
	return of[0].Plan, latest(of), nil
}

// LastSafe is the day by which the last of the units alike of the item in work, see
// LastOf, is delivered at nine in ten.
func (q *Quote) LastSafe() config.Date {
	if q.Draft.LastOf() == 1 {
		return q.Plan.NineInTen
	}
	var of []Delivery
	list, _ := q.planned(toAlike)
	for _, x := range list {
		if x.Item == q.Draft.At {
			of = append(of, x)
		}
	}
	return latest(of)
}

// latest is the latest day of deliveries at nine in ten.
func latest(list []Delivery) config.Date {
	var last config.Date
	for _, x := range list {
		if last.Before(x.Plan.NineInTen) {
			last = x.Plan.NineInTen
		}
	}
	return last
}

// lastLate says that not all of several units alike are delivered by the day they are
// needed, where the first of them is.
func (q *Quote) lastLate() []config.Finding {
	needed, n := q.Draft.Unit.NeededBy, q.Draft.LastOf()
	if needed.IsZero() || n == 1 || needed.Before(q.Plan.NineInTen) {
		return nil
	}
	last := q.LastSafe()
	if !needed.Before(last) {
		return nil
	}
	return []config.Finding{{Code: "time.needed-by.last", Severity: config.Warn, Where: "delivery",
		Basis: config.Purchaser, Text: fmt.Sprintf("Needed by %s; of %d units the first is safe (90 %%) by %s, the "+
			"last by %s, %s late.", needed.Long(), n, q.Plan.NineInTen.Long(), last.Long(),
			Days(needed.DaysUntil(last))),
		Remedy: "Move the needed date to " + last.Long() + ", order earlier, or take delivery one by one.",
	}}
}

// PriceAll prices every unit of the draft on the day it is dated.
func PriceAll(ed *Edition, d *Draft) (*pricing.Sheet, error) {
	var list []pricing.Item
	for _, it := range d.Items() {
		list = append(list, pricing.Item{Label: it.Label, Unit: &it.Unit, Units: it.Units, Due: it.Unit.NeededBy})
	}
	return pricing.BuildFleet(ed.bookOn(d.Date), ed.Cat, list, &d.Terms, d.Date)
}

// Repriced is the price of the draft with another agreed discount.
func (q *Quote) Repriced(discount pricing.Percent) (*pricing.Sheet, error) {
	d := *q.Draft
	d.Terms.DiscountPercent = discount
	return PriceAll(q.Edition, &d)
}

// Item is one kind of unit of the quote, checked as a unit of its own. Its
// price and dates are those of the whole quote. What was checked once is kept,
// since only the unit in work changes.
func (q *Quote) Item(at int) (*Quote, error) {
	items := q.Draft.Items()
	if at == q.Draft.At || at < 0 || at >= len(items) {
		return q, nil
	}
	it := items[at]
	d := &Draft{Format: DraftFormat, Date: q.Draft.Date, Title: it.Label, Unit: it.Unit, Tickets: it.Tickets,
		Wiring: q.Draft.Wiring}
	d.Terms.Units = it.Units
	if it.Needs != nil {
		d.Needs = *it.Needs
	}
	key, err := d.Bytes()
	if err != nil {
		return nil, err
	}
	ed := q.Edition
	known := ed.items[string(key)]
	if known == nil {
		if known, err = Compute(ed, d.Clone()); err != nil {
			return nil, err
		}
		if ed.items == nil || len(ed.items) >= 2*MaxItems {
			ed.items = map[string]*Quote{}
		}
		ed.items[string(key)] = known
	}
	c := *known
	c.Price = q.Price
	return &c, nil
}

// Dated is Item with the dates that the first unit of the kind has in the order.
func (q *Quote) Dated(at int) (*Quote, error) {
	one, err := q.Item(at)
	if err != nil {
		return nil, err
	}
	c := *one
	for _, d := range q.Deliveries() {
		if d.Item == at {
			c.Plan = d.Plan
			break
		}
	}
	return &c, nil
}

// fleet says what the checks of the other units have to settle.
func (q *Quote) fleet() ([]config.Finding, error) {
	var out []config.Finding
	for i := range q.Draft.Items() {
		if i == q.Draft.At {
			continue
		}
		other, err := q.Item(i)
		if err != nil {
			return nil, err
		}
		for _, f := range other.Findings {
			if f.Severity == config.Note || f.Code != orderEarly && strings.HasPrefix(f.Code, "time.") ||
				strings.HasPrefix(f.Code, "price.") {
				continue
			}
			f.Where = q.NameOf(i) + ", " + f.Where
			out = append(out, f)
		}
	}
	return out, nil
}

// NameOf is what one kind of unit on the quote is called.
func (q *Quote) NameOf(at int) string {
	it := q.Draft.Items()[at]
	name := letters.Isolate(it.Label)
	if name == "" {
		name = q.Edition.Cat.LabelOf(it.Unit.Chassis) + ", " + q.Edition.Cat.LabelOf(it.Unit.Body)
		if d := q.Edition.Cat.DutyOf(&it.Unit); d != nil && q.mistakable(at, d) {
			name = d.Label + ", " + name
		}
	}
	if len(q.Draft.More) > 0 {
		name = fmt.Sprintf("%d. %s", at+1, name)
	}
	return name
}

// mistakable reports whether another unit without a name has the same chassis and body and
// is for something else.
func (q *Quote) mistakable(at int, duty *config.Duty) bool {
	items := q.Draft.Items()
	return slices.ContainsFunc(items, func(x Item) bool {
		return x.Label == "" && x.Unit.Chassis == items[at].Unit.Chassis && x.Unit.Body == items[at].Unit.Body &&
			q.Edition.Cat.DutyOf(&x.Unit) != duty
	})
}
