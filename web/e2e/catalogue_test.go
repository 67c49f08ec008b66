package e2e

import (
	"bytes"
	"encoding/base64"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// catching keeps what the page saves as a file where a test can read it.
const catching = `(() => { const plain = URL.createObjectURL; URL.createObjectURL = (blob) => { if (!(blob.type || "").includes("javascript")) globalThis.__saved = blob; return plain.call(URL, blob); }; HTMLAnchorElement.prototype.click = function () { globalThis.__name = this.download; }; })()`

// saved is the file that a press saves.
func (w *window) saves(selector string) (name string, data []byte) {
	w.t.Helper()
	eval[bool](w, `(globalThis.__saved = undefined, true)`)
	w.click(selector)
	w.must(w.Until(`globalThis.__saved`))
	text := eval[string](w,
		`new Promise((done) => { const r = new FileReader(); r.onload = () => done(r.result.split(",")[1]); r.readAsDataURL(globalThis.__saved); })`)
	data, err := base64.StdEncoding.DecodeString(text)
	w.must(err)
	return eval[string](w, `globalThis.__name`), data
}

func (w *window) keeping() {
	w.t.Helper()
	w.area("catalogue")
}

// takes chooses files for a field and waits for the answer.
func (w *window) takes(selector, file, shows string) {
	w.t.Helper()
	w.must(w.Choose(selector, file))
	w.must(w.Until(`document.getElementById("main").innerText.includes(` + drive.Quote(shows) + `)`))
	w.must(w.Settle())
}

func TestATableGoesOutIsEditedAndComesBack(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "", catching)
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.keeping()
	name, table := w.saves("#out-prices")
	require.Equal(t, "prices.csv", name)
	require.True(t, bytes.HasPrefix(table, []byte("\ufeffid,what,price,")))

	bad := bytes.Replace(table, []byte("Push bumper,1460.00"), []byte("Push bumper,a lot"), 1)
	w.takes("#f-tables", written(t, "mine.csv", bad), "Not taken: mine.csv")
	require.Contains(t, w.text("#refused"),
		`"fb-push", column price: “a lot” is not a number of dollars: write one such as 18500 or $18,500`)
	require.Equal(t, "refused", eval[string](w, `document.activeElement.id`))
	require.False(t, w.has("#beside"))

	// As a spreadsheet of another country saves it.
	good := bytes.ReplaceAll(bytes.Replace(table, []byte("Push bumper,1460.00"), []byte("Push bumper,1500"), 1),
		[]byte("\n"), []byte("\r\n"))
	w.takes("#f-tables", written(t, "mine.csv", good), "The other edition, not in use yet")
	require.False(t, w.has("#refused"))
	require.Contains(t, flat(w.text("#main")), "Push bumper fb-push the first day 1,460.00 1,500.00 40.00 +2.7 %")
	w.must(w.Until(`document.getElementById("touched").innerText.includes("looked at.")`))
	require.Contains(t, w.text("#touched"), "0 saved quotes are touched, of 1 looked at.")
	w.typed(`#f-edition\.name`, "2027-02")
	name, file := w.saves("#save-beside")
	require.Equal(t, "demo-2027-02.json", name)
	require.Equal(t, altered(t, `"fb-push": "1460.00"`, `"fb-push": "1500.00"`),
		bytes.Replace(file, []byte(`"edition": "2027-02"`), []byte(`"edition": "2026-11"`), 1))

	w.click("#use-beside")
	require.Empty(t, w.trouble())
	require.Contains(t, w.text("#main"), "The edition before")
	// The kept quotes are looked through again, and what is said of them moves what stands below it.
	w.must(w.Until(`document.getElementById("touched").innerText.includes("looked at.")`))
	w.click("#lint-now")
	require.Contains(t, w.text("#lint"), "No open items were found.")
	w.must(w.Reload())
	require.Contains(t, w.text("#main"), "edition 2027-02")
	w.area("start")
	require.Contains(t, w.text("#main"), "edition 2027-02")
	w.area("catalogue")
	w.click(`[data-act="demo-catalogue"]`)
	require.Contains(t, w.text("#main"), "edition 2026-11")
	require.Empty(t, w.trouble())
}

