package tables

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/expr"
)

// list is a table with a row for each entry of a list of the file. A heading is
// the name of a field there, with those that lead to it before it.
type list struct {
	name  string
	heads []string
	tells bool // its last column says what an entry holds that has no column
	all   func(*config.Catalogue) any
}

// alsoHas heads the column that only tells.
const alsoHas = "also has"

var lists = map[string]*list{
	"options": {
		name: "options",
		heads: []string{
			"id", "group", "label", "spec", "standard", "remount", "max_qty", "price_key",
			"mass lb", "mass tol_lb", "mass zone", "mass x_in", "mass y_in", "mass z_in", "mass derived",
			"load parked_a", "load driving_a", "load responding_a", "load scene_a", "load shed", "load ac_w",
			"supply hot_idle_a", "supply hot_high_idle_a", "supply cold_a", "supply battery_ah", "supply shore_a",
			"supply inverter_w", "supply replaces",
			"circuit function", "circuit amps", "circuit run_ft", "circuit critical",
			"work", "parts", "storage_ft3", "headroom_in", "aisle_in", "clauses", "tags",
			"lowers_in",
		},
		tells: true,
		all:   func(c *config.Catalogue) any { return c.Options },
	},
	"rules": {
		name:  "rules",
		heads: []string{"id", "kind", "reason", "if", "then"},
		all:   func(c *config.Catalogue) any { return c.Rules },
	},
}

func (l *list) rows(c *catalogue) [][]string {
	heads := slices.Clone(l.heads)
	if l.tells {
		heads = append(heads, alsoHas)
	}
	rows := [][]string{heads}
	all := reflect.ValueOf(l.all(c.cat))
	for i := range all.Len() {
		row := make([]string, 0, len(heads))
		for _, h := range l.heads {
			row = append(row, plainText(shown(all.Index(i), h)))
		}
		if l.tells {
			row = append(row, l.untold(all.Index(i)))
		}
		rows = append(rows, row)
	}
	return rows
}

// untold names what an entry holds that no column of its table shows, in the order of the
// alphabet.
func (l *list) untold(entry reflect.Value) string {
	out := l.hidden(entry, "")
	slices.Sort(out)
	return strings.Join(out, "; ")
}

func (l *list) hidden(v reflect.Value, before string) []string {
	if v.Kind() == reflect.Pointer {
		v = v.Elem()
	}
	var out []string
	for i := range v.NumField() {
		name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
		name = before + name
		switch f := v.Field(i); {
		case f.IsZero() || slices.Contains(l.heads, name):
		case slices.ContainsFunc(l.heads, func(h string) bool { return strings.HasPrefix(h, name+" ") }):
			out = append(out, l.hidden(f, name+" ")...)
		default:
			out = append(out, name)
		}
	}
	return out
}

// list takes a table of a list in.
func (t *taking) list(l *list, s *sheet) {
	for k, h := range s.heads {
		if h != "" && h != alsoHas && !slices.Contains(l.heads, h) {
			t.wrong(s.cell(1, "", letters(k)), "%q is no column of the table of %s; its columns are %s", s.plain[k],
				l.name, strings.Join(l.heads, ", "))
		}
	}
	all := reflect.ValueOf(l.all(t.cat))
	known := map[string]int{}
	for i := range all.Len() {
		known[shown(all.Index(i), "id")] = i
	}
	p := find(t.file, l.name)
	if p == nil || p.open != '[' || len(p.entries) != all.Len() {
		t.wrong(s.name, "the catalogue's file has no plain list of %s to take this into", l.name)
		return
	}
	were, texts, added := p.texts(t.file), make([]string, all.Len()), map[int][]string{}
	s.each(known, func(n int, id string, row []string, was, behind int) {
		if was < 0 {
			if e, ok := t.entry(l, s, n, row, reflect.Zero(all.Type().Elem()), true); ok {
				added[behind] = append(added[behind], line(e))
			}
			return
		}
		texts[was] = were[was]
		if e, ok := t.entry(l, s, n, row, all.Index(was), false); ok {
			texts[was] = line(e)
		}
	})
	t.missing(s, texts)
	t.edits = append(t.edits, p.change(t.file, texts, added)...)
}

// missing notes how many entries have no row, and so no text.
func (t *taking) missing(s *sheet, texts []string) {
	n := 0
	for _, text := range texts {
		if text == "" {
			n++
		}
	}
	if n > 0 {
		t.lacks = append(t.lacks, fmt.Sprintf("%s lacks %d of %d rows", s.name, n, len(texts)))
	}
}

