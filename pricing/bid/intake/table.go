package intake

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// role of a column.
type role int

const (
	other role = iota // with what it holds read as well: it may be the amount
	number
	text
	answer
	amount // what is asked for of the thing that the text names
	aside  // what the purchaser keeps for itself
)

// roles by the words of a heading, in small letters.
var roles = func() map[string]role {
	out := map[string]role{}
	for r, names := range map[role]string{
		number: "no|number|item|item no|item number|item #|ref|reference|line|line no|line item|id|#|section|sec|" +
			"para|paragraph|spec no|clause|req no|req #|req id",
		text: "requirement|requirements|text|description|specification|specifications|spec|specification requirement|" +
			"minimum specification|minimum specifications|minimum requirement|minimum requirements|feature|features|" +
			"item description|requirement description|detail|required|specification description|characteristic|" +
			"technical specification|technical requirement|equipment|attribute|parameter",
		answer: "comply|complies|compliance|comply y/n|y/n|yes/no|yes|meets|meets spec|exception|exceptions|" +
			"deviation|deviations|comments|comment|remarks|response|bidder response|vendor response|offered|bidder|" +
			"proposed|answer|comply yes/no|comply yes or no|explanation|exception/comments",
		amount: "value|min|minimum|max|maximum|min/max|min / max|limit|unit|units|uom|qty|quantity|target|size|rating",
		aside:  "weight|weighting|points|score|priority|page|category|group|status|source|owner|cost|price|unit price",
	} {
		for _, n := range strings.Split(names, "|") {
			out[n] = r
		}
	}
	return out
}()

// roleOf reads a heading.
func roleOf(cell string) role {
	cell = strings.ToLower(strings.Join(strings.Fields(strings.NewReplacer("(", " ", ")", " ", ".", " ", ":", " ", "*",
		" ").Replace(cell)), " "))
	if r, known := roles[cell]; known {
		return r
	}
	if len(cell) > 40 {
		return other
	}
	for _, w := range []string{"comply", "complies", "exception", "deviation", "y/n"} {
		if strings.Contains(cell, w) {
			return answer
		}
	}
	for _, w := range []string{"requirement", "specification"} {
		if strings.Contains(cell, w) && !strings.Contains(cell, "no") {
			return text
		}
	}
	return other
}

// Columns are where the lines of a table stand.
type Columns struct {
	Head    int // the row of headings; -1 where there is none
	Answers []int
	no      int   // -1 where lines have no numbers
	main    int   // the column that says the most
	text    []int // all that say what is asked for, in their order
	heads   []string
}

// ColumnsOf finds the columns of a table.
func ColumnsOf(rows [][]string) Columns {
	c := headRow(rows)
	if c.Head >= 0 {
		c.heads = rows[c.Head]
	}
	below := rows[c.Head+1:]
	for k := range width(rows) {
		r := other
		if k < len(c.heads) {
			r = roleOf(c.heads[k])
		}
		if k == c.main || r != number && r != answer && r != aside && k != c.no && !slices.Contains(c.Answers, k) &&
			says(below, k) {
			c.text = append(c.text, k)
		}
	}
	return c
}

// says reports whether a column holds more than the blanks of a form.
func says(rows [][]string, k int) bool {
	return slices.ContainsFunc(rows, func(r []string) bool {
		return k < len(r) && strings.TrimSpace(r[k]) != "" && !furniture("_ "+r[k])
	})
}

// Text is what a row asks for: its cells with a bar between, but for those that say nothing
// of it, such as a quantity of one. A bound that only the heading tells stands before its
// amount.
func (c *Columns) Text(row []string) string {
	var out []string
	for _, k := range c.text {
		s := cell(row, k)
		if k != c.main && (s == "" || slices.Contains([]string{"1", "ea", "each", "yes", "y", "x", "-", "n/a", "lot"},
			strings.ToLower(strings.Trim(s, ".")))) {
			continue
		}
		if k < len(c.heads) && c.Head >= 0 {
			switch strings.ToLower(strings.Trim(c.heads[k], " .:")) {
			case "min", "minimum", "max", "maximum":
				if s != "" && s[0] >= '0' && s[0] <= '9' {
					s = strings.Trim(c.heads[k], " .:") + " " + s
				}
			}
		}
		if len(out) == 0 || !strings.EqualFold(out[len(out)-1], s) {
			out = append(out, s)
		}
	}
	return strings.Join(out, " | ")
}

func cell(row []string, k int) string {
	if k < 0 || k >= len(row) {
		return ""
	}
	return strings.Join(strings.Fields(row[k]), " ")
}

