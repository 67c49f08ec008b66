package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"

	"boxwright/web/pack/site"
)

// measured are the packages whose benchmarks are told.
var measured = []string{
	"./config/...", "./pricing/...",
	"./web/app/...", "./web/areas/...", "./web/drawing/...", "./web/guide/...", "./web/page/...", "./web/session/...",
}

// reports are the packages with a report of their own, in the form printed here.
var reports = []string{"./config/rules", "./config/solve", "./pricing/bid", "./pricing/quote", "./web/app"}

// core runs the benchmarks natively and in wasm under Node.
func core(root string) error {
	goroot, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return fmt.Errorf("asking go for its GOROOT: %w", err)
	}
	runner := "-exec=env -i PATH=" + os.Getenv("PATH") + " " + filepath.Join(strings.TrimSpace(string(goroot)), "lib",
		"wasm", "go_js_wasm_exec")
	for _, way := range []struct {
		prefix string
		env    []string
		args   []string
		least  string // time for each benchmark
	}{
		{"native_", nil, nil, "300ms"},
		// The first rounds in wasm run code that is not yet optimized.
		{"wasm_", site.WasmEnv, []string{runner}, "2s"},
	} {
		for _, p := range reports {
			args := append(append([]string{"test"}, way.args...), "-timeout=30m", "-run=Report$", "-v", p,
				"-bench-report")
			if err := lines(root, way.env, args, func(line string) { report(way.prefix, line) }); err != nil {
				return err
			}
		}
		pkg := ""
		args := append(append([]string{"test"}, way.args...), "-timeout=30m", "-run=^$", "-bench=.", "-benchtime="+
			way.least)
		if err := lines(root, way.env, append(args, measured...), func(line string) {
			if p, is := strings.CutPrefix(line, "pkg: boxwright/"); is {
				pkg = p
			}
			benchmark(way.prefix, pkg, line)
		}); err != nil {
			return err
		}
	}
	return nil
}

// lines runs go and hands on what it prints, line by line.
func lines(root string, env, args []string, each func(string)) error {
	cmd := exec.Command("go", args...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), env...)
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		return err
	}
	if err := cmd.Start(); err != nil {
		return err
	}
	scan := bufio.NewScanner(out)
	scan.Buffer(nil, 1<<20)
	var said strings.Builder
	for scan.Scan() {
		each(scan.Text())
		fmt.Fprintln(&said, scan.Text())
	}
	if _, err := io.Copy(io.Discard, out); err != nil {
		return err
	}
	if err := cmd.Wait(); err != nil {
		return fmt.Errorf("go %s: %w\n%s", strings.Join(args, " "), err, said.String())
	}
	return scan.Err()
}

var figure = regexp.MustCompile(`^(\S+) (-?[\d.]+) (\S.*)$`)

// report hands on a line that is already in the form printed here.
func report(prefix, line string) {
	if figure.MatchString(line) {
		fmt.Println(prefix + line)
	}
}

var parallel = regexp.MustCompile(`-\d+$`)

// benchmark turns a line of go test -bench into figures.
func benchmark(prefix, pkg, line string) {
	fields := strings.Fields(line)
	if len(fields) < 4 || !strings.HasPrefix(fields[0], "Benchmark") {
		return
	}
	name := prefix + strings.ReplaceAll(pkg, "/", ".") + "." +
		parallel.ReplaceAllString(strings.TrimPrefix(fields[0], "Benchmark"), "")
	for i := 2; i+1 < len(fields); i += 2 {
		value, err := strconv.ParseFloat(fields[i], 64)
		if err != nil {
			continue
		}
		switch unit := fields[i+1]; unit {
		case "ns/op":
			say(name+"_ms", value/1e6, "ms")
		case "B/op", "allocs/op":
		default:
			say(name+"_"+strings.ReplaceAll(unit, "/", "_per_"), value, unit)
		}
	}
}
