package bid

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boxwright/config/quantity"
	"boxwright/pricing/bid/intake"
	"boxwright/pricing/quote"
)

// NoOf is a line's number as the purchaser counts; in brackets its place in the list, where
// the purchaser gave it none.
func (a *Answer) NoOf() string {
	if a.No == "" {
		return "(" + strconv.Itoa(a.At+1) + ")"
	}
	return a.No
}

// Response is an answer in one sentence as it goes out, after its kind: what is
// offered, with its figure, what would be added and what that costs.
func (a *Answer) Response(q *quote.Quote, in quantity.System) string {
	said := a.Offered
	if a.Outcome == quote.MeetsWith && a.Answer == "" {
		var adds []string
		for _, t := range a.Takes {
			adds = append(adds, AddWords(q, t, in))
		}
		said = "With " + strings.Join(adds, "; with ") + ". Not in the price."
		if date := a.DateWords(q); date != "" {
			said += " " + date
		}
		if a.Offered != "" && a.Offered != "not in the unit" {
			said += " In the price: " + a.Offered + "."
		}
	}
	if a.Outcome == quote.Excepted && a.Nearest != "" && a.Answer == "" {
		said += ". Nearest to be had: " + strings.TrimSuffix(a.Nearest, ".") + "."
	}
	return said
}

// AddWords names what would be added, with what it adds to price and weight.
func AddWords(q *quote.Quote, t Take, in quantity.System) string {
	said := q.Edition.Cat.LabelOf(t.ID)
	if t.Qty > 1 {
		said += " × " + strconv.Itoa(t.Qty)
	}
	price := PriceOf(q, t)
	sign := ""
	if price.Sign() >= 0 {
		sign = "+"
	}
	said += " (" + q.Price.Currency + " " + sign + price.Show()
	if mass := MassOf(q, t); mass != 0 {
		said += ", " + Signed(in, mass, quantity.Pound)
	}
	return said + ")"
}

// Signed is an amount with its sign.
func Signed(in quantity.System, v float64, unit string) string {
	if v > 0 {
		return "+" + in.Show(v, unit)
	}
	return in.Show(v, unit)
}

// FormRows is the list with its answers as a table to hand over.
func FormRows(q *quote.Quote, list []Answer, in quantity.System) [][]string {
	rows := [][]string{{"No.", "Requirement", "Response", "Offered", "In the quote"}}
	for _, a := range list {
		if a.Head {
			rows = append(rows, []string{a.No, a.Text, "", "", ""})
			continue
		}
		rows = append(rows, []string{a.NoOf(), a.Text, a.Outcome.Words(), a.Response(q, in), a.Where})
	}
	return rows
}

// Cell is a text for a place of a spreadsheet, both counted from zero.
type Cell struct {
	Row  int    `json:"row"`
	Col  int    `json:"col"`
	Text string `json:"text"`
}

// Fill puts the answers beside their lines in the purchaser's own spreadsheet: into
// its columns for answers, or into two new ones. Lines are found by their text. It
// says how many lines it found; the error is in words.
func Fill(rows [][]string, q *quote.Quote, list []Answer, in quantity.System) ([]Cell, int, error) {
	at, _, what, columns := intake.HeadRow(rows)
	plain := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	places := map[string][]int{}
	for i, r := range rows {
		if what >= 0 && what < len(r) && i != at {
			key := plain(r[what])
			places[key] = append(places[key], i)
			places[withoutNo(key)] = append(places[withoutNo(key)], i)
		}
	}
	var cells []Cell
	if len(columns) == 0 {
		w := 0
		for _, r := range rows {
			w = max(w, len(r))
		}
		columns = []int{w, w + 1}
		cells = append(cells, Cell{max(at, 0), w, "Response"}, Cell{max(at, 0), w + 1, "Offered"})
		if at < 0 {
			cells = nil // the first row is a line itself
		}
	}
	short := at >= 0 && columns[0] < len(rows[at]) && wantsYesNo(rows[at][columns[0]])
	found := 0
	for _, a := range list {
		if a.Head {
			continue
		}
		where := places[plain(a.Text)]
		i := slices.Index(where, a.Row-1)
		if i < 0 {
			i = 0
		}
		if len(where) == 0 {
			continue
		}
		found++
		outcome := a.Outcome.Words()
		if short {
			outcome = map[quote.Outcome]string{quote.Meets: "Y", quote.MeetsWith: "Y, with an addition",
				quote.Excepted: "N",
				quote.Clarify:  "Clarification"}[a.Outcome]
		}
		said := a.Response(q, in)
		if len(columns) == 1 {
			outcome = strings.TrimSpace(outcome + ". " + said)
		} else {
			cells = append(cells, Cell{where[i], columns[1], said})
		}
		cells = append(cells, Cell{where[i], columns[0], outcome})
	}
	if found == 0 {
		return nil, 0, fmt.Errorf("none of the lines stands in this file: choose the file that the list was taken from")
	}
	return cells, found, nil
}

// wantsYesNo reports whether a column is answered by Y or N.
func wantsYesNo(head string) bool {
	head = strings.ToLower(head)
	return strings.Contains(head, "y/n") || strings.Contains(head, "yes/no") || strings.Contains(head, "yes or no")
}

// withoutNo is a cell without the number that stands before its text.
func withoutNo(text string) string {
	_, rest := intake.Mark(text)
	return rest
}
