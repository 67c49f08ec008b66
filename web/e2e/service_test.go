package e2e

import (
	"bytes"
	"net"
	"net/http"
	"path/filepath"
	"testing"

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
	h.server = &http.Server{Handler: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { site.Handler(h.folder).ServeHTTP(w, r) })}
	go h.server.Serve(l) //nolint:errcheck // it ends with the test
	t.Cleanup(func() { h.server.Close() })
	h.address = "http://" + l.Addr().String() + "/"
	return h
}

// newer writes the folder form of a version that differs in its style alone.
func newer(t *testing.T) string {
	p := *built
	p.Style = append(bytes.Clone(p.Style), ":root{--version:2}"...)
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
	eval[bool](w, `navigator.serviceWorker.ready.then((r) => new Promise((done) => { const ask = () => r.active && r.active.state === "activated" ? done(true) : setTimeout(ask, 10); ask(); }))`)
}

func TestOpensWithoutTheHost(t *testing.T) {
	h := serve(t, onDisk(t, built))
	w := open(t, form{name: "folder", address: h.address}, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	draft := w.draft()
	w.installed()
	h.server.Close()
	w.must(w.Reload())
	require.Equal(t, draft, w.draft())
	w.pick("hvac-roof")
	require.Empty(t, w.trouble())
}

func TestNewVersionWaitsUntilSomebodyAgrees(t *testing.T) {
	h := serve(t, onDisk(t, built))
	w := open(t, form{name: "folder", address: h.address}, drive.Desk, "")
	w.installed()
	w.must(w.Reload())
	w.area("needs")
	w.typed("#f-title", "Rescue 4")
	draft := w.draft()

	h.folder = newer(t)
	w.must(w.Reload())
	w.must(w.Until(`document.querySelector("#bar:not([hidden])")`))
	require.Contains(t, w.text("#bar"), "A new version is ready")
	require.Empty(t, eval[string](w, version), "the old one is in use")
	w.click("#bar button:last-of-type") // later
	w.must(w.Reload())
	require.Empty(t, eval[string](w, version), "still")
	w.must(w.Until(`document.querySelector("#bar:not([hidden])")`))

	w.click("#bar button:first-of-type") // use it now
	w.must(w.Until(version + ` === "2"`))
	w.must(w.Ready())
	require.Equal(t, draft, w.draft(), "the quote came along")
	require.False(t, w.has("#bar:not([hidden])"))
	require.Len(t, eval[[]string](w, `caches.keys().then((names) => names.filter((n) => n.startsWith("boxwright ")))`), 1, "nothing is left of the old one")
}

func TestCanBeInstalled(t *testing.T) {
	w := open(t, folder, drive.Desk, "")
	w.installed()
	w.must(w.Reload())
	errors, err := w.Installable()
	require.NoError(t, err)
	for _, e := range errors {
		require.Equal(t, "in-incognito", e, "the test's profile is a private one; nothing else may stand in the way")
	}
}
