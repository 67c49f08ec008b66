package unit

import (
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing/propose"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// why says why not, and offers the ways out, each at a press.
func why(p *Page, id string) Part {
	q, ways := p.Q, p.Ways
	if ways == nil {
		ways = new(propose.Ways)
	}
	return El("div", Class("why"), At("id", "why-"+id), At("tabindex", "-1"), At("role", "group"),
		At("aria-label", "Why not: "+q.Edition.Cat.LabelOf(id)),
		If(len(ways.Reasons) > 0, El("p", Class("head"), Text("Why not"))),
		If(p.Ways == nil, page.Working()),
		Each(p.reasons(ways), func(i int, r reason) Part {
			if i == 0 {
				n := len(ways.Mends) + len(ways.Offers) + len(ways.Yields)
				p.Answer = r.words + " " + page.Count(n, "way out.", "ways out.")
			}
			return Many(El("p", Text(r.words)),
				If(r.chosen != "", El("p", Class("how"), Text(r.chosen))),
				Each(r.Limits, func(n int, a rules.Arithmetic) Part { return p.makeUp(&a, strconv.Itoa(i)+"-"+strconv.Itoa(n)) }),
				folded("background-"+strconv.Itoa(i), playing(r.Reason), q.Background(r.Reason)))
		}),
		When(len(ways.Mends) > 0, func() Part {
			return waysOut("What would help", len(ways.Mends), func(i int) Part {
				m := &ways.Mends[i]
				return wayOut("mend", id, i, propose.MendWords(q, m), propose.MendEffect(q, ways, m, p.System()))
			})
		}),
		When(len(ways.Offers) > 0, func() Part {
			title := "It fits the unit as it is"
			here := slices.IndexFunc(ways.Offers, func(o propose.Offer) bool { return o.Chassis == "" })
			if n := propose.Things(q.Edition.Cat, ways.Offers[here].Changes); n > 0 {
				where := ""
				if len(ways.Offers) > 1 {
					where = " on this chassis"
				}
				title = "It fits your choices, but" + where + " " + page.Count(n, "thing", "things") +
					" filled in would change"
			}
			return waysOut(title, len(ways.Offers), func(i int) Part {
				o := &ways.Offers[i]
				effect := propose.Effect(q, &o.Unit, o.Changes, nil, p.System())
				return wayOut("offer", id, i, o.Words(q.Edition.Cat), effect)
			})
		}),
		When(len(ways.Yields) > 0, func() Part {
			return waysOut("If the customer gives up a need", len(ways.Yields), func(i int) Part {
				y := &ways.Yields[i]
				effect := propose.Effect(q, &y.Unit, y.Changes, nil, p.System())
				return wayOut("yield", id, i, y.Words(), effect)
			})
		}),
		When(p.Ways != nil, func() Part { return waysLeft(ways, q.Draft.Unit.Has(id)) }),
	)
}

// folded is a list that opens; nil where it is empty.
func folded(id, title string, list []string) Part {
	return If(len(list) > 0, El("details", At("id", id), El("summary", Class("small"), Text(title)),
		El("ul", Each(list, func(_ int, t string) Part { return El("li", Text(t)) }))))
}

// makeUp folds what a sum is made of: the five choices that add most, and the rest.
func (p *Page) makeUp(a *rules.Arithmetic, id string) Part {
	return folded("sum-"+id, "What it is made of", p.Q.MakeUp(a, p.System()))
}

// playing says what the rules do that stand behind a sum.
func playing(r rules.Reason) string {
	heavy := func(a rules.Arithmetic) bool { return a.Unit == quantity.Pound }
	if slices.ContainsFunc(r.Limits, heavy) {
		return "Rules that keep a full unit from being lighter"
	}
	return "Rules that play a part in it"
}

// waysLeft says what there is beside the ways out that are shown: with none, that none
// helps, and where looking took more work than is allowed, that there may be more.
func waysLeft(ways *propose.Ways, has bool) Part {
	none := len(ways.Mends)+len(ways.Offers)+len(ways.Yields) == 0
	switch {
	case ways.More && none:
		return El("p", Text("No way was found with the work allowed. In a catalogue of this size there may be one "+
			"nevertheless: take out one of your choices that has to do with it, and look again."))
	case ways.More:
		return El("p", Class("small"), Text("There may be more ways: in a catalogue of this size not all of them are "+
			"looked for."))
	case none && !has:
		return El("p", Text("No change of your other choices makes it possible in this catalogue."))
	}
	return nil
}

// reason is one that is shown, with what no reason before it has said.
type reason struct {
	rules.Reason
	words, chosen string
}

// reasons leaves out those that tell the same sum again, and sentences that stand
// already.
func (p *Page) reasons(ways *propose.Ways) []reason {
	var out []reason
	summed := false
	said := map[string]bool{}
	for _, r := range ways.Reasons {
		if len(r.Limits) > 0 && summed {
			continue
		}
		fresh := slices.DeleteFunc(p.Q.Sentences(r, p.System()), func(text string) bool { return said[text] })
		if len(fresh) == 0 {
			continue
		}
		summed = summed || len(r.Limits) > 0
		shown := reason{Reason: r, words: strings.Join(fresh, " ")}
		if len(r.Picks) > 0 {
			if chosen := p.Q.Chosen(r.Picks); !said[chosen] {
				shown.chosen = chosen
			}
		}
		for _, text := range append(fresh, shown.chosen) {
			said[text] = true
		}
		out = append(out, shown)
	}
	return out
}

// waysOut lists buttons, each with what it does written beneath.
func waysOut(title string, n int, way func(i int) Part) Part {
	list := make([]Part, n)
	for i := range list {
		list[i] = way(i)
	}
	return Many(El("p", Class("head"), Text(title)), El("ul", Class("mends"), Many(list...)))
}

// wayOut is a button, and aligned beneath it the price, what is to spare, the date and the weight.
func wayOut(do, id string, i int, label string, o propose.Outcome) Part {
	n := strconv.Itoa(i)
	cell := func(label, value, more string) Part {
		return If(value != "", El("div", El("dt", Text(label)),
			El("dd", Text(value), If(more != "", El("small", Text(" "+more))))))
	}
	return El("li", page.Action(do, id, n, label, At("id", do+"-"+id+"-"+n)),
		If(o.Risk != "", El("p", page.Mark(config.Warn), Text(" "+o.Risk))),
		El("dl", cell("Price", o.Price, ""),
			Each(o.Spare, func(_ int, s propose.Spare) Part { return cell(s.Label, s.Words, "") }),
			If(!o.Date.IsZero(), cell("Likely delivery", o.Date.Short(), o.Later)), cell("Full load", o.Weight, "")),
		If(o.Exchange != "", El("p", Class("how"), Text(o.Exchange))))
}
