// Package tables gives the parts of a catalogue that change most as tables for
// a spreadsheet, and takes edited tables back into the catalogue's file: the
// options, the prices and the rules.
//
// The file is edited where a cell was edited and nowhere else: a table that
// comes back as it went out leaves every byte in place, and what no table shows
// (seats, compartments, oxygen, changes of the shell, groups, chassis, ...) is
// never touched. Rows are found by their id, whatever their order; removing
// a row removes its entry from the file, and a new row's entry goes after that of the
// row above it. Removing a column leaves its values as they were.
package tables

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"boxwright/config"
	"boxwright/config/csv"
	"boxwright/pricing"
	"boxwright/pricing/sign"
)

// Names of the tables, in the order in which they are taken in.
var Names = []string{"options", "prices", "rules"}

// maxProblems bounds how much is said of tables that are not in order.
const maxProblems = 100

// lost stands in the place of a letter that could not be read.
const lost = "\ufffd"

// Sheet is an edited table: its file's name and its text.
type Sheet struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// Out gives one of the tables of a catalogue file as comma separated values.
// The error is a config.Problems.
func Out(file []byte, name string) (string, error) {
	c, err := read(file)
	if err != nil {
		return "", err
	}
	var rows [][]string
	switch name {
	case "prices":
		rows = c.priceRows()
	default:
		l := lists[name]
		if l == nil {
			return "", problem("table", name, "is none of the tables "+strings.Join(Names, ", "))
		}
		rows = l.rows(c)
	}
	text := csv.Write(rows)
	if len(rows) > csv.MaxRows || len(text) > csv.MaxBytes {
		return "", problem("too-large", name,
			fmt.Sprintf("has %d rows and %d bytes; a table that can be taken back has at most %d and %d", len(rows),
				len(text), csv.MaxRows, csv.MaxBytes))
	}
	return text, nil
}

// In takes edited tables into a catalogue file. Each says by its headings which
// one it is. Nothing is taken unless all is sound; the error is a
// config.Problems with every fault, by file, row and column as a spreadsheet
// counts them.
func In(file []byte, sheets []Sheet) ([]byte, error) {
	c, err := read(file)
	if err != nil {
		return nil, err
	}
	t := &taking{catalogue: c, sheets: map[string]*sheet{}}
	for _, s := range sheets {
		t.open(s)
	}
	for _, name := range Names {
		if s := t.sheets[name]; s != nil && len(s.rows) > 0 {
			if name == "prices" {
				t.prices(s)
			} else {
				t.list(lists[name], s)
			}
		}
	}
	if len(t.ps) == 0 {
		if len(t.edits) > 0 {
			t.edits = append(t.edits, unsigned(file)...)
		}
		edited := splice(file, t.edits)
		if t.check(edited); len(t.ps) == 0 {
			return edited, nil
		}
		t.ps = t.cause()
	}
	if more := len(t.ps) - maxProblems; more > 0 {
		t.ps = append(t.ps[:maxProblems],
			config.Problem{Code: "table.more", Where: "the tables", Text: fmt.Sprintf("have %d more faults", more)})
	}
	return nil, t.ps
}

// mostEffects of missing rows are told one by one.
const mostEffects = 10

// cause says first and once that rows are missing where that leaves much out of order, and
// folds what follows from it.
func (t *taking) cause() config.Problems {
	more := len(t.ps) - mostEffects
	if more <= 0 || t.lacks == nil {
		return t.ps
	}
	first := config.Problem{Code: "table.rows-missing", Where: "the tables", Text: fmt.Sprintf("%s. A row that is "+
		"not there takes its entry out of the catalogue, and %d places still speak of what is gone. Put the rows back, "+
		"or take those places out too; the first of them follow", strings.Join(t.lacks, ", and "), len(t.ps))}
	out := append(config.Problems{first}, t.ps[:mostEffects]...)
	return append(out, config.Problem{Code: "table.more", Where: "the tables",
		Text: fmt.Sprintf("leave %d more places like these", more)})
}

func problem(code, where, text string) config.Problems {
	return config.Problems{{Code: "table." + code, Where: where, Text: text}}
}

// catalogue is one in order, with its price book.
type catalogue struct {
	file []byte
	cat  *config.Catalogue
	book *pricing.Book
}

func read(file []byte) (*catalogue, error) {
	cat, err := config.Read(file)
	if err != nil {
		return nil, err
	}
	book, err := pricing.ReadBook(cat.PriceBook, cat)
	return &catalogue{file, cat, book}, err
}

