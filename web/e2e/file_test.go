package e2e

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"boxwright/web/assets/catalogue"
	"boxwright/web/e2e/drive"
)

// written puts a file where the browser can take it from.
func written(t *testing.T, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, data, 0o600))
	return path
}

// saving presses what saves a file, and gives its text instead.
func (w *window) saving(selector string) string {
	w.t.Helper()
	eval[bool](w,
		`(window.savedText = "", URL.createObjectURL = (b) => { b.text().then((x) => { window.savedText = x; }); return "about:blank#saved"; }, HTMLAnchorElement.prototype.click = () => {}, true)`)
	w.click(selector)
	w.must(w.Until(`window.savedText`))
	return eval[string](w, `window.savedText`)
}

// altered is the demonstration catalogue with one piece of its text replaced.
func altered(t *testing.T, from, to string) []byte {
	t.Helper()
	require.True(t, bytes.Contains(catalogue.Demo, []byte(from)), "the catalogue holds %s", from)
	return bytes.Replace(catalogue.Demo, []byte(from), []byte(to), 1)
}

func TestCatalogueThatFailsItsSchema(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("catalogue")
	draft, block := w.draft(), w.text("#main")
	for _, x := range []struct {
		name   string
		data   []byte
		says   string
		reason string
	}{
		{"empty.json", nil, "empty.json was not loaded", "an empty file"},
		{"words.json", []byte("Dear Chief,"), "words.json was not loaded", "no JSON at all"},
		{"list.json", []byte("[]"), "list.json was not loaded", "another kind of JSON"},
		{"unknown-field.json", altered(t, `"standard": true`, `"standrad": true`), "standrad", "a misspelled field is named"},
		{"negative-gvwr.json", altered(t, `"gvwr_lb": 9500`, `"gvwr_lb": -9500`), "gvwr", "a rating below zero is named"},
		{"unknown-group.json", altered(t, `"group": "body-build"`, `"group": "no-such-group"`), "no-such-group", "an option of no group is named"},
		{"twice.json", altered(t, `"id": "build-stitch"`, `"id": "build-seam"`), "build-seam", "one id for two options is named"},
		{"markup.json", altered(t, `"id": "build-stitch"`, `"id": "<img src=x onerror=alert(1)>"`), "was not loaded", "markup in an id stays text"},
		{"deep.json", []byte(strings.Repeat(`[`, 100_000)), "deep.json was not loaded", "brackets without end"},
		{"large.json", bytes.Repeat([]byte(" "), 17<<20), "the most that is read", "more than is read at all"},
	} {
		w.must(w.Choose("#f-catalogue", written(t, x.name, x.data)))
		w.must(w.Until(`!document.getElementById("trouble").hidden`))
		w.must(w.Settle())
		require.Contains(t, w.trouble(), x.says, x.reason)
		require.Less(t, len(w.trouble()), 900, x.reason)
		require.Equal(t, draft, w.draft(), x.reason)
		require.Equal(t, block, w.text("#main"), "%s: the catalogue in use stays", x.reason)
		require.False(t, w.has("#trouble img"), x.reason)
		w.area("weight")
		w.area("catalogue")
		require.Empty(t, w.trouble(), x.reason)
	}
}

func TestAnotherCatalogueIsUsedAndKept(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.pick("fb-push")
	w.area("catalogue")
	other := altered(t, `"title": "Demonstration catalogue of an invented plant"`,
		`"title": "Another invented plant"`)
	w.must(w.Choose("#f-catalogue", written(t, "other.json", other)))
	w.must(w.Until(`document.getElementById("main").innerText.includes("Another invented plant")`))
	require.Empty(t, w.trouble())
	draft := w.draft()
	require.Contains(t, draft, `"fb-push"`, "what the editions share is carried over")
	w.must(w.Reload())
	w.must(w.Until(`document.getElementById("main").innerText.includes("Another invented plant")`))
	require.Equal(t, draft, w.draft())
	require.Empty(t, w.trouble())
	w.click(`[data-act="demo-catalogue"]`)
	require.Contains(t, w.text("#main"), "Demonstration catalogue of an invented plant")
}

