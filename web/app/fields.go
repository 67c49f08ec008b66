package app

import (
	"fmt"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/standards"
	"boxwright/pricing"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
)

// setField takes what was typed into a field of the draft. What cannot be
// taken stays in the field with the reason beneath, and the draft keeps its
// earlier value.
func setField(s *session, a Act) {
	if id, isRule := strings.CutPrefix(a.ID, "rule."); isRule {
		setRule(s, id, a.On)
		return
	}
	set := plainFields[a.ID]
	if family, name, cut := strings.Cut(a.ID, "."); cut && set == nil {
		if find := moneyFields[family]; find != nil {
			set = fieldOf(family, name, find)
		} else if families[family] != nil {
			set = families[family](name)
		}
	}
	if set == nil {
		s.fault("There is no field %q.", a.ID)
		return
	}
	if err := set(s, a); err != nil {
		s.wrong(a.ID, a.Value, err.Error())
		return
	}
	s.right(a.ID)
}

// wrong keeps what was typed beside why it cannot be taken.
func (s *session) wrong(id, typed, why string) {
	if s.view.Typed == nil {
		s.view.Typed, s.view.Wrong = map[string]string{}, map[string]string{}
	}
	s.view.Typed[id], s.view.Wrong[id] = clip(typed, 4000), why
}

func (s *session) right(id string) {
	delete(s.view.Typed, id)
	delete(s.view.Wrong, id)
}

type setter func(*session, Act) error

// plainFields set the fields of the draft and the view, by the id of their input.
var plainFields = map[string]setter{
	"title":                  text(400, func(d *quote.Draft) *string { return &d.Title }),
	"number":                 text(60, func(d *quote.Draft) *string { return &d.Number }),
	"notes":                  text(4000, func(d *quote.Draft) *string { return &d.Notes }),
	"buyer.name":             text(400, func(d *quote.Draft) *string { return &d.Buyer.Name }),
	"buyer.person":           text(400, func(d *quote.Draft) *string { return &d.Buyer.Person }),
	"buyer.address":          text(400, func(d *quote.Draft) *string { return &d.Buyer.Address }),
	"buyer.reach":            text(400, func(d *quote.Draft) *string { return &d.Buyer.Reach }),
	"seller.name":            text(400, func(d *quote.Draft) *string { return &d.Seller.Name }),
	"seller.person":          text(400, func(d *quote.Draft) *string { return &d.Seller.Person }),
	"seller.address":         text(400, func(d *quote.Draft) *string { return &d.Seller.Address }),
	"seller.reach":           text(400, func(d *quote.Draft) *string { return &d.Seller.Reach }),
	"date":                   date(func(d *quote.Draft) *config.Date { return &d.Date }, true),
	"unit.order_on":          date(func(d *quote.Draft) *config.Date { return &d.Unit.OrderOn }, true),
	"unit.needed_by":         date(func(d *quote.Draft) *config.Date { return &d.Unit.NeededBy }, false),
	"unit.occupant_lb":       mass(func(d *quote.Draft) *quantity.Mass { return &d.Unit.OccupantLb }),
	"unit.patient_lb":        mass(func(d *quote.Draft) *quantity.Mass { return &d.Unit.PatientLb }),
	"unit.payload_lb":        mass(func(d *quote.Draft) *quantity.Mass { return &d.Unit.PayloadLb }),
	"terms.units":            whole(1, pricing.MaxUnits, func(d *quote.Draft) *int { return &d.Terms.Units }),
	"terms.validity_days":    whole(0, 3650, func(d *quote.Draft) *int { return &d.Terms.ValidityDays }),
	"terms.contract":         text(100, func(d *quote.Draft) *string { return &d.Terms.Contract }),
	"terms.prepay":           text(100, func(d *quote.Draft) *string { return &d.Terms.Prepay }),
	"terms.discount_reason":  text(200, func(d *quote.Draft) *string { return &d.Terms.DiscountReason }),
	"terms.trade_in_text":    text(200, func(d *quote.Draft) *string { return &d.Terms.TradeInText }),
	"terms.exempt_reason":    text(200, func(d *quote.Draft) *string { return &d.Terms.ExemptReason }),
	"terms.discount_percent": percent(func(d *quote.Draft) *pricing.Percent { return &d.Terms.DiscountPercent }),
	"terms.deposit_percent":  percent(func(d *quote.Draft) *pricing.Percent { return &d.Terms.DepositPercent }),
	"terms.discount_amount":  amount(func(d *quote.Draft) *pricing.Amount { return &d.Terms.DiscountAmount }),
	"terms.trade_in":         amount(func(d *quote.Draft) *pricing.Amount { return &d.Terms.TradeIn }),
	"terms.budget":           amount(func(d *quote.Draft) *pricing.Amount { return &d.Terms.Budget }),
	"terms.freight_miles":    number(func(d *quote.Draft) *pricing.Quantity { return &d.Terms.FreightMiles }),
	"terms.training_days":    number(func(d *quote.Draft) *pricing.Quantity { return &d.Terms.TrainingDays }),
	"terms.tax_rate":         taxRate,
	"terms.tax_exempt":       flag(func(d *quote.Draft) *bool { return &d.Terms.TaxExempt }),
	"terms.bond":             flag(func(d *quote.Draft) *bool { return &d.Terms.Bond }),
	"address":                setAddress,
	"along":                  func(s *session, a Act) error { s.view.Alone = !a.On; return nil },
	"chance":                 setChance,
	"list":                   pasteList,
	"earlier":                setEarlier,
	"open-link":              func(s *session, a Act) error { openLink(s, a); return nil },
	"pin-link":               func(s *session, a Act) error { return pinLink(s, a) },
}

