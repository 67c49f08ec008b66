// Command soak runs every random test on fresh seeds and every fuzz target, in
// equal shares of the time given; make soak runs it. Each find is printed with
// the way to repeat it and should become a fixed case; a fuzz target writes its
// failing input where go test finds it again.
//
//	go run ./web/e2e/soak -minutes 60
package main

import (
	"cmp"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"
)

// fuzzTurn is how long a fuzz target works before the next one has its turn.
const fuzzTurn = 20 * time.Second

func main() {
	minutes := flag.Float64("minutes", 10, "how long to search, in all")
	flag.Parse()
	finds, err := run(time.Duration(*minutes * float64(time.Minute)))
	if err != nil {
		fmt.Fprintln(os.Stderr, "soak:", err)
		os.Exit(1)
	}
	if finds > 0 {
		os.Exit(1)
	}
}

// turns is what one target was given so far.
type turns struct {
	target
	spent time.Duration
	count int
}

// run gives the next turn to the target that has had the least time, until the
// time is up. A target that found something has no further turn.
func run(length time.Duration) (finds int, err error) {
	targets, err := find()
	if err != nil {
		return 0, err
	}
	folder, err := os.MkdirTemp("", "soak-")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(folder)
	cache, err := exec.Command("go", "env", "GOCACHE").Output()
	if err != nil {
		return 0, fmt.Errorf("asking go for its cache: %w", err)
	}
	var queue []*turns
	for _, t := range targets {
		queue = append(queue, &turns{target: t})
	}
	rand.Shuffle(len(queue), func(i, j int) { queue[i], queue[j] = queue[j], queue[i] })
	binaries := map[string]string{} // by package, those of fuzz targets apart
	count, reached := 0, 0
	from := time.Now()
	for time.Since(from) < length && len(queue) > 0 {
		t := slices.MinFunc(queue, func(a, b *turns) int { return cmp.Compare(a.spent, b.spent) })
		name := t.binary()
		if binaries[name] == "" {
			binaries[name] = filepath.Join(folder, name)
			if err := t.compile(binaries[name]); err != nil {
				return finds, err
			}
		}
		began := time.Now()
		said, failed := t.turn(binaries[name], filepath.Join(strings.TrimSpace(string(cache)), "fuzz", t.path))
		t.spent += time.Since(began)
		if t.count++; t.count == 1 {
			reached++
		}
		count++
		if failed {
			finds++
			fmt.Printf("FOUND by %s\n%s\n", t, said)
			queue = slices.DeleteFunc(queue, func(o *turns) bool { return o == t })
		}
	}
	fmt.Printf("soaked %s: %d turns of %d of %d random tests and fuzz targets, %d finds\n",
		time.Since(from).Round(time.Second), count, reached, len(targets), finds)
	return finds, nil
}

// binary is the name of the test binary that a target is in.
func (t target) binary() string {
	name := strings.ReplaceAll(t.path, "/", "-")
	if t.fuzz {
		name += "-fuzz"
	}
	return name
}

// compile builds it; for a fuzz target with what shows the fuzzer its way.
func (t target) compile(file string) error {
	args := []string{"test", "-c", "-o", file}
	if t.fuzz {
		args = append(args, "-fuzz=.")
	}
	if out, err := exec.Command("go", append(args, t.path)...).CombinedOutput(); err != nil {
		return fmt.Errorf("building the tests of %s: %w\n%s", t.path, err, out)
	}
	return nil
}

// turn runs a target once. When it fails, said tells how and how to repeat it.
// The fuzzer keeps what leads to new ground in the folder known.
func (t target) turn(binary, known string) (said string, failed bool) {
	if t.fuzz {
		run := exec.Command(binary, "-test.run=^$", "-test.fuzz=^"+t.name+"$", "-test.fuzztime="+fuzzTurn.String(),
			"-test.fuzzminimizetime=10s", "-test.fuzzcachedir="+known)
		run.Dir = t.folder
		out, err := run.CombinedOutput()
		return end(out) + t.input(out), err != nil
	}
	seed := rand.Uint64N(1<<40) + 2
	run := exec.Command(binary, "-test.run=^"+t.name+"$", "-test.timeout=20m", "-rapid.nofailfile",
		fmt.Sprintf("-rapid.seed=%d", seed))
	run.Dir = t.folder
	out, err := run.CombinedOutput()
	return fmt.Sprintf("%sonce more: go test %s -count=1 -run='^%s$' -rapid.seed=%d", end(out), t.path, t.name, seed),
		err != nil
}

var written = regexp.MustCompile(`Failing input written to (\S+)`)

// input shows the failing input that go test wrote.
func (t target) input(out []byte) string {
	m := written.FindSubmatch(out)
	if m == nil {
		return ""
	}
	text, err := os.ReadFile(filepath.Join(t.folder, string(m[1])))
	if err != nil {
		return err.Error()
	}
	return string(text)
}

// end is the last part of a long output.
func end(out []byte) string {
	const most = 6000
	if len(out) > most {
		out = append([]byte("...\n"), out[len(out)-most:]...)
	}
	return string(out)
}