// headRow is the row of headings of a table with the columns that they tell. Columns for
// answers are in their order.
func headRow(rows [][]string) Columns {
	for i, r := range rows[:min(len(rows), mostPreamble)] {
		c := Columns{Head: i, no: -1, main: -1}
		for k, h := range r {
			switch roleOf(h) {
			case number:
				if c.no < 0 && !(k > 0 && strings.EqualFold(strings.TrimSpace(r[k-1]), "yes")) { // "Yes | No"
					c.no = k
				}
			case text:
				if c.main < 0 || longer(rows[i+1:], k, c.main) {
					c.main = k
				}
			case answer:
				c.Answers = append(c.Answers, k)
			}
		}
		if c.main >= 0 && (c.no >= 0 || c.Answers != nil || len(r) <= 2) {
			return c
		}
		if c.no >= 0 && c.Answers != nil { // the text has a heading nobody knows
			c.main = longest(rows[i+1:], c.no)
			return c
		}
	}
	c := Columns{Head: -1, no: -1, main: longest(rows, -1)}
	for k := range width(rows) {
		if k != c.main && numbering(rows, k) {
			c.no = k
			break
		}
	}
	return c
}

// mostPreamble is how many rows may stand above the headings.
const mostPreamble = 15

func width(rows [][]string) int {
	n := 0
	for _, r := range rows {
		n = max(n, len(r))
	}
	return n
}

func letters(rows [][]string, k int) int {
	n := 0
	for _, r := range rows {
		if k < len(r) {
			n += len(r[k])
		}
	}
	return n
}

func longer(rows [][]string, a, b int) bool { return letters(rows, a) > letters(rows, b) }

// longest is the column with the most text.
func longest(rows [][]string, not int) int {
	best := -1
	for k := range width(rows) {
		if k != not && (best < 0 || longer(rows, k, best)) {
			best = k
		}
	}
	return best
}

// numbering reports whether most cells of a column are numbers of a list.
func numbering(rows [][]string, k int) bool {
	n, all := 0, 0
	for _, r := range rows {
		if k < len(r) && r[k] != "" {
			all++
			if no, rest := Mark(r[k] + " x"); no != "" && rest == "x" || plainNumber(r[k]) {
				n++
			}
		}
	}
	return all > 0 && n*2 > all
}

func plainNumber(s string) bool {
	return s != "" && len(s) < 12 && strings.Trim(s, "0123456789.-") == "" && s[0] >= '0' && s[0] <= '9'
}

// goesOn reports whether a row without a number is the rest of a line that a word processor
// wrapped.
func goesOn(last Line, text string) bool {
	first, _ := utf8.DecodeRuneInString(text)
	end, _ := utf8.DecodeLastRuneInString(last.Text)
	return !last.Head && unicode.IsLower(first) && !strings.ContainsRune(".;:!?", end)
}

// fromTable takes the lines out of a table.
func fromTable(rows [][]string) List {
	c := ColumnsOf(rows)
	var list List
	for i, r := range rows {
		if i == c.Head {
			continue
		}
		l := Line{No: cell(r, c.no), Text: c.Text(r), Row: i + 1}
		if l.Text == "" { // a heading may stand in the first column alone
			filled := slices.DeleteFunc(slices.Clone(r), func(c string) bool { return strings.TrimSpace(c) == "" })
			if len(filled) != 1 || plainNumber(filled[0]) {
				continue
			}
			l.Text, l.No, l.Head = strings.Join(strings.Fields(filled[0]), " "), "", true
		} else if c.no < 0 {
			l.No, l.Text = Mark(l.Text)
		}
		if c.no >= 0 && strings.IndexFunc(l.No, func(r rune) bool {
			return unicode.IsLetter(r) || unicode.IsDigit(r)
		}) < 0 {
			l.No = "" // a bullet
		}
		if n := len(list.Lines); c.Head < 0 && c.no >= 0 && l.No == "" && n > 0 && goesOn(list.Lines[n-1], l.Text) {
			list.Lines[n-1].Text += " " + l.Text
			continue
		}
		if i < c.Head { // above the headings stands what the list is of
			l.Head = true
		}
		if furniture(l.Text) {
			list.Left++
			continue
		}
		list.Lines = append(list.Lines, l)
	}
	heads(list.Lines)
	list.Columns = c.said()
	return list
}

// said tells readers which columns were taken.
func (c *Columns) said() string {
	var names []string
	for _, k := range c.text {
		if c.Head < 0 {
			names = append(names, fmt.Sprint(k+1))
		} else {
			names = append(names, fmt.Sprintf("%q", cell(c.heads, k)))
		}
	}
	said := "text from column " + strings.Join(names, " and ")
	if len(names) > 1 {
		said = "text from columns " + strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
	}
	if c.no >= 0 {
		said += fmt.Sprintf(", numbers from %q", cell(c.heads, c.no))
	}
	return said
}
