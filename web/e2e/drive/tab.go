package drive

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"sync"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/cdproto/tracing"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// Tab is a window of the browser. Fresh gives it a profile of its own; Shared and Beside
// do not.
//
// It finds things with scripts of its own and not with the library's mirror of
// the document, because the single-file form holds megabytes of text in one
// element, and a mirror of that never settles.
type Tab struct {
	ctx    context.Context
	cancel context.CancelFunc

	mu       sync.Mutex
	requests []string // addresses asked for, in order
	faults   []string // errors of scripts, refusals of the security policy
	trace    []json.RawMessage
	traced   chan struct{} // closed when the trace is complete

	asked chan question // see StandIn
}

func (t *Tab) listen(event any) {
	t.mu.Lock()
	defer t.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		t.requests = append(t.requests, e.Request.URL)
	case *runtime.EventBindingCalled:
		t.ask(e)
	case *tracing.EventDataCollected:
		for _, v := range e.Value {
			t.trace = append(t.trace, json.RawMessage(v))
		}
	case *tracing.EventTracingComplete:
		close(t.traced)
	case *page.EventJavascriptDialogOpening:
		go t.leave() // nothing else is listened to meanwhile
	case *runtime.EventExceptionThrown:
		t.faults = append(t.faults, "script: "+e.ExceptionDetails.Text+" "+description(e.ExceptionDetails.Exception))
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError || e.Entry.Source == log.EntrySourceSecurity {
			t.faults = append(t.faults, fmt.Sprintf("%s: %s %s", e.Entry.Source, e.Entry.Text, e.Entry.URL))
		}
	}
}

func description(o *runtime.RemoteObject) string {
	if o == nil {
		return ""
	}
	return o.Description
}

// leave lets the page go, as somebody does whom the browser asks whether to leave.
func (t *Tab) leave() {
	ctx, cancel := t.limited()
	defer cancel()
	chromedp.Call(ctx, page.HandleJavaScriptDialog,
		page.HandleJavaScriptDialogParams{Accept: true}) //nolint:errcheck // the page may be gone
}

// Close ends the tab, and forgets its profile where that is its own.
func (t *Tab) Close() { t.cancel() }

// Requests are the addresses the document asked for so far, without those that
// hold their own data.
func (t *Tab) Requests() []string {
	t.mu.Lock()
	defer t.mu.Unlock()
	var out []string
	for _, r := range t.requests {
		if !strings.HasPrefix(r, "data:") {
			out = append(out, r)
		}
	}
	return out
}

// Faults are the errors of scripts and the refusals of the security policy so
// far. A sound page has none.
func (t *Tab) Faults() []string {
	t.mu.Lock()
	defer t.mu.Unlock()
	return append([]string(nil), t.faults...)
}

// limited is a context for one thing to be done.
func (t *Tab) limited() (context.Context, context.CancelFunc) {
	return context.WithTimeout(t.ctx, Patience)
}

// Open goes to an address and waits until the core has drawn the page.
func (t *Tab) Open(address string) error {
	if err := t.Visit(address); err != nil {
		return err
	}
	return t.Ready()
}

// Visit goes to an address and does not wait for the core.
func (t *Tab) Visit(address string) error {
	ctx, cancel := t.limited()
	defer cancel()
	if err := chromedp.Do(ctx, chromedp.Navigate(address)); err != nil {
		return fmt.Errorf("opening %.100s: %w", address, err)
	}
	return nil
}

// Reload loads the page anew, as the reload key does.
func (t *Tab) Reload() error {
	ctx, cancel := t.limited()
	defer cancel()
	if err := chromedp.Do(ctx, chromedp.Reload()); err != nil {
		return fmt.Errorf("reloading: %w", err)
	}
	return t.Ready()
}