func TestQuoteFiles(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.pick("fb-push")
	w.area("start")
	draft := w.draft()
	for _, x := range []struct{ name, data, says, reason string }{
		{"unknown-option.json", strings.Replace(draft, `"fb-push"`, `"fb-no-such-thing"`, 1), "fb-no-such-thing", "an option this edition does not have is named"},
		{"unknown-chassis.json", strings.Replace(draft, `"cut-14500-158-gas"`, `"cut-99"`, 1), "cut-99", "a chassis this edition does not have is named"},
		{"negative.json", strings.Replace(draft, `"qty":1`, `"qty":-1`, 1), "was not opened", "fewer than none of an option"},
		{"half.json", draft[:len(draft)/2], "was not opened", "half a file"},
	} {
		require.NotEqual(t, draft, x.data, x.reason)
		w.must(w.Choose("#f-draft", written(t, x.name, []byte(x.data))))
		w.must(w.Until(`!document.getElementById("trouble").hidden`))
		require.Contains(t, w.trouble(), x.says, x.reason)
		require.Equal(t, draft, w.draft(), x.reason)
		w.area("weight")
		w.area("start")
	}
	w.click("#begin-van-9500-148-gas")
	require.NotEqual(t, draft, w.draft())
	w.must(w.Choose("#f-draft", written(t, "sound.json", []byte(draft))))
	require.Eventually(t, func() bool { return w.draft() == draft }, drive.Patience, 20*time.Millisecond)
	require.Empty(t, w.trouble())
}

// What else may stand there is tried without a browser, in stored.test.js and by the core.
func TestKeptStateThatCannotBeUsed(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	for _, x := range []struct {
		change string
		told   bool // whether something of worth is lost, which must be said
		reason string
	}{
		{`s.draft.unit.picks[0].option = "no-such-thing"`, true, "an unknown option id"},
		{`s.draft = 7`, true, "not a draft"},
		{`s.view.from_another_version = 1`, false, "a view of another version"},
	} {
		t.Run(x.reason, func(t *testing.T) {
			w := &window{w.Tab, t, w.form, w.address}
			eval[bool](w, inStorage(x.change+`; return true`))
			w.must(w.Reload())
			if x.told {
				require.NoError(t, w.Until(`!document.getElementById("trouble").hidden ||
					document.getElementById("bar").innerText.includes("cannot be read")`), x.reason)
			}
			w.area("unit")
			require.Empty(t, w.trouble(), x.reason)
			w.area("weight")
			if x.told { // another case begins with a start too
				w.must(w.Reload())
			}
			require.Empty(t, w.trouble(), "%s: told once", x.reason)
		})
	}
}

// What went wrong is seen where the reader is, however far down a page and however small.
func TestWhatWentWrongIsSeenInTheWindow(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.area("catalogue")
	w.must(w.Choose("#f-catalogue", written(t, "words.json", []byte("Dear Chief,"))))
	w.must(w.Until(`!document.getElementById("trouble").hidden`))
	for _, screen := range []drive.Screen{drive.Desk, drive.Phone, {Width: 320, Height: 256}} {
		w.must(w.Resize(screen))
		for _, top := range []string{"0", "document.scrollingElement.scrollHeight"} {
			seen := eval[[4]float64](w, `(window.scrollTo(0, `+top+`), (({ left, top, right, bottom }) =>
				[left, top, innerWidth - right, innerHeight - bottom])(document.getElementById("notices").getBoundingClientRect()))`)
			for _, gap := range seen {
				require.GreaterOrEqual(t, gap, 0.0, "%v of %d px from %s", seen, screen.Width, top)
			}
		}
	}
}
