// Package editions compares two editions of a catalogue: what changed in
// options, prices and rules, and what that means for a quote made with the
// earlier one.
package editions

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/expr"
	"boxwright/config/order"
	"boxwright/pricing"
	"boxwright/pricing/quote"
)

// Comparison is what one edition has otherwise than another.
type Comparison struct {
	From, To *quote.Edition
	Parts    []Part // of the catalogue but prices and rules, in a reader's order
	Prices   []Price
	Rules    []Rule

	changed map[string]bool // ids and price keys of what a unit holds that is not as it was
}

// Part is a kind of thing of which some changed.
type Part struct {
	Name   string // "Options"
	Things []Thing
}

// How something changed.
type How string

// The ways.
const (
	Added   How = "added"
	Removed How = "removed"
	Changed How = "changed"
)

// Thing is one thing that was added, removed or changed.
type Thing struct {
	ID, Label string
	How       How
	Fields    []Field // of a changed one
}

// Field is a single value that differs; empty where there is none.
type Field struct{ Name, From, To string }

// Price that differs from a day on, of one chassis, body or price key of an
// option. The day is zero for the prices as first published.
type Price struct {
	Key, Label string
	On         config.Date
	From, To   *pricing.Amount // nil where the edition does not have it
}

// How the price changed.
func (p *Price) How() How {
	switch {
	case p.From == nil:
		return Added
	case p.To == nil:
		return Removed
	}
	return Changed
}

// By is the difference, for what both have.
func (p *Price) By() pricing.Amount { return p.To.Sub(*p.From) }

// Percent is the difference of what it was, such as "+4.2 %"; empty where it
// was nothing, or is not in both.
func (p *Price) Percent() string {
	if p.How() != Changed || p.From.Sign() <= 0 {
		return ""
	}
	return fmt.Sprintf("%+.1f %%", 100*p.By().Float()/p.From.Float()) // for the eye only
}

// Rule that was added, removed or changed. Its condition is written as in the
// table of rules.
type Rule struct {
	ID, Kind, Reason string
	Was              string // the earlier reason, where that changed
	How              How
	From, To         string // "if ... then ..."
}

// Compare lists all in which two editions differ. Both are in order, so it
// never fails.
func Compare(from, to *quote.Edition) *Comparison {
	c := &Comparison{From: from, To: to, changed: map[string]bool{}}
	a, b := tree(from.Cat), tree(to.Cat)
	var rest []Field
	for _, key := range sorted(a, b) {
		switch key {
		case "rules": // told apart
		case "plant", "price_book":
			was, _ := a[key].(map[string]any)
			is, _ := b[key].(map[string]any)
			c.within(key, was, is)
		default:
			rest = append(rest, c.list(key, a[key], b[key])...)
		}
	}
	c.other("The edition", rest)
	order.Sort(c.Parts, func(x, y Part) int { return rank(x.Name) - rank(y.Name) })
	c.prices()
	c.rules()
	return c
}

// Same reports whether nothing differs that a quote could hang on.
func (c *Comparison) Same() bool { return len(c.Parts)+len(c.Prices)+len(c.Rules) == 0 }

// names of the lists for a reader, in a reader's order.
var names = []struct{ key, name string }{
	{"options", "Options"}, {"chassis", "Chassis"}, {"bodies", "Modules"}, {"groups", "Groups"}, {"equipment", "Loose equipment"},
	{"stations", "Stations of the plant"}, {"activities", "Steps of the plant"}, {"plant", "Plant"},
	{"surcharges", "Surcharges"}, {"credits", "Package credits"}, {"contracts", "Contracts"}, {"prepayments", "Prepayments"}, {"fees", "Fees"}, {"milestones", "Payments"},
	{"editions", "Dated prices"}, {"price_book", "Terms of the price book"}, {"chapters", "Chapters"}, {"", "The edition"},
}

func nameOf(key string) string {
	for _, n := range names {
		if n.key == key {
			return n.name
		}
	}
	return key
}

func rank(name string) int {
	for i, n := range names {
		if n.name == name {
			return i
		}
	}
	return len(names)
}

func tree(v any) map[string]any {
	data, err := json.Marshal(v)
	var out map[string]any
	if err == nil {
		err = json.Unmarshal(data, &out)
	}
	if err != nil {
		return nil // an edition is JSON that was read
	}
	return out
}

