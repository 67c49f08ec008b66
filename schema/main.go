// Command schema keeps the file formats: it generates their JSON Schemas from
// the Go types, checks a catalogue as the page does, writes one in the house's
// form, compares two editions, and turns one into tables for a spreadsheet and
// back. It runs on the host only; nothing of it goes into the page.
//
//	go run ./schema generate
//	go run ./schema check [-notes] FILE...
//	go run ./schema format FILE
//	go run ./schema compare OLD NEW
//	go run ./schema export FILE DIR
//	go run ./schema import FILE DIR
//	go run ./schema sign KEYFILE FILE
package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"boxwright/config"
)

const usage = `usage:
  schema generate             write the JSON Schemas and the page's protocol, from the module's root
  schema check [-notes] FILE...  check catalogues; with -notes, list what is only worth a look
  schema format FILE          write a catalogue in the house's form
  schema compare OLD NEW      say what the new edition has otherwise than the old one
  schema export FILE DIR      write options, prices and rules as tables for a spreadsheet
  schema import FILE DIR      take the tables in DIR, edited, into the catalogue's file
  schema sign KEYFILE FILE    sign a catalogue as the plant; the passphrase of a sealed key is read as a line
`

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run does one command. The status is 0, 1 when a file is not in order, or 2
// when the command cannot be done.
func run(args []string, out, errs io.Writer) int {
	if len(args) == 0 {
		fmt.Fprint(errs, usage)
		return 2
	}
	switch flags := flag.NewFlagSet(args[0], flag.ContinueOnError); args[0] {
	case "generate":
		return generate(errs)
	case "check":
		flags.SetOutput(errs)
		notes := flags.Bool("notes", false, "list what is only worth a look")
		if flags.Parse(args[1:]) != nil || flags.NArg() == 0 {
			break
		}
		status := 0
		for _, name := range flags.Args() {
			status = max(status, checkFile(name, *notes, out, errs))
		}
		return status
	case "format":
		if len(args) == 2 {
			return formatFile(args[1], errs)
		}
	case "compare":
		if len(args) == 3 {
			return compareFiles(args[1], args[2], out, errs)
		}
	case "export":
		if len(args) == 3 {
			return exportTables(args[1], args[2], out, errs)
		}
	case "import":
		if len(args) == 3 {
			return importTables(args[1], args[2], out, errs)
		}
	case "sign":
		if len(args) == 3 {
			return signFile(args[1], args[2], os.Stdin, out, errs)
		}
	}
	fmt.Fprint(errs, usage)
	return 2
}

func generate(errs io.Writer) int {
	for _, name := range slices.Sorted(maps.Keys(Schemas)) {
		text, err := Generate(name)
		if err == nil {
			err = os.WriteFile(filepath.Join("schema", name), text, 0o644)
		}
		if err != nil {
			fmt.Fprintf(errs, "%s: %v\n", name, err)
			return 2
		}
	}
	for _, path := range slices.Sorted(maps.Keys(Protocol)) {
		text, err := Protocol[path]()
		if err == nil {
			err = os.WriteFile(path, text, 0o644)
		}
		if err != nil {
			fmt.Fprintf(errs, "%s: %v\n", path, err)
			return 2
		}
	}
	return 0
}

// readFile reads a file as the page does: without the mark that editors of Windows
// put before a text.
func readFile(name string) ([]byte, error) {
	file, err := os.ReadFile(name)
	return bytes.TrimPrefix(file, []byte("\ufeff")), err
}

func checkFile(name string, notes bool, out, errs io.Writer) int {
	file, err := readFile(name)
	if err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	r := Check(file)
	for _, line := range r.Lines(name, notes) {
		fmt.Fprintln(out, line)
	}
	if r.Faults() > 0 {
		return 1
	}
	fmt.Fprintf(out, "%s: %s\n", name, r.Summary())
	return 0
}

func formatFile(name string, errs io.Writer) int {
	file, err := readFile(name)
	if err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	text, err := Format(file)
	if ps, ok := err.(config.Problems); ok {
		return refused(name, ps, errs)
	}
	if err == nil {
		err = os.WriteFile(name, text, 0o644)
	}
	if err != nil {
		fmt.Fprintf(errs, "%s: %v\n", name, err)
		return 1
	}
	return 0
}

// refused prints why a file was not taken.
func refused(name string, ps config.Problems, errs io.Writer) int {
	for _, p := range ps {
		fmt.Fprintf(errs, "%s: %s\n", name, p)
	}
	return 1
}
