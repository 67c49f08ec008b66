package session

import (
	"errors"
	"fmt"
	"strings"

	"boxwright/config"
	"boxwright/config/letters"
	"boxwright/config/quantity"
	"boxwright/pricing"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
)

// Between reads a number in a unit; empty is 0, whatever the least is.
func (s *Session) Between(typed, unit string, least, most float64) (float64, error) {
	if strings.TrimSpace(typed) == "" {
		return 0, nil
	}
	return quantity.System(s.View.Metric).Between(typed, unit, least, most)
}

// CountOf reads how many there are; empty is 0, whatever the least is.
func CountOf(typed string, least, most int) (int, error) {
	if strings.TrimSpace(typed) == "" {
		return 0, nil
	}
	return quantity.Whole(typed, quantity.Count, least, most)
}

// Wrong keeps what was typed beside why it cannot be taken.
func (s *Session) Wrong(id, typed, why string) {
	if s.View.Typed == nil {
		s.View.Typed, s.View.Wrong = map[string]string{}, map[string]string{}
	}
	s.View.Typed[id], s.View.Wrong[id] = Clip(typed, 4000), why
	s.Spoken = "Not taken: " + letters.Calm(why)
}

// Right takes back that a field was typed wrongly.
func (s *Session) Right(id string) {
	delete(s.View.Typed, id)
	delete(s.View.Wrong, id)
}

// Setter takes what was typed into a field, or says why it cannot.
type Setter func(*Session, Act) error

// SetterByName is the setter of one of the fields of a family, by what follows the
// point in its id; nil when there is none.
type SetterByName func(name string) Setter

// Do carries out one act.
type Do func(*Session, Act)

// Set takes what was typed into a field. What cannot be taken stays in the field
// with the reason beneath, and the draft keeps its earlier value.
func (s *Session) Set(a Act, set Setter) {
	if err := set(s, a); err != nil {
		s.Wrong(a.ID, a.Value, err.Error())
		return
	}
	s.Right(a.ID)
}

// Text sets a text of at most so many bytes.
func Text(most int, field func(*quote.Draft) *string) Setter {
	return func(s *Session, a Act) error {
		if len(a.Value) > most {
			return errors.New(letters.TooLong(a.Value, most))
		}
		*field(s.Draft) = a.Value
		return nil
	}
}

// Line is Text without breaks, which a field that wraps can hold when they were pasted.
func Line(most int, field func(*quote.Draft) *string) Setter {
	set := Text(most, field)
	return func(s *Session, a Act) error {
		a.Value = strings.NewReplacer("\r\n", " ", "\n", " ", "\r", " ").Replace(a.Value)
		return set(s, a)
	}
}

// Date sets a date, which may be left empty where it is not needed.
func Date(field func(*quote.Draft) *config.Date, needed bool) Setter {
	return func(s *Session, a Act) error {
		d, err := config.ReadDate(a.Value)
		if err != nil { // such as half of one, see left in events.js
			return fmt.Errorf("not a whole date: fill in month, day and year, or leave all three blank")
		}
		if needed && d.IsZero() {
			return fmt.Errorf("a date is needed here")
		}
		*field(s.Draft) = d
		return nil
	}
}

// Mass reads pounds or kilograms, in the user's units; empty is 0.
func Mass(field func(*quote.Draft) *quantity.Mass) Setter {
	return func(s *Session, a Act) error {
		v, err := s.Between(a.Value, quantity.Pound, 0, 20000)
		if err == nil {
			*field(s.Draft) = quantity.Mass(v)
		}
		return err
	}
}

// Whole sets a whole number of a unit in a range; empty is the least.
func Whole(unit string, least, most int, field func(*quote.Draft) *int) Setter {
	return func(s *Session, a Act) error {
		v := least
		if strings.TrimSpace(a.Value) != "" {
			var err error
			if v, err = quantity.Whole(a.Value, unit, least, most); err != nil {
				return err
			}
		}
		*field(s.Draft) = v
		return nil
	}
}

// ReadAmount reads a sum of money as people write it; empty is 0.
func ReadAmount(typed string) (pricing.Amount, error) {
	return exact(money.ParseAmount, typed, quantity.Dollar)
}

// ReadPercent reads a percentage, with or without its sign; empty is 0.
func ReadPercent(typed string) (pricing.Percent, error) {
	return exact(money.ParsePercent, typed, quantity.Percent)
}

// exact reads a number that is kept exactly.
func exact[T any](parse func(string) (T, error), typed, unit string) (v T, err error) {
	if strings.TrimSpace(typed) == "" {
		return v, nil
	}
	digits, err := quantity.Digits(typed, unit)
	if err != nil {
		return v, err
	}
	return parse(digits)
}

// mostOfPrice is the most that a sum of money or a quantity of a price may be.
const mostOfPrice = 1e9

// parsed is a setter for the exact decimal types of a price, from 0 to most: empty is 0,
// and the terms as a whole must stay in range.
func parsed[T any](parse func(string) (T, error), unit string, most float64, field func(*quote.Draft) *T) Setter {
	return func(s *Session, a Act) error {
		if _, err := s.Between(a.Value, unit, 0, most); err != nil {
			return err
		}
		v, err := exact(parse, a.Value, unit)
		if err != nil {
			return err
		}
		before := s.Draft.Terms.Clone()
		*field(s.Draft) = v
		if ps := s.Draft.Terms.Check(); len(ps) > 0 {
			s.Draft.Terms = before
			return ps
		}
		return nil
	}
}

// Amount sets a sum of money.
func Amount(field func(*quote.Draft) *pricing.Amount) Setter {
	return parsed(money.ParseAmount, quantity.Dollar, mostOfPrice, field)
}

// Percent sets a percentage, with or without its sign.
func Percent(field func(*quote.Draft) *pricing.Percent) Setter {
	return parsed(money.ParsePercent, quantity.Percent, 100, field)
}

// Number sets a quantity of a price, such as miles.
func Number(unit string, field func(*quote.Draft) *pricing.Quantity) Setter {
	return parsed(money.ParseQuantity, unit, mostOfPrice, field)
}

// Flag sets what is ticked.
func Flag(field func(*quote.Draft) *bool) Setter {
	return func(s *Session, a Act) error {
		*field(s.Draft) = a.On
		return nil
	}
}
