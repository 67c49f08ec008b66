package e2e

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"path"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
	"boxwright/web/e2e/drive"
	"boxwright/web/pack/site"
)

// record notes every path that a host was asked for.
type record struct {
	mu    sync.Mutex
	paths []string
}

func (r *record) over(h http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, q *http.Request) {
		r.mu.Lock()
		r.paths = append(r.paths, q.URL.Path)
		r.mu.Unlock()
		h.ServeHTTP(w, q)
	})
}

func (r *record) all() []string {
	r.mu.Lock()
	defer r.mu.Unlock()
	return slices.Clone(r.paths)
}

func TestNothingIsAskedOfTheNetworkAfterLoading(t *testing.T) {
	t.Parallel()
	eachShipped(t, func(t *testing.T, f form) {
		var served record
		if !f.offline { // a host that nobody else asks
			host := httptest.NewServer(served.over(site.Handler(files)))
			t.Cleanup(host.Close)
			f.address = host.URL + "/"
		}
		f.lean = false
		w := open(t, f, drive.Desk, "")
		w.must(w.WatchWorker())
		if !f.offline {
			w.installed() // keeping the files for use without a network is part of loading
		}
		loaded, before := w.Requests(), len(served.all())
		if f.offline {
			for _, r := range loaded {
				require.True(t, strings.HasPrefix(r, "file://") || strings.HasPrefix(r, "blob:"),
					"the one file asks for %s", r)
			}
		} else {
			for _, r := range loaded {
				require.True(t, strings.HasPrefix(r, f.address), "the folder asks its own host only, not %s", r)
			}
		}

		w.pick("fb-push")
		w.area("needs")
		w.typed("#f-title", "Nobody else may know")
		for _, a := range areas {
			w.area(a)
		}
		w.area("quote")
		w.click("#copy-link")
		w.area("compare")
		w.click("#pin")
		w.head(`[data-act="units"]`)
		w.click(`[data-act="undo"]`)
		w.area("quote")
		w.paper()
		require.Equal(t, loaded, w.Requests(), "requests of the document and its worker after loading")
		require.Len(t, served.all(), before, "requests the host saw after loading")
	})
}

// stranger is a host that lets everybody in and counts who came.
func stranger(t *testing.T) (address string, came func() int) {
	t.Helper()
	var guests atomic.Int64
	host := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		guests.Add(1)
		w.Header().Set("Access-Control-Allow-Origin", "*")
		switch path.Ext(r.URL.Path) {
		case ".js":
			w.Header().Set("Content-Type", "text/javascript")
		case ".svg":
			w.Header().Set("Content-Type", "image/svg+xml")
			fmt.Fprint(w, `<svg xmlns="http://www.w3.org/2000/svg" width="1" height="1"/>`)
		default:
			w.Header().Set("Content-Type", "text/html")
			fmt.Fprint(w, `<!doctype html><title>plain</title><body>`)
		}
	}))
	t.Cleanup(host.Close)
	return host.URL, func() int { return int(guests.Load()) }
}

// doors are the ways by which a page could reach out or let code in. Each says
// whether it was open.
func doors(stranger string) map[string]string {
	return map[string]string{
		"fetch":         `fetch("` + stranger + `/fetch").then(() => "open", () => "shut")`,
		"image":         `new Promise((r) => { const i = new Image(); i.onload = () => r("open"); i.onerror = () => r("shut"); i.src = "` + stranger + `/image.svg"; })`,
		"foreign code":  `new Promise((r) => { const s = document.createElement("script"); s.onload = () => r("open"); s.onerror = () => r("shut"); s.src = "` + stranger + `/code.js"; document.body.append(s); })`,
		"inline script": `new Promise((r) => { window.ran = "shut"; const s = document.createElement("script"); s.textContent = "window.ran = 'open'"; document.body.append(s); r(window.ran); })`,
		"handler":       `new Promise((r) => { window.ran = "shut"; const d = document.createElement("div"); d.innerHTML = "<button onclick=\"window.ran='open'\"></button>"; document.body.append(d); d.firstChild.click(); r(window.ran); })`,
		"frame":         `new Promise((r) => { const i = document.createElement("iframe"); let refused = false; addEventListener("securitypolicyviolation", () => { refused = true; }, { once: true }); i.onload = () => setTimeout(() => r(refused ? "shut" : "open")); i.src = "` + stranger + `/frame"; document.body.append(i); })`,
	}
}

func TestThePolicyRefusesEveryDoor(t *testing.T) {
	t.Parallel()
	address, came := stranger(t)
	eachForm(t, func(t *testing.T, f form) {
		tab, err := browser.Fresh(drive.Desk, f.scripts(nil)...)
		require.NoError(t, err)
		defer tab.Close()
		w := &window{Tab: tab, t: t}
		w.must(w.Open(f.at(t)))
		for door, js := range seeds.InOrder(doors(address)) {
			require.Equal(t, "shut", eval[string](w, js), door)
		}
		require.Zero(t, came(), "nobody reached the stranger")
		require.NotEmpty(t, w.Faults(), "the browser told of the refusals")
	})
	// The same doors stand open where there is no policy, or this test would
	// hold nothing.
	plain, err := browser.Fresh(drive.Desk)
	require.NoError(t, err)
	defer plain.Close()
	w := &window{Tab: plain, t: t}
	w.must(w.Visit(address + "/plain"))
	for door, js := range seeds.InOrder(doors(address)) {
		require.Equal(t, "open", eval[string](w, js), "%s without a policy", door)
	}
	require.NotZero(t, came())
}
