package quote

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
)

// Change is one thing that a revision says otherwise than the quote before it.
// From is empty for what was added and To for what was left out.
type Change struct {
	Where    string // what it is about, in the reader's words
	From, To string
}

// Changes lists everything in which a revision differs from the quote before
// it: what the units are made of by name, then every other field, none left
// out. Whether a choice was the customer's own or filled in is no difference.
func Changes(from, to *Quote) []Change {
	var out []Change
	a, b := from.Draft.Items(), to.Draft.Items()
	for i := range max(len(a), len(b)) {
		unit := ""
		if max(len(a), len(b)) > 1 {
			unit = fmt.Sprintf("Unit %d, ", i+1)
		}
		switch {
		case i >= len(a):
			out = append(out, Change{Where: strings.TrimSuffix(unit, ", "), To: to.NameOf(i)})
		case i >= len(b):
			out = append(out, Change{Where: strings.TrimSuffix(unit, ", "), From: from.NameOf(i)})
		default:
			out = append(out, made(unit, from.Edition.Cat, to.Edition.Cat, &a[i].Unit, &b[i].Unit)...)
		}
	}
	return append(exchanged(out), otherwise(from.Draft, to.Draft)...)
}

// exchanged makes one change of the one thing that went and the one that came in its place.
func exchanged(list []Change) (out []Change) {
	for i, c := range list {
		other, n := -1, 0 // the other half
		for k, o := range list {
			if k != i && o.Where == c.Where {
				n++
				if (o.From == "") == (c.To == "") && (o.To == "") == (c.From == "") {
					other = k
				}
			}
		}
		if n != 1 || other < 0 {
			out = append(out, c)
		} else if i < other {
			out = append(out, Change{c.Where, c.From + list[other].From, c.To + list[other].To})
		}
	}
	return out
}

// made compares what two units are made of.
func made(unit string, was, after *config.Catalogue, a, b *config.Unit) []Change {
	var out []Change
	add := func(where, from, to string) {
		if from != to {
			out = append(out, Change{unit + where, from, to})
		}
	}
	add("chassis", was.LabelOf(a.Chassis), after.LabelOf(b.Chassis))
	add("module", was.LabelOf(a.Body), after.LabelOf(b.Body))
	held := func(cat *config.Catalogue, u *config.Unit, id string) string {
		n, text := u.Qty(id), cat.LabelOf(id)
		if n == 0 {
			return ""
		}
		if n > 1 {
			text += fmt.Sprintf(" × %d", n)
		}
		if said := u.Detail(id); said != "" {
			text += " (" + said + ")"
		}
		return text
	}
	for _, id := range both(a.Picks, b.Picks, func(p config.Pick) string { return p.Option }) {
		where := "option"
		for _, cat := range []*config.Catalogue{after, was} {
			if o := cat.OptionByID(id); o != nil {
				where = cat.GroupByID(o.Group).Label
				break
			}
		}
		add(where, held(was, a, id), held(after, b, id))
	}
	carried := func(cat *config.Catalogue, u *config.Unit, id string) string {
		for _, l := range LoadsOf(cat, u) {
			if l.Equipment == id {
				return fmt.Sprintf("%s: %d, %s", l.Label, l.Qty, l.Where)
			}
		}
		return ""
	}
	for _, id := range both(a.Carried, b.Carried, func(c config.Carried) string { return c.Equipment }) {
		add("loose equipment", carried(was, a, id), carried(after, b, id))
	}
	return out
}

// both lists the ids of two lists, each once, in order.
func both[T any](a, b []T, id func(T) string) []string {
	seen := map[string]bool{}
	for _, x := range slices.Concat(a, b) {
		seen[id(x)] = true
	}
	return slices.Sorted(maps.Keys(seen))
}

// named are readers' words for fields of a draft; any other field is called by
// its own name with the marks taken out.
var named = map[string]string{
	"number": "quote number", "date": "date of the quote", "title": "what the unit is called",
	"unit.order_on": "order date", "unit.needed_by": "needed by", "unit.rule_set": "rule set in force", "unit.edition": "catalogue edition", "unit.catalogue": "catalogue",
	"terms.units": "number of units", "terms.discount_percent": "discount, percent", "terms.discount_amount": "discount, amount", "terms.discount_reason": "reason for the discount",
	"terms.tax_rate": "sales tax rate", "terms.tax_exempt": "exempt from sales tax",
	"terms.buyer": "who buys", "terms.taxed": "pays sales tax", "terms.exempt_reason": "exemption certificate", "terms.freight_miles": "delivery miles", "terms.bond": "performance bond",
}

// otherwise compares every field of two drafts but what made compares.
func otherwise(a, b *Draft) []Change {
	kinds := min(len(a.More), len(b.More)) // a unit more or less is a change of its own
	was, after := flat(a, kinds), flat(b, kinds)
	keys := map[string]bool{}
	for _, m := range []map[string]string{was, after} {
		for k := range m {
			keys[k] = true
		}
	}
	var out []Change
	for _, k := range slices.Sorted(maps.Keys(keys)) {
		if b.AsksBack() && (k == "number" || strings.HasPrefix(k, "seller.")) {
			continue // whoever asks has neither
		}
		if was[k] != after[k] {
			where := named[k]
			if where == "" {
				where = strings.TrimPrefix(strings.TrimPrefix(k, "terms."), "unit.")
				where = strings.NewReplacer(".", ", ", "_", " ").Replace(where)
			}
			out = append(out, Change{where, was[k], after[k]})
		}
	}
	return out
}

// flat is every field of a draft by its path, but what made compares and what
// ties the draft to the one before it.
func flat(d *Draft, kinds int) map[string]string {
	c := d.Clone()
	c.WorkOn(0)
	c.Prev, c.Earlier, c.Issued, c.At, c.Rev = "", "", "", 0, 0
	c.Needs.Begun = "" // follows the chassis
	c.More = c.More[:kinds]
	for _, u := range append([]*config.Unit{&c.Unit}, unitsOf(c.More)...) {
		u.Picks, u.Proposed, u.LeftOut, u.Details, u.Carried = nil, nil, nil, nil, nil
		u.Chassis, u.Body = "", ""
	}
	data, err := c.Bytes()
	if err != nil {
		return nil // a number that is not finite was refused long before
	}
	var tree any
	if json.Unmarshal(data, &tree) != nil {
		return nil
	}
	return Fields(tree)
}

func unitsOf(items []Item) []*config.Unit {
	out := make([]*config.Unit, len(items))
	for i := range items {
		out[i] = &items[i].Unit
	}
	return out
}

// Fields is every single value of decoded JSON as a text, by its path, such as
// "unit.picks.3.qty".
func Fields(v any) map[string]string {
	out := map[string]string{}
	walk(out, "", v)
	return out
}

func walk(out map[string]string, path string, v any) {
	switch v := v.(type) {
	case map[string]any:
		for k, x := range v {
			walk(out, strings.TrimPrefix(path+"."+k, "."), x)
		}
	case []any:
		for i, x := range v {
			walk(out, path+"."+strconv.Itoa(i+1), x)
		}
	case string:
		out[path] = v
	case bool:
		out[path] = map[bool]string{true: "yes", false: "no"}[v]
	case float64:
		out[path] = strconv.FormatFloat(v, 'f', -1, 64)
	}
}