// Ready waits until the core has drawn the page and answered every request.
func (t *Tab) Ready() error {
	if err := t.Until(`__drive.answered > 0`); err != nil {
		far, _ := Eval[string](t, `JSON.stringify({ page: document.readyState, seen: !document.hidden, drive: __drive,
			early: window.early && { ...early, heard: early.heard.length, worker: !!early.worker },
			control: navigator.serviceWorker?.controller?.state,
			came: performance.getEntriesByType("resource").map((r) => [r.name.split("/").pop(), r.responseEnd]) })`)
		return fmt.Errorf("the page did not start: %w; it came so far: %s", err, far)
	}
	return t.Settle()
}

// Settle waits until the newest worker runs and has answered all that was asked,
// with what takes long. A link in the address is taken from there when it is asked about.
func (t *Tab) Settle() error {
	return t.Until(`__drive.ready === __drive.launched && __drive.asked === __drive.answered && !__drive.more && ` +
		`!location.hash.startsWith("#q=")`)
}

// Eval gives the value of a JavaScript expression; a promise is waited for.
func Eval[T any](t *Tab, expression string) (T, error) {
	ctx, cancel := t.limited()
	defer cancel()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		return v, fmt.Errorf("%.200s: %w", expression, err)
	}
	return v, nil
}

// Until waits for a JavaScript condition. When it does not come about, the
// error tells what the page says instead.
func (t *Tab) Until(condition string) error {
	ctx, cancel := t.limited()
	defer cancel()
	ask := chromedp.Evaluate[chromedp.Void](`new Promise((done) => {
		const ask = () => { let is = false; try { is = !!(`+condition+`); } catch {} if (is) done(); else setTimeout(ask, 5); };
		ask();
	})`, chromedp.EvalAwaitPromise)
	// A page that goes over to another one takes the question with it: ask again.
	for ctx.Err() == nil {
		if _, err := chromedp.Run(ctx, ask); err == nil {
			return nil
		} else if ctx.Err() == nil && !gone(err) {
			return fmt.Errorf("waiting until %.300s: %w", condition, err)
		}
	}
	said, _ := t.Trouble()
	return fmt.Errorf("waited %s in vain until %.300s; the page's alert says %q, faults %q", Patience, condition, said,
		t.Faults())
}

// gone reports whether the document that was asked is no longer there.
func gone(err error) bool {
	text := err.Error()
	return strings.Contains(text, "navigated or closed") || strings.Contains(text, "context was destroyed") ||
		strings.Contains(text, "Cannot find context")
}

// Quote writes a text as a JavaScript string.
func Quote(text string) string {
	data, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string always marshals
	}
	return string(data)
}

// Trouble is the text of the page's alert, empty when there is none.
func (t *Tab) Trouble() (string, error) {
	return Eval[string](t,
		`(() => { const box = document.getElementById("trouble"); return !box || box.hidden ? "" : box.textContent; })()`)
}

// Text is what can be read in the first element that suits the selector.
func (t *Tab) Text(selector string) (string, error) {
	return Eval[string](t, `document.querySelector(`+Quote(selector)+`).innerText`)
}

// Has reports whether an element suits the selector.
func (t *Tab) Has(selector string) (bool, error) {
	return Eval[bool](t, `!!document.querySelector(`+Quote(selector)+`)`)
}

// spot is where a click on an element would go.
type spot struct {
	X, Y float64
	Hit  string // empty when the click reaches the element; else what is in the way
}

// Click waits for the element, opens the folds it is in, brings it into view, clicks it
// with the mouse and waits for the answer. A thing that something else covers cannot be
// clicked.
func (t *Tab) Click(selector string) error {
	at, err := t.spot(selector)
	if err != nil {
		return err
	}
	ctx, cancel := t.limited()
	defer cancel()
	if err := chromedp.Do(ctx, chromedp.MouseClickXY(at.X, at.Y)); err != nil {
		return fmt.Errorf("clicking %s: %w", selector, err)
	}
	return t.Settle()
}