// sheet is a parsed table: its headings and rows, and the row of each id.
type sheet struct {
	name  string
	heads []string // in small letters, with single spaces
	plain []string // as they stand
	rows  [][]string
	at    map[string]int // row by id, as the spreadsheet counts
}

// taking is what becomes of the tables that are taken in.
type taking struct {
	*catalogue
	sheets map[string]*sheet // by the table's name
	edits  []edit
	lacks  []string // tables without rows that the catalogue has
	ps     config.Problems
}

func (t *taking) wrong(where, format string, args ...any) {
	t.ps = append(t.ps, config.Problem{Code: "table.cell", Where: where, Text: fmt.Sprintf(format, args...)})
}

// cell names a place as a spreadsheet does.
func (s *sheet) cell(row int, id, column string) string {
	where := fmt.Sprintf("%s, row %d", s.name, row)
	if id != "" {
		where += fmt.Sprintf(" %q", id)
	}
	if column != "" {
		where += ", column " + column
	}
	return where
}

// open takes a table apart, finds out which it is, and which row is which.
func (t *taking) open(in Sheet) {
	if !utf8.ValidString(in.Text) || strings.Contains(in.Text, lost) && !strings.Contains(string(t.file), lost) {
		t.wrong(in.Name,
			`is not in UTF-8, so letters with accents and signs such as ½ would be lost; save it as "CSV UTF-8"`)
		return
	}
	if strings.HasPrefix(in.Text, "PK\x03\x04") {
		t.wrong(in.Name, `is a workbook and no text; save the sheet from the spreadsheet as "CSV UTF-8"`)
		return
	}
	if strings.TrimSpace(in.Text) == "" {
		t.wrong(in.Name, "is empty")
		return
	}
	rows, err := csv.Read(in.Text)
	if err != nil {
		t.wrong(in.Name, "%s", err)
		return
	}
	s := &sheet{name: in.Name, at: map[string]int{}}
	if len(rows) > 0 {
		s.plain = rows[0]
		for _, h := range rows[0] {
			s.heads = append(s.heads, strings.ToLower(strings.Join(strings.Fields(h), " ")))
		}
		s.rows = rows[1:]
	}
	table := ""
	for head, name := range map[string]string{"group": "options", "price": "prices", "then": "rules"} {
		if s.column(head) >= 0 && s.column("id") >= 0 {
			table = name
		}
	}
	switch {
	case table == "":
		t.wrong(s.cell(1, "", ""),
			`the first row has the headings of no table: options have "id" and "group", prices "id" and `+
				`"price", rules "id" and "then"`)
		return
	case t.sheets[table] != nil:
		t.wrong(in.Name, "is a table of %s, and so is %s; take in one of each", table, t.sheets[table].name)
		return
	}
	t.sheets[table] = s
	for i, h := range s.heads {
		if h != "" && s.column(h) != i {
			t.wrong(s.cell(1, "", ""), "the heading %q stands twice", h)
		}
	}
	for i, row := range s.rows {
		n := i + 2
		id := s.get(row, "id")
		stray := -1
		for k, c := range row {
			if strings.TrimSpace(c) != "" && (k >= len(s.heads) || s.heads[k] == "") {
				stray = k
			}
		}
		switch {
		case strings.TrimSpace(strings.Join(row, "")) == "":
			continue
		case stray >= 0:
			t.wrong(s.cell(n, id, letters(stray)), "%q stands under no heading; empty the cell, or give the column "+
				"the heading it belongs to", clip(row[stray]))
		case id == "":
			t.wrong(s.cell(n, "", "id"), "the row has no id; give it one, or empty all of it")
		case s.at[id] > 0:
			t.wrong(s.cell(n, id, "id"), "this id stands in row %d already; each row needs one of its own", s.at[id])
		default:
			s.at[id] = n
		}
	}
	if len(s.at) == 0 && !(table == "rules" && len(t.cat.Rules) == 0) {
		t.wrong(in.Name, "has no rows; a table with nothing in it would empty the catalogue")
	}
}

// column is the place of a heading, or below zero.
func (s *sheet) column(head string) int {
	for i, h := range s.heads {
		if h == head {
			return i
		}
	}
	return -1
}

// get is a cell of a row by its heading, empty when the row is too short.
func (s *sheet) get(row []string, head string) string {
	if k := s.column(head); k >= 0 && k < len(row) {
		return strings.TrimSpace(row[k])
	}
	return ""
}

// letters name a column as spreadsheets do: A to Z, then AA.
func letters(k int) string {
	if k < 26 {
		return string(rune('A' + k))
	}
	return letters(k/26-1) + letters(k%26)
}

