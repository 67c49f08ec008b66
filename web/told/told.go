// Package told shows what a press changed of the unit beyond what was pressed: each
// thing with its reason, what it all comes to, and one press that takes it back.
package told

import (
	"maps"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/config/rules"
	"boxwright/pricing"
	"boxwright/pricing/propose"
	"boxwright/pricing/quote"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
	"boxwright/web/session"
)

// Page is what the changes are drawn from.
type Page struct {
	*page.Page
	Told *session.Told
	Why  map[string]string // by id, once it is worked out
}

// mostWhys are worked out in the rules' own sentences; the others say what they
// follow from.
const mostWhys = 6

// whyBudget is how much work one of them may take.
const whyBudget = 200

// Load takes what was told from the session; nil when nothing is, or in another area.
func Load(s *session.Session, p *page.Page, w *session.Worked) *Page {
	t := s.View.Told
	if t == nil || t.Area != s.View.Area || len(t.Changes)+len(t.Asked) == 0 {
		return nil
	}
	v := &Page{Page: p, Told: t}
	v.Why, _ = w.Told.For(s, t.At, func() map[string]string { return whys(s, w, t) })
	return v
}

// whys are the sentences of the rules for what went and what had to come.
func whys(s *session.Session, w *session.Worked, t *session.Told) map[string]string {
	out := map[string]string{}
	if isGoal(t) {
		return out // the goal is the reason
	}
	q := w.Quote
	limits := quote.Limits(q.Edition, q.Draft)
	asked := 0
	said := map[string]bool{}
	for _, c := range t.Changes {
		id := c.ID
		if c.Line != "" {
			continue // the list is the reason
		} else if c.Instead != "" {
			id = c.Instead
		} else if c.Added && c.Cause == rules.Standard {
			continue
		}
		whole := IsUnit(t.At) && !c.Own
		if q.Edition.Cat.OptionByID(id) == nil || asked == mostWhys || whole && !c.Added ||
			c.Added && q.Draft.Needs.IsAsked(q.Edition.Cat, c.ID) {
			continue
		}
		asked++
		words := ""
		if whole {
			words = needs(q, limits, &c, quantity.System(s.View.Metric))
		} else if r, found := q.Edition.Rules.FirstReason(&q.Draft.Unit, limits, id, whyBudget); found {
			words = q.Words(r, quantity.System(s.View.Metric))
		}
		if words != "" {
			if said[words] {
				words = "For the same reason."
			}
			said[words] = true
			out[c.ID] = words
		}
	}
	return out
}

// needs says what of a unit that was taken needs something that came with it, in the
// place of something else or beside the rest; empty where no rule does.
func needs(q *quote.Quote, limits *rules.Limits, c *session.ToldChange, in quantity.System) string {
	own := q.Draft.Unit.Clone()
	own.Drop(c.ID)
	if words := needed(q, limits, &own, c, in); words != "" {
		return words
	}
	rest := own.Clone() // all the others as if they were chosen, so that a reason names them
	for i := range rest.Picks {
		rest.Picks[i].Filled = false
	}
	return needed(q, limits, &rest, c, in)
}

// needed is what the chosen options of a unit without something say of needing it.
func needed(
	q *quote.Quote, limits *rules.Limits, rest *config.Unit, c *session.ToldChange, in quantity.System,
) string {
	ed := q.Edition
	if c.Instead != "" {
		r, found := ed.Rules.FirstReason(rest, limits, c.Instead, whyBudget)
		if !found {
			return ""
		}
		if own := naming(ed.Rules, r.Rules, c.Instead, c.ID); own != nil {
			r.Rules = own
		}
		return q.Words(r, in)
	}
	// Where another of its group would do as well, a rule needs one of them.
	rivals := config.Linear{Code: "told.rivals", Per: map[string]float64{}}
	for _, m := range ed.Cat.Members(ed.Cat.OptionByID(c.ID).Group) {
		if id := ed.Cat.Options[m].ID; id != c.ID && !rest.Has(id) {
			rivals.Per[id] = 1
		}
	}
	alone := &rules.Limits{For: func(chassis, body string) []config.Linear {
		return append(slices.Clone(limits.For(chassis, body)), rivals)
	}}
	r, found := ed.Rules.FirstReason(rest, alone, c.ID, whyBudget)
	if !found {
		return ""
	}
	if own := naming(ed.Rules, r.Rules, c.ID); own != nil {
		return own[0].Text
	}
	return "" // they speak of others of the group
}

// naming are those of the rules of a reason that name one of the options; nil for none.
func naming(e *rules.Engine, list []rules.Cause, options ...string) (own []rules.Cause) {
	for _, cause := range list {
		r := e.Rule(cause.ID)
		if r != nil && slices.ContainsFunc(options, func(id string) bool {
			return r.If != nil && names(r.If, id) || names(&r.Then, id)
		}) {
			own = append(own, cause)
		}
	}
	return own
}

