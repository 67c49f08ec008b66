// Package e2e holds the tests of the built page in a browser: both forms of it,
// on a wide screen and a narrow one, by mouse and by keyboard.
package e2e

import (
	"fmt"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config"
	"boxwright/web/app"
	"boxwright/web/assets/catalogue"
	"boxwright/web/e2e/drive"
	"boxwright/web/pack/site"
)

// form is one of the two ways the page is given to people.
type form struct {
	name    string
	address string // empty for one that serves each window from a host of its own
	offline bool
	lean    bool // uninstalled and unrehearsed
	kept    bool // unrehearsed alone
	apart   bool // in a browser of its own, where each page has a process that can be killed
	native  bool // with a core that runs in this test instead of in the browser, see standIn
}

// Most of what a start costs is work that nobody waits for: the page is installed, and
// goes through its areas ahead of time. The tests that are about it open a form that
// does; all others leave it out.
const (
	uninstalled = `delete Navigator.prototype.serviceWorker`
	unrehearsed = `(() => {
	const Plain = window.Worker;
	window.Worker = class extends Plain {
		postMessage(message, ...all) {
			if (!message?.request?.includes('"do":"rehearse"')) return super.postMessage(message, ...all);
			window.__drive.asked = message.id;
			const data = { id: message.id, reply: '{"rehearsed":true}' };
			setTimeout(() => this.dispatchEvent(new MessageEvent("message", { data })));
		}
	};
})()`
)

var (
	browser *drive.Browser // its pages share a process, and with it the compiled core
	folder  form           // served by a host
	shipped form           // the same with its own core, in wasm
	single  form           // one file opened from disk, with the network off
	carried form           // the same with its own core, in wasm
	demo    *config.Catalogue
	built   *site.Parts
	files   string // the folder form, as a host serves it
)

func TestMain(m *testing.M) {
	code, err := run(m)
	if err != nil {
		fmt.Fprintln(os.Stderr, "e2e:", err)
		code = 1
	}
	os.Exit(code)
}

// run builds the page from the present sources, serves it and starts one
// browser for all tests.
func run(m *testing.M) (int, error) {
	if err := drive.Missing(); err != nil {
		return 1, err
	}
	root, err := site.Root()
	if err != nil {
		return 1, err
	}
	var dist string
	if built, dist, err = site.Temporary(root); err != nil {
		return 1, err
	}
	defer os.RemoveAll(dist)
	files = filepath.Join(dist, site.FolderForm)
	folder = form{name: "folder", lean: true, native: true}
	shipped = form{name: "folder", lean: true}
	carried = form{name: "single", address: "file://" + filepath.Join(dist, site.SingleForm), offline: true, lean: true}
	single = carried
	single.native = true

	if demo, err = config.Read(catalogue.Demo); err != nil {
		return 1, err
	}
	if browser, err = drive.StartShell(true); err != nil {
		return 1, err
	}
	defer browser.Close()
	debug.SetGCPercent(400) // as in the browser: a core leaves much behind
	return m.Run(), nil
}

// eachForm runs a test on both forms of the page, side by side, and waits for both.
// The forms differ in how they start and in what they can keep, load and hand out; a
// test of anything else opens the folder alone.
func eachForm(t *testing.T, test func(t *testing.T, f form)) {
	t.Helper()
	sideBySide(t, []form{folder, single}, test)
}

// eachShipped is that for what the core itself, its worker or its start has a part in.
func eachShipped(t *testing.T, test func(t *testing.T, f form)) {
	t.Helper()
	sideBySide(t, []form{shipped, carried}, test)
}

func sideBySide(t *testing.T, forms []form, test func(t *testing.T, f form)) {
	t.Helper()
	t.Run("form", func(t *testing.T) {
		for _, f := range forms {
			t.Run(f.name, func(t *testing.T) {
				t.Parallel()
				test(t, f)
			})
		}
	})
}

// window is a tab with the page in it; what goes wrong ends the test.
type window struct {
	*drive.Tab
	t       *testing.T
	form    form   // so are others of its profile
	address string // of the page
}

// scripts run before the page's own.
func (f form) scripts(more []string) []string {
	switch {
	case f.lean:
		return append([]string{uninstalled, unrehearsed}, more...)
	case f.kept:
		return append([]string{unrehearsed}, more...)
	}
	return more
}

// another opens one more tab in the profile of the window.
func (w *window) another(scripts ...string) *drive.Tab {
	w.t.Helper()
	tab, err := w.Beside(drive.Desk, w.form.scripts(scripts)...)
	w.must(err)
	w.must(w.form.standIn(tab))
	return tab
}

// open starts the page where nothing is kept yet. At the end of the test no script
// may have failed and nothing may have been refused by the security policy.
func open(t *testing.T, f form, screen drive.Screen, fragment string, scripts ...string) *window {
	t.Helper()
	w := blank(t, f, screen, scripts...)
	w.must(w.Open(w.address + fragment))
	return w
}

// blank is a window that has not gone to the page yet.
func blank(t *testing.T, f form, screen drive.Screen, scripts ...string) *window {
	t.Helper()
	address, profile := f.at(t), browser.Shared
	switch {
	case f.apart:
		own, err := drive.StartShell(false)
		require.NoError(t, err)
		t.Cleanup(own.Close)
		profile = own.Shared
	case f.address != "": // a file, which is of one origin with all others, or a host that ends
		profile = browser.Fresh
	}
	tab, err := profile(screen, f.scripts(scripts)...)
	require.NoError(t, err)
	t.Cleanup(func() {
		require.Empty(t, tab.Faults(), "errors of scripts or refusals of the security policy")
		tab.Close()
	})
	require.NoError(t, tab.Prefer("light"))
	require.NoError(t, f.standIn(tab))
	if f.offline {
		require.NoError(t, tab.Offline())
	}
	return &window{tab, t, f, address}
}