func (t *Tab) spot(selector string) (spot, error) {
	q := Quote(selector)
	if err := t.Until(`document.querySelector(` + q + `)`); err != nil {
		return spot{}, err
	}
	at, err := Eval[spot](t, `(() => {
		const el = document.querySelector(`+q+`);
		for (let fold = el.closest("details"); fold; fold = fold.parentElement.closest("details")) {
			if (!fold.querySelector("summary").contains(el)) fold.open = true;
		}
		el.scrollIntoView({ block: "center", inline: "center", behavior: "instant" });
		const r = el.getBoundingClientRect();
		const x = r.left + r.width / 2, y = r.top + r.height / 2;
		const hit = document.elementFromPoint(x, y);
		const label = hit && hit.closest("label");
		const reaches = hit && (el.contains(hit) || hit.contains(el) || label && label.control === el);
		return { X: x, Y: y, Hit: reaches ? "" : "at " + Math.round(x) + "," + Math.round(y) + " of " + innerWidth + "x" + innerHeight + " lies " + (hit ? hit.outerHTML.slice(0, 120) : "nothing") };
	})()`)
	if err == nil && at.Hit != "" {
		err = fmt.Errorf("%s cannot be clicked: %s", selector, at.Hit)
	}
	return at, err
}

// Keys a person presses beside letters.
const (
	TabKey  = kb.Tab
	Enter   = kb.Enter
	Space   = " "
	Down    = kb.ArrowDown
	Left    = kb.ArrowLeft
	Right   = kb.ArrowRight
	Escape  = kb.Escape
	SelectA = "\x01select-all"
)

// Press types keys into what has the focus and waits for the answer.
func (t *Tab) Press(keys ...string) error {
	ctx, cancel := t.limited()
	defer cancel()
	for _, k := range keys {
		action := chromedp.KeyEvent(k)
		if k == SelectA {
			action = chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl))
		}
		if err := chromedp.Do(ctx, action); err != nil {
			return fmt.Errorf("pressing %q: %w", k, err)
		}
	}
	return t.Settle()
}

// ShiftTab goes back one stop.
func (t *Tab) ShiftTab() error {
	ctx, cancel := t.limited()
	defer cancel()
	return chromedp.Do(ctx, chromedp.KeyEvent(kb.Tab, chromedp.KeyModifiers(chromedp.ModifierShift)))
}

// Type replaces what a field holds and leaves it, as a person does with the
// Tab key.
func (t *Tab) Type(selector, text string) error {
	if err := t.Click(selector); err != nil {
		return err
	}
	if err := t.Press(SelectA); err != nil {
		return err
	}
	if text == "" {
		return t.Press(kb.Delete, TabKey)
	}
	// The text is put in whole, as pasting does.
	ctx, cancel := t.limited()
	defer cancel()
	if err := chromedp.Do(ctx, paste(text)); err != nil {
		return fmt.Errorf("typing into %s: %w", selector, err)
	}
	return t.Press(TabKey)
}

// Choose takes files for a file field.
func (t *Tab) Choose(selector string, files ...string) error {
	ctx, cancel := t.limited()
	defer cancel()
	field, err := chromedp.Run(ctx, chromedp.Evaluate[*runtime.RemoteObject](`document.querySelector(`+Quote(selector)+
		`)`))
	if err != nil {
		return fmt.Errorf("finding %s: %w", selector, err)
	}
	_, err = chromedp.Call(ctx, dom.SetFileInputFiles,
		dom.SetFileInputFilesParams{Files: files, ObjectID: field.ObjectID})
	return err
}

// Clear takes everything out of the browser that pages of an origin stored.
func (t *Tab) Clear(origin string) error {
	ctx, cancel := t.limited()
	defer cancel()
	_, err := chromedp.Call(ctx, storage.ClearDataForOrigin,
		storage.ClearDataForOriginParams{Origin: origin, StorageTypes: "all"})
	return err
}