func clip(text string) string {
	if len(text) > 60 {
		return strings.ToValidUTF8(text[:60], "") + "…"
	}
	return text
}

// each calls entry for the rows of a table in their order: was is the position of
// the row's entry in the file's list, below zero for a new row, and behind the
// position of the entry it follows, -1 at the beginning.
func (s *sheet) each(known map[string]int, entry func(n int, id string, row []string, was, behind int)) {
	behind := -1
	for i, row := range s.rows {
		n, id := i+2, s.get(row, "id")
		if id == "" || s.at[id] != n {
			continue
		}
		was, there := known[id]
		if there {
			behind = was
		} else {
			was = -1
		}
		entry(n, id, row, was, behind)
	}
}

// check reads the edited file as the page does, and says what is wrong with it
// by the rows that it came from.
func (t *taking) check(edited []byte) {
	cat, err := config.Read(edited)
	if err == nil {
		_, err = pricing.ReadBook(cat.PriceBook, cat)
	}
	if err == nil {
		return
	}
	for _, p := range err.(config.Problems) {
		p.Where = t.place(p.Where)
		t.ps = append(t.ps, p)
	}
}

// place turns a place in the file into one in a table, where a table has it.
func (t *taking) place(where string) string {
	list, rest, _ := strings.Cut(where, "[")
	if list != "options" && list != "rules" {
		if !strings.HasPrefix(where, "price_book ") || !strings.Contains(where, "prices ") {
			return where
		}
		list = "prices"
	}
	s := t.sheets[list]
	_, rest, quoted := strings.Cut(rest, `"`)
	if list == "prices" {
		_, rest, quoted = strings.Cut(where[strings.Index(where, "prices "):], `"`)
	}
	id, rest, _ := strings.Cut(rest, `"`)
	if !quoted {
		return where
	}
	if s == nil { // what was taken in does not go with a table that was not
		return fmt.Sprintf("the table of %s, row %q", list, id)
	}
	if s.at[id] == 0 {
		if list == "prices" {
			return s.name + fmt.Sprintf(", where a row %q belongs", id)
		}
		return where
	}
	column := ""
	for _, h := range s.heads { // such as "mass lb", or "then" of "then all[2]"
		if strings.HasPrefix(strings.TrimSpace(rest)+" ", h+" ") && len(h) > len(column) {
			column = h
		}
	}
	return s.cell(s.at[id], id, column)
}

// edit puts a text in the place of some of a file's bytes.
type edit struct {
	from, to int
	text     string
}

func splice(file []byte, edits []edit) []byte {
	slices.SortStableFunc(edits, func(a, b edit) int { return cmp.Compare(a.from, b.from) })
	var out []byte
	at := 0
	for _, e := range edits {
		out = append(append(out, file[at:e.from]...), e.text...)
		at = e.to
	}
	return append(out, file[at:]...)
}

// Rename gives a catalogue's edition another name, or another first day when
// that is not empty. The error is a config.Problems.
func Rename(file []byte, name, from string) ([]byte, error) {
	var edits []edit
	for _, x := range [][2]string{{"edition", name}, {"valid_from", from}} {
		if p := find(file, x[0]); p != nil && x[1] != "" {
			edits = append(edits, edit{p.from, p.to, line(x[1])})
		}
	}
	edited := splice(file, append(edits, unsigned(file)...))
	if _, err := read(edited); err != nil {
		return nil, err
	}
	return edited, nil
}

// unsigned takes the plant's signature away from a file that is edited: it would not hold.
func unsigned(file []byte) []edit {
	if from, to := signature(file); to > 0 {
		return []edit{{from, to, "null"}}
	}
	return nil
}

// signature is from where to where the plant's signature stands in a file; 0 where there
// is none.
func signature(file []byte) (from, to int) {
	p := find(file, "signed")
	switch {
	case p == nil:
		return 0, 0
	case p.open != 0:
		return p.from - 1, p.to + 1
	}
	return p.from, p.to
}

// Sign puts the plant's signature into a catalogue's file, in the place of the one before.
func Sign(file []byte, key *sign.Key) ([]byte, error) {
	c, err := read(file)
	if err != nil {
		return nil, err
	}
	text, err := json.Marshal(key.Catalogue(c.cat))
	if err != nil {
		return nil, err
	}
	if from, to := signature(file); to > 0 {
		return splice(file, []edit{{from, to, string(text)}}), nil
	}
	open := bytes.IndexByte(file, '{') + 1
	return splice(file, []edit{{open, open, "\n  \"signed\": " + string(text) + ","}}), nil
}
