package main

import (
	"fmt"
	"time"

	"boxwright/web/e2e/drive"
)

// starts is how often each way of starting is timed; the middle one is told.
const starts = 5

// slowed is how many times slower the page's own thread is made for the figures
// named slow. The browser cannot slow a worker, so the core runs at full speed.
const slowed = 4

// installed tells that the service worker keeps everything for the next start.
const installed = `navigator.serviceWorker.getRegistration().then((r) => !!(r && r.active))`

// compiled is how long the browser takes at most to put by what it compiled.
const compiled = 6 * time.Second

// moments notes what happens in a start, in ms since the navigation began: when
// the core is there, when its first answer can be seen, and, where that is asked
// for, when a press made at the first picture is answered and when the cover of a
// link can be read. What can be seen is noted after the picture.
const moments = `(() => {
	const at = window.__at = { ready: 0, answer: 0, press: 0, cover: 0 };
	const seen = (name) => requestAnimationFrame(() => {
		const c = new MessageChannel();
		c.port1.onmessage = () => { at[name] ||= performance.now(); };
		c.port2.postMessage(0);
	});
	const Plain = window.Worker;
	window.Worker = class extends Plain {
		constructor(...all) {
			super(...all);
			this.addEventListener("message", ({ data }) => { if (data.ready) at.ready ||= performance.now(); });
		}
	};
	let pressed = null;
	new MutationObserver(() => {
		if (!at.answer && __drive.answered > 0) seen("answer");
		if (!at.cover && document.getElementById("cover-price")?.textContent) seen("cover");
		if (!at.press && pressed && document.getElementById(pressed)?.ariaCurrent === "page") seen("press");
	}).observe(document, { childList: true, subtree: true, attributes: true, characterData: true });
	const press = () => {
		const to = document.querySelector("#areas button:not([aria-current])");
		if (!to || !to.checkVisibility()) return requestAnimationFrame(press);
		pressed = to.id;
		to.click();
	};
	new PerformanceObserver((list) => {
		if (window.__press && list.getEntriesByName("first-contentful-paint").length) press();
	}).observe({ type: "paint", buffered: true });
})()`

// pressing has moments press at the first picture.
const pressing = `window.__press = true`

// visit is one way of starting.
type visit struct {
	name     string   // heads its figures
	fragment string   // of the address
	scripts  []string // that run before the page's own
	figures  []string // what is told of it
	slow     float64  // how many times the page's thread is slowed; 0 for not at all
}

// paint is the figure of the first picture with content.
const paint = "paint"

// startTimes times the first start in an empty profile, and the third in the same:
// the browser keeps what it compiled in the second. The single file has nothing to
// keep, so there the second start is as good as the third.
func startTimes(b *drive.Browser, folder, single string) error {
	if err := firstPaintFloor(b, folder+floor); err != nil {
		return err
	}
	link, err := linkOf(b, folder)
	if err != nil {
		return err
	}
	visits := []visit{
		{"start", "", nil, []string{paint, "ready", "answer"}, 0},
		{"press", "", []string{pressing}, []string{"press"}, 0},
		{"link", link, nil, []string{"cover", "answer"}, 0},
		{"slow_start", "", nil, []string{paint, "answer"}, slowed},
		{"slow_press", "", []string{pressing}, []string{"press"}, slowed},
		{"slow_link", link, nil, []string{"cover", "answer"}, slowed},
	}
	for _, v := range visits {
		if err := v.times(b, folder, "cold", "warm", 3, installed); err != nil {
			return fmt.Errorf("%s: %w", v.name, err)
		}
	}
	for _, v := range visits {
		if err := v.times(b, single, "single_file", "single_file_again", 2, "true"); err != nil {
			return fmt.Errorf("%s of the single file: %w", v.name, err)
		}
	}
	return nil
}

// firstPaintFloor tells when the empty page shows its first picture in an empty
// profile, and when it is opened again: what the browser needs for any page.
func firstPaintFloor(b *drive.Browser, address string) error {
	times := map[string][]float64{}
	for range starts {
		tab, err := b.Fresh(drive.Desk)
		if err != nil {
			return err
		}
		for _, when := range []string{"cold", "warm"} {
			if err := tab.Visit(address); err != nil {
				return err
			}
			const painted = `performance.getEntriesByName("first-contentful-paint")[0]?.startTime`
			if err := tab.Until(painted + ` > 0`); err != nil {
				return err
			}
			ms, err := drive.Eval[float64](tab, painted)
			if err != nil {
				return err
			}
			times[when] = append(times[when], ms)
			if err := tab.Visit("about:blank"); err != nil {
				return err
			}
		}
		tab.Close()
	}
	for _, when := range []string{"cold", "warm"} {
		say(when+"_start_floor_"+paint+"_ms", at(times[when], 0.5), "ms")
	}
	return nil
}

// times starts often enough and tells the middle figures of the first and the
// last start in a profile.
func (v visit) times(b *drive.Browser, address, first, last string, visits int, kept string) error {
	times := map[string][]float64{}
	for range starts {
		tab, err := b.Fresh(drive.Desk, append(v.scripts, moments)...)
		if err != nil {
			return err
		}
		for n := range visits {
			when := map[int]string{0: first, visits - 1: last}[n]
			got, err := v.once(tab, address)
			if err != nil {
				return err
			}
			for figure, ms := range got {
				times[when+figure] = append(times[when+figure], ms)
			}
			if n == visits-1 {
				break
			}
			if err := tab.Until(`Promise.resolve(` + kept +
				`).then((is) => window.__kept = is) && window.__kept`); err != nil {
				return err
			}
			if kept == installed {
				if err := pause(tab, compiled); err != nil {
					return err
				}
			}
			if err := tab.Visit("about:blank"); err != nil {
				return err
			}
		}
		tab.Close()
	}
	for _, when := range []string{first, last} {
		for _, figure := range v.figures {
			say(fmt.Sprintf("%s_%s_%s_ms", when, v.name, figure), at(times[when+figure], 0.5), "ms")
		}
	}
	return nil
}

// once starts the page and gives its figures.
func (v visit) once(tab *drive.Tab, address string) (map[string]float64, error) {
	if err := tab.Slow(max(v.slow, 1)); err != nil {
		return nil, err
	}
	if err := tab.Open(address + v.fragment); err != nil {
		return nil, err
	}
	for _, figure := range v.figures {
		if figure != paint {
			if err := tab.Until(`window.__at.` + figure + ` > 0`); err != nil {
				return nil, err
			}
		}
	}
	if err := tab.Slow(1); err != nil {
		return nil, err
	}
	return drive.Eval[map[string]float64](tab,
		`({ ...window.__at, paint: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? 0 })`)
}

// linkOf is the fragment of a quote's link.
func linkOf(b *drive.Browser, address string) (string, error) {
	tab, err := b.Fresh(drive.Desk)
	if err != nil {
		return "", err
	}
	defer tab.Close()
	if err := tab.Open(address); err != nil {
		return "", err
	}
	for _, press := range []string{"#begin-cut-14500-158-4x4", "#area-quote"} {
		if err := tab.Click(press); err != nil {
			return "", err
		}
	}
	return drive.Eval[string](tab, `document.getElementById("link-text").value.replace(/^[^#]*/, "")`)
}
