package config

import (
	"slices"
	"strings"

	"boxwright/config/quantity"
)

// Unit is the whole state of one configured vehicle; every figure is computed
// from it and the catalogue edition it names.
type Unit struct {
	Catalogue string    `json:"catalogue"` // catalogue id
	Edition   string    `json:"edition"`   // content hash of the edition
	Chassis   string    `json:"chassis"`
	Body      string    `json:"body"`
	Existing  *Existing `json:"existing,omitempty"` // the module to be remounted, when Body is an existing one
	Picks     []Pick    `json:"picks"`              // sorted by option id
	// chassis and body while they are what a proposal chose, not the customer
	Proposed []string  `json:"proposed,omitempty"`
	LeftOut  []string  `json:"left_out,omitempty"` // standard options that the customer took out or replaced, sorted
	Details  []Detail  `json:"details,omitempty"`  // what was said of options that ask, sorted by option
	Carried  []Carried `json:"carried,omitempty"`  // loose equipment, sorted by id then compartment
	// what the purchaser carries that the catalogue does not have; Carried names it by its id
	OwnItems []Equipment `json:"own_items,omitempty"`

	RuleSet    string        `json:"rule_set"`              // id of the standard in force, see package standards
	OccupantLb quantity.Mass `json:"occupant_lb,omitempty"` // own value; 0 takes the rule set's
	PatientLb  quantity.Mass `json:"patient_lb,omitempty"`  // own value; 0 takes the rule set's
	PayloadLb  quantity.Mass `json:"payload_lb,omitempty"`  // the purchaser's own minimum; 0 takes the rule set's
	Own        []OwnLimit    `json:"own,omitempty"`         // the purchaser's other limits, sorted by figure code

	Factors []Assumed `json:"factors,omitempty"` // assumed numbers set for this unit, sorted by code

	OrderOn  Date `json:"order_on"`           // day the order is placed
	NeededBy Date `json:"needed_by,omitzero"` // zero when the buyer named none
}

// OwnLimit is the purchaser's value in place of the rule set's limit on a
// figure, in the figure's unit.
type OwnLimit struct {
	Figure string  `json:"figure"` // code, such as "space.headroom"
	Value  float64 `json:"value"`
}

// Pick is an option in the unit. Filled marks one that the program chose to
// complete the unit; it gives way when the customer decides otherwise.
type Pick struct {
	Option string `json:"option"`
	Qty    int    `json:"qty"` // 1 or more
	Filled bool   `json:"filled,omitempty"`
}

// Detail is the customer's text for an option that asks for one, such as a color
// code or the name to letter. It is kept when the option is removed, in case the
// option comes back.
type Detail struct {
	Option string `json:"option"`
	Text   string `json:"text"` // at most MaxDetail bytes
	// what it weighs, of an option that is weighed by the purchaser; 0: not yet said
	Lb quantity.Mass `json:"lb,omitempty"`
}

// MaxDetail is the most bytes of a detail's text.
const MaxDetail = 120

// Carried is loose equipment and where it rides. An empty compartment means
// "not yet stowed".
type Carried struct {
	Equipment   string `json:"equipment"`
	Compartment string `json:"compartment,omitempty"`
	Qty         int    `json:"qty"`
}

// Find returns the pick of an option, or nil.
func (u *Unit) Find(option string) *Pick {
	i, found := slices.BinarySearchFunc(u.Picks, option, func(p Pick, id string) int {
		return strings.Compare(p.Option, id)
	})
	if !found {
		return nil
	}
	return &u.Picks[i]
}

// Has reports whether the option is in the unit, picked or filled.
func (u *Unit) Has(option string) bool { return u.Find(option) != nil }

// Filled reports whether the program chose an option, a chassis or a body that
// the unit has, and the customer has not made it an own choice since.
func (u *Unit) Filled(id string) bool {
	if id == u.Chassis || id == u.Body {
		return slices.Contains(u.Proposed, id)
	}
	p := u.Find(id)
	return p != nil && p.Filled
}

