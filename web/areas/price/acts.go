package price

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/quantity"
	"boxwright/pricing"
	"boxwright/pricing/finance"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
	"boxwright/web/session"
)

// taxRate may be empty, which is another thing than 0.
func taxRate(s *session.Session, a session.Act) error {
	if strings.TrimSpace(a.Value) == "" {
		s.Draft.Terms.TaxRate = nil
		return nil
	}
	rate := new(pricing.Percent)
	err := session.Percent(func(*quote.Draft) *pricing.Percent { return rate })(s, a)
	if err != nil {
		return err
	}
	before := s.Draft.Terms.TaxRate
	s.Draft.Terms.TaxRate = rate
	if ps := s.Draft.Terms.Check(); len(ps) > 0 {
		s.Draft.Terms.TaxRate = before
		return ps
	}
	return nil
}

// checked sets what is chosen among the terms, where they bear it.
func checked(put func(t *pricing.Terms, chosen string)) session.Setter {
	return func(s *session.Session, a session.Act) error {
		before := s.Draft.Terms.Clone()
		put(&s.Draft.Terms, a.Value)
		if ps := s.Draft.Terms.Check(); len(ps) > 0 {
			s.Draft.Terms = before
			return ps
		}
		return nil
	}
}

// sayTax says whether the buyer pays sales tax; empty leaves it to who buys.
func sayTax(t *pricing.Terms, chosen string) {
	t.TaxExempt, t.Taxed = chosen == taxExempt, chosen == taxPaid
	if chosen == "" {
		t.TaxRate = nil
	}
}

// moneyFields find the place in a draft that a field of a family stands for; nil
// when there is none.
var moneyFields = map[string]func(d *quote.Draft, at int, name string) any{
	"extra": func(d *quote.Draft, at int, name string) any {
		if at >= len(d.Terms.Extras) {
			return nil
		}
		x := &d.Terms.Extras[at]
		return named(name, "label", &x.Label, "qty", &x.Qty, "price", &x.Price, "untaxed", &x.Untaxed)
	},
	"milestone": func(d *quote.Draft, at int, name string) any {
		if at >= len(d.Terms.Milestones) {
			return nil
		}
		x := &d.Terms.Milestones[at]
		return named(name, "label", &x.Label, "percent", &x.Percent)
	},
	"lease": func(d *quote.Draft, _ int, name string) any {
		if d.Terms.Lease == nil {
			return nil
		}
		x := d.Terms.Lease
		return named(name, "label", &x.Label, "principal", &x.Principal, "rate", &x.Rate, "per_year", &x.PerYear,
			"periods", &x.Periods, "advance", &x.Advance, "balloon", &x.Balloon, "first_due", &x.FirstDue)
	},
	"way": func(d *quote.Draft, at int, name string) any {
		x := way(d, at)
		if x == nil {
			return nil
		}
		return named(name, "label", &x.Label, "price", &x.Price, "trade_in", &x.TradeIn, "years", &x.Years, "yearly",
			&x.Yearly, "aging", &x.Aging, "residual", &x.Residual, "warranty", &x.Warranty)
	},
	"later": func(d *quote.Draft, at int, name string) any {
		x := way(d, at)
		k, name, _ := strings.Cut(name, ".")
		i, err := strconv.Atoi(k)
		if x == nil || err != nil || i < 0 || i >= len(x.Later) {
			return nil
		}
		return named(name, "year", &x.Later[i].Year, "amount", &x.Later[i].Amount, "label", &x.Later[i].Label)
	},
	"rates": func(d *quote.Draft, _ int, name string) any {
		x := &service(d).Rates
		return named(name, "inflation", &x.Inflation, "discount", &x.Discount)
	},
	"item": func(d *quote.Draft, at int, name string) any {
		if at == d.At {
			return named(name, "label", &d.Title, "units", &d.Terms.Units, "order", &d.Unit.OrderOn, "needed",
				&d.Unit.NeededBy)
		}
		if at > d.At {
			at--
		}
		if at >= len(d.More) {
			return nil
		}
		x := &d.More[at]
		return named(name, "label", &x.Label, "units", &x.Units, "order", &x.Unit.OrderOn, "needed", &x.Unit.NeededBy)
	},
	"deal": func(d *quote.Draft, _ int, name string) any {
		t := &d.Terms
		return named(name, "use", &t.Use, "prepay_days", &t.PrepayDays, "deposit_amount", &t.DepositAmount)
	},
	"fee": func(d *quote.Draft, _ int, name string) any { return &fee{d, name} },
}

// named finds the place by its name among pairs of names and places.
func named(name string, pairs ...any) any {
	for i := 0; i < len(pairs); i += 2 {
		if pairs[i] == name {
			return pairs[i+1]
		}
	}
	return nil
}

