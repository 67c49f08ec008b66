// Command measure prints what the page weighs and how long it takes, one
// "name value unit" to a line; make bench runs it. Times depend on the machine
// and on what else it does: compare lines of one run with each other.
//
//	go run ./web/e2e/measure            everything
//	go run ./web/e2e/measure -only page sizes and the page in the browser
//	go run ./web/e2e/measure -only clicks as page, without the starts
//	go run ./web/e2e/measure -only large the page with catalogues of up to 10,000 options
//	go run ./web/e2e/measure -only list a purchaser's list of a thousand lines in the page
//	go run ./web/e2e/measure -only core benchmarks of the core, native and in wasm
package main

import (
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"

	"boxwright/web/pack/site"
)

func main() {
	only := flag.String("only", "", `"page", "clicks", "large", "list" or "core"; empty measures all`)
	clicks := flag.Int("clicks", 200, "how many clicks to time in the browser")
	options := flag.Int("options", 0, "with -only large, the one size that is measured; 0 for all")
	flag.Parse()
	if *options > 0 {
		largeSizes = []int{*options}
	}
	if err := run(*only, *clicks); err != nil {
		fmt.Fprintln(os.Stderr, "measure:", err)
		os.Exit(1)
	}
}

func run(only string, clicks int) error {
	root, err := site.Root()
	if err != nil {
		return err
	}
	if only != "core" {
		if err := page(root, clicks, only); err != nil {
			return err
		}
	}
	if only == "" || only == "core" {
		return core(root)
	}
	return nil
}

// say prints one figure.
func say(name string, value float64, unit string) {
	fmt.Printf("%s %s %s\n", name, strconv.FormatFloat(math.Round(value*1000)/1000, 'f', -1, 64), unit)
}

// at is the value below which the share q of the values lies.
func at(values []float64, q float64) float64 {
	if len(values) == 0 {
		return math.NaN()
	}
	sorted := slices.Sorted(slices.Values(values))
	return sorted[int(math.Ceil(q*float64(len(sorted))))-1]
}
