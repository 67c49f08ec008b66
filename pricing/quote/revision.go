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
	a, b, pairs := from.Draft.Items(), to.Draft.Items(), Pairs(from.Draft, to.Draft)
	prefixes := make([]string, len(b))
	for i, at := range pairs {
		unit := fmt.Sprintf("Unit %d", i+1)
		if at < 0 {
			out = append(out, Change{Where: unit, To: to.NameOf(i)})
			continue
		}
		if at != i {
			unit += fmt.Sprintf(" (was %d)", at+1)
		}
		if max(len(a), len(b)) > 1 {
			prefixes[i] = unit + ", "
		}
		out = append(out, made(prefixes[i], from.Edition.Cat, to.Edition.Cat, &a[at].Unit, &b[i].Unit)...)
	}
	for _, at := range Gone(from.Draft, pairs) {
		out = append(out, Change{Where: fmt.Sprintf("Unit %d", at+1), From: from.NameOf(at)})
	}
	out = exchanged(out)
	if kept := slices.DeleteFunc(slices.Clone(pairs), func(at int) bool { return at < 0 }); !slices.IsSorted(kept) {
		out = append(out, Change{"order of the units", called(from, slices.Sorted(slices.Values(kept))), called(from, kept)})
	}
	out = append(out, otherwise("", ofQuote(from.Draft), ofQuote(to.Draft), to.Draft.AsksBack())...)
	for i, at := range pairs {
		if at >= 0 {
			out = append(out, otherwise(prefixes[i], ofUnit(from.Draft, at), ofUnit(to.Draft, i), false)...)
		}
	}
	return out
}

// called names units of a quote, in an order.
func called(q *Quote, places []int) string {
	var names []string
	for _, at := range places {
		names = append(names, q.NameOf(at))
	}
	return strings.Join(names, "; ")
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

// otherwise compares every field of two drafts but what made compares. Whoever asks back
// has neither a number nor a seller.
func otherwise(unit string, a, b *Draft, asksBack bool) []Change {
	was, after := flat(a), flat(b)
	keys := map[string]bool{}
	for _, m := range []map[string]string{was, after} {
		for k := range m {
			keys[k] = true
		}
	}
	var out []Change
	for _, k := range slices.Sorted(maps.Keys(keys)) {
		if asksBack && (k == "number" || strings.HasPrefix(k, "seller.")) {
			continue
		}
		if was[k] != after[k] {
			where := named[k]
			if where == "" {
				where = strings.TrimPrefix(strings.TrimPrefix(k, "terms."), "unit.")
				where = strings.NewReplacer(".", ", ", "_", " ").Replace(where)
			}
			out = append(out, Change{unit + where, was[k], after[k]})
		}
	}
	return out
}

// ofQuote is what a draft says of the quote and of no single unit, but what ties it to the
// one before it.
func ofQuote(d *Draft) *Draft {
	c := *d
	c.Prev, c.Earlier, c.Issued, c.At, c.Rev = "", "", "", 0, 0
	c.Unit = config.Unit{Catalogue: d.Unit.Catalogue, Edition: d.Unit.Edition}
	c.Title, c.Terms.Units, c.Tickets, c.Needs, c.More = "", 0, nil, Needs{}, nil
	return &c
}

// ofUnit is what a draft says of one of its units, but what made compares.
func ofUnit(d *Draft, at int) *Draft {
	it := d.Items()[at]
	c := &Draft{Title: it.Label, Unit: it.Unit, Tickets: it.Tickets, Needs: d.Needs}
	if it.Needs != nil {
		c.Needs = *it.Needs
	}
	c.Terms.Units = it.Units
	c.Needs.Begun = "" // follows the chassis
	u := &c.Unit
	u.Picks, u.Proposed, u.LeftOut, u.Details, u.Carried = nil, nil, nil, nil, nil
	u.Catalogue, u.Edition, u.Chassis, u.Body = "", "", "", ""
	return c
}

// flat is every field of a draft by its path.
func flat(d *Draft) map[string]string {
	data, err := d.Bytes()
	if err != nil {
		return nil // a number that is not finite was refused long before
	}
	var tree any
	if json.Unmarshal(data, &tree) != nil {
		return nil
	}
	return Fields(tree)
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
		out[path] = "no"
		if v {
			out[path] = "yes"
		}
	case float64:
		out[path] = strconv.FormatFloat(v, 'f', -1, 64)
	}
}
