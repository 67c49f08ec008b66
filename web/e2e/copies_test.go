package e2e

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// inFolder has the page choose a folder that stands in for one of the computer's: the
// browser's own private one.
const inFolder = `window.showDirectoryPicker = async () =>
	(await navigator.storage.getDirectory()).getDirectoryHandle("copies", { create: true })`

// folderFiles is what stands in that folder, by name. A file that is exchanged just
// then is not there for a moment.
const folderFiles = `(async () => {
	const dir = await (await navigator.storage.getDirectory()).getDirectoryHandle("copies", { create: true });
	const out = {};
	for await (const h of dir.values()) out[h.name] = await h.getFile().then((f) => f.text()).catch(() => "");
	return out;
})()`

// cleared takes everything out of the browser that it keeps for the page.
func (w *window) cleared(address string) {
	w.t.Helper()
	w.must(w.Visit("about:blank"))
	w.must(w.Clear(strings.TrimSuffix(address, "/")))
}

// Every change goes into the folder as well, and from there everything comes back when
// the browser has nothing any more.
func TestCopiesInAFolderBringEverythingBack(t *testing.T) {
	t.Parallel()
	f := folder
	w := open(t, f, drive.Desk, "", inFolder)
	w.area("needs")
	w.typed("#f-title", "Medic 1")
	w.click("#go-quotes")
	require.Contains(t, w.text("#copies-said"), "No copy was made yet: 1 quote is saved on this device alone.")
	require.LessOrEqual(t, eval[int](w, `document.scrollingElement.scrollHeight - document.body.scrollHeight`), 100,
		"nothing of the folded document makes the page longer than what is seen")
	w.click("#copies-folder")
	w.must(w.Until(`document.getElementById("copies-said").innerText.includes("copies. Last copy:")`))
	w.click("#kept-fresh")
	w.area("needs")
	w.typed("#f-title", "Medic 2")
	require.Eventually(t, func() bool {
		for _, text := range eval[map[string]string](w, folderFiles) {
			if strings.Contains(text, "Medic 2") {
				return true
			}
		}
		return false
	}, drive.Patience, 50*time.Millisecond)
	w.click("#go-quotes")
	w.must(w.Until(`document.getElementById("copies-said").innerText.includes("Nothing changed since")`))
	there := eval[map[string]string](w, folderFiles)
	require.Len(t, there, 3, "two quotes and the rest")

	w.cleared(w.address)
	w.must(w.Open(w.address))
	w.click("#go-quotes")
	require.Len(t, w.kept(), 1, "nothing of before is there")
	require.Empty(t, eval[map[string]string](w, folderFiles))
	var names []string
	for name, text := range there {
		names = append(names, written(t, name, []byte(text)))
	}
	w.must(w.Choose("#f-import", names...))
	w.must(w.Until(`document.querySelectorAll("#kept-quotes [id^=kept-open]").length >= 2`))
	list := strings.Join(w.kept(), "\n")
	require.Contains(t, list, "Medic 1")
	require.Contains(t, list, "Medic 2")
	require.Empty(t, w.trouble())
}

// One copy of everything restores quotes with their earlier states, and the sealed key,
// after all that the browser kept was cleared.
func TestACopyBringsEverythingBack(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.area("needs")
	w.typed("#f-title", "Medic 0")
	w.typed("#f-title", "Medic 1")
	draft := w.draft()
	w.click("#go-quotes")
	file := w.saving("#kept-export")
	w.must(w.Until(`document.getElementById("copies-said").innerText.includes("Nothing changed since")`))
	w.area("needs")
	w.click("#go-quotes")
	require.Contains(t, w.text("#copies-said"), "Nothing changed since", "who looks around changes nothing")
	w.area("needs")
	w.typed("#f-title", "Medic 1 anew")
	w.click("#go-quotes")
	require.Contains(t, w.text("#copies-said"), "1 quote changed since")

	w.cleared(w.address)
	w.must(w.Open(w.address))
	w.click("#go-quotes")
	w.must(w.Choose("#f-import", written(t, "all.json", []byte(file))))
	w.must(w.Until(`document.querySelector("#kept-quotes [id^=kept-open]")`))
	w.click("#kept-quotes [id^=kept-open]")
	w.must(w.Until(`document.getElementById("masthead").innerText.includes("Medic 1")`))
	require.Equal(t, draft, w.draft())
	w.click(`[data-act="undo"]`)
	w.must(w.Until(`document.getElementById("masthead").innerText.includes("Medic 0")`))
	require.Empty(t, w.trouble())
}

