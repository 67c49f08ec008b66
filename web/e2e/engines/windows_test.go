//go:build linux

package engines

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// kept is what the browser keeps of quotes and their earlier states.
const kept = `new Promise((done) => {
	const o = indexedDB.open("boxwright");
	o.onsuccess = async () => {
		const t = o.result.transaction(["quotes", "steps"]);
		const all = (name) => new Promise((r) => { t.objectStore(name).getAll().onsuccess = (e) => r(e.target.result); });
		const [quotes, steps] = [await all("quotes"), await all("steps")];
		o.result.close();
		done({ count: quotes.length, quotes: JSON.stringify(quotes), steps: JSON.stringify(steps) });
	};
})`

// turns goes to an area by a script: of several tabs only the one on top takes presses.
func (v *visitor) turns(id string) {
	v.t.Helper()
	v.until(settled)
	v.read(`(document.getElementById("area-` + id + `").click(), "pressed")`)
	v.until(settled + ` && document.querySelector("#area-` + id + `[aria-current]")`)
}

// titled types a title and leaves its field; until it may be written it stays there.
func (v *visitor) titled(title string) {
	v.t.Helper()
	v.read(`(() => {
		const f = document.getElementById("f-title");
		f.focus();
		f.value = ` + quote(title) + `;
		f.dispatchEvent(new InputEvent("input", { bubbles: true }));
		f.dispatchEvent(new Event("change", { bubbles: true }));
		return "typed";
	})()`)
}

// keeps waits until a title stands in what is kept.
func (v *visitor) keeps(title string) {
	v.t.Helper()
	v.until(`(await ` + kept + `).quotes.includes(` + quote(title) + `)`)
}

// answers presses a button of the bar, counted from the first or, from -1, the last.
func (v *visitor) answers(at string) {
	v.t.Helper()
	v.read(`([...document.querySelectorAll("#bar button")].at(` + at + `).click(), "pressed")`)
}

func (v *visitor) told() { v.t.Helper(); v.until(`document.querySelector("#bar:not([hidden])")`) }

// killed ends a window without a word to its page.
func (v *visitor) killed() {
	v.t.Helper()
	v.read(`(["pagehide", "beforeunload", "unload", "visibilitychange", "freeze"].forEach((name) =>
		window.addEventListener(name, (e) => e.stopImmediatePropagation(), true)), "deaf")`)
	v.must(v.Close())
}

// Three windows on one quote, of which one is killed and one loaded anew: there is never
// more than one that writes, and nothing that was typed goes.
func TestThreeWindowsOnOneQuote(t *testing.T) {
	for _, e := range Engines {
		t.Run(e.Name, func(t *testing.T) {
			t.Parallel()
			b, err := e.Start(1400, 900)
			require.NoError(t, err)
			t.Cleanup(b.Close)
			address := host.URL + "/"
			first := visit(t, b, address)
			first.turns("needs")
			first.titled("First")
			first.keeps("First")
			second, third := visit(t, b, address), visit(t, b, address)
			for _, o := range []*visitor{second, third} {
				o.told()
				o.turns("needs")
			}
			second.titled("Second")
			third.titled("Third")
			first.titled("First again")
			first.keeps("First again")
			for title, o := range map[string]*visitor{"Second": second, "Third": third} {
				require.Equal(t, title, o.read(`document.getElementById("f-title").value`))
			}
			require.Equal(t, "true", first.read(`String(document.getElementById("bar").hidden)`),
				"who holds the quote holds it until it is asked for")

			first.killed()
			second.answers("0") // take it over
			second.keeps("Second")
			require.Contains(t, second.read(`(async () => (await `+kept+`).steps)()`), "First again",
				"what the first wrote is among the earlier states")
			third.must(third.Reload())
			third.must(Ready(third.Tab))
			third.told()
			third.turns("needs")
			third.titled("Third again")
			third.answers("-1") // work on a copy
			third.keeps("Third again")
			third.keeps("Second")
			require.Equal(t, "2", third.read(`(async () => String((await `+kept+`).count))()`))
			require.Contains(t, second.text("#masthead"), "Second")
			require.Empty(t, b.Faults(), "errors of scripts or refusals of the security policy")
		})
	}
}