// at is the address of the form for one window. A host of its own is an origin of its
// own: nobody else sees what its page keeps. It stays until all tests are over, so that
// no other one gets its port.
func (f form) at(t *testing.T) string {
	t.Helper()
	if f.address != "" {
		return f.address
	}
	return httptest.NewServer(site.Handler(files)).URL + "/"
}

// standIn has cores that run in this test answer in a tab of the form, where it shall be so.
// That the core says the same in wasm, byte for byte, is held in web/pack/site; what a
// browser has to do to start it and to run it takes most of a test's time, and is gone
// through by the tests of the shipped forms.
func (f form) standIn(tab *drive.Tab) error {
	if !f.native {
		return nil
	}
	return tab.StandIn(func() drive.Core { return app.New() })
}

func (w *window) must(err error) {
	w.t.Helper()
	require.NoError(w.t, err)
}

func (w *window) click(selector string) { w.t.Helper(); w.must(w.Click(selector)) }

// area goes to an area; who reads a quote that was sent has the quote and the
// comparison.
func (w *window) area(id string) {
	w.t.Helper()
	switch {
	case !w.has("#reading-menu"):
		w.click("#area-" + id)
	case id == "quote" && w.has("#reading-back"):
		w.click("#reading-back")
	case id == "compare" && !w.has("#reading-back"):
		w.click("#reading-compare")
	default:
		require.Contains(w.t, []string{"quote", "compare"}, id, "a reader has no other area")
	}
}

// head presses what stands in the head of the page, where it is narrow in a menu.
func (w *window) head(selector string) {
	w.t.Helper()
	if eval[bool](w, `document.querySelector("#head-menu summary").checkVisibility()`) {
		w.click("#head-menu summary")
	}
	w.click(selector)
}

// own begins a copy of the quote that is read.
func (w *window) own() {
	w.t.Helper()
	w.click("#reading-menu summary")
	w.click("#own-copy")
	w.must(w.Until(`document.getElementById("areas").innerText`))
	w.must(w.Settle())
}

// whole is the text of an element, what is folded among it.
func (w *window) whole(selector string) string {
	w.t.Helper()
	return flat(eval[string](w, `document.querySelector(`+drive.Quote(selector)+`).textContent`))
}

func (w *window) typed(selector, text string) { w.t.Helper(); w.must(w.Type(selector, text)) }

func (w *window) text(selector string) string {
	w.t.Helper()
	return eval[string](w, `document.querySelector(`+drive.Quote(selector)+`).innerText`)
}

func (w *window) has(selector string) bool {
	w.t.Helper()
	return eval[bool](w, `!!document.querySelector(`+drive.Quote(selector)+`)`)
}

func (w *window) trouble() string {
	w.t.Helper()
	text, err := w.Trouble()
	w.must(err)
	return text
}

func eval[T any](w *window, expression string) T {
	w.t.Helper()
	v, err := drive.Eval[T](w.Tab, expression)
	w.must(err)
	return v
}

// draft is the quote as the page keeps it, byte for byte.
func (w *window) draft() string {
	w.t.Helper()
	return eval[string](w, inStorage(`return JSON.stringify(s.draft)`))
}

// begin starts a unit on a chassis and puts a module on it.
func (w *window) begin(chassis, body string) {
	w.t.Helper()
	w.area("start")
	w.click("#begin-" + chassis)
	w.area("unit")
	w.click("#chapter-module")
	if !w.checked(body) {
		w.click("#o-" + body)
	}
	require.True(w.t, w.checked(body), "the module %s stands on %s", body, chassis)
}

// show opens the chapter an option stands in.
func (w *window) show(option string) {
	w.t.Helper()
	o := demo.OptionByID(option)
	require.NotNil(w.t, o, "the demonstration catalogue has the option %s", option)
	if !w.has("#chapter-" + demo.GroupByID(o.Group).Chapter) {
		w.area("unit")
	}
	w.click("#chapter-" + demo.GroupByID(o.Group).Chapter)
}

// pick makes an option a deliberate choice: presses it, says "lock in" where the
// page had filled it in, and takes the first offer where the page asks first.
func (w *window) pick(option string) {
	w.t.Helper()
	w.show(option)
	if w.checked(option) {
		w.click("#keep-" + option)
	} else {
		w.click("#o-" + option)
	}
	if offer := "#offer-" + option + "-0"; !w.checked(option) && w.has(offer) {
		w.click(offer)
	}
	require.True(w.t, w.checked(option), "%s is in after choosing it; the page says %q", option, w.text("#say"))
	require.Contains(w.t, w.text("#row-"+option), "your choice")
}

func (w *window) checked(id string) bool {
	w.t.Helper()
	return eval[bool](w, `document.getElementById(`+drive.Quote("o-"+id)+`).checked`)
}

// winchStory clicks the winch unit together.
func (w *window) winchStory() {
	w.t.Helper()
	w.begin("cut-14500-158-gas", "mod-146-72")
	for _, id := range winchPicks {
		w.pick(id)
	}
}
