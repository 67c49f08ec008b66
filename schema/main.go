// Command schema keeps the file formats: it generates their JSON Schemas from
// the Go types, checks a catalogue as the page does, and writes one in the
// house's form. It runs on the host only; nothing of it goes into the page.
//
//	go run ./schema generate
//	go run ./schema check [-notes] FILE...
//	go run ./schema format FILE
package main

import (
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
  schema generate             write the JSON Schemas, from the module's root
  schema check [-notes] FILE...  check catalogues; with -notes, list what is only worth a look
  schema format FILE          write a catalogue in the house's form
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
	return 0
}

func checkFile(name string, notes bool, out, errs io.Writer) int {
	file, err := os.ReadFile(name)
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
	file, err := os.ReadFile(name)
	if err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	text, err := Format(file)
	if ps, ok := err.(config.Problems); ok {
		for _, p := range ps {
			fmt.Fprintf(errs, "%s: %s\n", name, p)
		}
		return 1
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