// entry is what a row makes of an entry; not ok when it changes nothing.
func (t *taking) entry(l *list, s *sheet, n int, row []string, old reflect.Value, isNew bool) (any, bool) {
	id := s.get(row, "id")
	cells, differs := map[string]string{}, isNew
	for _, h := range l.heads {
		cells[h] = shown(old, h)
		if s.column(h) >= 0 && s.get(row, h) != plainText(cells[h]) {
			cells[h] = s.get(row, h)
			differs = true
		}
	}
	if untold := l.untold(old); l.tells && s.column(alsoHas) >= 0 && s.get(row, alsoHas) != untold {
		where, said := s.cell(n, id, alsoHas), s.get(row, alsoHas)
		if isNew {
			t.wrong(where, "the id is new, and a table has no columns for %s: empty the cell to do without them, write "+
				"the old id again if it was changed by mistake, or add the whole entry to the catalogue's file", said)
		} else {
			t.wrong(where, "this column only tells what else the entry holds; leave the cell as it was, and add or "+
				"change such things in the catalogue's file")
		}
	} else if isNew && cells["mass zone"] == config.ZonePlaces {
		t.wrong(s.cell(n, id, "mass zone"), "%q is where its pieces stand, which a table has no columns for; write "+
			"another zone with x_in, y_in and z_in, or copy the whole entry into the catalogue's file", config.ZonePlaces)
	}
	if !differs {
		return nil, false
	}
	before, _ := json.Marshal(old.Interface())
	fresh := reflect.New(old.Type())
	_ = json.Unmarshal(before, fresh.Interface()) // a copy that shares nothing
	v := fresh.Elem()
	gone := map[string]bool{} // things of several cells, all of which are empty now
	for _, h := range l.heads {
		if g, _, several := strings.Cut(h, " "); several {
			empty, seen := gone[g]
			gone[g] = plainText(cells[h]) == "" && (empty || !seen)
		}
	}
	for _, h := range l.heads {
		text := cells[h]
		g, _, several := strings.Cut(h, " ")
		if text == plainText(shown(old, h)) && !(several && text == "") {
			continue
		}
		if several && gone[g] {
			if shownAny(l, old, g) {
				field(v, g).SetZero()
			}
			continue
		}
		leaf, needed := reach(v, h, text != "" || several)
		if text == "" && needed {
			t.wrong(s.cell(n, id, h), "is empty; write a number, 0 if it has none, or empty all the cells of %s to "+
				"take it out", g)
			continue
		}
		if text == "" && !several && leaf.Kind() == reflect.Struct {
			t.wrong(s.cell(n, id, h), "is empty; a rule needs a condition here")
			continue
		}
		if err := set(leaf, text); err != nil {
			t.wrong(s.cell(n, id, h), "%s", err)
		}
	}
	after, err := json.Marshal(fresh.Interface())
	if err != nil {
		t.wrong(s.cell(n, id, ""), "%s", err)
	}
	return fresh.Interface(), isNew || string(after) != string(before)
}

// shownAny reports whether any cell of a thing of several shows something.
func shownAny(l *list, v reflect.Value, group string) bool {
	return slices.ContainsFunc(l.heads, func(h string) bool {
		return strings.HasPrefix(h, group+" ") && shown(v, h) != ""
	})
}

