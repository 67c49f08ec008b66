package pricing

import (
	"maps"

	"boxwright/config"
)

// Book is the price book of a catalogue edition: the value of its "price_book".
// Amounts, percentages and quantities are texts of plain digits ("1234.00",
// "8.25", "412.5"). Everything but currency, rounding and prices may be left
// out. Nothing in it is private: cost and margin live in package costs.
type Book struct {
	Currency     string   `json:"currency"`        // three capital letters, such as "USD"
	Rounding     Rounding `json:"rounding"`        // "half-up" or "half-even", of every rounded line
	ValidityDays int      `json:"validity_days"`   // how many days a quote stands; 30 if zero
	Notes        []string `json:"notes,omitempty"` // printed beneath the price

	// Prices by key: chassis and bodies by their id, options by their price key
	// (their id when they name none). An option's price may be negative, a
	// deletion credit; "0.00" is included at no charge. For each one of a
	// quantity. Nothing may lack a price and no key may be unused.
	Prices map[string]Amount `json:"prices"`
	// Editions change some prices from a day on; the newest first, old ones kept.
	Editions []Edition `json:"editions,omitempty"`

	Surcharges  []Surcharge `json:"surcharges,omitempty"`   // dated, such as for a material
	Credits     []Credit    `json:"credits,omitempty"`      // package credits
	FleetBreaks *FleetTable `json:"fleet_breaks,omitempty"` // by the number of units on the quote
	Contracts   []Contract  `json:"contracts,omitempty"`    // cooperative contracts
	Prepayments []Prepay    `json:"prepayments,omitempty"`  // credits for paying the chassis early
	Freight     Freight     `json:"freight,omitzero"`
	Training    Training    `json:"training,omitzero"`
	Fees        []Fee       `json:"fees,omitempty"`
	Tax         Tax         `json:"tax,omitzero"`
	Bond        []BondStep  `json:"bond,omitempty"`       // performance bond premium, steps from low to high
	Milestones  []Milestone `json:"milestones,omitempty"` // the usual payments; they make up 100 %

	dated map[string]*Edition // by key, of the prices that an edition in force has changed
	day   config.Date         // the prices are those of this day; zero as published
}

// Edition is a dated change of some prices. From its first day on, its prices
// replace earlier ones.
type Edition struct {
	ID     string            `json:"id"`   // such as "2027-01"
	From   config.Date       `json:"from"` // first day in force
	Prices map[string]Amount `json:"prices"`
	Reason string            `json:"reason"` // printed beside a line priced by it
}

// Scope says which of a unit's prices a percentage applies to.
type Scope string

// The scopes. Build is body and options: what the plant itself makes, where a
// chassis is passed through.
const (
	OnChassis Scope = "chassis"
	OnBody    Scope = "body"
	OnOptions Scope = "options"
	OnBuild   Scope = "build"
	OnUnit    Scope = "unit"
)

// Scopes lists them.
var Scopes = []Scope{OnChassis, OnBody, OnOptions, OnBuild, OnUnit}

// Surcharge is added to each unit while it is in force. It has a percentage, on
// a scope or on named price keys, or a plain amount.
type Surcharge struct {
	ID      string      `json:"id"`
	Label   string      `json:"label"`
	From    config.Date `json:"from"`
	Until   config.Date `json:"until,omitzero"` // last day in force; left out: open
	On      Scope       `json:"on,omitempty"`
	Keys    []string    `json:"keys,omitempty"` // instead of a scope; the amount then for each one picked
	Percent Percent     `json:"percent,omitzero"`
	Amount  Amount      `json:"amount,omitzero"`
	Reason  string      `json:"reason"`
}

// Credit is taken off when a unit holds everything in When.
type Credit struct {
	ID     string   `json:"id"`
	Label  string   `json:"label"`
	When   []string `json:"when"`             // option, chassis or body ids, all of them in the unit
	Amount Amount   `json:"amount"`           // above zero: taken off the price of a unit
	Ousts  []string `json:"ousts,omitempty"`  // ids of smaller credits that this one takes the place of
	Reason string   `json:"reason,omitempty"` // why the package costs less
}

// FleetTable gives a percentage off by the number of units on the quote, alike
// or not.
type FleetTable struct {
	On     Scope        `json:"on"`
	Breaks []FleetBreak `json:"breaks"` // from few units to many
	Reason string       `json:"reason"`
}

// FleetBreak holds from Units on.
type FleetBreak struct {
	Units   int     `json:"units"`
	Percent Percent `json:"percent"`
}

// Contract is a cooperative purchasing contract that a buyer may order under.
type Contract struct {
	ID        string             `json:"id"`
	Label     string             `json:"label"`
	From      config.Date        `json:"from"`
	Until     config.Date        `json:"until,omitzero"`
	Discounts []ContractDiscount `json:"discounts"`
	// NoFleetBreak: the contract's prices stand instead of the fleet breaks.
	NoFleetBreak bool `json:"no_fleet_break,omitempty"`
	// Fee is what the cooperative adds, on the units' price; zero where the
	// plant bears it.
	Fee    Percent `json:"fee,omitzero"`
	Reason string  `json:"reason"`
}

