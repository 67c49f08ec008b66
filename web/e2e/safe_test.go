package e2e

import (
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
	"boxwright/web/e2e/drive"
)

// deaf has a core that never answers a request with the kept catalogue in it, and
// the page impatient with it.
const deaf = `(() => {
	const Plain = window.Worker;
	window.Worker = class extends Plain {
		postMessage(message, ...all) {
			if (!message?.request?.includes('"do":"kept-catalogue"')) return super.postMessage(message, ...all);
			window.__swallowed = (window.__swallowed || 0) + 1;
		}
	};
	const plain = window.setTimeout;
	window.setTimeout = (what, ms, ...rest) => plain(what, ms === 20000 ? 500 : ms, ...rest);
})()`

// keepCatalogue keeps a text as the catalogue in use.
const keepCatalogue = `new Promise((done) => {
	const o = indexedDB.open("boxwright");
	o.onsuccess = () => {
		const t = o.result.transaction("kept", "readwrite");
		t.objectStore("kept").put("{}", "catalogue");
		t.oncomplete = () => { o.result.close(); done(true); };
	};
})`

const swallowed = `(window.__swallowed || 0)`

// A kept catalogue that the core dies of does not keep the page from starting: it
// starts without, says so, and the catalogue can be saved, tried again or taken out.
func TestAKeptCatalogueCannotStopTheStart(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "", deaf)
	w.area("needs")
	w.typed("#f-title", "Rescue 4")
	draft := w.draft()
	eval[bool](w, keepCatalogue)

	w.must(w.Reload())
	require.Equal(t, 1, eval[int](w, swallowed), "it was tried once")
	require.Contains(t, w.text("#bar"), "the catalogue kept here")
	require.Equal(t, draft, w.draft(), "the quote is there")
	w.must(w.Reload())
	require.Zero(t, eval[int](w, swallowed), "it is not tried again by itself")

	eval[bool](w, `([...document.querySelectorAll("#bar button")].find((b) => b.textContent === "What is kept here").click(), true)`)
	w.must(w.Until(`!document.getElementById("rescue").hidden`))
	panel := w.text("#rescue")
	require.Contains(t, panel, "Rescue 4")
	require.Contains(t, panel, "The page did not start with this.")
	require.Contains(t, w.saving(`#rescue p button`), "Rescue 4", "every quote can be saved")
	out := `([...document.querySelectorAll("#rescue li")].find((l) => l.innerText.includes("Catalogue")).querySelector("button:last-of-type"))`
	eval[bool](w, `(`+out+`.click(), `+out+`.click(), true)`)
	w.must(w.Until(`!document.getElementById("rescue").innerText.includes("Catalogue")`))
	w.must(w.Reload())
	require.False(t, w.has("#bar:not([hidden])"), "nothing is left to tell of")
	require.Equal(t, draft, w.draft())
}

// A page that ended while it tried a catalogue, as when the browser itself gave up,
// starts without it the next time.
func TestAStartThatNeverEndedIsNotRepeated(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.area("needs")
	w.typed("#f-title", "Rescue 4")
	draft := w.draft()
	eval[bool](w, keepCatalogue)
	eval[bool](w, `(localStorage.setItem("boxwright.trying.gone", '{"catalogue":true}'), true)`)
	w.must(w.Reload())
	require.Contains(t, w.text("#bar"), "the catalogue kept here")
	require.Empty(t, w.trouble())
	require.Equal(t, draft, w.draft())
}

// The panel of what is kept needs no core.
func TestThePanelNeedsNoCore(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.area("needs")
	w.typed("#f-title", "Rescue 4")
	w.eventually("Rescue 4")
	o := w.again("")
	o.must(o.Visit(o.address + "#kept"))
	o.must(o.Until(`document.getElementById("rescue")?.innerText.includes("Rescue 4")`))
	require.Contains(t, o.saving(`#rescue p button`), "Rescue 4")
}

