package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"boxwright/config"
	"boxwright/pricing/editions"
	"boxwright/pricing/quote"
	"boxwright/pricing/tables"
)

func openFile(name string, errs io.Writer) (*quote.Edition, []byte, int) {
	file, err := readFile(name)
	if err != nil {
		fmt.Fprintln(errs, err)
		return nil, nil, 2
	}
	ed, err := quote.OpenEdition(file)
	if err != nil {
		return nil, nil, refused(name, err.(config.Problems), errs)
	}
	return ed, file, 0
}

func compareFiles(before, after string, out, errs io.Writer) int {
	from, _, status := openFile(before, errs)
	if status != 0 {
		return status
	}
	to, _, status := openFile(after, errs)
	if status != 0 {
		return status
	}
	for _, line := range differences(editions.Compare(from, to)) {
		fmt.Fprintln(out, line)
	}
	return 0
}

// differences says a comparison in words, a line each.
func differences(c *editions.Comparison) []string {
	if c.Same() {
		return []string{"nothing differs"}
	}
	var out []string
	add := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	for _, p := range c.Parts {
		for _, t := range p.Things {
			line := fmt.Sprintf("%s: %s %s", p.Name, t.How, t.Label)
			if t.ID != "" {
				line += fmt.Sprintf(" (%s)", t.ID)
			}
			var fields []string
			for _, f := range t.Fields {
				fields = append(fields, fmt.Sprintf("%s %q, was %q", f.Name, f.To, f.From))
			}
			add("%s", strings.TrimSuffix(line+": "+strings.Join(fields, "; "), ": "))
		}
	}
	for _, p := range c.Prices {
		day := ""
		if !p.On.IsZero() {
			day = " from " + p.On.String()
		}
		switch {
		case p.How() == editions.Added:
			add("Prices: added %s (%s)%s: %s", p.Label, p.Key, day, p.To)
		case p.How() == editions.Removed:
			add("Prices: removed %s (%s)%s: %s", p.Label, p.Key, day, p.From)
		default:
			add("Prices: %s (%s)%s: %s, was %s: %s %s", p.Label, p.Key, day, p.To, p.From, p.By(), p.Percent())
		}
	}
	for _, r := range c.Rules {
		add("Rules: %s %s: %s", r.How, r.ID, r.Reason)
		for _, x := range [][2]string{{"reason was", r.Was}, {"was", r.From}, {"is", r.To}} {
			if x[1] != "" {
				add("    %s: %s", x[0], x[1])
			}
		}
	}
	return out
}

func exportTables(name, dir string, out, errs io.Writer) int {
	_, file, status := openFile(name, errs)
	if status != 0 {
		return status
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	for _, table := range tables.Names {
		text, err := tables.Out(file, table)
		path := filepath.Join(dir, table+".csv")
		if err == nil {
			err = os.WriteFile(path, []byte("\ufeff"+text), 0o644)
		}
		if err != nil {
			fmt.Fprintf(errs, "%s: %v\n", path, err)
			return 1
		}
		fmt.Fprintln(out, path)
	}
	return 0
}

// importTables takes in those of the tables that the folder has. The
// catalogue's file is written only when all of it is in order.
func importTables(name, dir string, out, errs io.Writer) int {
	from, file, status := openFile(name, errs)
	if status != 0 {
		return status
	}
	var sheets []tables.Sheet
	for _, table := range tables.Names {
		path := filepath.Join(dir, table+".csv")
		text, err := os.ReadFile(path)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			fmt.Fprintln(errs, err)
			return 2
		}
		sheets = append(sheets, tables.Sheet{Name: path, Text: string(text)})
	}
	if sheets == nil {
		fmt.Fprintf(errs, "%s holds none of the tables %s, each with .csv behind it\n", dir,
			strings.Join(tables.Names, ", "))
		return 2
	}
	edited, err := tables.In(file, sheets)
	var to *quote.Edition
	if err == nil {
		to, err = quote.Accept(edited)
	}
	if ps, ok := err.(config.Problems); ok {
		refused("not taken", ps, errs)
		return 1
	}
	if bytes.Equal(edited, file) {
		fmt.Fprintln(out, "nothing differs")
		return 0
	}
	if err := os.WriteFile(name, edited, 0o644); err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	for _, line := range differences(editions.Compare(from, to)) {
		fmt.Fprintln(out, line)
	}
	return 0
}
