package main

import (
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"time"

	"boxwright/web/e2e/drive"
	"boxwright/web/pack/site"
)

// starts is how often each way of starting is timed; the middle one is told.
const starts = 7

// page prints the sizes of what is shipped, and times the page in Chromium: its
// starts too, or clicks only.
func page(root string, clicks int, starts bool) error {
	parts, err := site.Gather(root)
	if err != nil {
		return err
	}
	dist, err := os.MkdirTemp("", "boxwright-measure-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dist)
	if err := parts.Write(dist); err != nil {
		return err
	}
	if err := sizes(parts, dist); err != nil {
		return err
	}

	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	host := &http.Server{Handler: site.Handler(filepath.Join(dist, site.FolderForm)), ReadHeaderTimeout: 5 * time.Second}
	go host.Serve(l) //nolint:errcheck // it ends with the program
	defer host.Close()
	b, err := drive.Start()
	if err != nil {
		return err
	}
	defer b.Close()
	folder := "http://" + l.Addr().String() + "/"
	if starts {
		if err := startTimes(b, folder, installed, "cold_start_ms", "warm_start_ms"); err != nil {
			return err
		}
		if err := startTimes(b, "file://"+filepath.Join(dist, site.SingleForm), "true", "single_file_start_ms", "single_file_again_ms"); err != nil {
			return err
		}
	}
	return clickTimes(b, folder, clicks)
}

func sizes(parts *site.Parts, dist string) error {
	total, packed, err := parts.Size()
	if err != nil {
		return err
	}
	single, err := os.Stat(filepath.Join(dist, site.SingleForm))
	if err != nil {
		return err
	}
	say("wasm_raw_bytes", float64(len(parts.Core)), "bytes")
	say("wasm_shipped_bytes", float64(packed), "bytes")
	say("total_shipped_bytes", float64(total), "bytes")
	say("single_file_bytes", float64(single.Size()), "bytes")
	return nil
}

// started notes when the page is first drawn by the core and can be used, in ms
// since the navigation began: the picture after the areas came in.
const started = `(() => {
	window.__started = 0;
	new MutationObserver((_, me) => {
		if (!document.querySelector("#areas li")) return;
		me.disconnect();
		requestAnimationFrame(() => { const c = new MessageChannel(); c.port1.onmessage = () => { window.__started = performance.now(); }; c.port2.postMessage(0); });
	}).observe(document, { childList: true, subtree: true });
})()`

// installed tells that the service worker keeps everything for the next start.
const installed = `navigator.serviceWorker.getRegistration().then((r) => !!(r && r.active))`

// compiled is how long the browser takes at most to put by what it compiled.
const compiled = 6 * time.Second

// pause lets the page be for a while.
func pause(tab *drive.Tab, d time.Duration) error {
	_, err := drive.Eval[bool](tab, fmt.Sprintf(`new Promise((r) => setTimeout(() => r(true), %d))`, d.Milliseconds()))
	return err
}

// startTimes times the first start in an empty profile and, once the page is
// ready for it, the third in the same: the browser keeps what it compiled in the
// second.
func startTimes(b *drive.Browser, address, ready, first, again string) error {
	var cold, second, warm []float64
	for range starts {
		tab, err := b.Fresh(drive.Desk, started)
		if err != nil {
			return err
		}
		for _, into := range []*[]float64{&cold, &second, &warm} {
			if err := tab.Open(address); err != nil {
				return err
			}
			if err := tab.Until(`window.__started > 0`); err != nil {
				return err
			}
			ms, err := drive.Eval[float64](tab, `window.__started`)
			if err != nil {
				return err
			}
			*into = append(*into, ms)
			if err := tab.Until(`Promise.resolve(` + ready + `).then((is) => window.__ready = is) && window.__ready`); err != nil {
				return err
			}
			if err := pause(tab, compiled); err != nil {
				return err
			}
		}
		tab.Close()
	}
	say(first, at(cold, 0.5), "ms")
	say(again, at(warm, 0.5), "ms")
	return nil
}

// timing notes for each click the time from the input event to the picture after
// the core's answer was put into the page.
const timing = `(() => {
	const clicks = window.__clicks = [];
	let from = null, asked = 0;
	addEventListener("click", (e) => { from = e.timeStamp; asked = __drive.asked; }, true);
	new MutationObserver(() => {
		if (from === null || __drive.answered <= asked) return;
		const began = from;
		from = null;
		requestAnimationFrame(() => { const c = new MessageChannel(); c.port1.onmessage = () => { clicks.push(performance.now() - began); }; c.port2.postMessage(0); });
	}).observe(document, { childList: true, subtree: true, attributes: true, characterData: true });
})()`

// next names something that can be clicked, by a fixed sequence of numbers: most
// often an option, else a chapter, an area, a question or the last step undone.
const next = `((n) => {
	const all = (q) => [...document.querySelectorAll(q)].filter((e) => e.offsetParent !== null);
	const one = (list) => list.length ? list[n % list.length] : null;
	const options = all('#main input[data-act="pick"]').filter((e) => e.getAttribute("aria-disabled") !== "true" && !(e.type === "radio" && e.checked));
	const chapters = all('button[data-act="chapter"]').filter((e) => !e.ariaCurrent);
	const areas = all("#areas button").filter((e) => e.ariaCurrent !== "page");
	const why = all('#main [data-act="why"]'), ways = all('#main .why button');
	const kind = (n >> 8) % 20;
	const here = !!document.querySelector('button[data-act="chapter"]');
	if (!here) return ["area", document.getElementById("area-unit")];
	if (ways.length) return ["way", one(ways)];
	if (kind < 12 && options.length) return ["pick", one(options)];
	if (kind < 15) return ["chapter", one(chapters)];
	if (kind < 17 && why.length) return ["why", one(why)];
	return ["area", one(areas)];
})`

// clickTimes makes varied clicks, each a quarter of a second after the picture
// that the one before it gave.
func clickTimes(b *drive.Browser, address string, clicks int) error {
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
	times := map[string][]float64{}
	var all []float64
	seed := uint32(1)
	for i := range clicks {
		seed = seed*1664525 + 1013904223
		got, err := drive.Eval[[]string](tab, fmt.Sprintf(`(() => {
			document.querySelectorAll("[data-measured]").forEach((e) => e.removeAttribute("data-measured"));
			const [kind, el] = %s(%d);
			if (el) el.setAttribute("data-measured", "");
			return [kind, el ? el.id || el.dataset.act : ""];
		})()`, next, seed>>1))
		if err != nil {
			return err
		}
		kind, what := got[0], got[1]
		if err := pause(tab, 250*time.Millisecond); err != nil {
			return err
		}
		before, err := drive.Eval[int](tab, `window.__clicks.length`)
		if err != nil {
			return err
		}
		if err := tab.Click("[data-measured]"); err != nil {
			return fmt.Errorf("click %d on %s %s: %w", i, kind, what, err)
		}
		if err := tab.Until(fmt.Sprintf(`window.__clicks.length > %d`, before)); err != nil {
			return fmt.Errorf("click %d on %s %s changed nothing: %w", i, kind, what, err)
		}
		ms, err := drive.Eval[float64](tab, `window.__clicks.at(-1)`)
		if err != nil {
			return err
		}
		times[kind] = append(times[kind], ms)
		all = append(all, ms)
	}
	say("clicks", float64(len(all)), "clicks")
	say("click_ms_p50", at(all, 0.5), "ms")
	say("click_ms_p95", at(all, 0.95), "ms")
	say("click_ms_p99", at(all, 0.99), "ms")
	say("click_ms_worst", at(all, 1), "ms")
	for _, kind := range []string{"pick", "chapter", "area", "why", "way"} {
		if list := times[kind]; len(list) > 0 {
			say("click_"+kind+"_ms_p50", at(list, 0.5), "ms")
			say("click_"+kind+"_ms_p95", at(list, 0.95), "ms")
		}
	}
	return nil
}
