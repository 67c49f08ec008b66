// Package intake takes a purchaser's list apart into its lines, as the purchaser
// numbered and wrote them. It says nothing of what they ask for.
package intake

import (
	"fmt"
	"strings"

	"boxwright/config/csv"
)

// Line of a list.
type Line struct {
	No   string // as the purchaser counts; empty where the list does not
	Text string // as written; only the breaks of wrapped lines are spaces
	Head bool   // a heading, which asks for nothing
	Row  int    // row of the table it came from, counted from one; 0 for a text
}

// List is what was read.
type List struct {
	Lines   []Line
	Left    int    // lines left out: page numbers, and what every page repeats
	Columns string // which columns of a table were taken, for readers; empty for a text
}

// Read takes a pasted text or a file apart: a table with a row for each line, or
// running text. The error says in words what keeps it from being read.
func Read(text string) (List, error) {
	text = strings.ReplaceAll(strings.TrimPrefix(text, "\ufeff"), "\r\n", "\n")
	text = strings.ReplaceAll(text, "\r", "\n")
	var list List
	if rows, ok, err := tableOf(text); err != nil {
		return list, err
	} else if ok {
		list = fromTable(rows)
	} else {
		list = fromText(text)
	}
	if len(list.Lines) == 0 {
		return list, fmt.Errorf("no line holds a text")
	}
	return list, nil
}

// tableOf reads a text as a table when it is one: cells parted by tabs, or by commas or
// semicolons beneath a row of headings or as a program writes them, in quotes. A comma
// alone makes no column.
func tableOf(text string) ([][]string, bool, error) {
	lines, tabbed, numbered := 0, 0, 0
	first := ""
	for _, l := range strings.Split(text, "\n") {
		if strings.TrimSpace(l) == "" {
			continue
		}
		if lines == 0 {
			first = l
		}
		lines++
		if strings.Contains(strings.Trim(l, "\t "), "\t") {
			tabbed++
			if no, rest, _ := strings.Cut(strings.Trim(l, "\t "), "\t"); len(no) <= longestNo &&
				!strings.ContainsAny(rest, "\t\"") {
				numbered++
			}
		}
	}
	// A number and a tab before most lines, and headings without, are running text.
	if tabbed*2 > lines && !(numbered == tabbed && tabbed < lines) {
		return tabs(text), true, nil
	}
	heads, err := csv.Read(first)
	named := 0
	if err == nil && len(heads) > 0 {
		for _, c := range heads[0] {
			if roleOf(c) != other {
				named++
			}
		}
	}
	rows, err := csv.Read(text)
	if named >= 2 {
		return rows, err == nil, err
	}
	if err != nil {
		return nil, false, nil
	}
	c := headRow(rows)
	return rows, c.Head >= 0 && (c.no >= 0 || c.Answers != nil) || quoted(text, rows), nil
}

// longestNo is the most bytes of a number that a tab parts from its line.
const longestNo = 12

// quoted reports whether a table without headings was written by a program: each row
// has as many cells, and texts stand in quotes.
func quoted(text string, rows [][]string) bool {
	if len(rows) < 2 || len(rows[0]) < 2 || !strings.Contains(text, `"`) {
		return false
	}
	for _, r := range rows {
		if len(r) != len(rows[0]) {
			return false
		}
	}
	return strings.Count(text, `,"`)+strings.Count(text, `",`) > 0
}

// tabs parts rows as a spreadsheet puts them on the clipboard: a cell in quotes may
// hold line breaks.
func tabs(text string) [][]string {
	var rows [][]string
	var row []string
	var cell strings.Builder
	open, fresh := false, true
	end := func() {
		row = append(row, strings.Join(strings.Fields(cell.String()), " "))
		cell.Reset()
		fresh = true
	}
	for i := 0; i < len(text); i++ {
		c := text[i]
		switch {
		case open && c == '"' && i+1 < len(text) && text[i+1] == '"':
			cell.WriteByte('"')
			i++
		case open && c == '"':
			open = false
		case open:
			cell.WriteByte(c)
		case c == '"' && fresh && closes(text[i+1:]):
			open, fresh = true, false
		case c == '\t':
			end()
		case c == '\n':
			end()
			rows, row = append(rows, row), nil
		default:
			cell.WriteByte(c)
			fresh = false
		}
	}
	if !fresh || row != nil || open {
		end()
		rows = append(rows, row)
	}
	return rows
}

// closes reports whether a quote that opens a cell is closed before a tab, a line end
// or the end of the text.
func closes(rest string) bool {
	for i := 0; i < len(rest); i++ {
		if rest[i] != '"' {
			continue
		}
		if i+1 == len(rest) || rest[i+1] == '\t' || rest[i+1] == '\n' {
			return true
		}
		if rest[i+1] == '"' {
			i++
			continue
		}
		return false
	}
	return false
}