// Offline cuts the tab off from every network.
func (t *Tab) Offline() error {
	ctx, cancel := t.limited()
	defer cancel()
	_, err := chromedp.Call(ctx, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
		MatchedNetworkConditions: []*network.Conditions{{Offline: true, DownloadThroughput: -1, UploadThroughput: -1}},
	})
	if err == nil {
		_, err = chromedp.Call(ctx, network.OverrideNetworkState,
			network.OverrideNetworkStateParams{Offline: true, DownloadThroughput: -1, UploadThroughput: -1})
	}
	return err
}

// Prefer sets what the device says about the reader: "dark" or "light", and that
// they want nothing to move, so that no color is caught half way.
func (t *Tab) Prefer(scheme string) error { return t.media(scheme, "none") }

// Force has the system decide on every color, as it does for who chose its high contrast.
func (t *Tab) Force(scheme string) error { return t.media(scheme, "active") }

func (t *Tab) media(scheme, forced string) error {
	ctx, cancel := t.limited()
	defer cancel()
	_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme},
			{Name: "prefers-reduced-motion", Value: "reduce"}, {Name: "forced-colors", Value: forced}},
	})
	return err
}

// Paper has the page laid out as on paper, for scripts to measure.
func (t *Tab) Paper() error {
	ctx, cancel := t.limited()
	defer cancel()
	_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	return err
}

// Slow makes the page's own thread so many times slower; 1 is as fast as it is.
// Workers stay as fast as they are: the browser can slow no other thread.
func (t *Tab) Slow(times float64) error {
	ctx, cancel := t.limited()
	defer cancel()
	_, err := chromedp.Call(ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: times})
	return err
}

// Resize changes the window.
func (t *Tab) Resize(s Screen) error {
	ctx, cancel := t.limited()
	defer cancel()
	return chromedp.Do(ctx, chromedp.EmulateViewport(s.Width, s.Height))
}

// Heard is an element as those know it who hear the page.
type Heard struct{ Role, Name, Description string }

// Heard is what the browser's accessibility tree says of an element.
func (t *Tab) Heard(selector string) (h Heard, err error) {
	ctx, cancel := t.limited()
	defer cancel()
	el, err := chromedp.Run(ctx, chromedp.Evaluate[*runtime.RemoteObject](`document.querySelector(`+Quote(selector)+`)`))
	if err != nil {
		return h, fmt.Errorf("finding %s: %w", selector, err)
	}
	r, err := chromedp.Call(ctx, accessibility.GetPartialAXTree,
		accessibility.GetPartialAXTreeParams{ObjectID: el.ObjectID, FetchRelatives: new(bool)})
	if err != nil || len(r.Nodes) == 0 {
		return h, fmt.Errorf("%s in the accessibility tree: %w", selector, err)
	}
	text := func(v *accessibility.Value) (s string) {
		if v != nil {
			err = json.Unmarshal(v.Value, &s)
		}
		return s
	}
	n := r.Nodes[0]
	return Heard{text(n.Role), text(n.Name), text(n.Description)}, err
}

// PDF prints the page on paper as the page's own print style says.
func (t *Tab) PDF() ([]byte, error) {
	ctx, cancel := t.limited()
	defer cancel()
	return chromedp.Run(ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize(), chromedp.PDFPrintBackground()))
}

// Picture is what can be seen of the page now, as PNG.
func (t *Tab) Picture() ([]byte, error) {
	ctx, cancel := t.limited()
	defer cancel()
	return chromedp.Run(ctx, chromedp.CaptureScreenshot())
}

// Photo is what can be seen of the page now, as WebP, for people to look at.
func (t *Tab) Photo() ([]byte, error) {
	ctx, cancel := t.limited()
	defer cancel()
	return chromedp.Run(ctx, func(ctx context.Context, x *chromedp.Target) ([]byte, error) {
		quality := int64(80)
		r, err := chromedp.Call(ctx, page.CaptureScreenshot, page.CaptureScreenshotParams{
			Format: page.CaptureScreenshotFormatWebp, Quality: &quality})
		if err != nil {
			return nil, err
		}
		return r.Data, nil
	})
}
