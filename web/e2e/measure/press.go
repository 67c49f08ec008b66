package main

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"net/http"
	"slices"
	"time"

	"boxwright/web/e2e/drive"
)

// A press waits for frames whatever the page does with it. An empty page whose
// worker only echoes, pressed and timed in the same way, gives that floor. What is
// above it is the page's own, and is told part by part from a trace of some more
// presses: tracing itself takes time, so those are not told as a whole.

// floor is where the empty page stands.
const floor = "measure-floor"

// timing notes for each click the time from the input event to the picture after
// the core's answer was put into the page, and marks both for a trace.
const timing = `(() => {
	const clicks = window.__clicks = [];
	let from = null, asked = 0;
	addEventListener("click", (e) => { from = e.timeStamp; asked = __drive.asked; performance.mark("press"); }, true);
	new MutationObserver(() => {
		if (from === null || __drive.answered <= asked) return;
		const began = from;
		from = null;
		requestAnimationFrame(() => { const c = new MessageChannel(); c.port1.onmessage = () => { clicks.push(performance.now() - began); performance.mark("picture"); }; c.port2.postMessage(0); });
	}).observe(document, { childList: true, subtree: true, attributes: true, characterData: true });
})()`

// echo serves the empty page.
func echo(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	io.WriteString(w, `<!doctype html><title>Floor</title><button data-measured>0</button><script>
		const echo = "postMessage({ ready: true }); onmessage = ({ data }) => postMessage({ id: data.id, reply: data.request });";
		const worker = new Worker(URL.createObjectURL(new Blob([echo], { type: "text/javascript" })));
		const button = document.querySelector("button");
		let id = 0;
		button.onclick = () => worker.postMessage({ id: ++id, request: String(id) });
		worker.onmessage = ({ data }) => { if (data.id) button.textContent = data.reply; };
	</script>`) //nolint:errcheck // the browser says what it misses
}

// next names something that can be clicked, by a fixed sequence of numbers: most
// often an option, else a group that is one line, a chapter, an area or a question.
const next = `((n) => {
	const all = (q) => [...document.querySelectorAll(q)].filter((e) => e.offsetParent !== null);
	const one = (list) => list.length ? list[n % list.length] : null;
	const refused = (e) => document.getElementById("ask-" + e.dataset.id); // or needed by the choices
	const options = all('#main input[data-act="pick"]').filter((e) => !refused(e) && !(e.type === "radio" && e.checked));
	const chapters = all('button[data-act="chapter"]').filter((e) => !e.ariaCurrent);
	const groups = all('button[data-act="group"][aria-expanded="false"]');
	const areas = all("#areas button").filter((e) => e.ariaCurrent !== "page");
	const why = all('#main [data-act="why"]'), ways = all('#main .why button');
	const kind = (n >> 8) % 20;
	const here = !!document.querySelector('button[data-act="chapter"]');
	if (!here) return ["area", document.getElementById("area-unit")];
	if (ways.length) return ["way", one(ways)];
	if (groups.length && (kind === 11 || kind < 12 && !options.length)) return ["group", one(groups)];
	if (kind < 12 && options.length) return ["pick", one(options)];
	if (kind < 15) return ["chapter", one(chapters)];
	if (kind < 17 && why.length) return ["why", one(why)];
	return ["area", one(areas)];
})`

// pressTimes prints how long presses take to the picture, on the empty page and on
// ours, and what they take of it.
func pressTimes(b *drive.Browser, address string, presses int) error {
	least, err := floorTimes(b, address+floor, presses/2)
	if err != nil {
		return err
	}
	tab, err := b.Fresh(drive.Desk, timing)
	if err != nil {
		return err
	}
	defer tab.Close()
	if err := tab.Open(address); err != nil {
		return err
	}
	for _, first := range []string{"#begin-cut-14500-158-gas", "#area-unit", "#chapter-exterior"} {
		if err := tab.Click(first); err != nil {
			return err
		}
	}
	s := &session{tab: tab, seed: 1, times: map[string][]float64{}}
	if err := s.press(presses); err != nil {
		return err
	}
	all := s.all
	for _, q := range shares {
		if q.at < 0.99 {
			say("press_floor_ms_"+q.name, at(least, q.at), "ms")
		}
	}
	say("presses", float64(len(all)), "presses")
	for _, q := range shares {
		say("press_ms_"+q.name, at(all, q.at), "ms")
		say("press_over_floor_ms_"+q.name, at(all, q.at)-at(least, min(q.at, 0.95)), "ms")
	}
	say("press_ms_worst", at(all, 1), "ms")
	for _, kind := range []string{"pick", "chapter", "area", "why", "way"} {
		if list := s.times[kind]; len(list) > 0 {
			say("press_"+kind+"_ms_p50", at(list, 0.5), "ms")
			say("press_"+kind+"_ms_p95", at(list, 0.95), "ms")
		}
	}
	return s.parts(presses/2, "press_")
}

// parts prints what some more presses take part by part, from a trace.
func (s *session) parts(presses int, prefix string) error {
	stop, err := s.tab.Trace("devtools.timeline", "blink.user_timing", "__metadata")
	if err != nil {
		return err
	}
	if err := s.press(presses); err != nil {
		return err
	}
	events, err := stop()
	if err != nil {
		return err
	}
	return tellParts(events, prefix)
}

// shares are the quantiles that are told.
var shares = []struct {
	name string
	at   float64
}{{"p50", 0.5}, {"p95", 0.95}, {"p99", 0.99}}

