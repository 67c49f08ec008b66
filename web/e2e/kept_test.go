package e2e

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
	"boxwright/web/e2e/drive"
)

// inStorage reads the record of the quote in work where the browser keeps it,
// lets the script change it, and puts it back.
func inStorage(script string) string {
	return `new Promise((done) => {
		const o = indexedDB.open("boxwright");
		o.onsuccess = () => {
			const t = o.result.transaction(["kept", "quotes"], "readwrite");
			let answer = null;
			t.objectStore("kept").get("last").onsuccess = (e) => {
				t.objectStore("quotes").get(e.target.result).onsuccess = (f) => {
					const s = f.target.result;
					answer = (() => { ` + script + ` })();
					t.objectStore("quotes").put(s);
				};
			};
			t.oncomplete = () => { o.result.close(); done(answer); };
		};
	})`
}

// stored is everything the browser keeps for the page but what is sealed.
const stored = `new Promise((done) => {
	const o = indexedDB.open("boxwright");
	o.onsuccess = async () => {
		const t = o.result.transaction(["kept", "quotes", "steps"]);
		const all = (name) => new Promise((r) => { t.objectStore(name).getAll().onsuccess = (e) => r(e.target.result); });
		const what = await Promise.all([all("kept"), all("quotes"), all("steps")]);
		o.result.close();
		done(JSON.stringify(what));
	};
})`

func (w *window) kept() []string {
	w.t.Helper()
	w.head("#go-quotes")
	return eval[[]string](w,
		`[...document.querySelectorAll("#kept-quotes table:first-of-type tbody tr")].filter((r) => r.querySelector("[id^=kept-open],.how")).map((r) => r.innerText.replace(/\s+/g, " "))`)
}

// again is the same profile after the window was killed: a second window of the
// same browser that finds what the first one kept.
func (w *window) again(address string) *window {
	w.t.Helper()
	tab := w.another()
	w.t.Cleanup(func() {
		require.Empty(w.t, tab.Faults(), "errors of scripts or refusals of the security policy")
		tab.Close()
	})
	o := &window{tab, w.t, w.form, w.address}
	if address != "" {
		o.must(o.Open(address))
	}
	return o
}

// eventually waits until the draft in storage holds a text.
func (w *window) eventually(text string) {
	w.t.Helper()
	require.Eventually(w.t, func() bool { return strings.Contains(w.draft(), text) }, drive.Patience,
		20*time.Millisecond, text)
}

func TestKilledWindowLosesNothing(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		f.offline, f.apart = false, true
		w := open(t, f, drive.Desk, "")
		w.begin("cut-14500-158-gas", "mod-146-72")
		w.pick("hvac-roof")
		w.area("needs")
		w.typed("#f-title", "Rescue 4")
		draft := w.draft()
		o, second := w.again(""), w.again(w.address)
		second.must(second.Until(`document.getElementById("bar").innerText.includes("open in another window")`))
		w.must(w.Kill())
		second.must(second.Until(`document.getElementById("bar").innerText.includes("that had this quote open is closed")`))
		o.must(o.Open(o.address))
		require.Equal(t, draft, o.draft())
		require.False(t, o.has("#bar:not([hidden])"), "nobody else holds the quote any more")
		o.click(`[data-act="undo"]`)
		require.NotEqual(t, draft, o.draft(), "what was done before the window was killed can be undone")
		o.click(`[data-act="redo"]`)
		require.Equal(t, draft, o.draft())
	})
}

// The database takes a moment to write; a window that ends in that very moment
// loses nothing all the same.
func TestWindowEndsWhileItSaves(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("needs")
	// The transaction is held open by an answer that never comes: the page goes first.
	eval[bool](w,
		`(IDBObjectStore.prototype.get = function () { return {}; }, IDBTransaction.prototype.objectStore = ((plain) => function (name) { const s = plain.call(this, name); const stay = () => { s.count().onsuccess = stay; }; stay(); return s; })(IDBTransaction.prototype.objectStore), true)`)
	w.typed("#f-title", "The very last thing")
	w.must(w.Reload())
	require.Contains(t, w.draft(), "The very last thing")
}

// leaving asks the page whether the browser is to ask before it leaves.
const leaving = `!dispatchEvent(new Event("beforeunload", { cancelable: true }))`

func TestTwoWindowsOnOneQuote(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		f.offline = false
		w := open(t, f, drive.Desk, "")
		w.begin("cut-14500-158-gas", "mod-146-72")
		w.area("needs")
		w.typed("#f-title", "First window")
		draft := w.draft()

		second := w.again(w.address)
		second.must(second.Until(`document.querySelector("#bar:not([hidden])")`))
		require.Contains(t, second.text("#bar"), "open in another window")
		second.must(second.Until(`document.querySelector(".subject").innerText.includes("NOT saved from this window")`))
		second.area("needs")
		require.False(t, eval[bool](second, leaving), "nothing waits here")
		second.typed("#f-title", "Second window")
		require.Equal(t, draft, second.draft(), "nothing is overwritten")
		require.True(t, eval[bool](second, leaving), "who leaves is asked first: what waits is kept nowhere")
		require.Equal(t, "Second window", eval[string](second, `document.querySelector("#f-title").value`),
			"what was typed stays in its field")
		w.typed("#f-title", "The first goes on")
		w.eventually("The first goes on")
		second.must(second.Until(`document.getElementById("bar").innerText.includes("what you read here is older")`))
		require.False(t, w.has("#bar:not([hidden])"), "who holds the quote holds it until it is asked for")

		second.click("#bar button:first-of-type") // take it over
		second.must(second.Until(`document.querySelector("#bar").hidden`))
		w.eventually("Second window") // what waited is done now
		second.typed("#f-title", "Taken over")
		require.False(t, eval[bool](second, leaving), "what waited is done")
		require.Contains(t, second.text(".subject"), "saved on this device")
		w.eventually("Taken over") // taking over reads the quote first; what is typed meanwhile waits
		w.must(w.Until(`document.querySelector("#bar:not([hidden])")`))
		taken := second.draft()
		w.typed("#f-title", "Written over")
		require.Equal(t, taken, w.draft())

		w.click("#bar button:last-of-type") // work on a copy
		w.area("needs")
		w.typed("#f-title", "The copy")
		w.eventually("The copy")
		require.Len(t, w.kept(), 2)
	})
}

