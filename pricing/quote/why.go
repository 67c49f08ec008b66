package quote

import (
	"cmp"
	"fmt"
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
// what makes the most of it, swaps taken together. Where sales tax stands otherwise in
// the two, it is left out of both.
func WhyPrice(from, to *Quote) string {
	by, basis := to.Price.Total.Sub(from.Price.Total), ""
	same := SameTax(from, to)
	if !same {
		by, basis = to.Untaxed().Sub(from.Untaxed()), " before sales tax, which is not at the same rate in both"
		if from.Price.SalesTax.Exempt != to.Price.SalesTax.Exempt {
			basis = " before sales tax, from which only one of them is exempt"
		}
	}
	word := "more"
	if by.Sign() < 0 {
		by, word = by.Neg(), "less"
	}
	text := "It costs " + to.Price.Currency + " " + by.Show() + " " + word + basis
	if by.IsZero() {
		text = "It costs the same" + basis
	}
	if a, b := from.Price.Units, to.Price.Units; a != b {
		text += fmt.Sprintf(", for %d %s instead of %d", b, plural(b, "unit", "units"), a)
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

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// netted lists by how much the parts of two prices differ, the largest first: what
// takes the place of something else is one part with it.
func netted(from, to *Quote, taxed bool) []DeltaLine {
	parts := map[string]*DeltaLine{}
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
			add(parts[label], l.Amount)
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
	if n := sooner.Plan.Order.DaysUntil(later.Plan.Order); n > 0 {
		reasons = append(reasons, "ordered "+Days(n)+" "+word)
	}
	for _, x := range longer(sooner.Plan, later.Plan) {
		sign := "+"
		if word == "earlier" {
			sign = "-"
		}
		reasons = append(reasons, fmt.Sprintf("%s %s%s working days", x.label, sign, quantity.Group(x.days, 0)))
	}
	if reasons != nil {
		text += ": " + strings.Join(reasons, "; ")
	}
	return text + "."
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
		if o := sooner.Step(id); o != nil && o.Critical {
			before = o.Expected + o.Wait
		}
		if d := s.Expected + s.Wait - before; d >= .5 {
			out = append(out, held{s.Label, d})
		}
	}
	slices.SortStableFunc(out, func(a, b held) int { return cmp.Compare(b.days, a.days) })
	return out[:min(len(out), mostReasons)]
}