// Whatever stands in the storage, the page starts, and nothing of it goes.
func TestSpoiledStorageStopsNothing(t *testing.T) {
	t.Parallel()
	const count = `new Promise((done) => { const q = indexedDB.open("boxwright"); q.onsuccess = () => { q.result.transaction("quotes").objectStore("quotes").count().onsuccess = (e) => { q.result.close(); done(e.target.result); }; }; })`
	w := open(t, folder, drive.Desk, "")
	w.area("needs")
	for reason, spoil := range seeds.InOrder(map[string]string{
		"a draft of the wrong type":         `s.draft = "gone"`,
		"a record that says nothing":        `for (const k of Object.keys(s)) if (k !== "id") delete s[k]`,
		"a view and pins of the wrong type": `s.view = 7; s.pins = "x"; s.gist = null; s.at = -3; s.count = "many"`,
	}) {
		t.Run(reason, func(t *testing.T) {
			w := &window{w.Tab, t, w.form, w.address}
			w.typed("#f-title", "Spoiled: "+reason)
			w.eventually("Spoiled: " + reason)
			eval[any](w, inStorage(spoil+"; return true"))
			before := eval[int](w, count)
			w.must(w.Reload())
			require.Empty(t, w.trouble())
			w.area("needs")
			w.typed("#f-title", "After "+reason)
			w.eventually("After " + reason)
			require.GreaterOrEqual(t, eval[int](w, count), before)
		})
	}
	w.typed("#f-title", "Rescue 4")
	w.eventually("Rescue 4")
	eval[bool](w, `(localStorage.setItem("boxwright.screen", "[1"), localStorage.setItem("boxwright.suspect", "{"),
		localStorage.setItem("boxwright.unsaved.x", "{}"), localStorage.setItem("boxwright.costs.1", "x y z"), true)`)
	w.must(w.Reload())
	require.Empty(t, w.trouble())
	require.Contains(t, w.text("#masthead"), "Rescue 4")
}

// storageRefused is a browser that keeps nothing for the page, as some do in private windows.
const storageRefused = `for (const name of ["localStorage", "sessionStorage", "indexedDB"])
	Object.defineProperty(window, name, { get() { throw new DOMException("denied", "SecurityError"); } });`

// Where nothing can be saved the page starts, says so, lists nothing as saved, and loses nothing
// while its window is open.
func TestWithoutStorageThePageSaysSo(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		w := open(t, f, drive.Desk, "", storageRefused)
		w.begin("cut-14500-158-gas", "mod-146-72")
		w.area("needs")
		w.typed("#f-title", "Medic 1")
		require.Contains(t, w.text("#not-kept"), "gone when this window closes. This browser refuses to save anything")
		require.Contains(t, w.text("#masthead"), "NOT saved")
		require.True(t, eval[bool](w, leaving), "who leaves is asked first")
		w.head("#go-quotes")
		require.Contains(t, w.text("#kept-quotes"), "No quote is saved on this device.")
		w.click("#kept-fresh")
		w.must(w.Until(`document.getElementById("bar").innerText.startsWith("The quote before this one is not saved.")`))
		require.NotContains(t, w.text("#masthead"), "Medic 1")
		w.click(`[data-act="undo"]`)
		require.Contains(t, w.text("#masthead"), "Medic 1")

		r := open(t, f, drive.Phone, "#"+w.link(), storageRefused)
		require.Contains(t, r.text("#not-kept"), "keep the link you were sent")
		require.False(t, eval[bool](r, leaving), "a reader entered nothing")
	})
}

// full is a browser in which nothing more can be written while window.__full is set: the
// request fails, with it its transaction, and both say why. Reading and deleting go on.
const full = `(() => {
	const noRoom = (e) => (e?.name === "ConstraintError" ? new DOMException("no room", "QuotaExceededError") : e);
	for (const kind of [IDBRequest.prototype, IDBTransaction.prototype]) {
		const { get } = Object.getOwnPropertyDescriptor(kind, "error");
		Object.defineProperty(kind, "error", { get() { return noRoom(get.call(this)); } });
	}
	const { put } = IDBObjectStore.prototype;
	IDBObjectStore.prototype.put = function (...all) {
		const request = put.apply(this, all);
		return window.__full ? this.add(...all) : request; // a second of its kind is refused
	};
	const { setItem } = Storage.prototype;
	Storage.prototype.setItem = function (...all) {
		if (window.__full) throw new DOMException("no room", "QuotaExceededError");
		setItem.apply(this, all);
	};
})()`

