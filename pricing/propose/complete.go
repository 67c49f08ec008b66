package propose

import (
	"fmt"
	"slices"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/pricing/money"
	"boxwright/pricing/quote"
)

// Goal is what a completion of the unit seeks.
type Goal string

// The goals a customer can press.
const (
	Cheapest Goal = "cheapest"
	Lightest Goal = "lightest"
	Soonest  Goal = "soonest"
)

// Aside names the unit that a search put behind its proposals.
const Aside Goal = "aside"

// Goals are those that a customer can press.
var Goals = []Goal{Cheapest, Lightest, Soonest}

// goalBudget is how many conflicts a completion may take before what was found
// is shown with its bound.
const goalBudget = 20000

// Complete keeps the deliberate picks and chooses everything else for the
// goal. It returns the full unit and one sentence that says what was found and
// whether it is proven; false when no full unit keeps the picks and limits.
func Complete(ed *quote.Edition, d *quote.Draft, goal Goal) (config.Unit, string, bool) {
	ed = ed.For(&d.Unit)
	cost := costOf(ed, d.Date, goal)
	if cost == nil {
		return d.Unit, "", false
	}
	c := ed.Rules.Complete(&d.Unit, quote.Limits(ed, d), cost, goalBudget)
	if !c.Found {
		return d.Unit, "", false
	}
	if goal == Soonest {
		return c.Unit, soonest(ed, d, &c.Unit), true
	}
	return c.Unit, least(ed, goal, &c), true
}

// least says that nothing costs or weighs less, or by how much something might.
func least(ed *quote.Edition, goal Goal, c *rules.Completion) string {
	said := "The " + string(goal) + " unit that keeps your choices"
	if c.Proven() {
		return said + ", proven: no other has " +
			map[Goal]string{Cheapest: "lower list prices", Lightest: "a lower weight of its options"}[goal] + "."
	}
	gap := fmt.Sprintf("%.1f lb", float64(c.Cost-c.Bound)/10)
	if goal == Cheapest {
		gap = ed.Book.Currency + " " + money.Cents(c.Cost-c.Bound).Show()
	}
	return said + ", the best found: at most " + gap + " could still be saved."
}

// costOf is what one of an option adds to what the goal makes least, in whole
// steps; nil for an unknown goal.
func costOf(ed *quote.Edition, on config.Date, goal Goal) func(id string) int64 {
	cat, book := ed.Cat, ed.Book.AsOf(on)
	cost := map[Goal]func(o *config.Option) int64{
		Cheapest: func(o *config.Option) int64 { return pricing.PriceOf(book, cat, o.ID).Decimal().Shift(2).IntPart() },
		Lightest: func(o *config.Option) int64 { return tenths(massOf(o)) },
		Soonest:  func(o *config.Option) int64 { return tenths(effortOf(o)) },
	}[goal]
	if cost == nil {
		return nil
	}
	return func(id string) int64 { return cost(cat.OptionByID(id)) }
}

// soonest compares the date of the unit found with one that nothing can beat:
// the same unit with the deliberate picks alone, since added work never makes
// a delivery earlier.
func soonest(ed *quote.Edition, d *quote.Draft, found *config.Unit) string {
	full, bare := *d, d.Clone()
	full.Unit = *found
	bare.Unit.Picks = slices.DeleteFunc(bare.Unit.Picks, func(p config.Pick) bool { return p.Filled })
	at, err := quote.NextPlan(ed, &full)
	if err != nil {
		return "The unit with the least added work and waiting."
	}
	least, err := quote.NextPlan(ed, bare)
	said := "With the least added work and waiting, the likely date (50 %) is " + at.EvenOdds.Long()
	if err == nil && least.EvenOdds == at.EvenOdds {
		return said + ", proven: your own choices alone take as long."
	}
	if err == nil {
		said += "; your choices alone would not be earlier than " + least.EvenOdds.Long()
	}
	return said + "."
}

func massOf(o *config.Option) float64 {
	if o.Mass == nil {
		return 0
	}
	return float64(o.Mass.Lb)
}

// effortOf weighs what an option does to the date: hours of work, and its
// part's waiting time as if every day of it were a day of eight hours.
func effortOf(o *config.Option) float64 {
	sum := 0.0
	for _, w := range o.Work {
		sum += float64(w.Hours)
	}
	if o.Parts != nil {
		sum += 8 * o.Parts.Likely
	}
	return sum
}

func tenths(v float64) int64 { return int64(v*10 + 0.5) }
