package propose

import (
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/quote"
)

// betterEquipped is a proposal that comes no earlier than the cheapest and has more of what
// was wished for.
const betterEquipped = "Better equipped"

// fewLacking are the wishes named that a cheaper unit does without.
const fewLacking = 3

// nameSoonest calls a unit that is delivered no earlier than the cheapest one by what it
// has more than that, and takes the cheapest in its place where that is nothing.
func (s *Search) nameSoonest() {
	if len(s.Proposals) != len(Goals) {
		return
	}
	cheapest, soonest := &s.Proposals[slices.Index(Goals, Cheapest)], &s.Proposals[slices.Index(Goals, Soonest)]
	switch {
	case soonest.wait() < cheapest.wait(), len(soonest.Misses) < len(cheapest.Misses):
	case lacking(cheapest, soonest) != "":
		soonest.Title, cheapest.Also = betterEquipped, strings.ToLower(soonest.Title)
	default:
		title := soonest.Title
		*soonest = *cheapest
		soonest.Goal, soonest.Title = Soonest, title
	}
}

// wait is how long a proposal takes, in days.
func (p *Proposal) wait() float64 {
	return waitOf(p.Quote.Draft.Date, p.Quote.Plan.NineInTen, p.Quote.Plan.EvenOdds)
}

func marginOf(q *quote.Quote) float64 {
	f, _ := q.Figure("weight.payload-left")
	return f.Value
}

// Gives says what a proposal gives up against the best of the three, in a sentence for each
// that is better.
func (s *Search) Gives(this *Proposal, in quantity.System) []string {
	var out []string
	said := make([][]string, len(s.Proposals))
	// best finds by how much the best of the three is better, and says so of that one.
	best := func(by func(o *quote.Quote) float64, words func(o *quote.Quote, by float64) string) {
		most, at := 0.0, -1
		for i := range s.Proposals {
			if v := by(s.Proposals[i].Quote); v > most {
				most, at = v, i
			}
		}
		if at >= 0 {
			said[at] = append(said[at], words(s.Proposals[at].Quote, most))
		}
	}
	q := this.Quote
	best(func(o *quote.Quote) float64 { return q.Price.Total.Sub(o.Price.Total).Float() },
		func(o *quote.Quote, _ float64) string {
			return q.Price.Currency + " " + q.Price.Total.Sub(o.Price.Total).Show() + " more"
		})
	best(func(o *quote.Quote) float64 { return marginOf(o) - marginOf(q) },
		func(_ *quote.Quote, by float64) string { return in.Show(by, quantity.Pound) + " less payload" })
	best(func(o *quote.Quote) float64 { return float64(o.Plan.NineInTen.DaysUntil(q.Plan.NineInTen)) },
		func(_ *quote.Quote, by float64) string { return quote.Days(int(by)) + " later" })
	shorter := func(size func(b *config.Body) quantity.Length) func(o *quote.Quote) float64 {
		return func(o *quote.Quote) float64 {
			if o.Body.Kind != q.Body.Kind {
				return 0
			}
			return float64(size(o.Body) - size(q.Body))
		}
	}
	inches := func(by float64) string { return strings.Replace(in.Show(by, quantity.Inch), ".0 ", " ", 1) }
	best(shorter(func(b *config.Body) quantity.Length { return b.LengthIn }),
		func(_ *quote.Quote, by float64) string { return "a module " + inches(by) + " shorter" })
	best(shorter(func(b *config.Body) quantity.Length { return b.HeadroomIn }),
		func(_ *quote.Quote, by float64) string { return inches(by) + " less headroom" })
	for i, list := range said {
		if list == nil {
			continue
		}
		o := &s.Proposals[i]
		line := capital(listed(list)) + " than the " + o.named()
		if lacks := lacking(o, this); lacks != "" && o.Goal == Cheapest {
			line += ", which does without " + lacks
		}
		out = append(out, line)
	}
	return out
}

// named is a title in a sentence.
func (p *Proposal) named() string {
	if p.Title == betterEquipped {
		return "better equipped one"
	}
	return strings.ToLower(p.Title)
}

// lacking names what was wished for and stands in one proposal and not in the other.
func lacking(without, with *Proposal) string {
	var names []string
	for _, id := range without.Dropped {
		if with.Unit.Has(id) {
			names = append(names, with.Quote.Edition.Cat.LabelOf(id))
		}
	}
	if n := len(names); n > fewLacking {
		names = append(names[:fewLacking-1], fmt.Sprintf("%d more of what you would like", n-fewLacking+1))
	}
	return listed(names)
}
