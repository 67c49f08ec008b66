package unit

import (
	"strconv"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// option is the row of an option, drawn before or now.
func option(p *Page, g *config.Group, o *config.Option) Part {
	pick := p.Q.Draft.Unit.Find(o.ID)
	state := p.Q.State(o.ID)
	own := p.View.Asked == o.ID || p.toldAt(o.ID) || pick != nil && len(p.Typed)+len(p.Wrong) > 0
	if p.Rows == nil || own {
		return optionRow(p, g, o, pick, state)
	}
	key := rowKey{option: o.ID, state: state, metric: p.Metric}
	if pick != nil {
		key.qty, key.filled, key.detail = pick.Qty, pick.Filled, p.Q.Draft.Unit.Detail(o.ID)
	}
	return p.Rows.Row(p.Q.Edition.Cat, p.Q.Book, key, func() Part { return optionRow(p, g, o, pick, state) })
}

// rowKey is all that a row hangs on beside catalogue and price book.
type rowKey struct {
	option string
	state  rules.State
	metric bool
	qty    int // none when it is not in the unit
	filled bool
	detail string
}

func optionRow(p *Page, g *config.Group, o *config.Option, pick *config.Pick, state rules.State) Part {
	out := state == rules.RuledOut && pick == nil
	kind := "checkbox"
	if g.Choose == config.ChooseOne || hasNone(p, g) {
		kind = "radio"
	}
	class := "option"
	switch {
	case out:
		class += " out"
	case pick != nil:
		class += " in"
	}
	return El("div", Class(class), At("id", "row-"+o.ID),
		El("input", At("type", kind), At("id", "o-"+o.ID), At("name", "g-"+g.ID), At("data-act", "pick"),
			At("data-id", o.ID), At("data-value", "1"),
			Flag("checked", pick != nil), describedBy(o.ID)),
		El("div",
			El("label", At("for", "o-"+o.ID), Text(o.Label)),
			El("span", Class("tags"), optionTags(p, o, pick, state)),
			El("p", Class("spec"), At("id", "d-"+o.ID), Text(p.Q.Edition.Cat.Sentences(o))),
			If(pick != nil && o.Unseen != "", El("p", Class("small soft"), Text("Not in the picture. "+
				config.UnseenReasons[o.Unseen]))),
			When(pick != nil && o.MaxQty > 1, func() Part { return quantityField(p, o, pick) }),
			When(pick != nil && o.AsksLb != "", func() Part {
				lb := ""
				if v := p.Q.Draft.Unit.DetailLb(o.ID); v > 0 {
					lb = p.Plain(float64(v), quantity.Pound)
				}
				return page.Number(p.Page, "weighed."+o.ID, o.AsksLb, lb, p.UnitName(quantity.Pound), "")
			}),
			When(pick != nil && o.Asks != "", func() Part {
				return page.Field(p.Page, "detail."+o.ID, o.Asks, p.Q.Draft.Unit.Detail(o.ID), "",
					At("maxlength", strconv.Itoa(config.MaxDetail)))
			}),
		),
		El("span", Class("mass"), At("id", "m-"+o.ID), Text(massText(p, o))),
		El("span", Class("price"), At("id", "p-"+o.ID), Text(priceText(p, o.ID))),
		When(out, func() Part { return refusal(p, o.ID, o.Label) }),
		If(state == rules.Checking && pick == nil,
			El("div", Class("reason soft"), At("id", "t-"+o.ID), Text("Still checking whether it fits the weights."))),
		When(p.toldAt(o.ID), func() Part { return p.Told.Draw() }),
		When(p.View.Asked == o.ID, func() Part { return why(p, o.ID) }),
	)
}

// describedBy has the control say how it stands, what it costs and weighs, and what it is.
func describedBy(id string) Part {
	return At("aria-describedby", "t-"+id+" p-"+id+" m-"+id+" d-"+id)
}

// refusal says that a thing is not available, and opens the reasons.
func refusal(p *Page, id, name string) Part {
	asked := p.View.Asked == id
	label := "Why not"
	if asked {
		label = "Close why not"
	}
	return El("div", Class("reason"), El("b", At("id", "t-"+id), Text("Not available with this build. ")),
		page.Action("why", id, "", "", Class("quiet"), At("aria-expanded", strconv.FormatBool(asked)),
			At("id", "ask-"+id), page.Named(label, name)))
}

func optionTags(p *Page, o *config.Option, pick *config.Pick, state rules.State) Part {
	switch {
	case pick == nil && !o.Drawn() && o.Unseen != "same" && o.Unseen != "none":
		return El("span", Class("tag"), Text("not drawn"))
	case pick == nil:
		return nil
	case state == rules.Forced && pick.Filled:
		return Many(El("span", Class("tag"), At("id", "t-"+o.ID), Text("needed by your choices")),
			page.Action("why", o.ID, "", "", Class("quiet"), At("id", "ask-"+o.ID),
				At("aria-expanded", strconv.FormatBool(p.View.Asked == o.ID)), page.Named("why", o.Label)))
	case pick.Filled:
		return filledIn(o.ID, o.Label, o.Standard)
	}
	return Many(El("span", Class("tag mine"), At("id", "t-"+o.ID), Text("your choice")), page.Action("release", o.ID, "",
		"", Class("quiet"), At("id", "rel-"+o.ID), page.Named("unlock", o.Label)))
}

// filledIn marks what the program chose, which the customer may make an own
// choice.
func filledIn(id, label string, standard bool) Part {
	tag := "filled in"
	if standard {
		tag = "standard"
	}
	return Many(El("span", Class("tag"), At("id", "t-"+id), Text(tag)), page.Action("keep", id, "", "",
		Class("quiet"), At("id", "keep-"+id), page.Named("lock in", label)))
}

func quantityField(p *Page, o *config.Option, pick *config.Pick) Part {
	id := "qty-" + o.ID
	value := strconv.Itoa(pick.Qty)
	if typed, wrong := p.Typed[id]; wrong {
		value = typed
	}
	return El("p", El("label", At("for", "f-"+id), Text("How many, up to "+strconv.Itoa(o.MaxQty)+" ")),
		El("input", Class("qty"), At("type", "text"), At("inputmode", "numeric"), At("id", "f-"+id),
			At("data-act", "qty"), At("data-id", o.ID), At("value", value), page.Describe(p.Page, id, "")),
		If(p.Wrong[id] != "", El("span", Class("wrong"), At("id", "w-"+id), Text(" "+p.Wrong[id]))))
}

func massText(p *Page, o *config.Option) string {
	if o.Mass == nil || o.Mass.Lb == 0 {
		return ""
	}
	return p.Show(float64(o.Mass.Lb), quantity.Pound)
}

func priceText(p *Page, id string) string {
	a := pricing.PriceOf(p.Q.Book, p.Q.Edition.Cat, id)
	if a.IsZero() {
		return "included"
	}
	return a.Show()
}