// ContractDiscount is a percentage off list on a scope. Scopes of one contract
// must not overlap.
type ContractDiscount struct {
	On      Scope   `json:"on"`
	Percent Percent `json:"percent"`
}

// When a chassis is paid early.
const (
	AtOrder   = "order"   // with the order
	AtArrival = "arrival" // when it reaches the plant
)

// Prepay is a credit for paying the chassis before it is due, which is at delivery.
type Prepay struct {
	ID      string  `json:"id"`
	Label   string  `json:"label"`
	Percent Percent `json:"percent"` // of the chassis price
	At      string  `json:"at"`      // when it is paid, "order" or "arrival"; the schedule says how early that is
	Reason  string  `json:"reason"`
}

// Freight is the delivery from the plant to the buyer, for each unit.
type Freight struct {
	PerMile Amount   `json:"per_mile,omitzero"`
	Free    Quantity `json:"free,omitzero"`    // miles included in the price
	Minimum Amount   `json:"minimum,omitzero"` // once any mile is charged
}

// Training is instruction at the buyer's place, for the whole order.
type Training struct {
	PerDay Amount   `json:"per_day,omitzero"`
	Free   Quantity `json:"free,omitzero"` // days included in the price
}

// Fee is a fixed charge.
type Fee struct {
	ID      string `json:"id"`
	Label   string `json:"label"`
	Amount  Amount `json:"amount"`
	Per     string `json:"per"`               // "unit" or "order"
	Choice  bool   `json:"choice,omitempty"`  // only when the terms ask for it
	Untaxed bool   `json:"untaxed,omitempty"` // no sales tax on it, such as a public registration fee
	Reason  string `json:"reason"`
}

// Fees are charged for each unit or once for the order.
const (
	PerUnit  = "unit"
	PerOrder = "order"
)

// Tax is what is usual for sales tax at the buyer's place; the terms override
// it. What is taxed differs from state to state: the buyer's own authority
// decides.
type Tax struct {
	Rate           Percent `json:"rate,omitzero"`
	Label          string  `json:"label,omitempty"`
	FreightUntaxed bool    `json:"freight_untaxed,omitempty"`
	ExciseUntaxed  bool    `json:"excise_untaxed,omitempty"` // federal excise is no part of the taxed price
	TradeInTaxed   bool    `json:"trade_in_taxed,omitempty"` // the trade-in does not lessen the taxed price
	Reason         string  `json:"reason,omitempty"`
	// ExemptBuyers are the kinds of buyer that pay none until said otherwise; left
	// out they are the public bodies.
	ExemptBuyers []string `json:"exempt_buyers,omitempty"`
}

// BondStep is one step of the premium: Percent on the part of the sum above
// Over, up to the next step.
type BondStep struct {
	Over    Amount  `json:"over"`
	Percent Percent `json:"percent"`
}

// Milestone is a part of the price due at an event.
type Milestone struct {
	ID      string  `json:"id"`
	Label   string  `json:"label"`         // such as "When the chassis arrives at the plant"
	Van     string  `json:"van,omitempty"` // said in its place where a van is converted
	Percent Percent `json:"percent"`
}

// AsOf is the book in force on a day: prices of the editions in force
// replace earlier ones, and surcharges and contracts that are not in force
// are left out. The zero Date leaves the prices as first published and drops
// nothing.
func (b *Book) AsOf(day config.Date) *Book {
	if day.IsZero() || day == b.day {
		return b
	}
	c := *b
	c.dated, c.day = nil, day
	for i := len(b.Editions) - 1; i >= 0; i-- {
		e := &b.Editions[i]
		if day.Before(e.From) {
			continue
		}
		if c.dated == nil {
			c.Prices, c.dated = maps.Clone(b.Prices), map[string]*Edition{}
		}
		for key, a := range e.Prices {
			c.Prices[key], c.dated[key] = a, e
		}
	}
	c.Surcharges, c.Contracts = nil, nil
	for _, s := range b.Surcharges {
		if inForce(day, s.From, s.Until) {
			c.Surcharges = append(c.Surcharges, s)
		}
	}
	for _, k := range b.Contracts {
		if inForce(day, k.From, k.Until) {
			c.Contracts = append(c.Contracts, k)
		}
	}
	return &c
}

func inForce(day, from, until config.Date) bool {
	return !day.Before(from) && (until.IsZero() || !until.Before(day))
}

// KeyOf is the key under which an option stands in the book.
func KeyOf(o *config.Option) string {
	if o.PriceKey != "" {
		return o.PriceKey
	}
	return o.ID
}

// PriceOf is the price of one chassis, body or option, by its id, before any
// adjustment; zero when the catalogue does not know the id. For the prices of
// a day, hand it b.AsOf(day).
func PriceOf(b *Book, cat *config.Catalogue, id string) Amount {
	if o := cat.OptionByID(id); o != nil {
		return b.Prices[KeyOf(o)]
	}
	if cat.ChassisByID(id) == nil && cat.BodyByID(id) == nil {
		return Amount{}
	}
	return b.Prices[id]
}