// fee is a choice of the terms that is in the list or not.
type fee struct {
	d  *quote.Draft
	id string
}

func service(d *quote.Draft) *pricing.Service {
	if d.Terms.Service == nil {
		d.Terms.Service = &pricing.Service{This: startOf("new"),
			Rates: finance.Rates{Inflation: hundredths(250), Discount: hundredths(400)}}
	}
	return d.Terms.Service
}

// way is one of those compared over the years: the quoted unit first.
func way(d *quote.Draft, at int) *finance.Choice {
	s := d.Terms.Service
	switch {
	case s == nil || at > len(s.Others):
		return nil
	case at == 0:
		return &s.This
	}
	return &s.Others[at-1]
}

func hundredths(n int64) pricing.Percent { return money.PercentOf(decimal.New(n, -2)) }

// families are fields by the part of their id before the point.
var families = moneyFamilies()

func moneyFamilies() map[string]session.SetterByName {
	out := map[string]session.SetterByName{}
	for family, find := range moneyFields {
		out[family] = func(name string) session.Setter { return fieldOf(family, name, find) }
	}
	return out
}

// fieldOf takes what was typed into the place; what the draft as a whole cannot
// bear is taken back.
func fieldOf(family, name string, find func(*quote.Draft, int, string) any) session.Setter {
	return func(s *session.Session, a session.Act) error {
		at, rest := 0, name
		if number, tail, cut := strings.Cut(name, "."); cut {
			n, err := strconv.Atoi(number)
			if err != nil || n < 0 {
				return fmt.Errorf("there is no field %q", a.ID)
			}
			at, rest = n, tail
		}
		before := s.Draft.Clone()
		err := put(find(s.Draft, at, rest), a)
		if err == nil && family == "milestone" {
			err = balance(s.Draft.Terms.Milestones)
		}
		if err == nil &&
			(s.Draft.Unit.OrderOn.IsZero() ||
				slices.ContainsFunc(s.Draft.More, func(i quote.Item) bool { return i.Unit.OrderOn.IsZero() })) {
			err = fmt.Errorf("a date is needed here")
		}
		if day, is := find(s.Draft, at, rest).(*config.Date); err == nil && is && rest == "order" {
			err = s.Draft.Ordered(*day)
		}
		if err == nil {
			if ps := s.Draft.Check(); len(ps) > 0 {
				err = ps
			}
		}
		if err != nil {
			*s.Draft = *before
		}
		return err
	}
}

// wholes are the units of the whole numbers among the fields, by the last part of
// their ids, and the least that may be written; they are counts where none is named.
var wholes = map[string]struct {
	unit  string
	least int
}{
	"units": {quantity.Count, 1}, "qty": {quantity.Count, 1}, "years": {quantity.Year, 1},
	"warranty": {quantity.Year, 0}, "first_due": {quantity.Month, 0}, "prepay_days": {quantity.CalendarDay, 0},
}

// whole reads a whole number into a field; empty is 0.
func whole(a session.Act) (int, error) {
	if strings.TrimSpace(a.Value) == "" {
		return 0, nil
	}
	w, named := wholes[a.ID[strings.LastIndexByte(a.ID, '.')+1:]]
	if !named {
		w.unit = quantity.Count
	}
	return quantity.Whole(a.Value, w.unit, w.least, pricing.MaxUnits*100)
}

// put reads a text into a place of any type that a field can have; empty is 0.
func put(place any, a session.Act) error {
	typed := strings.TrimSpace(a.Value)
	var err error
	switch p := place.(type) {
	case *string:
		if len(typed) > 400 {
			return errors.New(letters.TooLong(typed, 400))
		}
		*p = typed
	case *int:
		*p, err = whole(a)
	case *bool:
		*p = a.On
	case *pricing.Amount:
		*p, err = session.ReadAmount(typed)
	case *pricing.Percent:
		*p, err = session.ReadPercent(typed)
	case *config.Date:
		*p, err = config.ReadDate(typed)
	case *fee:
		list := &p.d.Terms.Fees
		*list = slices.DeleteFunc(*list, func(id string) bool { return id == p.id })
		if a.On {
			*list = append(*list, p.id)
			slices.Sort(*list)
		}
	default:
		err = fmt.Errorf("there is no field %q", a.ID)
	}
	return err
}

// balance gives the last payment what the others leave.
func balance(list []pricing.Milestone) error {
	left := hundredths(10000)
	last := len(list) - 1
	for _, m := range list[:last] {
		left = money.PercentOf(left.Decimal().Sub(m.Percent.Decimal()))
	}
	if left.Sign() <= 0 {
		return fmt.Errorf("the payments before the last must leave something for it")
	}
	list[last].Percent = left
	return nil
}

