package bid

import (
	"math"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing/bid/claims"
	"boxwright/pricing/quote"
)

// placeOf is where the quote speaks of a thing.
func (j *judge) placeOf(id string) string {
	at, known := j.places[id]
	if !known {
		at = j.q.PlaceOf(id)
		j.places[id] = at
	}
	return at
}

// named is a thing with the name of its group, where its label does not say it.
func (j *judge) named(id string) string {
	cat := j.q.Edition.Cat
	label := cat.LabelOf(id)
	o := cat.OptionByID(id)
	if o == nil {
		return label
	}
	g := cat.GroupByID(o.Group)
	if g.Choose == config.ChooseAny {
		return label
	}
	for _, w := range stems(g.Label) {
		if slices.Contains(j.v.byID[id].label, w) {
			return label
		}
	}
	return g.Label + ": " + label
}

// present is what the unit has in the place of a thing it does not have.
func (j *judge) present(id string) string {
	cat := j.q.Edition.Cat
	if o := cat.OptionByID(id); o != nil {
		if s := j.q.InGroup(o.Group); s != "–" && cat.GroupByID(o.Group).Choose != config.ChooseAny {
			return s
		}
		return "not in the unit"
	}
	if cat.ChassisByID(id) != nil {
		return j.q.Chassis.Label
	}
	return j.q.Body.Label
}

func (j *judge) groupOf(id string) string {
	cat := j.q.Edition.Cat
	if o := cat.OptionByID(id); o != nil {
		return cat.GroupByID(o.Group).Label
	}
	return cat.LabelOf(id)
}

// whyBudget is what a reason may take, as rules.AnswerWithin has it.
const whyBudget = 2000

// why says what keeps a thing from being had.
func (j *judge) why(id string) string {
	said, known := j.whys[id]
	if known {
		return said
	}
	defer func() { j.whys[id] = said }()
	q := j.q
	limits := quote.Limits(q.Edition, q.Draft)
	if r, found := q.Edition.Rules.FirstReason(&q.Draft.Unit, limits, id, whyBudget); found {
		said = q.Words(r, j.in)
	}
	return said
}

// show is an amount with its unit, in the user's units.
func show(in quantity.System, v float64, unit string) string {
	if unit == claims.Gallon || v == math.Trunc(v) && (unit == "" || unit == claims.BTU || unit == claims.VA) {
		return strings.TrimSpace(quantity.Group(v, 0) + " " + unit)
	}
	return strings.TrimSuffix(in.Show(v, unit), " places")
}
