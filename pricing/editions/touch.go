package editions

import (
	"slices"

	"boxwright/config"
	"boxwright/config/rules"
	"boxwright/pricing/link"
	"boxwright/pricing/quote"
)

// Touch is what a change of editions means for one quote.
type Touch struct {
	Uses    []string       // labels of what it holds that changed
	Lost    []string       // labels of what the new edition does not have
	Changes []rules.Change // of what was filled in, so that the unit is whole
	Was     *Figures       // nil when its edition is neither of the two, or cannot compute it
	Now     *Figures       // with the new edition; nil when that cannot compute it
	Fault   string         // why not
	Delta   quote.Delta    // where both are there
	Signed  bool
	Frozen  *link.Frozen     // as it was signed; nil when that cannot be read
	Stops   []config.Finding // that forbid issuing it with the new edition
	Current bool             // it is made with the new edition already
}

// Figures that a buyer asks about first.
type Figures struct {
	Total   string
	Even    config.Date // the likely delivery date, 50 %
	CurbLb  float64
	Stopped bool
}

// Touched reports whether the change can be seen in the quote at all.
func (t *Touch) Touched() bool {
	if t.Current {
		return false
	}
	return t.Uses != nil || t.Lost != nil || t.Changes != nil || t.Was == nil || t.Now == nil || *t.Was != *t.Now
}

// Touch works out what the change means for a draft. It takes as long as
// computing it twice.
func (c *Comparison) Touch(d *quote.Draft) *Touch {
	t := &Touch{Signed: d.Issued != "", Current: d.Unit.Edition == c.To.Cat.Hash()}
	if t.Signed {
		t.Frozen = link.FrozenIn(c.From.Cat, d.Issued)
	}
	if t.Current {
		return t
	}
	t.uses(c, d)
	moved, lost, changes := quote.Move(c.To, d)
	t.Changes = changes
	for _, id := range lost {
		t.Lost = append(t.Lost, c.From.Cat.LabelOf(id))
	}
	var was, after *quote.Quote
	var err error
	if d.Unit.Edition == c.From.Cat.Hash() {
		if was, err = quote.Compute(c.From, d); err == nil {
			t.Was = figures(was)
		}
	}
	if after, err = quote.Compute(c.To, moved); err != nil {
		t.Fault = err.Error()
		return t
	}
	t.Now = figures(after)
	for _, f := range after.Findings {
		if f.Severity == config.Stop {
			t.Stops = append(t.Stops, f)
		}
	}
	if was != nil {
		t.Delta = quote.Difference(was, after)
	}
	return t
}

func figures(q *quote.Quote) *Figures {
	f := &Figures{Total: q.Total(), Even: q.Plan.EvenOdds, Stopped: q.Stopped()}
	if curb, ok := q.Figure("weight.curb"); ok {
		f.CurbLb = curb.Value
	}
	return f
}

// uses names what of the quote's units changed: the things themselves, their
// prices, and the rules that speak of them.
func (t *Touch) uses(c *Comparison, d *quote.Draft) {
	add := func(label string) {
		if !slices.Contains(t.Uses, label) {
			t.Uses = append(t.Uses, label)
		}
	}
	for _, it := range d.Items() {
		ids := []string{it.Unit.Chassis, it.Unit.Body}
		for _, p := range it.Unit.Picks {
			ids = append(ids, p.Option)
		}
		for _, x := range it.Unit.Carried {
			ids = append(ids, x.Equipment)
		}
		for _, id := range ids {
			key := id
			if o := c.From.Cat.OptionByID(id); o != nil && o.PriceKey != "" {
				key = o.PriceKey
			}
			if c.changed[id] || c.changed[key] {
				add(labelOf(c.From.Cat, c.To.Cat, id))
			}
		}
		for i := range c.Rules {
			if c.speaks(&c.Rules[i], ids) {
				add("rule: " + c.Rules[i].Reason)
			}
		}
	}
}

// speaks reports whether a changed rule names one of the ids.
func (c *Comparison) speaks(r *Rule, ids []string) bool {
	for _, cat := range []*config.Catalogue{c.From.Cat, c.To.Cat} {
		for i := range cat.Rules {
			if x := &cat.Rules[i]; x.ID == r.ID && (mentions(&x.Then, ids) || x.If != nil && mentions(x.If, ids)) {
				return true
			}
		}
	}
	return false
}

func mentions(c *config.Cond, ids []string) bool {
	if slices.Contains(ids, c.Pick) {
		return true
	}
	kids := slices.Concat(c.All, c.Any)
	if c.Not != nil {
		kids = append(kids, *c.Not)
	}
	for _, n := range []*config.Count{c.AtLeast, c.AtMost} {
		if n != nil {
			kids = append(kids, n.Of...)
		}
	}
	return slices.ContainsFunc(kids, func(k config.Cond) bool { return mentions(&k, ids) })
}