// names reports whether a condition names an option.
func names(c *config.Cond, option string) bool {
	in := func(list []config.Cond) bool {
		return slices.ContainsFunc(list, func(c config.Cond) bool { return names(&c, option) })
	}
	return c.Pick == option || in(c.All) || in(c.Any) || c.Not != nil && names(c.Not, option) ||
		c.AtLeast != nil && in(c.AtLeast.Of) || c.AtMost != nil && in(c.AtMost.Of)
}

// Answers is a press that takes what lines of the purchaser's list ask for.
const Answers = "answers"

// IsAnswers reports whether the press took that.
func (p *Page) IsAnswers() bool { return p != nil && p.Told.At == Answers }

// mostShown changes stand open; the rest is a press away.
const mostShown = 8

// Draw lists the changes.
func (p *Page) Draw() Part {
	if p == nil {
		return nil
	}
	list := p.Told.Changes
	rest := list[min(len(list), mostShown):]
	lines := func(list []session.ToldChange) Part {
		return El("ul", Each(list, func(_ int, c session.ToldChange) Part { return p.line(&c) }))
	}
	return El("section", Class("told screen"), At("id", "told"), At("tabindex", "-1"),
		At("aria-label", page.Either(p.IsAnswers(), "What was taken", "What else this press changed")),
		El("p", Class("head"), Text(p.head())),
		El("p", Text(p.sum())),
		If(len(p.Told.Asked) > 0,
			El("ul", Each(p.Told.Asked, func(_ int, n session.ToldNeed) Part { return need(&n) }))),
		p.loads("Taken aboard: ", 1), p.loads("Taken off: ", -1),
		El("div", Class("row-tools"), page.Action("undo", "", "", "Take it all back", At("id", "told-undo")),
			If(IsUnit(p.Told.At), page.Action("go", "unit", "", "Change it in Unit", At("id", "told-unit")))),
		lines(list[:len(list)-len(rest)]),
		When(len(rest) > 0, func() Part {
			return El("details", At("id", "told-rest"),
				El("summary", Text("and "+page.Count(len(rest), "more", "more"))),
				lines(rest))
		}))
}

// loads lists the loose equipment that the press took aboard, or with a sign of -1 off.
func (p *Page) loads(word string, sign int) Part {
	var list []string
	for _, l := range p.Told.Aboard {
		if l.By*sign > 0 {
			list = append(list, page.Whole(l.By*sign)+" × "+p.Q.Edition.Cat.CarriedLabel(&p.Q.Draft.Unit, l.ID))
		}
	}
	return If(list != nil, El("p", El("b", Text(word)), Text(strings.Join(list, ", ")+".")))
}

// isGoal reports whether the unit was completed for a goal.
func isGoal(t *session.Told) bool { return slices.Contains(propose.Goals, propose.Goal(t.At)) }

// unitPress begins what a press is called that takes a whole unit.
const unitPress = "unit "

// UnitPress names a press that takes a whole unit in the place of the one before.
func UnitPress(which string) string { return unitPress + which }

// IsUnit reports whether the press took a whole unit.
func IsUnit(at string) bool { return strings.HasPrefix(at, unitPress) }

// head says how much changed.
func (p *Page) head() string {
	n := len(p.Told.Changes)
	switch {
	case IsUnit(p.Told.At) && n == 0:
		return "What is asked for changed"
	case IsUnit(p.Told.At):
		return "Taking it changed " + page.Count(n, "thing", "things") + " of the unit"
	case p.IsAnswers():
		return "Taking what the list asks for changed " + page.Count(n, "thing", "things") + " of the unit"
	case n == 0:
		return "This also changed what is asked for"
	}
	return "This also changed " + page.Count(n, "thing", "things") + p.goal()
}

// need says how a need reads now.
func need(n *session.ToldNeed) Part {
	was, is := n.Was, n.Is
	if is == "" {
		is = "not asked for"
	}
	if !strings.HasPrefix(was, n.Label+" ") { // "Type II" names what it is
		was = n.Label + " " + was
	}
	return El("li", El("b", Text("Asked for: ")), Text(was+" → "+is))
}

// goal is the reason of all changes of a completion for a goal.
func (p *Page) goal() string {
	if isGoal(p.Told) {
		return ": your choices and musts stay, and the rest is what makes the unit the " + p.Told.At
	}
	return ""
}

