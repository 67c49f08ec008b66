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
		said += ". Nearest available: " + strings.TrimSuffix(a.Nearest, ".") + "."
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
	table := intake.ColumnsOf(rows)
	at, columns := table.Head, table.Answers
	plain := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	places := map[string][]int{}
	for i, r := range rows {
		if key := table.Text(r); key != "" && i != at {
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
	var head []string
	if at >= 0 {
		head = rows[at]
	}
	to := answerColumns(head, columns)
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
		col, outcome := to.outcome(a.Outcome)
		said := a.Response(q, in)
		if to.words < 0 {
			outcome = strings.TrimSpace(outcome + ". " + said)
		} else {
			cells = append(cells, Cell{where[i], to.words, said})
		}
		cells = append(cells, Cell{where[i], col, outcome})
	}
	if found == 0 {
		return nil, 0, fmt.Errorf("none of the lines stands in this file: choose the file that the list was taken from")
	}
	return cells, found, nil
}

// answering are the columns of a purchaser's sheet that answers go into.
type answering struct {
	comply int  // where it says whether the line is complied with
	no     int  // of a sheet that is marked under Yes or under No; -1 of others
	words  int  // where the offer is told; -1 where there is one column for all
	short  bool // answered by Y or N
}

// answerColumns tells the columns for answers apart by their headings, in whatever order
// they stand.
func answerColumns(head []string, columns []int) answering {
	of := func(k int) string {
		if k < 0 || k >= len(head) {
			return ""
		}
		return strings.ToLower(strings.TrimSpace(head[k]))
	}
	to := answering{comply: -1, no: -1, words: -1}
	for _, k := range columns {
		switch h := of(k); {
		case to.comply < 0 && (wantsYesNo(h) || strings.Contains(h, "compl") || h == "yes" || h == "meets" ||
			h == "response"):
			to.comply = k
		case to.words < 0:
			to.words = k
		}
	}
	if to.comply < 0 { // no heading tells: the first is for the answer itself
		to.comply = columns[0]
		to.words = -1
		if len(columns) > 1 {
			to.words = columns[1]
		}
	}
	to.short = wantsYesNo(of(to.comply))
	if of(to.comply) == "yes" && of(to.comply+1) == "no" {
		to.no = to.comply + 1
	}
	return to
}

// outcome is the column that an answer goes into and what is written there.
func (to *answering) outcome(o quote.Outcome) (int, string) {
	switch {
	case to.no >= 0 && o == quote.Excepted:
		return to.no, "X"
	case to.no >= 0 && o == quote.Meets:
		return to.comply, "X"
	case to.no >= 0 && o == quote.MeetsWith:
		return to.comply, "X, with an addition"
	case !to.short:
		return to.comply, o.Words()
	}
	return to.comply, map[quote.Outcome]string{quote.Meets: "Y", quote.MeetsWith: "Y, with an addition",
		quote.Excepted: "N", quote.Clarify: "Clarification", quote.Unanswered: o.Words()}[o]
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
