// Package csv reads and writes tables as comma separated values. What it writes
// is safe to open in a spreadsheet: no cell can be taken for a formula.
package csv

import (
	"fmt"
	"strings"
)

// Bounds of what is read.
const (
	MaxBytes = 4 << 20
	MaxRows  = 20000
	MaxCells = 200 // in a row
)

// formula holds what a spreadsheet may take for the beginning of a formula.
const formula = "=+-@\t\r"

// Read takes a table apart. Cells are separated by commas; by tabs where
// the first line has one, or by semicolons where it has more of those; a cell in double quotes may hold
// anything, a doubled quote standing for one. Other quotes are kept, so that
// 72" needs none. Empty lines are left out. The error names the line.
func Read(text string) ([][]string, error) {
	if len(text) > MaxBytes {
		return nil, fmt.Errorf("the table has %d bytes; the most that is read is %d", len(text), MaxBytes)
	}
	text = strings.TrimPrefix(text, "\ufeff")
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	separator := separatorOf(text)
	var rows [][]string
	var row []string
	var cell strings.Builder
	line, opened := 1, 0 // opened: the line on which a quoted cell began, 0 outside one
	fresh := true        // nothing of the cell was read yet
	end := func() {
		row = append(row, bare(cell.String()))
		cell.Reset()
		fresh = true
	}
	for i := 0; i <= len(text); i++ {
		switch {
		case i < len(text) && opened > 0:
			if text[i] == '\n' {
				line++
			}
			if text[i] != '"' {
				cell.WriteByte(text[i])
			} else if i+1 < len(text) && text[i+1] == '"' {
				cell.WriteByte('"')
				i++
			} else {
				opened = 0
			}
		case opened > 0:
			return nil, fmt.Errorf("line %d: a quote is opened and never closed", opened)
		case i == len(text) || text[i] == '\n':
			blank := fresh && row == nil
			if !blank {
				end()
				rows = append(rows, row)
			}
			row = nil
			line++
		case text[i] == separator:
			end()
		case text[i] == '"' && fresh:
			opened, fresh = line, false
		default:
			cell.WriteByte(text[i])
			fresh = false
		}
		if len(rows) > MaxRows || len(row) > MaxCells {
			return nil, fmt.Errorf("line %d: more than %d rows or %d cells in a row", line, MaxRows, MaxCells)
		}
	}
	return rows, nil
}

// separatorOf looks at the first line, outside quotes.
func separatorOf(text string) byte {
	var commas, semicolons int
	quoted := false
	for i := range len(text) {
		switch c := text[i]; {
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == '\t':
			return c
		case c == ',':
			commas++
		case c == ';':
			semicolons++
		}
		if text[i] == '\n' && !quoted {
			break
		}
	}
	if semicolons > commas {
		return ';'
	}
	return ','
}

// Write sets a table down with commas and a line feed after each row. Reading
// it gives the same cells again, but for line ends within a cell, which become
// line feeds.
func Write(rows [][]string) string {
	var b strings.Builder
	for _, row := range rows {
		for i, c := range row {
			if i > 0 {
				b.WriteByte(',')
			}
			c = Safe(c)
			if strings.ContainsAny(c, "\",;\t\r\n") || len(row) == 1 || c == "" && i == 0 {
				c = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
			}
			b.WriteString(c)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// breaks are where a spreadsheet may begin another cell within one of ours: in many
// countries it parts cells by semicolons, and then our quotes do not hold.
const breaks = ";\t\r\n"

// Safe puts an apostrophe before a cell that a spreadsheet could take for a formula, and
// before what could begin one where cells are parted otherwise. A plain number may begin
// with a sign.
func Safe(cell string) string {
	return safe(afterBreaks(cell, func(part string) string { return safe(part, laterFormula) }), formula)
}

// safe guards a cell, or a part of one, that begins like a formula.
func safe(part, begins string) string {
	if part == "" || !strings.ContainsRune(begins, rune(part[0])) && !guarded(part, begins) || number(part) {
		return part
	}
	return "'" + part
}

// laterFormula holds what may begin a formula after a break: a quote too, which a
// spreadsheet takes off.
const laterFormula = formula + `"`

// afterBreaks gives what follows each break of a cell to change.
func afterBreaks(cell string, change func(part string) string) string {
	at := strings.IndexAny(cell, breaks) + 1
	if at == 0 {
		return cell
	}
	var out strings.Builder
	for {
		out.WriteString(cell[:at])
		cell = cell[at:]
		if at = strings.IndexAny(cell, breaks) + 1; at == 0 {
			out.WriteString(change(cell))
			return out.String()
		}
		out.WriteString(change(cell[:at-1]))
		cell, at = cell[at-1:], 1
	}
}

// guarded reports whether a cell, or a part of one, reads as one that Safe has written.
func guarded(cell, begins string) bool {
	return len(cell) > 1 && cell[0] == '\'' && strings.ContainsRune(begins+"'", rune(cell[1]))
}

// bare takes off what Safe has put on.
func bare(cell string) string {
	return afterBreaks(unguarded(cell, formula), func(part string) string { return unguarded(part, laterFormula) })
}

func unguarded(part, begins string) string {
	if guarded(part, begins) {
		return part[1:]
	}
	return part
}

func number(cell string) bool {
	return len(cell) > 1 && (cell[0] == '-' || cell[0] == '+') && strings.Trim(cell[1:], "0123456789.,") == ""
}