func (p *Page) line(c *session.ToldChange) Part {
	cat := p.Q.Edition.Cat
	word := page.Either(c.Added, "Added: ", "Removed: ")
	label := func(id string) string { return quote.Titled(cat, id, cat.LabelOf(id)) }
	name := label(c.ID)
	switch {
	case c.Instead == "":
	case p.leftOut(c):
		word, name = "Removed: ", label(c.Instead)
	default:
		word, name = "Exchanged: ", name+" instead of "+cat.LabelOf(c.Instead)
	}
	why := p.reason(c)
	return El("li", El("b", Text(word)), Text(name+p.figures(c)), If(why != "", El("span", Class("how"), Text(why))))
}

// leftOut reports whether the one of a group that went has nothing in its place.
func (p *Page) leftOut(c *session.ToldChange) bool {
	o := p.Q.Edition.Cat.OptionByID(c.ID)
	return o != nil && c.Instead != "" && o.LeavesOut()
}

// figures are the price and the weight that one change adds or takes away.
func (p *Page) figures(c *session.ToldChange) string {
	price, lb := pricing.Amount{}, 0.0
	count := func(id string, sign float64) {
		a := pricing.PriceOf(p.Q.Book, p.Q.Edition.Cat, id)
		if sign < 0 {
			a = a.Neg()
		}
		price = price.Add(a)
		if o := p.Q.Edition.Cat.OptionByID(id); o != nil && o.Mass != nil {
			lb += sign * float64(o.Mass.Lb)
		}
	}
	if c.Added {
		count(c.ID, 1)
	} else {
		count(c.ID, -1)
	}
	if c.Instead != "" {
		count(c.Instead, -1)
	}
	var parts []string
	if !price.IsZero() {
		parts = append(parts, price.Signed())
	}
	if lb != 0 {
		parts = append(parts, p.Signed(lb, quantity.Pound))
	}
	if parts == nil {
		return ""
	}
	return " (" + strings.Join(parts, ", ") + ")"
}

// reason is one line why.
func (p *Page) reason(c *session.ToldChange) string {
	if c.Line != "" {
		return "For line " + c.Line + " of the list."
	}
	if why := p.Why[c.ID]; why != "" {
		return why
	}
	switch c.Cause {
	case rules.Standard:
		return "Standard, and it fits."
	case rules.Needed:
		return "Needed by what you chose."
	case rules.Chosen:
		return "One of the group is needed, and the standard one does not fit."
	case rules.GivesWay:
		return "It does not go with the rest."
	}
	option := p.Q.Edition.Cat.OptionByID(c.ID)
	switch {
	case c.Added && p.Q.Draft.Needs.IsAsked(p.Q.Edition.Cat, c.ID):
		return "The customer asked for it."
	case c.Own && IsUnit(p.Told.At):
		return "It was your own choice, and does not stand in Needs."
	case isGoal(p.Told):
		return "" // stands above them all
	case !IsUnit(p.Told.At) && option != nil && !c.Added:
		return "It does not go with what you pressed."
	case !IsUnit(p.Told.At) && option == nil:
		return "What you pressed needs it."
	case option == nil:
		return "The unit that was taken stands on it."
	case c.Added && option.Standard:
		return "Standard, and it fits."
	case c.Added && p.IsAnswers():
		return "It comes with what the list asks for."
	case p.leftOut(c):
		return "Left out of the unit that was taken."
	case c.Added:
		return "Filled in with the unit that was taken."
	case option.Standard:
		return "Standard, and left out of the unit that was taken."
	}
	return "Nothing asks for it any more."
}

// sum is what the press comes to altogether.
func (p *Page) sum() string {
	t, q := p.Told, p.Q
	said := "With what you pressed, the total changes by " + q.Price.Total.Sub(t.Total).Signed()
	if t.Total.Equal(q.Price.Total) {
		said = "With what you pressed, the total stays as it was"
	}
	said += p.terms()
	if f, ok := q.Figure("weight.payload-left"); ok && f.Value != t.Payload {
		said += ", remaining payload " + p.Show(t.Payload, f.Unit) + " → " + p.Show(f.Value, f.Unit)
	}
	if is := q.Plan.NineInTen; is != t.Safe && t.Safe != (config.Date{}) {
		said += ", the safe date (90 %) " + t.Safe.Long() + " → " + is.Long()
	}
	return said + "."
}

// terms names the lines of price, beside the parts listed, that are others than before.
func (p *Page) terms() string {
	was, is := p.Told.Terms, session.TermsOf(p.Q.Price)
	if was == nil {
		return ""
	}
	labels := maps.Clone(was)
	maps.Copy(labels, is)
	var parts []string
	for _, label := range slices.Sorted(maps.Keys(labels)) {
		if by := is[label].Sub(was[label]); !by.IsZero() {
			parts = append(parts, label+" "+by.Signed())
		}
	}
	if parts == nil {
		return ""
	}
	return " (" + strings.Join(parts, ", ") + " among it)"
}
