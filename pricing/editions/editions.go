// Package editions compares two editions of a catalogue: what changed in
// options, prices and rules, and what that means for a quote made with the
// earlier one.
package editions

import (
	"cmp"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"boxwright/config"
	"boxwright/config/expr"
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
	c.things()
	c.prices()
	c.rules()
	return c
}

// Same reports whether nothing differs that could change a quote.
func (c *Comparison) Same() bool { return len(c.Parts)+len(c.Prices)+len(c.Rules) == 0 }

// names of the lists for a reader, in a reader's order.
var names = []struct{ key, name string }{
	{"options", "Options"}, {"chassis", "Chassis"}, {"bodies", "Modules"}, {"groups", "Groups"}, {"equipment", "Loose equipment"},
	{"stations", "Stations of the plant"}, {"activities", "Steps of the plant"}, {"plant", "Plant"},
	{"surcharges", "Surcharges"}, {"credits", "Package credits"}, {"contracts", "Contracts"}, {"prepayments", "Prepayments"}, {"fees", "Fees"}, {"milestones", "Payments"},
	{"editions", "Dated prices"}, {"price_book", "Terms of the price book"}, {"chapters", "Chapters"},
	{"traits", "How things are mounted, made, fed and worked"}, {"asked", "Words of requirement lists"}, {"duties", "Kinds of unit"}, {"guide", "Guided quote"}, {"", "The edition"},
}

// held are kinds of things that a unit holds.
const held = " options chassis bodies equipment "

// values are all single values of a catalogue but rules and prices, which are
// told apart. Their names are a kind of thing, its id, and what it is of it.
type values map[string]string

const between = "\x00"

func valuesOf(cat *config.Catalogue) values {
	v := values{}
	data, err := json.Marshal(cat)
	var tree any
	if err == nil && json.Unmarshal(data, &tree) == nil {
		v.walk("", "", "", tree)
	}
	return v
}

// walk goes through decoded JSON. A list of things with ids begins a kind of its
// own, unless it is part of such a thing.
func (v values) walk(kind, id, field string, x any) {
	switch x := x.(type) {
	case map[string]any:
		for k, y := range x {
			_, nested := y.(map[string]any)
			switch {
			case kind+id == "" && nested:
				v.walk(k, "", "", y)
			case kind+k == "rules", k == "prices" && (kind == "price_book" || kind == "editions"):
			default:
				v.walk(kind, id, strings.TrimSpace(field+" "+k), y)
			}
		}
	case []any:
		for i, y := range x {
			entry, _ := y.(map[string]any)
			name, named := entry["id"].(string)
			switch {
			case named && id == "":
				v.walk(field, name, "", y)
			case named:
				v.walk(kind, id, field+" "+name, y)
			default:
				v.walk(kind, id, fmt.Sprint(field, " ", i+1), y)
			}
		}
	default:
		for _, text := range quote.Fields(x) {
			v[kind+between+id+between+field] = text
		}
	}
}

// things compares everything but rules and prices.
func (c *Comparison) things() {
	was, after := valuesOf(c.From.Cat), valuesOf(c.To.Cat)
	keys := []string{}
	for _, v := range []values{was, after} {
		for k := range v {
			if was[k] != after[k] {
				keys = append(keys, k)
			}
		}
	}
	slices.Sort(keys)
	keys = slices.Compact(keys)
	for _, n := range names {
		p := Part{Name: n.name}
		for _, k := range keys {
			name := strings.SplitN(k, between, 3)
			if name[0] != n.key {
				continue
			}
			thing := strings.TrimSuffix(k, name[2])
			last := len(p.Things) - 1
			if last < 0 || p.Things[last].ID != name[1] {
				x := Thing{ID: name[1], Label: cmp.Or(after[thing+"label"], was[thing+"label"], name[1], n.name),
					How: Changed}
				if was[thing+"id"] == "" && name[1] != "" {
					x.How = Added
				} else if after[thing+"id"] == "" && name[1] != "" {
					x.How = Removed
				}
				p.Things = append(p.Things, x)
				last++
				if strings.Contains(held, " "+n.key+" ") {
					c.changed[name[1]] = true
				}
			}
			if x := &p.Things[last]; x.How == Changed {
				x.Fields = append(x.Fields, Field{name[2], was[k], after[k]})
			}
		}
		if p.Things != nil {
			c.Parts = append(c.Parts, p)
		}
	}
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
	slices.SortStableFunc(days, func(a, b config.Date) int { return b.DaysUntil(a) })
	type state struct{ from, to string }
	last := map[string]state{}
	for _, day := range days {
		was, after := c.From.Book.AsOf(day).Prices, c.To.Book.AsOf(day).Prices
		for _, key := range priceKeys(c.To.Cat, c.From.Cat) {
			a, had := was[key]
			b, has := after[key]
			p := Price{Key: key, Label: labelOf(c.To.Cat, c.From.Cat, key), On: day}
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

func labelOf(after, was *config.Catalogue, key string) string {
	for _, cat := range []*config.Catalogue{after, was} {
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
