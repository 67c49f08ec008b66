package finance

import (
	"errors"

	"boxwright/pricing/money"
)

// Comparison sets ways of having a unit in service side by side, by what a year
// of each costs.
type Comparison struct {
	Rates    Rates `json:"rates"`
	Ways     []Way `json:"ways"`     // in the order given
	Cheapest int   `json:"cheapest"` // position of the least cost a year; the earlier where two are equal
}

// Way is one choice, worked out and held against the others.
type Way struct {
	Service
	Swings []Swing `json:"swings"`
	// BreakEven is the price at which this way would cost as much a year as the
	// cheapest of the others.
	BreakEven money.Amount `json:"break_even"`
	// Against is the position of that other way.
	Against int `json:"against"`
}

// Compare works out two choices or more. The choices mean the same service:
// one unit, as many runs.
//
// Source: CostPerYear, Sensitivity and BreakEven of each.
// Units: dollars a year in today's money.
// Valid: 2 to 8 choices that pass Check.
// Example: a new unit, a remount and keeping the old one, with the most that
// the remount may cost.
func Compare(choices []Choice, r Rates) (*Comparison, error) {
	if len(choices) < 2 || len(choices) > 8 {
		return nil, errors.New("finance: a comparison is of 2 to 8 ways of having a unit in service")
	}
	c := &Comparison{Rates: r}
	for _, x := range choices {
		s, err := CostPerYear(x, r)
		if err != nil {
			return nil, err
		}
		swings, err := Sensitivity(x, r)
		if err != nil {
			return nil, err
		}
		c.Ways = append(c.Ways, Way{Service: *s, Swings: swings})
	}
	c.Cheapest = c.cheapestBut(-1)
	for i := range c.Ways {
		w := &c.Ways[i]
		w.Against = c.cheapestBut(i)
		most, err := BreakEven(w.Choice, c.Ways[w.Against].Choice, r)
		if err != nil {
			return nil, err
		}
		w.BreakEven = most
	}
	return c, nil
}

// cheapestBut is the position of the least cost a year, leaving one out.
func (c *Comparison) cheapestBut(skip int) int {
	best := -1
	for i := range c.Ways {
		if i != skip && (best < 0 || c.Ways[i].PerYear.Cmp(c.Ways[best].PerYear) < 0) {
			best = i
		}
	}
	return best
}
