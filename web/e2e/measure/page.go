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
	pages := http.NewServeMux()
	pages.Handle("/", site.Handler(filepath.Join(dist, site.FolderForm)))
	pages.HandleFunc("/"+floor, echo)
	host := &http.Server{Handler: pages, ReadHeaderTimeout: 5 * time.Second}
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
	return pressTimes(b, folder, clicks)
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