func floorTimes(b *drive.Browser, address string, presses int) ([]float64, error) {
	tab, err := b.Fresh(drive.Desk, timing)
	if err != nil {
		return nil, err
	}
	defer tab.Close()
	if err := tab.Visit(address); err != nil {
		return nil, err
	}
	var all []float64
	for range presses {
		ms, err := pressed(tab)
		if err != nil {
			return nil, err
		}
		all = append(all, ms)
	}
	return all, nil
}

// pressed presses what is marked, a quarter of a second after the picture before.
func pressed(tab *drive.Tab) (ms float64, err error) {
	if err := pause(tab, 250*time.Millisecond); err != nil {
		return 0, err
	}
	before, err := drive.Eval[int](tab, `window.__clicks.length`)
	if err != nil {
		return 0, err
	}
	if err := tab.Click("[data-measured]"); err != nil {
		return 0, err
	}
	if err := tab.Until(fmt.Sprintf(`window.__clicks.length > %d`, before)); err != nil {
		return 0, fmt.Errorf("the press changed nothing: %w", err)
	}
	return drive.Eval[float64](tab, `window.__clicks.at(-1)`)
}

// session is a row of varied presses.
type session struct {
	tab   *drive.Tab
	seed  uint32
	times map[string][]float64 // by what was pressed
	all   []float64
}

func (s *session) press(presses int) error {
	for i := range presses {
		s.seed = s.seed*1664525 + 1013904223
		got, err := drive.Eval[[]string](s.tab, fmt.Sprintf(`(() => {
			document.querySelectorAll("[data-measured]").forEach((e) => e.removeAttribute("data-measured"));
			const [kind, el] = %s(%d);
			if (el) el.setAttribute("data-measured", "");
			return [kind, el ? el.id || el.dataset.act : ""];
		})()`, next, s.seed>>1))
		if err != nil {
			return err
		}
		ms, err := pressed(s.tab)
		if err != nil {
			return fmt.Errorf("press %d on %s %s: %w", i, got[0], got[1], err)
		}
		s.times[got[0]] = append(s.times[got[0]], ms)
		s.all = append(s.all, ms)
	}
	return nil
}

// parts of a press by the names that a trace gives to what the browser does. Morph
// is all of the page's script, which takes in the reply and morphs; paint is all that
// follows layout on the page's own thread; tiles are drawn on others.
var parts = map[string]string{
	"UpdateLayoutTree": "style_layout", "Layout": "style_layout",
	"PrePaint": "paint", "Paint": "paint", "Layerize": "paint", "UpdateLayer": "paint", "Commit": "paint",
	"FunctionCall": "morph", "RunMicrotasks": "morph", "EvaluateScript": "morph",
}

// thread is where something was done.
type thread struct{ process, number int }

func threadOf(e drive.Event) thread { return thread{e.Pid, e.Tid} }

// tellParts prints what presses took between press and picture: of the worker, and
// of the page's script, style and layout, and painting. What the worker does after
// the picture is the second part of an answer.
func tellParts(events []drive.Event, prefix string) error {
	slices.SortStableFunc(events, func(a, b drive.Event) int {
		return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(b.Took, a.Took))
	})
	var presses, pictures []drive.Event
	for _, e := range events {
		switch {
		case e.Name == "press" && e.Took == 0:
			presses = append(presses, e)
		case e.Name == "picture" && e.Took == 0:
			pictures = append(pictures, e)
		}
	}
	if len(presses) == 0 || len(presses) != len(pictures) {
		return fmt.Errorf("the trace tells of %d presses and %d pictures", len(presses), len(pictures))
	}
	times := map[string][]float64{}
	for i, press := range presses {
		next := math.Inf(1)
		if i+1 < len(presses) {
			next = presses[i+1].From
		}
		took := partsOf(events, threadOf(press), press.From, pictures[i].From, next)
		took["morph_style_layout_paint"] = took["morph"] + took["style_layout"] + took["paint"]
		for part, us := range took {
			times[part] = append(times[part], us/1000)
		}
	}
	for _, part := range []string{"worker_first", "worker_second", "morph", "style_layout", "paint",
		"morph_style_layout_paint"} {
		if list := times[part]; len(list) > 0 {
			say(prefix+part+"_ms_p50", at(list, 0.5), "ms")
			say(prefix+part+"_ms_p95", at(list, 0.95), "ms")
		}
	}
	return nil
}

// partsOf sums up, in microseconds, what was done from a press to its picture, and
// by the worker until the next press.
func partsOf(events []drive.Event, page thread, press, picture, next float64) map[string]float64 {
	type open struct {
		part  string
		until float64
	}
	took := map[string]float64{}
	inside := map[thread][]open{}
	for _, e := range events {
		part, on := parts[e.Name], threadOf(e)
		if part == "" || e.Took == 0 || e.From < press || e.From >= next {
			continue
		}
		if on != page && part == "morph" {
			part = "worker_first"
			if e.From >= picture {
				part = "worker_second"
			}
		} else if e.From >= picture || on != page {
			continue
		}
		// What is done inside something else is no time of that.
		stack := inside[on]
		for len(stack) > 0 && stack[len(stack)-1].until <= e.From {
			stack = stack[:len(stack)-1]
		}
		if len(stack) > 0 {
			took[stack[len(stack)-1].part] -= e.Took
		}
		took[part] += e.Took
		inside[on] = append(stack, open{part, e.From + e.Took})
	}
	return took
}
