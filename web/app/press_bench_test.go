package app

import (
	"encoding/json"
	command "flag"
	"fmt"
	"regexp"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

var benchReport = command.Bool("bench-report", false, "print measured figures, one 'name value unit' a line")

// presser presses what the page shows, as the measurement in the browser does: most
// often an option, else a chapter, an area, a question, or a way out that is offered.
type presser struct {
	app  *App
	req  map[string]any
	html string
	seed uint32
}

// timing is how long the two parts of one answer took.
type timing struct {
	kind          string
	first, second time.Duration
}

var (
	pickable  = regexp.MustCompile(`<input type="(radio|checkbox)" id="o-[^"]*" name="[^"]*" data-act="pick" data-id="([^"]*)"[^>]*>`)
	buttons   = regexp.MustCompile(`<button type="button" data-act="([a-z]+)" data-id="([^"]*)"(?: data-value="([^"]*)")?[^>]*>`)
	waysShown = regexp.MustCompile(`<div class="why".*?</div>`)
)

func newPresser() *presser {
	p := &presser{app: New(), seed: 1,
		req: map[string]any{"v": 1, "today": "2026-11-25", "base": "https://quotes.example/", "kept": true}}
	for _, a := range []Act{{Do: "start"}, {Do: "new", ID: "cut-14500-158-gas"}, {Do: "go", ID: "unit"},
		{Do: "chapter", ID: "exterior"}} {
		p.ask(a)
	}
	return p
}

// ask sends one act and keeps the state of the reply.
func (p *presser) ask(a Act) (partial bool, took time.Duration) {
	p.req["acts"] = []Act{a}
	data, err := json.Marshal(p.req)
	if err != nil {
		panic(err)
	}
	from := time.Now()
	reply := p.app.Handle(data)
	took = time.Since(from)
	var s struct {
		Draft, View, Pins json.RawMessage
		Regions           map[string][]string
		Partial           bool
	}
	if err := json.Unmarshal(reply, &s); err != nil || s.Regions == nil {
		panic(fmt.Sprint(a, " gave ", string(reply)))
	}
	p.req["draft"], p.req["view"], p.req["pins"] = s.Draft, s.View, s.Pins
	p.html = strings.Join(s.Regions["main"], "")
	return s.Partial, took
}

// next is the press that comes next.
func (p *presser) next() (kind string, a Act) {
	p.seed = p.seed*1664525 + 1013904223
	n := int(p.seed >> 1)
	var options, chapters, groups, why, ways []Act
	for _, m := range pickable.FindAllStringSubmatch(p.html, -1) {
		checked := strings.Contains(m[0], " checked")
		if !strings.Contains(p.html, `id="ask-`+m[2]+`"`) && !(checked && m[1] == "radio") {
			options = append(options, Act{Do: "pick", ID: m[2], Value: "1", On: !checked})
		}
	}
	for _, m := range buttons.FindAllStringSubmatch(p.html, -1) {
		switch m[1] {
		case "chapter":
			if !strings.Contains(m[0], "aria-current") {
				chapters = append(chapters, Act{Do: m[1], ID: m[2]})
			}
		case "group":
			if strings.Contains(m[0], `aria-expanded="false"`) {
				groups = append(groups, Act{Do: m[1], ID: m[2]})
			}
		case "why":
			why = append(why, Act{Do: m[1], ID: m[2]})
		}
	}
	for _, m := range buttons.FindAllStringSubmatch(strings.Join(waysShown.FindAllString(p.html, -1), ""), -1) {
		ways = append(ways, Act{Do: m[1], ID: m[2], Value: m[3]})
	}
	areas := []string{"needs", "weight", "power", "space", "delivery", "price", "compare", "quote"}
	switch k := (n >> 8) % 20; {
	case chapters == nil:
		return "area", Act{Do: "go", ID: "unit"}
	case ways != nil:
		return "way", ways[n%len(ways)]
	case groups != nil && (k == 11 || k < 12 && options == nil):
		return "group", groups[n%len(groups)]
	case k < 12 && options != nil:
		return "pick", options[n%len(options)]
	case k < 15:
		return "chapter", chapters[n%len(chapters)]
	case k < 17 && why != nil:
		return "why", why[n%len(why)]
	}
	return "area", Act{Do: "go", ID: areas[n%len(areas)]}
}

// press makes the next press and times both parts of its answer.
func (p *presser) press() timing {
	t := timing{}
	var a Act
	t.kind, a = p.next()
	partial, took := p.ask(a)
	if t.first = took; partial {
		_, t.second = p.ask(Act{Do: "rest"})
	}
	return t
}

// BenchmarkPress is one press of a varied session, with both parts of its answer.
func BenchmarkPress(b *testing.B) {
	p := newPresser()
	for b.Loop() {
		p.press()
	}
}

// collectAsInPage has garbage collected by the limits that package wasm sets.
func collectAsInPage(t *testing.T) {
	growth, most := debug.SetGCPercent(400), debug.SetMemoryLimit(2<<30)
	t.Cleanup(func() {
		debug.SetGCPercent(growth)
		debug.SetMemoryLimit(most)
	})
}

// TestBenchReport prints how long the core takes for the two parts of an answer.
func TestBenchReport(t *testing.T) {
	if !*benchReport {
		t.Skip("measures only with -bench-report")
	}
	collectAsInPage(t)
	p := newPresser()
	for range 100 { // in wasm, until the engine has optimized the code
		p.press()
	}
	times := map[string][]float64{}
	for range 400 {
		x := p.press()
		times["first"] = append(times["first"], x.first.Seconds()*1000)
		times["first_"+x.kind] = append(times["first_"+x.kind], x.first.Seconds()*1000)
		if x.second > 0 {
			times["second"] = append(times["second"], x.second.Seconds()*1000)
		}
	}
	require.NotEmpty(t, times["first"])
	for name, ms := range times {
		slices.Sort(ms)
		for _, q := range []struct {
			name string
			at   float64
		}{{"p50", .5}, {"p95", .95}, {"p99", .99}} {
			fmt.Printf("press_core_%s_ms_%s %.2f ms\n", name, q.name, ms[int(q.at*float64(len(ms)-1))])
		}
	}
}
