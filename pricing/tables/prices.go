package tables

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config"
	"boxwright/config/quantity"
	"boxwright/pricing"
	"boxwright/pricing/money"
)

// from begins the heading of a column of prices that take effect on a day:
// "from 2027-01-01: Yearly change of the chassis", with the reason that is
// printed beside a line priced by it.
const from = "from "

// priceRows are the prices by key, in the order of the catalogue, with a column
// for each dated change, the oldest first.
func (c *catalogue) priceRows() [][]string {
	heads := []string{"id", "what", "price"}
	editions := slices.Clone(c.book.Editions)
	slices.Reverse(editions)
	for _, e := range editions {
		heads = append(heads, from+e.From.String()+": "+plainText(e.Reason))
	}
	rows := [][]string{heads}
	seen := map[string]bool{}
	add := func(key, label string) {
		if seen[key] {
			return
		}
		seen[key] = true
		row := []string{key, plainText(label), c.book.Prices[key].String()}
		for _, e := range editions {
			text := ""
			if a, changed := e.Prices[key]; changed {
				text = a.String()
			}
			row = append(row, text)
		}
		rows = append(rows, row)
	}
	for _, x := range c.cat.Chassis {
		add(x.ID, x.Label)
	}
	for _, x := range c.cat.Bodies {
		add(x.ID, x.Label)
	}
	for i := range c.cat.Options {
		add(pricing.KeyOf(&c.cat.Options[i]), c.cat.Options[i].Label)
	}
	return rows
}

// dated is a column of prices from a day on.
type dated struct {
	from   config.Date
	reason string
	head   string // for messages
	at     int    // column
	was    int    // position in the book, -1 when it is new
}

// prices takes a table of prices in.
func (t *taking) prices(s *sheet) {
	columns := t.dates(s)
	rows := map[string][]string{}
	for i, row := range s.rows {
		if id := s.get(row, "id"); s.at[id] == i+2 {
			rows[id] = row
		}
	}
	base := find(t.file, "price_book", "prices")
	if base == nil || base.open != '{' {
		t.wrong(s.name, "the catalogue's file has no plain list of prices to take this into")
		return
	}
	t.column(s, base, t.book.Prices, "price", s.column("price"), true)
	for i := range t.book.Editions {
		e := &t.book.Editions[i]
		p := find(t.file, "price_book", "editions", strconv.Itoa(i), "prices")
		reason := find(t.file, "price_book", "editions", strconv.Itoa(i), "reason")
		k := slices.IndexFunc(columns, func(d dated) bool { return d.was == i })
		if p == nil || p.open != '{' || reason == nil {
			if k >= 0 && slices.ContainsFunc(s.rows, func(row []string) bool {
				return columns[k].at < len(row) && row[columns[k].at] != ""
			}) {
				t.wrong(s.cell(1, "", letters(columns[k].at)),
					"the catalogue's file has no plain list of prices from that day to take this into")
			}
			continue
		}
		if k < 0 { // the column is gone: what is no longer sold has no price in it
			t.column(s, p, e.Prices, "", -1, false)
			continue
		}
		t.column(s, p, e.Prices, columns[k].head, columns[k].at, false)
		if columns[k].reason != "" && columns[k].reason != plainText(e.Reason) {
			t.edits = append(t.edits, edit{reason.from, reason.to, line(columns[k].reason)})
		}
	}
	t.newEditions(s, columns)
}

// dates reads the headings of the columns that begin on a day.
func (t *taking) dates(s *sheet) []dated {
	var out []dated
	for k, h := range s.heads {
		if h == "" || h == "id" || h == "what" || h == "price" {
			continue
		}
		where := s.cell(1, "", letters(k))
		text, isDated := strings.CutPrefix(h, from)
		text, _, _ = strings.Cut(text, ":")
		_, reason, _ := strings.Cut(s.plain[k], ":")
		day, err := config.ParseDate(strings.TrimSpace(text))
		if isDated && (err != nil || day.IsZero()) {
			t.wrong(where, `%q is not a date: write year-month-day, such as "from 2027-03-31: Yearly change of the chassis"`,
				clip(strings.TrimSpace(text)))
			continue
		}
		if !isDated {
			t.wrong(where,
				`%q is no column of the table of prices; its columns are id, what, price, and for prices from a day on such as "from 2027-01-01: Yearly change of the chassis"`, clip(s.plain[k]))
			continue
		}
		d := dated{day, plainText(reason), from + day.String(), k,
			slices.IndexFunc(t.book.Editions, func(e pricing.Edition) bool { return e.From == day })}
		if slices.ContainsFunc(out, func(o dated) bool { return o.from == day }) {
			t.wrong(where, "the prices from %s stand in two columns", day)
		} else if d.was < 0 && d.reason == "" {
			t.wrong(where,
				`prices from a new day need a reason the customer can read, behind a colon: "from %s: Yearly change of the chassis"`, day)
		} else {
			out = append(out, d)
		}
	}
	return out
}