func text(most int, of func(*quote.Draft) *string) setter {
	return func(s *session, a Act) error {
		if len(a.Value) > most {
			return fmt.Errorf("%d bytes are too many; the most is %d", len(a.Value), most)
		}
		*of(s.draft) = a.Value
		return nil
	}
}

func date(of func(*quote.Draft) *config.Date, needed bool) setter {
	return func(s *session, a Act) error {
		d, err := config.ReadDate(a.Value)
		if err != nil {
			return err
		}
		if needed && d.IsZero() {
			return fmt.Errorf("a date is needed here")
		}
		*of(s.draft) = d
		return nil
	}
}

// mass reads pounds or kilograms, in the user's units; empty is 0.
func mass(of func(*quote.Draft) *quantity.Mass) setter {
	return func(s *session, a Act) error {
		if strings.TrimSpace(a.Value) == "" {
			*of(s.draft) = 0
			return nil
		}
		v, err := quantity.System(s.view.Metric).Parse(a.Value, quantity.Pound)
		if err != nil {
			return err
		}
		if v < 0 || v > 20000 {
			return fmt.Errorf("a mass here is 0 to %s", quantity.System(s.view.Metric).Show(20000, quantity.Pound))
		}
		*of(s.draft) = quantity.Mass(v)
		return nil
	}
}

func whole(least, most int, of func(*quote.Draft) *int) setter {
	return func(s *session, a Act) error {
		v, err := strconv.Atoi(strings.TrimSpace(a.Value))
		if strings.TrimSpace(a.Value) == "" {
			v, err = least, nil
		}
		if err != nil || v < least || v > most {
			return fmt.Errorf("a whole number from %d to %d", least, most)
		}
		*of(s.draft) = v
		return nil
	}
}

// parsed is a setter for the exact decimal types of a price: empty is 0,
// commas are taken as thousands, and the terms as a whole must stay in range.
func parsed[T any](parse func(string) (T, error), of func(*quote.Draft) *T) setter {
	return func(s *session, a Act) error {
		typed := strings.TrimPrefix(strings.ReplaceAll(strings.TrimSpace(a.Value), ",", ""), "$")
		var v T
		if typed != "" {
			var err error
			if v, err = parse(typed); err != nil {
				return err
			}
		}
		before := s.draft.Terms.Clone()
		*of(s.draft) = v
		if ps := s.draft.Terms.Check(); len(ps) > 0 {
			s.draft.Terms = before
			return ps
		}
		return nil
	}
}

func amount(of func(*quote.Draft) *pricing.Amount) setter { return parsed(money.ParseAmount, of) }
func percent(of func(*quote.Draft) *pricing.Percent) setter {
	return parsed(func(t string) (pricing.Percent, error) {
		return money.ParsePercent(strings.TrimSpace(strings.TrimSuffix(t, "%")))
	}, of)
}
func number(of func(*quote.Draft) *pricing.Quantity) setter { return parsed(money.ParseQuantity, of) }

// taxRate may be empty, which is another thing than 0.
func taxRate(s *session, a Act) error {
	if strings.TrimSpace(a.Value) == "" {
		s.draft.Terms.TaxRate = nil
		return nil
	}
	rate := new(pricing.Percent)
	err := percent(func(*quote.Draft) *pricing.Percent { return rate })(s, a)
	if err != nil {
		return err
	}
	before := s.draft.Terms.TaxRate
	s.draft.Terms.TaxRate = rate
	if ps := s.draft.Terms.Check(); len(ps) > 0 {
		s.draft.Terms.TaxRate = before
		return ps
	}
	return nil
}

func flag(of func(*quote.Draft) *bool) setter {
	return func(s *session, a Act) error {
		*of(s.draft) = a.On
		return nil
	}
}

func setAddress(s *session, a Act) error {
	v := strings.TrimSpace(a.Value)
	if v != "" && !strings.HasPrefix(v, "https://") && !strings.HasPrefix(v, "http://") {
		return fmt.Errorf("an address begins with https://")
	}
	if len(v) > 300 || strings.ContainsAny(v, "#\"<> ") {
		return fmt.Errorf("an address has at most 300 characters and no #, quotes or spaces")
	}
	s.view.Address = v
	return nil
}

// setRule chooses a base rule set, or puts an add-on beside it or takes it away.
func setRule(s *session, id string, on bool) {
	set, known := standards.Find(id)
	if !known {
		s.fault("There is no rule set %q.", id)
		return
	}
	chosen, _ := standards.Split(s.draft.Unit.RuleSet)
	var ids []string
	for _, c := range chosen {
		if c.ID != id && (c.AddOn || set.AddOn) {
			ids = append(ids, c.ID)
		}
	}
	if on {
		ids = append(ids, id)
	}
	s.draft.Unit.RuleSet = standards.Join(ids...)
}