// The file that the page makes of itself is the one that the packer makes.
func TestTheCatalogueIsHandedOutInOneFile(t *testing.T) {
	t.Parallel()
	own := bytes.Replace(altered(t, `"title": "Demonstration catalogue of an invented plant"`,
		`"title": "Own <b>catalogue</b>, ½ invented"`), []byte(`"fb-push": "1460.00"`), []byte(`"fb-push": "1500.00"`),
		1)
	want := *built
	want.Catalogue = own
	eachForm(t, func(t *testing.T, f form) {
		w := open(t, f, drive.Desk, "", catching)
		w.area("needs")
		w.typed("#f-title", "A quote that stays here")
		w.area("catalogue")
		w.must(w.Choose("#f-catalogue", written(t, "own.json", own)))
		w.must(w.Until(`document.getElementById("main").innerText.includes("½ invented")`))
		w.must(w.Settle())
		w.keeping()
		name, file := w.saves("#embed")
		require.Equal(t, "boxwright-demo-2026-11.html", name)
		require.NotContains(t, string(file), "A quote that stays here")
		require.True(t, bytes.Equal(want.Single(), file), "as the packer writes it")

		o := open(t, form{name: "own", address: "file://" + written(t, name, file), offline: true, lean: true},
			drive.Desk, "")
		require.Contains(t, o.text("#main"), "Own <b>catalogue</b>, ½ invented, edition 2026-11")
		o.begin("cut-14500-158-gas", "mod-146-72")
		o.pick("fb-push")
		require.Empty(t, o.trouble())
		for _, r := range o.Requests() {
			require.True(t, strings.HasPrefix(r, "file:") || strings.HasPrefix(r, "blob:"), r)
		}
		// Its core dies and comes back with the same catalogue.
		o.must(o.EndCore())
		o.area("catalogue")
		require.Contains(t, o.text("#main"), "½ invented")
		require.Empty(t, o.trouble())
	})

	// The packer's folder form begins with it too, and works without its host.
	h := serve(t, onDisk(t, &want))
	w := open(t, form{name: "folder", address: h.address, lean: true}, drive.Desk, "")
	require.Contains(t, w.text("#main"), "½ invented")

	// One that is broken is told of.
	want.Catalogue = []byte("{")
	path := filepath.Join(t.TempDir(), "broken.html")
	require.NoError(t, os.WriteFile(path, want.Single(), 0o600))
	w = open(t, form{name: "broken", address: "file://" + path, offline: true, lean: true}, drive.Desk, "")
	require.Contains(t, w.trouble(), "The catalogue built into this page cannot be used, and the demonstration "+
		"catalogue takes its place.")
	require.Contains(t, w.text("#main"), "Demonstration catalogue")
	w.area("weight")
	require.Empty(t, w.trouble())
}

// A quote made with one edition stays as it is under another, through undo and
// reload, until it is moved.
func TestAQuoteWaitsToBeMoved(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "", engine(t))
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.pick("fb-push")
	w.area("needs")
	w.typed("#f-title", "Medic 4")
	before := w.draft()
	w.click("#go-quotes")
	w.click("#kept-fresh")
	w.keeping()
	w.takes("#f-beside", written(t, "next.json", altered(t, `"fb-push": "1460.00"`, `"fb-push": "1500.00"`)),
		"The other edition, not in use yet")
	w.click("#use-beside")
	w.must(w.Until(`document.getElementById("touched").innerText.includes("1 saved quote is touched, of 2 looked at.")`))
	require.Contains(t, flat(w.text("#touched")), "Medic 4")

	w.click("#go-quotes")
	w.click("#kept-open-1")
	w.must(w.Until(`document.getElementById("elsewhere")`))
	require.Equal(t, before, w.draft())
	w.check("a quote of another edition")
	w.area("needs")
	w.typed("#f-title", "Another title")
	require.Contains(t, w.trouble(), "Move it to the edition in use first")
	require.Equal(t, before, w.draft())
	w.must(w.Reload())
	require.Equal(t, before, w.draft())
	w.click(`[data-act="undo"]`)
	require.True(t, w.has("#elsewhere"), "an earlier state is of that edition too")
	w.click(`[data-act="redo"]`)
	require.Equal(t, before, w.draft())
	w.click("#move-here")
	require.False(t, w.has("#elsewhere"))
	require.Contains(t, w.draft(), `"fb-push"`)
	require.NotEqual(t, before, w.draft())
	w.click(`[data-act="undo"]`)
	require.Equal(t, before, w.draft(), "the state before stays")
	require.Empty(t, w.trouble())
}

func TestKeepingIsForEverybody(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "", engine(t))
	check := w.onBothScreens()
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.keeping()
	check("keeping a catalogue")
	w.takes("#f-tables", written(t, "bad.csv", []byte("id,then\nx,y\n")), "Not taken")
	check("a table that was not taken")
	next := bytes.Replace(altered(t, `"mod-146-72": "130200.00"`, `"mod-146-72": "131200.00"`),
		[]byte(`"rules": [`),
		[]byte(`"rules": [{"id": "new", "kind": "plant", "then": {"not": {"pick": "fb-winch"}}, "reason": "None are left."},`), 1)
	w.takes("#f-beside", written(t, "next.json", next), "The other edition, not in use yet")
	w.must(w.Until(`document.getElementById("touched").innerText.includes("looked at.")`))
	w.click("#lint-now")
	check("an edition beside the one in use")
	require.Contains(t, w.text("#lint"), "can be in no unit")
}