func TestKeptQuotesAndTheirFile(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		w := open(t, f, drive.Desk, "")
		w.begin("cut-14500-158-gas", "mod-146-72")
		w.area("needs")
		w.typed("#f-title", "Medic 1")
		w.head("#go-quotes")
		w.click("#kept-fresh")
		w.must(w.Until(`!document.getElementById("masthead").innerText.includes("Medic 1")`))
		w.area("needs")
		w.typed("#f-title", "Medic 2")
		list := w.kept()
		require.Len(t, list, 2)
		require.Contains(t, list[0], "Medic 2")
		require.Contains(t, list[1], "Medic 1")
		w.click("#kept-open-1")
		w.must(w.Until(`document.getElementById("masthead").innerText.includes("Medic 1")`))
		require.Contains(t, w.draft(), "Medic 1")

		file := w.saving("#kept-export")

		o := open(t, f, drive.Desk, "")
		o.head("#go-quotes")
		o.must(o.Choose("#f-import", written(t, "all.json", []byte(file))))
		o.must(o.Until(`document.querySelectorAll("#kept-quotes [id^=kept-open]").length >= 2`))
		require.Empty(t, o.trouble())
		require.Len(t, o.kept(), 3)

		var whole map[string]any
		require.NoError(t, json.Unmarshal([]byte(file), &whole))
		for reason, text := range seeds.InOrder(map[string]string{
			"no file of ours":         `{"format":"boxwright-quote/1"}`,
			"half of it":              file[:len(file)/2],
			"markup where an id is":   strings.Replace(file, `"fb-`, `"<img src=x onerror=alert(1)>`, 1) + "x",
			"a field nobody knows":    strings.Replace(file, `"format"`, `"onload":1,"format"`, 1),
			"a draft of another form": strings.Replace(file, `boxwright-quote/1`, `boxwright-quote/9`, 1),
		}) {
			o.must(o.Choose("#f-import", written(t, "bad.json", []byte(text))))
			o.must(o.Until(`!document.getElementById("trouble").hidden`))
			require.Contains(t, o.trouble(), "was not taken in", reason)
			require.Len(t, o.kept(), 3, reason)
		}
	})
}

// A file that would be too large to be read back leaves the earlier states out,
// and says so.
func TestFileWithoutEarlierStatesSaysSo(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("needs")
	w.typed("#f-title", "Medic 1")
	w.head("#go-quotes")
	require.Contains(t, w.saving("#kept-export"), `"when"`, "a small file has the earlier states")
	require.Empty(t, w.trouble())

	eval[bool](w, `new Promise((done) => {
		const o = indexedDB.open("boxwright");
		o.onsuccess = () => {
			const t = o.result.transaction("steps", "readwrite"), store = t.objectStore("steps");
			store.openCursor().onsuccess = (e) => { store.put({ ...e.target.result.value, said: "x".repeat(17 << 20) }, e.target.result.key); };
			t.oncomplete = () => { o.result.close(); done(true); };
		};
	})`)
	file := w.saving("#kept-export")
	require.NotContains(t, file, `"when"`)
	require.Contains(t, file, "Medic 1")
	require.Contains(t, w.trouble(), "but not its earlier states")
}

// The form of a quote's file can be had from either form of the page, without a
// network from the one file.
func TestSchemaCanBeSaved(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		w := open(t, f, drive.Desk, "")
		w.area("catalogue")
		var schema struct {
			Defs map[string]any `json:"$defs"`
		}
		require.NoError(t, json.Unmarshal([]byte(w.saving("#save-schema")), &schema))
		require.Contains(t, schema.Defs, "Draft")
		require.Empty(t, w.trouble())
	})
}

func TestEarlierStates(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	first := w.draft()
	w.area("needs")
	w.typed("#f-title", "One")
	w.typed("#f-title", "Two")
	w.must(w.Reload())
	w.head("#go-quotes")
	w.click("#fold-trail summary")
	w.must(w.Until(`document.querySelectorAll("#fold-trail tbody tr").length >= 3`))
	said := eval[string](w, `document.querySelector("#fold-trail tbody").innerText`)
	require.Contains(t, said, "Unit name or number: Two", "a state is called by the label of its field")
	require.NotContains(t, said, "title")
	w.click("#fold-trail tbody tr:nth-child(3) button")
	require.Equal(t, first, w.draft())
}
