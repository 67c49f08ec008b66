package e2e

import (
	"bytes"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
	"boxwright/web/pack/site"
)

// published serves a folder that can be exchanged for another one, as when a new
// version is published.
type published struct {
	address string
	folder  string
	server  *http.Server
}

func serve(t *testing.T, folder string) *published {
	h := &published{folder: folder}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	h.server = &http.Server{Handler: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		site.Handler(h.folder).ServeHTTP(w, r)
	})}
	go h.server.Serve(l) //nolint:errcheck // it ends with the test
	t.Cleanup(func() { h.server.Close() })
	h.address = "http://" + l.Addr().String() + "/"
	return h
}

// newer writes the folder form of a version that differs in its style and its
// worker.
func newer(t *testing.T) string {
	p := *built
	p.Style = append(bytes.Clone(p.Style), ":root{--version:2}"...)
	p.Worker = append(bytes.Clone(p.Worker), "// 2"...)
	return onDisk(t, &p)
}

func onDisk(t *testing.T, p *site.Parts) string {
	dir := t.TempDir()
	require.NoError(t, p.Write(dir))
	return filepath.Join(dir, site.FolderForm)
}

const version = `getComputedStyle(document.documentElement).getPropertyValue("--version")`

func (w *window) installed() {
	w.t.Helper()
	eval[bool](w,
		`navigator.serviceWorker.ready.then((r) => new Promise((done) => { const ask = () => r.active && r.active.state === "activated" ? done(true) : setTimeout(ask, 10); ask(); }))`)
}

func TestOpensWithoutTheHost(t *testing.T) {
	t.Parallel()
	h := serve(t, onDisk(t, built))
	w := open(t, form{name: "folder", address: h.address, kept: true}, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	draft := w.draft()
	w.installed()
	h.server.Close()
	w.must(w.Reload())
	require.Equal(t, draft, w.draft())
	w.pick("hvac-roof")
	require.Empty(t, w.trouble())
}

// offered waits until the page offers a new version.
func (w *window) offered() {
	w.t.Helper()
	w.must(w.Until(`document.querySelector("#bar:not([hidden])")`))
	require.Contains(w.t, w.text("#bar"), "A new version is ready")
}

// kept are the caches that hold a version.
const kept = `caches.keys().then((names) => names.filter((n) => n.startsWith("boxwright ") && !n.endsWith("in use")))`

func TestNewVersionWaitsUntilSomebodyAgrees(t *testing.T) {
	t.Parallel()
	h := serve(t, onDisk(t, built))
	w := open(t, form{name: "folder", address: h.address, kept: true}, drive.Desk, "")
	w.installed()
	w.must(w.Reload())
	w.area("needs")
	w.typed("#f-title", "Rescue 4")
	draft := w.draft()

	h.folder = newer(t)
	w.must(w.Reload())
	w.offered()
	require.Empty(t, eval[string](w, version), "the old one is in use")
	w.click("#bar button:last-of-type") // later
	w.must(w.Reload())
	require.Empty(t, eval[string](w, version), "still")
	w.offered()

	for range 2 {
		w.must(w.Visit("about:blank")) // the only window of the page is closed
		w.must(w.Open(h.address))
		require.Empty(t, eval[string](w, version), "opening it again agrees to nothing")
		w.offered()
	}

	w.click("#bar button:first-of-type") // use it now
	w.must(w.Until(version + ` === "2"`))
	w.must(w.Ready())
	require.Equal(t, draft, w.draft(), "the quote came along")
	require.False(t, w.has("#bar:not([hidden])"))
	h.server.Close()
	w.must(w.Visit("about:blank"))
	w.must(w.Open(h.address))
	require.Equal(t, "2", eval[string](w, version), "it stays in use, without the host too")
	require.Eventually(t, func() bool {
		// It goes once the page has started with no other window left; one that was left just now may still count.
		w.must(w.Visit("about:blank"))
		w.must(w.Open(h.address))
		return len(eval[[]string](w, kept)) == 1
	}, drive.Patience, 500*time.Millisecond, "nothing is left of the old one")
}

// A window that runs the old version goes on with the old one's files when
// another window takes the new one into use and the host has no others.
func TestVersionsAreNeverMixed(t *testing.T) {
	t.Parallel()
	h := serve(t, onDisk(t, built))
	old := open(t, form{name: "folder", address: h.address, kept: true}, drive.Desk, "")
	old.installed()
	old.must(old.Reload())
	h.folder = newer(t)
	old.must(old.Reload())
	old.offered()
	tab, err := old.Beside(drive.Desk)
	require.NoError(t, err)
	t.Cleanup(tab.Close)
	other := &window{Tab: tab, t: t}
	other.must(other.Open(h.address))
	other.must(other.Until(`document.querySelector("#bar").innerText.includes("A new version is ready")`))
	eval[bool](other,
		`([...document.querySelectorAll("#bar button")].find((b) => b.textContent === "Use it now").click(), true)`)
	other.must(other.Until(version + ` === "2"`))

	old.must(old.Until(`document.querySelector("#bar").innerText.includes("Another window took the new version into use")`))
	old.must(old.EndCore())
	old.must(old.Until(`__drive.launched === 2`))
	old.must(old.Ready())
	require.Empty(t, eval[string](old, version))
	old.area("needs")
	require.Empty(t, old.trouble(), "a worker of the old version was started")
	old.click("#bar button") // load it here
	old.must(old.Until(version + ` === "2"`))
}

// What a host sends while it is being changed is not kept as a version.
func TestAHalfPublishedVersionIsNotOffered(t *testing.T) {
	t.Parallel()
	h := serve(t, onDisk(t, built))
	w := open(t, form{name: "folder", address: h.address, kept: true}, drive.Desk, "")
	w.installed()
	w.must(w.Reload())
	next := newer(t)
	styles, err := filepath.Glob(filepath.Join(next, "style.*.css"))
	require.NoError(t, err)
	require.Len(t, styles, 1)
	whole, err := os.ReadFile(styles[0])
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(styles[0], whole[:len(whole)/2], 0o600))
	h.folder = next
	// What becomes of the version that is found; it may be over before update says so.
	update := `navigator.serviceWorker.getRegistration().then((r) => new Promise((done) => {
		r.addEventListener("updatefound", () => {
			const w = r.installing, told = () => w.state === "installing" || done(w.state);
			w.addEventListener("statechange", told);
			told();
		}, { once: true });
		r.update().catch(() => {});
	}))`
	require.Equal(t, "redundant", eval[string](w, update), "half a style")
	require.False(t, w.has("#bar:not([hidden])"))

	require.NoError(t, os.WriteFile(styles[0], whole, 0o600))
	require.Equal(t, "installed", eval[string](w, update), "all of it")
	w.offered()
}

