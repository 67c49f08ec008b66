package quote

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/leadtime"
	"boxwright/config/quantity"
	"boxwright/pricing"
)

// mostReasons bounds the reasons named in one sentence.
const mostReasons = 4

// SameTax reports whether the totals of two quotes hold sales tax alike.
func SameTax(a, b *Quote) bool {
	x, y := a.Price.SalesTax, b.Price.SalesTax
	return x.Exempt == y.Exempt && x.Amount.IsZero() == y.Amount.IsZero() && x.Rate.Equal(y.Rate)
}

// Untaxed is the total without sales tax.
func (q *Quote) Untaxed() pricing.Amount { return q.Price.Total.Sub(q.Price.SalesTax.Amount) }

// WhyPrice says in one sentence how much more or less a quote costs than another, and
// what makes the most of it, swaps taken together; of orders of unlike size also what one
// unit does. Where sales tax stands otherwise in the two, it is left out of both.
func WhyPrice(from, to *Quote) string {
	before, after, basis := from.Price.Total, to.Price.Total, ""
	same := SameTax(from, to)
	if !same {
		before, after, basis = from.Untaxed(), to.Untaxed(), " before sales tax, which is not at the same rate in both"
		if from.Price.SalesTax.Exempt != to.Price.SalesTax.Exempt {
			basis = " before sales tax, from which only one of them is exempt"
		}
	}
	currency := to.Price.Currency
	text := "It costs " + apart(before, after, currency) + basis
	if a, b := from.Price.Units, to.Price.Units; a != b {
		before, after = before.Each(a, from.Book.Rounding), after.Each(b, to.Book.Rounding)
		text += fmt.Sprintf(", for %d %s instead of %d; one unit costs %s", b, plural(b, "unit", "units"), a,
			apart(before, after, currency))
	}
	var reasons []string
	list := netted(from, to, same)
	for _, l := range list[:min(len(list), mostReasons)] {
		sign := "+"
		if l.By.Sign() < 0 {
			sign = ""
		}
		reasons = append(reasons, l.Label+" "+sign+l.By.Show())
	}
	if more := len(list) - mostReasons; more > 0 {
		reasons = append(reasons, fmt.Sprintf("%d smaller", more))
	}
	if reasons != nil {
		text += ": " + strings.Join(reasons, "; ")
	}
	return text + "."
}

// apart says how much more or less one amount is than another before it.
func apart(before, after pricing.Amount, currency string) string {
	by := after.Sub(before)
	switch by.Sign() {
	case 0:
		return "the same"
	case 1:
		return currency + " " + by.Show() + " more"
	}
	return currency + " " + by.Neg().Show() + " less"
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// netted lists by how much the parts of two prices differ, the largest first: what
// takes the place of something else is one part with it. Of orders of unlike size it takes
// what one unit has of each.
func netted(from, to *Quote, taxed bool) []DeltaLine {
	parts, each := map[string]*DeltaLine{}, from.Price.Units != to.Price.Units
	take := func(q *Quote, add func(*DeltaLine, pricing.Amount)) {
		for _, l := range q.Price.Lines {
			if l.Code == pricing.LineTax && !taxed {
				continue
			}
			label := l.Label
			switch l.Code {
			case pricing.LineChassis:
				label = "chassis"
			case pricing.LineBody:
				label = "module"
			case pricing.LineOption:
				if o := q.Edition.Cat.OptionByID(l.ID); o != nil {
					if g := q.Edition.Cat.GroupByID(o.Group); g.Choose != config.ChooseAny {
						label = g.Label
					}
				}
			}
			if parts[label] == nil {
				parts[label] = &DeltaLine{Label: label}
			}
			amount := l.Amount
			if each {
				amount = amount.Each(q.Price.Units, q.Book.Rounding)
			}
			add(parts[label], amount)
		}
	}
	take(from, func(d *DeltaLine, a pricing.Amount) { d.From = d.From.Add(a) })
	take(to, func(d *DeltaLine, a pricing.Amount) { d.To = d.To.Add(a) })
	var out []DeltaLine
	for _, d := range parts {
		if d.By = d.To.Sub(d.From); !d.By.IsZero() {
			out = append(out, *d)
		}
	}
	size := func(d DeltaLine) pricing.Amount {
		if d.By.Sign() < 0 {
			return d.By.Neg()
		}
		return d.By
	}
	slices.SortFunc(out, func(a, b DeltaLine) int {
		return cmp.Or(size(b).Cmp(size(a)), cmp.Compare(a.Label, b.Label))
	})
	return out
}

// WhyDate says in one sentence how much later or earlier a quote arrives than another,
// and what on the way to it takes longer or is over sooner.
func WhyDate(from, to *Quote) string {
	days := from.Plan.EvenOdds.DaysUntil(to.Plan.EvenOdds)
	if days == 0 {
		return "It arrives on the same day by the likely date (50 %)."
	}
	later, word := to, "later"
	sooner := from
	if days < 0 {
		later, sooner, word, days = from, to, "earlier", -days
	}
	text := fmt.Sprintf("It arrives %d calendar %s %s by the likely date (50 %%)", days, plural(days, "day", "days"),
		word)
	var reasons []string
	ordered := sooner.Plan.Order.DaysUntil(later.Plan.Order)
	if ordered > 0 {
		reasons = append(reasons, "ordered "+Days(ordered)+" "+word)
	}
	accounted := 0.0
	for _, x := range longer(sooner.Plan, later.Plan) {
		accounted += x.days
		sign := "+"
		if word == "earlier" {
			sign = "−"
		}
		reasons = append(reasons, fmt.Sprintf("%s %s%s working %s", x.label, sign, quantity.Group(x.days, 0),
			plural(int(math.Round(x.days)), "day", "days")))
	}
	// Reasons that come to more than the days said are not left to be added up.
	if accounted-float64(days)*5/7 >= 2 && ordered <= 0 {
		reasons = append(reasons, "other work or waiting offsets part of it")
	}
	// Where steps that take longer do not account for half of it, another way through the plant
	// decides the day.
	id := onlyOn(sooner.Plan, later.Plan)
	if short := accounted < float64(days)*5/7/2; short && ordered <= 0 && id != "" {
		reasons = []string{"the later one waits for “" + later.Plan.Step(id).Label + "”"}
	}
	if reasons != nil {
		text += ": " + strings.Join(reasons, "; ")
	}
	return text + "."
}

// onlyOn is the first step that the later plan waits for and the other does not.
func onlyOn(sooner, later *leadtime.Plan) string {
	for _, id := range later.Critical {
		if o := sooner.Step(id); later.Step(id) != nil && (o == nil || !o.Critical) {
			return id
		}
	}
	return ""
}

type held struct {
	label string
	days  float64
}

// longer lists the steps that the later plan waits for and that take at least half a
// working day more in it than in the other, waiting for a slot or a bay among them, the
// longest first.
func longer(sooner, later *leadtime.Plan) []held {
	var out []held
	for _, id := range later.Critical {
		s := later.Step(id)
		if s == nil {
			continue
		}
		before := 0.0
		if o := sooner.Step(id); o != nil {
			before = o.Expected + o.Wait
		}
		if d := s.Expected + s.Wait - before; d >= .5 {
			out = append(out, held{s.Label, d})
		}
	}
	slices.SortStableFunc(out, func(a, b held) int { return cmp.Compare(b.days, a.days) })
	return out[:min(len(out), mostReasons)]
}