// startOf is a way over the years with usual terms, all of them editable; what
// it costs is for the purchaser to say.
func startOf(kind string) finance.Choice {
	c := map[string]finance.Choice{
		"new":     {Label: "", Years: 10, Warranty: finance.StructureYears},
		"keep":    {Label: "Keep the old unit", Years: 3},
		"remount": {Label: "Remount the module", Years: 8, Warranty: finance.StructureYears},
		"offer":   {Label: "Another offer", Years: 10, Warranty: finance.StructureYears},
	}[kind]
	c.ID = kind
	return c
}

// add appends to a list of the draft, or begins what the draft does not have.
func add(s *session.Session, a session.Act) {
	before := s.Draft.Clone()
	d, t := s.Draft, &s.Draft.Terms
	list, name, _ := strings.Cut(a.ID, ".")
	switch list {
	case "extra":
		t.Extras = append(t.Extras, pricing.Extra{Label: "Further item", Qty: 1})
	case "milestone":
		if t.Milestones == nil {
			t.Milestones = s.Memory.Edition.Book.Agreed(s.Memory.Edition.Cat.IsVan(d.Unit.Body))
			return
		}
		last := &t.Milestones[len(t.Milestones)-1]
		half := money.PercentOf(last.Percent.Decimal().DivRound(decimal.NewFromInt(2), 2))
		t.Milestones = slices.Insert(t.Milestones, len(t.Milestones)-1,
			pricing.Milestone{ID: freeID(s), Label: "Further payment", Percent: half})
		if balance(t.Milestones) != nil {
			*s.Draft = *before
		}
	case "lease":
		t.Lease = &finance.Lease{Rate: hundredths(500), PerYear: 12, Periods: 84}
	case "way":
		sv := service(d)
		sv.Others = append(sv.Others, startOf(name))
	case "later":
		i, _ := strconv.Atoi(name)
		if w := way(d, i); w != nil {
			w.Later = append(w.Later, finance.Outlay{Year: 1, Label: "Repair"})
		}
	case "item":
		if !d.Duplicate() {
			s.Fault("A quote holds at most %d kinds of unit, and %d units.", quote.MaxItems, pricing.MaxUnits)
			return
		}
		s.Notice = "A copy of the unit was added to the quote and is now worked on."
	}
	if ps := s.Draft.Check(); len(ps) > 0 {
		*s.Draft = *before
		s.Fault("%s", session.Sentence(ps))
	}
}

// freeID is an id that no payment has yet.
func freeID(s *session.Session) string {
	for n := 1; ; n++ {
		id := "own-" + strconv.Itoa(n)
		if !slices.ContainsFunc(s.Draft.Terms.Milestones, func(m pricing.Milestone) bool { return m.ID == id }) {
			return id
		}
	}
}

// drop takes an entry out of a list of the draft. What was typed wrong into
// the list belongs to positions that are no more.
func drop(s *session.Session, a session.Act) {
	d, t := s.Draft, &s.Draft.Terms
	list, name, _ := strings.Cut(a.ID, ".")
	first, second, _ := strings.Cut(name, ".")
	i, _ := strconv.Atoi(first)
	k, _ := strconv.Atoi(second)
	switch list {
	case "extra":
		t.Extras = without(t.Extras, i)
	case "milestone":
		if t.Milestones = without(t.Milestones, i); t.Milestones != nil && balance(t.Milestones) != nil {
			t.Milestones = nil
		}
	case "milestones":
		t.Milestones = nil
	case "lease":
		t.Lease = nil
	case "way":
		if t.Service != nil {
			t.Service.Others = without(t.Service.Others, i-1)
		}
	case "later":
		if w := way(d, i); w != nil {
			w.Later = without(w.Later, k)
		}
	case "item":
		d.Remove(i)
	}
	for _, fields := range []map[string]string{s.View.Typed, s.View.Wrong} {
		for id := range fields {
			if strings.HasPrefix(id, list+".") {
				delete(fields, id)
			}
		}
	}
}

// without is the list without entry i; nil when none is left.
func without[T any](list []T, i int) []T {
	if i < 0 || i >= len(list) {
		return list
	}
	if list = slices.Delete(list, i, i+1); len(list) == 0 {
		return nil
	}
	return list
}

// workOn takes up another unit of the quote.
func workOn(s *session.Session, a session.Act) {
	if i, err := strconv.Atoi(a.ID); err == nil {
		s.Draft.WorkOn(i)
	}
	s.View.Asked = ""
}