// The unpacked core is kept beside the packed one it was made of, and made anew
// when it is damaged.
func TestTheUnpackedCoreIsKept(t *testing.T) {
	t.Parallel()
	h := serve(t, onDisk(t, built))
	w := open(t, form{name: "folder", address: h.address, kept: true}, drive.Desk, "")
	w.installed()
	core := eval[string](w,
		`new URL(document.querySelector("script[data-core]").dataset.core.replace(/bin$/, "wasm"), location).href`)
	size := `caches.match("` + core + `").then((r) => r.arrayBuffer()).then((b) => b.byteLength)`
	require.Equal(t, len(built.Core), eval[int](w, size))
	h.server.Close()

	spoil := `(async () => {
		for (const name of await caches.keys()) {
			const c = await caches.open(name);
			if (await c.match("` + core + `")) await c.put("` + core + `", new Response("gone", { headers: { "content-type": "application/wasm" } }));
		}
		return true;
	})()`
	eval[bool](w, spoil)
	require.Equal(t, 4, eval[int](w, size))
	w.must(w.Reload())
	require.Empty(t, w.trouble())
	require.Equal(t, len(built.Core), eval[int](w, size), "made anew")
}

// The headless shell knows nothing of installing: this is asked of the whole browser.
func TestCanBeInstalled(t *testing.T) {
	t.Parallel()
	whole, err := drive.Start()
	require.NoError(t, err)
	t.Cleanup(whole.Close)
	tab, err := whole.Fresh(drive.Desk)
	require.NoError(t, err)
	w := &window{Tab: tab, t: t}
	stands := func() []string {
		errors, err := w.Installable()
		require.NoError(t, err)
		return slices.DeleteFunc(errors, func(e string) bool { return e == "in-incognito" }) // as every tab here
	}
	w.must(w.Visit("about:blank"))
	require.NotEmpty(t, stands(), "a page that nobody can install")
	w.must(w.Open(shipped.at(t)))
	w.installed()
	w.must(w.Reload())
	require.Empty(t, stands())
	require.Empty(t, tab.Faults())
}