func sorted[V any](a, b map[string]V) []string {
	var all []string
	for _, m := range []map[string]V{a, b} {
		for k := range m {
			all = append(all, k)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// within compares the members of an object that holds lists.
func (c *Comparison) within(key string, a, b map[string]any) {
	var rest []Field
	for _, k := range sorted(a, b) {
		if key == "price_book" && k == "prices" {
			continue // told apart, with those of dated changes
		}
		rest = append(rest, c.list(k, a[k], b[k])...)
	}
	c.other(nameOf(key), rest)
}

func (c *Comparison) other(name string, fields []Field) {
	if fields != nil {
		c.Parts = append(c.Parts, Part{name, []Thing{{Label: name, How: Changed, Fields: fields}}})
	}
}

// list compares two lists of things with ids. What is none is compared value by
// value, and given back.
func (c *Comparison) list(key string, a, b any) []Field {
	was, first := things(a)
	is, second := things(b)
	if was == nil && is == nil || !first || !second {
		return differ(key, a, b)
	}
	p := Part{Name: nameOf(key)}
	before := map[any]map[string]any{}
	for _, x := range was {
		before[x["id"]] = x
	}
	for _, x := range is {
		how, fields := Added, []Field(nil)
		if old := before[x["id"]]; old != nil {
			how, fields = Changed, differ("", without(key, old), without(key, x))
		}
		if how == Added || fields != nil {
			p.add(x, how, fields)
		}
		delete(before, x["id"])
	}
	for _, x := range was {
		if before[x["id"]] != nil {
			p.add(x, Removed, nil)
		}
	}
	if p.Things == nil {
		return nil
	}
	c.Parts = append(c.Parts, p)
	if slices.Contains([]string{"options", "chassis", "bodies", "equipment"}, key) {
		for _, t := range p.Things {
			c.changed[t.ID] = true
		}
	}
	return nil
}

func (p *Part) add(x map[string]any, how How, fields []Field) {
	id, _ := x["id"].(string)
	label, _ := x["label"].(string)
	if label == "" {
		label = id
	}
	p.Things = append(p.Things, Thing{id, label, how, fields})
}

// without is a dated change of prices without its prices, which are told apart.
func without(key string, x map[string]any) map[string]any {
	if key != "editions" {
		return x
	}
	x = maps.Clone(x)
	delete(x, "prices")
	return x
}

// things reports whether a value is a list of objects with ids, or nothing.
func things(v any) (list []map[string]any, ok bool) {
	if v == nil {
		return nil, true
	}
	all, isList := v.([]any)
	if !isList {
		return nil, false
	}
	for _, x := range all {
		m, _ := x.(map[string]any)
		if m["id"] == nil {
			return nil, false
		}
		list = append(list, m)
	}
	return list, true
}

// differ lists the single values in which two differ.
func differ(key string, a, b any) []Field {
	was, is := quote.Fields(map[string]any{key: a}), quote.Fields(map[string]any{key: b})
	var out []Field
	for _, k := range sorted(was, is) {
		if was[k] != is[k] {
			out = append(out, Field{strings.ReplaceAll(strings.TrimPrefix(k, "."), ".", " "), was[k], is[k]})
		}
	}
	return out
}

// prices compares what each thing costs on the first day and on each on which
// either edition changes prices. A difference that only goes on is said once.
func (c *Comparison) prices() {
	days := []config.Date{{}}
	for _, b := range []*pricing.Book{c.From.Book, c.To.Book} {
		for _, e := range b.Editions {
			days = append(days, e.From)
		}
	}
	order.Sort(days, func(a, b config.Date) int { return b.DaysUntil(a) })
	type state struct{ from, to string }
	last := map[string]state{}
	for _, on := range days {
		was, is := c.From.Book.On(on).Prices, c.To.Book.On(on).Prices
		for _, key := range priceKeys(c.To.Cat, c.From.Cat) {
			a, had := was[key]
			b, has := is[key]
			p := Price{Key: key, Label: labelOf(c.To.Cat, c.From.Cat, key), On: on}
			now := state{}
			if had {
				p.From, now.from = &a, a.String()
			}
			if has {
				p.To, now.to = &b, b.String()
			}
			if now.from != now.to && now != last[key] {
				c.Prices = append(c.Prices, p)
				c.changed[key] = true
			}
			last[key] = now
		}
	}
}

// priceKeys lists every price key of two catalogues once, as they stand there.
func priceKeys(cats ...*config.Catalogue) []string {
	var out []string
	seen := map[string]bool{}
	add := func(key string) {
		if !seen[key] {
			seen[key] = true
			out = append(out, key)
		}
	}
	for _, cat := range cats {
		for _, x := range cat.Chassis {
			add(x.ID)
		}
		for _, x := range cat.Bodies {
			add(x.ID)
		}
		for i := range cat.Options {
			add(pricing.KeyOf(&cat.Options[i]))
		}
	}
	return out
}

func labelOf(is, was *config.Catalogue, key string) string {
	for _, cat := range []*config.Catalogue{is, was} {
		if label := cat.LabelOf(key); label != key {
			return label
		}
		for i := range cat.Options {
			if cat.Options[i].PriceKey == key {
				return cat.Options[i].Label
			}
		}
	}
	return key
}

func (c *Comparison) rules() {
	before := map[string]*config.Rule{}
	for i := range c.From.Cat.Rules {
		before[c.From.Cat.Rules[i].ID] = &c.From.Cat.Rules[i]
	}
	for i := range c.To.Cat.Rules {
		r := &c.To.Cat.Rules[i]
		old := before[r.ID]
		delete(before, r.ID)
		x := Rule{ID: r.ID, Kind: r.Kind, Reason: r.Reason, How: Added, To: said(r)}
		if old != nil {
			x.How, x.From = Changed, said(old)
			if old.Reason != r.Reason {
				x.Was = old.Reason
			}
			if x.From == x.To && x.Was == "" && old.Kind == r.Kind {
				continue
			}
		}
		c.Rules = append(c.Rules, x)
	}
	for i := range c.From.Cat.Rules {
		if r := &c.From.Cat.Rules[i]; before[r.ID] != nil {
			c.Rules = append(c.Rules, Rule{ID: r.ID, Kind: r.Kind, Reason: r.Reason, How: Removed, From: said(r)})
		}
	}
}

func said(r *config.Rule) string {
	text := expr.Write(&r.Then)
	if r.If != nil {
		text = "if " + expr.Write(r.If) + " then " + text
	}
	return text
}
