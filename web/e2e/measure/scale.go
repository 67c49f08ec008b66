package main

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"time"

	"boxwright/web/assets/catalogue/large"
	"boxwright/web/e2e/drive"
)

// largeSizes are how many options the catalogues have that large ones are measured with.
var largeSizes = []int{2000, 5000, 10000}

// since times something from its start to the picture of what it is to show: act is
// run, and the picture after the first answer with which seen holds ends it. Parts that
// come later do not count.
const since = `window.__since = (act, seen) => new Promise((done) => {
	const from = performance.now(), asked = __drive.asked;
	const look = () => {
		if (__drive.answered <= asked || !seen()) return requestAnimationFrame(look);
		const c = new MessageChannel();
		c.port1.onmessage = () => done(performance.now() - from);
		requestAnimationFrame(() => c.port2.postMessage(0));
	};
	act();
	look();
})`

// searched are the words that a large catalogue is searched for, letter by letter.
var searched = []string{"l", "li", "lig", "light", "s", "st", "ste", "steel", "b", "ba", "bat", "battery"}

// largeTimes prints what catalogues of many options take in the page.
func largeTimes(b *drive.Browser, address string, presses int) error {
	for _, n := range largeSizes {
		if err := largeTime(b, address, n, presses); err != nil {
			return fmt.Errorf("a catalogue of %d options: %w", n, err)
		}
	}
	return nil
}

func largeTime(b *drive.Browser, address string, options, presses int) error {
	file, err := large.File(options, 1)
	if err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "boxwright-large-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	name := filepath.Join(dir, "large.json")
	if err := os.WriteFile(name, file, 0o600); err != nil {
		return err
	}
	l := &largePage{prefix: fmt.Sprintf("large_%d_", options)}
	load := func() error { return l.load(name, options) }
	for _, steps := range [][]func() error{
		{load, func() error { return l.presses(presses) }, l.search, l.fill},
		{load, l.lint}, // as who keeps a catalogue does, in a page of its own
	} {
		if l.tab, err = b.Fresh(drive.Desk, timing, since); err != nil {
			return err
		}
		if err := l.through(address, steps); err != nil {
			return err
		}
	}
	return nil
}

// through opens the page, takes the steps and closes it.
func (l *largePage) through(address string, steps []func() error) error {
	defer l.tab.Close()
	if err := l.tab.Open(address); err != nil {
		return err
	}
	for _, step := range steps {
		if err := step(); err != nil {
			return err
		}
	}
	return nil
}

// largePage is a page with a large catalogue.
type largePage struct {
	tab    *drive.Tab
	prefix string
}

func (l *largePage) say(name string, ms float64) { say(l.prefix+name, ms, "ms") }

// load times a catalogue file from its choice to the picture of the page with it.
func (l *largePage) load(file string, options int) error {
	if err := l.tab.Click("#area-catalogue"); err != nil {
		return err
	}
	_, err := drive.Eval[bool](l.tab, fmt.Sprintf(`(() => {
		const field = document.getElementById("f-catalogue");
		field.addEventListener("change", () => {
			window.__loaded = __since(() => {}, () => document.getElementById("main").textContent.includes("%d options"));
		}, { capture: true, once: true });
		return true;
	})()`, options))
	if err != nil {
		return err
	}
	if err := l.tab.Choose("#f-catalogue", file); err != nil {
		return err
	}
	if err := l.tab.Until(`window.__loaded`); err != nil {
		return err
	}
	ms, err := drive.Eval[float64](l.tab, `window.__loaded`)
	if err != nil {
		return err
	}
	l.say("load_ms", ms)
	return l.tab.Settle()
}

// presses times varied presses, as those with the demonstration are.
func (l *largePage) presses(n int) error {
	for _, first := range []string{"#area-start", "#begin-cut-14500-158-gas", "#area-unit", "#chapter-exterior"} {
		if err := l.tab.Click(first); err != nil {
			return err
		}
	}
	s := &session{tab: l.tab, seed: 1, times: map[string][]float64{}}
	if err := s.press(n); err != nil {
		return err
	}
	l.say("press_ms_p50", at(s.all, 0.5))
	l.say("press_ms_p95", at(s.all, 0.95))
	for _, kind := range slices.Sorted(maps.Keys(s.times)) {
		l.say("press_"+kind+"_ms_p50", at(s.times[kind], 0.5))
		l.say("press_"+kind+"_ms_p95", at(s.times[kind], 0.95))
		say(l.prefix+"presses_"+kind, float64(len(s.times[kind])), "presses")
	}
	if err := s.parts(n/2, l.prefix+"press_"); err != nil {
		return err
	}
	return l.tab.Click("#area-unit")
}

// search times a search from each letter typed to its picture.
func (l *largePage) search() error {
	var all []float64
	for _, words := range searched {
		if err := l.tab.Settle(); err != nil {
			return err
		}
		ms, err := drive.Eval[float64](l.tab, fmt.Sprintf(`__since(() => {
			const field = document.getElementById("f-search");
			field.focus();
			field.value = %[1]s;
			field.dispatchEvent(new Event("input", { bubbles: true }));
		}, () => document.getElementById("main").textContent.includes("“" + %[1]s + "”"))`, drive.Quote(words)))
		if err != nil {
			return err
		}
		all = append(all, ms)
	}
	l.say("search_ms_p50", at(all, 0.5))
	l.say("search_ms_worst", at(all, 1))
	return nil
}

// fill times filling the rest in each of the ways the page offers, up to the first picture
// of it.
func (l *largePage) fill() error {
	for _, aim := range []string{"cheapest", "lightest", "soonest"} {
		if err := l.tab.Settle(); err != nil {
			return err
		}
		ms, err := drive.Eval[float64](l.tab, fmt.Sprintf(
			`__since(() => document.getElementById("complete-%s").click(), () => true)`, aim))
		if err != nil {
			return err
		}
		l.say("fill_"+aim+"_ms", ms)
	}
	return l.tab.Settle()
}

// lintPatience is how long going through a catalogue may take.
const lintPatience = 10 * time.Minute

// lint times going through the catalogue's rules, to the picture of what was found.
func (l *largePage) lint() error {
	for _, press := range []string{"#area-catalogue"} {
		if err := l.tab.Click(press); err != nil {
			return err
		}
	}
	_, err := drive.Eval[bool](l.tab, `(() => {
		window.__linted = 0;
		__since(() => document.getElementById("lint-now").click(), () => !!document.getElementById("lint-now"))
			.then((ms) => { window.__linted = ms; });
		return true;
	})()`)
	if err != nil {
		return err
	}
	for began := time.Now(); time.Since(began) < lintPatience; {
		if err := pause(l.tab, 200*time.Millisecond); err != nil {
			return err
		}
		ms, err := drive.Eval[float64](l.tab, `window.__linted`)
		if err != nil {
			return err
		}
		if ms > 0 {
			l.say("lint_ms", ms)
			return nil
		}
	}
	return fmt.Errorf("going through the rules took more than %s", lintPatience)
}
