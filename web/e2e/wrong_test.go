package e2e

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/config/seeds"
	"boxwright/web/e2e/drive"
)

// spoiled puts a value in the place of everything the page keeps in the browser: the
// quotes and their states, what is kept beside them, and every text.
func spoiled(value string) string {
	return `new Promise((done) => {
		const v = ` + value + `;
		const text = typeof v === "string" ? v : JSON.stringify(v);
		const names = ["screen", "suspect", "costs.1", "key.1", "bids.1"];
		for (const kind of ["unsaved", "aside", "typed", "trying"]) names.push(kind + ".gone");
		for (const name of names) try { localStorage.setItem("boxwright." + name, text); } catch {}
		try { sessionStorage.setItem("boxwright.window", text); } catch {}
		const o = indexedDB.open("boxwright");
		o.onsuccess = () => {
			const t = o.result.transaction(["kept", "quotes", "steps"], "readwrite");
			for (const key of ["last", "catalogue", "copies", "sealed"]) t.objectStore("kept").put(v, key);
			const [quotes, steps] = ["quotes", "steps"].map((name) => t.objectStore(name));
			quotes.getAllKeys().onsuccess = (e) => {
				for (const id of e.target.result)
					quotes.put({ id, count: v, saved: v, at: v, draft: v, view: v, pins: v, gist: v });
			};
			steps.getAllKeys().onsuccess = (e) => { for (const key of e.target.result) steps.put(v, key); };
			t.oncomplete = () => { o.result.close(); done(true); };
		};
	})`
}

// Whatever another program put in the place of all that is kept, the page starts and can
// be worked with, and shows nothing of it as markup.
func TestASpoiledBrowserStillStartsThePage(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.area("needs")
	for kind, value := range seeds.InOrder(map[string]string{
		"a number":          `7`,
		"nothing":           `null`,
		"a list of lists":   `[[[[]]], "x", null]`,
		"markup":            `"\u202e<img src=x onerror=alert(1)><script>alert(2)</scr" + "ipt>"`,
		"a great deal":      `"W".repeat(900_000)`,
		"half of an object": `'{"quote":'`,
		"odd objects": `({ id: {}, draft: [], quote: 7, fields: { "f-title": 9, x: "<b>y</b>" }, regions: { main: [3] }, ` +
			`quotes: [{}], catalogue: "yes", name: "<img src=x>", folder: { getFileHandle: 1 }, of: 3, when: {} })`,
	}) {
		t.Run(kind, func(t *testing.T) {
			w := &window{w.Tab, t, w.form, w.address}
			w.typed("#f-title", "Before "+kind)
			eval[bool](w, spoiled(value))
			w.must(w.Reload())
			w.area("needs")
			w.typed("#f-title", "After "+kind)
			w.eventually("After " + kind)
			w.area("quote")
			w.click("#go-quotes")
			require.NotContains(t, w.trouble(), "could not", "%s", w.trouble())
			require.False(t, w.has(`img[src="x"]`))
			require.LessOrEqual(t, eval[int](w, `document.documentElement.scrollWidth - innerWidth`), 0)
			w.area("needs")
		})
	}
}

// A file of the wrong kind is told of, or read as the text it is; nothing of the quote
// changes.
func TestFilesOfTheWrongKind(t *testing.T) {
	t.Parallel()
	w := open(t, folder, drive.Desk, "")
	w.area("needs")
	w.typed("#f-title", "Rescue 4")
	kept := func(quotes string) []byte { return []byte(`{"format":"boxwright-kept/1","quotes":` + quotes + `}`) }
	wrong := map[string][]byte{
		"picture.json":  append([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR"), bytes.Repeat([]byte{0, 255, 7}, 900)...),
		"empty.json":    {},
		"page.json":     []byte(`<!doctype html><img src=x onerror=alert(1)><script>alert(2)</script>`),
		"deep.json":     []byte(strings.Repeat(`[`, 200_000)),
		"object.json":   []byte(`{"format":"\u202e<img src=x onerror=alert(1)>"}`),
		"number.json":   kept(`7`),
		"strange.json":  kept(`[{"id":"<img src=x>","name":"<img src=x>","draft":{"format":"<img src=x>"}}]`),
		"wide.json":     []byte("\xff\xfe{\x00}\x00"),
		"archive.xlsx":  append([]byte("PK\x03\x04"), bytes.Repeat([]byte{9, 0, 200}, 500)...),
		"document.docx": []byte("no document at all"),
		"large.json":    bytes.Repeat([]byte("[1,"), 6<<20),
	}
	const said = `(document.getElementById("trouble").hidden ? document.getElementById("refused") :
		document.getElementById("trouble")).innerText`
	for _, at := range []struct{ button, field string }{
		{"#area-catalogue", "#f-catalogue"}, {"#area-start", "#f-draft"}, {"#go-quotes", "#f-import"},
		{"#area-catalogue", "#f-beside"}, {"", "#f-tables"},
	} {
		for name, data := range seeds.InOrder(wrong) {
			t.Run(at.field+" "+name, func(t *testing.T) {
				w := &window{w.Tab, t, w.form, w.address}
				if at.button != "" && !w.has(at.field) {
					w.click(at.button)
				}
				draft := w.draft()
				w.must(w.Choose(at.field, written(t, name, data)))
				w.must(w.Until(said + `.length > 20`))
				w.must(w.Settle())
				text := eval[string](w, said)
				require.Less(t, len(text), 900)
				t.Log(text)
				require.False(t, w.has(`img[src="x"]`))
				require.Equal(t, draft, w.draft())
			})
		}
	}
}