// Keep makes what the program chose the customer's own choice.
func (u *Unit) Keep(id string) {
	if p := u.Find(id); p != nil {
		p.Filled = false
	}
	u.Proposed = slices.DeleteFunc(slices.Clone(u.Proposed), func(x string) bool { return x == id })
	if len(u.Proposed) == 0 {
		u.Proposed = nil
	}
}

// Qty is how many of the option the unit holds; 0 when it has none.
func (u *Unit) Qty(option string) int {
	if p := u.Find(option); p != nil {
		return p.Qty
	}
	return 0
}

// Set adds or replaces a pick, keeping the order.
func (u *Unit) Set(p Pick) {
	i, found := slices.BinarySearchFunc(u.Picks, p.Option, func(q Pick, id string) int {
		return strings.Compare(q.Option, id)
	})
	if found {
		u.Picks[i] = p
		return
	}
	u.Picks = slices.Insert(u.Picks, i, p)
}

// Drop takes an option out; it is no error when the unit has none.
func (u *Unit) Drop(option string) {
	u.Picks = slices.DeleteFunc(u.Picks, func(p Pick) bool { return p.Option == option })
}

// LeaveOut notes of a standard option that it stays out, or that it may come back.
func (u *Unit) LeaveOut(option string, out bool) {
	u.LeftOut = slices.DeleteFunc(slices.Clone(u.LeftOut), func(x string) bool { return x == option })
	if out {
		i, _ := slices.BinarySearch(u.LeftOut, option)
		u.LeftOut = slices.Insert(u.LeftOut, i, option)
	}
	if len(u.LeftOut) == 0 {
		u.LeftOut = nil
	}
}

// Detail is what was said of an option; empty when nothing was.
func (u *Unit) Detail(option string) string {
	for _, d := range u.Details {
		if d.Option == option {
			return d.Text
		}
	}
	return ""
}

// DetailLb is what the purchaser weighed of an option; 0 while that is not known.
func (u *Unit) DetailLb(option string) quantity.Mass {
	for _, d := range u.Details {
		if d.Option == option {
			return d.Lb
		}
	}
	return 0
}

// Tell sets the customer's text for an option, keeping the order; an empty text
// removes it.
func (u *Unit) Tell(option, text string) { u.detail(Detail{option, text, u.DetailLb(option)}) }

// TellLb sets what the purchaser weighed of an option; 0 takes it back.
func (u *Unit) TellLb(option string, lb quantity.Mass) {
	u.detail(Detail{option, u.Detail(option), lb})
}

func (u *Unit) detail(told Detail) {
	u.Details = slices.DeleteFunc(slices.Clone(u.Details), func(d Detail) bool { return d.Option == told.Option })
	if told.Text != "" || told.Lb != 0 {
		i, _ := slices.BinarySearchFunc(u.Details, told.Option, func(d Detail, id string) int {
			return strings.Compare(d.Option, id)
		})
		u.Details = slices.Insert(u.Details, i, told)
	}
	if len(u.Details) == 0 {
		u.Details = nil
	}
}

// Clone is a deep copy, so that a request can change its own.
func (u *Unit) Clone() Unit {
	c := *u
	c.Picks = slices.Clone(u.Picks)
	c.Proposed, c.Details, c.LeftOut = slices.Clone(u.Proposed), slices.Clone(u.Details), slices.Clone(u.LeftOut)
	c.Carried, c.OwnItems = slices.Clone(u.Carried), slices.Clone(u.OwnItems)
	for i, e := range c.OwnItems {
		if e.Stow != nil {
			stow := *e.Stow
			stow.Apart = slices.Clone(stow.Apart)
			c.OwnItems[i].Stow = &stow
		}
	}
	c.Own, c.Factors = slices.Clone(u.Own), slices.Clone(u.Factors)
	if u.Existing != nil {
		e := *u.Existing
		if e.WarrantyYears != nil {
			e.WarrantyYears = new(*e.WarrantyYears)
		}
		c.Existing = &e
	}
	return c
}
