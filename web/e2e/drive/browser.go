// Package drive runs the built page in the system's Chromium, or for tests in its
// headless shell, the way a person would: real mouse and key events, and what can be
// read on the screen. It runs on the host only.
package drive

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// Patience is how long a test waits for the page before calling it broken: long
// enough for a machine that has much else to do. Nothing is asserted about speed
// here; make bench measures that.
const Patience = 2 * time.Minute

// Missing says in one sentence which tools the browser tests lack, or nothing.
func Missing() error {
	var gone []string
	if shell() == "" {
		gone = append(gone, "chromium-headless-shell")
	}
	if _, err := exec.LookPath("pdftotext"); err != nil {
		gone = append(gone, "poppler-utils")
	}
	if gone == nil {
		return nil
	}
	text := "the browser tests need the Debian packages"
	for _, name := range gone {
		text += " " + name
	}
	return errors.New(text + ": install them with apt-get install chromium-headless-shell poppler-utils")
}

func chromium() string { return first("chromium", "chromium-browser", "google-chrome") }

func shell() string { return first("chromium-headless-shell", "chrome-headless-shell") }

// first is the path of the first of these programs that is installed.
func first(names ...string) string {
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}

// Browser is one running Chromium.
type Browser struct {
	ctx  context.Context
	stop []context.CancelFunc
}

// Start runs Chromium as people have it, for what is measured.
func Start() (*Browser, error) {
	path := chromium()
	if path == "" {
		return nil, errors.New("chromium is missing: apt-get install chromium")
	}
	return start(path)
}

// StartShell runs Chromium's headless shell, for tests: the same engine without the
// browser's own windows around it. It compiles wasm in a hurry, since a page of a
// test is closed before better code pays. A start takes a third of the CPU time
// that it takes Chromium. If its pages are together, all hosts of this machine share
// one process for each profile: what one of them compiled the next one has, and when
// one is killed the others end with it.
func StartShell(together bool) (*Browser, error) {
	path := shell()
	if path == "" {
		return nil, Missing()
	}
	return start(path, chromedp.Flag("js-flags", "--wasm-tiering-budget=100000000"),
		chromedp.Flag("process-per-site", together))
}

// start runs a browser that can reach nothing but this machine: every other name
// resolves to nothing.
func start(path string, more ...chromedp.ExecAllocatorOption) (*Browser, error) {
	opts := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"),
		// Fonts of every size are drawn alike on every machine.
		chromedp.Flag("font-render-hinting", "none"),
	)
	alloc, stopAlloc := chromedp.NewExecAllocator(context.Background(), append(opts, more...)...)
	ctx, stop := chromedp.NewContext(alloc)
	b := &Browser{ctx: ctx, stop: []context.CancelFunc{stop, stopAlloc}}
	if err := chromedp.Do(ctx); err != nil {
		b.Close()
		return nil, fmt.Errorf("starting %s: %w", path, err)
	}
	return b, nil
}

// Close ends the browser and its tabs.
func (b *Browser) Close() {
	for _, stop := range b.stop {
		stop()
	}
}

// Screen is the size of a window in CSS pixels.
type Screen struct{ Width, Height int64 }

// Screens the page is looked at on.
var (
	Desk  = Screen{1400, 900}
	Phone = Screen{360, 740}
)

// counting notes what the page asks its worker and what came back, so that a
// test knows when all is answered. It changes nothing but the page's patience: a
// worker that is slow because the machine is busy must not be taken for dead.
const counting = `(() => {
	const wait = window.setTimeout;
	window.setTimeout = (what, ms, ...rest) => wait(what, ms >= 20000 ? 10 * ms : ms, ...rest);
	const seen = window.__drive = { asked: 0, answered: 0, launched: 0, ready: 0, more: false };
	const Plain = window.Worker;
	window.Worker = seen.Worker = class extends Plain {
		constructor(...all) {
			super(...all);
			const me = ++seen.launched;
			seen.worker = this;
			this.addEventListener("message", ({ data }) => {
				if (data.ready) seen.ready = me;
				if (data.id === undefined) return;
				seen.answered = data.id;
				seen.more = /"(partial|undecided)":true/.test(data.reply);
			});
		}
		postMessage(message, ...all) {
			if (message && message.request !== undefined) seen.asked = message.id;
			super.postMessage(message, ...all);
		}
	};
})()`

// Fresh opens a tab in a new, empty profile. The scripts run in every document
// before the page's own.
func (b *Browser) Fresh(screen Screen, scripts ...string) (*Tab, error) {
	return b.tab(screen, scripts, chromedp.WithNewBrowserContext())
}

// Shared opens a tab in the profile that all tabs opened so have in common. What a
// page keeps there is its host's own.
func (b *Browser) Shared(screen Screen, scripts ...string) (*Tab, error) {
	return b.tab(screen, scripts)
}

func (b *Browser) tab(screen Screen, scripts []string, options ...chromedp.ContextOption) (*Tab, error) {
	t := &Tab{}
	ctx, cancel := chromedp.NewContext(b.ctx, append(options, chromedp.WithListener(t.listen))...)
	t.ctx, t.cancel = ctx, cancel
	err := begin(ctx, screen)
	for _, s := range append([]string{counting}, scripts...) {
		if err == nil {
			_, err = chromedp.Call(ctx, page.AddScriptToEvaluateOnNewDocument,
				page.AddScriptToEvaluateOnNewDocumentParams{Source: s})
		}
	}
	if err != nil {
		t.Close()
		return nil, fmt.Errorf("opening a tab: %w", err)
	}
	return t, nil
}

// begin gives a tab its size and the focus, whatever other tabs do meanwhile.
func begin(ctx context.Context, screen Screen) error {
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(screen.Width, screen.Height)); err != nil {
		return err
	}
	_, err := chromedp.Call(ctx, emulation.SetFocusEmulationEnabled,
		emulation.SetFocusEmulationEnabledParams{Enabled: true})
	return err
}
