package e2e

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

func TestNothingIsAskedOfTheNetworkAfterLoading(t *testing.T) {
	eachForm(t, func(t *testing.T, f form) {
		w := open(t, f, drive.Desk, "")
		w.must(w.WatchWorker())
		if !f.offline {
			w.installed() // keeping the files for use without a network is part of loading
		}
		loaded, before := w.Requests(), len(served.all())
		if f.offline {
			for _, r := range loaded {
				require.True(t, strings.HasPrefix(r, "file://") || strings.HasPrefix(r, "blob:"), "the one file asks for %s", r)
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
		w.click("#copy-link")
		w.area("compare")
		w.click("#pin")
		w.click(`[data-act="units"]`)
		w.click(`[data-act="undo"]`)
		w.area("quote")
		w.paper()
		require.Equal(t, loaded, w.Requests(), "requests of the document and its worker after loading")
		require.Len(t, served.all(), before, "requests the host saw after loading")
	})
}

// A page that could send would be found out: the policy must refuse.
func TestThePolicyRefusesEveryDoor(t *testing.T) {
	eachForm(t, func(t *testing.T, f form) {
		tab, err := browser.Fresh(drive.Desk)
		require.NoError(t, err)
		defer tab.Close()
		w := &window{tab, t}
		w.must(w.Open(f.address))
		before := len(served.all())
		stranger := "https://stranger.example/"
		if f.offline {
			stranger = folder.address
		}
		for door, js := range map[string]string{
			"fetch":         `fetch("` + stranger + `?fetch").then(() => "open", () => "shut")`,
			"image":         `new Promise((r) => { const i = new Image(); i.onload = () => r("open"); i.onerror = () => r("shut"); i.src = "` + stranger + `?image"; })`,
			"socket":        `new Promise((r) => { try { const s = new WebSocket("` + strings.Replace(stranger, "http", "ws", 1) + `?socket"); s.onopen = () => r("open"); s.onerror = () => r("shut"); } catch { r("shut"); } })`,
			"foreign code":  `new Promise((r) => { const s = document.createElement("script"); s.onload = () => r("open"); s.onerror = () => r("shut"); s.src = "` + stranger + `?script"; document.body.append(s); })`,
			"inline script": `new Promise((r) => { window.ran = "shut"; const s = document.createElement("script"); s.textContent = "window.ran = 'open'"; document.body.append(s); setTimeout(() => r(window.ran)); })`,
			"handler":       `new Promise((r) => { window.ran = "shut"; const d = document.createElement("div"); d.innerHTML = "<img src=x: onerror=\"window.ran='open'\"><button onclick=\"window.ran='open'\"></button>"; document.body.append(d); d.querySelector("button").click(); setTimeout(() => r(window.ran), 50); })`,
			"frame":         `new Promise((r) => { const i = document.createElement("iframe"); i.onload = () => { try { r(i.contentDocument ? "shut" : "shut"); } catch { r("open"); } }; i.src = "` + stranger + `?frame"; document.body.append(i); setTimeout(() => r("shut"), 300); })`,
		} {
			require.Equal(t, "shut", eval[string](w, js), door)
		}
		require.Len(t, served.all(), before, "the host saw nothing of it")
		require.NotEmpty(t, w.Faults(), "and the browser told of the refusals")
	})
}