// plainText is a text as a table holds it.
func plainText(text string) string {
	return strings.TrimSpace(strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n"))
}

// field of a struct by its name in the file.
func field(v reflect.Value, name string) reflect.Value {
	f, _ := tagged(v, name)
	return f
}

func tagged(v reflect.Value, name string) (f reflect.Value, tag string) {
	for i := range v.NumField() {
		tag := v.Type().Field(i).Tag.Get("json")
		if own, _, _ := strings.Cut(tag, ","); own == name {
			return v.Field(i), tag
		}
	}
	return reflect.Value{}, ""
}

// reach goes to the field that a heading names, making what is missing on the
// way if it is to be set; not valid when it is missing. needed says that a
// number there is always written, so that an empty cell says nothing.
func reach(v reflect.Value, head string, create bool) (leaf reflect.Value, needed bool) {
	for name := range strings.SplitSeq(head, " ") {
		if v.Kind() == reflect.Pointer {
			if v.IsNil() {
				if !create {
					return reflect.Value{}, false
				}
				v.Set(reflect.New(v.Type().Elem()))
			}
			v = v.Elem()
		}
		var tag string
		v, tag = tagged(v, name)
		needed = !strings.Contains(tag, "omitempty") && v.CanFloat()
	}
	return v, needed
}

// shown is a cell as it goes out.
func shown(v reflect.Value, head string) string {
	leaf, needed := reach(v, head, false)
	if !leaf.IsValid() || leaf.IsZero() && !needed {
		return ""
	}
	switch x := leaf.Interface().(type) {
	case []string:
		return strings.Join(x, "; ")
	case []config.Work:
		var out []string
		for _, w := range x {
			out = append(out, w.Station+" "+number(float64(w.Hours)))
		}
		return strings.Join(out, "; ")
	case *config.Span:
		return number(x.Low) + " / " + number(x.Likely) + " / " + number(x.High)
	case *config.Cond:
		return expr.Write(x)
	case config.Cond:
		return expr.Write(&x)
	}
	switch leaf.Kind() {
	case reflect.Bool:
		return "yes"
	case reflect.Int:
		return strconv.Itoa(int(leaf.Int()))
	case reflect.Float64:
		return number(leaf.Float())
	}
	return leaf.String()
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// set reads a cell.
func set(leaf reflect.Value, text string) error {
	if text == "" {
		leaf.SetZero()
		return nil
	}
	switch x := leaf.Addr().Interface().(type) {
	case *[]string:
		*x = pieces(text)
		return nil
	case *[]config.Work:
		list := []config.Work{}
		for _, p := range pieces(text) {
			words := strings.Fields(p)
			h, err := 0.0, error(nil)
			if len(words) == 2 {
				h, err = numberOf(words[1])
			}
			if len(words) != 2 || err != nil {
				return fmt.Errorf(`%q is no work; write stations and hours such as "weld 10; grind 1.5"`, clip(p))
			}
			w := config.Work{Station: words[0]}
			field(reflect.ValueOf(&w).Elem(), "hours").SetFloat(h)
			list = append(list, w)
		}
		*x = list
		return nil
	case **config.Span:
		three := strings.Split(text, "/")
		var v [3]float64
		for i, p := range three {
			n, err := numberOf(strings.TrimSpace(p))
			if err != nil || len(three) != 3 {
				return fmt.Errorf(
					`%q is no span of working days; write the least, the likely and the most, such as "20 / 30 / 48"`, clip(text))
			}
			v[i] = n
		}
		*x = &config.Span{Low: v[0], Likely: v[1], High: v[2]}
		return nil
	case **config.Cond:
		c, err := expr.Read(text)
		*x = &c
		return err
	case *config.Cond:
		c, err := expr.Read(text)
		*x = c
		return err
	}
	switch leaf.Kind() {
	case reflect.Bool:
		yes := slices.Contains([]string{"yes", "true", "x", "1"}, strings.ToLower(text))
		if !yes && !slices.Contains([]string{"no", "false", "0"}, strings.ToLower(text)) {
			return fmt.Errorf("%q is neither yes nor no; write yes, or leave the cell empty", clip(text))
		}
		leaf.SetBool(yes)
	case reflect.Int:
		n, err := numberOf(text)
		if err != nil || n != math.Trunc(n) || math.Abs(n) > 1e9 {
			return fmt.Errorf("%q is not a whole number", clip(text))
		}
		leaf.SetInt(int64(n))
	case reflect.Float64:
		n, err := numberOf(text)
		if err != nil {
			return err
		}
		leaf.SetFloat(n)
	default:
		leaf.SetString(text)
	}
	return nil
}

func pieces(text string) []string {
	var out []string
	for p := range strings.SplitSeq(text, ";") {
		if p = strings.TrimSpace(p); p != "" {
			out = append(out, p)
		}
	}
	return out
}

func numberOf(text string) (float64, error) {
	n, err := strconv.ParseFloat(ungrouped(text), 64)
	if err != nil || n-n != 0 {
		return 0, fmt.Errorf("%q is not a number; write digits and a point, such as 1750 or -12.5", clip(text))
	}
	return n, nil
}

// ungrouped takes out the commas of a number such as 54,800.00. Without a point
// a comma may be meant as one, so it stays and the number is refused.
func ungrouped(text string) string {
	whole, _, point := strings.Cut(text, ".")
	groups := strings.Split(strings.TrimPrefix(whole, "-"), ",")
	for i, g := range groups {
		if !point || i > 0 && len(g) != 3 || len(g) > 3 {
			return text
		}
	}
	return strings.ReplaceAll(text, ",", "")
}