// Saved quotes are sealed, nothing of them stands in the browser in clear then, and they
// come back with the passphrase alone.
func TestSavedQuotesAreSealed(t *testing.T) {
	t.Parallel()
	const passphrase = "lantern river copper seventeen"
	everything := `(async () => JSON.stringify(localStorage) + await ` + stored + `)()`
	w := open(t, folder, drive.Desk, "")
	w.area("needs")
	w.typed("#f-title", "Secret 1")
	w.click("#go-quotes")
	require.Contains(t, eval[string](w, everything), "Secret 1")
	w.click("#fold-leave summary")
	w.typed("#seal-pass", "short")
	w.click("#seal-kept")
	w.must(w.Until(`!document.getElementById("trouble").hidden`))
	require.Contains(t, w.trouble(), "were not sealed")
	w.typed("#seal-pass", passphrase)
	w.click("#seal-kept")
	w.must(w.Until(`!document.getElementById("masthead").innerText.includes("Secret 1")`))
	w.must(w.Until(`document.getElementById("sealed-quotes")`))
	require.NotContains(t, eval[string](w, everything), "Secret 1")

	w.must(w.Reload())
	w.click("#go-quotes")
	w.typed("#unseal-pass", "another passphrase of words")
	w.click("#unseal-kept")
	w.must(w.Until(`!document.getElementById("trouble").hidden`))
	require.Contains(t, w.trouble(), "were not opened")
	w.typed("#unseal-pass", passphrase)
	w.click("#unseal-kept")
	w.must(w.Until(`document.querySelector("#kept-quotes table")?.innerText.includes("Secret 1")`))
	w.must(w.Until(`!document.getElementById("sealed-quotes")`))
}

// Something that was never sealed, in the place of sealed quotes, is said where quotes are
// sealed, put aside there, and handed out by the panel.
func TestWhatWasNeverSealedIsPutAside(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.area("needs")
	w.typed("#f-title", "Secret 1")
	w.eventually("Secret 1")
	eval[bool](w, `new Promise((done) => { const o = indexedDB.open("boxwright"); o.onsuccess = () => {
		const t = o.result.transaction("kept", "readwrite");
		t.objectStore("kept").put({ odd: "one" }, "sealed");
		t.oncomplete = () => { o.result.close(); done(true); }; }; })`)
	w.must(w.Reload())
	w.click("#go-quotes")
	w.must(w.Until(`document.getElementById("sealed-spoiled")`))
	w.click("#fold-leave summary")
	require.Contains(t, w.text("#sealed-spoiled"), "was not sealed here")
	require.False(t, w.has("#unseal-pass"))
	w.click("#sealed-aside")
	w.must(w.Until(`document.getElementById("seal-pass")`))
	w.typed("#seal-pass", "lantern river copper seventeen")
	w.click("#seal-kept")
	w.must(w.Until(`document.getElementById("sealed-quotes")`))
	w.click("#fold-sealed-aside summary")
	w.click(`#fold-sealed-aside a`)
	w.must(w.Until(`document.getElementById("rescue")?.innerText.includes("sealed, put aside")`))
	require.Contains(t, w.text("#rescue"), "Sealed quotes")
}

// A browser that is slow to say what it keeps does not hide the sealed quotes from who
// looks for them at once.
func TestSealedQuotesAreSeenWhereTheBrowserIsSlow(t *testing.T) {
	t.Parallel()
	const slow = `(() => {
		if (performance.getEntriesByType("navigation")[0]?.type !== "reload") return;
		const get = IDBObjectStore.prototype.get;
		let waiting = [];
		window.__hurry = () => {
			for (const answer of waiting) answer();
			waiting = null;
		};
		IDBObjectStore.prototype.get = function (key) {
			const real = get.call(this, key);
			if (key !== "sealed") return real;
			const late = {};
			const answer = () => ((late.result = real.result), late.onsuccess());
			real.onsuccess = () => (waiting ? waiting.push(answer) : answer());
			return late;
		};
	})()`
	w := open(t, folder, drive.Desk, "", slow)
	w.area("needs")
	w.typed("#f-title", "Secret 1")
	w.click("#go-quotes")
	w.click("#fold-leave summary")
	w.typed("#seal-pass", "lantern river copper seventeen")
	w.click("#seal-kept")
	w.must(w.Until(`document.getElementById("sealed-quotes")`))
	w.must(w.Reload())
	w.click("#go-quotes")
	require.False(t, w.has("#unseal-pass"), "the browser has not said yet what it keeps")
	eval[bool](w, `(__hurry(), true)`)
	w.must(w.Until(`document.getElementById("unseal-pass")`))
}

// Who wants nothing kept has nothing kept, until they want otherwise.
func TestNothingIsKeptWhereNothingShallBe(t *testing.T) {
	t.Parallel()
	everything := `(async () => JSON.stringify(localStorage) + await ` + stored + `)()`
	w := open(t, folder, drive.Desk, "")
	w.area("needs")
	w.typed("#f-title", "Secret 1")
	w.click("#go-quotes")
	w.click("#fold-leave summary")
	w.click("#fold-keep-off summary")
	w.click("#keep-off")
	w.must(w.Until(`document.getElementById("not-kept")`))
	require.Contains(t, w.text("#not-kept"), "You chose to keep nothing")
	w.area("needs")
	w.typed("#f-title", "Secret 2")
	require.Equal(t, `{"boxwright.off":"1"}`, eval[string](w, `JSON.stringify(localStorage)`))
	require.NotContains(t, eval[[]string](w, `indexedDB.databases().then((d) => d.map((x) => x.name))`), "boxwright")
	require.Contains(t, w.text("#masthead"), "Secret 2", "the quote in hand stays in the window")

	w.must(w.Reload())
	require.NotContains(t, w.text("#masthead"), "Secret")
	w.area("needs")
	w.typed("#f-title", "Open again")
	w.click("#go-quotes")
	w.click("#keep-on")
	w.must(w.Until(`!document.getElementById("not-kept")`))
	w.eventually("Open again")
	require.NotContains(t, eval[string](w, everything), "Secret")
}