// column takes a column of prices into the object that holds them. A needed one
// has a price in every row.
func (t *taking) column(s *sheet, p *part, were map[string]pricing.Amount, head string, k int, needed bool) {
	known := map[string]int{}
	for i, e := range p.entries {
		known[e.name] = i
	}
	stand, texts, added := p.texts(t.file), make([]string, len(p.entries)), map[int][]string{}
	if k < 0 {
		for key, i := range known {
			if s.at[key] > 0 {
				texts[i] = stand[i]
			}
		}
	} else {
		s.each(known, func(n int, id string, row []string, was, behind int) {
			a, ok := t.price(s, n, id, head, k, row, needed)
			if !ok {
				return
			}
			member := line(id) + ": " + line(a)
			if was < 0 {
				added[behind] = append(added[behind], member)
			} else if texts[was] = stand[was]; !a.Equal(were[id]) {
				texts[was] = member
			}
		})
	}
	if needed {
		t.missing(s, texts)
	}
	t.edits = append(t.edits, p.change(t.file, texts, added)...)
}

// price reads a cell; not ok when there is nothing in it, or nothing sound.
func (t *taking) price(s *sheet, n int, id, head string, k int, row []string, needed bool) (pricing.Amount, bool) {
	text := ""
	if k < len(row) {
		text = strings.TrimSpace(row[k])
	}
	if text == "" {
		if needed {
			t.wrong(s.cell(n, id, head), "is empty; write a price, 0 if it costs nothing")
		}
		return pricing.Amount{}, false
	}
	digits, err := quantity.Digits(clip(text), quantity.Dollar)
	if err != nil {
		t.wrong(s.cell(n, id, head), "%v", err)
		return pricing.Amount{}, false
	}
	a, err := money.ParseAmount(digits)
	if err != nil {
		t.wrong(s.cell(n, id, head), "%q is not an amount; write dollars and cents in digits, such as 1234.00", clip(text))
	}
	return a, err == nil
}

// newEditions adds those whose day the book does not have, newest first.
func (t *taking) newEditions(s *sheet, columns []dated) {
	added := map[int][]string{}
	slices.SortStableFunc(columns, func(a, b dated) int { return b.from.Time().Compare(a.from.Time()) })
	for _, d := range columns {
		if d.was >= 0 {
			continue
		}
		var members []string
		s.each(nil, func(n int, id string, row []string, _, _ int) {
			if a, ok := t.price(s, n, id, d.head, d.at, row, false); ok {
				members = append(members, line(id)+": "+line(a))
			}
		})
		if members == nil {
			t.wrong(s.cell(1, "", letters(d.at)), "%s has no price in its column; write those that change on that "+
				"day, or take the column out", d.head)
		}
		behind := -1
		for i, e := range t.book.Editions {
			if d.from.Before(e.From) {
				behind = i
			}
		}
		added[behind] = append(added[behind], fmt.Sprintf(`{"id": %s, "from": %s, "reason": %s, "prices": {%s}}`,
			line(d.from.String()), line(d.from.String()), line(d.reason), strings.Join(members, ", ")))
	}
	if len(added) == 0 {
		return
	}
	p := find(t.file, "price_book", "editions")
	if p == nil || p.open != '[' {
		t.wrong(s.name,
			`the catalogue's file has no list of dated prices yet; put "editions": [] into its price_book first`)
		return
	}
	// Those at hand may be edited too, inside: so the new ones go in between.
	for behind, list := range added {
		e := edit{p.from, p.from, strings.Join(list, ", ")}
		if behind >= 0 {
			e.from, e.text = p.entries[behind].to, ", "+e.text
		} else if len(p.entries) > 0 {
			e.from, e.text = p.entries[0].from, e.text+", "
		}
		e.to = e.from
		t.edits = append(t.edits, e)
	}
}
