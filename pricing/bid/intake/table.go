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
	other role = iota
	number
	text
	answer
)

// roles by the words of a heading, in small letters.
var roles = map[string]role{
	"no": number, "number": number, "item": number, "item no": number, "item number": number, "item #": number, "ref": number, "reference": number,
	"line": number, "line no": number, "line item": number, "id": number, "#": number, "section": number, "sec": number, "para": number, "paragraph": number,
	"spec no": number, "clause": number, "req no": number, "req #": number, "req id": number,
	"requirement": text, "requirements": text, "text": text, "description": text, "specification": text, "specifications": text, "spec": text,
	"specification requirement": text, "minimum specification": text, "minimum specifications": text, "minimum requirement": text,
	"minimum requirements": text, "feature": text, "features": text, "item description": text, "requirement description": text, "detail": text,
	"required": text, "specification description": text, "technical specification": text, "technical requirement": text, "equipment": text,
	"comply": answer, "complies": answer, "compliance": answer, "comply y/n": answer, "y/n": answer, "yes/no": answer, "yes": answer, "meets": answer, "meets spec": answer,
	"exception": answer, "exceptions": answer, "deviation": answer, "deviations": answer, "comments": answer, "comment": answer, "remarks": answer,
	"response": answer, "bidder response": answer, "vendor response": answer, "offered": answer, "bidder": answer, "proposed": answer, "answer": answer,
	"comply yes/no": answer, "comply yes or no": answer, "explanation": answer, "exception/comments": answer,
}

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

// HeadRow is the row of headings of a table and the columns its lines stand in; -1
// where there is none. Columns for answers are in their order.
func HeadRow(rows [][]string) (at, no, what int, answers []int) {
	for i, r := range rows[:min(len(rows), mostPreamble)] {
		no, what, answers = -1, -1, nil
		for k, c := range r {
			switch roleOf(c) {
			case number:
				if no < 0 && !(k > 0 && strings.EqualFold(strings.TrimSpace(r[k-1]), "yes")) { // "Yes | No"
					no = k
				}
			case text:
				if what < 0 || longer(rows[i+1:], k, what) {
					what = k
				}
			case answer:
				answers = append(answers, k)
			}
		}
		if what >= 0 && (no >= 0 || answers != nil || len(r) <= 2) {
			return i, no, what, answers
		}
		if no >= 0 && answers != nil { // the text has a heading nobody knows
			return i, no, longest(rows[i+1:], no), answers
		}
	}
	no, what = -1, longest(rows, -1)
	for k := range width(rows) {
		if k != what && numbering(rows, k) {
			no = k
			break
		}
	}
	return -1, no, what, nil
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
	at, no, what, _ := HeadRow(rows)
	var list List
	cell := func(r []string, k int) string {
		if k < 0 || k >= len(r) {
			return ""
		}
		return strings.Join(strings.Fields(r[k]), " ")
	}
	for i, r := range rows {
		if i == at {
			continue
		}
		l := Line{No: cell(r, no), Text: cell(r, what), Row: i + 1}
		if l.Text == "" { // a heading may stand in the first column alone
			filled := slices.DeleteFunc(slices.Clone(r), func(c string) bool { return strings.TrimSpace(c) == "" })
			if len(filled) != 1 || plainNumber(filled[0]) {
				continue
			}
			l.Text, l.No, l.Head = strings.Join(strings.Fields(filled[0]), " "), "", true
		} else if no < 0 {
			l.No, l.Text = Mark(l.Text)
		}
		if no >= 0 && strings.IndexFunc(l.No, func(r rune) bool {
			return unicode.IsLetter(r) || unicode.IsDigit(r)
		}) < 0 {
			l.No = "" // a bullet
		}
		if n := len(list.Lines); at < 0 && no >= 0 && cell(r, no) == "" && n > 0 && goesOn(list.Lines[n-1], l.Text) {
			list.Lines[n-1].Text += " " + l.Text
			continue
		}
		if i < at { // above the headings stands what the list is of
			l.Head = true
		}
		if furniture(l.Text) {
			list.Left++
			continue
		}
		list.Lines = append(list.Lines, l)
	}
	heads(list.Lines)
	if at >= 0 {
		list.Columns = fmt.Sprintf("text from column %q", cell(rows[at], what))
		if no >= 0 {
			list.Columns += fmt.Sprintf(", numbers from %q", cell(rows[at], no))
		}
	} else {
		list.Columns = fmt.Sprintf("text from column %d, the longest", what+1)
	}
	return list
}