// On a full disk the page says so and what to do, loses nothing of the quote, and saves it
// as soon as another one is deleted.
func TestAFullDisk(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "", full)
	w.area("needs")
	w.typed("#f-title", "Rescue 3")
	w.eventually("Rescue 3")
	w.head("#go-quotes")
	w.click("#kept-fresh")
	w.area("needs")
	w.typed("#f-title", "Rescue 4")
	w.eventually("Rescue 4")

	eval[bool](w, `window.__full = true`)
	w.typed("#f-title", "Rescue 5")
	w.typed("#f-title", "Rescue 6")
	w.must(w.Until(`document.getElementById("not-kept")`))
	said := w.text("#not-kept")
	require.Contains(t, said, "no room left")
	require.Contains(t, said, "under Saved quotes")
	require.Contains(t, w.text("#masthead"), "NOT saved")
	require.NotContains(t, w.text("#bar"), "another window")
	require.True(t, eval[bool](w, leaving), "who leaves is asked first")
	require.Contains(t, w.saving("#not-kept-save"), "Rescue 6")
	w.click(`[data-act="undo"]`)
	w.click(`[data-act="undo"]`)
	require.Contains(t, w.text("#masthead"), "Rescue 4")
	w.click(`[data-act="redo"]`)
	w.click(`[data-act="redo"]`)
	require.Contains(t, w.text("#masthead"), "Rescue 6")

	w.head("#go-quotes")
	require.Contains(t, w.text("#kept-quotes"), "Rescue 3")
	eval[bool](w, `window.__full = false, true`) // deleting makes room
	eval[bool](w, `([...document.querySelectorAll("#kept-quotes tr")].find((r) => r.innerText.includes("Rescue 3")).
		querySelector("[id^=kept-drop]").click(), true)`)
	w.must(w.Until(`!document.getElementById("not-kept")`))
	w.must(w.Reload())
	require.Contains(t, w.text("#masthead"), "Rescue 6")
	require.Equal(t, 1, len(w.kept()))
}

// A database of a newer version of the page is read and not written.
func TestANewerDatabaseIsLeftAlone(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.area("needs")
	w.typed("#f-title", "Rescue 4")
	w.eventually("Rescue 4")
	draft := w.draft()
	w.must(w.Visit("about:blank"))
	w.must(w.Visit(w.address + "manifest.json")) // the same origin without the page
	eval[bool](w, `new Promise((done) => {
		const o = indexedDB.open("boxwright", 9);
		o.onupgradeneeded = () => {};
		o.onsuccess = () => { o.result.close(); done(true); };
	})`)
	w.must(w.Open(w.address))
	require.Contains(t, w.text("#not-kept"), "A newer version of this page")
	require.Contains(t, w.text("#masthead"), "Rescue 4")
	w.area("needs")
	w.typed("#f-title", "Changed")
	require.Equal(t, draft, w.draft())
	require.Empty(t, w.trouble())
}

// Text that is typed and has not left its field comes back after the window was killed.
func TestWhatIsTypedIsKeptWhileItIsTyped(t *testing.T) {
	t.Parallel()
	f := folder
	f.apart = true
	w := open(t, f, drive.Desk, "")
	w.area("needs")
	w.typed("#f-title", "Rescue 4")
	w.eventually("Rescue 4")
	eval[bool](w, `(() => {
		const f = document.getElementById("f-title");
		f.focus();
		f.value = "Rescue 4 of the county";
		f.dispatchEvent(new InputEvent("input", { bubbles: true }));
		return true;
	})()`)
	w.must(w.Until(`Object.keys(localStorage).some((k) => k.startsWith("boxwright.typed."))`))
	require.NotContains(t, w.draft(), "of the county")
	o := w.again("")
	w.must(w.Kill())
	o.must(o.Open(o.address))
	o.eventually("Rescue 4 of the county")
	o.must(o.Until(`!Object.keys(localStorage).some((k) => k.startsWith("boxwright.typed."))`))
}

// Three windows on one quote, of which one is killed and one loaded anew: there is
// never more than one that writes, and nothing that was typed goes.
func TestThreeWindowsOnOneQuote(t *testing.T) {
	t.Parallel()
	f := folder
	f.apart = true
	first := open(t, f, drive.Desk, "")
	first.area("needs")
	first.typed("#f-title", "First")
	first.eventually("First")
	second, third := first.again(first.address), first.again(first.address)
	for _, o := range []*window{second, third} {
		o.must(o.Until(`document.querySelector("#bar:not([hidden])")`))
		o.area("needs")
	}
	second.typed("#f-title", "Second")
	third.typed("#f-title", "Third")
	first.typed("#f-title", "First again")
	first.eventually("First again")
	require.Equal(t, "Second", eval[string](second, `document.getElementById("f-title").value`))
	require.Equal(t, "Third", eval[string](third, `document.getElementById("f-title").value`))
	require.False(t, first.has("#bar:not([hidden])"))

	must := second.again("")
	first.must(first.Kill())
	must.Close()
	second.click("#bar button:first-of-type")
	second.eventually("Second")
	third.must(third.Reload())
	third.must(third.Until(`document.querySelector("#bar:not([hidden])")`))
	require.Contains(t, third.draft(), "Second", "what the first wrote before it was killed, and then the second")
	third.area("needs")
	third.typed("#f-title", "Third again")
	third.click("#bar button:last-of-type") // work on a copy
	third.eventually("Third again")
	require.Len(t, third.kept(), 2)
	require.Contains(t, second.text("#masthead"), "Second")
}
