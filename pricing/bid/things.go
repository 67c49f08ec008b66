package bid

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/config/standards"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

func known(q *quote.Quote, id string) bool {
	cat := q.Edition.Cat
	return cat.OptionByID(id) != nil || cat.ChassisByID(id) != nil || cat.BodyByID(id) != nil
}

// holds reports whether the unit has an option, or stands on a chassis or body.
func holds(q *quote.Quote, id string) bool {
	u := &q.Draft.Unit
	return u.Has(id) || u.Chassis == id || u.Body == id
}

// holding is the first of a list that the unit has, as often as asked for.
func (j *judge) holding(list []string, qty int) string {
	for _, id := range list {
		if holds(j.q, id) && (qty == 0 || j.q.Draft.Unit.Qty(id) >= qty || j.q.Edition.Cat.OptionByID(id).MaxQty <= 1) {
			return id
		}
	}
	return ""
}

// things answers a claim on something the catalogue offers.
func (j *judge) things(c *claim) part {
	cat := j.q.Edition.Cat
	if slices.Contains(c.words, federal) && !strings.HasPrefix(j.q.Draft.Unit.RuleSet, standards.KKK) {
		return part{outcome: quote.Unanswered, read: cat.LabelOf(j.likeliest(c))}
	}
	all := slices.Concat(c.same, c.more)
	if id := j.holding(all, c.qty); id != "" && j.beyondIt(c, id) {
		return part{outcome: quote.Unanswered, read: cat.LabelOf(id), offered: j.named(id), where: j.placeOf(id)}
	}
	if id := j.holding(c.same, c.qty); id != "" {
		return part{outcome: quote.Meets, read: cat.LabelOf(id), offered: j.named(id), where: j.placeOf(id)}
	}
	if id := j.holding(c.more, c.qty); id != "" && (c.same == nil || !j.hasAmps(id)) {
		return part{outcome: quote.Meets, read: cat.LabelOf(id), offered: j.named(id) + " (exceeds)",
			where: j.placeOf(id)}
	}
	if id := j.holding(c.also, c.qty); id != "" { // the line may mean that as well
		return part{outcome: quote.Unanswered, read: cat.LabelOf(id)}
	}
	had := func(list []string) string {
		best := ""
		for _, id := range list {
			if !j.had(id) {
				continue
			}
			if best == "" || j.alike(best, id) && j.price(id) < j.price(best) {
				best = id
			}
		}
		return best
	}
	if id := cmp.Or(had(c.same), had(c.more)); id != "" {
		return part{outcome: quote.MeetsWith, read: cat.LabelOf(id), offered: j.present(id), where: j.placeOf(id),
			take: Take{id, c.qty}}
	}
	if len(all) > 0 {
		may := slices.ContainsFunc(c.maybe, func(id string) bool { return j.alike(id, all[0]) && j.had(id) })
		if may || !j.differs(c, all[0]) {
			return part{outcome: quote.Unanswered, read: cat.LabelOf(all[0]), offered: j.present(all[0]),
				where: j.placeOf(all[0])}
		}
		p := part{outcome: quote.Excepted, read: cat.LabelOf(all[0]), offered: j.present(all[0]),
			where: j.placeOf(all[0])}
		p.nearest = j.why(all[0])
		if cat.ChassisByID(all[0]) != nil && j.q.State(all[0]) != rules.RuledOut {
			p.nearest = cat.LabelOf(all[0]) + ", as another chassis"
		}
		return p
	}
	return j.falling(c)
}

// federal is how the federal ambulance specification is read. What declares a unit to the
// standard that judges it declares it to that one only where it is that.
var federal = stems("KKK-A-1822F")[0]

// likeliest is the first thing that a claim may mean.
func (j *judge) likeliest(c *claim) string {
	return slices.Concat(c.same, c.more, c.short, []string{""})[0]
}

// beyondIt reports whether a line asks for more of a thing than the unit has of it: whether
// "an additional outlet" counts the one that is there, a person decides.
func (j *judge) beyondIt(c *claim, id string) bool {
	return slices.Contains(c.words, additional) && !j.v.byID[id].words[additional]
}

// additional is the stem of "additional" and "extra".
var additional = stems("additional")[0]

// differs reports whether what the unit has in the place of a thing that cannot be had
// is plainly another: not just by a word that may be true of it as well.
func (j *judge) differs(c *claim, id string) bool {
	if len(c.words) == 0 {
		return true // a person said what the line asks for
	}
	cat := j.q.Edition.Cat
	held := ""
	switch o := cat.OptionByID(id); {
	case o != nil && cat.GroupByID(o.Group).Choose == config.ChooseAny:
		return true
	case o != nil:
		for _, m := range cat.Members(o.Group) {
			if other := cat.Options[m].ID; j.q.Draft.Unit.Has(other) {
				held = other
			}
		}
	case cat.ChassisByID(id) != nil:
		held = j.q.Chassis.ID
	default:
		held = j.q.Body.ID
	}
	p := j.v.byID[held]
	if p == nil || p.lack { // "No spare wheel carried"
		return true
	}
	missing := 0
	for _, w := range c.plain {
		if p.never[w] {
			return true
		}
		if !p.words[w] {
			missing++
		}
	}
	fit, _ := p.fits(c.numbers)
	return missing >= 2 || fit == misses || fit == falls
}

// had reports whether a thing can be had with the unit as it is.
func (j *judge) had(id string) bool {
	if j.q.Edition.Cat.OptionByID(id) != nil {
		return j.q.State(id) != rules.RuledOut
	}
	s := j.q.State(id)
	return s != rules.RuledOut && s != rules.Checking
}

// alike reports whether two options are of one group, so that the price decides.
func (j *judge) alike(a, b string) bool {
	x, y := j.q.Edition.Cat.OptionByID(a), j.q.Edition.Cat.OptionByID(b)
	return x != nil && y != nil && x.Group == y.Group
}

// falling answers a claim that nothing offered reaches.
func (j *judge) falling(c *claim) part {
	cat := j.q.Edition.Cat
	best, most := "", 0.0
	for _, id := range c.short {
		if !j.had(id) && !holds(j.q, id) {
			continue
		}
		for _, n := range j.v.byID[id].numbers {
			if n.Unit == c.by.Unit && (n.Unit != "" || counts(n, c.by.Near)) &&
				(best == "" || (n.Value > most) == (c.by.Sense != atMost)) {
				best, most = id, n.Value
			}
		}
	}
	p := part{outcome: quote.Excepted,
		read: fmt.Sprintf("%s, %s %s", j.groupOf(c.short[0]), cmp.Or(string(c.by.Sense), string(atLeast)),
			show(j.in, c.by.Value, c.by.Unit)), where: j.placeOf(c.short[0])}
	if id := j.holding(c.short, 0); id != "" {
		p.offered = j.named(id)
	} else {
		p.offered = j.present(c.short[0])
	}
	if slices.ContainsFunc(c.silent, func(id string) bool { return j.had(id) || holds(j.q, id) }) {
		p.outcome = quote.Unanswered // that may have it
	}
	if best != "" && !holds(j.q, best) {
		p.nearest = cat.LabelOf(best)
	}
	return p
}

// hasAmps reports whether a thing is rated in amperes: what is rated higher then is
// another thing, such as an inlet.
func (j *judge) hasAmps(id string) bool {
	return slices.ContainsFunc(j.v.byID[id].numbers, func(n claims.Number) bool { return n.Unit == quantity.Amp })
}
